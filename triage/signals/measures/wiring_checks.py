"""What curves, road and turning sides say of the wiring, each worked out once for the four findings on it."""

from __future__ import annotations

from triage.signals.analysis import Analysis
from triage.signals.measurement import Measured
from triage.signals.measures.channel_swap import compare_by_curves, report_swap_gain, report_swap_pair
from triage.signals.measures.road_order import order_by_road, report_road_order
from triage.signals.measures.turn_sign import find_agreement, report_turn_sign


def measure_wiring(analysis: Analysis) -> tuple[Measured, ...]:
    """Measure ``swap-gain``, ``road-order``, ``turn-sign`` and ``swap-pair``; see what reports each."""
    curves, road, sides = compare_by_curves(analysis), order_by_road(analysis), find_agreement(analysis)
    return (
        report_swap_gain(analysis, curves),
        report_road_order(analysis, road),
        report_turn_sign(analysis, sides),
        report_swap_pair(analysis, curves, road, sides),
    )
