"""Many simulated road tests with known faults, and what is measured on each."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, replace
from typing import Final, TypeVar

import numpy as np

from triage.calibration.look_alikes import look_alikes
from triage.calibration.trace import NO_TRACE, leaves_trace
from triage.calibration.unseen import draw_unseen_setup
from triage.corners import CORNERS, VEHICLE, Place
from triage.progress import Progress, no_progress
from triage.signals.analysis import analyse
from triage.signals.measurement import Measurement, NotMeasurable
from triage.signals.measures.table import measure_all
from triage.simulator.equipment import Setup
from triage.simulator.faults import FAULT_MODELS
from triage.simulator.road_test import RoadTest, setup_of_seed, simulate_road_test

SEVERITIES: Final = (0.2, 1.0)

DURATIONS_S: Final = (90.0, 180.0, 180.0, 300.0)

EDGES_EVERY: Final = 12
"""Every how many-th log holds edge times: enough to learn what they show, few enough to keep the others the
rule."""

CALIBRATION_SERIES: Final = 1
EVALUATION_SERIES: Final = 4
"""Road tests of different series share no seed: what is judged was never calibrated on."""

_UNSEEN: Final = 7
"""Keeps the draws of unseen cars apart from all other uses of a seed."""

TYRE_SIZE: Final = "tyre-size"

ROUGH_BEARING: Final = "bearing-roughness"
"""Usually shows nothing in the wheel speed."""

_CHUNK: Final = 4
"""Tasks sent to a process at a time."""

_Task = TypeVar("_Task")
_Result = TypeVar("_Result")


@dataclass(frozen=True, slots=True)
class Case:
    """The request for one simulated road test.

    Attributes
    ----------
    cause, corner, severity, duration_s, seed
        As for :func:`triage.simulator.road_test.simulate_road_test`.
    unseen : bool
        Whether car, encoder, control unit and recorder are of the kinds that calibration never draws.
    """

    cause: str
    corner: Place
    severity: float
    duration_s: float
    seed: int
    unseen: bool = False


@dataclass(frozen=True, slots=True)
class MeasuredCase:
    """A case with everything that was measured on it.

    Attributes
    ----------
    traits : tuple of str
        Look-alikes of faults in it (see :func:`triage.calibration.look_alikes.look_alikes`).
    """

    case: Case
    measurements: tuple[Measurement, ...]
    not_measurable: tuple[NotMeasurable, ...]
    traits: tuple[str, ...] = ()


def draw_cases(
    per_cause: int,
    *,
    series: int,
    severity: float | None = None,
    duration_s: float | None = None,
    unseen: bool = False,
) -> tuple[Case, ...]:
    """Draw the same number of road tests for every cause the simulator knows.

    Parameters
    ----------
    per_cause : int
    series : int
        Series of seeds; see ``EVALUATION_SERIES``.
    severity, duration_s : float, optional
        The same for all; drawn when None.
    unseen : bool
        Whether the cars are of kinds that calibration never draws.
    """
    drawn = (
        _draw_case(number, index, series) for number in range(len(FAULT_MODELS)) for index in range(per_cause)
    )
    return tuple(
        replace(
            case,
            severity=case.severity if severity is None else severity,
            duration_s=case.duration_s if duration_s is None else duration_s,
            unseen=unseen,
        )
        for case in drawn
    )


def measure_case(case: Case) -> MeasuredCase:
    """Simulate one road test and take every measurement on it."""
    return _measured(case, simulate_case(case))


def measure_judged_case(case: Case) -> MeasuredCase:
    """Do the same, and add ``NO_TRACE`` to the traits where the log is as good as the one without the fault.

    Bearing play leaves none on a drive without curves. A rough bearing leaves none anywhere; its cases stay,
    for no fault found is right there.
    """
    test = simulate_case(case)
    measured = _measured(case, test)
    if case.corner == VEHICLE or case.cause == ROUGH_BEARING:
        return measured
    healthy = simulate_case(replace(case, severity=0.0))
    hidden = () if leaves_trace(test.log, healthy.log) else (NO_TRACE,)
    return replace(measured, traits=(*measured.traits, *hidden))


def _measured(case: Case, test: RoadTest) -> MeasuredCase:
    measurements, not_measurable = measure_all(analyse(test.log))
    return MeasuredCase(case, measurements, not_measurable, look_alikes(test.truth.setup, test.log))


def simulate_case(case: Case) -> RoadTest:
    """Simulate the road test that a case asks for; some logs hold the times of single edges too."""
    test = simulate_road_test(
        cause=case.cause,
        corner=case.corner,
        severity=case.severity,
        duration_s=case.duration_s,
        seed=case.seed,
        setup=setup_of_case(case),
    )
    if case.seed % EDGES_EVERY:
        return test
    return replace(test, log=replace(test.log, edges=test.edges))


def setup_of_case(case: Case) -> Setup:
    """Return the car, unit, recorder and drive of a case.

    Notes
    -----
    Where front and rear tyres differ by habit and one tyre differs besides, nobody can tell from the speeds
    which of the two on its axle is the odd one: exchanging both, with the other difference between the axles,
    gives the same log. A truth that is not in the log judges nothing, so cars with a tyre of another size
    have axles that are alike. On the others the verdict names both wheels of the axle, which
    ``test_of_an_axle_that_differs_anyway_both_wheels_are_named`` holds it to.
    """
    setup = (
        draw_unseen_setup(np.random.default_rng([_UNSEEN, case.seed]))
        if case.unseen
        else setup_of_seed(case.seed)
    )
    return _with_equal_axles(setup) if case.cause == TYRE_SIZE else setup


def _with_equal_axles(setup: Setup) -> Setup:
    front_left, front_right, rear_left, rear_right = setup.car.wheel_ratio
    front, rear = (front_left + front_right) / 2.0, (rear_left + rear_right) / 2.0
    ratio = (front_left / front, front_right / front, rear_left / rear, rear_right / rear)
    return replace(setup, car=replace(setup.car, wheel_ratio=ratio))


def measure_cases(
    cases: Sequence[Case], *, workers: int, judged: bool = False, progress: Progress = no_progress
) -> tuple[MeasuredCase, ...]:
    """Measure many cases on several processor cores; the result does not depend on their number.

    With ``judged`` those that show nothing are marked (see :func:`measure_judged_case`).
    """
    work = measure_judged_case if judged else measure_case
    return spread_over_cores(work, cases, workers=workers, progress=progress)


def spread_over_cores(
    work: Callable[[_Task], _Result],
    tasks: Sequence[_Task],
    *,
    workers: int,
    doing: str = "Simulating road tests",
    progress: Progress = no_progress,
) -> tuple[_Result, ...]:
    """Do many tasks in several processes and give the results in the order of the tasks.

    Parameters
    ----------
    work : callable
        Must be importable by its name (no lambda), for it is sent to other processes.
    tasks : sequence
    workers : int
        Processes; with one, the work is done in this one.
    doing : str
        What the work is, for the progress.
    progress : Progress
        Told after every task.
    """
    if workers == 1:
        return _collected(map(work, tasks), len(tasks), doing, progress)
    few = len(tasks) < _CHUNK * 4 * workers
    with ProcessPoolExecutor(workers) as pool:
        return _collected(pool.map(work, tasks, chunksize=1 if few else _CHUNK), len(tasks), doing, progress)


def _collected(results: Iterable[_Result], count: int, doing: str, progress: Progress) -> tuple[_Result, ...]:
    kept = []
    for number, one in enumerate(results):
        progress((number + 1) / count, doing)
        kept.append(one)
    return tuple(kept)


def _draw_case(number: int, index: int, series: int) -> Case:
    rng = np.random.default_rng([series, number, index])
    model = FAULT_MODELS[number]
    corner: Place = CORNERS[int(rng.integers(4))] if model.where == "corner" else "vehicle"
    severity = float(rng.uniform(*SEVERITIES))
    duration_s = float(rng.choice(DURATIONS_S))
    return Case(model.cause, corner, severity, duration_s, seed=int(rng.integers(2**31)))
