from __future__ import annotations

from dataclasses import replace

import pytest

from triage.evidence.hypotheses import Posterior
from triage.walk.walk_state import CANNOT_SAY, Given, WalkState
from ui.presenters.steps import STEPS, build_car, build_exercise, build_steps
from ui.state.opening import Opened, OpenOrder
from ui.state.window_state import (
    ExercisePhase,
    LoadingPhase,
    Phase,
    RefusedPhase,
    ShowingPhase,
    StartPhase,
)

ORDER = OpenOrder(("/logs/van 3.csv",))


@pytest.fixture
def showing(opened: Opened) -> ShowingPhase:
    return ShowingPhase(ORDER, opened)


def test_at_the_start_only_the_complaint_can_be_turned_to() -> None:
    steps = build_steps(StartPhase(), "verdict", None)
    assert [step.step for step in steps] == list(STEPS)
    assert [step.can_go for step in steps] == [True, False, False]
    assert not any(step.is_here for step in steps)
    assert build_car(StartPhase(), None).suspect == ""


def test_a_recording_opens_every_step_and_each_tells_what_it_gave(showing: ShowingPhase) -> None:
    complaint, road, verdict = build_steps(showing, "road-test", showing.opened)
    assert (complaint.can_go, road.can_go, verdict.can_go) == (True, True, True)
    assert (complaint.is_here, road.is_here, verdict.is_here) == (False, True, False)
    assert (complaint.told, road.told, verdict.told) == (
        "nothing asked yet",
        "60.0 s recorded",
        "one cause stands out",
    )


def test_car_and_corner_are_named(showing: ShowingPhase) -> None:
    car = build_car(showing, showing.opened)
    assert (car.title, car.suspect, car.decided) == ("van 3.csv", "Suspected: FL front left, 94 %", True)


def test_nothing_stands_out_when_all_is_even(showing: ShowingPhase) -> None:
    result = showing.opened.result
    even = tuple(replace(line, probability=0.125) for line in result.posterior.ranking)
    opened = replace(showing.opened, result=replace(result, posterior=Posterior(even[-1:] + even[3:5])))
    assert build_car(showing, opened).suspect == "No corner stands out"
    assert build_steps(showing, "verdict", opened)[2].told == "not decided"


def test_a_sound_car_has_no_cause_that_stands_out(showing: ShowingPhase) -> None:
    result = showing.opened.result
    sound = next(line for line in result.posterior.ranking if line.hypothesis.cause == "no-fault-found")
    opened = replace(
        showing.opened, result=replace(result, posterior=Posterior((replace(sound, probability=0.76),)))
    )
    assert build_steps(showing, "verdict", opened)[2].told == "no fault found"


def test_only_answers_that_told_something_are_counted(showing: ShowingPhase) -> None:
    given = (Given("check", "a", "FL", "none"), Given("check", "b", "FL", CANNOT_SAY))
    asked = replace(showing, opened=replace(showing.opened, answers=WalkState(given)))
    assert build_steps(asked, "verdict", asked.opened)[0].told == "1 answer"


@pytest.mark.parametrize("phase", [LoadingPhase(ORDER), RefusedPhase(ORDER, ValueError())])
def test_while_reading_no_step_can_be_turned_to(phase: Phase) -> None:
    assert not any(step.can_go for step in build_steps(phase, "verdict", None))
    assert not build_exercise(phase).can_go
    assert build_car(phase, None).title == "van 3.csv"


def test_an_exercise_tells_nothing_of_its_car_and_leads_back(showing: ShowingPhase) -> None:
    phase = ExercisePhase(showing)
    assert build_car(phase, None).suspect == ""
    assert build_exercise(phase).is_here
    assert all(step.can_go for step in build_steps(phase, "verdict", None))
    assert [step.can_go for step in build_steps(ExercisePhase(StartPhase()), "verdict", None)] == [
        True,
        False,
        False,
    ]
