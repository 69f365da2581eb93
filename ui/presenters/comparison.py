"""Two recordings of one car laid over each other, such as before and after a repair."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final, Literal

import numpy as np

from triage.corners import CORNERS, Corner
from triage.signals.conditioned_log import ConditionedLog
from triage.signals.running import middle_value
from triage.speed_log import BoolArray, FloatArray
from triage.texts import Text
from ui.presenters.cursor_reading import NO_VALUE, driven_between
from ui.presenters.traces import PER_CENT, TraceLine, build_line

if TYPE_CHECKING:
    from triage.run import TriageResult

Alignment = Literal["distance", "time"]

MOVING_MPS: Final = 1.0
"""A recording begins here where the car first rolls at walking pace."""

STRETCHED_STEP_S: Final = 0.5
"""Laid over by distance, samples move apart where the other drive was the quicker one; joined up to here."""


@dataclass(frozen=True, slots=True)
class ComparedWheel:
    """One wheel in both recordings; None where it cannot be told.

    Attributes
    ----------
    divergence_percent : (float or None, float or None)
        Median of the divergence without its sign, in this recording and in the other.
    losses_per_km : (float or None, float or None)
        How often the signal was lost or briefly low.
    """

    corner: Corner
    divergence_percent: tuple[float | None, float | None]
    losses_per_km: tuple[float | None, float | None]


@dataclass(frozen=True, slots=True)
class Comparison:
    """The other recording on the seconds of this one.

    Attributes
    ----------
    name : str
        Of the other recording.
    speed, divergence : tuple of TraceLine
        Of the other recording; empty where the two cannot be laid over each other.
    wheels : four ComparedWheel
    problem : str
        Why they cannot be laid over each other; empty when they can.
    """

    name: str
    by: Alignment
    speed: tuple[TraceLine, ...]
    divergence: tuple[TraceLine, ...]
    wheels: tuple[ComparedWheel, ...]
    problem: str = ""


def compare(this: TriageResult, other: TriageResult, name: str, *, by: Alignment = "distance") -> Comparison:
    """Lay another recording over this one.

    Parameters
    ----------
    by : {"distance", "time"}
        What fits: the way driven since the car first moved, or the seconds since then.
    """
    return lay_over(this, other, name, by=by, wheels=compare_wheels(this, other))


def lay_over(
    this: TriageResult,
    other: TriageResult,
    name: str,
    *,
    by: Alignment,
    wheels: tuple[ComparedWheel, ...],
) -> Comparison:
    """Do the same with the numbers of the wheels at hand; they do not depend on what fits."""
    time_s = align(this.conditioned, other.conditioned, by)
    if time_s is None:
        return Comparison(name, by, (), (), wheels, Text("in one of the two the car stands still."))
    kept = np.isfinite(time_s)
    lines = [
        tuple(_line(corner, time_s, row, kept) for corner, row in zip(CORNERS, rows, strict=True))
        for rows in (other.conditioned.speed_mps, other.conditioned.divergence_ratio)
    ]
    divergence = tuple(replace(line, factor=PER_CENT) for line in lines[1])
    return Comparison(name, by, lines[0], divergence, wheels)


def _line(corner: Corner, time_s: FloatArray, value: FloatArray, kept: BoolArray) -> TraceLine:
    line = build_line(corner, time_s[kept], value[kept])
    return replace(line, longest_step_s=max(line.longest_step_s, STRETCHED_STEP_S))


def align(this: ConditionedLog, other: ConditionedLog, by: Alignment) -> FloatArray | None:
    """Return where each sample of the other recording lies on the seconds of this one.

    Returns
    -------
    float64[N] or None
        Never falling; NaN where this recording does not reach so far. None when a car does not move.
    """
    this_from, other_from = _first_moving(this), _first_moving(other)
    if this_from is None or other_from is None:
        return None
    if by == "time":
        shifted_s: FloatArray = other.time_s + (this.time_s[this_from] - other.time_s[other_from])
        return shifted_s
    way_m, other_way_m = _way(this), _way(other)
    way_m -= way_m[this_from]
    other_way_m -= other_way_m[other_from]
    # A car that stands is at one place for many seconds; the first of them stands for all.
    onward = np.concatenate(([True], np.diff(way_m) > 0.0))
    placed_s: FloatArray = np.interp(
        other_way_m, way_m[onward], this.time_s[onward], left=np.nan, right=np.nan
    )
    return placed_s


def _first_moving(log: ConditionedLog) -> int | None:
    moving = np.flatnonzero(log.reference_mps > MOVING_MPS)
    return int(moving[0]) if moving.size else None


def _way(log: ConditionedLog) -> FloatArray:
    """Return metres since the first sample; holes are bridged, as the car drove on through them."""
    known = np.isfinite(log.reference_mps)
    speed_mps = np.interp(log.time_s, log.time_s[known], log.reference_mps[known])
    step_m = 0.5 * (speed_mps[1:] + speed_mps[:-1]) * np.diff(log.time_s)
    way_m: FloatArray = np.concatenate(([0.0], np.cumsum(np.maximum(step_m, 0.0))))
    return way_m


def compare_wheels(this: TriageResult, other: TriageResult) -> tuple[ComparedWheel, ...]:
    """Return the numbers of every wheel in both recordings."""
    off = [_usual_divergences(result.conditioned) for result in (this, other)]
    lost = [_losses_per_km(result) for result in (this, other)]
    return tuple(
        ComparedWheel(corner, (off[0][row], off[1][row]), (lost[0][row], lost[1][row]))
        for row, corner in enumerate(CORNERS)
    )


def _usual_divergences(log: ConditionedLog) -> list[float | None]:
    known = log.fresh & np.isfinite(log.divergence_ratio)
    found = (np.abs(row[kept]) for row, kept in zip(log.divergence_ratio, known, strict=True))
    return [PER_CENT * middle_value(row) if row.size else None for row in found]


def _losses_per_km(result: TriageResult) -> list[float | None]:
    way_m, _ = driven_between(result.conditioned.time_s, result.conditioned.reference_mps)
    if way_m < 1.0:
        return [None] * len(CORNERS)
    off = result.analysis.losses.lost | result.analysis.losses.low
    begins = np.count_nonzero(off[:, 1:] & ~off[:, :-1], axis=1) + off[:, 0]
    return [count / (way_m / 1000.0) for count in begins.tolist()]


def format_compared(wheel: ComparedWheel) -> tuple[str, str, str, str]:
    """Word a wheel's row: divergence here and there, losses for each kilometre here and there."""
    off = [NO_VALUE if value is None else f"{value:.2f} %" for value in wheel.divergence_percent]
    lost = [NO_VALUE if value is None else f"{value:.1f}" for value in wheel.losses_per_km]
    return (off[0], off[1], lost[0], lost[1])


def shorten(name: str, letters: int) -> str:
    """Leave out the middle of a long name; recordings of a day often differ at the end alone.

    >>> shorten("morning-drive-after-repair.csv", 20)
    'morning-dr…epair.csv'
    """
    if len(name) <= letters:
        return name
    behind = (letters - 1) // 2
    return f"{name[: letters - 1 - behind]}…{name[-behind:]}"
