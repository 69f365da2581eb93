"""Texts that a recorder left with stretches of zero bytes when it lost its power."""

from __future__ import annotations

import gzip

import numpy as np
import pytest

from triage.errors import TriageError
from triage.logs import ReadOptions, read_log
from triage.logs.zero_stretches import is_text_with_zeros

CORNERS = ("FL", "FR", "RL", "RR")


def notices_of(log) -> list[str]:
    return [notice.code for notice in log.notices]


def assert_nothing_invented(log, drive) -> None:
    """Every valid sample is one of the drive; nearly all of them are there."""
    for corner in CORNERS:
        trace = log.wheels[corner]
        row = np.searchsorted(drive.time_s, trace.time_s + 1e-6) - 1
        valid = ~trace.invalid
        np.testing.assert_allclose(drive.time_s[row], trace.time_s, atol=1e-3)
        np.testing.assert_allclose(trace.speed_mps[valid], drive.mps[corner][row][valid], atol=1e-5)
        assert valid.sum() > 0.95 * drive.time_s.size


@pytest.mark.parametrize("pack", [bytes, gzip.compress])
@pytest.mark.parametrize("size", [16, 512, 70_000])
@pytest.mark.parametrize("place", ["end", "in a line", "in a time", "between lines"])
def test_tables_with_zeros(place, size, *, pack, drive, write, as_table) -> None:
    text = as_table(drive).encode()
    middle = text.index(b"\n", len(text) // 2) + 1
    at = {"end": len(text), "in a line": middle + 17, "in a time": middle + 2, "between lines": middle}[place]
    log = read_log([write(pack(text[:at] + b"\0" * size + text[at:]), "drive.csv")])
    assert_nothing_invented(log, drive)
    assert "log-incomplete" in notices_of(log)


def test_zeros_far_behind_the_first_bytes(drive_of, write, as_table) -> None:
    drive = drive_of(seconds=120.0)
    text = as_table(drive).encode()
    assert len(text) > 150_000
    log = read_log([write(text[:130_000] + b"\0" * 4096 + text[130_000:], "drive.csv")])
    assert_nothing_invented(log, drive)
    assert "log-incomplete" in notices_of(log)


@pytest.mark.parametrize("shift", [0, 9, 30, 38, 40])
def test_frames_with_zeros(shift, drive, dbc, write) -> None:
    lines = [
        f"({time_s:.6f}) can0 1A0#{payload.hex()}\n"
        for time_s, payload in zip(drive.time_s, drive.payloads(), strict=True)
    ]
    text = "".join(lines).encode()
    at = len("".join(lines[:700])) + shift
    log = read_log([write(text[:at] + b"\0" * 4096 + text[at:], "drive.log")], ReadOptions(databases=(dbc,)))
    assert_nothing_invented(log, drive)
    assert "log-incomplete" in notices_of(log)


def test_whole_texts_are_left_alone(drive, write, as_table) -> None:
    assert notices_of(read_log([write(as_table(drive))])) == []


@pytest.mark.parametrize(
    ("head", "is_text"),
    [
        (b"a\nb\n" + b"\0" * 16, True),
        (b"a\nb\n" + b"\0" * 15, False),
        (b"a\nb\n\x01" + b"\0" * 16, False),
        (b"LOGG" + b"\0" * 200, False),
        (b"", False),
    ],
)
def test_what_counts_as_a_text_with_zeros(head, is_text) -> None:
    assert is_text_with_zeros(head) == is_text


def test_zeros_alone_are_refused(write) -> None:
    with pytest.raises(TriageError):
        read_log([write(b"\0" * 5000, "drive.csv")])
