"""Exercises as small files to save and share, with a curtain before the answer.

An exercise file is JSON in the open, apart from what the trainee is to find out. That part is packed and
mixed with a stream of bytes made from the exercise's id, so that nobody reads it by accident in an editor. It
is a curtain and no encryption: this program draws it aside, and so can anybody who reads this file.
"""

from __future__ import annotations

import base64
import binascii
import hashlib
import json
import re
import zlib
from dataclasses import asdict, fields
from pathlib import Path
from typing import Any, Final

from triage.corners import CORNERS, VEHICLE
from triage.errors import ExerciseFileError, SettingsError
from triage.evidence.rule_tables import Rulebook
from triage.exercises.exercise import Exercise, Hidden
from triage.exercises.making import make_exercise
from triage.output_file import whole_file
from triage.reasons import reason_of
from triage.texts import Text, as_text

SUFFIX: Final = ".exercise.json"
KIND: Final = "wheel-end exercise"
VERSION: Final = 1
LARGEST_FILE_BYTES: Final = 64_000
LONGEST_WORDS: Final = 2_000

_PADDED_TO: Final = 192
"""The hidden part is filled up, so that its length does not tell a short cause from a long one."""

_LARGEST_HIDDEN_BYTES: Final = 4_000
_FIELDS: Final = ("format", "version", "id", "words", "hidden")
_HINT: Final = Text("Ask for the file once more, or make a new exercise.")


def write_exercise(exercise: Exercise, path: str | Path) -> None:
    """Save an exercise.

    Raises
    ------
    OutputError
        When the file cannot be written; nothing half-written is left.
    """
    table = {
        "format": KIND,
        "version": VERSION,
        "id": exercise.id,
        "words": exercise.words,
        "hidden": _drawn(exercise),
    }
    with whole_file(path) as unfinished:
        unfinished.write_text(json.dumps(table, ensure_ascii=False, indent=1) + "\n", encoding="utf-8")


def read_exercise(path: str | Path, rulebook: Rulebook) -> Exercise:
    """Open a saved exercise.

    Returns
    -------
    Exercise
        The very exercise that was saved; the driver's answers follow the rule book that is in use.

    Raises
    ------
    ExerciseFileError
        When the file is missing, too large, of another kind or version, damaged or altered, or when its
        fault is unknown here.
    """
    file = str(path)
    table = _table(_text(Path(path), file), file)
    words, hidden = table["words"], _undrawn(table["hidden"], table["id"], file)
    try:
        exercise = make_exercise(hidden, rulebook, words=words)
    except SettingsError as error:
        raise _refusal(
            Text("the exercise cannot be used here: {reason}", reason=as_text(error.message)), file
        ) from None
    if exercise.id != table["id"]:
        raise _refusal(Text("the exercise was altered: its parts do not belong together"), file)
    return exercise


def _text(path: Path, file: str) -> str:
    try:
        if path.stat().st_size > LARGEST_FILE_BYTES:
            raise _refusal(
                Text("larger than {most} bytes: this is no exercise", most=LARGEST_FILE_BYTES), file
            )
        with path.open("rb") as source:  # the file may have grown since it was measured
            return source.read(LARGEST_FILE_BYTES).decode("utf-8")
    except OSError as error:
        raise _refusal(Text("cannot be read: {reason}", reason=reason_of(error)), file) from None
    except UnicodeDecodeError:
        raise _refusal(Text("this is no text: no exercise file"), file) from None


def _table(text: str, file: str) -> dict[str, Any]:
    try:
        table = json.loads(text)
    except (ValueError, RecursionError):
        raise _refusal(Text("this is no JSON: no exercise file, or a damaged one"), file) from None
    if not isinstance(table, dict) or table.get("format") != KIND:
        raise _refusal(Text("this is no exercise file"), file)
    if table.get("version") != VERSION:
        raise _refusal(Text("the exercise was saved by another version of the program"), file)
    if set(table) != set(_FIELDS) or not all(
        isinstance(table[name], str) for name in ("id", "words", "hidden")
    ):
        wanted = ", ".join(_FIELDS)
        raise _refusal(Text("an exercise file has the texts {fields}, and nothing else", fields=wanted), file)
    if not re.fullmatch("[0-9a-f]{12}", table["id"]) or len(table["words"]) > LONGEST_WORDS:
        raise _refusal(Text("the exercise's number or the driver's words are not of the right form"), file)
    return table


def _drawn(exercise: Exercise) -> str:
    text = json.dumps(asdict(exercise.hidden), separators=(",", ":")).encode("ascii")
    packed = zlib.compress(text, 9)
    filled = packed.ljust(_PADDED_TO, b"\0")
    return base64.b64encode(_mixed(filled, exercise.id)).decode("ascii")


def _undrawn(hidden: str, number: str, file: str) -> Hidden:
    damaged = _refusal(Text("the hidden part is damaged"), file)
    try:
        packed = _mixed(base64.b64decode(hidden.encode("ascii"), validate=True), number)
        unpacker = zlib.decompressobj()
        text = unpacker.decompress(packed, _LARGEST_HIDDEN_BYTES)
        row = json.loads(text) if unpacker.eof else None
    except (UnicodeEncodeError, binascii.Error, zlib.error, ValueError, RecursionError):
        raise damaged from None
    if not isinstance(row, dict) or set(row) != {field.name for field in fields(Hidden)}:
        raise damaged
    if not _well_typed(row):
        raise damaged
    return Hidden(**(row | {"severity": float(row["severity"]), "duration_s": float(row["duration_s"])}))


def _well_typed(row: dict[str, Any]) -> bool:
    numbers = all(_is_number(row[name], float, int) for name in ("severity", "duration_s"))
    seeds = _is_number(row["drive_seed"], int) and (
        row["car_seed"] is None or _is_number(row["car_seed"], int)
    )
    return isinstance(row["cause"], str) and row["corner"] in (*CORNERS, VEHICLE) and numbers and seeds


def _is_number(value: object, *kinds: type) -> bool:
    # A huge whole number is no float; True is a whole number to Python.
    return isinstance(value, kinds) and not isinstance(value, bool) and abs(float(str(value))) < 1e12


def _mixed(data: bytes, number: str) -> bytes:
    """Mix bytes with a stream made from the exercise's id; done twice, it gives the bytes again."""
    blocks = range(len(data) // 32 + 1)
    stream = b"".join(hashlib.sha256(f"{number} {block}".encode("ascii")).digest() for block in blocks)
    return bytes(one ^ other for one, other in zip(data, stream, strict=False))


def _refusal(message: Text, file: str) -> ExerciseFileError:
    return ExerciseFileError(message, file=file, hint=_HINT)
