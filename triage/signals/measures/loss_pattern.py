"""Whether losses follow each other after whole turns of the wheel."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.curve_lines import circumference_of
from triage.signals.measurement import Measured
from triage.signals.measures.building import event_spans, measured, missing
from triage.signals.ripple_spectra import LONGEST_M, SHORTEST_M
from triage.signals.running import run_bounds, zero_for_missing
from triage.speed_log import BoolArray, FloatArray

FEWEST_INTERVALS: Final = 10
LONGEST_REV: Final = 8.0
"""Over more turns the wheel's length would have to be known better than it is."""

SHORTEST_REV: Final = 0.5
"""Losses closer than this belong to one disturbance; every interval then counts from there on."""

FASTEST_TURN: Final = 0.3
"""A sample further apart than this share of a turn does not tell the place on it."""

FEWEST_TO_SEARCH: Final = 60
"""Fewer intervals can fit some length of a turn by chance."""

MOST_TO_SEARCH: Final = 5000
"""Of more intervals, in hours of driving, some tell the same."""

LENGTHS_TRIED: Final = 100
"""Half a per cent from one length to the next: eight turns shift by a twenty-fifth of one."""


@dataclass(frozen=True, slots=True)
class _BriefLosses:
    """The disturbances of one wheel, in the order of time.

    Attributes
    ----------
    middle_m, length_m : float64[K]
        Way of the wheel to the middle of each, and while it lasts.
    step_m : float64[K]
        Way from sample to sample at its beginning.
    flag : bool[N]
        Samples of the log that belong to them.
    """

    middle_m: FloatArray
    length_m: FloatArray
    step_m: FloatArray
    flag: BoolArray

    def intervals_rev(self, circumference_m: float) -> FloatArray:
        """Return the turns from one to the next, for a given length of a turn."""
        brief = (self.length_m < SHORTEST_REV * circumference_m) & (
            self.step_m < FASTEST_TURN * circumference_m
        )
        intervals = np.diff(self.middle_m[brief]) / circumference_m
        return intervals[(intervals > SHORTEST_REV) & (intervals < LONGEST_REV)]


def measure_whole_turns(analysis: Analysis, row: int) -> Measured:
    """Whether the intervals between losses are whole turns: 1 always, 0 as often as not, -1 half turns.

    Mean cosine of the intervals from one loss to the next, in turns of the wheel (at most eight, so that an
    error of 1 % in its length does not matter). Unlike the map of the ring it need not follow the wheel's
    angle over the drive and works for a handful of losses; what sits in two opposite places shows less. Valid
    where samples come every third of a turn or closer. Where the length of a turn is not known, the one that
    fits best is taken: many losses that keep to no length at all keep to no angle. It then lies up to 0.2
    above 0 by chance, which the lowest band of the rule book holds. Uncertainty: the scatter of the cosines
    over sqrt(n), and 0.3 of that of even phases at least. Source: the Rayleigh test of
    circular statistics (from memory).
    """
    needed = "steady driving at 20 to 50 km/h for some minutes, with the fault in it"
    losses = _brief_losses(analysis, row)
    circumference_m = circumference_of(analysis, row) or _best_length_m(losses)
    if circumference_m is None:
        return missing("whole-turns", row, "the length of a wheel's turn was not found", needed)
    cosine = np.cos(2.0 * np.pi * losses.intervals_rev(circumference_m))
    if cosine.size < FEWEST_INTERVALS:
        return missing("whole-turns", row, "too few losses that follow each other within some turns", needed)
    std = max(float(cosine.std()), float(np.sqrt(0.5)) * 0.3) / np.sqrt(cosine.size)
    return measured(
        "whole-turns",
        CORNERS[row],
        cosine.mean(),
        std,
        unit="",
        count=cosine.size,
        spans=event_spans(analysis, losses.flag),
    )


def _brief_losses(analysis: Analysis, row: int) -> _BriefLosses:
    losses = analysis.losses
    flag = (losses.alone[row] & ~analysis.cut_offs[row].silent) | losses.low[row] | losses.high[row]
    first, stop = run_bounds(flag & losses.moving[row])
    way_m = analysis.paths[row].distance_m
    begin_m, end_m = way_m[first], way_m[np.maximum(stop - 1, 0)]
    speed_mps = zero_for_missing(analysis.reference.reference_mps[first])
    return _BriefLosses(
        middle_m=(begin_m + end_m) / 2.0,
        length_m=end_m - begin_m,
        step_m=speed_mps * analysis.clock.period_s,
        flag=flag,
    )


def _best_length_m(losses: _BriefLosses) -> float | None:
    """Length of a turn at which most intervals are whole turns; None with too few of them."""
    tried = np.geomspace(SHORTEST_M, LONGEST_M, LENGTHS_TRIED)
    intervals = [losses.intervals_rev(float(length_m)) for length_m in tried]
    if min(one.size for one in intervals) < FEWEST_TO_SEARCH:
        return None
    agreement = [
        float(np.cos(2.0 * np.pi * one[:: 1 + one.size // MOST_TO_SEARCH]).mean()) for one in intervals
    ]
    return float(tried[int(np.argmax(agreement))])
