"""The noise of one wheel against the others."""

from __future__ import annotations

import numpy as np

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.measurement import Measured
from triage.signals.measures.building import measured, missing, moving_spans
from triage.signals.running import count_of

FEWEST_SAMPLES = 100
LEAST_RATIO = 0.1
"""A wheel that shows no noise at all is no better known than one with a tenth of the others'."""

SOUND_SPREAD = 0.12
"""Relative standard deviation of the ratio among the sound wheels of one car: tyres, axles and the pitch
errors of sound rings differ. Found on twelve wheels of healthy cars recorded at 83 to 100 Hz."""

NEEDED = "half a minute or more of driving, recorded in steps of 0.1 km/h or finer"


def measure_noise_ratio(analysis: Analysis, row: int) -> Measured:
    """Robust standard deviation of the wheel's fast deviation over the middle of the other three.

    A median absolute deviation is deaf to rare losses and sees what is there all the time. The standard
    uncertainty is that of the estimator, 1.17 / sqrt(2 n) (normal noise, textbook), and the spread among
    sound wheels, which tells nothing of a fault. Valid from 100 samples in motion, and where the recorded
    steps do not hide all noise.
    """
    sigma = analysis.residuals.sigma_ratio
    others = np.delete(sigma, row)
    count = count_of(np.isfinite(analysis.residuals.fast_ratio[row]))
    if count < FEWEST_SAMPLES or not np.isfinite(sigma[row]) or not np.isfinite(others).any():
        return missing("noise-ratio", row, "too few samples in motion", NEEDED)
    usual = float(np.nanmedian(others))
    if usual == 0.0:
        return missing(
            "noise-ratio",
            row,
            "the recorded numbers are too coarse to show any noise",
            NEEDED,
            by_driving=False,
        )
    ratio = float(sigma[row]) / max(usual, 1e-6)
    return measured(
        "noise-ratio",
        CORNERS[row],
        ratio,
        max(ratio, LEAST_RATIO) * np.hypot(SOUND_SPREAD, 1.17 / np.sqrt(2.0 * count)),
        unit="",
        count=count,
        spans=moving_spans(analysis, row),
    )
