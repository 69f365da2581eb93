"""Widths from the mean depth: as put in behind any averaging, and left alone where dirt thins out."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from triage.signals.ring_depth import depth_over_ring, measure_depth_width, with_even_widths
from triage.signals.ring_deviation import RingDeviation
from triage.signals.ring_response import RING_BINS
from triage.signals.ring_sectors import BadSector, RingHarm, lead_rev
from triage.speed_log import FloatArray

RATE_REVPS, PERIOD_S, TURNS = 4.17, 0.02, 250
FINE = 960
"""Places of the ring at which losses are put in."""


def _missing(width_rev: float, middle_rev: float, share: float, *, taper: bool = False) -> FloatArray:
    """Share of the pulses that is missing at each place: even with sharp ends, or thinning out."""
    away = np.abs((np.arange(FINE) / FINE - middle_rev + 0.5) % 1.0 - 0.5) / (width_rev / 2.0)
    return share * (np.clip(1.0 - away, 0.0, 1.0) if taper else (away <= 1.0))


def _deviation(missing: FloatArray, averaged_s: float, *, sigma: float = 0.003) -> RingDeviation:
    """Samples behind a unit that puts out the mean over a time."""
    rng = np.random.default_rng(3)
    window = max(round(averaged_s * RATE_REVPS * FINE), 1)
    # the window ends at the sample: what is read there was made before
    read = np.convolve(np.concatenate((missing, missing)), np.ones(window) / window)[FINE : 2 * FINE]
    angle_rev = np.arange(0.0, TURNS, RATE_REVPS * PERIOD_S) + 0.1 * rng.uniform()
    depth = -read[(angle_rev % 1.0 * FINE).astype(int)] + sigma * rng.normal(size=angle_rev.size)
    place = (angle_rev % 1.0 * RING_BINS).astype(np.intp)
    exposure = np.bincount(place, minlength=RING_BINS).astype(float)
    return RingDeviation(place, exposure, depth, RATE_REVPS * PERIOD_S, RATE_REVPS)


def _half_width(deviation: RingDeviation, place_rev: float) -> float:
    found = measure_depth_width(depth_over_ring(deviation), place_rev, 0.05)
    assert found is not None
    return found.half_rev


def _harm(*sectors: BadSector) -> RingHarm:
    return RingHarm(sectors, np.ones(RING_BINS) / RING_BINS, 0.2, 0.05, 300)


def _sector(middle_rev: float, width_rev: float) -> BadSector:
    return BadSector((middle_rev - lead_rev(RATE_REVPS)) % 1.0, 0.02, width_rev, 0.7 * width_rev, 1.0, 0.05)


@pytest.mark.parametrize("width_rev", [0.12, 0.2, 0.4])
@pytest.mark.parametrize("averaged_s", [0.001, 0.01, 0.02])
@pytest.mark.parametrize("share", [0.05, 0.8])
def test_averaging_leaves_the_half_width_of_a_longer_sector(
    width_rev: float, averaged_s: float, share: float
) -> None:
    """A box behind a shorter box is a trapezium with the half width of the longer one (closed form)."""
    deviation = _deviation(_missing(width_rev, 0.5, share), averaged_s)
    assert _half_width(deviation, 0.5 + averaged_s * RATE_REVPS / 2.0) == pytest.approx(
        width_rev, abs=2.0 / RING_BINS
    )


def test_a_sector_over_the_zero_of_the_angle_is_one() -> None:
    assert _half_width(_deviation(_missing(0.2, 0.02, 0.3), 0.005), 0.02) == pytest.approx(0.2, abs=0.02)


@pytest.mark.parametrize("peak", [0, 30, 61])
def test_a_sector_of_more_than_half_the_ring_is_measured_from_any_bin(peak: int) -> None:
    profile = np.where(np.arange(RING_BINS) < 62, 1.0, 0.0)
    profile[peak] = 1.01
    found = measure_depth_width(profile, (peak + 0.5) / RING_BINS, 0.02)
    assert found is not None
    assert found.half_rev == pytest.approx(62 / RING_BINS)


def test_bins_without_samples_do_not_cut_a_sector() -> None:
    """The wheel turns in step with the recorder: every eighth bin alone has samples."""
    deviation = _deviation(_missing(0.3, 0.5, 0.5), 0.001)
    seen = deviation.bin % 8 == 0
    place = deviation.bin[seen]
    some = replace(
        deviation,
        bin=place,
        exposure=np.bincount(place, minlength=RING_BINS).astype(float),
        depth_ratio=deviation.depth_ratio[seen],
    )
    assert _half_width(some, 0.5) == pytest.approx(0.3, abs=8 / RING_BINS)


def test_an_even_sector_takes_its_half_width() -> None:
    """Drops of a sector that loses most pulses tell of its first part alone."""
    deviation = _deviation(_missing(0.3, 0.5, 0.8), 0.01)
    (found,) = with_even_widths(_harm(_sector(0.4, 0.12)), deviation).sectors
    assert found.width_rev == pytest.approx(0.3, abs=0.03)
    assert found.width_std_rev < 0.4 * found.width_rev


def test_of_a_tapering_sector_the_half_width_tells_less() -> None:
    even = measure_depth_width(depth_over_ring(_deviation(_missing(0.3, 0.5, 0.8), 0.01)), 0.5, 0.05)
    tapering = measure_depth_width(
        depth_over_ring(_deviation(_missing(0.6, 0.5, 0.8, taper=True), 0.01)), 0.5, 0.05
    )
    assert even is not None
    assert tapering is not None
    assert tapering.half_rev == pytest.approx(0.3, abs=0.03)
    assert tapering.flatness < 0.5 < even.flatness


def test_each_sector_is_measured_on_its_own_depth() -> None:
    """One sector that loses most pulses hides nothing of another that loses few."""
    deviation = _deviation(_missing(0.15, 0.25, 0.8) + _missing(0.25, 0.7, 0.1), 0.01)
    strong, weak = with_even_widths(_harm(_sector(0.25, 0.13), _sector(0.7, 0.13)), deviation).sectors
    assert strong.width_rev == pytest.approx(0.15, abs=0.03)
    assert weak.width_rev == pytest.approx(0.25, abs=0.04)


def test_a_spot_keeps_its_width() -> None:
    """Behind an averaging of 20 ms it looks a twelfth of a turn wide."""
    deviation = _deviation(_missing(0.02, 0.5, 0.8), 0.02)
    spot = _sector(0.5, 0.05)
    (found,) = with_even_widths(_harm(spot), deviation).sectors
    assert found.width_rev == pytest.approx(spot.width_rev)


def test_where_nothing_reads_low_the_width_stays() -> None:
    deviation = _deviation(np.zeros(FINE), 0.01, sigma=0.0)
    harm = _harm(_sector(0.5, 0.2))
    assert with_even_widths(harm, deviation) == harm
