"""Drops over the ring: the response against its closed form, the iteration against what was put in."""

from __future__ import annotations

import numpy as np
import pytest

from triage.signals.ring_response import RING_BINS, DropCounts, deconvolve_drops, response
from triage.speed_log import FloatArray


def _counts(expected: FloatArray, exposure: float, rng: np.random.Generator | None = None) -> DropCounts:
    seen = np.full(RING_BINS, exposure)
    drops = exposure * expected if rng is None else rng.poisson(exposure * expected).astype(float)
    return DropCounts(seen, drops, step_rev=0.08, rate_revps=4.0)


@pytest.mark.parametrize(("visible", "smear"), [(0.08, 0.04), (0.08, 0.0), (0.3, 0.08), (0.02, 0.2)])
def test_every_drop_is_caught_as_often_as_samples_fall_in_its_time(visible: float, smear: float) -> None:
    """The area of a box convolved with a unit box is that of the box: visible over bin width."""
    matrix = response(visible, smear)
    np.testing.assert_allclose(matrix.sum(axis=0), visible * RING_BINS, rtol=0.02)
    assert matrix.min() >= -1e-12
    assert matrix.max() <= 1.0 + 1e-12


def test_response_is_the_trapezoid_of_two_boxes_and_shows_nothing_before_its_cause() -> None:
    visible, smear = 24 / RING_BINS, 12 / RING_BINS
    column = response(visible, smear)[:, 0]
    np.testing.assert_allclose(column[14:23], 1.0, atol=1e-9)
    # Rising over 12 bins, averaged over the bin of the cause: one half after six.
    assert 0.5 * (column[5] + column[6]) == pytest.approx(0.5, abs=0.05)
    np.testing.assert_allclose(column[37:], 0.0, atol=1e-9)
    place = np.arange(RING_BINS) / RING_BINS
    assert float((column * place).sum() / column.sum()) == pytest.approx(0.5 * (visible + smear), abs=0.003)


def test_a_response_longer_than_a_turn_goes_round() -> None:
    column = response(1.25, 0.0)[:, 10]
    assert column.min() == pytest.approx(1.0)
    assert column.max() == pytest.approx(2.0)


def test_known_density_comes_back_sharper_than_the_samples_show_it() -> None:
    truth = np.full(RING_BINS, 1e-4)
    truth[20] = 0.6
    truth[60:70] = 0.05
    matrix = response(0.08, 0.04)
    counts = _counts(matrix @ truth + 1e-3, 300.0, np.random.default_rng(4))
    harm = deconvolve_drops([counts], [matrix])
    assert abs(int(np.argmax(harm.density)) - 20) <= 1
    assert harm.density[17:24].sum() == pytest.approx(0.6, rel=0.15)
    assert harm.density[57:73].sum() == pytest.approx(0.5, rel=0.25)
    shown = counts.drops / counts.exposure
    assert np.count_nonzero(harm.density > 0.3 * harm.density.max()) < np.count_nonzero(
        shown > 0.3 * shown.max()
    )


def test_the_density_found_is_more_likely_than_an_even_ring_and_than_the_truth_smeared() -> None:
    truth = np.zeros(RING_BINS)
    truth[40:44] = 0.2
    matrix = response(0.08, 0.04)
    counts = _counts(matrix @ truth, 200.0, np.random.default_rng(5))
    right = deconvolve_drops([counts], [matrix])
    too_long = deconvolve_drops([counts], [response(0.4, 0.04)])
    assert right.log_likelihood > too_long.log_likelihood + 20.0


def test_two_ranges_of_speed_are_joined() -> None:
    truth = np.zeros(RING_BINS)
    truth[30] = 0.5
    slow, fast = response(0.05, 0.02), response(0.3, 0.12)
    rng = np.random.default_rng(6)
    pair = [_counts(slow @ truth, 40.0, rng), _counts(fast @ truth, 400.0, rng)]
    joint = deconvolve_drops(pair, [slow, fast])
    assert abs(int(np.argmax(joint.density)) - 30) <= 1


def test_chance_alone_goes_to_the_background() -> None:
    rng = np.random.default_rng(7)
    matrix = response(0.08, 0.04)
    even = _counts(np.full(RING_BINS, 0.05), 200.0, rng)
    harm = deconvolve_drops([even], [matrix])
    assert harm.background > 0.015
    assert harm.density.max() < 0.1


def test_a_place_nobody_saw_gets_no_drops() -> None:
    matrix = response(0.04, 0.0)
    exposure, drops = np.full(RING_BINS, 100.0), np.zeros(RING_BINS)
    drops[10:14] = 50.0
    exposure[50:60], drops[52] = 0.5, 0.5
    counts = DropCounts(exposure, drops, step_rev=0.04, rate_revps=4.0)
    harm = deconvolve_drops([counts], [matrix])
    assert harm.density[45:60].max() < 0.2 * harm.density.max()
