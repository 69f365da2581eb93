"""Checks before repairs, many beliefs at once: against the formulas of the plan, written out one by one."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import pytest

from triage.corners import VEHICLE
from triage.evidence.atoms import scale_row
from triage.evidence.rule_tables import Rulebook, Scale, places_of
from triage.evidence.rulebook import load_rulebook
from triage.planning.claims_in_doubt import weigh_claims
from triage.planning.cost_to_go import EARNED_AT, KNEE, SLOPE, cost_to_go
from triage.planning.costs import cost_of_check, cost_of_repair
from triage.planning.desk import Desk, Option, build_menu, build_options, shared
from triage.planning.look_ahead import cost_of_acting, cost_with_two, costs_of_next
from triage.speed_log import FloatArray

OPEN = (
    frozenset[str](),
    frozenset({"on-ground", "lifted"}),
    frozenset({"on-ground", "lifted", "sensor-out"}),
)


@pytest.fixture(scope="module")
def rulebook() -> Rulebook:
    return load_rulebook()


@pytest.fixture(scope="module")
def desk(rulebook: Rulebook) -> Desk:
    claims = weigh_claims((), rulebook)
    return Desk(claims.atoms, rulebook, build_menu(claims.atoms, rulebook))


def _some_options(desk: Desk, rng: np.random.Generator, number: int) -> list[Option]:
    chosen = rng.choice(list(desk.rulebook.checks), number, replace=False)
    checks = [desk.rulebook.checks[str(name)] for name in chosen]
    return [build_options(check, places_of(check.where)[:1], desk.rulebook)[0] for check in checks]


def _plain_repairs(desk: Desk, belief: FloatArray, is_open: frozenset[str]) -> float:
    """One belief: the repair of the largest success over cost, again and again; the best place to stop."""
    last, left, spent, best = desk.rulebook.workshop.last_resort, belief.copy(), 0.0, np.inf
    names, done = list(desk.menu.names), set[int]()
    for number in range(len(names) + 1):
        best = min(best, spent + left.sum() * last)
        money = {
            i: cost_of_repair(
                desk.rulebook.repairs[name.split("@")[0]], () if number else is_open, desk.rulebook
            ).money
            for i, name in enumerate(names)
            if i not in done
        }
        if not money:
            break
        first = max(money, key=lambda i: desk.menu.cure[i] @ left / money[i])
        spent += left.sum() * money[first]
        left = left * (1.0 - desk.menu.cure[first])
        done.add(first)
    return float(best)


def _go(desk: Desk, belief: FloatArray, is_open: frozenset[str]) -> tuple[float, float]:
    """One belief: cost of repairing at once, and of going on."""
    repairing = float(cost_of_acting(desk, belief[np.newaxis], is_open)[0])
    knowing = float(belief @ cost_of_acting(desk, np.eye(len(belief)), is_open))
    knee = KNEE * desk.rulebook.workshop.last_resort * belief.sum()
    excess = repairing - knowing
    return repairing, knowing + (excess if excess < knee else knee + SLOPE * (excess - knee))


def _plain_check(desk: Desk, belief: FloatArray, option: Option, is_open: frozenset[str]) -> float:
    cost = cost_of_check(option.check, is_open, desk.rulebook)
    paid = float(belief.sum()) * cost.money
    after = [_go(desk, belief * row, cost.open_after) for row in option.table]
    repairing, going_on = sum(one[0] for one in after), sum(one[1] for one in after)
    earned = (_go(desk, belief, is_open)[1] - going_on) / (EARNED_AT * paid)
    return paid + repairing - min(max(earned, 0.0), 1.0) * (repairing - going_on)


def _plain_two(
    desk: Desk, belief: FloatArray, option: Option, further: Sequence[Option], is_open: frozenset[str]
) -> float:
    cost = cost_of_check(option.check, is_open, desk.rulebook)
    after = [
        min(
            _go(desk, belief * row, cost.open_after)[0],
            *(_plain_check(desk, belief * row, second, cost.open_after) for second in further),
        )
        for row in option.table
    ]
    return float(belief.sum()) * cost.money + sum(after)


@pytest.mark.parametrize("seed", range(6))
def test_all_at_once_agrees_with_one_by_one(desk: Desk, seed: int) -> None:
    """On random beliefs, sharp and flat; the quick way stops at one in 10 000 of doubt."""
    rng = np.random.default_rng(seed)
    beliefs = rng.dirichlet(np.full(len(desk.atoms), (0.05, 0.3, 1.0)[seed % 3]), 2)
    is_open = OPEN[seed % 3]
    first, *further = _some_options(desk, rng, 3)
    acted = cost_of_acting(desk, beliefs, is_open)
    assert acted == pytest.approx([_plain_repairs(desk, one, is_open) for one in beliefs], rel=2e-4)
    at_once, *looked = costs_of_next(desk, beliefs, [first, *further], is_open)
    assert at_once == pytest.approx(acted, rel=1e-12)
    plain = [[_plain_check(desk, one, option, is_open) for one in beliefs] for option in (first, *further)]
    assert np.array(looked) == pytest.approx(np.array(plain), rel=1e-9)
    two = cost_with_two(desk, beliefs[0], first, further, is_open)
    assert two == pytest.approx(_plain_two(desk, beliefs[0], first, further, is_open), rel=1e-9)


def test_what_is_expected_at_each_place_is_what_the_verdict_rests_on(desk: Desk, rulebook: Rulebook) -> None:
    for check in rulebook.checks.values():
        scale = Scale(tuple(check.outcomes), check.table, check.mirror)
        for option in build_options(check, places_of(check.where), rulebook):
            plain = [scale_row(scale, option.place, atom) or check.table.rows["sound"] for atom in desk.atoms]
            np.testing.assert_array_equal(option.table.T, plain, err_msg=option.name)


def test_a_belief_costs_the_same_alone_and_among_others(desk: Desk) -> None:
    beliefs = np.random.default_rng(7).dirichlet(np.full(len(desk.atoms), 0.2), 40)
    together = cost_of_acting(desk, beliefs, OPEN[0])
    alone = [float(cost_of_acting(desk, one[np.newaxis], OPEN[0])[0]) for one in beliefs]
    assert together == pytest.approx(alone, rel=1e-12)


def test_leaving_a_repair_out_keeps_costs_with_their_repairs(desk: Desk) -> None:
    desk.repair_money(OPEN[1])
    less = desk.without(3)
    assert desk.menu.names[3] not in less.menu.names
    whole = dict(zip(desk.menu.names, desk.repair_money(OPEN[1]), strict=False))
    assert dict(zip(less.menu.names, less.repair_money(OPEN[1]), strict=False)) == {
        name: money for name, money in whole.items() if name != desk.menu.names[3]
    }


def test_a_further_answer_on_the_same_fact_is_expected_to_tell_less(desk: Desk, rulebook: Rulebook) -> None:
    """By hand: the second of two counts sqrt(2) - 1 = 0.414 of itself."""
    (option,) = build_options(rulebook.checks["noise-kind"], [VEHICLE], rulebook)
    less = shared(option, 1)
    assert shared(option, 0) is option
    assert less.table.sum(axis=0) == pytest.approx(1.0)
    full, left = np.log(option.table[0] / option.table[1]), np.log(less.table[0] / less.table[1])
    assert left == pytest.approx(full * (np.sqrt(2.0) - 1.0))


def test_a_check_that_tells_nothing_saves_nothing(desk: Desk, rulebook: Rulebook) -> None:
    """However far from knowing the cause, and though other checks would help."""
    (option,) = build_options(rulebook.checks["noise-kind"], [VEHICLE], rulebook)
    blank = replace(option, table=np.full_like(option.table, 1.0 / len(option.table)))
    belief = weigh_claims((), rulebook).share[np.newaxis]
    acted = float(cost_of_acting(desk, belief, OPEN[0])[0])
    paid = cost_of_check(option.check, OPEN[0], rulebook).money
    at_once, looked = costs_of_next(desk, belief, [blank], OPEN[0]).ravel()
    assert (at_once, looked) == pytest.approx((acted, acted + paid))


def test_going_on_costs_between_knowing_and_repairing() -> None:
    """By hand: an excess of 500 over knowing, 35 % of a last resort of 1000, and 60 % of the rest."""
    repairing, knowing = np.array([700.0, 700.0]), np.array([200.0, 400.0])
    went_on = cost_to_go(repairing, knowing, np.full(2, 1000.0))
    assert went_on == pytest.approx([200.0 + 350.0 + 0.6 * 150.0, 700.0])
