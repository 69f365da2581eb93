"""Expected cost of getting the car right by repairs alone, for many beliefs at once.

The repairs are tried one after the other, each once and proved by a road test, until the car is right. The
order is the greedy one: next comes the repair with the largest probability of success over cost, judged by
what the failed ones have left in doubt (D. Heckerman, J. S. Breese and K. Rommelse, Commun. ACM 38(3), 1995;
from memory). A last resort that always succeeds stands at the end, so the cost is finite whatever the fault.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.speed_log import FloatArray

LEAST_DOUBT: Final = 1e-4
"""Share of the belief below which further repairs no longer change the cost."""


@dataclass(frozen=True, slots=True)
class RepairMenu:
    """What can be done to the car.

    Attributes
    ----------
    names : tuple of str
        One for each repair; the last resort has none.
    cure : float64[repairs + 1, claims]
        Probability that it makes the car right, by claim; the last resort cures everything.
    money : float64[repairs + 1]
        Cost with nothing open before, everything closed and proved after.
    """

    names: tuple[str, ...]
    cure: FloatArray
    money: FloatArray


def expected_repair_cost(
    belief: FloatArray, menu: RepairMenu, *, first_money: FloatArray | None = None
) -> FloatArray:
    """Return the expected cost of working through the greedy order.

    Parameters
    ----------
    belief : float64[B, claims]
        Probability of every claim, summing to 1 along the claims (or less, for a share of a belief).
    menu : RepairMenu
    first_money : float64[B, repairs + 1], optional
        Cost of each repair when it comes first, with what stands open now; as in the menu when None.

    Returns
    -------
    float64[B]
    """
    return _work_through(belief, menu, first_money)[0]


def repair_order(belief: FloatArray, menu: RepairMenu, *, first_money: FloatArray | None = None) -> list[int]:
    """Return the order of the repairs for one belief, float64[claims], up to the last resort."""
    money = None if first_money is None else first_money[np.newaxis]
    return [int(step[0]) for step in _work_through(belief[np.newaxis], menu, money)[1]]


def order_cost(order: Sequence[int], belief: FloatArray, menu: RepairMenu) -> float:
    """Return the expected cost of a given order for one belief, nothing open before."""
    left, total = belief.copy(), 0.0
    for number in order:
        total += float(left.sum()) * float(menu.money[number])
        left = left * (1.0 - menu.cure[number])
    return total


def _work_through(
    belief: FloatArray, menu: RepairMenu, first_money: FloatArray | None
) -> tuple[FloatArray, list[NDArray[np.intp]]]:
    left = belief.copy()
    start = left.sum(axis=1)
    total = np.zeros(len(left))
    steps: list[NDArray[np.intp]] = []
    done = np.zeros((len(left), len(menu.money)), dtype=np.bool_)
    for number in range(len(menu.money)):
        money = first_money if number == 0 and first_money is not None else menu.money
        success = np.where(done, -1.0, left @ menu.cure.T)
        chosen = np.argmax(success / money, axis=1)
        paid = np.broadcast_to(money, success.shape)[np.arange(len(left)), chosen]
        total += left.sum(axis=1) * paid
        left *= 1.0 - menu.cure[chosen]
        done[np.arange(len(left)), chosen] = True
        steps.append(chosen)
        if np.all(left.sum(axis=1) <= LEAST_DOUBT * start):
            break
    return total, steps
