"""The words of the experience: the verdict without and with it as the engine computes both."""

from __future__ import annotations

from pathlib import Path

import pytest

from triage.evidence.answers import Observation, build_answers
from triage.evidence.posterior import rank_hypotheses
from triage.evidence.rulebook import load_rulebook
from triage.units import format_share
from ui.presenters.experience import build_experience_text, cause_choices
from ui.state.experience import ExperienceState


@pytest.fixture
def state(tmp_path: Path) -> ExperienceState:
    made = ExperienceState(tmp_path / "experience.toml", load_rulebook(), today=lambda: "2026-11-25")
    made.choose_group("vans")
    return made


def test_the_effect_on_the_verdict_is_that_of_the_priors(state: ExperienceState) -> None:
    seen = build_answers([Observation("read-fault-memory", "RR", "signal")], state.plain, first_corner="RR")
    for _ in range(8):
        state.keep("air-gap", corner="RR")
    state.turn(on=True)
    (claim, before, after), *_ = build_experience_text(state, seen).verdict
    told = rank_hypotheses(seen, state.rulebook).first
    plain = {line.hypothesis: line.probability for line in rank_hypotheses(seen, state.plain).ranking}
    assert claim.endswith("rear right")
    assert (told.hypothesis.cause, told.hypothesis.corner) == ("air-gap", "RR")
    assert after == format_share(told.probability)
    assert before == format_share(plain[told.hypothesis])
    assert before != after


def test_on_and_off_are_told_with_the_number_of_cars(state: ExperienceState) -> None:
    assert "No car" in build_experience_text(state, None).standing
    state.keep("air-gap", remark="wrong part")
    off = build_experience_text(state, None)
    assert off.standing.startswith("Off: 1 car of “vans”")
    assert off.cars == ((1, f"1: 2026-11-25, {dict(cause_choices(state.plain))['air-gap']}, wrong part"),)
    assert off.causes[0][1] == "1"
    assert off.verdict == ()
    state.turn(on=True)
    assert build_experience_text(state, None).standing.startswith("On: 1 car")
