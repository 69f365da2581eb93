"""Odd logs: no crash, no numpy warning (warnings are errors here), and nothing blamed that is not wrong."""

from __future__ import annotations

import json
from collections.abc import Callable
from functools import partial

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from triage.corners import CORNERS
from triage.evidence.rulebook import Rulebook, load_rulebook
from triage.run import TriageResult, run_triage
from triage.signals.analysis import analyse
from triage.speed_log import Channel, FloatArray, SpeedLog
from triage.verdict_text import build_verdict, format_verdict

Rows = list[FloatArray]

NAN = float("nan")


@pytest.fixture(scope="module")
def rulebook() -> Rulebook:
    return load_rulebook()


def _judged(log: SpeedLog, rulebook: Rulebook) -> TriageResult:
    """Run everything, and hold the result against what any log must give."""
    result = run_triage(log, rulebook)
    assert sum(line.probability for line in result.posterior.ranking) == pytest.approx(1.0, abs=1e-9)
    json.dumps(build_verdict(result), allow_nan=False)
    assert max(len(line) for line in format_verdict(result, rulebook).splitlines()) <= 100
    for one in result.measurements:
        assert np.isfinite(one.value), one
        assert one.std_uncertainty > 0.0, one
        time_s = result.conditioned.time_s
        assert all(time_s[0] <= first <= last <= time_s[-1] for first, last in one.spans), one
    return result


def _blamed(result: TriageResult) -> set[str]:
    return {
        line.hypothesis.corner
        for line in result.posterior.ranking
        if line.hypothesis.corner in CORNERS and line.probability >= 0.3
    }


def _set(rows: Rows, time: FloatArray, *, row: int, value: float) -> Rows:
    rows[row][:] = value
    return rows


def _bursts(rows: Rows, time: FloatArray) -> Rows:
    for begin in np.random.default_rng(1).integers(0, time.size - 60, 40):
        for row in rows:
            row[begin : begin + 50] = NAN
    return rows


def _noise(rows: Rows, time: FloatArray) -> Rows:
    return list(np.random.default_rng(2).random((4, time.size)) * 30.0)


def _take_turns(rows: Rows, time: FloatArray) -> Rows:
    return [np.where(np.arange(time.size) % 4 == number, row, NAN) for number, row in enumerate(rows)]


def _wild(rows: Rows, time: FloatArray) -> Rows:
    rows[2][::200] = 1e6
    return rows


EDITS: dict[str, Callable[[Rows, FloatArray], Rows]] = {
    "wheel always 0": partial(_set, row=0, value=0.0),
    "wheel always NaN": partial(_set, row=1, value=NAN),
    "wheel always 7 m/s": partial(_set, row=2, value=7.0),
    "wheel runs backwards": lambda rows, _time: [-rows[0], *rows[1:]],
    "all wheels run backwards": lambda rows, _time: [-row for row in rows],
    "two wheels dead": lambda rows, time: [0.0 * time, rows[1], rows[2], 0.0 * time],
    "three wheels dead": lambda rows, time: [rows[0], 0.0 * time, 0.0 * time, 0.0 * time],
    "rear axle missing": lambda rows, time: [rows[0], rows[1], NAN * time, NAN * time],
    "one wheel only": lambda rows, time: [rows[0], NAN * time, NAN * time, NAN * time],
    "nothing valid": lambda _rows, time: [NAN * time] * 4,
    "all stand": lambda _rows, time: [0.0 * time] * 4,
    "all creep": lambda _rows, time: [0.01 + 0.0 * time] * 4,
    "constant speed": lambda _rows, time: [15.0 + 0.0 * time] * 4,
    "constant speeds, one off": lambda _rows, time: [15.0 + 0.0 * time] * 3 + [15.3 + 0.0 * time],
    "values repeated": lambda rows, time: [np.repeat(row[::4], 4)[: time.size] for row in rows],
    "steps of 0.0625 km/h": lambda rows, _time: [np.round(row * 57.6) / 57.6 for row in rows],
    "300 km/h": lambda rows, _time: [row * (300.0 / 3.6 / 25.0) for row in rows],
    "bursts of NaN on all wheels": _bursts,
    "noise": _noise,
    "one wheel at a time": _take_turns,
    "wild values": _wild,
}

GUILTLESS = {
    "all wheels run backwards",
    "nothing valid",
    "all stand",
    "all creep",
    "constant speed",
    "values repeated",
    "steps of 0.0625 km/h",
    "300 km/h",
    "bursts of NaN on all wheels",
    "noise",
    "one wheel at a time",
    "rear axle missing",
    "one wheel only",
}


@pytest.mark.parametrize("name", EDITS)
def test_odd_speeds(
    name: str, healthy: SpeedLog, edited: Callable[..., SpeedLog], rulebook: Rulebook
) -> None:
    result = _judged(edited(healthy, EDITS[name]), rulebook)
    if name in GUILTLESS:
        assert _blamed(result) == set()


@pytest.mark.parametrize(("row", "value"), [(0, 0.0), (3, NAN)])
def test_a_dead_wheel_is_the_one_blamed(
    row: int, value: float, healthy: SpeedLog, edited: Callable[..., SpeedLog], rulebook: Rulebook
) -> None:
    result = _judged(edited(healthy, partial(_set, row=row, value=value)), rulebook)
    assert _blamed(result) == {CORNERS[row]}
    assert result.posterior.first.hypothesis.cause == "sensor-fault"


@pytest.mark.parametrize("samples", [0, 1, 2, 3, 19, 20, 21, 99, 150])
def test_hardly_any_samples(samples: int, log_from: Callable[..., SpeedLog], rulebook: Rulebook) -> None:
    time = 0.01 * np.arange(samples)
    result = _judged(log_from(time, [8.0 + 2.0 * time] * 4), rulebook)
    assert _blamed(result) == set()
    assert result.not_measurable
    if samples < 20:
        assert result.measurements == ()


def _times(name: str, time: FloatArray) -> FloatArray:
    late = time.copy()
    if name == "huge gaps":
        late[time.size // 3 :] += 86_400.0
        late[time.size // 2 :] += 3600.0
    elif name == "seconds since an epoch":
        late += 1e9
    elif name == "every instant twice":
        late = np.repeat(time[::2], 2)[: time.size]
    elif name == "no time passes":
        late[:] = 0.0
    return late


@pytest.mark.parametrize(
    "name", ["huge gaps", "seconds since an epoch", "every instant twice", "no time passes"]
)
def test_odd_clocks(
    name: str, healthy: SpeedLog, log_from: Callable[..., SpeedLog], rulebook: Rulebook
) -> None:
    rows = [healthy.wheels[corner].speed_mps for corner in CORNERS]
    result = _judged(log_from(_times(name, healthy.wheels["FL"].time_s), rows), rulebook)
    assert _blamed(result) == set()


@pytest.mark.parametrize("step", [2, 5, 10, 100])
def test_low_rates(
    step: int, healthy: SpeedLog, log_from: Callable[..., SpeedLog], rulebook: Rulebook
) -> None:
    time = healthy.wheels["FL"].time_s[::step]
    log = log_from(time, [healthy.wheels[corner].speed_mps[::step] for corner in CORNERS])
    assert _blamed(_judged(log, rulebook)) == set()


def test_two_clocks(healthy: SpeedLog, log_from: Callable[..., SpeedLog], rulebook: Rulebook) -> None:
    time = healthy.wheels["FL"].time_s
    clocks = {corner: time if corner in ("FL", "FR") else time[::3] + 0.0031 for corner in CORNERS}
    rows = [
        np.interp(clocks[corner], healthy.wheels[corner].time_s, healthy.wheels[corner].speed_mps)
        for corner in CORNERS
    ]
    result = _judged(log_from(clocks, rows), rulebook)
    assert _blamed(result) == set()
    assert result.posterior.first.hypothesis.cause == "no-fault-found"


def test_wheels_recorded_one_after_the_other(
    healthy: SpeedLog, log_from: Callable[..., SpeedLog], rulebook: Rulebook
) -> None:
    time = healthy.wheels["FL"].time_s
    clocks = {corner: time + 1000.0 * number for number, corner in enumerate(CORNERS)}
    rows = [healthy.wheels[corner].speed_mps for corner in CORNERS]
    assert _blamed(_judged(log_from(clocks, rows), rulebook)) == set()


def test_a_wheel_of_a_single_sample(
    healthy: SpeedLog, log_from: Callable[..., SpeedLog], rulebook: Rulebook
) -> None:
    time = healthy.wheels["FL"].time_s
    clocks = {corner: time[:1] if corner == "RR" else time for corner in CORNERS}
    rows = [healthy.wheels[corner].speed_mps[: clocks[corner].size] for corner in CORNERS]
    assert _blamed(_judged(log_from(clocks, rows), rulebook)) <= {"RR"}


@pytest.mark.parametrize("kept", [slice(0, 0), slice(0, 1), slice(None), slice(None, None, 500)])
def test_odd_yaw_channels(
    kept: slice, healthy: SpeedLog, log_from: Callable[..., SpeedLog], rulebook: Rulebook
) -> None:
    time = healthy.wheels["FL"].time_s
    rows = [healthy.wheels[corner].speed_mps for corner in CORNERS]
    for shift in (0.0, 1e6):
        yaw = Channel(time[kept] + shift, np.zeros(time[kept].size), "yaw")
        assert _blamed(_judged(log_from(time, rows, channels={"yaw_rate_radps": yaw}), rulebook)) == set()


@settings(max_examples=25, deadline=None)
@given(seed=st.integers(0, 100_000), size=st.integers(1, 400), broken=st.floats(0.0, 0.9))
def test_any_speeds_at_any_times(
    seed: int, size: int, broken: float, log_from: Callable[..., SpeedLog]
) -> None:
    rng = np.random.default_rng(seed)
    time = np.cumsum(rng.choice([0.0, 0.01, 0.01, 0.01, 0.02, 1.0], size))
    rows = rng.choice([0.0, 5.0, 5.0, 10.0, 80.0], (4, size)) * rng.choice([1.0, 1.0, 0.99], (4, size))
    rows[rng.random((4, size)) < broken] = NAN
    run_triage(log_from(time, rows), load_rulebook())


def test_progress_never_falls_and_ends_within_the_whole(healthy: SpeedLog) -> None:
    told: list[float] = []

    def report(fraction: float, stage: str) -> None:
        assert stage
        told.append(fraction)

    analyse(healthy, None, report)
    assert told == sorted(told)
    assert 0.0 <= told[0] <= told[-1] <= 1.0
    assert len(told) >= 5
