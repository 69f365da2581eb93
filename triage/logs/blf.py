"""Frames of BLF files: containers of packed objects, read on past damage.

The layout (file header ``LOGG``, objects ``LOBJ`` with header size, version, object size and type, containers
of zlib-packed objects that may straddle container ends) is that of the open-source reader of python-can,
which the tests hold this one against.
"""

from __future__ import annotations

import struct
import zlib
from collections.abc import Iterator, Sequence
from contextlib import suppress
from datetime import datetime
from typing import Final

import numpy as np

from triage.errors import DamagedLog
from triage.logs.blf_blocks import Objects, classic_frames, find_objects, holds_classic_frame
from triage.logs.frames import (
    DAMAGED_FRAMES,
    ERROR_FRAMES,
    REMOTE_FRAMES,
    FrameCollector,
    Frames,
    frame_key,
    incomplete,
    report_bytes,
)
from triage.logs.moving_window import MovingWindow
from triage.logs.source import Source
from triage.progress import Progress
from triage.speed_log import Notice
from triage.texts import Text

try:
    from isal.isal_zlib import decompress as _inflate
except ImportError:  # there is no build of it for some machines
    from zlib import decompress as _inflate

_FILE_HEADER: Final = struct.Struct("<4sLBBBBBBBBQQLL8H8H")
_OBJECT: Final = struct.Struct("<4sHHLL")
_VERSION_1: Final = struct.Struct("<LHHQ")
_CONTAINER: Final = struct.Struct("<H6xL4x")
_CLASSIC: Final = struct.Struct("<HBBL8s")
_FD: Final = struct.Struct("<HBBLLBBB5x64s")
_FD_64: Final = struct.Struct("<BBBBLLLLLLLHBBL")

_CONTAINER_TYPE: Final = 10
_CLASSIC_TYPES: Final = (1, 86)
_ERROR_TYPES: Final = (2, 73, 104)
_FD_TYPE: Final = 100
_FD_64_TYPE: Final = 101
_OBJECT_MAX: Final = 1 << 26
_REMOTE_FLAG: Final = 0x80
_REMOTE_FLAG_FD_64: Final = 0x0010
_TEN_MICROSECONDS: Final = 1
_TOGETHER_BYTES: Final = 1 << 20
"""Containers are gathered to so many bytes: small ones would cost more to set up than to read."""


def probe_blf(source: Source) -> float:
    """Tell by the first four bytes."""
    return 1.0 if source.head.startswith(b"LOGG") else 0.0


def read_blf(source: Source, wanted: frozenset[int], progress: Progress) -> Frames:
    """Read the data frames of a BLF file.

    Raises
    ------
    DamagedLog
        When not even the file header is whole.
    """
    collector = FrameCollector(wanted)
    start = _read_file_header(source)
    damage = _Damage()
    rest = b""
    waiting: list[tuple[int, bytes]] = []
    window = MovingWindow(source)
    for position, packed in _containers(window, source, damage, progress):
        content = _unpacked(packed, position, damage)
        if damage.out_of_step:
            damage.out_of_step = False  # not yet where the sound containers before it are taken
            rest = _take_containers(rest, waiting, collector, damage)
            damage.out_of_step = True
            waiting = []
        waiting.append((position, content))
        if damage.out_of_step or sum(len(one) for _, one in waiting) >= _TOGETHER_BYTES:
            rest = _take_containers(rest, waiting, collector, damage)
            waiting = []
    rest = _take_containers(rest, waiting, collector, damage)
    if rest.strip(b"\x00") and damage.end is None:
        damage.cut(window.stop)
    collector.notices += damage.notices(source)
    return collector.frames(Text("CAN frames ({kind})", kind="BLF"), start)


class _Damage:
    """What was found broken, to be told once at the end."""

    __slots__ = ("end", "first", "out_of_step", "skipped")

    def __init__(self) -> None:
        self.skipped = 0
        self.out_of_step = False
        self.first: int | None = None
        self.end: int | None = None

    def skip(self, position: int) -> None:
        self.skipped += 1
        self.out_of_step = True
        self.first = position if self.first is None else self.first

    def cut(self, position: int) -> None:
        self.end = position if self.end is None else self.end

    def notices(self, source: Source) -> list[Notice]:
        found = []
        if self.skipped:
            text = Text(
                "{name}: damaged in {skipped} places, the first in the container at byte "
                "{first}; the rest of that container was skipped and its frames are lost.",
                name=source.name,
                skipped=self.skipped,
                first=self.first,
            )
            found.append(Notice("log-incomplete", text, self.skipped))
        if self.end is not None:
            found.append(
                incomplete(
                    source,
                    Text("byte {number}", number=self.end),
                    Text("the file ends in the middle of a container"),
                )
            )
        return found


def _read_file_header(source: Source) -> datetime | None:
    if len(source.head) < _FILE_HEADER.size:
        raise DamagedLog(
            "the file ends inside its header",
            file=source.name,
            place=Text("byte {number}", number=len(source.head)),
            hint="Copy it again.",
        )
    fields = _FILE_HEADER.unpack_from(source.head)
    year, month, _, day, hour, minute, second, milli = fields[14:22]
    try:
        return datetime(year, month, day, hour, minute, second, milli * 1000)  # noqa: DTZ001 - local time
    except ValueError:
        return None


def _containers(
    window: MovingWindow, source: Source, damage: _Damage, progress: Progress
) -> Iterator[tuple[int, tuple[int, bytes]]]:
    """Yield position and (method, content) of every container; method -1 marks a bare object."""
    position = max(struct.unpack_from("<L", source.head, 4)[0], _OBJECT.size)
    while window.holds(position + _OBJECT.size):
        window.forget(position)
        report_bytes(progress, round(window.share * source.content.size), source.content.size)
        signature, header_size, _, size, kind = _OBJECT.unpack(window.part(position, position + _OBJECT.size))
        if signature != b"LOBJ" or size < max(header_size, _OBJECT.size) or size > _OBJECT_MAX:
            damage.skip(position)
            position = window.find(b"LOBJ", position + 1)
            continue
        end = position + size
        body = window.part(position, end)
        if not window.holds(end):
            damage.cut(window.stop)
        if kind != _CONTAINER_TYPE:
            yield position, (-1, body)
        elif len(body) >= _OBJECT.size + _CONTAINER.size:
            method, _ = _CONTAINER.unpack_from(body, _OBJECT.size)
            yield position, (method, body[_OBJECT.size + _CONTAINER.size :])
        position = _aligned_next(window, end, size)
    if window.part(position, window.stop).strip(b"\x00"):
        damage.cut(window.stop)


def _aligned_next(window: MovingWindow, end: int, size: int) -> int:
    """Objects are padded to four bytes, though some writers pad otherwise: look for the next one close by."""
    for gap in (size % 4, (-end) % 4, 0, 1, 2, 3):
        if window.part(end + gap, end + gap + 4) == b"LOBJ":
            return end + gap
    return end + size % 4


def _unpacked(packed: tuple[int, bytes], position: int, damage: _Damage) -> bytes:
    method, content = packed
    if method != 2:
        return content
    # The two libraries raise errors of their own; below, what stands before the damage is kept.
    with suppress(Exception):
        return bytes(_inflate(content))
    unpacker = zlib.decompressobj()
    unpacked = bytearray()
    try:
        # piece by piece, so that what stands before the damage is kept
        for begin in range(0, len(content), 512):
            unpacked += unpacker.decompress(content[begin : begin + 512])
        if not unpacker.eof:
            damage.cut(position)
    except zlib.error:
        damage.skip(position)
    return bytes(unpacked)


def _take_containers(
    rest: bytes, containers: Sequence[tuple[int, bytes]], collector: FrameCollector, damage: _Damage
) -> bytes:
    """Take what was unpacked, together where nothing is damaged; return the beginning of a cut object."""
    together = b"".join((rest, *(content for _, content in containers)))
    if not damage.out_of_step and (objects := find_objects(together)) is not None:
        _take_found(objects, collector)
        return together[objects.rest :]
    for position, content in containers:
        rest = _take_objects(rest + content, position, collector, damage)
    return rest


def _take_objects(data: bytes, container: int, collector: FrameCollector, damage: _Damage) -> bytes:
    """Take all whole objects; return the beginning of one that goes on in the next container.

    What follows a damaged object in the same container is given up: where the next one begins is not certain.
    """
    position = _first_object(data, damage)
    while (found := data.find(b"LOBJ", position, position + 8)) >= 0:
        position = found
        if position + _OBJECT.size > len(data):
            return data[position:]
        _, header_size, version, size, kind = _OBJECT.unpack_from(data, position)
        if size < max(header_size, _OBJECT.size) or size > _OBJECT_MAX:
            break
        if position + size > len(data):
            return data[position:]
        _take_object(data[position : position + size], (header_size, version, kind), collector)
        position += size
    if len(data) - position < _OBJECT.size:
        return data[position:]
    damage.skip(container)
    return b""


def _take_found(objects: Objects, collector: FrameCollector) -> None:
    """Take runs of classic frames at once, and other frames between them one by one."""
    kind = objects.kind
    collector.odd[ERROR_FRAMES] += int(np.count_nonzero(np.isin(kind, _ERROR_TYPES)))
    classic = np.isin(kind, _CLASSIC_TYPES) & holds_classic_frame(objects)
    single = np.isin(kind, (*_CLASSIC_TYPES, _FD_TYPE, _FD_64_TYPE)) & ~classic
    block, remote = classic_frames(objects, classic)
    collector.odd[REMOTE_FRAMES] += int(np.count_nonzero(remote))
    number = np.flatnonzero(classic)[~remote]
    block = block.only(~remote)
    wanted = collector.count(block.key)
    number, block = number[wanted], block.only(wanted)
    done = 0
    others = np.flatnonzero(single)
    for other, edge in zip(others.tolist(), np.searchsorted(number, others).tolist(), strict=True):
        if edge > done:
            collector.add_wanted(block.only(slice(done, edge)))
            done = edge
        begin = int(objects.place[other])
        head = struct.unpack_from("<HH", objects.data, begin + 4)
        body = objects.data[begin : begin + int(objects.size[other])]
        _take_object(body, (*head, int(kind[other])), collector)
    collector.add_wanted(block.only(slice(done, None)))


def _first_object(data: bytes, damage: _Damage) -> int:
    """Where to begin: at the start, or after damage at the first object that can be seen."""
    if not damage.out_of_step:
        return 0
    damage.out_of_step = False
    return max(data.find(b"LOBJ"), 0)


def _take_object(body: bytes, head: tuple[int, int, int], collector: FrameCollector) -> None:
    header_size, _, kind = head
    if kind in _ERROR_TYPES:
        collector.odd[ERROR_FRAMES] += 1
        return
    if kind not in (*_CLASSIC_TYPES, _FD_TYPE, _FD_64_TYPE):
        return
    if len(body) < _OBJECT.size + _VERSION_1.size:
        collector.odd[DAMAGED_FRAMES] += 1
        return
    flags, _, _, stamp = _VERSION_1.unpack_from(body, _OBJECT.size)
    time_s = stamp * (1e-5 if flags == _TEN_MICROSECONDS else 1e-9)
    try:
        frame = _frame(kind, body, max(header_size, _OBJECT.size + _VERSION_1.size))
    except struct.error:
        collector.odd[DAMAGED_FRAMES] += 1
        return
    if frame is None:
        collector.odd[REMOTE_FRAMES] += 1
        return
    channel, identifier, payload = frame
    key = frame_key(identifier & 0x1FFFFFFF, extended=bool(identifier & 0x80000000))
    collector.add(time_s, key, str(channel), payload)


def _frame(kind: int, body: bytes, at: int) -> tuple[int, int, bytes] | None:
    """Channel, identifier with its extended flag, payload; None for a remote frame."""
    if kind in _CLASSIC_TYPES:
        channel, flags, dlc, identifier, payload = _CLASSIC.unpack_from(body, at)
        return None if flags & _REMOTE_FLAG else (channel, identifier, payload[: min(dlc, 8)])
    if kind == _FD_TYPE:
        channel, flags, _, identifier, _, _, _, valid, payload = _FD.unpack_from(body, at)
        return None if flags & _REMOTE_FLAG else (channel, identifier, payload[:valid])
    fields = _FD_64.unpack_from(body, at)
    channel, _, valid, _, identifier, _, flags = fields[:7]
    begin = at + _FD_64.size
    # the writer may claim more bytes than it stored; the rest counts as zero
    stored = body[begin : min(begin + valid, fields[13] or len(body))]
    return None if flags & _REMOTE_FLAG_FD_64 else (channel, identifier, stored.ljust(valid, b"\0"))
