"""Frames as the Linux SocketCAN tools write them: log files and screen output."""

from __future__ import annotations

import itertools
import math
import re
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.logs.candump_lines import ERROR_FLAG, PlainLines, find_plain_lines
from triage.logs.frames import (
    BROKEN_DATA,
    CUT_LINE,
    ERROR_FRAMES,
    REMOTE_FRAMES,
    TIMELESS_FRAMES,
    UNREAD_LINES,
    FrameBlock,
    FrameCollector,
    Frames,
    frame_key,
    incomplete,
    report_bytes,
)
from triage.logs.source import Source
from triage.logs.text_lines import (
    LineBlock,
    Places,
    decimal_numbers,
    hex_bytes,
    line_blocks,
    names_at,
)
from triage.progress import Progress
from triage.speed_log import FloatArray
from triage.texts import Text

_LINE: Final = re.compile(
    rb"^[ \t]*(?:\((?P<time>[^)\r\n]{1,40})\)[ \t]+)?(?P<bus>[^\s#(]{1,32})[ \t]+"
    rb"(?:(?P<dir1>[RT]X)[ \t]+[B-][ \t]+[E-][ \t]+)?(?P<id>[0-9A-Fa-f]{3}|[0-9A-Fa-f]{8})"
    rb"(?:##(?P<fd>[0-9A-Fa-f])(?P<fddata>[0-9A-Fa-f.]*)|#(?P<remote>[Rr])[0-9A-Fa-f]*"
    rb"|#(?P<data>[0-9A-Fa-f.]*)"
    rb"|[ \t]+\[ ?(?P<len>\d{1,2})\](?P<bytes>(?:[ \t]+[0-9A-Fa-f]{2}(?![0-9A-Za-z]))*)"
    rb"(?P<word>[ \t]+remote request)?)"
    rb"(?:_[0-9A-Fa-f])?[ \t]*(?P<rest>[^\r\n]*)$",
    re.MULTILINE,
)
_COLOUR: Final = re.compile(rb"\x1b\[[0-9;]{0,20}m")
"""What paints the lines of a terminal; it stands in files to which a coloured screen was sent."""

_STEP_MAX_S: Final = 10.0
_JUDGED_LINES: Final = 400
_EPOCH_FROM_S: Final = 1e8


def probe_candump(source: Source) -> float:
    """Give the share of lines in the head that are such frames."""
    if not source.is_text:
        return 0.0
    lines = [line for line in source.head_lines()[:200] if line.strip()]
    if not lines:
        return 0.0
    return 0.9 * sum(_parse(line.encode("utf-8", "replace")) is not None for line in lines) / len(lines)


def read_candump(source: Source, wanted: frozenset[int], progress: Progress) -> Frames:
    """Read log lines ``(time) bus id#data`` and screen lines ``bus id [n] bytes``.

    Log lines of data frames with epoch or relative stamps, nearly all of a log, are read many at once; all
    others one by one.
    """
    collector = FrameCollector(wanted)
    tally = _Tally()
    clock: _Clock | None = None
    for block in line_blocks(source):
        report_bytes(progress, round(block.share * source.content.size), source.content.size)
        clock = clock or _Clock(counts_steps=_counts_steps(block.plain_text()))
        _take_block(block, collector, clock, tally)
    _note_unread(source, tally, collector)
    return collector.frames(Text("CAN frames ({kind})", kind="candump"), clock.start if clock else None)


@dataclass(slots=True)
class _Tally:
    """Lines that hold anything, those of them that were understood, and the last one."""

    lines: int = 0
    understood: int = 0
    last: bytes = b""


def _take_block(block: LineBlock, collector: FrameCollector, clock: _Clock, tally: _Tally) -> None:
    plain = find_plain_lines(block) if clock.is_plain else None
    begin = 0
    while plain is not None and not clock.is_set and begin < block.start.size:
        _take_line(block.line(begin), collector, clock, tally)  # the first stamp sets the zero of all others
        begin += 1
    if plain is None:
        for number in range(block.start.size):
            _take_line(block.line(number), collector, clock, tally)
        return
    plain = plain.only(plain.line >= begin)
    others = np.ones(block.start.size, dtype=np.bool_)
    others[:begin] = False
    others[plain.line] = False
    _take_in_order(block, (plain, np.flatnonzero(others)), collector, clock, tally)


def _take_in_order(
    block: LineBlock,
    lines: tuple[PlainLines, Places],
    collector: FrameCollector,
    clock: _Clock,
    tally: _Tally,
) -> None:
    """Take runs of plain lines at once, and the other lines between them one by one."""
    plain, others = lines
    tally.lines += plain.line.size
    tally.understood += plain.line.size
    chosen = plain.only(collector.count(plain.key))
    edges = np.searchsorted(chosen.line, others)
    done = 0
    for number, edge in zip(others.tolist(), edges.tolist(), strict=True):
        found = _parse(block.line(number))
        if found is not None and edge > done:
            _take_plain(block, chosen.only(_between(chosen, done, edge)), collector, clock)
            done = edge
        _take_line(block.line(number), collector, clock, tally)
    _take_plain(block, chosen.only(_between(chosen, done, chosen.line.size)), collector, clock)
    if plain.line.size and (not others.size or plain.line[-1] > others[-1]):
        tally.last = block.line(int(plain.line[-1]))


def _between(plain: PlainLines, start: int, stop: int) -> NDArray[np.bool_]:
    number = np.arange(plain.line.size)
    return (number >= start) & (number < stop)


def _take_plain(block: LineBlock, plain: PlainLines, collector: FrameCollector, clock: _Clock) -> None:
    code = block.code
    stamp = decimal_numbers(code, plain.start + 1, plain.bracket)
    length = (plain.stop - plain.mark - 1) // 2
    bus, bus_index = names_at(block, plain.bracket + 2, plain.word)
    payload = hex_bytes(code, plain.mark + 1, length, step=2)
    collector.add_wanted(
        FrameBlock(clock.plain(stamp), plain.key, bus, bus_index, payload, length.astype(np.uint8))
    )


class _Clock:
    """Stamps of the lines as seconds: epoch, relative, calendar, or distances between frames."""

    __slots__ = ("_summed", "_zero", "start")

    def __init__(self, *, counts_steps: bool) -> None:
        self._summed = 0.0 if counts_steps else None
        self._zero: float | None = None
        self.start: datetime | None = None

    @property
    def is_plain(self) -> bool:
        """Whether stamps stand for themselves, less a constant."""
        return self._summed is None

    @property
    def is_set(self) -> bool:
        """Whether the constant is known."""
        return self._zero is not None

    def plain(self, value: FloatArray) -> FloatArray:
        """Seconds of many stamps that are numbers."""
        return value - (self._zero or 0.0)

    def seconds(self, stamp: bytes | None) -> float:
        """Seconds of a stamp; NaN when it cannot be read."""
        try:
            text = b"" if stamp is None else stamp.strip()
            return self._calendar(text.decode("ascii")) if b":" in text else self._number(float(text))
        except (ValueError, TypeError, OverflowError):
            return math.nan

    def _number(self, value: float) -> float:
        if self._summed is not None:
            self._summed += value
            return self._summed
        if self._zero is None:
            self._zero = value if value > _EPOCH_FROM_S else 0.0
            if self._zero:
                self.start = datetime.fromtimestamp(0, UTC) + timedelta(seconds=self._zero)
        return value - self._zero

    def _calendar(self, text: str) -> float:
        instant = datetime.fromisoformat(text)
        if self.start is None:
            self.start = instant
        return (instant - self.start).total_seconds()


def _counts_steps(text: bytes) -> bool:
    """Tell whether the stamps are distances from frame to frame: small, and not rising on the whole."""
    lines = itertools.islice(_LINE.finditer(_without_colours(text)), _JUDGED_LINES)
    stamps = [found["time"] for found in lines]
    try:
        values = [float(stamp) for stamp in stamps if stamp is not None]
    except ValueError:
        return False
    rises = sum(b > a for a, b in itertools.pairwise(values))
    return len(values) > 20 and max(values) < _STEP_MAX_S and rises < 0.6 * len(values)


def _parse(line: bytes) -> re.Match[bytes] | None:
    return _LINE.match(_without_colours(line))


def _without_colours(text: bytes) -> bytes:
    return _COLOUR.sub(b"", text) if b"\x1b" in text else text


def _take_line(line: bytes, collector: FrameCollector, clock: _Clock, tally: _Tally) -> None:
    if not line.strip():
        return
    tally.lines += 1
    tally.last = line
    found = _parse(line)
    if found is not None:
        tally.understood += 1
        _take(collector, found, clock)


def _take(collector: FrameCollector, found: re.Match[bytes], clock: _Clock) -> None:
    digits = found["id"]
    identifier = int(digits, 16)
    time_s = clock.seconds(found["time"])
    if len(digits) == 8 and identifier & ERROR_FLAG:
        collector.odd[ERROR_FRAMES] += 1
        return
    if found["remote"] is not None or found["word"] is not None:
        collector.odd[REMOTE_FRAMES] += 1
        return
    if math.isnan(time_s):
        collector.odd[TIMELESS_FRAMES] += 1
        return
    payload = _payload(found)
    if payload is None:
        collector.odd[BROKEN_DATA] += 1
        return
    key = frame_key(identifier & 0x1FFFFFFF, extended=len(digits) == 8)
    collector.add(time_s, key, found["bus"].decode("ascii", "replace"), payload)


def _payload(found: re.Match[bytes]) -> bytes | None:
    digits = found["data"] if found["data"] is not None else found["fddata"]
    if digits is None:
        data = bytes.fromhex(found["bytes"].decode("ascii"))
        return data if len(data) == int(found["len"]) else None
    digits = digits.replace(b".", b"")
    return bytes.fromhex(digits.decode("ascii")) if len(digits) % 2 == 0 else None


def _note_unread(source: Source, tally: _Tally, collector: FrameCollector) -> None:
    """Tell of a last line that is cut off, and count other lines that are no frames."""
    unread = tally.lines - tally.understood
    last = _parse(tally.last.rstrip())
    if last is None or (last["remote"] is None and last["word"] is None and _payload(last) is None):
        collector.notices.append(incomplete(source, Text("line {number}", number=tally.lines), CUT_LINE))
        unread -= last is None
        collector.odd[BROKEN_DATA] -= last is not None
    if unread > 0:
        collector.odd[UNREAD_LINES] += unread
