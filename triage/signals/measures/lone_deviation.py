"""How often a wheel alone reads short or long for a moment, beyond what the road explains."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.measurement import Measured, Span
from triage.signals.measures.building import (
    SHORTEST_MOVING_S,
    measured,
    missing,
    moving_spans,
    moving_time_s,
    too_little_driving,
)
from triage.signals.running import zero_for_missing

MOST_SPANS: Final = 40
FEWEST_DIPS: Final = 5
FEWEST_FOR_SCATTER: Final = 12
FEWEST_WINDOWS: Final = 12
MOST_WINDOWS: Final = 60
NEEDED_DIPS: Final = "a longer drive in which the fault shows itself, recorded at 40 Hz or faster"


def measure_lone_dip_rate(analysis: Analysis, row: int) -> Measured:
    """Lone dips of the wheel per minute of driving, those that the road makes taken out.

    See :mod:`triage.signals.lone_deviations`. What the road makes is estimated by the lone dips of the other
    three wheels and the lone peaks of this one; a lost pole makes neither. Counts are Poisson distributed,
    which gives the uncertainty. Valid for moving times from 10 s; at 10 Hz most short losses fall between
    the samples.
    """
    lone = analysis.lone
    return _excess("lone-dip-rate", analysis, row, own=lone.dips, opposite=lone.peaks[row])


def measure_lone_peak_rate(analysis: Analysis, row: int) -> Measured:
    """Lone peaks of the wheel per minute of driving, those that the road makes taken out.

    As :func:`measure_lone_dip_rate`; false extra pulses make peaks alone.
    """
    lone = analysis.lone
    return _excess("lone-peak-rate", analysis, row, own=lone.peaks, opposite=lone.dips[row])


def measure_lone_dip_depth(analysis: Analysis, row: int) -> Measured:
    """Median depth of the lone dips of the wheel, in per cent of what it should read.

    A pole that is not seen takes away one of the few edges of a cycle, an open circuit in the end all of
    them: a lost edge out of n makes 1/n, smoothed by what the unit averages over. The uncertainty is that of
    a median of the depths found.
    """
    dips = analysis.lone.dips[row]
    if dips.size < FEWEST_DIPS:
        return missing("lone-dip-depth", row, "fewer than five lone dips", NEEDED_DIPS)
    divergence = analysis.reference.divergence_ratio[row]
    last = divergence.size - 1
    depth = -np.nanmin(
        [np.nan_to_num(divergence[np.minimum(dips + n, last)], nan=-0.0) for n in range(4)], axis=0
    )
    percent = 100.0 * np.clip(depth, 0.0, 1.0)
    low, high = np.quantile(percent, (0.16, 0.84))
    return measured(
        "lone-dip-depth",
        CORNERS[row],
        float(np.median(percent)),
        max(1.2533 * (high - low) / 2.0 / np.sqrt(dips.size), 0.5),
        unit="%",
        count=dips.size,
        spans=_spans(analysis, dips),
    )


def measure_lone_dip_scatter(analysis: Analysis, row: int) -> Measured:
    """Index of dispersion of the lone dips over equal parts of the way: 1 for chance, more for clusters.

    A gap too wide loses poles evenly over the metres driven, a torn wire in clusters. Windows are those of
    the way that hold four dips on average, twelve at least.

    References
    ----------
    D. R. Cox, P. A. W. Lewis, The Statistical Analysis of Series of Events, 1966 (cited from memory); the
    standard uncertainty under chance is sqrt(2 / (windows - 1)).
    """
    dips = analysis.lone.dips[row]
    if dips.size < FEWEST_FOR_SCATTER:
        return missing("lone-dip-scatter", row, "too few lone dips to see whether they cluster", NEEDED_DIPS)
    speed = np.where(analysis.losses.moving[row], zero_for_missing(analysis.reference.reference_mps), 0.0)
    way = np.cumsum(speed)
    windows = int(np.clip(dips.size // 4, FEWEST_WINDOWS, MOST_WINDOWS))
    counts = np.histogram(way[dips], bins=windows, range=(0.0, float(way[-1])))[0]
    ratio = float(counts.var(ddof=1) / counts.mean())
    return measured(
        "lone-dip-scatter",
        CORNERS[row],
        ratio,
        max(ratio, 1.0) * np.sqrt(2.0 / (windows - 1)),
        unit="",
        count=dips.size,
        spans=_spans(analysis, dips),
    )


def _spans(analysis: Analysis, starts: NDArray[np.intp]) -> tuple[Span, ...]:
    time_s, period_s = analysis.clock.time_s, analysis.clock.period_s
    return tuple((float(time_s[one]), float(time_s[one]) + period_s) for one in starts[:MOST_SPANS])


def _excess(
    name: str, analysis: Analysis, row: int, *, own: Sequence[NDArray[np.intp]], opposite: NDArray[np.intp]
) -> Measured:
    moving_s = moving_time_s(analysis, row)
    if moving_s < SHORTEST_MOVING_S:
        return too_little_driving(name, row)
    count = own[row].size
    # The opposite side of a faulty wheel may be struck too, so it counts no more than one of the others.
    chance = (
        sum(one.size for other, one in enumerate(own) if other != row) + min(opposite.size, count)
    ) / 4.0
    return measured(
        name,
        CORNERS[row],
        60.0 * max(count - chance, 0.0) / moving_s,
        60.0 * np.sqrt(max(count + chance / 4.0, 0.5)) / moving_s,
        unit="1/min",
        count=count,
        spans=_spans(analysis, own[row]) or moving_spans(analysis, row),
    )
