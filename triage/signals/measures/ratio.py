"""A constant ratio of one wheel to the others, and whether it fits another number of encoder poles."""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.measurement import Measured
from triage.signals.measures.building import measured, missing, moving_spans
from triage.speed_log import FloatArray

COMMON_COUNTS: Final = tuple(range(29, 61))
"""Pulse counts seen in print lie between 29 and 60 per revolution (common practice)."""

SLIP_PERCENT: Final = 0.1
"""Standard uncertainty of an offset from drive slip and load, which no measuring time reduces: 68 % of the
wheels of simulated healthy cars lie within 0.1 %, 95 % within 0.2 % of the truth."""

LARGEST_OFFSET: Final = 0.3
NEEDED: Final = "half a minute or more of straight driving above 20 km/h"


def single_wheel_offset(scale_ratio: FloatArray, row: int) -> float:
    """Part of a wheel's constant ratio that no offset of its axle explains.

    Parameters
    ----------
    scale_ratio : float64[4]
        Constant offset of every wheel, in the order of ``CORNERS``; NaN where unknown.
    row : int
        The wheel asked for.

    Returns
    -------
    float
        The difference to the axle partner where this wheel lies further from the other axle than its partner
        does, else 0; the difference to the other axle where there is no partner; NaN when nothing is left to
        compare with.

    Notes
    -----
    Axles differ by design (other tyres in front than behind, drive slip), so that a wheel is odd only when
    its partner does not share the difference; and of two partners that differ the odd one is the one that
    also leaves the other axle.
    """
    own, partner = float(scale_ratio[row]), float(scale_ratio[row ^ 1])
    other_axle = scale_ratio[[2, 3] if row < 2 else [0, 1]]
    known = other_axle[np.isfinite(other_axle)]
    usual = float(known.mean()) if known.size else float("nan")
    if not np.isfinite(partner):
        return own - usual
    if np.isfinite(usual) and abs(own - usual) < abs(partner - usual):
        return 0.0
    return own - partner


def measure_ratio_offset(analysis: Analysis, row: int) -> Measured:
    """Constant deviation of the wheel that its axle does not share, in straight running, in per cent.

    See :func:`single_wheel_offset`. The uncertainty adds what drive slip and load leave.
    """
    offset = single_wheel_offset(analysis.reference.scale_ratio, row)
    if not np.isfinite(offset):
        return missing("ratio-offset", row, "too little straight driving above 15 km/h", NEEDED)
    if abs(offset) > LARGEST_OFFSET:
        return missing(
            "ratio-offset",
            row,
            "the signal is lost too often to form a ratio",
            "first restore the signal",
            by_driving=False,
        )
    return measured(
        "ratio-offset",
        CORNERS[row],
        100.0 * offset,
        np.hypot(100.0 * analysis.reference.scale_std_ratio[row], SLIP_PERCENT),
        unit="%",
        count=analysis.reference.straight_blocks,
        spans=moving_spans(analysis, row),
    )


def measure_ratio_count_fit(analysis: Analysis, row: int) -> Measured:
    """Distance of the ratio from the nearest ratio of two pole counts, in standard uncertainties.

    Not formed for a ratio smaller than half of what one pole more or less would make. Without the car's own
    count nearly every larger ratio fits some pair, so that a misfit says more than a fit.
    """
    offset = single_wheel_offset(analysis.reference.scale_ratio, row)
    std = analysis.reference.scale_std_ratio[row]
    if not np.isfinite(offset) or abs(offset) > LARGEST_OFFSET or abs(offset) < 0.5 / max(COMMON_COUNTS):
        return missing("ratio-count-fit", row, "no constant ratio that needs explaining", NEEDED)
    own = analysis.vehicle.pulses_per_rev
    counts = COMMON_COUNTS if own is None else (round(own),)
    ratios = np.array([(n + step) / n for n in counts for step in range(-8, 9) if step])
    distance = float(np.abs(ratios - 1.0 - offset).min()) / np.hypot(std, SLIP_PERCENT / 100.0)
    return measured(
        "ratio-count-fit",
        CORNERS[row],
        distance,
        1.0,
        unit="",
        count=analysis.reference.straight_blocks,
        spans=moving_spans(analysis, row),
    )
