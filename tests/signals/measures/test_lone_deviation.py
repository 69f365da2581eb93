"""Dips and peaks that a wheel has for itself."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from triage.signals.analysis import analyse
from triage.signals.measurement import Measurement, NotMeasurable
from triage.signals.measures.lone_deviation import (
    measure_lone_dip_depth,
    measure_lone_dip_rate,
    measure_lone_dip_scatter,
    measure_lone_peak_rate,
)
from triage.speed_log import FloatArray, SpeedLog

Edit = Callable[..., SpeedLog]
PLACES = 12


def _moments(speed: FloatArray, *, count: int = PLACES) -> np.ndarray:
    """Well separated places of brisk driving."""
    fast = np.flatnonzero(speed > 8.0)
    return fast[:: max(fast.size // count, 1)][:count]


def _scaled(factor: float, row: int) -> Callable[..., list[FloatArray]]:
    def change(rows: list[FloatArray], _time: FloatArray) -> list[FloatArray]:
        for place in _moments(rows[row]):
            rows[row][place] *= factor
        return rows

    return change


@pytest.mark.parametrize("row", [0, 3])
def test_single_short_samples_are_counted_one_by_one(healthy: SpeedLog, edited: Edit, row: int) -> None:
    """A lost pole of six in a cycle takes a sixth off one reading."""
    analysis = analyse(edited(healthy, _scaled(1.0 - 1.0 / 6.0, row)))
    assert analysis.lone.dips[row].size >= PLACES - 2
    got = measure_lone_dip_rate(analysis, row)
    assert isinstance(got, Measurement)
    minutes = analysis.losses.moving[row].sum() * analysis.clock.period_s / 60.0
    assert got.value == pytest.approx(PLACES / minutes, abs=3.0 * got.std_uncertainty)
    for other in {0, 1, 2, 3} - {row}:
        assert analysis.lone.dips[other].size <= 2


def test_single_long_samples_are_peaks(healthy: SpeedLog, edited: Edit) -> None:
    analysis = analyse(edited(healthy, _scaled(1.2, 1)))
    got = measure_lone_peak_rate(analysis, 1)
    assert isinstance(got, Measurement)
    assert analysis.lone.peaks[1].size >= PLACES - 2
    assert measure_lone_dip_rate(analysis, 1).value < 1.5  # type: ignore[union-attr]


def test_a_swing_both_ways_is_the_road(healthy: SpeedLog, edited: Edit) -> None:
    """A hopping wheel reads long and short in turn, at 9 to 15 Hz."""

    def hop(rows: list[FloatArray], _time: FloatArray) -> list[FloatArray]:
        swing = 0.2 * np.exp(-np.arange(30) / 12.0) * np.sin(2.0 * np.pi * 12.0 * np.arange(30) / 100.0)
        for place in _moments(rows[2]):
            rows[2][place : place + 30] *= 1.0 + swing
        return rows

    analysis = analyse(edited(healthy, hop))
    assert analysis.lone.dips[2].size + analysis.lone.peaks[2].size <= 3


def test_what_two_wheels_share_is_the_road(healthy: SpeedLog, edited: Edit) -> None:
    def both(rows: list[FloatArray], _time: FloatArray) -> list[FloatArray]:
        for place in _moments(rows[0]):
            rows[0][place] *= 0.85
            rows[2][place + 10] *= 0.85
        return rows

    analysis = analyse(edited(healthy, both))
    assert analysis.lone.dips[0].size <= 2
    assert analysis.lone.dips[2].size <= 2


def test_a_short_log_says_what_is_missing(log_from: Callable[..., SpeedLog]) -> None:
    time_s = np.arange(0.0, 5.0, 0.01)
    got = measure_lone_dip_rate(analyse(log_from(time_s, [np.full(time_s.size, 10.0)] * 4)), 0)
    assert isinstance(got, NotMeasurable)


@pytest.mark.parametrize("part", [0.1, 0.25, 0.8])
def test_the_depth_is_the_part_that_was_taken_away(healthy: SpeedLog, edited: Edit, part: float) -> None:
    """One edge of n missed in a cycle takes 1/n off the reading (pulse arithmetic)."""
    got = measure_lone_dip_depth(analyse(edited(healthy, _scaled(1.0 - part, 2))), 2)
    assert isinstance(got, Measurement)
    assert got.value == pytest.approx(100.0 * part, abs=max(3.0 * got.std_uncertainty, 2.0))


@pytest.mark.parametrize(("bunched", "low", "high"), [(False, 0.0, 1.7), (True, 3.0, 60.0)])
def test_clusters_spread_more_than_chance(
    healthy: SpeedLog, edited: Edit, bunched: bool, low: float, high: float
) -> None:
    def lose(rows: list[FloatArray], _time: FloatArray) -> list[FloatArray]:
        fast = np.flatnonzero(rows[1] > 6.0)
        places = fast[2000:4000:50] if bunched else fast[:: fast.size // 40][:40]
        rows[1][places] *= 0.8
        return rows

    got = measure_lone_dip_scatter(analyse(edited(healthy, lose)), 1)
    assert isinstance(got, Measurement)
    assert low <= got.value < high


def test_few_dips_have_neither_depth_nor_clusters(healthy: SpeedLog) -> None:
    analysis = analyse(healthy)
    assert isinstance(measure_lone_dip_depth(analysis, 0), NotMeasurable)
    assert isinstance(measure_lone_dip_scatter(analysis, 0), NotMeasurable)


@pytest.mark.parametrize(("missing_mm", "counted"), [(6.0, False), (18.0, True)])
def test_a_dip_counts_when_as_much_way_is_missing_as_a_pole_has(
    missing_mm: float, counted: bool, log_from: Callable[..., SpeedLog]
) -> None:
    """The finest of usual rings, 100 poles on 1.8 m, loses 18 mm with a pole; a tyre slips less."""
    time = 0.01 * np.arange(6000)
    rows = 12.0 * (1.0 + 0.001 * np.random.default_rng(8).normal(size=(4, time.size)))
    places = np.arange(300, 5700, 450)
    rows[2, places] -= missing_mm / 1000.0 / 0.01
    analysis = analyse(log_from(time, rows))
    assert analysis.lone.dips[2].size == (places.size if counted else 0)
