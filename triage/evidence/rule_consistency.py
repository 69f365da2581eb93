"""What the tables of a rule book must hold together: references, sums, rising bands, cautions."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from itertools import pairwise
from typing import Final

from triage.evidence.likelihoods import SOUND, VARIANT_MARK, LikelihoodTable, variant_name
from triage.evidence.rule_tables import NO_FAULT, OTHER, SKIPPED, Check, MeasurementRule, Repair, Rulebook
from triage.evidence.trouble_codes import family_problems

SUM_TOLERANCE: Final = 1e-6
PLACEHOLDERS: Final = ("corner", "value", "band")
NOTHING_PLACEHOLDERS: Final = ("corner", "least")
DRIVING_PLACEHOLDERS: Final = ("corner", "loaded_curve", "other_curve")

_PLACEHOLDER: Final = re.compile(r"\{([^{}]*)\}")


def find_inconsistencies(rulebook: Rulebook) -> tuple[str, ...]:
    """Return every problem between the tables, each with file and place; empty when all is well."""
    return (
        *_cause_problems(rulebook),
        *_measurement_problems(rulebook),
        *_likelihood_problems(rulebook),
        *_variant_problems(rulebook),
        *_check_problems(rulebook),
        *(
            problem
            for family in rulebook.code_families.values()
            for problem in family_problems(family, rulebook)
        ),
        *_caution_problems(rulebook),
        *_access_problems(rulebook),
        *_repair_problems(rulebook),
    )


def _cause_problems(rulebook: Rulebook) -> Iterator[str]:
    causes = rulebook.causes
    for name in (NO_FAULT, OTHER):
        if name not in causes:
            yield f"causes.toml: [cause.{name}]: the row is missing"
        elif causes[name].where != "vehicle":
            yield f"causes.toml: [cause.{name}], where: must be vehicle"
    if SOUND in causes:
        yield f"causes.toml: [cause.{SOUND}]: this name is kept for the row of a sound corner"
    total = sum(cause.prior for cause in causes.values())
    if abs(total - 1.0) > SUM_TOLERANCE:
        yield f"causes.toml: [cause], prior: the priors sum to {total:.7g}, not 1"
    for cause in causes.values():
        place = f"causes.toml: [cause.{cause.id}]"
        yield from _unknown(cause.cautions, rulebook.cautions, f"{place}, cautions")


def _measurement_problems(rulebook: Rulebook) -> Iterator[str]:
    for rule in rulebook.measurements.values():
        place = f"measurements.toml: [measurement.{rule.id}]"
        yield from _band_problems(rule, place)
        yield from _unknown((rule.group,), rulebook.groups, f"{place}, group")
        yield from _unknown((rule.source,), rulebook.sources, f"{place}, source")
        for name in _PLACEHOLDER.findall(rule.statement):
            if name not in PLACEHOLDERS and (rule.scope == "vehicle" or name not in DRIVING_PLACEHOLDERS):
                yield f"{place}, statement: {{{name}}} is none of {', '.join(PLACEHOLDERS)}"
        for name in _PLACEHOLDER.findall(rule.nothing):
            if name not in NOTHING_PLACEHOLDERS:
                yield f"{place}, nothing: {{{name}}} is none of {', '.join(NOTHING_PLACEHOLDERS)}"
        if "{least}" in rule.nothing and rule.unit != "1/min":
            yield f"{place}, nothing: {{least}} is known for events counted one by one alone, told per minute"
        if rule.nothing and rule.edges and rule.edges[0] <= 0.0:
            yield f"{place}, nothing: 0 does not lie in the lowest band"
        if rule.told_as and rule.unit:
            yield f"{place}, told_as: only a value without a unit is told in another way"
        yield from _driving_problems(rule, place)
        if rule.id not in rulebook.likelihoods:
            yield f"likelihoods.toml: [likelihood.{rule.id}]: the table is missing"


def _driving_problems(rule: MeasurementRule, place: str) -> Iterator[str]:
    for name in _PLACEHOLDER.findall(rule.driving):
        if rule.scope == "vehicle":
            yield f"{place}, driving: {{{name}}}: the whole vehicle has no corner"
        elif name not in DRIVING_PLACEHOLDERS:
            yield f"{place}, driving: {{{name}}} is none of {', '.join(DRIVING_PLACEHOLDERS)}"


def _band_problems(rule: MeasurementRule, place: str) -> Iterator[str]:
    if len(rule.bands) < 2 or len(set(rule.bands)) < len(rule.bands):
        yield f"{place}, bands: at least two different names are needed"
    if len(rule.edges) != len(rule.bands) - 1:
        needed = len(rule.bands) - 1
        yield f"{place}, edges: {len(rule.bands)} bands need {needed} edges, not {len(rule.edges)}"
    if any(high <= low for low, high in pairwise(rule.edges)):
        yield f"{place}, edges: must rise from one to the next"
    least = rule.sound_at_least
    if len(least) != len(rule.bands) or any(not 0.0 <= share < 1.0 for share in least) or sum(least) >= 1.0:
        yield f"{place}, sound_at_least: needs one share below 1 for each band, together below 1"
    if rule.distribution == "lognormal" and any(edge <= 0.0 for edge in rule.edges):
        yield f"{place}, edges: must lie above 0 for a lognormal distribution"


def _likelihood_problems(rulebook: Rulebook) -> Iterator[str]:
    for name, table in rulebook.likelihoods.items():
        place = f"likelihoods.toml: [likelihood.{name}]"
        if name not in rulebook.measurements:
            yield f"{place}: there is no such measurement"
        else:
            yield from _row_problems(table, len(rulebook.measurements[name].bands), rulebook, place)


def _variant_problems(rulebook: Rulebook) -> Iterator[str]:
    yield from _unknown(set(rulebook.variants), rulebook.causes, "likelihoods.toml: [variants]")
    for cause, shares in rulebook.variants.items():
        place = f"likelihoods.toml: [variants], {cause}"
        if len(shares) < 2 or any(not 0.0 < share < 1.0 for share in shares):
            yield f"{place}: needs two or more shares between 0 and 1"
        elif abs(sum(shares) - 1.0) > SUM_TOLERANCE:
            yield f"{place}: sums to {sum(shares):.7g}, not 1"


def _row_problems(table: LikelihoodTable, width: int, rulebook: Rulebook, place: str) -> Iterator[str]:
    for name in (SOUND, OTHER):
        if name not in table.rows:
            yield f"{place}, rows: the row {name} is missing"
    named = {name for name in table.rows if name != SOUND and not _is_variant(name, rulebook)}
    yield from _unknown(named, rulebook.causes, f"{place}, rows")
    for name, row in table.rows.items():
        if len(row) != width:
            yield f"{place}, rows, {name}: needs {width} probabilities, has {len(row)}"
        elif any(not 0.0 < value < 1.0 for value in row):
            yield f"{place}, rows, {name}: every probability must lie between 0 and 1, and be neither"
        elif abs(sum(row) - 1.0) > SUM_TOLERANCE:
            yield f"{place}, rows, {name}: sums to {sum(row):.7g}, not 1"


def _is_variant(name: str, rulebook: Rulebook) -> bool:
    cause = name.split(VARIANT_MARK, maxsplit=1)[0]
    shares = rulebook.variants.get(cause)
    if shares is None or name == cause:
        return False
    # Shares that could not be read are a problem already; it would be told once more for every row.
    return not shares or name in {variant_name(cause, number + 1) for number in range(len(shares))}


def _check_problems(rulebook: Rulebook) -> Iterator[str]:
    names = [name for check in rulebook.checks.values() for name in (check.id, *check.also)]
    for name in sorted({name for name in names if names.count(name) > 1}):
        yield f"checks.toml: [check], also: the name {name} stands for more than one check"
    for name in sorted(set(rulebook.checks) & set(rulebook.measurements)):
        yield f"{rulebook.checks[name].file}: [check.{name}]: a measurement has the same id"
    for check in rulebook.checks.values():
        place = f"{check.file}: [check.{check.id}]"
        if len(check.outcomes) < 2:
            yield f"{place}, outcomes: at least two are needed"
        for name in {*check.outcomes, *check.aliases} & set(SKIPPED):
            yield f"{place}, outcomes, {name}: the name is kept for no answer"
        yield from _row_problems(check.table, len(check.outcomes), rulebook, place)
        yield from _unknown(check.aliases.values(), check.outcomes, f"{place}, aliases")
        yield from (
            f"{place}, aliases, {name}: is an outcome" for name in check.aliases if name in check.outcomes
        )
        yield from _mirror_problems(check, place)
        yield from _value_problems(check, f"{place}, value")
        yield from _kind_problems(check, rulebook, place)
        yield from _unknown(check.sources, rulebook.sources, f"{place}, sources")
        yield from _unknown(check.cautions, rulebook.cautions, f"{place}, cautions")
        yield from _unknown((check.access,), rulebook.access, f"{place}, access")
        yield from _uncovered(check, rulebook, place)


def _kind_problems(check: Check, rulebook: Rulebook, place: str) -> Iterator[str]:
    """Tell what is wrong with its group, the outcomes that bring others, and the kinds of sensor."""
    yield from _unknown((check.group,) if check.group else (), rulebook.groups, f"{place}, group")
    for outcome, others in check.brings.items():
        yield from _unknown((outcome, *others), check.outcomes, f"{place}, brings, {outcome}")
        if outcome in others:
            yield f"{place}, brings, {outcome}: an outcome does not bring itself"
    kinds = {name: one for one in rulebook.checks.values() if one.tells_sensor for name in one.outcomes}
    yield from _unknown(check.sensors, kinds, f"{place}, sensors")
    if check.tells_sensor and check.where != "vehicle":
        yield f"{place}, tells_sensor: all wheels of a car have the same kind; it is asked of the vehicle"


def _value_problems(check: Check, place: str) -> Iterator[str]:
    rule = check.value
    if rule is None:
        return
    yield from _unknown(rule.bands, check.outcomes, f"{place}, bands")
    if len(rule.bands) < 2 or len(set(rule.bands)) < len(rule.bands):
        yield f"{place}, bands: at least two different outcomes are needed"
    if len(rule.edges) != len(rule.bands) - 1:
        needed = len(rule.bands) - 1
        yield f"{place}, edges: {len(rule.bands)} bands need {needed} edges, not {len(rule.edges)}"
    if any(high <= low for low, high in pairwise(rule.edges)):
        yield f"{place}, edges: must rise from one to the next"
    if rule.asks_limit and any(edge <= 0.0 for edge in rule.edges):
        yield f"{place}, edges: multiples of the maker's limit must lie above 0"
    if rule.shunt_high_ohm and rule.unit != "mA":
        yield f"{place}, shunt_ohm: only a current is read across a resistor"


def _mirror_problems(check: Check, place: str) -> Iterator[str]:
    yield from _unknown({*check.mirror, *check.mirror.values()}, check.outcomes, f"{place}, mirror")
    if check.mirror and check.where == "corner":
        yield f"{place}, mirror: only a check on the whole vehicle has sides"
    for name, image in check.mirror.items():
        if check.mirror.get(image) != name:
            yield f"{place}, mirror, {name}: {image} must point back to {name}"


def _access_problems(rulebook: Rulebook) -> Iterator[str]:
    for access in rulebook.access.values():
        place = f"checks.toml: [access.{access.id}]"
        if access.parent:
            yield from _unknown((access.parent,), rulebook.access, f"{place}, parent")
        if rulebook.path_of(access.id)[-1].parent:
            yield f"{place}, parent: the levels run in a circle"
        if access.breaks:
            yield from _unknown((access.breaks,), rulebook.parts, f"{place}, breaks")


def _repair_problems(rulebook: Rulebook) -> Iterator[str]:
    for repair in rulebook.repairs.values():
        place = f"workshop.toml: [repair.{repair.id}]"
        if repair.id in rulebook.checks:
            yield f"{place}: a check has the same id"
        yield from _unknown((repair.access,), rulebook.access, f"{place}, access")
        yield from _unknown(repair.parts, rulebook.parts, f"{place}, parts")
        yield from _unknown(repair.cautions, rulebook.cautions, f"{place}, cautions")
        yield from _unknown(repair.cures, rulebook.causes, f"{place}, cures")
        for name in repair.cures:
            if name in rulebook.causes and rulebook.causes[name].where != repair.where:
                yield f"{place}, cures, {name}: the cause is not one of a {repair.where}"
        yield from _uncovered(repair, rulebook, place)


def _uncovered(check: Check | Repair, rulebook: Rulebook, place: str) -> Iterator[str]:
    access = rulebook.access.get(check.access)
    given = [rulebook.cautions[name] for name in check.cautions if name in rulebook.cautions]
    if access and access.hazardous and not any(access.id in caution.covers for caution in given):
        yield f"{place}, cautions: someone can get hurt ({access.title}), and no caution covers {access.id}"


def _caution_problems(rulebook: Rulebook) -> Iterator[str]:
    for caution in rulebook.cautions.values():
        place = f"cautions.toml: [caution.{caution.id}]"
        yield from _unknown(caution.covers, rulebook.access, f"{place}, covers")
        yield from _unknown(caution.sources, rulebook.sources, f"{place}, sources")


def _unknown(names: Iterable[str], known: Mapping[str, object], place: str) -> Iterator[str]:
    for name in sorted(set(names)):
        if name not in known:
            yield f"{place}: there is no {name!r}"
