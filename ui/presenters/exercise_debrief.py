"""What the trainer's page says when the truth is told: the fault, the score, both orders of work."""

from __future__ import annotations

from dataclasses import dataclass

from triage.corners import VEHICLE
from triage.evidence.next_checks import hypothesis_name
from triage.evidence.rule_tables import Rulebook
from triage.exercises.exercise import Hidden
from triage.exercises.ideal_order import IdealStep
from triage.exercises.score import CLAIM_POINTS, HONESTY_POINTS, THRIFT_POINTS, Score
from triage.planning.costs import cost_words
from triage.planning.plan_text import step_name
from triage.texts import Text, joined
from triage.units import format_share
from ui.presenters.cursor_reading import signed
from ui.presenters.exercise import claim_words, done_lines
from ui.state.exercise import Debrief, Prepared

SEVERITY_WORDS = (
    (0.2, Text("hardly to be seen")),
    (0.4, Text("slight")),
    (0.7, Text("clear")),
    (1.01, Text("blatant")),
)
"""Words for a severity, each up to its number."""

IS_RIGHT = Text("the car is right")


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
        claim=joined(" ", (cause.claim, cause.what_to_do)),
        program=Text(
            "The program, from the recording alone: {claim}, {share}.",
            claim=hypothesis_name(first.hypothesis, rulebook),
            share=format_share(first.probability),
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
    return Text("{claim} ({strength})", claim=words, strength=strength)


def _verdict(debrief: Debrief, rulebook: Rulebook) -> str:
    answer, score = debrief.attempt.answer, debrief.score
    if answer is None:
        return ""
    half = Text("neither wheel nor cause")
    if score.corner_right and answer.corner != VEHICLE:
        half = Text("the wheel is right, the cause is not")
    elif score.cause_right:
        half = Text("the cause is right, the wheel is not")
    return Text(
        "Your answer: {claim}, {confidence} % sure: {found}.",
        claim=claim_words(answer.cause, answer.corner, rulebook),
        confidence=f"{100.0 * answer.confidence:.0f}",
        found=Text("right") if score.right else half,
    )


def _score_lines(debrief: Debrief, rulebook: Rulebook) -> tuple[ScoreLine, ...]:
    score = debrief.score
    return (
        ScoreLine(
            Text("Answer"),
            _points(score.claim_points, CLAIM_POINTS),
            Text("wheel and cause, or one of the two"),
        ),
        ScoreLine(Text("Honest confidence"), _points(score.honesty_points, HONESTY_POINTS), _honesty(score)),
        ScoreLine(Text("Time and parts"), _points(score.thrift_points, THRIFT_POINTS), _thrift(score)),
        ScoreLine(Text("Wasted"), f"{score.wasted_min:.0f} min", _waste(score, rulebook)),
        ScoreLine(Text("All together"), _points(score.points, 100.0), ""),
    )


def _honesty(score: Score) -> Text:
    return Text(
        "Brier score {brier} (0 is best, 1 worst); log score {log} bits (0 is best)",
        brier=f"{score.brier:.2f}",
        log=signed(score.log_score_bit, 2),
    )


def _thrift(score: Score) -> Text:
    return Text(
        "{minutes} min and {money} to a car that is right; ideal order {ideal_minutes} min and {ideal_money}",
        minutes=f"{score.own.minutes_min:.0f}",
        money=cost_words(score.own.money),
        ideal_minutes=f"{score.ideal.minutes_min:.0f}",
        ideal_money=cost_words(score.ideal.money),
    )


def _waste(score: Score, rulebook: Rulebook) -> Text:
    parts = joined(", ", (rulebook.parts[name].title for name in score.wasted_parts))
    return Text(
        "{money}; parts fitted in vain: {parts}",
        money=cost_words(score.wasted_money),
        parts=parts or Text("none"),
    )


def _points(reached: float, most: float) -> str:
    return Text("{reached} of {most}", reached=f"{reached:.0f}", most=f"{most:.0f}")


def _own_lines(debrief: Debrief, rulebook: Rulebook) -> tuple[str, ...]:
    own = debrief.score.own
    repair = Text("Give the car to somebody with more means")
    end = IS_RIGHT if own.cured else Text("the car is not right; the right repair follows")
    last = Text("{step}: {end}", step=rulebook.repairs[own.repair].title if own.repair else repair, end=end)
    return (*reversed(done_lines(debrief.attempt, rulebook)), last)


def _ideal_line(step: IdealStep) -> str:
    minutes = f" ({step.step.minutes_min:.0f} min)" if step.step.minutes_min else ""
    if step.step.kind == "check":
        end = step.outcome
    else:
        end = IS_RIGHT if step.right else Text("the car is not right")
    return Text("{step}: {end}{minutes}", step=step_name(step.step), end=end, minutes=minutes)
