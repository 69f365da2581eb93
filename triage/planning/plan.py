"""The next step with the smallest expected total cost of getting the car right.

::

    act now     R(b)       expected cost of repairing by the belief b (see repair_cost)
    repair a    A(a, b) =  cost(a) + P(not right) min( R(b|not right),  min over c of K1(c, b|not right) )
    check c     K(c, b) =  cost(c) + sum over outcomes o of  P(o) min( R(b|o),  min over c' of K1(c', b|o) )
    the last    K1(c, b) = cost(c) + sum over outcomes o of  P(o) G(b|o)

G lies below R where more checks would pay (see cost_to_go); so two checks in a row are weighed before the
repair, and what may follow is not forgotten. A check that cannot change what is done next saves nothing,
however much it tells; the wrong parts that it spares count in R. The work stops looking and repairs when the
best check saves less than the workshop asks for (``least_saving``).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.corners import CORNER_NAMES, CORNERS, VEHICLE, Corner, Place
from triage.evidence.equally_wide import work_on_equally_wide
from triage.evidence.fitting import fits, known_sensor
from triage.evidence.hypotheses import Finding
from triage.evidence.next_checks import LEADING_SHARE, entropy_bit
from triage.evidence.rule_tables import Rulebook
from triage.planning.claims_in_doubt import Claims, weigh_claims
from triage.planning.costs import cost_of_repair, cost_words
from triage.planning.desk import (
    Desk,
    OpenLevels,
    Option,
    build_options,
    first_desk,
    leave_out,
    places_to_check,
    share_after,
    shared,
)
from triage.planning.look_ahead import cost_with_two, costs_of_next
from triage.planning.repair_cost import repair_order
from triage.speed_log import FloatArray
from triage.texts import Text

LAST_RESORT: Final = "last-resort"

REPAIRS_TRIED: Final = 6
"""How many repairs, the best by success over cost, are weighed as the first."""

LOOKED_AT_TWICE: Final = 5
"""How many checks, the best by one step, are followed by a second one, which may be any."""

TIES: Final = 9
"""Decimals that count: corners of which the same is known differ in the last bits of sums, on each machine
in another way."""


@dataclass(frozen=True, slots=True)
class PlanStep:
    """Something to do, what it costs and what it is expected to save.

    Attributes
    ----------
    kind : {"check", "repair"}
    id : str
        Of the check or repair; ``last-resort`` for giving the car to somebody else.
    minutes_min, money : float
        With opening and, for a repair, closing and proving.
    saving : float
        Money by which the expected total falls when this check comes before the repairs; 0 for a repair.
    gain_bit : float
        Expected drop of the verdict's doubt; 0 for a repair.
    """

    kind: str
    id: str
    title: str
    place: Place
    minutes_min: float
    money: float
    saving: float
    gain_bit: float
    cautions: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Plan:
    """What to do next and what the whole is expected to cost.

    Attributes
    ----------
    next_step : PlanStep
    why : str
        One sentence with the numbers.
    checks : tuple of PlanStep
        Every check worth a look, those that save most first.
    repairs : tuple of PlanStep
        In the order in which they would be tried now.
    act_now_money, expected_money : float
        Expected cost of getting the car right by repairing at once, and by the best next step.
    """

    next_step: PlanStep
    why: str
    checks: tuple[PlanStep, ...]
    repairs: tuple[PlanStep, ...]
    act_now_money: float
    expected_money: float


def make_plan(
    findings: Sequence[Finding],
    rulebook: Rulebook,
    *,
    is_open: Sequence[str] = (),
    tried: Sequence[tuple[str, Place]] = (),
    skipped: Sequence[str] = (),
    claims: Claims | None = None,
) -> Plan:
    """Find the next step.

    Parameters
    ----------
    findings : sequence of Finding
        Everything known so far, answers included.
    rulebook : Rulebook
    is_open : sequence of str
        Levels of access that stand open now.
    tried : sequence of (repair, place)
        Repairs that did not make the car right.
    skipped : sequence of str
        Checks that cannot be done, as ``check@place``.
    claims : Claims, optional
        Those of :func:`weigh_claims` for the same findings, where the caller has them.

    Returns
    -------
    Plan
    """
    claims = claims or weigh_claims(findings, rulebook)
    desk = first_desk(rulebook)
    share = share_after(claims, desk.menu, tried)
    if tried:
        desk = Desk(desk.atoms, rulebook, leave_out(desk.menu, tried), prices=desk.prices)
    asked = {finding.id for finding in findings} | set(skipped)
    options = _options(desk, share, asked, known_sensor(findings, rulebook))
    told = Counter(
        (rulebook.checks[one.source].group, one.corner) for one in findings if one.source in rulebook.checks
    )
    return choose(desk, share, share_facts(options, told), frozenset(is_open))


def share_facts(options: Sequence[Option], told: Mapping[tuple[str, Place], int]) -> list[Option]:
    """Return the checks as much as they still count after so many answers on each fact."""
    return [shared(one, told.get(one.fact, 0)) if one.check.group else one for one in options]


def _options(desk: Desk, share: FloatArray, asked: set[str], sensor: str | None) -> list[Option]:
    corners = suspected_corners(desk, share)
    return [
        option
        for check in desk.rulebook.checks.values()
        if fits(check, sensor)
        for option in build_options(check, places_to_check(check, corners), desk.rulebook)
        if option.name not in asked
    ]


def suspected_corners(desk: Desk, share: FloatArray) -> tuple[Corner, ...]:
    """Return the corners with a share of the blame worth looking at."""
    blame = {
        corner: sum(
            float(part) for atom, part in zip(desk.atoms, share, strict=True) if atom.blamed == corner
        )
        for corner in CORNERS
    }
    least = LEADING_SHARE * sum(blame.values())
    return tuple(
        corner for corner in CORNERS if blame[corner] >= least or blame[corner] == max(blame.values())
    )


def choose(desk: Desk, share: FloatArray, options: Sequence[Option], is_open: OpenLevels) -> Plan:
    """Weigh the checks and repairs by one belief, float64[claims], and choose."""
    one_step = costs_of_next(desk, share[np.newaxis], options, is_open)[:, 0]
    act_now, costs = float(one_step[0]), one_step[1:].tolist()
    best = np.argsort(np.round(costs, TIES), kind="stable")[:LOOKED_AT_TWICE].tolist()
    for i in best:
        others = share_facts([one for one in options if one is not options[i]], {options[i].fact: 1})
        costs[i] = min(costs[i], cost_with_two(desk, share, options[i], others, is_open))
    checks = [
        _check_step(desk, option, is_open, saving=act_now - cost, gain_bit=gain_bit)
        for option, cost, gain_bit in zip(options, costs, _gains_bit(options, share), strict=True)
    ]
    checks.sort(key=lambda step: (-round(step.saving, TIES), step.id, step.place))
    repair, repaired = _best_repair(desk, share, [options[i] for i in best], is_open)
    repairs = _repair_steps(desk, share, repair, is_open)
    least = desk.rulebook.workshop.least_saving
    look = bool(checks) and checks[0].saving > least + act_now - repaired
    step = checks[0] if look else repairs[0]
    expected = act_now - checks[0].saving if look else repaired
    why = _why(step, act_now, expected, repairs[0])
    return Plan(step, why, tuple(checks), repairs, act_now, expected)


def _best_repair(
    desk: Desk, share: FloatArray, further: Sequence[Option], is_open: OpenLevels
) -> tuple[int, float]:
    """Return the repair to begin with and the expected total cost, with a check after it where that pays."""
    money = desk.repair_money(is_open)
    success = desk.menu.cure @ share
    closed: OpenLevels = frozenset()
    found = []
    for number in np.argsort(np.round(-success / money, TIES), kind="stable")[:REPAIRS_TRIED]:
        left = (share * (1.0 - desk.menu.cure[number]))[np.newaxis]
        then = costs_of_next(desk.without(int(number)), left, further, closed).min()
        found.append((round(float(money[number]) + float(then), TIES), int(number)))
    cost, number = min(found)
    return number, cost


def _gains_bit(options: Sequence[Option], share: FloatArray) -> list[float]:
    """Return by how much each check is expected to lessen the doubt."""

    def gains(tables: FloatArray) -> list[float]:
        joint = tables.transpose(0, 2, 1) * share
        outcome = joint.sum(axis=2)
        now, left = entropy_bit(joint.sum(axis=1)), entropy_bit(joint / outcome[:, :, np.newaxis])
        return [
            max(float(before) - float(shares @ after), 0.0)
            for before, shares, after in zip(now, outcome, left, strict=True)
        ]

    return work_on_equally_wide([option.table.T for option in options], gains)


def _check_step(
    desk: Desk, option: Option, is_open: OpenLevels, *, saving: float, gain_bit: float
) -> PlanStep:
    cost = desk.check_cost(option, is_open)
    return PlanStep(
        kind="check",
        id=option.check.id,
        title=option.check.title,
        place=option.place,
        minutes_min=cost.minutes_min,
        money=cost.money,
        saving=saving,
        gain_bit=gain_bit,
        cautions=_cautions(option.check.cautions, desk.rulebook),
    )


def _repair_steps(desk: Desk, share: FloatArray, begin: int, is_open: OpenLevels) -> tuple[PlanStep, ...]:
    """Return the repairs in order, with one given to begin with."""
    left = share * (1.0 - desk.menu.cure[begin])
    order = repair_order(left, desk.menu) if begin < len(desk.menu.names) else []
    rest = (number for number in order if number != begin)
    return tuple(_repair_step(desk, number, () if i else is_open) for i, number in enumerate((begin, *rest)))


def _repair_step(desk: Desk, number: int, is_open: Iterable[str]) -> PlanStep:
    rulebook = desk.rulebook
    if number == len(desk.menu.names):
        money = rulebook.workshop.last_resort
        title = Text("Give the car to somebody with more means")
        return PlanStep("repair", LAST_RESORT, title, VEHICLE, 0.0, money, 0.0, 0.0, ())
    name, place = desk.menu.names[number].split("@")
    repair = rulebook.repairs[name]
    cost = cost_of_repair(repair, is_open, rulebook)
    at: Place = next((corner for corner in CORNERS if corner == place), VEHICLE)
    cautions = _cautions(repair.cautions, rulebook)
    return PlanStep("repair", name, repair.title, at, cost.minutes_min, cost.money, 0.0, 0.0, cautions)


def _cautions(names: Sequence[str], rulebook: Rulebook) -> tuple[str, ...]:
    return tuple(rulebook.cautions[name].text for name in names)


def _why(step: PlanStep, act_now: float, expected: float, repair: PlanStep) -> str:
    place = "" if repair.place == VEHICLE else Text(" ({wheel})", wheel=CORNER_NAMES[repair.place])
    if step.kind == "check":
        return Text(
            "It takes {minutes} min, costs {money} and brings the expected cost of the whole work, to a"
            " proven repair, to {expected}; without it {act_now}, beginning with “{repair}{place}”.",
            minutes=f"{step.minutes_min:.0f}",
            money=cost_words(step.money),
            expected=cost_words(expected),
            act_now=cost_words(act_now),
            repair=repair.title,
            place=place,
        )
    return Text(
        "No check is expected to save more than it costs; the whole work, to a proven repair, is expected to"
        " cost {act_now}.",
        act_now=cost_words(act_now),
    )
