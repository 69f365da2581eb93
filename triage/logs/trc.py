"""Frames as TRC text: a header of comments, then one numbered line for each frame, in columns.

Files in which every line is an ordinary data frame in the columns that the header names are read many lines
at once; all others by python-can. The columns by version, and the start in days since 1899-12-30, are those
of python-can's reader, which the tests hold this one against.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Final

import numpy as np

from triage.logs.aligned_frames import AlignedLines, Columns, find_aligned
from triage.logs.frames import FrameCollector, Frames, report_bytes
from triage.logs.other_frames import EPOCH_FROM_S, read_with_library
from triage.logs.source import Source
from triage.logs.text_lines import LineBlock, line_blocks
from triage.progress import Progress
from triage.speed_log import FloatArray
from triage.texts import Text

KIND: Final = Text("CAN frames ({kind})", kind="TRC")
_LINE: Final = re.compile(r"^\s*\d+\)?\s+\d+[.,]\d+\s+\S+")
_VERSION: Final = re.compile(rb"^;\$FILEVERSION=(\d\.\d)[ \t]*\r?$", re.MULTILINE)
_START: Final = re.compile(rb"^;\$STARTTIME=([0-9.]+)[ \t]*\r?$", re.MULTILINE)
_COLUMNS: Final = re.compile(rb"^;\$COLUMNS=([A-Za-z,]+)[ \t]*\r?$", re.MULTILINE)
_FIELD: Final = re.compile(rb"\S+")
_FIELDS: Final = {b"1.1": "N,O,d,I,L,D", b"1.3": "N,O,B,d,I,R,L,D"}
"""Columns of versions whose header does not name them: number, offset in ms, bus, direction, identifier,
reserved, length, data. Later versions have a type T too."""

_DAY_ZERO: Final = datetime(1899, 12, 30, tzinfo=UTC)
_LOOKED_AT: Final = 200


def probe_trc(source: Source) -> float:
    """Tell by the version comment, or by numbered lines with a time."""
    if not source.is_text:
        return 0.0
    lines = [line for line in source.head_lines()[:60] if line.strip()]
    if any(line.startswith(";$FILEVERSION") for line in lines[:5]):
        return 0.95
    comments = sum(line.startswith(";") for line in lines)
    events = sum(_LINE.match(line) is not None and ")" in line.split()[0] for line in lines)
    return 0.8 if lines and comments and events >= 0.8 * (len(lines) - comments) > 0 else 0.0


def read_trc(source: Source, wanted: frozenset[int], progress: Progress) -> Frames:
    """Read a TRC trace."""
    found = _read_aligned(source, wanted, progress)
    return found or read_with_library(source, wanted, progress, suffix=".trc", kind=KIND)


@dataclass(slots=True)
class _Header:
    """Columns, start of the recording, and what is taken off all times once the first is known."""

    columns: Columns
    start_s: float
    zero_s: float | None = None


def _read_aligned(source: Source, wanted: frozenset[int], progress: Progress) -> Frames | None:
    """Read a file of ordinary lines alone; None for any other."""
    collector = FrameCollector(wanted)
    header: _Header | None = None
    for block in line_blocks(source):
        report_bytes(progress, round(block.share * source.content.size), source.content.size)
        header = header or _read_header(block)
        if header is None or not _take_block(block, collector, header):
            return None
    if header is None or header.zero_s is None:
        return None
    start = datetime.fromtimestamp(0, UTC) + timedelta(seconds=header.zero_s) if header.zero_s else None
    return collector.frames(KIND, start)


def _take_block(block: LineBlock, collector: FrameCollector, header: _Header) -> bool:
    """Take the frames of a block; false when a line is neither a frame in the columns nor a comment."""
    lines = find_aligned(block, header.columns)
    others = np.ones(block.start.size, dtype=np.bool_)
    others[lines.line] = False
    for number in np.flatnonzero(others).tolist():
        line = block.line(number).strip()
        if line and not line.startswith(b";"):
            return False
    if not lines.line.size:
        return True
    if header.zero_s is None:
        first = float(_seconds(block, lines.only(slice(0, 1)), header)[0])
        header.zero_s = first if first > EPOCH_FROM_S else 0.0
    chosen = lines.only(collector.count(lines.key))
    if chosen.line.size:
        time_s = _seconds(block, chosen, header) - header.zero_s
        collector.add_wanted(chosen.frames(block, header.columns, time_s))
    return True


def _seconds(block: LineBlock, lines: AlignedLines, header: _Header) -> FloatArray:
    return lines.times(block) / 1000.0 + header.start_s


def _read_header(block: LineBlock) -> _Header | None:
    """Take the columns from the header and the first line; None for a file out of the ordinary."""
    version = _VERSION.search(block.text)
    start = _START.search(block.text)
    named = _COLUMNS.search(block.text)
    fields = named[1].decode() if named else _FIELDS.get(version[1] if version else b"", "")
    if not fields or not start:
        return None
    try:
        start_s = (_DAY_ZERO + timedelta(days=float(start[1]))).timestamp()
    except (ValueError, OverflowError):
        return None
    for number in range(min(block.start.size, _LOOKED_AT)):
        line = block.line(number)
        if line.strip() and not line.lstrip().startswith(b";"):
            columns = _columns_of(line, fields.split(","))
            return _Header(columns, start_s) if columns else None
    return None


def _columns_of(line: bytes, fields: list[str]) -> Columns | None:
    """Places of the fields in a data frame of one-digit length, and of one-digit bus where there is one."""
    cells = list(_FIELD.finditer(line))
    if b"\t" in line or len(cells) < len(fields) or not {"O", "I", "d", "L", "D"} <= set(fields):
        return None
    cell = dict(zip(fields, cells, strict=False))
    point = line.find(b".", cell["O"].start(), cell["O"].end())
    bus = cell.get("B")
    behind = cells[fields.index("I") + 1]
    before = cells[fields.index("I") - 1]
    if point < 0 or len(cell["L"][0]) != 1 or (bus and len(bus[0]) != 1):
        return None
    if cell["d"][0] not in (b"Rx", b"Tx") or ("T" in cell and cell["T"][0] != b"DT"):
        return None
    return Columns(
        fraction=cell["O"].end() - point - 1,
        pattern=line[point : cell["D"].start()],
        direction=cell["d"].start() - point,
        channel=bus.start() - point if bus else None,
        identifier=before.end() - point,
        behind_identifier=behind.start() - point,
        marked=False,
        length=cell["L"].start() - point,
        data=cell["D"].start() - point,
        numbered=True,
    )
