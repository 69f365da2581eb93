"""Lines of cage and wheel under side load, on speeds made by hand."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from triage.corners import CORNERS, SIDE_SIGN, Corner
from triage.signals.analysis import Analysis, analyse
from triage.signals.curve_lines import ORDER_COUNT, ORDER_STEP, CurveLines, curve_powers, find_curve_lines
from triage.signals.measurement import Measurement, NotMeasurable
from triage.signals.measures.cage_order import measure_curve_lines, strongest_line
from triage.signals.order_spectrum import amplitude_spectrum_direct
from triage.signals.vehicle_reference import wheel_speed_factors
from triage.speed_log import FloatArray, SpeedLog
from triage.vehicle import Vehicle

LogBuilder = Callable[..., SpeedLog]
TIME = 0.01 * np.arange(18_000)
CURVATURE = np.where(np.mod(TIME, 14.0) < 5.0, 0.018, np.where(np.mod(TIME, 14.0) < 7.0, 0.0, -0.018))
TURN_M = 2.0
KNOWN = Vehicle(circumference_m=TURN_M)
RANGES = ((0.35, 0.48),)


def _rows(seed: int = 1) -> FloatArray:
    rows = 12.0 * wheel_speed_factors(CURVATURE, Vehicle())
    return rows * (1.0 + 0.002 * np.random.default_rng(seed).normal(size=rows.shape))


def _wave(rows: FloatArray, row: int, order: float) -> FloatArray:
    return np.sin(2.0 * np.pi * order * np.cumsum(rows[row]) * 0.01 / TURN_M)


def _analysis(rows: FloatArray, log_from: LogBuilder) -> Analysis:
    return analyse(log_from(TIME, rows), KNOWN)


@pytest.mark.parametrize("corner", CORNERS)
def test_a_cage_that_shows_under_load_is_measured_at_its_wheel(corner: Corner, log_from: LogBuilder) -> None:
    rows, row = _rows(), CORNERS.index(corner)
    outer = -SIDE_SIGN[corner] * CURVATURE > 0.0
    rows[row] *= 1.0 + np.where(outer, 0.01 * _wave(rows, row, 0.41) + 0.008 * _wave(rows, row, 1.0), 0.0)
    analysis = _analysis(rows, log_from)
    cage, line = measure_curve_lines(analysis)[2 * row : 2 * row + 2]
    assert isinstance(cage, Measurement)
    assert isinstance(line, Measurement)
    assert cage.value == pytest.approx(1.0, abs=0.2)
    assert line.value == pytest.approx(0.8, abs=0.15)
    for other in set(range(4)) - {row}:
        quiet = measure_curve_lines(analysis)[2 * other + 1]
        assert isinstance(quiet, Measurement)
        assert abs(quiet.value) < 0.15


def test_run_out_is_the_same_in_both_curves(log_from: LogBuilder) -> None:
    rows = _rows()
    rows[0] *= 1.0 + 0.01 * _wave(rows, 0, 1.0)
    analysis = _analysis(rows, log_from)
    cage, line = measure_curve_lines(analysis)[:2]
    assert isinstance(line, Measurement)
    assert isinstance(cage, Measurement)
    assert abs(line.value) < 3.0 * line.std_uncertainty < 0.3
    assert cage.value == pytest.approx(0.0, abs=0.05)


def test_what_a_unit_that_counts_whole_pulses_rounds_off_is_no_cage(log_from: LogBuilder) -> None:
    """One step of 0.5 m/s at 12 m/s: swinging between two steps alone makes a line of 2.7 %."""
    rows = _rows()
    rows[0] *= 1.0 + np.where(CURVATURE < 0.0, 0.015 * _wave(rows, 0, 0.41), 0.0)
    fine = measure_curve_lines(_analysis(rows, log_from))[0]
    coarse = measure_curve_lines(analyse(log_from(TIME, rows, resolution_mps=0.5), KNOWN))[0]
    assert isinstance(fine, Measurement)
    assert isinstance(coarse, Measurement)
    assert fine.value == pytest.approx(1.5, abs=0.2)
    assert coarse.value == 0.0


def test_the_known_order_is_found(log_from: LogBuilder) -> None:
    rows = _rows()
    rows[1] *= 1.0 + np.where(CURVATURE > 0.0, 0.01 * _wave(rows, 1, 0.42), 0.0)
    outer, inner = find_curve_lines(_analysis(rows, log_from), 1, TURN_M)
    assert strongest_line(outer, RANGES).order == pytest.approx(0.42, abs=0.021)
    assert strongest_line(outer, RANGES).false_alarm_probability < 1e-6
    assert strongest_line(inner, RANGES).false_alarm_probability > 0.001


def test_noise_alone_gives_false_alarms_as_often_as_stated() -> None:
    """White noise in 300 sets of six curves: a probability below 10 % in 3 to 17 % of them."""
    rng = np.random.default_rng(8)
    starts = 300 * np.arange(6)
    turned = np.concatenate([np.sort(rng.uniform(0.0, 20.0, 300)) for _ in starts])
    probability = []
    for _ in range(300):
        power = curve_powers(turned, 0.002 * rng.normal(size=turned.size), starts)
        lines = CurveLines(
            ORDER_STEP * np.arange(ORDER_COUNT), power, np.full(6, 20.0), np.zeros(1, dtype=bool)
        )
        probability.append(strongest_line(lines, RANGES).false_alarm_probability)
    assert 0.03 <= np.mean(np.array(probability) < 0.1) <= 0.17


def test_powers_agree_with_the_plain_sum() -> None:
    rng = np.random.default_rng(3)
    turned = np.concatenate(
        [np.sort(rng.uniform(0.0, 9.0, 120)), 40.0 + np.sort(rng.uniform(0.0, 15.0, 200))]
    )
    ratio = 0.01 * rng.normal(size=turned.size) + 0.002 * turned
    power = curve_powers(turned, ratio, np.array([0, 120]))
    for number, part in enumerate((slice(0, 120), slice(120, None))):
        along = (turned[part] - turned[part][0]) / np.ptp(turned[part])
        flat = ratio[part] - np.polyval(np.polyfit(along, ratio[part], 2), along)
        weight = np.sin(np.pi * along) ** 2 + 1e-6
        plain = amplitude_spectrum_direct(
            turned[part], flat, weight, step_per_m=ORDER_STEP, count=ORDER_COUNT
        )
        np.testing.assert_allclose(power[number], np.abs(plain) ** 2, rtol=1e-7, atol=1e-15)


def test_straight_driving_and_unknown_turns_are_not_measured(log_from: LogBuilder) -> None:
    rows = 12.0 * (1.0 + 0.002 * np.random.default_rng(1).normal(size=(4, TIME.size)))
    straight = _analysis(rows, log_from)
    silent = NotMeasurable("line-amplitude", None, "no revolution was found", "steady driving")
    unknown = replace(analyse(log_from(TIME, _rows())), lines=(silent, silent, silent, silent))
    for analysis in (straight, unknown):
        lines = measure_curve_lines(analysis)
        assert len(lines) == 8
        assert all(isinstance(line, NotMeasurable) for line in lines)
