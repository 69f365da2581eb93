"""The file with the user's settings: readable, mended by hand, never lost. Knows no Qt."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from triage.errors import OutputError, TriageError
from triage.output_file import whole_file
from triage.reasons import reason_of
from triage.texts import Text, error_line, joined
from triage.user_files import make_folder, quoted, read_toml
from ui.state.settings import Settings, checked_settings, settings_table

HEADING = "# Settings of the window. Lines that are left out stay as they come with the program.\n"


@dataclass(frozen=True, slots=True)
class ReadSettings:
    """What was read.

    Attributes
    ----------
    note : str
        What could not be used and why; empty when all is well.
    """

    settings: Settings
    note: str = ""

    @property
    def damaged(self) -> bool:
        """Whether something of the file was left aside."""
        return bool(self.note)


def load_settings(path: Path) -> ReadSettings:
    """Read settings; a file or a line that cannot be used is told and left aside, never an error."""
    try:
        table = read_toml(path)
    except TriageError as error:
        told = Text("The settings were left aside. {error}", error=error_line(error))
        return ReadSettings(Settings(), told)
    settings, left_aside = checked_settings(table or {})
    if not left_aside:
        return ReadSettings(settings)
    return ReadSettings(settings, Text("In {file}: {told}", file=path.name, told=joined(" ", left_aside)))


def save_settings(path: Path, settings: Settings, *, keep_old: bool = False) -> None:
    """Write settings, whole or not at all.

    Parameters
    ----------
    path : Path
    settings : Settings
    keep_old : bool
        Keep what stands there under another name; for a file that could not be read whole.

    Raises
    ------
    OutputError
        When the folder or the file cannot be written.
    """
    make_folder(path.parent)
    if keep_old and path.exists():
        _set_aside(path)
    lines = [f"{name} = {_value(value)}" for name, value in settings_table(settings).items()]
    with whole_file(path) as unfinished:
        unfinished.write_text(HEADING + "\n".join(lines) + "\n", "utf-8")


def _value(value: object) -> str:
    return quoted(value) if isinstance(value, str) else str(value)


def _set_aside(path: Path) -> None:
    try:
        path.replace(path.with_suffix(".left-aside.toml"))
    except OSError as error:
        raise OutputError(
            Text("the damaged settings cannot be put aside: {reason}", reason=reason_of(error)),
            file=str(path),
            hint="Move this file away.",
        ) from None
