"""``python -m triage.planning.simulated_workshops``: what the planner is worth against plainer ways to work.

Cars with a hidden fault, drawn from the priors of the rule book, come into a workshop with no recording; the
fault memory is read for all four wheels. Then one of three mechanics goes on until the car is
proven right:

- *planned*: the step that :func:`triage.planning.plan.make_plan` puts first, again and again;
- *by the code*: replaces what a stored code points at, sensor first, then hub unit, then the lead;
- *fixed order*: always the same checks in the same order, then the repairs by what they told. The list is the
  one that costs least over many other cars, found by adding the best check as long as that saves anything.

Answers and cures are drawn from the tables of the rule book, and a second time from tables of which every
number was disturbed at random, while the mechanics go on believing the undisturbed ones.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Final

import numpy as np

from triage.corners import CORNERS, VEHICLE, Corner, Place
from triage.evidence.answers import Observation, build_answers
from triage.evidence.hypotheses import Finding
from triage.evidence.posterior import Atom, scale_row
from triage.evidence.rule_tables import OTHER, Check, Rulebook, Scale, places_of
from triage.evidence.rulebook import load_rulebook
from triage.planning.claims_in_doubt import weigh_claims
from triage.planning.costs import cost_of_check, cost_of_repair
from triage.planning.plan import LAST_RESORT, build_menu, leave_out, make_plan, share_after
from triage.planning.repair_cost import repair_order

CODE: Final = "read-fault-memory"
BY_CODE: Final[Mapping[str, tuple[str, ...]]] = {
    "circuit": ("replace-sensor", "mend-lead", "replace-hub-unit"),
    "signal": ("replace-sensor", "replace-hub-unit", "mend-lead"),
    "several-wheels": ("mend-supply", "replace-sensor"),
    "nothing": ("hand-back",),
}
"""What is replaced for each kind of code, in order."""

DISTURBED_BY: Final = 0.3
"""Spread of the logarithm of every disturbed number."""

CHECKS_AT_MOST: Final = 8
LEARNT_ON: Final = 300
"""Cars on which the fixed order is learnt; they are not among those that are counted."""


@dataclass(slots=True)
class Car:
    """One car in the workshop: its hidden fault, and what has been done so far.

    Attributes
    ----------
    corner : str
        The wheel that the fault memory points at most.
    """

    place: Place
    cause: str
    corner: Corner
    code: str = ""
    money: float = 0.0
    wrong_parts: int = 0
    steps: int = 0
    right: bool = False
    findings: list[Finding] = field(default_factory=list)
    is_open: frozenset[str] = frozenset()
    tried: list[tuple[str, Place]] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class Bench:
    """What the mechanics believe, what is so, and the dice."""

    believed: Rulebook
    real: Rulebook
    rng: np.random.Generator


Mechanic = Callable[[Car, Bench], None]
"""Does one step on a car."""


def run_workshop(
    mechanic: Mechanic, cars: int, *, seed: int, real: Rulebook, believed: Rulebook
) -> list[Car]:
    """Let one mechanic make so many cars right; the same seed gives the same cars with the same faults."""
    done = []
    for number in range(cars):
        bench = Bench(believed, real, np.random.default_rng([seed, number]))
        car = draw_car(bench)
        while not car.right:
            mechanic(car, bench)
        done.append(car)
    return done


def draw_car(bench: Bench) -> Car:
    """Draw a fault from the priors and read the fault memory."""
    causes = list(bench.real.causes.values())
    cause = causes[int(bench.rng.choice(len(causes), p=[one.prior for one in causes]))]
    corner = CORNERS[int(bench.rng.integers(len(CORNERS)))]
    place: Place = corner if cause.where == "corner" or cause.id == OTHER else VEHICLE
    car = Car(place, cause.id, corner)
    codes: dict[Corner, str] = {}
    for wheel in CORNERS:
        codes[wheel] = do_check(car, bench, CODE, wheel)
    car.money /= len(CORNERS)
    car.steps = 1
    car.corner = min(CORNERS, key=lambda wheel: (list(BY_CODE).index(codes[wheel]), wheel != corner))
    car.code = codes[car.corner]
    return car


def do_check(car: Car, bench: Bench, name: str, place: Place) -> str:
    """Do a check and draw its answer; returns the outcome."""
    check = bench.real.checks[name]
    cost = cost_of_check(check, car.is_open, bench.believed)
    car.money += cost.money
    car.is_open = cost.open_after
    car.steps += 1
    outcome = list(check.outcomes)[int(bench.rng.choice(len(check.outcomes), p=_answers(check, place, car)))]
    seen = Observation(name, None if place == VEHICLE else place, outcome)
    car.findings += build_answers([seen], bench.believed, first_corner=car.corner)
    return outcome


def do_repair(car: Car, bench: Bench, name: str, place: Place) -> None:
    """Do a repair and see whether the car is right."""
    car.steps += 1
    if name == LAST_RESORT:
        car.money += bench.believed.workshop.last_resort
        car.right = True
        return
    repair = bench.real.repairs[name]
    car.money += cost_of_repair(repair, car.is_open, bench.believed).money
    car.is_open = frozenset()
    cure = repair.cures.get(car.cause, 0.0) if place == car.place else 0.0
    car.right = bool(bench.rng.uniform() < cure)
    car.wrong_parts += 0 if car.right else len(repair.parts)
    car.tried.append((name, place))


def planned(car: Car, bench: Bench) -> None:
    """Do what the plan puts first."""
    step = make_plan(car.findings, bench.believed, is_open=tuple(car.is_open), tried=car.tried).next_step
    if step.kind == "check":
        do_check(car, bench, step.id, step.place)
    else:
        do_repair(car, bench, step.id, step.place)


def by_the_code(car: Car, bench: Bench) -> None:
    """Replace what the code points at."""
    names = [*BY_CODE[car.code], LAST_RESORT]
    name = names[len(car.tried)]
    if name == LAST_RESORT:
        do_repair(car, bench, name, VEHICLE)
        return
    place = car.corner if bench.real.repairs[name].where == "corner" else VEHICLE
    do_repair(car, bench, name, place)


@dataclass(frozen=True, slots=True)
class FixedOrder:
    """The same checks for every car, then the repairs by what they told."""

    checks: tuple[str, ...]

    def __call__(self, car: Car, bench: Bench) -> None:
        """Do the next check of the list, or the best repair left."""
        if not car.tried:
            for name in self.checks:
                do_check(car, bench, name, _place(bench.real.checks[name], car.corner))
        claims = weigh_claims(car.findings, bench.believed)
        whole = build_menu(claims, bench.believed)
        left = share_after(claims, whole, car.tried)
        menu = leave_out(whole, car.tried)
        chosen = repair_order(left, menu)[0]
        if chosen == len(menu.names):
            do_repair(car, bench, LAST_RESORT, VEHICLE)
            return
        name, at = menu.names[chosen].split("@")
        do_repair(car, bench, name, next((corner for corner in CORNERS if corner == at), VEHICLE))


def learn_fixed_order(rulebook: Rulebook, *, seed: int) -> FixedOrder:
    """Add the check that lowers the mean cost most, as long as one does."""
    chosen: tuple[str, ...] = ()
    best = _mean_money(FixedOrder(chosen), rulebook, seed)
    while len(chosen) < CHECKS_AT_MOST:
        tried = {
            name: _mean_money(FixedOrder((*chosen, name)), rulebook, seed)
            for name in rulebook.checks
            if name not in (*chosen, CODE)
        }
        name = min(tried, key=lambda one: tried[one])
        if tried[name] >= best:
            break
        chosen, best = (*chosen, name), tried[name]
    return FixedOrder(chosen)


def disturb(rulebook: Rulebook, rng: np.random.Generator) -> Rulebook:
    """Return a rule book of which every probability of checks and repairs is disturbed at random."""
    checks = {
        name: replace(
            check,
            table=replace(
                check.table, rows={cause: _disturbed(row, rng) for cause, row in check.table.rows.items()}
            ),
        )
        for name, check in rulebook.checks.items()
    }
    repairs = {
        name: replace(
            repair,
            cures={cause: _disturbed((share, 1.0 - share), rng)[0] for cause, share in repair.cures.items()},
        )
        for name, repair in rulebook.repairs.items()
    }
    return replace(rulebook, checks=checks, repairs=repairs)


def main(argv: Sequence[str] | None = None) -> int:
    """Run the comparison and print it."""
    ask = argparse.ArgumentParser(prog="python -m triage.planning.simulated_workshops")
    ask.add_argument("--cars", type=int, default=500, help="cars for each mechanic and setting (500)")
    ask.add_argument("--seed", type=int, default=1)
    given = ask.parse_args(argv)
    rulebook = load_rulebook()
    fixed = learn_fixed_order(rulebook, seed=given.seed + 1000)
    sys.stdout.write(f"best fixed order of checks: {', '.join(fixed.checks) or 'none'}\n")
    disturbed = disturb(rulebook, np.random.default_rng([given.seed, 7]))
    for title, real in (("tables as they are", rulebook), ("tables disturbed by 30 %", disturbed)):
        mechanics: dict[str, Mechanic] = {
            "planned": planned,
            "fixed order": fixed,
            "by the code": by_the_code,
        }
        cars = {
            name: run_workshop(mechanic, given.cars, seed=given.seed, real=real, believed=rulebook)
            for name, mechanic in mechanics.items()
        }
        sys.stdout.write(format_comparison(title, cars))
    return 0


def format_comparison(title: str, cars: Mapping[str, Sequence[Car]]) -> str:
    """Write down cost, wrong parts and steps of every mechanic; the first is compared with the others."""
    lines = [f"\n{title}", f"{'':<14}{'cars':>6}{'cost':>9}{'+-':>6}{'wrong parts':>13}{'steps':>7}"]
    for name, own in cars.items():
        money = np.array([car.money for car in own])
        lines.append(
            f"{name:<14}{len(own):>6}{money.mean():>9.1f}{money.std() / np.sqrt(len(own)):>6.1f}"
            f"{np.mean([car.wrong_parts for car in own]):>13.3f}{np.mean([car.steps for car in own]):>7.2f}"
        )
    first, *others = cars
    for name in others:
        ratio = np.mean([car.money for car in cars[first]]) / np.mean([car.money for car in cars[name]])
        lines.append(f"{first} costs {1.0 - ratio:.1%} less than {name}")
    return "\n".join(lines) + "\n"


def _mean_money(order: FixedOrder, rulebook: Rulebook, seed: int) -> float:
    cars = run_workshop(order, LEARNT_ON, seed=seed, real=rulebook, believed=rulebook)
    return float(np.mean([car.money for car in cars]))


def _place(check: Check, corner: Corner) -> Place:
    return corner if places_of(check.where) == CORNERS else VEHICLE


def _answers(check: Check, place: Place, car: Car) -> tuple[float, ...]:
    """P(outcome) for the car's true fault."""
    scale = Scale(tuple(check.outcomes), check.table, check.mirror)
    row = scale_row(scale, place, Atom(car.place, car.cause, car.cause, 0, 1.0)) or check.table.rows["sound"]
    return tuple(share / sum(row) for share in row)


def _disturbed(row: Sequence[float], rng: np.random.Generator) -> tuple[float, ...]:
    weights = np.array(row) * np.exp(DISTURBED_BY * rng.standard_normal(len(row)))
    return tuple(float(share) for share in weights / weights.sum())


if __name__ == "__main__":
    sys.exit(main())
