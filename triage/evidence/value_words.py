"""A measured value as a person pictures it: ``5.7 times (4.4 to 7.3)`` for two and a half doublings."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from typing import Final, Literal

from triage.corners import SIDE_SIGN, VEHICLE, Place
from triage.texts import Text
from triage.units import KMH

ToldAs = Literal["", "doublings", "decades", "contrast", "share", "place"]
TOLD_AS: Final[tuple[ToldAs, ...]] = ("", "doublings", "decades", "contrast", "share", "place")
"""How a value without a unit is told.

``doublings`` and ``decades`` are the logarithm, to 2 and to 10, of how many times as much; ``contrast`` is
(a - b) / (a + b), told as a over b; ``share`` runs to 1 for all; ``place`` from -1 for the beginning to 1 for
the end, told in per cent of the way.
"""

LARGEST_TIMES: Final = 100.0
"""More than this many times as much is not counted out."""

SEEN_FROM_STD: Final = 4.0
"""So many standard uncertainties above 0 a value would have been seen.

Of events counted one by one, with half a count for none, so many would have shown one with 94 %.
"""

SMALLEST_SHOWN: Final = 1e-4

_TIMES: Final[Mapping[str, Callable[[float], float]]] = {
    "doublings": lambda value: 2.0 ** min(value, 20.0),
    "decades": lambda value: 10.0 ** min(value, 6.0),
    "dB": lambda value: 10.0 ** min(value / 10.0, 6.0),
    "contrast": lambda value: math.inf if value >= 1.0 else max((1.0 + value) / (1.0 - value), 0.0),
}

_SCALES: Final[Mapping[str, tuple[float, str]]] = {
    "share": (100.0, "%"),
    "place": (50.0, "%"),
    "m/s": (1.0 / KMH, "km/h"),
    "rev": (360.0, ""),
    "1/min": (1.0, ""),
}
"""Factor and unit in which a value is told."""


def value_words(value: float, std_uncertainty: float, *, unit: str, told_as: ToldAs = "") -> str:
    """Word a measured value with its standard uncertainty.

    Parameters
    ----------
    value, std_uncertainty : float
    unit : str
        As the rule book states it; shares of a turn are told in degrees, m/s in km/h, dB as times as much.
    told_as : str
        One of ``TOLD_AS``.

    Examples
    --------
    >>> value_words(2.51, 0.36, unit="", told_as="doublings")
    '5.7 times (4.4 to 7.3)'
    >>> value_words(15.1, 2.4, unit="1/min"), value_words(0.15, 0.02, unit="rev")
    ('15.1 ± 2.4 times a minute', '54.0 ± 7.2°')
    """
    kind = told_as or unit
    if kind in _TIMES:
        return _times_as_much(value, std_uncertainty, _TIMES[kind])
    scale, told_unit = _SCALES.get(kind, (1.0, unit))
    start = 1.0 if kind == "place" else 0.0
    number = format_value(scale * (start + value), scale * std_uncertainty, told_unit)
    if kind == "rev":
        return f"{number}°"
    return Text("{number} times a minute", number=number) if kind == "1/min" else number


def least_rate_words(std_uncertainty_per_min: float) -> str:
    """Word the rate of events from which some would have been seen where none was.

    Parameters
    ----------
    std_uncertainty_per_min : float
        Of the rate 0 that was measured: half an event over the time.

    Examples
    --------
    >>> least_rate_words(0.2725)
    '1.1 times a minute'
    """
    least = float(f"{SEEN_FROM_STD * std_uncertainty_per_min:.2g}")
    return value_words(least, 0.0, unit="1/min")


def format_value(value: float, std_uncertainty: float, unit: str) -> str:
    """Write value and standard uncertainty to the latter's second digit.

    Returns
    -------
    str
        ``1.90 ± 0.12 %``; without an uncertainty the value to four digits.

    Examples
    --------
    >>> format_value(1.9034, 0.1234, "%")
    '1.90 ± 0.12 %'
    """
    if not 0.0 < std_uncertainty < math.inf:
        number = f"{value:.4g}"
    elif std_uncertainty < SMALLEST_SHOWN:
        number = f"{value:.4f}"
    else:
        decimals = min(max(1 - math.floor(math.log10(std_uncertainty)), 0), 5)
        rounded = round(value, decimals) + 0.0  # no minus before zero
        number = f"{rounded:.{decimals}f} ± {std_uncertainty:.{decimals}f}"
    return f"{number} {unit}".rstrip()


def _times_as_much(value: float, std_uncertainty: float, factor: Callable[[float], float]) -> str:
    spread = std_uncertainty if 0.0 < std_uncertainty < math.inf else 0.0
    times, least, most = factor(value), factor(value - spread), factor(value + spread)
    if times > LARGEST_TIMES:
        over = Text("over {factor} times", factor=f"{LARGEST_TIMES:.0f}")
        return Text("{over} (at least {low})", over=over, low=_digits(least)) if _is_counted(least) else over
    if times < 1.0 / LARGEST_TIMES:
        under = Text("under {factor} times", factor=f"{1.0 / LARGEST_TIMES:g}")
        return (
            Text("{under} (at most {high})", under=under, high=_digits(most)) if _is_counted(most) else under
        )
    if not spread:
        return Text("{factor} times", factor=_digits(times))
    return Text(
        "{factor} times ({low} to {high})", factor=_digits(times), low=_digits(least), high=_digits(most)
    )


def _is_counted(times: float) -> bool:
    return 1.0 / LARGEST_TIMES <= times <= LARGEST_TIMES


def _digits(times: float) -> str:
    """Write two digits that count; nobody pictures more."""
    if times > LARGEST_TIMES:
        return Text("{n} or more", n=f"{LARGEST_TIMES:.0f}")
    return f"{times:.0f}" if times >= 10.0 else f"{times:.1f}" if times >= 1.0 else f"{times:.2f}"


def curve_words(place: Place) -> dict[str, str]:
    """Name the curve in which a wheel is the outer, loaded one, and the other; nothing for the vehicle."""
    if place == VEHICLE:
        return {}
    loaded, other = (Text("right-hand"), Text("left-hand"))[:: SIDE_SIGN[place]]
    return {"loaded_curve": loaded, "other_curve": other}
