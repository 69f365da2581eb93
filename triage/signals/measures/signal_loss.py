"""How much of the time a wheel's signal is gone while the others turn, and in what pieces."""

from __future__ import annotations

import numpy as np

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.measurement import Measured
from triage.signals.measures.building import (
    SHORTEST_MOVING_S,
    event_spans,
    measured,
    missing,
    moving_spans,
    moving_time_s,
    too_little_driving,
)
from triage.signals.running import count_of, runs
from triage.speed_log import BoolArray, FloatArray

FEWEST_DROP_OUTS = 3
FEWEST_FOR_CLUSTERS = 6
COUNTING_WINDOW_S = 5.0
"""Drop-outs are counted in windows of this length of moving time to see whether they come in clusters."""


def measure_dead_share(analysis: Analysis, row: int) -> Measured:
    """Share of the moving time in which the wheel alone reads nothing, in per cent."""
    moving_s = moving_time_s(analysis, row)
    if moving_s < SHORTEST_MOVING_S:
        return too_little_driving("dead-share", row)
    lost = _proper_losses(analysis, row)
    events = len(runs(lost))
    # joined breaks may reach into moments that do not count as moving
    share = min(100.0 * count_of(lost) * analysis.clock.period_s / moving_s, 100.0)
    std = max(share / np.sqrt(max(events, 1)) if share < 50.0 else 2.0, 0.02)
    spans = event_spans(analysis, lost) or moving_spans(analysis, row)
    return measured("dead-share", CORNERS[row], share, std, unit="%", count=lost.size, spans=spans)


def measure_drop_out_rate(analysis: Analysis, row: int) -> Measured:
    """Drop-outs of this wheel alone per minute of moving time."""
    moving_s = moving_time_s(analysis, row)
    if moving_s < SHORTEST_MOVING_S:
        return too_little_driving("drop-out-rate", row)
    lost = _proper_losses(analysis, row)
    events = len(runs(lost))
    rate = 60.0 * events / moving_s
    # Poisson counting; half a count stands for none.
    std = 60.0 * np.sqrt(max(events, 0.5)) / moving_s
    spans = event_spans(analysis, lost) or moving_spans(analysis, row)
    return measured("drop-out-rate", CORNERS[row], rate, std, unit="1/min", count=events, spans=spans)


def measure_drop_out_length(analysis: Analysis, row: int) -> Measured:
    """Median length of the drop-outs of this wheel alone, in seconds."""
    lost = _proper_losses(analysis, row)
    lengths_s = _lengths_s(analysis, lost)
    if lengths_s.size < FEWEST_DROP_OUTS:
        return missing(
            "drop-out-length",
            row,
            "fewer than three drop-outs",
            "a longer drive in which the fault shows itself",
        )
    low, high = np.quantile(lengths_s, (0.16, 0.84))
    std = max(1.2533 * (high - low) / 2.0 / np.sqrt(lengths_s.size), analysis.clock.period_s / 2.0)
    return measured(
        "drop-out-length",
        CORNERS[row],
        np.median(lengths_s),
        std,
        unit="s",
        count=lengths_s.size,
        spans=event_spans(analysis, lost),
    )


def measure_drop_out_clustering(analysis: Analysis, row: int) -> Measured:
    """Variance over mean of the number of drop-outs in windows of 5 s moving time: 1 for independent ones.

    References
    ----------
    Index of dispersion: D. R. Cox, P. A. W. Lewis, The Statistical Analysis of Series of Events, 1966 (cited
    from memory). Its standard uncertainty under independence is sqrt(2 / (windows - 1)).
    """
    lost = _proper_losses(analysis, row)
    starts = np.array([first for first, _ in runs(lost)], dtype=np.intp)
    clock_s = np.cumsum(analysis.losses.moving[row]) * analysis.clock.period_s
    windows = int(clock_s[-1] // COUNTING_WINDOW_S) if clock_s.size else 0
    if starts.size < FEWEST_FOR_CLUSTERS or windows < 6:
        return missing(
            "drop-out-clustering",
            row,
            "too few drop-outs to see a pattern in time",
            "a longer drive with the fault",
        )
    counts = np.histogram(clock_s[starts], bins=windows, range=(0.0, windows * COUNTING_WINDOW_S))[0]
    ratio = counts.var(ddof=1) / max(counts.mean(), 1e-9)
    std = max(ratio, 1.0) * np.sqrt(2.0 / (windows - 1))
    return measured(
        "drop-out-clustering",
        CORNERS[row],
        ratio,
        std,
        unit="",
        count=starts.size,
        spans=event_spans(analysis, lost),
    )


def _proper_losses(analysis: Analysis, row: int) -> BoolArray:
    """Losses of this wheel alone that are not merely its silence below a cut-off speed."""
    quiet: BoolArray = analysis.losses.alone[row] & ~analysis.cut_offs[row].silent
    return quiet


def _lengths_s(analysis: Analysis, lost: BoolArray) -> FloatArray:
    time_s, period_s = analysis.clock.time_s, analysis.clock.period_s
    return np.array([time_s[stop - 1] - time_s[first] + period_s for first, stop in runs(lost)])
