"""Losses against speed: closed forms, a general optimiser, and Poisson counts drawn from known laws."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.optimize import minimize
from scipy.special import gammaln

from triage.signals.loss_speed_law import BENT_STD, PRIOR_STD, SpeedLaw, fit_speed_law


def _law(exponent: float, seed: int, *, per_s: float = 0.02, samples: int = 40_000) -> SpeedLaw:
    rng = np.random.default_rng(seed)
    speed = rng.uniform(4.0, 25.0, samples)
    began = rng.uniform(size=samples) < per_s * (speed / 12.0) ** exponent
    law = fit_speed_law(began, np.ones(samples, dtype=bool), speed)
    assert law is not None
    return law


def test_two_speeds_give_the_ratio_of_their_rates() -> None:
    # ln(rate over rate) / ln(speed over speed), with the counts large enough for the prior not to show
    speed = np.repeat([5.125, 20.125], 200_000)
    began = np.zeros(speed.size, dtype=bool)
    began[:2000] = began[200_000:218_000] = True
    law = fit_speed_law(began, np.ones(speed.size, dtype=bool), speed)
    assert law is not None
    assert law.exponent == pytest.approx(np.log(9.0) / np.log(20.125 / 5.125), rel=1e-3)
    apart = np.log(20.125 / 5.125)
    counted = np.sqrt(1 / 2000 + 1 / 18_000) / apart
    assert law.std_uncertainty == pytest.approx(np.hypot(counted, BENT_STD / (apart / 2)), rel=1e-2)
    assert law.begun == 20_000


def test_a_general_optimiser_finds_the_same() -> None:
    rng = np.random.default_rng(5)
    speed = rng.integers(8, 60, 3000) * 0.25 + 0.125
    began = rng.uniform(size=3000) < 0.01 * (speed / 8.0) ** 1.4
    law = fit_speed_law(began, np.ones(3000, dtype=bool), speed)

    def misfit(values: np.ndarray) -> float:
        expected = np.exp(values[0] + values[1] * np.log(speed))
        likelihood = began * np.log(expected) - expected - gammaln(began + 1.0)
        return float(-likelihood.sum() + 0.5 * (values[1] / PRIOR_STD) ** 2)

    assert law is not None
    assert law.exponent == pytest.approx(minimize(misfit, [-4.0, 0.0]).x[1], abs=1e-4)


@pytest.mark.parametrize("exponent", [-1.5, 0.0, 1.0, 2.5])
def test_the_stated_uncertainty_covers_the_truth(exponent: float) -> None:
    laws = [_law(exponent, seed) for seed in range(60)]
    spread = np.std(np.log(np.random.default_rng(0).uniform(4.0, 25.0, 40_000)))
    counted = [np.sqrt(law.std_uncertainty**2 - (BENT_STD / spread) ** 2) for law in laws]
    off = np.array([law.exponent - exponent for law in laws]) / counted
    assert 0.88 <= np.mean(np.abs(off) < 1.96) <= 1.0
    assert abs(off.mean()) < 0.5


def test_bunches_widen_the_uncertainty() -> None:
    alone = _law(1.0, 3, per_s=0.01)
    rng = np.random.default_rng(3)
    speed = np.repeat(rng.uniform(4.0, 25.0, 400), 100)
    bunch = np.repeat(rng.uniform(size=400) < 0.03, 100) & (rng.uniform(size=40_000) < 0.33)
    law = fit_speed_law(bunch, np.ones(40_000, dtype=bool), speed)
    assert law is not None
    assert law.std_uncertainty > 1.5 * alone.std_uncertainty


def test_a_drive_at_nearly_one_speed_tells_little() -> None:
    rng = np.random.default_rng(9)
    speed = rng.uniform(18.0, 20.0, 100_000)
    law = fit_speed_law(rng.uniform(size=100_000) < 0.1, np.ones(100_000, dtype=bool), speed)
    assert law is not None
    assert law.std_uncertainty > 2.0


def test_losses_at_one_end_alone_stay_finite() -> None:
    speed = np.linspace(2.0, 25.0, 5000)
    slow = fit_speed_law(speed < 2.5, np.ones(5000, dtype=bool), speed)
    assert slow is not None
    assert -4.0 * PRIOR_STD < slow.exponent < -PRIOR_STD / 2.0


def test_no_loss_or_no_speed_tells_nothing() -> None:
    nothing = np.zeros(100, dtype=bool)
    assert fit_speed_law(nothing, ~nothing, np.full(100, 9.0)) is None
    assert fit_speed_law(~nothing, ~nothing, np.full(100, np.nan)) is None
    assert fit_speed_law(~nothing, nothing, np.full(100, 9.0)) is None
