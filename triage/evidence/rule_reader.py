"""From the TOML tables of the rule files to their Python values, one function per kind of row."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from typing import Final, Literal, TypeVar

from triage.corners import CORNERS, Corner
from triage.evidence.likelihoods import BASES, LEAST_WEIGHT, MOST_WEIGHT, LikelihoodTable
from triage.evidence.reading_units import READING_UNITS
from triage.evidence.rule_section import Section
from triage.evidence.rule_tables import (
    DISTRIBUTIONS,
    WHERES,
    Access,
    Cause,
    Caution,
    Check,
    CodeFamily,
    Group,
    MeasurementRule,
    Part,
    Repair,
    Scoring,
    Source,
    ValueRule,
    Workshop,
)
from triage.evidence.value_words import TOLD_AS

FILES: Final = (
    "causes.toml",
    "measurements.toml",
    "likelihoods.toml",
    "checks.toml",
    "cautions.toml",
    "sources.toml",
    "workshop.toml",
)

_MEASUREMENT_KEYS: Final = (
    *("title", "meaning", "statement", "nothing", "unit", "scope", "group", "bands", "edges"),
    *("sound_at_least", "distribution", "basis", "source", "needed", "driving", "told_as"),
    *("needs_fault", "longer_helps"),
)
_CHECK_KEYS: Final = (
    *("title", "question", "where", "outcomes", "also", "aliases", "mirror", "minutes", "access", "tools"),
    *("cautions", "sources", "basis", "evidence", "rows", "names_corner", "takes_codes", "value", "skill"),
    *("write_down", "group", "brings", "sensors", "tells_sensor", "asks_driver"),
)
_KINDS: Final[tuple[Literal["published", "practice"], ...]] = ("published", "practice")
_SMALLEST_POSITIVE: Final = 1e-9
_CODE: Final = re.compile(r"[PCBU][0-9A-F]{4}")
_DAY_MIN: Final = 1440.0
_DEAREST: Final = 1e7
_Row = TypeVar("_Row")


def read_rows(file: Section, key: str, read: Callable[[str, Section], _Row]) -> dict[str, _Row]:
    """Read every table under ``key`` of the file."""
    return {name: read(name, section) for name, section in file.entries(key)}


def read_cause(name: str, row: Section) -> Cause:
    """Read one row of ``causes.toml``."""
    row.only("title", "claim", "where", "prior", "repair", "what_to_do", "basis", "cautions")
    return Cause(
        id=name,
        title=row.prose("title"),
        claim=row.prose("claim"),
        where=row.word("where", WHERES),
        prior=_open_probability(row, "prior"),
        repair=row.prose("repair"),
        what_to_do=row.prose("what_to_do"),
        basis=row.word("basis", BASES),
        cautions=row.texts("cautions"),
    )


def read_measurement(name: str, row: Section) -> MeasurementRule:
    """Read one measurement of ``measurements.toml``."""
    row.only(*_MEASUREMENT_KEYS)
    return MeasurementRule(
        id=name,
        title=row.prose("title"),
        meaning=row.text("meaning"),
        statement=row.prose("statement"),
        unit=row.text("unit", default=""),
        scope=row.word("scope", WHERES),
        group=row.text("group"),
        bands=row.texts("bands"),
        edges=row.numbers("edges"),
        distribution=row.word("distribution", DISTRIBUTIONS),
        sound_at_least=row.numbers("sound_at_least"),
        basis=row.word("basis", BASES),
        source=row.text("source"),
        needed=row.prose("needed"),
        nothing=row.prose("nothing", default=""),
        driving=row.prose("driving", default=""),
        told_as=row.word("told_as", TOLD_AS) if "told_as" in row.table else "",
        needs_fault=row.flag("needs_fault"),
        longer_helps=row.flag("longer_helps", default=True),
    )


def read_group(name: str, row: Section) -> Group:
    """Read one group of ``measurements.toml`` or of ``checks.toml``."""
    row.only("title", "weight")
    weight = row.number("weight", _SMALLEST_POSITIVE, 1.0) if "weight" in row.table else None
    return Group(id=name, title=row.text("title"), weight=weight)


def read_scoring(row: Section) -> Scoring:
    """Read the table ``scoring`` of ``measurements.toml``."""
    row.only("temperature", "floor")
    return Scoring(
        temperature=row.number("temperature", 0.1, 100.0, default=1.0), floor=row.number("floor", 1e-12, 0.1)
    )


def read_likelihood(name: str, row: Section) -> LikelihoodTable:
    """Read one table of ``likelihoods.toml``."""
    del name
    row.only("basis", "evidence", "date", "weight", "rows")
    return replace(_read_table(row), weight=row.number("weight", LEAST_WEIGHT, MOST_WEIGHT, default=1.0))


def _read_table(row: Section) -> LikelihoodTable:
    rows = row.inner("rows")
    return LikelihoodTable(
        basis=row.word("basis", BASES),
        evidence=row.text("evidence"),
        rows={cause: rows.numbers(cause) for cause in rows.table},
        date=row.text("date", default=""),
    )


def read_variants(file: Section) -> dict[str, tuple[float, ...]]:
    """Read the shares of the variants of causes in ``likelihoods.toml``, where there are any."""
    if "variants" not in file.table:
        return {}
    row = file.inner("variants")
    return {cause: row.numbers(cause) for cause in row.table}


def read_access(name: str, row: Section) -> Access:
    """Read one kind of access of ``checks.toml``."""
    row.only(
        *("title", "hazardous", "parent", "opening_min", "closing_min"),
        *("seized_min", "breaks", "break_probability"),
    )
    return Access(
        id=name,
        title=row.prose("title"),
        hazardous=row.flag("hazardous"),
        parent=row.text("parent", default=""),
        opening_min=row.number("opening_min", 0.0, _DAY_MIN, default=0.0),
        closing_min=row.number("closing_min", 0.0, _DAY_MIN, default=0.0),
        seized_min=row.number("seized_min", 0.0, _DAY_MIN, default=0.0),
        breaks=row.text("breaks", default=""),
        break_probability=row.number("break_probability", 0.0, 1.0, default=0.0),
    )


def read_check(name: str, row: Section) -> Check:
    """Read one check of ``checks.toml``."""
    row.only(*_CHECK_KEYS)
    brings = row.inner("brings") if "brings" in row.table else None
    return Check(
        id=name,
        title=row.prose("title"),
        question=row.prose("question"),
        where=row.word("where", WHERES),
        outcomes=row.proses_by_name("outcomes"),
        also=row.texts("also"),
        aliases=row.words("aliases"),
        mirror=row.words("mirror"),
        minutes_min=row.number("minutes", 0.5, _DAY_MIN),
        access=row.text("access"),
        tools=row.proses("tools"),
        cautions=row.texts("cautions"),
        sources=row.texts("sources"),
        table=_read_table(row),
        names_corner=row.flag("names_corner"),
        takes_codes=row.flag("takes_codes"),
        value=_read_value(row.inner("value")) if "value" in row.table else None,
        skill=row.prose("skill", default=""),
        write_down=row.prose("write_down", default=""),
        file=row.file,
        group=row.text("group", default=""),
        brings={name: brings.texts(name) for name in brings.table} if brings else {},
        sensors=row.texts("sensors"),
        tells_sensor=row.flag("tells_sensor"),
        asks_driver=row.flag("asks_driver"),
    )


def read_code_family(name: str, row: Section) -> CodeFamily:
    """Read one list of trouble codes of ``checks.toml``."""
    row.only("title", "source", "codes")
    codes: dict[str, tuple[Corner, str]] = {}
    for code, meaning in row.words("codes").items():
        place, _, outcome = meaning.partition(" ")
        corner = next((known for known in CORNERS if known == place), None)
        if corner is None or not _CODE.fullmatch(code):
            row.inner("codes").report("must be a code such as C0031 = 'FL circuit'", code)
        else:
            codes[code] = corner, outcome
    return CodeFamily(name, row.text("title"), row.text("source"), codes)


def _read_value(row: Section) -> ValueRule:
    row.only("unit", "plausible", "std_uncertainty", "bands", "edges", "asks_limit", "shunt_ohm")
    low, high = _range(row, "plausible")
    shunt_low, shunt_high = _range(row, "shunt_ohm") if "shunt_ohm" in row.table else (0.0, 0.0)
    return ValueRule(
        unit=row.word("unit", READING_UNITS),
        low=low,
        high=high,
        std_uncertainty=row.number("std_uncertainty", _SMALLEST_POSITIVE, _DEAREST),
        bands=row.texts("bands"),
        edges=row.numbers("edges"),
        asks_limit=row.flag("asks_limit"),
        shunt_low_ohm=shunt_low,
        shunt_high_ohm=shunt_high,
    )


def _range(row: Section, key: str) -> tuple[float, float]:
    values = row.numbers(key)
    if len(values) == 2 and values[0] < values[1]:
        return values[0], values[1]
    if values:
        row.report("must be two numbers, the smaller first", key)
    return 0.0, 1.0


def read_caution(name: str, row: Section) -> Caution:
    """Read one row of ``cautions.toml``."""
    row.only("text", "covers", "always", "sources")
    return Caution(
        id=name,
        text=row.prose("text"),
        covers=row.texts("covers"),
        always=row.flag("always"),
        sources=row.texts("sources"),
    )


def read_workshop(row: Section) -> Workshop:
    """Read the table ``workshop`` of ``workshop.toml``."""
    row.only("money_per_hour", "corrosion", "proof_min", "last_resort", "least_saving", "doubt")
    return Workshop(
        money_per_hour=row.number("money_per_hour", _SMALLEST_POSITIVE, _DEAREST),
        corrosion=row.number("corrosion", 0.0, 1.0),
        proof_min=row.number("proof_min", 0.0, _DAY_MIN),
        last_resort=row.number("last_resort", _SMALLEST_POSITIVE, _DEAREST),
        least_saving=row.number("least_saving", 0.0, _DEAREST),
        doubt=row.number("doubt", 0.0, 0.5),
    )


def read_part(name: str, row: Section) -> Part:
    """Read one part of ``workshop.toml``."""
    row.only("title", "price")
    return Part(id=name, title=row.prose("title"), price=row.number("price", 0.0, _DEAREST))


def read_repair(name: str, row: Section) -> Repair:
    """Read one repair of ``workshop.toml``."""
    row.only(
        *("title", "where", "access", "minutes", "parts", "cautions"),
        *("basis", "evidence", "cures"),
    )
    cures = row.inner("cures")
    return Repair(
        id=name,
        title=row.prose("title"),
        where=row.word("where", WHERES),
        access=row.text("access"),
        minutes_min=row.number("minutes", 0.5, _DAY_MIN),
        parts=row.texts("parts"),
        cautions=row.texts("cautions"),
        cures={cause: _open_probability(cures, cause) for cause in cures.table},
        basis=row.word("basis", BASES),
        evidence=row.text("evidence"),
    )


def read_source(name: str, row: Section) -> Source:
    """Read one row of ``sources.toml``."""
    row.only("title", "kind")
    return Source(id=name, title=row.text("title"), kind=row.word("kind", _KINDS))


def _open_probability(row: Section, key: str) -> float:
    value = row.number(key, 0.0, 1.0)
    if value in (0.0, 1.0) and key in row.table:
        row.report("no probability may be 0 or 1", key)
    return value
