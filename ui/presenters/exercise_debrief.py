"""What the trainer's page says when the truth is told: the fault, the score, both orders of work."""

from __future__ import annotations

from dataclasses import dataclass

from triage.corners import VEHICLE
from triage.evidence.next_checks import hypothesis_name
from triage.evidence.rule_tables import Rulebook
from triage.exercises.exercise import Hidden
from triage.exercises.ideal_order import IdealStep
from triage.exercises.score import CLAIM_POINTS, HONESTY_POINTS, THRIFT_POINTS
from triage.planning.plan_text import step_name
from triage.units import format_share
from ui.presenters.exercise import claim_words, done_lines
from ui.state.exercise import Debrief, Prepared

SEVERITY_WORDS = ((0.2, "hardly to be seen"), (0.4, "slight"), (0.7, "clear"), (1.01, "blatant"))
"""Words for a severity, each up to its number."""


@dataclass(frozen=True, slots=True)
class ScoreLine:
    """One row of the score: what, how much, and what it means."""

    name: str
    value: str
    meaning: str


@dataclass(frozen=True, slots=True)
class DebriefText:
    """Everything that is told after handing in.

    Attributes
    ----------
    truth : str
        The hidden fault in one line.
    verdict : str
        Whether the answer was right.
    claim : str
        What the rule book says of the fault, and what to do about it.
    program : str
        What the program makes of the recording alone.
    """

    truth: str
    verdict: str
    claim: str
    program: str
    score: tuple[ScoreLine, ...]
    own: tuple[str, ...]
    ideal: tuple[str, ...]


def build_debrief(prepared: Prepared, debrief: Debrief) -> DebriefText:
    """Word the truth and the score."""
    rulebook, hidden = prepared.rulebook, prepared.exercise.hidden
    cause = rulebook.causes[hidden.cause]
    first = debrief.opened.result.posterior.first
    return DebriefText(
        truth=truth_line(hidden, rulebook),
        verdict=_verdict(debrief, rulebook),
        claim=f"{cause.claim} {cause.what_to_do}",
        program=(
            f"The program, from the recording alone: {hypothesis_name(first.hypothesis, rulebook)}, "
            f"{format_share(first.probability)}."
        ),
        score=_score_lines(debrief, rulebook),
        own=_own_lines(debrief, rulebook),
        ideal=tuple(_ideal_line(step) for step in debrief.score.ideal.steps),
    )


def truth_line(hidden: Hidden, rulebook: Rulebook) -> str:
    """Word the hidden fault: ``Dirt on the encoder, front left (slight)``."""
    words = claim_words(hidden.cause, hidden.corner, rulebook)
    if hidden.cause == "no-fault-found":
        return words
    strength = next(word for limit, word in SEVERITY_WORDS if hidden.severity < limit)
    return f"{words} ({strength})"


def _verdict(debrief: Debrief, rulebook: Rulebook) -> str:
    answer, score = debrief.attempt.answer, debrief.score
    if answer is None:
        return ""
    said = claim_words(answer.cause, answer.corner, rulebook)
    half = "neither wheel nor cause"
    if score.corner_right and answer.corner != VEHICLE:
        half = "the wheel is right, the cause is not"
    elif score.cause_right:
        half = "the cause is right, the wheel is not"
    found = "right" if score.right else half
    return f"Your answer: {said}, {100.0 * answer.confidence:.0f} % sure: {found}."


def _score_lines(debrief: Debrief, rulebook: Rulebook) -> tuple[ScoreLine, ...]:
    score = debrief.score
    ideal = score.ideal
    parts = ", ".join(rulebook.parts[name].title for name in score.wasted_parts) or "none"
    return (
        ScoreLine(
            "Answer", f"{score.claim_points:.0f} of {CLAIM_POINTS:.0f}", "wheel and cause, or one of the two"
        ),
        ScoreLine(
            "Honest confidence",
            f"{score.honesty_points:.0f} of {HONESTY_POINTS:.0f}",
            f"Brier score {score.brier:.2f} (0 is best, 1 worst); log score {score.log_score_bit:.2f} bits"
            " (0 is best)",
        ),
        ScoreLine(
            "Time and parts",
            f"{score.thrift_points:.0f} of {THRIFT_POINTS:.0f}",
            f"{score.own.minutes_min:.0f} min and {score.own.money:.0f} of money to a car that is right; "
            f"ideal order {ideal.minutes_min:.0f} min and {ideal.money:.0f}",
        ),
        ScoreLine(
            "Wasted",
            f"{score.wasted_min:.0f} min",
            f"{score.wasted_money:.0f} of money; parts fitted in vain: {parts}",
        ),
        ScoreLine("All together", f"{score.points:.0f} of 100", ""),
    )


def _own_lines(debrief: Debrief, rulebook: Rulebook) -> tuple[str, ...]:
    own = debrief.score.own
    repair = rulebook.repairs[own.repair].title if own.repair else "Give the car to somebody with more means"
    end = "the car is right" if own.cured else "the car is not right; the right repair follows"
    return (*reversed(done_lines(debrief.attempt, rulebook)), f"{repair}: {end}")


def _ideal_line(step: IdealStep) -> str:
    minutes = f" ({step.step.minutes_min:.0f} min)" if step.step.minutes_min else ""
    if step.step.kind == "check":
        return f"{step_name(step.step)}: {step.outcome}{minutes}"
    return f"{step_name(step.step)}: {'the car is right' if step.right else 'the car is not right'}{minutes}"
