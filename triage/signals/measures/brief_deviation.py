"""Samples that are briefly below or above what the wheel can have turned.

A pothole throws a wheel both ways, a lost pulse only down, a false pulse only up. What goes both ways in
equal measure is therefore told apart from what goes one way.
"""

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
    moving_time_s,
    too_little_driving,
)
from triage.signals.running import count_of, run_bounds
from triage.speed_log import BoolArray


def measure_dip_share(analysis: Analysis, row: int) -> Measured:
    """Share of the moving samples that are briefly low, beyond as many as are briefly high, in per cent.

    Slip of a braked tyre (:func:`triage.signals.losses.brake_slip`) does not count.
    """
    low, high = analysis.losses.low[row], analysis.losses.high[row]
    return _share("dip-share", analysis, row, max(count_of(low) - count_of(high), 0), flag=low)


def measure_spike_share(analysis: Analysis, row: int) -> Measured:
    """Share of the moving samples that are briefly high, beyond as many as are briefly low, in per cent."""
    low, high = analysis.losses.low[row], analysis.losses.high[row]
    return _share("spike-share", analysis, row, max(count_of(high) - count_of(low), 0), flag=high)


def measure_swing_share(analysis: Analysis, row: int) -> Measured:
    """Share of the moving samples that are briefly off in equal measure both ways, in per cent."""
    low, high = analysis.losses.low[row], analysis.losses.high[row]
    number = 2 * min(count_of(low), count_of(high))
    return _share("swing-share", analysis, row, number, flag=low | high)


def _share(name: str, analysis: Analysis, row: int, number: int, *, flag: BoolArray) -> Measured:
    if moving_time_s(analysis, row) < SHORTEST_MOVING_S:
        return too_little_driving(name, row)
    judged = analysis.losses.moving[row] & np.isfinite(analysis.residuals.fast_ratio[row])
    count = max(count_of(judged), 1)
    # Neighbouring samples belong to one event, so events are counted; one stands for none.
    events = run_bounds(flag)[0].size
    per_event = count_of(flag) / events if events else 1.0
    std = 100.0 * per_event * np.sqrt(max(events, 1)) / count
    spans = event_spans(analysis, flag) or moving_spans(analysis, row)
    return measured(name, CORNERS[row], 100.0 * number / count, std, unit="%", count=count, spans=spans)
