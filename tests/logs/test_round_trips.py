"""What the writers of python-can and asammdf wrote, read back, equals what was written."""

from __future__ import annotations

import gzip
from collections.abc import Callable, Sequence
from pathlib import Path

import can
import numpy as np
import pytest
from can.io.logger import MESSAGE_WRITERS

from triage.logs import (
    asc,
    blf,
    candump,
    frame_tables,
    mdf_frames,
    other_frames,
    printed_frames,
    read_log,
    trc,
)
from triage.logs.archives import open_sources
from triage.logs.frames import Frames, frame_key
from triage.logs.mdf_frames import read_mdf_frames
from triage.progress import no_progress

CORNERS = ("FL", "FR", "RL", "RR")
EPOCH_S = 1_773_151_516.0
READERS: dict[str, Callable[..., Frames]] = {
    ".log": candump.read_candump,
    ".asc": asc.read_asc,
    ".blf": blf.read_blf,
    ".trc": trc.read_trc,
    ".csv": frame_tables.read_frame_table,
    ".db": other_frames.read_sqlite,
    ".txt": printed_frames.read_printed,
}
KEEP_NO_BUS = {".csv", ".db"}
NO_FD = {".trc"}


def read_frames(file: Path, wanted: frozenset[int]) -> Frames:
    if file.suffix != ".mf4":
        return READERS[file.suffix](open_sources(file)[0], wanted, no_progress)
    import asammdf

    with asammdf.MDF(file) as mdf:
        return read_mdf_frames(mdf, wanted, file.stat().st_size, no_progress)


def make_messages(count: int, *, fd: bool = False, buses: int = 1) -> list[can.Message]:
    """Frames of all lengths, standard and extended, 100 us to a tenth of a second apart."""
    rng = np.random.default_rng(8)
    time_s = np.round(EPOCH_S + np.cumsum(rng.uniform(1e-4, 0.1, count)), 3)
    sizes = (*range(9), 12, 16, 20, 24, 32, 48, 64) if fd else range(9)
    return [
        can.Message(
            timestamp=float(stamp),
            arbitration_id=0x18FEBF0B + number % 3 if number % 2 else 0x100 + number % 7,
            is_extended_id=bool(number % 2),
            is_fd=fd,
            channel=int(rng.integers(buses)),
            data=rng.bytes(int(rng.choice(sizes))),
        )
        for number, stamp in enumerate(time_s)
    ]


def write_messages(file: Path, messages: Sequence[can.Message], **options: object) -> Path:
    with can.Logger(str(file), **options) as writer:
        for message in messages:
            writer.on_message_received(message)
    return file


def wanted_of(messages: Sequence[can.Message]) -> frozenset[int]:
    return frozenset(frame_key(one.arbitration_id, extended=one.is_extended_id) for one in messages)


def assert_equal(frames: Frames, messages: Sequence[can.Message]) -> None:
    keys = [frame_key(one.arbitration_id, extended=one.is_extended_id) for one in messages]
    assert frames.key.tolist() == keys
    assert frames.length.tolist() == [len(one.data) for one in messages]
    assert [bytes(row[:size]) for row, size in zip(frames.payload, frames.length, strict=True)] == [
        bytes(one.data) for one in messages
    ]
    assert dict(frames.seen) == {key: keys.count(key) for key in set(keys)}
    times = np.array([one.timestamp for one in messages])
    np.testing.assert_allclose(frames.time_s - frames.time_s[0], times - times[0], atol=1e-6)
    assert not frames.notices
    assert not frames.odd


def assert_same_buses(frames: Frames, messages: Sequence[can.Message], *, kept: bool) -> None:
    """Each channel has one name of its own, or all have one where the file does not tell them apart."""
    pairs = {(frames.bus[i], one.channel) for i, one in zip(frames.bus_index, messages, strict=True)}
    channels = {channel for _, channel in pairs}
    assert len(channels) > 1
    assert len(pairs) == len(channels)
    assert len({name for name, _ in pairs}) == (len(channels) if kept else 1)


@pytest.mark.parametrize("what", ["classic", "fd", "buses"])
@pytest.mark.parametrize("suffix", sorted(MESSAGE_WRITERS))
def test_every_writer_of_frames(
    suffix: str, what: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    if what == "fd" and suffix in NO_FD:
        pytest.skip("the library writes no such frames into this kind")
    # The thread of this writer may drop what comes after its first write.
    monkeypatch.setattr(can.SqliteWriter, "MAX_TIME_BETWEEN_WRITES", 3600.0)
    messages = make_messages(400, fd=what == "fd", buses=3 if what == "buses" else 1)
    file = write_messages(tmp_path / f"frames{suffix}", messages)
    frames = read_frames(file, wanted_of(messages))
    assert_equal(frames, messages)
    if what == "buses":
        assert_same_buses(frames, messages, kept=suffix not in KEEP_NO_BUS)


def test_the_older_columns_of_trc(tmp_path: Path) -> None:
    messages = make_messages(300)
    with can.TRCWriter(tmp_path / "old.trc") as writer:
        writer.file_version = can.TRCFileVersion.V1_0
        for message in messages:
            writer.on_message_received(message)
    # This version has tenths of milliseconds and no bus.
    rounded = read_frames(tmp_path / "old.trc", wanted_of(messages))
    assert_equal(rounded, messages)


@pytest.mark.parametrize("suffix", [".asc.gz", ".csv.gz", ".log.gz", ".trc.gz", ".txt.gz"])
def test_packed_by_the_writer(suffix: str, tmp_path: Path) -> None:
    messages = make_messages(100)
    file = write_messages(tmp_path / f"frames{suffix}", messages)
    kind = READERS[Path(file.stem).suffix]
    assert_equal(kind(open_sources(file)[0], wanted_of(messages), no_progress), messages)


@pytest.mark.parametrize("compression", [0, 1, 2])
@pytest.mark.parametrize("version", ["4.00", "4.10", "4.11", "4.20"])
def test_bus_recordings_of_asammdf(
    version: str, compression: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    import asammdf

    monkeypatch.setattr(mdf_frames, "RECORDS_AT_ONCE", 100)
    messages = make_messages(700, buses=2)
    write_messages(tmp_path / "raw.mf4", messages)
    with asammdf.MDF(tmp_path / "raw.mf4") as raw:
        raw.configure(write_fragment_size=8192)  # about a hundred records
        converted = raw.convert(version)
        converted.configure(write_fragment_size=8192)
        converted.save(tmp_path / "kept.mf4", compression=compression, overwrite=True)
        converted.close()
    frames = read_frames(tmp_path / "kept.mf4", wanted_of(messages))
    assert_equal(frames, messages)
    assert_same_buses(frames, messages, kept=True)


def make_speeds(kind: str) -> tuple[np.ndarray, dict[str, np.ndarray]]:
    time_s = np.arange(0.0, 30.0, 0.02)
    shape = 50.0 * np.minimum(np.minimum(time_s / 6.0, (30.0 - time_s) / 6.0), 1.0)
    raw = {
        corner: np.round(100.0 * (shape + 0.05 * np.sin(time_s * (1 + n)) ** 2))
        for n, corner in enumerate(CORNERS)
    }
    whole = {"uint16": np.uint16, "int32": np.int32, ">u2": ">u2"}
    return time_s, {
        corner: value.astype(whole[kind]) if kind in whole else (value / 100.0).astype(kind)
        for corner, value in raw.items()
    }


@pytest.mark.parametrize("together", [True, False])
@pytest.mark.parametrize("kind", ["float64", "float32", "uint16", "int32", ">u2"])
@pytest.mark.parametrize(
    ("version", "compression"),
    [("2.14", 0), ("3.30", 0), ("4.00", 0), ("4.10", 1), ("4.11", 2), ("4.20", 0), ("4.20", 2)],
)
def test_signals_of_asammdf(
    version: str, compression: int, kind: str, together: bool, tmp_path: Path
) -> None:
    import asammdf

    time_s, speeds = make_speeds(kind)
    whole = np.dtype(kind).kind in "ui"
    signals = [
        asammdf.Signal(
            value,
            time_s,
            name=f"WhlSpd_{corner}",
            unit="km/h",
            conversion={"a": 0.01, "b": 0.0} if whole else None,
        )
        for corner, value in speeds.items()
    ]
    file = tmp_path / ("speeds.mf4" if version >= "4" else "speeds.mdf")
    with asammdf.MDF(version=version) as mdf:
        for group in [signals] if together else [[one] for one in signals]:
            mdf.append(group)
        mdf.save(file, compression=compression)
    log = read_log([str(file)])
    for corner, value in speeds.items():
        kmh = value.astype(np.float64) * (0.01 if whole else 1.0)
        trace = next(one for own, one in log.wheels.items() if own == corner)
        np.testing.assert_allclose(trace.speed_mps, kmh / 3.6, rtol=0, atol=1e-9)
        np.testing.assert_allclose(trace.time_s - trace.time_s[0], time_s, atol=1e-9)
        assert not trace.invalid.any()


@pytest.mark.parametrize("version", ["2.14", "3.30", "4.10"])
def test_packed_signals_of_asammdf(version: str, tmp_path: Path) -> None:
    import asammdf

    time_s, speeds = make_speeds("float64")
    steady = {corner: np.round(value) for corner, value in speeds.items()}  # packs well
    with asammdf.MDF(version=version) as mdf:
        mdf.append(
            [
                asammdf.Signal(value, time_s, name=f"WhlSpd_{corner}", unit="km/h")
                for corner, value in steady.items()
            ]
        )
        file = Path(mdf.save(tmp_path / "speeds.mdf", overwrite=True))
    packed = tmp_path / "packed.mdf.gz"
    packed.write_bytes(gzip.compress(file.read_bytes()))
    assert packed.stat().st_size < file.stat().st_size / 3
    log = read_log([str(packed)])
    for corner, trace in log.wheels.items():
        np.testing.assert_allclose(trace.speed_mps, steady[corner] / 3.6, rtol=0, atol=1e-9)
