"""Answers on the disk: read back as they were, refused with file and place when they make no sense."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from triage.errors import OutputError, SettingsError
from triage.evidence.rulebook import Rulebook, load_rulebook
from triage.user_files import data_folder, quoted
from triage.walk.answer_file import (
    SCHEMA,
    default_answer_file,
    format_answers,
    load_answers,
    prepare_answer_file,
    read_kept_answers,
    save_answers,
)
from triage.walk.walk_state import CANNOT_SAY, NOT_CURED, Given, WalkState

STATE = WalkState(
    (
        Given("check", "rock-wheel", "FL", "none"),
        Given("check", "lamp-when", "vehicle", CANNOT_SAY),
        Given("repair", "clean-encoder", "FL", NOT_CURED),
    )
)


@pytest.fixture(scope="module")
def rulebook() -> Rulebook:
    return load_rulebook()


def test_what_is_saved_is_read_back_the_next_day(tmp_path: Path, rulebook: Rulebook) -> None:
    path = tmp_path / "Prüffahrt #1.toml"
    save_answers(path, STATE, "Prüffahrt #1.csv")
    assert load_answers(path, rulebook) == WalkState(STATE.given, None, 3)
    assert tomllib.loads(path.read_text("utf-8"))["answer"][0]["answer"] == "none"
    assert [one.name for one in tmp_path.iterdir()] == [path.name]


@given(st.text())
def test_any_text_survives_toml(text: str) -> None:
    plain = text.encode("utf-8", "replace").decode("utf-8")
    assert tomllib.loads(f"a = {quoted(text)}") == {"a": plain}


def test_a_verdict_takes_in_what_is_evidence_and_tells_what_it_leaves(
    tmp_path: Path, rulebook: Rulebook
) -> None:
    path = tmp_path / "van.answers.toml"
    save_answers(path, STATE, "van.csv")
    kept = read_kept_answers(path, rulebook)
    assert [(one.check, one.corner, one.outcome) for one in kept.observations] == [
        ("rock-wheel", "FL", "none")
    ]
    assert kept.left_out == 2
    assert kept.words == f"In this verdict: 1 answer of {path}; 2 more, repairs or no evidence, are not."
    with pytest.raises(SettingsError, match="no such file of answers"):
        read_kept_answers(tmp_path / "none.toml", rulebook)


def test_no_file_is_no_answers(tmp_path: Path, rulebook: Rulebook) -> None:
    assert load_answers(tmp_path / "none.toml", rulebook) == WalkState()


@pytest.mark.parametrize(
    ("old", "new", "word"),
    [
        (SCHEMA, "another", "schema"),
        ("rock-wheel", "rock-moon", "no check 'rock-moon'"),
        ('"none"', '"much"', "no outcome"),
        ('"FL"\nanswer = "none"', '"XX"\nanswer = "none"', "place"),
        ('"FL"\nanswer = "none"', '"vehicle"\nanswer = "none"', "not done at vehicle"),
        ('"none"', "3", "cannot be understood"),
        ("not-cured", "perhaps", "no answer"),
        ('kind = "repair"', 'kind = "wish"', "unknown kind"),
        ("[[answer]]", "[[answer", "cannot be read"),
    ],
)
def test_nonsense_is_refused_with_its_place(
    tmp_path: Path, rulebook: Rulebook, old: str, new: str, word: str
) -> None:
    path = tmp_path / "answers.toml"
    text = format_answers(STATE, "van")
    assert old in text
    path.write_text(text.replace(old, new, 1), "utf-8")
    with pytest.raises(SettingsError, match=word) as refusal:
        load_answers(path, rulebook)
    assert refusal.value.file == str(path)
    assert refusal.value.hint


def test_doubles_bytes_and_folders_are_refused(tmp_path: Path, rulebook: Rulebook) -> None:
    path = tmp_path / "answers.toml"
    path.write_text(format_answers(WalkState(STATE.given[:1] * 2), "van"), "utf-8")
    with pytest.raises(SettingsError, match="answers 1 and 2"):
        load_answers(path, rulebook)
    path.write_bytes(b"\xff\xfe\x00")
    with pytest.raises(SettingsError, match="cannot be read"):
        load_answers(path, rulebook)
    with pytest.raises(SettingsError, match="no file"):
        load_answers(tmp_path, rulebook)
    with pytest.raises(OutputError):
        save_answers(tmp_path / "none" / "a.toml", STATE, "van")


def test_where_answers_are_kept(tmp_path: Path) -> None:
    environment = {"HOME": str(tmp_path), "XDG_DATA_HOME": str(tmp_path / "data")}
    log = tmp_path / "van.csv"
    assert default_answer_file([str(log)], environment) == tmp_path / "van.csv.answers.toml"
    path = prepare_answer_file(None, [], environment)
    assert path.parent == data_folder(environment)
    assert path.parent.is_dir()
    assert prepare_answer_file("mine.toml", [], environment) == Path("mine.toml")


def test_a_file_that_could_not_be_written_is_refused_before_the_first_answer(tmp_path: Path) -> None:
    with pytest.raises(OutputError, match="folder does not exist"):
        prepare_answer_file(str(tmp_path / "none" / "a.toml"), [], {})
    with pytest.raises(OutputError, match="is a folder"):
        prepare_answer_file(str(tmp_path), [], {})
