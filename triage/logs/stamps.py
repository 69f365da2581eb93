"""Time as tables write it: seconds, milliseconds, epoch counts, calendar stamps, times of day."""

from __future__ import annotations

import itertools
import re
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Final

import numpy as np
import pandas as pd

from triage.errors import LogReadError
from triage.logs.names import bracket_unit, read_name
from triage.logs.number_texts import plain_numbers
from triage.logs.row_times import is_distance, names_distance, sum_of_distances
from triage.logs.stamp_texts import plain_stamps
from triage.logs.table_layout import TableLayout, is_number_text, is_stamp_text
from triage.logs.time_column import TimeColumn
from triage.logs.unit_texts import TIME_UNIT_S, normal_unit
from triage.logs.vocabulary import word_set
from triage.speed_log import FloatArray, Notice
from triage.texts import Text

_TIME_WORDS: Final = word_set(
    "t time times zeit zeitstempel timestamp timestamps stamp ts datetime date datum uhrzeit elapsed "
    "clock tiempo temps tempo tijd czas epoch seconds sec secs"
)
_SUFFIX: Final = re.compile(r"(?:^|[_\s.])(s|sec|secs|ms|msec|us|usec|µs|ns|nsec|min)$", re.IGNORECASE)
_EPOCH_RANGES: Final = ((1.0, 4e8, 4.2e9), (1e-3, 4e11, 4.2e12), (1e-6, 4e14, 4.2e15), (1e-9, 4e17, 4.2e18))
"""Seconds in one count, and the counts that stand for 1982 to 2103."""

_FRACTION_NAMES: Final = {
    1e-3: word_set("ms msec msecs millis milli millisecond milliseconds millisekunden"),
    1e-6: word_set("us usec usecs micros microsecond microseconds mikrosekunden"),
    1e-9: word_set("ns nsec nsecs nanos nanosecond nanoseconds nanosec nanosekunden"),
}
_BEYOND_ALL: Final = 1e30
"""No clock counts so far in any unit; the sum of such numbers would overflow."""

_SERIAL_DAYS: Final = (20_000.0, 80_000.0)
"""Days since the last of 1899, as spreadsheets count them, for 1954 to 2119."""

_SPREADSHEET_ZERO: Final = datetime(1899, 12, 30)  # noqa: DTZ001 - spreadsheets hold local time
_ENOUGH_COUNTS: Final = 10_000
_DAY_S: Final = 86400.0
_STAMP_FORMATS: Final = (
    "ISO8601", "%d.%m.%Y %H:%M:%S.%f", "%d.%m.%Y %H:%M:%S", "%d.%m.%y %H:%M:%S.%f", "%d.%m.%y %H:%M:%S",
    "%m/%d/%Y %H:%M:%S.%f", "%m/%d/%Y %H:%M:%S", "%m/%d/%Y %I:%M:%S.%f %p", "%m/%d/%Y %I:%M:%S %p",
    "%d-%b-%Y %H:%M:%S.%f", "%d-%b-%Y %H:%M:%S", "%d %b %Y %H:%M:%S.%f", "%d %b %Y %H:%M:%S",
    "%d/%m/%Y %I:%M:%S.%f %p", "%d/%m/%Y %I:%M:%S %p", "%Y-%m-%d %I:%M:%S.%f %p", "%Y-%m-%d %I:%M:%S %p",
    "%d-%m-%Y %H:%M:%S.%f", "%d-%m-%Y %H:%M:%S", "%Y.%m.%d %H:%M:%S.%f", "%Y.%m.%d %H:%M:%S",
    "%d/%m/%Y %H:%M:%S.%f", "%d/%m/%Y %H:%M:%S", "%Y/%m/%d %H:%M:%S.%f", "%Y/%m/%d %H:%M:%S",
)  # fmt: skip


def find_time_column(layout: TableLayout, frame: pd.DataFrame, file: str) -> TimeColumn:
    """Find the column of time and read it in seconds.

    Raises
    ------
    LogReadError
        When no column is one, naming the columns there are.
    """
    distances = [index for index, name in enumerate(layout.names) if names_distance(name)]
    named = [index for index, name in enumerate(layout.names) if names_time(name) and index not in distances]
    coarse: list[TimeColumn] = []
    for index in named:
        column = _read_named(layout, frame, index, file)
        if column is not None and not column.is_coarse:
            return column.started_by(coarse[0]) if coarse else column
        coarse += [] if column is None else [column]
    if coarse:
        return coarse[0]
    for index in distances:
        column = _read_distances(layout, frame, index, file)
        if column is not None:
            return column
    guessed = None if named else _guess_time(layout, frame, file)
    if guessed is not None:
        return guessed
    raise LogReadError(
        Text("no column of time among {names}", names=", ".join(layout.names[:12])),
        file=file,
        place=Text("heading"),
        hint="Name the column of time 'time_s' (or 'timestamp_ms' and so on).",
    )


def _guess_time(layout: TableLayout, frame: pd.DataFrame, file: str) -> TimeColumn | None:
    """Take a column for the time that has a unit of time, or is the first and has no name, and rises."""
    for index, name in enumerate(layout.names):
        unit = _unit_of(layout, index)
        fits = unit in TIME_UNIT_S and read_name(name).corner is None
        if (fits or (index == 0 and not name.strip())) and _rises(frame[index]):
            column = _read_numbers(frame[index].to_numpy(dtype=np.float64), unit, index, file)
            which = (
                Text("the column {name}", name=name)
                if name.strip()
                else Text("the first column has no name; it")
            )
            notice = Notice(
                "mapping-guessed",
                Text("{file}: {which} rises steadily and was taken for the time.", file=file, which=which),
            )
            return replace(column, notices=(*column.notices, notice))
    return None


def find_further_clocks(
    layout: TableLayout, frame: pd.DataFrame, first: TimeColumn, file: str
) -> list[TimeColumn]:
    """Read all columns of time, the first of which is known."""
    clocks = [first]
    for index, name in enumerate(layout.names):
        if index > first.indices[-1] and names_time(name) and index not in clocks[-1].indices:
            column = _read_named(layout, frame, index, file)
            clocks += [] if column is None else [column]
    return clocks


def read_epoch(count: FloatArray, file: str, unit: str = "") -> TimeColumn:
    """Read a plain array of time counts, such as the first column of a frame table."""
    return _read_numbers(count, unit, 0, file)


def read_stamps(text: pd.Series) -> tuple[FloatArray, datetime | None] | None:
    """Read calendar stamps or times of day.

    Returns
    -------
    (float64[N], datetime or None) or None
        Seconds since the first stamp, NaN for unreadable cells; None when the cells are no stamps.
    """
    clean = text.astype("string").str.strip()
    first = clean[clean.notna() & (clean != "")].head(5)
    if first.empty or not all(is_stamp_text(str(cell)) for cell in first):
        return None
    clean = plain_stamps(clean)
    first = clean[first.index]
    if first.str.fullmatch(r"\d{1,2}:\d{2}(?::\d{2}(?:\.\d+)?)? [AaPp]M").all():
        return _half_day_clock(clean), None
    if first.str.fullmatch(r"\d{1,3}:\d{2}(:\d{2}(\.\d+)?)?").all():
        return _time_of_day(clean), None
    return _calendar(clean, first)


def names_time(name: str) -> bool:
    """Tell whether a column name stands for time."""
    plain = _without_unit(name).strip().lower()
    words = re.findall(r"[a-zäöü]+", re.sub(r"(?<=[a-z])(?=[A-Z])", " ", _without_unit(name)).lower())
    return plain in _TIME_WORDS or (bool(words) and (words[0] in _TIME_WORDS or words[-1] in _TIME_WORDS or
                                                     ("time" in words and len(words) <= 3)))  # fmt: skip


def _without_unit(name: str) -> str:
    text = re.sub(r"[\[(\{][^\])}]*[\])}]\s*$", "", name)
    return _SUFFIX.sub("", text) or text


def _unit_of(layout: TableLayout, index: int) -> str:
    name = layout.names[index]
    text = (layout.units[index] if layout.units else "") or bracket_unit(name)
    plain = text.strip(" []()").lower()
    if plain in TIME_UNIT_S:
        return plain
    if normal_unit(plain) in TIME_UNIT_S:
        # 'ms' means metres per second elsewhere
        return "ms" if plain == "ms" else normal_unit(plain)
    match = _SUFFIX.search(name)
    if match is None or match.group(0) == name:
        return ""
    found = match.group(1).lower().replace("µ", "u")
    return {"sec": "s", "secs": "s", "msec": "ms", "usec": "us", "nsec": "ns"}.get(found, found)


def _read_named(layout: TableLayout, frame: pd.DataFrame, index: int, file: str) -> TimeColumn | None:
    if not pd.api.types.is_numeric_dtype(frame[index].dtype):
        stamps = _read_stamp_columns(layout, frame, index)
        if stamps is not None:
            return stamps
    count = _counts(layout, frame, index)
    if count is None:
        return None
    unit = _unit_of(layout, index)
    fraction = _fraction_beside(layout, frame, index + 1, count) if unit in ("", "s") else None
    if fraction is None:
        return _read_numbers(count, unit, index, file)
    column = _read_numbers(count + fraction, "s", index, file)
    return replace(column, indices=(index, index + 1))


def _read_distances(layout: TableLayout, frame: pd.DataFrame, index: int, file: str) -> TimeColumn | None:
    """Read a column of distances, or one that is called so and is a clock since the first row."""
    count = _counts(layout, frame, index)
    if count is None:
        return None
    if not is_distance(count):
        return _read_numbers(count, _unit_of(layout, index), index, file)
    unit = _unit_of(layout, index)
    total, notice = sum_of_distances(count, layout.names[index], file)
    column = _read_numbers(total, unit, index, file)
    return replace(column, notices=(*column.notices, notice))


def _counts(layout: TableLayout, frame: pd.DataFrame, index: int) -> FloatArray | None:
    """Give the numbers of a column, NaN where there is none; None when they are few."""
    series = frame[index]
    if not pd.api.types.is_numeric_dtype(series.dtype):
        series = pd.to_numeric(
            plain_numbers(series.astype("string").str.strip(), layout.decimal), errors="coerce"
        )
    count = series.to_numpy(dtype=np.float64, na_value=np.nan)
    finite = np.isfinite(count)
    if np.count_nonzero(finite) < 0.5 * count.size or not finite.any():
        return None
    return count if finite.all() else np.where(finite, count, np.nan)


def _read_stamp_columns(layout: TableLayout, frame: pd.DataFrame, index: int) -> TimeColumn | None:
    """Read a column of stamps; a column of dates is joined with a column of times beside it."""
    text = frame[index].astype("string")
    indices: tuple[int, ...] = (index,)
    beside = index + 1
    if beside < frame.shape[1] and not _has_clock(text) and _has_clock(frame[beside].astype("string")):
        text = text.str.strip() + " " + frame[beside].astype("string").str.strip()
        indices = (index, beside)
    read = read_stamps(text)
    if read is None:
        return None
    fraction = _fraction_beside(layout, frame, indices[-1] + 1, read[0])
    if fraction is None:
        return TimeColumn(indices, read[0], read[1])
    # zero is the first stamp without its fraction, and so is the start
    return TimeColumn((*indices, indices[-1] + 1), read[0] + fraction, read[1])


def _fraction_beside(
    layout: TableLayout, frame: pd.DataFrame, index: int, time_s: FloatArray
) -> FloatArray | None:
    """Read a column of milliseconds or finer that stands beside whole seconds."""
    if index >= frame.shape[1]:
        return None
    scale_s = _fraction_scale(layout.names[index])
    if not scale_s:
        return None
    count = pd.to_numeric(frame[index], errors="coerce").to_numpy(dtype=np.float64, na_value=np.nan)
    known = np.isfinite(count) & np.isfinite(time_s)
    whole = bool((time_s[known] % 1.0 == 0).all()) and bool(known.any())
    inside = bool(((count[known] >= 0) & (count[known] * scale_s < 1.0)).all())
    return count * scale_s if whole and inside else None


def _fraction_scale(name: str) -> float:
    """Seconds in one count of a column of fractions by its name, 0 for another column."""
    word = re.split(r"[^a-z]+", name.strip(" []().").lower())[-1]
    return next((scale_s for scale_s, words in _FRACTION_NAMES.items() if word in words), 0.0)


def _has_clock(text: pd.Series) -> bool:
    first = text.dropna().head(5)
    return bool(len(first)) and bool(first.str.contains(r"\d:\d{2}").all())


def _half_day_clock(clean: pd.Series) -> FloatArray:
    """Read times of day with a.m. and p.m.; 12 a.m. is midnight."""
    hour, rest = clean.str.extract(r"^(\d{1,2})")[0], clean.str.replace(r"^\d{1,2}| [AaPp]M$", "", regex=True)
    noon = 12 * clean.str.contains("p", case=False, regex=False, na=False).astype("int64")
    hours = pd.to_numeric(hour, errors="coerce").fillna(0).astype("int64") % 12 + noon
    return _time_of_day(hours.astype("string") + rest)


def _time_of_day(clean: pd.Series) -> FloatArray:
    padded = clean.where(clean.str.count(":") == 2, clean + ":00")
    seconds = pd.to_timedelta(padded, errors="coerce").dt.total_seconds()
    time_s: FloatArray = np.array(seconds, dtype=np.float64)
    known = np.flatnonzero(~np.isnan(time_s))
    # a fall of more than half a day is midnight
    falls = np.diff(time_s[known], prepend=time_s[known[:1]]) < -_DAY_S / 2
    time_s[known] += _DAY_S * np.cumsum(falls)
    return time_s


def _calendar(clean: pd.Series, first: pd.Series) -> tuple[FloatArray, datetime | None] | None:
    for form in _STAMP_FORMATS:
        if pd.to_datetime(first, format=form, errors="coerce").notna().all():
            stamps = pd.to_datetime(clean, format=form, errors="coerce")
            break
    else:
        return None
    zero = stamps.dropna().iloc[0]
    time_s: FloatArray = np.array((stamps - zero).dt.total_seconds(), dtype=np.float64)
    return time_s, zero.to_pydatetime(warn=False)


def _rises(series: pd.Series) -> bool:
    if not pd.api.types.is_numeric_dtype(series.dtype) or len(series) < 3:
        return False
    number = series.to_numpy(dtype=np.float64, na_value=np.nan)
    if not np.isfinite(number).all():
        return False
    step = np.diff(number)
    # steps of exactly one are a row count, not a time
    return bool((step > 0).all()) and not bool((step == 1).all())


def _read_numbers(count: FloatArray, unit: str, index: int, file: str) -> TimeColumn:
    sane = np.abs(count) < _BEYOND_ALL
    count = count if sane.all() else np.where(sane, count, np.nan)
    known = count if sane.all() else count[sane]
    typical = float(np.median(known[:: max(1, known.size // _ENOUGH_COUNTS)])) if known.size else 0.0
    for scale_s, low, high in _EPOCH_RANGES:
        if (
            low < typical < high
            and (unit in ("", "s") or TIME_UNIT_S[unit] == scale_s)
            and _epoch_step_fits(known, scale_s)
        ):
            zero = float(known[0])
            start = _instant(zero * scale_s)
            return TimeColumn((index,), (count - zero) * scale_s, start)
    if unit == "" and _are_days(known, typical):
        zero = float(known[0])
        return TimeColumn((index,), (count - zero) * _DAY_S, _SPREADSHEET_ZERO + timedelta(days=zero))
    if unit:
        return TimeColumn((index,), count * TIME_UNIT_S[unit], None)
    guess, notices = _guess_unit(known, file)
    return TimeColumn((index,), count * TIME_UNIT_S[guess], None, notices)


def _are_days(known: FloatArray, typical: float) -> bool:
    """Tell spreadsheet days by rows that would be less than 0.1 ms apart if these were seconds."""
    step = np.abs(np.diff(known[:2000]))
    step = step[step > 0]
    return _SERIAL_DAYS[0] < typical < _SERIAL_DAYS[1] and step.size > 0 and float(np.median(step)) < 1e-4


def _instant(epoch_s: float) -> datetime | None:
    try:
        return datetime.fromtimestamp(0, UTC) + timedelta(seconds=epoch_s)
    except OverflowError:
        return None


def _epoch_step_fits(known: FloatArray, scale_s: float) -> bool:
    step = np.abs(np.diff(known[:2000]))
    step = step[step > 0]
    return not step.size or 1e-6 < float(np.median(step)) * scale_s <= 5.0


def _guess_unit(known: FloatArray, file: str) -> tuple[str, tuple[Notice, ...]]:
    """Judge seconds against milliseconds and finer from the usual distance of rows (1 to 1000 Hz)."""
    step = np.diff(known[:5000])
    step = step[step > 0]
    usual = float(np.median(step)) if step.size else 0.0
    if usual <= 2.0 and not (usual >= 1.0 and bool(np.all(known[:100] % 1 == 0)) and known.size > 200):
        return "s", ()
    guess = "ms" if usual < 2e3 else "us" if usual < 2e6 else "ns"
    text = Text(
        "{file}: the time has no unit; rows {usual} apart were taken for {guess}.",
        file=file,
        usual=f"{usual:g}",
        guess=guess,
    )
    return guess, (Notice("unit-assumed", text),)


def looks_like_time(cells: list[str]) -> bool:
    """Tell whether the cells of a column can be times: numbers or stamps that do not fall."""
    if all(is_number_text(cell) for cell in cells):
        value = [float(cell.replace(",", ".")) for cell in cells]
        return all(b >= a for a, b in itertools.pairwise(value)) and value[0] != value[-1]
    return all(is_stamp_text(cell) for cell in cells)
