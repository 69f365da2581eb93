"""The class sheet grows line by line, opens in a spreadsheet program, and runs nothing there."""

from __future__ import annotations

import csv
from pathlib import Path

import pandas as pd
import pytest

from triage.errors import ExerciseFileError, SettingsError
from triage.evidence.rule_tables import Rulebook
from triage.exercises.attempt import Attempt, commit
from triage.exercises.class_sheet import COLUMNS, add_to_class_sheet, sheet_line
from triage.exercises.exercise import Exercise
from triage.exercises.ideal_order import IdealOrder
from triage.exercises.score import score_attempt

IDEAL = IdealOrder((), 50.0, 80.0, ())


def line_of(name: str, exercise: Exercise, rulebook: Rulebook, *, cause: str = "encoder-debris"):
    attempt = commit(Attempt(exercise), "RL", cause, 0.75, rulebook=rulebook)
    return sheet_line(name, attempt, score_attempt(attempt, IDEAL, rulebook))


def test_lines_are_added_and_read_by_others(dirty: Exercise, rulebook: Rulebook, tmp_path: Path) -> None:
    path = tmp_path / "class.csv"
    assert add_to_class_sheet(line_of("Jürgen, 2nd row", dirty, rulebook), path) == 1
    assert add_to_class_sheet(line_of("Ada", dirty, rulebook, cause="sensor-fault"), path) == 2
    table = pd.read_csv(path, encoding="utf-8-sig")
    assert tuple(table.columns) == COLUMNS
    assert list(table["trainee"]) == ["Jürgen, 2nd row", "Ada"]
    assert list(table["right"]) == ["yes", "no"]
    assert list(table["brier_score"]) == [0.0625, 0.5625]
    assert list(table["parts_wasted"].fillna("")) == ["", "sensor"]


@pytest.mark.parametrize("name", ["=HYPERLINK(A1)", "+1+1", "-cmd", "@SUM(A1)"])
def test_no_name_is_run(name: str, dirty: Exercise, rulebook: Rulebook, tmp_path: Path) -> None:
    path = tmp_path / "class.csv"
    for count in (1, 2):
        assert add_to_class_sheet(line_of(name, dirty, rulebook), path) == count
    with path.open(encoding="utf-8-sig", newline="") as sheet:
        rows = list(csv.reader(sheet))
    assert [row[0] for row in rows[1:]] == [f"'{name}"] * 2


@pytest.mark.parametrize("name", ["", "   ", "x" * 81])
def test_a_line_needs_a_name(name: str, dirty: Exercise, rulebook: Rulebook) -> None:
    with pytest.raises(SettingsError, match="name"):
        line_of(name, dirty, rulebook)


@pytest.mark.parametrize("content", [b"a,b\r\n1,2\r\n", b"\xff\xfe\x00", b"", b'"', b"x" * 5_000_000])
def test_other_files_are_left_as_they_are(
    content: bytes, dirty: Exercise, rulebook: Rulebook, tmp_path: Path
) -> None:
    path = tmp_path / "other.csv"
    path.write_bytes(content)
    with pytest.raises(ExerciseFileError) as refusal:
        add_to_class_sheet(line_of("Ada", dirty, rulebook), path)
    assert refusal.value.file == str(path)
    assert path.read_bytes() == content
