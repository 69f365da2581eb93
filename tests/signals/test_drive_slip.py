"""Drive slip of an axle, against the line it was made from."""

from __future__ import annotations

import numpy as np
import pytest

from triage.signals.drive_slip import AIR_DRAG_PER_M, ROLLING_DRAG_MPS2, estimate_axle_slip

TIME_S = np.arange(0.0, 120.0, 0.2)
SPEED_MPS = 15.0 + 6.0 * np.sin(2.0 * np.pi * TIME_S / 40.0)
PUSH_MPS2 = (
    6.0 * 2.0 * np.pi / 40.0 * np.cos(2.0 * np.pi * TIME_S / 40.0)
    + ROLLING_DRAG_MPS2
    + AIR_DRAG_PER_M * SPEED_MPS**2
)
STRAIGHT = np.ones(TIME_S.size, dtype=bool)


@pytest.mark.parametrize("slip_s2pm", [0.002, 0.006, -0.004])
@pytest.mark.parametrize("tyres", [0.0, 0.01])
def test_slip_in_proportion_to_push_is_told_from_other_tyres(slip_s2pm: float, tyres: float) -> None:
    rng = np.random.default_rng(1)
    ratio = tyres + slip_s2pm * PUSH_MPS2 + rng.normal(0.0, 0.001, TIME_S.size)
    slip = estimate_axle_slip(ratio, SPEED_MPS, TIME_S, straight=STRAIGHT)
    assert ratio.mean() - slip == pytest.approx(tyres, abs=0.0005)


def test_a_steady_speed_yields_no_wild_slope() -> None:
    """With no change of push only noise is left, and the usual slope keeps it in bounds."""
    rng = np.random.default_rng(2)
    ratio = 0.01 + rng.normal(0.0, 0.002, TIME_S.size)
    slip = estimate_axle_slip(ratio, np.full(TIME_S.size, 25.0), TIME_S, straight=STRAIGHT)
    assert abs(slip) < 0.0005


def test_too_few_blocks_or_unknown_ratios_say_nothing() -> None:
    unknown = np.full(TIME_S.size, np.nan)
    assert estimate_axle_slip(unknown, SPEED_MPS, TIME_S, straight=STRAIGHT) == 0.0
    assert estimate_axle_slip(PUSH_MPS2, SPEED_MPS, TIME_S, straight=np.zeros_like(STRAIGHT)) == 0.0
    short = slice(0, 5)
    few = estimate_axle_slip(PUSH_MPS2[short], SPEED_MPS[short], TIME_S[short], straight=STRAIGHT[short])
    assert few == 0.0
