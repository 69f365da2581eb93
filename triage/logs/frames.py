"""CAN frames of a recording, column by column."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.logs.source import Source
from triage.progress import Progress
from triage.speed_log import FloatArray, Notice
from triage.texts import Text

EXTENDED_FLAG: Final = 1 << 31
"""Set in a frame key for a 29-bit identifier, as DBC files do; 0x123 standard and extended differ."""

EXTENDED_MAX: Final = (1 << 29) - 1
STANDARD_MAX: Final = (1 << 11) - 1
REPORT_EVERY: Final = 4096


def frame_key(identifier: int, *, extended: bool) -> int:
    """Key of an identifier."""
    return identifier | EXTENDED_FLAG if extended else identifier


def format_key(key: int) -> str:
    """Key as users write it: three hex digits, or eight for 29 bits."""
    return f"{key & ~EXTENDED_FLAG:08X}" if key & EXTENDED_FLAG else f"{key:03X}"


@dataclass(frozen=True, slots=True)
class Frames:
    """The wanted data frames of a file, in its order.

    Attributes
    ----------
    time_s : float64[N]
        Seconds since ``start`` (or on the clock of the file when it tells no start).
    key : uint32[N]
        See :func:`frame_key`.
    bus : tuple of str, bus_index : int16[N]
        Names of the buses, and which one each frame came over.
    payload : uint8[N, W]
        Padded with zeros to the longest.
    length : uint8[N]
        Bytes that were there.
    seen : mapping of int to int
        Key and number of data frames, wanted or not.
    odd : mapping of str to int
        What was left out, in the user's words, and how often: error frames, remote frames, unreadable lines.
    """

    format: str
    start: datetime | None
    time_s: FloatArray
    key: NDArray[np.uint32]
    bus: tuple[str, ...]
    bus_index: NDArray[np.int16]
    payload: NDArray[np.uint8]
    length: NDArray[np.uint8]
    seen: Mapping[int, int]
    odd: Mapping[str, int] = field(default_factory=dict)
    notices: tuple[Notice, ...] = ()


@dataclass(frozen=True, slots=True)
class FrameBlock:
    """Some data frames of a file in its order, wanted or not yet chosen.

    Attributes
    ----------
    time_s : float64[N]
    key : uint32[N]
    bus : tuple of str, bus_index : int[N]
        Names, and which one each frame came over; a name may be of no frame.
    payload : uint8[N, W]
        Padded with zeros.
    length : uint8[N]
    """

    time_s: FloatArray
    key: NDArray[np.uint32]
    bus: tuple[str, ...]
    bus_index: NDArray[np.intp]
    payload: NDArray[np.uint8]
    length: NDArray[np.uint8]

    def only(self, chosen: NDArray[np.bool_] | slice) -> FrameBlock:
        """Return some of them."""
        return replace(
            self,
            time_s=self.time_s[chosen],
            key=self.key[chosen],
            bus_index=self.bus_index[chosen],
            payload=self.payload[chosen],
            length=self.length[chosen],
        )


class FrameCollector:
    """Gathers frames one by one or in blocks; keeps only those of wanted identifiers.

    Parameters
    ----------
    wanted : frozenset of int
        Keys to keep.
    """

    __slots__ = ("_blocks", "_buses", "_pending", "_wanted", "notices", "odd", "seen")

    def __init__(self, wanted: frozenset[int]) -> None:
        self._wanted = wanted
        self._pending: list[tuple[float, int, int, bytes]] = []
        self._blocks: list[FrameBlock] = []
        self._buses: dict[str, int] = {}
        self.seen: Counter[int] = Counter()
        self.odd: Counter[str] = Counter()
        self.notices: list[Notice] = []

    def add(self, time_s: float, key: int, bus: str, payload: bytes) -> None:
        """Take one data frame."""
        self.seen[key] += 1
        if key in self._wanted:
            self._pending.append((time_s, key, self._buses.setdefault(bus, len(self._buses)), payload))

    def count(self, key: NDArray[np.uint32]) -> NDArray[np.bool_]:
        """Count many data frames as seen and tell which of them are wanted, bool[N]."""
        standard = key <= STANDARD_MAX
        counts = np.bincount(key[standard], minlength=STANDARD_MAX + 1)
        for number in np.flatnonzero(counts).tolist():
            self.seen[number] += int(counts[number])
        numbers, times = np.unique(key[~standard], return_counts=True)
        for number, count in zip(numbers.tolist(), times.tolist(), strict=True):
            self.seen[number] += count
        return np.isin(key, np.array(sorted(self._wanted), dtype=np.uint32))

    def add_wanted(self, block: FrameBlock) -> None:
        """Take frames that :meth:`count` has counted and found wanted."""
        if block.time_s.size == 0:
            return
        self._settle()
        used, first = np.unique(block.bus_index, return_index=True)
        for number in used[np.argsort(first)].tolist():
            self._buses.setdefault(block.bus[number], len(self._buses))
        number_of = np.array([self._buses.get(name, -1) for name in block.bus], dtype=np.intp)
        self._blocks.append(replace(block, bus_index=number_of[block.bus_index]))

    @property
    def is_empty(self) -> bool:
        """No data frame at all was seen."""
        return not self.seen

    def frames(self, kind: str, start: datetime | None) -> Frames:
        """Hand over what was gathered."""
        self._settle()
        blocks = self._blocks or [_block_of([])]
        width = max(block.payload.shape[1] for block in blocks)
        payload = np.zeros((sum(len(block.payload) for block in blocks), width), dtype=np.uint8)
        row = 0
        for block in blocks:
            payload[row : row + len(block.payload), : block.payload.shape[1]] = block.payload
            row += len(block.payload)
        return Frames(
            format=kind,
            start=start,
            time_s=np.concatenate([block.time_s for block in blocks]),
            key=np.concatenate([block.key for block in blocks]),
            bus=tuple(self._buses),
            bus_index=np.concatenate([block.bus_index for block in blocks]).astype(np.int16),
            payload=payload,
            length=np.concatenate([block.length for block in blocks]),
            seen=dict(self.seen),
            odd={name: count for name, count in self.odd.items() if count > 0},
            notices=tuple(self.notices),
        )

    def _settle(self) -> None:
        """Make a block of the frames that came one by one."""
        if self._pending:
            self._blocks.append(_block_of(self._pending))
            self._pending = []


def _block_of(frames: Sequence[tuple[float, int, int, bytes]]) -> FrameBlock:
    width = max((len(payload) for _, _, _, payload in frames), default=0)
    padded = b"".join(payload.ljust(width, b"\0") for _, _, _, payload in frames)
    return FrameBlock(
        time_s=np.array([time_s for time_s, _, _, _ in frames], dtype=np.float64),
        key=np.array([key for _, key, _, _ in frames], dtype=np.uint32),
        bus=(),
        bus_index=np.array([bus for _, _, bus, _ in frames], dtype=np.intp),
        payload=np.frombuffer(padded, dtype=np.uint8).reshape(len(frames), width),
        length=np.array([len(payload) for _, _, _, payload in frames], dtype=np.uint8),
    )


CUT_RECORD: Final = Text("the file ends in the middle of a record")
CUT_LINE: Final = Text("the last line is cut off")

ERROR_FRAMES: Final = Text("error frames")
REMOTE_FRAMES: Final = Text("remote frames")
DAMAGED_FRAMES: Final = Text("damaged frames")
BROKEN_DATA: Final = Text("frames with damaged data")
TIMELESS_FRAMES: Final = Text("frames without a readable time")
UNREAD_LINES: Final = Text("unreadable lines")
UNREAD_ROWS: Final = Text("unreadable rows")
"""What is counted in ``odd``."""


def incomplete(source: Source, place: Text, what: Text = CUT_RECORD) -> Notice:
    """Notice of a file that is cut off or damaged at a place."""
    text = Text(
        "{name}: the recording is incomplete: {what} ({place}); everything before it was used.",
        name=source.name,
        what=what,
        place=place,
    )
    return Notice("log-incomplete", text)


def report_bytes(progress: Progress, done: int, total: int) -> None:
    """Report progress by bytes of the file."""
    progress(min(done / max(total, 1), 1.0), "reading frames")
