"""Faults built into recordings: nothing changes without one, and each shows as it should."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

import numpy as np
import pytest

from triage.calibration import __main__ as command
from triage.calibration.ensemble import Case, simulate_case
from triage.calibration.real_drives import RealDrive, rebuild_drive
from triage.calibration.seeded_faults import draw_seeded_cases, measure_seeded_case, seed_fault
from triage.calibration.trace import NO_TRACE
from triage.corners import CORNERS, Corner, Place
from triage.errors import SettingsError
from triage.evidence.rulebook import load_rulebook
from triage.logs.reading import read_log
from triage.run import run_triage
from triage.simulator.faults import FAULT_MODELS
from triage.simulator.road_test import RoadTest
from triage.speed_log import Channel, SpeedLog

DATA = Path(__file__).parents[3] / "shared" / "data"
REAL = ("highway_83hz/wheels.csv", "recorder_gaps/wheels.csv")
needs_real_logs = pytest.mark.skipif(not DATA.is_dir(), reason="the real logs (../shared/data) are not here")


@cache
def _healthy_test() -> RoadTest:
    """A healthy road test, taken for a recording: what its wheels really did is known here."""
    return simulate_case(Case("no-fault-found", "vehicle", 0.0, 90.0, 4))


@cache
def _drive() -> RealDrive:
    return rebuild_drive(_healthy_test().log)


@cache
def _real(name: str) -> RealDrive:
    return rebuild_drive(read_log([DATA / name]))


def _case(cause: str, corner: Place, seed: int = 3, severity: float = 0.5) -> Case:
    return Case(cause, corner, severity, 90.0, seed, unseen=True)


def _difference_mps(log: SpeedLog, other: SpeedLog, corner: Corner) -> np.ndarray:
    return log.wheels[corner].speed_mps - other.wheels[corner].speed_mps


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_no_fault_leaves_the_speeds_within_the_units_error(seed: int) -> None:
    """Averaging and filter of up to 0.1 s lag behind; an acceleration of 3 m/s2 makes 0.3 m/s of that."""
    log = _healthy_test().log
    again = seed_fault(_drive(), _case("no-fault-found", "vehicle", seed))
    for corner in CORNERS:
        np.testing.assert_array_equal(again.wheels[corner].time_s, log.wheels[corner].time_s)
        difference = _difference_mps(again, log, corner)
        assert np.nanstd(difference) < 0.3
        assert abs(np.nanmean(difference[log.wheels[corner].speed_mps > 2.0])) < 0.05
        step = log.wheels[corner].resolution_mps
        counts = again.wheels[corner].speed_mps[~again.wheels[corner].invalid] / step
        np.testing.assert_allclose(counts, np.round(counts), atol=1e-6)


def test_the_same_seed_gives_the_same_log_and_another_another_unit() -> None:
    one, same = (seed_fault(_drive(), _case("encoder-damage", "FL")) for _ in range(2))
    other = seed_fault(_drive(), _case("encoder-damage", "FL", seed=4))
    assert not np.any(_difference_mps(one, same, "FL"))
    assert np.any(_difference_mps(one, other, "FL"))


@pytest.mark.parametrize("cause", [model.cause for model in FAULT_MODELS if model.where == "corner"])
def test_a_fault_at_one_wheel_leaves_the_others_alone(cause: str) -> None:
    healthy = seed_fault(_drive(), _case("no-fault-found", "vehicle", seed=8))
    faulty = seed_fault(_drive(), _case(cause, "RL", seed=8))
    others: tuple[Corner, ...] = ("FL", "FR", "RR")
    for corner in others:
        np.testing.assert_array_equal(_difference_mps(faulty, healthy, corner), 0.0)


def test_another_tyre_reads_by_its_own_ratio() -> None:
    drive = _drive()
    case = _case("tyre-size", "FR", severity=1.0)
    healthy = seed_fault(drive, replace(case, cause="no-fault-found", corner="vehicle"))
    faulty = seed_fault(drive, case)
    fast = healthy.wheels["FR"].speed_mps > 8.0
    ratio = faulty.wheels["FR"].speed_mps[fast] / healthy.wheels["FR"].speed_mps[fast]
    assert abs(np.median(ratio) - 1.0) == pytest.approx(0.05, abs=0.02)
    assert np.std(ratio) < 0.02


def test_what_tells_of_the_healthy_wheel_is_left_out() -> None:
    log = _healthy_test().log
    counter = Channel(np.array([0.0, 1.0]), np.array([0.0, 48.0]), "counter")
    told = replace(log, channels={**log.channels, "pulses_FL": counter})
    again = seed_fault(replace(_drive(), log=told), _case("air-gap", "FL"))
    assert "pulses_FL" not in again.channels
    assert again.edges == {}


def test_every_cause_and_corner_is_drawn_equally_often() -> None:
    tasks = draw_seeded_cases([_drive(), _drive()], 4, severity=0.25, series=1)
    assert len(tasks) == 2 * 4 * len(FAULT_MODELS)
    assert {case.severity for _, case in tasks} == {0.25}
    gaps = [case.corner for place, case in tasks if case.cause == "air-gap" and place == 0]
    assert sorted(gaps) == sorted(CORNERS)
    assert len({case.seed for _, case in tasks}) == len(tasks)


def test_a_log_without_driving_is_refused() -> None:
    log = _healthy_test().log
    still = {
        corner: replace(trace, speed_mps=np.zeros(trace.time_s.size)) for corner, trace in log.wheels.items()
    }
    with pytest.raises(SettingsError, match="hardly moves"):
        rebuild_drive(replace(log, wheels=still))


@needs_real_logs
@pytest.mark.parametrize("name", REAL)
def test_a_real_drive_without_a_fault_stays_healthy(name: str) -> None:
    for seed in (1, 2):
        log = seed_fault(_real(name), _case("no-fault-found", "vehicle", seed))
        for corner in CORNERS:
            assert np.nanstd(_difference_mps(log, _real(name).log, corner)) < 0.3
        result = run_triage(log, load_rulebook())
        blamed = [line.probability for line in result.posterior.ranking if line.hypothesis.corner in CORNERS]
        assert max(blamed) < 0.3


@needs_real_logs
def test_bearing_play_leaves_no_trace_on_a_road_without_curves() -> None:
    drives = [_real(REAL[0])]
    hidden = measure_seeded_case(drives, (0, _case("bearing-play", "FL")))
    seen = measure_seeded_case(drives, (0, _case("encoder-damage", "FL")))
    assert hidden.traits == (str(DATA / REAL[0]), NO_TRACE)
    assert seen.traits == (str(DATA / REAL[0]),)


@needs_real_logs
def test_the_command_evaluates_real_drives(capsys: pytest.CaptureFixture[str]) -> None:
    files = [str(DATA / name) for name in REAL[:1]]
    assert command.main(["--evaluate", "--per-cause", "1", "--workers", "1", "--real-drive", *files]) == 0
    out = capsys.readouterr().out
    assert "no trace" in out
    assert "expected calibration error" in out
