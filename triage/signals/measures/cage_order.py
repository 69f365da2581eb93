"""Lines that come with side load: the cage's, below the wheel's revolution, and the revolution's own."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from scipy.stats import gamma

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.bearing_orders import cage_ranges
from triage.signals.curve_lines import ORDER_STEP, CurveLines, circumference_of, find_curve_lines
from triage.signals.losses import MOVING_MPS, unit_step
from triage.signals.measurement import Measured
from triage.signals.measures.building import event_spans, measured, missing
from triage.signals.running import count_of
from triage.speed_log import FloatArray

FEWEST_CURVES: Final = 2
NEEDED: Final = "five steady curves to each side at 40 to 60 km/h, as brisk as the road and the law allow"
NOISE_ORDERS: Final = ((0.22, 0.34), (0.66, 0.84))
FALSE_ALARM: Final = 0.01


def measure_curve_lines(analysis: Analysis) -> tuple[Measured, ...]:
    """Cage line and loaded line of every wheel (see :func:`cage_line` and :func:`loaded_line`)."""
    return tuple(one for row in range(len(CORNERS)) for one in _curve_lines_of(analysis, row))


def _curve_lines_of(analysis: Analysis, row: int) -> tuple[Measured, Measured]:
    lines = _curves(analysis, row)
    if isinstance(lines, str):
        return missing("cage-line", row, lines, NEEDED), missing("loaded-line", row, lines, NEEDED)
    return cage_line(analysis, row, lines), loaded_line(analysis, row, lines)


def cage_line(analysis: Analysis, row: int, lines: tuple[CurveLines, CurveLines]) -> Measured:
    """Amplitude of the line at the cage's order as loaded outer wheel less that as inner wheel, in per cent.

    The strongest line among the possible orders counts, or that of the exact order where the vehicle file
    gives the bearing: 0.35 to 0.48 where the inner ring turns, 0.52 to 0.65 where the outer does. Powers of
    the curves are averaged, so that the cage may slip between them. Noise is the power on both sides of the
    cage orders; a line that noise alone would show with more than 1 % probability counts as none, and the
    amplitude is that beyond the noise. So does a line that swinging between two steps of the unit could make:
    what a unit that counts whole pulses rounds off repeats too, at any order. Valid where the wheel makes six
    turns or more in a curve. Uncertainty: scatter of an amplitude in noise (Rice). Source: kinematics of
    rolling bearings.
    """
    ranges = cage_ranges(analysis.vehicle)
    found = [strongest_line(side, ranges) for side in lines]
    sure = [line.false_alarm_probability < FALSE_ALARM for line in found]
    least = _rounded_off(analysis, lines) if any(sure) else 0.0
    outer, inner = (
        line.amplitude if one and line.amplitude > least else 0.0
        for line, one in zip(found, sure, strict=True)
    )
    used = lines[0].flag
    return measured(
        "cage-line",
        CORNERS[row],
        100.0 * (outer - inner),
        100.0 * float(np.hypot(found[0].amplitude_std, found[1].amplitude_std)),
        unit="%",
        count=count_of(used),
        spans=event_spans(analysis, used),
    )


def _rounded_off(analysis: Analysis, lines: tuple[CurveLines, CurveLines]) -> float:
    """Amplitude of a square wave of one step of the unit, 2/pi of it, over the speed in the curves."""
    speed_mps = float(np.median(analysis.reference.reference_mps[lines[0].flag | lines[1].flag]))
    return 2.0 / np.pi * unit_step(analysis.clock) / max(speed_mps, MOVING_MPS)


def loaded_line(analysis: Analysis, row: int, lines: tuple[CurveLines, CurveLines]) -> Measured:
    """Once-per-turn amplitude as loaded outer wheel less that as inner wheel, in per cent of the speed.

    A bearing with play tilts only under load from one side and raises the line in one curve direction; an
    eccentric ring shows it in both. Every curve is measured by itself with its own phase and the noise beside
    the line is taken off; whole curves are the units of the uncertainty. Valid for wheels that make six turns
    or more in a curve; smaller where the control unit averages over much of a turn. Source: physics of load
    transfer.
    """
    (outer, outer_std), (inner, inner_std) = (_turn_amplitude(side) for side in lines)
    used = lines[0].flag | lines[1].flag
    return measured(
        "loaded-line",
        CORNERS[row],
        100.0 * (outer - inner),
        100.0 * max(float(np.hypot(outer_std, inner_std)), 2e-4),
        unit="%",
        count=count_of(used),
        spans=event_spans(analysis, used),
    )


@dataclass(frozen=True, slots=True)
class FoundLine:
    """The strongest line among some orders.

    Attributes
    ----------
    amplitude, amplitude_std : float
        Relative to the speed, beyond the noise.
    order : float
    false_alarm_probability : float
        That noise alone shows one as strong anywhere among these orders.
    """

    amplitude: float
    amplitude_std: float
    order: float
    false_alarm_probability: float


def strongest_line(lines: CurveLines, ranges: tuple[tuple[float, float], ...]) -> FoundLine:
    """Find the strongest line in some ranges of order.

    Notes
    -----
    In Gaussian noise the mean of C squared amplitudes follows a gamma distribution of shape C. As many
    independent orders are tried as the ranges hold resolutions of the mean curve.
    """
    inside = np.flatnonzero(_within(lines.order, ranges))
    noise, mean, curves = _noise(lines), lines.power.mean(axis=0), lines.turns.size
    best = int(inside[np.argmax(mean[inside])])
    width = sum(high - low for low, high in ranges)
    tried = max(width * float(lines.turns.mean()), 1.0)
    single = min(float(gamma.sf(curves * mean[best] / noise, curves)), 1.0 - 1e-12)
    return FoundLine(
        amplitude=float(np.sqrt(max(mean[best] - noise, 0.0))),
        amplitude_std=float(np.sqrt(noise / (2.0 * curves) + 1e-10)),
        order=float(lines.order[best]),
        false_alarm_probability=float(-np.expm1(tried * np.log1p(-single))),
    )


def _curves(analysis: Analysis, row: int) -> tuple[CurveLines, CurveLines] | str:
    """Lines of both loads, or why there are none."""
    circumference_m = circumference_of(analysis, row)
    if circumference_m is None:
        return "the length of a wheel's turn was not found"
    lines = find_curve_lines(analysis, row, circumference_m)
    if min(side.turns.size for side in lines) < FEWEST_CURVES:
        return "not enough curves to both sides with noticeable side load"
    return lines


def _turn_amplitude(lines: CurveLines) -> tuple[float, float]:
    """Order-1 amplitude beyond the noise, and its standard uncertainty by the scatter of the curves."""
    beside = lines.power[:, _within(lines.order, ((0.66, 0.84), (1.16, 1.4)))].mean(axis=1)
    each = lines.power[:, _within(lines.order, ((0.97, 1.03),))].max(axis=1) - beside
    power, curves = float(each.mean()), each.size
    scatter = float(each.std(ddof=1)) / np.sqrt(curves)
    amplitude = float(np.sqrt(max(power, 0.0)))
    floor = float(np.sqrt(beside.mean() / (2.0 * curves)))
    return amplitude, max(scatter / max(2.0 * amplitude, np.sqrt(scatter), 1e-6), floor)


def _noise(lines: CurveLines) -> float:
    """Mean power of a noise line at the cage orders, between those on both sides of them."""
    mean = lines.power.mean(axis=0)
    below, above = (float(np.median(mean[_within(lines.order, (one,))])) for one in NOISE_ORDERS)
    return max(float(np.sqrt(below * above)), above, 1e-12)


def _within(order: FloatArray, ranges: tuple[tuple[float, float], ...]) -> np.ndarray:
    nearest = ORDER_STEP / 2.0
    inside = np.zeros(order.size, dtype=bool)
    for low, high in ranges:
        inside |= (order >= low - nearest) & (order <= high + nearest)
    return inside
