"""The verb ``mappings``: list, export, import and forget what was remembered; and remembering itself."""

from __future__ import annotations

import argparse
from datetime import date
from pathlib import Path
from typing import Final

from triage.corners import CORNERS
from triage.errors import SettingsError
from triage.logs.options import ReadOptions
from triage.logs.remembered import RememberedMapping
from triage.mapping_store import (
    load_mappings,
    merged,
    remember,
    save_mappings,
    store_path,
    with_memory,
)
from triage.speed_log import SpeedLog
from triage.user_files import make_folder

ACTIONS: Final = ("list", "export", "import", "forget")


def add_mappings(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of the verb."""
    parser.add_argument("action", choices=ACTIONS, help="what to do with the remembered mappings")
    parser.add_argument(
        "what",
        nargs="?",
        default="",
        metavar="FILE|ID",
        help="file to export to or import; ID, or all, to forget",
    )


def add_memory(parser: argparse.ArgumentParser) -> None:
    """Add the options of remembering to a verb that reads a log."""
    parser.add_argument(
        "--remember",
        action="store_true",
        help="remember how the wheels were mapped, for other logs with the same signals",
    )
    parser.add_argument("--no-memory", action="store_true", help="use no remembered mapping")


def options_with_memory(given: argparse.Namespace, options: ReadOptions) -> ReadOptions:
    """Give the options with the remembered mappings, unless the user wants none."""
    return options if given.no_memory else with_memory(options, store_path())


def remember_if_asked(given: argparse.Namespace, log: SpeedLog, options: ReadOptions) -> str:
    """Remember the mapping where the user asked for it; give what to say about it, or nothing."""
    if not given.remember:
        return ""
    path = store_path()
    one = remember(log, options, date.today().isoformat(), path)  # noqa: DTZ011 - the user's own day
    return f"the mapping is remembered as {one.fingerprint} in {path}."


def run_mappings(given: argparse.Namespace) -> str:
    """Do what the verb ``mappings`` asks for.

    Returns
    -------
    str
        Text for standard output.

    Raises
    ------
    SettingsError, OutputError
        When a file cannot be used, or there is no such mapping.
    """
    path = store_path()
    known = load_mappings(path)
    if given.action == "list":
        return "".join(map(_described, known)) or f"No mapping is remembered ({path}).\n"
    if not given.what:
        need = "an ID, or all" if given.action == "forget" else "a file"
        error = SettingsError(
            f"mappings {given.action} needs {need}", hint="See wheel-triage mappings --help."
        )
        error.exit_code = 2
        raise error
    if given.action == "export":
        save_mappings(Path(given.what), known)
        return f"{len(known)} mappings were written to {given.what}.\n"
    if given.action == "import":
        return _imported(Path(given.what), path, known)
    return _forgotten(given.what, path, known)


def _imported(source: Path, path: Path, known: tuple[RememberedMapping, ...]) -> str:
    if not source.exists():
        raise SettingsError("there is no such file", file=str(source), hint="Check the name.")
    fresh = load_mappings(source)
    make_folder(path.parent)
    save_mappings(path, merged(known, fresh))
    return f"{len(fresh)} mappings were taken over.\n"


def _forgotten(what: str, path: Path, known: tuple[RememberedMapping, ...]) -> str:
    kept = tuple(one for one in known if what not in ("all", one.fingerprint))
    if len(kept) == len(known) and what != "all":
        raise SettingsError(f"no mapping {what} is remembered", hint="See wheel-triage mappings list.")
    if len(kept) < len(known):
        save_mappings(path, kept)
    return f"{len(known) - len(kept)} mappings were forgotten.\n"


def _described(one: RememberedMapping) -> str:
    wheels = ", ".join(f"{corner} = {one.wheels[corner]}" for corner in CORNERS if corner in one.wheels)
    unit = f", {one.unit}" if one.unit else ""
    return f"{one.fingerprint}  {one.confirmed}  {wheels}{unit}; logs with {len(one.signals)} signals\n"
