"""The four wheels worked on at once: array functions leave the interpreter free while they run."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from concurrent.futures import ThreadPoolExecutor
from typing import Final, TypeVar

WORKERS: Final = 2
"""More gain nothing: between array functions only one thread can run."""

PART: Final = 16_384
"""Samples worked on at once: what is laid aside meanwhile stays in the quick memory of a processor."""

_Item = TypeVar("_Item")
_Result = TypeVar("_Result")


def map_side_by_side(function: Callable[[_Item], _Result], items: Iterable[_Item]) -> list[_Result]:
    """Apply a pure function to every item; the results come in the order of the items."""
    with ThreadPoolExecutor(WORKERS) as pool:
        return list(pool.map(function, items))


def parts_of(size: int) -> list[slice]:
    """Cut a long series into parts in which each sample is worked out by itself."""
    return [slice(first, first + PART) for first in range(0, size, PART)]
