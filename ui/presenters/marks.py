"""Strips along the time axis: what the car did, and where a wheel's signal was missing."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

import numpy as np

from triage.corners import CORNERS, Corner, Place
from triage.signals.manoeuvres import Manoeuvre, ManoeuvreKind
from triage.speed_log import BoolArray, FloatArray, SpeedLog

if TYPE_CHECKING:
    from triage.run import TriageResult

LOST_DIVERGENCE_RATIO: Final = -0.5
"""A wheel under half of what the others demand is marked; brake slip of a sound wheel stays above."""

LOSS_SOURCES: Final = frozenset(
    {"dead-share", "stuck-share", "drop-out-rate", "drop-out-length", "joint-drop-out-rate"}
)
"""Measurements whose spans are losses of the signal itself."""

BAND_LABELS: Final[dict[ManoeuvreKind, tuple[str, str]]] = {
    "standstill": ("■", "stands"),
    "pull-away": ("▲", "pulls away"),
    "straight": ("↑", "straight"),
    "left": ("←", "left curve"),
    "right": ("→", "right curve"),
    "braking": ("▼", "brakes"),
    "slow-roll": ("~", "slow roll"),
}
"""Sign and words of every manoeuvre; the sign alone stands where the words do not fit."""


@dataclass(frozen=True, slots=True)
class Band:
    """A manoeuvre on the time axis."""

    kind: ManoeuvreKind
    sign: str
    label: str
    start_s: float
    stop_s: float


@dataclass(frozen=True, slots=True)
class LossLane:
    """Where the signal of one wheel was missing, or of all at once (``vehicle``).

    Attributes
    ----------
    begin_s, end_s : float64[K]
        Rising, not overlapping.
    """

    place: Place
    begin_s: FloatArray
    end_s: FloatArray


def build_bands(manoeuvres: Iterable[Manoeuvre]) -> tuple[Band, ...]:
    """Return the manoeuvres with their labels, in order of time."""
    bands = (Band(each.kind, *BAND_LABELS[each.kind], each.start_s, each.stop_s) for each in manoeuvres)
    return tuple(sorted(bands, key=lambda band: band.start_s))


def build_loss_lanes(result: TriageResult) -> tuple[LossLane, ...]:
    """Return one lane for each wheel and one for holes in the whole recording."""
    corners = [_lane(corner, _corner_spans(result, corner, row)) for row, corner in enumerate(CORNERS)]
    joint = (_recording_gaps(result.log), _finding_spans(result, "vehicle"))
    return (*corners, _lane("vehicle", joint))


def _corner_spans(result: TriageResult, corner: Corner, row: int) -> tuple[FloatArray, ...]:
    trace = result.log.wheels[corner]
    low = result.conditioned.divergence_ratio[row] < LOST_DIVERGENCE_RATIO
    return (
        find_stretches(trace.time_s, trace.invalid),
        find_stretches(result.conditioned.time_s, low),
        _finding_spans(result, corner),
    )


def _finding_spans(result: TriageResult, place: Place) -> FloatArray:
    spans = [
        span
        for finding in result.findings
        # Without a loss these findings rest on the whole drive, as value 0 says.
        if finding.source in LOSS_SOURCES and finding.corner == place and finding.value > 0.0
        for span in finding.spans
    ]
    return np.array(spans, dtype=np.float64).reshape(-1, 2)


def _recording_gaps(log: SpeedLog) -> FloatArray:
    time_s = _instants(log)
    step_s = np.diff(time_s)
    if step_s.size == 0:
        return np.empty((0, 2))
    at = np.flatnonzero(step_s > max(0.04, 2.5 * float(np.median(step_s))))
    return np.stack((time_s[at], time_s[at + 1]), axis=1)


def _instants(log: SpeedLog) -> FloatArray:
    """Instants with a valid sample; sorting those of a day takes seconds, and one clock needs none."""
    first, *others = log.wheels.values()
    if not all(other.time_s is first.time_s for other in others) or not (np.diff(first.time_s) > 0.0).all():
        return log.instants_s
    missing: BoolArray = np.logical_and.reduce([trace.invalid for trace in log.wheels.values()])
    return first.time_s[~missing]


def find_stretches(time_s: FloatArray, marked: BoolArray) -> FloatArray:
    """Return begin and end of every unbroken run of marked samples, float64[K, 2]."""
    edges = np.diff(np.concatenate(([0], marked.astype(np.int8), [0])))
    first, last = np.flatnonzero(edges == 1), np.flatnonzero(edges == -1) - 1
    return np.stack((time_s[first], time_s[last]), axis=1)


def _lane(place: Place, spans: tuple[FloatArray, ...]) -> LossLane:
    joined = np.concatenate(spans)
    if not joined.size:
        return LossLane(place, np.empty(0), np.empty(0))
    ordered = joined[np.argsort(joined[:, 0], kind="stable")]
    reach_s = np.maximum.accumulate(ordered[:, 1])
    starts = np.concatenate(([True], ordered[1:, 0] > reach_s[:-1]))
    stops = np.concatenate((starts[1:], [True]))
    return LossLane(place, ordered[starts, 0], reach_s[stops])
