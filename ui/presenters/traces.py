"""Lines of the plots: arrays that can be drawn as they are."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from triage.corners import CORNERS, Corner
from triage.signals.conditioned_log import ConditionedLog
from triage.speed_log import BoolArray, FloatArray, SpeedLog, SpeedTrace
from triage.units import KMH

GAP_PERIODS = 2.5
"""A hole longer than this many sample periods is left open in the line."""

GAP_S = 0.04
"""Holes up to this length are never left open; recorders jitter that much."""

Range = tuple[float, float]


@dataclass(frozen=True, slots=True)
class TraceLine:
    """One wheel's line; missing samples are left out, and ``joined`` says where the line is broken.

    Attributes
    ----------
    time_s : float64[N]
        Seconds of the log, never falling.
    value : float64[N]
        Finite values in the unit of the axis.
    joined : bool[N]
        Whether the line goes on from sample i to sample i + 1.
    """

    corner: Corner
    time_s: FloatArray
    value: FloatArray
    joined: BoolArray


def build_speed_lines(log: SpeedLog) -> tuple[TraceLine, ...]:
    """Return the recorded speed of the four wheels in km/h, each on its own clock."""
    return tuple(_speed_line(corner, log.wheels[corner]) for corner in CORNERS)


def build_divergence_lines(conditioned: ConditionedLog) -> tuple[TraceLine, ...]:
    """Return how far each wheel is from what the others and the curve demand, in percent."""
    return tuple(
        _line(corner, conditioned.time_s, 100.0 * conditioned.divergence_ratio[row])
        for row, corner in enumerate(CORNERS)
    )


def _speed_line(corner: Corner, trace: SpeedTrace) -> TraceLine:
    return _line(corner, trace.time_s, np.where(trace.invalid, np.nan, trace.speed_mps / KMH))


def _line(corner: Corner, time_s: FloatArray, value: FloatArray) -> TraceLine:
    kept = np.flatnonzero(np.isfinite(value))
    kept_time_s = time_s[kept]
    step_s = np.diff(kept_time_s)
    limit_s = max(GAP_S, GAP_PERIODS * float(np.median(step_s))) if step_s.size else GAP_S
    joined = np.zeros(kept.size, dtype=np.bool_)
    joined[:-1] = (np.diff(kept) == 1) & (step_s <= limit_s)
    return TraceLine(corner, kept_time_s, value[kept], joined)


def thin_line(line: TraceLine, begin_s: float, end_s: float, *, columns: int) -> TraceLine:
    """Return what of a line can be seen in a picture of so many columns of pixels.

    Of every column the first, lowest, highest and last sample are kept, so a dip of a single sample in an
    hour shows, and a hole wider than a column stays open. (The plot library thins by blocks of equal sample
    count: a block across a hole joins its two sides, and with NaN for the hole the whole block is lost.)

    Parameters
    ----------
    begin_s, end_s : float
        Seconds in view; the line is cut to them and one sample beyond on either side.
    columns : int
        Pixels there are for them.

    References
    ----------
    U. Jugel, Z. Jerzak, G. Hackenbroich, V. Markl, "M4: a visualization-oriented time series data
    aggregation", Proc. VLDB Endowment 7(10), 2014: these four samples draw the same pixels as all do.
    """
    first = max(int(np.searchsorted(line.time_s, begin_s)) - 1, 0)
    stop = int(np.searchsorted(line.time_s, end_s, side="right")) + 1
    part = TraceLine(line.corner, line.time_s[first:stop], line.value[first:stop], line.joined[first:stop])
    if part.time_s.size <= 4 * columns:
        return part
    edges_s = np.linspace(begin_s, end_s, columns, endpoint=False)
    starts = np.unique(np.concatenate(([0], np.searchsorted(part.time_s, edges_s))))
    starts = starts[starts < part.time_s.size]
    return _keep_four(part, starts)


def _keep_four(part: TraceLine, starts: NDArray[np.intp]) -> TraceLine:
    lasts = np.append(starts[1:], part.time_s.size) - 1
    time_s = np.empty((starts.size, 4))
    time_s[:, 0], time_s[:, 3] = part.time_s[starts], part.time_s[lasts]
    time_s[:, 1:3] = 0.5 * (time_s[:, :1] + time_s[:, 3:])
    value = np.empty((starts.size, 4))
    value[:, 0], value[:, 3] = part.value[starts], part.value[lasts]
    value[:, 1] = np.minimum.reduceat(part.value, starts)
    value[:, 2] = np.maximum.reduceat(part.value, starts)
    joined = np.ones((starts.size, 4), dtype=np.bool_)
    joined[:, 3] = part.joined[lasts]
    return TraceLine(part.corner, time_s.ravel(), value.ravel(), joined.ravel())


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
    seen = [
        line.value[np.searchsorted(line.time_s, begin_s) : np.searchsorted(line.time_s, end_s, side="right")]
        for line in lines
    ]
    values = np.concatenate(seen) if seen else np.empty(0)
    if values.size == 0:
        return (-0.5 * least_height, 0.5 * least_height)
    low, high = (float(np.quantile(values, q)) for q in (0.001, 0.999))
    height = max(high - low, least_height)
    margin = 0.06 * height
    bottom = 0.5 * (low + high - height) - margin
    if floor is not None and low >= floor:
        bottom = max(bottom, floor - margin)
    return (bottom, bottom + height + 2.0 * margin)


def values_at(lines: Sequence[TraceLine], time_s: float) -> dict[Corner, float]:
    """Return the value of each line at its last sample up to ``time_s``; lines without one are left out."""
    found: dict[Corner, float] = {}
    for line in lines:
        at = int(np.searchsorted(line.time_s, time_s, side="right")) - 1
        if at >= 0:
            found[line.corner] = float(line.value[at])
    return found
