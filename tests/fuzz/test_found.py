"""The smallest form of everything that broken recordings once did to the readers."""

from __future__ import annotations

import contextlib
import io
import time
import zipfile
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest

from triage.errors import DamagedLog, DatabaseError, TriageError, printable
from triage.inspection import build_inspection, format_inspection
from triage.logs import ReadOptions, read_log
from triage.logs.clock import even_times
from triage.logs.frame_tables import find_frame_columns
from triage.logs.mdf_links import follow_links
from triage.logs.names import bracket_unit, read_name
from triage.logs.pulse_unwrapping import _BEYOND_ALL_COUNTERS
from triage.logs.stamps import read_epoch
from triage.logs.table_layout import TableLayout, is_number_text

HEADING = "time_s,FL_kmh,FR_kmh,RL_kmh,RR_kmh"
ROWS = [f"{0.02 * i:.2f},{30 + i % 7},{30 + i % 5},30,31" for i in range(120)]
SPEED_DBC = Path(__file__).parents[1].joinpath("wheels.dbc").read_text("ascii")
FRAMES = "".join(f"({0.02 * i:.6f}) can0 1A0#A00FA00FA00FA10F\n" for i in range(60))


@pytest.fixture
def write(tmp_path) -> Callable[..., str]:
    def put(content: str | bytes, name: str = "log.csv") -> str:
        path = tmp_path / name
        path.write_bytes(content if isinstance(content, bytes) else content.encode())
        return str(path)

    return put


@pytest.mark.parametrize(
    "work",
    [
        lambda: is_number_text("1" * 60_000 + "x"),
        lambda: bracket_unit("(" * 60_000),
        lambda: bracket_unit("FL" + " " * 60_000 + "x"),
        lambda: read_name("FL (" + "km " * 20_000),
        lambda: find_frame_columns(TableLayout(" ", ".", (), (), 0, (tuple("1234" * 2500),) * 4)),
    ],
    ids=["digits", "brackets", "blanks", "open bracket", "columns"],
)
def test_patterns_take_no_square_of_the_length(work) -> None:
    began = time.process_time()
    work()
    assert time.process_time() - began < 1.0


def test_units_in_brackets_are_found_as_before() -> None:
    assert bracket_unit("FL [km/h]") == "km/h"
    assert bracket_unit("v  ( m/s )  ") == "m/s"
    assert bracket_unit("v[0].x") == ""


def test_a_message_cannot_steer_the_terminal(write) -> None:
    database = write("VERSION \x1b[2J\x00\x07", "wheels.dbc")
    with pytest.raises(TriageError) as refused:
        read_log([write(FRAMES, "drive.log")], ReadOptions(databases=(database,)))
    assert str(refused.value).replace("\n", "").isprintable()
    assert printable("a\tb\x1b[2Jc\nd") == "a·b·[2Jc\nd"


def test_names_of_columns_cannot_steer_the_terminal(write) -> None:
    log = read_log([write("\n".join([HEADING.replace("FL_kmh", "FL\x1b[2J_kmh"), *ROWS]))])
    assert "\x1b" in log.wheels["FL"].source
    assert format_inspection(log).replace("\n", "").isprintable()


def test_a_member_of_an_archive_before_its_begin(write) -> None:
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w") as archive:
        archive.writestr("drive.csv", "\n".join([HEADING, *ROWS]))
    packed = bytearray(buffer.getvalue())
    # the stated size of the directory is too large, so that every member seems to begin before the file
    end = packed.rfind(b"PK\x05\x06")
    packed[end + 16 : end + 20] = (int.from_bytes(packed[end + 16 : end + 20], "little") + 9000).to_bytes(
        4, "little"
    )
    with pytest.raises(DamagedLog) as refused:
        read_log([write(bytes(packed), "drive.zip")])
    assert refused.value.hint


def test_a_member_without_a_name_is_passed_over(write) -> None:
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w") as archive:
        archive.writestr("drive.csv", "\n".join([HEADING, *ROWS]))
        archive.writestr(zipfile.ZipInfo("\0"), "x")
    assert read_log([write(buffer.getvalue(), "drive.zip")]).wheels["FL"].valid_count == len(ROWS)


def test_a_broken_workbook_is_refused_in_few_words(write) -> None:
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w") as archive:
        archive.writestr("[Content_Types].xml", "<Types/>")
        archive.writestr("xl/" + "w" * 9000 + ".xml", "<workbook/>")
    packed = buffer.getvalue().replace(b"xl/w", b"xl/v", 1)
    with pytest.raises(DamagedLog, match="unpacked") as refused:
        read_log([write(packed, "drive.xlsx")])
    assert len(str(refused.value)) < 1000


def test_a_companion_over_centuries_needs_no_grid_of_centuries(write) -> None:
    rows = [f"{1e8 * i:.2f},{30 + i % 7},{30 + i % 5},30,31,0.1" for i in range(40)]
    try:
        log = read_log([write("\n".join([HEADING + ",yaw_rate_radps", *rows]))])
    except TriageError:
        return
    assert log.channels["yaw_rate_radps"].value.size == 40


@pytest.mark.parametrize("first", ["1e400", "-1e400"])
@pytest.mark.parametrize("number", [1.6e9, 45000.0, 0.0])
def test_an_endless_time_is_no_time(number, first) -> None:
    count = np.array([float(first), *(number + 1e-5 * np.arange(50))])
    column = read_epoch(count, "log.csv")
    assert np.isnan(column.time_s[0])
    assert np.isfinite(column.time_s[1:]).all()


def test_an_endless_edge_is_no_edge(write) -> None:
    rows = [",".join(f"{0.0035 * i + 1e-4 * c:.7f}" for c in range(4)) for i in range(200)]
    rows[5] = "1e400,1e400,1e400,1e400"
    rows[6] = "1e400,-1e400,1e400,1e400"
    text = "\n".join([",".join(f"{corner}_edge_s" for corner in ("FL", "FR", "RL", "RR")), *rows])
    with pytest.raises(TriageError) as refused:
        read_log([write(text)])
    assert refused.value.hint


@pytest.mark.parametrize("name", ["yaw_rate_radps", "lateral_mps2", "pulses_FL", "steering_rad", "brake"])
@pytest.mark.parametrize("huge", ["1e308", "-1e300", "1e200", "1e29"])
def test_absurd_numbers_of_a_companion_are_left_out(write, name, huge) -> None:
    rows = [f"{row},{huge if i % 7 == 3 else i}" for i, row in enumerate(ROWS)]
    log = read_log([write("\n".join([f"{HEADING},{name}", *rows]))])
    assert log.wheels["FL"].valid_count == len(ROWS)
    assert all(np.isfinite(channel.value).all() for channel in log.channels.values())


@pytest.mark.parametrize("huge", ["1e308", "-1.7e308", "1e31"])
def test_absurd_speeds_are_no_numbers(write, huge) -> None:
    rows = [row.replace("30,31", f"30,{huge}") if i % 2 else row for i, row in enumerate(ROWS)]
    log = read_log([write("\n".join([HEADING, *rows]))])
    assert log.wheels["RR"].valid_count == len(ROWS) // 2
    assert build_inspection(log)["wheels"]["RR"]["max_mps"] < 10


def test_no_counter_has_more_than_64_bits() -> None:
    assert _BEYOND_ALL_COUNTERS == 2.0**64


@pytest.mark.parametrize("pulses", [1e-6, 0.4])
def test_less_than_one_edge_a_turn(write, pulses) -> None:
    rows = [",".join(f"{0.0035 * i + 1e-4 * c:.7f}" for c in range(4)) for i in range(200)]
    text = "\n".join([",".join(f"{corner}_edge_s" for corner in ("FL", "FR", "RL", "RR")), *rows])
    log = read_log([write(text)], ReadOptions(pulses_per_rev=pulses))
    assert np.isfinite(log.wheels["FL"].speed_mps).all()


@pytest.mark.parametrize("numbers", ["(1" + "0" * 400 + ",0)", "(0.01,1e40)", "(1e999,0)", "(nan,0)"])
def test_a_database_with_absurd_factors_is_refused(write, numbers) -> None:
    database = write(SPEED_DBC.replace("(0.01,0)", numbers, 1), "wheels.dbc")
    with pytest.raises(DatabaseError) as refused:
        read_log([write(FRAMES, "drive.log")], ReadOptions(databases=(database,)))
    assert refused.value.file == database
    assert refused.value.hint


def made_mdf(folder: Path, version: str) -> tuple[bytearray, int, int]:
    """Content, address of the block of the second channel, and of the channel group."""
    import asammdf

    path = folder / ("made.mf4" if version >= "4" else "made.mdf")
    time_s = np.arange(60) * 0.02
    with asammdf.MDF(version=version) as mdf:
        for corner in ("FL", "FR", "RL", "RR"):
            mdf.append(asammdf.Signal(np.full(60, 30.0), time_s, name=f"WhlSpd_{corner}", unit="km/h"))
        mdf.save(path, overwrite=True, compression=0)
    with asammdf.MDF(path) as mdf:
        group = mdf.groups[0]
        places = group.channels[1].address, group.channel_group.address
    return bytearray(path.read_bytes()), *places


@pytest.mark.parametrize("offset", [64, 4000, 1 << 31])
def test_a_channel_outside_its_record_is_refused(write, tmp_path, offset) -> None:
    content, channel, _ = made_mdf(tmp_path, "4.10")
    links = int.from_bytes(content[channel + 16 : channel + 24], "little")
    place = channel + 24 + 8 * links + 4
    content[place : place + 4] = offset.to_bytes(4, "little")
    with pytest.raises(DamagedLog, match="outside its record") as refused:
        read_log([write(bytes(content), "drive.mf4")])
    assert refused.value.place == "channel WhlSpd_FL"


def test_records_beyond_the_end_of_the_file(write, tmp_path) -> None:
    content, _, group = made_mdf(tmp_path, "3.30")
    count = group + 4 + 4 * 3 + 2 + 2 + 2
    assert int.from_bytes(content[count : count + 4], "little") == 60
    content[count : count + 4] = (1 << 30).to_bytes(4, "little")
    began = time.process_time()
    with contextlib.suppress(TriageError):
        read_log([write(bytes(content), "drive.mdf")])
    assert time.process_time() - began < 3.0


@pytest.mark.parametrize("absurd", ["1e300", "-1e300", "1e25", "1.7e308"])
@pytest.mark.parametrize("share", [0.01, 0.4, 1.0])
def test_times_beyond_all_time(absurd, share, write) -> None:
    count = max(int(share * len(ROWS)), 1)
    rows = [f"{absurd},{row.partition(',')[2]}" if i < count else row for i, row in enumerate(ROWS)]
    with contextlib.suppress(TriageError):
        log = read_log([write("\n".join([HEADING, *rows]))])
        assert log.duration_s < 3.0


def test_signals_with_times_beyond_all_time(tmp_path) -> None:
    import asammdf

    time_s = np.concatenate((0.02 * np.arange(100), [1e307, 1.7e308]))
    with asammdf.MDF() as mdf:
        for corner in ("FL", "FR", "RL", "RR"):
            speed = 30.0 + 20.0 * (np.arange(time_s.size) % 9)
            mdf.append(asammdf.Signal(speed, time_s, name=f"WhlSpd_{corner}", unit="km/h"))
        mdf.save(tmp_path / "x.mf4")
    assert read_log([str(tmp_path / "x.mf4")]).duration_s == pytest.approx(1.98)


def test_edges_over_days_do_not_fill_the_memory(write) -> None:
    rows = [",".join([f"{0.01 * edge + 60_000 * (edge // 100):.4f}"] * 4) for edge in range(400)]
    with pytest.raises(DamagedLog, match="edges span 50 hours"):
        read_log([write("\n".join(["FL_edge_s,FR_edge_s,RL_edge_s,RR_edge_s", *rows]))])


def test_a_drive_of_centuries_does_not_fill_the_memory(write) -> None:
    heading = f"{HEADING},brake_pressed"
    rows = [f"{row},0" for row in ROWS]
    far = [f"{4.3e9 * 0.02 * i:.2f}{row[row.index(',') :]}" for i, row in enumerate(rows)]
    with contextlib.suppress(TriageError):
        log = read_log([write("\n".join([heading, *far]))])
        assert log.wheels["FL"].time_s.size <= len(far)


def test_instants_for_judging_are_bounded() -> None:
    assert even_times(1.0, 2.0, 0.25).tolist() == [1.0, 1.25, 1.5, 1.75]
    assert even_times(0.0, 1e14, 0.25).size == 4_000_000


@pytest.mark.parametrize("size", [1786, 65_535, 10**15])
def test_a_message_longer_than_any_is_read_without_checking_its_bits(size, write) -> None:
    database = write(SPEED_DBC.replace("WHL_SPD: 8", f"WHL_SPD: {size}"), "wheels.dbc")
    began = time.process_time()
    with contextlib.suppress(TriageError):
        log = read_log([write(FRAMES, "drive.log")], ReadOptions(databases=(database,)))
        assert f"is said to be {size} bytes long" in log.notices[0].message
    assert time.process_time() - began < 2.0


@pytest.mark.parametrize("bits", ["99999999999|16", "0|999999999", "14281|8"])
def test_signals_behind_any_message_are_refused(bits, write) -> None:
    database = write(SPEED_DBC.replace("WhlSpd_FL : 0|16", f"WhlSpd_FL : {bits}"), "wheels.dbc")
    with pytest.raises(DatabaseError, match="signal WhlSpd_FL: it begins or ends behind"):
        read_log([write(FRAMES, "drive.log")], ReadOptions(databases=(database,)))


@pytest.mark.parametrize("version", ["3.30", "4.10"])
@pytest.mark.parametrize("kind", ["DG", "CG", "CN"])
def test_blocks_in_a_circle(kind, version, tmp_path) -> None:
    import asammdf

    with asammdf.MDF(version=version) as mdf:
        for corner in ("FL", "FR", "RL", "RR"):
            mdf.append(asammdf.Signal(np.arange(50.0), 0.02 * np.arange(50), name=f"WhlSpd_{corner}"))
        file = Path(mdf.save(tmp_path / ("x.mf4" if version > "4" else "x.mdf"), overwrite=True))
    content = bytearray(file.read_bytes())
    with file.open("rb") as stream:
        follow_links(stream, len(content))
    block = content.index(b"##" + kind.encode()) if version > "4" else content.index(kind.encode(), 200)
    content[slice(*((block + 24, block + 32) if version > "4" else (block + 4, block + 8)))] = block.to_bytes(
        8 if version > "4" else 4, "little"
    )
    file.write_bytes(content)
    with pytest.raises(DamagedLog, match="in a circle"):
        read_log([str(file)])
