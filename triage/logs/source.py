"""What a reader is given: a file with its name, its first bytes and its content; and the text encoding."""

from __future__ import annotations

import itertools
import re
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from io import BytesIO
from pathlib import Path
from typing import Final

from triage.errors import DamagedLog
from triage.logs.content import Content, bytes_content
from triage.logs.zero_stretches import WithoutZeros, is_text_with_zeros
from triage.speed_log import Notice
from triage.texts import Text

HEAD_BYTES: Final = 1 << 16
LONGEST_LINE_BYTES: Final = 1 << 20
"""Parsers of tables keep a whole line in memory; no recorder writes one as long as this."""

_LINE_END: Final = re.compile(rb"\r\n|\n|\r")


@dataclass(frozen=True, slots=True)
class Source:
    """A file, unpacked on demand.

    Attributes
    ----------
    name : str
        Path as the user gave it; a member of an archive stands behind a colon.
    suffix : str
        Last suffix in lower case, without that of the packing.
    content : Content
        The unpacked bytes.
    head : bytes
        The first bytes.
    path : Path or None
        The file itself when it is not packed, for libraries that want to open it themselves.
    sheet : str
        Name of the sheet to read, where the user chose one of a workbook.
    """

    name: str
    suffix: str
    content: Content
    path: Path | None = None
    told: tuple[Notice, ...] = ()
    head: bytes = field(default=b"", repr=False)
    sheet: str = ""

    @property
    def data(self) -> bytes:
        """All unpacked bytes, kept in the memory until :meth:`release`."""
        return self.content.whole()

    def blocks(self) -> Iterator[tuple[float, bytes]]:
        """Unpacked bytes in blocks of about a megabyte, each with the share of the file used up so far."""
        return self.content.blocks()

    def release(self) -> None:
        """Let go of what :attr:`data` keeps in the memory."""
        self.content.release()

    @property
    def notices(self) -> tuple[Notice, ...]:
        """What happened while unpacking and reading so far."""
        return (*self.told, *self.content.notices)

    @property
    def is_text(self) -> bool:
        """No byte in the head that only binary files hold."""
        return _is_utf16(self.head) or b"\x00" not in self.head

    @property
    def encoding(self) -> str:
        """Encoding that fits the head."""
        return guess_encoding(self.head)

    def head_lines(self) -> list[str]:
        """Whole lines of the head as text."""
        return head_lines(self.head, self.encoding)

    def text_bytes(self) -> bytes:
        """Return the content as bytes that extend ASCII, without a byte order mark."""
        encoding = self.encoding
        if encoding.startswith("utf-16"):
            return self.data.decode(encoding, errors="replace").encode("utf-8")
        return self.data.removeprefix(b"\xef\xbb\xbf")

    @property
    def text_encoding(self) -> str:
        """Encoding of :meth:`text_bytes`."""
        return "utf-8" if self.encoding.startswith("utf") else self.encoding

    def text_after(self, lines: int) -> BytesIO:
        """Return :meth:`text_bytes` to be read from behind its first lines.

        To let a parser of tables skip them instead would cost as much again as the parsing.

        Raises
        ------
        DamagedLog
            When a line is longer than any recorder writes.
        """
        text = self.text_bytes()
        _refuse_endless_line(self.name, text)
        ends = [found.end() for found in itertools.islice(_LINE_END.finditer(text), lines)]
        stream = BytesIO(text)  # shares the bytes: a copy of what is left would be as large as the file
        stream.seek(ends[-1] if ends else 0)
        return stream


def source_of(
    name: str, suffix: str, content: Content, *, path: Path | None = None, told: tuple[Notice, ...] = ()
) -> Source:
    """Make a source of some content by reading its first bytes."""
    head = _head_of(content)
    if is_text_with_zeros(head):
        content = WithoutZeros(name, content)
        head = _head_of(content) if b"\x00" in head else head
    return Source(name, suffix, content, path, told, head)


def _head_of(content: Content) -> bytes:
    head = b""
    for _, block in content.blocks():
        head += block
        if len(head) >= HEAD_BYTES:
            break
    return head[:HEAD_BYTES]


def text_source(source: Source, data: bytes, told: tuple[Notice, ...] = ()) -> Source:
    """Make a source of text that was taken out of another one, such as a sheet of a workbook."""
    content = bytes_content(source.name, data)
    return replace(source, content=content, suffix=".tsv", path=None, told=told, head=data[:HEAD_BYTES])


def _refuse_endless_line(name: str, text: bytes) -> None:
    for begin in range(0, len(text), LONGEST_LINE_BYTES):
        stop = begin + LONGEST_LINE_BYTES
        if stop < len(text) and text.find(b"\n", begin, stop) < 0 and text.find(b"\r", begin, stop) < 0:
            raise endless_line(name, begin)


def endless_line(name: str, place: int) -> DamagedLog:
    """Refuse a text for a line that no recorder writes."""
    return DamagedLog(
        "a line of more than a million characters",
        file=name,
        place=Text("byte {number}", number=place),
        hint="Export the recording again, one row a line.",
    )


def guess_encoding(head: bytes) -> str:
    """Judge the encoding of a text from its first bytes.

    Returns
    -------
    str
        ``utf-8-sig``, ``utf-16``, ``utf-16-le``, ``utf-16-be``, ``utf-8`` or ``cp1252``.
    """
    if head.startswith(b"\xef\xbb\xbf"):
        return "utf-8-sig"
    if head.startswith((b"\xff\xfe", b"\xfe\xff")):
        return "utf-16"
    if _is_utf16(head):
        return "utf-16-le" if head[1:2] == b"\x00" else "utf-16-be"
    try:
        # the last character may be cut in the middle
        head[: -4 if len(head) >= HEAD_BYTES else None].decode("utf-8")
    except UnicodeDecodeError as error:
        return (
            "utf-8" if error.end >= len(head) - 4 and error.reason == "unexpected end of data" else "cp1252"
        )
    return "utf-8"


def head_lines(head: bytes, encoding: str) -> list[str]:
    """Whole lines of the first bytes of a text; only the line ends that all programs agree on count."""
    text = head.decode(encoding, errors="replace").replace("\r\n", "\n").replace("\r", "\n")
    lines = text.split("\n")
    return lines[:-1] if len(head) >= HEAD_BYTES else lines


def _is_utf16(head: bytes) -> bool:
    if head.startswith((b"\xff\xfe", b"\xfe\xff")):
        return True
    sample = head[:400]
    half = len(sample) // 2
    zeros_even, zeros_odd = sample[0::2].count(0), sample[1::2].count(0)
    return half >= 8 and max(zeros_even, zeros_odd) > 0.9 * half and min(zeros_even, zeros_odd) == 0
