"""What a step costs: minutes of opening, working, closing and proving, parts, and what may break on the way.

All in the workshop's own money (``rules/workshop.toml``). Corrosion makes opening slower and breaks parts,
both in proportion.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from triage.evidence.rule_tables import Access, Check, Repair, Rulebook
from triage.texts import Text

MINUTES_PER_HOUR = 60.0

ROAD = "road"
"""Level of access for which everything is closed first."""


@dataclass(frozen=True, slots=True)
class StepCost:
    """Cost of one step and what stands open after it.

    Attributes
    ----------
    minutes_min, money : float
        Time, and time and parts in money.
    open_after : frozenset of str
        Levels of access.
    """

    minutes_min: float
    money: float
    open_after: frozenset[str]


def cost_of_check(check: Check, is_open: Iterable[str], rulebook: Rulebook) -> StepCost:
    """Return the cost of a check; a test drive closes the car first, all else leaves it open."""
    ready = frozenset(is_open)
    if check.access == ROAD:
        closing = closing_min(ready, rulebook)
        minutes = closing + check.minutes_min
        return StepCost(minutes, money_of(minutes, rulebook), frozenset())
    opening, broken, opened = _open(check.access, ready, rulebook)
    minutes = opening + check.minutes_min
    return StepCost(minutes, money_of(minutes, rulebook) + broken, opened)


def cost_of_repair(repair: Repair, is_open: Iterable[str], rulebook: Rulebook) -> StepCost:
    """Return the cost of a repair: opening, work, parts, closing all, and the road test that proves it."""
    opening, broken, opened = _open(repair.access, frozenset(is_open), rulebook)
    work = repair.minutes_min + closing_min(opened, rulebook) + rulebook.workshop.proof_min
    parts = sum(rulebook.parts[name].price for name in repair.parts)
    return StepCost(opening + work, money_of(opening + work, rulebook) + broken + parts, frozenset())


def closing_min(is_open: Iterable[str], rulebook: Rulebook) -> float:
    """Return the minutes for closing every open level."""
    return sum(rulebook.access[name].closing_min for name in is_open)


def money_of(minutes_min: float, rulebook: Rulebook) -> float:
    """Return what so many minutes cost."""
    return minutes_min / MINUTES_PER_HOUR * rulebook.workshop.money_per_hour


def cost_words(money: float) -> Text:
    """Word an amount of the workshop's own money, of which only whole units count.

    >>> cost_words(13.6)
    '14 units of money'
    """
    amount = f"{money:.0f}"
    return Text("1 unit of money") if amount == "1" else Text("{n} units of money", n=amount)


def _open(access: str, ready: frozenset[str], rulebook: Rulebook) -> tuple[float, float, frozenset[str]]:
    """Minutes, expected price of what breaks, and what is open afterwards."""
    closed = [level for level in rulebook.path_of(access) if level.id not in ready]
    corrosion = rulebook.workshop.corrosion
    minutes = sum(level.opening_min + corrosion * level.seized_min for level in closed)
    broken = sum(corrosion * level.break_probability * _price(level, rulebook) for level in closed)
    return minutes, broken, ready | {level.id for level in closed}


def _price(level: Access, rulebook: Rulebook) -> float:
    return rulebook.parts[level.breaks].price if level.breaks else 0.0
