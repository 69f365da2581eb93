"""What every registered reader must do: one test over all rows of the registry."""

from __future__ import annotations

import contextlib
import itertools
import sqlite3
from collections.abc import Callable
from pathlib import Path

import can
import numpy as np
import pytest

from triage.errors import LogReadError
from triage.logs import ReadOptions, read_log
from triage.logs.archives import open_sources
from triage.logs.registry import READERS, recognise
from triage.progress import Cancelled


def by_library(suffix: str) -> Callable[..., bytes]:
    def make(drive, folder: Path, as_table) -> bytes:
        path = folder / f"made{suffix}"
        with can.Logger(str(path)) as writer:
            for message in drive.messages():
                writer.on_message_received(message)
        return path.read_bytes()

    return make


def make_sqlite(drive, folder: Path, as_table) -> bytes:
    path = folder / "made.db"
    with contextlib.closing(sqlite3.connect(path)) as base:
        base.execute("CREATE TABLE messages (ts, arbitration_id, extended, remote, error, dlc, data)")
        rows = [(m.timestamp, m.arbitration_id, 0, 0, 0, m.dlc, bytes(m.data)) for m in drive.messages()]
        base.executemany("INSERT INTO messages VALUES (?, ?, ?, ?, ?, ?, ?)", rows)
        base.commit()
    return path.read_bytes()


def make_frame_table(drive, folder: Path, as_table) -> bytes:
    rows = ["time,bus,id,extended,length,data"]
    rows += [f"{t:.6f},0,1A0,0,8,{d.hex()}" for t, d in zip(drive.time_s, drive.payloads(), strict=True)]
    return "\n".join(rows).encode()


def make_mdf(drive, folder: Path, as_table) -> bytes:
    import asammdf

    with asammdf.MDF() as mdf:
        for corner, speed in drive.kmh.items():
            mdf.append(asammdf.Signal(np.array(speed), drive.time_s, name=f"WhlSpd_{corner}", unit="km/h"))
        mdf.save(folder / "made.mf4", overwrite=True)
    return (folder / "made.mf4").read_bytes()


def as_frame(drive):
    import pandas as pd

    return pd.DataFrame({"time_s": drive.time_s, **{f"{c}_kmh": v for c, v in drive.kmh.items()}})


def make_workbook(drive, folder: Path, as_table) -> bytes:
    as_frame(drive).to_excel(folder / "made.xlsx", index=False)
    return (folder / "made.xlsx").read_bytes()


def make_parquet(drive, folder: Path, as_table) -> bytes:
    as_frame(drive).to_parquet(folder / "made.parquet")
    return (folder / "made.parquet").read_bytes()


def make_table(drive, folder: Path, as_table) -> bytes:
    return as_table(drive).encode()


def make_edge_times(drive, folder: Path, as_table) -> bytes:
    """A ring of 48 poles with errors of about one per cent, 2 m a turn, edge by edge."""
    shift = np.random.default_rng(7).normal(0.0, 0.01, 48)
    columns = []
    for speed in drive.mps.values():
        turn = np.concatenate(([0.0], np.cumsum(np.diff(drive.time_s) * (speed[1:] + speed[:-1]) / 4.0)))
        border = np.arange(1, int(turn[-1] * 48))
        rising = turn + 1e-9 * np.arange(turn.size)
        edges = np.interp((border + shift[border % 48]) / 48, rising, drive.time_s)
        columns.append([f"{edge:.7f}" for edge in edges])
    rows = [",".join(f"{corner}_edge_s" for corner in drive.mps)]
    rows += [",".join(row) for row in itertools.zip_longest(*columns, fillvalue="")]
    return "\n".join(rows).encode()


MAKERS: dict[str, Callable[..., bytes]] = {
    "blf": by_library(".blf"),
    "mdf": make_mdf,
    "parquet": make_parquet,
    "workbook": make_workbook,
    "sqlite": make_sqlite,
    "asc": by_library(".asc"),
    "trc": by_library(".trc"),
    "candump": by_library(".log"),
    "printed": by_library(".txt"),
    "frame-table": make_frame_table,
    "edge-times": make_edge_times,
    "table": make_table,
}
KINDS = [kind.id for kind in READERS]
KINDS_OF_SPEEDS = [kind for kind in KINDS if kind != "edge-times"]
"""Speeds formed from edges are means over a cycle; their round trip is in test_edge_times.py."""


@pytest.fixture
def made(drive, tmp_path, as_table) -> Callable[[str], bytes]:
    return lambda kind: MAKERS[kind](drive, tmp_path, as_table)


def test_every_reader_has_a_maker_here() -> None:
    assert set(MAKERS) == set(KINDS)
    assert len(set(KINDS)) == len(KINDS)


@pytest.mark.parametrize("kind", KINDS_OF_SPEEDS)
def test_round_trip(kind, made, write, dbc, drive) -> None:
    log = read_log([write(made(kind), "drive.dat")], ReadOptions(databases=(dbc,)))
    for corner, speed in drive.mps.items():
        np.testing.assert_allclose(log.wheels[corner].speed_mps, speed, atol=1e-9)
        assert not log.wheels[corner].invalid.any()
    assert log.duration_s == pytest.approx(drive.time_s[-1], abs=2e-3)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize(
    "name", ["drive.csv", "drive.blf", "drive", "Prüffahrt März #3 100% (Kopie) [€].log"]
)
def test_content_decides_whatever_the_name(kind, made, write, name) -> None:
    assert recognise(open_sources(write(made(kind), name))[0]).id == kind


@pytest.mark.parametrize("kind", KINDS)
def test_only_one_probe_is_sure(kind, made, write) -> None:
    source = open_sources(write(made(kind), "drive.dat"))[0]
    scores = {row.id: row.probe(source) for row in READERS}
    assert max(scores, key=lambda row: scores[row]) == kind
    assert all(0 <= score <= 1 for score in scores.values())


def read_or_refuse(file: str, dbc: str):
    try:
        return read_log([file], ReadOptions(databases=(dbc,))), None
    except LogReadError as refused:
        return None, refused


@pytest.mark.parametrize("kind", KINDS)
def test_cut_anywhere_loads_or_refuses(kind, made, write, dbc, drive) -> None:
    whole = made(kind)
    for share in (0.001, 0.01, 0.1, 0.35, 0.6, 0.9, 0.999):
        file = write(whole[: max(1, int(len(whole) * share))], "cut.dat")
        log, refused = read_or_refuse(file, dbc)
        if refused is not None:
            assert (refused.file, bool(refused.hint)) == (file, True)
            continue
        assert log.wheels["FL"].valid_count <= max(drive.time_s.size, 100 * drive.time_s[-1])
        assert np.nanmax(log.wheels["FL"].speed_mps) < 30


@pytest.mark.parametrize("kind", KINDS)
def test_single_flipped_bytes_load_or_refuse(kind, made, write, dbc) -> None:
    whole = bytearray(made(kind))
    rng = np.random.default_rng(3)
    for _ in range(12):
        broken = bytearray(whole)
        for place in rng.integers(0, min(len(broken), 4000), size=4):
            broken[place] = int(rng.integers(0, 256))
        with contextlib.suppress(LogReadError):
            read_log([write(bytes(broken), "flipped.dat")], ReadOptions(databases=(dbc,)))


@pytest.mark.parametrize("kind", KINDS)
def test_probes_and_readers_stand_anything(kind, write) -> None:
    row = next(row for row in READERS if row.id == kind)
    for content in (
        b"\x00",
        b"LOGG",
        b"MDF     ",
        b"SQLite format 3\x00",
        b"\xff" * 100,
        b",,,\n" * 100,
        b"(\n" * 99,
    ):
        assert 0 <= row.probe(open_sources(write(content, "x"))[0]) <= 1


@pytest.mark.parametrize("kind", KINDS)
def test_reading_can_be_cancelled(kind, made, write, dbc) -> None:
    def stop(fraction: float, stage: str) -> None:
        raise Cancelled

    with pytest.raises(Cancelled):
        read_log([write(made(kind), "drive.dat")], ReadOptions(databases=(dbc,)), stop)


@pytest.mark.parametrize("kind", KINDS)
def test_progress_never_falls_and_ends_at_one(kind, made, write, dbc) -> None:
    seen: list[float] = []

    def note(fraction: float, stage: str) -> None:
        seen.append(fraction)

    read_log([write(made(kind), "drive.dat")], ReadOptions(databases=(dbc,)), note)
    assert seen == sorted(seen)
    assert seen[-1] == 1.0


def test_folder_missing_file_and_device_are_refused(tmp_path) -> None:
    for path, word in (
        (tmp_path, "folder"),
        (tmp_path / "none.csv", "opened"),
        (Path("/dev/null"), "device"),
    ):
        with pytest.raises(LogReadError, match=word) as refused:
            read_log([path])
        assert refused.value.hint


def test_a_packed_bomb_is_refused(write, monkeypatch) -> None:
    import gzip

    from triage.logs import content

    monkeypatch.setattr(content, "MAX_UNPACKED_BYTES", 1 << 20)
    with pytest.raises(LogReadError, match="unpacks to more"):
        read_log(
            [
                write(
                    gzip.compress(b"time_s,FL_kmh,FR_kmh,RL_kmh,RR_kmh\n" + b"1,2,3,4,5\n" * 400_000),
                    "bomb.csv.gz",
                )
            ]
        )
