"""The quick part of each wheel's divergence: what is left when slow offsets are taken out."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from triage.side_by_side import map_side_by_side
from triage.signals.conditioning import CommonClock
from triage.signals.running import (
    middle_of_others,
    middle_value,
    quantiles_of,
    robust_sigma,
    slow_course,
    stride_of,
    zero_for_missing,
)
from triage.signals.vehicle_reference import VehicleReference
from triage.speed_log import FloatArray

SLOW_BLOCK_S = 0.4
"""Five of these blocks make the window of the slow course, about two seconds."""

ROUGHNESS_BLOCK_S = 0.25
SPEED_BINS = 6


@dataclass(frozen=True, slots=True)
class Residuals:
    """Rows follow ``CORNERS``.

    Attributes
    ----------
    fast_ratio : float64[4, N]
        Relative deviation of each wheel from what the others demand, its slow course taken out; NaN where
        it cannot be formed.
    slow_ratio : float64[4, N]
        The slow course (about two seconds).
    sound_sigma_ratio : float64[N]
        Standard deviation of ``fast_ratio`` that a sound wheel of this log shows at this speed.
    roughness_ratio : float64[4, N]
        How much the three OTHER wheels are shaken at this moment (road, bumps, brake control).
    sigma_ratio : float64[4]
        Robust standard deviation of each wheel over the whole drive.
    """

    fast_ratio: FloatArray
    slow_ratio: FloatArray
    sound_sigma_ratio: FloatArray
    roughness_ratio: FloatArray
    sigma_ratio: FloatArray


def measure_residuals(clock: CommonClock, reference: VehicleReference) -> Residuals:
    """Split the divergence of every wheel into a slow and a fast part and learn the usual noise.

    Notes
    -----
    The noise of a sound wheel is taken as the middle of the four wheels in the same range of speed, so that a
    wheel that is bad all the time does not raise its own bar.
    """
    per_block = clock.samples_in(SLOW_BLOCK_S)
    slow = np.empty_like(reference.divergence_ratio)
    fast = np.empty_like(slow)

    def split(row: int) -> None:
        slow[row] = _slow_part(clock, reference, row, per_block)
        np.add(reference.divergence_ratio[row], 1.0, out=fast[row])
        fast[row] /= 1.0 + slow[row]
        fast[row] -= 1.0

    map_side_by_side(split, range(4))
    # in one piece, for it is gone through again and again
    thinned = np.ascontiguousarray(fast[:, :: stride_of(fast.shape[1])])
    steps = _step_noise(clock, reference.reference_mps)
    judged = np.isfinite(fast).any(axis=0)
    least = middle_value(steps[judged]) if judged.any() else 0.0
    return Residuals(
        fast_ratio=fast,
        slow_ratio=slow,
        sound_sigma_ratio=np.maximum(_sigma_by_speed(thinned, reference.reference_mps), steps),
        roughness_ratio=_roughness_of_others(fast, clock.samples_in(ROUGHNESS_BLOCK_S)),
        sigma_ratio=np.array([max(robust_sigma(row), least) for row in thinned]),
    )


def _slow_part(clock: CommonClock, reference: VehicleReference, row: int, per_block: int) -> FloatArray:
    """Slow course of one wheel's divergence over its own samples, losses left out; 0 where there is none."""
    lost = clock.speed_mps[row] < 0.5 * reference.expected_mps[row]
    divergence = np.where(lost | ~clock.fresh[row], np.nan, reference.divergence_ratio[row])
    return np.nan_to_num(slow_course(divergence, per_block=per_block), copy=False)


def _step_noise(clock: CommonClock, reference_mps: FloatArray) -> FloatArray:
    """Give the standard deviation, over speed, that the recording step alone puts on a difference of wheels.

    With coarse steps most samples do not differ at all, so that a median would see no noise.
    """
    step_mps = float(np.median(clock.resolution_mps))
    noise: FloatArray = step_mps * np.sqrt(2.0 / 12.0) / np.maximum(zero_for_missing(reference_mps), 0.5)
    return noise


def _sigma_by_speed(thinned: FloatArray, every_mps: FloatArray) -> FloatArray:
    fast, reference_mps = thinned, every_mps[:: stride_of(every_mps.size)]
    judged = np.isfinite(reference_mps) & np.isfinite(fast).any(axis=0)
    if np.count_nonzero(judged) < 10:
        return np.full(every_mps.size, np.nan)
    bins = SPEED_BINS if np.count_nonzero(judged) >= 100 * SPEED_BINS else 1
    edges = quantiles_of(reference_mps[judged], np.linspace(0, 1, bins + 1))
    inside = np.clip(np.searchsorted(edges, reference_mps, side="right") - 1, 0, bins - 1)
    centres, sigmas = [], []
    for number in range(bins):
        chosen = np.flatnonzero(judged & (inside == number))
        sigma = np.array([robust_sigma(row[chosen]) for row in fast])
        if chosen.size and np.isfinite(sigma).any():
            centres.append(middle_value(reference_mps[chosen]))
            sigmas.append(float(np.nanmedian(sigma)))
    return np.interp(zero_for_missing(every_mps), centres, sigmas)


def _roughness_of_others(fast: FloatArray, per_block: int) -> FloatArray:
    """Local spread of the other wheels: block means of the size, the middle of three, widened by a block."""
    if not fast.size:
        return np.zeros(fast.shape)
    bounds = np.arange(0, fast.shape[1], per_block)
    mean = np.stack(map_side_by_side(lambda row: _mean_sizes(row, bounds), fast))
    padded = np.pad(middle_of_others(mean), ((0, 0), (1, 1)), mode="edge")
    local = np.maximum(np.maximum(padded[:, :-2], padded[:, 2:]), padded[:, 1:-1])
    return np.repeat(1.2533 * local, per_block, axis=1)[:, : fast.shape[1]]


def _mean_sizes(fast: FloatArray, bounds: NDArray[np.intp]) -> FloatArray:
    """Mean size in each block of samples, limited to 0.3; 0 where a block has none."""
    size = np.abs(fast)
    np.minimum(size, 0.3, out=size)
    present = np.isfinite(size)
    np.copyto(size, 0.0, where=~present)
    count = np.add.reduceat(present.astype(float), bounds)
    mean: FloatArray = np.add.reduceat(size, bounds) / np.maximum(count, 1.0)
    return mean
