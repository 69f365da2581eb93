"""How good and how honest the verdicts are on cases whose truth is known."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from triage.calibration.ensemble import ROUGH_BEARING, MeasuredCase
from triage.corners import CORNERS
from triage.evidence.hypotheses import Hypothesis, Posterior
from triage.evidence.judge import judge
from triage.evidence.rule_tables import NO_FAULT, Rulebook
from triage.speed_log import FloatArray

BLAMED_FROM = 0.3
"""A corner cause at or above this probability counts as a fault reported."""


@dataclass(frozen=True, slots=True)
class Verdict:
    """Truth and ranking of one case.

    Attributes
    ----------
    truth : Hypothesis
    posterior : Posterior
    severity : float
        0 invisible to 1 blatant; NaN when it is not told.
    traits : tuple of str
        What about the car, the drive and the recording looks like a fault though none is there.
    """

    truth: Hypothesis
    posterior: Posterior
    severity: float = float("nan")
    traits: tuple[str, ...] = ()

    @property
    def right(self) -> bool:
        """Whether the true cause and corner stand first.

        A rough bearing is invisible: no fault found is right too.
        """
        return self.posterior.first.hypothesis in accepted(self.truth)

    @property
    def right_among_two(self) -> bool:
        """Whether the true cause and corner stand first or second."""
        return any(line.hypothesis in accepted(self.truth) for line in self.posterior.ranking[:2])

    @property
    def right_corner(self) -> bool:
        """Whether the true corner stands first."""
        return any(self.posterior.first.hypothesis.corner == one.corner for one in accepted(self.truth))

    @property
    def stated(self) -> float:
        """Probability, by the verdict's own account, that :attr:`right` holds, 0 to 1.

        Where no fault found stands first it is right for rough bearings too, and their claims count with it.
        """
        first = self.posterior.first.hypothesis
        agreeing = (line for line in self.posterior.ranking if first in accepted(line.hypothesis))
        return min(sum(line.probability for line in agreeing), 1.0)

    @property
    def blames_corner(self) -> bool:
        """Whether any single wheel is blamed."""
        return any(
            line.hypothesis.corner in CORNERS and line.probability >= BLAMED_FROM
            for line in self.posterior.ranking
        )


@dataclass(frozen=True, slots=True)
class Reliability:
    """Reliability of the first place in bins of its stated probability.

    Attributes
    ----------
    stated, observed : float64[B]
        Mean stated probability and share of right verdicts.
    count : int64[B]
    brier, reliability, resolution, uncertainty : float
        Brier score of the stated probabilities, and its parts (A. H. Murphy, J. Appl. Meteorol. 12, 1973:
        BS = REL - RES + UNC where all forecasts of a bin are alike).
    within_bins : float
        What the forecasts of a bin differ by: their variance less twice their covariance with what happened.
        With it BS = REL - RES + UNC + within, exactly (D. B. Stephenson, C. A. S. Coelho, I. T. Jolliffe,
        Weather Forecast. 23, 2008; cited from memory, tested against the plain mean of squares).
    expected_calibration_error : float
        Mean of abs(stated - observed), weighted by count.
    """

    stated: FloatArray
    observed: FloatArray
    count: NDArray[np.intp]
    brier: float
    reliability: float
    resolution: float
    uncertainty: float
    within_bins: float
    expected_calibration_error: float


def accepted(truth: Hypothesis) -> tuple[Hypothesis, ...]:
    """Hypotheses that count as right for a truth."""
    if truth.cause == ROUGH_BEARING:
        return (truth, Hypothesis("vehicle", NO_FAULT))
    return (truth,)


def judge_cases(cases: Sequence[MeasuredCase], rulebook: Rulebook) -> tuple[Verdict, ...]:
    """Rank the causes of every case."""
    return tuple(
        Verdict(
            Hypothesis(one.case.corner, one.case.cause),
            judge(one.measurements, one.not_measurable, rulebook).posterior,
            one.case.severity,
            one.traits,
        )
        for one in cases
    )


def measure_reliability(stated: FloatArray, happened: FloatArray, *, bins: int = 10) -> Reliability:
    """Compare stated probabilities with what happened.

    Parameters
    ----------
    stated : float64[N]
        Probabilities, 0 to 1.
    happened : float64[N]
        1 where it was so, else 0.
    bins : int
        Equal bins of the stated probability; each is represented by its mean.
    """
    place = np.minimum((stated * bins).astype(np.intp), bins - 1)
    count = np.bincount(place, minlength=bins)
    used = count > 0
    mean = np.bincount(place, stated, minlength=bins)[used] / count[used]
    share = np.bincount(place, happened, minlength=bins)[used] / count[used]
    weight = count[used] / stated.size
    base = float(happened.mean())
    reliability = float(weight @ (mean - share) ** 2)
    resolution = float(weight @ (share - base) ** 2)
    uncertainty = base * (1.0 - base)
    brier = float(np.mean((stated - happened) ** 2))
    return Reliability(
        stated=mean,
        observed=share,
        count=count[used],
        brier=brier,
        reliability=reliability,
        resolution=resolution,
        uncertainty=uncertainty,
        within_bins=_within_bins(stated, happened, place),
        expected_calibration_error=float(weight @ np.abs(mean - share)),
    )


def _within_bins(stated: FloatArray, happened: FloatArray, place: NDArray[np.intp]) -> float:
    count = np.maximum(np.bincount(place), 1)
    away = stated - (np.bincount(place, stated) / count)[place]
    surprise = happened - (np.bincount(place, happened) / count)[place]
    return float(np.mean(away**2 - 2.0 * away * surprise))
