"""Every passage through a wheel's cut-off speed by itself: the last good and the first bad speed.

A passive sensor's voltage is proportional to speed, so that a wheel speaks above one speed and not below. On
the way down a control unit holds the last value for a while, on the way up it waits for some pulses: the one
shows the cut-off too low and the other too high, by as much as the speed changes in that time. Passages of
both directions are therefore taken apart and their middle is the cut-off.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.signals.conditioning import CommonClock
from triage.signals.running import runs, zero_for_missing
from triage.speed_log import BoolArray, FloatArray

GOOD_RATIO: Final = 0.5
"""A wheel that reads less than this share of what it should counts as bad."""

FEWEST_SAMPLES: Final = 3
DELAY_S: Final = 0.1
"""Typical time by which a control unit lags (judgement); stands for the direction that was not driven."""

SHARED_RATIO: Final = 0.01
SHARED_MPS: Final = 0.02
"""What the speed by the other wheels may be off by (tyres, cornering, steps of the numbers; judgement)."""

THRESHOLD_RATIO: Final = 0.06
"""The poles of a ring that does not run true pass the sensor's threshold at different speeds, and how many of
them a control unit takes for a speed is not known. Without it fewer than half of the cut-offs of simulated
passive sensors with a wide gap lay within the stated uncertainty."""


@dataclass(frozen=True, slots=True)
class Crossings:
    """What the passages through the cut-off say.

    Attributes
    ----------
    speed_mps, std_mps : float
        Cut-off speed and its standard uncertainty.
    last_good_mps, last_good_std_mps : float
        Speed from which on the wheel still reads, going down; the middle of the passages.
    first_bad_mps, first_bad_std_mps : float
        Highest speed at which it was still bad, coming up; the middle of the passages.
    count : int
        Passages.
    """

    speed_mps: float
    std_mps: float
    last_good_mps: float
    last_good_std_mps: float
    first_bad_mps: float
    first_bad_std_mps: float
    count: int


def find_all_crossings(
    clock: CommonClock,
    expected_mps: FloatArray,
    acceleration_mps2: FloatArray,
    *,
    near_mps: Sequence[float],
) -> tuple[Crossings | None, ...]:
    """Take apart the passages of every wheel; None for one whose rough cut-off is NaN.

    Parameters
    ----------
    expected_mps : float64[4, N]
    acceleration_mps2 : float64[N]
    near_mps : four floats
    """
    return tuple(
        find_crossings(clock, expected_mps[row], acceleration_mps2, row=row, near_mps=near)
        if np.isfinite(near)
        else None
        for row, near in enumerate(near_mps)
    )


def find_crossings(
    clock: CommonClock, expected_mps: FloatArray, acceleration_mps2: FloatArray, *, row: int, near_mps: float
) -> Crossings | None:
    """Take apart the passages of a wheel through a cut-off roughly known.

    Parameters
    ----------
    expected_mps : float64[N]
        What the wheel should read.
    acceleration_mps2 : float64[N]
        Of the car; tells up from down.
    near_mps : float
        Rough cut-off; passages are looked for between a third and twice of it.

    Returns
    -------
    Crossings or None
        None without a passage.
    """
    judged = np.isfinite(expected_mps) & clock.valid[row]
    judged &= (expected_mps > near_mps / 3.0) & (expected_mps < 2.0 * near_mps + 0.3)
    good = clock.speed_mps[row] > GOOD_RATIO * zero_for_missing(expected_mps)
    down = _passages(expected_mps, good, judged & (acceleration_mps2 < -0.05), acceleration_mps2)
    up = _passages(expected_mps, good, judged & (acceleration_mps2 > 0.05), acceleration_mps2)
    if not down.size and not up.size:
        return None
    sides = [_side(down), _side(up)]
    seen = [side for side in sides if side is not None]
    speed = float(np.mean([side[0] for side in seen]))
    scatter = float(np.sqrt(sum(side[1] ** 2 for side in seen))) / len(seen)
    lag = abs(seen[0][0] - seen[-1][0]) / 2.0 if len(seen) == 2 else seen[0][2] * DELAY_S
    # How much of the two delays cancels is not known: half of their difference, evenly spread.
    std = _with_reference(float(np.hypot(scatter, lag / np.sqrt(3.0))), speed)
    good_side, bad_side = sides[0] or seen[0], sides[1] or seen[0]
    return Crossings(
        speed_mps=speed,
        std_mps=std,
        last_good_mps=good_side[0],
        last_good_std_mps=_with_reference(good_side[1], speed),
        first_bad_mps=bad_side[0],
        first_bad_std_mps=_with_reference(bad_side[1], speed),
        count=int(down.shape[0] + up.shape[0]),
    )


def _with_reference(std_mps: float, speed_mps: float) -> float:
    """Add what the speed by the other wheels may be off by, and the cut-off itself."""
    ratio = np.hypot(SHARED_RATIO, THRESHOLD_RATIO)
    return float(np.sqrt(std_mps**2 + (ratio * speed_mps) ** 2 + SHARED_MPS**2))


def _passages(
    expected_mps: FloatArray, good: BoolArray, judged: BoolArray, acceleration_mps2: FloatArray
) -> FloatArray:
    """Speed of each passage, its width, and the size of the acceleration there, float64[P, 3]."""
    found = []
    for first, stop in runs(judged):
        speed, reads = expected_mps[first:stop], good[first:stop]
        if min(np.count_nonzero(reads), np.count_nonzero(~reads)) < FEWEST_SAMPLES:
            continue
        cut, width = _cut(speed, reads)
        near = np.argmin(np.abs(speed - cut))
        found.append((cut, width, abs(float(acceleration_mps2[first + near]))))
    return np.array(found).reshape(-1, 3)


def _cut(speed_mps: FloatArray, reads: BoolArray) -> tuple[float, float]:
    """Speed that parts reading from silent samples best, and the range in which both occur."""
    order = np.argsort(speed_mps, kind="stable")
    speed, reads = speed_mps[order], reads[order]
    wrong = np.concatenate(([0], np.cumsum(reads))) + np.concatenate((np.cumsum(~reads[::-1])[::-1], [0]))
    best = np.flatnonzero(wrong == wrong.min())
    edges = np.concatenate((speed[:1], (speed[1:] + speed[:-1]) / 2.0, speed[-1:]))
    cut = float(edges[best].mean())
    mixed = speed[(reads & (speed < cut)) | (~reads & (speed > cut))]
    step = float(np.median(np.diff(speed))) if speed.size > 1 else 0.0
    return cut, float(np.ptp(np.append(mixed, cut))) + step


def _side(passages: FloatArray) -> tuple[float, float, float] | None:
    """Middle, its standard uncertainty, and the usual acceleration."""
    if not passages.size:
        return None
    cuts, widths = passages[:, 0], passages[:, 1]
    middle = float(np.median(cuts))
    spread = 1.4826 * float(np.median(np.abs(cuts - middle))) if cuts.size > 2 else float(np.ptp(cuts)) / 2.0
    # A passage is known to about a sixth of the range in which the wheel both reads and is silent.
    each = float(np.hypot(max(spread, 0.0), np.median(widths) / 6.0))
    return middle, 1.2533 * each / np.sqrt(cuts.size), float(np.median(passages[:, 2]))
