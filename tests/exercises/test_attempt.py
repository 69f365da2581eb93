"""Checks cost what the planner counts, levels are opened once, and nothing changes after handing in."""

from __future__ import annotations

import pytest

from triage.errors import SettingsError
from triage.evidence.rule_tables import Rulebook
from triage.exercises.attempt import Answer, Attempt, commit, order_check, price_of
from triage.exercises.exercise import Exercise


def opening_min(access: str, rulebook: Rulebook) -> float:
    level = rulebook.access[access]
    return level.opening_min + rulebook.workshop.corrosion * level.seized_min


def test_a_level_is_paid_once(dirty: Exercise, rulebook: Rulebook) -> None:
    lifted = opening_min("lifted", rulebook)
    attempt = order_check(Attempt(dirty), "rock-wheel", "FL", rulebook)
    assert attempt.minutes_min == pytest.approx(rulebook.checks["rock-wheel"].minutes_min + lifted)
    again = order_check(attempt, "turn-by-hand", "FL", rulebook)
    extra = rulebook.checks["turn-by-hand"].minutes_min
    assert again.minutes_min - attempt.minutes_min == pytest.approx(extra)
    assert again.done[1].money == pytest.approx(extra / 60.0 * rulebook.workshop.money_per_hour)


def test_a_test_drive_closes_the_car(dirty: Exercise, rulebook: Rulebook) -> None:
    attempt = order_check(Attempt(dirty), "rock-wheel", "FL", rulebook)
    after = order_check(attempt, "growl-in-curves", None, rulebook)
    assert attempt.is_open >= {"lifted"}
    assert after.is_open == frozenset()


def test_nobody_pays_twice_for_an_answer(dirty: Exercise, rulebook: Rulebook) -> None:
    attempt = order_check(Attempt(dirty), "rock-wheel", "FL", rulebook)
    assert order_check(attempt, "play", "FL", rulebook) == attempt  # by its other name
    told = dirty.complaint[0].check
    assert order_check(attempt, told, None, rulebook) == attempt
    assert len(order_check(attempt, "rock-wheel", "FR", rulebook).done) == 2


def test_the_price_told_is_the_price_paid(dirty: Exercise, rulebook: Rulebook) -> None:
    attempt = order_check(Attempt(dirty), "rock-wheel", "FL", rulebook)
    told = price_of(attempt, "look-at-encoder", rulebook)
    paid = order_check(attempt, "look-at-encoder", "FL", rulebook).done[-1]
    assert (paid.minutes_min, paid.money) == (told.minutes_min, told.money)


def test_a_check_for_other_sensors_is_refused(dirty: Exercise, rulebook: Rulebook) -> None:
    other = "coil-resistance" if dirty.sensor == "active" else "sensor-supply-current"
    with pytest.raises(SettingsError, match="sensors of this car"):
        order_check(Attempt(dirty), other, "FL", rulebook)


def test_an_answer_ends_the_work(dirty: Exercise, rulebook: Rulebook) -> None:
    attempt = commit(Attempt(dirty), "RL", "encoder-debris", 0.8, rulebook=rulebook)
    assert attempt.answer == Answer("RL", "encoder-debris", 0.8)
    with pytest.raises(SettingsError, match="handed in"):
        commit(attempt, "RL", "encoder-debris", 0.8, rulebook=rulebook)
    with pytest.raises(SettingsError, match="handed in"):
        order_check(attempt, "rock-wheel", "FL", rulebook)


def test_a_cause_of_the_car_has_no_wheel(dirty: Exercise, rulebook: Rulebook) -> None:
    answer = commit(Attempt(dirty), "RL", "common-cause", 0.8, rulebook=rulebook).answer
    assert answer == Answer("vehicle", "common-cause", 0.8)


@pytest.mark.parametrize(
    ("corner", "cause", "confidence"),
    [
        (None, "encoder-debris", 0.5),
        ("FL", "no-such-cause", 0.5),
        ("FL", "encoder-debris", 1.0),
        ("FL", "encoder-debris", 0.0),
        ("FL", "encoder-debris", float("nan")),
    ],
)
def test_answers_that_cannot_be_scored_are_refused(
    corner: str | None, cause: str, confidence: float, dirty: Exercise, rulebook: Rulebook
) -> None:
    with pytest.raises(SettingsError) as refusal:
        commit(Attempt(dirty), corner, cause, confidence, rulebook=rulebook)
    assert refusal.value.hint
