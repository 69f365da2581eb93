"""Logs of real cars, which lie outside the project."""

from __future__ import annotations

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.errors import SignalMappingError
from triage.logs import ReadOptions, read_log


def read(shared, folder: str, file: str, *, with_database: bool = False):
    base = shared / "data" / folder
    databases = (str(base / "bus.dbc"),) if with_database else ()
    return read_log([base / file], ReadOptions(databases=databases))


def codes(log) -> set[str]:
    return {notice.code for notice in log.notices}


@pytest.mark.parametrize(
    ("folder", "frames"),
    [("highway_83hz", "bus.blf"), ("recorder_gaps", "frames.csv.gz"), ("braking_slip", "frames.csv.gz")],
)
def test_table_and_frames_of_one_drive_give_the_same_speeds(shared, folder, frames) -> None:
    table, raw = read(shared, folder, "wheels.csv"), read(shared, folder, frames, with_database=True)
    for corner in CORNERS:
        a, b = table.wheels[corner], raw.wheels[corner]
        assert np.abs(a.speed_mps - b.speed_mps).max() * 3.6 < 0.01
        assert np.abs(np.diff(a.time_s) - np.diff(b.time_s)).max() < 0.01
        assert b.resolution_mps == pytest.approx(a.resolution_mps, rel=1e-3)


def test_highway(shared) -> None:
    log = read(shared, "highway_83hz", "bus.blf", with_database=True)
    assert log.wheels["FL"].valid_count == 4974
    assert {"steering_rad", "yaw_rate_radps", "lateral_mps2", "longitudinal_mps2", "reference_mps"} <= set(
        log.channels
    )
    reference = log.channels["reference_mps"]
    wheel = np.interp(reference.time_s, log.wheels["RL"].time_s, log.wheels["RL"].speed_mps)
    assert np.median(wheel / reference.value) == pytest.approx(1.0, abs=0.03)
    assert log.channels["fault_RR"].value.max() == 0


def test_recorder_gaps_are_gaps_of_the_log_and_the_brake_bit_is_not_used(shared) -> None:
    log = read(shared, "recorder_gaps", "wheels.csv")
    notice = next(notice for notice in log.notices if notice.code == "gaps-in-log")
    assert 450 < notice.count < 530
    assert "brake" not in log.channels
    assert "stuck-channel" in codes(log)


def test_pulse_counters_count_some_48_edges_a_metre(shared) -> None:
    log = read(shared, "braking_slip", "wheels.csv")
    trace = log.wheels["RL"]
    way_m = float(np.sum(0.5 * (trace.speed_mps[1:] + trace.speed_mps[:-1]) * np.diff(trace.time_s)))
    for corner in CORNERS:
        count = log.channels[f"pulses_{corner}"].value
        assert (np.diff(count) >= 0).all()
        assert np.ptp(count) / way_m == pytest.approx(48.16, rel=0.01)


def test_standstill_says_so(shared) -> None:
    assert "no-motion" in codes(read(shared, "standstill_sweep", "wheels.csv"))


def test_frames_of_two_buses_without_a_database_are_refused(shared) -> None:
    with pytest.raises(SignalMappingError, match="386") as refused:
        read(shared, "two_bus_standstill", "frames.csv.gz")
    assert "--dbc" in str(refused.value)
