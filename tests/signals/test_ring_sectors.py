"""Bad sectors of a ring: number, place and width against what was put in, and nothing where nothing is."""

from __future__ import annotations

import numpy as np
import pytest

from triage.signals.ring_response import RING_BINS, DropCounts, response
from triage.signals.ring_sectors import BUS_S, CYCLE_S, HALF_GAP_REV, RingHarm, find_bad_sectors
from triage.speed_log import FloatArray

STEP_REV, RATE_REVPS, TURNS = 0.083, 4.17, 250


def _found(density: FloatArray, seed: int = 1, background: float = 0.0) -> RingHarm | None:
    rng = np.random.default_rng(seed)
    exposure = np.full(RING_BINS, TURNS / STEP_REV / RING_BINS)
    expected = response(STEP_REV, CYCLE_S * RATE_REVPS) @ density + background
    drops = rng.binomial(np.rint(exposure).astype(int), np.minimum(expected, 1.0)).astype(float)
    return find_bad_sectors(DropCounts(exposure, drops, STEP_REV, RATE_REVPS))


def _stretch(first: int, length: int, drops: float) -> FloatArray:
    density = np.zeros(RING_BINS)
    density[(first + np.arange(length)) % RING_BINS] = drops / length
    return density


def _off(found_rev: float, middle_bin: float) -> float:
    lead_rev = HALF_GAP_REV + BUS_S * RATE_REVPS
    return float((found_rev + lead_rev - middle_bin / RING_BINS + 0.5) % 1.0 - 0.5)


@pytest.mark.parametrize("first", [0, 31, 94, 95])
def test_a_spot_is_narrow_and_lies_within_ten_degrees(first: int) -> None:
    harm = _found(_stretch(first, 2, 1.0))
    assert harm is not None
    (spot,) = harm.sectors
    assert abs(_off(spot.centre_rev, first + 1.0)) < 10.0 / 360.0
    assert spot.width_rev < 0.06
    assert spot.drops_per_turn == pytest.approx(1.0, abs=4.0 * spot.drops_per_turn_std + 0.1)
    assert harm.spread_rev < 0.09


@pytest.mark.parametrize(("first", "length"), [(10, 12), (40, 20), (88, 24), (5, 40)])
def test_a_wide_stretch_has_its_width_within_thirty_per_cent(first: int, length: int) -> None:
    ratios = []
    for seed in range(5):
        harm = _found(_stretch(first, length, 1.5), seed)
        assert harm is not None
        ratios.append(harm.sectors[0].width_rev * RING_BINS / length)
        assert abs(_off(harm.sectors[0].centre_rev, first + length / 2)) < 0.3 * length / RING_BINS
    assert np.median(ratios) == pytest.approx(1.0, abs=0.3)


def test_two_stretches_are_two_and_the_worse_is_first() -> None:
    harm = _found(_stretch(10, 8, 0.4) + _stretch(60, 14, 0.9))
    assert harm is not None
    assert len(harm.sectors) == 2
    assert harm.sectors[0].drops_per_turn > harm.sectors[1].drops_per_turn
    assert abs(_off(harm.sectors[0].centre_rev, 67.0)) < 0.06


def test_uncertainties_cover_the_place() -> None:
    """Two standard uncertainties hold the true place at least as often as a normal error would."""
    inside = 0
    for seed in range(60):
        first = int(np.random.default_rng(seed).integers(RING_BINS))
        harm = _found(_stretch(first, 3, 0.6), seed, background=0.004)
        assert harm is not None
        spot = harm.sectors[0]
        inside += abs(_off(spot.centre_rev, first + 1.5)) < 2.0 * spot.centre_std_rev
    assert inside >= 56


def test_even_drops_make_no_pattern() -> None:
    found = [_found(np.zeros(RING_BINS), seed, background=0.05) for seed in range(200)]
    assert sum(one is not None for one in found) <= 2


def test_few_drops_make_no_pattern() -> None:
    assert _found(_stretch(10, 2, 0.04)) is None


def test_a_ring_bad_all_round_is_one_stretch() -> None:
    density = np.full(RING_BINS, 0.02)
    density[:48] = 0.06
    harm = _found(density)
    assert harm is not None
    assert harm.spread_rev > 0.3
    assert sum(one.width_rev for one in harm.sectors) > 0.4
