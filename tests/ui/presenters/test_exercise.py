"""What the trainer's page says, and what it does not say before the truth is told."""

from __future__ import annotations

import math
import re

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.evidence.fitting import fits
from triage.evidence.rule_tables import Rulebook
from triage.evidence.rulebook import load_rulebook
from triage.exercises.attempt import Attempt, commit, order_check
from triage.exercises.exercise import Wish
from triage.exercises.making import simulated_causes
from ui.exercising import from_wish, prepare, score
from ui.presenters.exercise import check_rows, complaint_lines, done_lines, rows_by_heading, spent_line
from ui.presenters.exercise_debrief import build_debrief, truth_line
from ui.presenters.exercise_sketch import PARTS, plan_sketch
from ui.presenters.replay import VIEW_S, highest_speed, speeds_at, view_span
from ui.state.exercise import Prepared


@pytest.fixture(scope="module")
def rulebook() -> Rulebook:
    return load_rulebook()


def prepared_for(cause: str, rulebook: Rulebook, *, severity: float = 0.6) -> Prepared:
    wishes = Wish(7, cause, "RL", severity, 30.0)
    return prepare(from_wish(wishes), rulebook, told=False, progress=lambda *_: None)


@pytest.fixture(scope="module")
def dirty(rulebook: Rulebook) -> Prepared:
    return prepared_for("encoder-debris", rulebook)


def test_the_complaint_is_in_words(dirty: Prepared, rulebook: Rulebook) -> None:
    lines = complaint_lines(dirty.exercise, rulebook)
    assert len(lines) == 5
    assert lines[-1].startswith("Sensors of this car: ")
    assert lines[0].startswith("When the lamp comes on: ")
    assert all(line.endswith(".") and not line.startswith("Ask") for line in lines)


def test_rows_tell_prices_and_then_answers(dirty: Prepared, rulebook: Rulebook) -> None:
    attempt = Attempt(dirty.exercise)
    before = {row.check: row for row in check_rows(attempt, "FR", rulebook)}
    fitting = {check.id for check in rulebook.checks.values() if fits(check, dirty.exercise.sensor)}
    assert set(before) == fitting < set(rulebook.checks)
    assert re.fullmatch(r"7 min, \d+ units of money", before["rock-wheel"].price)
    attempt = order_check(attempt, "rock-wheel", "FR", rulebook)
    after = {row.check: row for row in check_rows(attempt, "FR", rulebook)}
    assert after["rock-wheel"].answer
    assert after["rock-wheel"].price == ""
    assert after["turn-by-hand"].price.startswith("2 min")  # the wheel is off the ground already
    assert not {row.check: row for row in check_rows(attempt, "FL", rulebook)}["rock-wheel"].answer
    assert "Rock the wheel, front right" in done_lines(attempt, rulebook)[0]
    assert "units of money (an hour of work counts 90 of them)" in spent_line(attempt, rulebook)
    assert "7 min" in spent_line(attempt, rulebook)
    assert "wheel off the ground" in spent_line(attempt, rulebook)


def test_every_heading_comes_once(dirty: Prepared, rulebook: Rulebook) -> None:
    headings = [
        heading for heading, _ in rows_by_heading(check_rows(Attempt(dirty.exercise), "FL", rulebook))
    ]
    assert len(set(headings)) == len(headings) > 4


def test_dangerous_checks_bring_their_cautions(dirty: Prepared, rulebook: Rulebook) -> None:
    for row in check_rows(Attempt(dirty.exercise), "FL", rulebook):
        if rulebook.access[rulebook.checks[row.check].access].hazardous:
            assert row.cautions


def test_the_truth_and_the_score_are_worded(dirty: Prepared, rulebook: Rulebook) -> None:
    attempt = order_check(Attempt(dirty.exercise), "look-at-encoder", "RL", rulebook)
    attempt = commit(attempt, "RL", "encoder-damage", 0.7, rulebook=rulebook)
    text = build_debrief(dirty, score(dirty, attempt, lambda *_: None))
    assert text.truth == "Dirt on the encoder, rear left (clear)"
    assert "70 % sure: the wheel is right, the cause is not" in text.verdict
    assert "0.49" in text.score[1].meaning
    assert f"−{-math.log2(0.3):.2f}" in text.score[1].meaning
    assert text.own[0].startswith("Look at the encoder")
    assert "Replace the encoder" in text.own[-1]
    assert text.ideal[-1].split(" (")[0] in {repair.title for repair in rulebook.repairs.values()}


def test_a_sound_car_has_no_strength(rulebook: Rulebook) -> None:
    hidden = prepared_for("no-fault-found", rulebook).exercise.hidden
    assert truth_line(hidden, rulebook) == "No fault found"


def test_the_ring_is_counted_against_its_turning_seen_from_outside(rulebook: Rulebook) -> None:
    # Rolling forward, a left wheel turns against the clock for who stands beside it, a right one with it.
    for corner, clockwise, words in (("RL", True, " clockwise"), ("RR", False, "counter-clockwise")):
        wishes = Wish(7, "encoder-debris", corner, 0.6, 30.0)
        made = prepare(from_wish(wishes), rulebook, told=False, progress=lambda *_: None)
        plan = plan_sketch(made.test.truth)
        assert plan.clockwise is clockwise
        assert words in plan.caption


@pytest.mark.parametrize("cause", simulated_causes())
def test_every_fault_has_its_sketch(cause: str, rulebook: Rulebook) -> None:
    plan = plan_sketch(prepared_for(cause, rulebook).test.truth)
    assert plan.part == PARTS[cause]
    assert plan.caption
    assert bool(plan.strength) == (plan.corner in CORNERS)
    assert all(0.0 <= one <= 1.0 for one in plan.strength)
    assert bool(plan.sectors_rev) == (cause in {"encoder-debris", "encoder-damage"})
    assert (plan.off_centre > 0.0) == (cause == "encoder-runout")


def test_the_sectors_of_the_sketch_are_those_of_the_truth(dirty: Prepared) -> None:
    plan = plan_sketch(dirty.test.truth)
    weak = np.array(plan.strength) < 0.5 * (min(plan.strength) + 1.0)
    poles = (np.flatnonzero(weak) + 0.5) / len(plan.strength)
    for pole in poles:
        apart = [abs((pole - centre + 0.5) % 1.0 - 0.5) for centre, _ in plan.sectors_rev]
        widths = [width for _, width in plan.sectors_rev]
        assert any(gap <= 0.5 * width + 0.02 for gap, width in zip(apart, widths, strict=True))


def test_the_view_is_the_first_minute_and_then_follows() -> None:
    assert view_span(10.0, 0.0) == (0.0, VIEW_S)
    begin, end = view_span(100.0, 0.0)
    assert end - begin == VIEW_S
    assert begin < 100.0 < end


def test_speeds_are_those_of_the_last_sample(dirty: Prepared) -> None:
    trace = dirty.test.log.wheels["FL"]
    at = 700
    told = speeds_at(dirty.test.log, float(trace.time_s[at]) + 1e-6, "m/s")
    if not trace.invalid[at]:
        assert told["FL"] == pytest.approx(trace.speed_mps[at])
    assert speeds_at(dirty.test.log, -1.0, "m/s") == {}
    highest = max(float(np.nanmax(one.speed_mps)) for one in dirty.test.log.wheels.values())
    assert highest_speed(dirty.test.log, "km/h") > 3.6 * highest
