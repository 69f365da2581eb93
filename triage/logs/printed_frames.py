"""Frames as python-can prints its messages: ``Timestamp: 1.5    ID: 1a0    S Rx    DL:  2    00 11``."""

from __future__ import annotations

import re
from datetime import UTC, datetime, timedelta
from typing import Final

from triage.logs.frames import (
    CUT_LINE,
    ERROR_FRAMES,
    EXTENDED_MAX,
    REMOTE_FRAMES,
    UNREAD_LINES,
    FrameCollector,
    Frames,
    frame_key,
    incomplete,
    report_bytes,
)
from triage.logs.other_frames import EPOCH_FROM_S
from triage.logs.source import Source
from triage.logs.text_lines import line_blocks
from triage.progress import Progress
from triage.texts import Text

KIND: Final = Text("CAN frames ({kind})", kind=Text("printed"))
_LINE: Final = re.compile(
    rb"^[ \t]*Timestamp:[ ]{1,20}(?P<time>\d{1,12}\.\d{1,9})[ ]{1,20}ID:[ ]{1,20}(?P<id>[0-9A-Fa-f]{1,8})"
    rb"[ ]{1,20}(?P<kind>[SX])(?P<flags>[ A-Zxr]{0,40}?)(?:DLC|DL):[ ]{0,20}(?P<length>\d{1,2})"
    rb"(?P<data>(?:[ ]{1,24}[0-9a-fA-F]{2}(?![0-9A-Za-z])){0,64})[ ]*"
    rb"(?:'[^'\r\n]{0,200}'[ ]*)?(?:Channel:[ ]*(?P<bus>\S{1,64}))?[ \t]*$"
)
_BEGINNING: Final = re.compile(rb"^[ \t]*Timestamp:[ ]{1,20}\d")


def probe_printed(source: Source) -> float:
    """Give the share of lines in the head that are such frames."""
    if not source.is_text:
        return 0.0
    lines = [line for line in source.head_lines()[:200] if line.strip()]
    if not lines:
        return 0.0
    return 0.95 * sum(_LINE.match(line.encode("utf-8", "replace")) is not None for line in lines) / len(lines)


def read_printed(source: Source, wanted: frozenset[int], progress: Progress) -> Frames:
    """Read printed messages, line by line; what else was printed between them is passed over."""
    collector = FrameCollector(wanted)
    zero_s: float | None = None
    last, number = b"", 0
    for block in line_blocks(source):
        report_bytes(progress, round(block.share * source.content.size), source.content.size)
        for number_in_block in range(block.start.size):
            last = block.line(number_in_block)
            number += 1
            found = _LINE.match(last)
            if found is None:
                collector.odd[UNREAD_LINES] += _BEGINNING.match(last) is not None
                continue
            time_s = float(found["time"])
            if zero_s is None:
                zero_s = time_s if time_s > EPOCH_FROM_S else 0.0
            _take(found, time_s - zero_s, collector)
    if _is_cut(last):
        collector.notices.append(incomplete(source, Text("line {number}", number=number), CUT_LINE))
    start = datetime.fromtimestamp(0, UTC) + timedelta(seconds=zero_s) if zero_s else None
    return collector.frames(KIND, start)


def _take(found: re.Match[bytes], time_s: float, collector: FrameCollector) -> None:
    flags = found["flags"].split()
    identifier, payload = int(found["id"], 16), bytes.fromhex(found["data"].decode())
    if b"E" in flags:
        collector.odd[ERROR_FRAMES] += 1
    elif b"R" in flags:
        collector.odd[REMOTE_FRAMES] += 1
    elif identifier > EXTENDED_MAX or len(payload) != int(found["length"]):
        collector.odd[UNREAD_LINES] += 1
    else:
        key = frame_key(identifier, extended=found["kind"] == b"X")
        collector.add(time_s, key, (found["bus"] or b"").decode("utf-8", "replace"), payload)


def _is_cut(line: bytes) -> bool:
    found = _LINE.match(line)
    if found is None:
        return _BEGINNING.match(line) is not None
    remote = {b"R", b"E"} & set(found["flags"].split())
    return not remote and len(found["data"].split()) < int(found["length"])
