"""Short ways to write down a measurement or the lack of one."""

from __future__ import annotations

import numpy as np

from triage.corners import CORNERS, Place
from triage.signals.analysis import Analysis
from triage.signals.losses import spans_of
from triage.signals.measurement import Measurement, NotMeasurable, Span
from triage.signals.running import count_of
from triage.speed_log import BoolArray
from triage.texts import Text

SHORTEST_MOVING_S = 10.0
"""Rates and shares are not formed from less driving than this."""


def measured(
    name: str, corner: Place, value: float, std: float, *, unit: str, count: int, spans: tuple[Span, ...]
) -> Measurement:
    """Build a measurement with plain Python numbers."""
    return Measurement(
        id=name,
        corner=corner,
        value=float(value),
        std_uncertainty=float(std),
        unit=unit,
        sample_count=int(count),
        spans=spans,
    )


def missing(
    name: str, row: int | None, reason: str, needed: str, *, by_driving: bool = True
) -> NotMeasurable:
    """Say that a wheel's (or, with None, the vehicle's) quantity cannot be measured."""
    corner = None if row is None else CORNERS[row]
    return NotMeasurable(id=name, corner=corner, reason=reason, needed=needed, by_driving=by_driving)


def moving_spans(analysis: Analysis, row: int) -> tuple[Span, ...]:
    """Seconds in which the wheel was judged."""
    return analysis.moving_spans[row]


def event_spans(analysis: Analysis, flag: BoolArray) -> tuple[Span, ...]:
    """Seconds of flagged samples, the longest first."""
    return spans_of(flag, analysis.clock.time_s, period_s=analysis.clock.period_s)


def moving_anywhere(analysis: Analysis) -> BoolArray:
    """Flag the samples in which any wheel was judged."""
    flag: BoolArray = np.any(analysis.losses.moving, axis=0)
    return flag


def moving_time_s(analysis: Analysis, row: int) -> float:
    """Tell the recorded time in which the wheel was judged, gaps of the recorder not counted."""
    return float(count_of(analysis.losses.moving[row]) * analysis.clock.period_s)


def too_little_driving(name: str, row: int | None) -> NotMeasurable:
    """Say that the car was hardly moving."""
    return missing(
        name,
        row,
        Text("less than {time} s of driving above walking pace", time=f"{SHORTEST_MOVING_S:.0f}"),
        "one minute or more of driving above walking pace",
    )


def hidden_by_steps(name: str, row: int) -> NotMeasurable:
    """Say that a swing once a turn is small, but that the control unit would hide a larger one."""
    return missing(
        name,
        row,
        "the control unit's own steps, which are as large at any speed, hide a small swing",
        "a control unit that times its pulses, or a check of the ring itself",
        by_driving=False,
    )
