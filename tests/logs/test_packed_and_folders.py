"""Packed recordings, archives and folders of them, and files that are none or change meanwhile."""

from __future__ import annotations

import bz2
import contextlib
import gzip
import io
import lzma
import os
import socket
import threading
import zipfile
from pathlib import Path

import numpy as np
import pyarrow as pa
import pytest

from triage.errors import DamagedLog, LogReadError, UnknownLogFormat
from triage.logs import ReadOptions, content, read_log
from triage.logs.archives import open_sources
from triage.logs.source import text_source


def zstandard(data: bytes) -> bytes:
    return pa.Codec("zstd").compress(data, asbytes=True)


def zipped(members: dict[str, bytes], method: int = zipfile.ZIP_DEFLATED) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", method) as archive:
        for name, data in members.items():
            archive.writestr(name, data)
    return out.getvalue()


def halves(text: str) -> tuple[bytes, bytes]:
    lines = text.splitlines(keepends=True)
    return "".join(lines[:800]).encode(), "".join([lines[0], *lines[800:]]).encode()


def assert_same(log, drive) -> None:
    for corner, speed in drive.mps.items():
        np.testing.assert_allclose(log.wheels[corner].speed_mps, speed, atol=1e-9)


def codes(log) -> set[str]:
    return {notice.code for notice in log.notices}


PACKERS = [gzip.compress, bz2.compress, lzma.compress, zstandard, lambda data: zipped({"drive.csv": data})]


@pytest.mark.parametrize("pack", PACKERS, ids=["gz", "bz2", "xz", "zst", "zip"])
@pytest.mark.parametrize("name", ["drive.csv", "Fahrt ü #1 %.gz"])
def test_packed_by_content_not_by_suffix(drive, write, as_table, pack, name) -> None:
    assert_same(read_log([write(pack(as_table(drive).encode()), name)]), drive)


@pytest.mark.parametrize("pack", PACKERS, ids=["gz", "bz2", "xz", "zst", "zip"])
def test_cut_packed_files_load_or_refuse(drive, write, as_table, pack) -> None:
    packed = pack(as_table(drive).encode() * 4)
    for share in (0.02, 0.5, 0.95):
        file = write(packed[: int(len(packed) * share)], "cut.bin")
        with contextlib.suppress(DamagedLog, UnknownLogFormat):
            assert "log-incomplete" in codes(read_log([file]))


def test_members_of_an_archive_are_parts_and_other_files_are_said(drive, write, as_table, dbc) -> None:
    first, second = halves(as_table(drive))
    members = {"log 10.csv": second, "log 9.csv": first, "notes.txt": b"lamp on", "wheels.dbc": b"VERSION",
               "__MACOSX/log 9.csv": first, ".hidden.csv": first}  # fmt: skip
    log = read_log([write(zipped(members), "drive.zip")])
    assert_same(log, drive)
    assert any(n.code == "files-passed-over" and "notes.txt" in n.message for n in log.notices)


def test_an_archive_of_no_recordings_is_refused(write) -> None:
    with pytest.raises(UnknownLogFormat, match="none of the 2 files"):
        read_log([write(zipped({"a.txt": b"a", "b.txt": b"b"}), "x.zip")])
    with pytest.raises(DamagedLog, match="holds no file"):
        read_log([write(zipped({"folder/": b""}), "x.zip")])


@pytest.mark.parametrize("outer", [gzip.compress, lambda data: zipped({"inner.bin": data})])
@pytest.mark.parametrize("inner", [gzip.compress, lambda data: zipped({"drive.csv": data}), lzma.compress])
def test_an_archive_in_an_archive_is_refused(drive, write, as_table, outer, inner) -> None:
    with pytest.raises(DamagedLog, match="archive inside an archive") as refused:
        read_log([write(outer(inner(as_table(drive).encode())), "x.bin")])
    assert "Unpack" in refused.value.hint


@pytest.mark.parametrize(
    ("head", "word"),
    [(b"7z\xbc\xaf\x27\x1c", "7z"), (b"Rar!\x1a\x07\x01\x00", "RAR"), (b"\0" * 257 + b"ustar", "tar")],
)
def test_other_archives_are_named(write, head, word) -> None:
    with pytest.raises(DamagedLog, match=word):
        read_log([write(head + b"\0" * 500, "x.csv")])


def test_a_locked_archive_is_refused(drive, write, as_table) -> None:
    data = bytearray(zipped({"drive.csv": as_table(drive).encode()}))
    for magic, place in ((b"PK\x03\x04", 6), (b"PK\x01\x02", 8)):
        data[data.index(magic) + place] |= 1
    with pytest.raises(DamagedLog, match=r"cannot be unpacked.*(encrypted|password)"):
        read_log([write(bytes(data), "x.zip")])


@pytest.mark.parametrize("pack", [gzip.compress, bz2.compress, lambda data: zipped({"x.csv": data})])
def test_expansion_is_bounded(write, monkeypatch, pack) -> None:
    monkeypatch.setattr(content, "_FREE_BYTES", 1 << 20)
    with pytest.raises(DamagedLog, match="times its size"):
        read_log(
            [write(pack(b"time_s,FL_kmh,FR_kmh,RL_kmh,RR_kmh\n" + b"0,0,0,0,0\n" * 800_000), "bomb.csv")]
        )


def test_an_archive_of_very_many_files_is_refused_before_it_is_listed(write) -> None:
    many = zipped({f"{i:040d}.csv": b"" for i in range(12_000)}, zipfile.ZIP_STORED)
    with pytest.raises(DamagedLog, match="more than 1000 files"):
        read_log([write(many, "x.zip")])


def test_ten_gigabytes_without_a_line_end_are_refused_at_once(tmp_path) -> None:
    for first in (b"7" * (1 << 20), b"\0"):
        with (tmp_path / "huge.csv").open("wb") as file:
            file.write(first)
            file.truncate(10 << 30)  # takes no room on the disk
        with pytest.raises(LogReadError):
            read_log([tmp_path / "huge.csv"])


def test_an_endless_line_behind_good_ones_is_refused(drive, write, as_table) -> None:
    text = as_table(drive) + "7" * (3 << 20)
    with pytest.raises(DamagedLog, match=r"byte 1048576: a line of more than a million"):
        read_log([write(text)])


def test_blocks_are_the_file_and_say_how_far_they_are(write) -> None:
    data = np.random.default_rng(1).bytes(3_300_000)
    for pack in (bytes, gzip.compress):
        source = open_sources(write(pack(data), "x.bin"))[0]
        read = list(source.blocks())
        assert b"".join(block for _, block in read) == data == source.data
        assert max(len(block) for _, block in read) <= 1 << 20
        shares = [share for share, _ in read]
        assert shares == sorted(shares)
        assert shares[-1] == pytest.approx(1.0, abs=0.01)


def test_a_folder_of_parts_is_one_drive(drive, tmp_path, as_table) -> None:
    folder = tmp_path / "Fahrt [1] – 100%"
    folder.mkdir()
    first, second = halves(as_table(drive))
    (folder / "b.csv").write_bytes(first)
    (folder / "a.csv.gz").write_bytes(gzip.compress(second))
    (folder / "car.dbc").write_text("VERSION")
    (folder / ".part").write_bytes(first)
    log = read_log([folder])
    assert_same(log, drive)
    assert any(n.code == "files-passed-over" and "car.dbc" in n.message for n in log.notices)


def test_a_folder_of_one_recording_is_that_recording(drive, tmp_path, as_table) -> None:
    (tmp_path / "x.csv").write_text(as_table(drive))
    log = read_log([tmp_path])
    assert_same(log, drive)
    assert log.notices == ()


def test_a_folder_of_several_drives_asks_for_one(drive, tmp_path, as_table) -> None:
    for name in ("Monday.csv", "Tuesday.csv"):
        (tmp_path / name).write_text(as_table(drive))
    with pytest.raises(LogReadError, match=r"do not join to one drive.*Monday.csv.*Tuesday.csv") as refused:
        read_log([tmp_path])
    assert "Choose one" in refused.value.hint


def test_folders_without_a_recording_are_refused(tmp_path) -> None:
    (tmp_path / "inner").mkdir()
    (tmp_path / "a.txt").write_text("nothing")
    with pytest.raises(LogReadError, match="folder holds no recording"):
        read_log([tmp_path])


def test_parts_with_stamped_starts_join_in_any_order(drive, tmp_path, dbc) -> None:
    import can

    messages = drive.messages()
    for name, part in (("z.log", messages[:700]), ("a.log", messages[700:])):
        with can.Logger(str(tmp_path / name)) as writer:
            for message in part:
                writer.on_message_received(message)
    options = ReadOptions(databases=(dbc,))
    log = read_log([tmp_path], options)
    assert log.wheels["FL"].valid_count == drive.time_s.size
    np.testing.assert_allclose(log.wheels["FL"].time_s, drive.time_s, atol=2e-3)


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="pipes as files are a thing of Unix")
def test_pipes_and_sockets_are_refused_and_never_waited_for(tmp_path, monkeypatch) -> None:
    os.mkfifo(tmp_path / "pipe.csv")
    with socket.socket(socket.AF_UNIX) as listener:
        monkeypatch.chdir(tmp_path)  # the path of a socket must be short
        listener.bind("socket.csv")
        for name in ("pipe.csv", "socket.csv"):
            with pytest.raises(LogReadError, match="device or a pipe"):
                read_log([tmp_path / name])


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="pipes as files are a thing of Unix")
def test_a_pipe_put_in_the_place_of_the_file_is_not_waited_for(write) -> None:
    source = open_sources(write("a,b\n1,2\n"))[0]
    Path(source.name).unlink()
    os.mkfifo(source.name)
    done = threading.Event()

    def read() -> None:
        with pytest.raises(LogReadError):
            source.content.whole()
        done.set()

    worker = threading.Thread(target=read, daemon=True)
    worker.start()
    assert done.wait(10)


def test_a_file_that_vanishes_shrinks_or_is_written_anew_is_refused(write) -> None:
    for change, word in (
        (Path.unlink, "cannot be opened"),
        (lambda path: path.write_bytes(b"short"), "changed while"),
        (lambda path: os.utime(path, ns=(1, 1)), "changed while"),
    ):
        path = Path(write("time,FL\n" + "1,2\n" * 100))
        source = open_sources(path)[0]
        change(path)
        with pytest.raises(LogReadError, match=word) as refused:
            list(source.blocks())
        assert refused.value.hint


def test_what_is_appended_while_reading_is_left_out_and_said(write) -> None:
    path = Path(write(b"x" * 5000))
    source = open_sources(path)[0]
    with path.open("ab") as file:
        file.write(b"y" * 100)
    assert source.data == b"x" * 5000
    assert [notice.code for notice in source.notices] == ["log-incomplete"]


def test_names_with_any_character(drive, tmp_path, as_table) -> None:
    for name in ("a\nb.csv", "'quoted\" $(x);&|.csv", "\u202eksv.csv", "-rf.csv", "\udcff.csv", "x" * 250):
        (tmp_path / name).write_text(as_table(drive))
        assert_same(read_log([tmp_path / name]), drive)
        assert_same(read_log([str(tmp_path / name)]), drive)
    for name in ("", "a\0b", "y" * 5000):
        with pytest.raises(LogReadError) as refused:
            read_log([name])
        assert refused.value.hint


def test_content_is_released_after_reading(write) -> None:
    source = open_sources(write("1,2\n" * 10))[0]
    before = source.data
    assert source.data is before
    source.release()
    assert source.data is not before
    assert text_source(source, b"a\tb").data == b"a\tb"
    assert len(open_sources(source.name)) == 1
