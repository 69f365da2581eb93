"""Where a wheel's signal is lost, briefly low, briefly high or frozen, and whether it is alone in that."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from triage.side_by_side import map_side_by_side
from triage.signals.conditioning import CommonClock
from triage.signals.frozen_values import find_frozen
from triage.signals.residuals import Residuals
from triage.signals.running import close_short_breaks, run_bounds, widen, zero_for_missing
from triage.signals.vehicle_reference import VehicleReference
from triage.speed_log import BoolArray, FloatArray

MOVING_MPS = 1.5
"""Losses are judged from here on; many sound sensors and control units are silent below (0.7 to 3.2 km/h)."""

LOST_BELOW = 0.5
"""A wheel that reads less than this share of what it should has lost its signal; no tyre slips so much."""

DISTURBED_SIGMA = 6.0
DISTURBED_LEAST = 0.01
ROUGH_FACTOR = 4.0
"""A brief deviation counts when it stands out of the usual noise, of one per cent, and of what the road does
to the other wheels in the same moment."""

FEWEST_JUMPS = 20
"""From fewer jumps between resting values a unit's step is not judged."""

START_S = 1.0
"""A wheel without a value in the first second of a log was not lost, it had not begun (judgement)."""

SLOWER_SHARE = 0.7
SLOWER_MISSED = 3.0
"""A wheel with less than this share of the instants comes in a slower message; it misses a sample when it has
none for three of its own periods."""

HARD_BRAKING_MPS2 = -2.5
SLIP_AROUND_S = 0.3
"""From this deceleration on, and so long before and after, single wheels may slip (judgement)."""

BRAKING_MPS2 = -0.8
SLIP_LASTS_S = 0.04
"""On a slippery road brake control works at any deceleration. A tyre takes hundredths of a second to slip and
to roll again, so that under braking a shortfall of several samples and this long is no lost pole
(judgement)."""

JOINT_FALL = 0.4
JOINT_FROM_MPS = 2.5
JOINT_CHANGE_MPS2 = 20.0
JOINT_SHORTEST_S = 0.05
JOINT_LIKENESS = 1.5
"""All wheels changing speed by more than twice what a road tyre's grip allows, in like proportions."""

JOINT_FROZEN_S = 0.2
JOINT_MISSED_MPS = 0.15
"""All wheels repeating their values this long, and then stepping on by this much at least (judgement)."""


@dataclass(frozen=True, slots=True)
class Losses:
    """Flags on the common clock. Rows follow ``CORNERS``.

    Attributes
    ----------
    moving : bool[4, N]
        The wheel should turn fast enough to be judged.
    lost : bool[4, N]
        Reads less than half of what it should, or nothing at all.
    alone : bool[4, N]
        Part of ``lost`` in which no other wheel is lost too.
    low, high : bool[4, N]
        Briefly below or above, and neither lost nor shaken by the road.
    frozen : bool[4, N]
        The same value repeated while the car changes speed or the road stirs the other wheels.
    joint : bool[N]
        All wheels fall or vanish at once.
    """

    moving: BoolArray
    lost: BoolArray
    alone: BoolArray
    low: BoolArray
    high: BoolArray
    frozen: BoolArray
    joint: BoolArray


def find_losses(
    clock: CommonClock, reference: VehicleReference, residuals: Residuals, acceleration_mps2: FloatArray
) -> Losses:
    """Find every disturbance of every wheel.

    Parameters
    ----------
    acceleration_mps2 : float64[N]
        Of the car. In hard braking one-wheel slip with quick recovery is the brake control at work, so only
        full losses count there; the same for a wheel that spins up at full throttle.
    """
    expected = zero_for_missing(reference.expected_mps)
    moving = expected > MOVING_MPS
    step_mps = unit_step(clock)
    joint = _joint_losses(clock, reference, step_mps)
    frozen = find_frozen(clock, expected, moving, step_mps=step_mps)
    missing = _missing(clock)
    slipping = widen(acceleration_mps2 < HARD_BRAKING_MPS2, clock.samples_in(SLIP_AROUND_S))
    lost, low, high = (np.empty_like(moving) for _ in range(3))

    def judge(row: int) -> None:
        speed_mps = clock.speed_mps[row]
        fallen = (speed_mps < LOST_BELOW * expected[row]) | missing[row]
        lost[row] = close_short_breaks(moving[row] & ~joint & fallen, 2)
        lost[row] &= ~(slipping & (speed_mps > 0.15 * expected[row]))
        judged = moving[row] & ~widen(lost[row], 3) & ~frozen[row] & ~slipping
        low[row], high[row] = _brief_deviations(residuals, row, judged)

    map_side_by_side(judge, range(4))
    # Wheels that are dead together for seconds have each lost their own signal.
    count = np.add.reduce(lost & ~reference.dead, axis=0, dtype=np.int8)
    alone = lost & (~widen(count > 1, 1) | reference.dead)
    low &= ~brake_slip(low, clock, acceleration_mps2)
    return Losses(moving=moving, lost=lost, alone=alone, low=low, high=high, frozen=frozen, joint=joint)


def widen_rows(flag: BoolArray, samples: int) -> BoolArray:
    """Set the flag also on neighbours, row by row."""
    return np.stack([widen(row, samples) for row in flag])


def _joint_losses(clock: CommonClock, reference: VehicleReference, step_mps: float) -> BoolArray:
    """Instants at which all wheels vanish, or fall faster together than any brake could make them."""
    vanished = ~clock.valid.any(axis=0)
    middle = np.where(np.isfinite(reference.reference_mps), reference.reference_mps, 0.0)
    reach = clock.samples_in(0.1)
    sudden = np.zeros(middle.size, dtype=bool)
    if middle.size > reach:
        before, after = middle[:-reach], middle[reach:]
        passed_s = clock.time_s[reach:] - clock.time_s[:-reach]
        fallen = (before > JOINT_FROM_MPS) & (after < JOINT_FALL * before)
        jumped = _jumped_together(clock.speed_mps, reach, passed_s)
        sudden[reach:] = (fallen | jumped) & (passed_s < 0.25)
    return vanished | widen(sudden, reach) | _frozen_together(clock, middle, step_mps)


def _starting(clock: CommonClock) -> BoolArray:
    """Flag what comes before a wheel's first value: units send "not available" until they have counted."""
    seen = clock.valid.any(axis=1)
    first_s = clock.time_s[np.argmax(clock.valid, axis=1)] if clock.time_s.size else np.zeros(4)
    soon = seen & (first_s - clock.time_s[:1].sum() <= START_S)
    starting: BoolArray = soon[:, np.newaxis] & (clock.time_s < first_s[:, np.newaxis])
    return starting


def _missing(clock: CommonClock) -> BoolArray:
    """Flag samples that a wheel does not have, but for pauses of the recorder beside a slower message.

    The last samples of the quick wheels before a pause, and the first after it, find no neighbour in a slower
    wheel's message that frames lost with all others have opened wide.
    """
    missing = ~clock.valid
    if not missing.any():
        return missing
    missing &= ~_starting(clock)
    for row in range(4):
        share = float(clock.fresh[row].mean()) if clock.time_s.size else 1.0
        if share >= SLOWER_SHARE or not missing[row].any():
            continue
        shortest = SLOWER_MISSED / max(share, 1e-3)
        for first, stop in zip(*run_bounds(missing[row]), strict=True):
            if stop - first < shortest:
                missing[row, first:stop] = False
    return missing


def _frozen_together(clock: CommonClock, middle_mps: FloatArray, step_mps: float) -> BoolArray:
    """Flag stretches in which every wheel repeats its value and then all step on by what they missed."""
    flag = np.zeros(middle_mps.size, dtype=bool)
    same = np.zeros(middle_mps.size, dtype=bool)
    unchanged = clock.speed_mps[:, 1:] == clock.speed_mps[:, :-1]
    same[1:] = unchanged.all(axis=0) & (middle_mps[1:] > JOINT_FROM_MPS)
    for first, stop in zip(*run_bounds(same), strict=True):
        after = min(stop + 1, middle_mps.size - 1)
        missed = clock.speed_mps[:, after] - clock.speed_mps[:, stop - 1]
        least = max(JOINT_MISSED_MPS, 4.0 * step_mps)
        long_enough = stop - first >= 3 and clock.time_s[stop - 1] - clock.time_s[first - 1] >= JOINT_FROZEN_S
        if long_enough and stop < middle_mps.size and ((missed > least).all() or (missed < -least).all()):
            flag[first:stop] = True
    return flag


def _jumped_together(speed_mps: FloatArray, reach: int, passed_s: FloatArray) -> BoolArray:
    """Flag changes that no brake or engine makes and that all wheels share in the same proportion.

    Wheels that slip all at once differ among each other; a unit or a bus that upsets them does not.
    """
    flag = np.zeros(passed_s.size, dtype=bool)
    together = speed_mps.sum(axis=0)
    # Where each wheel changes by so much, so does their sum: only there need they be looked at singly.
    sudden = np.abs(together[reach:] - together[:-reach]) > 0.99 * len(speed_mps) * _least_jump(passed_s)
    place = np.flatnonzero(sudden)
    flag[place] = _alike_and_sudden(speed_mps[:, place], speed_mps[:, place + reach], passed_s[place])
    return flag


def _least_jump(passed_s: FloatArray) -> FloatArray:
    least: FloatArray = JOINT_CHANGE_MPS2 * np.maximum(passed_s, JOINT_SHORTEST_S)
    return least


def _alike_and_sudden(before_mps: FloatArray, after_mps: FloatArray, passed_s: FloatArray) -> BoolArray:
    with np.errstate(invalid="ignore", divide="ignore"):
        moving = (before_mps > MOVING_MPS) & (after_mps > MOVING_MPS)
        change = np.where(moving, after_mps / before_mps - 1.0, np.nan)
        least = _least_jump(passed_s) / before_mps.mean(axis=0)
    low, high = change.min(axis=0), change.max(axis=0)
    with np.errstate(invalid="ignore"):
        up = (low > least) & (high < JOINT_LIKENESS * low)
        down = (high < -least) & (low > JOINT_LIKENESS * high)
    flag: BoolArray = up | down
    return flag


def unit_step(clock: CommonClock) -> float:
    """Step in which the control unit tells speeds, in m/s: that of the numbers, or a coarser one of its own.

    A unit that counts pulses in a fixed time knows whole pulses only, however finely the result is written:
    in steady driving its values rest, and then jump by a pulse. Taken is the middle of the jumps from one
    resting value to the next of a wheel, and the middle of the wheels, so that one wheel that is stuck is not
    taken for the unit.
    """
    jumps = [float(np.median(one)) for row in clock.speed_mps if (one := _jumps(row)).size >= FEWEST_JUMPS]
    told = float(np.nanmax(clock.resolution_mps, initial=0.0))
    return max(told, float(np.median(jumps))) if len(jumps) > 1 else told


def _jumps(speed_mps: FloatArray) -> FloatArray:
    """Sizes of the jumps between values that are kept for three samples or more while the wheel moves."""
    first, stop = run_bounds(np.diff(speed_mps) == 0.0)
    rests = speed_mps[first[stop - first >= 2]]
    jumps: FloatArray = np.abs(np.diff(rests[rests > MOVING_MPS]))
    return jumps[jumps > 0.0]


def _brief_deviations(residuals: Residuals, row: int, judged: BoolArray) -> tuple[BoolArray, BoolArray]:
    """Flag where a wheel is briefly low and where it is briefly high."""
    fast_ratio = residuals.fast_ratio[row]
    bar = ROUGH_FACTOR * residuals.roughness_ratio[row]
    np.maximum(bar, np.maximum(DISTURBED_SIGMA * residuals.sound_sigma_ratio, DISTURBED_LEAST), out=bar)
    off = judged & (np.abs(fast_ratio) > bar)
    below = fast_ratio < 0.0
    return off & below, off & ~below


def brake_slip(low: BoolArray, clock: CommonClock, acceleration_mps2: FloatArray) -> BoolArray:
    """Flag the shortfalls that last as long as the slip of a braked tyre, while the car slows down.

    Parameters
    ----------
    low : bool[4, N]
        Where each wheel reads too little.
    acceleration_mps2 : float64[N]
        Of the car.
    """
    braking = widen(acceleration_mps2 < BRAKING_MPS2, clock.samples_in(SLIP_AROUND_S))
    shortest = max(2, clock.samples_in(SLIP_LASTS_S))
    slip = np.zeros_like(low)
    for row in range(4):
        for first, stop in zip(*run_bounds(close_short_breaks(low[row] & braking, 2)), strict=True):
            slip[row, first:stop] = stop - first >= shortest
    return slip


def spans_of(
    flag: BoolArray, time_s: FloatArray, *, most: int = 40, period_s: float = 0.0
) -> tuple[tuple[float, float], ...]:
    """Turn flagged stretches into seconds of the log, the longest first.

    Parameters
    ----------
    most : int
        At most this many are returned.
    period_s : float
        Added to the end of each, so that a single sample has a length; never beyond the last sample.
    """
    first, stop = run_bounds(flag)
    longest = np.argsort(first - stop, kind="stable")[:most]
    begin_s = time_s[first[longest]]
    end_s = np.minimum(time_s[stop[longest] - 1] + period_s, time_s[-1] if time_s.size else 0.0)
    return tuple(zip(begin_s.tolist(), end_s.tolist(), strict=True))
