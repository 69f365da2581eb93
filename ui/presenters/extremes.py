"""Lowest and highest samples of any stretch of a long line, without looking at every sample."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.speed_log import FloatArray

BLOCK: Final = 32
"""Samples in a block: the two arrays of extremes take a sixteenth of the samples' memory."""

LONG: Final = 100_000
"""Shorter lines are looked at sample by sample; that takes a tenth of a millisecond."""

FEWEST_BLOCKS: Final = 4
"""With fewer whole blocks in a stretch, the samples themselves are quicker."""

IndexArray = NDArray[np.intp]


@dataclass(frozen=True, slots=True)
class BlockExtremes:
    """Lowest and highest finite sample of every :data:`BLOCK` samples, the last block being shorter.

    Attributes
    ----------
    low, high : float64[ceil(N / BLOCK) + 1]
        NaN where no sample of the block is finite; one NaN at the end, so that every bound is an index.
    """

    low: FloatArray
    high: FloatArray


def find_block_extremes(value: FloatArray) -> BlockExtremes | None:
    """Return the extremes of the blocks of a line; None when it is not long."""
    if value.size < LONG:
        return None
    starts = np.arange(0, value.size, BLOCK)
    with np.errstate(invalid="ignore"):
        low, high = np.fmin.reduceat(value, starts), np.fmax.reduceat(value, starts)
    return BlockExtremes(np.append(low, np.nan), np.append(high, np.nan))


def find_extremes(
    value: FloatArray, blocks: BlockExtremes | None, bounds: IndexArray
) -> tuple[FloatArray, FloatArray]:
    """Return lowest and highest finite sample between every two bounds.

    Parameters
    ----------
    value : float64[N]
    blocks : BlockExtremes or None
        Those of ``value``.
    bounds : int[K + 1]
        Strictly rising, at most N.

    Returns
    -------
    low, high : float64[K]
        Exact; NaN where nothing is finite.
    """
    first, stop = int(bounds[0]), int(bounds[-1])
    with np.errstate(invalid="ignore"):
        if blocks is None or stop - first < FEWEST_BLOCKS * BLOCK * (bounds.size - 1):
            part, starts = value[first:stop], bounds[:-1] - first
            return np.fmin.reduceat(part, starts), np.fmax.reduceat(part, starts)
        return _by_blocks(value, blocks, bounds)


def _by_blocks(value: FloatArray, blocks: BlockExtremes, bounds: IndexArray) -> tuple[FloatArray, FloatArray]:
    begin, end = bounds[:-1], bounds[1:]
    whole_begin = -(-begin // BLOCK)
    whole_end = np.maximum(end // BLOCK, whole_begin)
    head = _gather(value, begin, np.minimum(whole_begin * BLOCK, end))
    tail = _gather(value, np.maximum(whole_end * BLOCK, begin), end)
    pairs = np.stack((whole_begin, whole_end), axis=1).ravel()
    empty = whole_begin == whole_end
    extremes = []
    for find, level in ((np.fmin, blocks.low), (np.fmax, blocks.high)):
        middle = find.reduceat(level, pairs)[::2]
        # Where two indices are equal, reduceat gives the element there.
        middle[empty] = np.nan
        extremes.append(find(middle, find(find.reduce(head, axis=1), find.reduce(tail, axis=1))))
    return extremes[0], extremes[1]


def _gather(value: FloatArray, begin: IndexArray, end: IndexArray) -> FloatArray:
    """Return the samples from each ``begin`` up to its ``end``, at most a block; NaN behind them."""
    at = begin[:, None] + np.arange(BLOCK)
    return np.where(at < end[:, None], value[np.minimum(at, value.size - 1)], np.nan)
