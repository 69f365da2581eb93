"""Whether losses come later rather than earlier in the drive, as in a sensor that dies when warm."""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.loss_events import SPEED_STRATA, find_loss_events, speed_strata
from triage.signals.measurement import Measured
from triage.signals.measures.building import event_spans, measured, missing
from triage.signals.running import zero_for_missing
from triage.speed_log import FloatArray

FEWEST_EVENTS: Final = 4
SHORTEST_MOVING_S: Final = 60.0
LONGEST_COUNTED_S: Final = 3.0
SHORTEST_COUNTED_S: Final = 0.1


def measure_loss_trend(analysis: Analysis, row: int) -> Measured:
    """Where in the moving time the losses lie: 1 all at the end, 0 evenly, -1 all at the beginning.

    Twice the mean place of the events less one half, the place of an event being the share of the moving time
    at about its speed (five ranges) that had passed: a drive that is fast only at its end does not count as
    warming. Events weigh by their length, between 0.1 and 3 s. The uncertainty is that of evenly spread
    places, sqrt(1/12) each; losses closer than 1 s are one event. Valid with four events in a minute or more
    of driving. Source: the trend test of Laplace (D. R. Cox, P. A. W. Lewis, The Statistical Analysis of
    Series of Events, 1966, from memory).
    """
    events = find_loss_events(analysis, row)
    moving = analysis.losses.moving[row]
    moving_s = float(np.count_nonzero(moving)) * analysis.clock.period_s
    if events.first.size < FEWEST_EVENTS or moving_s < SHORTEST_MOVING_S:
        return missing(
            "loss-trend",
            row,
            "fewer than four separate losses, or too short a drive",
            "a longer drive with the fault",
        )
    place = passed_share(moving, zero_for_missing(analysis.reference.reference_mps))[events.first]
    weight = np.clip(events.lost_s, SHORTEST_COUNTED_S, LONGEST_COUNTED_S)
    value = 2.0 * float(weight @ (place - 0.5)) / float(weight.sum())
    std = 2.0 * np.sqrt(float(weight @ weight) / 12.0) / float(weight.sum())
    return measured(
        "loss-trend",
        CORNERS[row],
        value,
        std,
        unit="",
        count=events.first.size,
        spans=event_spans(analysis, events.flag),
    )


def passed_share(moving: np.ndarray, speed_mps: FloatArray) -> FloatArray:
    """Share of the moving time at about the present speed that has passed, float64[N]; 0.5 while standing."""
    stratum = speed_strata(speed_mps, moving)
    share = np.full(moving.size, 0.5)
    for number in range(SPEED_STRATA):
        inside = np.flatnonzero(moving & (stratum == number))
        share[inside] = (np.arange(inside.size) + 0.5) / max(inside.size, 1)
    return share
