"""Long tables of nothing but plain numbers, parsed in several threads and little memory."""

from __future__ import annotations

from io import BytesIO
from typing import Any, Final

import numpy as np
import pandas as pd

from triage.side_by_side import map_side_by_side
from triage.speed_log import FloatArray

LEAST_BYTES: Final = 1 << 20
"""Shorter tables are parsed in no time either way."""

_TOO_LARGE: Final = 2.0**63


def parse_plain_rows(
    rows: BytesIO, *, columns: int, delimiter: str, decimal: str, least_bytes: int = LEAST_BYTES
) -> pd.DataFrame | None:
    """Parse rows of plain numbers, and step aside where there is anything else among them.

    Parameters
    ----------
    rows : BytesIO
        A text that extends ASCII, to be read from where it stands; it is left standing there.
    columns : int
    delimiter, decimal : str
    least_bytes : int
        A text of less than this is left alone.

    Returns
    -------
    DataFrame or None
        Columns of float64, named by their place, with the numbers of ``pandas.read_csv`` (to the last bit
        from pandas 3.1 on). None where the text is short, or where that may take anything in it otherwise:
        quotes, words, rows with another number of cells, infinities, numbers beyond 64 bits, zeros below
        zero.

    Notes
    -----
    Both parsers round correctly, pandas since 3.1. What pandas asks the system for while it parses is six
    times as much as the text, which costs as much as the parsing in a process that has not had it before.
    """
    text, begin = rows.getvalue(), rows.tell()
    if len(text) - begin < least_bytes or delimiter == " ":
        return None
    cells = _parsed(memoryview(text)[begin:], columns, delimiter, decimal)
    if cells is None or (cells[0].null_count and text.find(b"\r", begin) >= 0):
        return None  # behind an empty line that ends in a return, pandas loses an empty first cell
    values = [value for value in map_side_by_side(_plain_numbers, cells) if value is not None]
    return pd.DataFrame(dict(enumerate(values)), copy=False) if len(values) == columns else None


def _parsed(text: memoryview, columns: int, delimiter: str, decimal: str) -> list[Any] | None:
    """Give the columns of a text as Arrow has them, null for an empty cell; None where it finds no number."""
    import pyarrow as pa  # noqa: PLC0415 - slow to load, and only long tables need it
    from pyarrow import csv  # noqa: PLC0415

    names = [str(place) for place in range(columns)]
    try:
        table = csv.read_csv(
            pa.BufferReader(pa.py_buffer(text)),
            csv.ReadOptions(column_names=names),
            csv.ParseOptions(delimiter=delimiter, quote_char=False),
            csv.ConvertOptions(
                column_types=dict.fromkeys(names, pa.float64()), null_values=[""], decimal_point=decimal
            ),
        )
    except pa.ArrowInvalid:
        return None
    return list(table.columns)


def _plain_numbers(column: Any) -> FloatArray | None:
    """Give the numbers of a column, NaN for an empty cell; None where pandas may take one otherwise.

    To pandas a word for infinity or for no number is a word, whole numbers beyond 64 bits can be texts, and
    in a column of whole numbers -0 is the same as 0.
    """
    value: FloatArray = column.to_numpy()
    empty = int(np.count_nonzero(np.isnan(value)))
    within = int(np.count_nonzero(np.abs(value) < _TOO_LARGE))
    below = int(np.count_nonzero(np.signbit(value)))
    plain = empty == column.null_count and empty + within == value.size
    return value if plain and below == np.count_nonzero(value < 0.0) else None
