"""The mean course over the turn: what was put in, and what chance makes of it."""

from __future__ import annotations

import numpy as np
import pytest

from triage.signals.ring_course import FEWEST_PER_BIN, course_of
from triage.signals.ring_response import RING_BINS

TURNS = 200


def _samples(seed: int = 1) -> tuple[np.ndarray, np.ndarray]:
    rng = np.random.default_rng(seed)
    place = np.tile(np.arange(RING_BINS), TURNS)
    return place, 0.01 * rng.standard_normal(place.size)


def test_the_mean_of_every_bin_comes_back() -> None:
    place, noise = _samples()
    wanted = 0.05 * np.cos(2.0 * np.pi * np.arange(RING_BINS) / RING_BINS)
    course = course_of(wanted[place] + noise, place, np.full(place.size, 4.0), around_revps=None)
    assert course is not None
    np.testing.assert_allclose(course.mean_ratio, wanted, atol=5.0 * 0.01 / np.sqrt(TURNS))
    assert course.rate_revps == pytest.approx(4.0)


def test_the_power_of_chance_is_that_of_the_means() -> None:
    """Closed form: the variance of a mean of n is that of one over n."""
    place, noise = _samples()
    course = course_of(noise, place, np.full(place.size, 4.0), around_revps=None)
    assert course is not None
    assert course.noise_power == pytest.approx(0.01**2 / TURNS, rel=0.05)
    # Nothing but chance: its share is one, to a few times the scatter of 96 squares.
    assert course.noise_ratio == pytest.approx(1.0, abs=0.6)


def test_only_samples_around_the_rate_count() -> None:
    place, _ = _samples()
    turn = np.arange(place.size) // RING_BINS
    rate = np.where(turn % 2 == 0, 4.0, 12.0)
    depth = np.where(rate > 8.0, -0.5, 0.0)
    for around_revps, wanted in ((4.0, 0.0), (12.0, -0.5)):
        course = course_of(depth, place, rate, around_revps=around_revps)
        assert course is not None
        assert (course.mean_ratio == wanted).all()
        assert course.rate_revps == pytest.approx(around_revps)


def test_too_few_samples_give_no_course() -> None:
    place = np.tile(np.arange(RING_BINS), FEWEST_PER_BIN - 1)
    assert course_of(np.zeros(place.size), place, np.full(place.size, 4.0), around_revps=None) is None
    assert course_of(np.zeros(0), place[:0], np.zeros(0), around_revps=None) is None
