"""The desk of the trainer's page: from the choice to the truth, and back when something fails."""

from __future__ import annotations

import pytest

from triage.errors import SettingsError
from triage.evidence.rule_tables import Rulebook
from triage.evidence.rulebook import load_rulebook
from triage.exercises.exercise import Wish
from triage.progress import Cancelled
from ui.exercising import from_wish, prepare, score
from ui.state.exercise import Choosing, Debriefing, ExerciseDesk, Prepared, Waiting, Working


@pytest.fixture(scope="module")
def rulebook() -> Rulebook:
    return load_rulebook()


@pytest.fixture(scope="module")
def prepared(rulebook: Rulebook) -> Prepared:
    wishes = Wish(7, "encoder-debris", "RL", 0.6, 60.0)
    return prepare(from_wish(wishes), rulebook, told=False, progress=lambda *_: None)


@pytest.fixture
def desk(prepared: Prepared) -> ExerciseDesk:
    desk = ExerciseDesk()
    desk.wait("Driving")
    desk.begin(prepared)
    return desk


def test_checks_are_done_at_the_wheel_that_is_chosen(desk: ExerciseDesk) -> None:
    desk.choose_corner("RR")
    desk.do_check("rock-wheel")
    assert isinstance(desk.stage, Working)
    assert [(one.seen.check, one.seen.corner) for one in desk.stage.attempt.done] == [("rock-wheel", "RR")]


def test_an_answer_that_cannot_be_taken_is_told_and_nothing_is_lost(desk: ExerciseDesk) -> None:
    desk.do_check("rock-wheel")
    assert desk.hand_in(None, "encoder-debris", 0.5) is None
    assert "which wheel" in desk.note
    assert isinstance(desk.stage, Working)
    assert len(desk.stage.attempt.done) == 1
    assert desk.hand_in("RL", "encoder-debris", 0.5) is not None
    assert desk.note == ""


def test_an_unknown_check_is_told(desk: ExerciseDesk) -> None:
    desk.do_check("no-such-check")
    assert "no-such-check" in desk.note


def test_a_failure_goes_back_with_its_reason(desk: ExerciseDesk) -> None:
    desk.do_check("rock-wheel")
    desk.wait("Scoring")
    assert isinstance(desk.stage, Waiting)
    desk.fail(SettingsError("the disk is full", hint="Make room."))
    assert isinstance(desk.stage, Working)
    assert len(desk.stage.attempt.done) == 1
    assert "Make room." in desk.note


def test_the_truth_is_told_only_when_asked_for(desk: ExerciseDesk, prepared: Prepared) -> None:
    attempt = desk.hand_in("RL", "encoder-debris", 0.8)
    debrief = score(prepared, attempt, lambda *_: None)
    desk.debrief(debrief)
    assert isinstance(desk.stage, Working)  # nobody waited for it any more
    desk.wait("Scoring")
    desk.debrief(debrief)
    assert isinstance(desk.stage, Debriefing)
    assert debrief.score.right
    assert debrief.opened.result.log is prepared.test.log
    desk.leave()
    assert isinstance(desk.stage, Choosing)


def test_scoring_can_be_stopped(desk: ExerciseDesk, prepared: Prepared) -> None:
    def stop(_fraction: float, _stage: str) -> None:
        raise Cancelled

    attempt = desk.hand_in("RL", "encoder-debris", 0.8)
    with pytest.raises(Cancelled):
        score(prepared, attempt, stop)
    with pytest.raises(Cancelled):
        prepare(from_wish(Wish(1)), prepared.rulebook, told=False, progress=stop)
