"""A value read from an instrument, as soft evidence: how probable each outcome of a check is under it.

Written ``0.12 mm limit 0.05`` or ``0.7 V across 100 ohm``, with ``± 0.02`` when the instrument's own
uncertainty is known. The true value is taken as normal about the reading (GUM: JCGM 100:2008, G.2.1).
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from triage.errors import SettingsError
from triage.evidence.findings import band_probability
from triage.evidence.reading_units import unit_factor
from triage.evidence.rule_tables import Check, ValueRule
from triage.evidence.value_words import format_value
from triage.texts import Text, shaped

_NUMBER: Final = r"[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d+)?"
_UNIT: Final = "[a-zA-Z\N{MICRO SIGN}\N{GREEK SMALL LETTER MU}°\N{OHM SIGN}\N{GREEK CAPITAL LETTER OMEGA}%]*"
_READING: Final = re.compile(
    rf"(?P<value>{_NUMBER})\s*(?P<unit>{_UNIT})"
    rf"(?:\s*(?:±|\+-|\+/-)\s*(?P<spread>{_NUMBER})\s*(?P<spread_unit>{_UNIT}))?"
    rf"(?:[\s,;]+limit\s+(?P<limit>{_NUMBER})\s*(?P<limit_unit>{_UNIT}))?"
    rf"(?:[\s,;]+(?:across|shunt)\s+(?P<shunt>{_NUMBER})\s*(?P<shunt_unit>{_UNIT}))?"
)
_STARTS_A_NUMBER: Final = re.compile(r"[+-]?[.,]?\d")


@dataclass(frozen=True, slots=True)
class Reading:
    """A value in the unit of its rule.

    Attributes
    ----------
    outcome_probability : dict of outcome to float
        Sums to 1.
    words : str
        Value with its uncertainty, and what it was held against.
    """

    value: float
    std_uncertainty: float
    unit: str
    outcome_probability: dict[str, float]
    words: str


def is_reading(text: str) -> bool:
    """Say whether an answer is a number rather than the name of an outcome."""
    return _STARTS_A_NUMBER.match(text) is not None


class _Unusable(ValueError):
    """Why a text is no value of a check; worded to follow the text."""

    def __init__(self, reason: Text) -> None:
        super().__init__(reason)
        self.reason = reason


def read_value(text: str, check: Check) -> Reading:
    """Read a measured value and sort it into the outcomes of its check.

    Parameters
    ----------
    text : str
        Such as ``0,12 mm limit 0.05``.
    check : Check

    Returns
    -------
    Reading

    Raises
    ------
    SettingsError
        When the check takes no value, the text has another form, the unit is missing or unknown, the
        maker's limit or the resistor is missing, or a number is implausible.
    """
    if check.value is None:
        raise SettingsError(
            Text("the check {id} takes no value ({text})", id=check.id, text=f"{text!r}"),
            hint=Text("Its outcomes: {outcomes}.", outcomes=", ".join(check.outcomes)),
        )
    try:
        return _read(text.strip(), check.value)
    except _Unusable as unusable:
        example = example_of(check.value)
        raise SettingsError(
            Text("{text} for the check {id} {reason}", text=f"{text!r}", id=check.id, reason=unusable.reason),
            hint=Text(
                "Write it like {example}, or name an outcome: {outcomes}.",
                example=shaped(example, repr),
                outcomes=", ".join(check.outcomes),
            ),
        ) from None


def example_of(rule: ValueRule) -> str:
    """Return how a value is written for this rule."""
    if rule.asks_limit:
        return f"0.12 {rule.unit} limit 0.05"
    plain = f"{rule.edges[0]:g} {rule.unit}"
    if not rule.shunt_high_ohm:
        return plain
    return Text("{value}, or 0.7 V across 100 ohm", value=plain)


def _read(text: str, rule: ValueRule) -> Reading:
    found = _READING.fullmatch(text)
    if found is None:
        raise _Unusable(Text("cannot be read as a value"))
    shunt_ohm = _shunt(found, rule)
    per_unit = _factor(found["unit"], rule, shunt_ohm)
    value = _number(found["value"]) * per_unit
    if not rule.low <= value <= rule.high:
        raise _Unusable(
            Text(
                "is not plausible: {value} {unit} lies outside {low} to {high} {unit}",
                value=f"{value:g}",
                low=f"{rule.low:g}",
                high=f"{rule.high:g}",
                unit=rule.unit,
            )
        )
    spread = rule.std_uncertainty
    if found["spread"]:
        unit = found["spread_unit"]
        spread = _number(found["spread"]) * (_factor(unit, rule, shunt_ohm) if unit else per_unit)
    if not 0.0 < spread <= rule.high - rule.low:
        raise _Unusable(Text("has an implausible uncertainty"))
    return _sorted(value, spread, _limit(found, rule), rule)


def _sorted(value: float, spread: float, limit: float | None, rule: ValueRule) -> Reading:
    # A limit of 0 allows no play that the gauge can show: about two of its uncertainties.
    scale = 1.0 if limit is None else max(limit, 2.0 * spread)
    shares = band_probability(value, spread, tuple(edge * scale for edge in rule.edges))
    words = format_value(value, spread, rule.unit)
    if limit is not None:
        words = Text(
            "{value} (maker's limit {limit} {unit})", value=words, limit=f"{limit:g}", unit=rule.unit
        )
    return Reading(value, spread, rule.unit, dict(zip(rule.bands, shares, strict=True)), words)


def _factor(unit: str, rule: ValueRule, shunt_ohm: float | None) -> float:
    """Return the factor from the unit written to that of the rule."""
    volts = unit_factor(unit, "V") if rule.shunt_high_ohm else None
    if shunt_ohm is not None:
        if volts is None:
            told = Text("names a resistor, which only belongs to a current read as a voltage")
            raise _Unusable(told)
        return 1000.0 * volts / shunt_ohm
    factor = unit_factor(unit, rule.unit)
    if factor is not None:
        return factor
    if volts is not None:
        raise _Unusable(Text("is a voltage: say across which resistor it was read"))
    wrong = Text("has the unit {unit}, not {right}", unit=unit, right=rule.unit)
    raise _Unusable(wrong if unit else Text("has no unit"))


def _shunt(found: re.Match[str], rule: ValueRule) -> float | None:
    if found["shunt"] is None:
        return None
    per_ohm = unit_factor(found["shunt_unit"], "ohm") if found["shunt_unit"] else 1.0
    if per_ohm is None:
        raise _Unusable(Text("has a resistor in {unit}, not in ohm", unit=found["shunt_unit"]))
    shunt_ohm = _number(found["shunt"]) * per_ohm
    low, high = rule.shunt_low_ohm, rule.shunt_high_ohm
    if high and not low <= shunt_ohm <= high:
        told = Text(
            "has an implausible resistor: {value} ohm lies outside {low} to {high} ohm for reading a "
            "sensor's current; look for a slip in the decimal point",
            value=f"{shunt_ohm:g}",
            low=f"{low:g}",
            high=f"{high:g}",
        )
        raise _Unusable(told)
    return shunt_ohm


def _limit(found: re.Match[str], rule: ValueRule) -> float | None:
    if not rule.asks_limit:
        if found["limit"]:
            raise _Unusable(Text("names a limit, which this check does not take"))
        return None
    if found["limit"] is None:
        raise _Unusable(Text("needs the maker's limit for this car; there is no universal one"))
    limit = _number(found["limit"]) * _factor(found["limit_unit"] or found["unit"], rule, None)
    if not 0.0 <= limit <= rule.high:
        told = Text("has an implausible limit of {limit} {unit}", limit=f"{limit:g}", unit=rule.unit)
        raise _Unusable(told)
    return limit


def _number(text: str) -> float:
    return float(text.replace(",", "."))
