"""Exercises can be made again from their wish, and nothing in a log tells what was built in."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from triage.errors import SettingsError
from triage.evidence.rule_tables import Rulebook
from triage.exercises.exercise import LARGEST_SEED, Exercise, Hidden, Wish
from triage.exercises.making import (
    drive_exercise,
    exercise_of_sample,
    make_exercise,
    make_wished,
    simulated_causes,
    spoken_checks,
)
from triage.simulator.sample_logs import digest_of, load_sample_index

SAMPLES = Path(__file__).parents[2] / "sample_logs"


def test_a_wish_can_be_made_again(rulebook: Rulebook) -> None:
    assert make_wished(Wish(5), rulebook) == make_wished(Wish(5), rulebook)
    assert make_wished(Wish(5), rulebook).id != make_wished(Wish(6), rulebook).id


def test_chance_brings_every_cause_and_wheel(rulebook: Rulebook) -> None:
    drawn = [make_wished(Wish(seed), rulebook).hidden for seed in range(150)]
    assert {hidden.cause for hidden in drawn} == set(simulated_causes())
    assert {hidden.corner for hidden in drawn} == {"FL", "FR", "RL", "RR", "vehicle"}


def test_what_is_wished_is_kept(rulebook: Rulebook) -> None:
    hidden = make_wished(Wish(1, "air-gap", "FR", 0.25, 90.0, car_seed=4, drive_seed=9), rulebook).hidden
    assert hidden == Hidden("air-gap", "FR", 0.25, 90.0, 9, 4)
    assert make_wished(Wish(1, "common-cause", "FR"), rulebook).hidden.corner == "vehicle"


def test_the_complaint_is_what_asking_again_would_tell(dirty: Exercise, rulebook: Rulebook) -> None:
    names = [seen.check for seen in dirty.complaint]
    assert names[:2] == [check.id for check in spoken_checks(rulebook)][:2]
    assert len(set(names)) == len(names) == 5
    assert names[4] == "sensor-kind"


def test_the_log_does_not_tell_the_fault(dirty: Exercise) -> None:
    test = drive_exercise(dirty)
    told = f"{test.log.file} {test.log.format} {test.log.history} {test.log.notices}"
    assert not any(word in told for word in (*simulated_causes(), "RL", "severity", "seed"))
    assert test.truth.cause == "encoder-debris"
    assert "encoder-debris" not in repr(dirty)


def test_the_kind_of_sensor_is_that_of_the_car(rulebook: Rulebook) -> None:
    kinds = set()
    for seed in range(12):
        exercise = make_wished(Wish(seed, duration_s=20.0), rulebook)
        assert exercise.sensor == drive_exercise(exercise).truth.setup.sensor.kind
        assert exercise.complaint[-1].outcome == exercise.sensor
        kinds.add(exercise.sensor)
    assert kinds == {"active", "passive"}


def test_one_car_drives_many_roads(rulebook: Rulebook) -> None:
    first = Hidden("no-fault-found", "vehicle", 0.0, 30.0, 11, car_seed=5)
    one, other = (
        drive_exercise(make_exercise(hidden, rulebook)) for hidden in (first, replace(first, drive_seed=12))
    )
    assert one.truth.setup.car == other.truth.setup.car
    assert one.truth.setup.encoder == other.truth.setup.encoder
    speeds = [test.log.wheels["FL"].speed_mps[:500] for test in (one, other)]
    assert not np.array_equal(*speeds, equal_nan=True)


def test_a_sample_becomes_the_very_road_test_of_its_file(rulebook: Rulebook) -> None:
    sample = load_sample_index(SAMPLES).logs[1]
    exercise = exercise_of_sample(sample, rulebook)
    assert digest_of(drive_exercise(exercise)) == sample.sha256
    assert exercise.words == sample.complaint
    assert [seen.check for seen in exercise.complaint] == ["sensor-kind"]


@pytest.mark.parametrize(
    "broken",
    [
        {"cause": "other"},
        {"cause": "no-such-cause"},
        {"corner": "vehicle"},
        {"severity": 1.5},
        {"severity": float("nan")},
        {"duration_s": 5.0},
        {"duration_s": 1e9},
        {"drive_seed": -1},
        {"car_seed": LARGEST_SEED + 1},
    ],
)
def test_what_cannot_be_simulated_is_refused(
    broken: dict[str, object], dirty: Exercise, rulebook: Rulebook
) -> None:
    with pytest.raises(SettingsError) as refusal:
        make_exercise(replace(dirty.hidden, **broken), rulebook)
    assert refusal.value.hint
