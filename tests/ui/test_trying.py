"""Trying an answer, with the rule book that comes with the program; the truth is that of a full judgement."""

from __future__ import annotations

from dataclasses import replace

import pytest

from triage.errors import SettingsError
from triage.evidence.answers import Observation
from triage.evidence.judge import judge
from triage.evidence.rule_tables import Rulebook
from triage.evidence.rulebook import load_rulebook
from triage.walk.walk_state import Given, WalkState
from ui.bench_opening import with_assessment
from ui.state.opening import Opened
from ui.trying import trial_choices, try_answer


@pytest.fixture(scope="module")
def rulebook() -> Rulebook:
    return load_rulebook()


def test_every_check_with_every_outcome_can_be_chosen(rulebook: Rulebook) -> None:
    choices = {choice.id: choice for choice in trial_choices(rulebook)}
    assert choices.keys() == rulebook.checks.keys()
    for name, check in rulebook.checks.items():
        assert [answer for answer, _ in choices[name].answers] == list(check.outcomes)
        assert (choices[name].wheel == "needed") == (check.where == "corner" and not check.names_corner)


def test_it_gives_what_recording_the_answer_would_give(opened: Opened, rulebook: Rulebook) -> None:
    trial = try_answer(opened, rulebook, "rock-wheel", "clear", corner="RR")
    truth = judge((), opened.result.not_measurable, rulebook, [Observation("rock-wheel", "RR", "clear")])
    assert trial.opened.result.posterior == truth.posterior
    assert trial.told.startswith("Rock the wheel, rear right: ")
    assert trial.opened.answers == WalkState(), "nothing is recorded"
    assert opened.result.posterior != truth.posterior, "what was judged before is left as it is"


def test_earlier_answers_count_and_the_same_check_is_replaced(opened: Opened, rulebook: Rulebook) -> None:
    given = (Given("check", "rock-wheel", "FL", "none"), Given("check", "compare-tyres", "FL", "same"))
    asked = replace(opened, answers=WalkState(given))
    trial = try_answer(asked, rulebook, "rock-wheel", "clear", corner="FL")
    seen = [Observation("compare-tyres", "FL", "same"), Observation("rock-wheel", "FL", "clear")]
    assert trial.opened.result.posterior == judge((), (), rulebook, seen).posterior
    assert trial.opened.answers.given == given


def test_a_check_of_the_whole_car_needs_no_wheel(opened: Opened, rulebook: Rulebook) -> None:
    trial = try_answer(opened, rulebook, "growl-in-curves", "louder-in-left", corner=None)
    assert trial.told.startswith(rulebook.checks["growl-in-curves"].title + ": ")


def test_what_does_not_move_is_told_to_stay(opened: Opened, rulebook: Rulebook) -> None:
    now = try_answer(opened, rulebook, "rock-wheel", "clear", corner="FL").opened
    trial = try_answer(now, rulebook, "rock-wheel", "clear", corner="FL")
    assert ": stays at " in trial.moved


def test_an_unknown_check_or_answer_is_refused(opened: Opened, rulebook: Rulebook) -> None:
    with pytest.raises(SettingsError, match="no check"):
        try_answer(opened, rulebook, "kick-the-tyre", "loud", corner="FL")
    with pytest.raises(SettingsError, match="outcome"):
        try_answer(opened, rulebook, "rock-wheel", "loud", corner="FL")


def test_another_verdict_leaves_the_measuring_alone(opened: Opened, rulebook: Rulebook) -> None:
    from triage.walk.assessment import Recording, assess

    result = with_assessment(opened.result, assess(WalkState(), Recording(), rulebook))
    assert result.log is opened.result.log
    assert result.measurements == opened.result.measurements
    assert result.posterior != opened.result.posterior
