"""Speeds that no car drives: then the numbers are wrong, and nothing measured on them means anything."""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.corners import CORNERS
from triage.signals.conditioning import CommonClock
from triage.signals.measurement import NotMeasurable
from triage.signals.running import middle_of, middle_value
from triage.texts import Text
from triage.units import to_kmh

FASTEST_MPS: Final = 100.0
"""No road car on a road test goes faster (360 km/h)."""

TURNING_MPS: Final = 1.0
FEWEST_SAMPLES: Final = 20
MOST_SHARE: Final = 0.5
"""Single peaks beyond the limit are a disturbed signal; when most of it lies there, the unit is wrong."""

WILDEST_MPS2: Final = 20.0
SHORTEST_STEP_S: Final = 0.1
"""No car changes its speed by more than this, twice what tyres hold, for half of a drive. Steps closer in
time are held against a tenth of a second, for a coarse recording jumps."""

PIECES: Final = 40
PIECE: Final = 1000
"""A log of more samples than these is judged on so many pieces of so many samples."""


def find_implausible_speed(clock: CommonClock) -> NotMeasurable | None:
    """Say why nothing can be measured when the wheels mostly read what no car drives; else None."""
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
    if not _jumps_about(clock):
        return None
    return NotMeasurable(
        id="all",
        corner=None,
        reason="the middle of the wheels mostly jumps further from sample to sample than a car can brake or "
        "speed up: these are no wheel speeds",
        needed="the columns or signals that hold the wheel speeds (--map), and the right byte order of the "
        "signals",
    )


def _jumps_about(clock: CommonClock) -> bool:
    some = _spread_over(clock.time_s.size)
    middle_mps, time_s = middle_of(clock.speed_mps[:, some]), clock.time_s[some]
    known = np.flatnonzero(np.isfinite(middle_mps))
    if known.size < FEWEST_SAMPLES:
        return False
    step_s = np.maximum(np.diff(time_s[known]), SHORTEST_STEP_S)
    return middle_value(np.abs(np.diff(middle_mps[known])) / step_s) > WILDEST_MPS2


def _spread_over(size: int) -> NDArray[np.intp]:
    """Choose all samples of a log, or of a long one pieces of neighbours spread over it."""
    if size <= PIECES * PIECE:
        return np.arange(size)
    starts = np.linspace(0, size - PIECE, PIECES).astype(np.intp)
    return (starts[:, np.newaxis] + np.arange(PIECE)).ravel()
