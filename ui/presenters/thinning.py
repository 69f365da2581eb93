"""What of a line can be seen in a picture of so many columns of pixels."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from triage.speed_log import BoolArray, FloatArray
from ui.presenters.extremes import IndexArray, find_extremes
from ui.presenters.traces import TraceLine


@dataclass(frozen=True, slots=True)
class DrawnLine:
    """Points to be joined by straight lines.

    Attributes
    ----------
    time_s : float64[N]
        Seconds of the log, never falling.
    value : float64[N]
        Finite values in the unit of the axis.
    joined : bool[N]
        Whether the line goes on from point i to point i + 1.
    """

    time_s: FloatArray
    value: FloatArray
    joined: BoolArray


def thin_line(line: TraceLine, begin_s: float, end_s: float, *, columns: int) -> DrawnLine:
    """Return what of a line can be seen.

    Of every column the first, lowest, highest and last sample are kept, so a dip of a single sample in a
    day shows, and a hole wider than a column stays open. (The plot library thins by blocks of equal sample
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
    stop = min(int(np.searchsorted(line.time_s, end_s, side="right")) + 1, line.time_s.size)
    if stop - first <= 4 * columns:
        return _every_sample(line, first, stop)
    edges_s = np.linspace(begin_s, end_s, columns, endpoint=False)
    inner = np.searchsorted(line.time_s, edges_s)
    inner = inner[(inner > first) & (inner < stop)]
    return _keep_four(line, np.unique(np.concatenate(([first], inner, [stop]))))


def _every_sample(line: TraceLine, first: int, stop: int) -> DrawnLine:
    kept = first + np.flatnonzero(np.isfinite(line.value[first:stop]))
    joined = np.zeros(kept.size, dtype=np.bool_)
    time_s = line.time_s[kept]
    joined[:-1] = (np.diff(kept) == 1) & (np.diff(time_s) <= line.longest_step_s)
    return DrawnLine(time_s, line.factor * line.value[kept], joined)


def _keep_four(line: TraceLine, bounds: IndexArray) -> DrawnLine:
    low, high = find_extremes(line.value, line.blocks, bounds)
    filled = np.isfinite(low)
    low, high = low[filled], high[filled]
    first, after = bounds[:-1][filled], bounds[1:][filled]
    time_s = np.empty((first.size, 4))
    time_s[:, 0], time_s[:, 3] = line.time_s[first], line.time_s[after - 1]
    time_s[:, 1:3] = 0.5 * (time_s[:, :1] + time_s[:, 3:])
    value = np.empty((first.size, 4))
    value[:, 0], value[:, 1], value[:, 2], value[:, 3] = line.value[first], low, high, line.value[after - 1]
    # A column may begin or end in a hole; what is drawn for it stays within the column.
    for edge in (0, 3):
        value[:, edge] = np.where(np.isfinite(value[:, edge]), value[:, edge], low)
    joined = np.ones((first.size, 4), dtype=np.bool_)
    joined[:, 3] = _goes_on(line, after)
    return DrawnLine(time_s.ravel(), line.factor * value.ravel(), joined.ravel())


def _goes_on(line: TraceLine, at: IndexArray) -> BoolArray:
    """Whether the line is joined from the sample before each index to the one there."""
    next_at = np.minimum(at, line.time_s.size - 1)
    finite = np.isfinite(line.value[at - 1]) & np.isfinite(line.value[next_at])
    joined: BoolArray = (
        finite & (at < line.time_s.size) & (line.time_s[next_at] - line.time_s[at - 1] <= line.longest_step_s)
    )
    return joined
