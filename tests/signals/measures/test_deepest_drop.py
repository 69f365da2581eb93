"""One fall that no wheel can make is told with its depth; what tyre, brake or parking do is not."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from triage.signals.analysis import analyse
from triage.signals.measurement import Measurement, NotMeasurable
from triage.signals.measures.deepest_drop import measure_deepest_drop
from triage.speed_log import FloatArray, SpeedLog

Build = Callable[..., SpeedLog]

PERIOD_S = 0.01
TIME_S = PERIOD_S * np.arange(9_000)
FR = 1
FALL_AT = 4_000


def _rows(speed_mps: FloatArray | float = 14.0) -> FloatArray:
    noise = np.random.default_rng(5).normal(size=(4, TIME_S.size))
    return (speed_mps + np.zeros(TIME_S.size)) * (1.0 + 0.001 * noise)


def _drop(log: SpeedLog, row: int = FR) -> Measurement:
    found = measure_deepest_drop(analyse(log), row)
    assert isinstance(found, Measurement)
    return found


def _braking(from_mps: float, mps2: float) -> FloatArray:
    return np.clip(from_mps - mps2 * np.maximum(TIME_S - 37.0, 0.0), 4.0, None)


@pytest.mark.parametrize("depth", [0.3, 0.6, 1.0])
def test_one_fall_is_enough_and_its_depth_is_told(depth: float, log_from: Build) -> None:
    rows = _rows()
    rows[FR, FALL_AT : FALL_AT + 4] *= 1.0 - depth
    drop = _drop(log_from(TIME_S, rows))
    assert drop.value == pytest.approx(100.0 * depth, abs=2.0 * drop.std_uncertainty)
    assert drop.spans[0] == pytest.approx((40.0, 40.04), abs=0.011)
    assert [_drop(log_from(TIME_S, rows), row).value for row in (0, 2, 3)] == [0.0, 0.0, 0.0]


def test_readings_that_are_missing_are_a_full_loss(log_from: Build) -> None:
    rows = _rows()
    rows[FR, FALL_AT : FALL_AT + 8] = np.nan
    assert _drop(log_from(TIME_S, rows)).value == pytest.approx(100.0)


def test_a_wheel_that_slips_under_the_brake_has_not_dropped(log_from: Build) -> None:
    """The wheel falls by 40 % in 0.15 s (about 40 m/s2), as a braked one does."""
    speed = _braking(20.0, 4.0)
    rows = _rows(speed)
    slip = np.interp(TIME_S, [38.0, 38.15, 38.2, 38.35], [0.0, 0.4, 0.4, 0.0])
    rows[FR] *= 1.0 - slip
    assert _drop(log_from(TIME_S, rows)).value == 0.0


def test_a_sample_missing_inside_a_slip_makes_no_fall_of_it(log_from: Build) -> None:
    """40 % in 0.6 s at 14 m/s are 10 m/s2, with or without the sample at 30 %."""
    rows = _rows()
    rows[FR] *= 1.0 - np.interp(TIME_S, [40.0, 40.6, 40.7, 41.0], [0.0, 0.4, 0.4, 0.0])
    whole = _drop(log_from(TIME_S, rows))
    rows[FR, 4_045] = np.nan
    assert whole.value == _drop(log_from(TIME_S, rows)).value == 0.0


def test_a_pause_of_the_recorder_is_no_time_in_which_the_wheel_was_short(log_from: Build) -> None:
    rows = _rows()
    rows[FR] *= 1.0 - np.interp(TIME_S, [40.0, 40.4, 42.4, 42.8], [0.0, 0.3, 0.3, 0.0])
    recorded = (TIME_S < 40.5) | (TIME_S > 42.3)
    assert _drop(log_from(TIME_S, rows)).value > 20.0
    assert _drop(log_from(TIME_S[recorded], rows[:, recorded])).value == 0.0


def test_under_the_brake_a_fall_faster_than_any_wheel_counts(log_from: Build) -> None:
    rows = _rows(_braking(20.0, 4.0))
    rows[FR, 3_800:3_806] *= 0.5
    assert _drop(log_from(TIME_S, rows)).value == pytest.approx(50.0, abs=4.0)


def test_a_fall_of_all_wheels_belongs_to_none(log_from: Build) -> None:
    rows = _rows()
    rows[:, FALL_AT : FALL_AT + 6] *= 0.3
    log = log_from(TIME_S, rows)
    assert [_drop(log, row).value for row in range(4)] == [0.0] * 4


def test_another_tyre_is_no_fall(log_from: Build) -> None:
    rows = _rows()
    rows[FR] *= 0.85
    assert _drop(log_from(TIME_S, rows)).value == 0.0


def test_a_wheel_that_stays_silent_with_nobody_braking_counts_however_slowly_it_fell(log_from: Build) -> None:
    rows = _rows()
    fade = np.interp(TIME_S, [40.0, 42.0, 45.0, 47.0], [1.0, 0.5, 0.5, 1.0])
    rows[FR] *= fade
    assert _drop(log_from(TIME_S, rows)).value == pytest.approx(50.0, abs=6.0)


def test_parking_is_not_judged(log_from: Build) -> None:
    drop = measure_deepest_drop(analyse(log_from(TIME_S, _rows(1.2))), FR)
    assert isinstance(drop, NotMeasurable)
    rows = _rows(2.0)
    rows[FR, FALL_AT : FALL_AT + 4] *= 0.4
    assert _drop(log_from(TIME_S, rows)).value == 0.0


def test_the_worst_fall_is_the_one_told_among_many(log_from: Build) -> None:
    rows = _rows()
    for start in range(500, 8_500, 40):
        rows[FR, start : start + 2] *= 0.8
    rows[FR, 6_012:6_016] *= 0.1
    drop = _drop(log_from(TIME_S, rows))
    assert drop.value == pytest.approx(90.0, abs=3.0)
    assert drop.sample_count > 100
