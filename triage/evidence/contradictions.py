"""Answers that nothing else known about the car leads one to expect, named with what speaks against them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.evidence.hypotheses import NOTEWORTHY_BIT, Finding, Hypothesis
from triage.evidence.next_checks import hypothesis_name
from triage.evidence.posterior import believe, finding_likelihoods, known_findings, rank_hypotheses
from triage.evidence.rule_tables import Rulebook
from triage.texts import Text
from triage.units import format_share

SURPRISING_BIT: Final = 4.5
"""An answer expected less often than once in 23 is worth a second look (judgement)."""

LEAST_RATIO: Final = 4.0
"""A rare answer counts only when it points somewhere: one claim makes it this much likelier (judgement)."""


@dataclass(frozen=True, slots=True)
class Contradiction:
    """An answer against the rest of what is known.

    Attributes
    ----------
    finding : str
        Id of the answer.
    against : str or None
        Id of the finding that speaks most against what the answer points to; None when none does.
    surprise_bit : float
        -log2 of the probability of the answer under everything else.
    text : str
        A few sentences for the user.
    """

    finding: str
    against: str | None
    surprise_bit: float
    text: str


def find_contradictions(findings: Sequence[Finding], rulebook: Rulebook) -> tuple[Contradiction, ...]:
    """Name the answers that contradict the log or other answers.

    Parameters
    ----------
    findings : sequence of Finding
        Measurements and answers.
    rulebook : Rulebook

    Returns
    -------
    tuple of Contradiction
        The most surprising first; of two answers that contradict each other only one is named.

    Notes
    -----
    Each answer is held against the verdict without it, so two answers that point to different corners are
    found in the same way as an answer that the log speaks against.
    """
    ordered = known_findings(findings, rulebook)
    found = [
        contradiction
        for finding in ordered
        if finding.source in rulebook.checks
        for contradiction in _contradiction(finding, ordered, rulebook)
    ]
    named: dict[frozenset[str | None], Contradiction] = {}
    for one in sorted(found, key=lambda each: (-each.surprise_bit, each.finding)):
        named.setdefault(frozenset((one.finding, one.against)), one)
    return tuple(named.values())


def _contradiction(answer: Finding, ordered: Sequence[Finding], rulebook: Rulebook) -> list[Contradiction]:
    """Return the contradiction of one answer with the rest, if there is one."""
    rest = [finding for finding in ordered if finding is not answer]
    belief = believe(rest, rulebook)
    likelihood = finding_likelihoods([answer], belief.tables)[0]
    expected = float(likelihood @ belief.probability)
    surprise_bit = -float(np.log2(expected))
    joint = belief.by_hypothesis(likelihood * belief.prior)
    pointed = int(np.argmax(joint))
    given_claim = float(joint[pointed] / belief.by_hypothesis(belief.prior)[pointed])
    if surprise_bit < SURPRISING_BIT or given_claim < LEAST_RATIO * expected:
        return []
    claim = rulebook.hypotheses[pointed]
    against = _speaks_most_against(claim, rest, rulebook)
    text = _words(answer, against, claim, expected, rulebook)
    return [Contradiction(answer.id, against.id if against else None, surprise_bit, text)]


def _speaks_most_against(claim: Hypothesis, rest: Sequence[Finding], rulebook: Rulebook) -> Finding | None:
    ranking = rank_hypotheses(rest, rulebook).ranking
    bits = next(line.contributions_bit for line in ranking if line.hypothesis == claim)
    lowest = min(rest, key=lambda finding: bits[finding.id], default=None)
    return lowest if lowest is not None and bits[lowest.id] <= -NOTEWORTHY_BIT else None


def _words(
    answer: Finding, against: Finding | None, claim: Hypothesis, expected: float, rulebook: Rulebook
) -> str:
    points = hypothesis_name(claim, rulebook)
    against_it = Text("Nothing else that is known does.")
    if against:
        against_it = Text("Against it: {statement}", statement=against.statement)
    return Text(
        "{statement} That points to: {points}. {against_it} All else leads to expect this answer in {share} "
        "of cases: check the corner, and repeat the check.",
        statement=answer.statement,
        points=points,
        against_it=against_it,
        share=format_share(expected),
    )
