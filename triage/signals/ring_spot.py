"""One spot of a ring that explains how the speed runs over the turn, found in the mean of many turns.

Where a unit averages over a good part of the turn or counts pulses, no single drop stands out of its steps;
the mean course does. And where a pulse is only moved, the speed drops as often behind the spot as at it; what
shows first, high or low, is at the spot.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from triage.signals.ring_course import RingCourse
from triage.signals.ring_response import RING_BINS
from triage.signals.ring_sectors import (
    BUS_S,
    CYCLE_S,
    DELAY_STD_S,
    HALF_GAP_REV,
    HALF_GAP_STD_REV,
    BadSector,
    wideness,
)
from triage.signals.spot_shapes import ORDERS, SpotShapes, missing_pulse_shapes, moved_pulse_shapes
from triage.speed_log import FloatArray

PLACES: Final = 192
"""Angles at which a spot is tried, 1.9 degrees apart: half a bin."""

SHAPE_PARAMETERS: Final = 4
"""Place, depth, window and filter are fitted."""

SWING_ORDERS: Final = 3
LEAST_GAIN: Final = 6.0
"""A spot must explain the course better than a swing of orders 1 to 3, an uneven ring, by this much in chi
squared: with two parameters less it hardly does so by chance."""

MOST_NOISE: Final = 0.2
MOST_REST: Final = 0.1
"""Shares of the course's power, by chance and left unexplained, up to which the course alone tells of a spot
(judgement)."""

MOST_REST_PLACED: Final = 0.3
"""Where drops show that there is something, the course may tell its place up to here (judgement)."""

NEARBY_REV: Final = 20.0 / 360.0
"""So close to each other drops and course mean the same spot (judgement)."""

LONG_WINDOW_S: Final = 0.05
"""Units that time pulses average over less, those that count them over more (judgement)."""

MOST_RESTLESSNESS: Final = 3.0
"""On simulated damage behind units that count mostly 0.8 to 2, on dirt behind others 5 to some thousand."""

MOST_LOST_REV: Final = 0.06
"""More than three pitches at 50 pulses a turn is no spot."""

HIDDEN_WIDTH_SHARE: Final = 0.5
HIDDEN_PLACE_SHARE: Final = 0.1
"""Standard uncertainties, in windows of the unit, of width and middle of a stretch that passes for a spot
(judgement, checked on simulated dirt)."""

HALF_PITCH_REV: Final = 0.010
HALF_PITCH_STD_REV: Final = 0.003
"""Half a pitch at 43 to 100 pulses a turn: from the border that is counted to the middle of tooth and gap,
or of its pair of poles."""


@dataclass(frozen=True, slots=True)
class RingSpot:
    """The single spot that explains the mean course best.

    Attributes
    ----------
    centre_rev, centre_std_rev : float
        Where it lies in the angle of the map, 0 to 1, the unit's delay taken out.
    lost_rev : float
        Part of the turn that is not read on average, 0 where pulses are only moved.
    moved : bool
        Whether pulses are moved rather than missing.
    window_rev, rate_revps : float
        Over what part of a turn the unit seems to average, and the rate of turning.
    rest_ratio, rest_std_ratio : float
        Share of the power of the course that the spot leaves unexplained, chance taken out.
    noise_ratio : float
        Share of the power that chance makes.
    restlessness : float
        Scatter at the spot over that elsewhere (:attr:`RingCourse.restlessness`).
    gain : float
        By how much it explains the course better than a swing of orders 1 to 3, in chi squared.
    """

    centre_rev: float
    centre_std_rev: float
    lost_rev: float
    moved: bool
    window_rev: float
    rate_revps: float
    rest_ratio: float
    rest_std_ratio: float
    noise_ratio: float
    restlessness: float
    gain: float

    @property
    def clear(self) -> bool:
        """Whether the course alone shows a spot, and no swing."""
        return self.gain > LEAST_GAIN and self.noise_ratio < MOST_NOISE and self.rest_ratio < MOST_REST

    @property
    def window_s(self) -> float:
        """Over what time the unit seems to average."""
        return self.window_rev / self.rate_revps

    @property
    def averaged_long(self) -> bool:
        """Whether the unit averages over so long that single drops tell little of the place.

        A wide stretch of even dirt looks alike in the mean, but single turns differ there.
        """
        still = self.restlessness < MOST_RESTLESSNESS
        return self.window_s > LONG_WINDOW_S and self.rest_ratio < MOST_REST and still


@dataclass(frozen=True, slots=True)
class _Fit:
    """The best of many shapes."""

    place_rev: float
    depth: float
    power: float
    window_rev: float
    area_rev: float


def find_spot(course: RingCourse) -> RingSpot | None:
    """Find the single spot that explains a mean course best; None where the course does not vary.

    Parameters
    ----------
    course : RingCourse

    Returns
    -------
    RingSpot or None

    Notes
    -----
    Least squares over place and depth for some hundred shapes, by cross-correlation. Valid for one spot, and
    while the unit's cycle is near 10 ms; others shift the place by half the difference, which its uncertainty
    holds. Missing pulses make a unit that counts read low when they fail to come, one that times them when
    the next one comes: the way from there to the middle of the gap is half of what is lost, on or back.
    """
    spectrum = np.fft.rfft(course.mean_ratio) / RING_BINS
    spectrum[0] = 0.0
    power = _power(spectrum)
    signal = power - course.noise_power
    if signal <= 0.0:
        return None
    cycle_rev = CYCLE_S * course.rate_revps
    missing = _best_fit(spectrum, missing_pulse_shapes(cycle_rev), either_way=False)
    moved = _best_fit(spectrum, moved_pulse_shapes(cycle_rev), either_way=True)
    fit = max(missing, moved, key=lambda one: one.power)
    swing = _power(np.where(SWING_ORDERS >= ORDERS, spectrum, 0.0))
    kept_noise = course.noise_power * (1.0 - SHAPE_PARAMETERS / RING_BINS)
    lost_rev = min(abs(fit.depth) * fit.area_rev, MOST_LOST_REV)
    lead_rev, lead_std_rev = _lead(fit, lost_rev, fit.window_rev / course.rate_revps)
    return RingSpot(
        centre_rev=(fit.place_rev - lead_rev - BUS_S * course.rate_revps) % 1.0,
        centre_std_rev=float(
            np.sqrt(lead_std_rev**2 + (DELAY_STD_S * course.rate_revps) ** 2 + (0.5 / RING_BINS) ** 2)
        ),
        lost_rev=lost_rev,
        moved=fit is moved,
        window_rev=fit.window_rev,
        rate_revps=course.rate_revps,
        rest_ratio=(power - fit.power - kept_noise) / signal,
        rest_std_ratio=course.noise_power * float(np.sqrt(2.0 / RING_BINS)) / signal,
        noise_ratio=course.noise_ratio,
        restlessness=course.restlessness,
        gain=RING_BINS * (fit.power - swing) / max(course.noise_power, 1e-300),
    )


def spot_sector(spot: RingSpot) -> BadSector:
    """Make a bad sector of a spot that single drops do not show: as wide as what is lost, or a pitch.

    A stretch half as wide as what the unit averages over looks much like a spot; the uncertainties say so.
    """
    width_rev = max(spot.lost_rev, 2.0 * HALF_PITCH_REV)
    return BadSector(
        centre_rev=spot.centre_rev,
        centre_std_rev=float(np.hypot(spot.centre_std_rev, HIDDEN_PLACE_SHARE * spot.window_rev)),
        width_rev=width_rev,
        width_std_rev=float(np.hypot(width_rev, HIDDEN_WIDTH_SHARE * spot.window_rev)),
        drops_per_turn=float("nan"),
        drops_per_turn_std=float("nan"),
    )


def placed_by_spot(sectors: tuple[BadSector, ...], spot: RingSpot) -> tuple[BadSector, ...]:
    """Place the worst sector by the mean course too, or alone where its drops tell little.

    Drops and course err in opposite ways where the unit's cycle is not 10 ms, so that the middle of both is
    nearer to the spot. A wide sector keeps its place, for the course is taken for that of a spot.

    Parameters
    ----------
    sectors : tuple of BadSector
        As drops tell them, the worst first.
    spot : RingSpot

    Returns
    -------
    tuple of BadSector
        The same with another ``centre_rev`` of the first, or as they were.
    """
    if not sectors or spot.rest_ratio > MOST_REST_PLACED:
        return sectors
    worst, *others = sectors
    wide = wideness(worst.width_rev) > 0.0
    if spot.averaged_long or (spot.moved and not wide):
        placed = replace(worst, centre_rev=spot.centre_rev, centre_std_rev=spot.centre_std_rev)
        return placed, *others
    if spot.moved or wide:
        return sectors
    of_drops_rev = worst.centre_rev + HALF_GAP_REV - spot.lost_rev / 2.0
    apart_rev = (spot.centre_rev - of_drops_rev + 0.5) % 1.0 - 0.5
    nearer_rev = apart_rev / 2.0 if abs(apart_rev) < NEARBY_REV else 0.0
    return replace(worst, centre_rev=(of_drops_rev + nearer_rev) % 1.0), *others


def _lead(fit: _Fit, lost_rev: float, window_s: float) -> tuple[float, float]:
    """Way from the middle of the spot to where the speed first shows it, and its standard uncertainty."""
    if not fit.area_rev:
        return -HALF_PITCH_REV, HALF_PITCH_STD_REV
    return (-1.0 if window_s > LONG_WINDOW_S else 1.0) * lost_rev / 2.0, HALF_GAP_STD_REV


def _power(spectrum: np.ndarray) -> float:
    """Mean square over the turn of what has these orders 1 to 48."""
    squares = np.abs(spectrum) ** 2
    return float(2.0 * squares[1:].sum() - squares[-1])


def _best_fit(spectrum: np.ndarray, shapes: SpotShapes, *, either_way: bool) -> _Fit:
    varied = np.where(ORDERS == 0, 0.0, shapes.spectrum)
    squares = np.abs(varied) ** 2
    own = 2.0 * squares.sum(axis=1) - squares[:, -1]
    padded = np.zeros((own.size, PLACES // 2 + 1), dtype=complex)
    padded[:, : ORDERS.size] = spectrum * np.conj(varied)
    likeness = np.fft.irfft(padded, PLACES, axis=1) * PLACES
    explained: FloatArray = (likeness if either_way else np.minimum(likeness, 0.0)) ** 2 / own[:, None]
    shape, place = np.unravel_index(int(np.argmax(explained)), explained.shape)
    return _Fit(
        place_rev=float(place) / PLACES,
        depth=float(likeness[shape, place] / own[shape]),
        power=float(explained[shape, place]),
        window_rev=float(shapes.window_rev[shape]),
        area_rev=float(shapes.area_rev[shape]),
    )
