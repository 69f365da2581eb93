"""``python -m triage.planning.simulated_workshops``: what the planner is worth against plainer ways to work.

Cars with a hidden fault, drawn from the priors of the rule book, come into a workshop with no recording; the
fault memory is read for all four wheels. Then one of three mechanics goes on until the car is
proven right:

- *planned*: the step that :func:`triage.planning.plan.make_plan` puts first, again and again;
- *by the code*: replaces what a stored code points at, sensor first, then hub unit, then the lead;
- *fixed order*: always the same checks in the same order at the wheel the memory points at, then the repairs
  by what they told. The list is the one that costs least over many other cars, found by adding the best check
  as long as that saves anything.

Answers and cures are drawn from the tables of the rule book, and a second time from tables of which every
number was disturbed at random, while the mechanics go on believing the undisturbed ones.
"""

from __future__ import annotations

import argparse
import sys
from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.corners import CORNERS, VEHICLE
from triage.evidence.rule_tables import places_of
from triage.evidence.rulebook import load_rulebook
from triage.planning.desk import places_to_check
from triage.planning.plan import LAST_RESORT, choose, share_facts, suspected_corners
from triage.planning.repair_cost import expected_repair_cost, repair_order
from triage.planning.simulated_cars import (
    CODE,
    Car,
    Heard,
    Shop,
    answer_of,
    disturb,
    do_check,
    do_repair,
    draw_car,
    open_shop,
    weigh_heard,
)
from triage.speed_log import FloatArray

BY_CODE: Final[Mapping[str, tuple[str, ...]]] = {
    "circuit": ("replace-sensor", "mend-lead", "replace-hub-unit"),
    "signal": ("replace-sensor", "replace-hub-unit", "mend-lead"),
    "several-wheels": ("mend-supply", "replace-sensor"),
    "nothing": ("hand-back",),
}
"""What is replaced for each kind of code, in order."""

DISTURBED_BY: Final = 0.3
"""Spread of the logarithm of every disturbed number."""

CHECKS_AT_MOST: Final = 20
LEARNT_ON: Final = 2000
"""Cars on which the fixed order is learnt; they are not among those that are counted."""

RESAMPLED: Final = 2000
"""Bootstrap samples of cars behind every interval."""

Mechanic = Callable[[Car, Shop], None]
"""Does one step on a car."""


def run_workshop(mechanic: Mechanic, cars: int, shop: Shop, *, seed: int) -> list[Car]:
    """Let one mechanic make so many cars right; the same seed gives the same cars."""
    done = []
    for number in range(cars):
        car = draw_car(shop, seed=seed, number=number)
        while not car.right:
            mechanic(car, shop)
        done.append(car)
    return done


def planned(car: Car, shop: Shop) -> None:
    """Do what the plan puts first."""
    corners = suspected_corners(car.desk, car.share)
    options = [
        option
        for name, option in shop.options.items()
        if name not in car.answered and option.place in places_to_check(option.check, corners)
    ]
    told = Counter(one.fact for one in car.heard)
    step = choose(car.desk, car.share, share_facts(options, told), car.is_open).next_step
    if step.kind == "check":
        do_check(car, shop, f"{step.id}@{step.place}")
        return
    names = car.desk.menu.names
    do_repair(car, shop, len(names) if step.id == LAST_RESORT else names.index(f"{step.id}@{step.place}"))


def by_the_code(car: Car, shop: Shop) -> None:
    """Replace what the code points at."""
    names, left = car.desk.menu.names, BY_CODE[car.code][len(car.tried) :]
    if not left:
        do_repair(car, shop, len(names))
        return
    place = car.corner if places_of(shop.rulebook.repairs[left[0]].where) == CORNERS else VEHICLE
    do_repair(car, shop, names.index(f"{left[0]}@{place}"))


@dataclass(frozen=True, slots=True)
class FixedOrder:
    """The same checks for every car, then the repairs by what they told."""

    checks: tuple[str, ...]

    def __call__(self, car: Car, shop: Shop) -> None:
        """Do all checks of the list, or the best repair left."""
        if not car.tried:
            for name in self.checks:
                do_check(car, shop, _at(name, car, shop))
        first = car.desk.repair_money(car.is_open)
        do_repair(car, shop, repair_order(car.share, car.desk.menu, first_money=first)[0])


@dataclass(frozen=True, slots=True)
class _Stage:
    """Many cars after the same checks: answers, what the checks cost, and the expected total with repairs."""

    heard: tuple[Heard, ...]
    paid: float
    is_open: frozenset[str]
    total: float


def learn_fixed_order(shop: Shop, *, seed: int) -> FixedOrder:
    """Add the check that lowers the mean expected cost most, as long as one does."""
    cars = [draw_car(shop, seed=seed, number=number) for number in range(LEARNT_ON)]
    codes = tuple(
        Heard(cars[0].heard[at].fact, np.array([car.heard[at].log_likelihood for car in cars]))
        for at in range(len(cars[0].heard))
    )
    now = _stage(codes, 0.0, frozenset(), shop)
    chosen: tuple[str, ...] = ()
    while len(chosen) < CHECKS_AT_MOST:
        known = dict.fromkeys(option.check.id for option in shop.options.values())
        left = [name for name in known if name not in (*chosen, CODE)]
        tried = {name: _after(now, name, cars, shop) for name in left}
        name = min(tried, key=lambda one: tried[one].total)
        if tried[name].total >= now.total:
            break
        now, chosen = tried[name], (*chosen, name)
    return FixedOrder(chosen)


def _after(stage: _Stage, name: str, cars: Sequence[Car], shop: Shop) -> _Stage:
    names = [_at(name, car, shop) for car in cars]
    rows = [shop.options[one].table[answer_of(car, shop, one)] for one, car in zip(names, cars, strict=True)]
    answer = Heard((shop.rulebook.checks[name].group, VEHICLE), np.log(rows))
    cost = cars[0].desk.check_cost(shop.options[names[0]], stage.is_open)
    return _stage((*stage.heard, answer), stage.paid + cost.money, cost.open_after, shop)


def _stage(heard: tuple[Heard, ...], paid: float, is_open: frozenset[str], shop: Shop) -> _Stage:
    prior = shop.claims.share
    beliefs = prior * np.exp(weigh_heard(heard, prior))
    beliefs = beliefs / beliefs.sum(axis=1, keepdims=True)
    first = shop.desk.repair_money(is_open)
    money = np.broadcast_to(first, (len(beliefs), len(first)))
    acted = expected_repair_cost(beliefs, shop.menu, first_money=money)
    return _Stage(heard, paid, is_open, paid + float(acted.mean()))


def _at(name: str, car: Car, shop: Shop) -> str:
    """Name a check at the wheel the fault memory points at, or on the whole car."""
    return f"{name}@{car.corner if shop.rulebook.checks[name].where == 'corner' else VEHICLE}"


def main(argv: Sequence[str] | None = None) -> int:
    """Run the comparison and print it."""
    ask = argparse.ArgumentParser(prog="python -m triage.planning.simulated_workshops")
    ask.add_argument("--cars", type=int, default=500, help="cars for each mechanic and setting (500)")
    ask.add_argument("--seed", type=int, default=1)
    given = ask.parse_args(argv)
    rulebook = load_rulebook()
    shop = open_shop(rulebook, rulebook)
    fixed = learn_fixed_order(shop, seed=given.seed + 1000)
    sys.stdout.write(f"best fixed order of checks: {', '.join(fixed.checks) or 'none'}\n")
    rng = np.random.default_rng([given.seed, 7])
    disturbed = open_shop(rulebook, disturb(rulebook, rng, DISTURBED_BY))
    for title, real in (("tables as they are", shop), ("tables disturbed by 30 %", disturbed)):
        mechanics: dict[str, Mechanic] = {
            "planned": planned,
            "fixed order": fixed,
            "by the code": by_the_code,
        }
        cars = {
            name: run_workshop(mechanic, given.cars, real, seed=given.seed)
            for name, mechanic in mechanics.items()
        }
        sys.stdout.write(format_comparison(title, cars))
    return 0


def format_comparison(title: str, cars: Mapping[str, Sequence[Car]]) -> str:
    """Write down cost, wrong parts and steps of every mechanic; the first is compared with the others."""
    lines = [f"\n{title}", f"{'':<14}{'cars':>6}{'cost':>9}{'+-':>6}{'wrong parts':>13}{'steps':>7}"]
    money = {name: np.array([car.money for car in own]) for name, own in cars.items()}
    for name, own in cars.items():
        lines.append(
            f"{name:<14}{len(own):>6}{money[name].mean():>9.1f}{money[name].std() / np.sqrt(len(own)):>6.1f}"
            f"{np.mean([car.wrong_parts for car in own]):>13.3f}{np.mean([car.steps for car in own]):>7.2f}"
        )
    first, *others = cars
    for name in others:
        saved, low, high = saving_with_interval(money[first], money[name])
        lines.append(f"{first} costs {saved:.1%} less than {name} (95 %: {low:.1%} to {high:.1%})")
    return "\n".join(lines) + "\n"


def saving_with_interval(own: FloatArray, other: FloatArray) -> tuple[float, float, float]:
    """Return by which share the same cars cost less, with a 95 % interval by resampling the cars in pairs."""
    rng = np.random.default_rng(0)
    drawn = rng.integers(len(own), size=(RESAMPLED, len(own)))
    saved = 1.0 - own[drawn].mean(axis=1) / other[drawn].mean(axis=1)
    low, high = np.quantile(saved, [0.025, 0.975])
    return float(1.0 - own.mean() / other.mean()), float(low), float(high)


if __name__ == "__main__":
    sys.exit(main())
