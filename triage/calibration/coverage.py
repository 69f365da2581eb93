"""How often the stated uncertainties of measurements cover what was simulated."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.calibration.ensemble import Case, simulate_case
from triage.calibration.report import wilson_interval
from triage.corners import CORNERS, Place
from triage.signals.analysis import Analysis, analyse
from triage.signals.measures.ratio import own_offset
from triage.signals.measures.table import measure_all
from triage.signals.revolution_line import RevolutionLine
from triage.signals.running import runs
from triage.simulator.control_unit import estimate_speeds
from triage.simulator.equipment import ControlUnit
from triage.simulator.road_test import RoadTest
from triage.simulator.truth import ANGLE_STEP_S
from triage.speed_log import BoolArray, FloatArray

DEVIATIONS: Final = 1.96
"""Half width, in standard uncertainties, of an interval that holds 95 % of a normal law."""

BOUNDS: Final = (0.90, 0.98)
"""Shares between which a stated 95 % must lie."""

CLEAN: Final = ("no-fault-found", "tyre-size", "encoder-mismatch", "encoder-runout", "bearing-roughness")
"""Causes with which no wheel loses its signal, so that ratios and lines have one true value."""


@dataclass(frozen=True, slots=True)
class Covered:
    """One measured value beside its truth.

    Attributes
    ----------
    name : str
        Id of the measurement, or ``circumference`` for that of :class:`RevolutionLine`.
    struck : bool
        Whether it is the faulty wheel (or any wheel of a car with a fault of the whole vehicle).
    value, std_uncertainty, truth : float
        In the unit of the measurement.
    """

    name: str
    struck: bool
    value: float
    std_uncertainty: float
    truth: float

    @property
    def deviation(self) -> float:
        """Value less truth, in standard uncertainties."""
        return (self.value - self.truth) / self.std_uncertainty


@dataclass(frozen=True, slots=True)
class _Value:
    """A measured value of one wheel."""

    name: str
    row: int
    value: float
    std: float


def measure_coverage(case: Case) -> tuple[Covered, ...]:
    """Simulate a case and hold every measurement with a known truth against it.

    Parameters
    ----------
    case : Case

    Returns
    -------
    tuple of Covered
        Empty where the cause leaves no measurement with a single true value.

    Notes
    -----
    ``ratio-offset``: what the wheel reads against its partner and the other axle, from tyres and pole counts.
    Driven wheels slip, which is part of the measurement's uncertainty, not of the truth.
    ``revolution-offset``, ``circumference``: from pole counts and the circumference the unit assumes.
    ``line-amplitude``: swing that the ring gives to the speed, as it stands over the wheel's angle in the
    log: averaging and filter of the unit weaken it, and their delay, which is another angle at another speed,
    blurs it.
    ``cut-off-speed``: highest of the unit's limit and the passive sensor's.
    ``dead-share``, ``drop-out-rate``: samples at which the unit, reading the edges that reached it, puts out
    less than half of what the wheel does. They are those of this very drive; the uncertainty is that of the
    rate over many drives, so that it covers them nearly always.
    """
    known = {name: tell for name, (causes, tell) in _TRUTHS.items() if case.cause in causes}
    if not known:
        return ()
    test = simulate_case(case)
    analysis = analyse(test.log)
    truths = {name: tell(test, analysis) for name, tell in known.items()}
    return tuple(_against_truth(_values(analysis), truths, case.corner))


def format_coverage(found: Sequence[Covered]) -> str:
    """Write a table of coverage by measurement, apart for faulty and sound wheels."""
    low, high = BOUNDS
    titles = f"{'measurement':<20} {'wheels':<7} {'number':>6} {'inside':>7} {'95 % interval':>16}"
    lines = [
        f"share of truths inside the stated 95 %; {low:.0%} to {high:.0%} is wanted",
        f"{titles} {'middle':>7} {'spread':>7}",
    ]
    for name in dict.fromkeys(one.name for one in found):
        for struck in (False, True):
            own = [one for one in found if one.name == name and one.struck == struck]
            if own:
                lines.append(_coverage_line(name, own))
    lines.append("middle and spread of (value - truth) / standard uncertainty; 0 and 1 are right")
    return "\n".join(lines) + "\n"


def _coverage_line(name: str, own: Sequence[Covered]) -> str:
    deviation = np.array([one.deviation for one in own])
    inside = int(np.count_nonzero(np.abs(deviation) <= DEVIATIONS))
    bounds = wilson_interval(inside, len(own))
    low, middle, high = np.quantile(deviation, (0.159, 0.5, 0.841))
    mark = "" if bounds[0] <= BOUNDS[1] and bounds[1] >= BOUNDS[0] else "  !"
    kind = "faulty" if own[0].struck else "sound"
    return (
        f"{name:<20} {kind:<7} {len(own):>6} {inside / len(own):>7.1%}"
        f" {f'{bounds[0]:.1%} to {bounds[1]:.1%}':>16} {middle:>7.2f} {(high - low) / 2.0:>7.2f}{mark}"
    )


def _values(analysis: Analysis) -> Iterator[_Value]:
    for one in measure_all(analysis)[0]:
        if one.corner in CORNERS:
            yield _Value(one.id, CORNERS.index(one.corner), one.value, one.std_uncertainty)
    for row, line in enumerate(analysis.own_lines):
        if isinstance(line, RevolutionLine):
            yield _Value("circumference", row, line.circumference_m, line.circumference_std_m)


def _against_truth(
    values: Iterable[_Value], truths: Mapping[str, FloatArray], blamed: Place
) -> Iterator[Covered]:
    for one in values:
        truth = float(truths[one.name][one.row]) if one.name in truths else float("nan")
        if np.isfinite(truth):
            yield Covered(one.name, CORNERS[one.row] == blamed, one.value, one.std, truth)


def _ratio_offset(test: RoadTest, analysis: Analysis) -> FloatArray:
    ratio = np.array(test.truth.read_ratio)
    scale = ratio / np.median(ratio) - 1.0
    # A wheel whose partner is the odd one reads 0 without any measuring; which is odd is no uncertainty.
    odd = np.array([own_offset(analysis.reference, row)[0] != 0.0 for row in range(4)])
    return np.where(odd, 100.0 * (scale - scale[[1, 0, 3, 2]]), np.nan)


def _revolution_offset(test: RoadTest, analysis: Analysis) -> FloatArray:
    del analysis
    poles = np.array([float(ring.poles) for ring in test.truth.rings])
    others = [np.median(np.delete(poles, row)) for row in range(4)]
    return np.asarray(100.0 * (poles / np.array(others) - 1.0))


def _circumference(test: RoadTest, analysis: Analysis) -> FloatArray:
    del analysis
    poles = np.array([float(ring.poles) for ring in test.truth.rings])
    return np.asarray(
        test.truth.setup.unit.circumference_m * poles / (2.0 * test.truth.setup.encoder.pole_pairs)
    )


def _line_amplitude(test: RoadTest, analysis: Analysis) -> FloatArray:
    unit = test.truth.setup.unit
    rows = []
    for row, ripple in enumerate(test.truth.runout_ratio):
        weight = analysis.paths[row].weight
        speed = np.nan_to_num(analysis.reference.expected_mps[row])
        gain = _unit_response(unit, speed / unit.circumference_m)
        coherent = abs(np.sum(weight * gain)) / np.sum(weight) if weight.any() else float("nan")
        rows.append(100.0 * ripple * float(coherent))
    return np.array(rows)


def _unit_response(unit: ControlUnit, rate_hz: FloatArray) -> NDArray[np.complex128]:
    """Gain and delay of averaging, filter and cycle for a ripple at a frequency, complex128[N]."""
    window_s = unit.averaging_cycles * unit.cycle_s
    delay = np.exp(-1j * np.pi * rate_hz * (window_s + unit.cycle_s))
    return np.asarray(np.sinc(rate_hz * window_s) * delay / (1.0 + 2j * np.pi * rate_hz * unit.filter_s))


def _cut_off_speed(test: RoadTest, analysis: Analysis) -> FloatArray:
    del analysis
    speed = np.maximum(test.truth.cut_off_mps, test.truth.setup.unit.zero_below_mps)
    others = [np.median(np.delete(speed, row)) for row in range(4)]
    return np.asarray(speed - np.array(others))


def _dead_share(test: RoadTest, analysis: Analysis) -> FloatArray:
    moving = analysis.losses.moving
    count = np.maximum(np.count_nonzero(moving, axis=1), 1)
    return np.asarray(100.0 * np.count_nonzero(_silence(test, analysis) & moving, axis=1) / count)


def _drop_out_rate(test: RoadTest, analysis: Analysis) -> FloatArray:
    silent, moving = _silence(test, analysis), analysis.losses.moving
    moving_s = np.maximum(np.count_nonzero(moving, axis=1) * analysis.clock.period_s, 1e-9)
    return np.array([60.0 * len(runs(silent[row] & moving[row])) / moving_s[row] for row in range(4)])


def _silence(test: RoadTest, analysis: Analysis) -> BoolArray:
    """Flag the samples at which the unit puts out less than half of what the wheel does, bool[4, N].

    From the edges that reached it; its reading is simulated anew, so that the recorder plays no part.
    """
    setup, time_s = test.truth.setup, analysis.clock.time_s
    output = estimate_speeds(
        [test.edges[corner] for corner in CORNERS],
        setup.unit,
        edges_per_rev=setup.encoder.edges_per_rev,
        duration_s=float(time_s[-1]) + 1.0,
    )
    cycle = np.searchsorted(output.time_s, time_s, side="right").clip(1) - 1
    at_s, step_s = output.time_s[cycle], ANGLE_STEP_S
    turned = [
        test.truth.angle_rev(corner, at_s + step_s) - test.truth.angle_rev(corner, at_s - step_s)
        for corner in CORNERS
    ]
    true_mps = np.stack(turned) / (2.0 * step_s) * setup.unit.circumference_m
    return np.asarray(output.speed_mps[:, cycle] < 0.5 * true_mps)


_Tell = Callable[[RoadTest, Analysis], FloatArray]
_TRUTHS: Final[Mapping[str, tuple[tuple[str, ...], _Tell]]] = {
    "ratio-offset": (CLEAN, _ratio_offset),
    "revolution-offset": (CLEAN, _revolution_offset),
    "circumference": (CLEAN, _circumference),
    "line-amplitude": (CLEAN, _line_amplitude),
    "cut-off-speed": (("no-fault-found", "air-gap"), _cut_off_speed),
    "dead-share": (("no-fault-found", "harness-fault"), _dead_share),
    "drop-out-rate": (("no-fault-found", "harness-fault"), _drop_out_rate),
}
"""For each measurement: the causes with which its truth is known, and how it follows from the truth."""
