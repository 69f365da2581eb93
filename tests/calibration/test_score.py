"""How good and how honest the verdicts are, against worked numbers."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from triage.calibration.score import BLAMED_FROM, Verdict, accepted, measure_reliability
from triage.corners import Place
from triage.evidence.hypotheses import Hypothesis, Posterior, RankedHypothesis


def test_brier_score_and_its_parts() -> None:
    """Decomposition BS = REL - RES + UNC of A. H. Murphy, J. Appl. Meteorol. 12 (1973).

    Worked by hand: forecasts 0.1, 0.4, 0.8, 0.95, ten each, of which 1, 3, 9 and 9 came true. Expected
    calibration error as in Naeini 2015 and Guo 2017 (from memory): mean of abs(stated - observed) by count.
    """
    stated = np.repeat([0.1, 0.4, 0.8, 0.95], 10)
    happened = np.concatenate([np.arange(10) < hits for hits in (1, 3, 9, 9)]).astype(float)
    result = measure_reliability(stated, happened)
    assert result.brier == pytest.approx(0.125625, abs=1e-12)
    assert result.reliability == pytest.approx(0.005625, abs=1e-12)
    assert result.resolution == pytest.approx(0.1275, abs=1e-12)
    assert result.uncertainty == pytest.approx(0.2475, abs=1e-12)
    assert result.expected_calibration_error == pytest.approx(0.0625, abs=1e-12)
    assert result.brier == pytest.approx(float(np.mean((stated - happened) ** 2)), abs=1e-12)
    np.testing.assert_allclose(result.stated, [0.1, 0.4, 0.8, 0.95])
    np.testing.assert_allclose(result.observed, [0.1, 0.3, 0.9, 0.9])
    assert np.abs(result.stated - result.observed).max() == pytest.approx(0.1)
    assert result.count.tolist() == [10, 10, 10, 10]


@given(seed=st.integers(0, 10_000), bins=st.integers(1, 30), size=st.integers(1, 200))
def test_parts_keep_their_ranges(seed: int, bins: int, size: int) -> None:
    rng = np.random.default_rng(seed)
    stated = rng.choice([0.0, 0.3, 0.999, 1.0], size) * rng.random(size)
    happened = (rng.random(size) < stated).astype(float)
    result = measure_reliability(stated, happened, bins=bins)
    assert result.count.sum() == size
    parts = result.reliability - result.resolution + result.uncertainty + result.within_bins
    assert result.brier == pytest.approx(parts, abs=1e-12)
    assert result.brier == pytest.approx(float(np.mean((stated - happened) ** 2)), abs=1e-12)
    assert 0.0 <= result.reliability <= 1.0
    assert -1e-12 <= result.resolution <= result.uncertainty + 1e-12 <= 0.25 + 2e-12
    assert 0.0 <= result.expected_calibration_error <= 1.0


def test_brier_score_of_a_documented_example() -> None:
    """scikit-learn's documentation of brier_score_loss (from memory): (0.01 + 0.01 + 0.04 + 0.09) / 4."""
    result = measure_reliability(np.array([0.1, 0.9, 0.8, 0.3]), np.array([0.0, 1.0, 1.0, 0.0]))
    assert result.brier == pytest.approx(0.0375, abs=1e-12)


def test_forecasts_that_differ_within_a_bin_are_accounted_for() -> None:
    """Worked by hand: 0.6 came true and 0.68 did not, in one bin.

    Brier (0.4**2 + 0.68**2) / 2 = 0.3112; mean 0.64 against 0.5 gives reliability 0.0196, uncertainty 0.25;
    the rest is the variance 0.0016 within the bin less twice the covariance -0.02.
    """
    result = measure_reliability(np.array([0.6, 0.68]), np.array([1.0, 0.0]))
    assert result.brier == pytest.approx(0.3112, abs=1e-12)
    assert (result.reliability, result.resolution) == (pytest.approx(0.0196), 0.0)
    assert result.within_bins == pytest.approx(0.0016 + 2 * 0.02, abs=1e-12)


def test_honest_forecasts_are_reliable_and_boasting_ones_are_not() -> None:
    rng = np.random.default_rng(1)
    stated = rng.random(50_000)
    happened = (rng.random(50_000) < stated).astype(float)
    assert measure_reliability(stated, happened).expected_calibration_error < 0.01
    boasting = np.clip(stated * 1.5, 0.0, 1.0)
    assert measure_reliability(boasting, happened).expected_calibration_error > 0.1


def _verdict(truth: tuple[Place, str], *ranking: tuple[Place, str, float]) -> Verdict:
    lines = tuple(RankedHypothesis(Hypothesis(corner, cause), share, {}) for corner, cause, share in ranking)
    return Verdict(Hypothesis(*truth), Posterior(lines))


def test_right_needs_cause_and_corner() -> None:
    right = _verdict(("FL", "air-gap"), ("FL", "air-gap", 0.6), ("FR", "air-gap", 0.4))
    assert right.right
    assert right.right_corner
    assert right.blames_corner
    other_cause = _verdict(("FL", "air-gap"), ("FL", "tyre-size", 0.9))
    assert not other_cause.right
    assert other_cause.right_corner
    other_corner = _verdict(("FL", "air-gap"), ("FR", "air-gap", 0.9))
    assert not other_corner.right
    assert not other_corner.right_corner


def test_the_second_place_counts_among_two() -> None:
    second = _verdict(
        ("FL", "air-gap"), ("FR", "air-gap", 0.6), ("FL", "air-gap", 0.3), ("RL", "air-gap", 0.1)
    )
    third = _verdict(
        ("RL", "air-gap"), ("FR", "air-gap", 0.6), ("FL", "air-gap", 0.3), ("RL", "air-gap", 0.1)
    )
    assert (second.right, second.right_among_two, third.right_among_two) == (False, True, False)


def test_blame_starts_at_its_limit_and_counts_single_wheels_alone() -> None:
    truth: tuple[Place, str] = ("vehicle", "no-fault-found")
    below = _verdict(truth, ("vehicle", "no-fault-found", 0.7), ("FL", "air-gap", BLAMED_FROM - 0.001))
    at = _verdict(truth, ("vehicle", "no-fault-found", 0.7), ("FL", "air-gap", BLAMED_FROM))
    whole = _verdict(truth, ("vehicle", "common-cause", 0.99))
    assert [one.blames_corner for one in (below, at, whole)] == [False, True, False]


def test_a_rough_bearing_cannot_be_seen_so_no_fault_is_right_too() -> None:
    truth = Hypothesis("RL", "bearing-roughness")
    assert accepted(truth) == (truth, Hypothesis("vehicle", "no-fault-found"))
    assert _verdict(("RL", "bearing-roughness"), ("vehicle", "no-fault-found", 0.8)).right
    assert accepted(Hypothesis("RL", "air-gap")) == (Hypothesis("RL", "air-gap"),)


def test_a_verdict_states_the_probability_of_all_that_would_make_it_right() -> None:
    nothing = _verdict(
        ("RL", "bearing-roughness"),
        ("vehicle", "no-fault-found", 0.6),
        ("RL", "bearing-roughness", 0.2),
        ("FL", "bearing-roughness", 0.1),
        ("FL", "air-gap", 0.1),
    )
    assert nothing.stated == pytest.approx(0.9)
    assert _verdict(("FL", "air-gap"), ("FL", "air-gap", 0.6), ("FR", "air-gap", 0.4)).stated == 0.6
