"""Frames as ASC text: header with date and number base, one event per line."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from typing import Final

import numpy as np

from triage.logs.aligned_frames import AlignedLines, Columns, find_aligned
from triage.logs.frames import (
    BROKEN_DATA,
    CUT_LINE,
    ERROR_FRAMES,
    EXTENDED_MAX,
    REMOTE_FRAMES,
    FrameCollector,
    Frames,
    frame_key,
    incomplete,
    report_bytes,
)
from triage.logs.source import Source
from triage.logs.text_lines import LineBlock, line_blocks
from triage.progress import Progress
from triage.texts import Text

_HEADER: Final = re.compile(
    rb"^(date\s+(?!time\b)|base\s+(hex|dec)|begin\s+trigger\s*block"
    rb"|(no\s+)?internal events logged|//\s*version)",
    re.IGNORECASE | re.MULTILINE,
)
_BASE: Final = re.compile(
    rb"^base\s+(hex|dec)(?:\s+timestamps\s+(absolute|relative))?", re.IGNORECASE | re.MULTILINE
)
_CLASSIC: Final = re.compile(
    rb"^\s*(?P<time>-?\d+[.,]\d+)\s+(?P<bus>\d+)\s+(?P<id>[0-9A-Fa-f]+)(?P<ext>x?)\s+(?P<dir>Rx|Tx|TxRq)\s+"
    rb"(?P<kind>[dr])(?:\s+(?P<len>[0-9A-Fa-f]+))?(?P<data>(?:\s+[0-9A-Fa-f]{1,3}(?![0-9A-Za-z]))*)"
)
_FD: Final = re.compile(
    rb"^\s*(?P<time>-?\d+[.,]\d+)\s+CANFD\s+(?P<bus>\d+)\s+(?P<dir>Rx|Tx|TxRq)\s+(?P<id>[0-9A-Fa-f]+)(?P<ext>x?)\s+"
    rb"(?:(?P<name>\S+)\s+)??(?P<brs>[01])\s+(?P<esi>[01])\s+(?P<dlc>[0-9A-Fa-f])\s+(?P<len>\d+)"
    rb"(?P<data>(?:\s+[0-9A-Fa-f]{1,3}(?![0-9A-Za-z]))*)"
)
_EVENT: Final = re.compile(rb"^\s*(-?\d+[.,]\d+)\s+\S")
_ERROR: Final = re.compile(
    rb"^\s*-?\d+[.,]\d+\s+(?:CANFD\s+)?\d+\s+(?:(?:Rx|Tx)\s+)?ErrorFrame", re.IGNORECASE
)
_DATE: Final = re.compile(
    r"(?P<before>[^\W\d_][^\d:]*?)[.\s]+(?P<day>\d{1,2})\s+(?P<hour>\d{1,2}):(?P<minute>\d{2}):(?P<second>\d{2})"
    r"(?:[.,:](?P<fraction>\d{1,6}))?(?:\s+(?P<half>[ap]m))?\s+(?P<year>\d{4})",
    re.IGNORECASE,
)
_LOOKED_AT: Final = 400
"""Lines of a block in which a data frame is looked for."""

_MONTHS: Final = (
    ("jan", "gen", "ene"), ("feb", "fév", "fev"), ("mar", "mär", "mrz", "mrt"), ("apr", "avr", "abr"),
    ("may", "mai", "mag"), ("jun", "juin", "giu"), ("jul", "juil", "lug"), ("aug", "aoû", "aou", "ago"),
    ("sep", "set"), ("oct", "okt", "ott"), ("nov",), ("dec", "dez", "déc", "dic"),
)  # fmt: skip


_MARK: Final = b"\xef\xbb\xbf \t"
"""A byte order mark in UTF-8, and blanks."""


def probe_asc(source: Source) -> float:
    """Give the confidence from header and event lines."""
    if not source.is_text:
        return 0.0
    lines = [line.encode("utf-8", "replace") for line in source.head_lines()[:60] if line.strip()]
    events = sum(_CLASSIC.match(line) is not None or _FD.match(line) is not None for line in lines)
    if lines and _HEADER.match(lines[0].lstrip(_MARK)):
        return 0.95
    return 0.8 * events / len(lines) if lines else 0.0


def read_asc(source: Source, wanted: frozenset[int], progress: Progress) -> Frames:
    """Read the data frames of an ASC text.

    Lines of classic data frames with absolute times and hexadecimal numbers, nearly all of a log, are read
    many at once; all others one by one.
    """
    collector = FrameCollector(wanted)
    form: _Form | None = None
    number = 0
    start: datetime | None = None
    for block in line_blocks(source):
        report_bytes(progress, round(block.share * source.content.size), source.content.size)
        if form is None:
            head = block.plain_text()
            form = _form_of(head[:8192])
            start = _start(head, source.encoding)
        _take_block(block, collector, form)
        number += block.start.size
    if form is not None:
        _note_cut(source, block.plain_text(), number, form.radix, collector)
    return collector.frames(Text("CAN frames ({kind})", kind="ASC"), start)


@dataclass(slots=True)
class _Form:
    """What the header says, the time so far where times are distances, and the columns once known."""

    radix: int
    relative: bool
    now_s: float = 0.0
    columns: Columns | None = None


def _form_of(head: bytes) -> _Form:
    base = _BASE.search(head)
    radix = 10 if base is not None and base.group(1).lower() == b"dec" else 16
    return _Form(radix, base is not None and (base.group(2) or b"").lower() == b"relative")


def _take_block(block: LineBlock, collector: FrameCollector, form: _Form) -> None:
    if form.columns is None and form.radix == 16 and not form.relative:
        form.columns = _find_columns(block)
    if form.columns is None:
        _take_lines(block, range(block.start.size), collector, form)
        return
    found = find_aligned(block, form.columns)
    others = np.ones(block.start.size, dtype=np.bool_)
    others[found.line] = False
    found = found.only(collector.count(found.key))
    rest = np.flatnonzero(others)
    done = 0
    for number, edge in zip(rest.tolist(), np.searchsorted(found.line, rest).tolist(), strict=True):
        if _EVENT.match(block.line(number)) is None:
            continue
        _take_aligned(block, found.only(slice(done, edge)), collector, form.columns)
        done = edge
        _take_lines(block, (number,), collector, form)
    _take_aligned(block, found.only(slice(done, None)), collector, form.columns)


def _take_aligned(block: LineBlock, lines: AlignedLines, collector: FrameCollector, columns: Columns) -> None:
    if lines.line.size:
        collector.add_wanted(lines.frames(block, columns, lines.times(block)))


def _take_lines(block: LineBlock, numbers: Iterable[int], collector: FrameCollector, form: _Form) -> None:
    for number in numbers:
        line = block.line(number)
        event = _EVENT.match(line)
        if event is None:
            continue
        stamp = float(event.group(1).replace(b",", b"."))
        form.now_s = form.now_s + stamp if form.relative else stamp
        _take(collector, line, form.now_s, form.radix)


def _find_columns(block: LineBlock) -> Columns | None:
    """Take the columns from the first data frame with one-digit channel."""
    for number in range(min(block.start.size, _LOOKED_AT)):
        line = block.line(number)
        found = _CLASSIC.match(line)
        point = line.find(b".")
        if found is None or found["kind"] != b"d" or point != found.start("time") + found["time"].find(b"."):
            continue
        blanks = line[found.end("bus") : found.start("id")]
        if len(found["bus"]) != 1 or blanks.strip(b" ") or b"\t" in line:
            return None
        data = found.end("len") + 1 - point
        return Columns(
            fraction=found.end("time") - point - 1,
            pattern=line[point : point + data],
            direction=found.start("dir") - point,
            channel=found.start("bus") - point,
            identifier=found.start("id") - point,
            behind_identifier=found.start("dir") - point,
            marked=True,
            length=found.start("len") - point,
            data=data,
            numbered=False,
        )
    return None


def read_date(text: str) -> datetime | None:
    """Read the date of an ASC header, in English or German (and a few more), 12 or 24 hours.

    Examples
    --------
    >>> read_date("Tue Mar 10 02:15:16.000 pm 2026")
    datetime.datetime(2026, 3, 10, 14, 15, 16)
    """
    found = _DATE.search(text)
    month = _month(found["before"]) if found is not None else 0
    if found is None or not month:
        return None
    hour = int(found["hour"])
    if found["half"]:
        hour = hour % 12 + (12 if found["half"].lower() == "pm" else 0)
    micro = int((found["fraction"] or "0").ljust(6, "0"))
    try:
        return datetime(  # noqa: DTZ001 - the header gives local time and no zone
            int(found["year"]),
            month,
            int(found["day"]),
            hour,
            int(found["minute"]),
            int(found["second"]),
            micro,
        )
    except ValueError:
        return None


def _month(before: str) -> int:
    """Find the number of the month named before the day, 0 when none is; the weekday may look like one."""
    for word in reversed(re.findall(r"[^\W\d_]+", before.lower())):
        for number, names in enumerate(_MONTHS, start=1):
            if any(word.startswith(name) for name in names):
                return number
    return 0


def _take(collector: FrameCollector, line: bytes, time_s: float, radix: int) -> None:
    found = _CLASSIC.match(line) or _FD.match(line)
    if found is None:
        if _ERROR.match(line):
            collector.odd[ERROR_FRAMES] += 1
        return
    groups = found.groupdict()
    if groups.get("kind") == b"r":
        collector.odd[REMOTE_FRAMES] += 1
        return
    payload, identifier = _payload(found, radix), _number(found["id"], radix)
    if payload is None or not 0 <= identifier <= EXTENDED_MAX:
        collector.odd[BROKEN_DATA] += 1
        return
    key = frame_key(identifier, extended=bool(found["ext"]))
    collector.add(time_s, key, found["bus"].decode("ascii"), payload)


def _number(digits: bytes, radix: int) -> int:
    try:
        return int(digits, radix)
    except ValueError:
        return -1


def _payload(found: re.Match[bytes], radix: int) -> bytes | None:
    try:
        # the length of classic frames is one hex digit in either base; FD lines give decimal bytes
        length = int(found["len"] or b"0", 16 if "kind" in found.groupdict() else 10)
        values = bytes(int(cell, radix) for cell in found["data"].split()[:length])
        return values if len(values) == length else None
    except ValueError:
        return None


def _start(text: bytes, encoding: str) -> datetime | None:
    for line in text[:8192].splitlines()[:20]:
        if re.match(rb"\s*date\s", line, re.IGNORECASE):
            return read_date(
                line.strip()[4:].decode("utf-8" if encoding.startswith("utf") else encoding, "replace")
            )
    return None


def _note_cut(source: Source, text: bytes, lines: int, radix: int, collector: FrameCollector) -> None:
    if text.endswith((b"\n", b"\r")):
        return
    last = text.rstrip().rpartition(b"\n")[2]
    found = _CLASSIC.match(last) or _FD.match(last)
    remote = found is not None and found.groupdict().get("kind") == b"r"
    if found is not None and not remote and _payload(found, radix) is None:
        collector.notices.append(incomplete(source, Text("line {number}", number=lines), CUT_LINE))
