"""Scatter of a wheel in short windows, loaded against unloaded, with the other wheels as reference."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.corners import CORNERS, SIDE_SIGN
from triage.signals.analysis import Analysis
from triage.signals.curve_lines import LIMIT_RATIO, circumference_of
from triage.signals.measurement import Measured
from triage.signals.measures.building import event_spans, measured, missing
from triage.signals.running import count_of
from triage.signals.side_by_side import map_side_by_side
from triage.speed_log import BoolArray, FloatArray

NAME: Final = "load-rest-ratio"

FEWEST_OTHERS: Final = 2
"""Other wheels needed as reference."""

WINDOW_S: Final = 1.5
FEWEST_TURNS: Final = 1.5
"""Shorter than this, a parabola takes much of one turn's wave with it."""

FEWEST_SAMPLES: Final = 10
FEWEST_WINDOWS: Final = 5

MOST_WINDOWS: Final = 80
"""So many of either load are enough, and an hour of driving holds hundreds."""

LOADED_MPS2: Final = 1.0
"""Lateral acceleration from which a curve shifts load noticeably (7 % of an axle's load, m a h / t)."""

UNLOADED_MPS2: Final = -0.5
"""Outward acceleration below which the wheel runs as inner wheel (judgement)."""

FLOOR_RATIO: Final = 0.001
"""Amplitudes count on top of 0.1 % of the speed: what is smaller, any sound wheel may show (judgement)."""

NEEDED: Final = "five steady curves to each side at 40 to 60 km/h, as brisk as the road and the law allow"


@dataclass(frozen=True, slots=True)
class RippleWindows:
    """Scatter of one wheel in windows.

    Attributes
    ----------
    outward_mps2 : float64[W]
        Mean lateral acceleration that loads the wheel.
    rest_power : float64[W]
        Variance of what neither the slow course nor the line explains.
    window : int64[N]
        Window of each sample, -1 where none.
    """

    outward_mps2: FloatArray
    rest_power: FloatArray
    window: NDArray[np.int64]


def measure_load_rest_ratios(analysis: Analysis) -> tuple[Measured, ...]:
    """Scatter beside the once-per-turn wave, as loaded outer wheel over that as inner wheel, in doublings.

    One value for each wheel. In windows of 1.5 s a parabola and a wave of one turn are fitted to the fast
    deviation, each window with its own phase. With S the root of the median over windows of the variance
    left, plus 0.1 % of the speed,
    the value is log2(S_outer / S_inner), less the middle of what the other wheels say of the same curves:
    those of the other side of the car with the opposite sign, for where they ran as inner wheels this one ran
    as outer wheel. A road or a speed that differs from left to right curves so cancels; what side load does
    to all wheels alike does not. Valid where windows hold 1.5 turns and ten samples; needs five windows of
    either load on this and on two other wheels. Uncertainty: scatter of the windows and of the other wheels.
    A bearing with play tilts under load from one side only. Source: physics of load transfer; the floor and
    the limits are judgement.
    """
    ripples = map_side_by_side(lambda row: _ripple_windows_of(analysis, row), range(len(CORNERS)))
    return tuple(_against_others(analysis, row, ripples) for row in range(len(CORNERS)))


def _ripple_windows_of(analysis: Analysis, row: int) -> RippleWindows | None:
    circumference_m = circumference_of(analysis, row)
    return None if circumference_m is None else ripple_windows(analysis, row, circumference_m)


def _against_others(analysis: Analysis, row: int, ripples: Sequence[RippleWindows | None]) -> Measured:
    ripple = ripples[row]
    if ripple is None:
        return missing(NAME, row, "the length of a wheel's turn was not found", NEEDED)
    found = [None if one is None else _doublings(one) for one in ripples]
    own, others = found[row], _as_seen_from(row, found)
    if own is None or len(others) < FEWEST_OTHERS:
        return missing(NAME, row, "not enough stretches as outer and as inner wheel", NEEDED)
    values = np.array([value for value, _ in others])
    other_std = np.hypot(float(np.ptp(values)) / 2.0, max(std for _, std in others)) / np.sqrt(len(others))
    used = np.isin(ripple.window, np.flatnonzero(ripple.outward_mps2 > LOADED_MPS2))
    return measured(
        NAME,
        CORNERS[row],
        own[0] - float(np.median(values)),
        float(np.hypot(own[1], other_std)),
        unit="",
        count=count_of(used),
        spans=event_spans(analysis, used),
    )


def ripple_windows(analysis: Analysis, row: int, circumference_m: float) -> RippleWindows:
    """Cut a drive into windows of 1.5 s and measure the scatter of a wheel in each."""
    speed = np.nan_to_num(analysis.reference.reference_mps)
    # In a left curve (positive) the right wheels are the outer ones.
    outward = -SIDE_SIGN[CORNERS[row]] * speed**2 * analysis.reference.curvature_radpm
    fast = analysis.residuals.fast_ratio[row]
    usable = analysis.losses.moving[row] & analysis.clock.fresh[row] & ~analysis.losses.joint
    usable &= np.isfinite(fast) & np.isfinite(outward)
    index = np.flatnonzero(usable)
    number = ((analysis.clock.time_s[index] - analysis.clock.time_s[0]) / WINDOW_S).astype(np.int64)
    turned = analysis.paths[row].distance_m[index] / circumference_m
    index, turned, sizes = _chosen(index, turned, _full_windows(number, turned), outward)
    window = np.full(fast.size, -1, dtype=np.int64)
    if not sizes.size:
        return RippleWindows(np.zeros(0), np.zeros(0), window)
    starts = np.cumsum(sizes) - sizes
    window[index] = np.repeat(np.arange(sizes.size), sizes)
    rest = fit_windows(turned, np.clip(fast[index], -LIMIT_RATIO, LIMIT_RATIO), starts)
    return RippleWindows(np.add.reduceat(outward[index], starts) / sizes, rest, window)


def _chosen(
    index: NDArray[np.intp], turned: FloatArray, bounds: tuple[NDArray[np.intp], ...], outward: FloatArray
) -> tuple[NDArray[np.intp], FloatArray, NDArray[np.intp]]:
    """Keep the windows that load or unload the wheel, evenly over the drive, and tell their sizes."""
    starts, sizes = bounds
    sums = np.concatenate(([0.0], np.cumsum(outward[index])))
    mean = (sums[starts + sizes] - sums[starts]) / sizes
    kept = np.sort(np.concatenate((_spread(mean > LOADED_MPS2), _spread(mean < UNLOADED_MPS2))))
    first, size = starts[kept], sizes[kept]
    within = np.repeat(first - (np.cumsum(size) - size), size) + np.arange(int(size.sum()))
    return index[within], turned[within], size


def _spread(flag: BoolArray) -> NDArray[np.intp]:
    """Take the flagged windows, or so many evenly over them as are enough."""
    found = np.flatnonzero(flag)
    if found.size <= MOST_WINDOWS:
        return found
    return found[np.linspace(0, found.size - 1, MOST_WINDOWS).astype(np.intp)]


def _full_windows(number: NDArray[np.int64], turned: FloatArray) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """Find the first sample and the size of each window that is long enough."""
    starts = np.flatnonzero(np.diff(number, prepend=-1))
    stops = np.append(starts[1:], number.size)[: starts.size]
    sizes = stops - starts
    good = (sizes >= FEWEST_SAMPLES) & (turned[stops - 1] - turned[starts] >= FEWEST_TURNS)
    return starts[good], sizes[good]


def fit_windows(turned: FloatArray, ratio: FloatArray, starts: NDArray[np.intp]) -> FloatArray:
    """Variance beside a least-squares parabola and one wave per turn, without bias, float64[W].

    Parameters
    ----------
    turned : float64[N]
        Angle in revolutions, rising within each window.
    ratio : float64[N]
    starts : int[W]
        First sample of each window, of more than five samples each.
    """
    sizes = np.diff(np.append(starts, turned.size))
    from_start = turned - np.repeat(turned[starts], sizes)
    along = 2.0 * from_start / np.repeat(np.maximum.reduceat(from_start, starts), sizes) - 1.0
    angle = 2.0 * np.pi * from_start
    columns = np.stack((np.ones_like(along), along, along**2, np.cos(angle), np.sin(angle)))
    products = np.add.reduceat(columns[:, None, :] * columns[None, :, :], starts, axis=2).transpose(2, 0, 1)
    right = np.add.reduceat(columns * ratio, starts, axis=1).T
    solved = np.linalg.solve(products + 1e-9 * np.eye(5), right[:, :, None])[:, :, 0]
    left = ratio - (np.repeat(solved, sizes, axis=0) * columns.T).sum(axis=1)
    rest: FloatArray = np.add.reduceat(left**2, starts) / np.maximum(sizes - 5, 1)
    return rest


def _as_seen_from(row: int, found: list[tuple[float, float] | None]) -> list[tuple[float, float]]:
    """Tell what the other wheels say of the curves of this wheel.

    A road or a speed that differs from left to right curves shows with opposite signs on both sides.
    """
    return [
        (SIDE_SIGN[CORNERS[row]] * SIDE_SIGN[CORNERS[wheel]] * one[0], one[1])
        for wheel, one in enumerate(found)
        if wheel != row and one is not None
    ]


def _doublings(ripple: RippleWindows) -> tuple[float, float] | None:
    """Logarithm of the loaded over the unloaded scatter and its uncertainty; None for too few windows."""
    power = ripple.rest_power
    outer = power[ripple.outward_mps2 > LOADED_MPS2]
    inner = power[ripple.outward_mps2 < UNLOADED_MPS2]
    if min(outer.size, inner.size) < FEWEST_WINDOWS:
        return None
    (high, high_std), (low, low_std) = (_amplitude(outer), _amplitude(inner))
    return float(np.log2(high / low)), float(np.hypot(high_std / high, low_std / low) / np.log(2.0))


def _amplitude(power: FloatArray) -> tuple[float, float]:
    """Median root of the power on top of the floor, and its standard uncertainty free of any distribution.

    The rank of a true median scatters by sqrt(n) / 2 (binomial).
    """
    apart = min(0.5 / np.sqrt(power.size), 0.5)
    low, middle, high = np.quantile(np.sqrt(power), (0.5 - apart, 0.5, 0.5 + apart)).tolist()
    return middle + FLOOR_RATIO, (high - low) / 2.0
