"""Loading the rule book: seven TOML files and own checks, checked as a whole, all problems told at once."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from triage.errors import RulebookError
from triage.evidence import rule_reader as reader
from triage.evidence.rule_consistency import find_inconsistencies
from triage.evidence.rule_files import LARGEST_FILE_BYTES, digest_of, parse_text, read_texts
from triage.evidence.rule_lines import number_lines, with_line
from triage.evidence.rule_section import Section
from triage.evidence.rule_tables import Check, Group, Rulebook
from triage.evidence.rule_weaknesses import find_weaknesses

__all__ = ["LARGEST_FILE_BYTES", "Rulebook", "examine_rulebook", "load_rulebook"]


def load_rulebook(folder: str | Path | None = None) -> Rulebook:
    """Read and check a rule book.

    Parameters
    ----------
    folder : str, Path or None
        Folder with the seven files, and with any number of own checks in files ``checks_*.toml``; None for
        the rule book that comes with the program. A folder with nothing but own checks and
        ``workshop.toml`` adds to that one.

    Returns
    -------
    Rulebook

    Raises
    ------
    RulebookError
        With every problem found, each with file and place.
    """
    rulebook, problems = _read(folder)
    if problems or rulebook is None:
        raise RulebookError(problems)
    return rulebook


def examine_rulebook(folder: str | Path | None = None) -> tuple[Rulebook | None, tuple[str, ...]]:
    """Read a rule book and look for every problem, also those with which it can be used.

    Parameters
    ----------
    folder : str, Path or None
        As in :func:`load_rulebook`.

    Returns
    -------
    Rulebook or None
        None when its files cannot be read.
    tuple of str
        Every problem with file, line and place; those of
        :func:`triage.evidence.rule_weaknesses.find_weaknesses` among them.
    """
    return _read(folder, strict=True)


def _read(folder: str | Path | None, *, strict: bool = False) -> tuple[Rulebook | None, tuple[str, ...]]:
    problems: list[str] = []
    texts = read_texts(folder, problems)
    tables = {name: parse_text(text, name, problems) for name, text in texts.items()}
    if problems:  # a file that is not there would make every reference to it a problem of its own
        return None, tuple(problems)
    sections = {name: Section(table, name, "", problems) for name, table in tables.items()}
    rulebook = _build(sections, digest_of(texts))
    found = (*find_inconsistencies(rulebook), *(find_weaknesses(rulebook) if strict else ()))
    more = [problem for problem in found if not _told_already(problem, problems)]
    lines = {name: number_lines(text) for name, text in texts.items()} if problems or more else {}
    return rulebook, tuple(with_line(problem, lines) for problem in (*problems, *more))


def _build(sections: Mapping[str, Section], digest: str) -> Rulebook:
    causes, measurements, likelihoods = (
        sections[f"{name}.toml"] for name in ("causes", "measurements", "likelihoods")
    )
    checks, cautions, sources = (sections[f"{name}.toml"] for name in ("checks", "cautions", "sources"))
    causes.only("cause")
    measurements.only("scoring", "group", "measurement")
    likelihoods.only("variants", "likelihood")
    checks.only("access", "group", "check", "code_family")
    cautions.only("caution")
    sources.only("source")
    workshop = sections["workshop.toml"]
    workshop.only("workshop", "part", "repair")
    return Rulebook(
        causes=reader.read_rows(causes, "cause", reader.read_cause),
        measurements=reader.read_rows(measurements, "measurement", reader.read_measurement),
        groups=_all_groups(measurements, checks),
        scoring=reader.read_scoring(measurements.inner("scoring")),
        likelihoods=reader.read_rows(likelihoods, "likelihood", reader.read_likelihood),
        variants=reader.read_variants(likelihoods),
        access=reader.read_rows(checks, "access", reader.read_access),
        checks=_all_checks(sections),
        cautions=reader.read_rows(cautions, "caution", reader.read_caution),
        sources=reader.read_rows(sources, "source", reader.read_source),
        workshop=reader.read_workshop(workshop.inner("workshop")),
        parts=reader.read_rows(workshop, "part", reader.read_part),
        repairs=reader.read_rows(workshop, "repair", reader.read_repair),
        digest=digest,
        code_families=reader.read_rows(checks, "code_family", reader.read_code_family)
        if "code_family" in checks.table
        else {},
    )


def _all_groups(measurements: Section, checks: Section) -> dict[str, Group]:
    """Read the groups of measurements, then those of answers."""
    groups = reader.read_rows(measurements, "group", reader.read_group)
    for name, group in (
        reader.read_rows(checks, "group", reader.read_group) if "group" in checks.table else {}
    ).items():
        if name in groups:
            checks.inner("group").inner(name).report("the id is taken: measurements.toml has it")
        groups[name] = group
    return groups


def _all_checks(sections: Mapping[str, Section]) -> dict[str, Check]:
    """Read the checks of the rule book, then those of the workshop's own files."""
    checks = reader.read_rows(sections["checks.toml"], "check", reader.read_check)
    for name, section in sections.items():
        if name in reader.FILES:
            continue
        section.only("check")
        for check in reader.read_rows(section, "check", reader.read_check).values():
            earlier = checks.setdefault(check.id, check)
            if earlier is not check:
                section.inner("check").inner(check.id).report(f"the id is taken: {earlier.file} has it")
    return checks


def _told_already(problem: str, told: list[str]) -> bool:
    # A field that could not be read stands in the table as an empty one: do not report its emptiness as well.
    return any(problem.startswith(earlier.rpartition(": ")[0] + ":") for earlier in told)
