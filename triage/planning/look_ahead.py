"""Expected cost of getting the car right when one or two checks come before the repairs.

What follows the last of them is a cost to go (:mod:`triage.planning.cost_to_go`): more checks may come before
the repairs. Many beliefs and all checks at once: the arithmetic of a plan is one product for each depth.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from triage.planning.cost_to_go import cost_to_go, credit
from triage.planning.costs import StepCost
from triage.planning.desk import Desk, OpenLevels, Option
from triage.planning.repair_cost import expected_repair_cost
from triage.speed_log import FloatArray


def cost_of_acting(desk: Desk, beliefs: FloatArray, is_open: OpenLevels) -> FloatArray:
    """Return the expected cost of repairing by each belief, float64[B, claims], with what stands open."""
    first = np.broadcast_to(desk.repair_money(is_open), (len(beliefs), len(desk.menu.money)))
    return expected_repair_cost(beliefs, desk.menu, first_money=first)


def cost_with_check(
    desk: Desk,
    beliefs: FloatArray,
    options: Sequence[Option],
    is_open: OpenLevels,
    *,
    acted: FloatArray | None = None,
) -> FloatArray:
    """Return the expected total cost when a check comes next, and then repairs or more checks.

    Parameters
    ----------
    desk : Desk
    beliefs : float64[B, claims]
        Each summing to its own probability.
    options : sequence of Option
        At least one.
    is_open : frozenset of str
        Levels of access.
    acted : float64[B], optional
        That of :func:`cost_of_acting` for the same beliefs and levels, where the caller has it.

    Returns
    -------
    float64[options, B]
        In proportion to the belief's own sum.
    """
    costs = [desk.check_cost(option, is_open) for option in options]
    paid = np.outer([cost.money for cost in costs], beliefs.sum(axis=1))
    repairing, going_on = _after_check(desk, beliefs, options, costs)
    now = cost_to_go(
        cost_of_acting(desk, beliefs, is_open) if acted is None else acted,
        beliefs @ desk.knowing_money(is_open),
        beliefs.sum(axis=1) * desk.menu.money[-1],
    )
    earned = credit(now - going_on, paid)
    total: FloatArray = paid + repairing - earned * (repairing - going_on)
    return total


def _after_check(
    desk: Desk, beliefs: FloatArray, options: Sequence[Option], costs: Sequence[StepCost]
) -> tuple[FloatArray, FloatArray]:
    """Return what is expected after each check, float64[options, B]: by repairing at once, by going on."""
    counts = [len(option.table) for option in options]
    joint = np.concatenate([option.table for option in options])[:, np.newaxis, :] * beliefs
    money, knowing = (
        np.repeat([of_levels(cost.open_after) for cost in costs], counts, axis=0)
        for of_levels in (desk.repair_money, desk.knowing_money)
    )
    first = np.repeat(money, len(beliefs), axis=0)
    rows = joint.reshape(-1, beliefs.shape[1])
    acted = expected_repair_cost(rows, desk.menu, first_money=first).reshape(-1, len(beliefs))
    known = np.matmul(joint, knowing[:, :, np.newaxis])[:, :, 0]
    going_on = cost_to_go(acted, known, joint.sum(axis=2) * desk.menu.money[-1])
    starts = np.cumsum([0, *counts[:-1]])
    return np.add.reduceat(acted, starts, axis=0), np.add.reduceat(going_on, starts, axis=0)


def cost_with_two(
    desk: Desk, belief: FloatArray, option: Option, further: Sequence[Option], is_open: OpenLevels
) -> float:
    """Return the expected total cost when a check comes next, and after each outcome the best that follows.

    Parameters
    ----------
    desk : Desk
    belief : float64[claims]
    option : Option
    further : sequence of Option
        Checks that may follow it; repairing at once is always among what may follow.
    is_open : frozenset of str
        Levels of access.
    """
    cost = desk.check_cost(option, is_open)
    joint = option.table * belief
    after = cost_of_acting(desk, joint, cost.open_after)
    if further:
        then = cost_with_check(desk, joint, further, cost.open_after, acted=after)
        after = np.minimum(after, then.min(axis=0))
    return float(belief.sum()) * cost.money + float(after.sum())
