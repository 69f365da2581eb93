"""Frames read many at once, against the same files read one by one and against python-can."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import can
import numpy as np
import pytest

from triage.errors import TriageError
from triage.logs import asc, blf, candump, other_frames, trc
from triage.logs.archives import open_sources
from triage.logs.frames import Frames, frame_key
from triage.logs.source import Source
from triage.progress import no_progress

READERS: dict[str, Callable[..., Frames]] = {
    "log": candump.read_candump,
    "asc": asc.read_asc,
    "blf": blf.read_blf,
    "trc": trc.read_trc,
}
ONE_BY_ONE = {
    "log": (candump, "find_plain_lines", lambda _block: None),
    "asc": (asc, "_find_columns", lambda _block: None),
    "blf": (blf, "find_objects", lambda _data: None),
    "trc": (trc, "_read_aligned", lambda *_arguments: None),
}
"""What to replace so that a reader takes the slow way."""

WANTED = frozenset({0x100, 0x10A, frame_key(0x18FEBF0B, extended=True)})


def _messages(rng: np.random.Generator, count: int, *, odd: bool) -> list[can.Message]:
    """Messages of a few identifiers; with odd ones among them, remote, error and FD frames too."""
    time_s = 1.7e9 + np.cumsum(rng.integers(1, 900, count)) * 1e-6
    found = []
    for stamp in time_s:
        extended = bool(rng.uniform() < 0.3)
        kind = rng.uniform() if odd else 1.0
        data = rng.integers(0, 256, int(rng.integers(0, 9)) if rng.uniform() < 0.3 else 8)
        found.append(
            can.Message(
                timestamp=float(stamp),
                arbitration_id=0x18FEBF0B if extended else 0x100 + int(rng.integers(20)),
                is_extended_id=extended,
                is_remote_frame=kind < 0.05,
                is_error_frame=0.05 <= kind < 0.1,
                is_fd=0.1 <= kind < 0.15,
                channel=0,
                data=b"" if kind < 0.1 else bytes(data.astype(np.uint8)),
            )
        )
    return found


def _write(folder: Path, kind: str, messages: list[can.Message]) -> Path:
    file = folder / f"frames.{kind}"
    with can.Logger(str(file)) as logger:
        for message in messages:
            logger.on_message_received(message)
    return file


def _same(one: Frames, other: Frames) -> None:
    """The same to the last bit."""
    assert one.start == other.start
    np.testing.assert_array_equal(one.time_s, other.time_s)
    np.testing.assert_array_equal(one.key, other.key)
    np.testing.assert_array_equal(one.length, other.length)
    np.testing.assert_array_equal(one.payload, other.payload)
    assert [one.bus[i] for i in one.bus_index] == [other.bus[i] for i in other.bus_index]
    assert dict(one.seen) == dict(other.seen)
    assert dict(one.odd) == dict(other.odd)
    assert [notice.code for notice in one.notices] == [notice.code for notice in other.notices]


def _both(kind: str, source: Source) -> tuple[Frames, Frames]:
    module, name, slow = ONE_BY_ONE[kind]
    fast = READERS[kind](source, WANTED, no_progress)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(module, name, slow)
        return fast, READERS[kind](source, WANTED, no_progress)


@pytest.mark.parametrize("odd", [False, True])
@pytest.mark.parametrize("kind", READERS)
def test_as_one_by_one_and_as_the_library(kind: str, tmp_path: Path, *, odd: bool) -> None:
    file = _write(tmp_path, kind, _messages(np.random.default_rng(4), 3000, odd=odd))
    fast, slow = _both(kind, open_sources(file)[0])
    _same(fast, slow)
    if kind == "asc" and odd:
        return  # the library takes FD frames without data for remote frames
    with can.LogReader(str(file)) as reader:
        read = [one for one in reader if not one.is_error_frame and not one.is_remote_frame]
    keys = [frame_key(one.arbitration_id, extended=one.is_extended_id) for one in read]
    chosen = [one for one, key in zip(read, keys, strict=True) if key in WANTED]
    assert fast.key.tolist() == [key for key in keys if key in WANTED]
    assert [bytes(row[:size]) for row, size in zip(fast.payload, fast.length, strict=True)] == [
        bytes(one.data) for one in chosen
    ]
    assert dict(fast.seen) == {key: keys.count(key) for key in set(keys)}
    apart = np.diff(fast.time_s) - np.diff([one.timestamp for one in chosen])
    assert np.abs(apart).max() < 1e-6


@pytest.mark.parametrize("kind", READERS)
def test_ordinary_files_take_the_fast_way(kind: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    file = _write(tmp_path, kind, _messages(np.random.default_rng(5), 500, odd=False))
    taken: list[object] = []
    module, name = {
        "log": (candump, "_take"),
        "asc": (asc, "_take"),
        "blf": (blf, "_take_object"),
        "trc": (other_frames, "_take"),
    }[kind]
    take = getattr(module, name)

    def count_and_take(*arguments: object) -> None:
        taken.append(arguments)
        take(*arguments)

    monkeypatch.setattr(module, name, count_and_take)
    frames = READERS[kind](open_sources(file)[0], WANTED, no_progress)
    # The first stamp of a log sets the zero of all others and is read alone.
    assert len(taken) <= 1
    assert frames.time_s.size > 100


@pytest.mark.parametrize("kind", READERS)
def test_damaged_files_are_read_as_one_by_one(kind: str, tmp_path: Path) -> None:
    rng = np.random.default_rng(6)
    sound = {odd: _write(tmp_path, kind, _messages(rng, 60, odd=odd)).read_bytes() for odd in (False, True)}
    for number in range(120):
        file = tmp_path / f"damaged_{number}.{kind}"
        file.write_bytes(_damage(sound[number % 2 == 1], rng, spared=400 if kind in ("trc", "asc") else 0))
        _same_or_refused(kind, file)


def _damage(content: bytes, rng: np.random.Generator, *, spared: int) -> bytes:
    """Put other bytes at a few places behind the header, and cut off the end now and then."""
    damaged = bytearray(content)
    for place in rng.integers(spared, len(content), int(rng.integers(1, 5))):
        damaged[place] = int(rng.choice(list(b" 09aFxg#.()\n\r\t\x00\xff-")))
    return bytes(damaged[: int(rng.integers(spared + 100, len(content)))] if rng.uniform() < 0.3 else damaged)


def _same_or_refused(kind: str, file: Path) -> None:
    fast = _outcome(kind, file)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(*ONE_BY_ONE[kind])
        slow = _outcome(kind, file)
    if isinstance(fast, Frames) and isinstance(slow, Frames):
        _same(fast, slow)
    else:
        assert fast == slow


def _outcome(kind: str, file: Path) -> Frames | type[TriageError]:
    try:
        return READERS[kind](open_sources(file)[0], WANTED, no_progress)
    except TriageError as error:
        return type(error)
