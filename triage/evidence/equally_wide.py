"""Tables of checks and measurements worked on together, those with as many outcomes at once."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import TypeVar

import numpy as np

from triage.speed_log import FloatArray

_Result = TypeVar("_Result")


def work_on_equally_wide(
    tables: Sequence[FloatArray], work: Callable[[FloatArray], Iterable[_Result]]
) -> list[_Result]:
    """Stack the tables that have as many columns, and work on each stack.

    Parameters
    ----------
    tables : sequence of float64[..., outcomes]
        Alike but for the number of outcomes.
    work : callable
        Given float64[tables, ..., outcomes], gives a result for each of its tables.

    Returns
    -------
    list
        The results in the order of the tables.
    """
    results: dict[int, _Result] = {}
    widths = [table.shape[-1] for table in tables]
    for width in set(widths):
        members = [number for number, one in enumerate(widths) if one == width]
        stacked = np.stack([tables[number] for number in members])
        results.update(zip(members, work(stacked), strict=True))
    return [results[number] for number in range(len(tables))]
