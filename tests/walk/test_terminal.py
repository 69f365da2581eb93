"""The walk in the terminal, typed and piped: every answer is on the disk, and nothing ends in a traceback."""

from __future__ import annotations

import io
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from triage.command_line import main
from triage.errors import SettingsError
from triage.evidence.rulebook import Rulebook, load_rulebook
from triage.walk.answer_file import load_answers
from triage.walk.assessment import Recording, ask_check, assess
from triage.walk.terminal import WIDTH, Walk, read_answer, walk_in_terminal
from triage.walk.walk_state import CANNOT_SAY, NOT_DONE, WalkState

Type = Callable[..., tuple[WalkState, str]]


@pytest.fixture(scope="module")
def rulebook() -> Rulebook:
    return load_rulebook()


@pytest.fixture
def typed(rulebook: Rulebook, tmp_path: Path) -> Type:
    def run(*lines: str, state: WalkState | None = None) -> tuple[WalkState, str]:
        walk = Walk(Recording(), rulebook, tmp_path / "answers.toml", "a van")
        shown: list[str] = []
        left = iter(lines)
        end = walk_in_terminal(
            walk, state or WalkState(), read_line=lambda: next(left, None), write=shown.append
        )
        return end, "".join(shown)

    return run


def test_numbers_names_skip_and_cannot_say(typed: Type, rulebook: Rulebook, tmp_path: Path) -> None:
    first = assess(WalkState(), Recording(), rulebook).question
    assert first is not None
    assert not first.acknowledge
    for line, said in (("1", first.choices[0].id), (first.choices[1].id, first.choices[1].id)):
        assert typed(line)[0].given[0].answer == said
    assert typed("s")[0].given == (first.given(NOT_DONE),)
    assert typed("cannot say")[0].given == (first.given(CANNOT_SAY),)
    assert load_answers(tmp_path / "answers.toml", rulebook).given == (first.given(CANNOT_SAY),)


def test_wrong_answers_are_asked_again(typed: Type) -> None:
    for line in ("99", "0", "nonsense", "", "-1", "²", "1" * 5000):
        state, shown = typed(line, "w", "r", "?", "p")
        assert state.given == ()
        lines = [one for one in shown.splitlines() if "answers.toml" not in one and "1" * 99 not in one]
        assert max(map(len, lines)) <= WIDTH + len("> ")


def test_values_with_a_unit_and_named_wheels(rulebook: Rulebook) -> None:
    play = ask_check("end-play-gauge", "FL", rulebook, why="", minutes_min=1.0)
    assert read_answer("0.12 mm limit 0.05", play, rulebook).answer == "0.12 mm limit 0.05"
    assert read_answer("2", play, rulebook).answer == "beyond"
    with pytest.raises(SettingsError):
        read_answer("0.12 mm", play, rulebook)  # the maker's limit is missing
    with pytest.raises(SettingsError):
        read_answer("80 mm limit 0.05", play, rulebook)
    work = ask_check("recent-work", "vehicle", rulebook, why="", minutes_min=1.0)
    assert read_answer("2@rl", work, rulebook).place == "RL"
    assert read_answer("2", work, rulebook).place == "vehicle"
    with pytest.raises(SettingsError, match="no wheel"):
        read_answer("2@xx", work, rulebook)
    named = WalkState((read_answer("2@RL", work, rulebook),))
    asked = assess(named, Recording(), rulebook)
    assert "recent-work@RL" in [finding.id for finding in asked.judgement.findings]
    assert "recent-work" not in [step.id for step in asked.plan.checks]


def test_a_trouble_code_is_typed_with_its_list(typed: Type, rulebook: Rulebook) -> None:
    memory = ask_check("read-fault-memory", "FL", rulebook, why="", minutes_min=1.0)
    assert memory.place == "vehicle"
    code = read_answer("C0035-14 in c0031-left-front", memory, rulebook)
    asked = assess(WalkState((code,)), Recording(), rulebook)
    assert "read-fault-memory@FR" in [finding.id for finding in asked.judgement.findings]
    with pytest.raises(SettingsError, match="does not name a wheel"):
        read_answer("C0035", memory, rulebook)
    with pytest.raises(SettingsError, match="which wheel"):
        read_answer("2", memory, rulebook)
    assert read_answer("2@rr", memory, rulebook).place == "RR"
    assert read_answer("1", memory, rulebook).place == "vehicle"


def test_every_question_comes_with_its_reason(typed: Type, rulebook: Rulebook) -> None:
    first = assess(WalkState(), Recording(), rulebook).question
    assert first is not None
    _, shown = typed()
    assert f"Why: {first.why}" in " ".join(shown.split())
    assert "()" not in shown


def test_nothing_is_said_to_be_kept_before_an_answer(typed: Type, tmp_path: Path) -> None:
    assert typed()[1].endswith("Nothing was answered.\n")
    assert typed("1", "q")[1].endswith(f"Answers are kept in {tmp_path / 'answers.toml'}\n")


def test_back_undo_and_keeping(typed: Type) -> None:
    assert typed("b", "u")[0] == WalkState()
    once, _ = typed("1")
    assert typed("1", "u")[0].given == ()
    assert typed("1", "b", "")[0] == once
    changed, _ = typed("1", "b", "2")
    assert changed.given[0].id == once.given[0].id
    assert changed.given[0].answer != once.given[0].answer


def test_a_fresh_walk_keeps_the_old_answers(typed: Type, rulebook: Rulebook, tmp_path: Path) -> None:
    state, shown = typed("1", "n")
    assert state.given == ()
    assert load_answers(tmp_path / "answers.toml", rulebook).given == ()
    assert len(load_answers(tmp_path / "answers.previous.toml", rulebook).given) == 1
    assert "answers.previous.toml" in shown


def test_cautions_stand_before_the_question_and_are_confirmed(typed: Type, rulebook: Rulebook) -> None:
    state = WalkState()
    for _ in range(60):
        question = assess(state, Recording(), rulebook).question
        assert question is not None
        if question.acknowledge:
            break
        state = WalkState((*state.given, question.given(NOT_DONE)))
    assert question.cautions
    refused, shown = typed("1", state=state)
    assert refused == state
    assert question.choices[0].text not in shown
    assert " ".join(question.cautions[0].split())[:40] in " ".join(shown.split())
    confirmed, shown = typed("", "1", state=state)
    assert confirmed.given[-1] == question.given(question.choices[0].id)
    flat = " ".join(shown.replace("  ! ", " ").split())
    assert flat.index(question.cautions[0][:40]) < flat.index(question.choices[0].text)
    assert typed("s", state=state)[0].given[-1] == question.given(NOT_DONE)


def test_a_cured_car_ends_the_walk(typed: Type, rulebook: Rulebook) -> None:
    state = WalkState()
    for _ in range(200):
        question = assess(state, Recording(), rulebook).question
        assert question is not None
        if question.kind == "repair":
            break
        state = WalkState((*state.given, question.given(NOT_DONE)))
    lines = [*([""] if question.acknowledge and question.cautions else []), "1"]
    end, shown = typed(*lines, state=state)
    assert end.finished
    assert "experience add" in shown
    assert typed("u", state=end)[0] == state
    afresh, shown = typed("n", state=end)
    assert afresh == WalkState()
    assert "Ask when the lamp comes on" in shown


@settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    st.lists(
        st.sampled_from(["", "1", "2", "3", "s", "c", "b", "u", "w", "r", "n", "?", "x", "none"]), max_size=12
    )
)
def test_nothing_typed_ends_in_a_traceback(typed: Type, lines: list[str]) -> None:
    typed(*lines)


def test_the_command_without_and_with_a_log(tmp_path: Path, monkeypatch, capsys) -> None:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    monkeypatch.setattr("sys.stdin", io.StringIO("1\n"))
    assert main(["walk"]) == 0
    assert "1 answered" in capsys.readouterr().out
    monkeypatch.setattr("sys.stdin", io.StringIO(""))
    assert main(["walk"]) == 0  # tomorrow
    assert "1 earlier answer was read" in capsys.readouterr().out
    monkeypatch.setattr("sys.stdin", None)
    log = tmp_path / "drive.csv"
    assert (
        main(
            ["simulate", "--cause", "encoder-debris", "--corner", "RL", "--seconds", "40", "--out", str(log)]
        )
        == 0
    )
    assert main(["walk", str(log)]) == 0
    shown = capsys.readouterr().out
    assert "rear left" in shown
    assert not (tmp_path / "drive.csv.answers.toml").exists()  # nothing was answered


def test_the_command_refuses_bad_answers_and_places(tmp_path: Path, monkeypatch, capsys) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO("1\n"))
    bad = tmp_path / "bad.toml"
    bad.write_text("hello", "utf-8")
    assert main(["walk", "--answers", str(bad)]) == 3
    assert str(bad) in capsys.readouterr().err
    assert main(["walk", "--answers", str(tmp_path / "none" / "a.toml")]) == 4
    assert main(["walk", str(tmp_path / "none.csv"), "--answers", str(tmp_path / "a.toml")]) == 3
