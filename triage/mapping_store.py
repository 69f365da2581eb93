"""The file in which confirmed mappings are kept between two runs: readable, exported, imported, deleted."""

from __future__ import annotations

import json
import os
import sys
from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, TypeGuard

from triage.corners import CORNERS, Corner
from triage.errors import SettingsError
from triage.logs.options import ReadOptions
from triage.logs.remembered import RememberedMapping, signal_names
from triage.output_file import whole_file
from triage.reasons import reason_of
from triage.texts import Text
from triage.units import SPEED_UNITS
from triage.user_files import make_folder

if TYPE_CHECKING:
    from triage.speed_log import SpeedLog

SCHEMA: Final = "wheel-triage/mappings/1"
KEPT_MAX: Final = 200
"""The oldest are forgotten beyond."""

_BYTES_MAX: Final = 20_000_000
_NAME_MAX: Final = 1000


def store_path(environment: Mapping[str, str] = os.environ, platform: str = sys.platform) -> Path:
    """Give the file in the user's folder of settings, by the rule of the platform.

    Examples
    --------
    >>> store_path({"XDG_CONFIG_HOME": "/settings"}, "linux").as_posix()
    '/settings/wheel-triage/mappings.json'
    """
    home = Path(environment.get("USERPROFILE" if platform == "win32" else "HOME") or Path.home())
    if platform == "win32":
        folder = Path(environment.get("APPDATA") or home / "AppData" / "Roaming")
    elif platform == "darwin":
        folder = home / "Library" / "Application Support"
    else:
        given = environment.get("XDG_CONFIG_HOME", "")
        folder = Path(given) if Path(given).is_absolute() else home / ".config"
    return folder / "wheel-triage" / "mappings.json"


def load_mappings(path: Path) -> tuple[RememberedMapping, ...]:
    """Read remembered mappings; none where there is no file.

    Raises
    ------
    SettingsError
        When the file cannot be read or is none of this kind.
    """
    try:
        if not path.exists():
            return ()
        if not path.is_file() or path.stat().st_size > _BYTES_MAX:
            raise _unusable(path, Text("it is no file of remembered mappings"))
        document = json.loads(path.read_text("utf-8-sig"))
    except OSError as error:
        raise _unusable(path, Text("it cannot be read: {reason}", reason=reason_of(error))) from None
    except (ValueError, RecursionError) as error:
        raise _unusable(path, Text("it is no JSON: {reason}", reason=reason_of(error))) from None
    return _parsed(document, path)


def save_mappings(path: Path, mappings: Sequence[RememberedMapping]) -> None:
    """Write remembered mappings, whole or not at all.

    Raises
    ------
    OutputError
        When the file cannot be written.
    """
    document = {
        "schema": SCHEMA,
        "mappings": [
            {
                "fingerprint": one.fingerprint,
                "confirmed": one.confirmed,
                "wheels": dict(one.wheels),
                "unit": one.unit,
                "signals": list(one.signals),
            }
            for one in mappings[-KEPT_MAX:]
        ],
    }
    text = json.dumps(document, ensure_ascii=True, indent=1) + "\n"
    with whole_file(path) as unfinished:
        unfinished.write_text(text, "utf-8")


def merged(
    mappings: Sequence[RememberedMapping], fresh: Sequence[RememberedMapping]
) -> tuple[RememberedMapping, ...]:
    """Add mappings; of two for the same signals the fresh one stays."""
    replaced = {one.signals for one in fresh}
    kept = [one for one in mappings if one.signals not in replaced]
    return (*kept, *{one.signals: one for one in fresh}.values())


def confirmed_mapping(log: SpeedLog, unit: str | None, day: str) -> RememberedMapping:
    """Give the mapping by which a log was read as one to remember.

    Parameters
    ----------
    log : SpeedLog
    unit : str or None
        What the user stated; what was found in the log is found again.
    day : str
        Today, ``2026-03-10``.
    """
    wheels = {corner: log.wheels[corner].source for corner in CORNERS}
    return RememberedMapping(log.signal_names, wheels, unit, day)


def remember(log: SpeedLog, options: ReadOptions, day: str, path: Path) -> RememberedMapping:
    """Keep the mapping by which a log was read.

    Raises
    ------
    SettingsError, OutputError
        When the store cannot be read or written.
    """
    one = confirmed_mapping(log, options.unit, day)
    known = load_mappings(path)
    make_folder(path.parent)
    save_mappings(path, merged(known, [one]))
    return one


def with_memory(options: ReadOptions, path: Path) -> ReadOptions:
    """Give the options with all remembered mappings, unless the user maps by hand.

    Raises
    ------
    SettingsError
        When the store cannot be read.
    """
    return options if options.mapping else replace(options, remembered=load_mappings(path))


def _parsed(document: object, path: Path) -> tuple[RememberedMapping, ...]:
    if not isinstance(document, dict) or document.get("schema") != SCHEMA:
        raise _unusable(path, Text("its schema is not {schema}", schema=SCHEMA))
    rows = document.get("mappings")
    if not isinstance(rows, list):
        raise _unusable(path, Text("it holds no list of mappings"))
    return tuple(_one(row, number, path) for number, row in enumerate(rows[:KEPT_MAX], start=1))


def _one(row: Any, number: int, path: Path) -> RememberedMapping:
    if not isinstance(row, dict):
        raise _unusable(path, Text("mapping {number} is none", number=number))
    signals, wheels, unit = row.get("signals"), row.get("wheels"), row.get("unit")
    if not _are_names(signals) or not isinstance(wheels, dict) or not _are_names(list(wheels.values())):
        told = Text("mapping {number} must hold signals and wheels as texts", number=number)
        raise _unusable(path, told)
    if not wheels or not set(wheels) <= set(CORNERS) or (unit is not None and unit not in SPEED_UNITS):
        raise _unusable(path, Text("mapping {number} names an unknown wheel or unit", number=number))
    chosen: dict[Corner, str] = {corner: wheels[corner] for corner in CORNERS if corner in wheels}
    return RememberedMapping(signal_names(signals), chosen, unit, str(row.get("confirmed", ""))[:40])


def _are_names(value: object) -> TypeGuard[list[str]]:
    return isinstance(value, list) and all(isinstance(one, str) and len(one) <= _NAME_MAX for one in value)


def _unusable(path: Path, reason: Text) -> SettingsError:
    return SettingsError(
        Text("the remembered mappings cannot be used: {reason}", reason=reason),
        file=str(path),
        hint="Mend or delete this file, or leave it aside with --no-memory.",
    )
