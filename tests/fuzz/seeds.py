"""Small sound recordings of every kind, to be broken."""

from __future__ import annotations

import contextlib
import gzip
import sqlite3
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import numpy as np

ROOT = Path(__file__).resolve().parents[2]
SHARED = ROOT.parent / "shared"
CORNERS = ("FL", "FR", "RL", "RR")
ROWS = 120
TEXT_BYTES = 7000
BINARY_BYTES = 50_000
TOLD_DBC = b"""
CM_ SG_ 416 WhlSpd_FL "front left";
VAL_ 416 WhlSpd_FL 65535 "SNA" ;
"""
DBC = ROOT.joinpath("tests", "wheels.dbc").read_bytes() + TOLD_DBC


@dataclass(frozen=True)
class Seed:
    """A recording, and the database that explains its frames (empty: none)."""

    name: str
    data: bytes
    database: bytes = b""


def all_seeds(folder: Path) -> list[Seed]:
    """Make or find every seed; ``folder`` is for files on the way."""
    return [*_made(folder), *_samples(), *_cases(), *_drives()]


def _speeds() -> tuple[np.ndarray, dict[str, np.ndarray]]:
    time_s = np.round(np.arange(ROWS) * 0.02, 6)
    rng = np.random.default_rng(5)
    kmh = {corner: np.round(40 + 10 * np.sin(time_s) + rng.normal(0, 0.05, ROWS), 2) for corner in CORNERS}
    return time_s, kmh


def _made(folder: Path) -> Iterator[Seed]:
    time_s, kmh = _speeds()
    names = [f"{corner}_kmh" for corner in CORNERS]
    rows = np.stack([time_s, *kmh.values()], axis=1)
    text = "\n".join([",".join(["time_s", *names]), *(",".join(f"{x:.2f}" for x in row) for row in rows)])
    yield Seed("made.csv", text.encode())
    yield Seed("made-german.csv", text.replace(",", ";").replace(".", ",").encode("cp1252"))
    yield Seed("made.csv.gz", gzip.compress(text.encode()))
    yield _long_table(time_s, kmh)
    yield _edge_times()
    yield from _frame_logs(folder)
    yield from _frame_texts(time_s)
    yield from _by_tables(folder, time_s, kmh)
    yield from _by_mdf(folder, time_s, kmh)


def _long_table(time_s: np.ndarray, kmh: dict[str, np.ndarray]) -> Seed:
    rows = ["time,signal,value"]
    rows += [f"{t:.2f},WhlSpd_{c},{v:.2f}" for c in CORNERS for t, v in zip(time_s, kmh[c], strict=True)]
    return Seed("long.csv", "\n".join(rows).encode())


def _edge_times() -> Seed:
    rows = [",".join(f"{corner}_edge_s" for corner in CORNERS)]
    rows += [",".join(f"{0.0035 * i + 1e-4 * c:.7f}" for c in range(4)) for i in range(200)]
    return Seed("edges.csv", "\n".join(rows).encode())


def _payloads() -> list[bytes]:
    _, kmh = _speeds()
    table = np.stack([np.round(kmh[corner] * 100) for corner in CORNERS], axis=1).astype("<u2")
    return [row.tobytes() for row in table]


def _frame_logs(folder: Path) -> Iterator[Seed]:
    import can

    for suffix in (".log", ".asc", ".blf", ".trc", ".txt", ".csv", ".mf4"):
        path = folder / f"frames{suffix}"
        with can.Logger(str(path)) as writer:
            for index, data in enumerate(_payloads()):
                for identifier, extended in ((0x1A0, False), (0x18FEBF0B, True)):
                    stamp = 1773151516.0 + 0.02 * index
                    writer.on_message_received(can.Message(stamp, identifier, extended, data=data, channel=0))
        yield Seed(path.name, path.read_bytes(), DBC)


def _frame_texts(time_s: np.ndarray) -> Iterator[Seed]:
    stamped = list(zip(time_s, _payloads(), strict=True))
    table = ["time,bus,id,extended,length,data", *(f"{t:.6f},0,1A0,0,8,{d.hex()}" for t, d in stamped)]
    yield Seed("frame-table.csv", "\n".join(table).encode(), DBC)
    plain = [f" can0  1A0   [8]  {d.hex(' ').upper()}" for _, d in stamped]
    yield Seed("plain.txt", "\n".join(plain).encode(), DBC)
    path_rows = [(float(t), 0x1A0, 0, 0, 0, 8, d) for t, d in stamped]
    with contextlib.closing(sqlite3.connect(":memory:")) as base:
        base.execute("CREATE TABLE messages (ts, arbitration_id, extended, remote, error, dlc, data)")
        base.executemany("INSERT INTO messages VALUES (?, ?, ?, ?, ?, ?, ?)", path_rows)
        base.commit()
        yield Seed("frames.db", base.serialize(), DBC)


def _by_tables(folder: Path, time_s: np.ndarray, kmh: dict[str, np.ndarray]) -> Iterator[Seed]:
    import pandas as pd

    frame = pd.DataFrame({"time_s": time_s, **{f"{corner}_kmh": values for corner, values in kmh.items()}})
    frame.head(60).to_excel(folder / "made.xlsx", index=False)
    yield Seed("made.xlsx", (folder / "made.xlsx").read_bytes())
    for packing in ("snappy", "none"):
        frame.to_parquet(folder / "made.parquet", compression=None if packing == "none" else packing)
        yield Seed(f"{packing}.parquet", (folder / "made.parquet").read_bytes())


def _by_mdf(folder: Path, time_s: np.ndarray, kmh: dict[str, np.ndarray]) -> Iterator[Seed]:
    import asammdf

    for version, suffix in (("4.10", ".mf4"), ("3.30", ".mdf")):
        path = folder / f"signals{suffix}"
        with asammdf.MDF(version=version) as mdf:
            for corner, values in kmh.items():
                mdf.append(asammdf.Signal(values, time_s, name=f"WhlSpd_{corner}", unit="km/h"))
            mdf.save(path, overwrite=True, compression=0)
        yield Seed(path.name, path.read_bytes())


def _samples() -> Iterator[Seed]:
    for path in sorted((ROOT / "sample_logs").glob("*.csv*")):
        yield Seed(path.name.removesuffix(".gz"), _begin_of(path))


def _cases() -> Iterator[Seed]:
    for folder in sorted((SHARED / "cases").glob("*/")):
        databases = sorted(folder.glob("*.dbc"))
        database = databases[0].read_bytes() if databases else b""
        for path in sorted(folder.rglob("*")):
            if path.is_file() and path.suffix not in (".toml", ".dbc"):
                yield Seed(path.name, _begin_of(path), database)


def _drives() -> Iterator[Seed]:
    for path in sorted((SHARED / "data").glob("*/*")):
        if path.suffix in (".csv", ".gz", ".blf"):
            database = path.with_name("bus.dbc")
            yield Seed(
                f"{path.parent.name}-{path.name.removesuffix('.gz')}",
                _begin_of(path),
                database.read_bytes() if database.exists() else b"",
            )


def _begin_of(path: Path) -> bytes:
    data = gzip.decompress(path.read_bytes()) if path.suffix == ".gz" else path.read_bytes()
    return data[:BINARY_BYTES] if b"\x00" in data[:4096] else data[:TEXT_BYTES]
