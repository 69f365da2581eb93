"""Bounds on what an MDF file states about itself, which its library believes."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any, Final

_VIRTUAL_TYPES: Final = (3, 6)
"""Channels that are counted and not stored (ASAM MDF 4.1, channel types)."""

_STRINGS: Final = 1
"""Channels whose samples have lengths of their own and are stored apart."""

_LONGEST_SAMPLE_BITS: Final = 1 << 24


def stray_channel(mdf: Any) -> str:
    """Name a channel that lies outside its record; empty when there is none.

    The library copies samples in compiled code without a look at the length of the record: a damaged offset
    makes it read and write foreign memory, which ends the program or spoils its data without a word.

    Parameters
    ----------
    mdf : asammdf.MDF
        An opened file.

    Returns
    -------
    str
    """
    measure = _ends_before_4 if str(mdf.version) < "4" else _ends_since_4
    for group in mdf.groups:
        record_bytes = int(group.channel_group.samples_byte_nr)
        spare_bytes = int(getattr(group.channel_group, "invalidation_bytes_nr", 0) or 0)
        for channel in group.channels:
            begin, end = measure(channel)
            if not 0 <= begin <= end <= record_bytes * 8 or not _has_its_flag(channel, spare_bytes):
                return str(channel.name)
    return ""


def end_with_file(mdf: Any, file_bytes: int) -> None:
    """Let the data blocks of an MDF 3 file end where the file ends.

    The library believes a stated length and hands out empty records, one by one, up to the end of it.
    """
    if str(mdf.version) >= "4":
        return
    for group in mdf.groups:
        for block in group.data_blocks:
            block.original_size = max(min(int(block.original_size), file_bytes - int(block.address)), 0)


def whole_blocks(mdf: Any, group: int, channels: Iterable[int], file_bytes: int, *, at_least: int) -> int:
    """Tell how many records of a group are best read at once; 0 where it must be read as a whole.

    Parts can be read where every record has one length and the file holds all data that it states: the
    library leaves what is missing of a part undefined. A part is no smaller than the largest block, for each
    one is unpacked anew for every part that touches it.
    """
    content = mdf.groups[group]
    if str(mdf.version) < "4" or any(content.channels[index].channel_type == _STRINGS for index in channels):
        return 0
    blocks = list(content.data_blocks)
    spare_bytes = int(content.channel_group.invalidation_bytes_nr)
    record_bytes = int(content.channel_group.samples_byte_nr)
    stated = sum(int(block.original_size) for block in blocks)
    inside = all(0 <= int(block.address) <= file_bytes - int(block.compressed_size) for block in blocks)
    if spare_bytes or not inside or not 0 < int(content.channel_group.cycles_nr) * record_bytes <= stated:
        return 0
    return max(at_least, max(int(block.original_size) for block in blocks) // record_bytes)


def _ends_since_4(channel: Any) -> tuple[int, int]:
    """First bit and the one behind the last, counted in the record."""
    if channel.channel_type in _VIRTUAL_TYPES:
        return 0, 0
    begin = int(channel.byte_offset) * 8
    return begin, begin + _bounded(channel) + int(channel.bit_offset)


def _ends_before_4(channel: Any) -> tuple[int, int]:
    begin = int(channel.start_offset) + 8 * int(getattr(channel, "additional_byte_offset", 0) or 0)
    return begin, begin + _bounded(channel)


def _bounded(channel: Any) -> int:
    """Length in bits; -1 where no sample can be so long, which no record holds."""
    count = int(channel.bit_count)
    return count if count <= _LONGEST_SAMPLE_BITS else -(1 << 62)


def _has_its_flag(channel: Any, spare_bytes: int) -> bool:
    """Tell whether the bit that marks invalid samples lies in the bytes set apart for it."""
    uses_flag = bool(int(getattr(channel, "flags", 0) or 0) & 2)
    return not uses_flag or 0 <= int(channel.pos_invalidation_bit) < spare_bytes * 8
