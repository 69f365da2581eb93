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


def log_false_alarm(power: float, harmonics: int, stretches: int, resolutions: float) -> float:
    """Natural logarithm of the probability of so high a peak, also where that is too small for a float.

    Parameters
    ----------
    power : float
        Sum of powers at the highest point of a spectrum that is searched without gaps.
    harmonics, stretches : int
        As for :func:`false_alarm_probability`.
    resolutions : float
        Width of the search in units of the reciprocal length of a stretch, times the number of such searches
        among which the highest peak was taken.

    Notes
    -----
    Between two independent places the sum wanders, and its highest point is sought: there are as many trials
    more as it crosses the bar upwards more often than once for each. For a sum of n powers of even samples
    that is ``sqrt(pi/3 z) (1 - (n - 1) / z)`` times for high z.

    References
    ----------
    R. V. Baluev, Mon. Not. R. Astron. Soc. 385, 2008, 1279, sections 2 and 4 (from memory).
    """
    shape = harmonics * stretches
    crossings = np.sqrt(np.pi / 3.0 * power) * (1.0 - (shape - 1.0) / power) if power > shape else 1.0
    trials = resolutions * max(float(crossings), 1.0)
    single = float(gammaincc(shape, power))
    if single > 1e-290:
        return float(np.log(max(false_alarm_probability(power, harmonics, stretches, trials), 1e-300)))
    # Leading term of the upper incomplete gamma function.
    return float(np.log(trials) - power + (shape - 1) * np.log(power) - gammaln(shape))
