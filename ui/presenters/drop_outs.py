"""Every loss of one wheel as rows of a table, and the pauses of the whole recording among them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

import numpy as np
from numpy.typing import NDArray

from triage.corners import CORNER_NAMES, CORNERS, Corner
from triage.signals.manoeuvres import Manoeuvre
from triage.signals.measurement import NotMeasurable, Span
from triage.speed_log import BoolArray, FloatArray
from triage.units import LINEAR_SPEED_MPS
from ui.presenters.marks import BAND_LABELS
from ui.presenters.traces import GAP_PERIODS, GAP_S

if TYPE_CHECKING:
    from triage.run import TriageResult
    from triage.signals.analysis import Analysis

LOW, FROZEN, SILENT, WITH_OTHERS, GONE, TOGETHER, PAUSE = range(1, 8)
"""What happened; of several within one loss the largest counts."""

KIND_TEXTS: Final[dict[int, str]] = {
    LOW: "briefly low",
    FROZEN: "value frozen",
    SILENT: "silent, slow",
    WITH_OTHERS: "gone, others too",
    GONE: "gone",
    TOGETHER: "all wheels",
    PAUSE: "recorder paused",
}
KIND_HELP: Final[dict[int, str]] = {
    LOW: "The wheel briefly read less than it can have turned: pulses were missing.",
    FROZEN: "The same value was repeated while the car changed speed.",
    SILENT: "Below its own lowest speed this wheel reads nothing; that is no drop-out.",
    WITH_OTHERS: "The signal was gone while that of another wheel was gone too.",
    GONE: "Only this wheel read less than half of what it must have turned, or nothing.",
    TOGETHER: "All wheels vanished or jumped at the same moment: the recorder, the bus or the unit.",
    PAUSE: "Nothing was recorded of any wheel: the recorder's, no wheel's fault.",
}
OF_ALL_WHEELS: Final = TOGETHER
"""From this kind on a row is told of all wheels."""

COLUMNS: Final = ("begin", "length", "speed", "driving", "angle", "what")
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
    driving : tuple of str
        Words for what the car did.
    """

    corner: Corner
    begin_s: FloatArray
    length_s: FloatArray
    speed_mps: FloatArray
    angle_deg: FloatArray
    kind: NDArray[np.intp]
    manoeuvre: NDArray[np.intp]
    driving: tuple[str, ...]

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
        if name == "driving":
            value = np.array([*self.driving, "~"])[self.manoeuvre]
            order = np.argsort(value, kind="stable")
            return order[::-1] if falling else order
        value = {
            "begin": self.begin_s,
            "length": self.length_s,
            "speed": self.speed_mps,
            "angle": self.angle_deg,
            "what": self.kind.astype(np.float64),
        }[name]
        return np.argsort(-value if falling else value, kind="stable")


def build_drop_outs(result: TriageResult, row: int) -> DropOuts:
    """Gather the losses of a wheel and what the whole recording lost."""
    analysis = result.analysis
    time_s, period_s = analysis.clock.time_s, analysis.clock.period_s
    kinds = _kinds(analysis, row)
    first, stop = _runs(kinds > 0)
    ends_s = time_s[stop - 1] if stop.size else np.zeros(0)
    pause_s, pause_length_s = _pauses(time_s)
    begin_s = np.concatenate((time_s[first], pause_s))
    kind = np.concatenate((_largest(kinds, first), np.full(pause_s.size, PAUSE)))
    at = np.concatenate((first, np.searchsorted(time_s, pause_s)))
    order = np.argsort(begin_s, kind="stable")
    manoeuvres = sorted(result.manoeuvres, key=lambda one: one.start_s)
    return DropOuts(
        corner=CORNERS[row],
        begin_s=begin_s[order],
        length_s=np.concatenate((ends_s - time_s[first] + period_s, pause_length_s))[order],
        speed_mps=np.concatenate((_before(analysis, row, first), _reference(analysis, pause_s)))[order],
        angle_deg=_angles(analysis, row, at, kind)[order],
        kind=kind[order],
        manoeuvre=_manoeuvre_of(begin_s[order], manoeuvres),
        driving=tuple(BAND_LABELS[one.kind][1] for one in manoeuvres),
    )


def format_cell(losses: DropOuts, row: int, column: int, *, speed_unit: str) -> str:
    """Return the text of one cell; empty where nothing is known."""
    name = COLUMNS[column]
    if name == "driving":
        return losses.driving[losses.manoeuvre[row]] if losses.manoeuvre[row] >= 0 else ""
    if name == "what":
        return KIND_TEXTS[int(losses.kind[row])]
    value, digits = {
        "begin": (losses.begin_s[row], 2),
        "length": (losses.length_s[row], 3 if losses.length_s[row] < 1.0 else 2),
        "speed": (losses.speed_mps[row] / LINEAR_SPEED_MPS[speed_unit], 1),
        "angle": (losses.angle_deg[row], 0),
    }[name]
    return f"{value:.{digits}f}" if np.isfinite(value) else ""


def build_table_text(losses: DropOuts, rows: Sequence[int], titles: Sequence[str], *, speed_unit: str) -> str:
    """Return rows as text with tabs between the cells and the titles on top, as a spreadsheet takes it."""
    lines = ["\t".join(("wheel", *titles))]
    for row in rows:
        wheel = "all" if losses.kind[row] >= OF_ALL_WHEELS else losses.corner
        cells = (format_cell(losses, row, column, speed_unit=speed_unit) for column in range(len(COLUMNS)))
        lines.append("\t".join((wheel, *cells)))
    return "\n".join(lines) + "\n"


def build_summary(losses: DropOuts) -> str:
    """Return in a sentence how many losses there are, and whose they are."""
    joint = losses.kind >= OF_ALL_WHEELS
    own = ~joint & (losses.kind != SILENT)
    lost_s, joint_s = float(losses.length_s[own].sum()), float(losses.length_s[joint].sum())
    wheel = CORNER_NAMES[losses.corner]
    if own.any():
        one = f"{_counted(own, 'loss', 'losses')} of the {wheel} wheel, {lost_s:.2f} s in all"
    else:
        one = f"No loss of the {wheel} wheel"
    slow = losses.kind == SILENT
    silent = f"; {_counted(slow, 'silence', 'silences')} below its lowest speed" if slow.any() else ""
    if not joint.any():
        return f"{one}{silent}."
    gaps = _counted(joint, "place", "places")
    return f"{one}{silent}. At {gaps} ({joint_s:.2f} s) all wheels are missing: not this wheel's fault."


def _counted(flag: BoolArray, one: str, several: str) -> str:
    count = int(np.count_nonzero(flag))
    return f"{count} {one if count == 1 else several}"


def _kinds(analysis: Analysis, row: int) -> NDArray[np.intp]:
    losses = analysis.losses
    lost = losses.lost[row]
    kinds = np.zeros(lost.size, dtype=np.intp)
    for kind, flag in (
        (LOW, losses.low[row]),
        (FROZEN, losses.frozen[row]),
        (WITH_OTHERS, lost),
        (GONE, losses.alone[row]),
        (SILENT, (lost | losses.alone[row]) & analysis.cut_offs[row].silent),
    ):
        kinds[flag & losses.moving[row]] = kind
    kinds[losses.joint] = TOGETHER
    return kinds


def _runs(flag: BoolArray) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    edges = np.diff(np.concatenate(([0], flag.astype(np.int8), [0])))
    return np.flatnonzero(edges == 1), np.flatnonzero(edges == -1)


def _largest(kinds: NDArray[np.intp], first: NDArray[np.intp]) -> NDArray[np.intp]:
    largest: NDArray[np.intp] = np.maximum.reduceat(kinds, first) if first.size else kinds[:0]
    return largest


def _pauses(time_s: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Begins and lengths of the holes in which no wheel was recorded, as the plots leave them open."""
    step_s = np.diff(time_s)
    if not step_s.size:
        return np.zeros(0), np.zeros(0)
    at = np.flatnonzero(step_s > max(GAP_S, GAP_PERIODS * float(np.median(step_s))))
    return time_s[at], step_s[at]


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
