"""From raw signals to a :class:`triage.speed_log.SpeedLog`: choice, unit, clock, companions, notices."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Final, TypeVar

import numpy as np

from triage.corners import CORNERS, Corner
from triage.errors import DamagedLog, SignalMappingError
from triage.logs.clock import OrderedSamples, order_samples
from triage.logs.companions import build_companions
from triage.logs.mapping import Candidate, choose_signals
from triage.logs.names import bracket_unit
from triage.logs.options import ReadOptions
from triage.logs.quality import quality_notices
from triage.logs.recording import RawSignal, Recording
from triage.logs.remembered import find_remembered, notice_of, signal_names
from triage.logs.sentinels import smallest_step, without_sentinels
from triage.logs.speed_units import doubt_unit, metres_per_unit, settle_unit
from triage.logs.unit_texts import unit_multiple
from triage.logs.wheel_signs import with_forward_signs
from triage.side_by_side import map_side_by_side
from triage.speed_log import HistoryStep, Notice, SpeedLog, SpeedTrace
from triage.texts import Text

_BEYOND_ALL: Final = 1e30
_NEAR_ZERO_S: Final = 60.0
"""A clock that starts within this of zero is left as it is, so that its seconds stay those of the file."""

_Result = TypeVar("_Result")


@dataclass(frozen=True, slots=True)
class _Wheel:
    candidate: Candidate
    samples: OrderedSamples
    numbers: int
    """How many samples are numbers."""


def build_log(recording: Recording, options: ReadOptions, file: str) -> SpeedLog:
    """Build the log.

    Parameters
    ----------
    recording : Recording
        All parts, joined.
    options : ReadOptions
    file : str
        What the user opened.

    Raises
    ------
    SignalMappingError, DamagedLog, LogReadError
        When the wheels are not certain, hold no numbers, or their unit needs a tyre radius.
    """
    names = signal_names(signal.name for signal in recording.signals)
    options, memory_notices = _with_remembered(options, names)
    signals = tuple(_without_absurd(one) for one in recording.signals)
    signals = signals if options.unit else tuple(_in_whole_units(one) for one in signals)
    chosen = choose_signals(signals, options.mapping, file)
    unit, unit_notices = settle_unit(chosen, options, file)
    factor = metres_per_unit(unit, options, file)
    wheels = _each_corner(lambda corner: _wheel(chosen.wheels[corner], factor))
    _refuse_without_numbers(wheels, file)
    zero_s = _zero(wheels)
    traces = _each_corner(lambda corner: _trace(wheels[corner], factor=factor, unit=unit, zero_s=zero_s))
    traces, sign_notices = with_forward_signs(traces)
    channels, channel_notices = build_companions(chosen.companions, traces, zero_s)
    notices = (
        *recording.notices,
        *memory_notices,
        *chosen.notices,
        *_clock_notices(wheels),
        *_invalid_notices(wheels, traces),
        *unit_notices,
        *sign_notices,
        *doubt_unit(traces, channels.get("reference_mps"), unit, file),
        *channel_notices,
    )
    start = _later(recording.start, zero_s)
    log = SpeedLog(
        file,
        recording.format,
        start,
        traces,
        channels,
        notices,
        _history(recording, unit, zero_s),
        signal_names=names,
    )
    return log.noticed(*quality_notices(log))


def _each_corner(work: Callable[[Corner], _Result]) -> dict[Corner, _Result]:
    return dict(zip(CORNERS, map_side_by_side(work, CORNERS), strict=True))


def _with_remembered(options: ReadOptions, names: tuple[str, ...]) -> tuple[ReadOptions, tuple[Notice, ...]]:
    found = None if options.mapping else find_remembered(options.remembered, names)
    if found is None:
        return options, ()
    used = replace(options, mapping=found.wheels, unit=options.unit or found.unit)
    return used, (notice_of(found),)


def _without_absurd(signal: RawSignal) -> RawSignal:
    """Take for no number what is beyond any quantity in any unit; its square would overflow later on."""
    value = signal.value
    if not value.size or max(np.fmax.reduce(value), -np.fmin.reduce(value)) < _BEYOND_ALL:
        return signal
    return replace(signal, value=np.where(np.abs(value) < _BEYOND_ALL, value, np.nan))


def _in_whole_units(signal: RawSignal) -> RawSignal:
    """Bring numbers whose unit is a multiple, such as 0.01 km/h, to the plain unit.

    A database that states the same factor for the signal has done so already.
    """
    factor, unit = unit_multiple(signal.unit or bracket_unit(signal.name))
    if factor == 1.0 or abs(signal.step / factor - 1.0) < 1e-6:
        return signal
    return replace(signal, unit=unit, value=signal.value * factor, step=signal.step * factor)


def _later(start: datetime | None, seconds: float) -> datetime | None:
    try:
        return None if start is None else start + timedelta(seconds=seconds)
    except OverflowError:
        return None


def _wheel(candidate: Candidate, factor: float) -> _Wheel:
    signal = candidate.signal
    value, _ = without_sentinels(signal.value, factor, time_s=signal.time_s, step=abs(signal.step))
    samples = order_samples(signal.time_s, value)
    return _Wheel(candidate, samples, int(np.count_nonzero(~np.isnan(samples.value))))


def _refuse_without_numbers(wheels: Mapping[Corner, _Wheel], file: str) -> None:
    names = tuple(wheel.candidate.signal.label for wheel in wheels.values())
    most = max(wheel.numbers for wheel in wheels.values())
    if most == 0:
        raise SignalMappingError(
            Text("the signals {names} hold no valid number", names=", ".join(names)),
            candidates=names,
            file=file,
            hint="Choose other signals with --map, or record again.",
        )
    repeated = max(wheel.samples.repeated_count for wheel in wheels.values())
    if most < 2 and repeated:
        raise DamagedLog(
            Text("all {value} rows bear one and the same time", value=repeated + 1),
            file=file,
            hint="Export the time with more digits.",
        )
    if most < 2:
        raise DamagedLog(
            "there is a single row of wheel speeds; a recording needs at least two",
            file=file,
            hint="Record longer.",
        )
    if sum(wheel.numbers > 1 for wheel in wheels.values()) < 2:
        raise SignalMappingError(
            Text("only one of the signals {names} holds valid numbers", names=", ".join(names)),
            candidates=names,
            file=file,
            hint="Choose other signals with --map.",
        )


def _zero(wheels: Mapping[Corner, _Wheel]) -> float:
    first = min(float(wheel.samples.time_s[0]) for wheel in wheels.values() if wheel.samples.time_s.size)
    return 0.0 if abs(first) <= _NEAR_ZERO_S else first


def _trace(wheel: _Wheel, *, factor: float, unit: str, zero_s: float) -> SpeedTrace:
    time_s = wheel.samples.time_s - zero_s if zero_s else wheel.samples.time_s
    speed_mps = wheel.samples.value * factor
    step = wheel.candidate.signal.step or smallest_step(wheel.samples.value)
    label = wheel.candidate.signal.label
    return SpeedTrace(time_s, speed_mps, np.isnan(speed_mps), abs(step) * factor, label, unit)


def _clock_notices(wheels: Mapping[Corner, _Wheel]) -> list[Notice]:
    notices = []
    back = max(wheel.samples.back_count for wheel in wheels.values())
    if back:
        text = Text("the time went back {back} times; the samples were sorted into rising order.", back=back)
        notices.append(Notice("clock-went-back", text, back))
    repeated = max(wheel.samples.repeated_count for wheel in wheels.values())
    if repeated:
        text = Text(
            "{repeated} time stamps are repeated; the first valid sample of each instant was kept.",
            repeated=repeated,
        )
        notices.append(Notice("duplicate-instants", text, repeated))
    return notices


def _invalid_notices(wheels: Mapping[Corner, _Wheel], traces: Mapping[Corner, SpeedTrace]) -> list[Notice]:
    counts = {corner: int(np.count_nonzero(trace.invalid)) for corner, trace in traces.items()}
    notices = [
        Notice(
            "invalid-samples",
            Text(
                "{corner}: {count} samples are missing or marked invalid (not available) and were left out.",
                corner=corner,
                count=count,
            ),
            count,
        )
        for corner, count in counts.items()
        if count and traces[corner].valid_count
    ]
    silent = [corner for corner, trace in traces.items() if not trace.valid_count]
    for corner in silent:
        text = Text(
            "{corner}: the signal {signal} holds no valid sample at all.",
            corner=corner,
            signal=wheels[corner].candidate.signal.label,
        )
        notices.append(Notice("invalid-samples", text, max(counts[corner], 1)))
    return notices


def _history(recording: Recording, unit: str, zero_s: float) -> tuple[HistoryStep, ...]:
    steps = [
        HistoryStep(Text("read"), recording.format),
        HistoryStep(Text("unit"), Text("{unit} to m/s", unit=unit)),
    ]
    if zero_s:
        taken = Text("{time} s taken off, so that the log starts at 0", time=f"{zero_s:.6f}")
        steps.append(HistoryStep(Text("clock"), taken))
    return tuple(steps)
