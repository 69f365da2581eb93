"""What is asked next, and what answers do to the verdict: the same as the command's --observe."""

from __future__ import annotations

from dataclasses import replace

import pytest

from triage.corners import VEHICLE
from triage.evidence.answers import parse_observation
from triage.evidence.hypotheses import Hypothesis
from triage.evidence.judge import judge
from triage.evidence.rulebook import Rulebook, load_rulebook
from triage.planning.plan import LAST_RESORT
from triage.walk.assessment import (
    Assessment,
    Recording,
    assess,
    cured_claim,
    leading_lines,
    open_levels,
    progress_line,
)
from triage.walk.ranking import ranked_lines
from triage.walk.walk_state import (
    CANNOT_SAY,
    CURED,
    NOT_CURED,
    NOT_DONE,
    Given,
    WalkState,
    answer,
    back,
    new_sitting,
)


@pytest.fixture(scope="module")
def rulebook() -> Rulebook:
    return load_rulebook()


def _walk(rulebook: Rulebook, *answers: tuple[str, str, str]) -> WalkState:
    kinds = {**dict.fromkeys(rulebook.checks, "check"), **dict.fromkeys(rulebook.repairs, "repair")}
    return WalkState(tuple(Given(kinds[name], name, place, said) for name, place, said in answers))


def _assess(rulebook: Rulebook, *answers: tuple[str, str, str]) -> Assessment:
    return assess(_walk(rulebook, *answers), Recording(), rulebook)


def test_answers_weigh_as_observations_do_and_none_is_no_evidence(rulebook: Rulebook) -> None:
    seen = [parse_observation("rock-wheel@RL=clear"), parse_observation("growl-in-curves=louder-in-right")]
    told = _assess(
        rulebook,
        ("rock-wheel", "RL", "clear"),
        ("growl-in-curves", VEHICLE, "louder-in-right"),
        ("turn-by-hand", "RL", NOT_DONE),
        ("connector", "RL", CANNOT_SAY),
    )
    assert told.judgement.posterior == judge((), (), rulebook, seen).posterior


def test_the_question_is_the_plan_s_next_step_with_its_cautions(rulebook: Rulebook) -> None:
    start = _assess(rulebook)
    assert start.question is not None
    assert (start.question.id, start.question.why) == (start.plan.next_step.id, start.plan.why)
    seen = 0
    state = WalkState()
    for _ in range(40):
        question = assess(state, Recording(), rulebook).question
        if question is None:
            break
        thing = rulebook.checks.get(question.id) or rulebook.repairs.get(question.id)
        if thing is not None and rulebook.access[thing.access].hazardous:
            seen += 1
            assert question.acknowledge
            assert question.cautions
        state = answer(state, question.given(NOT_DONE))
    assert seen >= 3


def test_what_was_skipped_is_not_asked_again_and_the_walk_ends(rulebook: Rulebook) -> None:
    few = replace(rulebook, checks={name: rulebook.checks[name] for name in ("rock-wheel", "connector")})
    state, asked = WalkState(), []
    while (question := assess(state, Recording(), few).question) is not None:
        assert (question.kind, question.id, question.place) not in asked
        asked.append((question.kind, question.id, question.place))
        state = answer(state, question.given(NOT_DONE))
        assert len(asked) < 50
    assert {name for kind, name, _ in asked if kind == "check"} <= {"rock-wheel", "connector"}


def test_a_repair_that_failed_is_not_proposed_again(rulebook: Rulebook) -> None:
    known = (
        ("rock-wheel", "RL", "clear"),
        ("turn-by-hand", "RL", "rough"),
        ("end-play-gauge", "RL", "beyond"),
    )
    failed = _assess(rulebook, *known, ("replace-hub-unit", "RL", NOT_CURED))
    assert ("replace-hub-unit", "RL") not in [(one.id, one.place) for one in failed.plan.repairs]


def test_levels_stay_open_within_a_sitting_only(rulebook: Rulebook) -> None:
    state = _walk(rulebook, ("rock-wheel", "RL", "none"))
    assert "lifted" in open_levels(state, rulebook)
    assert open_levels(new_sitting(state), rulebook) == frozenset()
    skipped = _walk(rulebook, ("rock-wheel", "RL", NOT_DONE))
    assert open_levels(skipped, rulebook) == frozenset()


def test_an_answer_can_be_looked_at_again(rulebook: Rulebook) -> None:
    state = back(_walk(rulebook, ("rock-wheel", "FR", "slight")))
    question = assess(state, Recording(), rulebook).question
    assert question is not None
    assert (question.id, question.place, question.now) == ("rock-wheel", "FR", "slight")


def test_the_ranking_says_what_moved(rulebook: Rulebook) -> None:
    before = _assess(rulebook)
    after = _assess(rulebook, ("rock-wheel", "FR", "clear"))
    first = leading_lines(after, rulebook, before)[0]
    assert "Bearing with play, front right" in first
    assert "(up from" in first
    assert not any("from" in line for line in leading_lines(after, rulebook, after))
    assert progress_line(_walk(rulebook, ("rock-wheel", "FR", "clear")), after).startswith("1 answered;")


def test_wheels_that_are_alike_are_one_line(rulebook: Rulebook) -> None:
    start = _assess(rulebook)
    lines = ranked_lines(start.judgement.posterior, rulebook, number=99)
    assert sum(line.probability for line in lines) == pytest.approx(1.0)
    assert lines[1].name == "Sensor fault, any wheel"
    assert lines[1].probability == pytest.approx(rulebook.causes["sensor-fault"].prior, rel=1e-3)
    play = _assess(rulebook, ("rock-wheel", "FR", "clear")).judgement.posterior
    told = {
        line.name: line for line in ranked_lines(play, rulebook, before=start.judgement.posterior, number=99)
    }
    assert told["Bearing with play, front right"].before == pytest.approx(0.0225, rel=1e-3)
    assert "Bearing with play, any wheel" not in told


def test_what_it_really_was_is_told_by_the_repair_that_cured(rulebook: Rulebook) -> None:
    told = (("rock-wheel", "RL", "clear"),)
    hub = _walk(rulebook, *told, ("replace-hub-unit", "RL", CURED))
    posterior = _assess(rulebook, *told).judgement.posterior
    assert cured_claim(hub, posterior, rulebook) == Hypothesis("RL", "bearing-play")
    sensor = _walk(rulebook, *told, ("replace-sensor", "FR", CURED))
    assert cured_claim(sensor, posterior, rulebook) == Hypothesis("FR", "sensor-fault")
    given_away = WalkState((Given("repair", LAST_RESORT, VEHICLE, CURED),))
    assert cured_claim(given_away, posterior, rulebook) is None


def test_the_complaint_comes_first_then_the_codes(rulebook: Rulebook) -> None:
    state, asked = WalkState(), []
    for _ in range(12):
        question = assess(state, Recording(), rulebook).question
        assert question is not None
        asked.append(question.id)
        if not rulebook.checks[question.id].asks_driver:
            break
        state = answer(state, question.given(CANNOT_SAY))
    assert asked[0] == "lamp-when"
    assert asked[-1] == "read-fault-memory"
    assert question.place == VEHICLE
    assert "The driver is asked" in _assess(rulebook).plan.why


def test_the_kind_of_sensor_is_asked_once_before_the_first_check_that_depends_on_it(
    rulebook: Rulebook,
) -> None:
    state, kinds, electrical = WalkState(), 0, 0
    for _ in range(60):
        question = assess(state, Recording(), rulebook).question
        if question is None:
            break
        if question.id == "sensor-kind":
            kinds += 1
            assert electrical == 0
            state = answer(state, Given("check", question.id, question.place, "passive"))
            continue
        sensors = rulebook.checks[question.id].sensors if question.kind == "check" else ()
        electrical += bool(sensors)
        assert not sensors or "passive" in sensors
        state = answer(state, Given(question.kind, question.id, question.place, NOT_DONE))
    assert kinds == 1
    assert electrical > 0
