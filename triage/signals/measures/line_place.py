"""Whether a wheel with a constant ratio turns as often as the others, or only counts otherwise."""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.count_or_tyre import weigh_count_against_tyre
from triage.signals.measurement import Measured
from triage.signals.measures.building import measured, missing, moving_spans
from triage.signals.measures.ratio import LARGEST_OFFSET, own_offset
from triage.signals.running import count_of

SMALLEST_OFFSET: Final = 0.006
"""Below this the two places lie too close together to be told apart (their search windows would touch)."""

CLEAR_DECADES: Final = 30.0
"""Evidence beyond this says nothing more."""

SCATTER_DECADES: Final = 0.05
"""What the chosen powers of a line leave uncertain where the evidence is weak (judgement)."""

NEEDED: Final = "at least one minute of steady straight driving at 30 to 80 km/h, recorded at 20 Hz or more"


def measure_line_place(analysis: Analysis, row: int) -> Measured:
    """Evidence for another pole count against another tyre, in decades: positive for the count.

    Formula: logarithm to base 10 of how much likelier the ripple of all wheels is when this one repeats at
    its ratio than when it repeats with the others, the length of the turn summed over
    (:func:`triage.signals.count_or_tyre.weigh_count_against_tyre`). Assumes that the unit counts all wheels
    with one circumference. Not formed for ratios below 0.6 % and above 30 %. Uncertainty: a tenth of the
    value, and 0.05 decades. Source: likelihood ratio of periodogram powers, see there.
    """
    ratio, spread = own_offset(analysis.reference, row)
    if not np.isfinite(ratio) or not SMALLEST_OFFSET <= abs(ratio) <= LARGEST_OFFSET:
        return missing("line-place", row, "no constant ratio that needs explaining", NEEDED, by_driving=False)
    decades = weigh_count_against_tyre(
        analysis.own_spectra,
        row,
        ratio=ratio,
        ratio_std=spread,
        circumference_m=analysis.vehicle.circumference_m,
    )
    if decades is None:
        return missing("line-place", row, "too little usable driving to see how long a turn is", NEEDED)
    value = float(np.clip(decades, -CLEAR_DECADES, CLEAR_DECADES))
    return measured(
        "line-place",
        CORNERS[row],
        value,
        float(np.hypot(SCATTER_DECADES, 0.1 * value)),
        unit="",
        count=count_of(analysis.paths[row].weight > 0),
        spans=moving_spans(analysis, row),
    )
