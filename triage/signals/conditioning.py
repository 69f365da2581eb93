"""The four wheels of a log on one common clock, without a sample invented."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from triage.corners import CORNERS, Corner
from triage.signals.running import middle_value
from triage.speed_log import BoolArray, Channel, FloatArray, SpeedLog, SpeedTrace

BRIDGED_PERIODS = 3.0
"""A wheel's own samples are joined by a line only when they are less than this many of its periods apart."""

LARGEST_MPS = 1e4
"""Larger numbers, which are none of a car's, are cut down to this, so that their squares stay numbers."""


@dataclass(frozen=True, slots=True)
class CommonClock:
    """Recorded speeds of all wheels at common instants. Rows follow :data:`triage.corners.CORNERS`.

    Attributes
    ----------
    time_s : float64[N]
        Strictly rising: the clock of the wheel with the most samples.
    period_s : float
        Median step of ``time_s``.
    speed_mps : float64[4, N]
        NaN where ``valid`` is not set.
    valid : bool[4, N]
    fresh : bool[4, N]
        The instants nearest to a valid sample of the wheel's own clock. Statistics count only these,
        so that a slow wheel drawn on a fast clock does not look better known than it is.
    resolution_mps : float64[4]
        Step of the recorded numbers.
    """

    time_s: FloatArray
    period_s: float
    speed_mps: FloatArray
    valid: BoolArray
    fresh: BoolArray
    resolution_mps: FloatArray

    def samples_in(self, duration_s: float) -> int:
        """Whole samples in a duration, one at least."""
        return max(1, round(duration_s / self.period_s)) if self.period_s else 1


def put_on_common_clock(log: SpeedLog) -> CommonClock:
    """Bring all wheels to the clock of the one that was recorded most often.

    Parameters
    ----------
    log : SpeedLog
        At least one wheel must have a valid sample for a useful result; none gives arrays of length 0.

    Returns
    -------
    CommonClock
    """
    time_s = _fastest_clock(log)
    rows = [_resample(log.wheels[corner], time_s) for corner in CORNERS]
    speed_mps = np.stack([row[0] for row in rows])
    if np.fmax.reduce(speed_mps, axis=None, initial=0.0) > LARGEST_MPS:
        speed_mps = np.minimum(speed_mps, LARGEST_MPS)
    period_s = middle_value(np.diff(time_s)) if time_s.size > 1 else 0.0
    return CommonClock(
        time_s=time_s,
        period_s=period_s,
        speed_mps=speed_mps,
        valid=np.isfinite(speed_mps),
        fresh=np.stack([row[1] for row in rows]),
        resolution_mps=np.array([log.wheels[corner].resolution_mps for corner in CORNERS]),
    )


def channel_on_clock(
    channel: Channel | None, time_s: FloatArray, *, longest_gap_s: float = 0.5
) -> FloatArray | None:
    """Interpolate a companion channel to the common clock.

    Returns
    -------
    float64[N] or None
        NaN beyond the ends of the channel, and between two samples more than ``longest_gap_s`` apart; None
        when there is no channel or it has fewer than two samples.
    """
    if channel is None or channel.time_s.size < 2 or not time_s.size:
        return None
    value = np.interp(time_s, channel.time_s, channel.value, left=np.nan, right=np.nan)
    after = np.clip(np.searchsorted(channel.time_s, time_s), 1, channel.time_s.size - 1)
    value[channel.time_s[after] - channel.time_s[after - 1] > longest_gap_s] = np.nan
    return value


def _fastest_clock(log: SpeedLog) -> FloatArray:
    counts = {corner: log.wheels[corner].valid_count for corner in CORNERS}
    busiest: Corner = max(CORNERS, key=lambda corner: counts[corner])
    trace = log.wheels[busiest]
    return trace.time_s if (np.diff(trace.time_s) > 0).all() else np.unique(trace.time_s)


def _resample(trace: SpeedTrace, time_s: FloatArray) -> tuple[FloatArray, BoolArray]:
    usable = ~trace.invalid
    if trace.time_s is time_s or np.array_equal(trace.time_s, time_s):
        return trace.speed_mps, usable
    own_s, own_mps = trace.time_s[usable], trace.speed_mps[usable]
    fresh = np.zeros(time_s.size, dtype=bool)
    if not own_s.size or not time_s.size:
        return np.full(time_s.size, np.nan), fresh
    fresh[_nearest(time_s, own_s)] = True
    speed_mps = np.interp(time_s, own_s, own_mps)
    return np.where(_bridgeable(own_s, time_s), speed_mps, np.nan), fresh


def _nearest(time_s: FloatArray, wanted_s: FloatArray) -> np.ndarray:
    after = np.clip(np.searchsorted(time_s, wanted_s), 1, max(time_s.size - 1, 1))
    if time_s.size == 1:
        return np.zeros(wanted_s.size, dtype=np.intp)
    nearer_before = wanted_s - time_s[after - 1] < time_s[after] - wanted_s
    return after - nearer_before


def _bridgeable(own_s: FloatArray, time_s: FloatArray) -> BoolArray:
    if own_s.size < 2:
        return np.isin(time_s, own_s)
    period_s = float(np.median(np.diff(own_s)))
    after = np.clip(np.searchsorted(own_s, time_s), 1, own_s.size - 1)
    step_s = own_s[after] - own_s[after - 1]
    edge = (time_s < own_s[0] - period_s / 2) | (time_s > own_s[-1] + period_s / 2)
    exact = np.isin(time_s, own_s)
    near: BoolArray = (exact | (step_s < BRIDGED_PERIODS * period_s)) & ~edge
    return near
