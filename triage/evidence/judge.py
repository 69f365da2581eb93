"""From measurements and answers to the verdict, in one step."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from triage.evidence.answers import Observation, build_answers, leading_corner
from triage.evidence.findings import build_findings
from triage.evidence.hypotheses import CheckSuggestion, Finding, Posterior
from triage.evidence.next_checks import suggest_checks
from triage.evidence.posterior import rank_hypotheses
from triage.evidence.rule_tables import Rulebook
from triage.signals.measurement import Measurement, NotMeasurable


@dataclass(frozen=True, slots=True)
class Judgement:
    """What the rule book makes of one log and the answers given so far."""

    findings: tuple[Finding, ...]
    posterior: Posterior
    next_checks: tuple[CheckSuggestion, ...]
    cautions: tuple[str, ...]


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
        What the log does not carry. It moves no probability; its extent is told among the cautions.
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
    posterior = rank_hypotheses(measured, rulebook)
    findings = measured
    if observations:
        answers = build_answers(observations, rulebook, first_corner=leading_corner(posterior))
        findings = (*measured, *answers)
        posterior = rank_hypotheses(findings, rulebook)
    cautions = (*_extent(measured, not_measurable), *_cautions(posterior, rulebook))
    return Judgement(findings, posterior, suggest_checks(findings, rulebook), cautions)


def _cautions(posterior: Posterior, rulebook: Rulebook) -> tuple[str, ...]:
    """Return the cautions that always stand and those of acting on the first cause, each once."""
    always = [caution.id for caution in rulebook.cautions.values() if caution.always]
    of_first = rulebook.causes[posterior.first.hypothesis.cause].cautions
    return tuple(rulebook.cautions[name].text for name in dict.fromkeys((*always, *of_first)))


def _extent(measured: Sequence[Finding], not_measurable: Sequence[NotMeasurable]) -> tuple[str, ...]:
    missing = len({gap.id for gap in not_measurable} - {finding.source for finding in measured})
    if not missing:
        return ()
    counted = "1 quantity" if missing == 1 else f"{missing} quantities"
    return (f"The log could not show {counted} on any wheel; the verdict rests on the rest.",)
