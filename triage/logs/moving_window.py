"""Bytes of a source by their place in it, of which only those still wanted are in the memory."""

from __future__ import annotations

from typing import Final

from triage.logs.source import Source

_WORTH_MOVING: Final = 1 << 20


class MovingWindow:
    """A part of a source that moves on and never back.

    Places are counted from the beginning of the source.

    Attributes
    ----------
    share : float
        How much of the file is used up.
    """

    __slots__ = ("_blocks", "_data", "_start", "share")

    def __init__(self, source: Source) -> None:
        self._blocks = source.blocks()
        self._data = b""
        self._start = 0
        self.share = 0.0

    @property
    def stop(self) -> int:
        """The place behind the last byte read so far; the end of the source once more was wanted in vain."""
        return self._start + len(self._data)

    def holds(self, stop: int) -> bool:
        """Read on up to a place, and tell whether the source goes so far."""
        waiting, there = [self._data], self.stop
        while there < stop:
            following = next(self._blocks, None)
            if following is None:
                break
            self.share, block = following
            waiting.append(block)
            there += len(block)
        if len(waiting) > 1:
            self._data = b"".join(waiting)
        return there >= stop

    def part(self, begin: int, stop: int) -> bytes:
        """Return the bytes between two places, fewer where the source ends before."""
        self.holds(stop)
        return self._data[max(begin - self._start, 0) : max(stop - self._start, 0)]

    def find(self, mark: bytes, begin: int) -> int:
        """Return the first place of a mark from a place on, or the end of the source."""
        while True:
            found = self._data.find(mark, max(begin - self._start, 0))
            if found >= 0:
                return self._start + found
            begin = max(begin, self.stop - len(mark) + 1)
            self.forget(begin)
            if not self.holds(self.stop + 1):
                return self.stop

    def forget(self, begin: int) -> None:
        """Let go of what stands before a place, once that is much."""
        begin = min(begin, self.stop)
        if begin - self._start >= min(len(self._data), _WORTH_MOVING):
            self._data = self._data[begin - self._start :]
            self._start = begin
