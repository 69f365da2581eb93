from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.logs.reading import read_log
from triage.signals.analysis import Analysis, analyse
from triage.signals.load_split import loss_rate, mean_amplitude, split_by_load
from triage.signals.loss_events import find_loss_events
from triage.signals.running import count_of
from triage.signals.turn_windows import fit_windows

SAMPLES = Path(__file__).parents[2] / "sample_logs"


def windows(amplitude: float, noise: float, *, count: int = 60, seed: int = 2) -> tuple[np.ndarray, ...]:
    rng = np.random.default_rng(seed)
    turned, ratio = [], []
    for _ in range(count):
        own = np.sort(rng.uniform(0.0, 7.0, 90))
        phase = rng.uniform(0.0, 2.0 * np.pi)
        turned.append(own + rng.uniform(0.0, 1e4))
        ratio.append(
            0.01 * (own / 7.0) ** 2
            + amplitude * np.cos(2.0 * np.pi * own + phase)
            + noise * rng.standard_normal(90)
        )
    return np.concatenate(turned), np.concatenate(ratio), 90 * np.arange(count)


@pytest.mark.parametrize("amplitude", [0.0, 0.0005, 0.004])
def test_wave_and_noise_come_out_within_their_uncertainty(amplitude: float) -> None:
    wave, rest = fit_windows(*windows(amplitude, 0.002))
    estimate = mean_amplitude(wave)
    assert abs(estimate.value - amplitude) < 3.0 * estimate.std_uncertainty + 1e-4
    assert np.sqrt(rest.mean()) == pytest.approx(0.002, rel=0.03)


def test_power_of_no_wave_is_zero_on_average() -> None:
    wave, _ = fit_windows(*windows(0.0, 0.002, count=400))
    assert abs(wave.mean()) < 3.0 * wave.std() / np.sqrt(wave.size)


def test_no_windows_is_no_estimate() -> None:
    wave, rest = fit_windows(np.zeros(0), np.zeros(0), np.zeros(0, dtype=np.intp))
    assert wave.size == rest.size == 0


def test_a_rate_counts_by_the_minute_and_none_is_not_certainty() -> None:
    assert loss_rate(6, 180.0).value == 2.0
    assert loss_rate(0, 60.0).value == 0.0
    assert loss_rate(0, 60.0).std_uncertainty == pytest.approx(np.sqrt(0.5))


@pytest.fixture(scope="module")
def play() -> Analysis:
    """A simulated road test with bearing play at the front left wheel."""
    return analyse(read_log([SAMPLES / "brioche-bearing-play-front-left.csv.gz"]))


def test_a_bearing_with_play_swings_when_loaded(play: Analysis) -> None:
    outer, straight, inner = split_by_load(play, 0)
    assert outer.wave_ratio is not None
    assert straight.wave_ratio is not None
    assert inner.wave_ratio is not None
    apart = outer.wave_ratio.value - inner.wave_ratio.value
    assert apart > 5.0 * np.hypot(outer.wave_ratio.std_uncertainty, inner.wave_ratio.std_uncertainty)
    assert straight.wave_ratio.value < 0.3 * outer.wave_ratio.value


def test_outer_on_one_side_is_inner_on_the_other(play: Analysis) -> None:
    left, right = split_by_load(play, 0), split_by_load(play, 1)
    assert left[0].seconds == pytest.approx(right[2].seconds, abs=0.5)
    assert left[2].seconds == pytest.approx(right[0].seconds, abs=0.5)


def test_losses_and_seconds_of_the_loads_sum_to_no_more_than_there_are(play: Analysis) -> None:
    for row in range(len(CORNERS)):
        shares = split_by_load(play, row)
        assert sum(share.loss_count for share in shares) <= find_loss_events(play, row).first.size
        moving_s = count_of(play.losses.moving[row]) * play.clock.period_s
        assert 0.8 * moving_s < sum(share.seconds for share in shares) <= moving_s
        for share in shares:
            assert share.losses_per_min is not None
            assert share.losses_per_min.value * share.seconds / 60.0 == pytest.approx(share.loss_count)


def test_a_straight_drive_has_no_loaded_wheel(healthy_analysis: Analysis) -> None:
    straight_on = replace(healthy_analysis, lateral_mps2=np.zeros_like(healthy_analysis.lateral_mps2))
    outer, straight, inner = split_by_load(straight_on, 2)
    for share in (outer, inner):
        assert (share.seconds, share.wave_ratio, share.noise_ratio, share.losses_per_min) == (
            0.0,
            None,
            None,
            None,
        )
    assert straight.noise_ratio is not None
