"""Wheels that count backwards, and wheels on a slow clock: said, and no wheel blamed for it."""

from __future__ import annotations

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.evidence.rulebook import load_rulebook
from triage.logs import read_log
from triage.run import run_triage
from triage.speed_log import SpeedLog


def _notices(log: SpeedLog, code: str) -> list[str]:
    return [notice.message for notice in log.notices if notice.code == code]


def _table(speed_kmh: np.ndarray, time_s: np.ndarray) -> str:
    rows = ["time_s,FL [km/h],FR [km/h],RL [km/h],RR [km/h]"]
    rows += [
        f"{instant:.3f}," + ",".join("" if np.isnan(one) else f"{one:.2f}" for one in four)
        for instant, four in zip(time_s, speed_kmh.T, strict=True)
    ]
    return "\n".join(rows) + "\n"


def _drive() -> tuple[np.ndarray, np.ndarray]:
    time_s = np.arange(0.0, 90.0, 0.01)
    course = 45.0 + 20.0 * np.sin(0.25 * time_s)
    return course + np.random.default_rng(3).normal(0.0, 0.05, (4, time_s.size)), time_s


def _most_blamed(log: SpeedLog) -> float:
    ranking = run_triage(log, load_rulebook()).posterior.ranking
    return max(line.probability for line in ranking if line.hypothesis.corner in CORNERS)


@pytest.mark.parametrize("rows", [[0, 1, 2, 3], [2]])
def test_wheels_below_zero_are_turned_round(write, rows: list[int]) -> None:
    speed, time_s = _drive()
    signed = speed.copy()
    signed[rows] *= -1.0
    log = read_log([write(_table(signed, time_s))])
    (message,) = _notices(log, "sign-doubtful")
    assert message.startswith(", ".join(CORNERS[row] for row in rows) + ":")
    for row, corner in enumerate(CORNERS):
        np.testing.assert_allclose(log.wheels[corner].speed_mps, speed[row] / 3.6, atol=0.002)
    assert _most_blamed(log) < 0.1


def test_a_drive_in_reverse_keeps_its_sign_and_is_named(write) -> None:
    speed, time_s = _drive()
    log = read_log([write(_table(-0.3 * speed, time_s))])
    (message,) = _notices(log, "sign-doubtful")
    assert "reversed" in message
    assert log.wheels["RR"].speed_mps.max() < -1.0
    assert _most_blamed(log) < 0.1


def test_a_sign_that_tells_reverse_is_left_alone(write) -> None:
    speed, time_s = _drive()
    speed[:, : time_s.size // 3] *= -0.1
    log = read_log([write(_table(speed, time_s))])
    assert not _notices(log, "sign-doubtful")
    assert log.wheels["FL"].speed_mps[10] < 0.0


@pytest.mark.parametrize("rows", [[3], [0, 1]])
def test_a_wheel_on_a_clock_twenty_times_slower_is_named(write, rows: list[int]) -> None:
    speed, time_s = _drive()
    speed[np.ix_(rows, np.flatnonzero(np.arange(time_s.size) % 20))] = np.nan
    log = read_log([write(_table(speed, time_s))])
    messages = _notices(log, "low-rate")
    assert [message[:2] for message in messages] == [CORNERS[row] for row in rows]
    assert all("5.0 samples" in message for message in messages)
    assert _most_blamed(log) < 0.1


def test_a_log_that_is_slow_as_a_whole_says_so_once(write) -> None:
    speed, time_s = _drive()
    log = read_log([write(_table(speed[:, ::20], time_s[::20]))])
    (message,) = _notices(log, "low-rate")
    assert message.startswith("only 5.0")
