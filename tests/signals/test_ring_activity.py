"""How far a dirty stretch reaches: filters undone, run-out and spots left alone, widths as put in."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from triage.signals.ring_activity import count_active, find_active_stretches, with_reach
from triage.signals.ring_deviation import RingDeviation, deviation_over_ring
from triage.signals.ring_drops import PlacedDrops
from triage.signals.ring_response import RING_BINS
from triage.signals.ring_sectors import BadSector, RingHarm, lead_rev
from triage.speed_log import FloatArray

RATE_REVPS, PERIOD_S, SAMPLES = 4.17, 0.02, 9000
CELLS = 10
"""Cells of a sample step in which the deviation is made before it is filtered."""


def _placed(dirty: tuple[float, float], *, filter_s: float = 0.0, run_out: float = 0.0) -> PlacedDrops:
    """Give the samples of a wheel that is unsteady from one angle to another and quiet elsewhere."""
    rng = np.random.default_rng(5)
    fine_rev = np.arange(SAMPLES * CELLS) * RATE_REVPS * PERIOD_S / CELLS
    inside = (fine_rev - dirty[0]) % 1.0 < dirty[1] - dirty[0]
    depth = np.where(inside, 0.2, 0.0) * rng.normal(size=fine_rev.size)
    means = depth.reshape(SAMPLES, CELLS).mean(axis=1)
    angle_rev = fine_rev[CELLS - 1 :: CELLS]
    raw = means + 0.002 * rng.normal(size=SAMPLES) + run_out * np.cos(2.0 * np.pi * angle_rev)
    return PlacedDrops(
        depth_ratio=_filtered(raw, filter_s),
        seen=np.arange(SAMPLES) > 0,
        exposed=np.ones(SAMPLES, dtype=bool),
        dropped=np.zeros(SAMPLES, dtype=bool),
        angle_rev=angle_rev,
        rate_revps=np.full(SAMPLES, RATE_REVPS),
        period_s=PERIOD_S,
    )


def _filtered(raw: FloatArray, filter_s: float) -> FloatArray:
    left = float(np.exp(-PERIOD_S / filter_s)) if filter_s else 0.0
    out = np.empty(raw.size)
    state = 0.0
    for place, value in enumerate(raw):
        state = left * state + (1.0 - left) * value
        out[place] = state
    return out


def _sector(middle_rev: float, width_rev: float) -> BadSector:
    return BadSector((middle_rev - lead_rev(RATE_REVPS)) % 1.0, 0.02, width_rev, 0.7 * width_rev, 1.0, 0.05)


def _harm(*sectors: BadSector) -> RingHarm:
    return RingHarm(sectors, np.ones(RING_BINS) / RING_BINS, 0.2, 0.05, 300)


def _over_ring(placed: PlacedDrops, rate_revps: float = RATE_REVPS) -> RingDeviation:
    deviation = deviation_over_ring(placed, rate_revps)
    assert deviation is not None
    return deviation


def _widest(placed: PlacedDrops) -> float:
    return max(one.size for one in find_active_stretches(_over_ring(placed))) / RING_BINS


@pytest.mark.parametrize("width_rev", [0.1, 0.2, 0.4])
@pytest.mark.parametrize("filter_s", [0.0, 0.02, 0.04])
def test_the_stretch_is_as_wide_behind_any_filter(width_rev: float, filter_s: float) -> None:
    """The bar lies low, so that up to 3 bins more on either side may belong to it."""
    found_rev = _widest(_placed((0.3, 0.3 + width_rev), filter_s=filter_s))
    assert width_rev - 1.5 / RING_BINS < found_rev < width_rev + 6.5 / RING_BINS


def test_a_stretch_over_the_zero_of_the_angle_is_one() -> None:
    assert len(find_active_stretches(_over_ring(_placed((0.9, 1.1))))) == 1


def test_run_out_alone_throws_no_sample_off() -> None:
    deviation = _over_ring(_placed((0.0, 0.0), run_out=0.02))
    assert count_active(deviation).sum() < 0.01 * deviation.exposure.sum()


def test_other_speeds_and_unseen_samples_do_not_count() -> None:
    placed = _placed((0.3, 0.5))
    half = replace(placed, seen=placed.seen & (np.arange(SAMPLES) < SAMPLES // 2))
    assert _over_ring(half).exposure.sum() == SAMPLES // 2 - 1
    assert deviation_over_ring(placed, 2.0 * RATE_REVPS) is None


def test_a_sector_whose_drops_show_its_core_alone_grows_and_keeps_its_place() -> None:
    core = _sector(0.45, 0.13)
    harm = with_reach(_harm(core), _over_ring(_placed((0.3, 0.6))))
    (grown,) = harm.sectors
    assert 0.15 < grown.width_rev < 0.25
    assert grown.width_std_rev > core.width_std_rev
    assert (grown.centre_rev, grown.centre_std_rev) == (core.centre_rev, core.centre_std_rev)
    assert harm.spread_rev == 0.2


def test_a_sector_found_too_wide_shrinks() -> None:
    (shrunk,) = with_reach(_harm(_sector(0.4, 0.4)), _over_ring(_placed((0.35, 0.45)))).sectors
    assert 0.1 < shrunk.width_rev < 0.3


def test_at_speed_the_width_stays_nearer_to_that_of_the_drops() -> None:
    """The averaging of the unit is not known, and covers more of the ring the faster the wheel turns."""
    slow = _placed((0.3, 0.6))
    fast = replace(slow, rate_revps=4.0 * slow.rate_revps, period_s=slow.period_s / 4.0)
    (at_town_speed,) = with_reach(_harm(_sector(0.45, 0.13)), _over_ring(slow)).sectors
    (at_speed,) = with_reach(_harm(_sector(0.45, 0.13)), _over_ring(fast, 4.0 * RATE_REVPS)).sectors
    assert 0.13 < at_speed.width_rev < at_town_speed.width_rev


def test_the_stretch_around_each_sector_counts() -> None:
    """One restless stretch over the zero of the angle, sectors within it and away from it."""
    placed = _placed((0.9, 1.2))
    within, away = with_reach(_harm(_sector(0.02, 0.13), _sector(0.3, 0.13)), _over_ring(placed)).sectors
    assert within.width_rev == pytest.approx(away.width_rev)
    assert within.width_rev > 0.15


def test_where_no_sample_is_off_the_width_of_the_drops_stays() -> None:
    quiet = _placed((0.0, 0.0))
    harm = _harm(_sector(0.4, 0.2))
    still = replace(quiet, depth_ratio=np.zeros(SAMPLES))
    assert with_reach(harm, _over_ring(still)) is harm


def test_a_spot_keeps_its_width() -> None:
    spot = _sector(0.45, 0.05)
    harm = _harm(spot)
    assert with_reach(harm, _over_ring(_placed((0.3, 0.6)))) is harm
    beside = with_reach(_harm(_sector(0.4, 0.2), spot), _over_ring(_placed((0.3, 0.6))))
    assert beside.sectors[1].width_rev == pytest.approx(spot.width_rev)
