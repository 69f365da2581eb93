"""Long drives are looked at in stretches spread over their whole length."""

from __future__ import annotations

import numpy as np

from triage.signals.stretches import (
    COHERENT_M,
    FEWEST_SAMPLES,
    MOST_STRETCHES,
    SPARED_M,
    cut_into_stretches,
    looked_at,
    spread_evenly,
    stretch_length,
)


def test_stretches_are_alike_and_none_too_long() -> None:
    distance_m = np.linspace(30.0, 30.0 + 4.2 * COHERENT_M, 10_000)
    each_m, number = stretch_length(distance_m)
    assert number == 5
    assert each_m * number == distance_m[-1] - distance_m[0]
    parts = cut_into_stretches(distance_m)
    assert [part.stop - part.start for part in parts] == [2000] * 5


def test_a_stretch_without_samples_is_left_out() -> None:
    distance_m = np.linspace(0.0, 3.0 * COHERENT_M, 9000)
    inside = (distance_m > COHERENT_M) & (distance_m < 2.0 * COHERENT_M)
    few = distance_m[~inside | (np.cumsum(inside) < FEWEST_SAMPLES)]
    assert len(cut_into_stretches(distance_m)) == 3
    assert len(cut_into_stretches(few)) == 2


def test_a_very_long_drive_is_sampled_over_its_whole_length() -> None:
    parts = [slice(number, number + 1) for number in range(40)]
    kept = spread_evenly(parts)
    assert len(kept) == MOST_STRETCHES
    assert kept[0] == parts[0]
    assert kept[-1] == parts[-1]
    assert spread_evenly(parts[:5]) == parts[:5]


def test_all_of_a_short_drive_is_looked_at() -> None:
    distance_m = np.linspace(0.0, MOST_STRETCHES * COHERENT_M, 50_000)
    assert distance_m[looked_at(distance_m)].size == distance_m.size
    assert looked_at(np.zeros(0)) == slice(None)


def test_what_is_left_of_a_long_drive_is_cut_into_the_same_stretches() -> None:
    """Even where the first and the last samples were dropped; a sample each 20 cm, as at walking pace."""
    distance_m = np.arange(0.0, 33.7 * COHERENT_M, 0.2)
    left_m = distance_m[looked_at(distance_m)][40:-40]
    parts, again = cut_into_stretches(distance_m), cut_into_stretches(left_m)
    assert len(again) == MOST_STRETCHES
    for part, same in zip(spread_evenly(parts), again, strict=True):
        assert abs(left_m[same.start] - distance_m[part.start]) <= SPARED_M + 0.2
        assert abs(left_m[same.stop - 1] - distance_m[part.stop - 1]) <= SPARED_M + 0.2
