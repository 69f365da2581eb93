"""What a control unit does about a wheel speed it does not believe."""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.corners import AXLE_PARTNER, CORNERS
from triage.simulator.equipment import ControlUnit
from triage.speed_log import BoolArray, FloatArray

_HOLD_S: Final = 0.03
_MOVING_MPS: Final = 3.0
_STRAYS_RATIO: Final = 0.3
"""More than the wheels of a car at full lock differ by at the speeds at which it is looked at (judgement)."""

_STRAYS_MPS: Final = 5.0
_STRAYS_FOR_S: Final = 0.06
_BELIEVED_AFTER_S: Final = 0.3


def find_jumps(speed_mps: FloatArray, unit: ControlUnit) -> BoolArray:
    """Find the cycles in and just after a jump that no wheel can make, bool[C].

    Parameters
    ----------
    speed_mps : float64[C]
        Estimate of one wheel.
    unit : ControlUnit
        Its limit of the change of speed.
    """
    step = np.abs(np.diff(speed_mps, prepend=speed_mps[:1]))
    moving = np.maximum(speed_mps, np.concatenate((speed_mps[:1], speed_mps[:-1]))) > _MOVING_MPS
    jumps = moving & (step > np.maximum(unit.jump_limit_mps2 * unit.cycle_s, 0.5))
    return _prolonged(jumps, max(round(_HOLD_S / unit.cycle_s), 1))


def hold_believed(speed_mps: FloatArray, doubted: BoolArray) -> FloatArray:
    """Keep the last value believed where the estimate is doubted, float64[C]."""
    believed = np.maximum.accumulate(np.where(doubted, 0, np.arange(speed_mps.size)))
    return speed_mps[believed]


def find_strays(speed_mps: FloatArray, unit: ControlUnit) -> BoolArray:
    """Find where a wheel has long differed from the other three, bool[4, C].

    Parameters
    ----------
    speed_mps : float64[4, C]
        Estimates, rows following ``CORNERS``.
    unit : ControlUnit
        Its cycle is used.

    Returns
    -------
    bool[4, C]
        Set until the wheel has agreed again for a while.
    """
    wait = max(round(_STRAYS_FOR_S / unit.cycle_s), 1)
    strays = np.zeros(speed_mps.shape, dtype=np.bool_)
    for row in range(len(CORNERS)):
        others = np.median(np.delete(speed_mps, row, axis=0), axis=0)
        apart = (others > _STRAYS_MPS) & (np.abs(speed_mps[row] - others) > _STRAYS_RATIO * others)
        place = np.arange(apart.size)
        since = place - np.maximum.accumulate(np.where(apart, -1, place))
        strays[row] = _prolonged(since > wait, round(_BELIEVED_AFTER_S / unit.cycle_s))
    return strays


def substitute_doubted(speed_mps: FloatArray, doubted: BoolArray, unit: ControlUnit) -> FloatArray:
    """Put other wheels' speed in the place of a doubted one's, float64[4, C].

    Parameters
    ----------
    speed_mps : float64[4, C]
        Estimates, rows following ``CORNERS``.
    doubted : bool[4, C]
        Where an estimate is not believed.
    unit : ControlUnit
        Says whose speed is taken.
    """
    result = speed_mps.copy()
    for row, corner in enumerate(CORNERS):
        if not doubted[row].any():
            continue
        donors = (
            speed_mps[[CORNERS.index(AXLE_PARTNER[corner])]]
            if unit.substitute == "partner"
            else np.delete(speed_mps, row, axis=0)
        )
        result[row] = np.where(doubted[row], donors.mean(axis=0), speed_mps[row])
    return result


def _prolonged(flags: BoolArray, cycles: int) -> BoolArray:
    """Let every flag stand for so many cycles."""
    place = np.arange(flags.size)
    last = np.maximum.accumulate(np.where(flags, place, -cycles - 1))
    return np.asarray(place - last < cycles, dtype=np.bool_)
