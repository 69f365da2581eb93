"""Scores against closed forms, and the ideal order against the planner and the tables it rests on."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from triage.errors import SettingsError
from triage.evidence.answers import leading_corner
from triage.evidence.rule_tables import Rulebook
from triage.exercises.attempt import Attempt, commit, order_check
from triage.exercises.exercise import Exercise, Wish
from triage.exercises.hidden_answers import answer_check
from triage.exercises.ideal_order import IdealOrder, find_ideal_order
from triage.exercises.making import drive_exercise, make_wished
from triage.exercises.score import Score, brier_score, log_score_bit, repair_for, score_attempt
from triage.planning.costs import cost_of_check, cost_of_repair
from triage.planning.plan import LAST_RESORT
from triage.run import run_triage


@pytest.fixture(scope="module")
def ideal(dirty: Exercise, rulebook: Rulebook) -> IdealOrder:
    """Without a recording: the planner knows no more than the complaint."""
    return find_ideal_order(dirty, (), rulebook, first_corner="FL")


Scorer = Callable[..., Score]


@pytest.fixture
def scored(rulebook: Rulebook) -> Scorer:
    def score(corner: str, cause: str, confidence: float, *, attempt: Attempt, ideal: IdealOrder) -> Score:
        return score_attempt(commit(attempt, corner, cause, confidence, rulebook=rulebook), ideal, rulebook)

    return score


@pytest.mark.parametrize("score", [lambda c, *, right: -brier_score(c, right=right), log_score_bit])
@pytest.mark.parametrize("belief", [0.05, 0.3, 0.5, 0.8, 0.99])
def test_nobody_does_better_than_by_stating_what_he_believes(score: object, belief: float) -> None:
    stated = np.arange(0.01, 1.0, 0.01)
    expected = [belief * score(c, right=True) + (1.0 - belief) * score(c, right=False) for c in stated]
    assert stated[int(np.argmax(expected))] == pytest.approx(belief, abs=0.005)


def test_closed_forms() -> None:
    # The sum over both outcomes, as Brier (1950) writes it, is twice the score of one.
    assert pytest.approx(2 * brier_score(0.8, right=True)) == (0.8 - 1) ** 2 + (0.2 - 0) ** 2
    assert log_score_bit(0.5, right=True) == log_score_bit(0.5, right=False) == -1.0
    assert log_score_bit(0.99, right=False) == pytest.approx(math.log(0.01) / math.log(2))


def test_the_points_keep_the_confidence_honest(scored: Scorer, dirty: Exercise, ideal: IdealOrder) -> None:
    share = {}
    for confidence in np.arange(0.01, 1.0, 0.01):
        right = scored("RL", "encoder-debris", float(confidence), attempt=Attempt(dirty), ideal=ideal)
        wrong = scored("FL", "sensor-fault", float(confidence), attempt=Attempt(dirty), ideal=ideal)
        share[confidence] = 0.6 * right.points + 0.4 * wrong.points
    assert max(share, key=lambda one: share[one]) == pytest.approx(0.6, abs=0.005)


def test_right_answers_score_more_than_half_right_ones(
    scored: Scorer, dirty: Exercise, ideal: IdealOrder
) -> None:
    claims = [("RL", "encoder-debris"), ("RL", "sensor-fault"), ("FR", "encoder-debris"), ("FR", "air-gap")]
    points = [
        scored(corner, cause, 0.5, attempt=Attempt(dirty), ideal=ideal).claim_points
        for corner, cause in claims
    ]
    assert points == [50.0, 20.0, 10.0, 0.0]


def test_the_car_as_a_whole_is_no_place_found(
    scored: Scorer, dirty: Exercise, rulebook: Rulebook, ideal: IdealOrder
) -> None:
    healthy = replace(
        dirty, hidden=replace(dirty.hidden, cause="no-fault-found", corner="vehicle", severity=0.0)
    )
    score = scored("FL", "common-cause", 0.5, attempt=Attempt(healthy), ideal=ideal)
    assert score.corner_right
    assert score.claim_points == 0.0


def test_a_wrong_repair_wastes_its_parts_and_the_right_one_follows(
    scored: Scorer, dirty: Exercise, rulebook: Rulebook, ideal: IdealOrder
) -> None:
    score = scored("RL", "sensor-fault", 0.9, attempt=Attempt(dirty), ideal=ideal)
    wrong = cost_of_repair(repair_for("sensor-fault", rulebook), (), rulebook)
    right = cost_of_repair(repair_for("encoder-debris", rulebook), (), rulebook)
    assert score.own.minutes_min == pytest.approx(wrong.minutes_min + right.minutes_min)
    assert score.own.money == pytest.approx(wrong.money + right.money)
    assert score.wasted_parts == ("sensor",)
    assert score.wasted_money == pytest.approx(max(score.own.money - ideal.money, 0.0))


def test_what_stands_open_need_not_be_opened_for_the_repair(
    scored: Scorer, dirty: Exercise, rulebook: Rulebook
) -> None:
    attempt = order_check(Attempt(dirty), "look-at-encoder", "RL", rulebook)
    ideal = IdealOrder((), 10.0, 10.0, ())
    score = scored("RL", "encoder-debris", 0.9, attempt=attempt, ideal=ideal)
    repair = cost_of_repair(repair_for("encoder-debris", rulebook), attempt.is_open, rulebook)
    assert score.own.minutes_min == pytest.approx(attempt.minutes_min + repair.minutes_min)
    assert score.own.cured
    assert score.thrift_points == pytest.approx(25.0 * 10.0 / score.own.money)


def test_giving_the_car_away_costs_the_last_resort(
    scored: Scorer, dirty: Exercise, rulebook: Rulebook
) -> None:
    score = scored("FL", "other", 0.2, attempt=Attempt(dirty), ideal=IdealOrder((), 0.0, 1.0, ()))
    assert score.own.money == rulebook.workshop.last_resort
    assert score.wasted_parts == ()


def test_nothing_handed_in_cannot_be_scored(
    scored: Scorer, dirty: Exercise, rulebook: Rulebook, ideal: IdealOrder
) -> None:
    with pytest.raises(SettingsError, match="handed in"):
        score_attempt(Attempt(dirty), ideal, rulebook)


def test_the_ideal_order_adds_up_and_ends_right(
    dirty: Exercise, rulebook: Rulebook, ideal: IdealOrder
) -> None:
    minutes, is_open = 0.0, frozenset()
    for one in ideal.steps:
        assert one.step.id != LAST_RESORT
        if one.step.kind == "check":
            cost = cost_of_check(rulebook.checks[one.step.id], is_open, rulebook)
            corner = None if one.step.place == "vehicle" else one.step.place
            told = answer_check(dirty, one.step.id, corner, rulebook).outcome
            assert one.outcome == rulebook.checks[one.step.id].outcomes[told]
        else:
            cost = cost_of_repair(rulebook.repairs[one.step.id], is_open, rulebook)
        minutes, is_open = minutes + cost.minutes_min, cost.open_after
    assert ideal.minutes_min == pytest.approx(minutes)
    assert [one.right for one in ideal.steps] == [False] * (len(ideal.steps) - 1) + [True]
    assert ideal.steps[-1].step.place == "RL"


@pytest.mark.parametrize("cause", ["harness-fault", "common-cause", "bearing-roughness"])
def test_the_ideal_order_ends_with_a_car_that_is_right(cause: str, rulebook: Rulebook) -> None:
    car = make_wished(Wish(3, cause, "RR", 0.5, 60.0), rulebook)
    result = run_triage(drive_exercise(car).log, rulebook)
    first = leading_corner(result.posterior)
    assert find_ideal_order(car, result.findings, rulebook, first_corner=first).steps[-1].right
