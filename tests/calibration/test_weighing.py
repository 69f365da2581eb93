"""Weights of measurements: closed forms for copies and liars, the gradient, and drives made by hand."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.optimize import approx_fprime

from triage.calibration.ensemble import Case, MeasuredCase
from triage.calibration.weighing import Told, _cost, best_weights, learn_weights
from triage.corners import CORNERS
from triage.evidence.likelihoods import LEAST_WEIGHT, MOST_WEIGHT
from triage.evidence.rulebook import Rulebook, load_rulebook
from triage.signals.measurement import Measurement
from triage.speed_log import BoolArray, FloatArray

DRIVES = 20_000


def _told(said: FloatArray, truth: BoolArray) -> Told:
    """Two atoms; ``said`` is the log-likelihood ratio for the first, float64[drives, measurements]."""
    evidence = np.stack([said, np.zeros_like(said)], axis=2).astype(np.float32)
    return Told(evidence, np.stack([truth, ~truth], axis=1), np.log([0.5, 0.5]))


def _readings(rng: np.random.Generator, truth: BoolArray, right: float) -> FloatArray:
    """Log-likelihood ratio of a reading of two values that is right with a probability."""
    seen = np.where(rng.uniform(size=truth.size) < right, truth, ~truth)
    ratio: FloatArray = np.log(right / (1.0 - right)) * np.where(seen, 1.0, -1.0)
    return ratio


@pytest.fixture(scope="module")
def truth() -> BoolArray:
    flag: BoolArray = np.random.default_rng(1).uniform(size=DRIVES) < 0.5
    return flag


def test_independent_measurements_keep_their_full_weight(truth: BoolArray) -> None:
    rng = np.random.default_rng(2)
    said = np.stack([_readings(rng, truth, 0.8), _readings(rng, truth, 0.7)], axis=1)
    assert best_weights([_told(said, truth)]) == pytest.approx([1.0, 1.0], abs=0.06)


def test_a_measurement_and_its_copy_share_one_weight(truth: BoolArray) -> None:
    once = _readings(np.random.default_rng(3), truth, 0.8)
    weights = best_weights([_told(np.stack([once, once], axis=1), truth)])
    assert weights.sum() == pytest.approx(1.0, abs=0.06)
    assert weights[0] == pytest.approx(weights[1], abs=1e-3)


def test_what_says_too_much_is_brought_down_and_what_says_too_little_up(truth: BoolArray) -> None:
    rng = np.random.default_rng(4)
    said = np.stack([2.0 * _readings(rng, truth, 0.7), 0.5 * _readings(rng, truth, 0.75)], axis=1)
    assert best_weights([_told(said, truth)]) == pytest.approx([0.5, 2.0], abs=0.1)


def test_what_no_drive_tells_and_what_only_misleads_stay_within_the_limits(truth: BoolArray) -> None:
    liar = -_readings(np.random.default_rng(5), truth, 0.9)
    weights = best_weights([_told(np.stack([np.zeros(DRIVES), liar], axis=1), truth)])
    assert weights == pytest.approx([1.0, LEAST_WEIGHT])
    assert LEAST_WEIGHT < MOST_WEIGHT


def test_the_gradient_is_that_of_the_cost() -> None:
    rng = np.random.default_rng(6)
    told = [
        Told(
            rng.normal(size=(n, 3, 5)).astype(np.float32),
            rng.uniform(size=(n, 5)) < 0.4,
            np.log(np.full(5, 0.2)),
        )
        for n in (300, 40)
    ]
    weights = np.array([0.7, 1.3, 1.0])
    numeric = approx_fprime(weights, lambda at: _cost(at, told)[0], 1e-3)
    assert _cost(weights, told)[1] == pytest.approx(numeric, rel=2e-2, abs=1e-4)


def _drives(rng: np.random.Generator) -> list[MeasuredCase]:
    """Dead wires whose two readings are one and the same, and healthy cars."""
    drives = []
    for index in range(120):
        dead = index % 2 == 0
        value = float(rng.uniform(20.0, 90.0)) if dead and rng.uniform() < 0.8 else 0.0
        measurements = tuple(
            Measurement(name, corner, value if corner == "FL" else 0.0, 0.01, "%", 99, ())
            for name in ("dead-share", "dip-share")
            for corner in CORNERS
        )
        cause, place = ("harness-fault", "FL") if dead else ("no-fault-found", "vehicle")
        drives.append(MeasuredCase(Case(cause, place, 0.5, 90.0, index), measurements, ()))  # type: ignore[arg-type]
    return sorted(drives, key=lambda one: one.case.cause)


def test_every_measurement_of_the_rule_book_gets_a_weight_whatever_the_number_of_workers() -> None:
    rulebook: Rulebook = load_rulebook()
    drives = _drives(np.random.default_rng(7))
    weights = learn_weights(drives, rulebook)
    assert list(weights) == list(rulebook.measurements)
    assert all(LEAST_WEIGHT <= weight <= MOST_WEIGHT for weight in weights.values())
    assert weights["noise-ratio"] == 1.0  # no drive has it
    assert weights["dead-share"] != 1.0
    assert learn_weights(drives, rulebook, workers=2) == weights
