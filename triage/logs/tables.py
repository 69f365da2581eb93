"""Tables of numbers as text: comma, semicolon or tab, with a heading."""

from __future__ import annotations

import re
import warnings
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
import pandas as pd

from triage.errors import DamagedLog, LogReadError
from triage.logs.clock import mend_clock
from triage.logs.databases import SignalDatabase
from triage.logs.long_tables import long_signals
from triage.logs.names import bracket_unit, read_name
from triage.logs.number_texts import plain_numbers, unit_in_cells
from triage.logs.own_clocks import clocks_of_columns
from triage.logs.plain_rows import parse_plain_rows
from triage.logs.recording import RawSignal, Recording
from triage.logs.source import Source
from triage.logs.stamps import find_further_clocks, find_time_column
from triage.logs.table_layout import TableLayout, sniff_table
from triage.logs.time_column import TimeColumn
from triage.logs.unit_texts import speed_units_in
from triage.progress import Progress
from triage.reasons import library_words
from triage.speed_log import BoolArray, FloatArray, Notice
from triage.texts import Text

_JUDGED_CELLS: Final = 1000
_DENSE_RATIO: Final = 0.9
"""In a column filled to this share an empty cell is a missing number; below, it has a slower clock."""


@dataclass(frozen=True, slots=True)
class Column:
    """One column of a table.

    ``value`` is NaN for an empty cell and for a word; ``worded`` marks the words.
    """

    name: str
    unit: str
    value: FloatArray
    worded: BoolArray


def probe_table(source: Source) -> float:
    """Give the confidence that the file is a table with a heading."""
    layout = sniff_table(source)
    if layout is None:
        return 0.0
    return 0.5 if layout.names else 0.1


TABLES: Final = {
    ",": Text("table (comma separated)"),
    ";": Text("table (semicolon separated)"),
    "\t": Text("table (tab separated)"),
    "|": Text("table (bar separated)"),
    " ": Text("table (blank separated)"),
}


def read_table(source: Source, _database: SignalDatabase, progress: Progress) -> Recording:
    """Read every numeric column of a table.

    Raises
    ------
    DamagedLog
        When no rows can be read.
    LogReadError
        When the table has no heading or no column of time.
    """
    layout = _layout_of(source)
    progress(0.05, "reading the table")
    frame, notices = _load(source, layout)
    progress(0.6, "judging the columns")
    clock = find_time_column(layout, frame, source.name)
    mended = mend_clock(clock.time_s)
    notices += mended.notices(source.name)
    clock = replace(clock, time_s=mended.time_s)
    long = long_signals(frame, layout.names, clock.time_s, used=clock.indices, decimal=layout.decimal)
    clock = clock if long else clock.spread(frame, source.name)
    signals = long or _signals(frame, layout, clock, source.name)
    if layout.decimal == ",":
        notices.append(
            Notice(
                "decimal-comma", Text("{name}: numbers are written with a decimal comma.", name=source.name)
            )
        )
    progress(1.0, "reading the table")
    return Recording(TABLES[layout.delimiter], clock.start, signals, (*notices, *clock.notices))


def load_columns_as_text(source: Source, layout: TableLayout) -> pd.DataFrame:
    """Read a table with every cell left as text, for frame tables whose digits are no numbers."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", pd.errors.ParserWarning)
        return pd.read_csv(
            source.text_after(layout.first_data_line),
            sep=r"\s+" if layout.delimiter == " " else layout.delimiter,
            header=None,
            names=range(len(layout.sample[0])),
            encoding=source.text_encoding,
            encoding_errors="replace",
            dtype=str,
            keep_default_na=False,
            skip_blank_lines=True,
            on_bad_lines="skip",
            index_col=False,
        )


def _layout_of(source: Source) -> TableLayout:
    layout = sniff_table(source)
    if layout is None:
        raise DamagedLog(
            "no rows of numbers were found",
            file=source.name,
            place=Text("line {number}", number=1),
            hint="Export it again.",
        )
    if not layout.names:
        raise LogReadError(
            "the table has no heading, so its columns have no names",
            file=source.name,
            place=Text("line {number}", number=1),
            hint="Put a first line with the column names above the numbers.",
        )
    return layout


def _load(source: Source, layout: TableLayout) -> tuple[pd.DataFrame, list[Notice]]:
    try:
        with warnings.catch_warnings(record=True) as heard:
            warnings.simplefilter("always")
            frame = _parse(source, layout)
    except (pd.errors.ParserError, pd.errors.EmptyDataError, ValueError, OverflowError) as error:
        raise DamagedLog(
            Text(
                "the table cannot be read: {reason}",
                reason=library_words(
                    _counted_from_top(str(error), layout.first_data_line), type(error).__name__
                ),
            ),
            file=source.name,
            hint="Export it again.",
        ) from None
    skipped = sum(str(item.message).count("Skipping line") for item in heard)
    text = Text(
        "{name}: {skipped} lines with another number of cells were skipped.",
        name=source.name,
        skipped=skipped,
    )
    return frame, [Notice("frames-skipped", text, skipped)] if skipped else []


def _counted_from_top(message: str, lines: int) -> str:
    """Let the row numbers of a parser, which never saw the heading, count from the top of the file."""
    return re.sub(r"\b(row|line) (\d+)", lambda found: f"{found[1]} {int(found[2]) + lines}", message)


def _parse(source: Source, layout: TableLayout) -> pd.DataFrame:
    rows = source.text_after(layout.first_data_line)
    plain = parse_plain_rows(
        rows, columns=len(layout.names), delimiter=layout.delimiter, decimal=layout.decimal
    )
    if plain is not None:
        return plain
    # an empty cell is told from a word such as NaN: the word is an invalid sample, the cell may be none
    return pd.read_csv(
        rows,
        sep=r"\s+" if layout.delimiter == " " else layout.delimiter,
        decimal=layout.decimal,
        header=None,
        names=range(len(layout.names)),
        encoding=source.text_encoding,
        encoding_errors="replace",
        engine="c",
        keep_default_na=False,
        na_values=[""],
        on_bad_lines="warn",
        index_col=False,
        low_memory=False,
    )


def _column(frame: pd.DataFrame, layout: TableLayout, index: int) -> Column:
    value, worded = numbers_of(frame[index], layout.decimal)
    name = layout.names[index]
    unit = layout.units[index] if layout.units else bracket_unit(name)
    unit = unit or read_name(name).unit or _unit_in_cells(frame[index]) or _unit_in_remarks(name, layout)
    return Column(name, unit, value, worded)


def _unit_in_remarks(name: str, layout: TableLayout) -> str:
    """Return the unit that the lines above the heading state, for a wheel speed that states none itself."""
    if not layout.remarks or read_name(name).corner is None or read_name(name).names_other:
        return ""
    found = {unit for line in layout.remarks for unit in speed_units_in(line)}
    return found.pop() if len(found) == 1 else ""


def _unit_in_cells(series: pd.Series) -> str:
    if pd.api.types.is_numeric_dtype(series.dtype):
        return ""
    return unit_in_cells(series.head(_JUDGED_CELLS).astype("string").str.strip())


def numbers_of(series: pd.Series, decimal: str) -> tuple[FloatArray, BoolArray]:
    """Turn a column into numbers; words become NaN and are marked."""
    if pd.api.types.is_numeric_dtype(series.dtype):
        value = series.to_numpy(dtype=np.float64, na_value=np.nan)
        infinite = np.isinf(value)
        return (np.where(infinite, np.nan, value), infinite) if infinite.any() else (value, infinite)
    text = series.astype("string").str.strip()
    filled = (text.notna() & (text != "")).to_numpy(dtype=bool, na_value=False)
    lowered = text.str.lower().replace({"true": "1", "false": "0", "on": "1", "off": "0"})
    lowered = plain_numbers(lowered, decimal)
    value = pd.to_numeric(lowered, errors="coerce").to_numpy(dtype=np.float64, na_value=np.nan)
    value = np.where(np.isfinite(value), value, np.nan)
    return value, filled & np.isnan(value)


def _signals(frame: pd.DataFrame, layout: TableLayout, clock: TimeColumn, file: str) -> tuple[RawSignal, ...]:
    own = clocks_of_columns(find_further_clocks(layout, frame, clock, file), frame.shape[1])
    indices = own or [index for index in range(frame.shape[1]) if index not in clock.indices]
    return tuple(_signal(_column(frame, layout, index), own[index] if own else clock) for index in indices)


def _signal(column: Column, clock: TimeColumn) -> RawSignal:
    missing = np.isnan(column.value)
    if clock.all_valid and not missing.any():
        return RawSignal(column.name, column.unit, clock.time_s, column.value)
    keep = ~missing | column.worded
    if np.count_nonzero(keep) >= _DENSE_RATIO * keep.size:
        keep = np.ones_like(keep)
    keep = keep & clock.valid if not clock.all_valid else keep
    if keep.all():
        return RawSignal(column.name, column.unit, clock.time_s, column.value)
    return RawSignal(column.name, column.unit, clock.time_s[keep], column.value[keep])
