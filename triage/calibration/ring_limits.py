"""How far the ring map reaches: where a bad spot lies and how wide it is, against what was built in.

Cars as the calibration draws them roll steadily along a straight road; nothing is known but the log. The
angle of a map has an arbitrary zero, so it is set against the true angle at the time stamps.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from scipy.ndimage import uniform_filter1d

from triage.calibration.ensemble import spread_over_cores
from triage.calibration.even_dirt import EVEN_DIRT
from triage.corners import CORNERS, Corner
from triage.progress import Progress, no_progress
from triage.signals.analysis import analyse
from triage.signals.ring_map import RingMap
from triage.signals.ring_sectors import BadSector
from triage.simulator.faults import FAULT_MODELS
from triage.simulator.road_test import RoadTest, simulate_road_test
from triage.simulator.sectors import Sector
from triage.simulator.setup import Setup, draw_setup
from triage.simulator.vehicle_path import GRID_S, VehiclePath, slow_noise
from triage.speed_log import FloatArray
from triage.units import KMH

RATES_HZ: Final = (10.0, 20.0, 50.0, 100.0)
SPEEDS_KMH: Final = (15.0, 30.0, 50.0, 80.0)
LENGTHS_S: Final = (20.0, 60.0, 180.0)

GOOD_PLACE_REV: Final = 10.0 / 360.0
GOOD_WIDTH: Final = 0.3
"""What counts as found: the spot to 10 degrees, the width of the worst sector to 30 %."""

DRIFT_RATIO: Final = 0.012
"""Standard deviation of a driver's speed who means to keep it (judgement)."""


@dataclass(frozen=True, slots=True)
class RingCase:
    """One steady drive.

    Attributes
    ----------
    cause : str
        Id of a cause, or that of :data:`triage.calibration.even_dirt.EVEN_DIRT`.
    """

    cause: str
    severity: float
    rate_hz: float
    speed_kmh: float
    duration_s: float
    seed: int


@dataclass(frozen=True, slots=True)
class RingScore:
    """How the map of the struck wheel compares with the truth.

    Attributes
    ----------
    found : bool
        Whether any bad sector was found on it.
    off_rev, off_std_rev : float
        Centre of the worst sector found minus that of the true one it lies nearest to, and the standard
        uncertainty stated; NaN when none was found.
    width_ratio : float
        Width found over true width.
    """

    found: bool
    off_rev: float
    off_std_rev: float
    width_ratio: float


def ring_cases(
    cause: str, number: int, *, severity: float = 0.5, rates_hz: Sequence[float] = RATES_HZ
) -> Iterator[RingCase]:
    """Give every combination of rate, speed and length, ``number`` cars each, the same cars in all."""
    for rate_hz in rates_hz:
        for speed_kmh in SPEEDS_KMH:
            for duration_s in LENGTHS_S:
                for seed in range(number):
                    yield RingCase(cause, severity, rate_hz, speed_kmh, duration_s, seed)


def simulate_steady_drive(case: RingCase) -> RoadTest:
    """Simulate a car that keeps its speed on a straight road.

    Parameters
    ----------
    case : RingCase

    Returns
    -------
    RoadTest
    """
    rng = np.random.default_rng([case.seed, 77])
    setup = _recorded_at(draw_setup(rng), case.rate_hz)
    return simulate_road_test(
        cause=case.cause,
        corner=_corner(case),
        severity=case.severity,
        duration_s=case.duration_s,
        seed=case.seed,
        setup=setup,
        path=_steady_path(case.speed_kmh * KMH, case.duration_s, rng),
        models=(*FAULT_MODELS, EVEN_DIRT),
    )


def score_ring(case: RingCase) -> RingScore:
    """Map the struck wheel of a steady drive and compare it with the truth."""
    test = simulate_steady_drive(case)
    analysis = analyse(test.log)
    ring = analysis.rings[CORNERS.index(_corner(case))]
    if not isinstance(ring, RingMap) or not ring.sectors:
        return RingScore(False, np.nan, np.nan, np.nan)
    true_rev = test.truth.angle_rev(_corner(case), analysis.clock.time_s)
    turn = np.exp(2j * np.pi * (true_rev - ring.angle_rev))
    zero_rev = float(np.angle(turn.mean()) / (2.0 * np.pi))
    return _against(ring.sectors[0], zero_rev, test.truth.sectors)


def format_ring_limits(cases: Sequence[RingCase], scores: Sequence[RingScore]) -> str:
    """Print a table: share of the drives in which the sector was found, and found as well as it should be."""
    lines = []
    pairs = list(zip(cases, scores, strict=True))
    for cause in dict.fromkeys(case.cause for case in cases):
        own = [pair for pair in pairs if pair[0].cause == cause]
        lines += [f"{_title(own[0][0])}: {_goal(cause)}", _heading(), *_rows(own), ""]
    return "\n".join(lines)


def run_ring_limits(
    number: int, *, severity: float = 0.5, workers: int = 1, progress: Progress = no_progress
) -> tuple[tuple[RingCase, ...], tuple[RingScore, ...]]:
    """Score damage and both kinds of dirt at every rate, speed and length; ``number`` cars each."""
    cases = tuple(
        case
        for cause in ("encoder-damage", "encoder-debris", EVEN_DIRT.cause)
        for case in ring_cases(cause, number, severity=severity)
    )
    return cases, spread_over_cores(score_ring, cases, workers=workers, progress=progress)


def is_good(case: RingCase, score: RingScore) -> bool:
    """Whether a spot was found to 10 degrees, or the width of a dirty sector to 30 %."""
    if not score.found:
        return False
    if case.cause == "encoder-damage":
        return abs(score.off_rev) <= GOOD_PLACE_REV
    return abs(score.width_ratio - 1.0) <= GOOD_WIDTH


def _against(found: BadSector, zero_rev: float, truth: Sequence[Sector]) -> RingScore:
    off = [((found.centre_rev + zero_rev - one.centre_rev + 0.5) % 1.0) - 0.5 for one in truth]
    beyond = [max(abs(away) - one.width_rev / 2.0, 0.0) for away, one in zip(off, truth, strict=True)]
    widest = max(one.width_rev for one in truth)
    # Within two sectors at once, or as far from both: the wider one is meant.
    nearest = min(range(len(truth)), key=lambda n: beyond[n] - 1e-3 * truth[n].width_rev / widest)
    return RingScore(True, off[nearest], found.centre_std_rev, found.width_rev / truth[nearest].width_rev)


def _corner(case: RingCase) -> Corner:
    return CORNERS[case.seed % len(CORNERS)]


def _recorded_at(setup: Setup, rate_hz: float) -> Setup:
    recorder = replace(
        setup.recorder,
        rate_hz=rate_hz,
        wheel_rate_hz=None,
        jitter_s=setup.recorder.jitter_s * setup.recorder.rate_hz / rate_hz,
        gaps_per_min=0.0,
        rear_offset_s=0.0,
        channels=(),
    )
    return replace(setup, recorder=recorder, drive=replace(setup.drive, rough_ratio=0.0))


def _steady_path(speed_mps: float, duration_s: float, rng: np.random.Generator) -> VehiclePath:
    count = round(duration_s / GRID_S)
    speed = speed_mps * (1.0 + DRIFT_RATIO * _smooth(slow_noise(count, 4.0, rng), 0.5))
    return VehiclePath(
        time_s=np.arange(count, dtype=np.float64) * GRID_S,
        speed_mps=speed,
        acceleration_mps2=_smooth(np.gradient(speed, GRID_S), 0.1),
        curvature_radpm=0.12 * _smooth(slow_noise(count, 1.5, rng), 0.4) / (speed**2 + 60.0),
    )


def _smooth(value: FloatArray, window_s: float) -> FloatArray:
    size = round(window_s / GRID_S)
    return np.asarray(uniform_filter1d(uniform_filter1d(value, size), size), dtype=np.float64)


def _title(case: RingCase) -> str:
    return case.cause if case.cause == EVEN_DIRT.cause else f"{case.cause}, severity {case.severity:g}"


def _goal(cause: str) -> str:
    what = "place within 10 degrees" if cause == "encoder-damage" else "width within 30 %"
    return f"found / {what}, % of the drives"


def _heading() -> str:
    columns = "".join(f"{speed:7.0f} km/h" for speed in SPEEDS_KMH)
    return f"{'':14}{columns}"


def _rows(pairs: Sequence[tuple[RingCase, RingScore]]) -> Iterator[str]:
    for rate_hz in dict.fromkeys(case.rate_hz for case, _ in pairs):
        for length_s in LENGTHS_S:
            cells = [_cell(pairs, rate_hz, speed, length_s) for speed in SPEEDS_KMH]
            yield f"{rate_hz:4.0f} Hz {length_s:4.0f} s {''.join(cells)}"


def _cell(
    pairs: Sequence[tuple[RingCase, RingScore]], rate_hz: float, speed_kmh: float, length_s: float
) -> str:
    place = (rate_hz, speed_kmh, length_s)
    own = [pair for pair in pairs if (pair[0].rate_hz, pair[0].speed_kmh, pair[0].duration_s) == place]
    found = np.mean([score.found for _, score in own])
    good = np.mean([is_good(case, score) for case, score in own])
    return f"{100.0 * found:6.0f} /{100.0 * good:4.0f}"
