"""Between which claims a verdict is not decided, and what would decide."""

from __future__ import annotations

from collections.abc import Sequence

from triage.evidence.claims import leading_claims, pairs_of
from triage.evidence.driving_advice import LEAST_ADVICE_BIT, best_drive, possible_drives
from triage.evidence.hypotheses import CheckAdvice, CheckSuggestion, Finding, UndecidedPair
from triage.evidence.pair_information import gains_of_seeing_bit
from triage.evidence.posterior import Belief, believe, known_findings
from triage.evidence.rule_tables import Rulebook
from triage.signals.measurement import NotMeasurable


def find_undecided(
    findings: Sequence[Finding],
    not_measurable: Sequence[NotMeasurable],
    rulebook: Rulebook,
    next_checks: Sequence[CheckSuggestion],
    *,
    belief: Belief | None = None,
) -> tuple[UndecidedPair, ...]:
    """Say for every two claims in the running which drive and which check would tell them apart.

    Parameters
    ----------
    findings : sequence of Finding
        Everything known so far, answers included.
    not_measurable : sequence of NotMeasurable
        What the log does not carry.
    rulebook : Rulebook
    next_checks : sequence of CheckSuggestion
        The checks to choose from; of these the one that tells most about the pair per minute is named.
    belief : Belief, optional
        That of these findings, where it is worked out already.

    Returns
    -------
    tuple of UndecidedPair
        The pair that leaves most doubt first; empty when one claim has won (see
        :func:`triage.evidence.claims.leading_claims`). At most 15, of six claims.
    """
    known = known_findings(findings, rulebook)
    claims = leading_claims(belief or believe(known, rulebook), rulebook)
    if len(claims.hypotheses) < 2:
        return ()
    pairs = pairs_of(claims)
    drives = possible_drives(known, not_measurable, rulebook, claims=claims, pairs=pairs)
    tables = [claims.table(check.check, check.corner) for check in next_checks]
    gains = gains_of_seeing_bit(tables, claims, pairs)
    return tuple(
        UndecidedPair(
            first=claims.hypotheses[first],
            second=claims.hypotheses[second],
            first_probability=float(claims.probability[first]),
            second_probability=float(claims.probability[second]),
            driving=best_drive(drives, number),
            check=_best_check(next_checks, [float(gain[number]) for gain in gains]),
        )
        for number, (first, second) in enumerate(zip(pairs.first, pairs.second, strict=True))
    )


def _best_check(checks: Sequence[CheckSuggestion], gains_bit: Sequence[float]) -> CheckAdvice | None:
    """Return the check that tells most about the pair per minute, among those that tell something."""
    useful = [
        CheckAdvice(check.check, check.title, check.corner, gain, check.minutes_min)
        for check, gain in zip(checks, gains_bit, strict=True)
        if gain >= LEAST_ADVICE_BIT
    ]
    return max(useful, key=lambda check: check.gain_bit / check.minutes_min, default=None)
