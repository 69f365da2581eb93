"""Chance: how probable noise alone makes a peak of a spectrum, or a comb of peaks."""

from __future__ import annotations

import numpy as np
from scipy.special import gammaincc, gammaln


def false_alarm_probability(power: float, harmonics: int, stretches: int, trials: float) -> float:
    """Probability that noise gives at least this summed power somewhere among independent trials.

    Parameters
    ----------
    power : float
        Sum of powers, each in units of the noise variance of its spectrum (mean 1 under noise).
    harmonics, stretches : int
        Number of harmonics and of incoherent stretches summed.
    trials : float
        Number of independent places searched.

    Notes
    -----
    One power is exponentially distributed (chi-square with 2 degrees of freedom), a sum of n of them gamma
    distributed; for n = 1 this is 1 - (1 - exp(-z))**M.

    References
    ----------
    J. D. Scargle, Astrophys. J. 263, 1982, 835 (formula from memory).
    """
    single = float(gammaincc(harmonics * stretches, power))
    return float(-np.expm1(trials * np.log1p(-min(single, 1.0 - 1e-16))))


def log_false_alarm(power: float, harmonics: int, stretches: int, trials: float) -> float:
    """Natural logarithm of the false-alarm probability, also where that is too small for a float."""
    shape = harmonics * stretches
    single = float(gammaincc(shape, power))
    if single > 1e-290:
        return float(np.log(max(false_alarm_probability(power, harmonics, stretches, trials), 1e-300)))
    # Leading term of the upper incomplete gamma function.
    return float(np.log(trials) - power + (shape - 1) * np.log(power) - gammaln(shape))
