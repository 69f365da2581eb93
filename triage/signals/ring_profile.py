"""A wheel's ripple, losses and noise at every angle, each with its uncertainty."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from triage.signals.ring_response import RING_BINS
from triage.speed_log import BoolArray, FloatArray


@dataclass(frozen=True, slots=True)
class RingProfile:
    """What the samples at each angle show, as recorded: the unit's delay and smear are still in it.

    Attributes
    ----------
    count : float64[96]
        Samples in each angle bin of 3.75 degrees.
    mean_ratio, mean_std_ratio : float64[96]
        Mean relative ripple and its standard uncertainty; NaN in a bin without a sample.
    loss_rate, loss_std_rate : float64[96]
        Share of the samples that are disturbed, and its standard uncertainty.
    noise_ratio, noise_std_ratio : float64[96]
        Standard deviation of the ripple from turn to turn, and its standard uncertainty.
    """

    count: FloatArray
    mean_ratio: FloatArray
    mean_std_ratio: FloatArray
    loss_rate: FloatArray
    loss_std_rate: FloatArray
    noise_ratio: FloatArray
    noise_std_ratio: FloatArray


def profile_ring(angle_bin: NDArray[np.intp], ripple: FloatArray, disturbed: BoolArray) -> RingProfile:
    """Average the samples of a wheel over its ring.

    Parameters
    ----------
    angle_bin : int[N]
        0 to 95.
    ripple : float64[N]
    disturbed : bool[N]

    Returns
    -------
    RingProfile

    Notes
    -----
    Samples of one bin come from different turns, or are so close that they say little more than one; at
    walking pace and 100 samples a second a bin holds about ten of one passage, and the uncertainties of
    ``mean_ratio`` are then too small by up to a factor of three. The uncertainty of a share is that of
    Laplace's estimate, so that it is not 0 where nothing was lost.
    """
    count = np.bincount(angle_bin, minlength=RING_BINS).astype(float)
    some = np.maximum(count, 1.0)
    mean = np.bincount(angle_bin, weights=ripple, minlength=RING_BINS) / some
    power = np.bincount(angle_bin, weights=ripple * ripple, minlength=RING_BINS) / some
    lost = np.bincount(angle_bin[disturbed], minlength=RING_BINS).astype(float)
    noise = np.sqrt(np.maximum(power - mean**2, 0.0) * some / np.maximum(some - 1.0, 1.0))
    likely = (lost + 1.0) / (count + 2.0)
    empty = count == 0.0
    return RingProfile(
        count=count,
        mean_ratio=np.where(empty, np.nan, mean),
        mean_std_ratio=np.where(count > 1.0, noise / np.sqrt(some), np.nan),
        loss_rate=np.where(empty, np.nan, lost / some),
        loss_std_rate=np.sqrt(likely * (1.0 - likely) / (count + 3.0)),
        noise_ratio=np.where(count > 1.0, noise, np.nan),
        noise_std_ratio=np.where(count > 1.0, noise / np.sqrt(2.0 * np.maximum(some - 1.0, 1.0)), np.nan),
    )
