"""What a check at the hidden car answers: drawn from the rule book, always the same for one question.

The tables say how often each outcome is seen where a cause sits, and how often at a sound wheel. The draw
depends on exercise, check and place alone, not on the order in which a trainee asks, so two trainees who ask
the same question hear the same answer.
"""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from triage.corners import CORNERS, VEHICLE, Corner, Place
from triage.errors import SettingsError
from triage.evidence.answers import Observation, find_check
from triage.evidence.atoms import Atom, scale_row
from triage.evidence.rule_tables import Check, Rulebook, Scale
from triage.exercises.exercise import Exercise, Hidden
from triage.texts import Text


@dataclass(frozen=True, slots=True)
class SameFact:
    """Two questions about one fact: where the first hears of nothing, so does the second, and only there."""

    first: str
    second: str
    first_nothing: str
    second_nothing: str


SAME_FACTS: Final = (
    SameFact("lamp-when", "lamp-which", "never", "none"),
    SameFact("noise-kind", "noise-speed", "none", "no-noise"),
)
"""A driver whose lamp never came on names no lamp; drawn apart, the two answers would now and then clash."""


def answer_check(exercise: Exercise, check_id: str, corner: Corner | None, rulebook: Rulebook) -> Observation:
    """Do a check at the hidden car.

    Parameters
    ----------
    check_id : str
        Id or other name of a check.
    corner : str or None
        The wheel looked at; of no account where the check is on the whole vehicle.

    Returns
    -------
    Observation
        The same for the same exercise, check, wheel and tables.

    Raises
    ------
    SettingsError
        For an unknown check, and where a check at one wheel is given none.
    """
    check = find_check(check_id, rulebook)
    place = place_of_check(check, corner)
    shares = outcome_shares(exercise.hidden, check, place)
    for fact in SAME_FACTS:
        if check.id == fact.second and fact.first in rulebook.checks:
            first = answer_check(exercise, fact.first, corner, rulebook).outcome
            shares = _agreeing(shares, fact.second_nothing, nothing=first == fact.first_nothing)
    outcome = _pick(shares, _uniform(f"{exercise.id}|{check.id}|{place}"))
    return Observation(check.id, None if place == VEHICLE else place, outcome)


def place_of_check(check: Check, corner: Corner | None) -> Place:
    """Return where a check is done; SettingsError when a check at one wheel is given none."""
    if check.where == "vehicle":
        return VEHICLE
    if corner not in CORNERS:
        raise SettingsError(
            Text("{name}: it is not said at which wheel", name=check.title),
            hint=Text("Choose one of {corners}.", corners=", ".join(CORNERS)),
        )
    return corner


def outcome_shares(hidden: Hidden, check: Check, place: Place) -> Mapping[str, float]:
    """Return P(outcome | the hidden fault) for a check at a place; sums to 1."""
    scale = Scale(tuple(check.outcomes), check.table, check.mirror)
    truth = Atom(hidden.corner, hidden.cause, hidden.cause, 0, 1.0)
    row = scale_row(scale, place, truth) or check.table.rows["sound"]
    return {name: share / sum(row) for name, share in zip(check.outcomes, row, strict=True)}


def _agreeing(shares: Mapping[str, float], name: str, *, nothing: bool) -> Mapping[str, float]:
    """Return the shares, given that the outcome of that name is seen, or that it is not."""
    left = {outcome: share for outcome, share in shares.items() if (outcome == name) == nothing}
    total = sum(left.values())
    return {outcome: share / total for outcome, share in left.items()} if total > 0.0 else shares


def _pick(shares: Mapping[str, float], at: float) -> str:
    passed = 0.0
    for name, share in shares.items():
        passed += share
        if at < passed:
            return name
    return next(reversed(list(shares)))


def _uniform(question: str) -> float:
    """Return a number from 0 to below 1 that depends on the question alone."""
    return int.from_bytes(hashlib.sha256(question.encode("utf-8")).digest()[:6], "big") / 2.0**48
