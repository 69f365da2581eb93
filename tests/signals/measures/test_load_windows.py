"""Scatter with side load: closed forms of the windows, and curves driven to both sides."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from triage.corners import CORNERS, SIDE_SIGN, Corner
from triage.signals.analysis import Analysis, analyse
from triage.signals.measurement import Measurement, NotMeasurable
from triage.signals.measures.load_windows import measure_load_rest_ratios
from triage.signals.turn_windows import fit_windows
from triage.signals.vehicle_reference import wheel_speed_factors
from triage.speed_log import SpeedLog
from triage.vehicle import Vehicle

CIRCUMFERENCE_M = 1.95
NOISE = 0.0015
PERIOD_S = 15.0
"""Ten windows: four of a left curve, one straight, four of a right curve, one straight."""

MEDIAN_OF_THREE = 0.449
"""Variance of the middle of three normal values over that of one (order statistics, from memory)."""


def _drive(
    log_from: Callable[..., SpeedLog],
    *,
    corner: Corner | None = None,
    extra: float = 0.0,
    wave: float = 0.0,
    left_roughness: float = 1.0,
    curvature_radpm: float = 0.012,
) -> Analysis:
    """Drive curves of 1.7 m/s2 to both sides in turn; one wheel is disturbed while it is the outer wheel."""
    rng = np.random.default_rng(5)
    time = 0.01 * np.arange(15_000)
    phase = np.mod(time, PERIOD_S)
    curvature = np.where(phase < 6.0, curvature_radpm, 0.0)
    curvature = np.where((phase >= 7.5) & (phase < 13.5), -curvature_radpm, curvature)
    scale = NOISE * np.where(curvature > 0.0, left_roughness, 1.0)
    rows = 12.0 * wheel_speed_factors(curvature, Vehicle()) * (1.0 + scale * rng.normal(size=(4, time.size)))
    if corner is not None:
        row, outer = CORNERS.index(corner), -SIDE_SIGN[corner] * curvature > 0.0
        turned = 12.0 * time / CIRCUMFERENCE_M
        ripple = extra * rng.normal(size=time.size) + wave * np.sin(2.0 * np.pi * turned)
        rows[row] *= 1.0 + np.where(outer, ripple, 0.0)
    return analyse(log_from(time, rows), Vehicle(circumference_m=CIRCUMFERENCE_M))


def _values(analysis: Analysis) -> dict[Corner, Measurement]:
    found, ratios = {}, measure_load_rest_ratios(analysis)
    for row, corner in enumerate(CORNERS):
        one = ratios[row]
        assert isinstance(one, Measurement)
        found[corner] = one
    return found


@pytest.mark.parametrize("corner", CORNERS)
def test_the_ratio_of_a_loaded_wheel_is_that_of_its_scatter(
    corner: Corner, log_from: Callable[..., SpeedLog]
) -> None:
    """log2((s_outer + f) / (s_inner + f)), f = 0.001, s the scatter against the middle of three wheels."""
    got = _values(_drive(log_from, corner=corner, extra=0.005))
    inner = NOISE * float(np.sqrt(1.0 + MEDIAN_OF_THREE))
    outer = float(np.hypot(inner, 0.005))
    assert got[corner].value == pytest.approx(np.log2((outer + 0.001) / (inner + 0.001)), abs=0.2)
    for other in CORNERS:
        if other != corner:
            assert abs(got[other].value) < max(2.0 * got[other].std_uncertainty, 0.15)


def test_a_rougher_road_in_left_curves_is_no_effect_of_load(log_from: Callable[..., SpeedLog]) -> None:
    for one in _values(_drive(log_from, left_roughness=3.0)).values():
        assert abs(one.value) < 0.15


def test_a_wave_of_one_turn_is_left_out(log_from: Callable[..., SpeedLog]) -> None:
    assert abs(_values(_drive(log_from, corner="FL", wave=0.006))["FL"].value) < 0.25


@pytest.mark.parametrize("curvature_radpm", [0.0, 0.002])
def test_without_side_load_nothing_is_said(curvature_radpm: float, log_from: Callable[..., SpeedLog]) -> None:
    analysis = _drive(log_from, corner="FL", extra=0.005, curvature_radpm=curvature_radpm)
    assert all(isinstance(one, NotMeasurable) for one in measure_load_rest_ratios(analysis))


def test_windows_give_the_variance_beside_parabola_and_wave() -> None:
    """Unbiased against the known variance; exactly nothing where nothing else is there."""
    rng = np.random.default_rng(1)
    starts = np.arange(400) * 40
    turned = 0.11 * np.arange(16_000, dtype=np.float64)
    along = np.tile(np.linspace(-1.0, 1.0, 40), 400)
    clean = 0.002 + 0.001 * along + 0.003 * along**2 + 0.004 * np.cos(2.0 * np.pi * turned + 0.7)
    assert np.allclose(fit_windows(turned, clean, starts)[1], 0.0, atol=1e-12)
    _, noisy = fit_windows(turned, clean + 0.002 * rng.normal(size=turned.size), starts)
    assert float(noisy.mean()) == pytest.approx(4e-6, rel=0.05)


def test_windows_agree_with_plain_least_squares() -> None:
    rng = np.random.default_rng(2)
    turned = np.sort(rng.uniform(0.0, 9.0, 60))
    ratio = 0.01 * rng.normal(size=60)
    along = 2.0 * (turned - turned[0]) / (turned[-1] - turned[0]) - 1.0
    angle = 2.0 * np.pi * turned
    columns = np.stack((np.ones(60), along, along**2, np.cos(angle), np.sin(angle)), axis=1)
    left = np.linalg.lstsq(columns, ratio)[1][0] / 55.0
    assert fit_windows(turned, ratio, np.array([0]))[1][0] == pytest.approx(left, rel=1e-6)
