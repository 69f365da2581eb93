"""Holding yaw rate, steering and accelerations against what the wheels themselves say."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.corners import Corner
from triage.speed_log import Channel, FloatArray, SpeedTrace

_GRID_S: Final = 0.1
_USUAL_TRACK_M: Final = 1.55
_SLOWEST_MPS: Final = 2.0
_SPREAD_MIN: Final[dict[str, float]] = {
    "yaw_rate_radps": 0.03,
    "steering_rad": 0.002,
    "lateral_mps2": 0.3,
    "longitudinal_mps2": 0.4,
}
"""Spread of the wheels' own quantity (rad/s, 1/m, m/s2) below which there are not enough curves to judge."""

_LONGEST_S: Final = 2 * 86400.0
"""A clock that a damaged time stamp stretches beyond this would need a grid larger than the memory."""

_BEYOND_ALL: Final = 1e9
"""No angle, rate or acceleration is as large in any unit; the squares of larger numbers could overflow."""

_CORRELATION_MIN: Final = 0.6


_SIDES: Final = {1: "left|links", -1: "right|rechts"}
_STANDARDS: Final = {1: r"iso[ _]?8855", -1: r"sae[ _]?j670"}


def stated_sign(role: str, label: str) -> int:
    """Tell to which side a channel's own name says that it is positive.

    Parameters
    ----------
    role : str
        Channel name of :data:`triage.speed_log.CHANNEL_UNITS`.
    label : str
        Column or ``Message.Signal``, with its unit.

    Returns
    -------
    int
        1 to the left, -1 to the right, 0 when nothing is said. The program's own channel names are positive
        to the left by definition (ISO 8855).

    Examples
    --------
    >>> stated_sign("yaw_rate_radps", "yaw_rate_radps [rad/s]")
    1
    >>> stated_sign("yaw_rate_radps", "yaw (right positive)")
    -1
    >>> stated_sign("yaw_rate_radps", "yaw_rate [deg/s]")
    0
    """
    if re.split(r"[\s\[(]", label, maxsplit=1)[0] == role:
        return 1
    for sign, side in _SIDES.items():
        before, after = rf"({side})[ _]?(is[ _])?(pos|plus|\+)", rf"(pos[a-z]*|plus|\+)[ _]?(to[ _])?({side})"
        if re.search(f"{before}|{after}|{_STANDARDS[sign]}", label, re.IGNORECASE):
            return sign
    return 0


@dataclass(frozen=True, slots=True)
class WheelRelation:
    """How a channel goes with the same quantity worked out from the wheels.

    Attributes
    ----------
    slope : float
        Wheels' quantity over channel; near 1 for the right unit and sign (not for steering).
    decided : bool
        Both axles say so, clearly.
    """

    slope: float
    decided: bool


def against_wheels(role: str, channel: Channel, traces: Mapping[Corner, SpeedTrace]) -> WheelRelation | None:
    """Hold a channel against the wheels.

    Parameters
    ----------
    role : str
        ``yaw_rate_radps``, ``steering_rad``, ``lateral_mps2`` or ``longitudinal_mps2``.

    Returns
    -------
    WheelRelation or None
        None when the log holds too little motion.

    Notes
    -----
    In a left curve the right wheels are faster: ``yaw rate = (v_right - v_left) / track``. Both axles are
    asked separately, so that one faulty wheel cannot turn a sign.
    """
    if channel.value.size < 20 or any(trace.valid_count < 20 for trace in traces.values()):
        return None
    begin = max(float(channel.time_s[0]), *(float(t.time_s[0]) for t in traces.values()))
    end = min(float(channel.time_s[-1]), *(float(t.time_s[-1]) for t in traces.values()))
    if not 3.0 <= end - begin <= _LONGEST_S:
        return None
    grid = np.arange(begin, end, _GRID_S)
    value = _block_mean(channel.time_s, channel.value, grid)
    relations = [
        _relation(role, value, _quantity(role, grid, traces, axle)) for axle in (("FL", "FR"), ("RL", "RR"))
    ]
    slopes = [slope for slope, _ in relations]
    agree = all(clear for _, clear in relations) and slopes[0] * slopes[1] > 0
    return WheelRelation(float(np.mean(slopes)), agree)


def _quantity(
    role: str, grid: FloatArray, traces: Mapping[Corner, SpeedTrace], axle: tuple[Corner, Corner]
) -> FloatArray:
    left, right = (_speed(traces[corner], grid) for corner in axle)
    mean = 0.5 * (left + right)
    if role == "longitudinal_mps2":
        return np.gradient(_smooth(mean), _GRID_S)
    yaw = _smooth(right - left) / _USUAL_TRACK_M
    slow = mean < _SLOWEST_MPS
    if role == "yaw_rate_radps":
        return np.where(slow, np.nan, yaw)
    if role == "lateral_mps2":
        return np.where(slow, np.nan, yaw * mean)
    return np.where(slow, np.nan, yaw / np.maximum(mean, _SLOWEST_MPS))


def _relation(role: str, value: FloatArray, quantity: FloatArray) -> tuple[float, bool]:
    good = (np.abs(value) < _BEYOND_ALL) & (np.abs(quantity) < _BEYOND_ALL)
    if np.count_nonzero(good) < 30:
        return 0.0, False
    x, y = value[good] - value[good].mean(), quantity[good] - quantity[good].mean()
    spread_x, spread_y = float(x.std()), float(y.std())
    if spread_x == 0.0 or spread_y < _SPREAD_MIN[role]:
        return 0.0, False
    correlation = float((x * y).mean() / (spread_x * spread_y))
    return float((x * y).mean() / spread_x**2), abs(correlation) >= _CORRELATION_MIN


def _speed(trace: SpeedTrace, grid: FloatArray) -> FloatArray:
    return _block_mean(trace.time_s[~trace.invalid], trace.speed_mps[~trace.invalid], grid)


def _block_mean(time_s: FloatArray, value: FloatArray, grid: FloatArray) -> FloatArray:
    """Mean over one grid step, NaN in gaps: exact for the integral of the straight-line interpolation."""
    integral = np.concatenate(([0.0], np.cumsum(0.5 * (value[1:] + value[:-1]) * np.diff(time_s))))
    mean = np.interp(grid + _GRID_S, time_s, integral) - np.interp(grid, time_s, integral)
    return mean / _GRID_S


def _smooth(value: FloatArray) -> FloatArray:
    kernel = np.ones(5) / 5
    return np.convolve(np.pad(value, 2, mode="edge"), kernel, mode="valid")
