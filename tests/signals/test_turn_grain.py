"""Losses by chance against the binomial law, and alike turns against nothing."""

from __future__ import annotations

import numpy as np
import pytest

from triage.signals.ring_response import RING_BINS
from triage.signals.turn_grain import measure_turn_grain, quietest_place
from triage.speed_log import FloatArray

PER_TURN = 40
PITCH_REV = 1.0 / 80.0


def _angle(turns: int) -> FloatArray:
    return np.arange(turns * PER_TURN) / PER_TURN + 0.3 / PER_TURN


def _deviation(lost_pieces: FloatArray) -> FloatArray:
    """Deviation whose integral over each turn is so many pitches, at one place of the ring."""
    deviation = np.zeros((lost_pieces.size, PER_TURN))
    deviation[:, 12] = -lost_pieces * PITCH_REV * PER_TURN
    return deviation.ravel()


@pytest.mark.parametrize(("places", "chance"), [(2, 0.5), (8, 0.1), (8, 0.6), (30, 0.05)])
def test_losses_by_chance_have_the_grain_of_the_binomial_law(places: int, chance: float) -> None:
    """Variance over mean of a binomial number is 1 - p, whatever the number of places."""
    lost = np.random.default_rng(places).binomial(places, chance, 4000).astype(float)
    angle = _angle(lost.size)
    grain = measure_turn_grain(_deviation(lost), np.full(angle.size, 0.002), angle, cut_rev=0.0)
    assert grain is not None
    assert grain.grain_rev == pytest.approx(PITCH_REV * (1.0 - chance), abs=4.0 * grain.grain_std_rev)
    assert grain.grain_std_rev < 0.1 * grain.grain_rev


def test_stated_uncertainty_is_the_scatter_of_repeated_drives() -> None:
    rng = np.random.default_rng(7)
    angle = _angle(100)
    found = [
        measure_turn_grain(
            _deviation(rng.poisson(3.0, 100).astype(float)), np.full(angle.size, 0.002), angle, cut_rev=0.0
        )
        for _ in range(300)
    ]
    kept = [one for one in found if one is not None]
    scatter = np.std([one.grain_rev for one in kept])
    assert np.median([one.grain_std_rev for one in kept]) == pytest.approx(scatter, rel=0.2)


@pytest.mark.parametrize("pieces", [1.0, 6.0])
def test_the_same_loss_in_every_turn_has_no_grain_however_large(pieces: float) -> None:
    angle = _angle(100)
    grain = measure_turn_grain(
        _deviation(np.full(100, pieces)), np.full(angle.size, 0.002), angle, cut_rev=0.0
    )
    assert grain is not None
    assert grain.grain_rev == pytest.approx(0.0, abs=1e-9)


def test_quick_turns_with_few_samples_are_left_out_where_slower_ones_suffice() -> None:
    """At six samples a turn a narrow loss is hit or missed: grain that the slow turns do not have."""
    slow = _angle(150)
    quick = slow[-1] + np.arange(1, 150 * 6) / 6.1
    angle = np.concatenate((slow, quick))
    deviation = np.where(np.abs(angle % 1.0 - 0.31) < 0.06, -0.2, 0.0)
    grain = measure_turn_grain(deviation, np.full(angle.size, 0.002), angle, cut_rev=0.8)
    alone = measure_turn_grain(deviation[slow.size :], np.full(quick.size, 0.002), quick, cut_rev=0.8)
    assert grain is not None
    assert alone is not None
    assert grain.grain_rev < 0.3 * alone.grain_rev


@pytest.mark.parametrize("turns", [1, 5, 25])
def test_few_turns_tell_nothing(turns: int) -> None:
    angle = _angle(turns)
    assert (
        measure_turn_grain(np.full(angle.size, -0.1), np.full(angle.size, 0.01), angle, cut_rev=0.0) is None
    )


def test_no_loss_and_unknown_deviation_tell_nothing() -> None:
    angle = _angle(100)
    sigma = np.full(angle.size, 0.01)
    assert measure_turn_grain(np.zeros(angle.size), sigma, angle, cut_rev=0.0) is None
    assert measure_turn_grain(np.full(angle.size, np.nan), sigma, angle, cut_rev=0.0) is None


def test_the_quietest_place_lies_in_the_longest_quiet_stretch() -> None:
    density = np.ones(RING_BINS)
    density[20:24] = 0.0
    density[90:] = density[:12] = 0.0
    assert quietest_place(density) * RING_BINS == pytest.approx(3.0, abs=0.5)
    assert quietest_place(np.linspace(1.0, 2.0, RING_BINS)) == 0.0
