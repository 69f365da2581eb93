"""The list of recordings opened of late, in a small readable file. Knows no Qt."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path, PurePath
from typing import Final

from triage.errors import SettingsError
from triage.output_file import whole_file
from triage.user_files import make_folder, quoted, read_toml

KEPT_MAX: Final = 8
"""More than a start page shows at once would only be searched."""

_PARTS_MAX: Final = 100
_NAME_MAX: Final = 4000
_HEADING: Final = "# Recordings opened of late in the window, newest first. This file may be deleted.\n"


@dataclass(frozen=True, slots=True)
class RecentRecording:
    """The parts of one recording, and the signal databases it was read with."""

    files: tuple[str, ...]
    databases: tuple[str, ...] = ()

    @property
    def title(self) -> str:
        """Name of the first part, and how many more there are."""
        first = PurePath(self.files[0]).name
        return first if len(self.files) == 1 else f"{first} + {len(self.files) - 1}"

    @property
    def folder(self) -> str:
        """Where the first part lies."""
        return str(PurePath(self.files[0]).parent)


def load_recent(path: Path) -> tuple[RecentRecording, ...]:
    """Read the list, newest first; none where there is no file.

    Raises
    ------
    SettingsError
        When the file cannot be read or holds something else.
    """
    table = read_toml(path)
    rows = [] if table is None else table.get("recording", [])
    if not isinstance(rows, list):
        raise _unusable(path)
    return tuple(_recording(row, path) for row in rows[:KEPT_MAX])


def _recording(row: object, path: Path) -> RecentRecording:
    if not isinstance(row, dict):
        raise _unusable(path)
    files, databases = row.get("files"), row.get("databases", [])
    if not _are_names(files) or not files or not _are_names(databases):
        raise _unusable(path)
    return RecentRecording(tuple(files), tuple(databases))


def _are_names(value: object) -> bool:
    return (
        isinstance(value, list)
        and len(value) <= _PARTS_MAX
        and all(isinstance(one, str) and 0 < len(one) <= _NAME_MAX for one in value)
    )


def _unusable(path: Path) -> SettingsError:
    return SettingsError(
        "this is no list of recordings opened of late", file=str(path), hint="Delete this file to start anew."
    )


def with_newest(known: Sequence[RecentRecording], newest: RecentRecording) -> tuple[RecentRecording, ...]:
    """Put a recording first; it stands in the list once, and the oldest fall off."""
    others = [one for one in known if one.files != newest.files]
    return (newest, *others)[:KEPT_MAX]


def save_recent(path: Path, recent: Sequence[RecentRecording]) -> None:
    """Write the list, whole or not at all.

    Raises
    ------
    OutputError
        When the folder or the file cannot be written.
    """
    make_folder(path.parent)
    rows = [
        f"[[recording]]\nfiles = [{_list(one.files)}]\ndatabases = [{_list(one.databases)}]\n"
        for one in recent
    ]
    with whole_file(path) as unfinished:
        unfinished.write_text("\n".join([_HEADING, *rows]), "utf-8")


def _list(names: Sequence[str]) -> str:
    return ", ".join(quoted(name) for name in names)
