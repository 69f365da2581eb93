"""Whether a fault built into a drive can be seen in the log at all."""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.corners import CORNERS
from triage.signals.analysis import analyse
from triage.speed_log import SpeedLog, SpeedTrace

NO_TRACE: Final = "leaves no trace"

LEAST_DETECTABILITY: Final = 3.0
"""Below it even who knew the very course of the change would take it for noise, or noise for it, in one case
of fifteen or more."""

SLOWEST_MPS: Final = 1.0


def leaves_trace(faulty: SpeedLog, healthy: SpeedLog) -> bool:
    """Tell whether a fault changed a log by more than noise does.

    Parameters
    ----------
    faulty, healthy : SpeedLog
        The same drive with and without the fault, on the same time stamps, with the same draws of noise.

    Returns
    -------
    bool
        False where no triage could find the fault, as far as the noise is white. True does not say that one
        can: it would have to know beforehand what to look for. Single edges, where the log holds them, show
        any change.

    Notes
    -----
    The detectability of a known signal in white noise is the root of the sum of its squares in units of the
    noise; who knows the signal is right with the probability ``Phi(d / 2)``. The noise is the wheel's own and
    the rounding of the record.

    References
    ----------
    W. W. Peterson, T. G. Birdsall, W. C. Fox, The theory of signal detectability, IRE Trans. Inf. Theory 4,
    1954 (cited from memory).
    """
    if any(not np.array_equal(faulty.edges[corner], healthy.edges[corner]) for corner in healthy.edges):
        return True
    sigma = analyse(healthy).residuals.sigma_ratio
    usual = float(np.nanmedian(sigma)) if np.isfinite(sigma).any() else 1.0
    sigma = np.maximum(np.where(np.isfinite(sigma), sigma, usual), 1e-5)
    each = [
        _detectability(faulty.wheels[corner], healthy.wheels[corner], float(sigma[row]))
        for row, corner in enumerate(CORNERS)
    ]
    return float(np.hypot.reduce(each)) >= LEAST_DETECTABILITY


def _detectability(faulty: SpeedTrace, healthy: SpeedTrace, sigma_ratio: float) -> float:
    if np.any(faulty.invalid & ~healthy.invalid):
        return float("inf")
    judged = ~healthy.invalid & ~faulty.invalid
    rounding_mps = max(healthy.resolution_mps, 1e-4) / np.sqrt(12.0)
    noise_mps = np.hypot(np.maximum(healthy.speed_mps[judged], SLOWEST_MPS) * sigma_ratio, rounding_mps)
    change = (faulty.speed_mps[judged] - healthy.speed_mps[judged]) / noise_mps
    return float(np.sqrt(np.sum(change**2)))
