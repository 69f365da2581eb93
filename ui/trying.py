"""Trying an answer to a check without recording it. Knows no Qt."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Literal

from triage.corners import VEHICLE, Corner, Place
from triage.errors import SettingsError
from triage.evidence.rule_tables import Check, Rulebook
from triage.texts import Text, capital_first, joined, shaped
from triage.units import format_share
from triage.walk.assessment import Recording, assess
from triage.walk.walk_state import Given, WalkState
from ui.bench_opening import with_assessment
from ui.presenters.verdict import claim_name, line_name
from ui.state.opening import Opened
from ui.state.window_state import Trial

if TYPE_CHECKING:
    from triage.run import TriageResult


@dataclass(frozen=True, slots=True)
class TrialChoice:
    """A check of the rule book that can be tried.

    Attributes
    ----------
    wheel : {"needed", "possible", "none"}
        Whether it is done at one wheel, or is about the whole car and its answer may name one.
    answers : tuple of (id, text)
    """

    id: str
    title: str
    question: str
    wheel: Literal["needed", "possible", "none"]
    answers: tuple[tuple[str, str], ...]


def trial_choices(rulebook: Rulebook) -> tuple[TrialChoice, ...]:
    """Return all checks, in the order of the rule book."""
    return tuple(_choice(check) for check in rulebook.checks.values())


def _choice(check: Check) -> TrialChoice:
    answers = tuple((name, shaped(words, capital_first)) for name, words in check.outcomes.items())
    wheel: Literal["needed", "possible", "none"]
    wheel = "possible" if check.names_corner else "needed" if check.where == "corner" else "none"
    return TrialChoice(check.id, check.title, check.question, wheel, answers)


def try_answer(
    opened: Opened, rulebook: Rulebook, check: str, answer: str, *, corner: Corner | None
) -> Trial:
    """Return the verdict as it would be with one more answer; nothing is saved.

    An answer to the same check at the same place is replaced, all others stay.

    Parameters
    ----------
    opened : Opened
        The recording with its answers so far.
    rulebook : Rulebook
    check, answer : str
        Ids.
    corner : str or None
        The wheel, for a check that is done at one or whose answer may name one.

    Raises
    ------
    SettingsError
        When the rule book does not know the answer.
    """
    if check not in rulebook.checks:
        told = Text("there is no check {id}", id=repr(check))
        raise SettingsError(told, hint="Choose one of the rule book.")
    place: Place = corner or VEHICLE
    given = Given("check", check, place, answer)
    kept = tuple(one for one in opened.answers.given if one.step != given.step)
    result = opened.result
    recording = Recording(result.measurements, result.not_measurable)
    walk = WalkState((*kept, given), None, len(kept))
    tried = with_assessment(result, assess(walk, recording, rulebook))
    return Trial(_told(rulebook.checks[check], given), replace(opened, result=tried), _moved(opened, tried))


def _told(check: Check, given: Given) -> str:
    done = claim_name(check.title, given.place)
    return Text("{check}: {answer}", check=done, answer=check.outcomes[given.answer])


def _moved(opened: Opened, tried: TriageResult) -> str:
    """Word what becomes of the cause that stands first without the answer."""
    now = opened.result.posterior.first
    shares = {line.hypothesis: line.probability for line in tried.posterior.ranking}
    before, after = format_share(now.probability), format_share(shares.get(now.hypothesis, 0.0))
    moved = Text("stays at {share}", share=after) if after == before else joined(" → ", (before, after))
    return Text("{claim}: {moved}", claim=line_name(now, opened.causes), moved=moved)
