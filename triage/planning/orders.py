"""In which order to try things, when one of them will do and each costs something.

Every action cures the fault with a known probability. There is one fault, so the probabilities of different
actions exclude each other and sum to 1 at most. Work stops as soon as the fault is gone. Wanted is the order
with the smallest expected cost::

    E = sum over steps of  P(not cured before the step) * (opening + cost)  +  closing at the end

Without levels of access, sorting by probability over cost is optimal (J. B. Kadane and H. A. Simon, Ann.
Stat. 5, 1977). With them, opening a level is a job that cures nothing and must precede all jobs inside:
minimising the sum of weighted completion times under a tree of precedences, which W. A. Horn solved exactly
(SIAM J. Appl. Math. 23, 1972; both cited from memory and tested against all orders). A cure that only a road
test can prove closes the car again; then no such rule is exact, and the order is improved by moving single
actions.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from triage.planning.access import Levels, closing_cost, opening_cost, path_to


@dataclass(frozen=True, slots=True)
class Action:
    """Something that may cure the fault.

    Attributes
    ----------
    id, level : str
        Its name, and the level of access inside which it is done.
    cost : float
        Cost of doing it once inside, proving included.
    cure_probability : float
        Probability that it is the one that cures the fault.
    proved_on_road : bool
        Whether its success shows on a road test alone, for which every level is closed again.
    """

    id: str
    level: str
    cost: float
    cure_probability: float
    proved_on_road: bool = False


def sort_by_ratio(actions: Sequence[Action]) -> tuple[Action, ...]:
    """Sort by probability over cost, the largest first; optimal where no level has to be opened."""
    return tuple(sorted(actions, key=lambda one: (-_ratio(one.cure_probability, one.cost), one.id)))


def expected_cost(order: Sequence[Action], levels: Levels) -> float:
    """Return the expected cost of working through an order until the fault is gone.

    What is left open is closed when work ends, whether cured or not.
    """
    uncured, total = 1.0, 0.0
    is_open: frozenset[str] = frozenset()
    for action in order:
        step, is_open = _do(action, is_open, levels)
        total += uncured * step
        uncured -= action.cure_probability
        total += action.cure_probability * closing_cost(is_open, levels)
    return total + uncured * closing_cost(is_open, levels)


def find_order(actions: Sequence[Action], levels: Levels) -> tuple[Action, ...]:
    """Find an order of small expected cost fast.

    Exact when no action is proved on the road (Horn's blocks); otherwise those blocks, improved by moving
    single actions as long as that saves something.
    """
    order = _merge_blocks(actions, levels)
    if not any(action.proved_on_road for action in actions):
        return order
    starts = (order, sort_by_ratio(actions), _sort_alone(actions, levels))
    improved = (_improve(start, levels) for start in starts)
    return min(improved, key=lambda one: expected_cost(one, levels))


def search_all_orders(actions: Sequence[Action], levels: Levels) -> tuple[Action, ...]:
    """Find the cheapest order by trying all, leaving those that already cost too much.

    The time grows with the factorial of the number of actions: a reference for up to about eight.
    """
    best: list[tuple[float, tuple[Action, ...]]] = [(float("inf"), ())]

    def go_on(done: tuple[Action, ...], left: frozenset[Action], so_far: _SoFar) -> None:
        if so_far.total >= best[0][0]:
            return
        if not left:
            total = so_far.total + so_far.uncured * closing_cost(so_far.is_open, levels)
            best[0] = min(best[0], (total, done), key=lambda one: one[0])
            return
        for action in sorted(left, key=lambda one: one.id):
            go_on((*done, action), left - {action}, so_far.after(action, levels))

    go_on((), frozenset(actions), _SoFar())
    return best[0][1]


@dataclass(frozen=True, slots=True)
class _SoFar:
    total: float = 0.0
    uncured: float = 1.0
    is_open: frozenset[str] = frozenset()

    def after(self, action: Action, levels: Levels) -> _SoFar:
        step, is_open = _do(action, self.is_open, levels)
        cured = action.cure_probability * closing_cost(is_open, levels)
        return _SoFar(
            self.total + self.uncured * step + cured, self.uncured - action.cure_probability, is_open
        )


def _do(action: Action, is_open: frozenset[str], levels: Levels) -> tuple[float, frozenset[str]]:
    """Cost of one step and what is open after it."""
    cost = opening_cost(action.level, is_open, levels) + action.cost
    now_open = is_open | set(path_to(action.level, levels))
    if not action.proved_on_road:
        return cost, now_open
    return cost + closing_cost(now_open, levels), frozenset()


@dataclass(slots=True)
class _Block:
    """Jobs that follow one another in the best order, and the level (or action) they hang on."""

    parent: str | None
    weight: float
    cost: float
    actions: list[Action] = field(default_factory=list)


def _merge_blocks(actions: Sequence[Action], levels: Levels) -> tuple[Action, ...]:
    """Horn's rule: the block of the highest ratio follows its parent at once, so join the two; repeat."""
    blocks = {
        f"level {name}": _Block(_key(levels[name].parent), 0.0, levels[name].opening + levels[name].closing)
        for name in {name for action in actions for name in path_to(action.level, levels)}
    }
    blocks |= {
        f"action {one.id}": _Block(_key(one.level), one.cure_probability, one.cost, [one]) for one in actions
    }
    joined_into: dict[str, str] = {}
    waiting = set(blocks)
    order: list[Action] = []
    while waiting:
        first = max(sorted(waiting), key=lambda name: _ratio(blocks[name].weight, blocks[name].cost))
        block = blocks[first]
        waiting.discard(first)
        parent = block.parent
        while parent is not None and parent in joined_into:
            parent = joined_into[parent]
        joined_into[first] = parent if parent is not None else _ROOT
        if parent is None or parent == _ROOT:
            order += block.actions
            continue
        above = blocks[parent]
        above.weight += block.weight
        above.cost += block.cost
        above.actions += block.actions
    return tuple(order)


_ROOT = "root"
"""Stands for the start of the work, into which finished blocks are joined."""


def _key(level: str | None) -> str | None:
    return None if level is None else f"level {level}"


def _ratio(weight: float, cost: float) -> float:
    return weight / cost if cost > 0.0 else (float("inf") if weight > 0.0 else 0.0)


def _sort_alone(actions: Sequence[Action], levels: Levels) -> tuple[Action, ...]:
    """Sort by probability over the cost of each action with all its opening and closing."""

    def alone(one: Action) -> float:
        return (
            one.cost + opening_cost(one.level, (), levels) + closing_cost(path_to(one.level, levels), levels)
        )

    return tuple(sorted(actions, key=lambda one: (-_ratio(one.cure_probability, alone(one)), one.id)))


def _improve(order: tuple[Action, ...], levels: Levels) -> tuple[Action, ...]:
    """Move single actions to better places until no move saves anything."""
    best, cost = order, expected_cost(order, levels)
    while True:
        moved = min(_neighbours(best), key=lambda one: expected_cost(one, levels), default=best)
        now = expected_cost(moved, levels)
        if now >= cost - 1e-12:
            return best
        best, cost = moved, now


def _neighbours(order: tuple[Action, ...]) -> list[tuple[Action, ...]]:
    found = []
    for start in range(len(order)):
        rest = order[:start] + order[start + 1 :]
        found += [(*rest[:to], order[start], *rest[to:]) for to in range(len(order)) if to != start]
    return found
