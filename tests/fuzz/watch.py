"""One broken recording through the readers, watched: what it raised, how long it took, how much it held."""

from __future__ import annotations

import contextlib
import json
import resource
import signal
import time
import traceback
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from mutations import mutate, mutate_inside, splice, wrap
from seeds import Seed

from triage.errors import TriageError
from triage.inspection import build_inspection, format_inspection
from triage.logs import ReadOptions, read_log
from triage.units import SPEED_UNITS

MAX_SECONDS = 5
MAX_BYTES = 1 << 30
MESSAGE_CHARACTERS = 4000
SHORT_TEXT_BYTES = 2500
SUFFIXES = (
    *(".csv", ".txt", ".tsv", ".log", ".asc", ".blf", ".trc", ".db", ".mf4", ".mdf", ".dat", ".xlsx"),
    *(".parquet", ".gz", ".zip", ".bin"),
)


class TooSlow(BaseException):
    """Beyond the limit of processor time; no reader can take it for damage."""


@dataclass(frozen=True)
class Case:
    """What is read: files, and the choices of the user."""

    files: tuple[Path, ...]
    options: ReadOptions


@dataclass(frozen=True)
class Outcome:
    """How it ended: ``read``, ``refused``, or an offence with its traceback."""

    end: str
    seconds: float
    grown_bytes: int
    detail: str = ""


def make_case(seeds: list[Seed], folder: Path, key: tuple[int, int]) -> Case:
    """Write the input number ``key[1]`` of the series ``key[0]``: the same bytes every time."""
    rng = np.random.default_rng(key)
    first = seeds[int(rng.integers(0, len(seeds)))]
    parts = [first] * (2 if rng.random() < 0.04 else 1)
    files = tuple(_write(seeds, seed, folder / f"part{index}", rng) for index, seed in enumerate(parts))
    return Case(files, _options(first, folder, rng))


def _write(seeds: list[Seed], seed: Seed, stem: Path, rng: np.random.Generator) -> Path:
    name = Path(seed.name).suffix if rng.random() < 0.85 else SUFFIXES[int(rng.integers(0, len(SUFFIXES)))]
    path = stem.with_suffix(name)
    path.write_bytes(_broken(seeds, seed, rng))
    return path


def _broken(seeds: list[Seed], seed: Seed, rng: np.random.Generator) -> bytes:
    draw, whole = rng.random(), seed.data
    if b"\x00" not in whole and rng.random() < 0.7:
        whole = whole[:SHORT_TEXT_BYTES]  # what fails with many rows fails with few, and sooner
    if draw < 0.03:
        return whole
    if draw < 0.10:
        return splice(whole, seeds[int(rng.integers(0, len(seeds)))].data, rng)
    data = mutate_inside(whole, rng) if draw < 0.45 else mutate(whole, rng)
    if rng.random() < 0.06:
        data = wrap(data, rng)
        return mutate(data, rng) if rng.random() < 0.5 else data
    return data


def _options(seed: Seed, folder: Path, rng: np.random.Generator) -> ReadOptions:
    databases = ()
    if seed.database and rng.random() < 0.9:
        path = folder / "wheels.dbc"
        path.write_bytes(mutate(seed.database, rng) if rng.random() < 0.25 else seed.database)
        databases = (str(path),)
    if rng.random() < 0.85:
        return ReadOptions(databases)
    return ReadOptions(
        databases,
        mapping={"FL": "WhlSpd_FL"} if rng.random() < 0.3 else {},
        unit=str(rng.choice(SPEED_UNITS)) if rng.random() < 0.6 else None,
        circumference_m=float(rng.choice((2.0, 1e-9, 1e9))) if rng.random() < 0.5 else None,
        pulses_per_rev=float(rng.choice((48.0, 1e-6))) if rng.random() < 0.3 else None,
    )


def watch(case: Case) -> Outcome:
    """Read a case as ``inspect`` does, within the limits."""
    began, before = time.process_time(), _peak_bytes()
    try:
        with _time_limit():
            end, detail = _read(case), ""
    except TooSlow:
        end, detail = "too slow", traceback.format_exc()
    except BaseException as error:  # whatever it is, it is what is looked for
        if isinstance(error, KeyboardInterrupt):
            raise
        end, detail = f"raised {type(error).__name__}", traceback.format_exc()
    grown = _peak_bytes() - before
    if grown > MAX_BYTES:
        end = "too large"
    return Outcome(end, time.process_time() - began, grown, detail)


def _read(case: Case) -> str:
    try:
        log = read_log(case.files, case.options)
    except TriageError as refused:
        return _checked(refused)
    json.dumps(build_inspection(log), allow_nan=False).encode()
    if not format_inspection(log).replace("\n", "").isprintable():
        raise AssertionError("the text of the inspection is not printable")
    return "read"


def _checked(refused: TriageError) -> str:
    """Hold a refusal to its promise: what is wrong, what to do, in a text that can be shown."""
    text = str(refused)
    text.encode()
    if not refused.hint or not refused.message or len(text) > MESSAGE_CHARACTERS:
        raise AssertionError(f"no fit message: {text[:300]!r}") from refused
    if not text.replace("\n", "").isprintable():
        raise AssertionError(f"not printable: {text[:300]!r}") from refused
    return "refused"


@contextlib.contextmanager
def _time_limit() -> Iterator[None]:
    def stop(number: int, frame: object) -> None:
        raise TooSlow

    old = signal.signal(signal.SIGPROF, stop)
    signal.setitimer(signal.ITIMER_PROF, MAX_SECONDS)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, old)


def _peak_bytes() -> int:
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * 1024


def limit_memory() -> None:
    """Allow this process one gigabyte beyond what it has mapped by now."""
    pages = int(Path("/proc/self/statm").read_text().split()[0])
    limit = pages * resource.getpagesize() + MAX_BYTES
    resource.setrlimit(resource.RLIMIT_AS, (limit, limit))
