"""Pitch errors built into a ring come back within their stated uncertainty, by averaging and by filtering."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.signal import lfilter

from triage.edge_train import number_edges
from triage.signals.pole_pitch import PolePitch, average_pole_pitch, slow_course_s
from triage.signals.pole_pitch_filter import (
    FilteredPitch,
    _from_first_edges,
    compare_estimates,
    filter_pole_pitch,
)
from triage.signals.pole_rings import examine_rings, longest_run
from triage.speed_log import FloatArray
from triage.vehicle import Vehicle


def make_edges(
    shift_pole: FloatArray,
    *,
    seconds: float = 40.0,
    missing: tuple[int, ...] = (),
    jitter: float = 0.01,
    road: float = 0.0,
    seed: int = 1,
) -> tuple[FloatArray, np.ndarray]:
    """Edges, and their borders, of a wheel of 2 m at 15 m/s on a road that shakes the speed by ``road``."""
    rng = np.random.default_rng(seed)
    poles, time_s = shift_pole.size, np.arange(0.0, seconds, 1e-3)
    shake = lfilter([0.3], [1.0, -np.exp(-0.05)], rng.standard_normal(time_s.size))
    speed = (15.0 + 2.0 * np.sin(time_s / 3.0)) * (1.0 + road * shake)
    turn = np.cumsum(speed) * 1e-3 / 2.0
    border = np.arange(1, int(turn[-1] * poles) - 1)
    place = border % poles
    late = shift_pole[place] + jitter * rng.standard_normal(border.size)
    edges = np.interp((border + late) / poles, turn, time_s)
    keep = ~np.isin(place, missing)
    return np.sort(edges[keep]), border[keep]


def both(edges: FloatArray, poles: int) -> tuple[PolePitch, FilteredPitch]:
    train = number_edges(edges)
    averaged, filtered = average_pole_pitch(train, poles), filter_pole_pitch(train, poles)
    assert averaged is not None
    assert filtered is not None
    return averaged, filtered


def misses(estimate: PolePitch | FilteredPitch, shift: FloatArray) -> FloatArray:
    """Error over stated uncertainty at the turn of the ring that fits best."""
    known = shift - shift.mean()
    turned = min(
        (np.roll(known, step) for step in range(shift.size)),
        key=lambda one: float(np.nanstd(one - estimate.shift_pole)),
    )
    away = estimate.shift_pole - turned
    return (away - np.nanmean(away)) / estimate.shift_std_pole


@pytest.mark.parametrize(("poles", "road"), [(48, 0.0), (96, 0.0), (43, 0.003), (88, 0.003)])
def test_stated_95_percent_cover_90_to_98_percent(poles: int, road: float) -> None:
    inside: dict[str, list[FloatArray]] = {"averaged": [], "filtered": []}
    for seed in range(5):
        shift = np.random.default_rng(100 + seed).normal(0.0, 0.012, poles)
        averaged, filtered = both(make_edges(shift, seconds=25.0, road=road, seed=seed)[0], poles)
        inside["averaged"].append(np.abs(misses(averaged, shift)) < 1.96)
        inside["filtered"].append(np.abs(misses(filtered, shift)) < 1.96)
        assert compare_estimates(averaged, filtered) < 2.5
    assert 0.88 <= np.mean(inside["averaged"]) <= 0.99
    assert np.mean(inside["filtered"]) >= 0.90


def test_the_slow_course_is_exact_up_to_the_third_power() -> None:
    """Means over whole turns, twice: 2 M - M M leaves every cubic as it is and takes every ring error out."""
    for poles in (29, 48):
        place = np.arange(poles * 12, dtype=float)
        cubic = 1.0 + 0.3 * place - 2e-4 * place**2 + 3e-7 * place**3
        ring = np.random.default_rng(2).normal(size=poles)
        ring -= ring.mean()
        slow = slow_course_s(cubic + np.tile(ring, 12), poles)
        known = np.isfinite(slow)
        assert np.count_nonzero(known) == place.size - 4 * (poles // 2)
        np.testing.assert_allclose(slow[known], cubic[known], rtol=1e-9)


@pytest.mark.parametrize("poles", [48, 96])
def test_an_eccentric_ring_feigns_two_pi_times_its_shift_over_the_poles(poles: int) -> None:
    """Closed form: a shift of s pitches swinging once a turn is read as a swing of 2 pi s / N."""
    shift = 0.15 * np.sin(2.0 * np.pi * np.arange(poles) / poles + 1.0)
    averaged, _ = both(make_edges(shift)[0], poles)
    expected = 2.0 * np.pi * 0.15 / poles
    assert averaged.ripple_ratio == pytest.approx(expected, abs=4.0 * averaged.ripple_std_ratio)
    assert averaged.ripple_std_ratio < 0.02 * expected


@pytest.mark.parametrize("missing", [(7,), (7, 8), (7, 8, 9, 10)])
def test_a_missing_tooth_is_a_gap_at_the_same_place_of_every_turn(missing: tuple[int, ...]) -> None:
    shift = np.random.default_rng(4).normal(0.0, 0.01, 48)
    averaged, filtered = both(make_edges(shift, missing=missing)[0], 48)
    assert averaged.missing.sum() == len(missing)
    assert averaged.seen_ratio.sum() == pytest.approx(48 - len(missing), abs=0.01)
    assert np.isnan(filtered.shift_pole).sum() == len(missing)
    rings = examine_rings({"FL": make_edges(shift, missing=missing)[0]}, Vehicle())
    assert rings is not None
    assert rings.edges_per_rev[0] == 48
    ring = rings.rings[0]
    assert ring is not None
    assert ring.widest_bad == len(missing)
    assert rings.rings[1:] == (None, None, None)


def test_segments_are_turned_to_the_same_ring() -> None:
    shift = np.random.default_rng(5).normal(0.0, 0.02, 48)
    edges, border = make_edges(shift, seconds=60.0)
    cut = edges[(edges < 20.0) | ((edges > 23.456) & (edges < 40.0)) | (edges > 44.1)]
    train = number_edges(cut)
    assert train.segments == 3
    averaged = average_pole_pitch(train, 48)
    whole = average_pole_pitch(number_edges(edges), 48)
    assert averaged is not None
    assert whole is not None
    assert averaged.turns > 0.75 * whole.turns
    assert np.sqrt(np.mean(misses(averaged, shift) ** 2)) < 1.5
    assert border.size == edges.size


def test_a_vehicle_file_helps_where_the_ring_does_not_tell_its_poles() -> None:
    edges, _ = make_edges(np.zeros(48), jitter=0.01)
    silent = examine_rings({"RR": edges}, Vehicle())
    told = examine_rings({"RR": edges}, Vehicle(pulses_per_rev=48.0))
    assert silent is not None
    assert silent.rings == (None, None, None, None)
    assert told is not None
    assert told.rings[3] is not None
    assert examine_rings({}, Vehicle()) is None


def test_too_few_turns_give_nothing() -> None:
    edges, _ = make_edges(np.random.default_rng(1).normal(0.0, 0.01, 48), seconds=0.9)
    train = number_edges(edges)
    assert average_pole_pitch(train, 48) is None
    assert filter_pole_pitch(train, 48) is None


def test_the_filter_begins_where_edges_follow_each_other() -> None:
    """A single edge before a loss gives no line to begin with: a wheel silent in curves made a traceback."""
    time_s = 0.001 * np.arange(400.0)
    time_s[1:60] = np.nan
    assert _from_first_edges(time_s, 48)[0] == time_s[60]
    time_s[np.arange(400) % 6 > 0] = np.nan
    assert _from_first_edges(time_s, 48).size == 0


@pytest.mark.parametrize(
    ("text", "longest"), [("0000", 0), ("0110", 2), ("1001", 2), ("1111", 4), ("01010", 3), ("0100010", 1)]
)
def test_runs_are_counted_around_the_ring(text: str, longest: int) -> None:
    flag = np.array([sign == "1" for sign in text])
    assert longest_run(flag) == longest
    for step in range(flag.size):
        assert longest_run(np.roll(flag, step)) == longest
