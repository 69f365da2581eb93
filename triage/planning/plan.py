"""The next step with the smallest expected total cost of getting the car right.

::

    act now     R(b)       expected cost of repairing by the belief b (see repair_cost)
    repair a    A(a, b) =  cost(a) + P(not right) min( R(b|not right),  min over c of K1(c, b|not right) )
    check c     K(c, b) =  cost(c) + sum over outcomes o of  P(o) min( R(b|o),  min over c' of K1(c', b|o) )

K1 is the same one step shorter, so that two checks in a row are weighed before the repair. A check that
cannot change what is done next saves nothing, however much it tells; the wrong parts that it spares count in
R. The work stops looking and repairs when the best check saves less than the workshop asks for
(``least_saving``).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from triage.corners import CORNER_NAMES, CORNERS, VEHICLE, Corner, Place
from triage.evidence.hypotheses import Finding
from triage.evidence.next_checks import LEADING_SHARE, entropy_bit
from triage.evidence.posterior import Atom, outcome_table
from triage.evidence.rule_tables import Check, Rulebook, Scale, places_of
from triage.planning.claims_in_doubt import Claims, weigh_claims
from triage.planning.costs import cost_of_check, cost_of_repair
from triage.planning.repair_cost import RepairMenu, expected_repair_cost, repair_order
from triage.speed_log import FloatArray

LAST_RESORT: Final = "last-resort"

REPAIRS_TRIED: Final = 6
"""How many repairs, the best by success over cost, are weighed as the first."""

LOOKED_AT_TWICE: Final = 10
"""How many checks, the best by one step, are followed by a second one."""


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

    Returns
    -------
    Plan
    """
    claims = weigh_claims(findings, rulebook)
    whole = build_menu(claims, rulebook)
    share = share_after(claims, whole, tried)
    menu = leave_out(whole, tried)
    desk = _Desk(claims.atoms, rulebook, menu, frozenset(is_open))
    options = _options(desk, share, {finding.id for finding in findings} | set(skipped))
    return _choose(desk, share, options)


def build_menu(claims: Claims, rulebook: Rulebook) -> RepairMenu:
    """Return every repair at every place with its cures by claim, the last resort at the end."""
    chosen = [(repair, place) for repair in rulebook.repairs.values() for place in places_of(repair.where)]
    cure = np.zeros((len(chosen) + 1, len(claims.atoms)))
    for row, (repair, place) in zip(cure, chosen, strict=False):
        row[:] = [repair.cures.get(atom.cause, 0.0) if atom.blamed == place else 0.0 for atom in claims.atoms]
    cure[-1] = 1.0
    money = [cost_of_repair(repair, (), rulebook).money for repair, _ in chosen]
    names = tuple(f"{repair.id}@{place}" for repair, place in chosen)
    return RepairMenu(names, cure, np.array([*money, rulebook.workshop.last_resort]))


def leave_out(menu: RepairMenu, tried: Sequence[tuple[str, Place]]) -> RepairMenu:
    """Return the menu without the repairs that were tried: what one has not cured, it does not cure."""
    for repair, place in tried:
        menu = without(menu, menu.names.index(f"{repair}@{place}"))
    return menu


def without(menu: RepairMenu, number: int) -> RepairMenu:
    """Return the menu without one repair; the last resort always stays."""
    if number >= len(menu.names):
        return menu
    rows = [*range(number), *range(number + 1, len(menu.money))]
    names = (*menu.names[:number], *menu.names[number + 1 :])
    return RepairMenu(names, menu.cure[rows], menu.money[rows])


@dataclass(frozen=True, slots=True)
class _Desk:
    """What all steps of one plan share."""

    atoms: tuple[Atom, ...]
    rulebook: Rulebook
    menu: RepairMenu
    is_open: frozenset[str]


@dataclass(frozen=True, slots=True)
class _Option:
    """A check that could come next: P(outcome | claim) as float64[outcomes, claims]."""

    check: Check
    place: Place
    table: FloatArray


def share_after(claims: Claims, menu: RepairMenu, tried: Sequence[tuple[str, Place]]) -> FloatArray:
    """Return the belief after repairs that did not make the car right, float64[claims]."""
    share = claims.share
    for repair, place in tried:
        share = share * (1.0 - menu.cure[menu.names.index(f"{repair}@{place}")])
    left: FloatArray = share / share.sum()
    return left


def _options(desk: _Desk, share: FloatArray, answered: set[str]) -> list[_Option]:
    corners = _suspected_corners(desk, share)
    return [
        _Option(check, place, outcome_table(_scale(check), place, desk.atoms).T)
        for check in desk.rulebook.checks.values()
        for place in _places(check, corners)
        if f"{check.id}@{place}" not in answered
    ]


def _places(check: Check, corners: tuple[Corner, ...]) -> tuple[Place, ...]:
    return corners if check.where == "corner" else (VEHICLE,)


def _suspected_corners(desk: _Desk, share: FloatArray) -> tuple[Corner, ...]:
    """Corners with a share of the blame worth looking at."""
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


def _scale(check: Check) -> Scale:
    return Scale(tuple(check.outcomes), check.table, check.mirror)


def _choose(desk: _Desk, share: FloatArray, options: Sequence[_Option]) -> Plan:
    act_now = float(_act(desk, share[np.newaxis], desk.is_open)[0])
    one_step = [_cost_with(desk, share, option, ()) for option in options]
    first = np.argsort(one_step, kind="stable")[:LOOKED_AT_TWICE]
    best = {int(i): _cost_with(desk, share, options[i], [options[j] for j in first if j != i]) for i in first}
    checks = [
        _check_step(desk, share, option, saving=act_now - min(best.get(i, one_step[i]), one_step[i]))
        for i, option in enumerate(options)
    ]
    checks.sort(key=lambda step: (-step.saving, step.id, step.place))
    repair, repaired = _best_repair(desk, share, [options[i] for i in first])
    repairs = _repair_steps(desk, share, repair)
    least = desk.rulebook.workshop.least_saving
    look = bool(checks) and checks[0].saving > least + act_now - repaired
    step = checks[0] if look else repairs[0]
    expected = act_now - checks[0].saving if look else repaired
    why = _why(step, act_now, expected, repairs[0])
    return Plan(step, why, tuple(checks), repairs, act_now, expected)


def _best_repair(desk: _Desk, share: FloatArray, further: Sequence[_Option]) -> tuple[int, float]:
    """Return the repair to begin with and the expected total cost, with a check after it where that pays."""
    money = _first_money(desk, desk.is_open)
    success = desk.menu.cure @ share
    closed = replace(desk, is_open=frozenset())
    found = []
    for number in np.argsort(-success / money, kind="stable")[:REPAIRS_TRIED]:
        left = share * (1.0 - desk.menu.cure[number])
        menu = without(desk.menu, int(number))
        then = [_cost_with(replace(closed, menu=menu), left, option, ()) for option in further]
        acted = float(_act(replace(closed, menu=menu), left[np.newaxis], frozenset())[0])
        found.append((float(money[number]) + min([acted, *then]), int(number)))
    cost, number = min(found)
    return number, cost


def _act(desk: _Desk, beliefs: FloatArray, is_open: frozenset[str]) -> FloatArray:
    """Return the expected cost of repairing by each belief, float64[B, claims], with what stands open."""
    first = np.broadcast_to(_first_money(desk, is_open), (len(beliefs), len(desk.menu.money)))
    return expected_repair_cost(beliefs, desk.menu, first_money=first)


def _first_money(desk: _Desk, is_open: frozenset[str]) -> FloatArray:
    rulebook = desk.rulebook
    names = [name.split("@")[0] for name in desk.menu.names]
    money = {name: cost_of_repair(rulebook.repairs[name], is_open, rulebook).money for name in set(names)}
    costs = [money[name] for name in names]
    return np.array([*costs, rulebook.workshop.last_resort])


def _cost_with(desk: _Desk, share: FloatArray, option: _Option, further: Sequence[_Option]) -> float:
    """Return the expected total cost when a check comes next, and perhaps a further one after it."""
    cost = cost_of_check(option.check, desk.is_open, desk.rulebook)
    joint = option.table * share
    after = _act(desk, joint, cost.open_after)
    for second in further:
        then = cost_of_check(second.check, cost.open_after, desk.rulebook)
        deeper = (joint[:, np.newaxis, :] * second.table).reshape(-1, share.size)
        acted = _act(desk, deeper, then.open_after).reshape(len(joint), -1).sum(axis=1)
        after = np.minimum(after, joint.sum(axis=1) * then.money + acted)
    return float(share.sum()) * cost.money + float(after.sum())


def _check_step(desk: _Desk, share: FloatArray, option: _Option, *, saving: float) -> PlanStep:
    cost = cost_of_check(option.check, desk.is_open, desk.rulebook)
    joint = option.table * share
    outcome = joint.sum(axis=1)
    now = float(entropy_bit(joint.sum(axis=0)))
    gain = now - float(outcome @ entropy_bit(joint / outcome[:, np.newaxis]))
    return PlanStep(
        kind="check",
        id=option.check.id,
        title=option.check.title,
        place=option.place,
        minutes_min=cost.minutes_min,
        money=cost.money,
        saving=saving,
        gain_bit=max(gain, 0.0),
        cautions=_cautions(option.check.cautions, desk.rulebook),
    )


def _repair_steps(desk: _Desk, share: FloatArray, begin: int) -> tuple[PlanStep, ...]:
    """Return the repairs in order, with one given to begin with."""
    left = share * (1.0 - desk.menu.cure[begin])
    order = repair_order(left, desk.menu) if begin < len(desk.menu.names) else []
    rest = (number for number in order if number != begin)
    return tuple(_repair_step(desk, number, first=i == 0) for i, number in enumerate((begin, *rest)))


def _repair_step(desk: _Desk, number: int, *, first: bool) -> PlanStep:
    rulebook = desk.rulebook
    if number == len(desk.menu.names):
        money = rulebook.workshop.last_resort
        title = "Give the car to somebody with more means"
        return PlanStep("repair", LAST_RESORT, title, VEHICLE, 0.0, money, 0.0, 0.0, ())
    name, place = desk.menu.names[number].split("@")
    repair = rulebook.repairs[name]
    cost = cost_of_repair(repair, desk.is_open if first else (), rulebook)
    at: Place = next((corner for corner in CORNERS if corner == place), VEHICLE)
    cautions = _cautions(repair.cautions, rulebook)
    return PlanStep("repair", name, repair.title, at, cost.minutes_min, cost.money, 0.0, 0.0, cautions)


def _cautions(names: Sequence[str], rulebook: Rulebook) -> tuple[str, ...]:
    return tuple(rulebook.cautions[name].text for name in names)


def _why(step: PlanStep, act_now: float, expected: float, repair: PlanStep) -> str:
    place = "" if repair.place == VEHICLE else f" ({CORNER_NAMES[repair.place]})"
    at_once = f"repairing at once, {repair.title.lower()}{place} first, is expected to cost {act_now:.0f}"
    if step.kind == "check":
        return (
            f"It takes {step.minutes_min:.0f} min ({step.money:.0f}) and brings the expected cost to a proven"
            f" repair down to {expected:.0f}; {at_once}."
        )
    return f"No check is expected to save enough to be worth its minutes; {at_once}."
