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

from triage.speed_log import BoolArray, FloatArray

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
    belief: FloatArray,
    menu: RepairMenu,
    *,
    first_money: FloatArray | None = None,
    share: FloatArray | None = None,
) -> FloatArray:
    """Return the expected cost of working through the greedy order.

    Parameters
    ----------
    belief : float64[B, claims]
        Probability of every claim, summing to 1 along the claims (or less, for a share of a belief).
    menu : RepairMenu
    first_money : float64[B, repairs + 1], optional
        Cost of each repair when it comes first, with what stands open now; as in the menu when None.
    share : float64[B], optional
        Sum of each belief, where the caller has it.

    Returns
    -------
    float64[B]
    """
    share = belief.sum(axis=1) if share is None else share
    steps = _work_through(belief, share, menu, first_money)
    return _least(share, steps, float(menu.money[-1]))[0]


def repair_order(belief: FloatArray, menu: RepairMenu, *, first_money: FloatArray | None = None) -> list[int]:
    """Return the order of the repairs for one belief, float64[claims], up to the last resort."""
    money = None if first_money is None else first_money[np.newaxis]
    share = belief.sum(keepdims=True)
    steps = _work_through(belief[np.newaxis], share, menu, money)
    tried = int(_least(share, steps, float(menu.money[-1]))[1][0])
    return [*(int(step.chosen[0]) for step in steps[:tried]), len(menu.names)]


@dataclass(frozen=True, slots=True)
class _Step:
    """One more repair for those of the beliefs left by the step before that are flagged in ``on``.

    All else has a row for each of those: the repair, what it costs, and the share that is not right after it.
    """

    on: BoolArray
    chosen: NDArray[np.intp]
    paid: FloatArray
    share_after: FloatArray


def _work_through(
    left: FloatArray, share: FloatArray, menu: RepairMenu, first_money: FloatArray | None
) -> list[_Step]:
    """Try the repairs by success over cost, without the last resort, as long as there is hope."""
    steps: list[_Step] = []
    enough = LEAST_DOUBT * share
    cured, usual = np.ascontiguousarray(menu.cure[:-1].T), 1.0 / menu.money[:-1]
    uncured = 1.0 - menu.cure
    per_money = np.tile(usual, (len(left), 1)) if first_money is None else 1.0 / first_money[:, :-1]
    for _ in menu.names:
        ratio = _success(left, cured)
        ratio *= per_money
        row, chosen = np.arange(len(left)), ratio.argmax(axis=1)
        on = (ratio[row, chosen] * HOPELESS * menu.money[-1] > share) & (share > enough)
        row, chosen = row[on], chosen[on]
        if not len(row):
            break
        paid, enough = share[on] / per_money[row, chosen], enough[on]
        left = left.take(row, axis=0)
        left *= uncured.take(chosen, axis=0)
        share = left.sum(axis=1)
        # Whatever stands open now is closed after the first repair.
        per_money = per_money[on] if steps or first_money is None else np.tile(usual, (len(left), 1))
        per_money[np.arange(len(left)), chosen] = 0.0
        steps.append(_Step(on, chosen, paid, share))
    return steps


def _success(left: FloatArray, cured: FloatArray) -> FloatArray:
    """Return the probability of each repair to cure, by rows small enough for one core.

    A larger product is shared out to threads that wait for each other longer than they work, the more the
    busier the machine is.
    """
    chances = np.empty((len(left), cured.shape[1]))
    for begin in range(0, len(left), ROWS_AT_ONCE):
        rows = slice(begin, begin + ROWS_AT_ONCE)
        np.matmul(left[rows], cured, out=chances[rows])
    return chances


def _least(start: FloatArray, steps: Sequence[_Step], last: float) -> tuple[FloatArray, NDArray[np.intp]]:
    """Return the least expected cost and after how many steps the car is given away, both by belief."""
    shares = [start, *(step.share_after for step in steps)]
    cost, tried = shares[-1] * last, np.full(len(shares[-1]), len(steps))
    for number, step in reversed(list(enumerate(steps))):
        later, tried_later = step.paid + cost, tried
        cost, tried = shares[number] * last, np.full(len(shares[number]), number)
        tried[step.on] = np.where(cost[step.on] <= later, number, tried_later)
        cost[step.on] = np.minimum(cost[step.on], later)
    return cost, tried
