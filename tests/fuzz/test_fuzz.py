"""A short run of the breaker of recordings, and proof that its watch sees what it is to see."""

from __future__ import annotations

import subprocess
import sys
import time
import warnings
from pathlib import Path

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from triage.errors import DamagedLog
from triage.logs import ReadOptions

HERE = Path(__file__).resolve().parent


def run(*arguments: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, str(HERE / "run.py"), *arguments]
    return subprocess.run(command, capture_output=True, text=True, check=False, timeout=280)


@pytest.fixture
def watch(monkeypatch):
    monkeypatch.syspath_prepend(str(HERE))
    import watch

    return watch


@pytest.fixture
def case(watch, tmp_path):
    path = tmp_path / "drive.csv"
    path.write_text("time_s,FL_kmh,FR_kmh,RL_kmh,RR_kmh\n" + "".join(f"{i},5,5,5,5\n" for i in range(9)))
    return watch.Case((path,), ReadOptions())


def test_no_broken_recording_breaks_the_readers(tmp_path) -> None:
    done = run("--inputs", "300", "--seed", "1", "--keep", str(tmp_path / "offenders"))
    assert done.returncode == 0, done.stdout + done.stderr
    assert "300 inputs" in done.stdout
    assert " read\n" in done.stdout
    assert " refused\n" in done.stdout


def test_an_input_is_the_same_every_time(watch, tmp_path) -> None:
    from seeds import Seed

    seeds = [Seed("a.csv", b"time,FL\n1,2\n" * 20), Seed("b.log", bytes(range(256)))]
    for number in range(20):
        first, second = (
            [path.read_bytes() for path in watch.make_case(seeds, tmp_path, (7, number)).files]
            for _ in range(2)
        )
        assert first == second


def test_a_sound_recording_is_read(watch, case) -> None:
    assert watch.watch(case).end == "read"


def test_the_watch_sees_an_exception_and_a_warning(watch, case, monkeypatch) -> None:
    def fail(*_: object) -> None:
        raise KeyError("x")

    def warn(*_: object) -> None:
        warnings.warn("overflow", RuntimeWarning, stacklevel=1)

    for act, end in ((fail, "raised KeyError"), (warn, "raised RuntimeWarning")):
        monkeypatch.setattr(watch, "read_log", act)
        seen = watch.watch(case)
        assert seen.end == end
        assert "Traceback" in seen.detail


def test_the_watch_sees_a_hang(watch, case, monkeypatch) -> None:
    def hang(*_: object) -> None:
        end = time.process_time() + 20
        while time.process_time() < end:
            pass

    monkeypatch.setattr(watch, "read_log", hang)
    monkeypatch.setattr(watch, "MAX_SECONDS", 0.1)
    assert watch.watch(case).end == "too slow"


def test_the_watch_sees_growth(watch, case, monkeypatch) -> None:
    monkeypatch.setattr(watch, "_peak_bytes", iter((0, 2 << 30)).__next__)
    assert watch.watch(case).end == "too large"


@pytest.mark.parametrize(
    "refused", [DamagedLog("x"), DamagedLog("x\x1b[2J" * 2000, hint="y"), DamagedLog("x" * 9000, hint="y")]
)
def test_the_watch_sees_an_unfit_message(watch, case, monkeypatch, refused) -> None:
    def refuse(*_: object) -> None:
        raise refused

    monkeypatch.setattr(watch, "read_log", refuse)
    assert watch.watch(case).end == "raised AssertionError"


CELLS = st.one_of(
    st.floats().map(repr),
    st.integers().map(str),
    st.text(max_size=8),
    st.sampled_from(
        ("FL", "FR", "RL", "RR", "time", "km/h", "12:00:00", "1,5", "1e400", "nan", "", "id", "1A0")
    ),
)
TABLES = st.lists(st.lists(CELLS, min_size=1, max_size=7), min_size=1, max_size=12)


@settings(
    max_examples=120,
    deadline=None,
    derandomize=True,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
@given(
    rows=TABLES,
    repeats=st.integers(1, 40),
    form=st.tuples(st.sampled_from(",;\t|"), st.sampled_from(("utf-8", "utf-16"))),
)
def test_any_table_is_read_or_refused(watch, tmp_path, rows, repeats, form) -> None:
    path, (mark, code) = tmp_path / "any.csv", form
    lines = [mark.join(row) for row in rows]
    path.write_bytes("\n".join([*lines[:1], *lines[1:] * repeats]).encode(code, errors="replace"))
    seen = watch.watch(watch.Case((path,), ReadOptions()))
    assert seen.end in ("read", "refused"), seen.detail


@settings(
    max_examples=120,
    deadline=None,
    derandomize=True,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
@given(
    magic=st.sampled_from(
        (b"", b"LOGG", b"MDF     ", b"PK\x03\x04", b"PAR1", b"\x1f\x8b\x08", b"SQLite format 3\x00")
    ),
    rest=st.binary(max_size=600),
    suffix=st.sampled_from((".csv", ".blf", ".mf4", ".log", ".xlsx", ".zip", "")),
)
def test_any_bytes_are_read_or_refused(watch, tmp_path, magic, rest, suffix) -> None:
    path = tmp_path / f"any{suffix}"
    path.write_bytes(magic + rest)
    seen = watch.watch(watch.Case((path,), ReadOptions()))
    assert seen.end in ("read", "refused"), seen.detail


def test_mutations_change_and_stay_bounded(monkeypatch) -> None:
    monkeypatch.syspath_prepend(str(HERE))
    import mutations

    rng = np.random.default_rng(3)
    text, binary = b"time,FL\n0.5,12.5\n" * 40, bytes(range(256)) * 4
    for ways, data in ((mutations.IN_TEXT, text), (mutations.ANYWHERE, binary)):
        for way in dict.fromkeys(ways):
            results = [way(data, rng) for _ in range(20)]
            assert any(result != data for result in results), way
            assert way(b"", rng) is not None
    assert max(len(mutations.mutate(text, rng)) for _ in range(200)) <= mutations.LARGEST
