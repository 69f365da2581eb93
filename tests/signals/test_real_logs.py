"""Logs of healthy cars recorded by other people: nothing may be blamed, and the revolution must be right."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.errors import SignalMappingError
from triage.evidence.rulebook import load_rulebook
from triage.logs.options import ReadOptions
from triage.logs.reading import read_log
from triage.run import TriageResult, run_triage
from triage.signals.analysis import analyse
from triage.signals.revolution_line import RevolutionLine
from triage.speed_log import SpeedLog

SHARED = Path(__file__).parents[3] / "shared"
DATA = SHARED / "data"

pytestmark = pytest.mark.skipif(not DATA.is_dir(), reason="the real logs (../shared/data) are not here")


@cache
def _log(name: str, database: str = "") -> SpeedLog:
    options = ReadOptions(databases=(str(DATA / database),)) if database else ReadOptions()
    return read_log([DATA / name], options)


@cache
def _result(name: str, database: str = "") -> TriageResult:
    return run_triage(_log(name, database), load_rulebook())


HIGHWAY = [("highway_83hz/wheels.csv", ""), ("highway_83hz/bus.blf", "highway_83hz/bus.dbc")]


def _most_blamed(result: TriageResult) -> float:
    return max(line.probability for line in result.posterior.ranking if line.hypothesis.corner in CORNERS)


@pytest.mark.parametrize(("name", "database"), HIGHWAY)
def test_four_wheels_lock_at_the_length_of_the_cars_tyres(name: str, database: str) -> None:
    """2.161 m, within 1 % of 3.05 x 715.7 mm = 2.183 m for the car's tyre marking 235/55 R18."""
    assert pytest.approx(2.161, rel=0.0105) == 3.05e-3 * 715.7
    for line in analyse(_log(name, database)).lines:
        assert isinstance(line, RevolutionLine)
        assert line.circumference_m == pytest.approx(2.161, rel=0.005)
        assert abs(line.circumference_m - 2.161) < 3.0 * line.circumference_std_m
        assert 0.0006 <= line.amplitude_ratio[0] <= 0.0014
        assert line.false_alarm_probability < 1e-5


@pytest.mark.parametrize(("name", "database"), HIGHWAY)
def test_the_healthy_car_on_the_highway_is_healthy(name: str, database: str) -> None:
    result = _result(name, database)
    assert result.posterior.first.hypothesis.cause == "no-fault-found"
    assert _most_blamed(result) < 0.1


def test_table_and_frames_of_one_drive_say_the_same() -> None:
    table, frames = (_log(name, database) for name, database in HIGHWAY)
    for corner in CORNERS:
        one, other = table.wheels[corner], frames.wheels[corner]
        assert one.speed_mps.size == other.speed_mps.size
        np.testing.assert_allclose(one.speed_mps, other.speed_mps, atol=0.01 / 3.6)
    measured = [
        {(m.id, m.corner): m for m in _result(name, database).measurements} for name, database in HIGHWAY
    ]
    assert set(measured[0]) == set(measured[1])
    for key, one in measured[0].items():
        other = measured[1][key]
        allowed = max(0.3 * one.std_uncertainty, 1e-6)
        assert other.value == pytest.approx(one.value, abs=allowed), key


def test_gaps_of_the_recorder_blame_no_wheel_and_are_said() -> None:
    result = _result("recorder_gaps/wheels.csv")
    assert _most_blamed(result) < 0.3
    assert any(notice.code == "gaps-in-log" and notice.count >= 400 for notice in result.log.notices)
    for one in result.measurements:
        if one.id in ("drop-out-rate", "dead-share"):
            assert one.value == 0.0, one


def test_brake_control_at_work_blames_no_wheel() -> None:
    result = _result("braking_slip/wheels.csv")
    assert _most_blamed(result) < 0.3
    assert result.posterior.first.hypothesis.corner == "vehicle"


def test_a_standing_car_says_which_driving_is_missing() -> None:
    result = _result("standstill_sweep/wheels.csv")
    assert result.measurements == ()
    assert _most_blamed(result) < 0.3
    needed = {one.id: one.needed for one in result.not_measurable}
    assert "driving above walking pace" in needed["drop-out-rate"]
    assert "curves to each side" in needed["side-load-contrast"]
    assert "stops and pull-aways" in needed["cut-off-speed"]
    assert "straight driving" in needed["line-amplitude"]


def test_frames_without_a_database_are_refused_with_a_reason() -> None:
    with pytest.raises(SignalMappingError) as refusal:
        _log("two_bus_standstill/frames.csv.gz")
    assert refusal.value.exit_code == 3
    assert refusal.value.hint


@pytest.mark.skipif(
    not (SHARED / "cases").is_dir(), reason="the collected cases (../shared/cases) are not here"
)
def test_a_tight_bend_is_no_fault_of_a_wheel() -> None:
    result = run_triage(read_log([SHARED / "cases/o25-tight-left-bend/bend.csv"]), load_rulebook())
    assert result.posterior.first.hypothesis.cause == "no-fault-found"
    assert _most_blamed(result) < 0.1


@pytest.mark.skipif(
    not (SHARED / "cases").is_dir(), reason="the collected cases (../shared/cases) are not here"
)
def test_a_wheel_that_keeps_its_value_is_measured_as_stuck() -> None:
    result = run_triage(read_log([SHARED / "cases/o21-wheel-stuck-at-last-value/stuck.csv"]), load_rulebook())
    stuck = {one.corner: one for one in result.measurements if one.id == "stuck-share"}
    assert stuck["FR"].value > 10.0
    assert any(first == pytest.approx(15.32, abs=1.0) for first, _ in stuck["FR"].spans)
    assert all(one.value == 0.0 for corner, one in stuck.items() if corner != "FR")
