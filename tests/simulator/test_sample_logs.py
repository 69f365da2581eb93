"""The sample logs in the repository are what the simulator makes today, and cover the job."""

from __future__ import annotations

import gzip
import hashlib
from pathlib import Path

import pytest

from triage.errors import OutputError, SettingsError
from triage.simulator.sample_logs import (
    INDEX_NAME,
    SampleLog,
    digest_of,
    load_sample_index,
    main,
    rebuild_sample_logs,
    simulate_sample,
)

FOLDER = Path(__file__).parents[2] / "sample_logs"
INDEX = load_sample_index(FOLDER)

SMALL_INDEX = """
fleet = "Two vans"
story = "None."
[[log]]
file = "one.csv"
van = "Einkorn \\"E\\" – Müsli"
cause = "tyre-size"
corner = "FL"
severity = 1
seed = 3
seconds = 12
complaint = "."
verdict = "."
[[log]]
file = "two.csv.gz"
van = "B"
cause = "no-fault-found"
corner = "vehicle"
severity = 0
seed = 4
seconds = 10.5
complaint = "."
verdict = "."
"""


def _text(path: Path) -> bytes:
    data = path.read_bytes()
    return gzip.decompress(data) if path.suffix == ".gz" else data


@pytest.mark.parametrize("sample", INDEX.logs, ids=lambda sample: sample.file)
def test_log_is_what_the_simulator_makes_today(sample: SampleLog) -> None:
    assert hashlib.sha256(_text(FOLDER / sample.file)).hexdigest() == sample.sha256
    assert digest_of(simulate_sample(sample)) == sample.sha256


@pytest.mark.parametrize("sample", INDEX.logs, ids=lambda sample: sample.file)
def test_log_is_small_and_of_ordinary_length(sample: SampleLog) -> None:
    assert (FOLDER / sample.file).stat().st_size < 500_000
    assert 60.0 <= sample.seconds <= 180.0
    assert sample.complaint
    assert sample.verdict
    assert 20.0 <= simulate_sample(sample).truth.setup.recorder.rate_hz <= 100.0


def test_index_and_folder_are_one_to_one() -> None:
    files = {path.name for path in FOLDER.iterdir()} - {INDEX_NAME}
    assert files == {sample.file for sample in INDEX.logs}
    assert len(files) == len(INDEX.logs)


def test_every_cause_that_shows_in_a_log_is_there() -> None:
    shown = {sample.cause for sample in INDEX.logs}
    assert shown >= {
        "no-fault-found",
        "encoder-debris",
        "encoder-damage",
        "encoder-runout",
        "encoder-mismatch",
        "air-gap",
        "sensor-fault",
        "harness-fault",
        "bearing-play",
        "tyre-size",
        "common-cause",
    }


def test_rebuilding_writes_logs_and_digests(tmp_path: Path) -> None:
    (tmp_path / INDEX_NAME).write_text(SMALL_INDEX, encoding="utf-8")
    first = rebuild_sample_logs(tmp_path)
    written = (tmp_path / INDEX_NAME).read_bytes()
    assert load_sample_index(tmp_path) == first
    assert first.logs[0].van == 'Einkorn "E" – Müsli'
    assert [hashlib.sha256(_text(tmp_path / log.file)).hexdigest() for log in first.logs] == [
        log.sha256 for log in first.logs
    ]
    assert rebuild_sample_logs(tmp_path) == first
    assert (tmp_path / INDEX_NAME).read_bytes() == written


@pytest.mark.parametrize(
    "text", ["", "fleet = 1", SMALL_INDEX.replace("seed = 3", ""), SMALL_INDEX + "colour = 1\n", "\x00"]
)
def test_broken_index_is_refused(tmp_path: Path, text: str) -> None:
    (tmp_path / INDEX_NAME).write_text(text, encoding="utf-8")
    with pytest.raises(SettingsError, match="index"):
        load_sample_index(tmp_path)


def test_command_rebuilds_a_folder_or_says_why_not(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main([str(tmp_path)]) == SettingsError.exit_code
    assert "INDEX.toml" in capsys.readouterr().err
    (tmp_path / INDEX_NAME).write_text(SMALL_INDEX, encoding="utf-8")
    assert main([str(tmp_path)]) == 0
    assert "2 logs" in capsys.readouterr().out
    (tmp_path / INDEX_NAME).write_text(SMALL_INDEX.replace("one.csv", "no/one.csv"), encoding="utf-8")
    assert main([str(tmp_path)]) == OutputError.exit_code
