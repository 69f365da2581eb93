"""Speeds that no car reaches: then the numbers are wrong, and nothing measured on them means anything."""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.corners import CORNERS
from triage.signals.conditioning import CommonClock
from triage.signals.measurement import NotMeasurable
from triage.texts import Text
from triage.units import to_kmh

FASTEST_MPS: Final = 100.0
"""No road car on a road test goes faster (360 km/h)."""

TURNING_MPS: Final = 1.0
FEWEST_SAMPLES: Final = 20
MOST_SHARE: Final = 0.5
"""Single peaks beyond the limit are a disturbed signal; when most of it lies there, the unit is wrong."""


def find_implausible_speed(clock: CommonClock) -> NotMeasurable | None:
    """Say why nothing can be measured when a wheel mostly reads more than any car drives; else None."""
    for row, speed_mps in enumerate(clock.speed_mps):
        beyond = np.count_nonzero(speed_mps > FASTEST_MPS)
        if beyond < FEWEST_SAMPLES or beyond <= MOST_SHARE * np.count_nonzero(speed_mps > TURNING_MPS):
            continue
        return NotMeasurable(
            id="all",
            corner=None,
            reason=Text(
                "{wheel} mostly reads more than {speed} km/h, as no car drives: the unit or the factor of "
                "the speeds is wrong",
                wheel=CORNERS[row],
                speed=f"{to_kmh(FASTEST_MPS):.0f}",
            ),
            needed="the right unit (--unit), or the right factor in the signal database",
        )
    return None
