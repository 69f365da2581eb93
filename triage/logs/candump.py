"""Frames as the Linux SocketCAN tools write them: log files and screen output."""

from __future__ import annotations

import itertools
import math
import re
from datetime import UTC, datetime, timedelta
from typing import Final

from triage.logs.frames import REPORT_EVERY, FrameCollector, Frames, frame_key, incomplete, report_bytes
from triage.logs.source import Source
from triage.progress import Progress

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
_ERROR_FLAG: Final = 0x20000000
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
    return 0.9 * sum(_LINE.match(line.encode("utf-8", "replace")) is not None for line in lines) / len(lines)


def read_candump(source: Source, wanted: frozenset[int], progress: Progress) -> Frames:
    """Read log lines ``(time) bus id#data`` and screen lines ``bus id [n] bytes``."""
    text = source.text_bytes()
    collector = FrameCollector(wanted)
    clock = _Clock(counts_steps=_counts_steps(text))
    lines = 0
    for number, found in enumerate(_LINE.finditer(text)):
        if number % REPORT_EVERY == 0:
            report_bytes(progress, found.start(), len(text))
        lines += 1
        _take(collector, found, clock)
    _note_unread(source, text, lines, collector)
    return collector.frames("CAN frames (candump)", clock.start)


class _Clock:
    """Stamps of the lines as seconds: epoch, relative, calendar, or distances between frames."""

    __slots__ = ("_summed", "_zero", "start")

    def __init__(self, *, counts_steps: bool) -> None:
        self._summed = 0.0 if counts_steps else None
        self._zero: float | None = None
        self.start: datetime | None = None

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
    stamps = [found["time"] for found in itertools.islice(_LINE.finditer(text), _JUDGED_LINES)]
    try:
        values = [float(stamp) for stamp in stamps if stamp is not None]
    except ValueError:
        return False
    rises = sum(b > a for a, b in itertools.pairwise(values))
    return len(values) > 20 and max(values) < _STEP_MAX_S and rises < 0.6 * len(values)


def _take(collector: FrameCollector, found: re.Match[bytes], clock: _Clock) -> None:
    digits = found["id"]
    identifier = int(digits, 16)
    time_s = clock.seconds(found["time"])
    if len(digits) == 8 and identifier & _ERROR_FLAG:
        collector.odd["error frames"] += 1
        return
    if found["remote"] is not None or found["word"] is not None:
        collector.odd["remote frames"] += 1
        return
    if math.isnan(time_s):
        collector.odd["frames without a readable time"] += 1
        return
    payload = _payload(found)
    if payload is None:
        collector.odd["frames with damaged data"] += 1
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


def _note_unread(source: Source, text: bytes, lines: int, collector: FrameCollector) -> None:
    """Tell of a last line that is cut off, and count other lines that are no frames."""
    total = sum(1 for line in text.splitlines() if line.strip())
    unread = total - lines
    last = _LINE.match(text.rstrip().rpartition(b"\n")[2])
    if last is None or (last["remote"] is None and last["word"] is None and _payload(last) is None):
        collector.notices.append(incomplete(source, f"line {total}", "the last line is cut off"))
        unread -= last is None
        collector.odd["frames with damaged data"] -= last is not None
    if unread > 0:
        collector.odd["unreadable lines"] += unread
