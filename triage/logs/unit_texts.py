"""Unit texts as files write them, brought to one spelling."""

from __future__ import annotations

import math
import re
from typing import Final

from triage.units import GRAVITY_MPS2, LINEAR_SPEED_MPS, SPEED_UNITS

_SPELLINGS: Final[dict[str, tuple[str, ...]]] = {
    "km/h": ("km/h", "kmh", "kph", "kmph", "km/hr", "km/std", "kmperh", "kmperhour", "kilometerperhour"),
    "m/s": ("m/s", "mps", "ms", "m/sec", "ms-1", "ms^-1", "meterpersecond", "metrespersecond"),
    "mm/s": ("mm/s", "mmps", "mms", "mm/sec"),
    "mph": ("mph", "mi/h", "mile/h", "miles/h", "mileperhour", "milesperhour"),
    "rad/s": ("rad/s", "rads", "radps", "rad/sec", "radpers", "rads-1"),
    "rpm": ("rpm", "1/min", "u/min", "min-1", "r/min", "rev/min", "umin", "min^-1"),
    "hz": ("hz", "1/s", "pulses/s", "imp/s", "s-1"),
    "deg": ("deg", "°", "degree", "degrees", "grad"),
    "rad": ("rad", "radian", "radians"),
    "deg/s": (
        "deg/s",
        "°/s",
        "degps",
        "dps",
        "degs",
        "deg/sec",
        "grad/s",
        "degree/s",
        "degrees/s",
        "degpers",
    ),
    "m/s2": ("m/s2", "m/s^2", "ms2", "mps2", "m/s/s", "m/sec2", "m/sec^2", "ms^-2", "ms-2", "mpers2"),
    "g": ("g", "gn"),
    "s": ("s", "sec", "secs", "second", "seconds", "sek", "sekunden"),
    "us": ("us", "usec", "microseconds", "microsecond"),
    "ns": ("ns", "nsec", "nanoseconds", "nanosecond"),
    "ms": ("msec", "milliseconds", "millisecond", "millis"),
    "%": ("%", "percent", "prozent"),
    "bar": ("bar", "mbar", "kpa", "pa", "psi", "hpa"),
    "degC": ("degc", "°c", "c", "celsius", "k", "°f"),
    "Nm": ("nm", "n", "kn"),
    "V": ("v", "mv", "volt"),
    "A": ("a", "ma", "amp"),
    "m": ("m", "mm", "km", "cm"),
}
_MULTIPLES: Final[dict[str, tuple[float, str]]] = {
    "cm/s": (0.01, "m/s"),
    "km/s": (1000.0, "m/s"),
    "ft/s": (0.3048, "m/s"),
    "fps": (0.3048, "m/s"),
    "knots": (1.852, "km/h"),
    "knot": (1.852, "km/h"),
    "kt": (1.852, "km/h"),
    "kts": (1.852, "km/h"),
    "m/min": (1 / 60, "m/s"),
    "rps": (60.0, "rpm"),
    "rev/s": (60.0, "rpm"),
    "u/s": (60.0, "rpm"),
}
"""Speeds in units that the program does not take by themselves (foot and knot are exact by definition)."""

_MULTIPLE: Final = re.compile(r"(\d/\d{1,4}|1e-\d|\d{1,6}(?:[.,]\d{1,9})?)[*x·]?([^\d].*)")
_LOOKUP: Final[dict[str, str]] = {text: unit for unit, texts in _SPELLINGS.items() for text in texts}

_LONGEST_REMARK: Final = 1000
_UNITS_OF_REMARKS: Final = frozenset(("km/h", "m/s", "mm/s", "mph", "rpm", "rad/s"))
_WORDS_TOO: Final = frozenset(("ms", "mms", "rads"))
"""Spellings that mean something else in a sentence."""

TIME_UNIT_S: Final[dict[str, float]] = {
    "s": 1.0,
    "ms": 1e-3,
    "us": 1e-6,
    "ns": 1e-9,
    "min": 60.0,
    "h": 3600.0,
}

ANGLE_RAD: Final[dict[str, float]] = {"rad": 1.0, "deg": math.pi / 180}
RATE_RADPS: Final[dict[str, float]] = {"rad/s": 1.0, "deg/s": math.pi / 180}
ACCELERATION_MPS2: Final[dict[str, float]] = {"m/s2": 1.0, "g": GRAVITY_MPS2}

CHANNEL_FACTORS: Final[dict[str, dict[str, float]]] = {
    "steering_rad": ANGLE_RAD,
    "yaw_rate_radps": RATE_RADPS,
    "lateral_mps2": ACCELERATION_MPS2,
    "longitudinal_mps2": ACCELERATION_MPS2,
    "reference_mps": LINEAR_SPEED_MPS,
}
"""SI value of one unit, for every channel that has a unit."""

SUFFIX_UNITS: Final[dict[tuple[str, ...], str]] = {
    ("km", "h"): "km/h",
    ("m", "s", "2"): "m/s2",
    ("ms", "2"): "m/s2",
    ("mps", "2"): "m/s2",
    ("m", "s"): "m/s",
    ("mm", "s"): "mm/s",
    ("rad", "s"): "rad/s",
    ("deg", "s"): "deg/s",
    **{
        (text,): unit
        for text, unit in _LOOKUP.items()
        if text.isalpha() and len(text) > 1 and unit not in ("A", "V", "Nm", "m", "degC", "bar")
    },
}
"""Last words of a name that stand for a unit, longest first when tried."""


def normal_unit(text: str) -> str:
    """Give a unit text in one spelling.

    Returns
    -------
    str
        Such as ``km/h``; the text itself in lower case when it is not known; empty for an empty text.

    Notes
    -----
    A bare ``ms`` stands for metres per second here; time columns read it as milliseconds by themselves.

    Examples
    --------
    >>> normal_unit("Km / H")
    'km/h'
    """
    return unit_multiple(text)[1]


def unit_multiple(text: str) -> tuple[float, str]:
    """Give a unit text as a multiple of a unit in one spelling.

    Returns
    -------
    (float, str)
        1 with what :func:`normal_unit` says, unless the text states a multiple of a speed.

    Examples
    --------
    >>> unit_multiple("0.01 km/h")
    (0.01, 'km/h')
    >>> unit_multiple("ft/s")
    (0.3048, 'm/s')
    >>> unit_multiple("mph")
    (1.0, 'mph')
    """
    plain = re.sub(r"[\s·*_]", "", text).lower()
    plain = (
        plain.replace("²", "2").replace("µ", "u").replace("μ", "u").replace("\ufffd", "°").strip("[](){}\"'")
    )
    if plain in _LOOKUP:
        return 1.0, _LOOKUP[plain]
    if plain in _MULTIPLES:
        return _MULTIPLES[plain]
    found = _MULTIPLE.fullmatch(plain)
    unit = _LOOKUP.get(found[2], "") if found else ""
    if found is None or not is_speed_unit(unit):
        return 1.0, plain
    return _number_of(found[1]) or 1.0, unit


def _number_of(text: str) -> float:
    above, sign, below = text.partition("/")
    if sign:
        return int(above) / int(below) if int(below) else 0.0
    return float(text.replace(",", "."))


def speed_units_in(text: str) -> set[str]:
    """Return the units of speed that a sentence names, in one spelling.

    Examples
    --------
    >>> speed_units_in("# all wheels in MPH, 100 rows a second")
    {'mph'}
    """
    words = set(re.split(r"[\s,;:=()\[\]{}\"'#]+", text[:_LONGEST_REMARK].lower())) - _WORDS_TOO
    return {_LOOKUP.get(word.rstrip("."), "") for word in words} & _UNITS_OF_REMARKS


def is_unit_text(text: str) -> bool:
    """Tell whether a cell can stand in a row of units."""
    plain = text.strip().rstrip(".")
    return (
        plain in ("", "-", "1")
        or unit_multiple(plain)[0] != 1.0
        or normal_unit(plain) in _SPELLINGS
        or plain.lower() in TIME_UNIT_S
    )


def is_speed_unit(unit: str) -> bool:
    """Tell whether a normal unit can be that of a wheel speed."""
    return unit in SPEED_UNITS
