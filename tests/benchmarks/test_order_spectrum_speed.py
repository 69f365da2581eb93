"""The spectrum over distance, held against a least-squares periodogram on the same grid, and its error."""

from __future__ import annotations

import time
from collections.abc import Callable

import numpy as np
import pytest
from pytest_benchmark.fixture import BenchmarkFixture
from scipy.signal import lombscargle

from triage.signals.order_spectrum import amplitude_spectrum, amplitude_spectrum_direct

SAMPLES = 20_000
GRID = 4_000
CIRCUMFERENCE_M = 2.0
AMPLITUDE = 0.01


def test_spectrum_against_periodogram(
    benchmark: BenchmarkFixture, note: Callable[[str, str, str], None]
) -> None:
    rng = np.random.default_rng(3)
    distance_m = np.sort(rng.uniform(0.0, 4000.0, SAMPLES))
    value = AMPLITUDE * np.cos(2.0 * np.pi * distance_m / CIRCUMFERENCE_M) + rng.normal(0.0, 0.003, SAMPLES)
    step_per_m = 1.0 / 4000.0

    def spectrum() -> np.ndarray:
        return amplitude_spectrum(distance_m, value, np.ones(SAMPLES), step_per_m=step_per_m, count=GRID)

    ours = np.abs(benchmark.pedantic(spectrum, rounds=10, warmup_rounds=2))
    grid_radpm = 2.0 * np.pi * step_per_m * np.arange(1, GRID)
    begin = time.perf_counter()
    power = lombscargle(distance_m, value, grid_radpm)
    other_s = time.perf_counter() - begin
    ratio = other_s / benchmark.stats.stats.min
    note("order spectrum: scipy.signal.lombscargle / ours", f"{ratio:.0f}", ">= 100")
    weight = np.ones(SAMPLES)
    exact = amplitude_spectrum_direct(distance_m, value, weight, step_per_m=step_per_m, count=GRID)
    error = float(np.linalg.norm(np.abs(spectrum() - exact)) / np.linalg.norm(exact))
    note("order spectrum: relative error against the plain sum", f"{error:.1e}", "<= 1e-6")
    line = round(1.0 / (CIRCUMFERENCE_M * step_per_m))
    assert ours[line] == pytest.approx(AMPLITUDE, rel=0.02)
    assert np.sqrt(4.0 * power[line - 1] / SAMPLES) == pytest.approx(ours[line], rel=0.02)
    assert ratio >= 100.0
    assert error <= 1e-6
