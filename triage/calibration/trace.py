"""Whether a fault built into a drive can be seen in the log at all."""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.corners import CORNERS
from triage.signals.analysis import analyse
from triage.speed_log import FloatArray, SpeedLog, SpeedTrace

NO_TRACE: Final = "leaves no trace"

STRONG: Final = 5.0
FEWEST_STRONG: Final = 3
STEADY: Final = 1.0
"""A fault shows in so many samples this far out of the wheel's own noise, or by changing all of them by about
as much as that noise (judgement). Less is what another draw of the same sensor's jitter does too."""

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
        False where no triage could find the fault, however good. True does not say that one can.
    """
    sigma = analyse(healthy).residuals.sigma_ratio
    usual = float(np.nanmedian(sigma)) if np.isfinite(sigma).any() else 1.0
    sigma = np.maximum(np.where(np.isfinite(sigma), sigma, usual), 1e-5)
    return any(
        _differs(faulty.wheels[corner], healthy.wheels[corner], float(sigma[row]))
        for row, corner in enumerate(CORNERS)
    )


def _differs(faulty: SpeedTrace, healthy: SpeedTrace, sigma_ratio: float) -> bool:
    if np.any(faulty.invalid & ~healthy.invalid):
        return True
    judged = ~healthy.invalid & (healthy.speed_mps > SLOWEST_MPS)
    if not judged.any():
        return False
    change: FloatArray = np.abs(faulty.speed_mps[judged] / healthy.speed_mps[judged] - 1.0) / sigma_ratio
    strong = int(np.count_nonzero(change > STRONG))
    return strong >= FEWEST_STRONG or float(np.sqrt(np.mean(np.minimum(change, STRONG) ** 2))) >= STEADY
