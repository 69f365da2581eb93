"""Units of speed, angle and acceleration as logs write them, and their SI factors."""

from __future__ import annotations

import math
from typing import Final

from triage.texts import Text

KMH: Final = 1000.0 / 3600.0
"""Metres per second in one kilometre per hour."""

MPH: Final = 0.44704
"""Metres per second in one mile per hour (international mile of 1609.344 m, exact)."""

LINEAR_SPEED_MPS: Final[dict[str, float]] = {"m/s": 1.0, "km/h": KMH, "mph": MPH, "mm/s": 1e-3}
"""Metres per second in one unit of a speed over ground."""

ROTATION_REV_PER_S: Final[dict[str, float]] = {"rad/s": 1.0 / (2.0 * math.pi), "rpm": 1.0 / 60.0}
"""Wheel revolutions per second in one unit; a rolling circumference turns them into speed."""

SPEED_UNITS: Final = (*LINEAR_SPEED_MPS, *ROTATION_REV_PER_S, "hz")
"""Every unit that ``--unit`` takes; ``hz`` is pulses per second and needs pulses per revolution."""

GRAVITY_MPS2: Final = 9.80665
"""Standard acceleration of free fall (CGPM 1901, exact)."""


def to_kmh(speed_mps: float) -> float:
    """Convert metres per second to kilometres per hour."""
    return speed_mps / KMH


def format_share(probability: float) -> str:
    """Write a probability in whole per cent; never as a certainty.

    Examples
    --------
    >>> format_share(0.834), format_share(0.9997), format_share(0.002)
    ('83 %', 'over 99 %', 'under 1 %')
    """
    if probability > 0.99:
        return _OVER
    return _UNDER if probability < 0.01 else f"{100.0 * probability:.0f} %"


_OVER: Final = Text("over 99 %")
_UNDER: Final = Text("under 1 %")
