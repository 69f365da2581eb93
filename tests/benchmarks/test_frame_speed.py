"""Reading frames, held against python-can and cantools frame by frame in the same process.

Both sides keep the times and payloads of four of forty messages; the library side decodes them too, so that
it does no more than its users do. Processor time, for both sides wait for the same disk. The most memory is
that of a fresh process.
"""

from __future__ import annotations

import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import can
import cantools
import numpy as np
import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from triage.logs import asc, blf, candump, trc
from triage.logs.archives import open_sources
from triage.logs.databases import load_databases
from triage.logs.frames import Frames
from triage.logs.mdf import read_mdf
from triage.progress import no_progress

Note = Callable[[str, str, str], None]

READERS: dict[str, tuple[Callable[..., Frames], float]] = {
    "log": (candump.read_candump, 15.0),
    "asc": (asc.read_asc, 15.0),
    "blf": (blf.read_blf, 10.0),
    "trc": (trc.read_trc, 8.0),
}
"""Reader by kind, and how many times faster it shall be."""

MESSAGES = 40
WANTED = (0x100, 0x10A, 0x114, 0x11E)
FEW, MANY = 400_000, 4_000_000
WRITTEN = 40_000
"""So many frames are written by the library; a larger file repeats them, times and all."""

BLF_HEADER_BYTES = 144
MOST_GROWTH = 1.3
"""Of the time for a frame, from the few frames to the many."""

MOST_MEMORY = 3.0
"""Times what is kept of the frames."""

SPARE_BYTES = 200e6

_PEAK = """
import sys
from triage.logs import asc, blf, candump, trc
from triage.logs.archives import open_sources
from triage.progress import no_progress
kind, file, *wanted = sys.argv[1:]
read = {"log": candump.read_candump, "asc": asc.read_asc, "blf": blf.read_blf, "trc": trc.read_trc}[kind]
frames = read(open_sources(file)[0], frozenset(map(int, wanted)), no_progress)
columns = (frames.time_s, frames.key, frames.bus_index, frames.payload, frames.length)
status = open("/proc/self/status").read()
print(sum(column.nbytes for column in columns), int(status.partition("VmHWM:")[2].split()[0]) * 1024)
"""


def _write_frames(file: Path, frames: int) -> Path:
    """Write frames of forty messages, 5000 a second."""
    times = max(frames // WRITTEN, 1)
    small = file.with_name(f"part_{file.name}")
    _write_with_library(small, frames // times)
    head, body, tail = _parted(small.read_bytes(), file.suffix)
    with file.open("wb") as out:
        out.write(head)
        for _ in range(times):
            out.write(body)
        out.write(tail)
    return file


def _write_with_library(file: Path, frames: int) -> None:
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


def _parted(content: bytes, suffix: str) -> tuple[bytes, bytes, bytes]:
    """Take a file apart into what stands before, in and behind its frames."""
    if suffix == ".blf":
        return content[:BLF_HEADER_BYTES], content[BLF_HEADER_BYTES:], b""
    if suffix == ".log":
        return b"", content, b""
    lines = content.splitlines(keepends=True)
    begin = next(number for number, line in enumerate(lines) if b" Rx " in line)
    end = next(number for number in reversed(range(len(lines))) if b" Rx " in lines[number]) + 1
    return b"".join(lines[:begin]), b"".join(lines[begin:end]), b"".join(lines[end:])


def _database_text(signals: dict[int, str]) -> str:
    messages = "".join(f"BO_ {key} M{key}: 8 X\n{text}\n" for key, text in signals.items())
    return f'VERSION ""\nNS_ :\nBS_:\nBU_: X\n{messages}'


def _cpu_s(work: Callable[[], object]) -> float:
    begin = time.process_time()
    work()
    return time.process_time() - begin


def _read_with_library(file: Path) -> Iterator[tuple[float, bytes]]:
    four = "".join(f' SG_ S{k} : {16 * k}|16@1+ (0.01,0) [0|655] "km/h" X\n' for k in range(4))
    keys = range(0x100, 0x100 + MESSAGES)
    database = cantools.database.load_string(_database_text(dict.fromkeys(keys, four)), "dbc")
    wanted = frozenset(WANTED)
    with can.LogReader(str(file)) as reader:
        for message in reader:
            if message.arbitration_id in wanted:
                database.decode_message(message.arbitration_id, message.data)
                yield message.timestamp, bytes(message.data)


@pytest.fixture(scope="module", params=READERS)
def kind(request: pytest.FixtureRequest) -> str:
    found: str = request.param
    return found


@pytest.fixture(scope="module")
def files(kind: str, tmp_path_factory: pytest.TempPathFactory) -> Iterator[dict[int, Path]]:
    """Files of few and of many frames; hundreds of megabytes, so they do not stay."""
    folder = tmp_path_factory.mktemp(f"frames_{kind}")
    found = {frames: _write_frames(folder / f"{frames}.{kind}", frames) for frames in (FEW, MANY)}
    yield found
    for file in folder.iterdir():
        file.unlink()


def _own_s(kind: str, file: Path, rounds: int) -> float:
    read = READERS[kind][0]
    return min(
        _cpu_s(lambda: read(open_sources(file)[0], frozenset(WANTED), no_progress)) for _ in range(rounds)
    )


@pytest.mark.parametrize("frames", [FEW, MANY])
def test_frames_against_the_library(
    kind: str, frames: int, files: dict[int, Path], benchmark: BenchmarkFixture, note: Note
) -> None:
    read, least = READERS[kind]
    file = files[frames]
    own = benchmark.pedantic(lambda: read(open_sources(file)[0], frozenset(WANTED), no_progress), rounds=2)
    own_s = _own_s(kind, file, 5 if frames == FEW else 2)
    found: list[tuple[float, bytes]] = []
    library_s = _cpu_s(lambda: found.extend(_read_with_library(file)))
    ratio = library_s / own_s
    note(
        f"{frames:>7} frames, {kind}: python-can and cantools ({library_s:.2f} s) / ours ({own_s:.3f} s)",
        f"{ratio:.1f}",
        f">= {least:g}",
    )
    assert [row.tobytes() for row in own.payload] == [data for _, data in found]
    times = np.array([stamp for stamp, _ in found])
    np.testing.assert_allclose(np.diff(own.time_s), np.diff(times), atol=1e-6)
    assert ratio >= least


def test_time_grows_with_the_frames(
    kind: str, files: dict[int, Path], benchmark: BenchmarkFixture, note: Note
) -> None:
    few_s = _own_s(kind, files[FEW], 5)
    many_s = benchmark.pedantic(lambda: _own_s(kind, files[MANY], 2), rounds=1)
    growth = many_s / few_s * FEW / MANY
    note(f"{kind}: time per frame, {MANY} / {FEW} frames", f"{growth:.2f}", f"<= {MOST_GROWTH}")
    assert growth <= MOST_GROWTH


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="reads the peak from /proc")
def test_memory_is_bounded_by_what_is_wanted(
    kind: str, files: dict[int, Path], benchmark: BenchmarkFixture, note: Note
) -> None:
    command = [sys.executable, "-c", _PEAK, kind, str(files[MANY]), *map(str, WANTED)]
    out = benchmark.pedantic(lambda: subprocess.check_output(command, text=True), rounds=1)
    kept, peak = map(int, out.split())
    most = MOST_MEMORY * kept + SPARE_BYTES
    note(f"{kind}: peak memory, {MANY} frames, MB", f"{peak / 1e6:.0f}", f"<= {most / 1e6:.0f}")
    assert peak <= most


def test_bus_recording_against_its_library(benchmark: BenchmarkFixture, tmp_path: Path, note: Note) -> None:
    import asammdf

    file = tmp_path / "frames.mf4"
    _write_with_library(file, FEW)
    speed = ' SG_ WhlSpd_{} : 0|16@1+ (0.01,0) [0|655] "km/h" X\n'
    corners = zip(WANTED, ("FL", "FR", "RL", "RR"), strict=True)
    database = tmp_path / "wheels.dbc"
    database.write_text(_database_text({key: speed.format(corner) for key, corner in corners}))
    wanted = load_databases([str(database)], {})

    def extract() -> np.ndarray:
        with asammdf.MDF(file) as mdf:
            found = mdf.extract_bus_logging({"CAN": [(database, 0)]})
            samples: np.ndarray = found.get("WhlSpd_FL").samples
            return samples

    own = benchmark.pedantic(lambda: read_mdf(open_sources(file)[0], wanted, no_progress), rounds=2)
    own_s = min(_cpu_s(lambda: read_mdf(open_sources(file)[0], wanted, no_progress)) for _ in range(3))
    library_s = min(_cpu_s(extract) for _ in range(3))
    note(
        f"{FEW:>7} frames, mf4: asammdf ({library_s:.2f} s) / ours ({own_s:.3f} s)",
        f"{library_s / own_s:.1f}",
        ">= 1",
    )
    speed_of_first = next(one for one in own.signals if one.name == "M256.WhlSpd_FL")
    there = ~np.isnan(speed_of_first.value)  # the highest numbers are codes for no value
    np.testing.assert_array_equal(speed_of_first.value[there], extract()[there])
    assert there.mean() > 0.9
    assert library_s >= own_s
