"""Counted cars in the window: kept at once, taken back, on and off, and no damaged file overwritten."""

from __future__ import annotations

from pathlib import Path

import pytest

from triage.evidence.rule_tables import Rulebook
from triage.evidence.rulebook import load_rulebook
from triage.experience.ledger import load_ledger
from ui.state.experience import ExperienceState


@pytest.fixture(scope="module")
def rulebook() -> Rulebook:
    return load_rulebook()


def _state(path: Path, rulebook: Rulebook) -> ExperienceState:
    return ExperienceState(path, rulebook, today=lambda: "2026-11-25")


def test_what_is_counted_stands_in_the_file_and_is_taken_back(tmp_path: Path, rulebook: Rulebook) -> None:
    path = tmp_path / "experience.toml"
    state, told = _state(path, rulebook), []
    state.changed.subscribe(lambda one: told.append(len(one.ledger.outcomes)))
    state.choose_group("vans")
    state.keep("encoder-debris", corner="RR", remark="salt")
    state.keep("air-gap")
    assert [(car.cause, car.corner, car.day) for car in load_ledger(path, rulebook).outcomes] == [
        ("encoder-debris", "RR", "2026-11-25"),
        ("air-gap", "", "2026-11-25"),
    ]
    state.take_back(1)
    assert [car.cause for car in load_ledger(path, rulebook).outcomes] == ["air-gap"]
    assert told == [0, 1, 2, 1]
    assert _state(path, rulebook).group == "vans"


def test_it_moves_the_priors_only_while_it_is_on(tmp_path: Path, rulebook: Rulebook) -> None:
    """50 imagined cars and one counted: (50 p + 1) / 51."""
    state = _state(tmp_path / "experience.toml", rulebook)
    state.choose_group("vans")
    state.keep("encoder-debris")
    assert state.rulebook is rulebook
    state.turn(on=True)
    before = rulebook.causes["encoder-debris"].prior
    assert state.rulebook.causes["encoder-debris"].prior == pytest.approx((50.0 * before + 1.0) / 51.0)
    state.turn(on=False)
    assert state.rulebook is rulebook
    assert len(state.ledger.outcomes) == 1


def test_a_damaged_file_is_told_and_left_as_it_is(tmp_path: Path, rulebook: Rulebook) -> None:
    path = tmp_path / "experience.toml"
    path.write_text("not = [toml", encoding="utf-8")
    state = _state(path, rulebook)
    assert str(path) in state.note
    state.choose_group("vans")
    state.keep("air-gap")
    assert state.note
    assert path.read_text("utf-8") == "not = [toml"


def test_what_the_command_wrote_meanwhile_is_not_lost(tmp_path: Path, rulebook: Rulebook) -> None:
    path = tmp_path / "experience.toml"
    window, other = _state(path, rulebook), _state(path, rulebook)
    for state in (window, other):
        state.choose_group("vans")
    other.keep("air-gap")
    window.keep("tyre-size")
    assert [car.cause for car in load_ledger(path, rulebook).outcomes] == ["air-gap", "tyre-size"]


def test_a_group_without_a_name_is_refused_in_words(tmp_path: Path, rulebook: Rulebook) -> None:
    state = _state(tmp_path / "experience.toml", rulebook)
    state.keep("air-gap")
    assert "no name" in state.note
    assert state.ledger.outcomes == ()
