"""Break recordings in thousands of ways and watch the readers: ``python tests/fuzz/run.py --inputs 1000``.

Prints how the inputs ended, the slowest and the largest. Each offender is kept in the folder of ``--keep``
with its traceback; ``--only N`` repeats one input of a series. A worker that dies or hangs is one too.
The seeds are made here, and taken from ``sample_logs`` and, where it is present, ``../shared``.
"""

from __future__ import annotations

import argparse
import collections
import faulthandler
import json
import os
import pickle
import resource
import shutil
import signal
import subprocess
import sys
import tempfile
import time
import warnings
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE), str(HERE.parents[1])]
BATCH = 1000
HANG_SECONDS = 20
"""Of processor time, which a busy machine does not stretch; in compiled code no exception can end a hang."""

STUCK_SECONDS = 900
"""Of the clock on the wall, for an input that waits for ever and uses no processor."""


def main() -> int:
    """Run what the command line asks for; 1 when there was an offender."""
    args = _arguments()
    if args.only is not None:
        args.first, args.inputs = args.only, 1
    if args.worker:
        return _work(args)
    with tempfile.TemporaryDirectory(prefix="broken-logs-") as scratch:
        keep = args.keep or Path(tempfile.mkdtemp(prefix="offending-logs-"))
        keep.mkdir(parents=True, exist_ok=True)
        _write_seeds(Path(scratch))
        began = time.monotonic()
        lines = _run_batches(args, Path(scratch), keep)
        return _report(lines, time.monotonic() - began, keep)


def _arguments() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--inputs", type=int, default=1000)
    parser.add_argument("--seed", type=int, default=1, help="number of the series")
    parser.add_argument("--first", type=int, default=0, help="number of the first input")
    parser.add_argument("--only", type=int, help="repeat one input")
    parser.add_argument("--workers", type=int, default=1)
    parser.add_argument("--minutes", type=float, default=1e9, help="start no batch after this time")
    parser.add_argument("--keep", type=Path, help="folder for offenders")
    parser.add_argument("--worker", type=Path, help=argparse.SUPPRESS)
    return parser.parse_args()


def _write_seeds(scratch: Path) -> None:
    from seeds import all_seeds

    (scratch / "seeds").write_bytes(pickle.dumps(all_seeds(scratch)))


def _run_batches(args: argparse.Namespace, scratch: Path, keep: Path) -> list[dict[str, object]]:
    stop = time.monotonic() + 60 * args.minutes
    starts = range(args.first, args.first + args.inputs, BATCH)

    def run(start: int) -> list[dict[str, object]]:
        if time.monotonic() > stop:
            return []
        return _batch(args.seed, range(start, min(start + BATCH, args.first + args.inputs)), scratch, keep)

    with ThreadPoolExecutor(args.workers) as pool:
        return [line for lines in pool.map(run, starts) for line in lines]


def _batch(series: int, numbers: range, scratch: Path, keep: Path) -> list[dict[str, object]]:
    """Run some inputs in a process of their own; begin anew behind an input that killed it."""
    folder = scratch / f"batch-{numbers.start}"
    folder.mkdir()
    lines: list[dict[str, object]] = []
    while len(lines) < len(numbers):
        first = numbers.start + len(lines)
        done = _call_worker(series, range(first, numbers.stop), folder, keep)
        lines += done
        if len(lines) < len(numbers):
            number = numbers.start + len(lines)
            end = (folder / "errors").read_text("utf-8", errors="replace")
            lines.append({"number": number, "end": "killed the process", "seconds": 0.0, "grown": 0})
            _keep(folder, keep, series, number, end)
    shutil.rmtree(folder)
    return lines


def _call_worker(series: int, numbers: range, folder: Path, keep: Path) -> list[dict[str, object]]:
    command = [sys.executable, __file__, "--worker", str(folder), "--keep", str(keep), "--seed", str(series)]
    command += ["--first", str(numbers.start), "--inputs", str(len(numbers))]
    # one memory pool that gives back what it does not need, or the limit on memory would mean nothing
    settings = {"ARROW_DEFAULT_MEMORY_POOL": "system", "OPENBLAS_NUM_THREADS": "1", "OMP_NUM_THREADS": "1"}
    with (folder / "errors").open("wb") as errors:
        done = subprocess.run(
            command, stdout=subprocess.PIPE, stderr=errors, env={**os.environ, **settings}, check=False
        )
    lines = [line for line in done.stdout.decode().split("\n") if line.startswith("{") and line.endswith("}")]
    return [json.loads(line) for line in lines]


def _work(args: argparse.Namespace) -> int:
    from watch import limit_memory, make_case, watch

    warnings.simplefilter("ignore")
    seeds = pickle.loads((args.worker.parent / "seeds").read_bytes())  # noqa: S301 - written by the caller
    _warm_up(seeds, args.worker)
    warnings.simplefilter("error")
    limit_memory()
    for number in range(args.first, args.first + args.inputs):
        _end_when_stuck()
        for old in args.worker.glob("*.*"):
            old.unlink()
        seen = watch(make_case(seeds, args.worker, (args.seed, number)))
        if seen.end not in ("read", "refused"):
            _keep(args.worker, args.keep, args.seed, number, seen.detail or seen.end)
        line = {"number": number, "end": seen.end, "seconds": seen.seconds, "grown": seen.grown_bytes}
        print(json.dumps(line), flush=True)  # noqa: T201 - what the caller reads
    faulthandler.cancel_dump_traceback_later()
    return 0


def _end_when_stuck() -> None:
    """Let the system end this process, with a traceback, when the next input takes far too long."""
    faulthandler.dump_traceback_later(STUCK_SECONDS, exit=True)
    faulthandler.register(signal.SIGXCPU, chain=True)
    _, hard = resource.getrlimit(resource.RLIMIT_CPU)
    resource.setrlimit(resource.RLIMIT_CPU, (int(time.process_time()) + HANG_SECONDS, hard))


def _warm_up(seeds: list, folder: Path) -> None:
    """Load every library that reading loads, before memory and warnings are watched."""
    from watch import Case, watch

    from triage.logs import ReadOptions

    database = folder / "warm.dbc"
    for seed in seeds[:24]:
        path = folder / f"warm{Path(seed.name).suffix}"
        path.write_bytes(seed.data)
        database.write_bytes(seed.database)
        watch(Case((path,), ReadOptions((str(database),) if seed.database else ())))


def _keep(folder: Path, keep: Path, series: int, number: int, detail: str) -> None:
    target = keep / f"{series}-{number}"
    target.mkdir(exist_ok=True)
    for path in folder.glob("*.*"):
        shutil.copy(path, target)
    (target / "traceback").write_text(detail, encoding="utf-8", errors="replace")


def _report(lines: list[dict[str, object]], seconds: float, keep: Path) -> int:
    ends = collections.Counter(str(line["end"]) for line in lines)
    print(f"{len(lines)} inputs in {seconds:.0f} s, {len(lines) / max(seconds, 1e-9):.0f} a second")  # noqa: T201
    for end, count in ends.most_common():
        print(f"{count:8}  {end}")  # noqa: T201
    for what, unit, scale in (("seconds", "s", 1.0), ("grown", "MB", 1e6)):
        worst = sorted(lines, key=lambda line: -float(line[what]))[:3]
        texts = (f"{float(line[what]) / scale:.2f} {unit} (input {line['number']})" for line in worst)
        print(f"most {what}: {', '.join(texts)}")  # noqa: T201
    offenders = sum(ends.values()) - ends["read"] - ends["refused"]
    if offenders:
        print(f"offenders are kept in {keep}")  # noqa: T201
    else:
        shutil.rmtree(keep, ignore_errors=True)
    return 1 if offenders else 0


if __name__ == "__main__":
    sys.exit(main())
