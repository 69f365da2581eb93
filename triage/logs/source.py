"""Opening a file: refusing what is no recording, unpacking, and judging the text encoding."""

from __future__ import annotations

import bz2
import gzip
import io
import itertools
import lzma
import re
import stat
import zipfile
import zlib
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import IO, Any, Final, Protocol

from triage.errors import DamagedLog, LogReadError
from triage.speed_log import Notice

HEAD_BYTES: Final = 1 << 16
MAX_UNPACKED_BYTES: Final = 4 << 30
"""An unpacked recording beyond this is refused before it fills the memory."""

_CHUNK: Final = 1 << 20
_LINE_END: Final = re.compile(rb"\r\n|\n|\r")


class Unpacking(Protocol):
    """A stream that hands out unpacked bytes as far as it got."""

    def read1(self, size: int = ..., /) -> bytes:
        """Return some unpacked bytes; empty at the end."""


def _gunzip(raw: IO[bytes]) -> Unpacking:
    return gzip.GzipFile(fileobj=raw)


_PACKED: Final[tuple[tuple[bytes, str, Callable[[IO[bytes]], Unpacking]], ...]] = (
    (b"\x1f\x8b", ".gz", _gunzip),
    (b"BZh", ".bz2", bz2.BZ2File),
    (b"\xfd7zXZ\x00", ".xz", lzma.LZMAFile),
)


@dataclass(frozen=True, slots=True)
class Source:
    """A file read into memory, unpacked.

    Attributes
    ----------
    name : str
        Path as the user gave it.
    suffix : str
        Last suffix in lower case, without that of the packing.
    data : bytes
        Unpacked content.
    path : Path or None
        The file itself when it is not packed, for libraries that want to open it themselves.
    notices : tuple of Notice
        What happened while unpacking.
    """

    name: str
    suffix: str
    data: bytes
    path: Path | None
    notices: tuple[Notice, ...] = ()

    @property
    def head(self) -> bytes:
        """The first bytes."""
        return self.data[:HEAD_BYTES]

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

    def text_after(self, lines: int) -> bytes:
        """Return :meth:`text_bytes` without its first lines.

        To let a parser of tables skip them instead would cost as much again as the parsing.
        """
        text = self.text_bytes()
        ends = [found.end() for found in itertools.islice(_LINE_END.finditer(text), lines)]
        return text[ends[-1] :] if ends else text


def open_source(file: str | Path) -> Source:
    """Read a file, unpacked where it is packed.

    Raises
    ------
    LogReadError
        When there is no such file, it is a folder or a device, or may not be read.
    DamagedLog
        When it is empty or cannot be unpacked at all.
    """
    name, path = str(file), Path(file)
    if not name:  # Path would take it for the current folder
        raise LogReadError("a file name is empty", hint="Name a recording.")
    _refuse_what_is_no_file(name, path)
    try:
        data = path.read_bytes()
    except OSError as error:
        reason = error.strerror or str(error)
        raise LogReadError(
            f"cannot be read: {reason}", file=name, hint="Check the rights of the file."
        ) from None
    if not data:
        raise DamagedLog("the file is empty", file=name, place="byte 0", hint="Record or copy the log again.")
    return _unpacked(name, path, data)


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
    lines = re.split("\r\n|\n|\r", head.decode(encoding, errors="replace"))
    return lines[:-1] if len(head) >= HEAD_BYTES else lines


def _is_utf16(head: bytes) -> bool:
    if head.startswith((b"\xff\xfe", b"\xfe\xff")):
        return True
    sample = head[:400]
    half = len(sample) // 2
    zeros_even, zeros_odd = sample[0::2].count(0), sample[1::2].count(0)
    return half >= 8 and max(zeros_even, zeros_odd) > 0.9 * half and min(zeros_even, zeros_odd) == 0


def _refuse_what_is_no_file(name: str, path: Path) -> None:
    try:
        mode = path.stat().st_mode
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise LogReadError(f"cannot be opened: {reason}", file=name, hint="Check the path.") from None
    if stat.S_ISDIR(mode):
        raise LogReadError("this is a folder", file=name, hint="Give the files in it one by one.")
    if not stat.S_ISREG(mode):
        raise LogReadError(
            "this is a device or a pipe, not a file", file=name, hint="Save the log to a file first."
        )


def _unpacked(name: str, path: Path, data: bytes) -> Source:
    for magic, ending, opener in _PACKED:
        if data.startswith(magic):
            suffix = Path(path.name.lower().removesuffix(ending)).suffix
            content, notices = _unpack_stream(name, opener(io.BytesIO(data)))
            return Source(name, suffix, content, None, notices)
    if data.startswith(b"PK\x03\x04") and path.suffix.lower() == ".zip":
        return _unpack_zip(name, data)
    return Source(name, path.suffix.lower(), data, path)


def _unpack_zip(name: str, data: bytes) -> Source:
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            members = [info for info in archive.infolist() if not info.is_dir()]
            if len(members) != 1:
                raise DamagedLog(
                    f"the archive holds {len(members)} files",
                    file=name,
                    hint="Unpack it and choose the log in it.",
                )
            with archive.open(members[0]) as stream:
                content, notices = _unpack_stream(name, stream)
            return Source(name, Path(members[0].filename).suffix.lower(), content, None, notices)
    except (zipfile.BadZipFile, NotImplementedError, RuntimeError) as error:
        raise DamagedLog(f"cannot be unpacked: {error}", file=name, hint="Copy the file again.") from None


def _unpack_stream(name: str, stream: Any) -> tuple[bytes, tuple[Notice, ...]]:
    chunks: list[bytes] = []
    size = 0
    try:
        # read1 hands out what is unpacked so far, so that a cut file loses nothing before the cut
        while chunk := stream.read1(_CHUNK):
            chunks.append(chunk)
            size += len(chunk)
            if size > MAX_UNPACKED_BYTES:
                raise DamagedLog(
                    f"unpacks to more than {MAX_UNPACKED_BYTES >> 30} GB",
                    file=name,
                    hint="Cut the recording in parts.",
                )
    except (EOFError, OSError, zlib.error, lzma.LZMAError, zipfile.BadZipFile) as error:
        return _kept_of_cut(name, b"".join(chunks), error)
    if not size:
        raise DamagedLog("the packed file is empty", file=name, hint="Record or copy the log again.")
    return b"".join(chunks), ()


def _kept_of_cut(name: str, content: bytes, error: Exception) -> tuple[bytes, tuple[Notice, ...]]:
    if not content:
        raise DamagedLog(f"cannot be unpacked: {error}", file=name, hint="Copy the file again.") from None
    text = f"{name}: the packed file is damaged or cut off; what could be unpacked was used."
    return content, (Notice("log-incomplete", text),)
