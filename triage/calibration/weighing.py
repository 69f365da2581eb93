"""How much each measurement counts, learned where simulated drives are judged wrongly.

The verdict multiplies likelihoods as if findings were independent, and shares the evidence of a group evenly.
But a measurement that mostly says again what its neighbours say, or whose value hangs on the car more than on
the fault, deserves less than its share, and one that compares a wheel with the others of the same car more.
The weights are those under which the verdicts on drives, with tables counted on other drives, score best.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial
from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import minimize

from triage.calibration.ensemble import MeasuredCase, spread_over_cores
from triage.calibration.score import accepted
from triage.calibration.tables import count_tables
from triage.evidence.findings import build_findings
from triage.evidence.hypotheses import Hypothesis
from triage.evidence.likelihoods import LEAST_WEIGHT, MOST_WEIGHT
from triage.evidence.posterior import believe_all, known_findings
from triage.evidence.rule_tables import Rulebook
from triage.progress import Progress, no_progress
from triage.speed_log import BoolArray, FloatArray

HALVES: Final = 2

RIDGE: Final = 0.001
"""Cost of the square of a weight's distance from 1, in nats of the mean score: a measurement that few drives
have keeps its share (judgement)."""

LEAST_STATED: Final = 1e-4
"""Added to what a verdict gives the truth, so that a drive that shows nothing of its fault does not outweigh
hundreds (judgement)."""

ROUNDS: Final = 60
BATCH: Final = 256
"""Drives worked on at a time; more would not fit the quick memory."""


@dataclass(frozen=True, slots=True)
class Told:
    """What the findings of N drives say of A atoms.

    Attributes
    ----------
    evidence : float32[N, M, A]
        Weighted log-likelihoods, summed over the places of each of M measurements.
    is_true : bool[N, A]
        Atoms of the claims that are right.
    log_prior : float64[A]
    """

    evidence: NDArray[np.float32]
    is_true: BoolArray
    log_prior: FloatArray


def learn_weights(
    cases: Sequence[MeasuredCase], rulebook: Rulebook, *, workers: int = 1, progress: Progress = no_progress
) -> dict[str, float]:
    """Find the weight of every measurement.

    Parameters
    ----------
    cases : sequence of MeasuredCase
        Those the tables are counted on, every cause with a like number in turn.
    rulebook : Rulebook
        Gives bands, scopes, groups and priors; its own likelihoods are not used.
    workers : int
        Processes; their number changes nothing else.
    progress : Progress

    Returns
    -------
    dict of measurement id to float
        Rounded to hundredths, between ``LEAST_WEIGHT`` and ``MOST_WEIGHT``.

    Notes
    -----
    Each half of the drives is judged by tables counted on the other; the mean logarithm of the probability
    that the verdict gives to the truth is made as large as it gets, with a ridge towards 1.

    References
    ----------
    N. A. Zaidi, J. Cerquides, M. J. Carman, G. I. Webb, Alleviating naive Bayes attribute independence
    assumption by attribute weighting, J. Mach. Learn. Res. 14, 2013, 1947 (cited from memory).
    """
    halves = [cases[half::HALVES] for half in range(HALVES)]
    told = [
        _judged_by_others(own, others, rulebook, workers=workers, progress=progress)
        for own, others in zip(halves, reversed(halves), strict=True)
    ]
    return dict(zip(rulebook.measurements, best_weights(told).round(2).tolist(), strict=True))


def best_weights(told: Sequence[Told]) -> FloatArray:
    """Return the weights under which the verdicts score best, float64[M]."""
    start = np.ones(told[0].evidence.shape[1])
    best = minimize(
        _cost,
        start,
        args=(told,),
        jac=True,
        method="L-BFGS-B",
        bounds=[(LEAST_WEIGHT, MOST_WEIGHT)] * start.size,
        options={"maxiter": ROUNDS},
    )
    weights: FloatArray = best.x
    return weights


def _judged_by_others(
    own: Sequence[MeasuredCase],
    others: Sequence[MeasuredCase],
    rulebook: Rulebook,
    *,
    workers: int,
    progress: Progress,
) -> Told:
    counted = count_tables(others, rulebook, evidence="", workers=workers, progress=progress)
    book = replace(rulebook, likelihoods=counted.tables, variants=counted.variants)
    rows = spread_over_cores(
        partial(_evidence, book), own, workers=workers, doing="Weighing measurements", progress=progress
    )
    prior = believe_all((), book)
    hypotheses = [book.hypotheses[atom.index] for atom in prior.atoms]
    is_true = [
        [claim in accepted(Hypothesis(one.case.corner, one.case.cause)) for claim in hypotheses]
        for one in own
    ]
    return Told(np.stack(rows), np.array(is_true, dtype=np.bool_), np.log(prior.prior))


def _evidence(rulebook: Rulebook, one: MeasuredCase) -> NDArray[np.float32]:
    """Weighted log-likelihoods of one drive, float32[measurements, atoms]."""
    findings = known_findings(build_findings(one.measurements, rulebook), rulebook)
    belief = believe_all(findings, rulebook)
    row_of: Mapping[str, int] = {name: row for row, name in enumerate(rulebook.measurements)}
    evidence = np.zeros((len(row_of), len(belief.atoms)))
    weighted = belief.weights[:, np.newaxis] * np.log(belief.likelihood)
    for finding, said in zip(findings, weighted, strict=True):
        # What all atoms share moves nothing, and single precision has no digits to spare for it.
        evidence[row_of[finding.source]] += said - said.mean()
    return evidence.astype(np.float32)


def _cost(weights: FloatArray, told: Sequence[Told]) -> tuple[float, FloatArray]:
    """Mean of minus the logarithm of what the truth is given, the ridge added, and its gradient."""
    count = sum(len(half.evidence) for half in told)
    parts = [
        _cost_of(weights, half.evidence[rows], half.is_true[rows], half.log_prior)
        for half in told
        for first in range(0, len(half.evidence), BATCH)
        for rows in (slice(first, first + BATCH),)
    ]
    cost = sum(part[0] for part in parts) / count + RIDGE * float(((weights - 1.0) ** 2).sum())
    gradient = np.sum([part[1] for part in parts], axis=0) / count + 2.0 * RIDGE * (weights - 1.0)
    return cost, gradient


def _cost_of(
    weights: FloatArray, evidence: NDArray[np.float32], is_true: BoolArray, log_prior: FloatArray
) -> tuple[float, FloatArray]:
    """Sum over some drives.

    With p the probability of each atom and t that of the true ones, d log t / d weight is the evidence that
    the measurement gives to the true atoms, less what it gives to all.
    """
    score = (weights.astype(np.float32) @ evidence) + log_prior
    share = np.exp(score - score.max(axis=1, keepdims=True))
    share /= share.sum(axis=1, keepdims=True)
    true = share * is_true
    given = true.sum(axis=1)
    stated = given + LEAST_STATED
    change = (true - given[:, np.newaxis] * share) / stated[:, np.newaxis]
    gradient = np.matmul(evidence, change.astype(np.float32)[:, :, np.newaxis]).sum(axis=0)[:, 0]
    return -float(np.log(stated).sum()), -gradient.astype(np.float64)
