"""Units that count, and units that put other wheels' speed in an implausible one's place."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

import numpy as np
import pytest

from triage.simulator.control_unit import Upset, estimate_speeds
from triage.simulator.equipment import ControlUnit
from triage.speed_log import FloatArray

UNIT = ControlUnit(
    circumference_m=2.0,
    cycle_s=0.01,
    averaging_cycles=1,
    hold_s=0.02,
    timeout_s=0.3,
    filter_s=0.0,
    zero_below_mps=0.0,
    jump_limit_mps2=700.0,
    jump_reaction="substitute",
    mark_silent_after_s=float("inf"),
)
PITCH_M = 2.0 / 48


def _edges(speed_mps: float, duration_s: float = 20.0) -> FloatArray:
    return np.arange(0.001, duration_s, PITCH_M / speed_mps)


def _without(edges: FloatArray, start_s: float, stop_s: float) -> FloatArray:
    return edges[(edges < start_s) | (edges > stop_s)]


@pytest.mark.parametrize(("donor", "reads"), [("others", 14.0), ("partner", 12.0)])
def test_a_silent_wheel_reads_what_the_others_read(donor: Literal["others", "partner"], reads: float) -> None:
    wheels = [_without(_edges(15.0), 8.0, 12.0), _edges(12.0), _edges(15.0), _edges(15.0)]
    unit = replace(UNIT, substitute=donor)
    output = estimate_speeds(wheels, unit, edges_per_rev=48, duration_s=20.0)
    inside = (output.time_s > 8.5) & (output.time_s < 12.0)
    np.testing.assert_allclose(output.speed_mps[0, inside], reads, rtol=0.01)
    assert output.fault[0, inside].all()
    assert not output.fault[1:].any()
    # Some time after the signal is back, the wheel is believed again.
    np.testing.assert_allclose(output.speed_mps[0, output.time_s > 13.0], 15.0, rtol=1e-6)


def test_the_counter_goes_on_missing_what_the_substitute_hides() -> None:
    wheels = [_without(_edges(15.0), 8.0, 12.0), *[_edges(15.0)] * 3]
    output = estimate_speeds(wheels, UNIT, edges_per_rev=48, duration_s=20.0)
    missing = output.pulses[1, -1] - output.pulses[0, -1]
    assert missing == pytest.approx(4.0 * 15.0 / PITCH_M, abs=2)


def test_a_unit_may_keep_its_doubts_to_itself() -> None:
    wheels = [_without(_edges(15.0), 8.0, 12.0), *[_edges(15.0)] * 3]
    unit = replace(UNIT, tells_fault=False)
    output = estimate_speeds(wheels, unit, edges_per_rev=48, duration_s=20.0)
    assert not output.fault.any()
    assert output.speed_mps[0, output.time_s > 8.5].min() > 14.0


def test_counting_leaves_steps_of_one_pitch_per_window() -> None:
    unit = replace(UNIT, method="counting", averaging_cycles=10, jump_reaction="none")
    output = estimate_speeds([_edges(14.7)] * 4, unit, edges_per_rev=48, duration_s=20.0)
    step_mps = PITCH_M / 0.1
    steps = output.speed_mps / step_mps
    np.testing.assert_allclose(steps, np.round(steps), atol=1e-9)
    assert np.unique(np.round(steps[0])).tolist() == [35.0, 36.0]
    assert output.speed_mps[0, 20:].mean() == pytest.approx(14.7, rel=2e-3)


def test_counters_count_every_edge_once() -> None:
    edges = _edges(15.0)
    output = estimate_speeds([edges] * 4, UNIT, edges_per_rev=48, duration_s=20.0)
    np.testing.assert_array_equal(output.pulses[0], np.searchsorted(edges, output.time_s, side="right"))


def test_a_unit_that_is_off_counts_nothing() -> None:
    upset = Upset(5.0, 6.0, "zero")
    output = estimate_speeds([_edges(15.0)] * 4, UNIT, edges_per_rev=48, duration_s=20.0, upsets=(upset,))
    inside = (output.time_s > 5.02) & (output.time_s < 5.98)
    assert np.ptp(output.pulses[:, inside]) == 0.0


def test_a_log_that_begins_rolling_begins_at_full_speed() -> None:
    for method in ("timing", "counting"):
        unit = replace(UNIT, method=method, averaging_cycles=4, filter_s=0.03)
        output = estimate_speeds([_edges(15.0)] * 4, unit, edges_per_rev=48, duration_s=5.0)
        assert output.speed_mps[:, :20].min() > 13.5
