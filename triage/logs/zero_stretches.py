"""Texts with stretches of zero bytes, as a recorder leaves them that loses its power while it writes."""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Final

from triage.logs.content import Content, Stream, Unpacking
from triage.speed_log import Notice
from triage.texts import Text

_STRETCH: Final = re.compile(rb"\x00{16,}")
_OTHER_CONTROLS: Final = re.compile(rb"[\x00-\x08\x0e-\x1a\x1c-\x1f]")
_BROKEN_LINES: Final = b"?\n?"
"""In the place of a stretch: a line that it cuts off, at either end, must not pass for a whole one."""


def is_text_with_zeros(head: bytes) -> bool:
    """Tell whether the first bytes are a text in single bytes, perhaps with stretches of zeros."""
    rest = _STRETCH.sub(b"", head) if b"\x00" in head else head
    return rest.count(b"\n") > 1 and _OTHER_CONTROLS.search(rest) is None


class WithoutZeros(Content):
    """A text with a broken line in the place of every stretch of zeros.

    Parameters
    ----------
    name : str
        For messages.
    content : Content
    """

    __slots__ = ("_inner",)

    def __init__(self, name: str, content: Content) -> None:
        self._inner = content
        super().__init__(name, self._opened, content.size)

    @property
    def notices(self) -> tuple[Notice, ...]:
        """What was heard while reading so far."""
        return (*self._inner.notices, *super().notices)

    def whole(self) -> bytes:
        """Return all of it in one piece."""
        if self._data is None:
            self._data = self.mended(self._inner.whole())
        return self._data

    def release(self) -> None:
        """Forget what :meth:`whole` remembers."""
        self._inner.release()
        super().release()

    @contextmanager
    def _opened(self) -> Iterator[Stream]:
        with self._inner.opened() as stream:
            yield Stream(_Mended(stream.stream, self), stream.raw, stream.packed_bytes)

    def mended(self, text: bytes) -> bytes:
        """Return a text without its stretches of zeros, and say so where there are any."""
        if b"\x00" not in text:
            return text
        mended, count = _STRETCH.subn(_BROKEN_LINES, text)
        if count:
            self._hear(
                Text(
                    "{name}: stretches of zero bytes, as left when a recorder loses its power, were left "
                    "out; what stood there is lost.",
                    name=self._name,
                )
            )
        return mended


class _Mended:
    def __init__(self, stream: Unpacking, content: WithoutZeros) -> None:
        self._stream, self._content = stream, content

    def read1(self, size: int = 1 << 20, /) -> bytes:
        """Return some bytes; empty at the end."""
        return self._content.mended(self._stream.read1(size))

    def close(self) -> None:
        """Leave it to whoever opened it."""
