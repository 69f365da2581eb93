"""The encoder ring pole by pole, from single edges."""

from __future__ import annotations

import numpy as np

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.measurement import Measured, NotMeasurable
from triage.signals.measures.building import measured, missing, moving_spans
from triage.signals.pole_rings import PoleRing

NEEDED = "the times of single edges (edge_times), a quarter of a minute or more of steady driving"
NEEDED_FAULT = "the times of single edges from a drive in which the fault shows itself"
LEAST_SPREAD_POLE = 1e-4
LEAST_MISSING = 0.2


def measure_pole_spread(analysis: Analysis, row: int) -> Measured:
    """Spread of the wheel's pitch errors over that of the other wheels, in doublings.

    Meaning: a ring with dirt, cracks or weak poles has borders out of place. Formula: log2 of the robust
    standard deviation of the pitch errors, orders 1 and 2 taken out, over the middle of the other wheels'.
    Assumes rings of one make on all wheels. Uncertainty: that of a robust standard deviation of N numbers
    (1.17 over the square root of 2 N, textbook) for this ring and the others, with the timing noise of the
    mean. Valid from eight turns on.
    """
    ring, others = _ring(analysis, row), _others(analysis, row)
    if ring is None or not others:
        return _missing(analysis, "pole-spread", row)
    if max(_noise_share(one) for one in (ring, *others)) > 0.5:
        return missing("pole-spread", row, "the timing noise of the edges hides the pitch errors", NEEDED)
    spreads = [max(one.spread_pole, LEAST_SPREAD_POLE) for one in (ring, *others)]
    usual = float(np.median(spreads[1:]))
    poles = ring.pitch.edges_per_rev
    relative = [1.17 / np.sqrt(2.0 * poles), 1.17 / np.sqrt(2.0 * poles * len(others)), _noise_share(ring)]
    return measured(
        "pole-spread",
        CORNERS[row],
        np.log2(spreads[0] / usual),
        np.hypot.reduce(relative) / np.log(2.0),
        unit="",
        count=ring.pitch.turns,
        spans=moving_spans(analysis, row),
    )


def measure_poles_missing(analysis: Analysis, row: int) -> Measured:
    """Edges that a turn lacks at fixed places of the ring, on average.

    Formula: sum over all places of the share of turns in which the place gave no edge. One pole that is not
    seen costs a sensor that gives both edges two, another one. Edges lost for more than a quarter of a turn
    are not counted. Uncertainty: binomial for every place, and a twentieth of an edge for miscounts
    (judgement).
    """
    ring = _ring(analysis, row)
    if ring is None:
        return _missing(analysis, "poles-missing", row)
    lost = 1.0 - ring.pitch.seen_ratio
    std = np.sqrt(float((lost * (1.0 - lost)).sum()) / ring.pitch.turns + 0.05**2)
    return measured(
        "poles-missing",
        CORNERS[row],
        lost.sum(),
        std,
        unit="",
        count=ring.pitch.turns,
        spans=moving_spans(analysis, row),
    )


def measure_missing_steadiness(analysis: Analysis, row: int) -> Measured:
    """Share of the missing edges that is missing in every turn: 1 for a missing tooth, near 0 for chance.

    Formula: sum of the squares of the shares of turns in which the places gave no edge, over their sum,
    which is the chance that an edge missing in one turn is missing in another one too. Dirt lies in
    between, for poles under it are now seen, now not. Valid from a fifth of an edge a turn on. Uncertainty:
    binomial.
    """
    ring = _ring(analysis, row)
    if ring is None:
        return _missing(analysis, "missing-steadiness", row)
    lost = 1.0 - ring.pitch.seen_ratio
    total = float(lost.sum())
    if total < LEAST_MISSING:
        return missing("missing-steadiness", row, "hardly any edge is missing", NEEDED_FAULT)
    steadiness = float((lost**2).sum()) / total
    variance = lost * (1.0 - lost) / ring.pitch.turns * ((2.0 * lost - steadiness) / total) ** 2
    return measured(
        "missing-steadiness",
        CORNERS[row],
        steadiness,
        np.sqrt(float(variance.sum()) + 0.02**2),
        unit="",
        count=ring.pitch.turns,
        spans=moving_spans(analysis, row),
    )


def measure_bad_pole_run(analysis: Analysis, row: int) -> Measured:
    """Longest row of bad poles, in revolutions: a few hundredths for a broken spot, more for dirt.

    Bad is a border that is missed in a tenth of the turns or more, stands off by six times the usual pitch
    error of the ring and 6 % of a pitch, or wavers four times as much as usual and 3 % of a pitch. One sound
    border between two bad ones is passed over. Uncertainty: half a pitch at each end.
    """
    ring = _ring(analysis, row)
    if ring is None:
        return _missing(analysis, "bad-pole-run", row)
    poles = ring.pitch.edges_per_rev
    return measured(
        "bad-pole-run",
        CORNERS[row],
        ring.widest_bad / poles,
        np.sqrt(0.5) / poles,
        unit="rev",
        count=ring.pitch.turns,
        spans=moving_spans(analysis, row),
    )


def measure_pole_order_one(analysis: Analysis, row: int) -> Measured:
    """Amplitude of order 1 in the pitch errors, as the speed ripple they feign, in per cent.

    Formula: 2 pi / N times the amplitude of the shifts in pitches. Unlike the line in recorded speeds it is
    not weakened by the control unit. A tyre out of round turns the wheel unevenly in the same order and
    cannot be told apart. Uncertainty: scatter of the order from turn to turn, not below 0.01 % (slip;
    judgement).
    """
    ring = _ring(analysis, row)
    if ring is None:
        return _missing(analysis, "pole-order-one", row)
    std = np.hypot(100.0 * ring.pitch.ripple_std_ratio * ring.std_factor, 0.01)
    return measured(
        "pole-order-one",
        CORNERS[row],
        100.0 * ring.pitch.ripple_ratio,
        std,
        unit="%",
        count=ring.pitch.turns,
        spans=moving_spans(analysis, row),
    )


def _ring(analysis: Analysis, row: int) -> PoleRing | None:
    return None if analysis.pole_rings is None else analysis.pole_rings.rings[row]


def _others(analysis: Analysis, row: int) -> list[PoleRing]:
    if analysis.pole_rings is None:
        return []
    rings = analysis.pole_rings.rings
    return [one for number, one in enumerate(rings) if number != row and one is not None]


def _noise_share(ring: PoleRing) -> float:
    """Share of the spread that is timing noise of the means."""
    noise = float(np.nanmedian(ring.pitch.shift_std_pole)) * ring.std_factor
    return 0.5 * (noise / max(ring.spread_pole, LEAST_SPREAD_POLE)) ** 2


def _missing(analysis: Analysis, name: str, row: int) -> NotMeasurable:
    if analysis.pole_rings is None:
        return missing(name, row, "the log holds no times of single edges", NEEDED, by_driving=False)
    if analysis.pole_rings.edges_per_rev[row] is None:
        reason = "the number of poles shows neither in the edges nor in the vehicle file"
        return missing(name, row, reason, "pulses_per_rev in a vehicle file, or a longer recording")
    return missing(name, row, "too few whole turns in which the edges follow each other steadily", NEEDED)
