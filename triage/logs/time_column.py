"""The clock of a table: a column, or columns, read in seconds."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

import numpy as np
import pandas as pd

from triage.logs.row_times import spread_over_steps
from triage.speed_log import BoolArray, FloatArray, Notice
from triage.texts import Text


@dataclass(frozen=True, slots=True)
class TimeColumn:
    """The clock of a table.

    Attributes
    ----------
    indices : tuple of int
        Columns it was read from.
    time_s : float64[N]
        Seconds in row order; NaN where the row has no readable time.
    start : datetime or None
        Instant of zero.
    """

    indices: tuple[int, ...]
    time_s: FloatArray
    start: datetime | None
    notices: tuple[Notice, ...] = ()

    @property
    def valid(self) -> BoolArray:
        """Rows with a readable time, bool[N]."""
        return ~np.isnan(self.time_s)

    @property
    def all_valid(self) -> bool:
        """Every row has a readable time."""
        return not bool(np.isnan(self.time_s).any())

    @property
    def is_coarse(self) -> bool:
        """Most rows share their stamp with the row before."""
        return bool(np.count_nonzero(np.diff(self.time_s) == 0.0) >= 0.5 * self.time_s.size)

    def started_by(self, other: TimeColumn) -> TimeColumn:
        """Take the start from another clock of the same rows, where this one tells none."""
        if self.start is not None or other.start is None or not self.valid.any():
            return self
        return replace(self, start=other.start - timedelta(seconds=float(self.time_s[self.valid][0])))

    def shifted(self, by_s: float) -> TimeColumn:
        """Return the same clock, counted from an earlier zero."""
        return replace(self, time_s=self.time_s + by_s) if by_s else self

    def spread(self, frame: pd.DataFrame, file: str) -> TimeColumn:
        """Spread rows that share a stamp because the clock shows whole seconds only."""
        if not self.is_coarse:
            return self
        time_s, moved = spread_over_steps(self.time_s, _rows_that_differ(frame))
        if not moved:
            return self
        text = Text(
            "{file}: the time is written in whole seconds; {moved} rows that share a "
            "stamp were spread evenly over its second, so losses shorter than a second "
            "may be misplaced.",
            file=file,
            moved=moved,
        )
        return replace(
            self, time_s=time_s, notices=(*self.notices, Notice("duplicate-instants", text, moved))
        )


def _rows_that_differ(frame: pd.DataFrame) -> BoolArray:
    """Mark rows that are filled and no copy of the row before, bool[N]."""
    filled = frame.notna().sum(axis=1).to_numpy() > 0.75 * frame.shape[1]
    copied = (frame == frame.shift()).all(axis=1).to_numpy(dtype=bool)
    distinct: BoolArray = filled & ~copied
    return distinct
