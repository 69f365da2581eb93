"""Another count against another tyre: right where lines show, even weakly on all wheels; silent on noise."""

from __future__ import annotations

import numpy as np
import pytest

from triage.signals.count_or_tyre import weigh_count_against_tyre
from triage.signals.ripple_spectra import HARMONICS, SHORTEST_M, RippleSpectra

LENGTH_M, STRETCHES, RATIO = 1000.0, 3, 0.0526
USUAL_M = 1.987


def _spectra(rng: np.random.Generator, circumference_m: float | None, line_power: float) -> RippleSpectra:
    """Periodogram of noise (exponential law of mean 1) with a line of order 1 and half of it at order 2."""
    step = 1.0 / (4.0 * LENGTH_M)
    count = int(np.ceil(1.02 * HARMONICS / SHORTEST_M / step))
    # Four times oversampled, as the program's are: neighbours belong to one independent value.
    mean = np.ones(count // 4 + 1)
    if circumference_m is not None:
        for order in (1, 2):
            mean[round(order / circumference_m / step / 4.0)] += line_power / order
    power = np.repeat(rng.exponential(mean, (STRETCHES, mean.size)), 4, axis=1)[:, :count]
    return RippleSpectra(step, power, np.sqrt(power) + 0j, np.ones_like(power), LENGTH_M, 3.0 * LENGTH_M)


def _decades(
    rng: np.random.Generator, *, counted: bool, line_power: float, known_m: float | None = None
) -> float:
    own_m = USUAL_M * (1.0 + RATIO) if counted else USUAL_M
    spectra = [_spectra(rng, own_m if row == 2 else USUAL_M, line_power) for row in range(4)]
    found = weigh_count_against_tyre(spectra, 2, ratio=RATIO, ratio_std=0.0004, circumference_m=known_m)
    assert found is not None
    return found


@pytest.mark.parametrize("seed", range(4))
def test_clear_lines_decide(seed: int) -> None:
    assert _decades(np.random.default_rng(seed), counted=True, line_power=30.0) > 3.0
    assert _decades(np.random.default_rng(seed), counted=False, line_power=30.0) < -3.0


def test_lines_too_weak_for_any_wheel_tell_together() -> None:
    """Some 5 times the usual level in three stretches: among 3000 independent places noise has that too."""
    rng = np.random.default_rng(7)
    as_count = [_decades(rng, counted=True, line_power=5.0) for _ in range(15)]
    as_tyre = [_decades(rng, counted=False, line_power=5.0) for _ in range(15)]
    assert np.median(as_count) > 0.3
    assert np.median(as_tyre) < -0.3


def test_odds_are_as_stated() -> None:
    """What a likelihood ratio says wrongly with odds of k to one, it says in at most one of k (A. Markov)."""
    rng = np.random.default_rng(8)
    for counted, sign in ((True, 1.0), (False, -1.0)):
        decades = [
            sign * _decades(rng, counted=counted, line_power=float(power))
            for power in rng.choice([1.0, 3.0, 6.0, 10.0], 40)
        ]
        assert np.mean(np.array(decades) < -1.0) <= 0.1
        assert np.mean(np.array(decades) < -0.3) <= 0.25


def test_noise_says_nothing() -> None:
    rng = np.random.default_rng(9)
    decades = [
        weigh_count_against_tyre(
            [_spectra(rng, None, 0.0) for _ in range(4)], 0, ratio=RATIO, ratio_std=0.0004
        )
        for _ in range(20)
    ]
    assert np.median(np.abs(np.array(decades, dtype=float))) < 0.15


def test_a_known_circumference_helps() -> None:
    free = [_decades(np.random.default_rng(n), counted=True, line_power=4.0) for n in range(20)]
    known = [
        _decades(np.random.default_rng(n), counted=True, line_power=4.0, known_m=USUAL_M) for n in range(20)
    ]
    assert np.mean(known) > np.mean(free)


def test_without_driving_nothing_is_weighed() -> None:
    one = _spectra(np.random.default_rng(1), USUAL_M, 10.0)
    assert weigh_count_against_tyre([None, one, one, one], 0, ratio=RATIO, ratio_std=0.001) is None
    assert weigh_count_against_tyre([one, None, None, None], 0, ratio=RATIO, ratio_std=0.001) is None
