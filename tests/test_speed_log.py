"""What a whole recording tells of its time, however its wheels were recorded."""

from __future__ import annotations

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.speed_log import SpeedLog, SpeedTrace


def log_of(times_s: list[np.ndarray], invalid: list[np.ndarray]) -> SpeedLog:
    wheels = {
        corner: SpeedTrace(time_s, np.where(bad, np.nan, 5.0), bad, 0.01, corner, "m/s")
        for corner, time_s, bad in zip(CORNERS, times_s, invalid, strict=True)
    }
    return SpeedLog("drive.csv", "table (csv)", None, wheels)


@pytest.mark.parametrize("share", [0.0, 0.4, 0.9, 1.0])
@pytest.mark.parametrize("apart_s", [0.0, 0.003], ids=["one clock", "own clocks"])
def test_instants_and_length_are_those_of_the_valid_samples(share: float, apart_s: float) -> None:
    rng = np.random.default_rng(3)
    times_s = [2.0 + np.arange(50) * 0.02 + apart_s * row for row in range(4)]
    invalid = [rng.random(50) < share for _ in CORNERS]
    log = log_of(times_s, invalid)
    told = sorted({float(t) for time_s, bad in zip(times_s, invalid, strict=True) for t in time_s[~bad]})
    assert log.instants_s.tolist() == told
    assert log.duration_s == (told[-1] - told[0] if told else 0.0)


def test_of_instants_that_do_not_rise_each_counts_once() -> None:
    time_s = np.array([0.0, 1.0, 1.0, 2.0])
    log = log_of([time_s] * 4, [np.zeros(4, dtype=bool)] * 4)
    assert log.instants_s.tolist() == [0.0, 1.0, 2.0]


def test_without_a_sample_there_is_no_time() -> None:
    log = log_of([np.zeros(0)] * 4, [np.zeros(0, dtype=bool)] * 4)
    assert log.instants_s.size == 0
    assert log.duration_s == 0.0


@pytest.mark.parametrize("valid", [[0, 3], [1, 3], [0, 2], [2, 2]])
def test_a_log_lasts_from_the_first_to_the_last_valid_sample(valid: list[int]) -> None:
    time_s = np.array([0.0, 1.0, 2.5, 4.5])
    bad = np.array([not valid[0] <= place <= valid[1] for place in range(4)])
    assert log_of([time_s] * 4, [bad] * 4).duration_s == time_s[valid[1]] - time_s[valid[0]]
