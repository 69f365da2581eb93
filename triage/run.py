"""The one way from a log to a verdict; command line, window and tests all call it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from triage import __version__
from triage.evidence.answers import Observation
from triage.evidence.contradictions import Contradiction
from triage.evidence.hypotheses import CheckSuggestion, Finding, Posterior, UndecidedPair
from triage.evidence.judge import judge
from triage.evidence.rule_tables import Rulebook
from triage.planning.guidance import guide
from triage.planning.plan import Plan
from triage.progress import Progress, no_progress, part_of
from triage.signals.analysis import Analysis, analyse
from triage.signals.conditioned_log import ConditionedLog, build_conditioned_log
from triage.signals.manoeuvres import Manoeuvre
from triage.signals.measurement import Measurement, NotMeasurable
from triage.signals.measures.table import measure_all
from triage.speed_log import SpeedLog
from triage.vehicle import Vehicle


@dataclass(frozen=True, slots=True)
class TriageResult:
    """Everything one run found out; pure data.

    Attributes
    ----------
    analysis : Analysis
        What the measurements rest on, for who wants to draw it.
    """

    log: SpeedLog
    analysis: Analysis
    conditioned: ConditionedLog
    manoeuvres: tuple[Manoeuvre, ...]
    measurements: tuple[Measurement, ...]
    not_measurable: tuple[NotMeasurable, ...]
    findings: tuple[Finding, ...]
    posterior: Posterior
    next_checks: tuple[CheckSuggestion, ...]
    undecided: tuple[UndecidedPair, ...]
    plan: Plan
    cautions: tuple[str, ...]
    rulebook_digest: str
    program_version: str
    contradictions: tuple[Contradiction, ...] = ()


def run_triage(
    log: SpeedLog,
    rulebook: Rulebook,
    observations: Sequence[Observation] = (),
    *,
    vehicle: Vehicle | None = None,
    progress: Progress = no_progress,
) -> TriageResult:
    """Rank the causes for one recording.

    Parameters
    ----------
    log : SpeedLog
    rulebook : Rulebook
    observations : sequence of Observation
        Answers to questions and checks.
    vehicle : Vehicle, optional
        What is known of the car; an ordinary passenger car when None.
    progress : Progress
        Told how far the work is; may raise :class:`triage.progress.Cancelled`.

    Returns
    -------
    TriageResult
        Depends on the arguments alone: no clock, no settings, no files.

    Raises
    ------
    SettingsError
        For an answer the rule book does not know.
    """
    analysis = analyse(log, vehicle, part_of(progress, 0.0, 0.6))
    measurements, not_measurable = measure_all(analysis, part_of(progress, 0.6, 0.9))
    progress(0.9, "Ranking the causes")
    judgement = judge(measurements, not_measurable, rulebook, observations)
    progress(1.0, "Done")
    return TriageResult(
        log=log,
        analysis=analysis,
        conditioned=build_conditioned_log(analysis.clock, analysis.reference),
        manoeuvres=analysis.manoeuvres,
        measurements=measurements,
        not_measurable=not_measurable,
        findings=judgement.findings,
        posterior=judgement.posterior,
        next_checks=judgement.next_checks,
        undecided=judgement.undecided,
        plan=guide(judgement.findings, rulebook, recording=judgement.recording),
        cautions=judgement.cautions,
        rulebook_digest=rulebook.digest,
        program_version=__version__,
        contradictions=judgement.contradictions,
    )
