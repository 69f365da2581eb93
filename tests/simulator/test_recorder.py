"""Mixed rates, pulse counters and edge times in the log and in written tables."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pandas as pd
import pytest

from triage.corners import CORNERS
from triage.simulator.equipment import Recorder, Setup
from triage.simulator.road_test import RoadTest, simulate_road_test, write_road_test
from triage.simulator.setup import draw_setup
from triage.simulator.table import write_edge_table

PULSES = tuple(f"pulses_{corner}" for corner in CORNERS)


def _setup(**changes: object) -> Setup:
    drawn = draw_setup(np.random.default_rng(11))
    recorder: Recorder = replace(
        drawn.recorder, rate_hz=100.0, lost_frame_ratio=0.0, gaps_per_min=0.0, rear_offset_s=0.0
    )
    unit = replace(drawn.unit, jump_reaction="none", method="timing", cycle_s=0.005, averaging_cycles=1)
    drive = replace(drawn.drive, legs=("town",), lead_in_s=5.0)
    return replace(
        drawn,
        recorder=replace(recorder, **changes),
        unit=unit,
        drive=drive,  # type: ignore[arg-type]
    )


def _test(setup: Setup, cause: str = "no-fault-found", *, severity: float = 0.0) -> RoadTest:
    corner = None if cause == "no-fault-found" else "FR"
    return simulate_road_test(
        cause=cause, corner=corner, severity=severity, duration_s=30.0, seed=5, setup=setup
    )


def test_an_axle_may_be_slower_than_the_other() -> None:
    log = _test(_setup(wheel_rate_hz=(100.0, 100.0, 20.0, 20.0), channels=("fault_RL", *PULSES))).log
    counts = [log.wheels[corner].time_s.size for corner in CORNERS]
    assert counts[0] / counts[2] == pytest.approx(5.0, rel=0.01)
    np.testing.assert_array_equal(log.wheels["RL"].time_s, log.wheels["RR"].time_s)
    assert log.channels["pulses_RL"].time_s.size == counts[2]
    assert log.channels["fault_RL"].time_s.size == counts[2]


def test_a_pause_of_the_recorder_strikes_wheels_of_every_rate() -> None:
    log = _test(_setup(wheel_rate_hz=(100.0, 100.0, 100.0, 50.0), gaps_per_min=8.0)).log
    fast, slow = log.wheels["FL"].time_s, log.wheels["RR"].time_s
    long = np.flatnonzero(np.diff(fast) > 0.15)
    assert long.size
    for gap in long:
        assert not np.any((slow > fast[gap] + 0.01) & (slow < fast[gap + 1] - 0.01))


def test_counters_in_the_log_never_fall_and_follow_the_speed() -> None:
    test = _test(_setup(channels=PULSES, pulse_modulus=255))
    setup = test.truth.setup
    for corner in CORNERS:
        count, trace = test.log.channels[f"pulses_{corner}"], test.log.wheels[corner]
        assert np.all(np.diff(count.value) >= 0.0)
        way_m = np.sum((trace.speed_mps[1:] + trace.speed_mps[:-1]) / 2.0 * np.diff(trace.time_s))
        edges_per_m = setup.encoder.edges_per_rev / setup.unit.circumference_m
        assert np.ptp(count.value) == pytest.approx(way_m * edges_per_m, rel=0.01)


def test_a_lost_tooth_is_missing_in_the_counter() -> None:
    setup = _setup(channels=PULSES)
    sound, sick = (_test(setup, cause, severity=1.0) for cause in ("no-fault-found", "encoder-damage"))
    turns = np.ptp(sick.truth.angle_rev("FR", np.array([0.0, 29.9])))
    lost = sound.log.channels["pulses_FR"].value[-1] - sick.log.channels["pulses_FR"].value[-1]
    assert 0.9 < lost / turns < 4.2
    np.testing.assert_array_equal(sound.log.channels["pulses_FL"].value, sick.log.channels["pulses_FL"].value)


def test_written_counters_start_again_at_the_modulus(tmp_path: Path) -> None:
    test = _test(_setup(channels=PULSES, pulse_modulus=255))
    path = tmp_path / "log.csv"
    write_road_test(test, path)
    column = pd.read_csv(path)["pulses_FL"].dropna().to_numpy(dtype=float)
    assert 250 <= column.max() <= 254
    assert column.min() == 0
    rebuilt = column[0] + np.concatenate(([0.0], np.cumsum(np.diff(column) % 255)))
    np.testing.assert_array_equal(rebuilt, test.log.channels["pulses_FL"].value)


def test_edges_stand_in_the_log_only_when_the_recorder_keeps_them() -> None:
    assert not _test(_setup()).log.edges
    test = _test(_setup(keeps_edges=True))
    assert set(test.log.edges) == set(CORNERS)
    np.testing.assert_array_equal(test.log.edges["RL"], test.edges["RL"])


def test_edge_table_pads_the_short_columns(tmp_path: Path) -> None:
    edges = {
        "FL": np.array([0.1, 0.2, 0.3]),
        "FR": np.array([0.25]),
        "RL": np.array([]),
        "RR": np.array([1.0]),
    }
    path = tmp_path / "edges.csv"
    write_edge_table(edges, path)  # type: ignore[arg-type]
    assert path.read_text().splitlines() == [
        "FL_edge_s,FR_edge_s,RL_edge_s,RR_edge_s",
        "0.1000000,0.2500000,,1.0000000",
        "0.2000000,,,",
        "0.3000000,,,",
    ]
