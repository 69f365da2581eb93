"""What an answer was worth: right or wrong, how honest the confidence, and the minutes and parts wasted.

A trainee states the probability ``c`` that place and cause are both right; ``o`` is 1 when they are, else 0::

    Brier score      B = (c - o)^2                          0 is best, 1 is worst
    log score        L = log2 c  if right, log2(1 - c) if wrong     0 bits is best

Both are proper: on average nobody does better than by stating what he believes (G. W. Brier, Mon. Weather
Rev. 78, 1950, whose sum over both outcomes is twice this B; I. J. Good, J. R. Stat. Soc. B 14, 1952; both
from memory). The points are weights of our own; they stay proper, for the confidence enters by B alone.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

from triage.corners import VEHICLE
from triage.errors import SettingsError
from triage.evidence.rule_tables import Repair, Rulebook
from triage.exercises.attempt import Answer, Attempt
from triage.exercises.ideal_order import IdealOrder, cures
from triage.planning.costs import cost_of_repair

CLAIM_POINTS: Final = 50.0
PLACE_ALONE: Final = 0.4
CAUSE_ALONE: Final = 0.2
HONESTY_POINTS: Final = 25.0
THRIFT_POINTS: Final = 25.0
"""A hundred in all. Shares for half an answer are judgement: the right wheel spares three others."""


@dataclass(frozen=True, slots=True)
class Work:
    """Minutes, money and parts up to a car that is proven right.

    Attributes
    ----------
    repair : str
        Id of the repair that follows from the answer; empty where the car is given to somebody else.
    cured : bool
        Whether that repair makes the car right; if not, the right one is counted on top.
    """

    minutes_min: float
    money: float
    parts: tuple[str, ...]
    repair: str
    cured: bool


@dataclass(frozen=True, slots=True)
class Score:
    """What an answer was worth.

    Attributes
    ----------
    right, corner_right, cause_right : bool
        Both, the place, the cause.
    brier, log_score_bit : float
        See the head of this module.
    own : Work
        The trainee's checks and the repair that follows from the answer.
    ideal : IdealOrder
    wasted_min, wasted_money : float
        What the ideal order would have saved; 0 when the trainee was quicker or cheaper.
    wasted_parts : tuple of str
        Ids of parts that were fitted in vain.
    claim_points, honesty_points, thrift_points : float
        For the answer, for an honest confidence, for time and money.
    """

    right: bool
    corner_right: bool
    cause_right: bool
    brier: float
    log_score_bit: float
    own: Work
    ideal: IdealOrder
    wasted_min: float
    wasted_money: float
    wasted_parts: tuple[str, ...]
    claim_points: float
    honesty_points: float
    thrift_points: float

    @property
    def points(self) -> float:
        """Sum of the points, 0 to 100."""
        return self.claim_points + self.honesty_points + self.thrift_points


def score_attempt(attempt: Attempt, ideal: IdealOrder, rulebook: Rulebook) -> Score:
    """Score an answer against the hidden truth and the ideal order.

    Raises
    ------
    SettingsError
        When nothing was handed in.
    """
    if attempt.answer is None:
        raise SettingsError("nothing was handed in yet", hint="State wheel, cause and confidence first.")
    hidden, answer = attempt.exercise.hidden, attempt.answer
    place, cause = answer.corner == hidden.corner, answer.cause == hidden.cause
    own = _own_work(attempt, answer, rulebook)
    brier = brier_score(answer.confidence, right=place and cause)
    return Score(
        right=place and cause,
        corner_right=place,
        cause_right=cause,
        brier=brier,
        log_score_bit=log_score_bit(answer.confidence, right=place and cause),
        own=own,
        ideal=ideal,
        wasted_min=max(own.minutes_min - ideal.minutes_min, 0.0),
        wasted_money=max(own.money - ideal.money, 0.0),
        wasted_parts=() if own.cured else _parts(own.repair, rulebook),
        claim_points=CLAIM_POINTS * _claim_share(answer, place=place, cause=cause),
        honesty_points=HONESTY_POINTS * (1.0 - brier),
        thrift_points=THRIFT_POINTS * min(ideal.money / max(own.money, 1e-9), 1.0),
    )


def brier_score(confidence: float, *, right: bool) -> float:
    """Return the squared distance of the confidence from what came true.

    Examples
    --------
    >>> brier_score(0.75, right=True), brier_score(0.75, right=False)
    (0.0625, 0.5625)
    """
    return (confidence - float(right)) ** 2


def log_score_bit(confidence: float, *, right: bool) -> float:
    """Return the logarithm of the probability given to what came true, in bits.

    Examples
    --------
    >>> log_score_bit(0.25, right=True), log_score_bit(0.75, right=False)
    (-2.0, -2.0)
    """
    return math.log2(confidence if right else 1.0 - confidence)


def repair_for(cause: str, rulebook: Rulebook) -> Repair | None:
    """Return the repair that somebody sure of a cause would choose: the most cures for its money."""
    able = [repair for repair in rulebook.repairs.values() if repair.cures.get(cause, 0.0) > 0.0]
    if not able:
        return None
    return max(able, key=lambda repair: repair.cures[cause] / cost_of_repair(repair, (), rulebook).money)


def _own_work(attempt: Attempt, answer: Answer, rulebook: Rulebook) -> Work:
    hidden = attempt.exercise.hidden
    repair = repair_for(answer.cause, rulebook)
    if repair is None:  # somebody with more means gets the car, and finds everything
        money = attempt.money + rulebook.workshop.last_resort
        return Work(attempt.minutes_min, money, (), "", cured=True)
    cured = cures(repair, answer.corner, hidden)
    right = None if cured else repair_for(hidden.cause, rulebook)
    costs = [cost_of_repair(repair, attempt.is_open, rulebook)]
    costs += [] if right is None else [cost_of_repair(right, (), rulebook)]
    return Work(
        attempt.minutes_min + sum(cost.minutes_min for cost in costs),
        attempt.money + sum(cost.money for cost in costs),
        (*repair.parts, *(() if right is None else right.parts)),
        repair.id,
        cured,
    )


def _parts(repair: str, rulebook: Rulebook) -> tuple[str, ...]:
    return rulebook.repairs[repair].parts if repair else ()


def _claim_share(answer: Answer, *, place: bool, cause: bool) -> float:
    if place and cause:
        return 1.0
    # "Somewhere in the car" is no place found: every cause of the whole vehicle shares it.
    if place and answer.corner != VEHICLE:
        return PLACE_ALONE
    return CAUSE_ALONE if cause else 0.0
