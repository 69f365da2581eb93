"""How coarse the chance is by which the turns of a wheel differ in what they lose."""

from __future__ import annotations

from typing import Final

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.measurement import Measured
from triage.signals.measures.building import event_spans, measured, missing, moving_spans
from triage.signals.ring_drops import depth_of
from triage.signals.ring_map import RingMap
from triage.signals.turn_grain import measure_turn_grain as compare_turns
from triage.signals.turn_grain import quietest_place

LEAST_STD_PERCENT: Final = 0.02
"""A hundredth of two pitches: what steps of the recorded speed leave uncertain (judgement)."""

NEEDED: Final = "steady straight driving of 200 wheel turns or more while the fault is present"


def measure_turn_grain(analysis: Analysis, row: int) -> Measured:
    """Variance over mean of the way lost in a turn, in per cent of a turn.

    Formula and assumptions: :func:`triage.signals.turn_grain.measure_turn_grain`. What is lost by chance,
    pole by pole, gives about the pitch of the poles (0.8 to 2.5 % of a turn) however much is lost; a broken
    spot that loses the same in every turn gives nearly 0. Unlike the spread over the mean it does not call
    dirt alike for losing much, nor damage uneven for losing little. Valid from five samples a turn, 30
    whole turns and 20 drops that keep to the angle on; where the unit averages over less than the step of
    the samples, losses fall between them and the value is too large. Uncertainty: that of a variance by the
    fourth moment of the turns, and 0.02 %. Source: index of dispersion, D. R. Cox, P. A. W. Lewis, The
    Statistical Analysis of Series of Events, 1966 (cited from memory); its use on turns is judgement.
    """
    ring = analysis.rings[row]
    if not isinstance(ring, RingMap):
        return missing("turn-grain", row, ring.reason, ring.needed)
    if ring.harm is None:
        return missing("turn-grain", row, "no sudden drops that keep to one part of the ring", NEEDED)
    grain = compare_turns(
        depth_of(analysis.clock, analysis.residuals, analysis.losses, row),
        analysis.residuals.sound_sigma_ratio,
        ring.angle_rev,
        cut_rev=quietest_place(ring.harm.density),
    )
    if grain is None:
        return missing("turn-grain", row, "fewer than 30 turns sampled finely enough to compare", NEEDED)
    return measured(
        "turn-grain",
        CORNERS[row],
        100.0 * grain.grain_rev,
        max(100.0 * grain.grain_std_rev, LEAST_STD_PERCENT),
        unit="%",
        count=grain.turns,
        spans=event_spans(analysis, analysis.losses.low[row] | analysis.losses.alone[row])
        or moving_spans(analysis, row),
    )
