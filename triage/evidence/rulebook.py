"""Loading the rule book: seven TOML files, checked as a whole, all problems reported at once."""

from __future__ import annotations

import hashlib
import tomllib
from collections.abc import Mapping
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path
from typing import Final

from triage.errors import RulebookError
from triage.evidence import rule_reader as reader
from triage.evidence.rule_consistency import find_inconsistencies
from triage.evidence.rule_section import Section
from triage.evidence.rule_tables import Rulebook

__all__ = ["LARGEST_FILE_BYTES", "Rulebook", "load_rulebook"]

LARGEST_FILE_BYTES: Final = 1_000_000


def load_rulebook(folder: str | Path | None = None) -> Rulebook:
    """Read and check a rule book.

    Parameters
    ----------
    folder : str, Path or None
        Folder with the seven files; None for the rule book that comes with the program.

    Returns
    -------
    Rulebook

    Raises
    ------
    RulebookError
        With every problem found, each with file and place.
    """
    root: Traversable = files("rules") if folder is None else Path(folder)
    if not root.is_dir():
        raise RulebookError((f"{folder}: there is no such folder",))
    problems: list[str] = []
    contents = {name: _read_text(root, name, problems) for name in reader.FILES}
    tables = {name: _parse(text, name, problems) for name, text in contents.items()}
    if problems:  # a file that is not there would make every reference to it a problem of its own
        raise RulebookError(tuple(problems))
    sections = {name: Section(table, name, "", problems) for name, table in tables.items()}
    rulebook = _build(sections, _digest(contents))
    more = [problem for problem in find_inconsistencies(rulebook) if not _told_already(problem, problems)]
    if problems or more:
        raise RulebookError((*problems, *more))
    return rulebook


def _build(sections: Mapping[str, Section], digest: str) -> Rulebook:
    causes, measurements, likelihoods = (
        sections[f"{name}.toml"] for name in ("causes", "measurements", "likelihoods")
    )
    checks, cautions, sources = (sections[f"{name}.toml"] for name in ("checks", "cautions", "sources"))
    causes.only("cause")
    measurements.only("scoring", "group", "measurement")
    likelihoods.only("variants", "likelihood")
    checks.only("access", "check")
    cautions.only("caution")
    sources.only("source")
    workshop = sections["workshop.toml"]
    workshop.only("workshop", "part", "repair")
    return Rulebook(
        causes=reader.read_rows(causes, "cause", reader.read_cause),
        measurements=reader.read_rows(measurements, "measurement", reader.read_measurement),
        groups=reader.read_rows(measurements, "group", reader.read_group),
        scoring=reader.read_scoring(measurements.inner("scoring")),
        likelihoods=reader.read_rows(likelihoods, "likelihood", reader.read_likelihood),
        variants=reader.read_variants(likelihoods),
        access=reader.read_rows(checks, "access", reader.read_access),
        checks=reader.read_rows(checks, "check", reader.read_check),
        cautions=reader.read_rows(cautions, "caution", reader.read_caution),
        sources=reader.read_rows(sources, "source", reader.read_source),
        workshop=reader.read_workshop(workshop.inner("workshop")),
        parts=reader.read_rows(workshop, "part", reader.read_part),
        repairs=reader.read_rows(workshop, "repair", reader.read_repair),
        digest=digest,
    )


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


def _parse(text: str, name: str, problems: list[str]) -> dict[str, object]:
    try:
        return tomllib.loads(text)
    except (tomllib.TOMLDecodeError, ValueError, RecursionError) as error:
        # ValueError: an integer of thousands of digits; RecursionError: brackets nested a thousand deep
        problems.append(f"{name}: this is no TOML: {error}")
        return {}


def _digest(contents: Mapping[str, str]) -> str:
    whole = "".join(f"{name}\0{contents[name]}\0" for name in sorted(contents))
    return hashlib.sha256(whole.encode()).hexdigest()


def _told_already(problem: str, told: list[str]) -> bool:
    # A field that could not be read stands in the table as an empty one: do not report its emptiness as well.
    return any(problem.startswith(earlier.rpartition(": ")[0] + ":") for earlier in told)
