"""Cars with a hidden fault, and the workshop in which they are checked and repaired.

All have active sensors with two levels, and everybody knows. What a car would answer is settled when it comes
in: one throw of the dice for every check at every wheel, and for every repair. So all ways to work meet the
very same cars, and what differs is how they work.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Final

import numpy as np

from triage.corners import CORNERS, VEHICLE, Corner, Place
from triage.evidence.fitting import fits
from triage.evidence.rule_tables import Rulebook, places_of
from triage.planning.claims_in_doubt import Claims, weigh_claims
from triage.planning.costs import cost_of_repair
from triage.planning.desk import Desk, Option, build_menu, build_options
from triage.planning.repair_cost import RepairMenu
from triage.speed_log import FloatArray

SENSOR: Final = "active"

CODE: Final = "read-fault-memory"

CODES: Final = ("circuit", "signal", "several-wheels", "nothing")
"""Outcomes of that check, the one that points at a wheel most first."""

TINY: Final = 1e-300
"""Keeps a fact that tells nothing from dividing by nothing."""


@dataclass(frozen=True, slots=True)
class Shop:
    """What the mechanics believe, and what is so.

    Attributes
    ----------
    claims : Claims
        Before anything is known of a car.
    options : mapping of ``check@place`` to Option
        As believed.
    real : mapping of ``check@place`` to float64[outcomes, claims]
        As it is.
    menu : RepairMenu
        As believed.
    desk : Desk
        On which every car begins.
    real_cure : float64[repairs + 1, claims]
        As it is.
    """

    rulebook: Rulebook
    claims: Claims
    options: Mapping[str, Option]
    real: Mapping[str, FloatArray]
    menu: RepairMenu
    desk: Desk
    real_cure: FloatArray


@dataclass(frozen=True, slots=True)
class Heard:
    """An answer of one car or of many: its fact, and log P(answer | claim), float64[..., claims]."""

    fact: tuple[str, Place]
    log_likelihood: FloatArray


def weigh_heard(heard: Sequence[Heard], prior: FloatArray) -> FloatArray:
    """Return the summed log-likelihood, answers on one fact sharing their weight as in the verdict."""
    facts: dict[tuple[str, Place], list[FloatArray]] = {}
    for number, one in enumerate(heard):
        key = one.fact if one.fact[0] else (f"#{number}", one.fact[1])
        facts.setdefault(key, []).append(one.log_likelihood)
    total: FloatArray = np.zeros_like(prior)
    for rows in facts.values():
        stack = np.stack(rows)
        mean = (stack @ prior)[..., np.newaxis]
        spread = np.sqrt((stack - mean) ** 2 @ prior)
        count = spread.sum(axis=0) ** 2 / np.maximum((spread**2).sum(axis=0), TINY)
        total = total + stack.sum(axis=0) / np.sqrt(np.maximum(count, 1.0))[..., np.newaxis]
    return total


@dataclass(slots=True)
class Car:
    """One car: its hidden fault, its answers, and what has been done so far.

    Attributes
    ----------
    claim : int
        The fault, as a number in ``Shop.claims``.
    chance : mapping of name to float
        The throw of the dice for every check and repair, 0 to 1.
    share : float64[claims]
        What is believed of it.
    corner : str
        The wheel that the fault memory points at most.
    desk : Desk
        With the repairs that were not tried yet.
    uncured : float64[claims]
        Probability that no repair so far has cured it.
    heard : list of Heard
        Answers so far.
    """

    claim: int
    chance: Mapping[str, float]
    share: FloatArray
    desk: Desk
    uncured: FloatArray
    corner: Corner = "FL"
    code: str = ""
    money: float = 0.0
    wrong_parts: int = 0
    steps: int = 0
    right: bool = False
    is_open: frozenset[str] = frozenset()
    answered: set[str] = field(default_factory=set)
    heard: list[Heard] = field(default_factory=list)
    tried: list[tuple[str, Place]] = field(default_factory=list)


def open_shop(believed: Rulebook, real: Rulebook) -> Shop:
    """Work out every table once."""
    claims = weigh_claims((), believed)
    menu = build_menu(claims.atoms, believed)
    return Shop(
        rulebook=believed,
        claims=claims,
        options=_options(believed),
        real={name: option.table for name, option in _options(real).items()},
        menu=menu,
        desk=Desk(claims.atoms, believed, menu),
        real_cure=build_menu(claims.atoms, real).cure,
    )


def draw_car(shop: Shop, *, seed: int, number: int) -> Car:
    """Draw a fault from the priors, throw all the dice, and read the fault memory for all four wheels."""
    rng = np.random.default_rng([seed, number])
    names = (*shop.options, *shop.menu.names)
    claim = int(rng.choice(len(shop.claims.share), p=shop.claims.share))
    chance = dict(zip(names, rng.uniform(size=len(names)).tolist(), strict=True))
    car = Car(claim, chance, shop.claims.share, shop.desk, np.ones_like(shop.claims.share))
    codes = {wheel: do_check(car, shop, f"{CODE}@{wheel}") for wheel in CORNERS}
    car.money /= len(CORNERS)
    car.steps = 1
    first = CORNERS[int(rng.integers(len(CORNERS)))]
    car.corner = min(CORNERS, key=lambda wheel: (CODES.index(codes[wheel]), wheel != first))
    car.code = codes[car.corner]
    return car


def do_check(car: Car, shop: Shop, name: str) -> str:
    """Do a check, ``check@place``, and learn from its answer; returns the outcome."""
    option = shop.options[name]
    cost = car.desk.check_cost(option, car.is_open)
    car.money += cost.money
    car.is_open = cost.open_after
    car.steps += 1
    car.answered.add(name)
    seen = answer_of(car, shop, name)
    car.heard.append(Heard(option.fact, np.log(option.table[seen])))
    car.share = _believed(car, shop)
    return tuple(option.check.outcomes)[seen]


def answer_of(car: Car, shop: Shop, name: str) -> int:
    """Return the number of the outcome that this car gives to a check."""
    row = np.cumsum(shop.real[name][:, car.claim])
    return int(np.searchsorted(row, car.chance[name] * row[-1], side="right"))


def do_repair(car: Car, shop: Shop, number: int) -> None:
    """Do the repair of that number in the car's menu, and see whether the car is right."""
    car.steps += 1
    names = car.desk.menu.names
    if number == len(names):
        car.money += shop.rulebook.workshop.last_resort
        car.right = True
        return
    name = names[number]
    kind, at = name.split("@")
    repair = shop.rulebook.repairs[kind]
    car.money += cost_of_repair(repair, car.is_open, shop.rulebook).money
    car.is_open = frozenset()
    car.right = car.chance[name] < shop.real_cure[shop.menu.names.index(name), car.claim]
    car.wrong_parts += 0 if car.right else len(repair.parts)
    car.uncured = car.uncured * (1.0 - car.desk.menu.cure[number])
    car.share = _believed(car, shop)
    car.desk = car.desk.without(number)
    car.tried.append((kind, next((corner for corner in CORNERS if corner == at), VEHICLE)))


def _believed(car: Car, shop: Shop) -> FloatArray:
    prior = shop.claims.share
    share: FloatArray = prior * np.exp(weigh_heard(car.heard, prior)) * car.uncured
    share /= share.sum()
    return share


def disturb(rulebook: Rulebook, rng: np.random.Generator, spread: float) -> Rulebook:
    """Return a rule book of which every probability of checks and repairs is disturbed at random.

    Parameters
    ----------
    rulebook : Rulebook
    rng : numpy.random.Generator
    spread : float
        Of the logarithm of every disturbed number.
    """
    checks = {
        name: replace(
            check,
            table=replace(
                check.table,
                rows={cause: _disturbed(row, rng, spread) for cause, row in check.table.rows.items()},
            ),
        )
        for name, check in rulebook.checks.items()
    }
    repairs = {
        name: replace(
            repair,
            cures={c: _disturbed((share, 1.0 - share), rng, spread)[0] for c, share in repair.cures.items()},
        )
        for name, repair in rulebook.repairs.items()
    }
    return replace(rulebook, checks=checks, repairs=repairs)


def _disturbed(row: tuple[float, ...], rng: np.random.Generator, spread: float) -> tuple[float, ...]:
    weights = np.array(row) * np.exp(spread * rng.standard_normal(len(row)))
    return tuple(float(share) for share in weights / weights.sum())


def _options(rulebook: Rulebook) -> dict[str, Option]:
    options = [
        option
        for check in rulebook.checks.values()
        if fits(check, SENSOR)
        for option in build_options(check, places_of(check.where), rulebook)
    ]
    return {option.name: option for option in options}
