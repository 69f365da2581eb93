"""Values that a wheel repeats while it must be doing something else."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.signals.conditioning import CommonClock
from triage.signals.running import count_of, run_bounds
from triage.speed_log import BoolArray, FloatArray

STUCK_S: Final = 0.3
FEWEST_REPEATED: Final = 10

STUCK_CHANGE: Final = 0.06
"""A value is frozen when it is repeated while the car's speed changed by this share, and by three steps of
the control unit."""

HELD_AT_STOP_S: Final = 1.5
"""Every wheel keeps its last value for some tenths of a second when the car comes to rest, until the unit no
longer waits for a pulse; shorter ones are judged by what happens above walking pace alone."""

STIR_STEPS: Final = 2.0
FINEST: Final = 0.1
"""It is frozen, too, when the other wheels meanwhile go up and down by so many steps from sample to sample:
so restless a road does not leave one wheel within a single step (judgement). Their step is this quantile of
their changes."""

LONGER: Final = 4.0
OWN_LONGER: Final = 10.0
"""And when that lasts so many times as long as the longest rest of the others in motion (the middle of the
three), and so many times as long as the wheel itself rests on average. The wheels of a unit that counts
pulses rest for as long as the speed stays between two counts, and one that is told less often is held in
between (judgement)."""


@dataclass(frozen=True, slots=True)
class _Wheel:
    """One wheel, what it should have read, and the steps of all wheels from sample to sample.

    ``fewest`` are the samples of its own from which a rest is long for it.
    """

    row: int
    speed_mps: FloatArray
    expected_mps: FloatArray
    moving: BoolArray
    fresh: BoolArray
    steps_mps: FloatArray
    fewest: float


def find_frozen(
    clock: CommonClock, expected_mps: FloatArray, moving: BoolArray, *, step_mps: float
) -> BoolArray:
    """Flag the stretches in which a wheel goes on with one value, bool[4, N].

    Parameters
    ----------
    clock : CommonClock
    expected_mps : float64[4, N]
        What each wheel should read; finite.
    moving : bool[4, N]
        Where that is fast enough to be judged.
    step_mps : float
        Step in which the control unit tells speeds.
    """
    if not clock.time_s.size:
        return np.zeros(clock.speed_mps.shape, dtype=bool)
    steps_mps = np.diff(clock.speed_mps, axis=1)
    frozen = np.zeros(clock.speed_mps.shape, dtype=bool)
    rests = [_rests(steps_mps[row] == 0.0, moving[row]) for row in range(4)]
    for row in range(4):
        others = float(np.median([longest for other, (longest, _) in enumerate(rests) if other != row]))
        fewest = max(LONGER * others, OWN_LONGER * rests[row][1], FEWEST_REPEATED)
        wheel = _Wheel(
            row, clock.speed_mps[row], expected_mps[row], moving[row], clock.fresh[row], steps_mps, fewest
        )
        for start, stop in _repeated(clock, steps_mps[row] == 0.0):
            frozen[row, start:stop] = _is_stuck(clock, wheel, slice(start, stop), step_mps)
    return frozen


def _repeated(clock: CommonClock, same: BoolArray) -> list[tuple[int, int]]:
    """First and stop index of the stretches of one value that last long enough."""
    least = max(FEWEST_REPEATED, round(STUCK_S / clock.period_s)) if clock.period_s else FEWEST_REPEATED
    first, last = run_bounds(same)  # of the steps: the sample behind the last step has the value, too
    kept = (last - first >= least - 1) & (clock.time_s[last] - clock.time_s[first] >= STUCK_S)
    return list(zip(first[kept].tolist(), (last[kept] + 1).tolist(), strict=True))


def _rests(same: BoolArray, moving: BoolArray) -> tuple[float, float]:
    """Longest and mean rest of a wheel in motion, in samples."""
    first, stop = run_bounds(same & moving[1:])
    steps, changes = count_of(moving[1:]), count_of(moving[1:] & ~same)
    return 1.0 + float((stop - first).max(initial=0)), steps / max(changes, 1)


def _is_stuck(clock: CommonClock, wheel: _Wheel, stretch: slice, step_mps: float) -> bool:
    value_mps = wheel.speed_mps[stretch.start]
    if value_mps == 0.0:
        return False
    lasted_s = clock.time_s[stretch.stop - 1] - clock.time_s[stretch.start]
    course = wheel.expected_mps[stretch]
    if lasted_s < HELD_AT_STOP_S:
        course = course[wheel.moving[stretch]]
    if not course.size:
        return False
    if np.ptp(course) > max(STUCK_CHANGE * value_mps, 0.3, 3.0 * step_mps):
        return True
    if count_of(wheel.fresh[stretch]) < wheel.fewest or not wheel.moving[stretch].all():
        return False
    return _stirs(np.delete(wheel.steps_mps[:, stretch.start : stretch.stop - 1], wheel.row, axis=0))


def _stirs(steps_mps: FloatArray) -> bool:
    """Whether the middle one of the wheels that are known changes by several steps from sample to sample."""
    known = [np.abs(row[np.isfinite(row)]) for row in steps_mps]
    means_mps = [float(row.mean()) for row in known if row.size]
    changes_mps = np.concatenate(known)
    changes_mps = changes_mps[changes_mps > 0.0]
    if not changes_mps.size:
        return False
    return float(np.median(means_mps)) > STIR_STEPS * float(np.quantile(changes_mps, FINEST))
