"""What is in view as a table, for other programs."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final, TextIO

import numpy as np

from triage.errors import OutputError
from triage.signals.measurement import Span
from triage.speed_log import FloatArray
from triage.spreadsheet_cells import plain_cell
from triage.texts import Text
from ui.presenters.plot_data import PlotData
from ui.presenters.traces import TraceLine, in_unit

MOST_ROWS: Final = 1_000_000
"""About what a sheet of the usual programs holds; more would take long and could not be looked at."""

CHUNK_ROWS: Final = 10_000


@dataclass(frozen=True, slots=True)
class PlotTable:
    """Numbers on all their own places.

    Attributes
    ----------
    head : tuple of str
        One text for each column, with the unit.
    columns : tuple of float64[N]
        The place first (of samples: the time); NaN where there is no value at a place.
    """

    head: tuple[str, ...]
    columns: tuple[FloatArray, ...]


@dataclass(frozen=True, slots=True)
class TextTable:
    """Rows of texts under a head of as many."""

    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


Table = PlotTable | TextTable


def build_plot_table(data: PlotData, view_s: Span, unit: str) -> PlotTable:
    """Return the samples in view.

    Parameters
    ----------
    view_s : (float, float)
        Seconds of the log, both ends included.
    unit : str
        Of the speeds.

    Raises
    ------
    OutputError
        When there are more than :data:`MOST_ROWS` rows.
    """
    speed = [_cut(line, view_s) for line in in_unit(data.speed, unit)]
    divergence = [_cut(line, view_s) for line in data.divergence]
    lines = [*speed, *divergence]
    instants = _unique([keys for keys, _ in lines])
    if instants.size > MOST_ROWS:
        raise OutputError(
            Text("{rows} rows are more than a table can hold", rows=instants.size),
            hint="Zoom in to fewer seconds.",
        )
    head = [f"{line.corner} wheel speed ({unit})" for line in data.speed]
    head += [f"{line.corner} divergence (%)" for line in data.divergence]
    columns = [_spread(keys, value, instants) for keys, value in lines]
    return PlotTable(("time (s)", *head), (instants.real, *columns))


def _cut(line: TraceLine, view_s: Span) -> tuple[np.ndarray, FloatArray]:
    """Keys and values in view. A key is a time, and the how manieth of that time as its imaginary part."""
    first = int(np.searchsorted(line.time_s, view_s[0]))
    stop = int(np.searchsorted(line.time_s, view_s[1], side="right"))
    time_s = line.time_s[first:stop]
    repeated = np.arange(time_s.size) - np.searchsorted(time_s, time_s)
    return time_s + 1j * repeated, line.factor * line.value[first:stop]


def _unique(keys: list[np.ndarray]) -> np.ndarray:
    if all(np.array_equal(keys[0], other) for other in keys[1:]):
        return keys[0]
    return np.unique(np.concatenate(keys))


def _spread(keys: np.ndarray, value: FloatArray, instants: np.ndarray) -> FloatArray:
    column = np.full(instants.size, np.nan)
    column[np.searchsorted(instants, keys)] = value
    return column


def write_table(table: Table, file: TextIO, *, delimiter: str = ",") -> None:
    """Write a table with decimal points; what is missing stays empty."""
    writer = csv.writer(file, delimiter=delimiter, lineterminator="\n")
    writer.writerow([plain_cell(text) for text in table.head])
    for rows in _rows(table):
        writer.writerows(rows)


def format_table(table: Table, *, delimiter: str) -> str:
    """Return the table as text."""
    text = io.StringIO()
    write_table(table, text, delimiter=delimiter)
    return text.getvalue()


def _rows(table: Table) -> Iterator[list[tuple[str, ...]]]:
    if isinstance(table, TextTable):
        yield [tuple(map(plain_cell, row)) for row in table.rows]
        return
    for first in range(0, table.columns[0].size, CHUNK_ROWS):
        cells = [_cells(column[first : first + CHUNK_ROWS]) for column in table.columns]
        yield list(zip(*cells, strict=True))


def _cells(column: FloatArray) -> list[str]:
    # Ten digits tell a tenth of a microsecond in a day, and hide that 1/3.6 has no end.
    return ["" if value != value else f"{value:.10g}" for value in column.tolist()]  # noqa: PLR0124 - NaN
