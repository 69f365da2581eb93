"""A constant ratio of one wheel to the others, and whether it fits another number of encoder poles."""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.measurement import Measured
from triage.signals.measures.building import measured, missing, moving_spans
from triage.signals.vehicle_reference import VehicleReference
from triage.speed_log import FloatArray

COMMON_COUNTS: Final = (40, 52)
POSSIBLE_COUNTS: Final = (24, 120)
"""Pulses per revolution: half of all cars are taken to lie in the common span (43 to 52 is common practice;
29, 44 and 48 are in print), the others anywhere in the wide one (judgement)."""

LIKELY_STEPS: Final = 8
"""A ring of another part differs by up to so many poles (judgement)."""

LOAD_RATIO: Final = 2e-4
"""Standard uncertainty of a left-right difference from load and camber of the road, which no measuring time
reduces: quarters of a drive of a healthy car agree within this."""

AXLE_SPREAD: Final = 0.0025
OTHER_TYRES_SHARE: Final = 0.15
OTHER_TYRES_SPREAD: Final = 0.017
"""Standard deviation of the difference of two axles with like tyres (from load and pressure, without slip);
share of cars with other tyres in front than behind, and the standard deviation then (judgement)."""

SURE: Final = 0.8
"""Probability from which on one wheel of an axle is held for the odd one."""

LARGEST_OFFSET: Final = 0.3
CLEAR_DECADES: Final = 3.0
DOUBT_DECADES: Final = 0.15
"""Evidence beyond the first says nothing more; the second is what the choice of plausible counts is worth."""

NEEDED: Final = "half a minute or more of straight driving above 20 km/h"


def single_wheel_offset(scale_ratio: FloatArray, row: int) -> float:
    """Part of a wheel's constant ratio that no offset of its axle explains.

    Parameters
    ----------
    scale_ratio : float64[4]
        Constant offset of every wheel, in the order of ``CORNERS``, drive slip taken off; NaN where unknown.
    row : int
        The wheel asked for.

    Returns
    -------
    float
        The difference to the axle partner, or 0 where the partner is clearly the odd one of the two; the
        difference to the other axle where there is no partner; NaN when nothing is left to compare with.

    Notes
    -----
    Axles differ by design (other tyres in front than behind), so that a wheel is odd only when its partner
    does not share the difference. Of two partners that differ the odd one is the one without which the axles
    would differ by a likelier amount. Where neither is likelier by four to one, as when both are far from
    the other axle, both get the difference, with opposite signs.
    """
    own, partner = float(scale_ratio[row]), float(scale_ratio[row ^ 1])
    other_axle = scale_ratio[[2, 3] if row < 2 else [0, 1]]
    known = other_axle[np.isfinite(other_axle)]
    usual = float(known.mean()) if known.size else float("nan")
    if not np.isfinite(partner):
        return own - usual
    if np.isfinite(usual):
        own_odd, partner_odd = _axle_density(partner - usual), _axle_density(own - usual)
        if partner_odd > SURE * (own_odd + partner_odd):
            return 0.0
    return own - partner


def _axle_density(difference: float) -> float:
    """How often the tyres of two axles differ by this ratio, up to a factor."""
    widths = np.array([AXLE_SPREAD, OTHER_TYRES_SPREAD])
    shares = np.array([1.0 - OTHER_TYRES_SHARE, OTHER_TYRES_SHARE])
    # Far out the likelier side would be found between two zeros.
    return float(max((shares / widths) @ np.exp(-0.5 * (difference / widths) ** 2), 1e-300))


def own_offset(reference: VehicleReference, row: int) -> tuple[float, float]:
    """Return :func:`single_wheel_offset` of a log and its standard uncertainty, both as ratios.

    The uncertainty is that of the difference of two partners, with what load leaves; where a wheel has no
    partner, that of a difference of axles.
    """
    front = np.array([1.0, 1.0, -1.0, -1.0])
    offset = single_wheel_offset(reference.scale_ratio - front * reference.axle_slip_ratio / 2.0, row)
    own, partner = reference.scale_std_ratio[[row, row ^ 1]]
    compared = np.hypot(partner, LOAD_RATIO) if np.isfinite(partner) else AXLE_SPREAD
    return offset, float(np.hypot(own, compared))


def measure_ratio_offset(analysis: Analysis, row: int) -> Measured:
    """Constant deviation of the wheel that its axle does not share, in straight running, in per cent.

    See :func:`single_wheel_offset` and :func:`own_offset`. Valid above 15 km/h. Source: pulse arithmetic.
    """
    offset, std = own_offset(analysis.reference, row)
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
        100.0 * std,
        unit="%",
        count=analysis.reference.straight_blocks,
        spans=moving_spans(analysis, row),
    )


def measure_ratio_count_fit(analysis: Analysis, row: int) -> Measured:
    """Evidence of the exact ratio for another pole count against any ratio of that size, in decades.

    Formula: log10 of the mean, over plausible counts n, of the sum over k of N(ratio; k/n, std) times the
    step 1/n. With n known a ratio on one of its steps speaks for the count by the step over 2.5 standard
    uncertainties, one between them against it. Without the car's own count nearly every larger ratio
    fits some count and the value is about 0. Assumes a ring with up to eight poles more or fewer. Valid up to
    30 %, from half a step of the car's ring or, where that is not known, one step of the finest one; smaller
    ratios are those of sound cars, and their size alone tells. Uncertainty: what the ratio's
    own leaves by moving the value half of it to either side, and the choice of counts (judgement).
    """
    offset, std = own_offset(analysis.reference, row)
    counts, share = plausible_counts(analysis.vehicle.pulses_per_rev)
    smallest = (1.0 if counts.size > 1 else 0.5) / float(counts.max())
    if not smallest <= abs(offset) <= LARGEST_OFFSET:
        return missing("ratio-count-fit", row, "no constant ratio that needs explaining", NEEDED)
    moved = [count_evidence(offset + step * std, std, counts, share) for step in (-0.5, 0.0, 0.5)]
    return measured(
        "ratio-count-fit",
        CORNERS[row],
        moved[1],
        np.hypot(np.std(moved), DOUBT_DECADES),
        unit="",
        count=analysis.reference.straight_blocks,
        spans=moving_spans(analysis, row),
    )


def plausible_counts(pulses_per_rev: float | None) -> tuple[FloatArray, FloatArray]:
    """Return counts per revolution and the probability of each; the car's own alone where it is known."""
    if pulses_per_rev is not None:
        return np.array([float(round(pulses_per_rev))]), np.ones(1)
    counts = np.arange(POSSIBLE_COUNTS[0], POSSIBLE_COUNTS[1] + 1, dtype=float)
    common = (counts >= COMMON_COUNTS[0]) & (counts <= COMMON_COUNTS[1])
    return counts, 0.5 * common / common.sum() + 0.5 / counts.size


def count_evidence(ratio: float, std: float, counts: FloatArray, share: FloatArray) -> float:
    """Log10 of how much likelier a ratio is among those of whole poles than anywhere near, limited to 3.

    Parameters
    ----------
    ratio, std : float
        Constant offset and its standard uncertainty, as ratios.
    counts, share : float64[M]
        Plausible counts and their probability.
    """
    steps = np.array([step for step in range(-LIKELY_STEPS, LIKELY_STEPS + 1) if step])
    away = (ratio - steps / counts[:, None]) / std
    fit = np.exp(-0.5 * away**2).sum(axis=1) / (np.sqrt(2.0 * np.pi) * std * counts)
    return float(np.clip(np.log10(max(float(share @ fit), 1e-9)), -CLEAR_DECADES, CLEAR_DECADES))
