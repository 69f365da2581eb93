"""Frames as a table: columns for time, bus, identifier, length and data, with a heading or without."""

from __future__ import annotations

import base64
import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Final

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from triage.errors import DamagedLog
from triage.logs.frames import (
    BROKEN_DATA,
    ERROR_FRAMES,
    EXTENDED_FLAG,
    REMOTE_FRAMES,
    UNREAD_ROWS,
    FrameCollector,
    Frames,
    report_bytes,
)
from triage.logs.source import Source
from triage.logs.stamps import looks_like_time, names_time, read_epoch, read_stamps
from triage.logs.table_layout import TableLayout, is_number_text, is_stamp_text, sniff_table
from triage.logs.tables import load_columns_as_text
from triage.logs.vocabulary import word_set
from triage.progress import Progress
from triage.reasons import reason_of
from triage.speed_log import FloatArray
from triage.texts import Text

_TIME: Final = word_set(
    "time timestamp timestamps t ts zeit stamp timeoffset offset abstime datetime temps tiempo tempo"
)
_ID: Final = word_set(
    "id canid messageid msgid arbitrationid arbid identifier address addr frameid pid idhex hexid "
    "canidhex can-id"
)
_BUS: Final = word_set("bus channel chn ch iface interface can src source kanal port canbus network canal")
_LENGTH: Final = word_set(
    "length len dlc messagelength datalength datalen size bytes bytecount msglen laenge lnge datenlaenge "
    "datenlnge longueur longitud"
)
_DATA: Final = word_set(
    "data message payload databytes bytes hex datahex rawdata msg content candata daten nutzdaten datos "
    "donnees donnes"
)
_EXTENDED: Final = word_set("extended ext ide isextended isextendedid extid eid format")
_REMOTE: Final = word_set("remote rtr isremote isremoteframe")
_ERROR: Final = word_set("error iserror iserrorframe err")
_BYTE: Final = re.compile(r"^(?:d|b|byte|data|databyte|db|daten)[ _\[]?(\d{1,2})\]?$")
_HEX_ID: Final = re.compile(r"(0x)?[0-9A-Fa-f]{1,8}[hx]?")
_MOST_COLUMNS: Final = 100
_SHOWN_DATA: Final = 40
_LIST: Final = re.compile(r"[\[(]\s{0,9}\d{1,3}(?:\s{0,9},\s{0,9}\d{1,3}){0,63}\s{0,9}[\])]")
"""Decimal numbers between brackets and commas."""

_HEX_SIGN: Final = re.compile(r"^(?:\$|#|16#|h)(?=[0-9a-f])")
"""Other signs before a hexadecimal number."""

_TRUE: Final = word_set("true 1 yes x ext extended e 29 ide")


@dataclass(frozen=True, slots=True)
class FrameColumns:
    """Which column of a frame table holds what; -1 where there is none."""

    time: int
    identifier: int
    data: tuple[int, ...]
    bus: int = -1
    length: int = -1
    extended: int = -1
    remote: int = -1
    error: int = -1


def probe_frame_table(source: Source) -> float:
    """Give the confidence that the table holds frames, not speeds."""
    layout = sniff_table(source)
    return 0.8 if layout is not None and find_frame_columns(layout) is not None else 0.0


def read_frame_table(source: Source, wanted: frozenset[int], progress: Progress) -> Frames:
    """Read a table of frames.

    Raises
    ------
    DamagedLog
        When the table cannot be read, or no row is a frame.
    """
    layout = sniff_table(source)
    columns = None if layout is None else find_frame_columns(layout)
    if layout is None or columns is None:
        raise DamagedLog(
            "no columns of frames were found", file=source.name, hint="Export it with a heading."
        )
    report_bytes(progress, 1, 10)
    try:
        cells = load_columns_as_text(source, layout)
    except (pd.errors.ParserError, pd.errors.EmptyDataError, ValueError, OverflowError) as error:
        raise DamagedLog(
            Text("the table cannot be read: {reason}", reason=reason_of(error)),
            file=source.name,
            hint="Export it again.",
        ) from None
    report_bytes(progress, 5, 10)
    return _frames(source, cells, columns, wanted)


def find_frame_columns(layout: TableLayout) -> FrameColumns | None:
    """Find the columns of a frame table by their names, or without a heading by their cells."""
    return _by_names(layout.names) if layout.names else _by_cells(layout.sample)


def _by_names(names: Sequence[str]) -> FrameColumns | None:
    plain = [re.sub(r"\([^)]*\)|[^a-z0-9\[\]-]", "", name.lower()) for name in names]
    identifier = _column(plain, _ID)
    numbered = [(int(found.group(1)), index) for index, name in enumerate(names)
                if (found := _BYTE.match(name.strip().lower()))]  # fmt: skip
    data = tuple(index for _, index in sorted(numbered)) if len(numbered) > 1 else (_column(plain, _DATA),)
    time = next((index for index, name in enumerate(names) if names_time(name)), _column(plain, _TIME))
    if min(identifier, time, *data) < 0:
        return None
    length = next((i for i, name in enumerate(plain) if name in _LENGTH and i not in data), -1)
    bus, extended = _column(plain, _BUS), _column(plain, _EXTENDED)
    return FrameColumns(
        time, identifier, data, bus, length, extended, _column(plain, _REMOTE), _column(plain, _ERROR)
    )


def _column(names: Sequence[str], words: frozenset[str]) -> int:
    return next((index for index, name in enumerate(names) if name in words), -1)


def _by_cells(sample: Sequence[Sequence[str]]) -> FrameColumns | None:
    """Find time, identifier and data by what the cells look like; the length must agree with the data."""
    columns = list(zip(*sample, strict=True))
    if len(columns) > _MOST_COLUMNS:
        return None  # pairs of columns are tried below
    time = next((i for i, cells in enumerate(columns) if looks_like_time(list(cells))), None)
    lengths = [
        i
        for i, cells in enumerate(columns)
        if all(c.strip().isascii() and c.strip().isdigit() and len(c) <= 9 and int(c) <= 64 for c in cells)
    ]
    if time is None:
        return None
    for length in lengths:
        for data, cells in enumerate(columns):
            if data in (length, time) or not _fits_length(cells, columns[length]):
                continue
            rest = [i for i in range(len(columns)) if i not in (time, length, data)]
            ids = [i for i in rest if all(_HEX_ID.fullmatch(c.strip()) for c in columns[i])]
            if ids:
                best = max(ids, key=lambda i: (len(set(columns[i])), len(columns[i][0])))
                bus = next((i for i in rest if i != best and len(set(columns[i])) <= 4), -1)
                return FrameColumns(time, best, (data,), bus, length)
    return None


def _fits_length(cells: Sequence[str], lengths: Sequence[str]) -> bool:
    good = 0
    for cell, length in zip(cells, lengths, strict=True):
        text, count = cell.replace(" ", ""), int(length)
        if not re.fullmatch(r"[0-9A-Fa-f]*", text) or count == 0:
            return False
        good += len(text) == 2 * count or (len(text) == 8 * count and set(text) <= {"0", "1"})
    return good >= 0.9 * len(cells)


def _frames(source: Source, cells: pd.DataFrame, columns: FrameColumns, wanted: frozenset[int]) -> Frames:
    collector = FrameCollector(wanted)
    data_rows = ~(_flags(cells, columns.remote) | _flags(cells, columns.error))
    collector.odd.update(_left_out(cells, columns))
    time_s, start = _times(cells[columns.time], source)
    key, readable = _keys(cells, columns, wanted)
    good = data_rows & readable & ~np.isnan(time_s)
    if not good.any():
        raise DamagedLog("no row of the table is a readable frame", file=source.name, hint="Export it again.")
    unread = int(np.count_nonzero(data_rows & ~good))
    if unread:
        collector.odd[UNREAD_ROWS] += unread
    numbers, counts = np.unique(key[good], return_counts=True)
    collector.seen = Counter(dict(zip(numbers.tolist(), counts.tolist(), strict=True)))
    kept = np.flatnonzero(good & np.isin(key, np.array(sorted(wanted), dtype=np.uint32)))
    frames = collector.frames(Text("CAN frames ({kind})", kind=Text("table")), start)
    filled = _filled(frames, cells.iloc[kept], columns, (time_s[kept], key[kept]))
    if kept.size and not filled.time_s.size:
        example = str(cells.iloc[kept[0], columns.data[0]])[:_SHOWN_DATA]
        raise DamagedLog(
            Text("the data of no frame can be read, the first of which is {example}", example=f"{example!r}"),
            file=source.name,
            hint="Export the data as hexadecimal bytes.",
        )
    return filled


def _filled(
    frames: Frames, cells: pd.DataFrame, columns: FrameColumns, known: tuple[FloatArray, NDArray[np.uint32]]
) -> Frames:
    payload, length, whole = payloads(cells, columns)
    buses = (
        cells[columns.bus].str.strip()
        if columns.bus >= 0
        else pd.Series([""] * len(cells), index=cells.index)
    )
    index, names = pd.factorize(buses)
    odd = dict(frames.odd)
    if not whole.all():
        odd[BROKEN_DATA] = int(np.count_nonzero(~whole))
    return Frames(
        format=frames.format,
        start=frames.start,
        time_s=known[0][whole],
        key=known[1][whole],
        bus=tuple(str(name) for name in names),
        bus_index=index.astype(np.int16)[whole],
        payload=payload[whole],
        length=length[whole],
        seen=frames.seen,
        odd=odd,
    )


def _flags(cells: pd.DataFrame, column: int) -> NDArray[np.bool_]:
    if column < 0:
        return np.zeros(len(cells), dtype=bool)
    return cells[column].str.strip().str.lower().isin(_TRUE).to_numpy(dtype=bool)


def _left_out(cells: pd.DataFrame, columns: FrameColumns) -> dict[str, int]:
    error = _flags(cells, columns.error)
    counts = {
        ERROR_FRAMES: int(np.count_nonzero(error)),
        REMOTE_FRAMES: int(np.count_nonzero(_flags(cells, columns.remote) & ~error)),
    }
    return {name: count for name, count in counts.items() if count}


def _times(text: pd.Series, source: Source) -> tuple[FloatArray, datetime | None]:
    stamps = (
        read_stamps(text)
        if is_stamp_text(str(text.iloc[0])) and not is_number_text(str(text.iloc[0]))
        else None
    )
    if stamps is not None:
        return stamps
    number = pd.to_numeric(text.str.strip().str.replace(",", ".", regex=False), errors="coerce")
    clock = read_epoch(number.to_numpy(dtype=np.float64, na_value=np.nan), source.name)
    return clock.time_s, clock.start


def _keys(
    cells: pd.DataFrame, columns: FrameColumns, wanted: frozenset[int]
) -> tuple[NDArray[np.uint32], NDArray[np.bool_]]:
    """Frame keys of all rows, and which of them are readable."""
    text = cells[columns.identifier].str.strip().str.lower()
    codes, unique = pd.factorize(text)
    plain = [_HEX_SIGN.sub("0x", str(name)) for name in unique]
    usable = [re.fullmatch(r"(0x)?[0-9a-f]{1,8}[hx]?", name) is not None for name in plain]
    radix = _radix([name for name, good in zip(plain, usable, strict=True) if good], wanted)
    number = np.array(
        [_number(name, radix) if good else 0 for name, good in zip(plain, usable, strict=True)],
        dtype=np.uint64,
    )
    marked = np.array([name.endswith("x") and not name.startswith("0x") for name in plain], dtype=bool)
    flag = _flags(cells, columns.extended) if columns.extended >= 0 else marked[codes]
    bare = number[codes]
    flagged = bare | np.uint64(EXTENDED_FLAG)
    key: NDArray[np.uint32] = np.where(flag | (bare > 0x7FF), flagged, bare).astype(np.uint32)
    return key, np.array(usable, dtype=bool)[codes] & (number[codes] <= 0xFFFFFFFF)


def _number(name: str, radix: int) -> int:
    bare = name.removeprefix("0x").rstrip("hx")
    return int(bare or "0", 16 if name.startswith("0x") or name.endswith("h") else radix)


def _radix(names: Sequence[str], wanted: frozenset[int]) -> int:
    """Judge hex against decimal: letters or leading zeros say hex, else what the database knows."""
    digits = [name.removeprefix("0x").rstrip("hx") for name in names]
    if any(re.search("[a-f]", name) for name in digits) or any(name.startswith("0x") for name in names):
        return 16
    if any(name.startswith("0") and len(name) in (3, 8) for name in digits):
        return 16
    known = {key & ~EXTENDED_FLAG for key in wanted}
    hits = {radix: sum(int(name or "0", radix) in known for name in digits) for radix in (10, 16)}
    return 16 if hits[16] > hits[10] else 10


def payloads(
    cells: pd.DataFrame, columns: FrameColumns
) -> tuple[NDArray[np.uint8], NDArray[np.uint8], NDArray[np.bool_]]:
    """Bytes of all rows.

    Returns
    -------
    (uint8[N, W], uint8[N], bool[N])
        Padded bytes, how many there are, and which rows could be read.
    """
    count = _lengths(cells, columns)
    if len(columns.data) > 1:
        texts = _joined_bytes(cells[list(columns.data)])
    else:
        texts = [str(cell).strip() for cell in cells[columns.data[0]]]
    as_bytes = [_bytes(text, length) for text, length in zip(texts, count, strict=True)]
    if columns.error >= 0 and columns.remote >= 0 and any(value is None for value in as_bytes):
        as_bytes = [_from_base64(text, length) for text, length in zip(texts, count, strict=True)]
    width = max((len(value) for value in as_bytes if value is not None), default=0)
    padded = b"".join((value or b"").ljust(width, b"\0") for value in as_bytes)
    whole = np.array([value is not None for value in as_bytes], dtype=bool)
    length = np.array([len(value or b"") for value in as_bytes], dtype=np.uint8)
    return np.frombuffer(padded, dtype=np.uint8).reshape(len(as_bytes), width), length, whole


def _lengths(cells: pd.DataFrame, columns: FrameColumns) -> list[int]:
    if columns.length < 0:
        return [-1] * len(cells)
    number = pd.to_numeric(cells[columns.length].str.strip(), errors="coerce").fillna(-1)
    return [int(value) if 0 <= value <= 64 else -1 for value in number]


def _joined_bytes(cells: pd.DataFrame) -> list[str]:
    """Join separate byte columns to hex; decimal bytes are turned into hex first."""
    text = cells.apply(lambda column: column.str.strip().str.removeprefix("0x"))
    values = text.to_numpy(dtype=str).ravel()
    marked = values.size > 0 and all(value.endswith(("h", "H")) for value in values if value)
    if marked:
        text = text.apply(lambda column: column.str[:-1])
        values = text.to_numpy(dtype=str).ravel()
    filled = values[values != ""]
    two_digit = all(len(value) <= 2 for value in filled)
    hexadecimal = two_digit and any(
        marked or (len(value) == 2 and value.startswith("0")) or not value.isdigit() for value in filled
    )
    if not hexadecimal:
        return [
            "".join(f"{int(v):02x}" if v.isascii() and v.isdigit() and int(v) < 256 else "" for v in row)
            for row in text.to_numpy(dtype=str)
        ]
    return ["".join(value.zfill(2) for value in row if value) for row in text.to_numpy(dtype=str)]


def _bytes(text: str, length: int) -> bytes | None:
    """Bytes of one cell: a bit string where its length says so, a list, else hex with or without blanks."""
    if _LIST.fullmatch(text):
        values = [int(number) for number in re.findall(r"\d+", text)]
        return bytes(values) if max(values, default=0) < 256 else None
    digits = re.sub(r"[\s:._-]|0x", "", text)
    if length > 0 and len(digits) == 8 * length and set(digits) <= {"0", "1"}:
        return int(digits, 2).to_bytes(length, "big")
    if length >= 0 and len(digits) < 2 * length:
        digits = digits.zfill(2 * length) if digits else digits
    try:
        value = bytes.fromhex(digits)
    except ValueError:
        return None
    return value[:length] if length >= 0 else value


def _from_base64(text: str, length: int) -> bytes | None:
    try:
        value = base64.b64decode(text, validate=True)
    except ValueError:
        return None
    return value if length < 0 or len(value) == length else None
