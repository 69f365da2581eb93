from __future__ import annotations

from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from triage.signals.conditioning import CommonClock
from triage.signals.measurement import NotMeasurable
from triage.signals.ring_map import RingMap
from triage.signals.ring_profile import profile_ring
from triage.signals.ring_sectors import BadSector, RingHarm
from ui.presenters.ring import RingPicture, build_ring_picture, polar_points, round_scale
from ui.presenters.ring_depths import LATE_REV, LATE_S, sector_depths

RATE_REVPS = 5.0
SPOT_REV = 0.3


def make_ring(harm: RingHarm | None = None) -> RingMap:
    """Four hundred turns seen in 96 bins: bin 24 swings by 2 % and loses every fourth sample."""
    bins = np.tile(np.arange(96), 400)
    rng = np.random.default_rng(1)
    ripple = 0.001 * rng.standard_normal(bins.size) + np.where(bins == 24, 0.02, 0.0)
    disturbed = (bins == 24) & (np.arange(bins.size) // 96 % 4 == 0)
    return RingMap(
        circumference_m=2.0,
        own_line=True,
        sample_count=bins.size,
        angle_rev=np.zeros(0),
        profile=profile_ring(bins, ripple, disturbed),
        harm=harm,
        spot=None,
        explained_ratio=0.4,
        explained_std_ratio=0.01,
        onset_count=0,
        onset_lock=0.0,
        onset_lock_std=0.1,
        width_rev=float("nan"),
        width_std_rev=float("nan"),
        quiet_ratio=0.9,
    )


def make_sector(centre_rev: float, width_rev: float = 0.05) -> BadSector:
    return BadSector(centre_rev, 0.02, width_rev, 0.01, 0.8, 0.05)


def make_harm(*sectors: BadSector) -> RingHarm:
    return RingHarm(sectors, np.ones(96), 0.1, 0.02, 100)


def picture_of(ring: RingMap, row: int) -> RingPicture:
    picture = build_ring_picture(SimpleNamespace(rings=(ring,) * 4), row)
    assert isinstance(picture, RingPicture)
    return picture


def test_a_spot_appears_at_its_angle_on_the_right_side() -> None:
    for row, side in ((0, +1.0), (1, -1.0), (2, +1.0), (3, -1.0)):
        picture = picture_of(make_ring(), row)
        worst = int(np.nanargmax(picture.lost.value))
        assert picture.angle_deg[worst] == pytest.approx(24.5 * 3.75)
        assert int(np.nanargmax(picture.ripple.value)) == worst
        x, y = polar_points(picture.angle_deg[[worst]], np.ones(1), clockwise=picture.clockwise)
        # A quarter of a turn on from the top: to the right on left wheels, to the left on right ones.
        assert x[0] * side == pytest.approx(1.0, abs=0.01)
        assert abs(y[0]) < 0.05


def test_band_holds_the_truth_and_shares_stay_shares() -> None:
    picture = picture_of(make_ring(), 0)
    assert picture.ripple.low[24] < 2.0 < picture.ripple.high[24]
    sound = np.delete(np.arange(96), 24)
    inside = (picture.ripple.low[sound] < 0.0) & (picture.ripple.high[sound] > 0.0)
    # Two standard uncertainties hold 95 % of the bins.
    assert 0.88 < inside.mean() <= 1.0
    assert picture.lost.low.min() >= 0.0
    assert picture.lost.high.max() <= 100.0
    lost = picture.lost.value * make_ring().profile.count / 100.0
    assert lost.sum() == pytest.approx(100.0)


def test_a_bin_without_a_sample_stays_open() -> None:
    ring = make_ring()
    holed = profile_ring(np.array([3, 3, 4]), np.array([0.0, 0.01, 0.0]), np.zeros(3, dtype=bool))
    picture = picture_of(replace(ring, profile=holed), 0)
    assert np.isfinite(picture.ripple.value).sum() == 2
    assert picture.ripple.full_scale == 0.5


def test_sectors_are_numbered_and_worded() -> None:
    ring = replace(make_ring(make_harm(make_sector(0.25), make_sector(0.99, 0.1))), angle_rev=np.zeros(50))
    picture = build_ring_picture(still_car(ring), 0)
    assert isinstance(picture, RingPicture)
    first, second = picture.sectors
    assert (first.number, second.number) == (1, 2)
    assert (first.begin_deg, first.end_deg) == pytest.approx((81.0, 99.0))
    assert second.centre_deg == pytest.approx(356.4)
    assert first.text.startswith("Bad sector 1: at 90 ± 7°, 18 ± 4° wide. In 100 turns 80.0 ± 5.0 drops")
    assert any("delay of the control unit" in sentence for sentence in picture.sentences)


def test_a_spot_of_the_mean_course_is_told_without_a_number_of_drops() -> None:
    unseen = replace(make_sector(0.25), drops_per_turn=float("nan"), drops_per_turn_std=float("nan"))
    picture = build_ring_picture(still_car(replace(make_ring(make_harm(unseen)), angle_rev=np.zeros(50))), 0)
    assert isinstance(picture, RingPicture)
    (mark,) = picture.sectors
    assert mark.text == (
        "Bad sector 1: at 90 ± 7°, up to 22° wide. It shows in the mean of many turns; no single drop stands "
        "out there."
    )


def test_without_a_turn_the_reason_and_the_driving_are_passed_on() -> None:
    missing = NotMeasurable("dip-angle-lock", "FL", "the revolution is not known", "a steady minute")
    assert build_ring_picture(SimpleNamespace(rings=(missing,) * 4), 0) is missing


@pytest.mark.parametrize(
    ("largest", "scale"), [(0.2, 0.5), (2.14, 3.0), (4.2, 5.0), (5.1, 10.0), (50.0, 50.0)]
)
def test_scales_are_round(largest: float, scale: float) -> None:
    assert round_scale(largest, least=0.5) == pytest.approx(scale)


def still_car(ring: RingMap) -> SimpleNamespace:
    size = ring.angle_rev.size
    zeros, flags = np.zeros((4, size)), np.zeros((4, size), dtype=bool)
    return SimpleNamespace(
        rings=(ring,) * 4,
        clock=CommonClock(0.01 * np.arange(size), 0.01, zeros, ~flags, ~flags, np.zeros(4)),
        residuals=SimpleNamespace(
            fast_ratio=zeros, sound_sigma_ratio=np.full(size, 0.001), roughness_ratio=zeros
        ),
        losses=SimpleNamespace(lost=flags, moving=~flags),
    )


def test_the_depth_of_a_sector_is_that_of_its_drops() -> None:
    time_s = 0.01 * np.arange(6000)
    angle_rev = RATE_REVPS * time_s
    late_rev = LATE_REV + LATE_S * RATE_REVPS
    ring = replace(make_ring(make_harm(make_sector(SPOT_REV), make_sector(0.8))), angle_rev=angle_rev)
    car = still_car(ring)
    past_rev = (angle_rev - late_rev - SPOT_REV) % 1.0
    car.residuals.fast_ratio[1] = np.where(past_rev < 0.06, -0.2, 0.0)
    assert sector_depths(car, 1, ring) == (pytest.approx(0.2), None)
