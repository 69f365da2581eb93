"""Tables with one row for every sample: time, name of the signal, value."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

import numpy as np
import pandas as pd

from triage.logs.names import bracket_unit, read_name
from triage.logs.number_texts import plain_numbers
from triage.logs.recording import RawSignal
from triage.logs.roles import sense_signal
from triage.logs.vocabulary import word_set
from triage.speed_log import FloatArray

_VALUE_WORDS: Final = word_set("value val wert valeur valor messwert data reading physical phys speed v")
_UNIT_WORDS: Final = word_set("unit units einheit unité unite unidad")
_NAMES_MAX: Final = 5000
_WHEELS_MIN: Final = 2


def long_signals(
    frame: pd.DataFrame, names: Sequence[str], time_s: FloatArray, *, used: Sequence[int], decimal: str
) -> tuple[RawSignal, ...] | None:
    """Take the signals of a long table apart.

    Parameters
    ----------
    frame : DataFrame
        Cells as they were parsed.
    names : sequence of str
        Headings.
    time_s : float64[N]
    used : sequence of int
        Columns of time.
    decimal : str
        Decimal sign of the table.

    Returns
    -------
    tuple of RawSignal or None
        One for each name; None when the table is none of this kind: one column names signals, among
        them wheels, and one column holds their values.
    """
    which = _column_of_names(frame, used)
    if which is None:
        return None
    value = _column_of_values(frame, names, {*used, which}, decimal)
    if value is None:
        return None
    unit = next(
        (i for i, name in enumerate(names) if name.strip().lower() in _UNIT_WORDS and i not in used), None
    )
    number = _numbers(frame[value], decimal).to_numpy(dtype=np.float64, na_value=np.nan)
    number = np.where(np.isfinite(number), number, np.nan)
    code, labels = pd.factorize(frame[which].astype("string").str.strip())
    units = (
        None if unit is None else frame[unit].astype("string").str.strip().fillna("").to_numpy(dtype=object)
    )
    found = []
    for index, label in enumerate(labels):
        rows = np.flatnonzero((code == index) & np.isfinite(time_s))
        if rows.size:
            told = str(units[rows[0]]) if units is not None else _unit_of_heading(names[value])
            found.append(RawSignal(str(label), told, time_s[rows], number[rows]))
    return tuple(found)


def _column_of_names(frame: pd.DataFrame, used: Sequence[int]) -> int | None:
    for index in range(frame.shape[1]):
        if index in used or pd.api.types.is_numeric_dtype(frame[index].dtype):
            continue
        text = frame[index].astype("string").str.strip()
        labels = text.dropna().unique()
        if not 1 < len(labels) <= min(_NAMES_MAX, max(2, len(text) // 2)):
            continue
        corners = {
            sense.reading.corner
            for label in labels
            if (sense := sense_signal(str(label), "")).role == "wheel"
        }
        if len(corners) >= _WHEELS_MIN:
            return index
    return None


def _column_of_values(frame: pd.DataFrame, names: Sequence[str], used: set[int], decimal: str) -> int | None:
    numeric = [
        index
        for index in range(frame.shape[1])
        if index not in used and _numbers(frame[index], decimal).notna().mean() > 0.5
    ]
    if len(numeric) == 1:
        return numeric[0]
    named = [index for index in numeric if _first_word(names[index]) in _VALUE_WORDS]
    return named[0] if len(named) == 1 else None


def _numbers(column: pd.Series, decimal: str) -> pd.Series:
    if pd.api.types.is_numeric_dtype(column.dtype):
        return column
    return pd.to_numeric(plain_numbers(column.astype("string").str.strip(), decimal), errors="coerce")


def _first_word(name: str) -> str:
    return name.strip().lower().replace("_", " ").partition(" ")[0].partition("[")[0].partition("(")[0]


def _unit_of_heading(name: str) -> str:
    return bracket_unit(name) or read_name(name).unit
