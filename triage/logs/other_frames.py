"""Frame files that are left to python-can: SQLite, and texts that are out of the ordinary."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any, Final

from triage.errors import DamagedLog
from triage.logs.frames import (
    ERROR_FRAMES,
    REMOTE_FRAMES,
    REPORT_EVERY,
    FrameCollector,
    Frames,
    frame_key,
    incomplete,
)
from triage.logs.library_noise import quiet
from triage.logs.source import Source
from triage.progress import Cancelled, Progress
from triage.reasons import reason_of
from triage.texts import Text

EPOCH_FROM_S: Final = 1e8


def probe_sqlite(source: Source) -> float:
    """Tell by the first bytes."""
    return 0.95 if source.head.startswith(b"SQLite format 3\x00") else 0.0


def read_sqlite(source: Source, wanted: frozenset[int], progress: Progress) -> Frames:
    """Read a SQLite file with a table of messages."""
    return read_with_library(
        source, wanted, progress, suffix=".db", kind=Text("CAN frames ({kind})", kind="SQLite")
    )


def read_with_library(
    source: Source, wanted: frozenset[int], progress: Progress, *, suffix: str, kind: str
) -> Frames:
    """Read a file frame by frame with python-can.

    Raises
    ------
    DamagedLog
        When no frame can be read.
    """
    collector = FrameCollector(wanted)
    # the library opens files by name and suffix; a copy also serves packed files
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder) / f"frames{suffix}"
        copy.write_bytes(source.data)
        with quiet("can"):
            start = _collect(copy, collector, source, progress)
    if collector.is_empty and not collector.odd:
        raise DamagedLog(
            "no frame could be read",
            file=source.name,
            place=Text("byte {number}", number=0),
            hint="Copy or export it again.",
        )
    return collector.frames(kind, start)


def _collect(copy: Path, collector: FrameCollector, source: Source, progress: Progress) -> datetime | None:
    zero: float | None = None
    number = 0
    try:
        for number, message in enumerate(_messages(copy), start=1):
            if number % REPORT_EVERY == 0:
                progress(min(number / max(len(source.data) / 40, 1), 1.0), "reading frames")
            if zero is None:
                zero = message.timestamp if message.timestamp > EPOCH_FROM_S else 0.0
            _take(collector, message, message.timestamp - zero)
    except Cancelled:
        raise
    except Exception as error:  # noqa: BLE001 - the readers raise whatever a broken line makes them
        damaged = Text("the rest is damaged ({reason})", reason=reason_of(error))
        collector.notices.append(incomplete(source, Text("after frame {number}", number=number), damaged))
    return datetime.fromtimestamp(0, UTC) + timedelta(seconds=zero) if zero else None


def _messages(copy: Path) -> Iterator[Any]:
    import can  # noqa: PLC0415 - slow to load, and only few kinds need it

    reader = can.LogReader(str(copy))
    try:
        yield from reader
    finally:
        reader.stop()


def _take(collector: FrameCollector, message: Any, time_s: float) -> None:
    if message.is_error_frame:
        collector.odd[ERROR_FRAMES] += 1
    elif message.is_remote_frame:
        collector.odd[REMOTE_FRAMES] += 1
    else:
        key = frame_key(message.arbitration_id, extended=message.is_extended_id)
        channel = "" if message.channel is None else str(message.channel)
        collector.add(time_s, key, channel, bytes(message.data))
