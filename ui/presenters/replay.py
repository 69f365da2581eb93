"""Numbers of the replay: what to show around the present instant, and where each wheel's line has got to."""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.corners import CORNERS, Corner
from triage.signals.measurement import Span
from triage.speed_log import SpeedLog
from triage.texts import Text
from triage.units import LINEAR_SPEED_MPS

VIEW_S: Final = 60.0
"""Seconds in view; a minute shows the shape of a drive and still moves."""

AHEAD: Final = 0.1
"""Share of the view that stays empty for what comes."""

HEADROOM: Final = 1.08


def view_span(at_s: float, begin_s: float) -> Span:
    """Return the seconds in view: the first minute, and then the minute that ends a little after now."""
    begin = max(at_s - (1.0 - AHEAD) * VIEW_S, begin_s)
    return begin, begin + VIEW_S


def highest_speed(log: SpeedLog, unit: str) -> float:
    """Return the height of the axis: the highest speed of the whole drive with some room, at least 10."""
    speeds = np.concatenate([log.wheels[corner].speed_mps for corner in CORNERS])
    top_mps = float(np.nanmax(speeds)) if np.any(np.isfinite(speeds)) else 0.0
    return max(HEADROOM * top_mps / LINEAR_SPEED_MPS[unit], 10.0)


def speeds_at(log: SpeedLog, at_s: float, unit: str) -> dict[Corner, float]:
    """Return each wheel's last sample up to an instant; wheels without a usable one are left out."""
    found: dict[Corner, float] = {}
    for corner in CORNERS:
        trace = log.wheels[corner]
        at = int(np.searchsorted(trace.time_s, at_s, side="right")) - 1
        if at >= 0 and np.isfinite(trace.speed_mps[at]):
            found[corner] = float(trace.speed_mps[at]) / LINEAR_SPEED_MPS[unit]
    return found


def clock_words(at_s: float, end_s: float) -> str:
    """Word where the replay stands.

    >>> clock_words(75.26, 180.0)
    '1:15.3 of 3:00'
    """
    minutes, seconds = divmod(round(at_s, 1), 60.0)
    all_minutes, all_seconds = divmod(round(end_s), 60)
    return Text(
        "{now} of {end}", now=f"{minutes:.0f}:{seconds:04.1f}", end=f"{all_minutes}:{all_seconds:02d}"
    )


def speed_words(speed: float) -> str:
    """Word a speed of the replay.

    >>> speed_words(0.5), speed_words(20.0)
    ('0.5 ×', '20 ×')
    """
    return f"{speed:g} ×"
