"""Pulse counters that overflow, start anew, stand still or miss frames, against counts known beforehand."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.logs import read_log
from triage.logs.pulse_unwrapping import unwrap_counters
from triage.speed_log import Channel, SpeedTrace

PER_METRE = 48.2


def drive(
    *, rate_hz: float = 50.0, seconds: float = 120.0, top_mps: float = 25.0, seed: int = 1
) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Times, speeds and way of a drive with two stops."""
    rng = np.random.default_rng(seed)
    time_s = np.arange(0.0, seconds, 1.0 / rate_hz)
    shape = np.interp(time_s / seconds, [0, 0.2, 0.45, 0.5, 0.55, 0.8, 1], [0, 1, 0.6, 0, 0, 0.9, 0.1])
    speed = top_mps * shape * (1.0 + 0.03 * np.sin(time_s) + 0.01 * rng.standard_normal(time_s.size))
    way = np.concatenate(([0.0], np.cumsum((speed[1:] + speed[:-1]) / 2.0 / rate_hz)))
    return time_s, speed, way


def traces(time_s: np.ndarray, speed: np.ndarray) -> dict:
    return {c: SpeedTrace(time_s, speed, np.isnan(speed), 0.003, c, "m/s") for c in CORNERS}


def unwrap(time_s: np.ndarray, count: np.ndarray, speed: np.ndarray, keep: object = slice(None)):
    counters = {c: Channel(time_s[keep], count[keep], f"imp_{c}") for c in CORNERS}
    return unwrap_counters(counters, traces(time_s, speed))


@pytest.mark.parametrize(
    "modulus", [100, 255, 256, 1000, 1023, 1024, 2047, 4095, 4096, 10_000, 32_767, 32_768]
)
@pytest.mark.parametrize("rate_hz", [10.0, 20.0, 100.0])
def test_the_modulus_is_found_and_the_count_runs_on(modulus: int, rate_hz: float) -> None:
    seconds = 1200.0 if modulus > 2000 else 120.0
    time_s, speed, way = drive(rate_hz=rate_hz, seconds=seconds, top_mps=25.0 if modulus > 200 else 12.0)
    true = np.floor(PER_METRE * way) + 7
    unwrapped, notices = unwrap(time_s, true % modulus, speed)
    for channel in unwrapped.values():
        np.testing.assert_array_equal(channel.value - channel.value[0], true - true[0])
    assert not notices


def test_a_counter_of_16_bits_passes_its_overflow_once() -> None:
    time_s, speed, way = drive()
    true = np.floor(PER_METRE * way) + 63_000
    for modulus in (65_535, 65_536):
        unwrapped, _ = unwrap(time_s, true % modulus, speed)
        assert abs(np.ptp(unwrapped["RL"].value) - np.ptp(true)) <= 1.0


def test_several_overflows_between_two_samples_are_told_by_the_speed() -> None:
    """Ten samples a second at 25 m/s: 120 pulses a sample; every third sample kept: 360, more than 255."""
    time_s, speed, way = drive(rate_hz=10.0)
    true = np.floor(PER_METRE * way)
    assert np.diff(true[::3]).max() > 255
    unwrapped, _ = unwrap(time_s, true % 255, speed, slice(None, None, 3))
    np.testing.assert_array_equal(unwrapped["FR"].value, true[::3])


def test_missed_frames_lose_no_pulse() -> None:
    time_s, speed, way = drive()
    keep = np.ones(time_s.size, dtype=bool)
    keep[1000:1012] = False
    keep[np.random.default_rng(2).integers(1, time_s.size, 900)] = False
    true = np.floor(PER_METRE * way)
    unwrapped, notices = unwrap(time_s, true % 255, speed, keep)
    np.testing.assert_array_equal(unwrapped["RR"].value, true[keep])
    assert not notices


def test_what_a_long_gap_leaves_open_is_said() -> None:
    time_s, speed, way = drive()
    keep = (time_s < 30.0) | (time_s > 38.0)
    unwrapped, notices = unwrap(time_s, np.floor(PER_METRE * way) % 255, speed, keep)
    assert {notice.code for notice in notices} == {"counter-doubtful"}
    assert np.ptp(unwrapped["FL"].value) == pytest.approx(PER_METRE * np.ptp(way), rel=0.1)


@pytest.mark.parametrize("modulus", [256, 65_536])
def test_a_counter_that_starts_anew_is_bridged_and_said(modulus: int) -> None:
    time_s, speed, way = drive()
    true = np.floor(PER_METRE * way)
    count = true % modulus
    at = int(np.flatnonzero((time_s > 40.0) & (count > 100) & (count < 120 if modulus == 256 else True))[0])
    count[at:] = (true[at:] - true[at]) % modulus
    unwrapped, notices = unwrap(time_s, count, speed)
    assert {notice.code for notice in notices} == {"counter-reset"}
    assert np.abs(unwrapped["FL"].value - true).max() < 4


def test_one_counter_that_stands_still_is_kept_as_a_finding() -> None:
    time_s, speed, way = drive()
    count = np.floor(PER_METRE * way) % 256
    counters = {c: Channel(time_s, count if c != "RL" else np.full(count.size, 17.0), c) for c in CORNERS}
    unwrapped, notices = unwrap_counters(counters, traces(time_s, speed))
    assert np.ptp(unwrapped["RL"].value) == 0.0
    assert [notice.code for notice in notices] == ["stuck-channel"]
    still = {c: Channel(time_s, np.zeros(count.size), c) for c in CORNERS}
    assert unwrap_counters(still, traces(time_s, speed))[0] == {}


def test_a_drop_out_is_no_overflow() -> None:
    time_s, speed, way = drive()
    lost = (time_s > 70.0) & (time_s < 72.0)
    step = np.diff(PER_METRE * way, prepend=0.0)
    true = np.floor(np.cumsum(np.where(lost, 0.0, step)))
    unwrapped, _ = unwrap(time_s, true % 255, speed)
    np.testing.assert_array_equal(unwrapped["FL"].value, true)


def test_counters_without_an_overflow_stay_and_empty_ones_are_left_out() -> None:
    time_s, speed, way = drive(seconds=20.0)
    rising = np.floor(PER_METRE * way)
    assert unwrap(time_s, rising, speed)[0]["FL"].value is not None
    np.testing.assert_array_equal(unwrap(time_s, rising, speed)[0]["FL"].value, rising)
    empty = {c: Channel(np.zeros(0), np.zeros(0), c) for c in CORNERS}
    assert unwrap_counters(empty, traces(time_s, speed)) == ({}, [])


def test_counters_need_no_valid_speed() -> None:
    time_s, speed, _ = drive()
    true = np.floor(PER_METRE * np.arange(time_s.size) * 0.1)
    unwrapped, _ = unwrap(time_s, true % 256, np.full(speed.size, np.nan))
    np.testing.assert_array_equal(unwrapped["FL"].value, true)


def test_the_modulus_of_a_real_car_is_255() -> None:
    """The publisher's files state 255 and about 48.16 pulses per metre (read with the recording)."""
    file = Path(__file__).resolve().parents[3] / "shared/data/braking_slip/wheels.csv"
    if not file.is_file():
        pytest.skip("the recordings in ../shared are absent")
    log = read_log([file])
    assert not {"counter-doubtful", "counter-reset"} & {notice.code for notice in log.notices}
    for corner in CORNERS:
        count, trace = log.channels[f"pulses_{corner}"], log.wheels[corner]
        inside = (trace.time_s >= count.time_s[0]) & (trace.time_s <= count.time_s[-1])
        way = np.trapezoid(trace.speed_mps[inside], trace.time_s[inside])
        assert np.ptp(count.value) / way == pytest.approx(48.1, abs=0.15)
