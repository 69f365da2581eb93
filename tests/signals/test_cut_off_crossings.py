"""Passages through a cut-off of known speed, with a control unit that lags."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from triage.signals.analysis import Analysis, analyse
from triage.signals.cut_off_crossings import THRESHOLD_RATIO, Crossings, find_crossings
from triage.signals.measurement import Measurement, NotMeasurable
from triage.signals.measures.low_speed import (
    measure_cut_off_speed,
    measure_first_bad_speed,
    measure_last_good_speed,
)
from triage.speed_log import FloatArray, SpeedLog

TIME = 0.02 * np.arange(6000)
SPEED = 5.0 - 5.0 * np.cos(TIME * 2.0 * np.pi / 20.0)


def _rows(cut_mps: float, lag_s: float, seed: int = 1) -> FloatArray:
    """Wheel 1 is silent below the cut-off, and the control unit notices so much later."""
    rng = np.random.default_rng(seed)
    rows = SPEED * (1.0 + 0.002 * rng.normal(size=(4, TIME.size)))
    lag = round(lag_s / 0.02)
    late = np.concatenate((np.full(lag, SPEED[0]), SPEED[: SPEED.size - lag]))
    # Pulses come and go near the limit: 3 % of the speed either way.
    rows[1, late < cut_mps * (1.0 + 0.03 * rng.normal(size=TIME.size))] = 0.0
    return rows


def _found(analysis: Analysis) -> Crossings:
    found = find_crossings(
        analysis.clock,
        analysis.reference.expected_mps[1],
        analysis.acceleration_mps2,
        row=1,
        near_mps=analysis.cut_offs[1].speed_mps,
    )
    assert found is not None
    return found


@pytest.mark.parametrize("cut_mps", [1.5, 3.0, 5.0])
@pytest.mark.parametrize("lag_s", [0.0, 0.1])
def test_both_directions_together_give_the_cut_off(
    cut_mps: float, lag_s: float, log_from: Callable[..., SpeedLog]
) -> None:
    found = _found(analyse(log_from(TIME, _rows(cut_mps, lag_s))))
    assert abs(found.speed_mps - cut_mps) < 2.5 * found.std_mps
    seen_mps = np.sqrt(found.std_mps**2 - (THRESHOLD_RATIO * found.speed_mps) ** 2)
    assert seen_mps < 0.05 * cut_mps + 0.05
    assert found.count >= 8
    if lag_s:
        assert found.last_good_mps < cut_mps < found.first_bad_mps


def test_the_stated_interval_covers_the_cut_off(log_from: Callable[..., SpeedLog]) -> None:
    score = []
    for seed in range(30):
        cut_mps = 1.5 + 0.12 * seed
        found = _found(analyse(log_from(TIME, _rows(cut_mps, 0.03, seed))))
        score.append(abs(found.speed_mps - cut_mps) / found.std_mps)
    assert np.mean(np.array(score) < 1.96) >= 0.9


def test_passages_that_agree_make_no_cut_off_surer_than_the_threshold_is(
    log_from: Callable[..., SpeedLog],
) -> None:
    found = _found(analyse(log_from(TIME, _rows(5.0, 0.0))))
    for std_mps in (found.std_mps, found.last_good_std_mps, found.first_bad_std_mps):
        assert std_mps >= 0.06 * found.speed_mps


def test_the_measurements_give_last_good_and_first_bad(log_from: Callable[..., SpeedLog]) -> None:
    analysis = analyse(log_from(TIME, _rows(3.0, 0.05)))
    good, bad = measure_last_good_speed(analysis, 1), measure_first_bad_speed(analysis, 1)
    above = measure_cut_off_speed(analysis, 1)
    assert isinstance(good, Measurement)
    assert isinstance(bad, Measurement)
    assert isinstance(above, Measurement)
    assert 2.7 < good.value < bad.value < 3.3
    assert above.value == pytest.approx(2.4, abs=2.0 * above.std_uncertainty)
    assert isinstance(measure_last_good_speed(analysis, 0), NotMeasurable)
    assert isinstance(measure_first_bad_speed(analysis, 0), NotMeasurable)
