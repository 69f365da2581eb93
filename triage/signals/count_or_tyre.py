"""Whether a wheel with a constant ratio has another pole count or another tyre, by where its ripple repeats.

A control unit multiplies counted pulses by one fixed circumference. By its own counting a wheel with another
tyre therefore repeats its ripple after the same distance as the other wheels; one whose encoder has n instead
of m poles does so after n/m of it, and n/m is also the constant ratio of its speed.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.signals.revolution_line import COMBS, DRIFT_RATIO, comb_sums, search_band
from triage.signals.ripple_spectra import RippleSpectra
from triage.speed_log import FloatArray

LINE_POWERS: Final = (1.0, 3.0, 10.0, 30.0)
"""Powers a line may have at each of its harmonics, over the usual level; each is as likely (judgement)."""

NO_LINE: Final = 0.5
"""Probability that a wheel shows no line at all (judgement)."""

CANDIDATES: Final = 12_000
"""Lengths of a turn that are tried, evenly in their logarithm: 0.004 % apart at 1.6 to 2.6 m."""

SPREADS: Final = 2.0
"""Half width, in standard uncertainties, of the places in which a line may lie."""

MOST_OF_RATIO: Final = 0.45
"""Both places stay apart: neither reaches beyond this share of the ratio."""


@dataclass(frozen=True, slots=True)
class _Evidence:
    """How strongly one wheel speaks for a turn of every length.

    Attributes
    ----------
    log_per_m : float64[N]
        Logarithm of the wavenumber, rising.
    passed : float64[N + 1]
        Likelihood ratios of a line against none, summed up to each, over the greatest one.
    log_greatest : float
        Logarithm of that.
    """

    log_per_m: FloatArray
    passed: FloatArray
    log_greatest: float


def weigh_count_against_tyre(
    spectra: Sequence[RippleSpectra | None],
    row: int,
    *,
    ratio: float,
    ratio_std: float,
    circumference_m: float | None = None,
) -> float | None:
    """Weigh another pole count of a wheel against another tyre on it.

    Parameters
    ----------
    spectra : four RippleSpectra or None
        Of every wheel over the distance by its own counting.
    row : int
        Wheel with the constant ratio.
    ratio, ratio_std : float
        Its ratio less 1, and the standard uncertainty.
    circumference_m : float, optional
        Known circumference; narrows the search to 6 % around it.

    Returns
    -------
    float or None
        Logarithm to base 10 of the likelihood ratio, positive for the count; None with too little driving.

    Notes
    -----
    No wheel needs to show a line of its own: the length of the turn is unknown and is summed over, all wheels
    agreeing on it. Under noise the power of a harmonic over its level follows the exponential law of mean 1
    (J. D. Scargle, Astrophys. J. 263, 1982, 835; from memory), under a line of power A one of mean 1 + A, so
    that a summed power S of k of them has the likelihood ratio ``exp(S A / (1 + A)) / (1 + A)^k``; the mean
    over combs and powers stands for the line that is not known.
    """
    band = search_band(circumference_m)
    own, others = spectra[row], [one for n, one in enumerate(spectra) if n != row and one is not None]
    if own is None or not others:
        return None
    shift = float(np.log1p(ratio))
    limit = MOST_OF_RATIO * abs(shift)
    alike = min(SPREADS * DRIFT_RATIO, limit)
    log_per_m = np.linspace(-np.log(band[1]), -np.log(band[0]), CANDIDATES)
    together = sum(_log_ratio(_evidence(one, band, 0.0), log_per_m, alike) for one in others)
    of_own = _evidence(own, band, abs(shift))
    as_tyre = together + _log_ratio(of_own, log_per_m, alike)
    counted = min(SPREADS * float(np.hypot(ratio_std, DRIFT_RATIO)), limit)
    as_count = together + _log_ratio(of_own, log_per_m - shift, counted)
    return float((np.logaddexp.reduce(as_count) - np.logaddexp.reduce(as_tyre)) / np.log(10.0))


def _evidence(spectra: RippleSpectra, band: tuple[float, float], beyond: float) -> _Evidence:
    """Likelihood ratios in a band of circumferences and a little beyond."""
    margin = float(np.exp(beyond + 2.0 * SPREADS * DRIFT_RATIO))
    candidates, sums = comb_sums(spectra, (band[0] / margin, band[1] * margin))
    powers = np.array(LINE_POWERS)[:, None]
    log_ratios = np.concatenate(
        [
            sums[harmonics - 1] * powers / (1.0 + powers) - spectra.count * harmonics * np.log1p(powers)
            for harmonics in COMBS
        ]
    )
    mean = np.logaddexp.reduce(log_ratios, axis=0) - np.log(log_ratios.shape[0])
    greatest = float(mean.max())
    passed = np.concatenate(([0.0], np.cumsum(np.exp(mean - greatest))))
    return _Evidence(np.log(candidates), passed, greatest)


def _log_ratio(evidence: _Evidence, log_per_m: FloatArray, half: float) -> FloatArray:
    """Likelihood ratio of a line somewhere within the places, or of none at all, in natural logarithm."""
    first = np.searchsorted(evidence.log_per_m, log_per_m - half)
    stop = np.maximum(np.searchsorted(evidence.log_per_m, log_per_m + half), first + 1)
    inside = (evidence.passed[stop] - evidence.passed[first]) / (stop - first)
    with np.errstate(divide="ignore"):
        line = np.log1p(-NO_LINE) + evidence.log_greatest + np.log(np.maximum(inside, 0.0))
    either: FloatArray = np.logaddexp(np.log(NO_LINE), line)
    return either
