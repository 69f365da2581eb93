"""How losses depend on speed, and the speed below which the wheel is silent."""

from __future__ import annotations

import numpy as np

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.measurement import Measured
from triage.signals.measures.building import event_spans, measured, missing, moving_spans
from triage.signals.running import count_of
from triage.speed_log import FloatArray

SLOW_ENOUGH_MPS = 2.0
FEWEST_LOSSES = 20
UNSEEN_CUT_OFF_MPS = 0.6
"""A wheel that was never seen silent while turning falls silent somewhere below this."""


def measure_cut_off_speed(analysis: Analysis, row: int) -> Measured:
    """By how much the lowest speed the wheel still reads lies above that of the others, in m/s."""
    expected = analysis.reference.expected_mps[row]
    slow = np.isfinite(expected) & (expected > 0.3) & (expected < SLOW_ENOUGH_MPS)
    if count_of(slow) * analysis.clock.period_s < 1.0:
        return missing(
            "cut-off-speed",
            row,
            "the car never rolled slowly",
            "three slow stops and pull-aways, rolling at walking pace for some seconds each",
        )
    lost = analysis.losses.alone[row]
    own = analysis.cut_offs[row]
    if np.isnan(own.speed_mps) and lost.any() and np.mean(lost[analysis.losses.moving[row]]) > 0.5:
        return missing(
            "cut-off-speed", row, "the wheel reads nothing at any speed", "first restore the signal"
        )
    speed = _lowest_speeds(analysis)
    usual = float(np.median(np.delete(speed, row)))
    std = own.std_mps if np.isfinite(own.std_mps) else 0.2
    spans = (
        event_spans(analysis, own.silent & slow) or event_spans(analysis, slow) or moving_spans(analysis, row)
    )
    return measured(
        "cut-off-speed",
        CORNERS[row],
        speed[row] - usual,
        max(std, 0.1),
        unit="m/s",
        count=count_of(slow),
        spans=spans,
    )


def _lowest_speeds(analysis: Analysis) -> FloatArray:
    """Cut-off speed of every wheel; one that was never silent has the lowest that was seen on any."""
    seen = np.array([cut.speed_mps for cut in analysis.cut_offs])
    lowest = float(np.min(seen[np.isfinite(seen)], initial=UNSEEN_CUT_OFF_MPS))
    return np.where(np.isfinite(seen), seen, lowest)


def measure_speed_loss_slope(analysis: Analysis, row: int) -> Measured:
    """Losses in the faster half of the drive against the slower half: 1 only when fast, -1 only when slow."""
    losses = analysis.losses
    moving = losses.moving[row]
    disturbed = losses.low[row] | losses.alone[row]
    if count_of(disturbed) < FEWEST_LOSSES:
        return missing(
            "speed-loss-slope", row, "too few losses to compare speeds", "a longer drive with the fault"
        )
    speed = analysis.reference.expected_mps[row]
    split = float(np.median(speed[moving]))
    fast = disturbed[moving & (speed >= split)]
    slow = disturbed[moving & (speed < split)]
    if min(fast.size, slow.size) == 0 or np.quantile(speed[moving], 0.9) < 1.5 * np.quantile(
        speed[moving], 0.1
    ):
        return missing(
            "speed-loss-slope", row, "the speed hardly changed", "a drive with slow and fast parts"
        )
    rates = np.array([fast.mean(), slow.mean()]) + 0.5 / max(fast.size, 1)
    contrast = (rates[0] - rates[1]) / rates.sum()
    events = max(count_of(np.diff(disturbed.astype(np.int8)) > 0), 1)
    return measured(
        "speed-loss-slope",
        CORNERS[row],
        contrast,
        max(1.0 / np.sqrt(events), 0.05),
        unit="",
        count=count_of(disturbed),
        spans=event_spans(analysis, disturbed),
    )
