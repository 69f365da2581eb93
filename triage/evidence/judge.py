"""From measurements and answers to the verdict, in one step."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Final

from triage.evidence.answers import Observation, build_answers, leading_corner
from triage.evidence.contradictions import Contradiction, find_contradictions
from triage.evidence.findings import build_findings
from triage.evidence.hypotheses import CheckSuggestion, Finding, Posterior, UndecidedPair
from triage.evidence.next_checks import suggest_checks
from triage.evidence.posterior import Belief, believe_all, rank_hypotheses
from triage.evidence.rule_tables import Rulebook
from triage.evidence.undecided import find_undecided
from triage.signals.measurement import Measurement, NotMeasurable
from triage.texts import Text

ROAD: Final = "road"
"""Kind of access whose cautions come with the advice to drive."""


@dataclass(frozen=True, slots=True)
class Judgement:
    """What the rule book makes of one log and the answers given so far.

    Attributes
    ----------
    recording : Belief
        By the measurements alone, for the plan.
    """

    findings: tuple[Finding, ...]
    posterior: Posterior
    next_checks: tuple[CheckSuggestion, ...]
    undecided: tuple[UndecidedPair, ...]
    cautions: tuple[str, ...]
    recording: Belief = field(repr=False, compare=False)
    contradictions: tuple[Contradiction, ...] = ()


def judge(
    measurements: Sequence[Measurement],
    not_measurable: Sequence[NotMeasurable],
    rulebook: Rulebook,
    observations: Sequence[Observation] = (),
) -> Judgement:
    """Rank the causes and say what to do next.

    Parameters
    ----------
    measurements : sequence of Measurement
    not_measurable : sequence of NotMeasurable
        What the log does not carry. It moves no probability; its extent is told among the cautions, and the
        driving it would take where that decides between two claims.
    rulebook : Rulebook
    observations : sequence of Observation
        Answers to checks.

    Returns
    -------
    Judgement

    Raises
    ------
    SettingsError
        For an answer the rule book does not know (see :func:`triage.evidence.answers.build_answers`).
    """
    measured = build_findings(measurements, rulebook)
    recording = belief = believe_all(measured, rulebook)
    posterior = rank_hypotheses(measured, rulebook, belief=belief)
    findings = measured
    if observations:
        answers = build_answers(observations, rulebook, first_corner=leading_corner(posterior))
        findings = (*measured, *answers)
        belief = believe_all(findings, rulebook)
        posterior = rank_hypotheses(findings, rulebook, belief=belief)
    checks = suggest_checks(findings, rulebook, belief=belief)
    undecided = find_undecided(findings, not_measurable, rulebook, checks, belief=belief)
    to_drive = any(pair.driving for pair in undecided)
    cautions = (
        *_extent(measured, not_measurable),
        *_cautions(posterior, rulebook, to_drive=to_drive),
    )
    contradictions = find_contradictions(findings, rulebook) if observations else ()
    return Judgement(findings, posterior, checks, undecided, cautions, recording, contradictions)


def _cautions(posterior: Posterior, rulebook: Rulebook, *, to_drive: bool) -> tuple[str, ...]:
    """Return the cautions that always stand, those of acting on the first cause, and of driving again."""
    always = [caution.id for caution in rulebook.cautions.values() if caution.always]
    of_first = rulebook.causes[posterior.first.hypothesis.cause].cautions
    of_driving = [caution.id for caution in rulebook.cautions.values() if to_drive and ROAD in caution.covers]
    return tuple(rulebook.cautions[name].text for name in dict.fromkeys((*always, *of_first, *of_driving)))


def _extent(measured: Sequence[Finding], not_measurable: Sequence[NotMeasurable]) -> tuple[str, ...]:
    missing = len({gap.id for gap in not_measurable} - {finding.source for finding in measured})
    if not missing:
        return ()
    counted = Text("1 quantity") if missing == 1 else Text("{n} quantities", n=missing)
    return (
        Text(
            "The log could not show {quantities} on any wheel; the verdict rests on the rest.",
            quantities=counted,
        ),
    )
