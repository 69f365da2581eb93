"""How far events keep to part of a turn, however rare they are."""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.speed_log import BoolArray

HARMONICS: Final = 8
"""Finer structure is smeared by what the wheel turns between two samples; fewer would not part a spot from a
sector (judgement)."""


def concentration(angle_bin: NDArray[np.intp], event: BoolArray, bins: int) -> tuple[float, float]:
    """Say which part of the ring events leave out: 0 when they come evenly, near 1 when all at one place.

    Parameters
    ----------
    angle_bin : int[N]
        Angle of every sample, 0 to ``bins - 1``.
    event : bool[N]
        Samples at which an event begins.
    bins : int

    Returns
    -------
    share, standard uncertainty : float
        Events that come evenly within a fraction w of the ring, and nowhere else, give about 1 - w. (0, 1)
        without events.

    Notes
    -----
    The squared coefficient of variation of the density over the ring is K = sum of 2 |c_h|^2 over the
    harmonics h, c_h being the Fourier coefficient of the events less that of all samples, per event. Chance
    adds 1/N to every |c_h|^2, which is taken off; for N events at even angles the sum then scatters by
    2 sqrt(H) / N, and by a known pattern 2 sqrt(2 K / N) more. A density that is even on the fraction w has
    K = 1/w - 1, so that K / (1 + K) = 1 - w. Unlike a share of variance it does not shrink as events grow
    rare.

    References
    ----------
    Sums of squared harmonics as a test of events for a period: R. Buccheri et al., Astron. Astrophys. 128,
    1983, 245 (cited from memory).
    """
    events = float(np.count_nonzero(event))
    if not events:
        return 0.0, 1.0
    seen = np.bincount(angle_bin, minlength=bins)
    struck = np.bincount(angle_bin[event], minlength=bins)
    odds = np.fft.rfft(struck / events - seen / seen.sum())[1 : HARMONICS + 1]
    contrast = max(float(np.sum(2.0 * np.abs(odds) ** 2)) - 2.0 * odds.size / events, 0.0)
    std = float(np.sqrt(4.0 * odds.size / events**2 + 8.0 * contrast / events))
    return contrast / (1.0 + contrast), min(std / (1.0 + contrast) ** 2, 1.0)
