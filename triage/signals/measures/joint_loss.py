"""Losses of all wheels at once, which no wheel end can cause."""

from __future__ import annotations

import numpy as np

from triage.corners import VEHICLE
from triage.signals.analysis import Analysis
from triage.signals.measurement import Measured
from triage.signals.measures.building import (
    SHORTEST_MOVING_S,
    event_spans,
    measured,
    moving_anywhere,
    too_little_driving,
)
from triage.signals.running import close_short_breaks, runs


def measure_joint_drop_out_rate(analysis: Analysis) -> Measured:
    """Instants per minute of moving time at which all wheels vanish or fall together."""
    joint = analysis.losses.joint
    if analysis.moving_s < SHORTEST_MOVING_S and not joint.any():
        return too_little_driving("joint-drop-out-rate", None)
    quarter = analysis.clock.samples_in(0.25)
    joined = close_short_breaks(joint, quarter)
    events = len(runs(joined))
    minutes = max(analysis.moving_s, SHORTEST_MOVING_S) / 60.0
    spans = event_spans(analysis, joined) or event_spans(analysis, moving_anywhere(analysis))[:10]
    return measured(
        "joint-drop-out-rate",
        VEHICLE,
        events / minutes,
        np.sqrt(max(events, 0.5)) / minutes,
        unit="1/min",
        count=events,
        spans=spans,
    )
