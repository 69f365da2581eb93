"""How often losses begin at one speed against another: the exponent of a power law.

What happens once in every turn happens in step with the speed (exponent 1); what happens once a second does
not care (0); a gap that opens as the wheel end shakes, or a supply that shakes loose, more than keeps step; a
signal too weak at low speed falls silent when slow (below 0). Unlike the ratio of a faster to a slower half,
an exponent does not hang on how different the speeds of the drive were: its uncertainty does.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.speed_log import BoolArray, FloatArray

SLOWEST_MPS: Final = 1.0
"""Below it the speeds themselves are coarse: pulses come seldom, and rounding is large."""

BIN_MPS: Final = 0.25
"""Speeds closer than this are taken together; finer bins change nothing that shows."""

PRIOR_STD: Final = 3.0
"""Where no loss at all was seen at one end of the speeds, any steepness would do; beyond this exponent, which
a wheel that falls silent below a sharp speed reaches, nothing more is told apart (judgement)."""

BENT_STD: Final = 0.1
"""By so much, over the standard deviation of the logarithm of the speed, an exponent is off because the law
is bent: about what simulated dirt scatters by beyond its counts. A drive at nearly one speed tells little."""

ROUNDS: Final = 50
LONGEST_STEP: Final = 1.0
NARROWEST: Final = 1e-3
SETTLED: Final = 1e-8


@dataclass(frozen=True, slots=True)
class SpeedLaw:
    """Losses per second in proportion to the speed to a power.

    Attributes
    ----------
    exponent, std_uncertainty : float
        The uncertainty holds that no real law is a power.
    begun : int
        Losses that began, each counted once however long it lasted.
    """

    exponent: float
    std_uncertainty: float
    begun: int


def fit_speed_law(began: BoolArray, could_begin: BoolArray, speed_mps: FloatArray) -> SpeedLaw | None:
    """Fit the power of the speed with which losses begin.

    Parameters
    ----------
    began : bool[N]
        Samples in which a loss began.
    could_begin : bool[N]
        Samples in which one could have: the wheel turned, and was not lost already.
    speed_mps : float64[N]
        What the wheel should read.

    Returns
    -------
    SpeedLaw or None
        None where no loss began, or none could have.

    Notes
    -----
    Poisson regression of the counts in bins of speed on the logarithm of the speed, by Newton's method, with
    a weak normal prior on the exponent. Where the counts scatter by more than Poisson's law allows (losses
    that come in bunches, or a law that is no power), the variance is widened by Pearson's statistic over its
    degrees of freedom.

    References
    ----------
    P. McCullagh, J. A. Nelder, Generalized Linear Models, 2nd ed. 1989, sections 6.2 and 4.5 (from memory).
    """
    with np.errstate(invalid="ignore"):
        judged = could_begin & (speed_mps > SLOWEST_MPS)
    place = (speed_mps[judged] / BIN_MPS).astype(np.intp)
    exposure = np.bincount(place)
    begun = np.bincount(place[began[judged]], minlength=exposure.size).astype(np.float64)
    used = exposure > 0
    if not begun.any():
        return None
    log_speed = np.log((np.flatnonzero(used) + 0.5) * BIN_MPS)
    return _fit(begun[used], exposure[used].astype(np.float64), log_speed)


def _fit(begun: FloatArray, exposure: FloatArray, log_speed: FloatArray) -> SpeedLaw:
    from_middle = log_speed - float(exposure @ log_speed / exposure.sum())
    design = np.stack((np.ones(from_middle.size), from_middle))
    prior = np.diag((0.0, PRIOR_STD**-2))
    law = np.array([np.log(begun.sum() / exposure.sum()), 0.0])
    for _ in range(ROUNDS):
        expected = exposure * np.exp(law @ design)
        curvature = (design * expected) @ design.T + prior
        step = np.linalg.solve(curvature, design @ (begun - expected) - prior @ law)
        law = law + np.clip(step, -LONGEST_STEP, LONGEST_STEP)
        if np.abs(step).max() < SETTLED:
            break
    expected = exposure * np.exp(law @ design)
    variance = float(np.linalg.inv((design * expected) @ design.T + prior)[1, 1])
    spread = float(np.sqrt(exposure @ from_middle**2 / exposure.sum()))
    bent = BENT_STD / max(spread, NARROWEST)
    std = float(np.sqrt(variance * _bunching(begun, expected) + bent**2))
    return SpeedLaw(float(law[1]), std, int(begun.sum()))


def _bunching(begun: FloatArray, expected: FloatArray) -> float:
    """Variance of the counts against that of Poisson's law, at least 1."""
    freedom = max(begun.size - 2, 1)
    return max(float(np.sum((begun - expected) ** 2 / np.maximum(expected, 1e-9))) / freedom, 1.0)
