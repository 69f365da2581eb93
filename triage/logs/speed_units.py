"""Settling the unit of the wheel speeds, and saying so when it is in doubt."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

import numpy as np

from triage.corners import Corner
from triage.errors import LogReadError, SignalMappingError
from triage.logs.clock import even_times
from triage.logs.mapping import Candidate, ChosenSignals
from triage.logs.options import ReadOptions
from triage.speed_log import Channel, FloatArray, Notice, SpeedTrace
from triage.texts import Text, joined
from triage.units import KMH, LINEAR_SPEED_MPS, MPH, ROTATION_REV_PER_S, to_kmh

FASTEST_MPS: Final = 100.0
"""No road car on a road test goes faster (360 km/h)."""

_MIXED_UP: Final = (
    (MPH / KMH, Text("mph were taken for km/h")),
    (KMH / MPH, Text("km/h were taken for mph")),
    (KMH, Text("km/h were taken for m/s")),
    (1 / KMH, Text("m/s were taken for km/h")),
    (100.0, Text("a factor of 0.01 is missing")),
    (1000.0, Text("a factor of 0.001 is missing")),
    (0.01, Text("a factor of 100 is missing")),
)
_AGREES: Final = 0.06
_ACCELERATION_MAX_MPS2: Final = 12.0
_USUAL_TOP_MPS: Final = 70.0
_GENTLE_CHANGE: Final = 2.0
"""Change in one second below which km/h would mean an acceleration of hardly 0.5 m/s2 in the whole drive."""


def settle_unit(chosen: ChosenSignals, options: ReadOptions, file: str) -> tuple[str, list[Notice]]:
    """Find the unit of the wheel speeds.

    Returns
    -------
    (str, list of Notice)
        One of :data:`triage.units.SPEED_UNITS`.

    Raises
    ------
    SignalMappingError
        When the four chosen signals state different units.
    """
    if options.unit is not None:
        return options.unit, []
    wheels = chosen.wheels
    stated = {one.sense.unit for one in wheels.values() if one.sense.unit}
    known = {
        unit for unit in stated if unit in LINEAR_SPEED_MPS or unit in ROTATION_REV_PER_S or unit == "hz"
    }
    if len(known) > 1:
        raise SignalMappingError(
            Text("the four wheels state different units: {known}", known=", ".join(sorted(known))),
            candidates=tuple(one.signal.label for one in wheels.values()),
            file=file,
            hint="Choose signals of one unit with --map, or state the unit with --unit.",
        )
    if known:
        return known.pop(), []
    unit, why = _unit_of_agreement(wheels, chosen.companions.get("reference_mps")) or _judge_unit(wheels)
    return unit, [
        Notice(
            "unit-assumed",
            Text(
                "{file}: the speeds have no unit; {unit} was assumed ({why}). Use --unit.",
                file=file,
                unit=unit,
                why=why,
            ),
        )
    ]


def metres_per_unit(unit: str, options: ReadOptions, file: str) -> float:
    """Metres per second in one unit.

    Raises
    ------
    LogReadError
        When the unit is one of rotation and the rolling circumference (or the pulse count) is not given.
    """
    if unit in LINEAR_SPEED_MPS:
        return LINEAR_SPEED_MPS[unit]
    if options.circumference_m is None:
        raise LogReadError(
            Text("the speeds are in {unit}, a unit of rotation, and the tyre radius is not known", unit=unit),
            file=file,
            hint="State the rolling radius in metres with --tyre-radius, for example --tyre-radius 0.312.",
        )
    if unit in ROTATION_REV_PER_S:
        return ROTATION_REV_PER_S[unit] * options.circumference_m
    if options.pulses_per_rev is None:
        raise LogReadError(
            "the speeds are in pulses per second, and the pulses of one revolution are not known",
            file=file,
            hint="State pulses_per_rev in a vehicle file and give it with --vehicle.",
        )
    return options.circumference_m / options.pulses_per_rev


def doubt_unit(
    traces: Mapping[Corner, SpeedTrace], reference: Channel | None, unit: str, file: str
) -> list[Notice]:
    """Say so when the speeds are too high for a car or disagree with another speed in the log."""
    notices = []
    fastest = max((float(np.nanmax(t.speed_mps)) for t in traces.values() if t.valid_count), default=0.0)
    if fastest > FASTEST_MPS:
        text = Text(
            "{file}: the wheels reach {speed} km/h, which is implausible: the unit "
            "({unit}) or the factor of the signals is wrong. The numbers are used as "
            "written; state the right unit with --unit.",
            file=file,
            speed=f"{to_kmh(fastest):.6g}",
            unit=unit,
        )
        missing = [f"{factor:g}" for factor in (0.01, 0.001) if 5.0 < fastest * factor < _USUAL_TOP_MPS]
        if missing:
            text = Text(
                "{told} With a factor of {factors} they would be plausible.",
                told=text,
                factors=joined(Text(" or "), missing),
            )
        notices.append(Notice("unit-doubtful", text))
    ratio = _ratio_to(reference, traces) if reference is not None else None
    if ratio is not None and reference is not None and abs(ratio - 1) > 0.06:
        known = [what for factor, what in _MIXED_UP if abs(ratio / factor - 1) < 0.06]
        because = Text("; it looks as if {reason}", reason=known[0]) if known else ""
        text = Text(
            "{file}: the wheels read {ratio} times the vehicle speed {source}{because}. "
            "The numbers are used as written; state the right unit with --unit.",
            file=file,
            ratio=f"{ratio:.2f}",
            source=reference.source,
            because=because,
        )
        notices.append(Notice("unit-doubtful", text))
    return notices


def _ratio_to(reference: Channel, traces: Mapping[Corner, SpeedTrace]) -> float | None:
    """Middle ratio of all wheels to the other speed, while it is above 3 m/s."""
    moving = reference.value > 3.0
    if np.count_nonzero(moving) < 10:
        return None
    ratios = [
        float(np.median(np.interp(reference.time_s[moving], *_valid(trace)) / reference.value[moving]))
        for trace in traces.values()
        if trace.valid_count > 1
    ]
    return float(np.median(ratios)) if ratios else None


def _valid(trace: SpeedTrace) -> tuple[FloatArray, FloatArray]:
    return trace.time_s[~trace.invalid], trace.speed_mps[~trace.invalid]


def _unit_of_agreement(
    wheels: Mapping[Corner, Candidate], reference: Candidate | None
) -> tuple[str, str] | None:
    """Find the unit in which the wheels agree with a second speed that states its own."""
    if reference is None or reference.sense.unit not in LINEAR_SPEED_MPS:
        return None
    time_s, value = _risen(reference)
    speed_mps = value * LINEAR_SPEED_MPS[reference.sense.unit]
    moving = speed_mps > 3.0
    if np.count_nonzero(moving) < 10:
        return None
    numbers = [np.interp(time_s[moving], *_risen(one)) for one in wheels.values() if _risen(one)[0].size > 1]
    ratios = [float(np.median(number / speed_mps[moving])) for number in numbers]
    ratio = float(np.median(ratios)) if ratios else 0.0
    fits = [unit for unit, mps in LINEAR_SPEED_MPS.items() if abs(ratio * mps - 1.0) < _AGREES]
    return (fits[0], f"so they agree with {reference.signal.label}") if fits else None


def _risen(one: Candidate) -> tuple[FloatArray, FloatArray]:
    """Give the valid samples in rising time."""
    keep = np.isfinite(one.signal.value) & np.isfinite(one.signal.time_s)
    order = np.argsort(one.signal.time_s[keep], kind="stable")
    return one.signal.time_s[keep][order], one.signal.value[keep][order]


def _judge_unit(wheels: Mapping[Corner, Candidate]) -> tuple[str, str]:
    """Judge km/h against m/s by the top value and by what a car can brake and accelerate."""
    top = max(float(np.nanmax(one.signal.value, initial=0.0)) for one in wheels.values())
    if top > FASTEST_MPS:
        return "km/h", f"values up to {top:.0f}"
    hardest = float(np.median([_hardest_change(one) for one in wheels.values()]))
    if hardest > _ACCELERATION_MAX_MPS2:
        return "km/h", "as m/s the car would brake or accelerate too hard"
    if 0 < hardest < _GENTLE_CHANGE and top < 45.0:
        return "m/s", "as km/h the car would hardly accelerate"
    return "km/h", "the usual unit"


def _hardest_change(one: Candidate) -> float:
    """Largest usual change of the value in one second."""
    keep = ~np.isnan(one.signal.value)
    time_s, value = one.signal.time_s[keep], one.signal.value[keep]
    if time_s.size < 3 or np.ptp(time_s) < 2.0:
        return 0.0
    order = np.argsort(time_s, kind="stable")
    grid = even_times(float(time_s.min()), float(time_s.max()), 0.25)
    smooth = np.interp(grid, time_s[order], value[order])
    return float(np.percentile(np.abs(smooth[4:] - smooth[:-4]), 95)) if grid.size > 8 else 0.0
