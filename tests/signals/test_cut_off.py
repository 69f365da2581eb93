"""The speed below which a wheel is silent."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from triage.signals.analysis import analyse
from triage.speed_log import FloatArray, SpeedLog

TIME = 0.02 * np.arange(6000)
SPEED = 5.0 - 5.0 * np.cos(TIME * 2.0 * np.pi / 20.0)


def _rows() -> FloatArray:
    return SPEED * (1.0 + 0.002 * np.random.default_rng(1).normal(size=(4, TIME.size)))


@pytest.mark.parametrize("cut_mps", [1.0, 2.3, 4.0])
def test_cut_off_is_found_within_its_uncertainty(cut_mps: float, log_from: Callable[..., SpeedLog]) -> None:
    rows = _rows()
    rows[1, cut_mps > SPEED] = 0.0
    cut = analyse(log_from(TIME, rows)).cut_offs
    assert abs(cut[1].speed_mps - cut_mps) < 0.1 + 3.0 * cut[1].std_mps
    assert cut[1].transitions >= 4
    assert cut[1].silent.any()
    assert SPEED[cut[1].silent].max() < 1.3 * cut_mps + 0.3
    assert all(np.isnan(cut[row].speed_mps) for row in (0, 2, 3))


def test_losses_at_any_speed_are_no_cut_off(log_from: Callable[..., SpeedLog]) -> None:
    rows = _rows()
    rows[1, np.random.default_rng(2).random(TIME.size) < np.where(SPEED < 3.0, 0.7, 0.3)] = 0.0
    cut = analyse(log_from(TIME, rows)).cut_offs[1]
    assert np.isnan(cut.speed_mps)
    assert not cut.silent.any()


def test_a_drive_that_never_slows_down_shows_none(log_from: Callable[..., SpeedLog]) -> None:
    cuts = analyse(log_from(TIME, _rows() + 12.0)).cut_offs
    assert all(np.isnan(cut.speed_mps) and cut.transitions == 0 for cut in cuts)


def test_silence_below_the_cut_off_is_no_drop_out(
    log_from: Callable[..., SpeedLog], values: Callable[..., dict]
) -> None:
    rows = _rows()
    rows[1, SPEED < 3.0] = 0.0
    got = values(log_from(TIME, rows))
    assert got["cut-off-speed", "FR"].value > 2.0
    assert got["drop-out-rate", "FR"].value == 0.0
    assert got["cut-off-speed", "FL"].value == pytest.approx(0.0, abs=0.01)
