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


def costs_of_next(
    desk: Desk, beliefs: FloatArray, options: Sequence[Option], is_open: OpenLevels
) -> FloatArray:
    """Return the expected total cost of repairing at once, and of beginning with each check.

    After a check come repairs or more checks.

    Parameters
    ----------
    desk : Desk
    beliefs : float64[B, claims]
        Each summing to its own probability.
    options : sequence of Option
    is_open : frozenset of str
        Levels of access.

    Returns
    -------
    float64[1 + options, B]
        In proportion to the belief's own sum; repairing at once stands first.
    """
    # To repair at once is to do a check that costs nothing, opens nothing and has one outcome.
    tables = [np.ones((1, beliefs.shape[1])), *(option.table for option in options)]
    costs = [StepCost(0.0, 0.0, is_open), *(desk.check_cost(option, is_open) for option in options)]
    paid = np.outer([cost.money for cost in costs], beliefs.sum(axis=1))
    repairing, going_on = _after_checks(desk, beliefs, tables, [cost.open_after for cost in costs])
    earned = credit(going_on[0] - going_on, paid)
    total: FloatArray = paid + repairing - earned * (repairing - going_on)
    return total


def _after_checks(
    desk: Desk, beliefs: FloatArray, tables: Sequence[FloatArray], levels: Sequence[OpenLevels]
) -> tuple[FloatArray, FloatArray]:
    """Return what is expected after each check, float64[checks, B]: by repairing at once, by going on."""
    counts = [len(table) for table in tables]
    # One claim after the other in memory, for the sums over them are quicker so.
    joint = np.concatenate([table.T for table in tables], axis=1).T[:, np.newaxis, :] * beliefs
    number = {level: i for i, level in enumerate(dict.fromkeys(levels))}
    row = np.repeat([number[level] for level in levels], counts)
    money = np.array([desk.repair_money(level) for level in number])
    knowing = np.array([desk.knowing_money(level) for level in number])
    share, known = joint.sum(axis=2), np.matmul(joint, knowing[row][:, :, np.newaxis])[:, :, 0]
    # Summed in the order in which others sum one belief, so that the last bits agree.
    share[0], known[0] = beliefs.sum(axis=1), beliefs @ knowing[0]
    rows, first = joint.reshape(-1, beliefs.shape[1]), money[np.repeat(row, len(beliefs))]
    acted = expected_repair_cost(rows, desk.menu, first_money=first, share=share.ravel()).reshape(share.shape)
    going_on = cost_to_go(acted, known, share * desk.menu.money[-1])
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
    after = costs_of_next(desk, option.table * belief, further, cost.open_after).min(axis=0)
    return float(belief.sum()) * cost.money + float(after.sum())
