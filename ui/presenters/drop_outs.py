"""Every loss of one wheel as rows of a table, and the pauses of the whole recording among them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

import numpy as np
from numpy.typing import NDArray

from triage.corners import CORNER_NAMES, CORNERS, Corner
from triage.signals.manoeuvres import Manoeuvre, ManoeuvreKind
from triage.signals.measurement import NotMeasurable, Span
from triage.speed_log import BoolArray, FloatArray
from triage.texts import Text, joined
from triage.units import LINEAR_SPEED_MPS
from ui.presenters.loss_kinds import (
    FROZEN,
    GONE,
    LOW,
    OF_ALL_WHEELS,
    PAUSE,
    SILENT,
    SLIGHT,
    TOGETHER,
    WITH_OTHERS,
    find_pauses,
    find_stretches_lost,
)
from ui.presenters.marks import BAND_LABELS

if TYPE_CHECKING:
    from triage.run import TriageResult
    from triage.signals.analysis import Analysis

KIND_TEXTS: Final[dict[int, str]] = {
    LOW: Text("briefly low"),
    FROZEN: Text("value frozen"),
    SILENT: Text("silent, slow"),
    WITH_OTHERS: Text("gone, others too"),
    GONE: Text("gone"),
    TOGETHER: Text("all wheels"),
    PAUSE: Text("recorder paused"),
}
KIND_HELP: Final[dict[int, str]] = {
    LOW: Text("The wheel briefly read less than it can have turned: pulses were missing."),
    FROZEN: Text(
        "The same value was repeated while the car changed speed or the road stirred the other wheels."
    ),
    SILENT: Text("Below its own lowest speed this wheel reads nothing; that is no drop-out."),
    WITH_OTHERS: Text("The signal was gone while that of another wheel was gone too."),
    GONE: Text("Only this wheel read less than half of what it must have turned, or nothing."),
    TOGETHER: Text("All wheels vanished or jumped at the same moment: the recorder, the bus or the unit."),
    PAUSE: Text("Nothing was recorded of any wheel: the recorder's, no wheel's fault."),
}
COLUMNS: Final = ("begin", "length", "speed", "driving", "angle", "what")
DRIVING_ORDER: Final[tuple[ManoeuvreKind, ...]] = (
    "standstill",
    "slow-roll",
    "pull-away",
    "straight",
    "left",
    "right",
    "braking",
)
"""As a drive goes, from the stand to the brake; the words of any language would mix it up."""

AROUND_S: Final = 2.0
"""Seconds shown on either side of a loss that is jumped to."""


@dataclass(frozen=True, slots=True)
class DropOuts:
    """Losses of one wheel in order of time; arrays of one length K.

    Attributes
    ----------
    begin_s, length_s : float64[K]
        Seconds of the log, and how long.
    speed_mps : float64[K]
        Speed of the wheel just before; NaN where nothing is known.
    angle_deg : float64[K]
        Angle of the ring map at its beginning; NaN where there is none.
    kind : int[K]
        Key of :data:`KIND_TEXTS`.
    manoeuvre : int[K]
        Row of ``driving``; -1 where none.
    driving : tuple of ManoeuvreKind
        What the car did.
    """

    corner: Corner
    begin_s: FloatArray
    length_s: FloatArray
    speed_mps: FloatArray
    angle_deg: FloatArray
    kind: NDArray[np.intp]
    manoeuvre: NDArray[np.intp]
    driving: tuple[ManoeuvreKind, ...]

    @property
    def count(self) -> int:
        """Number of rows."""
        return int(self.begin_s.size)

    def span_around(self, row: int) -> Span:
        """Return the seconds to show for a row."""
        begin_s = float(self.begin_s[row])
        return begin_s - AROUND_S, begin_s + float(self.length_s[row]) + AROUND_S

    def order_by(self, column: int, *, falling: bool = False) -> NDArray[np.intp]:
        """Return the rows in the order of a column; equal ones stay in order of time, unknown ones last."""
        name = COLUMNS[column]
        value = {
            "begin": self.begin_s,
            "length": self.length_s,
            "speed": self.speed_mps,
            "driving": self._driving_ranks(),
            "angle": self.angle_deg,
            "what": self.kind.astype(np.float64),
        }[name]
        return np.argsort(-value if falling else value, kind="stable")

    def _driving_ranks(self) -> FloatArray:
        # The last entry is found by the row -1.
        ranks = [float(DRIVING_ORDER.index(kind)) for kind in self.driving]
        return np.array([*ranks, np.nan])[self.manoeuvre]


def build_drop_outs(result: TriageResult, row: int) -> DropOuts:
    """Gather the losses of a wheel and what the whole recording lost."""
    analysis = result.analysis
    lost, pauses = find_stretches_lost(analysis, row), find_pauses(analysis)
    begin_s = np.concatenate((lost.begin_s, pauses.begin_s))
    kind = np.concatenate((lost.kind, pauses.kind))
    order = np.argsort(begin_s, kind="stable")
    at = np.concatenate((lost.first, pauses.first))
    speed_mps = np.concatenate((_before(analysis, row, lost.first), _reference(analysis, pauses.begin_s)))
    manoeuvres = sorted(result.manoeuvres, key=lambda one: one.start_s)
    return DropOuts(
        corner=CORNERS[row],
        begin_s=begin_s[order],
        length_s=np.concatenate((lost.length_s, pauses.length_s))[order],
        speed_mps=speed_mps[order],
        angle_deg=_angles(analysis, row, at, kind)[order],
        kind=kind[order],
        manoeuvre=_manoeuvre_of(begin_s[order], manoeuvres),
        driving=tuple(one.kind for one in manoeuvres),
    )


def format_cell(losses: DropOuts, row: int, column: int, *, speed_unit: str) -> str:
    """Return the text of one cell; empty where nothing is known."""
    name = COLUMNS[column]
    if name == "driving":
        at = losses.manoeuvre[row]
        return BAND_LABELS[losses.driving[at]][1] if at >= 0 else ""
    if name == "what":
        return KIND_TEXTS[int(losses.kind[row])]
    value, digits = {
        "begin": (losses.begin_s[row], 2),
        "length": (losses.length_s[row], 3 if losses.length_s[row] < 1.0 else 2),
        "speed": (losses.speed_mps[row] / LINEAR_SPEED_MPS[speed_unit], 1),
        "angle": (losses.angle_deg[row], 0),
    }[name]
    return f"{value:.{digits}f}" if np.isfinite(value) else ""


def is_of_all_wheels(losses: DropOuts, row: int) -> bool:
    """Return whether a row is no wheel's own: all were lost, or nothing was recorded."""
    return bool(losses.kind[row] >= OF_ALL_WHEELS)


def build_summary(losses: DropOuts) -> str:
    """Return in a sentence how many losses there are, and whose they are."""
    joint = losses.kind >= OF_ALL_WHEELS
    own = ~joint & ~np.isin(losses.kind, SLIGHT)
    lost_s, joint_s = float(losses.length_s[own].sum()), float(losses.length_s[joint].sum())
    wheel = CORNER_NAMES[losses.corner]
    told = [Text("No drop-out of the {wheel} wheel", wheel=wheel)]
    if own.any():
        count, lost = _counted(own, Text("1 drop-out"), Text("{n} drop-outs")), f"{lost_s:.2f}"
        told = [
            Text("{drop_outs} of the {wheel} wheel, {lost} s in all", drop_outs=count, wheel=wheel, lost=lost)
        ]
    low, slow = losses.kind == LOW, losses.kind == SILENT
    if low.any():
        dips = _counted(low, Text("1 dip"), Text("{n} dips"))
        told.append(Text("{dips} in which it read briefly too low", dips=dips))
    if slow.any():
        silences = _counted(slow, Text("1 silence"), Text("{n} silences"))
        told.append(Text("{silences} below its lowest speed", silences=silences))
    whole = Text("{losses}.", losses=joined("; ", told))
    if not joint.any():
        return whole
    return Text(
        "{losses} At {places} ({lost} s) all wheels are missing: not this wheel's fault.",
        losses=whole,
        places=_counted(joint, Text("1 place"), Text("{n} places")),
        lost=f"{joint_s:.2f}",
    )


def _counted(flag: BoolArray, one: Text, several: Text) -> Text:
    count = int(np.count_nonzero(flag))
    return one if count == 1 else Text(several, n=count)


def _before(analysis: Analysis, row: int, first: NDArray[np.intp]) -> FloatArray:
    """Speed of the wheel at its last sample before, else what the others demand there."""
    before = np.maximum(first - 1, 0)
    own = analysis.clock.speed_mps[row, before]
    speed: FloatArray = np.where(np.isfinite(own), own, analysis.reference.expected_mps[row, before])
    return speed


def _reference(analysis: Analysis, begin_s: FloatArray) -> FloatArray:
    if not begin_s.size:
        return np.zeros(0)
    speed: FloatArray = analysis.reference.reference_mps[np.searchsorted(analysis.clock.time_s, begin_s)]
    return speed


def _angles(analysis: Analysis, row: int, at: NDArray[np.intp], kind: NDArray[np.intp]) -> FloatArray:
    ring = analysis.rings[row]
    if isinstance(ring, NotMeasurable):
        return np.full(at.size, np.nan)
    return np.where(kind >= OF_ALL_WHEELS, np.nan, 360.0 * (ring.angle_rev[at] % 1.0))


def _manoeuvre_of(begin_s: FloatArray, manoeuvres: Sequence[Manoeuvre]) -> NDArray[np.intp]:
    if not manoeuvres:
        return np.full(begin_s.size, -1, dtype=np.intp)
    starts_s = np.array([one.start_s for one in manoeuvres])
    stops_s = np.array([one.stop_s for one in manoeuvres])
    at = np.searchsorted(starts_s, begin_s, side="right") - 1
    inside = (at >= 0) & (begin_s <= stops_s[at])
    return np.where(inside, at, -1)
