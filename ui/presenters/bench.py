"""The page at the car in words."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

from triage.evidence.rule_tables import Rulebook
from triage.planning.plan_text import step_name
from triage.texts import Text, capital_first, joined, shaped, without_stop
from triage.units import format_share
from triage.walk.assessment import Question, progress_line, standing_cautions, typed_hint
from triage.walk.ranking import RankLine, ranked_lines
from ui.presenters.wording import sentence
from ui.state.bench import BenchView

RANKS_SHOWN: Final = 5


@dataclass(frozen=True, slots=True)
class RankBar:
    """One cause with its probability and how it moved with the last answer."""

    name: str
    percent: str
    probability: float
    moved: str


@dataclass(frozen=True, slots=True)
class BenchText:
    """Everything the page says.

    Attributes
    ----------
    choices : tuple of (id, text)
        Answers, in the order of their number keys; empty while the cautions are not confirmed.
    value_hint : str
        How a measured value is typed; empty where none can be.
    share_settled : float
        Progress, 0 to 1: how much of the doubt at most possible is gone.
    standing : tuple of str
        Cautions over the whole walk.
    """

    title: str
    effort: str
    question: str
    cautions: tuple[str, ...]
    must_confirm: bool
    choices: tuple[tuple[str, str], ...]
    value_hint: str
    names_corner: bool
    earlier: str
    why: str
    progress: str
    share_settled: float
    ranking: tuple[RankBar, ...]
    standing: tuple[str, ...]
    note: str
    refused: bool
    has_answers: bool
    asks: bool


def build_bench_text(view: BenchView, rulebook: Rulebook) -> BenchText:
    """Word the page."""
    question = view.question
    return BenchText(
        title=question.title if question else _end_title(view),
        effort=_effort(question) if question else "",
        question=_question_text(question) if question and view.confirmed else "" if question else _end(view),
        cautions=question.cautions if question else (),
        must_confirm=not view.confirmed,
        choices=tuple((one.id, shaped(sentence(one.text), without_stop)) for one in question.choices)
        if question and view.confirmed
        else (),
        value_hint=typed_hint(question) if question and view.confirmed else "",
        names_corner=bool(question and question.names_corner and view.confirmed),
        earlier=question.now if question else "",
        why=question.why if question else "",
        progress=sentence(progress_line(view.state, view.now)),
        share_settled=settled(view, rulebook),
        ranking=_ranking(view, rulebook),
        standing=standing_cautions(rulebook),
        note=joined("\n", [*([shaped(view.note, capital_first)] if view.note else []), *_doubts(view)]),
        refused=bool(view.note),
        has_answers=bool(view.state.given),
        asks=question is not None,
    )


def settled(view: BenchView, rulebook: Rulebook) -> float:
    """Return how much of the largest doubt possible is gone, 0 to 1."""
    most_bit = math.log2(len(rulebook.hypotheses))
    return min(max(1.0 - view.now.doubt_bit / most_bit, 0.0), 1.0) if most_bit > 0.0 else 1.0


def _doubts(view: BenchView) -> list[str]:
    return [one.text for one in view.now.judgement.contradictions]


def _effort(question: Question) -> str:
    minutes = f"{question.minutes_min:.0f} min" if question.minutes_min else ""
    tools = Text("tools: {tools}", tools=joined(", ", question.tools)) if question.tools else ""
    return joined(" · ", (part for part in (minutes, question.access, tools) if part))


def _question_text(question: Question) -> str:
    if not question.write_down:
        return question.text
    note = Text("Write down: {what}.", what=question.write_down)
    return joined("\n", (question.text, note))


def _end_title(view: BenchView) -> str:
    return Text("The car is right") if view.state.finished else Text("There is nothing left to ask")


def _end(view: BenchView) -> str:
    if view.state.finished:
        return Text("Keep what it really was as experience of the workshop: wheel-triage experience add.")
    best = step_name(view.now.plan.next_step)
    return Text("Best so far: {step}. Go back to change an answer.", step=best)


def _ranking(view: BenchView, rulebook: Rulebook) -> tuple[RankBar, ...]:
    before = view.before.judgement.posterior if view.before else None
    lines = ranked_lines(view.now.judgement.posterior, rulebook, before=before, number=RANKS_SHOWN)
    return tuple(
        RankBar(line.name, format_share(line.probability), line.probability, _moved(line)) for line in lines
    )


def _moved(line: RankLine) -> str:
    if line.before is None:
        return ""
    arrow = "▲" if line.probability > line.before else "▼"
    return Text("{arrow} from {share}", arrow=arrow, share=format_share(line.before))
