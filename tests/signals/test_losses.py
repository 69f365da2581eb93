"""Drop-outs, dips, spikes, frozen values and losses of all wheels, each put into a clean drive by hand."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest
from scipy.signal import lfilter

from triage.signals.analysis import Analysis, analyse
from triage.signals.losses import spans_of
from triage.signals.residuals import Residuals, measure_residuals
from triage.speed_log import FloatArray, SpeedLog

PERIOD_S = 0.01
TIME = PERIOD_S * np.arange(6000)


def _speed() -> FloatArray:
    return 14.0 + 3.0 * np.sin(TIME / 4.0)


def _rows(seed: int = 1) -> FloatArray:
    rng = np.random.default_rng(seed)
    return _speed() * (1.0 + 0.0015 * rng.normal(size=(4, TIME.size)))


def _stretch(begin_s: float, end_s: float) -> slice:
    return slice(round(begin_s / PERIOD_S), round(end_s / PERIOD_S))


def _analysed(log_from: Callable[..., SpeedLog], rows: FloatArray, **given: float) -> Analysis:
    return analyse(log_from(TIME, rows, **given))


def test_a_clean_drive_has_no_losses(log_from: Callable[..., SpeedLog]) -> None:
    losses = _analysed(log_from, _rows()).losses
    assert losses.moving.all()
    for flag in (losses.lost, losses.alone, losses.low, losses.high, losses.frozen, losses.joint):
        assert not flag.any()


@pytest.mark.parametrize("row", range(4))
@pytest.mark.parametrize("gone", [0.0, np.nan])
def test_a_drop_out_of_one_wheel_is_lost_alone(
    row: int, gone: float, log_from: Callable[..., SpeedLog]
) -> None:
    rows = _rows()
    where = _stretch(20.0, 20.4)
    rows[row, where] = gone
    losses = _analysed(log_from, rows).losses
    expected = np.zeros(TIME.size, dtype=bool)
    expected[where] = True
    np.testing.assert_array_equal(losses.lost[row], expected)
    np.testing.assert_array_equal(losses.alone[row], expected)
    assert not np.delete(losses.lost, row, axis=0).any()
    assert not losses.joint.any()


def test_a_wheel_that_begins_late_is_not_lost(log_from: Callable[..., SpeedLog]) -> None:
    rows = _rows()
    rows[2, : round(0.6 / PERIOD_S)] = np.nan
    assert not _analysed(log_from, rows).losses.lost.any()
    rows[2, : round(5.0 / PERIOD_S)] = np.nan
    assert _analysed(log_from, rows).losses.lost[2, _stretch(1.0, 4.0)].all()


def test_two_wheels_lost_together_are_not_alone(log_from: Callable[..., SpeedLog]) -> None:
    rows = _rows()
    rows[:2, _stretch(20.0, 20.4)] = 0.0
    losses = _analysed(log_from, rows).losses
    assert losses.lost[:2, _stretch(20.0, 20.4)].all()
    assert not losses.alone.any()


@pytest.mark.parametrize("gone", [0.0, np.nan])
def test_all_wheels_lost_together_are_joint(gone: float, log_from: Callable[..., SpeedLog]) -> None:
    rows = _rows()
    where = _stretch(20.0, 20.3)
    rows[:, where] = gone
    losses = _analysed(log_from, rows).losses
    # The fall itself is what no brake could do; what stays at 0 after it is a car that stands.
    assert losses.joint[where.start : where.start + 10].all()
    assert not losses.joint[: where.start - 20].any()
    assert not losses.joint[where.stop + 20 :].any()
    assert not losses.lost[:, where].any()
    assert not losses.alone.any()


def test_a_pause_of_the_recorder_is_no_loss(log_from: Callable[..., SpeedLog]) -> None:
    keep = np.ones(TIME.size, dtype=bool)
    for begin in np.arange(5.0, 55.0, 1.0):
        keep[_stretch(begin, begin + 0.5)] = False
    losses = analyse(log_from(TIME[keep], _rows()[:, keep])).losses
    for flag in (losses.lost, losses.low, losses.high, losses.joint):
        assert not flag.any()


@pytest.mark.parametrize(("factor", "name"), [(0.9, "low"), (1.1, "high")])
def test_brief_deviations_are_told_by_their_sign(
    factor: float, name: str, log_from: Callable[..., SpeedLog]
) -> None:
    rows = _rows()
    hit = np.zeros(TIME.size, dtype=bool)
    hit[500:5500:97] = True
    rows[2, hit] *= factor
    losses = _analysed(log_from, rows).losses
    np.testing.assert_array_equal(getattr(losses, name)[2], hit)
    assert not getattr(losses, "high" if name == "low" else "low").any()
    assert not np.delete(getattr(losses, name), 2, axis=0).any()
    assert not losses.lost.any()


def test_what_shakes_all_wheels_blames_none(log_from: Callable[..., SpeedLog]) -> None:
    rows = _rows()
    rng = np.random.default_rng(7)
    for begin in np.arange(300, 5700, 300):
        rows[:, begin : begin + 60] *= 1.0 + 0.02 * rng.normal(size=(4, 60))
    losses = _analysed(log_from, rows).losses
    assert (losses.low | losses.high).mean() < 0.004


def test_slip_in_hard_braking_is_brake_control_and_no_drop_out(log_from: Callable[..., SpeedLog]) -> None:
    speed = np.interp(TIME, [0.0, 20.0, 24.0, 60.0], [20.0, 20.0, 4.0, 4.0])
    rows = speed * (1.0 + 0.0015 * np.random.default_rng(3).normal(size=(4, TIME.size)))
    rows[0, _stretch(21.5, 21.7)] *= 0.4
    assert not _analysed(log_from, rows).losses.lost.any()
    rows[0, _stretch(21.5, 21.7)] = 0.0
    assert _analysed(log_from, rows).losses.lost[0, _stretch(21.5, 21.7)].all()


def test_a_repeated_value_is_frozen_while_the_car_changes_speed(log_from: Callable[..., SpeedLog]) -> None:
    rows = _rows()
    where = _stretch(33.0, 36.0)
    rows[1, where] = rows[1, where.start]
    losses = _analysed(log_from, rows).losses
    assert losses.frozen[1, where].all()
    assert losses.frozen[1].sum() == where.stop - where.start
    assert not np.delete(losses.frozen, 1, axis=0).any()


def test_a_repeated_value_is_frozen_where_the_road_stirs_all_other_wheels(
    log_from: Callable[..., SpeedLog],
) -> None:
    """At steady speed, too; beside steps as coarse as what the road does, a wheel may rest by chance."""
    rows = 14.0 * (1.0 + 0.0015 * np.random.default_rng(8).normal(size=(4, TIME.size)))
    where = _stretch(33.0, 34.0)
    rows[1, where] = rows[1, where.start]
    fine = np.round(rows / 0.003) * 0.003
    losses = _analysed(log_from, fine, resolution_mps=0.003).losses
    assert losses.frozen[1, where].all()
    assert losses.frozen.sum() == where.stop - where.start
    coarse = np.round(rows / 0.02) * 0.02
    assert not _analysed(log_from, coarse, resolution_mps=0.02).losses.frozen.any()


@pytest.mark.parametrize("every", [10, 20, 50])
@pytest.mark.parametrize("wheels", [[1], [0, 1]])
def test_a_wheel_that_is_told_less_often_is_not_frozen_in_between(
    every: int, wheels: list[int], log_from: Callable[..., SpeedLog]
) -> None:
    """As in a table whose empty cells were filled with the last value."""
    rows = np.round(_rows() / 0.003) * 0.003
    rows[wheels] = np.repeat(rows[wheels, ::every], every, axis=1)
    assert not _analysed(log_from, rows, resolution_mps=0.003).losses.frozen.any()


def test_a_wheel_between_two_counts_is_not_frozen_while_others_flutter(
    log_from: Callable[..., SpeedLog],
) -> None:
    """Whole counts, filtered to fine numbers: at a steady speed one wheel stands between two of them."""
    rng = np.random.default_rng(12)
    course = np.interp(TIME, [0.0, 20.0, 25.0, 40.0, 45.0, 60.0], [10.0, 10.0, 11.3, 11.3, 10.0, 10.0])
    tyres = np.array([[1.0], [1.017], [1.02], [1.016]])
    counted = np.round((course * tyres + rng.normal(0.0, 0.03, (4, TIME.size))) / 0.36) * 0.36
    rows = lfilter([0.2], [1.0, -0.8], counted - 10.0, axis=1) + 10.0
    losses = _analysed(log_from, np.round(rows / 0.003) * 0.003, resolution_mps=0.003).losses
    assert not losses.frozen.any()


def test_a_rest_at_walking_pace_is_not_frozen(log_from: Callable[..., SpeedLog]) -> None:
    rows = 1.4 + 0.02 * np.random.default_rng(8).normal(size=(4, TIME.size))
    rows[1, _stretch(33.0, 36.0)] = 1.4
    losses = _analysed(log_from, np.round(rows / 0.003) * 0.003, resolution_mps=0.003).losses
    assert not losses.frozen.any()


def test_a_wheel_without_signal_does_not_hide_a_frozen_one(log_from: Callable[..., SpeedLog]) -> None:
    rows = 14.0 * (1.0 + 0.0015 * np.random.default_rng(8).normal(size=(4, TIME.size)))
    where = _stretch(33.0, 34.0)
    rows[1, where] = rows[1, where.start]
    rows[3, ::7] = np.nan
    assert (
        _analysed(log_from, np.round(rows / 0.003) * 0.003, resolution_mps=0.003)
        .losses.frozen[1, where]
        .all()
    )


def test_steady_speed_and_coarse_steps_are_not_frozen(log_from: Callable[..., SpeedLog]) -> None:
    steady = np.full((4, TIME.size), 15.0)
    assert not _analysed(log_from, steady).losses.frozen.any()
    step = 1.0 / 3.6
    tyres = np.array([[1.0], [1.03], [0.97], [1.05]])
    coarse = np.round((3.2 + 0.5 * np.sin(TIME / 5.0)) * tyres / step) * step
    assert not _analysed(log_from, coarse, resolution_mps=step).losses.frozen.any()


@pytest.mark.parametrize("step_mps", [0.1, 0.36])
def test_a_unit_that_counts_is_not_frozen_between_two_counts(
    step_mps: float, log_from: Callable[..., SpeedLog]
) -> None:
    """A pulse a cycle is 0.36 m/s, written in steps of 0.01 m/s; a wheel that hangs is seen."""
    course = np.interp(TIME, np.arange(0.0, 61.0, 2.0), 5.0 + np.random.default_rng(2).normal(0.0, 0.25, 31))
    course[_stretch(30.0, 36.0)] += np.interp(TIME[_stretch(30.0, 36.0)], [30.0, 33.0, 36.0], [0.0, 4.0, 0.0])
    rows = np.floor(course * np.array([[1.0], [1.003], [0.996], [1.002]]) / step_mps) * step_mps
    losses = _analysed(log_from, rows, resolution_mps=0.01).losses
    assert not losses.frozen.any()
    where = _stretch(31.0, 34.0)
    rows[1, where] = rows[1, where.start]
    frozen = _analysed(log_from, rows, resolution_mps=0.01).losses.frozen
    assert frozen[1, where].all()
    assert not np.delete(frozen, 1, axis=0).any()


def test_walking_pace_is_not_judged(log_from: Callable[..., SpeedLog]) -> None:
    rows = np.full((4, TIME.size), 1.2)
    rows[0] = 0.0
    losses = _analysed(log_from, rows).losses
    assert not losses.moving.any()
    assert not losses.lost.any()


def test_spans_are_the_longest_first_and_stay_inside_the_log() -> None:
    flag = np.zeros(100, dtype=bool)
    flag[10:12] = flag[40:50] = flag[95:100] = True
    time = 5.0 + 0.1 * np.arange(100)
    spans = spans_of(flag, time, period_s=0.1)
    assert spans[0] == pytest.approx((9.0, 10.0))
    assert spans[1] == pytest.approx((14.5, time[-1]))
    assert spans[2] == pytest.approx((6.0, 6.2))
    assert spans_of(flag, time, most=1) == (pytest.approx((9.0, 9.9)),)
    assert spans_of(np.zeros(0, dtype=bool), np.zeros(0)) == ()


def test_residuals_learn_the_noise_from_the_middle_of_the_wheels(log_from: Callable[..., SpeedLog]) -> None:
    rng = np.random.default_rng(8)
    sigma = np.array([0.002, 0.002, 0.02, 0.002])
    rows = _speed() * (1.0 + sigma[:, None] * rng.normal(size=(4, TIME.size)))
    analysis = _analysed(log_from, rows)
    residuals = analysis.residuals
    assert isinstance(residuals, Residuals)
    # A wheel's deviation also carries the spread of the middle of the three others, about 0.67 of one.
    assert residuals.sigma_ratio[2] == pytest.approx(0.02, rel=0.1)
    assert residuals.sigma_ratio[0] == pytest.approx(0.0025, rel=0.2)
    np.testing.assert_allclose(residuals.sound_sigma_ratio, 0.0025, rtol=0.3)


def test_slow_offsets_are_taken_out_of_the_fast_part(log_from: Callable[..., SpeedLog]) -> None:
    rows = _rows()
    rows[3] *= 1.0 + 0.01 * np.sin(TIME / 3.0)
    analysis = _analysed(log_from, rows)
    again = measure_residuals(analysis.clock, analysis.reference)
    assert np.abs(np.median(again.fast_ratio[3].reshape(-1, 100), axis=1)).max() < 0.002
    assert np.ptp(again.slow_ratio[3]) > 0.01


@pytest.mark.parametrize("factor", [1.5, 0.6])
def test_all_wheels_jumping_together_are_joint(factor: float, log_from: Callable[..., SpeedLog]) -> None:
    rows = _rows()
    where = _stretch(20.0, 20.6)
    rows[:, where] *= factor
    losses = _analysed(log_from, rows).losses
    assert losses.joint[where.start : where.start + 5].all()
    assert losses.joint[where.stop : where.stop + 5].all()
    assert not losses.joint[: where.start - 20].any()


def test_hard_braking_and_slip_of_all_wheels_are_not_joint(log_from: Callable[..., SpeedLog]) -> None:
    """A stop at 9.81 m/s2 (full grip), the wheels slipping by 3 to 20 % in turn."""
    rows = _rows()
    rows *= np.clip(14.0 - 9.81 * np.clip(TIME - 20.0, 0.0, None), 0.0, None) / _speed()
    for row, slip in enumerate((0.03, 0.2, 0.1, 0.15)):
        rows[row, _stretch(20.5 + 0.05 * row, 20.62 + 0.05 * row)] *= 1.0 - slip
    assert not _analysed(log_from, rows).losses.joint.any()


def test_all_values_frozen_while_braking_are_joint(log_from: Callable[..., SpeedLog]) -> None:
    """Values that stand still for half a second and then step on by what the brakes did meanwhile."""
    rows = _rows() * np.clip(14.0 - 3.0 * np.clip(TIME - 20.0, 0.0, 2.0), 0.0, None) / _speed()
    where = _stretch(20.5, 21.0)
    rows[:, where] = rows[:, where.start - 1][:, None]
    losses = _analysed(log_from, rows).losses
    assert losses.joint[where.start + 2 : where.stop - 2].all()
    assert not losses.joint[: where.start - 20].any()


def test_equal_values_at_steady_speed_are_not_joint(log_from: Callable[..., SpeedLog]) -> None:
    rows = np.full((4, TIME.size), 14.0)
    assert not _analysed(log_from, rows, resolution_mps=0.14).losses.joint.any()


def test_a_pause_beside_a_slower_message_is_no_loss(log_from: Callable[..., SpeedLog]) -> None:
    """A wheel at half the rate has no neighbour for the last quick samples before a pause of the recorder."""
    keep = np.ones(TIME.size, dtype=bool)
    for begin in np.arange(5.0, 55.0, 2.0):
        keep[_stretch(begin + 0.03, begin + 0.5)] = False
    rows, slow = _rows(), keep & (np.arange(TIME.size) % 2 == 0)
    slow[np.flatnonzero(slow)[np.searchsorted(np.flatnonzero(slow), 505)]] = False
    clocks = {"FL": TIME[slow], **dict.fromkeys(("FR", "RL", "RR"), TIME[keep])}
    losses = analyse(log_from(clocks, [rows[0][slow], *rows[1:, keep]])).losses
    assert not losses.lost.any()


@pytest.mark.parametrize(("deceleration_mps2", "counted"), [(1.5, False), (0.0, True)])
def test_slip_on_a_slippery_road_is_no_dip(
    deceleration_mps2: float, counted: bool, log_from: Callable[..., SpeedLog]
) -> None:
    """A tenth of a second at a quarter less: brake control when the car slows down, else a fault."""
    speed = np.full(TIME.size, 20.0)
    slowing = _stretch(30.0, 36.0)
    speed[slowing] -= deceleration_mps2 * (TIME[slowing] - 30.0)
    speed[slowing.stop :] = speed[slowing.stop - 1]
    rows = speed * (1.0 + 0.0015 * np.random.default_rng(5).normal(size=(4, TIME.size)))
    rows[1, _stretch(32.0, 32.1)] *= 0.75
    low = _analysed(log_from, rows).losses.low[1]
    assert low[_stretch(32.0, 32.1)].any() == counted


def test_a_single_short_sample_counts_under_braking_too(log_from: Callable[..., SpeedLog]) -> None:
    rows = (25.0 - 1.2 * np.clip(TIME - 30.0, 0.0, 10.0)) * (
        1.0 + 0.0015 * np.random.default_rng(6).normal(size=(4, TIME.size))
    )
    rows[2, 3500] *= 0.8
    assert _analysed(log_from, rows).losses.low[2, 3500]
