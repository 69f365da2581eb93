"""Files read part by part give what reading them as a whole gives."""

from __future__ import annotations

from pathlib import Path

import can
import numpy as np
import pytest

from triage.errors import DamagedLog
from triage.logs import asc, candump, content, mdf_frames, trc
from triage.logs.archives import open_sources
from triage.logs.content import bytes_content
from triage.logs.mdf_frames import read_mdf_frames
from triage.logs.moving_window import MovingWindow
from triage.logs.registry import recognise
from triage.logs.source import source_of
from triage.logs.text_lines import line_blocks
from triage.progress import no_progress

WANTED = frozenset({0x100, 0x103})


def write_frames(file: Path, count: int = 500) -> Path:
    rng = np.random.default_rng(3)
    with can.Logger(str(file)) as writer:
        for number in range(count):
            writer.on_message_received(
                can.Message(
                    timestamp=1.7e9 + 0.01 * number,
                    arbitration_id=0x100 + number % 5,
                    is_extended_id=False,
                    channel=0,
                    data=rng.bytes(8),
                )
            )
    return file


def test_a_window_gives_the_bytes_of_their_places() -> None:
    rng = np.random.default_rng(2)
    raw = rng.bytes(5_000_000)
    marks = [0, 17, 1_048_574, 2_097_150, 4_999_996]
    written = bytearray(raw.replace(b"MARK", b"mark"))
    for place in marks:
        written[place : place + 4] = b"MARK"
    whole = bytes(written)
    window = MovingWindow(source_of("x", "", bytes_content("x", whole)))
    begin = 0
    for size in rng.integers(1, 400_000, 40).tolist():
        assert window.part(begin, begin + size) == whole[begin : begin + size]
        assert window.holds(begin + size) == (begin + size <= len(whole))
        following = whole.find(b"MARK", begin)
        found = window.find(b"MARK", begin) if rng.uniform() < 0.1 else None
        assert found is None or found == (following if following >= 0 else len(whole))
        begin = begin + size if found is None else min(max(found, begin + size), len(whole))
        window.forget(begin)
    assert not window.holds(len(whole) + 1)
    assert window.stop == len(whole)


@pytest.mark.parametrize("end", [b"\r\n", b"\r", b"\n\r\n", b"\r\r\n"])
@pytest.mark.parametrize(
    ("suffix", "read"), [(".log", candump.read_candump), (".asc", asc.read_asc), (".trc", trc.read_trc)]
)
def test_line_ends_make_no_difference(suffix, read, end, tmp_path) -> None:
    written = write_frames(tmp_path / f"x{suffix}").read_bytes().replace(b"\r\n", b"\n")
    frames = []
    for kind, text in ((b"\n", written), (end, written.replace(b"\n", end))):
        file = tmp_path / f"ends_{kind.hex()}{suffix}"
        file.write_bytes(text)
        frames.append(read(open_sources(file)[0], WANTED, no_progress))
    assert frames[0].time_s.size == 200
    np.testing.assert_array_equal(frames[1].time_s, frames[0].time_s)
    np.testing.assert_array_equal(frames[1].payload, frames[0].payload)
    assert frames[1].seen == frames[0].seen


@pytest.mark.parametrize(
    "text", [b"a\r\nbc\r\n", b"a\r\nbc", b"\r\na\r\nbc", b"\n\r\nbc\r", b"a\rbc\r\n", b"\r\n"]
)
def test_lines_are_those_of_the_standard_library(text: bytes) -> None:
    blocks = list(line_blocks(source_of("x", "", bytes_content("x", text))))
    lines = [block.line(number) for block in blocks for number in range(block.start.size)]
    assert lines == text.splitlines()


def test_a_bus_recording_in_parts(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    import asammdf

    file = write_frames(tmp_path / "x.mf4", 3000)
    with asammdf.MDF(file) as mdf:
        mdf.configure(write_fragment_size=8192)
        mdf.save(tmp_path / "parts.mf4", compression=2)
    file = tmp_path / "parts.mf4"
    taken: list[int] = []
    select = asammdf.MDF.select

    def count_and_select(mdf, *arguments, **options):
        taken.append(options["record_count"])
        return select(mdf, *arguments, **options)

    monkeypatch.setattr(asammdf.MDF, "select", count_and_select)
    frames = []
    for at_once in (200, 1 << 20, None):
        monkeypatch.setattr(mdf_frames, "RECORDS_AT_ONCE", at_once)
        if at_once is None:
            monkeypatch.setattr(mdf_frames, "whole_blocks", lambda *_, **__: 0)
        with asammdf.MDF(file) as mdf:
            frames.append(read_mdf_frames(mdf, WANTED, file.stat().st_size, no_progress))
    assert taken == [*[200] * 15, 3000]
    for other in frames[1:]:
        np.testing.assert_array_equal(frames[0].time_s, other.time_s)
        np.testing.assert_array_equal(frames[0].payload, other.payload)
        assert frames[0].seen == other.seen


def test_a_bus_recording_shorter_than_it_says_is_read_as_a_whole(tmp_path: Path) -> None:
    import asammdf

    file = write_frames(tmp_path / "x.mf4")
    with asammdf.MDF(file) as mdf:
        group = next(iter(mdf_frames.frame_groups(mdf)))
        names = [place for place, channel in enumerate(mdf.groups[group].channels)]
        size = file.stat().st_size
        assert mdf_frames.whole_blocks(mdf, group, names, size, at_least=9) >= 9
        assert mdf_frames.whole_blocks(mdf, group, names, size // 4, at_least=9) == 0
        mdf.groups[group].channel_group.cycles_nr += 1
        assert mdf_frames.whole_blocks(mdf, group, names, size, at_least=9) == 0


@pytest.mark.parametrize("end", [b"\n", b"\r", b"\r\n"])
def test_large_texts_come_in_blocks_of_whole_lines(end) -> None:
    text = end.join(b"%07d %s" % (number, b"x" * (number % 90)) for number in range(250_000)) + end
    blocks = list(line_blocks(source_of("x", "", bytes_content("x", text))))
    assert len(blocks) > 2
    assert [block.line(number) for block in blocks for number in range(block.start.size)] == text.splitlines()


def test_a_text_without_line_ends_is_refused_before_it_fills_the_memory() -> None:
    text = b"(1.0) can0 1A0#00\n" + b"x" * 30_000_000
    with pytest.raises(DamagedLog, match="a line of more than a million characters"):
        list(line_blocks(source_of("x", "", bytes_content("x", text))))


@pytest.mark.parametrize("kind", [".log", ".asc", ".trc", ".blf"])
def test_no_probe_reads_the_whole_file(kind, tmp_path, monkeypatch) -> None:
    file = write_frames(tmp_path / f"x{kind}")

    def refuse(_content) -> bytes:
        raise AssertionError

    monkeypatch.setattr(content.FileContent, "whole", refuse)
    assert recognise(open_sources(file)[0]).suffixes[0] == kind
