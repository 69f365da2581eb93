"""Every kind of frame file, written by python-can, must give the frames that were written."""

from __future__ import annotations

import contextlib
import gzip
import sqlite3
from pathlib import Path

import can
import numpy as np
import pytest

from triage.errors import DamagedLog, LogReadError, SignalMappingError
from triage.logs import ReadOptions, read_log
from triage.logs.asc import read_date

KINDS = ["log", "asc", "blf", "trc", "csv", "db"]


def write_frames(messages, path: str) -> str:
    if path.endswith(".db"):
        return write_database(messages, path)
    with can.Logger(path) as writer:
        for message in messages:
            writer.on_message_received(message)
    return path


def write_database(messages, path: str) -> str:
    """The library's own writer works in a thread and may drop what is queued when it is closed."""
    with contextlib.closing(sqlite3.connect(path)) as base:
        base.execute("CREATE TABLE messages (ts, arbitration_id, extended, remote, error, dlc, data)")
        rows = [
            (
                m.timestamp,
                m.arbitration_id,
                m.is_extended_id,
                m.is_remote_frame,
                m.is_error_frame,
                m.dlc,
                m.data,
            )
            for m in messages
        ]
        base.executemany("INSERT INTO messages VALUES (?, ?, ?, ?, ?, ?, ?)", rows)
        base.commit()
    return path


def codes(log) -> list[str]:
    return [notice.code for notice in log.notices]


def options(dbc) -> ReadOptions:
    return ReadOptions(databases=(dbc,))


def assert_same(log, drive, tol_s: float = 2e-3) -> None:
    for corner, speed in drive.mps.items():
        trace = log.wheels[corner]
        np.testing.assert_allclose(trace.speed_mps, speed, atol=1e-9)
        steps = trace.time_s - trace.time_s[0]
        np.testing.assert_allclose(steps, drive.time_s - drive.time_s[0], atol=tol_s)


@pytest.mark.parametrize("kind", KINDS)
def test_what_python_can_wrote_is_read_back(drive, dbc, tmp_path, kind) -> None:
    file = write_frames(drive.messages(), str(tmp_path / f"drive.{kind}"))
    log = read_log([file], options(dbc))
    assert_same(log, drive)
    assert log.wheels["FL"].resolution_mps == pytest.approx(0.01 / 3.6)
    assert "log-incomplete" not in codes(log)


@pytest.mark.parametrize("kind", KINDS)
def test_wrong_suffix_and_umlauts_in_the_path_do_not_matter(drive, dbc, tmp_path, kind) -> None:
    made = write_frames(drive.messages(), str(tmp_path / f"drive.{kind}"))
    folder = tmp_path / "Maß und Räder"
    folder.mkdir()
    renamed = folder / "Prüffahrt #3 100% [€].dat"
    renamed.write_bytes((tmp_path / f"drive.{kind}").read_bytes())
    assert made
    assert_same(read_log([str(renamed)], options(dbc)), drive)


@pytest.mark.parametrize("kind", KINDS)
def test_packed_frames(drive, dbc, tmp_path, kind) -> None:
    file = write_frames(drive.messages(), str(tmp_path / f"drive.{kind}"))
    packed = tmp_path / f"drive.{kind}.gz"
    packed.write_bytes(gzip.compress(Path(file).read_bytes()))
    assert_same(read_log([str(packed)], options(dbc)), drive)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("share", [0.3, 0.77])
def test_cut_files_give_what_stands_before_the_cut(drive, dbc, tmp_path, kind, share) -> None:
    file = tmp_path / f"drive.{kind}"
    write_frames(drive.messages(), str(file))
    whole = file.read_bytes()
    file.write_bytes(whole[: int(len(whole) * share)])
    try:
        log = read_log([str(file)], options(dbc))
    except (DamagedLog, SignalMappingError):
        assert kind in ("db", "blf")  # one packed block, or a torn database page
        return
    count = log.wheels["FL"].valid_count
    assert 0 < count < drive.time_s.size
    np.testing.assert_allclose(log.wheels["FL"].speed_mps, drive.mps["FL"][:count], atol=1e-9)


@pytest.mark.parametrize("kind", ["log", "asc", "blf", "csv"])
def test_error_and_remote_frames_are_counted_and_left_out(drive, dbc, tmp_path, kind) -> None:
    messages = drive.messages()
    for index in (100, 200, 300):
        stamp = messages[index].timestamp + 0.001
        messages.insert(index, can.Message(timestamp=stamp, arbitration_id=0x1A0, is_extended_id=False,
                                           is_remote_frame=True, dlc=8, channel=0))  # fmt: skip
    messages.insert(
        400, can.Message(timestamp=messages[400].timestamp, is_error_frame=True, channel=0, dlc=0)
    )
    log = read_log([write_frames(messages, str(tmp_path / f"drive.{kind}"))], options(dbc))
    assert log.wheels["FL"].valid_count == drive.time_s.size
    said = [notice for notice in log.notices if notice.code == "frames-skipped"]
    assert "3 remote frames" in said[0].message
    assert "1 error frames" in said[0].message


@pytest.mark.parametrize("kind", ["log", "asc", "blf"])
def test_fd_and_extended_frames(drive, tmp_path, write, wheels_dbc_text, kind) -> None:
    text = wheels_dbc_text.replace("BO_ 416 WHL_SPD: 8", f"BO_ {0x98FF210B} WHL_SPD: 12")
    messages = [
        can.Message(timestamp=m.timestamp, arbitration_id=0x18FF210B, is_extended_id=True, is_fd=True,
                    data=bytes(m.data) + b"\0\0\0\0", channel=0)
        for m in drive.messages()
    ]  # fmt: skip
    file = write_frames(messages, str(tmp_path / f"drive.{kind}"))
    assert_same(read_log([file], options(write(text, "fd.dbc"))), drive)


def test_same_number_standard_and_extended_are_two_messages(drive, dbc, tmp_path) -> None:
    messages = drive.messages()
    other = [
        can.Message(
            timestamp=m.timestamp + 0.004, arbitration_id=0x1A0, is_extended_id=True, data=b"\xff" * 8
        )
        for m in messages
    ]
    both = sorted([*messages, *other], key=lambda m: m.timestamp)
    assert_same(read_log([write_frames(both, str(tmp_path / "x.log"))], options(dbc)), drive)


def test_mdf_bus_logging_and_signals(drive, dbc, tmp_path) -> None:
    import asammdf

    with can.Logger(str(tmp_path / "frames.mf4")) as writer:
        for message in drive.messages():
            writer.on_message_received(message)
    assert_same(read_log([str(tmp_path / "frames.mf4")], options(dbc)), drive)
    with asammdf.MDF() as mdf:
        for corner, speed in drive.kmh.items():
            mdf.append(asammdf.Signal(speed, drive.time_s, name=f"WhlSpd_{corner}", unit="km/h"))
        mdf.save(tmp_path / "signals.mf4")
    assert_same(read_log([str(tmp_path / "signals.mf4")]), drive)


def screen(drive, form: str) -> str:
    lines = []
    last = 0.0
    for time_s, data in zip(drive.time_s, drive.payloads(), strict=True):
        clock = f"2026-03-10 14:05:{16 + time_s:09.6f}"
        stamp = form.format(t=1773151516 + time_s, z=time_s, d=time_s - last, c=clock)
        last = time_s
        lines.append(f" {stamp}  can0  1A0   [8]  {data.hex(' ').upper()}")
    return "\n".join(lines)


@pytest.mark.parametrize("form", ["({t:.6f})", "({z:010.6f})", "({d:010.6f})", "({c})"])
def test_candump_screen_output_with_every_kind_of_stamp(drive, dbc, write, form) -> None:
    assert_same(read_log([write(screen(drive, form), "screen.txt")], options(dbc)), drive, 1e-5)


def test_screen_output_without_stamps_cannot_be_placed_in_time(drive, dbc, write) -> None:
    with pytest.raises(SignalMappingError, match="without a readable time"):
        read_log([write(screen(drive, ""), "screen.txt")], options(dbc))


@pytest.mark.parametrize(
    "form",
    [
        ("hex", False, "\n", ""),
        ("dec", False, "\r\n", "\ufeff"),
        ("hex", True, "\r\n", "\ufeff"),
        ("dec", True, "\n", ""),
    ],
)
def test_asc_bases_and_stamps(drive, dbc, write, form) -> None:
    base, relative, newline, mark = form
    lines = [
        f"{mark}date Tue Mar 10 02:15:16.000 pm 2026",
        f"base {base}  timestamps {'relative' if relative else 'absolute'}",
        "internal events logged",
    ]
    last = 0.0
    for time_s, data in zip(drive.time_s, drive.payloads(), strict=True):
        cells = " ".join(f"{byte:02X}" if base == "hex" else str(byte) for byte in data)
        identifier = "1A0" if base == "hex" else "416"
        lines.append(f"{time_s - last if relative else time_s:11.6f} 1  {identifier:<15} Rx   d 8 {cells}")
        last = time_s
    log = read_log([write(newline.join(lines) + newline, "x.asc")], options(dbc))
    assert_same(log, drive, 1e-5)
    assert log.start is not None
    assert (log.start.month, log.start.hour) == (3, 14)


@pytest.mark.parametrize(
    ("text", "month", "hour"),
    [
        ("Tue Mar 10 02:15:16.000 pm 2026", 3, 14),
        ("Tue Mar 10 12:15:16.000 am 2026", 3, 0),
        ("Die Mär 10 14:15:16.123 2026", 3, 14),
        ("Mit Dez 2 14:15:16 2026", 12, 14),
        ("Sam Okt 31 07:00:00.5 2026", 10, 7),
        ("mar. août 4 09:00:00 2026", 8, 9),
    ],
)
def test_asc_dates(text, month, hour) -> None:
    instant = read_date(text)
    assert instant is not None
    assert (instant.month, instant.hour) == (month, hour)


@pytest.mark.parametrize("text", ["", "no date", "Tue Foo 10 14:15:16 2026", "Tue Feb 31 14:15:16 2026"])
def test_unreadable_asc_dates_are_none(text) -> None:
    assert read_date(text) is None


def test_blf_frames_and_times_are_those_of_python_can(drive, dbc, tmp_path, shared) -> None:
    file = shared / "data" / "highway_83hz" / "bus.blf"
    from triage.logs.archives import open_sources
    from triage.logs.blf import read_blf
    from triage.progress import no_progress

    theirs = [m for m in can.LogReader(str(file)) if m.arbitration_id == 170]
    ours = read_blf(open_sources(file)[0], frozenset((170,)), no_progress)
    assert [bytes(m.data) for m in theirs] == [row.tobytes() for row in ours.payload]
    steps = np.array([m.timestamp for m in theirs]) - theirs[0].timestamp
    np.testing.assert_allclose(ours.time_s - ours.time_s[0], steps, atol=1e-6)


def damaged_blf(drive, tmp_path, compression: int) -> bytearray:
    file = tmp_path / "drive.blf"
    with can.BLFWriter(str(file), compression_level=compression, max_container_size=8192) as writer:
        for message in drive.messages():
            writer.on_message_received(message)
    return bytearray(file.read_bytes())


@pytest.mark.parametrize("compression", [0, 6])
def test_zeros_over_a_part_of_a_blf_cost_one_container(drive, dbc, tmp_path, write, compression) -> None:
    content = damaged_blf(drive, tmp_path, compression)
    middle = len(content) // 2
    content[middle : middle + 64] = bytes(64)
    log = read_log([write(bytes(content), "zeros.blf")], options(dbc))
    assert "log-incomplete" in codes(log)
    lost = drive.time_s.size - log.wheels["FL"].valid_count
    assert 0 < lost < 0.5 * drive.time_s.size
    assert log.duration_s == pytest.approx(drive.time_s[-1], abs=0.05)


def test_blf_cut_anywhere_never_fails_otherwise_than_by_refusal(drive, dbc, tmp_path, write) -> None:
    content = bytes(damaged_blf(drive, tmp_path, 6))
    for cut in [*range(1, 200, 13), *range(200, len(content), 997)]:
        try:
            log = read_log([write(content[:cut], "cut.blf")], options(dbc))
        except LogReadError:
            continue
        assert log.wheels["FL"].valid_count <= drive.time_s.size


def test_a_hex_identifier_in_a_decimal_asc_costs_one_frame(drive, dbc, write) -> None:
    lines = ["date Tue Mar 10 02:15:16.000 pm 2026", "base dec  timestamps absolute"]
    for time_s, data in zip(drive.time_s, drive.payloads(), strict=True):
        lines.append(f"{time_s:11.6f} 1  416  Rx   d 8 {' '.join(map(str, data))}")
    lines[50] = lines[50].replace("416", "C16")
    log = read_log([write("\n".join(lines) + "\n", "x.asc")], options(dbc))
    assert log.wheels["FL"].valid_count == drive.time_s.size - 1
    assert "frames-skipped" in codes(log)


@pytest.mark.parametrize(("last", "cut"), [("8 255 255 1 2 3 4 5 6", False), ("8 255 255 1 2", True)])
def test_a_last_line_without_line_end_is_cut_only_when_bytes_lack(drive, dbc, write, last, cut) -> None:
    lines = ["date Tue Mar 10 02:15:16.000 pm 2026", "base dec  timestamps absolute"]
    for time_s, data in zip(drive.time_s, drive.payloads(), strict=True):
        lines.append(f"{time_s:11.6f} 1  416  Rx   d 8 {' '.join(map(str, data))}")
    lines.append(f"{drive.time_s[-1] + 0.02:11.6f} 1  5  Rx   d {last}")
    log = read_log([write("\n".join(lines), "x.asc")], options(dbc))
    assert ("log-incomplete" in codes(log)) == cut
