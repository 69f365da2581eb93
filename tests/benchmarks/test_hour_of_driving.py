"""Opening an hour of driving: reading and the whole triage, held against merely reading the table."""

from __future__ import annotations

import json
import statistics
import subprocess
import sys
import time
from collections.abc import Callable
from io import BytesIO
from pathlib import Path

import pandas as pd
import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from triage.evidence.rulebook import load_rulebook
from triage.logs import ReadOptions, read_log
from triage.run import TriageResult, run_triage

MOST_TIMES_PLAIN_READING = 25.0
MOST_MEMORY_BYTES = 1e9

RANK_AND_TELL_MEMORY = """
import sys
from pathlib import Path
from triage.command_line import main
code = main(["rank", sys.argv[1], "--json"])
# not getrusage: its peak is inherited from the process that started this one
peak = [line for line in Path("/proc/self/status").read_text().splitlines() if line.startswith("VmHWM")]
sys.stderr.write(peak[0].split()[1])
sys.exit(code)
"""


def time_s(work: Callable[[], object]) -> float:
    begin = time.perf_counter()
    work()
    return time.perf_counter() - begin


def test_time_against_plain_reading(
    benchmark: BenchmarkFixture, hour_csv: Path, note: Callable[[str, str, str], None]
) -> None:
    rulebook, text = load_rulebook(), hour_csv.read_bytes()

    def read_and_judge() -> TriageResult:
        return run_triage(read_log([str(hour_csv)], ReadOptions()), rulebook)

    plain_s: list[float] = []
    one_thread_s: list[float] = []

    def read_plainly() -> None:
        # just before every round, so that a busy machine slows both alike
        plain_s.extend(time_s(lambda: pd.read_csv(hour_csv)) for _ in range(3))
        # From a file object pandas reads in one thread, as it reads everything before version 3.1.
        one_thread_s.extend(time_s(lambda: pd.read_csv(BytesIO(text))) for _ in range(3))

    read_and_judge()
    result = benchmark.pedantic(read_and_judge, setup=read_plainly, rounds=7)
    usual_s = statistics.median(plain_s)
    ratio = benchmark.stats.stats.median / usual_s
    benchmark.extra_info["times_plain_reading"] = ratio
    note(f"hour, {hour_csv.stem}: time / pandas.read_csv ({usual_s:.3f} s)", f"{ratio:.1f}", "<= 25")
    alone_s = statistics.median(one_thread_s)
    alone = f"{benchmark.stats.stats.median / alone_s:.1f}"
    note(f"hour, {hour_csv.stem}: the same in one thread ({alone_s:.3f} s)", alone, "none")
    assert result.log.wheels["FL"].time_s.size >= 360_000
    assert ratio <= MOST_TIMES_PLAIN_READING


@pytest.mark.skipif(not Path("/proc/self/status").exists(), reason="peak memory is read from Linux's /proc")
def test_memory(benchmark: BenchmarkFixture, hour_csv: Path, note: Callable[[str, str, str], None]) -> None:
    command = [sys.executable, "-c", RANK_AND_TELL_MEMORY, str(hour_csv)]

    def rank() -> subprocess.CompletedProcess[str]:
        return subprocess.run(command, capture_output=True, text=True, check=True)

    done = benchmark.pedantic(rank, rounds=1)
    peak_bytes = 1024 * int(done.stderr)
    note(f"hour, {hour_csv.stem}: peak memory of the command", f"{peak_bytes / 1e6:.0f} MB", "< 1000 MB")
    assert json.loads(done.stdout)["log"]["rows"] >= 360_000
    assert peak_bytes < MOST_MEMORY_BYTES
