"""Levels of access to the wheel end, as a tree: a level can be opened only from inside its parent.

Opening and closing a level costs something once, however much is then done inside it; while it is open,
everything inside is cheap. The wheel must come off before the sensor can be taken out, and a hub unit comes
out only after wheel and brake.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Level:
    """One level of access.

    Attributes
    ----------
    id : str
    parent : str or None
        The level from which it is opened; None for a level that is always open.
    opening, closing : float
        Cost of opening it from inside its parent and of closing it again, in any one unit.
    """

    id: str
    parent: str | None
    opening: float = 0.0
    closing: float = 0.0


Levels = Mapping[str, Level]


def path_to(level: str, levels: Levels) -> tuple[str, ...]:
    """Return the levels to be opened for a level, the outermost first and itself last.

    Raises
    ------
    KeyError
        When a level on the way is unknown.
    ValueError
        When the levels run in a circle.
    """
    path: list[str] = []
    at: str | None = level
    while at is not None:
        if at in path:
            raise ValueError(f"the levels of access run in a circle: {' < '.join([*path, at])}")
        path.append(at)
        at = levels[at].parent
    return tuple(reversed(path))


def opening_cost(level: str, is_open: Iterable[str], levels: Levels) -> float:
    """Return the cost of opening what is still closed on the way to a level."""
    ready = frozenset(is_open)
    return sum(levels[name].opening for name in path_to(level, levels) if name not in ready)


def closing_cost(is_open: Iterable[str], levels: Levels) -> float:
    """Return the cost of closing every open level."""
    return sum(levels[name].closing for name in is_open)
