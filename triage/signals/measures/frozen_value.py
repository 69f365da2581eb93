"""A value that is repeated while it must change."""

from __future__ import annotations

import numpy as np

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.measurement import Measured
from triage.signals.measures.building import (
    SHORTEST_MOVING_S,
    event_spans,
    measured,
    moving_spans,
    too_little_driving,
)
from triage.signals.running import count_of


def measure_stuck_share(analysis: Analysis, row: int) -> Measured:
    """Share of the time in which the wheel keeps one value while it must change, in per cent.

    It must where the car changes its speed, or where the road stirs the other wheels
    (:mod:`triage.signals.frozen_values`).
    The time is that in which the wheel moves or claims to move: a wheel that keeps its last value when the
    car stops is stuck while standing.
    """
    frozen = analysis.losses.frozen[row]
    counted = analysis.losses.moving[row] | frozen
    counted_s = float(count_of(counted) * analysis.clock.period_s)
    if counted_s < SHORTEST_MOVING_S and not frozen.any():
        return too_little_driving("stuck-share", row)
    share = 100.0 * count_of(frozen) / max(count_of(counted), 1)
    spans = event_spans(analysis, frozen)
    std = max(share / np.sqrt(4.0 * max(len(spans), 1)), 0.02)
    return measured(
        "stuck-share",
        CORNERS[row],
        share,
        std,
        unit="%",
        count=count_of(counted),
        spans=spans or moving_spans(analysis, row),
    )
