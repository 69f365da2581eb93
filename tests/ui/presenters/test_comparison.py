from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from triage.signals.conditioned_log import ConditionedLog
from triage.speed_log import FloatArray, SpeedLog
from ui.presenters.comparison import align, compare, format_compared
from ui.presenters.thinning import thin_line
from ui.state.opening import Opened


def drive(time_s: FloatArray, speed_mps: FloatArray) -> ConditionedLog:
    four = np.tile(speed_mps, (4, 1))
    good = np.ones(four.shape, dtype=bool)
    return ConditionedLog(
        time_s, four, good, good, speed_mps, np.zeros_like(speed_mps), four, np.zeros_like(four)
    )


def standing_then(speed_mps: float, stands_s: float, drives_s: float = 100.0) -> ConditionedLog:
    time_s = np.arange(0.0, stands_s + drives_s, 0.1)
    return drive(time_s, np.where(time_s < stands_s, 0.0, speed_mps))


def test_by_time_both_start_when_the_car_first_moves() -> None:
    placed_s = align(standing_then(10.0, 5.0), standing_then(20.0, 12.0), "time")
    assert placed_s is not None
    assert placed_s[120] == pytest.approx(5.0)
    assert placed_s[220] == pytest.approx(15.0)


def test_by_distance_the_same_place_lies_at_the_same_second() -> None:
    # Here at 10 m/s, there at 20 m/s: 400 m after the start is 40 s here and 20 s there.
    placed_s = align(standing_then(10.0, 5.0), standing_then(20.0, 12.0), "distance")
    assert placed_s is not None
    assert placed_s[120 + 200] == pytest.approx(5.0 + 40.0, abs=0.15)
    assert np.isnan(placed_s[-1]), "this recording does not reach so far"
    assert (np.diff(placed_s[np.isfinite(placed_s)]) >= 0.0).all()


def test_a_stop_of_one_of_the_two_does_not_put_them_apart() -> None:
    time_s = np.arange(0.0, 200.0, 0.1)
    steady = drive(time_s, np.full(time_s.size, 10.0))
    stopping = drive(time_s, np.where((time_s > 50.0) & (time_s < 80.0), 0.0, 10.0))
    there = align(steady, stopping, "distance")
    here = align(stopping, steady, "distance")
    assert there is not None
    assert here is not None
    assert there[1500] == pytest.approx(120.0, abs=0.2)
    assert here[1200] == pytest.approx(150.0, abs=0.2)


def test_a_car_that_stands_cannot_be_laid_over(opened: Opened) -> None:
    still = drive(np.arange(10.0), np.zeros(10))
    assert align(still, standing_then(10.0, 0.0), "distance") is None
    assert align(standing_then(10.0, 0.0), still, "time") is None
    found = compare(opened.result, replace(opened.result, conditioned=still), "still.csv")
    assert found.problem
    assert found.speed == ()
    assert found.wheels[0].losses_per_km[1] is None
    assert format_compared(found.wheels[0])[3] == "–"


@pytest.mark.parametrize("by", ["distance", "time"])
def test_a_recording_laid_over_itself_is_the_same_line(opened: Opened, by: str) -> None:
    found = compare(opened.result, opened.result, "same.csv", by=by)
    log = opened.result.conditioned
    seen = thin_line(found.speed[1], 10.0, 40.0, columns=5000)
    assert seen.value == pytest.approx(np.interp(seen.time_s, log.time_s, log.speed_mps[1]), abs=1e-6)
    assert found.wheels[0].divergence_percent[0] == found.wheels[0].divergence_percent[1]


def test_a_fault_mended_shows_in_the_table(
    opened: Opened, opened_from: Callable[[SpeedLog], Opened], log_from: Callable[..., SpeedLog]
) -> None:
    log = log_from(file="after.csv")
    front = log.wheels["FL"]
    read = (front.speed_mps > 0.0) | (front.time_s < 5.0) | (front.time_s > 55.0)
    mended = replace(front, speed_mps=np.interp(front.time_s, front.time_s[read], front.speed_mps[read]))
    after = opened_from(replace(log, wheels={**log.wheels, "FL": mended})).result
    wheel = compare(after, opened.result, "before.csv").wheels[0]
    now, before = wheel.losses_per_km
    assert now == 0.0
    # Three drop-outs in the 600 m or so that the car drives.
    assert before == pytest.approx(3 / 0.6, rel=0.15)
    assert format_compared(wheel)[2:] == ("0.0", f"{before:.1f}")
