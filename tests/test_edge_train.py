"""Numbering of single edges and the blind search for the poles of a ring, on rings made by hand."""

from __future__ import annotations

import numpy as np
import pytest

from triage.edge_train import find_pole_count, number_edges
from triage.speed_log import FloatArray

Edges = tuple[FloatArray, np.ndarray]


def ring_edges(
    poles: int,
    *,
    seconds: float = 30.0,
    missing: tuple[int, ...] = (),
    opening: float = 0.0,
    jitter: float = 0.003,
    pitch_error: float = 0.01,
    seed: int = 1,
) -> Edges:
    """Edges of a ring on a wheel of 2 m at 10 to 20 m/s, and the border each one belongs to."""
    rng = np.random.default_rng(seed)
    time_s = np.arange(0.0, seconds, 1e-3)
    speed = 15.0 + 4.0 * np.sin(time_s / 4.0) + 0.5 * np.sin(2.0 * np.pi * time_s / 3.0)
    turn = np.cumsum(speed) * 1e-3 / 2.0
    border = np.arange(1, int(turn[-1] * poles) - 1)
    place = border % poles
    shift = rng.normal(0.0, pitch_error, poles)[place] + opening * (0.5 - place / poles)
    shift = shift + jitter * rng.standard_normal(border.size)
    edges = np.interp((border + shift) / poles, turn, time_s)
    keep = ~np.isin(place, missing)
    order = np.argsort(edges[keep], kind="stable")
    return edges[keep][order], border[keep][order]


@pytest.mark.parametrize("missing", [(), (5,), (5, 6), (5, 6, 7, 8), (0, 20, 21)])
@pytest.mark.parametrize("poles", [29, 48, 96])
def test_gaps_are_counted_so_that_no_border_loses_its_place(poles: int, missing: tuple[int, ...]) -> None:
    edges, border = ring_edges(poles, missing=missing)
    train = number_edges(edges)
    assert train.time_s.size == edges.size
    ahead = border[np.searchsorted(edges, train.time_s)] - train.number
    for segment in range(train.segments):
        assert np.ptp(ahead[train.segment == segment]) == 0


def test_extra_edges_are_set_aside() -> None:
    edges, border = ring_edges(48)
    rng = np.random.default_rng(3)
    after = np.sort(rng.choice(np.arange(10, edges.size - 10, 7), 150, replace=False))
    extra = edges[after] + rng.uniform(0.2, 0.8, 150) * (edges[after + 1] - edges[after])
    train = number_edges(np.sort(np.concatenate((edges, extra))))
    assert np.isin(train.extra_s, extra).mean() > 0.9
    assert train.extra_s.size == 150
    kept = np.isin(train.time_s, edges)
    ahead = border[np.searchsorted(edges, train.time_s[kept])] - train.number[kept]
    assert np.ptp(ahead) == 0


def test_a_crack_that_opens_the_ring_takes_no_border_away() -> None:
    edges, border = ring_edges(94, opening=0.5)
    train = number_edges(edges)
    assert train.segments == 1
    assert (border - train.number == border[0]).all()


def test_long_pauses_and_stops_end_a_segment() -> None:
    edges, _ = ring_edges(48)
    train = number_edges(edges[(edges < 10.0) | (edges > 12.0)])
    assert train.segments == 2
    assert (train.number[np.flatnonzero(np.diff(train.segment)) + 1] == 0).all()


@pytest.mark.parametrize("edges", [np.zeros(0), np.arange(50.0), np.array([0.0])])
def test_too_few_edges_give_an_empty_train(edges: FloatArray) -> None:
    assert number_edges(edges).segments == 0
    assert find_pole_count([number_edges(edges)]) is None


@pytest.mark.parametrize("poles", [29, 43, 44, 48, 88, 96, 100])
def test_the_number_of_poles_is_found_blind(poles: int) -> None:
    for missing in ((), (3,), (3, 4, 5)):
        count = find_pole_count([number_edges(ring_edges(poles, missing=missing)[0])])
        assert count is not None
        assert (count.edges_per_rev, count.own) == (poles, (poles,))
        assert count.probability > 0.95


def test_a_wheel_with_another_ring_is_told_from_the_rest() -> None:
    trains = [number_edges(ring_edges(47 if wheel == 2 else 48, seed=wheel)[0]) for wheel in range(4)]
    count = find_pole_count(trains)
    assert count is not None
    assert (count.edges_per_rev, count.own) == (48, (48, 48, 47, 48))


def test_a_ring_without_errors_tells_no_number() -> None:
    """Only chance repeats: either nothing is found, or the number is not called sure."""
    for seed in range(6):
        edges, _ = ring_edges(48, pitch_error=0.0, jitter=0.01, seed=seed)
        count = find_pole_count([number_edges(edges)])
        assert count is None or count.probability < 0.95
