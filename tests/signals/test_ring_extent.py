"""The extent of a bad stretch by the course of the speed, against stretches put through a unit's smear."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.signal import lfilter

from triage.signals.ring_extent import WINDOW_S, find_stretches, stretches_of, width_of
from triage.signals.ring_response import RING_BINS

FINE = 100 * RING_BINS


def course_of(first_rev: float, width_rev: float, *, rate_revps: float, filter_s: float) -> np.ndarray:
    """Speed over the angle, as a unit tells it that averages and filters: 10 % low in one stretch."""
    place = np.arange(3 * FINE) / FINE % 1.0
    low = -0.1 * ((place - first_rev) % 1.0 < width_rev)
    window = max(round(WINDOW_S * rate_revps * FINE), 1)
    seen = np.convolve(low, np.ones(window) / window)[: low.size]
    keep = float(np.exp(-1.0 / (FINE * rate_revps * filter_s)))
    told = lfilter([1.0 - keep], [1.0, -keep], seen)
    return np.asarray(told[-FINE:].reshape(RING_BINS, -1).mean(axis=1))


@pytest.mark.parametrize("filter_s", [0.005, 0.01, 0.02, 0.04])
@pytest.mark.parametrize("width_rev", [0.1, 0.2, 0.35])
@pytest.mark.parametrize("first_rev", [0.3, 0.9])
def test_the_width_is_that_of_the_stretch_within_thirty_per_cent(
    first_rev: float, width_rev: float, filter_s: float
) -> None:
    course = course_of(first_rev, width_rev, rate_revps=4.0, filter_s=filter_s)
    noisy = course + 0.0005 * np.random.default_rng(1).normal(size=RING_BINS)
    (stretch,) = find_stretches(noisy, 4.0)
    assert width_of(stretch, 4.0) == pytest.approx(width_rev, rel=0.3)


def test_two_stretches_are_two() -> None:
    course = course_of(0.1, 0.15, rate_revps=4.0, filter_s=0.015)
    both = find_stretches(course + np.roll(course, RING_BINS // 2), 4.0)
    assert len(both) == 2


def test_a_speed_that_keeps_its_course_has_none() -> None:
    assert find_stretches(np.zeros(RING_BINS), 4.0) == []


def test_stretches_go_on_over_the_end_of_the_ring_and_over_short_breaks() -> None:
    flag = np.zeros(RING_BINS, dtype=bool)
    flag[[94, 95, 0, 1, 4, 40, 41]] = True
    found = stretches_of(flag, joined_over=2)
    assert [stretch.tolist() for stretch in found] == [[94, 95, 0, 1, 2, 3, 4], [40, 41]]
    assert len(stretches_of(flag, joined_over=1)) == 3
    assert stretches_of(~flag & flag, joined_over=2) == []
    assert [stretch.size for stretch in stretches_of(flag | ~flag, joined_over=2)] == [RING_BINS]


def test_no_width_is_below_a_bin() -> None:
    assert width_of(np.arange(2), 20.0) == 1.0 / RING_BINS
