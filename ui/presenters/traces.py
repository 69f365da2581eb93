"""Lines of the plots: views on the arrays of a recording, with the unit in which they are drawn."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from triage.corners import CORNERS, Corner
from triage.signals.conditioned_log import ConditionedLog
from triage.speed_log import FloatArray, SpeedLog, SpeedTrace
from triage.units import LINEAR_SPEED_MPS
from ui.presenters.extremes import BlockExtremes, find_block_extremes

GAP_PERIODS: Final = 2.5
"""A hole longer than this many sample periods is left open in the line."""

GAP_S: Final = 0.04
"""Holes up to this length are never left open; recorders jitter that much."""

SAMPLED_STEPS: Final = 100_000
"""The usual step of a clock is taken from this many steps, spread over the recording."""

FITTED_SAMPLES: Final = 20_000
"""Samples of a line in view by which the height is chosen; more would not move it by a pixel."""

GOLDEN_RATIO: Final = 0.5 * (1.0 + math.sqrt(5.0))

PER_CENT: Final = 100.0

Range = tuple[float, float]


@dataclass(frozen=True, slots=True)
class TraceLine:
    """One wheel's line as recorded. The arrays are those of the recording, not copies.

    Attributes
    ----------
    time_s : float64[N]
        Seconds of the log, never falling.
    value : float64[N]
        Samples in SI units; NaN where there is none.
    factor : float
        The axis shows ``factor * value``.
    longest_step_s : float
        Samples further apart than this are not joined.
    blocks : BlockExtremes or None
        Lowest and highest samples of a long line.
    """

    corner: Corner
    time_s: FloatArray
    value: FloatArray
    factor: float = 1.0
    longest_step_s: float = GAP_S
    blocks: BlockExtremes | None = None


def build_speed_lines(log: SpeedLog, unit: str = "km/h") -> tuple[TraceLine, ...]:
    """Return the recorded speed of the four wheels, each on its own clock.

    Parameters
    ----------
    unit : str
        In which they are drawn; a key of :data:`triage.units.LINEAR_SPEED_MPS`.
    """
    return in_unit(tuple(_speed_line(corner, log.wheels[corner]) for corner in CORNERS), unit)


def in_unit(lines: tuple[TraceLine, ...], unit: str) -> tuple[TraceLine, ...]:
    """Return the same speeds, drawn in another unit."""
    return tuple(replace(line, factor=1.0 / LINEAR_SPEED_MPS[unit]) for line in lines)


def build_divergence_lines(conditioned: ConditionedLog) -> tuple[TraceLine, ...]:
    """Return how far each wheel is from what the others and the curve demand, in percent."""
    return tuple(
        build_line(corner, conditioned.time_s, conditioned.divergence_ratio[row], factor=PER_CENT)
        for row, corner in enumerate(CORNERS)
    )


def _speed_line(corner: Corner, trace: SpeedTrace) -> TraceLine:
    return build_line(corner, trace.time_s, trace.speed_mps)


def build_line(corner: Corner, time_s: FloatArray, value: FloatArray, *, factor: float = 1.0) -> TraceLine:
    """Return a line over these samples, ready to be drawn at any zoom."""
    return TraceLine(corner, time_s, value, factor, longest_joined_step(time_s), find_block_extremes(value))


def longest_joined_step(time_s: FloatArray) -> float:
    """Return the longest step, in seconds, over which the samples of a clock are still joined."""
    if time_s.size < 2:
        return GAP_S
    at = np.arange(0, time_s.size - 1, max(time_s.size // SAMPLED_STEPS, 1))
    return max(GAP_S, GAP_PERIODS * float(np.median(time_s[at + 1] - time_s[at])))


def fit_range(
    lines: Sequence[TraceLine],
    begin_s: float,
    end_s: float,
    *,
    least_height: float,
    floor: float | None = None,
) -> Range:
    """Return the range of values to show so that the lines in view fill the plot.

    Parameters
    ----------
    lines : sequence of TraceLine
        The lines that are visible.
    begin_s, end_s : float
        Seconds in view.
    least_height : float
        Height of the range below which the view does not zoom in.
    floor : float or None
        What the values cannot fall below; no room is spent under it.

    Returns
    -------
    (float, float)
        Lowest and highest value with a margin. One value in a thousand may stay outside, so that a
        single spike does not flatten all else.
    """
    seen = [_sampled(line, begin_s, end_s) for line in lines]
    values = np.concatenate(seen) if seen else np.empty(0)
    if values.size == 0:
        return (-0.5 * least_height, 0.5 * least_height)
    low, high = np.quantile(values, (0.001, 0.999)).tolist()
    height = max(high - low, least_height)
    margin = 0.06 * height
    bottom = 0.5 * (low + high - height) - margin
    if floor is not None and low >= floor:
        bottom = max(bottom, floor - margin)
    return (bottom, bottom + height + 2.0 * margin)


def _sampled(line: TraceLine, begin_s: float, end_s: float) -> FloatArray:
    first = int(np.searchsorted(line.time_s, begin_s))
    stop = int(np.searchsorted(line.time_s, end_s, side="right"))
    value = line.value[first:stop]
    if value.size > FITTED_SAMPLES:
        # Even steps could fall on the same point of what recurs; those of the golden ratio never do.
        value = value[(np.arange(FITTED_SAMPLES) * GOLDEN_RATIO % 1.0 * value.size).astype(np.intp)]
    return line.factor * value[np.isfinite(value)]


def values_at(lines: Sequence[TraceLine], time_s: float) -> dict[Corner, float]:
    """Return the value of each line, in the unit of the axis, at its last sample up to ``time_s``.

    Lines that have no sample there, or are open, are left out.
    """
    found: dict[Corner, float] = {}
    for line in lines:
        at = int(np.searchsorted(line.time_s, time_s, side="right")) - 1
        if at >= 0 and time_s - line.time_s[at] <= line.longest_step_s and np.isfinite(line.value[at]):
            found[line.corner] = line.factor * float(line.value[at])
    return found
