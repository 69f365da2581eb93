"""How a text table is laid out: delimiter, decimal sign, heading, units row, first row of data."""

from __future__ import annotations

import csv
import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from triage.logs.number_texts import is_grouped_number, number_and_unit
from triage.logs.source import Source, head_lines
from triage.logs.stamp_texts import is_rare_stamp, without_zone_name
from triage.logs.table_headings import find_heading
from triage.logs.vocabulary import word_set

_DELIMITERS: Final = (";", "\t", ",", "|")
_JUDGED_LINES: Final = 300
_SAMPLE_LINES: Final = 200
_LONGEST_STAMP: Final = 48
_NUMBER: Final = re.compile(
    r"[ \t\u00a0]*[+\-\u2212]?(\d+([.,]\d*)?|[.,]\d+)([eE][+-]?\d+)?[ \t\u00a0]*", re.ASCII
)
_STAMP: Final = re.compile(
    r"\s*(\d{4}[-/.]\d{1,2}[-/.]\d{1,2}|\d{1,2}[-/.]\d{1,2}[-/.]\d{2,4})?[ T]*"
    r"(\d{1,2}:\d{2}(:\d{2}([.,]\d+)?)?)?"
    r"\s*(Z|[+-]\d{2}:?\d{2}|[ap]\.?m\.?)?\s*",
    re.IGNORECASE,
)
_DECIMAL_COMMA: Final = re.compile(r"\s*[+-]?(?:\d+|\d{1,3}(?:\.\d{3})+),\d+([eE][+-]?\d+)?\s*")
_DECIMAL_POINT: Final = re.compile(r"\s*[+-]?\d*\.\d+([eE][+-]?\d+)?\s*")
_HEX: Final = re.compile(r"0x[0-9A-Fa-f]+|\d[0-9A-Fa-f]+|[0-9A-Fa-f]{6,}|[0-9A-Fa-f]{2}( [0-9A-Fa-f]{2})+")
_GROUPED: Final = re.compile(r"[+-]?[1-9]\d{0,2}(\.\d{3})+")
_NO_VALUE_WORDS: Final = word_set("nan na n/a sna null none inf -inf true false on off invalid -- ---")


@dataclass(frozen=True, slots=True)
class TableLayout:
    """Where in the text what stands.

    Attributes
    ----------
    delimiter, decimal : str
    names : tuple of str
        Heading cells; empty when the table has no heading.
    units : tuple of str
        Cells of the units row; empty when there is none.
    first_data_line : int
        Line of the first row of numbers, counted from 0.
    sample : tuple of tuple of str
        The first rows of data.
    remarks : tuple of str
        Lines above the data that are no row of the heading.
    """

    delimiter: str
    decimal: str
    names: tuple[str, ...]
    units: tuple[str, ...]
    first_data_line: int
    sample: tuple[tuple[str, ...], ...]
    remarks: tuple[str, ...] = ()


def sniff_table(source: Source) -> TableLayout | None:
    """Find the layout of a table from its first lines.

    Returns
    -------
    TableLayout or None
        None when the text is no table of at least two columns.
    """
    return _sniffed(source.head, source.encoding) if source.is_text else None


@lru_cache(maxsize=8)
def _sniffed(head: bytes, encoding: str) -> TableLayout | None:
    # remembered, because three readers ask in turn about the same file
    lines = head_lines(head, encoding)[:_JUDGED_LINES]
    best: TableLayout | None = None
    for delimiter in (*_DELIMITERS, " "):
        layout = _layout_with(lines, delimiter)
        if layout is not None and (best is None or _width(layout) > _width(best)):
            best = layout
    return best


def is_number_text(cell: str) -> bool:
    """Tell whether a cell is a number, with decimal point or comma."""
    return _NUMBER.fullmatch(cell) is not None


def is_stamp_text(cell: str) -> bool:
    """Tell whether a cell is a date, a time of day or both."""
    plain = cell.strip()
    # the pattern tries every way to share out blanks; what is longer than any stamp must not get that far
    return 0 < len(plain) <= _LONGEST_STAMP and any(sign in plain for sign in ":-/.") and _is_stamp(plain)


def _is_stamp(plain: str) -> bool:
    return _STAMP.fullmatch(without_zone_name(plain)) is not None or is_rare_stamp(plain)


def _width(layout: TableLayout) -> int:
    # a decimal comma must not pass for a delimiter: fewer columns whose heading fits beat more that do not
    fits = not layout.names or len(layout.names) == len(layout.sample[0])
    return len(layout.sample[0]) + (1000 if layout.names and fits else 0)


def _layout_with(lines: Sequence[str], delimiter: str) -> TableLayout | None:
    rows = _rows(lines, delimiter)
    counts = Counter(len(row) for row in rows[-_SAMPLE_LINES:] if row)
    if not counts:
        return None
    width = counts.most_common(1)[0][0]
    first = next((index for index, row in enumerate(rows) if len(row) == width and _is_data(row)), None)
    if width < 2 or first is None or not _mostly_data(rows[first:], width):
        return None
    names, units = find_heading(rows[:first], rows[first])
    remarks = tuple(line for line, row in zip(lines[:first], rows[:first], strict=True) if len(row) != width)
    sample = tuple(tuple(row) for row in rows[first : first + _SAMPLE_LINES] if len(row) == width)
    return TableLayout(delimiter, _decimal_sign(sample), names, units, first, sample, remarks)


def _rows(lines: Sequence[str], delimiter: str) -> list[list[str]]:
    """Cells of every line; an empty list for an empty line, so that indices stay line numbers."""
    rows = []
    for line in lines:
        if delimiter == " ":
            rows.append(line.split())
            continue
        try:
            rows.append(next(csv.reader([line], delimiter=delimiter), []))
        except csv.Error:
            rows.append([])
    return rows


def _is_data(row: Sequence[str]) -> bool:
    filled = [cell for cell in row if cell.strip()]
    good = sum(_is_value(cell) for cell in filled)
    return (
        good >= 1
        and 2 * good >= len(filled)
        and (is_number_text(filled[0]) or is_stamp_text(filled[0]) or good > 1)
    )


def _is_value(cell: str) -> bool:
    plain = cell.strip()
    numeric = is_number_text(cell) or is_stamp_text(cell) or _HEX.fullmatch(plain) is not None
    return (
        numeric
        or is_grouped_number(plain)
        or number_and_unit(plain)[1] != ""
        or plain.lower() in _NO_VALUE_WORDS
    )


def _mostly_data(rows: Sequence[Sequence[str]], width: int) -> bool:
    filled = [row for row in rows if row]
    return sum(len(row) == width and _is_data(row) for row in filled) >= 0.7 * len(filled)


def _decimal_sign(sample: Sequence[Sequence[str]]) -> str:
    cells = [number_and_unit(cell)[0] for row in sample for cell in row]
    commas = sum(_DECIMAL_COMMA.fullmatch(cell) is not None for cell in cells)
    points = sum(_DECIMAL_POINT.fullmatch(cell) is not None for cell in cells)
    return "," if commas > points or (points and not commas and _points_mark_thousands(sample)) else "."


def _points_mark_thousands(sample: Sequence[Sequence[str]]) -> bool:
    """Tell whether points stand at thousands: whole numbers of three digits stand in the same column."""
    found = False
    for column in zip(*sample, strict=True):
        pointed = [cell.strip() for cell in column if "." in cell]
        if not all(_GROUPED.fullmatch(cell) for cell in pointed):
            return False
        whole = [cell.strip() for cell in column if "." not in cell]
        found = found or (bool(pointed) and any(cell.isdecimal() and len(cell) == 3 for cell in whole))
    return found
