"""Orders of actions: worked numbers, all orders as the reference, and random trees of access."""

from __future__ import annotations

from itertools import permutations

import numpy as np
import pytest

from triage.planning.access import Level, path_to
from triage.planning.orders import Action, expected_cost, find_order, search_all_orders, sort_by_ratio

OPEN = {"ground": Level("ground", None)}


def _worked() -> list[Action]:
    """P and C of the worked case; its expected costs come from trying all 24 orders."""
    numbers = zip((0.45, 0.25, 0.20, 0.10), (120.0, 20.0, 60.0, 15.0), strict=True)
    return [Action(str(i + 1), "ground", cost, share) for i, (share, cost) in enumerate(numbers)]


def test_probability_over_cost_is_optimal_without_levels() -> None:
    actions = _worked()
    order = sort_by_ratio(actions)
    assert [one.id for one in order] == ["2", "4", "1", "3"]
    assert expected_cost(order, OPEN) == pytest.approx(121.25, abs=1e-9)
    assert find_order(actions, OPEN) == order
    assert search_all_orders(actions, OPEN) == order
    by_probability = sorted(actions, key=lambda one: -one.cure_probability)
    by_cost = sorted(actions, key=lambda one: one.cost)
    assert expected_cost(by_probability, OPEN) == pytest.approx(150.5, abs=1e-9)
    assert expected_cost(by_cost, OPEN) == pytest.approx(126.0, abs=1e-9)
    assert max(expected_cost(one, OPEN) for one in permutations(actions)) == pytest.approx(166.25, abs=1e-9)


def test_an_opened_level_makes_what_is_inside_cheap() -> None:
    levels = {"ground": Level("ground", None), "off": Level("off", "ground", 10.0, 5.0)}
    alone = Action("alone", "ground", 8.0, 0.3)
    inside = [Action("a", "off", 1.0, 0.2), Action("b", "off", 1.0, 0.2), Action("c", "off", 1.0, 0.3)]
    order = find_order([*inside, alone], levels)
    assert [one.id for one in order] == ["c", "a", "b", "alone"]
    assert order == search_all_orders([*inside, alone], levels)
    # By hand: 8; with 0.7 left 10 to open and 1 for c; with 0.4 left a, with 0.2 left b; closing 5 * 0.7.
    by_hand = 8.0 + 0.7 * 11.0 + 0.4 * 1.0 + 0.2 * 1.0 + 0.7 * 5.0
    assert expected_cost([alone, inside[2], *inside[:2]], levels) == pytest.approx(by_hand)


def test_a_road_test_closes_the_car_again() -> None:
    levels = {"ground": Level("ground", None), "off": Level("off", "ground", 10.0, 5.0)}
    first = Action("a", "off", 1.0, 0.5, proved_on_road=True)
    second = Action("b", "off", 2.0, 0.5, proved_on_road=True)
    assert expected_cost([first, second], levels) == pytest.approx(16.0 + 0.5 * 17.0)


def _random_case(rng: np.random.Generator, *, road: bool) -> tuple[list[Action], dict[str, Level]]:
    levels = {"0": Level("0", None)}
    for number in range(1, int(rng.integers(2, 5))):
        parent = str(rng.integers(number))
        levels[str(number)] = Level(str(number), parent, float(rng.uniform(1, 60)), float(rng.uniform(1, 40)))
    count = int(rng.integers(3, 8))
    share = rng.dirichlet(np.ones(count + 1))
    return [
        Action(
            str(i),
            str(rng.integers(len(levels))),
            float(rng.uniform(1, 90)),
            float(share[i]),
            proved_on_road=road and bool(rng.uniform() < 0.4),
        )
        for i in range(count)
    ], levels


@pytest.mark.parametrize("road", [False, True])
def test_random_trees_of_access_come_within_three_percent_of_the_best(*, road: bool) -> None:
    rng = np.random.default_rng(5)
    gaps = []
    for _ in range(500):
        actions, levels = _random_case(rng, road=road)
        best = expected_cost(search_all_orders(actions, levels), levels)
        gaps.append(expected_cost(find_order(actions, levels), levels) / best - 1.0)
    assert min(gaps) > -1e-12
    assert max(gaps) <= (0.03 if road else 1e-9)


def test_all_orders_means_all() -> None:
    rng = np.random.default_rng(11)
    for _ in range(10):
        actions, levels = _random_case(rng, road=True)
        plain = min(expected_cost(one, levels) for one in permutations(actions[:5]))
        assert expected_cost(search_all_orders(actions[:5], levels), levels) == pytest.approx(plain)


def test_levels_in_a_circle_are_refused() -> None:
    with pytest.raises(ValueError, match="circle: a < b < a"):
        path_to("a", {"a": Level("a", "b"), "b": Level("b", "a")})
