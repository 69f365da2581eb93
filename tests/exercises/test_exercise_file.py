"""Saved exercises come back the same, do not show the answer, and hostile files are refused in words."""

from __future__ import annotations

import base64
import json
from pathlib import Path

import pytest

from triage.errors import ExerciseFileError, OutputError
from triage.evidence.rule_tables import Rulebook
from triage.exercises import exercise_file
from triage.exercises.exercise import Exercise, Hidden
from triage.exercises.exercise_file import read_exercise, write_exercise
from triage.exercises.making import make_exercise, simulated_causes


@pytest.fixture
def saved(dirty: Exercise, tmp_path: Path) -> Path:
    path = tmp_path / "übung.exercise.json"
    write_exercise(dirty, path)
    return path


def test_a_saved_exercise_comes_back(saved: Path, dirty: Exercise, rulebook: Rulebook) -> None:
    assert read_exercise(saved, rulebook) == dirty


def test_words_and_missing_car_seed_come_back(tmp_path: Path, rulebook: Rulebook) -> None:
    exercise = make_exercise(Hidden("tyre-size", "FR", 0.35, 90.0, 1), rulebook, words="“Größer” ➜ hums")
    write_exercise(exercise, tmp_path / "a.exercise.json")
    assert read_exercise(tmp_path / "a.exercise.json", rulebook) == exercise


def test_the_answer_is_not_in_plain_sight(saved: Path) -> None:
    text = saved.read_text("utf-8")
    plain = base64.b64decode(json.loads(text)["hidden"])
    for word in (*simulated_causes(), "debris", '"RL"', "0.6", "severity", "cause"):
        assert word not in text
        assert word.encode() not in plain


def test_the_length_does_not_tell_the_cause(tmp_path: Path, rulebook: Rulebook) -> None:
    sizes = set()
    for cause in simulated_causes():
        corner = "FL" if rulebook.causes[cause].where == "corner" else "vehicle"
        write_exercise(
            make_exercise(Hidden(cause, corner, 0.5, 180.0, 2**30, 2**30), rulebook), tmp_path / "a.json"
        )
        sizes.add((tmp_path / "a.json").stat().st_size)
    assert len(sizes) == 1


def _altered(saved: Path, **changes: object) -> bytes:
    return json.dumps(json.loads(saved.read_text("utf-8")) | changes).encode()


def _masked(row: bytes, number: str) -> str:
    import zlib

    return base64.b64encode(exercise_file._mixed(zlib.compress(row), number)).decode()


HOSTILE = {
    "empty": b"",
    "no text": b"\xff\xfe\x00\x01",
    "no JSON": b"{",
    "deep": b"[" * 30_000,
    "a list": b"[]",
    "another kind": b'{"format": "a cake", "version": 1}',
    "too large": b" " * 70_000,
}


@pytest.mark.parametrize("name", HOSTILE)
def test_other_files_are_refused(name: str, tmp_path: Path, rulebook: Rulebook) -> None:
    path = tmp_path / "x.exercise.json"
    path.write_bytes(HOSTILE[name])
    with pytest.raises(ExerciseFileError) as refusal:
        read_exercise(path, rulebook)
    assert refusal.value.file == str(path)
    assert refusal.value.hint


@pytest.mark.parametrize(
    "change",
    [
        {"version": 2},
        {"more": 1},
        {"words": "x" * 5000},
        {"words": "another complaint"},
        {"words": 3},
        {"id": "000000000000"},
        {"id": "../../etc/pa"},
        {"hidden": "!"},
        {"hidden": "ä"},
        {"hidden": ""},
        {"hidden": "QUJD" * 100},
    ],
)
def test_altered_files_are_refused(change: dict[str, object], saved: Path, rulebook: Rulebook) -> None:
    saved.write_bytes(_altered(saved, **change))
    with pytest.raises(ExerciseFileError):
        read_exercise(saved, rulebook)


@pytest.mark.parametrize(
    "row",
    [
        b"[]",
        b"{}",
        b'{"cause":1,"corner":"RL","severity":0.5,"duration_s":60,"drive_seed":1,"car_seed":null}',
        b'{"cause":"air-gap","corner":["RL"],"severity":0.5,"duration_s":60,"drive_seed":1,"car_seed":null}',
        b'{"cause":"air-gap","corner":"RL","severity":NaN,"duration_s":60,"drive_seed":1,"car_seed":null}',
        b'{"cause":"air-gap","corner":"RL","severity":true,"duration_s":60,"drive_seed":1,"car_seed":null}',
        b'{"cause":"air-gap","corner":"RL","severity":0.5,"duration_s":1e9,"drive_seed":1,"car_seed":null}',
        b'{"cause":"air-gap","corner":"RL","severity":0.5,"duration_s":60,"drive_seed":1.5,"car_seed":null}',
        b'{"cause":"air-gap","corner":"RL","severity":0.5,"duration_s":60,"drive_seed":'
        + b"9" * 2000
        + b',"car_seed":null}',
        b'{"cause":"air-gap","corner":"vehicle","severity":0.5,"duration_s":60,"drive_seed":1,"car_seed":null}',
        b" " * 50_000_000,  # a small file that would unpack to much
    ],
)
def test_hostile_hidden_parts_are_refused(row: bytes, saved: Path, rulebook: Rulebook) -> None:
    number = json.loads(saved.read_text("utf-8"))["id"]
    saved.write_bytes(_altered(saved, hidden=_masked(row, number)))
    with pytest.raises(ExerciseFileError):
        read_exercise(saved, rulebook)


def test_missing_files_and_folders_are_told(dirty: Exercise, tmp_path: Path, rulebook: Rulebook) -> None:
    with pytest.raises(ExerciseFileError, match="cannot be read"):
        read_exercise(tmp_path / "none.exercise.json", rulebook)
    with pytest.raises(ExerciseFileError, match="cannot be read"):
        read_exercise(tmp_path, rulebook)
    with pytest.raises(OutputError):
        write_exercise(dirty, tmp_path / "no folder" / "a.exercise.json")
