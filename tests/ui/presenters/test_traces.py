from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from triage.speed_log import SpeedLog, SpeedTrace
from ui.presenters.traces import (
    TraceLine,
    build_divergence_lines,
    build_speed_lines,
    fit_range,
    thin_line,
    values_at,
)
from ui.state.opening import Opened


def log_of(time_s: list[float], speed_mps: list[float]) -> SpeedLog:
    speed = np.array(speed_mps)
    trace = SpeedTrace(np.array(time_s), speed, np.isnan(speed), 0.0, "a", "m/s")
    return SpeedLog("a.csv", "table (csv)", None, dict.fromkeys(("FL", "FR", "RL", "RR"), trace))


def test_speeds_are_in_kmh() -> None:
    line = build_speed_lines(log_of([0.0, 0.1], [10.0, 20.0]))[0]
    assert line.value == pytest.approx([36.0, 72.0])


def test_missing_samples_leave_the_line_open_and_never_nan() -> None:
    line = build_speed_lines(log_of([0.0, 0.01, 0.02, 0.03], [1.0, float("nan"), 1.0, 1.0]))[2]
    assert line.corner == "RL"
    assert line.time_s.tolist() == [0.0, 0.02, 0.03]
    assert line.joined.tolist() == [False, True, False]


def test_a_hole_in_time_is_not_bridged() -> None:
    line = build_speed_lines(log_of([0.0, 0.05, 0.10, 0.40, 0.45, 0.50], [1.0] * 6))[0]
    assert line.joined.tolist() == [True, True, False, True, True, False]


def test_jitter_of_the_recorder_is_no_hole() -> None:
    line = build_speed_lines(log_of([0.0, 0.01, 0.02, 0.055, 0.065], [1.0] * 5))[0]
    assert line.joined.tolist() == [True, True, True, True, False]


@pytest.mark.parametrize("count", [0, 1])
def test_hardly_any_samples(count: int) -> None:
    line = build_speed_lines(log_of([0.0][:count], [1.0][:count]))[0]
    assert line.time_s.size == line.value.size == line.joined.size == count


def test_divergence_is_in_percent_and_open_at_standstill(opened: Opened) -> None:
    result = opened.result
    line = build_divergence_lines(result.conditioned)[0]
    assert line.time_s[0] > 4.0
    assert line.value.min() == pytest.approx(-100.0)
    assert np.isfinite(line.value).all()


def test_range_fills_the_plot_and_leaves_out_one_spike() -> None:
    values = np.linspace(0.0, 10.0, 2001)
    values[1000] = 1e6
    line = TraceLine("FL", np.linspace(0.0, 60.0, 2001), values, np.ones(2001, dtype=bool))
    low, high = fit_range([line], 0.0, 60.0, least_height=1.0)
    assert low == pytest.approx(-0.6, abs=0.05)
    assert high == pytest.approx(10.6, abs=0.05)


def test_range_looks_only_at_what_is_in_view() -> None:
    line = TraceLine("FL", np.arange(100.0), np.arange(100.0), np.ones(100, dtype=bool))
    low, high = fit_range([line], 50.0, 60.0, least_height=1.0)
    assert low == pytest.approx(49.4, abs=0.1)
    assert high == pytest.approx(60.6, abs=0.1)


def test_range_of_a_flat_line_or_nothing_has_the_least_height() -> None:
    flat = TraceLine("FL", np.arange(9.0), np.full(9, 5.0), np.ones(9, dtype=bool))
    low, high = fit_range([flat], 0.0, 9.0, least_height=4.0)
    assert (low + high) / 2 == pytest.approx(5.0)
    assert high - low >= 4.0
    assert fit_range([], 0.0, 1.0, least_height=4.0) == (-2.0, 2.0)
    assert fit_range([flat], 20.0, 30.0, least_height=4.0) == (-2.0, 2.0)


def test_values_are_the_last_ones_so_far() -> None:
    line = TraceLine("FL", np.array([1.0, 2.0, 3.0]), np.array([10.0, 20.0, 30.0]), np.ones(3, dtype=bool))
    empty = replace(line, corner="FR", time_s=np.empty(0), value=np.empty(0), joined=np.empty(0, dtype=bool))
    assert values_at([line, empty], 2.5) == {"FL": 20.0}
    assert values_at([line], 0.5) == {}


def test_an_hour_is_prepared_at_once(log_from: Callable[..., SpeedLog]) -> None:
    log = log_from(100.0, 3600.0)
    assert sum(line.time_s.size for line in build_speed_lines(log)) > 1_439_000


def full_line(time_s: np.ndarray, value: np.ndarray, joined: np.ndarray | None = None) -> TraceLine:
    return TraceLine("FL", time_s, value, np.ones(time_s.size, dtype=bool) if joined is None else joined)


def test_a_thinned_line_keeps_lowest_and_highest_of_every_column() -> None:
    time_s = np.arange(100_000) / 100.0
    value = np.random.default_rng(1).normal(0.0, 1.0, time_s.size)
    seen = thin_line(full_line(time_s, value), 0.0, 1000.0, columns=500)
    assert seen.time_s.size == 2000
    assert (np.diff(seen.time_s) >= 0.0).all()
    blocks = value.reshape(500, 200)
    thinned = seen.value.reshape(500, 4)
    assert thinned.min(axis=1) == pytest.approx(blocks.min(axis=1))
    assert thinned.max(axis=1) == pytest.approx(blocks.max(axis=1))
    assert thinned[:, 0] == pytest.approx(blocks[:, 0])
    assert thinned[:, 3] == pytest.approx(blocks[:, -1])


def test_a_thinned_line_does_not_bridge_a_hole() -> None:
    time_s = np.concatenate((np.arange(0.0, 40.0, 0.01), np.arange(60.0, 100.0, 0.01)))
    joined = np.ones(time_s.size, dtype=bool)
    joined[3999] = joined[-1] = False
    for columns in (99, 100, 101, 137):
        seen = thin_line(full_line(time_s, time_s.copy(), joined), 0.0, 100.0, columns=columns)
        inside = (seen.time_s > 40.5) & (seen.time_s < 59.5)
        assert not inside.any()
        before = np.flatnonzero(seen.time_s <= 40.5)[-1]
        assert not seen.joined[before]


def test_many_holes_do_not_wipe_a_thinned_line_out() -> None:
    time_s = np.arange(360_000) / 100.0
    joined = np.arange(time_s.size) % 20 != 0
    seen = thin_line(full_line(time_s, np.sin(time_s), joined), 0.0, 3600.0, columns=800)
    assert seen.time_s.size == 3200


def test_a_short_line_is_cut_to_the_view_and_one_sample_beyond() -> None:
    time_s = np.arange(100.0)
    seen = thin_line(full_line(time_s, time_s), 20.5, 30.5, columns=800)
    assert seen.time_s.tolist() == list(range(20, 32))


def test_nothing_in_view() -> None:
    empty = full_line(np.empty(0), np.empty(0))
    assert thin_line(empty, 0.0, 1.0, columns=10).time_s.size == 0
    far = full_line(np.arange(10.0), np.arange(10.0))
    assert thin_line(far, 50.0, 60.0, columns=10).time_s.tolist() == [9.0]


def test_no_room_is_spent_under_the_floor() -> None:
    def fit(value: float) -> tuple[float, float]:
        line = TraceLine("FL", np.arange(9.0), np.full(9, value), np.ones(9, dtype=bool))
        return fit_range([line], 0.0, 9.0, least_height=4.0, floor=0.0)

    assert fit(0.0) == pytest.approx((-0.24, 4.24)), "a car that stands has no speed of -2"
    assert fit(50.0) == pytest.approx((47.76, 52.24))
    assert fit(-3.0)[0] < -3.0, "what breaks the rule must still be seen"
