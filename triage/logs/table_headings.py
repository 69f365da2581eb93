"""Names and units from the rows above the numbers of a table: one row, several, or none."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from triage.logs.unit_texts import is_unit_text
from triage.logs.vocabulary import word_set

_LONGEST_NAME: Final = 300
_TYPE_WORDS: Final = word_set(
    "float double single real int integer long short uint8 uint16 uint32 uint64 int8 int16 int32 int64 "
    "float32 float64 string str text bool boolean date datetime time number numeric analog digital"
)

Row = Sequence[str]


def find_heading(above: Sequence[Row], data: Row) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Find names and units in the rows above the data.

    Parameters
    ----------
    above : sequence of sequence of str
        Cells of all lines above; those as wide as the data can belong to the heading.
    data : sequence of str
        First row of data.

    Returns
    -------
    (tuple of str, tuple of str)
        As many names and units as the data have cells; each empty where the table has none.
    """
    rows = [row for row in (_filled_up(row, data) for row in above) if _can_name(row, data)]
    while len(rows) > 1 and _are_types(rows[-1]):
        rows = rows[:-1]
    if not rows:
        return (), ()
    number = next((number for number in range(len(rows) - 1, 0, -1) if _are_units(rows[number])), None)
    if number is None:
        return _joined(rows), ()
    units = tuple(cell.strip().rstrip(".") for cell in rows[number])
    # What stands below the units is a remark on each column, unless nothing above them names the columns.
    named = rows[:number] if len(_distinct(rows[number - 1])) > 1 else rows[number + 1 :]
    return _joined(named or rows[:number]), units


def _can_name(row: Row, data: Row) -> bool:
    return len(row) == len(data) and any(cell.strip() for cell in row)


def _filled_up(row: Row, data: Row) -> Row:
    """Give a heading its last, nameless cells where only the rows end in delimiters."""
    missing = len(data) - len(row)
    if missing < 1 or len(row) < 2 or any(cell.strip() for cell in data[len(row) :]):
        return row
    return [*row, *[""] * missing]


def _are_units(row: Row) -> bool:
    return all(is_unit_text(cell.strip().strip("[]()")) for cell in row)


def _are_types(row: Row) -> bool:
    """Tell whether a row of a heading says of what type the columns are, or rules a line."""
    filled = [cell.strip().lower() for cell in row if cell.strip()]
    return all(cell in _TYPE_WORDS or not cell.strip("-=_") for cell in filled)


def _distinct(row: Row) -> set[str]:
    return {cell for cell in _cleaned(row) if cell}


def _joined(rows: Sequence[Row]) -> tuple[str, ...]:
    """Give the last row of a heading, with the row above where the last alone does not name the columns."""
    last = _cleaned(rows[-1])
    if len(rows) < 2:
        return last
    above = _cleaned(rows[-2])
    filled = [cell for cell in last if cell]
    if len(set(filled)) <= len(filled) // 2:
        return tuple(f"{group} {cell}".strip() for group, cell in zip(above, last, strict=True))
    if not _names_by_halves(above, last):
        return last
    return tuple(
        f"{group} [{cell}]" if is_unit_text(cell) and cell else f"{group} {cell}".strip()
        for group, cell in zip(above, last, strict=True)
    )


def _names_by_halves(above: Row, last: Row) -> bool:
    """Tell whether a row of groups (time, speeds) stands above one of a unit here and of places there."""
    units = [bool(cell) and is_unit_text(cell) for cell in last]
    return all(above) and any(units) and not all(units)


def _cleaned(row: Row) -> tuple[str, ...]:
    return tuple(cell.strip().lstrip("#").strip().strip('"')[:_LONGEST_NAME] for cell in row)
