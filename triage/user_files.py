"""Small files of the user: where they belong, and texts in them as TOML wants them."""

from __future__ import annotations

import json
import sys
import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import Final

from triage.errors import OutputError, SettingsError
from triage.reasons import reason_of
from triage.texts import Text

LARGEST_FILE_BYTES: Final = 1_000_000


def data_folder(environment: Mapping[str, str]) -> Path:
    """Return the folder of this program in the user's data (XDG Base Directory Specification 0.8)."""
    home = Path(environment.get("HOME") or environment.get("USERPROFILE") or ".")
    if sys.platform == "win32":
        return Path(environment.get("APPDATA") or home) / "wheel-triage"
    if sys.platform == "darwin":
        return home / "Library" / "Application Support" / "wheel-triage"
    return Path(environment.get("XDG_DATA_HOME") or home / ".local" / "share") / "wheel-triage"


def make_folder(folder: Path) -> None:
    """Make a folder and those around it, OutputError when that is not possible."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise OutputError(
            Text("this folder cannot be made: {reason}", reason=reason_of(error)),
            file=str(folder),
            hint="Name a file in another folder.",
        ) from None


def read_toml(path: Path) -> dict[str, object] | None:
    """Read a small TOML file, None when there is none; SettingsError when it cannot be read."""
    try:
        if not path.exists():
            return None
        if not path.is_file():  # a device could be read for ever
            raise SettingsError("this is no file", file=str(path), hint="Name a TOML file.")
        with path.open("rb") as stream:
            content = stream.read(LARGEST_FILE_BYTES + 1)
        if len(content) > LARGEST_FILE_BYTES:
            raise SettingsError(
                Text("larger than {most} bytes", most=LARGEST_FILE_BYTES), file=str(path), hint="Shorten it."
            )
        return tomllib.loads(content.decode("utf-8-sig").replace("\r\n", "\n"))
    except (OSError, ValueError, RecursionError) as error:  # ValueError: no UTF-8 or no TOML
        raise SettingsError(
            Text("cannot be read: {reason}", reason=reason_of(error)),
            file=str(path),
            hint="Mend it, or move it away to start afresh.",
        ) from None


def quoted(text: str) -> str:
    r"""Return a TOML basic string (TOML 1.0.0, "String").

    Examples
    --------
    >>> print(quoted('12 "inch"\n'))
    "12 \"inch\"\n"
    """
    # JSON writes the same escapes; TOML also wants DEL escaped, and knows no lone surrogates.
    plain = text.encode("utf-8", "replace").decode("utf-8")
    return json.dumps(plain, ensure_ascii=False).replace("\x7f", "\\u007f")
