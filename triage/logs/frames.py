"""CAN frames of a recording, column by column."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.logs.source import Source
from triage.progress import Progress
from triage.speed_log import FloatArray, Notice

EXTENDED_FLAG: Final = 1 << 31
"""Set in a frame key for a 29-bit identifier, as DBC files do; 0x123 standard and extended differ."""

EXTENDED_MAX: Final = (1 << 29) - 1
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


class FrameCollector:
    """Gathers frames one by one; keeps only those of wanted identifiers.

    Parameters
    ----------
    wanted : frozenset of int
        Keys to keep.
    """

    __slots__ = ("_bus", "_buses", "_key", "_payload", "_time", "_wanted", "notices", "odd", "seen")

    def __init__(self, wanted: frozenset[int]) -> None:
        self._wanted = wanted
        self._time: list[float] = []
        self._key: list[int] = []
        self._bus: list[int] = []
        self._payload: list[bytes] = []
        self._buses: dict[str, int] = {}
        self.seen: Counter[int] = Counter()
        self.odd: Counter[str] = Counter()
        self.notices: list[Notice] = []

    def add(self, time_s: float, key: int, bus: str, payload: bytes) -> None:
        """Take one data frame."""
        self.seen[key] += 1
        if key in self._wanted:
            self._time.append(time_s)
            self._key.append(key)
            self._bus.append(self._buses.setdefault(bus, len(self._buses)))
            self._payload.append(payload)

    @property
    def is_empty(self) -> bool:
        """No data frame at all was seen."""
        return not self.seen

    def frames(self, kind: str, start: datetime | None) -> Frames:
        """Hand over what was gathered."""
        width = max(map(len, self._payload), default=0)
        padded = b"".join(payload.ljust(width, b"\0") for payload in self._payload)
        return Frames(
            format=kind,
            start=start,
            time_s=np.array(self._time, dtype=np.float64),
            key=np.array(self._key, dtype=np.uint32),
            bus=tuple(self._buses),
            bus_index=np.array(self._bus, dtype=np.int16),
            payload=np.frombuffer(padded, dtype=np.uint8).reshape(len(self._payload), width),
            length=np.array([len(payload) for payload in self._payload], dtype=np.uint8),
            seen=dict(self.seen),
            odd={name: count for name, count in self.odd.items() if count > 0},
            notices=tuple(self.notices),
        )


def incomplete(source: Source, place: str, what: str = "the file ends in the middle of a record") -> Notice:
    """Notice of a file that is cut off or damaged at a place."""
    text = f"{source.name}: the recording is incomplete: {what} ({place}); everything before it was used."
    return Notice("log-incomplete", text)


def report_bytes(progress: Progress, done: int, total: int) -> None:
    """Report progress by bytes of the file."""
    progress(min(done / max(total, 1), 1.0), "reading frames")
