"""Several wheels without a signal at once: what the living ones show must then count as the truth.

With one dead wheel the middle of four still follows the car. With two it lies half way between driving and
standing, and with three the dead ones would outvote the one that works.
"""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.corners import AXLE_PARTNER, CORNERS
from triage.signals.conditioning import CommonClock
from triage.signals.plausible_speed import FASTEST_MPS
from triage.signals.running import block_medians, quantiles_of, run_bounds
from triage.speed_log import BoolArray, FloatArray

SILENT_MPS: Final = 0.05
DRIVING_MPS: Final = 3.0
"""Above the speed below which sound sensors and control units may be silent (0.7 to 3.2 km/h)."""

TURNING_MPS: Final = 1.0
LEAST_CHANGE_MPS: Final = 0.5
SHORTEST_S: Final = 3.0
"""No brake keeps two wheels locked for so long on a drive on the road (judgement)."""

CURVED_RATIO: Final = 0.008
"""A lift or a roller bench turns both wheels of an axle alike; on the road curves part them by this much."""

FASTEST_ON_A_LIFT_MPS: Final = 8.0
"""A single wheel that turns faster is taken to drive on the road (judgement)."""

BLOCK_S: Final = 0.5
FEWEST_BLOCKS: Final = 10


def find_dead_wheels(clock: CommonClock) -> BoolArray:
    """Flag wheels that read nothing for seconds, two or three at once, while another one drives.

    Parameters
    ----------
    clock : CommonClock

    Returns
    -------
    bool[4, N]
        Never set for a single silent wheel, which the others outvote anyhow, nor for samples that are missing
        or marked invalid: those can be the bus that paused.

    Notes
    -----
    Only what happens on the road counts: where a whole axle is silent, the other one must have shown curves,
    and a wheel that alone is alive must have gone faster than one turns on a lift. The living ones must
    change their speed meanwhile, for one that is stuck at a number says nothing about the car. Where that is
    not shown nothing is flagged. Thresholds are judgement.
    """
    # Flags need an eighth of the memory that sizes of the speeds would, and memory is what costs here.
    silent = (clock.speed_mps < SILENT_MPS) & (clock.speed_mps > -SILENT_MPS)
    fastest_mps = np.fmax.reduce(clock.speed_mps, axis=0)
    turning = (fastest_mps > TURNING_MPS) & (fastest_mps < FASTEST_MPS)
    several = turning & (silent.sum(axis=0, dtype=np.int8) >= 2)
    if not several.any():
        return np.zeros(silent.shape, dtype=bool)
    long_ones = _long_ones(silent & several, clock.time_s, fastest_mps)
    return long_ones & _on_the_road(silent, clock) if long_ones.any() else long_ones


def _long_ones(flag: BoolArray, time_s: FloatArray, fastest_mps: FloatArray) -> BoolArray:
    """Keep the stretches that last, in which the car drives and changes its speed."""
    kept = np.zeros(flag.shape, dtype=bool)
    for row in range(4):
        for first, stop in zip(*run_bounds(flag[row]), strict=True):
            if time_s[stop - 1] - time_s[first] >= SHORTEST_S:
                course = fastest_mps[first:stop]
                kept[row, first:stop] = course.max() > DRIVING_MPS and np.ptp(course) > LEAST_CHANGE_MPS
    return kept


def _on_the_road(silent: BoolArray, clock: CommonClock) -> BoolArray:
    """Flag the samples whose living wheels have been seen to drive on the road, bool[N]."""
    alive = ~silent
    code = np.ravel_multi_index(tuple(alive.astype(np.intp)), (2, 2, 2, 2))
    believed = np.ones(16, dtype=bool)
    for present in range(1, 16):
        rows = np.flatnonzero([present & bit for bit in (8, 4, 2, 1)])
        if rows.size <= 2 and np.any(code == present):
            believed[present] = _drives(rows, clock, code == present)
    shown: BoolArray = believed[code]
    return shown


def _drives(rows: NDArray[np.intp], clock: CommonClock, when: BoolArray) -> bool:
    if rows.size == 1:
        fastest = np.max(clock.speed_mps[rows[0]], where=when & clock.valid[rows[0]], initial=0.0)
        return bool(fastest > FASTEST_ON_A_LIFT_MPS)
    first, second = rows.tolist()
    of_one_axle = AXLE_PARTNER[CORNERS[first]] == CORNERS[second]
    return not of_one_axle or _curves_shown(clock.speed_mps[rows], clock)


def _curves_shown(pair_mps: FloatArray, clock: CommonClock) -> bool:
    """Whether left and right differ now more to one side, now less, over the drive."""
    per_block = clock.samples_in(BLOCK_S)
    left, right = (block_medians(row, per_block=per_block)[1] for row in pair_mps)
    middle = (left + right) / 2.0
    judged = np.isfinite(middle) & (middle > DRIVING_MPS)
    if np.count_nonzero(judged) < FEWEST_BLOCKS:
        return False
    low, high = quantiles_of((right - left)[judged] / middle[judged], (0.05, 0.95))
    return bool(high - low > CURVED_RATIO)
