"""What a workshop does first: it asks, reads the codes, looks, and only then buys a part (no source)."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from triage.corners import VEHICLE
from triage.evidence.answers import build_answers, parse_observation
from triage.evidence.hypotheses import Finding
from triage.evidence.rule_tables import Rulebook
from triage.evidence.rulebook import load_rulebook
from triage.logs import read_log
from triage.planning.guidance import FROM_THE_SEAT, LEAST_TOLD_BIT, guide
from triage.planning.plan import Plan, make_plan
from triage.run import TriageResult, run_triage

SAMPLES = Path(__file__).parents[2] / "sample_logs"


@pytest.fixture(scope="module")
def rulebook() -> Rulebook:
    return load_rulebook()


@pytest.fixture(scope="module")
def damaged(rulebook: Rulebook) -> TriageResult:
    (sample,) = SAMPLES.glob("crumpet-damage-front-left*")
    return run_triage(read_log([str(sample)]), rulebook)


def _answers(rulebook: Rulebook, *texts: str) -> tuple[Finding, ...]:
    return build_answers([parse_observation(text) for text in texts], rulebook, first_corner="FL")


def _order(rulebook: Rulebook, says: Mapping[str, str]) -> list[str]:
    """Follow the plan to the first repair; what nobody tells is answered as a sound car does."""
    told: list[str] = []
    order: list[str] = []
    for _ in range(30):
        step = guide(_answers(rulebook, *told), rulebook).next_step
        order.append(step.id)
        if step.kind == "repair":
            return order
        check = rulebook.checks[step.id]
        usual = list(check.outcomes)[int(np.argmax(check.table.rows["sound"]))]
        answer = says.get(step.id, usual)
        outcome, _, wheel = answer.partition("@")
        place = wheel or ("" if check.names_corner or step.place == VEHICLE else step.place)
        told.append(f"{step.id}{'@' if place else ''}{place}={outcome}")
    pytest.fail(f"no repair after {order}")


def test_the_driver_is_asked_then_the_codes_are_read_and_then_hands_get_dirty(rulebook: Rulebook) -> None:
    says = {"lamp-when": "moving-off", "false-action": "walking-pace", "read-fault-memory": "signal@RL"}
    says |= {"look-at-encoder": "dirty"}
    order = _order(rulebook, says)
    asked = [name in rulebook.checks and rulebook.checks[name].asks_driver for name in order]
    codes = order.index("read-fault-memory")
    assert 3 <= codes <= 8
    assert all(asked[:codes])
    assert order.count("read-fault-memory") == 1
    assert "look-at-encoder" in order[codes:]
    assert not asked[codes + 1]


def test_a_question_that_tells_little_does_not_go_first(rulebook: Rulebook, damaged: TriageResult) -> None:
    assert not rulebook.checks[damaged.plan.next_step.id].asks_driver
    questions = [step for step in damaged.plan.checks if rulebook.checks[step.id].asks_driver]
    assert questions
    assert max(step.gain_bit for step in questions) < LEAST_TOLD_BIT


@pytest.mark.parametrize(
    ("sample", "looks"),
    [
        ("crumpet-damage-front-left", {"look-at-encoder", "encoder-film"}),
        ("crumpet-runout-rear-right", {"ring-runout"}),
        (
            "focaccia-sensor-rear-right",
            {"sensor-supply-current", "three-level-current", "coil-resistance", "exchange-sensors"},
        ),
        ("bagel-harness-front-left", {"wiggle-lead", "connector"}),
        ("strudel-tyre-rear-right", {"compare-tyres"}),
        ("brioche-bearing-play-front-left", {"rock-wheel", "end-play-gauge"}),
    ],
)
def test_no_part_is_bought_on_a_recording_alone(sample: str, looks: set[str], rulebook: Rulebook) -> None:
    (file,) = SAMPLES.glob(f"{sample}*")
    result = run_triage(read_log([str(file)]), rulebook)
    assert result.plan.next_step.id in looks
    assert result.plan.next_step.place == result.posterior.first.hypothesis.corner


def test_the_part_follows_when_the_look_bears_it_out(rulebook: Rulebook, damaged: TriageResult) -> None:
    assert _after(damaged, rulebook, "look-at-encoder@FL=damaged").next_step.kind == "repair"
    assert _after(damaged, rulebook, "rock-wheel@FL=none").next_step.kind == "check"
    elsewhere = _after(damaged, rulebook, "look-at-encoder@RR=damaged").next_step
    assert (elsewhere.kind, elsewhere.place) == ("check", "FL")


def test_a_look_that_was_declined_is_not_pressed(rulebook: Rulebook, damaged: TriageResult) -> None:
    assert _after(damaged, rulebook, skipped=["rock-wheel@FL"]).next_step.kind == "check"
    plan = _after(damaged, rulebook, skipped=["look-at-encoder@FL"])
    assert plan.next_step.kind == "repair"
    assert plan == make_plan(damaged.findings, rulebook, skipped=["look-at-encoder@FL"])


def test_a_look_dearer_than_the_repair_is_left_out(rulebook: Rulebook, damaged: TriageResult) -> None:
    slow = {
        name: replace(check, minutes_min=900.0) if check.access not in FROM_THE_SEAT else check
        for name, check in rulebook.checks.items()
    }
    assert guide(damaged.findings, replace(rulebook, checks=slow)).next_step.kind == "repair"


def _after(result: TriageResult, rulebook: Rulebook, *answers: str, skipped: list[str] | None = None) -> Plan:
    return guide((*result.findings, *_answers(rulebook, *answers)), rulebook, skipped=skipped or [])


def test_the_reason_is_one_sentence_with_the_numbers_of_its_step(
    rulebook: Rulebook, damaged: TriageResult
) -> None:
    asked = [name for name, check in rulebook.checks.items() if check.asks_driver]
    first = guide((), rulebook)
    codes = guide((), rulebook, skipped=[f"{name}@vehicle" for name in asked])
    for plan in (first, codes, damaged.plan):
        step = plan.next_step
        assert plan.why.endswith(".")
        assert ". " not in plan.why
        assert f"{step.minutes_min:.0f} min" in plan.why
        assert f"{step.money:.0f}" in plan.why
        assert plan.expected_money == pytest.approx(plan.act_now_money - step.saving)
    assert rulebook.checks[first.next_step.id].asks_driver
    assert rulebook.checks[codes.next_step.id].takes_codes


def test_the_memory_is_read_once_for_all_wheels(rulebook: Rulebook) -> None:
    for answer in ("read-fault-memory=nothing", "read-fault-memory@RR=signal"):
        plan = guide(_answers(rulebook, answer), rulebook)
        assert "read-fault-memory" not in [step.id for step in plan.checks]
    (nothing,) = _answers(rulebook, "read-fault-memory=nothing")
    assert nothing.corner == VEHICLE


@pytest.mark.parametrize(
    ("told", "look"),
    [
        (("noise-kind=growl", "lamp-when=never", "lamp-which=none", "since-when=gradual"), "turn-by-hand"),
        (("lamp-when=moving-off", "since-when=sudden", "false-action=walking-pace"), "look-at-encoder"),
    ],
)
def test_no_car_is_given_up_or_handed_back_unseen(
    told: tuple[str, ...], look: str, rulebook: Rulebook
) -> None:
    known = _answers(rulebook, "read-fault-memory=nothing", *told)
    asked = [f"{name}@vehicle" for name, check in rulebook.checks.items() if check.asks_driver]
    hasty = replace(rulebook, workshop=replace(rulebook.workshop, last_resort=60.0))
    steps = []
    for _ in range(7):
        steps.append(guide(known, hasty, skipped=asked).next_step)
        if steps[-1].kind == "repair":
            break
        asked.append(f"{steps[-1].id}@{steps[-1].place}")
    assert steps[0].id == look
    assert len({step.place for step in steps[:4]}) == 4
    assert steps[-1].kind == "repair"  # each wheel once, and no pressing


def test_a_car_that_is_probably_sound_may_go(rulebook: Rulebook) -> None:
    sound = ("lamp-when=never", "lamp-which=none", "noise-kind=none", "false-action=never")
    known = _answers(rulebook, "read-fault-memory=nothing", *sound)
    asked = [f"{name}@vehicle" for name, check in rulebook.checks.items() if check.asks_driver]
    assert guide(known, rulebook, skipped=asked).next_step.id == "hand-back"


def test_after_a_repair_the_driver_is_not_asked_as_if_nothing_had_been_done(rulebook: Rulebook) -> None:
    before = guide((), rulebook)
    after = guide((), rulebook, tried=[("clean-encoder", "FL")])
    assert rulebook.checks[before.next_step.id].asks_driver
    assert "asked before anything is opened" in before.why
    assert "asked before anything is opened" not in after.why
