from __future__ import annotations

import numpy as np
import pytest

from triage.logs import ReadOptions, read_log
from triage.logs.clock import find_echoes, mend_clock, order_samples

CLOCK = np.arange(200) * 0.02


def test_rising_samples_are_passed_through_untouched() -> None:
    samples = order_samples(CLOCK, CLOCK)
    assert samples.time_s is CLOCK
    assert (samples.back_count, samples.repeated_count) == (0, 0)


def test_swapped_neighbours_are_sorted_with_their_values() -> None:
    order = np.arange(200)
    order[[50, 51]] = [51, 50]
    samples = order_samples(CLOCK[order], 100 + order.astype(float))
    np.testing.assert_array_equal(samples.time_s, CLOCK)
    np.testing.assert_array_equal(samples.value, 100.0 + np.arange(200))
    assert samples.back_count == 1


def test_of_repeated_instants_the_first_valid_sample_stays() -> None:
    samples = order_samples(np.array([0.0, 1.0, 1.0, 1.0, 2.0]), np.array([5.0, np.nan, 7.0, 8.0, 9.0]))
    np.testing.assert_array_equal(samples.value, [5.0, 7.0, 9.0])
    assert samples.repeated_count == 2


def test_a_restarted_clock_runs_on() -> None:
    mended = mend_clock(np.concatenate((CLOCK + 10, CLOCK, CLOCK + 1)))
    time_s = mended.time_s
    assert mended.restart_count == 2
    assert (np.diff(time_s) > 0).all()
    assert time_s[-1] - time_s[0] == pytest.approx(3 * CLOCK[-1] + 2 * 0.02)


def test_one_late_sample_is_no_restart() -> None:
    late = np.concatenate((CLOCK[:150], [0.5], CLOCK[150:]))
    mended = mend_clock(late)
    assert (mended.restart_count, mended.stray_count) == (0, 0)
    np.testing.assert_array_equal(mended.time_s, late)


@pytest.mark.parametrize("stray", [1e17, -1e9, np.inf, 9e8])
def test_stray_times_are_left_out(stray) -> None:
    time_s = np.concatenate((CLOCK[:120], [stray], CLOCK[120:]))
    mended = mend_clock(time_s)
    np.testing.assert_array_equal(mended.time_s[~np.isnan(mended.time_s)], CLOCK)
    assert mended.restart_count == 0


def test_a_clock_that_is_set_during_the_log_runs_on() -> None:
    mended = mend_clock(np.concatenate((CLOCK, CLOCK + 1.77e9)))
    assert mended.restart_count == 1
    assert mended.time_s[-1] == pytest.approx(2 * CLOCK[-1] + 0.02, abs=1e-5)


def test_a_pause_of_hours_stays_a_pause() -> None:
    time_s = np.concatenate((CLOCK, CLOCK + 7200))
    assert mend_clock(time_s).time_s is time_s


def test_echoes_are_found_only_when_they_are_the_rule() -> None:
    doubled = np.sort(np.concatenate((CLOCK, CLOCK + 0.0002)))
    key = np.repeat(np.arange(200), 2).astype(np.uint64)
    np.testing.assert_array_equal(find_echoes(doubled, key), np.tile([False, True], 200))
    once = np.sort(np.append(CLOCK, 1.0002))
    assert not find_echoes(once, np.zeros(201, dtype=np.uint64)).any()
    assert not find_echoes(doubled, np.arange(400, dtype=np.uint64)).any()


def frame_log(drive, begin_s: float, part: slice) -> str:
    pairs = zip(drive.time_s[part], drive.payloads()[part], strict=True)
    return "\n".join(f"({begin_s + t:.6f}) can0 1A0#{d.hex().upper()}" for t, d in pairs) + "\n"


def test_a_clock_that_restarts_within_a_log_of_frames(drive, dbc, write) -> None:
    text = frame_log(drive, 1000.0, slice(0, 700)) + frame_log(drive, 20.0 - 14.0, slice(700, None))
    log = read_log([write(text, "x.log")], ReadOptions(databases=(dbc,)))
    assert log.duration_s == pytest.approx(drive.time_s[-1], abs=0.01)
    np.testing.assert_allclose(log.wheels["FL"].speed_mps, drive.mps["FL"], atol=1e-9)
    assert "clock-reset" in {n.code for n in log.notices}


def test_a_clock_that_restarts_within_a_table(drive, write, as_table) -> None:
    lines = as_table(drive).splitlines()
    again = [f"{float(line.split(',')[0]) - 14.0:.3f},{line.split(',', 1)[1]}" for line in lines[701:]]
    log = read_log([write("\n".join([*lines[:701], *again]))])
    assert log.duration_s == pytest.approx(drive.time_s[-1], abs=0.01)
    np.testing.assert_allclose(log.wheels["FL"].speed_mps, drive.mps["FL"], atol=1e-9)
    assert "clock-reset" in {n.code for n in log.notices}


def parts(drive, write, begin_s: float) -> list[str]:
    cuts = ((1000, 1500, "c.log"), (0, 400, "a.log"), (400, 1000, "b.log"))
    return [write(frame_log(drive, begin_s, slice(a, b)), name) for a, b, name in cuts]


def test_parts_in_any_order_make_one_log(drive, dbc, write) -> None:
    log = read_log(parts(drive, write, 1773151516.0), ReadOptions(databases=(dbc,)))
    np.testing.assert_allclose(log.wheels["RR"].speed_mps, drive.mps["RR"], atol=1e-9)
    np.testing.assert_allclose(log.wheels["RR"].time_s, drive.time_s, atol=1e-5)
    assert not {"clock-reset", "clock-went-back", "gaps-in-log"} & {n.code for n in log.notices}
    assert "3 parts" in log.format


def test_parts_of_one_relative_clock(drive, write, as_table) -> None:
    lines = as_table(drive).splitlines()
    files = [
        write("\n".join([lines[0], *lines[a:b]]), name)
        for a, b, name in ((701, 1501, "z.csv"), (1, 701, "y.csv"))
    ]
    log = read_log(files)
    np.testing.assert_allclose(log.wheels["RR"].speed_mps, drive.mps["RR"], atol=1e-9)


def test_parts_that_each_start_at_zero_are_hung_together_and_it_is_said(
    drive, write, as_table, drive_of
) -> None:
    files = [
        write(as_table(drive_of(seconds=10)), name) for name in ("part_2.csv", "part_1.csv", "part_3.csv")
    ]
    log = read_log(files)
    assert log.duration_s == pytest.approx(30.0, abs=0.1)
    assert any(n.code == "clock-reset" for n in log.notices)


def test_far_away_clocks_start_at_zero_and_near_ones_stay(drive, write, as_table) -> None:
    near = read_log([write(as_table(drive).replace("\n0.", "\n-0.", 1))])
    assert near.wheels["FL"].time_s[-1] == pytest.approx(drive.time_s[-1])
    far = read_log([write(frame_table(drive, 50000.0))])
    assert far.wheels["FL"].time_s[0] == 0.0
    assert any(step.action == "clock" for step in far.history)


def frame_table(drive, begin_s: float) -> str:
    rows = ["time_s,FL_kmh,FR_kmh,RL_kmh,RR_kmh"]
    rows += [f"{begin_s + t:.3f},{v},{v},{v},{v}" for t, v in zip(drive.time_s, drive.kmh["FL"], strict=True)]
    return "\n".join(rows)
