"""Concentration of events over the ring, against closed forms."""

from __future__ import annotations

import numpy as np
import pytest

from triage.signals.ring_lock import HARMONICS, concentration

BINS = 48
SAMPLES = 96_000


def _struck(width_rev: float, probability: float, *, turned_unevenly: bool = False) -> tuple[float, float]:
    rng = np.random.default_rng(3)
    angle = rng.integers(0, BINS, SAMPLES)
    if turned_unevenly:
        angle = np.where(rng.uniform(size=SAMPLES) < 0.5, angle, angle // 2)
    inside = angle < round(width_rev * BINS)
    return concentration(angle, inside & (rng.uniform(size=SAMPLES) < probability), BINS)


@pytest.mark.parametrize("width_rev", [0.25, 0.5, 0.75])
def test_events_within_part_of_the_ring_leave_the_rest_out(width_rev: float) -> None:
    """By Parseval the harmonics up to 8 of a box of width w hold nearly all of 1/w - 1."""
    share, std = _struck(width_rev, 0.3)
    harmonics = np.arange(1, HARMONICS + 1)
    contrast = float(np.sum(2.0 * np.sinc(harmonics * width_rev) ** 2))
    assert share == pytest.approx(contrast / (1.0 + contrast), abs=0.02)
    assert share == pytest.approx(1.0 - width_rev, abs=0.05)
    assert std < 0.03


@pytest.mark.parametrize("probability", [0.3, 0.03, 0.003])
def test_it_does_not_shrink_as_events_grow_rare(probability: float) -> None:
    share, std = _struck(0.25, probability)
    assert share == pytest.approx(0.74, abs=max(3.0 * std, 0.02))


def test_always_the_same_place_comes_near_one() -> None:
    assert _struck(1.0 / BINS, 0.9)[0] > 0.93


def test_events_all_round_show_nothing_and_the_uncertainty_covers_chance() -> None:
    rng = np.random.default_rng(8)
    found = np.array(
        [
            concentration(rng.integers(0, BINS, 4_000), rng.uniform(size=4_000) < 0.01, BINS)
            for _ in range(400)
        ]
    )
    assert np.median(found[:, 0]) < 0.1
    assert np.mean(found[:, 0] > 2.0 * found[:, 1]) < 0.08


def test_a_wheel_seen_more_often_at_some_angles_is_not_taken_for_locked() -> None:
    assert _struck(1.0, 0.05, turned_unevenly=True)[0] < 0.03


def test_without_events_nothing_is_known() -> None:
    assert concentration(np.arange(BINS), np.zeros(BINS, dtype=bool), BINS) == (0.0, 1.0)
