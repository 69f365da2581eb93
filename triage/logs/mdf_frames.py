"""CAN frames of an MDF bus recording, some thousand records at a time."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from triage.logs.frames import EXTENDED_FLAG, EXTENDED_MAX, FrameBlock, FrameCollector, Frames
from triage.logs.mdf_layout import whole_blocks
from triage.progress import Progress
from triage.texts import Text

FRAME_CHANNEL: Final = "CAN_DataFrame"
RECORDS_AT_ONCE: Final = 1 << 14
_FIELDS: Final[tuple[str, ...]] = ("ID", "DataBytes", "IDE", "BusChannel", "DataLength")

Fields = Mapping[str, Any]
"""Columns of frames by the name of the field; the first two are always there."""


def named_channels(mdf: Any) -> list[tuple[int, int, str]]:
    """Group, channel and name of everything but the time channels."""
    return [
        (group, index, str(channel.name))
        for group, content in enumerate(mdf.groups)
        for index, channel in enumerate(content.channels)
        if index != mdf.masters_db.get(group, -1)
    ]


def frame_groups(mdf: Any) -> list[int]:
    """Return the groups that hold data frames."""
    return sorted({group for group, _, name in named_channels(mdf) if name == FRAME_CHANNEL})


def read_mdf_frames(mdf: Any, wanted: frozenset[int], file_bytes: int, progress: Progress) -> Frames:
    """Read the wanted frames of all groups.

    Parameters
    ----------
    mdf : asammdf.MDF
        An opened file.
    wanted : frozenset of int
        Keys to keep.
    file_bytes : int
        Size of the file; data said to lie behind its end are not believed.
    progress : Progress
    """
    collector = FrameCollector(wanted)
    groups = frame_groups(mdf)
    for done, group in enumerate(groups):
        for share, fields in _stretches(mdf, group, file_bytes):
            progress((done + share) / len(groups), "reading frames")
            _take(fields, collector)
    return collector.frames(Text("CAN frames ({kind})", kind="MDF"), mdf.start_time)


def _stretches(mdf: Any, group: int, file_bytes: int) -> Iterator[tuple[float, Fields]]:
    """Yield the columns of some records after others, and the share of the group before them."""
    index = {
        name.rpartition(".")[2]: number
        for owner, number, name in named_channels(mdf)
        if owner == group and "." in name
    }
    places = {field: index[field] for field in _FIELDS if field in index}
    total = int(mdf.groups[group].channel_group.cycles_nr)
    at_once = whole_blocks(mdf, group, places.values(), file_bytes, at_least=RECORDS_AT_ONCE)
    if not at_once:
        columns = {field: mdf.get(group=group, index=place, raw=True) for field, place in places.items()}
        yield 0.0, columns
        return
    chosen = [(None, group, place) for place in places.values()]
    for begin in range(0, total, at_once):
        count = min(at_once, total - begin)
        found = mdf.select(chosen, record_offset=begin, record_count=count, raw=True, copy_master=False)
        yield begin / total, dict(zip(places, found, strict=True))


def _take(fields: Fields, collector: FrameCollector) -> None:
    times = np.asarray(fields["ID"].timestamps, dtype=np.float64)
    ids = np.asarray(fields["ID"].samples, dtype=np.int64)
    extended = _numbers(fields, "IDE", 0, ids.size) != 0
    key = (ids & EXTENDED_MAX).astype(np.uint32) | np.where(extended, np.uint32(EXTENDED_FLAG), np.uint32(0))
    rows = np.flatnonzero(collector.count(key))
    payload = np.asarray(fields["DataBytes"].samples)[rows]
    count = _numbers(fields, "DataLength", payload.shape[1], ids.size)[rows]
    names, bus_index = np.unique(_numbers(fields, "BusChannel", 1, ids.size)[rows], return_inverse=True)
    length = np.clip(count, 0, payload.shape[1])
    kept = np.where(np.arange(payload.shape[1]) < length[:, np.newaxis], payload, np.uint8(0))
    buses = tuple(str(int(name)) for name in names)
    collector.add_wanted(FrameBlock(times[rows], key[rows], buses, bus_index, kept, length.astype(np.uint8)))


def _numbers(fields: Fields, name: str, otherwise: int, size: int) -> NDArray[np.int64]:
    """Return a column, or one value throughout where the file has none."""
    if name not in fields:
        return np.full(size, otherwise, dtype=np.int64)
    return np.asarray(fields[name].samples, dtype=np.int64)
