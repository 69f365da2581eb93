"""Numbers as people and spreadsheets write them: thousands marked off, hexadecimal."""

from __future__ import annotations

import re
from typing import Final

import pandas as pd

from triage.logs.unit_texts import TIME_UNIT_S, is_speed_unit, normal_unit

_SPACES: Final = r"(?<=\d)[ \u00a0\u202f'\u2019](?=\d{3})"
_THOUSANDS: Final = re.compile(r"[+-]?\d{1,3}(?:([., \u00a0\u202f'\u2019])\d{3})(?:\1\d{3})*(?:[.,]\d+)?")
_HEX: Final = r"[+-]?0[xX][0-9A-Fa-f]{1,16}"
_WITH_UNIT: Final = re.compile(r"([+-]?\d[\d.,]{0,30})\s{0,3}([^\W\d_][^\d]{0,11})")
_UNIT_AT_END: Final = r"\s{0,3}[^\W\d_][^\d]{0,11}$"
_JUDGED: Final = 5000


def is_grouped_number(cell: str) -> bool:
    """Tell whether a cell is a number whose thousands are marked off, and which has decimals or two marks.

    Examples
    --------
    >>> is_grouped_number("10.000,5"), is_grouped_number("1,234,567"), is_grouped_number("1.234")
    (True, True, False)
    """
    found = _THOUSANDS.fullmatch(cell)
    if found is None:
        return False
    mark = found[1]
    return mark not in ".," or cell.count(mark) > 1 or any(sign in cell for sign in ".," if sign != mark)


def number_and_unit(cell: str) -> tuple[str, str]:
    """Part a number from a unit of speed or time behind it.

    Examples
    --------
    >>> number_and_unit("12,5 km/h"), number_and_unit("1A0"), number_and_unit("7")
    (('12,5', 'km/h'), ('1A0', ''), ('7', ''))
    """
    found = _WITH_UNIT.fullmatch(cell.strip())
    if found is None:
        return cell, ""
    unit = found[2].strip()
    known = is_speed_unit(normal_unit(unit)) or unit.lower() in TIME_UNIT_S
    return (found[1], unit) if known else (cell, "")


def unit_in_cells(text: pd.Series) -> str:
    """Give the unit that stands behind the numbers of a column, empty when there is none or they differ."""
    first = text.dropna()
    units = {number_and_unit(str(cell))[1] for cell in first[first != ""].head(20)}
    return units.pop() if len(units) == 1 else ""


def plain_numbers(text: pd.Series, decimal: str) -> pd.Series:
    """Give number texts with a decimal point and without marks at the thousands.

    Parameters
    ----------
    text : Series of string
        Cells without blanks around them; words are left as they are.
    decimal : str
        Decimal sign of the table.

    Notes
    -----
    Points in a table with decimal commas are marks of thousands only where the column proves it: a cell holds
    both signs, or whole numbers of three digits stand beside cells in which every group has three.
    """
    if unit_in_cells(text):
        text = text.str.replace(_UNIT_AT_END, "", regex=True)
    clean = text.str.replace("\u2212", "-", regex=False).str.replace(_SPACES, "", regex=True)
    mark = "." if decimal == "," else ","
    if _marks_thousands(clean, mark, decimal):
        clean = clean.str.replace(mark, "", regex=False)
    if decimal == ",":
        clean = clean.str.replace(",", ".", regex=False)
    return _without_hex(clean)


def _marks_thousands(clean: pd.Series, mark: str, decimal: str) -> bool:
    marked = clean[clean.str.contains(mark, regex=False, na=False)]
    if marked.empty:
        return False
    group = rf"[+-]?[1-9]\d{{0,2}}(?:\{mark}\d{{3}})+"
    if not marked.str.fullmatch(rf"{group}(?:\{decimal}\d*)?", na=False).all():
        return False
    if marked.str.contains(decimal, regex=False).any() or (marked.str.count(re.escape(mark)) > 1).any():
        return True
    others = clean[~clean.index.isin(marked.index)].dropna().head(_JUDGED)
    return bool(others.str.fullmatch(r"[+-]?\d{3}").any()) and bool(
        others.str.fullmatch(r"[+-]?\d{0,3}").all()
    )


def _without_hex(clean: pd.Series) -> pd.Series:
    """Write 0x… as decimal digits; without the 0x nothing tells such digits from others."""
    coded = clean.str.fullmatch(_HEX, na=False).to_numpy(dtype=bool)
    if not coded.any():
        return clean
    done = clean.copy()
    done[coded] = [str(int(cell, 16)) for cell in clean[coded]]
    return done
