"""The ring map of one wheel: what is drawn around the turn, and the sentences below it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

import numpy as np

from triage.corners import CORNER_NAMES, CORNERS, SIDE_SIGN, Corner
from triage.evidence.value_words import format_value
from triage.signals.measurement import NotMeasurable
from triage.speed_log import FloatArray
from triage.texts import Text
from ui.presenters.ring_depths import sector_depths

if TYPE_CHECKING:
    from triage.signals.analysis import Analysis
    from triage.signals.ring_map import RingMap
    from triage.signals.ring_sectors import BadSector

BAND_SIGMA: Final = 2.0
"""Half width of the drawn confidence band in standard uncertainties: about 95 %."""

LEAST_RIPPLE_PERCENT: Final = 0.5
LEAST_LOST_PERCENT: Final = 10.0
"""Smallest full scales: below them a sound wheel's noise would fill the picture."""


@dataclass(frozen=True, slots=True)
class RoundCurve:
    """A quantity around the ring.

    Attributes
    ----------
    value, low, high : float64[96]
        Value and confidence band, in the unit of the scale; NaN in a bin without a sample.
    full_scale : float
        Value at the far edge of the track.
    """

    value: FloatArray
    low: FloatArray
    high: FloatArray
    full_scale: float


@dataclass(frozen=True, slots=True)
class SectorMark:
    """A numbered bad sector.

    Attributes
    ----------
    begin_deg, end_deg : float
        Its edges in the angle of the map; the end may exceed 360.
    text : str
        Place, width and depth in words.
    """

    number: int
    begin_deg: float
    end_deg: float
    text: str

    @property
    def centre_deg(self) -> float:
        """Middle of the sector, 0 to 360."""
        return 0.5 * (self.begin_deg + self.end_deg) % 360.0


@dataclass(frozen=True, slots=True)
class RingPicture:
    """What one wheel does at each angle, ready to be drawn.

    Attributes
    ----------
    corner : str
    clockwise : bool
        Whether the angle grows clockwise as seen from outside the car. What meets the sensor later lies
        against the turning: a left wheel turns anticlockwise in forward driving, its angle grows clockwise.
    angle_deg : float64[96]
        Middles of the bins.
    ripple : RoundCurve
        Deviation of the speed in per cent.
    lost : RoundCurve
        Share of the samples that are briefly off or lost, in per cent.
    drops_per_turn : float64[96] or None
        Where the drops begin, the smear by unit and recorder taken out.
    sectors : tuple of SectorMark
    sentences : tuple of str
        What the drawing rests on and how to read it.
    """

    corner: Corner
    clockwise: bool
    angle_deg: FloatArray
    ripple: RoundCurve
    lost: RoundCurve
    drops_per_turn: FloatArray | None
    sectors: tuple[SectorMark, ...]
    sentences: tuple[str, ...]


def build_ring_picture(analysis: Analysis, row: int) -> RingPicture | NotMeasurable:
    """Return the ring of a wheel, or why there is none and which driving would help."""
    ring = analysis.rings[row]
    if isinstance(ring, NotMeasurable):
        return ring
    profile = ring.profile
    bins = profile.count.size
    depths = sector_depths(analysis, row, ring)
    return RingPicture(
        corner=CORNERS[row],
        clockwise=SIDE_SIGN[CORNERS[row]] > 0,
        angle_deg=(np.arange(bins) + 0.5) * 360.0 / bins,
        ripple=_curve(profile.mean_ratio, profile.mean_std_ratio, least=LEAST_RIPPLE_PERCENT),
        lost=_share(profile.loss_rate, profile.loss_std_rate),
        drops_per_turn=None if ring.harm is None or not ring.sectors else ring.harm.density,
        sectors=tuple(
            _mark(number, sector, depth)
            for number, (sector, depth) in enumerate(zip(ring.sectors, depths, strict=True), start=1)
        ),
        sentences=_sentences(ring, CORNERS[row]),
    )


def polar_points(
    angle_deg: FloatArray, radius: FloatArray, *, clockwise: bool
) -> tuple[FloatArray, FloatArray]:
    """Return the places of points given by angle and radius: x to the right, y downwards, 0 degrees on top.

    >>> x, y = polar_points(np.array([0.0, 90.0]), np.array([1.0, 2.0]), clockwise=True)
    >>> (x + 0.0).round(6).tolist(), (y + 0.0).round(6).tolist()
    ([0.0, 2.0], [-1.0, 0.0])
    """
    turned = np.radians(angle_deg if clockwise else -angle_deg)
    return radius * np.sin(turned), -radius * np.cos(turned)


def round_scale(largest: float, *, least: float) -> float:
    """Return the next of 1, 2, 3, 5, 10, ... at or above the largest value, and at least ``least``.

    >>> round_scale(3.1, least=0.5), round_scale(0.01, least=0.5), round_scale(float("nan"), least=0.5)
    (5.0, 0.5, 0.5)
    """
    if not largest > least:
        return least
    decade = 10.0 ** np.floor(np.log10(largest))
    return float(
        next(step * decade for step in (1.0, 2.0, 3.0, 5.0, 10.0) if step * decade >= largest * 0.999)
    )


def _curve(ratio: FloatArray, std_ratio: FloatArray, *, least: float) -> RoundCurve:
    value, reach = 100.0 * ratio, 100.0 * BAND_SIGMA * np.nan_to_num(std_ratio)
    largest = np.nanmax(np.abs(value)) if np.isfinite(value).any() else np.nan
    return RoundCurve(value, value - reach, value + reach, round_scale(float(largest), least=least))


def _share(rate: FloatArray, std_rate: FloatArray) -> RoundCurve:
    value, reach = 100.0 * rate, 100.0 * BAND_SIGMA * std_rate
    largest = np.nanmax(value) if np.isfinite(value).any() else np.nan
    full = min(round_scale(float(largest), least=LEAST_LOST_PERCENT), 100.0)
    return RoundCurve(value, np.maximum(value - reach, 0.0), np.minimum(value + reach, 100.0), full)


def _mark(number: int, sector: BadSector, depth_ratio: float | None) -> SectorMark:
    half_deg = 180.0 * sector.width_rev
    centre_deg = 360.0 * sector.centre_rev
    begin_deg = (centre_deg - half_deg) % 360.0
    place = f"{centre_deg:.0f} ± {360.0 * sector.centre_std_rev:.0f}"
    if np.isnan(sector.drops_per_turn):
        text = Text(
            "Bad sector {number}: at {place}°, up to {width}° wide. It shows in the mean of many turns; no "
            "single drop stands out there.",
            number=number,
            place=place,
            width=f"{360.0 * (sector.width_rev + sector.width_std_rev):.0f}",
        )
        return SectorMark(number, begin_deg, begin_deg + 2.0 * half_deg, text)
    depth = ""
    if depth_ratio is not None:
        deeper = f"{100.0 * depth_ratio:.0f}"
        depth = Text(", half of them deeper than {depth} % of the speed", depth=deeper)
    text = Text(
        "Bad sector {number}: at {place}°, {width}° wide. In 100 turns {drops} drops begin there{depth}.",
        number=number,
        place=place,
        width=f"{2.0 * half_deg:.0f} ± {360.0 * sector.width_std_rev:.0f}",
        drops=format_value(100.0 * sector.drops_per_turn, 100.0 * sector.drops_per_turn_std, ""),
        depth=depth,
    )
    return SectorMark(number, begin_deg, begin_deg + 2.0 * half_deg, text)


def _sentences(ring: RingMap, corner: Corner) -> tuple[str, ...]:
    return (*_verdict(ring), _angle_source(ring), *_reading_help(ring, corner))


def _verdict(ring: RingMap) -> tuple[str, ...]:
    share = format_value(100.0 * max(ring.explained_ratio, 0.0), 100.0 * ring.explained_std_ratio, "%")
    repeats = Text("{share} of the ripple repeats with the angle.", share=share)
    if ring.sectors:
        return (repeats,)
    why = Text("No bad sector: the drops do not keep to an angle.")
    if ring.harm is None and ring.onset_count < 20:
        why = Text(
            "No bad sector: only {n} short losses and deviations, too few for a pattern.", n=ring.onset_count
        )
    return (why, repeats)


def _angle_source(ring: RingMap) -> str:
    source = Text("taken from another wheel, for this one shows no pattern of its own; its angle may creep")
    if ring.own_line:
        source = Text("by the wheel's own pattern")
    return Text(
        "One turn is {length} m, {source}; {n} samples.",
        length=f"{ring.circumference_m:.3f}",
        source=source,
        n=ring.sample_count,
    )


def _reading_help(ring: RingMap, corner: Corner) -> tuple[str, ...]:
    seen = Text(
        "Drawn as the {wheel} wheel is seen from outside the car; in forward driving it turns as the arrow "
        "says.",
        wheel=CORNER_NAMES[corner],
    )
    lag = Text(
        "Both curves are as recorded: by the delay of the control unit they come later than the bad sectors, "
        "which are freed of it."
    )
    return (
        seen,
        Text("Where 0° lies on the real ring is not known; only angles between places count."),
        Text("Shaded: where the true value lies with about 95 % confidence."),
        *((lag,) if ring.sectors else ()),
    )
