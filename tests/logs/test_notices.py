"""Every warning code: a log that triggers it, and one that does not."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.logs import ReadOptions, read_log

CODES = """
clock-went-back clock-reset duplicate-instants gaps-in-log invalid-samples unit-assumed unit-doubtful
decimal-comma low-rate too-short no-motion coarse-resolution message-on-two-buses log-incomplete
frames-skipped mapping-guessed sign-doubtful stuck-channel database-repaired clock-strays
"""


def codes(log) -> set[str]:
    return {notice.code for notice in log.notices}


class Trouble:
    """A way to make a log with every kind of trouble; each method is named after the code."""

    def __init__(
        self, drive, write: Callable[..., str], as_table: Callable[..., str], wheels_dbc: str
    ) -> None:
        self.drive, self.write, self.as_table, self.wheels_dbc = drive, write, as_table, wheels_dbc
        self.lines = as_table(drive).splitlines()

    def rows(self, *lines: str):
        return read_log([self.write("\n".join(lines))])

    def scaled(self, factor: float, *names: str, digits: int = 2):
        names = names or ("FL_kmh", "FR_kmh", "RL_kmh", "RR_kmh")
        text = self.as_table(self.drive, names=("time_s", *names), scale=factor, digits=digits)
        return read_log([self.write(text)])

    def with_column(self, name: str, value: np.ndarray):
        pairs = zip(self.lines[1:], value, strict=True)
        return self.rows(f"{self.lines[0]},{name}", *(f"{line},{number:.5f}" for line, number in pairs))

    def frames(self, bus: str = "can0") -> list[str]:
        pairs = zip(self.drive.time_s, self.drive.payloads(), strict=True)
        return [f"({1e9 + t:.6f}) {bus} 1A0#{d.hex()}" for t, d in pairs]

    def candump(self, lines: list[str], database: str = ""):
        dbc = self.write(database or self.wheels_dbc, "some.dbc")
        return read_log([self.write("\n".join(lines), "x.log")], ReadOptions(databases=(dbc,)))

    def clock_went_back(self):
        return self.rows(*self.lines[:300], self.lines[301], self.lines[300], *self.lines[302:])

    def clock_reset(self):
        again = [f"{float(line.split(',')[0]) - 14:.3f},{line.split(',', 1)[1]}" for line in self.lines[701:]]
        return self.rows(*self.lines[:701], *again)

    def clock_strays(self):
        return self.rows(*self.lines[:300], "4e12," + self.lines[300].split(",", 1)[1], *self.lines[301:])

    def duplicate_instants(self):
        return self.rows(*self.lines[:300], self.lines[299], *self.lines[300:])

    def gaps_in_log(self):
        return self.rows(*self.lines[:300], *self.lines[400:])

    def invalid_samples(self):
        return self.rows(*self.lines[:300], self.lines[300].rsplit(",", 1)[0] + ",SNA", *self.lines[301:])

    def unit_assumed(self):
        return self.scaled(1.0, "v_fl", "v_fr", "v_rl", "v_rr")

    def unit_doubtful(self):
        return self.scaled(100.0)

    def decimal_comma(self):
        return read_log([self.write(self.as_table(self.drive, delimiter=";", decimal=","))])

    def low_rate(self):
        return self.rows(self.lines[0], *self.lines[1::10])

    def too_short(self):
        return self.rows(self.lines[0], *self.lines[400:440])

    def no_motion(self):
        return self.scaled(0.0)

    def coarse_resolution(self):
        return self.scaled(1.0, digits=0)

    def message_on_two_buses(self):
        both = zip(self.frames(), self.frames("can1"), strict=True)
        return self.candump([line for pair in both for line in pair])

    def log_incomplete(self):
        lines = self.frames()
        return self.candump([*lines[:900], lines[900][:-5]])

    def frames_skipped(self):
        return self.candump([*self.frames(), "(1000000031.5) can0 20000004#0004000000000000"])

    def mapping_guessed(self):
        return self.scaled(1.0, "FL_kmh", "v_fr_kmh", "RL_kmh", "whl_rr_kmh")

    def sign_doubtful(self):
        return self.with_column("yaw_rad_s", -self.drive.yaw_radps)

    def stuck_channel(self):
        return self.with_column("brake_pressed", np.zeros(self.drive.time_s.size))

    def database_repaired(self):
        return self.candump(self.frames(), self.wheels_dbc.replace("48|16@1+", "40|16@1+"))


@pytest.fixture
def trouble(drive, write, as_table, wheels_dbc_text) -> Trouble:
    return Trouble(drive, write, as_table, wheels_dbc_text)


@pytest.mark.parametrize("code", CODES.split())
def test_code_is_given_where_it_belongs(code, trouble) -> None:
    log = getattr(trouble, code.replace("-", "_"))()
    said = [notice for notice in log.notices if notice.code == code]
    assert said
    assert all(notice.count >= 1 and notice.message.rstrip().endswith((".", ")")) for notice in said)
    assert all("nan" not in notice.message.lower().split() for notice in said)


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
