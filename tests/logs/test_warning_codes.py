"""Every warning code: a log that triggers it, and one like it that does not."""

from __future__ import annotations

import re
import zipfile
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.logs import ReadOptions, read_log
from triage.logs.remembered import RememberedMapping
from triage.speed_log import SpeedLog

CODES = (
    "clock-went-back", "clock-reset", "clock-strays", "clocks-differ", "duplicate-instants", "gaps-in-log",
    "invalid-samples", "counter-reset", "counter-doubtful", "stuck-channel", "unit-assumed",
    "unit-doubtful", "sign-doubtful", "decimal-comma", "mapping-guessed", "mapping-remembered",
    "message-on-two-buses", "frames-skipped", "log-incomplete", "database-repaired",
    "database-conflict", "files-passed-over", "low-rate", "coarse-resolution", "too-short",
    "no-motion",
)  # fmt: skip
README = Path(__file__).resolve().parents[2] / "README.md"
COUNTERS = [f"imp_{corner}" for corner in CORNERS]


class Trouble:
    """A way to make a log with every kind of trouble; each method is named after the code."""

    def __init__(
        self, drive, write: Callable[..., str], as_table: Callable[..., str], wheels_dbc: str
    ) -> None:
        self.drive, self.write, self.as_table, self.wheels_dbc = drive, write, as_table, wheels_dbc
        self.lines = as_table(drive).splitlines()

    @property
    def level(self) -> np.ndarray:
        """Middle speed of the wheels, km/h."""
        return np.mean([self.drive.kmh[corner] for corner in CORNERS], axis=0)

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

    def counters(self, change: Callable[[np.ndarray], np.ndarray], keep: object = slice(None)):
        """Add counters of 256 pulses, the same for every wheel."""
        way = np.concatenate(([0.0], np.cumsum(self.level[:-1] / 3.6 * np.diff(self.drive.time_s))))
        count = change(np.floor(48.2 * way)) % 256
        lines = [f"{self.lines[0]},{','.join(COUNTERS)}"]
        lines += [line + 4 * f",{n:.0f}" for line, n in zip(self.lines[1:], count, strict=True)]
        return self.rows(lines[0], *np.array(lines[1:])[keep])

    def counter_reset(self):
        return self.counters(lambda true: np.where(np.arange(true.size) < 700, true, true - true[700]))

    def counter_doubtful(self):
        return self.counters(lambda true: true, np.r_[0:600, 1000:1500])

    def mapping_remembered(self, signals: str = "A B C D E"):
        names = ("time_s", *signals.split()[:4])
        lines = self.as_table(self.drive, names=names).splitlines()
        file = self.write(
            "\n".join([f"{lines[0]},{signals.split()[4]}", *(f"{line},1" for line in lines[1:])])
        )
        one = RememberedMapping(tuple("ABCDE"), dict(zip(CORNERS, "ABCD", strict=True)), "km/h", "2026-03-10")
        mapping = {} if signals == "A B C D E" else dict(zip(CORNERS, signals.split(), strict=False))
        return read_log([file], ReadOptions(mapping=mapping, unit="km/h", remembered=(one,)))

    def clocks_differ(self, pace: float = 1.01):
        lines = ["t_FL,FL_kmh,t_FR,FR_kmh,t_RL,RL_kmh,t_RR,RR_kmh"]
        for line in self.lines[1:]:
            time, *speeds = line.split(",")
            own = (time, f"{float(time) + 0.002:.4f}", time, f"{float(time) * pace:.4f}")
            lines.append(",".join(cell for pair in zip(own, speeds, strict=True) for cell in pair))
        return self.rows(*lines)

    def database_conflict(self, change: str = "(0.02,0)"):
        lines = self.write("\n".join(self.frames()), "x.log")
        other = self.write(self.wheels_dbc.replace("(0.01,0)", change), "other.dbc")
        return read_log([lines], ReadOptions(databases=(self.write(self.wheels_dbc, "a.dbc"), other)))

    def files_passed_over(self, *more: str):
        path = Path(self.write(b"", "drive.zip"))
        with zipfile.ZipFile(path, "w") as archive:
            archive.writestr("drive.csv", "\n".join(self.lines))
            for name in more or ("notes.txt",):
                archive.writestr(name, "lamp on")
        return read_log([path])


class NearMiss(Trouble):
    """The nearest to each trouble that is none; each method is named after the code not to be given."""

    def clock_went_back(self):
        """A clock that stands for one row goes not back."""
        return self.rows(*self.lines[:300], self.lines[299], *self.lines[300:])

    def clock_reset(self):
        """A pause of ten minutes is no restart."""
        late = [f"{float(line.split(',')[0]) + 600:.3f},{line.split(',', 1)[1]}" for line in self.lines[701:]]
        return self.rows(*self.lines[:701], *late)

    def clock_strays(self):
        """An hour's pause strays nowhere."""
        late = [
            f"{float(line.split(',')[0]) + 4000:.3f},{line.split(',', 1)[1]}" for line in self.lines[701:]
        ]
        return self.rows(*self.lines[:701], *late)

    def duplicate_instants(self):
        """Equal speeds at other instants repeat nothing."""
        again = self.lines[299].split(",", 1)[1]
        return self.rows(*self.lines[:300], self.lines[300].split(",")[0] + "," + again, *self.lines[301:])

    def gaps_in_log(self):
        """One row that is missing is a slip of the recorder's cycle."""
        return self.rows(*self.lines[:300], *self.lines[301:])

    def invalid_samples(self):
        """A speed of nought is a number."""
        return self.rows(*self.lines[:300], self.lines[300].rsplit(",", 1)[0] + ",0.00", *self.lines[301:])

    def counter_reset(self):
        return self.counters(lambda true: true)

    def counter_doubtful(self):
        """A gap in which the counter cannot pass its overflow twice."""
        return self.counters(lambda true: true, np.r_[0:600, 605:1500])

    def stuck_channel(self):
        """A brake that is pressed at the end."""
        return self.with_column("brake_pressed", (self.drive.time_s > 24).astype(float))

    def unit_assumed(self):
        return self.scaled(1 / 3.6, "v_fl_mps", "v_fr_mps", "v_rl_mps", "v_rr_mps", digits=4)

    def unit_doubtful(self):
        """A fast car: 200 km/h."""
        return self.scaled(4.0)

    def sign_doubtful(self):
        return self.with_column("yaw_rad_s", self.drive.yaw_radps)

    def decimal_comma(self):
        return read_log([self.write(self.as_table(self.drive, delimiter=";"))])

    def mapping_guessed(self):
        return self.scaled(1.0, "v_fl_kmh", "v_fr_kmh", "v_rl_kmh", "v_rr_kmh")

    def mapping_remembered(self, signals: str = "A B C D F"):
        """One signal has another name, so the user maps by hand."""
        return super().mapping_remembered(signals)

    def message_on_two_buses(self):
        """Something else came over the other bus."""
        other = [line.replace("can0 1A0", "can1 1A1") for line in self.frames()]
        both = zip(self.frames(), other, strict=True)
        return self.candump([line for pair in both for line in pair])

    def frames_skipped(self):
        """Frames of another identifier are passed over without a word."""
        return self.candump([*self.frames(), "(1000000031.5) can0 2A0#0004000000000000"])

    def log_incomplete(self):
        """The last line ends with its last sign, without a line feed."""
        return self.candump(self.frames()[:900])

    def database_repaired(self):
        return self.candump(self.frames())

    def clocks_differ(self, pace: float = 1.0001):
        """A quartz of 100 ppm."""
        return super().clocks_differ(pace)

    def database_conflict(self, change: str = "(0.01,0)"):
        return super().database_conflict(change)

    def files_passed_over(self, *more: str):
        """What a system hides of its own needs no word."""
        return super().files_passed_over(*(more or ("__MACOSX/drive.csv",)))

    def low_rate(self):
        """Ten a second are enough to say nothing."""
        return self.rows(self.lines[0], *self.lines[1::4])

    def coarse_resolution(self):
        return self.scaled(1.0, digits=1)

    def too_short(self):
        return self.rows(self.lines[0], *self.lines[400:700])

    def no_motion(self):
        """Walking pace."""
        return self.scaled(0.1)


def read_as(kind: type[Trouble], code: str, given: tuple) -> SpeedLog:
    return getattr(kind(*given), code.replace("-", "_"))()


@pytest.fixture
def given(drive, write, as_table, wheels_dbc_text) -> tuple:
    return drive, write, as_table, wheels_dbc_text


@pytest.mark.parametrize("code", CODES)
def test_code_is_given_where_it_belongs(code: str, given: tuple) -> None:
    said = [notice for notice in read_as(Trouble, code, given).notices if notice.code == code]
    assert said
    assert all(notice.count >= 1 and notice.message.rstrip().endswith((".", ")")) for notice in said)
    assert all("nan" not in notice.message.lower().split() for notice in said)


@pytest.mark.parametrize("code", CODES)
def test_code_is_not_given_next_to_it(code: str, given: tuple) -> None:
    assert code not in {notice.code for notice in read_as(NearMiss, code, given).notices}


def test_the_table_holds_every_code_that_the_readme_tells() -> None:
    table = (
        README.read_text("utf-8").split("<!-- warning codes -->")[1].split("<!-- end warning codes -->")[0]
    )
    assert sorted(CODES) == sorted(re.findall(r"^\| `([^`]+)` \|", table, re.MULTILINE))
    assert all({code.replace("-", "_") for code in CODES} <= set(vars(kind)) for kind in (Trouble, NearMiss))
