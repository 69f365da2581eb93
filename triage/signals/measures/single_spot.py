"""How much of the mean speed over a turn no single spot on the ring explains."""

from __future__ import annotations

from typing import Final

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.measurement import Measured
from triage.signals.measures.building import event_spans, measured, missing, moving_spans
from triage.signals.ring_map import RingMap

LEAST_STD_PERCENT: Final = 0.3
"""What other cycles of the unit than the assumed one leave unexplained of a true spot (judgement)."""

MOST_STD_PERCENT: Final = 30.0

NEEDED: Final = "steady straight driving of 200 wheel turns or more while the fault is present"


def measure_single_spot_rest(analysis: Analysis, row: int) -> Measured:
    """Power of the mean course over the turn that one spot leaves unexplained, in per cent of it.

    Formula: ``(P - E - N) / (P - N)`` with ``P`` the mean square of the mean relative deviation in 96 bins of
    the turn, ``E`` the part of it that the best of some hundred shapes of a single spot explains, and ``N``
    what chance makes of it (:func:`triage.signals.ring_spot.find_spot`). Assumes that the unit averages over
    one fixed time and filters by first order. Valid where drops keep to the angle, or the course is clearly
    that of a spot; units of very short cycles, seen at few samples a turn, leave more of a true spot.
    Uncertainty: chance in 96 bins, and 0.3 %. Source: judgement, checked on simulated damage and dirt.
    """
    ring = analysis.rings[row]
    if not isinstance(ring, RingMap):
        return missing("single-spot-rest", row, ring.reason, ring.needed)
    if not ring.sectors:
        return missing(
            "single-spot-rest", row, "nothing in the speed keeps clearly to one part of the ring", NEEDED
        )
    spot = ring.spot
    std_percent = float("inf") if spot is None else 100.0 * spot.rest_std_ratio
    if spot is None or std_percent > MOST_STD_PERCENT:
        return missing("single-spot-rest", row, "chance hides how the speed runs over a turn", NEEDED)
    return measured(
        "single-spot-rest",
        CORNERS[row],
        max(100.0 * spot.rest_ratio, 0.0),
        max(std_percent, LEAST_STD_PERCENT),
        unit="%",
        count=ring.sample_count,
        spans=event_spans(analysis, analysis.losses.low[row] | analysis.losses.alone[row])
        or moving_spans(analysis, row),
    )
