"""The simulated workshops: same cars for all, beliefs as the program has them, and what planning is worth."""

from __future__ import annotations

import numpy as np
import pytest

from triage.corners import VEHICLE
from triage.evidence.answers import Observation, build_answers
from triage.evidence.rule_tables import Rulebook
from triage.evidence.rulebook import load_rulebook
from triage.planning.claims_in_doubt import weigh_claims
from triage.planning.excess_paid import collect_excess, format_excess
from triage.planning.plan import make_plan
from triage.planning.simulated_cars import Shop, answer_of, disturb, do_check, draw_car, open_shop
from triage.planning.simulated_workshops import by_the_code, planned, run_workshop, saving_with_interval


@pytest.fixture(scope="module")
def rulebook() -> Rulebook:
    return load_rulebook()


@pytest.fixture(scope="module")
def shop(rulebook: Rulebook) -> Shop:
    return open_shop(rulebook, rulebook)


def test_a_mechanic_believes_and_plans_what_the_program_does(shop: Shop, rulebook: Rulebook) -> None:
    """Answers on one fact among them; the step is that of the plan from the same answers."""
    car = draw_car(shop, seed=3, number=5)
    for name in ("noise-kind@vehicle", "noise-speed@vehicle", f"rock-wheel@{car.corner}"):
        do_check(car, shop, name)
    seen = [Observation("sensor-kind", None, "active")]
    for name in car.answered:
        check, place = name.split("@")
        outcome = tuple(rulebook.checks[check].outcomes)[answer_of(car, shop, name)]
        corner = None if place == VEHICLE else shop.options[name].place
        seen.append(Observation(check, corner if corner != VEHICLE else None, outcome))
    findings = build_answers(seen, rulebook, first_corner=car.corner)
    assert car.share == pytest.approx(weigh_claims(findings, rulebook).share, abs=1e-12)
    step = make_plan(findings, rulebook, is_open=sorted(car.is_open)).next_step
    steps = car.steps
    planned(car, shop)
    assert car.steps == steps + 1
    done = {f"{step.id}@{step.place}"}
    assert done <= car.answered or (step.id, step.place) in car.tried or car.right


def test_every_mechanic_meets_the_same_cars(shop: Shop) -> None:
    one, other = (draw_car(shop, seed=1, number=4) for _ in range(2))
    do_check(one, shop, f"rock-wheel@{one.corner}")
    do_check(other, shop, f"connector@{other.corner}")
    do_check(other, shop, f"rock-wheel@{other.corner}")
    name = f"rock-wheel@{one.corner}"
    assert (one.claim, answer_of(one, shop, name)) == (other.claim, answer_of(other, shop, name))


def test_planning_costs_less_than_replacing_what_the_code_says(shop: Shop) -> None:
    """On few cars, for the full comparison see the module: 25 % are wanted, half the wrong parts at most."""
    own, other = (run_workshop(mechanic, 25, shop, seed=2) for mechanic in (planned, by_the_code))
    money = [np.array([car.money for car in cars]) for cars in (own, other)]
    saved, low, high = saving_with_interval(*money)
    assert low < saved < high
    assert saved > 0.25
    assert sum(car.wrong_parts for car in own) < 0.5 * sum(car.wrong_parts for car in other)


def test_disturbed_tables_are_still_tables(rulebook: Rulebook) -> None:
    other = disturb(rulebook, np.random.default_rng(1), 0.3)
    rows = [row for check in other.checks.values() for row in check.table.rows.values()]
    assert all(sum(row) == pytest.approx(1.0) and min(row) > 0.0 for row in rows)
    assert other.checks["rock-wheel"].table.rows != rulebook.checks["rock-wheel"].table.rows


def test_the_excess_of_every_step_is_that_of_its_car(shop: Shop) -> None:
    """The steps of one car differ in what was paid by the steps between them, whatever was known."""
    excess = collect_excess(shop, 2, seed=6)
    cars = run_workshop(planned, 2, shop, seed=6)
    assert len(excess) == sum(car.steps - 1 for car in cars)  # the codes were read before the first
    assert excess[:, 0].min() > -1e-6
    first = draw_car(shop, seed=6, number=0)
    knowing = float(first.share @ first.desk.knowing_money(first.is_open))
    assert excess[0, 1] == pytest.approx(cars[0].money - first.money - knowing)
    assert format_excess(excess).count("\n") == 11
