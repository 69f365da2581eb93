"""Rates of events compared: against exact binomial intervals, and on events of known rates."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.stats import binomtest

from triage.signals.loss_events import compare_rates

COUNT = 40_000
SPEED = 10.0 + 5.0 * np.sin(np.arange(COUNT) / 900.0)
EVERYWHERE = np.ones(COUNT, dtype=bool)


def _exposed(share: float) -> np.ndarray:
    return np.mod(np.arange(COUNT), 200) < 200 * share


def _events(exposed: np.ndarray, inside: int, outside: int, seed: int = 0) -> np.ndarray:
    rng = np.random.default_rng(seed)
    return np.sort(
        np.concatenate(
            [
                rng.choice(np.flatnonzero(exposed), inside, replace=False),
                rng.choice(np.flatnonzero(~exposed), outside, replace=False),
            ]
        )
    )


@pytest.mark.parametrize(("inside", "outside"), [(6, 12), (20, 20), (8, 30)])
def test_ratio_and_interval_agree_with_the_exact_binomial(inside: int, outside: int) -> None:
    """Given the total, the share inside is binomial (Przyborowski, Wilenski); bounds of Clopper and Pearson.

    These are conservative, so that they lie a little outside.
    """
    exposed = _exposed(0.2)
    found = compare_rates(_events(exposed, inside, outside), exposed, EVERYWHERE, SPEED)
    assert found is not None
    assert (found.inside, found.total) == (inside, inside + outside)
    assert found.ratio == pytest.approx((inside / 0.2) / (outside / 0.8), rel=0.15)
    exact = binomtest(inside, inside + outside).proportion_ci(0.95)
    odds = [share / (1.0 - share) / (0.2 / 0.8) for share in (exact.low, exact.high)]
    low, high = (np.log(found.ratio) + side * 1.96 * found.log_std for side in (-1.0, 1.0))
    assert low == pytest.approx(np.log(odds[0]), abs=0.45)
    assert high == pytest.approx(np.log(odds[1]), abs=0.45)


@pytest.mark.parametrize("true_ratio", [1.0, 4.0])
def test_the_stated_interval_covers_the_truth(true_ratio: float) -> None:
    exposed = _exposed(0.15)
    share = 0.15 * true_ratio / (0.15 * true_ratio + 0.85)
    rng = np.random.default_rng(5)
    covered = []
    for seed in range(300):
        inside = int(rng.binomial(20, share))
        found = compare_rates(_events(exposed, inside, 20 - inside, seed), exposed, EVERYWHERE, SPEED)
        assert found is not None
        covered.append(abs(np.log(found.ratio / true_ratio)) < 1.96 * found.log_std)
    assert 0.90 <= np.mean(covered) <= 0.99


def test_speed_alone_is_no_preference() -> None:
    """Exposed mostly when slow, and events mostly when slow: the same rate at every speed."""
    rng = np.random.default_rng(2)
    slow = SPEED < 8.0
    exposed = rng.random(COUNT) < np.where(slow, 0.6, 0.05)
    chance = np.where(slow, 0.02, 0.001)
    found = compare_rates(np.flatnonzero(rng.random(COUNT) < chance), exposed, EVERYWHERE, SPEED)
    assert found is not None
    assert found.ratio == pytest.approx(1.0, abs=3.0 * found.log_std)
    assert found.ratio < 1.5


def test_moments_of_one_kind_only_are_not_compared() -> None:
    event = np.array([5, 100, 4000])
    assert compare_rates(event, np.zeros(COUNT, dtype=bool), EVERYWHERE, SPEED) is None
    assert compare_rates(event, EVERYWHERE, EVERYWHERE, SPEED) is None
