"""Answers come from the tables, are the same for the same question, and do not contradict each other."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.errors import SettingsError
from triage.evidence.rule_tables import Rulebook
from triage.exercises.exercise import Exercise
from triage.exercises.hidden_answers import answer_check, outcome_shares

CARS = 4000


def answers(check: str, corner: str | None, exercise: Exercise, rulebook: Rulebook) -> Counter[str]:
    cars = (replace(exercise, id=f"{number:012x}") for number in range(CARS))
    return Counter(answer_check(car, check, corner, rulebook).outcome for car in cars)


def test_the_same_question_has_the_same_answer(dirty: Exercise, rulebook: Rulebook) -> None:
    for check in rulebook.checks:
        first = answer_check(dirty, check, "FR", rulebook)
        assert first == answer_check(dirty, check, "FR", rulebook)
        assert first.outcome in rulebook.checks[check].outcomes
        assert first.corner == ("FR" if rulebook.checks[check].where == "corner" else None)


@pytest.mark.parametrize(("corner", "row"), [("RL", "encoder-debris"), ("FL", "sound")])
def test_answers_are_as_frequent_as_the_table_says(
    corner: str, row: str, dirty: Exercise, rulebook: Rulebook
) -> None:
    counted = answers("look-at-encoder", corner, dirty, rulebook)
    wanted = rulebook.checks["look-at-encoder"].table.rows[row]
    for name, share in zip(rulebook.checks["look-at-encoder"].outcomes, wanted, strict=True):
        # Four standard deviations of a counted share (binomial).
        assert counted[name] / CARS == pytest.approx(share, abs=4 * np.sqrt(share * (1 - share) / CARS))


def test_a_fault_on_the_right_mirrors_the_curves(dirty: Exercise, rulebook: Rulebook) -> None:
    check = rulebook.checks["growl-in-curves"]
    left = outcome_shares(replace(dirty.hidden, cause="bearing-roughness", corner="RL"), check, "vehicle")
    right = outcome_shares(replace(dirty.hidden, cause="bearing-roughness", corner="RR"), check, "vehicle")
    assert left["louder-in-right"] == right["louder-in-left"] > left["louder-in-left"]
    assert sum(right.values()) == pytest.approx(1.0)


def test_wheels_are_answered_apart(dirty: Exercise, rulebook: Rulebook) -> None:
    cars = [replace(dirty, id=f"{number:012x}") for number in range(200)]
    pairs = {
        tuple(answer_check(car, "connector", corner, rulebook).outcome for corner in CORNERS) for car in cars
    }
    assert len(pairs) > 3


def test_no_lamp_is_named_that_never_came_on(dirty: Exercise, rulebook: Rulebook) -> None:
    seen = set()
    for number in range(500):
        car = replace(dirty, id=f"{number:012x}")
        when = answer_check(car, "lamp-when", None, rulebook).outcome
        which = answer_check(car, "lamp-which", None, rulebook).outcome
        assert (when == "never") == (which == "none")
        seen.add(which)
    assert seen == {"none", "brake-control", "red-brake"}


def test_a_wheel_must_be_named(dirty: Exercise, rulebook: Rulebook) -> None:
    with pytest.raises(SettingsError, match="which wheel"):
        answer_check(dirty, "rock-wheel", None, rulebook)
    with pytest.raises(SettingsError, match="no check"):
        answer_check(dirty, "no-such-check", "FL", rulebook)
