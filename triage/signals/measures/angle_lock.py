"""Whether, and how widely over the ring, a wheel's disturbance keeps to the wheel's angle."""

from __future__ import annotations

import numpy as np

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.measurement import Measured
from triage.signals.measures.building import event_spans, hidden_by_steps, measured, missing, moving_spans
from triage.signals.noise_growth import hides_small_swings
from triage.signals.ring_map import BINS, FEWEST_ONSETS, RingMap

FEWEST_ONSETS_FOR_QUIET = 50
WIDTH_NEEDS_LOCK_SIGMA = 3.0
LEAST_LOCK_STD = 0.02

SMALL_SHARE_RATIO = 0.12
"""A share below this speaks for a sound ring, unless the control unit hides more (judgement, and the lowest
band of the rule book)."""


def measure_dip_angle_lock(analysis: Analysis, row: int) -> Measured:
    """Part of the ring that losses leave out, 0 (all round) to 1 (always at one place).

    See :func:`triage.signals.ring_lock.concentration`; rare losses tell as much as frequent ones, only less
    surely.
    """
    ring = analysis.rings[row]
    if not isinstance(ring, RingMap):
        return ring
    if ring.onset_count < FEWEST_ONSETS:
        return missing(
            "dip-angle-lock",
            row,
            "too few brief losses to place on the ring",
            "a longer drive in which the fault shows itself",
        )
    disturbed = analysis.losses.low[row] | analysis.losses.high[row] | analysis.losses.alone[row]
    return measured(
        "dip-angle-lock",
        CORNERS[row],
        ring.onset_lock,
        max(ring.onset_lock_std, LEAST_LOCK_STD),
        unit="",
        count=ring.onset_count,
        spans=event_spans(analysis, disturbed),
    )


def measure_bad_sector_width(analysis: Analysis, row: int) -> Measured:
    """Effective width of the disturbed part of the ring, in revolutions."""
    ring = analysis.rings[row]
    if not isinstance(ring, RingMap):
        return missing("bad-sector-width", row, ring.reason, ring.needed)
    locked = ring.onset_lock > WIDTH_NEEDS_LOCK_SIGMA * max(ring.onset_lock_std, LEAST_LOCK_STD)
    if ring.onset_count < FEWEST_ONSETS or not np.isfinite(ring.width_rev) or not locked:
        return missing(
            "bad-sector-width",
            row,
            "no disturbance that keeps to one part of the ring",
            "steady straight driving of 200 wheel turns or more while the fault is present",
        )
    disturbed = analysis.losses.low[row] | analysis.losses.high[row]
    return measured(
        "bad-sector-width",
        CORNERS[row],
        ring.width_rev,
        ring.width_std_rev,
        unit="rev",
        count=ring.onset_count,
        spans=event_spans(analysis, disturbed) or moving_spans(analysis, row),
    )


def measure_quiet_share(analysis: Analysis, row: int) -> Measured:
    """Share of the ring on which the wheel behaves as a sound one while the rest is disturbed, in %."""
    ring = analysis.rings[row]
    if not isinstance(ring, RingMap):
        return missing("quiet-share", row, ring.reason, ring.needed)
    if ring.onset_count < FEWEST_ONSETS_FOR_QUIET:
        return missing(
            "quiet-share",
            row,
            "too little disturbance to compare parts of the ring",
            "steady straight driving of 200 wheel turns or more while the fault is present",
        )
    return measured(
        "quiet-share",
        CORNERS[row],
        100.0 * ring.quiet_ratio,
        100.0 / BINS + 3.0,
        unit="%",
        count=ring.sample_count,
        spans=moving_spans(analysis, row),
    )


def measure_angle_share(analysis: Analysis, row: int) -> Measured:
    """Share of the wheel's quick speed ripple that repeats with its angle, in per cent.

    A small share is not stated where the control unit counts pulses: the rest of the ripple are its own steps
    there, and its long averaging leaves little of what repeats.
    """
    ring = analysis.rings[row]
    if not isinstance(ring, RingMap):
        return missing("angle-share", row, ring.reason, ring.needed)
    if ring.explained_ratio < SMALL_SHARE_RATIO and hides_small_swings(analysis.noise_growth):
        return hidden_by_steps("angle-share", row)
    return measured(
        "angle-share",
        CORNERS[row],
        100.0 * ring.explained_ratio,
        100.0 * max(ring.explained_std_ratio, 0.002),
        unit="%",
        count=ring.sample_count,
        spans=moving_spans(analysis, row),
    )
