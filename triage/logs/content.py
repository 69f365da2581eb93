"""The bytes of a recording, packed or not: read in blocks or as a whole, and never more than is sane."""

from __future__ import annotations

import bz2
import gzip
import io
import lzma
import os
import stat
import zipfile
import zlib
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, closing, contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import IO, Any, Final, Protocol, cast

from triage.errors import DamagedLog, LogReadError
from triage.reasons import reason_of
from triage.speed_log import Notice
from triage.texts import Text

MAX_UNPACKED_BYTES: Final = 4 << 30
"""A recording beyond this is refused before it fills the memory."""

MAX_EXPANSION: Final = 250
"""Unpacked bytes for one packed byte. Logs reach 5 to 50; a stream of one repeated byte reaches 1000."""

_FREE_BYTES: Final = 64 << 20
"""Up to here the expansion does not matter."""

_CHUNK: Final = 1 << 20
_SMALL_CHUNK: Final = 1 << 14
_OPEN_FLAGS: Final = (
    os.O_RDONLY | getattr(os, "O_BINARY", 0) | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_CLOEXEC", 0)
)
"""Without blocking: a pipe put in the place of the file must not hold the program for ever."""

_WHILE_READ: Final = Text("Wait until the recorder has finished, or copy the file first.")


class Unpacking(Protocol):
    """A stream that hands out unpacked bytes as far as it got."""

    def read1(self, size: int = ..., /) -> bytes:
        """Return some unpacked bytes; empty at the end."""

    def close(self) -> None:
        """Close it."""


class _Lent:
    """A file that only its owner closes."""

    closed = False

    def __init__(self, raw: IO[bytes]) -> None:
        self.read = raw.read
        self.tell = raw.tell

    def close(self) -> None:
        """Leave it open."""


class _Zstandard:
    """A Zstandard stream."""

    def __init__(self, raw: IO[bytes]) -> None:
        import pyarrow as pa  # noqa: PLC0415 - slow to load, and only few files need it

        # not the file itself: the library would close it
        self._stream: Any = pa.CompressedInputStream(pa.PythonFile(_Lent(raw), mode="r"), "zstd")

    def read1(self, size: int = _CHUNK, /) -> bytes:
        """Return some unpacked bytes; empty at the end."""
        # in small pieces, as the library gives nothing of a piece that is cut
        return bytes(self._stream.read(min(size, _SMALL_CHUNK)))

    def close(self) -> None:
        """Close it."""
        self._stream.close()


def _gunzip(raw: IO[bytes]) -> Unpacking:
    return gzip.GzipFile(fileobj=raw)


PACKINGS: Final[tuple[tuple[bytes, str, Callable[[IO[bytes]], Unpacking]], ...]] = (
    (b"\x1f\x8b", ".gz", _gunzip),
    (b"BZh", ".bz2", bz2.BZ2File),
    (b"\xfd7zXZ\x00", ".xz", lzma.LZMAFile),
    (b"\x28\xb5\x2f\xfd", ".zst", _Zstandard),
)
"""First bytes, usual suffix, and how to unpack."""

ZIP_MAGIC: Final = b"PK\x03\x04"


@dataclass(slots=True)
class Stream:
    """An open recording: ``stream`` hands out bytes, ``raw`` tells how much of the file is used up."""

    stream: Unpacking
    raw: IO[bytes]
    packed_bytes: int | None = None
    """Size while packed; None when it is not packed."""


Opener = Callable[[], AbstractContextManager[Stream]]


class Content:
    """Bytes that can be read again and again.

    Parameters
    ----------
    name : str
        For messages.
    opener : callable
        Opens the stream anew.
    size : int
        Bytes of the file while packed.
    """

    __slots__ = ("_data", "_name", "_notices", "_opener", "size")

    def __init__(self, name: str, opener: Opener, size: int) -> None:
        self._name = name
        self._opener = opener
        self._data: bytes | None = None
        self._notices: dict[str, Notice] = {}
        self.size = size

    @property
    def notices(self) -> tuple[Notice, ...]:
        """What was heard while reading so far."""
        return tuple(self._notices.values())

    def blocks(self) -> Iterator[tuple[float, bytes]]:
        """Read from the beginning, in blocks of about a megabyte, with the share of the file used up.

        Raises
        ------
        DamagedLog
            When nothing can be unpacked, it unpacks to more than is allowed, or the file changes meanwhile.
        """
        done = 0
        with self._opener() as opened:
            while block := self._next(opened, done):
                done += len(block)
                if opened.packed_bytes is not None:
                    _refuse_bomb(self._name, done, opened.packed_bytes)
                yield min(opened.raw.tell() / max(self.size, 1), 1.0), block
        if not done:
            raise DamagedLog(
                "the packed file is empty" if self.size else "the file is empty",
                file=self._name,
                place=Text("byte {number}", number=0),
                hint="Record or copy the log again.",
            )

    def opened(self) -> AbstractContextManager[Stream]:
        """Open it anew."""
        return self._opener()

    def whole(self) -> bytes:
        """Return all of it, and remember it.

        Raises
        ------
        DamagedLog
            As :meth:`blocks`, and when it is too large for the memory.
        """
        if self._data is None:
            if self.size > MAX_UNPACKED_BYTES:
                raise _too_large(self._name, "is")
            self._data = b"".join(block for _, block in self.blocks())
        return self._data

    def release(self) -> None:
        """Forget what :meth:`whole` remembers."""
        self._data = None

    def _next(self, opened: Stream, done: int) -> bytes:
        try:
            # read1 hands out what is unpacked so far, so that a cut file loses nothing before the cut
            return opened.stream.read1(_CHUNK)
        except (EOFError, OSError, ValueError, zlib.error, lzma.LZMAError, zipfile.BadZipFile) as error:
            packed, reason = opened.packed_bytes is not None, reason_of(error)
            if not done:
                what = Text("cannot be unpacked: {reason}") if packed else Text("cannot be read: {reason}")
                raise DamagedLog(
                    Text(what, reason=reason), file=self._name, hint="Copy the file again."
                ) from None
            self._hear(
                Text(
                    "{name}: the packed file is damaged or cut off; what could be unpacked was used.",
                    name=self._name,
                )
                if packed
                else Text(
                    "{name}: reading stopped in the middle ({reason}); what was read was used.",
                    name=self._name,
                    reason=reason,
                )
            )
            return b""

    def _hear(self, text: Text) -> None:
        self._notices[text] = Notice("log-incomplete", text)


class FileContent(Content):
    """An unpacked file; it must stay what it was when it was first opened."""

    __slots__ = ("_about", "path")

    def __init__(self, name: str, path: Path) -> None:
        self.path = path
        with open_regular(name, path) as file:
            self._about = os.fstat(file.fileno())
        super().__init__(name, self._opened, self._about.st_size)

    def whole(self) -> bytes:
        """Return all of it in one piece."""
        if self._data is None:
            if self.size > MAX_UNPACKED_BYTES:
                raise _too_large(self._name, "is")
            with self.opened_raw() as file:
                self._data = file.read(self.size)
        return self._data

    @contextmanager
    def opened_raw(self) -> Iterator[IO[bytes]]:
        """Open the file itself and hold afterwards that nobody wrote to it."""
        with open_regular(self._name, self.path) as file:
            self._compare(os.fstat(file.fileno()), opening=True)
            yield file
            self._compare(os.fstat(file.fileno()), opening=False)

    @contextmanager
    def _opened(self) -> Iterator[Stream]:
        with self.opened_raw() as file:
            yield Stream(_Bounded(file, self.size), file)

    def _compare(self, now: os.stat_result, *, opening: bool) -> None:
        first = self._about
        replaced = opening and (now.st_dev, now.st_ino) != (first.st_dev, first.st_ino)
        rewritten = now.st_size == first.st_size and now.st_mtime_ns != first.st_mtime_ns
        if replaced or rewritten or now.st_size < first.st_size:
            raise DamagedLog("the file was changed while it was read", file=self._name, hint=_WHILE_READ)
        if now.st_size > first.st_size:
            self._hear(
                Text(
                    "{name}: the file grew while it was read; what came later was left out.", name=self._name
                )
            )


class _Bounded:
    """The first bytes of a file, so that one that grows does not keep us for ever."""

    def __init__(self, file: IO[bytes], size: int) -> None:
        self._file, self._left = file, size

    def read1(self, size: int = _CHUNK, /) -> bytes:
        """Return some bytes; empty at the end."""
        block = self._file.read(min(size, self._left))
        self._left -= len(block)
        return block

    def close(self) -> None:
        """Leave the file to whoever opened it."""


def packed_content(file: FileContent, name: str, opener: Callable[[IO[bytes]], Unpacking]) -> Content:
    """Content of a file that is one packed stream."""

    @contextmanager
    def opened() -> Iterator[Stream]:
        with file.opened_raw() as raw, closing(opener(raw)) as stream:
            yield Stream(stream, raw, file.size)

    return Content(name, opened, file.size)


def member_content(file: FileContent, name: str, info: zipfile.ZipInfo) -> Content:
    """Content of one member of a zip archive."""

    @contextmanager
    def opened() -> Iterator[Stream]:
        with file.opened_raw() as raw, zipfile.ZipFile(raw) as archive:
            try:
                stream = archive.open(info)
            except (zipfile.BadZipFile, NotImplementedError, RuntimeError, ValueError, OSError) as error:
                raise DamagedLog(
                    Text("cannot be unpacked: {reason}", reason=reason_of(error)),
                    file=name,
                    hint="Unpack it yourself and choose the log in it.",
                ) from None
            with closing(cast("Unpacking", stream)) as unpacking:
                yield Stream(unpacking, raw, min(info.compress_size, file.size))

    return Content(name, opened, file.size)


def bytes_content(name: str, data: bytes) -> Content:
    """Content that is in the memory already."""

    @contextmanager
    def opened() -> Iterator[Stream]:
        stream = io.BytesIO(data)
        yield Stream(stream, stream)

    return Content(name, opened, len(data))


def open_regular(name: str, path: Path) -> IO[bytes]:
    """Open a file for reading; what stands behind the name is judged after opening, so it cannot be swapped.

    Raises
    ------
    LogReadError
        When there is no such file, it is a folder or a device, or may not be read.
    """
    _refuse_what_is_no_file(name, path)
    try:
        handle = os.open(path, _OPEN_FLAGS)
    except (OSError, ValueError) as error:
        raise LogReadError(
            Text("cannot be read: {reason}", reason=reason_of(error)),
            file=name,
            hint="Check the rights of the file.",
        ) from None
    if not stat.S_ISREG(os.fstat(handle).st_mode):
        os.close(handle)
        raise _no_file(name)
    return os.fdopen(handle, "rb")


def _refuse_what_is_no_file(name: str, path: Path) -> None:
    try:
        mode = path.stat().st_mode
    except (OSError, ValueError) as error:
        raise LogReadError(
            Text("cannot be opened: {reason}", reason=reason_of(error)), file=name, hint="Check the path."
        ) from None
    if stat.S_ISDIR(mode):
        raise LogReadError("this is a folder", file=name, hint="Give the files in it one by one.")
    if not stat.S_ISREG(mode):
        raise _no_file(name)


def _no_file(name: str) -> LogReadError:
    return LogReadError(
        "this is a device or a pipe, not a file", file=name, hint="Save the log to a file first."
    )


def _refuse_bomb(name: str, done: int, packed_bytes: int) -> None:
    if done > MAX_UNPACKED_BYTES:
        raise _too_large(name, "unpacks to")
    if done > max(_FREE_BYTES, MAX_EXPANSION * packed_bytes):
        raise DamagedLog(
            Text("unpacks to more than {most} times its size, as no recording does", most=MAX_EXPANSION),
            file=name,
            hint="Unpack it yourself and look at what it holds.",
        )


def _too_large(name: str, verb: str) -> DamagedLog:
    return DamagedLog(
        Text("{verb} more than {value} GB", verb=verb, value=f"{MAX_UNPACKED_BYTES / (1 << 30):.3g}"),
        file=name,
        hint="Cut the recording in parts.",
    )
