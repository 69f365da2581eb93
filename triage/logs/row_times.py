"""Clocks that do not tell the instant of every row: distances of rows, and stamps of whole seconds."""

from __future__ import annotations

import re
from typing import Final

import numpy as np

from triage.speed_log import BoolArray, FloatArray, Notice
from triage.texts import Text

_DISTANCE_WORDS: Final = re.compile(
    r"(?:^|[^a-z])(?:dt|deltat|delta|diff|difference|interval|step|abstand|delta_?time)(?:[^a-z]|$)"
)
_COARSE_S: Final = 0.5
_ROWS_TO_SPREAD: Final = 3
_RISING_SHARE: Final = 0.6


def names_distance(name: str) -> bool:
    """Tell whether a column name stands for the time since the row before.

    Examples
    --------
    >>> names_distance("dt_ms"), names_distance("Delta t [s]"), names_distance("time_s")
    (True, True, False)
    """
    return _DISTANCE_WORDS.search(name.lower()) is not None


def is_distance(count: FloatArray) -> bool:
    """Tell whether numbers can be distances of rows: none below zero, and not rising like a clock."""
    known = count[np.isfinite(count)]
    if known.size < 3 or (known < 0).any() or not known.any():
        return False
    return bool(np.count_nonzero(np.diff(known) > 0) < _RISING_SHARE * known.size)


def sum_of_distances(count: FloatArray, name: str, file: str) -> tuple[FloatArray, Notice]:
    """Add up the distances of rows.

    Returns
    -------
    (float64[N], Notice)
        Time since the first row in the unit of the distances; NaN where a distance is missing, and the rows
        behind it are then too early by what is missing.
    """
    known = np.isfinite(count)
    step = np.where(known, count, 0.0)
    step[:1] = 0.0
    missing = int(np.count_nonzero(~known[1:]))
    lost = (
        Text("; {count} of them are missing, so the rows behind those are too early", count=missing)
        if missing
        else ""
    )
    text = Text(
        "{file}: the column {name} holds the distances of the rows; they were added up to a time{lost}.",
        file=file,
        name=name,
        lost=lost,
    )
    return np.where(known, np.cumsum(step), np.nan), Notice("mapping-guessed", text)


def spread_over_steps(time_s: FloatArray, distinct_row: BoolArray) -> tuple[FloatArray, int]:
    """Spread rows evenly that share a stamp because the clock of the file shows whole seconds only.

    Parameters
    ----------
    time_s : float64[N]
        In the order of the file; NaN where there is none.
    distinct_row : bool[N]
        False for rows that repeat the row before; such rows are copies, and nothing is spread among them.

    Returns
    -------
    (float64[N], int)
        Times, and how many rows were moved; the same array and 0 where the clock is finer than half a second,
        or has fewer than three rows to a step.

    Notes
    -----
    The first step may have begun before the recording, so its rows are set against its end, at the pace
    of the usual step.
    """
    known = np.flatnonzero(np.isfinite(time_s))
    if known.size < 4 * _ROWS_TO_SPREAD:
        return time_s, 0
    stamp = time_s[known]
    if (stamp[1:] == stamp[:-1]).mean() < 0.5 or distinct_row[known].mean() < 0.8:
        return time_s, 0
    begin = np.flatnonzero(np.concatenate(([True], np.diff(stamp) != 0)))
    rows = np.diff(np.append(begin, stamp.size))
    steps = np.diff(stamp[begin])
    if steps.size < 2 or (steps <= 0).any() or np.median(rows) < _ROWS_TO_SPREAD:
        return time_s, 0
    usual_s = float(np.median(steps))
    if usual_s < _COARSE_S or abs(stamp[begin] / usual_s % 1.0 - stamp[0] / usual_s % 1.0).max() > 1e-3:
        return time_s, 0
    spread = time_s.copy()
    spread[known] = stamp + usual_s * _place_in_step(rows)
    return spread, int(stamp.size - begin.size)


def _place_in_step(rows: np.ndarray[tuple[int], np.dtype[np.int64]]) -> FloatArray:
    """Place of every row in its step, 0 to 1."""
    pace = np.maximum(rows, 1).astype(np.float64)
    pace[[0, -1]] = np.maximum(pace[[0, -1]], np.median(rows))
    number = np.arange(int(rows.sum())) - np.repeat(np.cumsum(rows) - rows, rows)
    place: FloatArray = number / np.repeat(pace, rows)
    place[: rows[0]] += 1.0 - rows[0] / pace[0]
    return place
