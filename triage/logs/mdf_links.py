"""The links from block to block of an MDF file, followed before its library, which never leaves a circle."""

from __future__ import annotations

import struct
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from typing import IO, Final

MOST_BLOCKS: Final = 2_000_000
_HEADER_AT: Final = 64


@dataclass(slots=True)
class _Links:
    """Reads links; remembers every block that was passed, for a sound file passes none twice."""

    file: IO[bytes]
    size: int
    place_of: Callable[[int, int], int]
    form: struct.Struct
    passed: set[int] = field(default_factory=set)

    def link(self, block: int, number: int) -> int:
        """Return a link of a block; 0 where it leads out of the file, which the library tells by itself."""
        place = self.place_of(block, number)
        if not 0 <= place <= self.size - self.form.size:
            return 0
        self.file.seek(place)
        content = self.file.read(self.form.size)
        found = int(self.form.unpack(content)[0]) if len(content) == self.form.size else 0
        return found if found < self.size else 0

    def chain(self, first: int) -> Iterator[int]:
        """Yield a block and those that follow it."""
        while first:
            if first in self.passed or len(self.passed) >= MOST_BLOCKS:
                raise CircleError("its blocks follow one another in a circle")
            self.passed.add(first)
            yield first
            first = self.link(first, 0)


class CircleError(ValueError):
    """Blocks follow one another in a circle, or there are more than any file has."""


def follow_links(file: IO[bytes], size: int) -> None:
    """Follow the lists of groups, channels and data blocks.

    Parameters
    ----------
    file : binary file
        Left at its beginning.
    size : int
        Bytes of the file.

    Raises
    ------
    CircleError
        When a list comes back to a block that it has passed.

    Notes
    -----
    ASAM MDF 4.1: the links of a block begin at its byte 24, the first one leads to the next block of the
    list. In versions before 4 blocks begin with two letters and their size, and links have four bytes.
    """
    file.seek(8)
    old = file.read(1) < b"4"
    form = struct.Struct("<I" if old else "<Q")
    links = _Links(file, size, _place_before_4 if old else _place_since_4, form)
    for group_of_data in links.chain(links.link(_HEADER_AT, 0)):
        for group in links.chain(links.link(group_of_data, 1)):
            for channel in links.chain(links.link(group, 1)):
                _follow_parts(links, channel, old=old)
        if not old:
            _follow_data(links, links.link(group_of_data, 2))
    if not old:
        for number in (1, 3, 4):  # history, attachments, events
            for _ in links.chain(links.link(_HEADER_AT, number)):
                pass
    file.seek(0)


def _place_before_4(block: int, number: int) -> int:
    return block + 4 + 4 * number


def _place_since_4(block: int, number: int) -> int:
    return block + 24 + 8 * number


def _follow_parts(links: _Links, channel: int, *, old: bool) -> None:
    """Follow the channels that a channel is composed of, and theirs."""
    waiting = [] if old else [links.link(channel, 1)]
    while waiting:
        first = waiting.pop()
        if _name(links, first) == b"##CN":
            waiting += [links.link(part, 1) for part in links.chain(first)]


def _follow_data(links: _Links, first: int) -> None:
    """Follow a list of data blocks, which a header of the list may stand before."""
    if _name(links, first) == b"##HL":
        first = links.link(first, 0)
    if _name(links, first) in (b"##DL", b"##LD"):
        for _ in links.chain(first):
            pass


def _name(links: _Links, block: int) -> bytes:
    if not 0 < block <= links.size - 4:
        return b""
    links.file.seek(block)
    return links.file.read(4)
