"""What all steps of one plan share: claims, repairs, checks, and what each costs with what stands open."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

import numpy as np

from triage.corners import VEHICLE, Place
from triage.evidence.atoms import Atom
from triage.evidence.pair_information import flattened
from triage.evidence.rule_tables import Check, Rulebook, places_of
from triage.planning.claims_in_doubt import Claims, atoms_of_causes
from triage.planning.costs import StepCost, cost_of_check, cost_of_repair
from triage.planning.repair_cost import RepairMenu, expected_repair_cost
from triage.speed_log import FloatArray

OpenLevels = frozenset[str]


@dataclass(frozen=True, slots=True)
class Option:
    """A check that could come next: P(outcome | claim) as float64[outcomes, claims]."""

    check: Check
    place: Place
    table: FloatArray

    @property
    def name(self) -> str:
        """As a finding is named: ``rock-wheel@FL``."""
        return f"{self.check.id}@{self.place}"

    @property
    def fact(self) -> tuple[str, Place]:
        """Group and place: answers with the same one tell one fact; an empty group stands alone."""
        return self.check.group, self.place


@dataclass(frozen=True, slots=True)
class Desk:
    """Claims, rule book and the repairs still to be tried.

    Attributes
    ----------
    opened : mapping of levels to float64[repairs + 1]
        What each repair costs with those levels open, as far as it was asked for: beliefs come by the
        hundred, and only about ten sets of levels with them.
    knowing : mapping of levels to float64[claims]
        What each claim costs when it is known for sure, likewise.
    prices : mapping of (check, levels) to StepCost
        What each check costs, likewise.
    followers : mapping of int to Desk
        The desks without one repair, likewise.
    """

    atoms: tuple[Atom, ...]
    rulebook: Rulebook
    menu: RepairMenu
    opened: dict[OpenLevels, FloatArray] = field(default_factory=dict)
    knowing: dict[OpenLevels, FloatArray] = field(default_factory=dict)
    prices: dict[tuple[str, OpenLevels], StepCost] = field(default_factory=dict)
    followers: dict[int, Desk] = field(default_factory=dict)

    def repair_money(self, is_open: OpenLevels) -> FloatArray:
        """Return the cost of each repair as the first one, float64[repairs + 1], the last resort last."""
        if is_open not in self.opened:
            self.opened[is_open] = _repair_money(self.menu, self.rulebook, is_open)
        return self.opened[is_open]

    def knowing_money(self, is_open: OpenLevels) -> FloatArray:
        """Return the expected cost of repairing each claim by one who knows it, float64[claims]."""
        if is_open not in self.knowing:
            sure = np.eye(len(self.atoms))
            first = np.broadcast_to(self.repair_money(is_open), (len(sure), len(self.menu.money)))
            self.knowing[is_open] = expected_repair_cost(sure, self.menu, first_money=first)
        return self.knowing[is_open]

    def check_cost(self, option: Option, is_open: OpenLevels) -> StepCost:
        """Return the cost of a check and what it leaves open."""
        key = (option.check.id, is_open)
        if key not in self.prices:
            self.prices[key] = cost_of_check(option.check, is_open, self.rulebook)
        return self.prices[key]

    def without(self, number: int) -> Desk:
        """Return the desk without one repair; the last resort always stays."""
        if number >= len(self.menu.names):
            return self
        if number not in self.followers:
            menu = without(self.menu, number)
            self.followers[number] = Desk(self.atoms, self.rulebook, menu, prices=self.prices)
        return self.followers[number]


def first_desk(rulebook: Rulebook) -> Desk:
    """Return the desk on which nothing was tried yet.

    It is kept with the rule book, so that what it works out for one plan serves the next. A desk after
    repairs is made anew by each plan: there are as many as ways to try them.
    """
    return rulebook.once(_first_desk)


def _first_desk(rulebook: Rulebook) -> Desk:
    atoms = atoms_of_causes(rulebook).atoms
    return Desk(atoms, rulebook, build_menu(atoms, rulebook))


def build_menu(atoms: Sequence[Atom], rulebook: Rulebook) -> RepairMenu:
    """Return every repair at every place with its cures by claim, the last resort at the end."""
    chosen = [(repair, place) for repair in rulebook.repairs.values() for place in places_of(repair.where)]
    cure = np.zeros((len(chosen) + 1, len(atoms)))
    for row, (repair, place) in zip(cure, chosen, strict=False):
        row[:] = [repair.cures.get(atom.cause, 0.0) if atom.blamed == place else 0.0 for atom in atoms]
    cure[-1] = 1.0
    names = tuple(f"{repair.id}@{place}" for repair, place in chosen)
    closed = RepairMenu(names, cure, np.zeros(len(names) + 1))
    return replace(closed, money=_repair_money(closed, rulebook, frozenset()))


def leave_out(menu: RepairMenu, tried: Sequence[tuple[str, Place]]) -> RepairMenu:
    """Return the menu without the repairs that were tried: what one has not cured, it does not cure."""
    for repair, place in dict.fromkeys(tried):
        menu = without(menu, menu.names.index(f"{repair}@{place}"))
    return menu


def without(menu: RepairMenu, number: int) -> RepairMenu:
    """Return the menu without one repair; the last resort always stays."""
    if number >= len(menu.names):
        return menu
    rows = [*range(number), *range(number + 1, len(menu.money))]
    names = (*menu.names[:number], *menu.names[number + 1 :])
    return RepairMenu(names, menu.cure[rows], menu.money[rows])


def share_after(claims: Claims, menu: RepairMenu, tried: Sequence[tuple[str, Place]]) -> FloatArray:
    """Return the belief after repairs that did not make the car right, float64[claims]."""
    share = claims.share
    for repair, place in tried:
        share = share * (1.0 - menu.cure[menu.names.index(f"{repair}@{place}")])
    left: FloatArray = share / share.sum()
    return left


def build_options(check: Check, places: Sequence[Place], rulebook: Rulebook) -> list[Option]:
    """Return a check of the rule book at each of these places with what each claim makes one expect."""
    known = rulebook.once(_all_options)
    return [known[check.id, place] for place in places]


def _all_options(rulebook: Rulebook) -> Mapping[tuple[str, Place], Option]:
    tables = atoms_of_causes(rulebook)
    return {
        (check.id, place): Option(check, place, tables.outcome_table(check.id, place).T)
        for check in rulebook.checks.values()
        for place in places_of(check.where)
    }


def shared(option: Option, answered: int) -> Option:
    """Return a check as much as it still counts after so many answers of its group at its place.

    Together ``n`` answers on one fact count as sqrt(n) (see :mod:`triage.evidence.posterior`), so one more
    adds sqrt(n + 1) - sqrt(n) of its own weight.
    """
    if not answered:
        return option
    adds = math.sqrt(answered + 1) - math.sqrt(answered)
    return replace(option, table=flattened(option.table.T, adds).T)


def places_to_check(check: Check, corners: Sequence[Place]) -> tuple[Place, ...]:
    """Return where a check is worth doing when these corners are suspected."""
    return tuple(corners) if check.where == "corner" else (VEHICLE,)


def _repair_money(menu: RepairMenu, rulebook: Rulebook, is_open: OpenLevels) -> FloatArray:
    names = [name.split("@")[0] for name in menu.names]
    money = {name: cost_of_repair(rulebook.repairs[name], is_open, rulebook).money for name in set(names)}
    return np.array([*(money[name] for name in names), rulebook.workshop.last_resort])
