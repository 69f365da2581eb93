"""Running statistics that are robust, fast on long logs and indifferent to missing samples."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from scipy.ndimage import median_filter

from triage.speed_log import BoolArray, FloatArray

MAD_TO_SIGMA = 1.4826
"""Standard deviation of a normal distribution in units of its median absolute deviation."""


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
    centre, medians = block_medians(value, per_block=per_block)
    present = np.isfinite(medians)
    if not present.any():
        return np.full(value.size, np.nan)
    smooth = median_filter(medians[present], size=blocks, mode="nearest")
    return np.interp(np.arange(value.size), centre[present], smooth)


def block_medians(value: FloatArray, *, per_block: int) -> tuple[FloatArray, FloatArray]:
    """Median of each block of samples, NaN where a block has none.

    Returns
    -------
    centre : float64[B]
        Index of the middle of each block.
    medians : float64[B]
    """
    per_block = max(1, min(per_block, max(value.size, 1)))
    count = max(1, value.size // per_block)
    bounds = np.linspace(0, value.size, count + 1).astype(np.intp)
    padded = np.full((count, int(np.diff(bounds).max(initial=1))), np.nan)
    lengths = np.diff(bounds)
    column = np.arange(padded.shape[1])
    padded[column < lengths[:, None]] = value
    centre = (bounds[:-1] + bounds[1:] - 1) / 2.0
    return centre, _row_medians(padded)


def _row_medians(table: FloatArray) -> FloatArray:
    """Median of the finite numbers of each row; NaN for a row with none. Faster than nanmedian."""
    ordered = np.sort(table, axis=1)
    count = np.count_nonzero(np.isfinite(ordered), axis=1)
    row = np.arange(table.shape[0])
    low = ordered[row, np.maximum((count - 1) // 2, 0)]
    high = ordered[row, np.minimum(count // 2, table.shape[1] - 1)]
    return np.where(count > 0, (low + np.where(count > 0, high, 0.0)) / 2.0, np.nan)


def robust_sigma(value: FloatArray) -> float:
    """Estimate the standard deviation by the median absolute deviation; NaN without a finite sample."""
    finite = value[np.isfinite(value)]
    if not finite.size:
        return float("nan")
    return float(MAD_TO_SIGMA * np.median(np.abs(finite - np.median(finite))))


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
    if len(table) in (3, 4) and np.isfinite(table).all():
        return _middle_of_few(table)
    return _row_medians(np.ascontiguousarray(table.T))


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


def count_of(flag: BoolArray) -> int:
    """Count the set samples, as a plain number."""
    return int(np.count_nonzero(flag))


def run_bounds(flag: BoolArray) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """First and stop index of every unbroken stretch in which the flag is set, int[R] each."""
    padded = np.zeros(flag.size + 2, dtype=bool)
    padded[1:-1] = flag
    edges = np.flatnonzero(padded[1:] != padded[:-1])
    return edges[::2], edges[1::2]


def runs(flag: BoolArray) -> list[tuple[int, int]]:
    """List the same stretches as pairs of plain numbers."""
    first, stop = run_bounds(flag)
    return list(zip(first.tolist(), stop.tolist(), strict=True))


def close_short_breaks(flag: BoolArray, longest: int) -> BoolArray:
    """Join stretches that are parted by at most ``longest`` samples."""
    edges = np.flatnonzero(np.diff(np.concatenate(([False], flag, [False])).astype(np.int8)))
    first, stop = edges[2::2], edges[1:-1:2]
    short = first - stop <= longest
    fill = np.zeros(flag.size + 1, dtype=np.int8)
    fill[stop[short]] += 1
    fill[first[short]] -= 1
    return flag | (np.cumsum(fill[:-1]) > 0)


def widen(flag: BoolArray, samples: int) -> BoolArray:
    """Set the flag also on the neighbours of every set sample."""
    wide = flag.copy()
    for shift in range(1, samples + 1):
        wide[shift:] |= flag[:-shift]
        wide[:-shift] |= flag[shift:]
    return wide
