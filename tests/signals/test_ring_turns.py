"""Losses from turn to turn, and the profile of a ring, against closed forms."""

from __future__ import annotations

import numpy as np
import pytest

from triage.signals.ring_profile import profile_ring
from triage.signals.ring_response import RING_BINS
from triage.signals.ring_turns import measure_turn_losses, quietest_place
from triage.speed_log import FloatArray

PER_TURN = 40


def _turns(number: int) -> FloatArray:
    return np.arange(number * PER_TURN) / PER_TURN + 0.3 / PER_TURN


def test_a_missing_pulse_in_every_turn_has_no_spread() -> None:
    """Two samples at -25 % of 1/40 turn each are 0.0125 turns: a pulse of 80."""
    angle = _turns(100)
    deviation = np.where(np.arange(angle.size) % PER_TURN // 2 == 5, -0.25, 0.0)
    losses = measure_turn_losses(deviation, np.full(angle.size, 0.002), angle, cut_rev=0.5)
    assert losses is not None
    assert losses.mean_rev == pytest.approx(0.25 * 2 / PER_TURN)
    assert losses.spread == pytest.approx(0.0, abs=1e-9)
    assert losses.turns == 99


def test_poisson_losses_have_the_spread_of_poisson_numbers() -> None:
    rng = np.random.default_rng(2)
    number = rng.poisson(4.0, 3000)
    angle = _turns(number.size)
    deviation = np.zeros((number.size, PER_TURN))
    deviation[:, 12] = -0.02 * number
    losses = measure_turn_losses(deviation.ravel(), np.full(angle.size, 0.002), angle, cut_rev=0.0)
    assert losses is not None
    assert losses.spread == pytest.approx(1.0 / np.sqrt(4.0), abs=4.0 * losses.spread_std)
    assert losses.mean_rev == pytest.approx(0.02 * 4.0 / PER_TURN, abs=4.0 * losses.mean_std_rev)


@pytest.mark.parametrize("number", [5, 20])
def test_few_turns_tell_nothing(number: int) -> None:
    angle = _turns(number)
    assert (
        measure_turn_losses(np.full(angle.size, -0.1), np.full(angle.size, 0.01), angle, cut_rev=0.0) is None
    )


def test_turns_with_a_gap_are_left_out() -> None:
    angle = _turns(60)
    deviation = np.full(angle.size, -0.1)
    deviation[PER_TURN // 2 :: 3 * PER_TURN] = np.nan
    deviation[10 * PER_TURN : 11 * PER_TURN] = np.nan
    losses = measure_turn_losses(deviation, np.full(angle.size, 0.01), angle, cut_rev=0.0)
    assert losses is not None
    assert losses.turns == 60 - 1


def test_no_loss_no_spread() -> None:
    angle = _turns(100)
    assert measure_turn_losses(np.zeros(angle.size), np.full(angle.size, 0.01), angle, cut_rev=0.0) is None


def test_the_quietest_place_lies_in_the_longest_quiet_stretch() -> None:
    density = np.ones(RING_BINS)
    density[20:24] = 0.0
    density[90:] = density[:12] = 0.0
    assert quietest_place(density) * RING_BINS == pytest.approx(3.0, abs=0.5)
    assert quietest_place(np.linspace(1.0, 2.0, RING_BINS)) == 0.0


def test_profile_of_noise_about_a_pattern() -> None:
    rng = np.random.default_rng(3)
    place = rng.integers(0, RING_BINS, 40_000)
    pattern = 0.01 * np.sin(2.0 * np.pi * np.arange(RING_BINS) / RING_BINS)
    noise = np.where(np.arange(RING_BINS) < 48, 0.002, 0.006)
    lost = rng.uniform(size=place.size) < np.where(place == 7, 0.3, 0.0)
    profile = profile_ring(place, pattern[place] + noise[place] * rng.normal(size=place.size), lost)
    assert np.mean(np.abs(profile.mean_ratio - pattern) < 2.0 * profile.mean_std_ratio) > 0.9
    assert np.mean(np.abs(profile.noise_ratio - noise) < 2.0 * profile.noise_std_ratio) > 0.9
    assert profile.loss_rate[7] == pytest.approx(0.3, abs=4.0 * profile.loss_std_rate[7])
    assert profile.loss_rate.sum() == pytest.approx(profile.loss_rate[7])
    assert profile.loss_std_rate.min() > 0.0


def test_an_empty_bin_is_unknown_and_not_sound() -> None:
    place = np.array([0, 0, 0, 1])
    profile = profile_ring(place, np.array([0.0, 0.1, 0.2, 0.3]), np.zeros(4, dtype=bool))
    assert np.isnan(profile.mean_ratio[2])
    assert np.isnan(profile.loss_rate[2])
    assert np.isnan(profile.noise_ratio[1])
    assert profile.loss_std_rate[2] > 0.2
    assert profile.noise_ratio[0] == pytest.approx(0.1)
