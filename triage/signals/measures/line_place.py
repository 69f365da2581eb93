"""Whether a wheel with a constant ratio turns as often as the others, or only counts otherwise."""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.measurement import Measured
from triage.signals.measures.building import measured, missing, moving_spans
from triage.signals.measures.ratio import LARGEST_OFFSET, own_offset
from triage.signals.revolution_line import DRIFT_RATIO, RevolutionLine, comb_evidence
from triage.signals.running import count_of

SMALLEST_OFFSET: Final = 0.006
"""Below this the two places lie too close together to be told apart (their search windows would touch)."""

CLEAR_DECADES: Final = 30.0
"""Evidence beyond this says nothing more."""

SCATTER_DECADES: Final = 0.7
"""What noise alone makes the difference of two such evidences scatter by (simulated healthy wheels)."""

NEEDED: Final = "at least one minute of steady straight driving at 30 to 80 km/h, recorded at 20 Hz or more"


def measure_line_place(analysis: Analysis, row: int) -> Measured:
    """Evidence for another pole count against another tyre, in decades: positive for the count.

    A control unit multiplies counted pulses by one fixed circumference. By its own counting a wheel with
    another tyre therefore repeats its ripple after the same distance as the other wheels; one whose encoder
    has n instead of m poles does so after n/m of it, and n/m is also the constant ratio of its speed. The
    ripple is searched at just these two places, where a much weaker line speaks than anywhere in the whole
    search range: value = log10 P(noise gives the line at the tyre's place) - log10 P(... at the encoder's).

    Not formed for ratios below 0.6 %, for those above 30 %, and without the revolution of another wheel.
    """
    ratio, spread = own_offset(analysis.reference, row)
    spectra = analysis.own_spectra[row]
    others = [
        line.circumference_m
        for other, line in enumerate(analysis.own_lines)
        if other != row and isinstance(line, RevolutionLine)
    ]
    if not np.isfinite(ratio) or not SMALLEST_OFFSET <= abs(ratio) <= LARGEST_OFFSET:
        return missing("line-place", row, "no constant ratio that needs explaining", NEEDED, by_driving=False)
    if spectra is None or not others:
        return missing("line-place", row, "no other wheel shows how long a revolution is", NEEDED)
    usual_m = float(np.median(others))
    half = min(2.0 * float(np.hypot(spread, DRIFT_RATIO)), 0.45 * abs(ratio))
    as_tyre = comb_evidence(spectra, usual_m, tolerance_ratio=half)
    as_count = comb_evidence(spectra, usual_m * (1.0 + ratio), tolerance_ratio=half)
    difference = float(np.clip(as_count - as_tyre, -CLEAR_DECADES, CLEAR_DECADES))
    return measured(
        "line-place",
        CORNERS[row],
        difference,
        SCATTER_DECADES,
        unit="",
        count=count_of(analysis.paths[row].weight > 0),
        spans=moving_spans(analysis, row),
    )
