"""What is wanting in a log as a whole: gaps, length, rate, resolution, motion."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.corners import CORNERS
from triage.speed_log import FloatArray, Notice, SpeedLog
from triage.texts import Text

GAP_PERIODS: Final = 2.5
GAP_MIN_S: Final = 0.04
"""A span without any wheel sample is a gap when it is longer than both (a task cycle or two may slip)."""

SHORT_S: Final = 5.0
SHORT_ROWS: Final = 50
LOW_RATE_HZ: Final = 10.0
COARSE_MPS: Final = 0.05
"""Steps beyond this hide a healthy wheel's run-out at any road speed (0.18 km/h; judgement)."""

_SAME_COUNT_RATIO: Final = 0.002
_DRIFT_RATIO: Final = 0.005
"""A hundred times the drift of a quartz: such clocks do not measure the same seconds."""

_APART_S: Final = 1.0
STANDING_MPS: Final = 0.5


@dataclass(frozen=True, slots=True)
class GapSummary:
    """Spans in which no wheel has a sample.

    Attributes
    ----------
    begin_s, length_s : float64[K]
    period_s : float
        Usual distance of the instants.
    """

    begin_s: FloatArray
    length_s: FloatArray
    period_s: float


def quality_notices(log: SpeedLog) -> list[Notice]:
    """Say what is wanting in the log."""
    instants_s = _all_instants(log)
    gaps = find_gaps(instants_s)
    tests = (
        _gap_notice(gaps),
        _short_notice(log, instants_s),
        _rate_notice(gaps, instants_s),
        *_slow_wheel_notices(log, gaps, instants_s),
        _step_notice(log),
        _clock_notice(log),
    )
    return [notice for notice in (*tests, _motion_notice(log)) if notice is not None]


def find_gaps(instants_s: FloatArray) -> GapSummary:
    """Find the gaps of a recorder.

    Parameters
    ----------
    instants_s : float64[N]
        Rising instants at which at least one wheel has a sample.
    """
    step = np.diff(instants_s)
    period = float(np.median(step)) if step.size else 0.0
    gap = step > max(GAP_PERIODS * period, GAP_MIN_S)
    return GapSummary(instants_s[:-1][gap], step[gap], period)


def usual_rate(instants_s: FloatArray) -> float:
    """Instants per second outside the gaps, in hertz; 0 when there are fewer than two instants."""
    return _rate_outside(find_gaps(instants_s), instants_s)


def _rate_outside(gaps: GapSummary, instants_s: FloatArray) -> float:
    steps = instants_s.size - 1 - gaps.length_s.size
    span_s = float(instants_s[-1] - instants_s[0] - gaps.length_s.sum()) if instants_s.size else 0.0
    return steps / span_s if steps > 0 and span_s > 0 else 0.0


def distinct_instants(arrays: list[FloatArray]) -> FloatArray:
    """Union of rising time arrays; cheap when they are all the same."""
    first = arrays[0]
    if all(other is first or np.array_equal(other, first) for other in arrays[1:]):
        return first
    return np.unique(np.concatenate(arrays))


def _all_instants(log: SpeedLog) -> FloatArray:
    return distinct_instants([log.wheels[corner].time_s for corner in CORNERS])


def _gap_notice(gaps: GapSummary) -> Notice | None:
    count = int(gaps.length_s.size)
    if not count:
        return None
    at = int(np.argmax(gaps.length_s))
    text = Text(
        "{gaps} without a sample of any wheel, {total} s in total, the longest {length_s} s at {begin_s} s: "
        "they are gaps of the recording, not losses of one wheel.",
        gaps=Text("1 gap") if count == 1 else Text("{n} gaps", n=count),
        total=f"{sum(gaps.length_s):.2f}",
        length_s=f"{gaps.length_s[at]:.2f}",
        begin_s=f"{gaps.begin_s[at]:.2f}",
    )
    return Notice("gaps-in-log", text, count)


def _short_notice(log: SpeedLog, instants_s: FloatArray) -> Notice | None:
    if log.duration_s >= SHORT_S and instants_s.size >= SHORT_ROWS:
        return None
    text = Text(
        "the log is short: {size} rows in {duration_s} s do not allow most measurements.",
        size=instants_s.size,
        duration_s=f"{log.duration_s:.2f}",
    )
    return Notice("too-short", text)


def _rate_notice(gaps: GapSummary, instants_s: FloatArray) -> Notice | None:
    rate = _rate_outside(gaps, instants_s)
    if not gaps.period_s or rate >= LOW_RATE_HZ:
        return None
    return Notice(
        "low-rate",
        Text("only {rate} samples a second; short losses and ripple cannot be seen.", rate=f"{rate:.1f}"),
    )


def _slow_wheel_notices(log: SpeedLog, gaps: GapSummary, instants_s: FloatArray) -> list[Notice]:
    """Name the wheels that are recorded rarely in a log whose other wheels are not."""
    if _rate_outside(gaps, instants_s) < LOW_RATE_HZ:
        return []
    slow = []
    for corner, trace in log.wheels.items():
        if SHORT_ROWS <= trace.valid_count < instants_s.size / 2:
            rate = usual_rate(trace.time_s[~trace.invalid])
            if rate < LOW_RATE_HZ:
                text = Text(
                    "{corner}: only {rate} samples a second; its short losses and ripple cannot be seen.",
                    corner=corner,
                    rate=f"{rate:.1f}",
                )
                slow.append(Notice("low-rate", text))
    return slow


def _clock_notice(log: SpeedLog) -> Notice | None:
    """Name wheels with as many samples as the others whose times span or begin otherwise."""
    times = {corner: trace.time_s for corner, trace in log.wheels.items() if trace.time_s.size >= SHORT_ROWS}
    if len(times) < len(CORNERS):
        return None
    size = float(np.median([time_s.size for time_s in times.values()]))
    spans = {corner: float(time_s[-1] - time_s[0]) for corner, time_s in times.items()}
    span = float(np.median(list(spans.values())))
    begin = float(np.median([time_s[0] for time_s in times.values()]))
    odd = {
        corner: f"{100.0 * (spans[corner] / span - 1.0):+.1f} %, from {time_s[0]:.2f} s on"
        for corner, time_s in times.items()
        if abs(time_s.size / size - 1.0) <= _SAME_COUNT_RATIO
        and (abs(spans[corner] / span - 1.0) > _DRIFT_RATIO or abs(time_s[0] - begin) > _APART_S)
    }
    if not odd:
        return None
    said = ", ".join(f"{corner} ({how})" for corner, how in odd.items())
    text = Text(
        "the clock of {said} does not run with those of the other wheels, though it has "
        "as many samples; the times were left as they are, so comparisons of this wheel "
        "with the others may be wrong.",
        said=said,
    )
    return Notice("clocks-differ", text, len(odd))


def _step_notice(log: SpeedLog) -> Notice | None:
    step = max(trace.resolution_mps for trace in log.wheels.values())
    if step <= COARSE_MPS or not _moves(log):
        return None
    return Notice(
        "coarse-resolution",
        Text("the speeds are recorded in steps of {step} m/s; small ripple is lost.", step=f"{step:.3g}"),
    )


def _motion_notice(log: SpeedLog) -> Notice | None:
    return (
        None
        if _moves(log)
        else Notice("no-motion", "the car stands all the time; no wheel speed can be judged.")
    )


def _moves(log: SpeedLog) -> bool:
    return any(
        trace.valid_count and float(np.nanmax(np.abs(trace.speed_mps))) > STANDING_MPS
        for trace in log.wheels.values()
    )
