"""Strips along the time axis: what the car did, and where a wheel's signal was missing."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Final

import numpy as np

from triage.corners import CORNERS, Corner, Place
from triage.signals.manoeuvres import Manoeuvre, ManoeuvreKind
from triage.speed_log import FloatArray
from triage.texts import Text
from ui.presenters.loss_kinds import OF_ALL_WHEELS, SLIGHT, Stretches, find_pauses, find_stretches_lost

if TYPE_CHECKING:
    from triage.signals.analysis import Analysis

BAND_LABELS: Final[dict[ManoeuvreKind, tuple[str, str]]] = {
    "standstill": ("■", Text("stands")),
    "pull-away": ("▲", Text("pulls away")),
    "straight": ("↑", Text("straight")),
    "left": ("←", Text("left curve")),
    "right": ("→", Text("right curve")),
    "braking": ("▼", Text("brakes")),
    "slow-roll": ("~", Text("slow roll")),
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
        Drop-outs, rising, not overlapping.
    dip_begin_s, dip_end_s : float64[L]
        Where the wheel read briefly too low or was silent below its lowest speed; the same.
    """

    place: Place
    begin_s: FloatArray
    end_s: FloatArray
    dip_begin_s: FloatArray = field(default_factory=lambda: np.empty(0))
    dip_end_s: FloatArray = field(default_factory=lambda: np.empty(0))


def build_bands(manoeuvres: Iterable[Manoeuvre]) -> tuple[Band, ...]:
    """Return the manoeuvres with their labels, in order of time."""
    bands = (Band(each.kind, *BAND_LABELS[each.kind], each.start_s, each.stop_s) for each in manoeuvres)
    return tuple(sorted(bands, key=lambda band: band.start_s))


def build_loss_lanes(analysis: Analysis) -> tuple[LossLane, ...]:
    """Return one lane for each wheel and one for all: what the table of losses tells, mark by mark."""
    found = [find_stretches_lost(analysis, row) for row in range(len(CORNERS))]
    corners = [_lane(corner, lost) for corner, lost in zip(CORNERS, found, strict=True)]
    # Every wheel tells of what all lost; one of them is enough.
    joint = found[0]
    together = joint.spans(joint.kind >= OF_ALL_WHEELS)
    pauses = find_pauses(analysis)
    holes = np.concatenate((together, pauses.spans(pauses.kind > 0)))
    return (*corners, LossLane("vehicle", *_edges(holes)))


def _lane(corner: Corner, lost: Stretches) -> LossLane:
    slight = np.isin(lost.kind, SLIGHT)
    own = ~slight & (lost.kind < OF_ALL_WHEELS)
    return LossLane(corner, *_edges(lost.spans(own)), *_edges(lost.spans(slight)))


def _edges(spans: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return begins and ends in order, overlapping spans joined."""
    if not spans.size:
        return np.empty(0), np.empty(0)
    ordered = spans[np.argsort(spans[:, 0], kind="stable")]
    reach_s = np.maximum.accumulate(ordered[:, 1])
    starts = np.concatenate(([True], ordered[1:, 0] > reach_s[:-1]))
    stops = np.concatenate((starts[1:], [True]))
    return ordered[starts, 0], reach_s[stops]
