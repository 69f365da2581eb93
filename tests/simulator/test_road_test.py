"""The whole simulated road test: repeatable, healthy when healthy, and sick where it should be."""

from __future__ import annotations

import gzip
import hashlib
import os
import subprocess
import sys
from functools import cache
from pathlib import Path

import numpy as np
import pandas as pd
import pytest

from triage.corners import CORNERS, Corner
from triage.errors import OutputError, SettingsError
from triage.progress import Cancelled
from triage.simulator import faults
from triage.simulator.faults import FAULT_MODELS
from triage.simulator.road_test import RoadTest, simulate_road_test, write_road_test
from triage.simulator.table import format_log_table
from triage.speed_log import CHANNEL_UNITS, FloatArray, SpeedLog
from triage.units import KMH

CORNER_CAUSES = [model.cause for model in FAULT_MODELS if model.where == "corner"]
VEHICLE_CAUSES = [model.cause for model in FAULT_MODELS if model.where == "vehicle"]
ROOT = Path(__file__).parents[2]


def _simulate(
    cause: str, *, corner: Corner = "FR", severity: float = 0.5, seconds: float = 60.0, seed: int = 5
) -> RoadTest:
    place = corner if cause in CORNER_CAUSES else None
    return simulate_road_test(cause=cause, corner=place, severity=severity, duration_s=seconds, seed=seed)


@cache
def _sound_log(seed: int) -> SpeedLog:
    return _simulate("no-fault-found", seed=seed, seconds=90.0).log


def _digest(test: RoadTest) -> str:
    return hashlib.sha256(format_log_table(test.log).encode()).hexdigest()


@pytest.mark.parametrize("cause", CORNER_CAUSES + VEHICLE_CAUSES)
def test_same_request_gives_the_same_bytes(cause: str) -> None:
    assert _digest(_simulate(cause)) == _digest(_simulate(cause))


def test_other_seed_gives_another_drive() -> None:
    assert _digest(_simulate("encoder-debris")) != _digest(_simulate("encoder-debris", seed=6))


def test_same_bytes_in_other_processes(tmp_path: Path) -> None:
    code = (
        "import sys; from triage.simulator.road_test import *; write_road_test(simulate_road_test("
        "cause='harness-fault', corner='RL', severity=0.5, duration_s=30.0, seed=11), sys.argv[1])"
    )
    written = []
    for number, (hash_seed, threads) in enumerate([("0", "1"), ("77", "2")]):
        path = tmp_path / f"log{number}.csv.gz"
        environment = os.environ | {"PYTHONHASHSEED": hash_seed, "OPENBLAS_NUM_THREADS": threads}
        environment["PYTHONPATH"] = str(ROOT)
        subprocess.run([sys.executable, "-c", code, str(path)], check=True, env=environment, timeout=120)
        written.append(path.read_bytes())
    assert written[0] == written[1]


@pytest.mark.parametrize("seed", range(12))
def test_healthy_logs_stay_within_stated_limits(seed: int) -> None:
    test = _simulate("no-fault-found", seed=seed, seconds=120.0)
    log, setup = test.log, test.truth.setup
    assert 118.0 < log.duration_s <= 120.0
    means = [float(np.nanmean(log.wheels[corner].speed_mps)) for corner in CORNERS]
    assert max(means) / min(means) < 1.02
    for corner in CORNERS:
        trace = log.wheels[corner]
        assert np.all(np.diff(trace.time_s) > 0.0)
        assert trace.speed_mps[~trace.invalid].min() >= 0.0
        assert trace.speed_mps[~trace.invalid].max() < 150.0 * KMH
        assert np.count_nonzero(trace.invalid) == 0
        steps = trace.speed_mps / trace.resolution_mps
        np.testing.assert_allclose(steps, np.round(steps), atol=1e-6)
    assert 10.0 <= setup.recorder.rate_hz <= 100.0
    # Wheels agree within curves and slip: the median of the left-right mean of the axles.
    front, rear = (_axle_mean(log, names) for names in (("FL", "FR"), ("RL", "RR")))
    fast = front > 5.0
    assert np.median(np.abs(front[fast] / rear[fast] - 1.0)) < 0.02


def _axle_mean(log: SpeedLog, names: tuple[Corner, Corner]) -> FloatArray:
    clock = log.wheels["FL"].time_s
    return np.mean([np.interp(clock, log.wheels[n].time_s, log.wheels[n].speed_mps) for n in names], axis=0)


def _difference(cause: str, severity: float, seed: int, corner: Corner = "FR") -> dict[Corner, float]:
    """Root mean square change that the fault makes to each wheel's trace, in m/s."""
    sick = _simulate(cause, corner=corner, severity=severity, seed=seed, seconds=90.0).log
    sound = _sound_log(seed)
    changes = {}
    for name in CORNERS:
        a, b = sick.wheels[name], sound.wheels[name]
        np.testing.assert_array_equal(a.time_s, b.time_s)
        swing = np.nan_to_num(a.speed_mps) - np.nan_to_num(b.speed_mps)
        changes[name] = float(np.sqrt(np.mean(swing**2)))
    return changes


@pytest.mark.parametrize("cause", CORNER_CAUSES)
@pytest.mark.parametrize("corner", ["FL", "RR"])
def test_a_fault_changes_only_its_corner(cause: str, corner: Corner) -> None:
    changes = _difference(cause, 1.0, seed=2, corner=corner)
    struck = changes.pop(corner)
    assert struck > 0.0
    assert all(change == 0.0 for change in changes.values())


@pytest.mark.parametrize("cause", CORNER_CAUSES + VEHICLE_CAUSES)
def test_severity_zero_is_invisible(cause: str) -> None:
    assert all(change == 0.0 for change in _difference(cause, 0.0, seed=4).values())


@pytest.mark.parametrize("cause", [cause for cause in CORNER_CAUSES if cause != "bearing-roughness"])
def test_more_severity_changes_more(cause: str) -> None:
    levels = (0.1, 0.4, 1.0)
    mean = [float(np.mean([_difference(cause, level, seed)["FR"] for seed in range(4)])) for level in levels]
    assert 0.0 < mean[0] < mean[1] < mean[2]


@pytest.mark.parametrize("cause", CORNER_CAUSES)
def test_no_fault_reads_faster_than_any_car(cause: str) -> None:
    for seed in range(4):
        trace = _simulate(cause, severity=1.0, seed=seed).log.wheels["FR"]
        assert np.nanmax(np.append(trace.speed_mps, 0.0)) <= 350.0 * KMH


def test_bearing_play_shows_in_one_curve_direction() -> None:
    # The left wheel is loaded as the outer one in right curves (common practice; rigid-body load transfer).
    seed = 1
    sick = _simulate("bearing-play", corner="FL", severity=0.8, seed=seed, seconds=180.0)
    sound = _simulate("no-fault-found", seed=seed, seconds=180.0)
    trace = sick.log.wheels["FL"]
    change = np.abs(np.nan_to_num(trace.speed_mps) - sound.log.wheels["FL"].speed_mps)
    pair = [
        np.interp(trace.time_s, sound.log.wheels[n].time_s, sound.log.wheels[n].speed_mps)
        for n in ("RL", "RR")
    ]
    turn_mps2 = (pair[1] - pair[0]) / sound.truth.setup.car.track_m * np.mean(pair, axis=0)
    in_right, in_left = change[turn_mps2 < -1.0].mean(), change[turn_mps2 > 1.0].mean()
    assert in_right > 0.05
    assert in_left < 0.2 * in_right


def test_mismatch_is_a_ratio_of_counts_at_every_speed() -> None:
    seed = 3
    sick = _simulate("encoder-mismatch", seed=seed, seconds=120.0)
    sound = _simulate("no-fault-found", seed=seed, seconds=120.0).log.wheels["FR"]
    trace = sick.log.wheels["FR"]
    pairs = sick.truth.setup.encoder.pole_pairs
    offsets = []
    for low, high in ((4.0, 9.0), (9.0, 40.0)):
        band = (sound.speed_mps > low) & (sound.speed_mps < high)
        offsets.append(float(np.median(trace.speed_mps[band] / sound.speed_mps[band])) * pairs - pairs)
    assert round(offsets[0]) != 0
    assert offsets == pytest.approx([round(offsets[0])] * 2, abs=0.1)


def test_tyre_size_keeps_away_from_count_ratios() -> None:
    for seed in range(20):
        sick = _simulate("tyre-size", severity=0.6, seed=seed, seconds=30.0).truth
        pairs = sick.setup.encoder.pole_pairs
        counts = (sick.read_ratio[1] * sick.setup.car.wheel_ratio[1] - 1.0) * pairs
        assert abs(counts) > 0.1
        assert 0.003 < abs(counts) / pairs < 0.08


def test_common_cause_strikes_all_wheels_at_once() -> None:
    changes = _difference("common-cause", 0.7, seed=6)
    assert min(changes.values()) > 0.0
    test = _simulate("common-cause", severity=0.7, seed=6, seconds=120.0)
    assert test.truth.corner == "vehicle"
    assert len(test.truth.event_spans) >= 3


def test_swapped_channels_are_a_rearrangement() -> None:
    swapped = _simulate("channels-swapped", seed=9).log.wheels
    sound = _simulate("no-fault-found", seed=9).log.wheels
    moved = [c for c in CORNERS if not np.array_equal(swapped[c].speed_mps, sound[c].speed_mps)]
    assert len(moved) in (2, 4)


@pytest.mark.parametrize("cause", ["harness-fault", "common-cause"])
def test_truth_tells_when_events_happened(cause: str) -> None:
    test = _simulate(cause, seconds=120.0)
    assert test.truth.event_spans
    assert all(0.0 <= start < stop for start, stop in test.truth.event_spans)


@pytest.mark.parametrize("name", ["log.csv", "log.csv.gz", "Prüfung.csv"])
def test_written_table_holds_what_was_simulated(tmp_path: Path, name: str) -> None:
    test = _simulate("sensor-fault", seed=12)
    path = tmp_path / name
    write_road_test(test, path)
    table = pd.read_csv(path, keep_default_na=True)
    for corner in CORNERS:
        trace = test.log.wheels[corner]
        column = table[f"{corner} [km/h]"].to_numpy(dtype=float)
        kept = column[np.searchsorted(table["time_s"], trace.time_s - 1e-5)]
        np.testing.assert_allclose(kept * KMH, trace.speed_mps, atol=1e-4)
    for channel in test.log.channels:
        assert any(column.startswith(channel) for column in table.columns)


def test_separate_messages_leave_cells_empty_and_marks_read_nan() -> None:
    for seed in range(60):
        test = _simulate("no-fault-found", seed=seed, seconds=10.0)
        if test.truth.setup.recorder.rear_offset_s > 0.0:
            row = format_log_table(test.log).splitlines()[2].split(",")
            assert (row[1] == "") != (row[3] == "")
            return
    pytest.fail("no setup with separate messages among 60 seeds")


def test_gzip_header_names_no_time(tmp_path: Path) -> None:
    path = tmp_path / "log.csv.gz"
    write_road_test(_simulate("no-fault-found", seconds=10.0), path)
    data = path.read_bytes()
    assert data[4:8] == b"\0\0\0\0"
    assert gzip.decompress(data).startswith(b"time_s,FL [km/h]")


def test_channels_are_known_and_signed_to_the_left() -> None:
    seen = set()
    for seed in range(25):
        log = _simulate("no-fault-found", seed=seed, seconds=60.0).log
        seen |= set(log.channels)
        if "yaw_rate_radps" not in log.channels:
            continue
        yaw = log.channels["yaw_rate_radps"]
        pair = [np.interp(yaw.time_s, log.wheels[n].time_s, log.wheels[n].speed_mps) for n in ("RL", "RR")]
        assert np.corrcoef(yaw.value, pair[1] - pair[0])[0, 1] > 0.8
    assert seen <= set(CHANNEL_UNITS)
    assert {"steering_rad", "yaw_rate_radps", "lateral_mps2", "brake"} <= seen


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"cause": "gremlins"}, "gremlins"),
        ({"corner": None}, "corner"),
        ({"corner": "vehicle"}, "corner"),
        ({"corner": "XX"}, "XX"),
        ({"cause": "common-cause", "corner": "FL"}, "whole vehicle"),
        ({"severity": -0.1}, "severity"),
        ({"severity": float("nan")}, "severity"),
        ({"severity": 1.5}, "severity"),
        ({"duration_s": 2.0}, "2 s"),
        ({"duration_s": float("inf")}, "inf"),
        ({"seed": -1}, "seed"),
    ],
)
def test_impossible_requests_are_refused(changes: dict[str, object], said: str) -> None:
    request: dict[str, object] = {
        "cause": "air-gap",
        "corner": "FL",
        "severity": 0.5,
        "duration_s": 20.0,
        "seed": 1,
    }
    with pytest.raises(SettingsError, match=said) as caught:
        simulate_road_test(**(request | changes))  # type: ignore[arg-type]
    assert caught.value.hint


def test_unwritable_place_is_an_output_error(tmp_path: Path) -> None:
    with pytest.raises(OutputError):
        write_road_test(_simulate("no-fault-found", seconds=10.0), tmp_path / "missing" / "log.csv")


def test_progress_rises_and_may_stop_the_work() -> None:
    fractions: list[float] = []
    simulate_road_test(
        cause="no-fault-found",
        corner=None,
        severity=0.0,
        duration_s=10.0,
        seed=1,
        progress=lambda fraction, _: fractions.append(fraction),
    )
    assert fractions == sorted(fractions)
    assert fractions[-1] == 1.0

    def stop(fraction: float, stage: str) -> None:
        raise Cancelled

    with pytest.raises(Cancelled):
        simulate_road_test(
            cause="no-fault-found", corner=None, severity=0.0, duration_s=10.0, seed=1, progress=stop
        )


def test_one_file_and_one_row_for_every_fault() -> None:
    folder = Path(str(faults.__file__)).parent
    files = {path.stem.replace("_", "-") for path in folder.glob("*.py")} - {"--init--", "effect"}
    assert files == {model.cause for model in FAULT_MODELS}
    assert len(FAULT_MODELS) == len(files)


def test_three_minutes_are_simulated_quickly() -> None:
    import time

    _simulate("encoder-debris", seconds=180.0)
    started = time.perf_counter()
    _simulate("encoder-debris", seconds=180.0, seed=1)
    # 0.07 s on an idle core; the margin is for busy machines.
    assert time.perf_counter() - started < 1.5
