"""What the user named, as the recordings to read: files, archives of several, or a folder."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

from triage.errors import LogReadError, TriageError, UnknownLogFormat
from triage.logs.archives import open_sources
from triage.logs.registry import recognise
from triage.logs.source import Source
from triage.reasons import reason_of
from triage.speed_log import Notice
from triage.texts import Text, first_names

MAX_PARTS: Final = 1000
_SHOWN: Final = 6


@dataclass(frozen=True, slots=True)
class Gathered:
    """The recordings to read.

    Attributes
    ----------
    sources : tuple of Source
    from_folder : bool
        Some were found in a folder, so that nobody has said yet that they belong together.
    """

    sources: tuple[Source, ...]
    from_folder: bool


def gather_sources(files: Sequence[str | Path]) -> Gathered:
    """Open everything the user named.

    Parameters
    ----------
    files : sequence of str or Path
        Files, zip archives, or folders, whose recordings are taken and whose other files are passed over.

    Raises
    ------
    LogReadError
        When nothing is named, a file is named twice, cannot be opened, or a folder or archive holds no
        recording.
    """
    if not files:
        raise LogReadError("no file was given", hint="Name a recording.")
    _refuse_doubles(files)
    sources: list[Source] = []
    for file in files:
        sources += (
            _in_folder(Path(file)) if _is_folder(file) else _recordings_in(open_sources(file), str(file))
        )
        if len(sources) > MAX_PARTS:
            raise LogReadError(
                Text("more than {most} recordings", most=MAX_PARTS),
                file=str(file),
                hint="Name the parts of one drive.",
            )
    return Gathered(tuple(sources), any(_is_folder(file) for file in files))


def _is_folder(file: str | Path) -> bool:
    try:
        return bool(str(file)) and Path(file).is_dir()
    except (OSError, ValueError):  # such as a name with a zero byte; opening it says so
        return False


def _refuse_doubles(files: Sequence[str | Path]) -> None:
    """Refuse a part given twice: hung on its own end it would count as twice the evidence."""
    counts = Counter(Path(file).absolute() for file in files)
    for file in files:
        if counts[Path(file).absolute()] > 1:
            raise LogReadError("this file is given twice", file=str(file), hint="Name every part once.")


def _recordings_in(sources: tuple[Source, ...], name: str) -> list[Source]:
    """Keep the members of an archive that are recordings; a file that stands alone is kept as it is."""
    if len(sources) == 1:
        return list(sources)
    kept = [source for source in sources if _is_recording(source)]
    if not kept:
        raise UnknownLogFormat(
            Text("none of the {count} files in the archive is a recording", count=len(sources)),
            file=name,
            hint="Unpack it and choose the log in it.",
        )
    return _telling(kept, [source.name for source in sources if source not in kept], name)


def _in_folder(folder: Path) -> list[Source]:
    """Find the recordings in a folder, in the order of their names; folders in it are not searched."""
    kept: list[Source] = []
    passed: list[str] = []
    for path in _files_of(folder):
        try:
            found = [source for source in open_sources(path) if _is_recording(source)]
        except TriageError:
            found = []
        kept += found
        if not found:
            passed.append(path.name)
    if not kept:
        raise LogReadError(
            "this folder holds no recording", file=str(folder), hint="Name the recording, or another folder."
        )
    return _telling(kept, passed, str(folder))


def _files_of(folder: Path) -> list[Path]:
    try:
        paths = [path for path in folder.iterdir() if not path.name.startswith(".") and path.is_file()]
    except OSError as error:
        raise LogReadError(
            Text("this folder cannot be listed: {reason}", reason=reason_of(error)),
            file=str(folder),
            hint="Name the recordings in it one by one.",
        ) from None
    if len(paths) > MAX_PARTS:
        raise LogReadError(
            Text("this folder holds more than {most} files", most=MAX_PARTS),
            file=str(folder),
            hint="Name the parts of one drive.",
        )
    return sorted(paths, key=_natural)


def _natural(path: Path) -> list[tuple[int, str]]:
    """Order of names in which part 10 comes after part 9."""
    pieces = re.split(r"(\d{1,18})", path.name)
    return [(int(piece), "") if piece.isascii() and piece.isdigit() else (-1, piece) for piece in pieces]


def _is_recording(source: Source) -> bool:
    try:
        recognise(source)
    except UnknownLogFormat:
        return False
    return True


def _telling(kept: list[Source], passed: list[str], name: str) -> list[Source]:
    """Say which files were passed over, with the first recording."""
    if not passed:
        return kept
    text = Text(
        "{name}: passed over, as these are no recordings: {passed}.",
        name=name,
        passed=first_names(passed, _SHOWN),
    )
    notice = Notice("files-passed-over", text, len(passed))
    return [replace(kept[0], told=(*kept[0].told, notice)), *kept[1:]]
