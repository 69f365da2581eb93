"""What a rule book should not have though it can be used: causes nothing tells apart, unsourced numbers."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import combinations
from typing import Final

from triage.evidence.likelihoods import SOUND, LikelihoodTable, variant_name
from triage.evidence.rule_tables import OTHER, Cause, Rulebook

LEAST_DIFFERENCE: Final = 0.02
"""Two rows tell causes apart when an outcome's probability differs by this (judgement)."""

UNITS: Final = (
    "",
    "%",
    "1/min",
    "s",
    "rev",
    "m/s",
    "m/s²",
    "m",
    "mm",
    "Hz",
    "dB",
    "rad",
    "°C",
    "mA",
    "V",
    "ohm",
    "kohm",
)
"""Units in which a measurement may be stated."""

_TORQUE: Final = re.compile(
    r"\d\s*(?:n\s?[·*.]?\s?m|newton.?met(?:re|er)s?|kgf?\s?[·.]?\s?c?m|lbf?[\s·.-]*ft|ft[\s·.-]*lbf?)\b",
    re.IGNORECASE,
)


def find_weaknesses(rulebook: Rulebook) -> tuple[str, ...]:
    """Return every weakness with file and place.

    Parameters
    ----------
    rulebook : Rulebook
        May have other problems; tables with rows that are missing or of another length are passed over.

    Returns
    -------
    tuple of str
        Pairs of causes that no table tells apart, checks that tell nothing, tables called published without
        a published source, unknown units, and tightening torques, which are the maker's to give.
    """
    return (
        *_inseparable(rulebook),
        *_idle_checks(rulebook),
        *_unsourced(rulebook),
        *_torques(rulebook),
    )


def _inseparable(rulebook: Rulebook) -> Iterator[str]:
    every = (*rulebook.likelihoods.values(), *(check.table for check in rulebook.checks.values()))
    tables = [table for table in every if _is_whole(table)]
    for first, second in combinations(rulebook.causes.values(), 2):
        if first.where == second.where and not any(
            _differ(table, first, second, rulebook) for table in tables
        ):
            yield (
                f"causes.toml: [cause.{second.id}]: no measurement and no check tells it from {first.id}; "
                "give one of them a row of its own"
            )


def _differ(table: LikelihoodTable, first: Cause, second: Cause, rulebook: Rulebook) -> bool:
    rows = (_rows(table, first, rulebook), _rows(table, second, rulebook))
    return any(_distance(one, other) >= LEAST_DIFFERENCE for one in rows[0] for other in rows[1])


def _rows(table: LikelihoodTable, cause: Cause, rulebook: Rulebook) -> list[tuple[float, ...]]:
    number = len(rulebook.variants.get(cause.id, ()))
    names = [variant_name(cause.id, i + 1) for i in range(number)] or [cause.id]
    return [table.row(name) for name in names]


def _idle_checks(rulebook: Rulebook) -> Iterator[str]:
    for check in rulebook.checks.values():
        rows = [row for name, row in check.table.rows.items() if name not in (SOUND, OTHER)]
        if not _is_whole(check.table) or check.tells_sensor:
            continue
        if all(_distance(row, check.table.rows[SOUND]) < LEAST_DIFFERENCE for row in rows):
            yield (
                f"{check.file}: [check.{check.id}], rows: the check tells nothing: "
                "no cause has a row unlike that of a sound corner"
            )


def _unsourced(rulebook: Rulebook) -> Iterator[str]:
    published = {source.id for source in rulebook.sources.values() if source.kind == "published"}
    for check in rulebook.checks.values():
        if not check.sources:
            yield f"{check.file}: [check.{check.id}], sources: name one, or practice"
        if check.table.basis == "published" and published.isdisjoint(check.sources):
            yield f"{check.file}: [check.{check.id}], basis: published needs a published source"
    for rule in rulebook.measurements.values():
        if rule.unit not in UNITS:
            known = ", ".join(unit for unit in UNITS if unit)
            yield f"measurements.toml: [measurement.{rule.id}], unit: {rule.unit!r} is none of {known}"
        if rule.basis == "published" and rule.source not in published:
            yield f"measurements.toml: [measurement.{rule.id}], basis: published needs a published source"


def _torques(rulebook: Rulebook) -> Iterator[str]:
    for place, text in _texts(rulebook):
        if _TORQUE.search(text):
            yield f"{place}: gives a tightening torque; leave it to the maker's data"


def _texts(rulebook: Rulebook) -> Iterator[tuple[str, str]]:
    for cause in rulebook.causes.values():
        place = f"causes.toml: [cause.{cause.id}]"
        yield from ((f"{place}, repair", cause.repair), (f"{place}, what_to_do", cause.what_to_do))
    for check in rulebook.checks.values():
        place = f"{check.file}: [check.{check.id}]"
        yield from ((f"{place}, question", check.question), (f"{place}, write_down", check.write_down))
        yield from ((f"{place}, outcomes, {name}", text) for name, text in check.outcomes.items())
    for caution in rulebook.cautions.values():
        yield f"cautions.toml: [caution.{caution.id}], text", caution.text
    for repair in rulebook.repairs.values():
        yield f"workshop.toml: [repair.{repair.id}], title", repair.title


def _is_whole(table: LikelihoodTable) -> bool:
    lengths = {len(row) for row in table.rows.values()}
    return SOUND in table.rows and len(lengths) == 1


def _distance(one: tuple[float, ...], other: tuple[float, ...]) -> float:
    return max((abs(a - b) for a, b in zip(one, other, strict=True)), default=0.0)
