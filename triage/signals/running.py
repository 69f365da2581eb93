"""Running statistics that are robust, fast on long logs and indifferent to missing samples."""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import ArrayLike, NDArray

from triage.side_by_side import parts_of
from triage.speed_log import BoolArray, FloatArray

MAD_TO_SIGMA = 1.4826
"""Standard deviation of a normal distribution in units of its median absolute deviation."""

ENOUGH_SAMPLES: Final = 30_000
"""A noise level known from so many samples is good to a per cent; more only cost time."""

SLICES: Final = 4096
SLICED_FROM: Final = 8192
SAMPLED: Final = 1024
"""Slices into which numbers are counted, few enough for a quick memory; numbers from which on it pays; and
numbers that tell the usual range."""


def slow_course(value: FloatArray, *, per_block: int, blocks: int = 5) -> FloatArray:
    """Follow the slow course of a series, deaf to short disturbances.

    The series is cut into blocks, each is replaced by its median, the medians are median-filtered and
    joined by lines. Costs one pass however wide the window is.

    Parameters
    ----------
    value : float64[N]
        NaN marks missing samples.
    per_block : int
        Samples of one block.
    blocks : int
        Odd number of blocks in the median filter.

    Returns
    -------
    float64[N]
        NaN everywhere when no sample is present.
    """
    from scipy.ndimage import median_filter  # noqa: PLC0415 - the window starts without it

    centre, medians = block_medians(value, per_block=per_block)
    present = np.isfinite(medians)
    if not present.any():
        return np.full(value.size, np.nan)
    smooth = median_filter(medians[present], size=blocks, mode="nearest")
    return np.interp(np.arange(value.size), centre[present], smooth)


def block_bounds(size: int, per_block: int) -> NDArray[np.intp]:
    """First index of each of about equal blocks, and the end of the last."""
    per_block = max(1, min(per_block, max(size, 1)))
    count = max(1, size // per_block)
    return np.linspace(0, size, count + 1).astype(np.intp)


def block_medians(value: FloatArray, *, per_block: int) -> tuple[FloatArray, FloatArray]:
    """Median of each block of samples, NaN where a block has none.

    Returns
    -------
    centre : float64[B]
        Index of the middle of each block.
    medians : float64[B]
    """
    bounds = block_bounds(value.size, per_block)
    centre = (bounds[:-1] + bounds[1:] - 1) / 2.0
    return centre, _row_medians(_in_rows(value, bounds))


def _in_rows(value: FloatArray, bounds: NDArray[np.intp]) -> FloatArray:
    """Lay blocks, whose lengths differ by one at most, below each other; NaN fills the shorter ones."""
    lengths = np.diff(bounds)
    width = int(lengths.max(initial=1))
    if not value.size:
        return np.full((lengths.size, width), np.nan)
    if lengths.size * width == value.size:
        return value.reshape(lengths.size, width)
    # Rows of a view are copied whole, where single indices would each be looked up. The last block is of the
    # longest ones, so that no row reaches beyond the end.
    table: FloatArray = sliding_window_view(value, width)[bounds[:-1]]
    table[lengths < width, -1] = np.nan
    return table


def _row_medians(table: FloatArray) -> FloatArray:
    """Median of the finite numbers of each row; NaN for a row with none. Faster than nanmedian."""
    ordered = np.sort(table, axis=1)
    last = table.shape[1] - 1
    broken = np.flatnonzero(~(np.isfinite(ordered[:, 0]) & np.isfinite(ordered[:, last])))
    with np.errstate(invalid="ignore"):
        middle: FloatArray = (ordered[:, last // 2] + ordered[:, (last + 1) // 2]) / 2.0
    if broken.size:
        middle[broken] = _middle_of_finite(ordered[broken])
    return middle


def _middle_of_finite(ordered: FloatArray) -> FloatArray:
    """Median of the finite numbers of each sorted row, which stand before all others."""
    count = np.count_nonzero(np.isfinite(ordered), axis=1)
    row = np.arange(ordered.shape[0])
    low = ordered[row, np.maximum((count - 1) // 2, 0)]
    high = ordered[row, np.minimum(count // 2, ordered.shape[1] - 1)]
    return np.where(count > 0, (low + np.where(count > 0, high, 0.0)) / 2.0, np.nan)


def robust_sigma(value: FloatArray) -> float:
    """Estimate the standard deviation by the median absolute deviation; NaN without a finite sample."""
    finite = value[np.isfinite(value)]
    if not finite.size:
        return float("nan")
    return MAD_TO_SIGMA * middle_value(np.abs(finite - middle_value(finite)))


def middle_value(value: FloatArray) -> float:
    """Median of finite numbers, N > 0; what ``np.median`` gives, several times quicker."""
    half = value.size // 2
    if value.size % 2:
        return float(_of_rank(value, np.array([half]))[0])
    lower, upper = _of_rank(value, np.array([half - 1, half])).tolist()
    return float((lower + upper) / 2.0)


def quantiles_of(value: FloatArray, probability: ArrayLike) -> FloatArray:
    """Quantiles of finite numbers, N > 0, by linear interpolation between the ranks.

    Gives what ``np.quantile`` gives, several times quicker.
    """
    place = np.asarray(probability, dtype=float) * (value.size - 1)
    below = np.floor(place).astype(np.intp)
    low, high = _of_rank(value, np.stack((below, np.minimum(below + 1, value.size - 1))))
    part = place - below
    # two forms, as in numpy, so that a quantile between equal numbers is that number
    quantiles: FloatArray = np.where(
        part < 0.5, low + (high - low) * part, high - (high - low) * (1.0 - part)
    )
    return quantiles


def stride_of(samples: int) -> int:
    """Every how many-th sample is enough to know a noise level, or the usual speeds."""
    return max(1, samples // ENOUGH_SAMPLES)


def _of_rank(value: FloatArray, rank: NDArray[np.intp]) -> FloatArray:
    """Give the numbers at some ranks, ``np.sort(value)[rank]``, without putting all in order.

    Counting the numbers in even slices of their usual range tells in which slices the ranks lie, and only
    what is in those is looked at further. What lies beyond that range counts to the outermost slices.
    """
    low, scale = _usual_range(value) if value.size >= SLICED_FROM else (0.0, np.inf)
    if not 0.0 < scale < np.inf or np.isnan(value.min()):
        return np.asarray(np.sort(value)[rank])
    height = value - low
    height *= scale
    np.clip(height, 0.0, SLICES, out=height)  # rounded, but never in another order
    slice_of = height.astype(np.intp)
    count = np.bincount(slice_of)
    wanted = np.searchsorted(np.cumsum(count), rank, side="right")
    kept = np.zeros(count.size, dtype=bool)
    kept[wanted] = True
    left_out = np.cumsum(np.where(kept, 0, count))
    few = value[np.flatnonzero(kept[slice_of])]
    rank = rank - left_out[wanted]
    return _of_rank(few, rank) if few.size < value.size // 2 else np.asarray(np.sort(few)[rank])


def _usual_range(value: FloatArray) -> tuple[float, float]:
    """Low end of the range of most of the numbers, and slices over its width."""
    some = np.sort(value[:: value.size // SAMPLED])
    low, high = float(some[some.size // 50]), float(some[-1 - some.size // 50])
    with np.errstate(over="ignore", divide="ignore", invalid="ignore"):
        return low, float(np.float64(SLICES) / (np.float64(high) - low))


def zero_for_missing(value: FloatArray) -> FloatArray:
    """Give 0 for every NaN; the same array, not a copy, where there is none."""
    missing = np.isnan(value)
    return np.where(missing, 0.0, value) if missing.any() else value


def middle_of(table: FloatArray) -> FloatArray:
    """Median down the columns, deaf to NaN; NaN where a column has no number.

    Parameters
    ----------
    table : float64[M, N]
        M small, N long.

    Returns
    -------
    float64[N]
    """
    if len(table) not in (3, 4):
        return _row_medians(np.ascontiguousarray(table.T))
    middle = _middle_of_few(table)
    broken = np.flatnonzero(~np.isfinite(table).all(axis=0))
    if broken.size:
        middle[broken] = _row_medians(np.ascontiguousarray(table[:, broken].T))
    return middle


def middle_of_others(table: FloatArray) -> FloatArray:
    """Median of the three other rows for each of four, deaf to NaN as :func:`middle_of`.

    Parameters
    ----------
    table : float64[4, N]

    Returns
    -------
    float64[4, N]
    """
    low = np.minimum(table[0::2], table[1::2])
    high = np.maximum(table[0::2], table[1::2])
    others = np.empty_like(table)
    for row in range(4):
        pair = 1 - row // 2
        np.minimum(table[row ^ 1], high[pair], out=others[row])
        np.maximum(others[row], low[pair], out=others[row])
    broken = np.flatnonzero(~np.isfinite(table).all(axis=0))
    for row in range(4 if broken.size else 0):
        others[row, broken] = middle_of(np.delete(table[:, broken], row, axis=0))
    return others


def _middle_of_few(table: FloatArray) -> FloatArray:
    """Median of three or four rows by comparisons alone, several times quicker than sorting every column."""
    first, second, third = table[:3]
    low, high = np.minimum(first, second), np.maximum(first, second)
    if len(table) == 3:
        middle: FloatArray = np.maximum(low, np.minimum(high, third))
        return middle
    low_too, high_too = np.minimum(third, table[3]), np.maximum(third, table[3])
    pair: FloatArray = (np.maximum(low, low_too) + np.minimum(high, high_too)) / 2.0
    return pair


def rate_of(value: FloatArray, time_s: FloatArray) -> FloatArray:
    """Return the change per second at every sample, float64[N], as ``numpy.gradient`` does.

    A dozen results on the way are laid aside; part by part they stay in a quick memory.
    """
    steps_s = np.diff(time_s)
    if value.size < 3 or (steps_s == steps_s[0]).all():
        even: FloatArray = np.gradient(value, time_s)
        return even
    rate = np.empty(value.size)
    rate[0], rate[-1] = (value[1] - value[0]) / steps_s[0], (value[-1] - value[-2]) / steps_s[-1]
    for part in parts_of(value.size - 2):
        back_s, on_s = steps_s[:-1][part], steps_s[1:][part]
        change = -on_s / (back_s * (back_s + on_s)) * value[:-2][part]
        change += (on_s - back_s) / (back_s * on_s) * value[1:-1][part]
        change += back_s / (on_s * (back_s + on_s)) * value[2:][part]
        rate[1:-1][part] = change
    return rate


def rate_at(value: FloatArray, time_s: FloatArray, samples: NDArray[np.intp]) -> FloatArray:
    """Return the same at some samples alone, float64[M]; a series of fewer than three has no rate, NaN."""
    if value.size < 3:
        return np.full(samples.size, np.nan)
    middle = np.clip(samples, 1, value.size - 2)
    at_s, here = time_s[middle], value[middle]
    back_s, on_s = at_s - time_s[middle - 1], time_s[middle + 1] - at_s
    back = (here - value[middle - 1]) / back_s
    onward = (value[middle + 1] - here) / on_s
    rate: FloatArray = (back * on_s + onward * back_s) / (back_s + on_s)
    rate[samples == 0] = back[samples == 0]
    last = samples == value.size - 1
    rate[last] = onward[last]
    return rate


def count_of(flag: BoolArray) -> int:
    """Count the set samples, as a plain number."""
    return int(np.count_nonzero(flag))


def run_bounds(flag: BoolArray) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """First and stop index of every unbroken stretch in which the flag is set, int[R] each."""
    changes = np.flatnonzero(flag[1:] != flag[:-1]) + 1
    edges = np.concatenate((np.flatnonzero(flag[:1]), changes, np.flatnonzero(flag[-1:]) + flag.size))
    return edges[::2], edges[1::2]


def runs(flag: BoolArray) -> list[tuple[int, int]]:
    """List the same stretches as pairs of plain numbers."""
    first, stop = run_bounds(flag)
    return list(zip(first.tolist(), stop.tolist(), strict=True))


def close_short_breaks(flag: BoolArray, longest: int) -> BoolArray:
    """Join stretches that are parted by at most ``longest`` samples."""
    first, stop = run_bounds(flag)
    begin, length = stop[:-1], first[1:] - stop[:-1]
    closed = flag.copy()
    for step in range(min(longest, int(length.max(initial=0)))):
        closed[begin[(length > step) & (length <= longest)] + step] = True
    return closed


def widen(flag: BoolArray, samples: int) -> BoolArray:
    """Set the flag also on the neighbours of every set sample."""
    wide, reached = flag.copy(), 0
    while reached < samples:
        # every flag has reached so far by now, to one side at least, that this shift leaves no hole
        shift = min(reached + 1, samples - reached)
        narrow = wide.copy()
        wide[shift:] |= narrow[:-shift]
        wide[:-shift] |= narrow[shift:]
        reached += shift
    return wide
