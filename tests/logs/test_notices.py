"""What notices say, beside that they are given (see test_warning_codes.py)."""

from __future__ import annotations

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.logs import ReadOptions, read_log


def codes(log) -> set[str]:
    return {notice.code for notice in log.notices}


def test_a_good_table_gives_no_notice_at_all(drive, write, as_table) -> None:
    log = read_log([write(as_table(drive))])
    assert log.notices == ()
    assert set(log.wheels) == set(CORNERS)


def test_a_good_log_of_frames_gives_no_notice_at_all(drive, write, dbc) -> None:
    pairs = zip(drive.time_s, drive.payloads(), strict=True)
    text = "\n".join(f"({1e9 + t:.6f}) can0 1A0#{d.hex()}" for t, d in pairs)
    assert read_log([write(text, "x.log")], ReadOptions(databases=(dbc,))).notices == ()


def test_gap_notice_tells_number_total_and_longest(drive, write, as_table) -> None:
    lines = as_table(drive).splitlines()
    log = read_log([write("\n".join([*lines[:300], *lines[400:900], *lines[950:]]))])
    notice = next(notice for notice in log.notices if notice.code == "gaps-in-log")
    assert notice.count == 2
    assert "2.02 s" in notice.message
    assert "3.04 s in total" in notice.message


def test_a_wheel_missing_alone_is_no_gap_of_the_log(drive, write, as_table) -> None:
    lines = as_table(drive).splitlines()
    lines[300:400] = [line.rsplit(",", 1)[0] + ",NaN" for line in lines[300:400]]
    assert "gaps-in-log" not in codes(read_log([write("\n".join(lines))]))


def test_not_available_code_of_a_table_is_left_out_but_a_spike_is_kept(drive, write, as_table) -> None:
    lines = as_table(drive).splitlines()
    for row, value in ((300, "655.35"), (301, "655.35"), (500, "140.00")):
        lines[row] = lines[row].rsplit(",", 1)[0] + f",{value}"
    trace = read_log([write("\n".join(lines))]).wheels["RR"]
    assert int(trace.invalid.sum()) == 2
    assert np.nanmax(trace.speed_mps) == pytest.approx(140 / 3.6)


def test_unit_doubt_names_ratio_and_the_other_speed(drive, write, as_table) -> None:
    lines = as_table(drive, scale=0.621371).splitlines()
    mean = np.mean([drive.kmh[c] for c in CORNERS], axis=0)
    rows = [f"{lines[0]},VehSpd_kmh", *(f"{a},{b:.2f}" for a, b in zip(lines[1:], mean, strict=True))]
    notice = next(n for n in read_log([write("\n".join(rows))]).notices if n.code == "unit-doubtful")
    assert "0.62" in notice.message
    assert "VehSpd_kmh" in notice.message
    assert "mph" in notice.message


def test_negative_speeds_of_reversing_are_kept(drive, write, as_table) -> None:
    log = read_log([write(as_table(drive, scale=-0.2))])
    assert np.nanmin(log.wheels["FL"].speed_mps) < -1
    assert not log.wheels["FL"].invalid.any()
    assert "no-motion" not in codes(log)
