from __future__ import annotations

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.speed_log import SpeedLog, SpeedTrace
from ui.presenters.extremes import BLOCK, LONG, find_block_extremes
from ui.presenters.thinning import thin_line
from ui.presenters.traces import TraceLine, build_line, build_speed_lines, longest_joined_step


def line_of(time_s: object, value: object) -> TraceLine:
    return build_line("FL", np.asarray(time_s, dtype=float), np.asarray(value, dtype=float))


def test_missing_samples_leave_the_line_open_and_never_nan() -> None:
    seen = thin_line(line_of([0.0, 0.01, 0.02, 0.03], [1.0, np.nan, 1.0, 1.0]), 0.0, 1.0, columns=9)
    assert seen.time_s.tolist() == [0.0, 0.02, 0.03]
    assert seen.joined.tolist() == [False, True, False]


def test_a_hole_in_time_is_not_bridged() -> None:
    seen = thin_line(line_of([0.0, 0.05, 0.10, 0.40, 0.45, 0.50], [1.0] * 6), 0.0, 1.0, columns=9)
    assert seen.joined.tolist() == [True, True, False, True, True, False]


def test_jitter_of_the_recorder_is_no_hole() -> None:
    seen = thin_line(line_of([0.0, 0.01, 0.02, 0.055, 0.065], [1.0] * 5), 0.0, 1.0, columns=9)
    assert seen.joined.tolist() == [True, True, True, True, False]


def test_points_are_in_the_unit_of_the_axis() -> None:
    trace = SpeedTrace(np.array([0.0, 0.1]), np.array([10.0, 20.0]), np.zeros(2, dtype=bool), 0.0, "a", "m/s")
    log = SpeedLog("a.csv", "table (csv)", None, dict.fromkeys(CORNERS, trace))
    seen = thin_line(build_speed_lines(log)[0], 0.0, 1.0, columns=9)
    assert seen.value == pytest.approx([36.0, 72.0])


@pytest.mark.parametrize("missing_share", [0.0, 0.3])
@pytest.mark.parametrize("columns", [500, 37])
def test_lowest_and_highest_of_every_column_are_kept(columns: int, missing_share: float) -> None:
    # The plain way as the truth: every column looked at sample by sample.
    rng = np.random.default_rng(1)
    time_s = np.sort(rng.uniform(0.0, 1000.0, 3 * LONG))
    value = rng.normal(0.0, 1.0, time_s.size)
    value[rng.random(value.size) < missing_share] = np.nan
    value[120_000:140_000] = np.nan
    line = line_of(time_s, value)
    assert line.blocks is not None
    seen = thin_line(line, 0.0, 1000.0, columns=columns)
    assert (np.diff(seen.time_s) >= 0.0).all()
    assert np.isfinite(seen.value).all()
    drawn = seen.value.reshape(-1, 4)
    column = np.minimum((time_s * columns / 1000.0).astype(int), columns - 1)
    filled = [own for at in range(columns) if np.isfinite(own := value[column == at]).any()]
    assert drawn[:, 1] == pytest.approx([np.nanmin(own) for own in filled])
    assert drawn[:, 2] == pytest.approx([np.nanmax(own) for own in filled])


@pytest.mark.parametrize("at", [0, 1, BLOCK - 1, BLOCK, 123_456, 2 * LONG - 1])
@pytest.mark.parametrize("span_s", [2000.0, 200.0, 20.0, 2.0, 0.2])
def test_a_single_sample_shows_at_every_zoom(at: int, span_s: float) -> None:
    time_s = np.arange(2 * LONG) / 100.0
    value = np.full(time_s.size, 20.0)
    value[at] = 0.0
    begin_s = max(time_s[at] - 0.4 * span_s, 0.0)
    seen = thin_line(line_of(time_s, value), begin_s, begin_s + span_s, columns=800)
    assert seen.value.min() == 0.0
    assert seen.time_s[np.argmin(seen.value)] == pytest.approx(time_s[at], abs=span_s / 800 + 0.01)


def test_a_thinned_line_does_not_bridge_a_hole() -> None:
    time_s = np.concatenate((np.arange(0.0, 40.0, 0.01), np.arange(60.0, 100.0, 0.01)))
    for columns in (99, 100, 101, 137):
        seen = thin_line(line_of(time_s, time_s), 0.0, 100.0, columns=columns)
        inside = (seen.time_s > 40.5) & (seen.time_s < 59.5)
        assert not inside.any()
        before = np.flatnonzero(seen.time_s <= 40.5)[-1]
        assert not seen.joined[before]


def test_a_thinned_line_does_not_bridge_missing_samples() -> None:
    time_s = np.arange(0.0, 100.0, 0.01)
    value = np.where((time_s > 40.0) & (time_s < 60.0), np.nan, 1.0)
    for columns in (99, 100, 101, 137):
        seen = thin_line(line_of(time_s, value), 0.0, 100.0, columns=columns)
        before = np.flatnonzero(seen.time_s <= 50.0)[-1]
        assert not seen.joined[before]
        assert seen.joined[:before].all()


def test_many_holes_do_not_wipe_a_thinned_line_out() -> None:
    time_s = np.arange(360_000) / 100.0
    value = np.where(np.arange(time_s.size) % 20 == 0, np.nan, np.sin(time_s))
    seen = thin_line(line_of(time_s, value), 0.0, 3600.0, columns=800)
    assert seen.time_s.size == 3200


def test_a_short_line_is_cut_to_the_view_and_one_sample_beyond() -> None:
    time_s = np.arange(100.0)
    seen = thin_line(line_of(time_s, time_s), 20.5, 30.5, columns=800)
    assert seen.time_s.tolist() == list(range(20, 32))


def test_nothing_in_view() -> None:
    empty = line_of([], [])
    assert thin_line(empty, 0.0, 1.0, columns=10).time_s.size == 0
    far = line_of(np.arange(10.0), np.arange(10.0))
    assert thin_line(far, 50.0, 60.0, columns=10).time_s.tolist() == [9.0]
    missing = line_of(np.arange(1000.0), np.full(1000, np.nan))
    assert thin_line(missing, 0.0, 1000.0, columns=10).time_s.size == 0


def test_extremes_take_a_small_part_of_the_memory() -> None:
    value = np.zeros(10 * LONG)
    blocks = find_block_extremes(value)
    assert blocks is not None
    assert blocks.low.nbytes + blocks.high.nbytes < value.nbytes / 15
    assert find_block_extremes(value[: LONG - 1]) is None


def test_the_usual_step_of_a_day_is_found_without_looking_at_all_of_it() -> None:
    time_s = np.arange(2_000_000) / 50.0
    assert longest_joined_step(time_s) == pytest.approx(0.05)
