"""Units in which a value is read from an instrument at the car."""

from __future__ import annotations

from typing import Final

READING_UNITS: Final = ("mm", "mA", "V", "ohm", "K", "%")
"""Units of the rule book. K: a difference of temperatures, left against right."""

# The ohm sign and the micro sign each exist twice in Unicode; keyboards differ.
_FACTORS: Final = {
    "mm": {"mm": 1.0, "um": 1e-3, "\N{MICRO SIGN}m": 1e-3, "\N{GREEK SMALL LETTER MU}m": 1e-3}
    | {"cm": 10.0, "in": 25.4, "inch": 25.4},
    "mA": {"mA": 1.0, "A": 1e3},
    "V": {"V": 1.0, "mV": 1e-3},
    "ohm": {"ohm": 1.0, "ohms": 1.0, "kohm": 1e3, "Mohm": 1e6}
    | {
        f"{prefix}{sign}": factor
        for prefix, factor in (("", 1.0), ("k", 1e3), ("M", 1e6))
        for sign in "\N{OHM SIGN}\N{GREEK CAPITAL LETTER OMEGA}"
    },
    "K": {"K": 1.0, "°C": 1.0, "C": 1.0},
    "%": {"%": 1.0},
}

_EXACT_ONLY: Final = ("Mohm", "M\N{OHM SIGN}", "M\N{GREEK CAPITAL LETTER OMEGA}")
"""A small m would be a thousandth."""


def unit_factor(text: str, unit: str) -> float | None:
    """Return the factor from a unit as a person writes it to one of ``READING_UNITS``.

    Returns
    -------
    float or None
        None when the text is no unit of that kind. Small and capital letters count only where they mean
        different things: ``mohm`` is refused, for it may be a thousandth or a million.

    Examples
    --------
    >>> unit_factor("in", "mm")
    25.4
    """
    names = _FACTORS[unit]
    if text in names:
        return names[text]
    alike = [
        factor for name, factor in names.items() if name not in _EXACT_ONLY and name.lower() == text.lower()
    ]
    return alike[0] if alike else None
