"""Recordings opened of late as the start page lists them."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from pathlib import Path

from triage.texts import Text
from ui.recent_files import RecentRecording


@dataclass(frozen=True, slots=True)
class RecentRow:
    """One line of the list.

    Attributes
    ----------
    told : str
        The folder, and what is missing.
    can_open : bool
        Whether all parts are where they were.
    """

    recording: RecentRecording
    title: str
    told: str
    can_open: bool


def build_recent_rows(
    recent: Iterable[RecentRecording], exists: Callable[[str], bool] | None = None
) -> tuple[RecentRow, ...]:
    """Return the lines, newest first.

    Parameters
    ----------
    recent : iterable of RecentRecording
    exists : callable, optional
        Tells whether a file is there; looks at the disk when None.
    """
    return tuple(_row(one, exists or is_there) for one in recent)


def is_there(file: str) -> bool:
    """Tell whether a file is there; one on a server is taken to be, since asking could take half a minute."""
    if file.startswith(("\\\\", "//")):
        return True
    try:
        return Path(file).exists()
    except (OSError, ValueError):
        return False


def _row(one: RecentRecording, exists: Callable[[str], bool]) -> RecentRow:
    missing = [file for file in (*one.files, *one.databases) if not exists(file)]
    if not missing:
        return RecentRow(one, one.title, one.folder, can_open=True)
    told = missing[0]
    if len(missing) > 1:
        told = Text("{first} and {n} more", first=missing[0], n=len(missing) - 1)
    return RecentRow(one, one.title, Text("Not there any more: {file}", file=told), can_open=False)
