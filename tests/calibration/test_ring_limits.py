"""The reach of the ring map at the rate, speed and length it was made for, on a few cars."""

from __future__ import annotations

import numpy as np
import pytest

from triage.calibration.even_dirt import EVEN_DIRT, WIDTHS_REV
from triage.calibration.ring_limits import (
    RingCase,
    RingScore,
    format_ring_limits,
    is_good,
    ring_cases,
    run_ring_limits,
    score_ring,
    simulate_steady_drive,
)
from triage.errors import SettingsError
from triage.simulator.road_test import simulate_road_test


def test_a_spot_is_found_to_ten_degrees_on_most_cars() -> None:
    """At 50 Hz and a steady 30 km/h for 60 s; the cycle of the unit and its phase are not known."""
    cases = [RingCase("encoder-damage", 0.5, 50.0, 30.0, 60.0, seed) for seed in range(100)]
    scores = [score_ring(case) for case in cases]
    assert sum(score.found for score in scores) >= 86
    assert sum(is_good(case, score) for case, score in zip(cases, scores, strict=True)) >= 70
    inside = [abs(score.off_rev) < 2.0 * score.off_std_rev for score in scores if score.found]
    assert np.mean(inside) >= 0.9


def test_the_width_of_an_evenly_dirty_sector_is_found_on_most_cars() -> None:
    """Sectors of 36 degrees and more: narrower ones look wider by what the unit averages over."""
    cases = [RingCase(EVEN_DIRT.cause, 0.5, 50.0, 30.0, 60.0, seed) for seed in range(12)]
    true_rev = [simulate_steady_drive(case).truth.sectors[0].width_rev for case in cases]
    scores = [score_ring(case) for case, width_rev in zip(cases, true_rev, strict=True) if width_rev >= 0.1]
    assert len(scores) >= 8
    assert np.mean([abs(score.width_ratio - 1.0) <= 0.3 for score in scores]) >= 0.75
    assert np.median([score.width_ratio for score in scores]) == pytest.approx(1.0, abs=0.1)


def test_even_dirt_is_one_sector_as_wide_as_drawn() -> None:
    (sector,) = simulate_steady_drive(RingCase(EVEN_DIRT.cause, 0.5, 50.0, 30.0, 20.0, 1)).truth.sectors
    assert WIDTHS_REV[0] - 0.02 <= sector.width_rev <= WIDTHS_REV[1] + 0.02
    with pytest.raises(SettingsError, match="no cause 'even dirt'"):
        simulate_road_test(cause=EVEN_DIRT.cause, corner="FL", severity=0.5, duration_s=20.0, seed=1)


def test_the_drive_is_steady_and_the_same_for_the_same_case() -> None:
    case = RingCase("encoder-debris", 0.5, 50.0, 30.0, 20.0, 3)
    first, again = simulate_steady_drive(case), simulate_steady_drive(case)
    speed = first.log.wheels["FL"].speed_mps
    np.testing.assert_array_equal(speed, again.log.wheels["FL"].speed_mps)
    assert np.nanmedian(speed) == pytest.approx(30.0 / 3.6, rel=0.05)
    assert 900 < speed.size <= 1000


def test_ten_samples_a_second_are_too_few_at_speed() -> None:
    assert not score_ring(RingCase("encoder-damage", 0.5, 10.0, 80.0, 60.0, 0)).found


def test_what_counts_as_found() -> None:
    spot, dirt = (
        RingCase("encoder-damage", 0.5, 50.0, 30.0, 60.0, 0),
        RingCase("encoder-debris", 0.5, 50.0, 30.0, 60.0, 0),
    )
    assert is_good(spot, RingScore(True, 0.027, 0.02, 3.0))
    assert not is_good(spot, RingScore(True, -0.029, 0.02, 1.0))
    assert is_good(dirt, RingScore(True, 0.2, 0.02, 0.71))
    assert not is_good(dirt, RingScore(True, 0.0, 0.02, 1.31))
    assert not is_good(dirt, RingScore(False, np.nan, np.nan, np.nan))


def test_the_table_names_every_rate_speed_and_length() -> None:
    cases = list(ring_cases("encoder-damage", 2))
    scores = [RingScore(case.seed == 0, 0.0, 0.01, 1.0) for case in cases]
    lines = format_ring_limits(cases, scores).splitlines()
    assert len(lines) == 2 + 12
    assert all(line.count("50 /  50") == 4 for line in lines[2:])
    assert "10 Hz   20 s" in lines[2]


def test_a_run_can_be_stopped() -> None:
    class StopError(Exception):
        pass

    def stop(fraction: float, stage: str) -> None:
        raise StopError(f"{stage} {fraction}")

    with pytest.raises(StopError):
        run_ring_limits(1, progress=stop)
