"""Reading frames, held against python-can and cantools frame by frame in the same process.

Both sides keep the times and payloads of four of forty messages; the library side decodes them too, so that
it does no more than its users do. Processor time, for both sides wait for the same disk.
"""

from __future__ import annotations

import time
from collections.abc import Callable
from pathlib import Path

import can
import cantools
import numpy as np
import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from triage.logs import asc, blf, candump, trc
from triage.logs.frames import Frames
from triage.logs.source import open_source
from triage.progress import no_progress

Note = Callable[[str, str, str], None]

READERS: dict[str, tuple[Callable[..., Frames], float]] = {
    "log": (candump.read_candump, 15.0),
    "asc": (asc.read_asc, 15.0),
    "blf": (blf.read_blf, 10.0),
    "trc": (trc.read_trc, 8.0),
}
"""Reader by kind, and how many times faster it shall be."""

FRAMES = 400_000
MESSAGES = 40
WANTED = (0x100, 0x10A, 0x114, 0x11E)
MOST_GROWTH = 1.3
"""Of the time for a frame, from a tenth of the frames to all."""


def _database() -> cantools.database.Database:
    signals = "".join(f' SG_ S{k} : {16 * k}|16@1+ (0.01,0) [0|655] "km/h" X\n' for k in range(4))
    messages = "".join(f"BO_ {0x100 + i} M{i}: 8 X\n{signals}\n" for i in range(MESSAGES))
    return cantools.database.load_string(f'VERSION ""\nNS_ :\nBS_:\nBU_: X\n{messages}', "dbc")


def _write(file: Path, frames: int) -> Path:
    rng = np.random.default_rng(1)
    time_s = 1.7e9 + np.cumsum(rng.uniform(1e-4, 3e-4, frames))
    data = rng.integers(0, 256, (frames, 8), dtype=np.uint8)
    with can.Logger(str(file)) as logger:
        for number in range(frames):
            logger.on_message_received(
                can.Message(
                    timestamp=float(time_s[number]),
                    arbitration_id=0x100 + number % MESSAGES,
                    is_extended_id=False,
                    channel=0,
                    data=data[number].tobytes(),
                )
            )
    return file


def _cpu_s(work: Callable[[], object]) -> float:
    begin = time.process_time()
    work()
    return time.process_time() - begin


def _read_with_library(file: Path, database: cantools.database.Database) -> list[tuple[float, bytes]]:
    wanted = frozenset(WANTED)
    found = []
    with can.LogReader(str(file)) as reader:
        for message in reader:
            if message.arbitration_id in wanted:
                database.decode_message(message.arbitration_id, message.data)
                found.append((message.timestamp, bytes(message.data)))
    return found


@pytest.mark.parametrize("kind", READERS)
def test_frames_against_the_library(
    kind: str, benchmark: BenchmarkFixture, tmp_path: Path, note: Note
) -> None:
    read, least = READERS[kind]
    file = _write(tmp_path / f"frames.{kind}", FRAMES)
    few = _write(tmp_path / f"few.{kind}", FRAMES // 10)
    frames = benchmark.pedantic(lambda: read(open_source(file), frozenset(WANTED), no_progress), rounds=3)
    own_s = min(_cpu_s(lambda: read(open_source(file), frozenset(WANTED), no_progress)) for _ in range(5))
    few_s = min(_cpu_s(lambda: read(open_source(few), frozenset(WANTED), no_progress)) for _ in range(5))
    found: list[tuple[float, bytes]] = []
    database = _database()
    library_s = _cpu_s(lambda: found.extend(_read_with_library(file, database)))
    ratio = library_s / own_s
    note(
        f"{FRAMES} frames, {kind}: python-can and cantools ({library_s:.2f} s) / ours",
        f"{ratio:.1f}",
        f">= {least:g}",
    )
    note(
        f"{kind}: time per frame, all / a tenth of the frames",
        f"{own_s / few_s / 10.0:.2f}",
        f"<= {MOST_GROWTH}",
    )
    assert [row.tobytes() for row in frames.payload] == [data for _, data in found]
    times = np.array([stamp for stamp, _ in found])
    np.testing.assert_allclose(np.diff(frames.time_s), np.diff(times), atol=1e-6)
    assert ratio >= least
