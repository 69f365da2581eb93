"""Numbers that are no car's: no measurement, no warning of the array library, and nobody blamed."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.evidence.rulebook import load_rulebook
from triage.run import run_triage
from triage.signals.conditioning import put_on_common_clock
from triage.signals.plausible_speed import find_implausible_speed
from triage.speed_log import SpeedLog


def _speeds(seconds: float = 60.0) -> tuple[np.ndarray, np.ndarray]:
    time_s = np.arange(0.0, seconds, 0.02)
    course = 12.0 + 4.0 * np.sin(0.2 * time_s)
    return time_s, course + np.random.default_rng(2).normal(0.0, 0.02, (4, time_s.size))


@pytest.mark.parametrize("rows", [[1], [0, 1, 2, 3]])
@pytest.mark.parametrize("factor", [100.0, 1e9, 1e300])
def test_absurd_factors_withhold_the_verdict(log_from, rows: list[int], factor: float) -> None:
    time_s, speed = _speeds()
    speed[rows] *= factor
    result = run_triage(log_from(time_s, speed), load_rulebook())
    assert not result.measurements
    (missing,) = result.not_measurable
    assert missing.corner is None
    assert "360 km/h" in missing.reason
    blamed = [one.probability for one in result.posterior.ranking if one.hypothesis.corner in CORNERS]
    assert max(blamed) < 0.1


def test_single_peaks_and_fast_driving_do_not(log_from) -> None:
    time_s, speed = _speeds()
    speed[0, ::10] = 300.0
    assert find_implausible_speed(put_on_common_clock(log_from(time_s, speed))) is None
    assert (
        find_implausible_speed(put_on_common_clock(log_from(time_s, speed[1:2] * np.ones((4, 1)) * 4.0)))
        is None
    )


def test_what_jumps_about_as_no_car_does_is_not_measured(log_from: Callable[..., SpeedLog]) -> None:
    """Random numbers, as of signals decoded with the wrong byte order; and a car in steps of 1 m/s."""
    time_s = 0.02 * np.arange(2000)
    rng = np.random.default_rng(2)
    noise = find_implausible_speed(put_on_common_clock(log_from(time_s, 30.0 * rng.random((4, 2000)))))
    assert noise is not None
    assert "jumps" in noise.reason
    coarse = np.floor(15.0 + 5.0 * np.sin(time_s / 8.0) + rng.random((4, 2000)))
    assert find_implausible_speed(put_on_common_clock(log_from(time_s, coarse))) is None


def test_a_long_log_is_judged_over_all_its_length(log_from: Callable[..., SpeedLog]) -> None:
    """Of forty minutes, sound speeds for a third excuse nothing, and a third that jumps spoils nothing."""
    time_s = 0.02 * np.arange(120_000)
    rng = np.random.default_rng(5)
    speed = 15.0 + rng.normal(0.0, 0.02, (4, time_s.size))
    speed[:, 40_000:80_000] = 30.0 * rng.random((4, 40_000))
    assert find_implausible_speed(put_on_common_clock(log_from(time_s, speed))) is None
    speed[:, :40_000] = 30.0 * rng.random((4, 40_000))
    assert find_implausible_speed(put_on_common_clock(log_from(time_s, speed))) is not None
    speed = np.roll(speed, 40_000, axis=1)  # sound at first
    assert find_implausible_speed(put_on_common_clock(log_from(time_s, speed))) is not None
