"""The map of keys, made of the commands and of what each part of the window says of its own keys."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

FEW: Final = 3
"""More keys that do the same are written as first and last."""


@dataclass(frozen=True, slots=True)
class KeyLine:
    """A key and what it does.

    Attributes
    ----------
    group : str
        Where it holds: the title of a menu, or the name of a part of the window.
    """

    group: str
    key: str
    does: str


@dataclass(frozen=True, slots=True)
class KeyGroup:
    """Keys that hold in one place."""

    title: str
    lines: tuple[KeyLine, ...]


def group_keys(lines: Iterable[KeyLine]) -> tuple[KeyGroup, ...]:
    """Put the keys of one place together, in the order in which they come."""
    groups: dict[str, list[KeyLine]] = {}
    for line in lines:
        groups.setdefault(line.group, []).append(line)
    return tuple(KeyGroup(title, _joined(found)) for title, found in groups.items())


def _joined(lines: Iterable[KeyLine]) -> tuple[KeyLine, ...]:
    """Put keys that do the same on one line."""
    keys: dict[tuple[str, str], list[str]] = {}
    for line in dict.fromkeys(lines):
        keys.setdefault((line.group, line.does), []).append(line.key)
    return tuple(KeyLine(group, _wording(found), does) for (group, does), found in keys.items())


def _wording(keys: list[str]) -> str:
    return f"{keys[0]} … {keys[-1]}" if len(keys) > FEW else ", ".join(keys)


def without_mark(text: str) -> str:
    """Return a menu's text without the sign before its letter and the dots after it.

    >>> without_mark("&Open a recording…"), without_mark("Oil && water")
    ('Open a recording', 'Oil & water')
    """
    return text.replace("&&", "\0").replace("&", "").replace("\0", "&").rstrip("…")
