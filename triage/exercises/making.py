"""Making exercises: a trainer's choice, a surprise, or a sample log; and driving their road tests."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

import numpy as np

from triage.corners import CORNERS, Place
from triage.errors import SettingsError
from triage.evidence.answers import Observation
from triage.evidence.fitting import sensor_check
from triage.evidence.rule_tables import Check, Rulebook
from triage.exercises.exercise import LARGEST_SEED, Exercise, Hidden, Wish, check_hidden, id_of, place_for
from triage.exercises.hidden_answers import answer_check
from triage.progress import Progress, no_progress
from triage.simulator.equipment import Setup
from triage.simulator.faults import FAULT_MODELS
from triage.simulator.road_test import RoadTest, setup_of_seed, simulate_road_test
from triage.simulator.sample_logs import SampleLog
from triage.simulator.setup import draw_setup
from triage.texts import Text

SPOKEN: Final = "Ask the driver"
"""How the questions begin that a driver answers at the desk."""

ALWAYS_TOLD: Final = 2
ALSO_TOLD: Final = 2
"""The first questions of the rule book are answered in every complaint, and so many of the others."""

SURPRISE_SEVERITIES: Final = (0.3, 0.9)

_CAR, _DRIVE, _COMPLAINT, _SURPRISE = range(31, 35)
"""Keep the draws of one seed apart."""


def simulated_causes() -> tuple[str, ...]:
    """Return the causes that an exercise can have."""
    return tuple(model.cause for model in FAULT_MODELS)


def make_exercise(hidden: Hidden, rulebook: Rulebook, *, words: str = "") -> Exercise:
    """Make an exercise of a hidden fault; the driver's answers are drawn from the rule book's tables.

    Raises
    ------
    SettingsError
        For a request that cannot be simulated.
    """
    check_hidden(hidden, rulebook, simulated_causes())
    bare = Exercise(id_of(hidden, words), hidden, words)
    told = () if words else _complaint(bare, rulebook)
    sensor = _setup(hidden).sensor.kind
    kind = sensor_check(rulebook)
    seen = (Observation(kind.id, None, sensor),) if kind is not None and sensor in kind.outcomes else ()
    return replace(bare, complaint=(*told, *seen), sensor=sensor)


def make_wished(wish: Wish, rulebook: Rulebook) -> Exercise:
    """Make an exercise of what a trainer asks for; the same wish gives the same exercise.

    Raises
    ------
    SettingsError
        For a wish that cannot be simulated.
    """
    if wish.seed < 0:
        raise SettingsError(
            Text("the seed {seed} is negative", seed=wish.seed), hint="Use 0 or a positive whole number."
        )
    rng = np.random.default_rng([_SURPRISE, wish.seed])
    drawn = simulated_causes()[int(rng.integers(len(simulated_causes())))]
    corner: Place = wish.corner or CORNERS[int(rng.integers(len(CORNERS)))]
    severity = float(np.round(rng.uniform(*SURPRISE_SEVERITIES), 2))
    car, drive = (int(rng.integers(LARGEST_SEED)) for _ in range(2))
    cause = wish.cause or drawn
    hidden = Hidden(
        cause,
        place_for(cause, corner, rulebook) if cause in rulebook.causes else corner,
        severity if wish.severity is None else wish.severity,
        wish.duration_s,
        drive if wish.drive_seed is None else wish.drive_seed,
        car if wish.car_seed is None else wish.car_seed,
    )
    return make_exercise(hidden, rulebook)


def exercise_of_sample(sample: SampleLog, rulebook: Rulebook) -> Exercise:
    """Make an exercise of a sample log: the same road test to the last bit, and what its driver said."""
    hidden = Hidden(sample.cause, sample.corner, sample.severity, sample.seconds, sample.seed)
    return make_exercise(hidden, rulebook, words=sample.complaint)


def drive_exercise(exercise: Exercise, progress: Progress = no_progress) -> RoadTest:
    """Drive the road test of an exercise; its log tells nothing of what was built in."""
    hidden = exercise.hidden
    test = simulate_road_test(
        cause=hidden.cause,
        corner=hidden.corner,
        severity=hidden.severity,
        duration_s=hidden.duration_s,
        seed=hidden.drive_seed,
        setup=_setup(hidden),
        progress=progress,
    )
    # The simulator writes the fault into the name and the history of its log.
    log = replace(test.log, file=exercise.title, format=Text("road test of an exercise"), history=())
    return replace(test, log=log)


def _setup(hidden: Hidden) -> Setup:
    """Return the car of one seed on the road of another, or both of one."""
    if hidden.car_seed is None:
        return setup_of_seed(hidden.drive_seed)
    car = draw_setup(np.random.default_rng([_CAR, hidden.car_seed]))
    road = draw_setup(np.random.default_rng([_DRIVE, hidden.drive_seed]))
    return replace(car, drive=road.drive)


def spoken_checks(rulebook: Rulebook) -> tuple[Check, ...]:
    """Return the questions to the driver."""
    return tuple(check for check in rulebook.checks.values() if check.question.startswith(SPOKEN))


def _complaint(exercise: Exercise, rulebook: Rulebook) -> tuple[Observation, ...]:
    questions = spoken_checks(rulebook)
    rng = np.random.default_rng([_COMPLAINT, int(exercise.id, 16)])
    first, rest = questions[:ALWAYS_TOLD], questions[ALWAYS_TOLD:]
    also = sorted(rng.permutation(len(rest))[:ALSO_TOLD].tolist())
    chosen = (*first, *(rest[at] for at in also))
    return tuple(answer_check(exercise, check.id, None, rulebook) for check in chosen)
