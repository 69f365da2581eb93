"""The profile of a ring, against closed forms."""

from __future__ import annotations

import numpy as np
import pytest

from triage.signals.ring_profile import profile_ring
from triage.signals.ring_response import RING_BINS


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
