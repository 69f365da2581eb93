"""The same pitch errors by a Kalman filter that follows the wheel edge by edge."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.edge_train import EdgeTrain
from triage.signals.pole_pitch import FEWEST_TURNS, PolePitch, ring_places
from triage.speed_log import FloatArray

MOST_EDGES: Final = 6000
"""Edges filtered; some sixty turns settle the pitch errors, more only cost time."""

TRIAL_TURNS: Final = 6
RATE_NOISES: Final = (1e-4, 4e-4, 1.6e-3, 6.4e-3, 2.56e-2)
"""Trials of how much the interval changes by itself from edge to edge, over the interval."""

JITTER_NOISES: Final = (3e-4, 2e-3, 1e-2, 4e-2)
"""Trials of the timing noise of an edge, in pitches."""

FIRST_SHIFT_POLE: Final = 0.1
FIRST_RATE: Final = 0.05
GATE_SIGMA: Final = 6.0


@dataclass(frozen=True, slots=True)
class FilteredPitch:
    """Pitch errors by the filter; places as in the segment, border 0 first.

    Attributes
    ----------
    shift_pole, shift_std_pole : float64[N]
        How far each border stands ahead of its even place, in pitches, mean 0, and its standard uncertainty;
        NaN where a border never gave an edge.
    turns : float
        Turns filtered.
    """

    shift_pole: FloatArray
    shift_std_pole: FloatArray
    turns: float


def filter_pole_pitch(train: EdgeTrain, edges_per_rev: int) -> FilteredPitch | None:
    """Estimate the pitch errors from the middle of the longest segment by an extended Kalman filter.

    Parameters
    ----------
    train : EdgeTrain
    edges_per_rev : int

    Returns
    -------
    FilteredPitch or None
        None with too few turns in one piece.

    Notes
    -----
    State: time of the present even border ``T``, time of one pitch ``p`` (the inverse of the rate), its
    change ``a`` from border to border (the acceleration), and the shifts ``e_k`` of all borders with sum
    zero. From border to border ``T += p + a / 2``, ``p += a``; ``p`` and ``a`` also walk at random. An edge
    of border k is measured at ``T + p e_k`` plus jitter. The sum stays zero because the first covariance of
    the shifts is ``s^2 (I - 1/N)``, and no update leaves the space it spans.

    The two noise levels are those of a few trials that make the first turns most probable. The stated
    uncertainties are scaled by the size of the innovations (their mean square over the predicted one, where
    that is above 1). Edges further than six standard deviations off are passed over.

    References
    ----------
    R. E. Kalman, A new approach to linear filtering and prediction problems, J. Basic Eng. 82 (1960) 35-45
    (from memory). Averaging and Kalman filtering were set side by side for pole wheels by Adnan and
    Hammerschmidt, PRIME 2013, doi 10.1109/PRIME.2013.6603183 (abstract only).
    """
    if not train.segments:
        return None
    longest = int(np.argmax(np.bincount(train.segment)))
    time_s = ring_places(train, longest, edges_per_rev)
    if time_s is None or time_s.size < FEWEST_TURNS * edges_per_rev:
        return None
    time_s = _from_first_edges(_middle(time_s, edges_per_rev), edges_per_rev)
    if time_s.size < FEWEST_TURNS * edges_per_rev:
        return None
    trial_s = time_s[: TRIAL_TURNS * edges_per_rev]
    noises = [(rate, jitter) for rate in RATE_NOISES for jitter in JITTER_NOISES]
    ran = [_run(trial_s, edges_per_rev, rate, jitter) for rate, jitter in noises]
    best = int(np.argmax([one.log_likelihood for one in ran]))
    whole = _run(time_s, edges_per_rev, *noises[best])
    return _smooth_out(whole, time_s, edges_per_rev)


def compare_estimates(averaged: PolePitch, filtered: FilteredPitch) -> float:
    """Mean square of the differences over their variance: about 1 or less when both agree.

    The filter's places are turned to where they fit the average best. Both rest partly on the same edges, so
    that their differences are smaller than independent ones would be.
    """
    poles = averaged.shift_pole.size
    one, two = np.nan_to_num(averaged.shift_pole), np.nan_to_num(filtered.shift_pole)
    fit = np.fft.irfft(np.fft.rfft(one) * np.conj(np.fft.rfft(two)), poles)
    turn = int(np.argmax(fit))
    away = averaged.shift_pole - np.roll(filtered.shift_pole, turn)
    std = np.hypot(averaged.shift_std_pole, np.roll(filtered.shift_std_pole, turn))
    share = (away - np.nanmean(away)) / std
    return float(np.nanmean(share**2))


@dataclass(frozen=True, slots=True)
class _Run:
    state: FloatArray
    covariance: FloatArray
    log_likelihood: float
    excess: float
    seen: FloatArray


def _middle(time_s: FloatArray, poles: int) -> FloatArray:
    """Whole turns from the middle of a segment, away from pulling away and stopping."""
    spare = max(time_s.size - MOST_EDGES, 0) // 2 // poles * poles
    return time_s[spare : spare + MOST_EDGES]


def _first_borders(poles: int) -> int:
    """Borders that the filter takes its beginning from."""
    return max(poles // 4, 8)


def _from_first_edges(time_s: FloatArray, poles: int) -> FloatArray:
    """Begin with an edge behind which half of the first borders were seen; nothing where there is none."""
    size = _first_borders(poles)
    there = np.isfinite(time_s)
    if time_s.size < size:
        return time_s[:0]
    seen = np.convolve(there, np.ones(size), mode="valid")
    good = np.flatnonzero(there[: seen.size] & (seen >= size / 2.0))
    return time_s[good[0] :] if good.size else time_s[:0]


def _run(time_s: FloatArray, poles: int, rate_noise: float, jitter: float) -> _Run:
    state, covariance = _begin(time_s, poles)
    seen, seen_there = np.zeros(poles), np.isfinite(time_s)
    log_likelihood, squares, count = 0.0, 0.0, 0
    for border in range(1, time_s.size):
        _predict(state, covariance, (rate_noise * state[1]) ** 2)
        measured_s = time_s[border]
        if not seen_there[border]:
            continue
        place = 3 + border % poles
        pitch = state[1]
        reach = covariance[0] + pitch * covariance[place]
        variance = reach[0] + pitch * reach[place] + (jitter * pitch) ** 2
        miss = measured_s - state[0] - pitch * state[place]
        square = miss * miss / variance
        log_likelihood -= 0.5 * (np.log(variance) + min(square, GATE_SIGMA**2))
        if square > GATE_SIGMA**2:
            continue
        state += reach * (miss / variance)
        covariance -= np.outer(reach / variance, reach)
        seen[place - 3] += 1.0
        squares, count = squares + square, count + 1
    return _Run(state, covariance, float(log_likelihood), max(squares / max(count, 1), 1.0), seen)


def _begin(time_s: FloatArray, poles: int) -> tuple[FloatArray, FloatArray]:
    """Start from a line through the first borders."""
    near = time_s[: _first_borders(poles)]
    border = np.flatnonzero(np.isfinite(near))
    slope, origin = np.polyfit(border, near[border], 1)
    state = np.zeros(3 + poles)
    state[:2] = origin, slope
    covariance = np.zeros((3 + poles, 3 + poles))
    covariance[0, 0] = (2.0 * FIRST_SHIFT_POLE * slope) ** 2
    covariance[1, 1] = (FIRST_RATE * slope) ** 2
    covariance[2, 2] = (FIRST_RATE * slope / near.size) ** 2
    covariance[3:, 3:] = FIRST_SHIFT_POLE**2 * (np.eye(poles) - 1.0 / poles)
    return state, covariance


def _predict(state: FloatArray, covariance: FloatArray, rate_variance: float) -> None:
    """Move one border on, in place."""
    state[0] += state[1] + 0.5 * state[2]
    state[1] += state[2]
    covariance[0] += covariance[1] + 0.5 * covariance[2]
    covariance[1] += covariance[2]
    covariance[:, 0] += covariance[:, 1] + 0.5 * covariance[:, 2]
    covariance[:, 1] += covariance[:, 2]
    covariance[0, 0] += rate_variance / 3.0
    covariance[0, 1] += rate_variance / 2.0
    covariance[1, 0] += rate_variance / 2.0
    covariance[1, 1] += rate_variance
    covariance[2, 2] += 1e-4 * rate_variance


def _smooth_out(run: _Run, time_s: FloatArray, poles: int) -> FilteredPitch:
    there = run.seen > 0
    shift = np.where(there, run.state[3:], np.nan)
    # a border never seen keeps its first uncertainty; the mean is taken over those seen
    weight = np.eye(poles)[there] - there / np.count_nonzero(there)
    spread = weight @ run.covariance[3:, 3:] @ weight.T
    std = np.full(poles, np.nan)
    std[there] = np.sqrt(np.maximum(np.diag(spread), 0.0) * run.excess)
    return FilteredPitch(shift - np.nanmean(shift), std, time_s.size / poles)
