"""Many simulated road tests with known faults, and what is measured on each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.corners import CORNERS, Place
from triage.progress import Progress, no_progress
from triage.signals.analysis import analyse
from triage.signals.measurement import Measurement, NotMeasurable
from triage.signals.measures.table import measure_all
from triage.simulator.faults import FAULT_MODELS
from triage.simulator.road_test import simulate_road_test

SEVERITIES: Final = (0.2, 1.0)
DURATIONS_S: Final = (90.0, 180.0, 180.0, 300.0)

CALIBRATION_SERIES: Final = 1
EVALUATION_SERIES: Final = 4
"""Road tests of different series share no seed: what is judged was never calibrated on."""


@dataclass(frozen=True, slots=True)
class Case:
    """The request for one simulated road test."""

    cause: str
    corner: Place
    severity: float
    duration_s: float
    seed: int


@dataclass(frozen=True, slots=True)
class MeasuredCase:
    """A case with everything that was measured on it."""

    case: Case
    measurements: tuple[Measurement, ...]
    not_measurable: tuple[NotMeasurable, ...]


def draw_cases(
    per_cause: int, *, series: int, severity: float | None = None, duration_s: float | None = None
) -> tuple[Case, ...]:
    """Draw the same number of road tests for every cause the simulator knows.

    Parameters
    ----------
    per_cause : int
    series : int
        Series of seeds; see ``EVALUATION_SERIES``.
    severity, duration_s : float, optional
        The same for all; drawn when None.
    """
    return tuple(
        _draw_case(number, index, series, severity=severity, duration_s=duration_s)
        for number in range(len(FAULT_MODELS))
        for index in range(per_cause)
    )


def measure_case(case: Case) -> MeasuredCase:
    """Simulate one road test and take every measurement on it."""
    test = simulate_road_test(
        cause=case.cause,
        corner=case.corner,
        severity=case.severity,
        duration_s=case.duration_s,
        seed=case.seed,
    )
    measurements, not_measurable = measure_all(analyse(test.log))
    return MeasuredCase(case, measurements, not_measurable)


def measure_cases(
    cases: Sequence[Case], *, workers: int, progress: Progress = no_progress
) -> tuple[MeasuredCase, ...]:
    """Measure many cases on several processor cores; the result does not depend on their number."""
    return tuple(_measured(cases, workers, progress))


def _measured(cases: Sequence[Case], workers: int, progress: Progress) -> Iterator[MeasuredCase]:
    with ProcessPoolExecutor(workers) as pool:
        for number, one in enumerate(pool.map(measure_case, cases, chunksize=8)):
            progress((number + 1) / len(cases), "Simulating road tests")
            yield one


def _draw_case(
    number: int, index: int, series: int, *, severity: float | None, duration_s: float | None
) -> Case:
    rng = np.random.default_rng([series, number, index])
    model = FAULT_MODELS[number]
    corner: Place = CORNERS[int(rng.integers(4))] if model.where == "corner" else "vehicle"
    drawn = float(rng.uniform(*SEVERITIES))
    length = float(rng.choice(DURATIONS_S))
    return Case(
        cause=model.cause,
        corner=corner,
        severity=drawn if severity is None else severity,
        duration_s=length if duration_s is None else duration_s,
        seed=int(rng.integers(2**31)),
    )
