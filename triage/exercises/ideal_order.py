"""What the planner would have done at the hidden car, step by step, until the car is right."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from triage.corners import CORNERS, VEHICLE, Corner, Place
from triage.evidence.answers import Observation, build_answers
from triage.evidence.hypotheses import Finding
from triage.evidence.rule_tables import Repair, Rulebook
from triage.exercises.exercise import Exercise, Hidden
from triage.exercises.hidden_answers import answer_check
from triage.planning.costs import StepCost, cost_of_check, cost_of_repair
from triage.planning.guidance import guide
from triage.planning.plan import LAST_RESORT, PlanStep

MOST_STEPS: Final = 25
"""Ends a plan that would never come to the last resort."""

CURES: Final = 0.5
"""A repair that cures at least this share of the cars with the hidden fault counts as the right one."""


@dataclass(frozen=True, slots=True)
class IdealStep:
    """A step of the planner and what came of it.

    Attributes
    ----------
    outcome : str
        What a check told, in words; empty for a repair.
    right : bool
        Whether a repair made the car right.
    """

    step: PlanStep
    outcome: str = ""
    right: bool = False


@dataclass(frozen=True, slots=True)
class IdealOrder:
    """The planner's steps.

    Attributes
    ----------
    minutes_min, money : float
        Of all steps, opening, closing, parts and proof included.
    parts : tuple of str
        Ids of the parts fitted.
    """

    steps: tuple[IdealStep, ...]
    minutes_min: float
    money: float
    parts: tuple[str, ...]


@dataclass(slots=True)
class _Work:
    """How far the planner is."""

    seen: list[Observation]
    is_open: frozenset[str]
    tried: list[tuple[str, Place]]
    steps: list[IdealStep]
    parts: list[str]
    minutes_min: float = 0.0
    money: float = 0.0

    def pay(self, cost: StepCost) -> None:
        self.minutes_min += cost.minutes_min
        self.money += cost.money
        self.is_open = cost.open_after


def find_ideal_order(
    exercise: Exercise, findings: Sequence[Finding], rulebook: Rulebook, *, first_corner: Corner
) -> IdealOrder:
    """Let the program work on the exercise with the same answers that a trainee gets.

    Parameters
    ----------
    findings : sequence of Finding
        What the recording shows.
    first_corner : str
        The wheel that the recording alone ranks first.

    Returns
    -------
    IdealOrder
        Ends with the first repair that cures the hidden fault in most cars, or with the last resort.
    """
    work = _Work(list(exercise.complaint), frozenset(), [], [], [])
    while len(work.steps) < MOST_STEPS and not (work.steps and work.steps[-1].right):
        answers = build_answers(work.seen, rulebook, first_corner=first_corner)
        plan = guide((*findings, *answers), rulebook, is_open=tuple(work.is_open), tried=work.tried)
        if plan.next_step.kind == "check":
            _check(work, exercise, plan.next_step, rulebook)
        else:
            _repair(work, exercise.hidden, plan.next_step, rulebook)
    return IdealOrder(tuple(work.steps), work.minutes_min, work.money, tuple(work.parts))


def cures(repair: Repair, place: Place, hidden: Hidden) -> bool:
    """Tell whether a repair at a place makes most cars with the hidden fault right."""
    return place == hidden.corner and repair.cures.get(hidden.cause, 0.0) >= CURES


def _check(work: _Work, exercise: Exercise, step: PlanStep, rulebook: Rulebook) -> None:
    check = rulebook.checks[step.id]
    work.pay(cost_of_check(check, work.is_open, rulebook))
    seen = answer_check(exercise, step.id, _corner(step.place), rulebook)
    work.seen.append(seen)
    work.steps.append(IdealStep(step, check.outcomes[seen.outcome]))


def _repair(work: _Work, hidden: Hidden, step: PlanStep, rulebook: Rulebook) -> None:
    if step.id == LAST_RESORT:
        work.money += rulebook.workshop.last_resort
        work.steps.append(IdealStep(step, right=True))
        return
    repair = rulebook.repairs[step.id]
    work.pay(cost_of_repair(repair, work.is_open, rulebook))
    work.parts += repair.parts
    work.tried.append((step.id, step.place))
    work.steps.append(IdealStep(step, right=cures(repair, step.place, hidden)))


def _corner(place: Place) -> Corner | None:
    return None if place == VEHICLE else next(corner for corner in CORNERS if corner == place)
