"""Objects of a BLF container, many at once.

Only containers whose objects follow one another without a fault are taken here; all others are read object by
object, with the care that damage needs.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.logs.frames import EXTENDED_FLAG, EXTENDED_MAX, FrameBlock
from triage.logs.text_lines import Bytes, Places
from triage.speed_log import FloatArray

MARK: Final = int.from_bytes(b"LOBJ", "little")
OBJECT_BYTES: Final = 16
STAMPED_BYTES: Final = 32
CLASSIC_BYTES: Final = 16
LARGEST_GAP: Final = 8
"""Objects are padded to four bytes, or not at all; the next one begins within so many bytes."""

LONGEST_DATA: Final = 8
_TEN_MICROSECONDS: Final = 1
_REMOTE_FLAG: Final = 0x80
_EXTENDED_BIT: Final = 0x80000000


@dataclass(frozen=True, slots=True)
class Objects:
    """Whole objects in the order of a container.

    Attributes
    ----------
    data : bytes
    place, size, kind, header : int[N]
        First byte, bytes, type and bytes of the header.
    rest : int
        First byte behind the last whole object.
    """

    data: bytes
    place: Places
    size: Places
    kind: Places
    header: Places
    rest: int


def find_objects(data: bytes) -> Objects | None:
    """Find the objects of a container; None when they do not follow one another without a fault."""
    if len(data) < STAMPED_BYTES or not data.startswith(b"LOBJ"):
        return None
    word = _numbers(data, "<u4")
    place = _regular_places(word, len(data))
    size = word[np.minimum(place + 8, word.size - 1)].astype(np.intp)
    header = _numbers(data, "<u2")[place + 4].astype(np.intp)
    end = place + size
    inside = end <= len(data)
    whole = place.size if inside.all() else int(np.argmin(inside))
    # What seems to begin inside the object that is cut off does not count.
    place, size, header, end = place[:whole], size[:whole], header[:whole], end[:whole]
    gap = place[1:] - end[:-1]
    if (
        not whole
        or np.any(size < np.maximum(header, OBJECT_BYTES))
        or np.any((gap < 0) | (gap >= LARGEST_GAP))
    ):
        return None
    rest = int(end[-1])
    following = data.find(b"LOBJ", rest, rest + LARGEST_GAP)
    if following < 0 and len(data) - rest >= OBJECT_BYTES:
        return None
    kind = word[place + 12].astype(np.intp)
    return Objects(data, place, size, kind, header, following if following >= 0 else rest)


def _regular_places(word: NDArray[np.unsignedinteger], data_bytes: int) -> Places:
    """Return where objects seem to begin: at equal distances if they are of one size, else at each mark.

    Looking at some places is many times faster than looking at all.
    """
    size = int(word[8])
    if OBJECT_BYTES <= size <= data_bytes:
        place = np.arange(0, data_bytes - OBJECT_BYTES + 1, size, dtype=np.intp)
        if np.all(word[place] == MARK) and np.all(word[place + 8] == size):
            return place
    place = np.flatnonzero(word == MARK)
    return place[place + OBJECT_BYTES <= data_bytes]


def classic_frames(objects: Objects, chosen: NDArray[np.bool_]) -> tuple[FrameBlock, NDArray[np.bool_]]:
    """Return the classic frames among chosen objects, and which of them are remote frames, bool[N].

    Every chosen object must hold a whole classic frame (see :func:`holds_classic_frame`).
    """
    data, place = objects.data, objects.place[chosen]
    flags = _numbers(data, "<u4")[place + OBJECT_BYTES]
    stamp = _numbers(data, "<u8")[place + 24]
    begin = place + np.maximum(objects.header[chosen], STAMPED_BYTES)
    code = np.frombuffer(data, dtype=np.uint8)
    identifier = _numbers(data, "<u4")[begin + 4]
    extended = np.where(identifier & np.uint32(_EXTENDED_BIT), np.uint32(EXTENDED_FLAG), np.uint32(0))
    length = np.minimum(code[begin + 3], LONGEST_DATA)
    channel, bus_index = _different(_numbers(data, "<u2")[begin])
    payload = _payload(data, begin + 8, length)
    scale = np.where(flags == _TEN_MICROSECONDS, 1e-5, 1e-9)
    time_s: FloatArray = stamp.astype(np.float64) * scale
    block = FrameBlock(
        time_s=time_s,
        key=(identifier & np.uint32(EXTENDED_MAX)) | extended,
        bus=tuple(str(number) for number in channel.tolist()),
        bus_index=bus_index,
        payload=payload,
        length=length,
    )
    return block, (code[begin + 2] & _REMOTE_FLAG) != 0


def holds_classic_frame(objects: Objects) -> NDArray[np.bool_]:
    """Whether each object is large enough for a classic frame."""
    body = np.maximum(objects.header, STAMPED_BYTES) + CLASSIC_BYTES
    fits: NDArray[np.bool_] = objects.size >= body
    return fits


def _different(number: NDArray[np.unsignedinteger]) -> tuple[NDArray[np.unsignedinteger], Places]:
    """Return the different numbers, nearly always one, and which each is."""
    if number.size and np.all(number == number[0]):
        return number[:1], np.zeros(number.size, dtype=np.intp)
    return np.unique(number, return_inverse=True)


def _payload(data: bytes, place: Places, length: Bytes) -> Bytes:
    eight = np.ascontiguousarray(_numbers(data, "<u8")[place])
    payload = eight.view(np.uint8).reshape(-1, LONGEST_DATA)
    if np.all(length == LONGEST_DATA):
        return payload
    kept: Bytes = np.where(np.arange(LONGEST_DATA) < length[:, np.newaxis], payload, np.uint8(0))
    return kept


def _numbers(data: bytes, kind: str) -> NDArray[np.unsignedinteger]:
    """Return the number that begins at every byte."""
    form = np.dtype(kind)
    return np.ndarray((len(data) - form.itemsize + 1,), form, buffer=data, strides=(1,))
