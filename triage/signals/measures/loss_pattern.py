"""Whether losses follow each other after whole turns of the wheel."""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.curve_lines import circumference_of
from triage.signals.measurement import Measured
from triage.signals.measures.building import event_spans, measured, missing
from triage.signals.running import run_bounds, zero_for_missing

FEWEST_INTERVALS: Final = 10
LONGEST_REV: Final = 8.0
"""Over more turns the wheel's length would have to be known better than it is."""

SHORTEST_REV: Final = 0.5
"""Losses closer than this belong to one disturbance; every interval then counts from there on."""

FASTEST_TURN: Final = 0.3
"""A sample further apart than this share of a turn does not tell the place on it."""


def measure_whole_turns(analysis: Analysis, row: int) -> Measured:
    """Whether the intervals between losses are whole turns: 1 always, 0 as often as not, -1 half turns.

    Mean cosine of the intervals from one loss to the next, in turns of the wheel (at most eight, so that an
    error of 1 % in its length does not matter). Unlike the map of the ring it need not follow the wheel's
    angle over the drive and works for a handful of losses; what sits in two opposite places shows less. Valid
    where samples come every third of a turn or closer. Uncertainty: sqrt(1/2 n) of a mean cosine of even
    phases, the scatter seen where that is more. Source: the Rayleigh test of circular statistics (from
    memory).
    """
    needed = "steady driving at 20 to 50 km/h for some minutes, with the fault in it"
    circumference_m = circumference_of(analysis, row)
    if circumference_m is None:
        return missing("whole-turns", row, "the length of a wheel's turn was not found", needed)
    intervals_rev, flag = _intervals(analysis, row, circumference_m)
    if intervals_rev.size < FEWEST_INTERVALS:
        return missing("whole-turns", row, "too few losses that follow each other within some turns", needed)
    cosine = np.cos(2.0 * np.pi * intervals_rev)
    std = max(float(cosine.std()), float(np.sqrt(0.5)) * 0.3) / np.sqrt(cosine.size)
    return measured(
        "whole-turns",
        CORNERS[row],
        cosine.mean(),
        std,
        unit="",
        count=cosine.size,
        spans=event_spans(analysis, flag),
    )


def _intervals(analysis: Analysis, row: int, circumference_m: float) -> tuple[np.ndarray, np.ndarray]:
    """Give the turns from one disturbance to the next, and the disturbed samples."""
    losses = analysis.losses
    flag = (losses.alone[row] & ~analysis.cut_offs[row].silent) | losses.low[row] | losses.high[row]
    speed = zero_for_missing(analysis.reference.reference_mps)
    close = speed * analysis.clock.period_s < FASTEST_TURN * circumference_m
    first, stop = run_bounds(flag & close & losses.moving[row])
    turned = analysis.paths[row].distance_m / circumference_m
    middle = (turned[first] + turned[np.maximum(stop - 1, 0)]) / 2.0 if first.size else np.zeros(0)
    short = (
        (turned[np.maximum(stop - 1, 0)] - turned[first]) < SHORTEST_REV if first.size else np.zeros(0, bool)
    )
    middle = middle[short]
    intervals = np.diff(middle)
    return intervals[(intervals > SHORTEST_REV) & (intervals < LONGEST_REV)], flag
