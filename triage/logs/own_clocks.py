"""Tables in which every signal stands beside a column of time of its own."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from triage.logs.time_column import TimeColumn


def clocks_of_columns(clocks: Sequence[TimeColumn], width: int) -> dict[int, TimeColumn] | None:
    """Say which clock counts for which column.

    Parameters
    ----------
    clocks : sequence of TimeColumn
        All columns that read as time, in their order.
    width : int
        Number of columns.

    Returns
    -------
    mapping of int to TimeColumn, or None
        None unless every clock but the last stands right before a column that is none, and two of the clocks
        differ: then the first counts for all.
    """
    begins = [clock.indices[0] for clock in clocks]
    used = {index for clock in clocks for index in clock.indices}
    if len(clocks) < 2 or any(clock.indices[-1] + 1 in used for clock in clocks) or max(used) == width - 1:
        return None
    if all(np.array_equal(clock.time_s, clocks[0].time_s, equal_nan=True) for clock in clocks[1:]):
        return None
    shifted = [_on_clock_of(clock, clocks[0]) for clock in clocks]
    columns = (index for index in range(width) if index not in used)
    return {index: shifted[max(int(np.searchsorted(begins, index)) - 1, 0)] for index in columns}


def _on_clock_of(clock: TimeColumn, first: TimeColumn) -> TimeColumn:
    """Count from the zero of the first clock, where both tell their zero."""
    if clock.start is None or first.start is None:
        return clock
    return clock.shifted((clock.start - first.start).total_seconds())
