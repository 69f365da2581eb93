"""A trainee's work on an exercise: checks ordered one after the other, what they cost, and the answer."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Final

from triage.corners import CORNERS, Corner, Place
from triage.errors import SettingsError
from triage.evidence.answers import Observation, find_check
from triage.evidence.fitting import fits
from triage.evidence.rule_tables import Rulebook
from triage.exercises.exercise import Exercise, place_for
from triage.exercises.hidden_answers import answer_check, place_of_check
from triage.planning.costs import StepCost, cost_of_check
from triage.texts import Text

LEAST_CONFIDENCE: Final = 0.01
MOST_CONFIDENCE: Final = 0.99
"""A certainty that proves wrong would cost infinitely much by the logarithmic score."""


@dataclass(frozen=True, slots=True)
class DoneCheck:
    """A check that was ordered, its answer and its cost with opening."""

    seen: Observation
    minutes_min: float
    money: float


@dataclass(frozen=True, slots=True)
class Answer:
    """What the trainee hands in: where, what, and how sure of both together.

    Attributes
    ----------
    confidence : float
        Probability, 0.01 to 0.99, that place and cause are both right.
    """

    corner: Place
    cause: str
    confidence: float


@dataclass(frozen=True, slots=True)
class Attempt:
    """One trainee at one car.

    Attributes
    ----------
    done : tuple of DoneCheck
        In the order in which they were ordered.
    is_open : frozenset of str
        Levels of access that stand open.
    answer : Answer or None
        None as long as nothing was handed in.
    """

    exercise: Exercise
    done: tuple[DoneCheck, ...] = ()
    is_open: frozenset[str] = frozenset()
    answer: Answer | None = None

    @property
    def minutes_min(self) -> float:
        """Minutes spent on checks."""
        return sum(one.minutes_min for one in self.done)

    @property
    def money(self) -> float:
        """What these minutes, and what broke on the way, cost."""
        return sum(one.money for one in self.done)

    def answer_to(self, check_id: str, place: Place) -> Observation | None:
        """Return the answer that is known already, from the complaint or a check; None for none."""
        told = (*self.exercise.complaint, *(one.seen for one in self.done))
        return next(
            (seen for seen in told if seen.check == check_id and (seen.corner or "vehicle") == place), None
        )


def price_of(attempt: Attempt, check_id: str, rulebook: Rulebook) -> StepCost:
    """Return what a check would cost now, with what stands open already."""
    return cost_of_check(find_check(check_id, rulebook), attempt.is_open, rulebook)


def order_check(attempt: Attempt, check_id: str, corner: Corner | None, rulebook: Rulebook) -> Attempt:
    """Do a check: its answer comes from the hidden truth, and its minutes and money are spent.

    Returns
    -------
    Attempt
        Unchanged when the answer is known already: nobody pays twice for it.

    Raises
    ------
    SettingsError
        For an unknown check, one without its wheel or that does not fit the sensors, and when the answer was
        handed in already.
    """
    _refuse_when_over(attempt)
    check = find_check(check_id, rulebook)
    if attempt.answer_to(check.id, place_of_check(check, corner)) is not None:
        return attempt
    if not fits(check, attempt.exercise.sensor):
        raise SettingsError(
            Text(
                "{name}: it cannot be done at the {sensor} sensors of this car",
                name=check.title,
                sensor=attempt.exercise.sensor,
            ),
            hint="Choose a check that fits the sensors.",
        )
    cost = price_of(attempt, check.id, rulebook)
    seen = answer_check(attempt.exercise, check.id, corner, rulebook)
    done = DoneCheck(seen, cost.minutes_min, cost.money)
    return replace(attempt, done=(*attempt.done, done), is_open=cost.open_after)


def commit(
    attempt: Attempt, corner: Corner | None, cause: str, confidence: float, *, rulebook: Rulebook
) -> Attempt:
    """Hand in an answer; nothing can be changed afterwards.

    Parameters
    ----------
    corner : str or None
        Of no account for a cause of the whole vehicle.
    confidence : float
        See :class:`Answer`.

    Raises
    ------
    SettingsError
        For an unknown cause, a cause of one wheel without its wheel, a confidence outside 0.01 to 0.99, and
        when an answer was handed in already.
    """
    _refuse_when_over(attempt)
    if cause not in rulebook.causes:
        raise SettingsError(
            Text("there is no cause {cause}", cause=f"{cause!r}"),
            hint=Text("Known causes: {causes}.", causes=", ".join(rulebook.causes)),
        )
    place = place_for(cause, corner or "vehicle", rulebook)
    if rulebook.causes[cause].where == "corner" and place not in CORNERS:
        raise SettingsError(
            Text("{name}: it is not said at which wheel", name=rulebook.causes[cause].title),
            hint=Text("Choose one of {corners}.", corners=", ".join(CORNERS)),
        )
    if not (math.isfinite(confidence) and LEAST_CONFIDENCE <= confidence <= MOST_CONFIDENCE):
        raise SettingsError(
            Text("a confidence of {value} % cannot be scored", value=f"{100.0 * confidence:g}"),
            hint=Text(
                "State {value} to {value2} %.",
                value=f"{100 * LEAST_CONFIDENCE:.0f}",
                value2=f"{100 * MOST_CONFIDENCE:.0f}",
            ),
        )
    return replace(attempt, answer=Answer(place, cause, confidence))


def _refuse_when_over(attempt: Attempt) -> None:
    if attempt.answer is not None:
        raise SettingsError(
            "the answer was handed in, and nothing can be changed any more", hint="Start the exercise anew."
        )
