"""Parts of one work done at once: array functions and parsers leave the interpreter free while they run."""

from __future__ import annotations

import threading
from collections.abc import Callable, Iterable
from concurrent.futures import ThreadPoolExecutor
from multiprocessing import parent_process
from typing import Final, TypeVar

WORKERS: Final = 2
"""More gain nothing: between array functions only one thread can run."""

PART: Final = 16_384
"""Samples worked on at once: what is laid aside meanwhile stays in the quick memory of a processor."""

_THREADS: Final = "side-by-side"
"""Begin of the names of the threads started here."""

_Item = TypeVar("_Item")
_Result = TypeVar("_Result")


def map_side_by_side(
    function: Callable[[_Item], _Result],
    items: Iterable[_Item],
    *,
    done: Callable[[int], None] | None = None,
) -> list[_Result]:
    """Apply a pure function to every item; the results come in the order of the items.

    Parameters
    ----------
    function : callable
        What it raises is raised here, and items that were not begun are left out.
    items : iterable
    done : callable, optional
        Told in this thread, in the order of the items, how many results are there; may raise to stop.
    """
    if _is_one_of_many():
        return _collected(map(function, items), done)
    with ThreadPoolExecutor(WORKERS, _THREADS) as pool:
        try:
            return _collected(pool.map(function, items), done)
        finally:
            pool.shutdown(wait=False, cancel_futures=True)


def _collected(results: Iterable[_Result], done: Callable[[int], None] | None) -> list[_Result]:
    kept: list[_Result] = []
    for result in results:
        kept.append(result)
        if done is not None:
            done(len(kept))
    return kept


def both(first: Callable[[], _Item], second: Callable[[], _Result]) -> tuple[_Item, _Result]:
    """Work out two things that do not need each other; what either raises is raised here."""
    if _is_one_of_many():
        return first(), second()
    with ThreadPoolExecutor(1, _THREADS) as pool:
        other = pool.submit(second)
        return first(), other.result()


def _is_one_of_many() -> bool:
    """Whether others work beside this thread or process already, for which more threads leave no processor.

    They would only cost: each has a memory of its own to ask from the system.
    """
    return parent_process() is not None or threading.current_thread().name.startswith(_THREADS)


def parts_of(size: int) -> list[slice]:
    """Cut a long series into parts in which each sample is worked out by itself."""
    return [slice(first, first + PART) for first in range(0, size, PART)]
