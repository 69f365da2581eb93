"""Pulse counts of the wheels: the exact angle, and what the speeds make of them.

A counter in the log (``pulses_FL`` ...) or recorded edge times tell how far a wheel has turned without the
drift of an integrated speed. One pulse stands for one pitch of the encoder ring; how many metres of the log
that is, and how many pulses make a turn, is found from the log itself.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from scipy.ndimage import uniform_filter1d

from triage.corners import CORNERS
from triage.signals.conditioning import CommonClock
from triage.signals.running import run_bounds
from triage.speed_log import BoolArray, Channel, FloatArray, SpeedLog

LEAST_COVER: Final = 0.8
"""A counter serves for the angle when its samples cover this share of the log."""

LONGEST_PAUSE_S: Final = 1.0
SMOOTHING_S: Final = 0.5
"""Whole pulses are spread over this time, in which the speed is trusted."""

FEWEST_PULSES: Final = 200
SLOWEST_MPS: Final = 2.0
SUPPORT_PULSES: Final = 8.0
SUPPORT_S: Final = 0.1
UNSUPPORTED: Final = 0.5
"""A speed is unsupported where its counter gives less than this share of the pulses it stands for, over at
least 0.1 s and eight pulses, of which quantisation can take one."""


FEWEST_IN_TURN: Final = 20
MOST_IN_TURN: Final = 260


@dataclass(frozen=True, slots=True)
class TurnPulses:
    """Pulses of one turn, found blind, and how probable this number is among all others."""

    number: int
    probability: float


@dataclass(frozen=True, slots=True)
class PulseCounters:
    """Counts of the wheels on the common clock. Rows follow ``CORNERS``.

    Attributes
    ----------
    count : float64[4, N]
        Running count, interpolated between the samples of the counter; NaN where the wheel has none or the
        counter pauses for more than a second.
    covers : bool[4]
        The counter covers enough of the log to tell the angle.
    pitch_m : float
        Metres of the log that one pulse stands for, the middle of all wheels; NaN without enough pulses.
    unsupported : bool[4, N]
        Samples in which the wheel reads a speed for which its counter gives less than half of the pulses:
        the control unit has put in a speed of its own.
    """

    count: FloatArray
    covers: BoolArray
    pitch_m: float
    unsupported: BoolArray


def gather_counters(log: SpeedLog, clock: CommonClock) -> PulseCounters | None:
    """Bring the pulse counters of a log to the common clock.

    Parameters
    ----------
    log : SpeedLog
        Channels ``pulses_*``; where a wheel has none, its recorded edge times are counted.
    clock : CommonClock

    Returns
    -------
    PulseCounters or None
        None when no wheel has a counter.
    """
    counters = [_counter_of(log, row, clock.time_s) for row in range(4)]
    if clock.time_s.size < 2 or all(one is None for one in counters):
        return None
    count = np.stack([_on_clock(one, clock.time_s) for one in counters])
    covers = np.isfinite(count).mean(axis=1) >= LEAST_COVER
    pitch_m = _common_pitch(count, clock)
    unsupported = np.stack([_unsupported(row, clock, number, pitch_m) for number, row in enumerate(count)])
    return PulseCounters(count, covers, pitch_m, unsupported)


def find_turn_pulses(turn_m: FloatArray, turn_std_m: FloatArray, pitch_m: float) -> TurnPulses | None:
    """Find blind how many pulses make a turn: the whole number that the lengths of the turns stand for.

    Parameters
    ----------
    turn_m, turn_std_m : float64[K]
        Distance after which each wheel's own ripple repeats, and its standard uncertainty.
    pitch_m : float
        Metres per pulse.

    Returns
    -------
    TurnPulses or None
        None when no wheel shows its turn.

    Notes
    -----
    Every number from 20 to 260 is weighed alike beforehand. A turn is taken to be right in four cases of five
    and anything otherwise (judgement), so that one wrong or odd wheel cannot outvote the rest.
    """
    if not turn_m.size or not np.isfinite(pitch_m):
        return None
    number = np.arange(FEWEST_IN_TURN, MOST_IN_TURN + 1)
    pulses, std = turn_m / pitch_m, np.maximum(turn_std_m / pitch_m, 0.02)
    away = (pulses[:, None] - number[None, :]) / std[:, None]
    right = np.exp(-0.5 * away**2) / (std[:, None] * np.sqrt(2.0 * np.pi))
    score = np.log(0.8 * right + 0.2 / number.size).sum(axis=0)
    share = np.exp(score - score.max())
    best = int(np.argmax(share))
    return TurnPulses(int(number[best]), float(share[best] / share.sum()))


def exact_distance(
    distance_m: FloatArray, clock: CommonClock, counters: PulseCounters, row: int, doubtful: BoolArray
) -> FloatArray:
    """Correct the distance of an integrated speed by the counter of the wheel.

    Parameters
    ----------
    distance_m : float64[N]
        Integrated speed of the wheel, losses bridged.
    clock : CommonClock
    counters : PulseCounters
    row : int
        Wheel.
    doubtful : bool[N]
        Samples in which pulses may have been lost; there the distance is left as it is, so that a drop-out
        does not lose the angle.

    Returns
    -------
    float64[N]
        Distance by the count, from 0, never falling; between the counter's whole pulses it follows the speed.
    """
    if not counters.covers[row] or not np.isfinite(counters.pitch_m):
        return distance_m
    counted_m = counters.pitch_m * np.diff(counters.count[row])
    doubt = doubtful | counters.unsupported[row]
    use = np.isfinite(counted_m) & ~doubt[1:] & ~doubt[:-1]
    ahead = np.cumsum(np.where(use, counted_m - np.diff(distance_m), 0.0))
    ahead = np.concatenate(([0.0], ahead))
    window = clock.samples_in(SMOOTHING_S)
    corrected = distance_m + uniform_filter1d(ahead, window, mode="nearest")
    return np.asarray(np.maximum.accumulate(corrected - corrected[0]), dtype=np.float64)


def _counter_of(log: SpeedLog, row: int, time_s: FloatArray) -> Channel | None:
    corner = CORNERS[row]
    channel = log.channels.get(f"pulses_{corner}")
    if channel is not None and channel.time_s.size > 1:
        return channel
    edges_s = log.edges.get(corner)
    if edges_s is None or edges_s.size < 2:
        return None
    return Channel(
        time_s.copy(), np.interp(time_s, edges_s, np.arange(edges_s.size, dtype=float)), f"{corner} edges"
    )


def _on_clock(counter: Channel | None, time_s: FloatArray) -> FloatArray:
    if counter is None or counter.time_s.size < 2:
        return np.full(time_s.size, np.nan)
    count = np.interp(time_s, counter.time_s, counter.value, left=np.nan, right=np.nan)
    after = np.clip(np.searchsorted(counter.time_s, time_s), 1, counter.time_s.size - 1)
    pause_s = counter.time_s[after] - counter.time_s[after - 1]
    return np.asarray(np.where(pause_s > LONGEST_PAUSE_S, np.nan, count), dtype=np.float64)


def _common_pitch(count: FloatArray, clock: CommonClock) -> float:
    """Metres per pulse of every wheel while its speed is valid; the middle of the wheels."""
    way_m = np.diff(clock.time_s) * (clock.speed_mps[:, 1:] + clock.speed_mps[:, :-1]) / 2.0
    pulses = np.diff(count, axis=1)
    # Steps without a pulse belong to the way as well: when slow, a pulse comes only every few samples.
    use = np.isfinite(way_m) & np.isfinite(pulses) & (pulses >= 0.0)
    # Near standstill many units read nothing while the wheel still turns.
    use &= np.minimum(clock.speed_mps[:, 1:], clock.speed_mps[:, :-1]) > SLOWEST_MPS
    total = np.where(use, pulses, 0.0).sum(axis=1)
    enough = total >= FEWEST_PULSES
    if not enough.any():
        return float("nan")
    each = np.where(use, way_m, 0.0).sum(axis=1)[enough] / total[enough]
    return float(np.median(each))


def _unsupported(count: FloatArray, clock: CommonClock, row: int, pitch_m: float) -> BoolArray:
    """Flag stretches in which the counter gives less than half of what the wheel's own speed stands for."""
    flag = np.zeros(count.size, dtype=bool)
    if not np.isfinite(pitch_m) or not np.isfinite(count).any():
        return flag
    speed = clock.speed_mps[row]
    way = np.concatenate(
        ([0.0], np.cumsum(np.diff(clock.time_s) * np.nan_to_num((speed[1:] + speed[:-1]) / 2.0)))
    )
    reach = clock.samples_in(SUPPORT_S)
    if count.size <= 2 * reach:
        return flag
    expected = (way[2 * reach :] - way[: -2 * reach]) / pitch_m
    counted = count[2 * reach :] - count[: -2 * reach]
    with np.errstate(invalid="ignore"):
        flag[reach:-reach] = (expected >= SUPPORT_PULSES) & (counted < UNSUPPORTED * expected - 1.0)
    flag &= np.isfinite(speed)
    for first, stop in zip(*run_bounds(flag), strict=True):
        flag[max(first - reach, 0) : stop + reach] = True  # the window blurs the ends
    return flag
