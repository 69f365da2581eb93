"""Expected cost of getting the car right by repairs alone, for many beliefs at once.

The repairs are tried one after the other, each once and proved by a road test, until the car is right or is
given away: a last resort always succeeds, so the cost is finite whatever the fault. The order is the greedy
one: next comes the repair with the largest probability of success over cost, judged by what the failed ones
have left in doubt (D. Heckerman, J. S. Breese and K. Rommelse, Commun. ACM 38(3), 1995; from memory). The car
is given away after as many of them as makes the expected cost least, which may be more than the rule itself
would try: a poor first step can lead to a good second one.
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

HOPELESS: Final = 1.5
"""So many times worse than the last resort by success over cost, a repair is not tried before it
(judgement)."""

ROWS_AT_ONCE: Final = 128


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
    steps = _work_through(belief, menu, first_money)
    return _least(belief.sum(axis=1), steps, float(menu.money[-1]))[0]


def repair_order(belief: FloatArray, menu: RepairMenu, *, first_money: FloatArray | None = None) -> list[int]:
    """Return the order of the repairs for one belief, float64[claims], up to the last resort."""
    money = None if first_money is None else first_money[np.newaxis]
    steps = _work_through(belief[np.newaxis], menu, money)
    tried = int(_least(belief.sum(keepdims=True), steps, float(menu.money[-1]))[1][0])
    return [*(int(step.chosen[0]) for step in steps[:tried]), len(menu.names)]


@dataclass(frozen=True, slots=True)
class _Step:
    """One more repair on the beliefs with the numbers ``rows``, and the share that is not right before it."""

    rows: NDArray[np.intp]
    chosen: NDArray[np.intp]
    share: FloatArray
    paid: FloatArray
    share_after: FloatArray


def _work_through(belief: FloatArray, menu: RepairMenu, first_money: FloatArray | None) -> list[_Step]:
    """Try the repairs by success over cost, without the last resort, as long as there is hope."""
    steps: list[_Step] = []
    rows, left, share = np.arange(len(belief)), belief, belief.sum(axis=1)
    enough = LEAST_DOUBT * share
    cure, usual = menu.cure[:-1], menu.money[:-1]
    uncured = 1.0 - cure
    money = usual if first_money is None else first_money[:, :-1]
    per_money = np.array(np.broadcast_to(1.0 / money, (len(left), len(usual))))
    while len(steps) < len(usual):
        ratio = _success(left, cure) * per_money
        chosen = np.argmax(ratio, axis=1)
        best = ratio[np.arange(len(ratio)), chosen]
        on = (best * HOPELESS * menu.money[-1] > share) & (share > enough)
        if not on.all():
            rows, left, share, enough = rows[on], left[on], share[on], enough[on]
            chosen, per_money = chosen[on], per_money[on]
        if not len(rows):
            break
        row = np.arange(len(rows))
        paid = share / per_money[row, chosen]
        left = left * uncured[chosen]
        after = left.sum(axis=1)
        steps.append(_Step(rows, chosen, share, paid, after))
        share = after
        if len(steps) == 1 and first_money is not None:
            per_money = np.tile(1.0 / usual, (len(rows), 1))
        per_money[row, chosen] = 0.0
    return steps


def _success(left: FloatArray, cure: FloatArray) -> FloatArray:
    """Return the probability of each repair to cure, by rows small enough for one core.

    A larger product is shared out to threads that wait for each other longer than they work, the more the
    busier the machine is.
    """
    chances = np.empty((len(left), len(cure)))
    for begin in range(0, len(left), ROWS_AT_ONCE):
        chances[begin : begin + ROWS_AT_ONCE] = left[begin : begin + ROWS_AT_ONCE] @ cure.T
    return chances


def _least(start: FloatArray, steps: Sequence[_Step], last: float) -> tuple[FloatArray, NDArray[np.intp]]:
    """Return the least expected cost and after how many steps the car is given away, both by belief."""
    cost, tried = start * last, np.zeros(len(start), dtype=np.intp)
    for number, step in enumerate(steps, 1):
        cost[step.rows], tried[step.rows] = step.share_after * last, number
    for number, step in reversed(list(enumerate(steps))):
        at_once, later = step.share * last, step.paid + cost[step.rows]
        cost[step.rows] = np.minimum(at_once, later)
        tried[step.rows] = np.where(at_once <= later, number, tried[step.rows])
    return cost, tried
