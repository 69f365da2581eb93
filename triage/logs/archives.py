"""Packed files and archives: what they hold, as sources to read."""

from __future__ import annotations

import struct
import zipfile
from pathlib import Path, PurePosixPath
from typing import IO, Final

from triage.errors import DamagedLog, LogReadError
from triage.logs.content import PACKINGS, ZIP_MAGIC, FileContent, member_content, packed_content
from triage.logs.source import Source, source_of
from triage.reasons import reason_of
from triage.texts import Text

MAX_MEMBERS: Final = 1000
_MAX_DIRECTORY_BYTES: Final = 1 << 20
_END_RECORD: Final = b"PK\x05\x06"
_LONG_LOCATOR: Final = b"PK\x06\x07"
_TAIL_BYTES: Final = (1 << 16) + 22 + 20
_WORKBOOK: Final = "xl/workbook.xml"
_OFFICE: Final = frozenset(("[Content_Types].xml", "mimetype", _WORKBOOK))
_OFFICE_PARTS: Final = (b"[Content_Types].xml", b"docProps/", b"xl/", b"mimetypeapplication/")
_UNPACK: Final = Text("Unpack it and choose the log in it.")
_SAVE: Final = Text("Save the table as .xlsx or .csv without a password.")
_FOREIGN: Final = (
    (b"7z\xbc\xaf\x27\x1c", Text("a 7z archive"), _UNPACK),
    (b"Rar!\x1a\x07", Text("a RAR archive"), _UNPACK),
    (b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", Text("an old or locked Office file"), _SAVE),
)
_TAR_PLACE: Final = slice(257, 262)


def open_sources(file: str | Path) -> tuple[Source, ...]:
    """Open a file: itself, what is packed in it, or every member of a zip archive.

    Returns
    -------
    tuple of Source
        One, except for a zip archive of several files.

    Raises
    ------
    LogReadError
        When there is no such file, it is a folder or a device, or may not be read.
    DamagedLog
        When it is empty, cannot be unpacked at all, or holds an archive inside another.
    """
    name, path = str(file), Path(file)
    if not name:  # Path would take it for the current folder
        raise LogReadError("a file name is empty", hint="Name a recording.")
    content = FileContent(name, path)
    if not content.size:
        raise DamagedLog(
            "the file is empty",
            file=name,
            place=Text("byte {number}", number=0),
            hint="Record or copy the log again.",
        )
    source = source_of(name, path.suffix.lower(), content, path=path)
    _refuse_foreign(source)
    for magic, ending, opener in PACKINGS:
        if source.head.startswith(magic):
            suffix = Path(path.name.lower().removesuffix(ending)).suffix
            return (_inner(source_of(name, suffix, packed_content(content, name, opener))),)
    return _members(source, content) if source.head.startswith(ZIP_MAGIC) else (source,)


def _members(source: Source, content: FileContent) -> tuple[Source, ...]:
    """Open all members of an archive; a workbook is a zip file too, but no archive."""
    names = _checked_directory(source.name, content)
    if any(info.filename in _OFFICE for info in names):
        return (source,)
    members = [info for info in names if _is_worth_a_look(info)]
    if not members:
        raise DamagedLog("the archive holds no file", file=source.name, hint="Choose another file.")
    alone = len(members) == 1
    return tuple(_member(source.name, content, info, alone=alone) for info in members)


def _member(name: str, content: FileContent, info: zipfile.ZipInfo, *, alone: bool) -> Source:
    shown = name if alone else f"{name}:{info.filename}"
    suffix = PurePosixPath(info.filename).suffix.lower()
    return _inner(source_of(shown, suffix, member_content(content, shown, info)))


def _is_worth_a_look(info: zipfile.ZipInfo) -> bool:
    parts = PurePosixPath(info.filename).parts
    hidden = any(part.startswith((".", "__MACOSX")) for part in parts)
    # a member without a name is no file either; asking it for its kind would fail
    return bool(parts) and not info.is_dir() and not hidden and info.file_size > 0


def _checked_directory(name: str, content: FileContent) -> list[zipfile.ZipInfo]:
    try:
        with content.opened_raw() as raw:
            if _directory_bytes(raw, content.size) > _MAX_DIRECTORY_BYTES:
                raise _too_many(name)
            raw.seek(0)
            with zipfile.ZipFile(raw) as archive:
                members = archive.infolist()
    except (zipfile.BadZipFile, NotImplementedError, ValueError, OSError, struct.error) as error:
        raise DamagedLog(
            Text("cannot be unpacked: {reason}", reason=reason_of(error)),
            file=name,
            hint="Copy the file again.",
        ) from None
    if len(members) > MAX_MEMBERS:
        raise _too_many(name)
    return members


def _directory_bytes(raw: IO[bytes], size: int) -> int:
    """Size that the archive states for its list of members; the library reads it whole before any check."""
    begin = max(0, size - _TAIL_BYTES)
    raw.seek(begin)
    tail = raw.read(_TAIL_BYTES)
    place = tail.rfind(_END_RECORD)
    if place < 0 or place + 16 > len(tail):
        return 0  # the library will say that it is damaged
    stated = int.from_bytes(tail[place + 12 : place + 16], "little")
    locator = tail[max(place - 20, 0) : place]
    if not locator.startswith(_LONG_LOCATOR):
        return stated
    raw.seek(min(int.from_bytes(locator[8:16], "little"), size))
    record = raw.read(48)
    return int.from_bytes(record[40:48], "little")


def _too_many(name: str) -> DamagedLog:
    return DamagedLog(
        Text("the archive holds more than {most} files", most=MAX_MEMBERS),
        file=name,
        hint="Unpack it and choose the parts of one recording.",
    )


def _inner(source: Source) -> Source:
    """Refuse an archive inside a packed file; one level is what recorders and mail programs make."""
    head = source.head
    nested = any(head.startswith(magic) for magic, _, _ in PACKINGS)
    nested |= head.startswith(ZIP_MAGIC) and not any(part in head for part in _OFFICE_PARTS)
    if nested or head[_TAR_PLACE] == b"ustar":
        raise DamagedLog(
            "this is an archive inside an archive",
            file=source.name,
            hint="Unpack it and choose the log in it.",
        )
    _refuse_foreign(source)
    return source


def _refuse_foreign(source: Source) -> None:
    if source.head[_TAR_PLACE] == b"ustar":
        raise DamagedLog(
            "this is a tar archive", file=source.name, hint="Unpack it and choose the logs in it."
        )
    for magic, what, hint in _FOREIGN:
        if source.head.startswith(magic):
            raise DamagedLog(Text("this is {what}", what=what), file=source.name, hint=hint)
