"""Four wheels on one clock, with nothing invented."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.signals.conditioning import BRIDGED_PERIODS, channel_on_clock, put_on_common_clock
from triage.speed_log import Channel, SpeedLog


def test_one_clock_for_all_passes_through_unchanged(log_from: Callable[..., SpeedLog]) -> None:
    rng = np.random.default_rng(1)
    time = np.cumsum(rng.uniform(0.005, 0.015, 500))
    rows = rng.uniform(0.0, 30.0, (4, 500))
    rows[1, 40:44] = np.nan
    clock = put_on_common_clock(log_from(time, rows))
    np.testing.assert_array_equal(clock.time_s, time)
    np.testing.assert_array_equal(clock.speed_mps, rows)
    np.testing.assert_array_equal(clock.valid, np.isfinite(rows))
    np.testing.assert_array_equal(clock.fresh, np.isfinite(rows))
    assert clock.period_s == pytest.approx(0.01, rel=0.1)


def test_slower_wheels_are_joined_by_lines_but_not_over_losses(log_from: Callable[..., SpeedLog]) -> None:
    fast = 0.01 * np.arange(1001)
    slow = 0.04 * np.arange(251)
    ramp_fast, ramp_slow = 3.0 + fast, 3.0 + slow
    ramp_slow = ramp_slow.copy()
    ramp_slow[100:110] = np.nan  # 3.96 to 4.40 s between the neighbours
    clocks = {"FL": fast, "FR": fast, "RL": slow, "RR": slow}
    clock = put_on_common_clock(log_from(clocks, [ramp_fast, ramp_fast, ramp_slow, 3.0 + slow]))
    np.testing.assert_array_equal(clock.time_s, fast)
    np.testing.assert_allclose(clock.speed_mps[3], ramp_fast, atol=1e-12)
    lost = (fast > 3.965) & (fast < 4.395)
    assert np.isnan(clock.speed_mps[2][lost]).all()
    np.testing.assert_allclose(clock.speed_mps[2][~lost], ramp_fast[~lost], atol=1e-12)
    # A slow wheel on a fast clock must not look better known than it is.
    assert clock.fresh[3].sum() == 251
    assert clock.fresh[2].sum() == 241
    assert clock.fresh[0].sum() == 1001
    assert BRIDGED_PERIODS * 0.04 < 0.44


def test_nothing_stands_before_the_first_or_after_the_last_sample(log_from: Callable[..., SpeedLog]) -> None:
    long = 0.01 * np.arange(1000)
    short = long[300:600] + 0.003
    clocks = {"FL": long, "FR": long, "RL": long, "RR": short}
    clock = put_on_common_clock(log_from(clocks, [np.ones(1000)] * 3 + [np.ones(300)]))
    assert not clock.valid[3][:299].any()
    assert not clock.valid[3][602:].any()
    assert clock.valid[3][302:598].all()


def test_duplicate_instants_become_one(log_from: Callable[..., SpeedLog]) -> None:
    time = np.repeat(0.02 * np.arange(100), 2)
    clock = put_on_common_clock(log_from(time, [np.full(200, 5.0)] * 4))
    assert (np.diff(clock.time_s) > 0).all()
    assert clock.time_s.size == 100
    np.testing.assert_array_equal(clock.speed_mps, 5.0)


@pytest.mark.parametrize("size", [0, 1, 2])
def test_hardly_any_samples(size: int, log_from: Callable[..., SpeedLog]) -> None:
    clock = put_on_common_clock(log_from(np.arange(float(size)), [np.ones(size)] * 4))
    assert clock.speed_mps.shape == (len(CORNERS), size)
    assert clock.period_s == (1.0 if size == 2 else 0.0)


def test_channel_is_interpolated_but_not_over_long_gaps() -> None:
    channel = Channel(np.array([0.0, 0.1, 0.2, 2.0, 2.1]), np.array([0.0, 1.0, 2.0, 20.0, 21.0]), "x")
    value = channel_on_clock(channel, np.array([-1.0, 0.05, 0.2, 1.0, 2.05, 3.0]))
    assert value is not None
    np.testing.assert_allclose(value, [np.nan, 0.5, 2.0, np.nan, 20.5, np.nan])
    assert channel_on_clock(None, np.array([0.0])) is None
    assert channel_on_clock(Channel(np.zeros(1), np.zeros(1), "x"), np.array([0.0])) is None
    assert channel_on_clock(channel, np.zeros(0)) is None
