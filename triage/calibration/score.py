"""How good and how honest the verdicts are on cases whose truth is known."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from triage.calibration.ensemble import MeasuredCase
from triage.corners import CORNERS
from triage.evidence.hypotheses import Hypothesis, Posterior
from triage.evidence.judge import judge
from triage.evidence.rule_tables import NO_FAULT, Rulebook
from triage.speed_log import FloatArray

BLAMED_FROM = 0.3
"""A corner cause at or above this probability counts as a fault reported."""


@dataclass(frozen=True, slots=True)
class Verdict:
    """Truth and ranking of one case."""

    truth: Hypothesis
    posterior: Posterior

    @property
    def right(self) -> bool:
        """Whether the true cause and corner stand first.

        A rough bearing is invisible: no fault found is right too.
        """
        return self.posterior.first.hypothesis in accepted(self.truth)

    @property
    def right_corner(self) -> bool:
        """Whether the true corner stands first."""
        return any(self.posterior.first.hypothesis.corner == one.corner for one in accepted(self.truth))

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
        Brier score and its decomposition (A. H. Murphy, J. Appl. Meteorol. 12, 1973: BS = REL - RES + UNC,
        exact for binned forecasts).
    expected_calibration_error : float
        Mean of abs(stated - observed), weighted by count.
    """

    stated: FloatArray
    observed: FloatArray
    count: np.ndarray
    brier: float
    reliability: float
    resolution: float
    uncertainty: float
    expected_calibration_error: float


def accepted(truth: Hypothesis) -> tuple[Hypothesis, ...]:
    """Hypotheses that count as right for a truth."""
    if truth.cause == "bearing-roughness":
        return (truth, Hypothesis("vehicle", NO_FAULT))
    return (truth,)


def judge_cases(cases: Sequence[MeasuredCase], rulebook: Rulebook) -> tuple[Verdict, ...]:
    """Rank the causes of every case."""
    return tuple(
        Verdict(
            Hypothesis(one.case.corner, one.case.cause),
            judge(one.measurements, one.not_measurable, rulebook).posterior,
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
    return Reliability(
        stated=mean,
        observed=share,
        count=count[used],
        brier=reliability - resolution + uncertainty,
        reliability=reliability,
        resolution=resolution,
        uncertainty=uncertainty,
        expected_calibration_error=float(weight @ np.abs(mean - share)),
    )
