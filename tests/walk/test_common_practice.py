"""What common practice does first, asked of the walk itself (no source)."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import numpy as np
import pytest

from triage.corners import CORNERS, VEHICLE
from triage.evidence.rule_tables import Check, Rulebook
from triage.evidence.rulebook import load_rulebook
from triage.logs import read_log
from triage.run import run_triage
from triage.walk.assessment import Recording, assess, place_of
from triage.walk.walk_state import Given, WalkState, answer

SAMPLES = Path(__file__).parents[2] / "sample_logs"

HUB_WORK = {"replace-hub-unit", "replace-encoder", "encoder-film"}


@pytest.fixture(scope="module")
def rulebook() -> Rulebook:
    return load_rulebook()


def _answered(*texts: str) -> WalkState:
    """Answers as ``rock-wheel@RR=none``."""
    state = WalkState()
    for text in texts:
        step, outcome = text.split("=")
        name, _, place = step.partition("@")
        state = answer(state, Given("check", name, place_of(place) or VEHICLE, outcome))
    return state


def _steps_to_the_first_repair(
    state: WalkState, recording: Recording, rulebook: Rulebook, says: Mapping[str, str]
) -> list[str]:
    """Names of what the walk asks; a check without an answer told is answered as a sound car does."""
    steps = []
    for _ in range(20):
        question = assess(state, recording, rulebook).question
        assert question is not None
        steps.append(question.id)
        if question.kind == "repair":
            return steps
        told = says.get(question.id) or _usual(rulebook.checks[question.id])
        state = answer(state, Given("check", question.id, question.place, told))
    pytest.fail(f"no repair after {steps}")


def _usual(check: Check) -> str:
    return list(check.outcomes)[int(np.argmax(check.table.rows["sound"]))]


def test_dirt_in_the_log_without_play_leads_through_the_bore_before_any_work_on_the_hub(
    rulebook: Rulebook,
) -> None:
    (sample,) = SAMPLES.glob("*debris-rear-left*")
    result = run_triage(read_log([str(sample)]), rulebook)
    corner = result.posterior.first.hypothesis.corner
    assert corner in CORNERS
    recording = Recording(result.measurements, result.not_measurable)
    state = _answered(f"rock-wheel@{corner}=none", f"turn-by-hand@{corner}=smooth")
    says = {"look-at-encoder": "dirty", "sensor-face": "metal-dust", "read-fault-memory": "signal"}
    steps = _steps_to_the_first_repair(state, recording, rulebook, says)
    assert steps[-1] == "clean-encoder"
    assert {"look-at-encoder", "sensor-face"} & set(steps)
    assert not HUB_WORK & set(steps)


def test_play_beyond_the_limit_and_a_rumble_in_curves_lead_to_the_hub_unit(rulebook: Rulebook) -> None:
    """A left curve loads the right side."""
    state = _answered(
        "end-play-gauge@RR=beyond",
        "noise-kind=growl",
        "growl-in-curves=louder-in-left",
        "rock-wheel@RR=clear",
    )
    says = {
        "read-fault-memory": "signal",
        "complaint-in-curves": "worse-in-left",
        "rock-with-brake": "gone-with-brake",
    }
    steps = _steps_to_the_first_repair(state, Recording(), rulebook, says)
    assert steps[-1] == "replace-hub-unit"


def test_a_dead_wheel_without_current_leads_to_lead_and_connector_before_a_sensor_is_bought(
    rulebook: Rulebook,
) -> None:
    known = ["read-fault-memory@RR=circuit", "sensor-kind=active", "sensor-supply-current@RR=none"]
    known += [f"read-fault-memory@{corner}=nothing" for corner in CORNERS if corner != "RR"]
    says = {"lamp-when": "at-standstill", "lamp-which": "brake-control"}
    steps = _steps_to_the_first_repair(_answered(*known), Recording(), rulebook, says)
    looked = [at for at, name in enumerate(steps) if name in ("connector", "wiggle-lead")]
    assert looked
    assert "replace-sensor" not in steps[: looked[0]]
