from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from triage.speed_log import SpeedLog, SpeedTrace
from ui.presenters.traces import (
    FITTED_SAMPLES,
    TraceLine,
    build_divergence_lines,
    build_speed_lines,
    fit_range,
    in_unit,
    values_at,
)
from ui.state.opening import Opened


def log_of(time_s: list[float], speed_mps: list[float]) -> SpeedLog:
    speed = np.array(speed_mps)
    trace = SpeedTrace(np.array(time_s), speed, np.isnan(speed), 0.0, "a", "m/s")
    return SpeedLog("a.csv", "table (csv)", None, dict.fromkeys(("FL", "FR", "RL", "RR"), trace))


def test_speeds_are_in_the_unit_asked_for() -> None:
    lines = build_speed_lines(log_of([0.0, 0.1], [10.0, 20.0]))
    assert values_at(lines, 0.1)["FL"] == pytest.approx(72.0)
    # 1 mile = 1.609344 km, exact
    assert values_at(in_unit(lines, "mph"), 0.1)["FL"] == pytest.approx(72.0 / 1.609344)
    assert values_at(in_unit(lines, "m/s"), 0.1)["FL"] == pytest.approx(20.0)


def test_lines_are_views_on_the_recording() -> None:
    log = log_of([0.0, 0.1], [10.0, 20.0])
    line = build_speed_lines(log)[1]
    assert np.shares_memory(line.value, log.wheels["FR"].speed_mps)
    assert np.shares_memory(line.time_s, log.wheels["FR"].time_s)


@pytest.mark.parametrize("count", [0, 1])
def test_hardly_any_samples(count: int) -> None:
    line = build_speed_lines(log_of([0.0][:count], [1.0][:count]))[0]
    assert line.time_s.size == line.value.size == count
    assert line.longest_step_s > 0.0


def test_divergence_is_in_percent_and_open_at_standstill(opened: Opened) -> None:
    line = build_divergence_lines(opened.result.conditioned)[0]
    assert not np.isfinite(line.value[line.time_s < 4.0]).any()
    assert line.factor * np.nanmin(line.value) == pytest.approx(-100.0)


def test_range_fills_the_plot_and_leaves_out_one_spike() -> None:
    values = np.linspace(0.0, 10.0, 2001)
    values[1000] = 1e6
    line = TraceLine("FL", np.linspace(0.0, 60.0, 2001), values)
    low, high = fit_range([line], 0.0, 60.0, least_height=1.0)
    assert low == pytest.approx(-0.6, abs=0.05)
    assert high == pytest.approx(10.6, abs=0.05)


def test_range_looks_only_at_what_is_in_view() -> None:
    line = TraceLine("FL", np.arange(100.0), np.arange(100.0))
    low, high = fit_range([line], 50.0, 60.0, least_height=1.0)
    assert low == pytest.approx(49.4, abs=0.1)
    assert high == pytest.approx(60.6, abs=0.1)


def test_range_of_a_flat_line_or_nothing_has_the_least_height() -> None:
    flat = TraceLine("FL", np.arange(9.0), np.full(9, 5.0))
    low, high = fit_range([flat], 0.0, 9.0, least_height=4.0)
    assert (low + high) / 2 == pytest.approx(5.0)
    assert high - low >= 4.0
    assert fit_range([], 0.0, 1.0, least_height=4.0) == (-2.0, 2.0)
    assert fit_range([flat], 20.0, 30.0, least_height=4.0) == (-2.0, 2.0)


def test_a_height_for_a_day_is_chosen_from_samples_spread_over_it() -> None:
    values = np.tile([1.0, 2.0, 3.0, 4.0, 5.0], 100_000)
    line = TraceLine("FL", np.arange(values.size) / 10.0, values)
    assert values.size > 10 * FITTED_SAMPLES
    assert fit_range([line], 0.0, 50_000.0, least_height=1.0) == pytest.approx((0.76, 5.24))


def test_values_are_the_last_ones_so_far() -> None:
    line = TraceLine("FL", np.array([1.0, 2.0, 3.0]), np.array([10.0, 20.0, 30.0]), longest_step_s=2.5)
    empty = replace(line, corner="FR", time_s=np.empty(0), value=np.empty(0))
    assert values_at([line, empty], 2.5) == {"FL": 20.0}
    assert values_at([line], 0.5) == {}


def test_there_is_no_value_in_a_hole() -> None:
    line = TraceLine("FL", np.array([1.0, 1.01, 9.0]), np.array([10.0, np.nan, 30.0]), longest_step_s=0.04)
    assert values_at([line], 1.005) == {"FL": 10.0}
    assert values_at([line], 1.02) == {}, "marked as missing"
    assert values_at([line], 5.0) == {}, "nothing recorded"


def test_no_room_is_spent_under_the_floor() -> None:
    def fit(value: float) -> tuple[float, float]:
        line = TraceLine("FL", np.arange(9.0), np.full(9, value))
        return fit_range([line], 0.0, 9.0, least_height=4.0, floor=0.0)

    assert fit(0.0) == pytest.approx((-0.24, 4.24)), "a car that stands has no speed of -2"
    assert fit(50.0) == pytest.approx((47.76, 52.24))
    assert fit(-3.0)[0] < -3.0, "what breaks the rule must still be seen"
