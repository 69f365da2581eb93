from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from ui.presenters.cursor_reading import (
    driven_between,
    format_instant,
    format_reading,
    measure_between,
    read_at,
    signed,
)
from ui.presenters.plot_data import PlotData, build_plot_data
from ui.state.opening import Opened


@pytest.fixture
def data(opened: Opened) -> PlotData:
    return build_plot_data(opened.result)


def test_the_values_are_those_of_the_samples(data: PlotData) -> None:
    log = data.conditioned
    at = 900
    reading = read_at(data, float(log.time_s[at]), "m/s")
    assert reading.speed["RL"] == pytest.approx(log.speed_mps[2, at])
    assert reading.divergence_percent["RL"] == pytest.approx(100.0 * log.divergence_ratio[2, at])
    assert reading.manoeuvre == "left curve"
    in_mph = read_at(data, float(log.time_s[at]), "mph")
    assert in_mph.speed["RL"] == pytest.approx(log.speed_mps[2, at] / 0.44704)  # exact since 1959


def test_a_wheel_without_a_sample_has_no_value(data: PlotData) -> None:
    reading = read_at(data, 25.2, "km/h")
    assert "RR" not in reading.speed
    assert format_reading(reading, "RR") == "RR –\n–"
    assert set(reading.speed) == {"FL", "FR", "RL"}


def test_outside_the_recording_there_is_nothing(data: PlotData) -> None:
    reading = read_at(data, -5.0, "km/h")
    assert (reading.manoeuvre, reading.speed, reading.divergence_percent) == ("", {}, {})


def test_way_and_differences_between_two_instants(data: PlotData) -> None:
    # A car at a steady 10 m/s; FR reads 0.5 m/s too much, and once 3 m/s too little.
    log = data.conditioned
    expected = np.full(log.expected_mps.shape, 10.0)
    speed = expected.copy()
    speed[1] += 0.5
    speed[1, 1010] = 7.0
    good = np.ones(speed.shape, dtype=bool)
    steady = replace(
        log, speed_mps=speed, expected_mps=expected, reference_mps=expected[0], fresh=good, valid=good
    )
    data = replace(data, conditioned=steady)
    stretch = measure_between(data, float(log.time_s[1100]), float(log.time_s[1000]), "m/s")
    assert stretch.end_s - stretch.begin_s == pytest.approx(2.0)
    assert stretch.way_m == pytest.approx(20.0)
    assert stretch.hole_s == 0.0
    assert stretch.mean["FR"] == pytest.approx((100 * 0.5 - 3.0) / 101)
    assert stretch.extreme["FR"] == pytest.approx(-3.0)
    assert stretch.mean["FL"] == stretch.extreme["FL"] == 0.0
    in_kmh = measure_between(data, float(log.time_s[1000]), float(log.time_s[1100]), "km/h")
    assert in_kmh.extreme["FR"] == pytest.approx(-3.0 * 3.6)


def test_a_wheel_that_was_never_read_is_left_out(data: PlotData) -> None:
    stretch = measure_between(data, 25.1, 25.3, "km/h")
    assert set(stretch.mean) == set(stretch.extreme) == {"FL", "FR", "RL"}


def test_over_a_long_hole_no_way_is_added_up() -> None:
    time_s = np.array([0.0, 1.0, 11.0, 12.0, 13.0])
    assert driven_between(time_s, np.full(5, 10.0)) == pytest.approx((30.0, 10.0))
    assert driven_between(time_s[:2], np.array([np.nan, 10.0])) == (0.0, 0.0)
    assert driven_between(np.empty(0), np.empty(0)) == (0.0, 0.0)


def test_wording(data: PlotData) -> None:
    reading = read_at(data, 18.0, "km/h")
    assert format_instant(reading) == "18.000 s\nleft curve"
    first, second = format_reading(reading, "FL").splitlines()
    assert first.startswith("FL ")
    assert first.endswith(" km/h")
    assert second.endswith(" %")
    assert signed(-3.004, 2) == "\N{MINUS SIGN}3.00"
    assert signed(-0.004, 2) == "0.00"
    assert signed(0.3, 1) == "+0.3"
