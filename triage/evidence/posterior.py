"""How probable every (corner, cause) is under the findings, by exact enumeration.

The claims are split into *atoms*: (corner, cause, variant) for every variant of a corner cause, (vehicle,
cause, variant) for those of a vehicle-wide one, and four for ``other``, which stands for something unknown at
one corner that is not known either. A *variant* is one of the ways in which a cause shows itself (see
:mod:`triage.evidence.likelihoods`). One is at work and the log does not say which, so the probability of a
claim is the sum over its variants: the findings must all fit one variant, not each finding some variant.

::

    score(atom) = log prior + sum over findings of  weight * log sum_b P(band b | value) P(b | atom)

A finding at the blamed corner uses the variant's row, at any other corner the row ``sound``. A vehicle-wide
cause uses its own row at every corner and, like all causes, on findings of the whole vehicle.

Weights: findings of one group at one place share their evidence. With ``weight`` of the group given, that is
the factor; without, 1/sqrt(n), so that n readings of one fact count as sqrt(n) independent ones. Here n is
the number of findings that say something: (sum s)² / (sum s²), s being the spread of a finding's
log-likelihood over the atoms. It is the plain number when all say equally much, and a finding that says
nothing does not weaken its neighbours. Measurements are further multiplied by the weight of their table,
learned where simulated drives were judged wrongly, and divided by the rule book's temperature; answers are
not, and one that belongs to no group counts fully.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.corners import Place
from triage.evidence.atoms import Atom, AtomTables, all_atoms
from triage.evidence.explanation import contributions_bit
from triage.evidence.hypotheses import Finding, Posterior, RankedHypothesis
from triage.evidence.rule_tables import Rulebook
from triage.signals.one_core import product_on_one_core
from triage.speed_log import FloatArray

SMALLEST_LIKELIHOOD: Final = 1e-300
"""Keeps a finding whose bands have other names than the rule book's from making everything impossible."""

ROWS_AT_ONCE: Final = 16


@dataclass(frozen=True, slots=True)
class Belief:
    """Probabilities before they are sorted, and what they were made from.

    Attributes
    ----------
    tables : AtomTables
        What each atom makes one expect.
    prior, probability : float64[atoms]
        Before and after the findings; each sums to 1.
    likelihood : float64[findings, atoms]
        P(finding | atom).
    weights : float64[findings]
        Factor on each finding's log-likelihood.
    """

    tables: AtomTables
    prior: FloatArray
    probability: FloatArray
    likelihood: FloatArray
    weights: FloatArray

    @property
    def atoms(self) -> tuple[Atom, ...]:
        """Those that the probabilities belong to."""
        return self.tables.atoms

    def by_hypothesis(self, values: FloatArray) -> FloatArray:
        """Sum values over the atoms of each hypothesis; ``values`` has atoms along its last axis."""
        if values.ndim == 1:
            sums: FloatArray = values @ self.tables.belongs
            return sums
        return product_on_one_core(values, self.tables.belongs, rows=ROWS_AT_ONCE)


def rank_hypotheses(
    findings: Sequence[Finding], rulebook: Rulebook, *, belief: Belief | None = None
) -> Posterior:
    """Rank every hypothesis by its probability under the findings.

    Parameters
    ----------
    findings : sequence of Finding
        Measurements and answers, in any order; the result does not depend on it.
    rulebook : Rulebook
    belief : Belief, optional
        That of these findings, where it is worked out already (see :func:`believe_all`).

    Returns
    -------
    Posterior
        All hypotheses, most probable first; the probabilities are above 0 and sum to 1.
    """
    ordered = known_findings(findings, rulebook)
    belief = belief or believe(ordered, rulebook)
    probability = belief.by_hypothesis(belief.probability)
    weighted = np.maximum(belief.likelihood ** belief.weights[:, np.newaxis], SMALLEST_LIKELIHOOD)
    bits = contributions_bit(
        belief.by_hypothesis(weighted * belief.prior), prior=belief.by_hypothesis(belief.prior)
    )
    names = [finding.id for finding in ordered]
    ranked = [
        RankedHypothesis(hypothesis, _printed(share), dict(zip(names, column.tolist(), strict=True)))
        for hypothesis, share, column in zip(rulebook.hypotheses, probability, bits.T, strict=True)
    ]
    return Posterior(tuple(sorted(ranked, key=lambda line: (-line.probability, line.hypothesis))))


def _printed(share: float) -> float:
    # Equal claims at different corners differ in the last bits of their sums; without those their order is
    # fixed.
    return float(f"{share:.12g}")


def believe(findings: Sequence[Finding], rulebook: Rulebook) -> Belief:
    """Return the probability of every atom under the findings (all of them known to the rule book)."""
    tables, prior = all_atoms(rulebook), rulebook.once(_prior)
    likelihood = finding_likelihoods(findings, tables)
    log_likelihood = np.log(likelihood)
    weights = finding_weights(findings, rulebook, log_likelihood=log_likelihood, prior=prior)
    score = np.log(prior) + weights @ log_likelihood
    share = np.exp(score - score.max())
    floor = rulebook.scoring.floor
    probability = (1.0 - floor) * share / share.sum() + floor * prior
    return Belief(tables, prior, probability / probability.sum(), likelihood, weights)


def _prior(rulebook: Rulebook) -> FloatArray:
    """Probability of every atom before anything is found, float64[atoms]."""
    prior: FloatArray = np.array([atom.prior for atom in all_atoms(rulebook).atoms])
    prior /= prior.sum()
    prior.setflags(write=False)  # all beliefs by the rule book share it
    return prior


def believe_all(findings: Sequence[Finding], rulebook: Rulebook) -> Belief:
    """Return the same for findings in any order, known to the rule book or not."""
    return believe(known_findings(findings, rulebook), rulebook)


def known_findings(findings: Sequence[Finding], rulebook: Rulebook) -> tuple[Finding, ...]:
    """Leave out findings the rule book has no scale for, and bring the rest into a fixed order."""
    known = [
        finding
        for finding in findings
        if finding.source in rulebook.measurements or finding.source in rulebook.checks
    ]
    return tuple(sorted(known, key=lambda finding: finding.id))


def finding_likelihoods(findings: Sequence[Finding], tables: AtomTables) -> FloatArray:
    """Return P(finding | atom), float64[findings, atoms]; KeyError for one the rule book does not know."""
    rows = np.empty((len(findings), len(tables.atoms)))
    sound = np.empty((len(findings), 1))
    reached = np.empty(rows.shape, dtype=bool)
    for number, finding in enumerate(findings):
        expected = tables.expected(finding.source)
        shares = np.array([finding.band_probability.get(name, 0.0) for name in expected.names])
        rows[number], sound[number] = expected.told @ shares, expected.sound @ shares
        reached[number] = tables.reached(finding.corner)
    likelihood: FloatArray = np.maximum(np.where(reached, rows, sound), SMALLEST_LIKELIHOOD)
    return likelihood


def finding_weights(
    findings: Sequence[Finding], rulebook: Rulebook, *, log_likelihood: FloatArray, prior: FloatArray
) -> FloatArray:
    """Return the factor on each finding's log-likelihood, float64[findings] (see the head of this module)."""
    weights = np.ones(len(findings))
    spread = _spread(log_likelihood, prior)
    for (group, _), members in _groups(findings, rulebook).items():
        given = rulebook.groups[group].weight
        weight = given if given is not None else 1.0 / math.sqrt(effective_count(spread[members]))
        weights[members] = weight
    for i, finding in enumerate(findings):
        if finding.source in rulebook.measurements:
            weights[i] *= rulebook.likelihoods[finding.source].weight / rulebook.scoring.temperature
    return weights


def effective_count(spread: FloatArray) -> float:
    """Return how many findings say something, between 1 and their number."""
    squares = float(np.sum(spread**2))
    return max(float(np.sum(spread)) ** 2 / squares, 1.0) if squares > 0.0 else 1.0


def _spread(log_likelihood: FloatArray, prior: FloatArray) -> FloatArray:
    mean = log_likelihood @ prior
    spread: FloatArray = np.sqrt((log_likelihood - mean[:, np.newaxis]) ** 2 @ prior)
    return spread


def _groups(findings: Sequence[Finding], rulebook: Rulebook) -> dict[tuple[str, Place], list[int]]:
    members: dict[tuple[str, Place], list[int]] = {}
    for i, finding in enumerate(findings):
        rule = rulebook.measurements.get(finding.source) or rulebook.checks.get(finding.source)
        if rule is not None and rule.group:
            members.setdefault((rule.group, finding.corner), []).append(i)
    return members
