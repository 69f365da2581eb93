from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from triage.speed_log import Channel, SpeedLog
from ui.presenters.companions import SHOWN, build_companion_lines, thin_line


@pytest.fixture
def log(log_from: Callable[..., SpeedLog]) -> SpeedLog:
    time_s = np.concatenate((np.arange(0.0, 20.0, 0.05), np.arange(30.0, 50.0, 0.05)))
    yaw = Channel(time_s, np.full(time_s.size, np.pi / 2.0), "yaw", turned=True)
    brake = Channel(time_s, (time_s > 40.0).astype(float), "pedal")
    unknown = Channel(time_s, time_s, "pulses")
    return replace(log_from(), channels={"brake": brake, "pulses_FL": unknown, "yaw_rate_radps": yaw})


def test_units_are_those_of_the_road(log: SpeedLog) -> None:
    yaw, brake = build_companion_lines(log)
    assert (yaw.title, yaw.unit) == ("Yaw rate", "°/s")
    assert yaw.value == pytest.approx(90.0)
    assert "turned round" in yaw.help
    assert "Read from pedal." in brake.help
    assert set(brake.value) == {0.0, 1.0}


def test_a_hole_stays_open(log: SpeedLog) -> None:
    yaw, _ = build_companion_lines(log)
    broken = np.flatnonzero(~yaw.joined)
    assert broken.tolist() == [399, yaw.time_s.size - 1]


def test_a_single_sample_survives_thinning() -> None:
    time_s = np.arange(100_000) * 0.01
    value = np.zeros(100_000)
    value[43_211] = 7.0
    (line,) = build_companion_lines(
        SpeedLog("x", "test", None, {}, {"lateral_mps2": Channel(time_s, value, "ay")})
    )
    thin = thin_line(line, 0.0, 1000.0, columns=400)
    assert thin.time_s.size <= 2 * 400
    assert thin.value.max() == 7.0
    assert thin.time_s[np.argmax(thin.value)] == pytest.approx(432.11, abs=2.5)
    near = thin_line(line, 432.0, 432.3, columns=400)
    assert near.value.max() == 7.0
    assert near.time_s.size < 40


def test_a_log_without_companions_has_no_lines(log_from: Callable[..., SpeedLog]) -> None:
    assert build_companion_lines(log_from()) == ()


def test_every_channel_is_explained_in_a_sentence() -> None:
    assert all(text.endswith(".") and title for title, _, _, text in SHOWN.values())
