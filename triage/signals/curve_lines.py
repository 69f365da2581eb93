"""The lines of a wheel's turn, curve by curve, as the outer and as the inner wheel."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.signals.analysis import Analysis
from triage.signals.outward_load import LOADED_MPS2, outward_load_mps2
from triage.signals.revolution_line import RevolutionLine
from triage.signals.running import close_short_breaks, run_bounds
from triage.speed_log import BoolArray, FloatArray

ORDER_STEP: Final = 0.02
ORDER_COUNT: Final = 76
"""Orders 0 to 1.5."""

FEWEST_TURNS: Final = 6.0
"""A curve of fewer turns cannot part the cage from the wheel."""

FEWEST_SAMPLES: Final = 40

MOST_CURVES: Final = 12
"""The longest of each side are enough, and an hour of driving holds hundreds."""

LIMIT_RATIO: Final = 0.05


@dataclass(frozen=True, slots=True)
class CurveLines:
    """Spectra of the curves of one load.

    Attributes
    ----------
    order : float64[K]
    power : float64[C, K]
        Squared amplitude, relative to the speed, of each curve.
    turns : float64[C]
        Revolutions of the wheel in each curve.
    flag : bool[N]
        Samples used.
    """

    order: FloatArray
    power: FloatArray
    turns: FloatArray
    flag: BoolArray


def circumference_of(analysis: Analysis, row: int) -> float | None:
    """Distance per revolution: the wheel's own, else the middle of the others', else the one of the car."""
    own = analysis.lines[row]
    if isinstance(own, RevolutionLine):
        return own.circumference_m
    found = [line.circumference_m for line in analysis.lines if isinstance(line, RevolutionLine)]
    return float(np.median(found)) if found else analysis.vehicle.circumference_m


def find_curve_lines(analysis: Analysis, row: int, circumference_m: float) -> tuple[CurveLines, CurveLines]:
    """Spectra over the wheel's turn in the curves that load it as outer wheel, and in those that unload it.

    Each curve is taken by itself, tapered, its slow course taken out: neither the angle of the wheel nor that
    of the cage need be followed from one curve to the next.
    """
    outward = outward_load_mps2(analysis, row)
    return (
        _lines(analysis, row, circumference_m, outward > LOADED_MPS2),
        _lines(analysis, row, circumference_m, outward < -LOADED_MPS2),
    )


def _lines(analysis: Analysis, row: int, circumference_m: float, loaded: BoolArray) -> CurveLines:
    distance_m = analysis.paths[row].distance_m
    used = np.zeros(loaded.size, dtype=bool)
    parts = []
    for first, stop in _longest_curves(distance_m / circumference_m, loaded):
        usable = np.flatnonzero(_usable(analysis, row, slice(first, stop)) & loaded[first:stop]) + first
        if usable.size >= FEWEST_SAMPLES:
            used[usable] = True
            parts.append(usable)
    if not parts:
        return CurveLines(_orders(), np.zeros((0, ORDER_COUNT)), np.zeros(0), used)
    samples = np.concatenate(parts)
    starts = np.concatenate(([0], np.cumsum([part.size for part in parts])[:-1]))
    turned = distance_m[samples] / circumference_m
    ratio = np.clip(analysis.residuals.fast_ratio[row, samples], -LIMIT_RATIO, LIMIT_RATIO)
    turns = turned[np.append(starts[1:] - 1, -1)] - turned[starts]
    return CurveLines(_orders(), curve_powers(turned, ratio, starts), turns, used)


def _orders() -> FloatArray:
    return np.arange(ORDER_COUNT, dtype=np.float64) * ORDER_STEP


def _longest_curves(turned: FloatArray, loaded: BoolArray) -> list[tuple[int, int]]:
    first, stop = run_bounds(close_short_breaks(loaded, 5))
    if not first.size:
        return []
    turns = turned[stop - 1] - turned[first]
    longest = np.argsort(-turns, kind="stable")[:MOST_CURVES]
    longest = longest[turns[longest] >= FEWEST_TURNS]
    return list(zip(first[longest].tolist(), stop[longest].tolist(), strict=True))


def _usable(analysis: Analysis, row: int, part: slice) -> BoolArray:
    usable: BoolArray = (
        analysis.losses.moving[row, part]
        & analysis.clock.fresh[row, part]
        & ~analysis.losses.joint[part]
        & np.isfinite(analysis.residuals.fast_ratio[row, part])
    )
    return usable


def curve_powers(turned: FloatArray, ratio: FloatArray, starts: NDArray[np.intp]) -> FloatArray:
    """Squared amplitudes at the orders of :class:`CurveLines`, curve by curve, float64[C, K].

    Parameters
    ----------
    turned : float64[N]
        Angle in revolutions, rising within each curve.
    ratio : float64[N]
        Deviation; its parabola over each curve is taken out.
    starts : int[C]
        First sample of each curve.

    Notes
    -----
    The same as :func:`triage.signals.order_spectrum.amplitude_spectrum` of every curve with the taper sin^2;
    for many short curves the plain sum over all at once is quicker.
    """
    sizes = np.diff(np.append(starts, turned.size))
    from_start = turned - np.repeat(turned[starts], sizes)
    along = from_start / np.repeat(np.maximum.reduceat(from_start, starts), sizes)
    weight = np.sin(np.pi * along) ** 2 + 1e-6
    weighted = (weight * (ratio - _parabolas(along, ratio, starts, sizes))).astype(complex)
    base = np.exp(-2j * np.pi * ORDER_STEP * from_start)
    sums = np.empty((ORDER_COUNT, starts.size), dtype=complex)
    for number in range(ORDER_COUNT):
        sums[number] = np.add.reduceat(weighted, starts)
        weighted *= base
    power: FloatArray = np.abs(2.0 * sums.T / np.add.reduceat(weight, starts)[:, None]) ** 2
    return power


def _parabolas(
    along: FloatArray, ratio: FloatArray, starts: NDArray[np.intp], sizes: NDArray[np.intp]
) -> FloatArray:
    """Least-squares parabola of every curve at its samples."""
    square = along * along
    powers = np.stack((np.ones_like(along), along, square, square * along, square * square))
    moments = np.add.reduceat(powers, starts, axis=1)
    matrix = moments[np.add.outer(np.arange(3), np.arange(3))].transpose(2, 0, 1)
    right = np.add.reduceat(powers[:3] * ratio, starts, axis=1).T
    solved = np.linalg.solve(matrix, right[:, :, None])[:, :, 0]
    level, slope, bend = (np.repeat(one, sizes) for one in solved.T)
    fitted: FloatArray = level + slope * along + bend * square
    return fitted
