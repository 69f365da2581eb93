"""The files of a rule book: which belong to it, their texts, and their digest."""

from __future__ import annotations

import hashlib
import tomllib
from collections.abc import Mapping
from fnmatch import fnmatchcase
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path
from typing import Final

from triage.evidence.rule_reader import FILES

LARGEST_FILE_BYTES: Final = 1_000_000
OWN_CHECKS: Final = "checks_*.toml"
"""Files with a workshop's own checks beside the seven."""

WORKSHOP_FILES: Final = ("workshop.toml",)
"""What a folder may hold of the seven when it only adds to the rule book of the program."""


def read_texts(folder: str | Path | None, problems: list[str]) -> dict[str, str]:
    """Read every file of a rule book.

    Parameters
    ----------
    folder : str, Path or None
        None for the rule book that comes with the program. A folder that holds nothing but files of own
        checks and ``workshop.toml`` adds to that one: what it lacks comes from there.
    problems : list of str
        Files that cannot be read are added here.

    Returns
    -------
    dict of file name to str
        With line ends as they are on Unix.
    """
    packaged: Traversable = files("rules")
    root: Traversable = packaged if folder is None else Path(folder)
    if not root.is_dir():
        problems.append(f"{folder}: there is no such folder")
        return {}
    there = {entry.name for entry in root.iterdir()}
    own = sorted(name for name in there if fnmatchcase(name, OWN_CHECKS))
    adds = bool(there & {*own, *WORKSHOP_FILES}) and there.isdisjoint(set(FILES) - set(WORKSHOP_FILES))
    roots = {name: packaged if adds and name not in there else root for name in (*FILES, *own)}
    return {name: _read_text(place, name, problems) for name, place in roots.items()}


def parse_text(text: str, name: str, problems: list[str]) -> dict[str, object]:
    """Parse one file; what is no TOML is added to the problems."""
    try:
        return tomllib.loads(text)
    except (tomllib.TOMLDecodeError, ValueError, RecursionError) as error:
        # ValueError: an integer of thousands of digits; RecursionError: brackets nested a thousand deep
        problems.append(f"{name}: this is no TOML: {error}")
        return {}


def digest_of(texts: Mapping[str, str]) -> str:
    """Return the SHA-256 over names and texts, the same for all line endings."""
    whole = "".join(f"{name}\0{texts[name]}\0" for name in sorted(texts))
    return hashlib.sha256(whole.encode()).hexdigest()


def _read_text(root: Traversable, name: str, problems: list[str]) -> str:
    try:
        with root.joinpath(name).open("rb") as stream:
            content = stream.read(LARGEST_FILE_BYTES + 1)
    except OSError as error:
        problems.append(f"{name}: the file cannot be read ({error.strerror or error})")
        return ""
    if len(content) > LARGEST_FILE_BYTES:
        problems.append(f"{name}: the file is larger than {LARGEST_FILE_BYTES} bytes")
        return ""
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        problems.append(f"{name}: byte {error.start}: the text is not UTF-8")
        return ""
    return text.replace("\r\n", "\n")
