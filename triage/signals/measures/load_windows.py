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
from triage.signals.outward_load import LOADED_MPS2, outward_load_mps2
from triage.signals.running import count_of
from triage.signals.turn_windows import (
    TurnWindows,
    cut_windows,
    fit_windows,
    middle_amplitude,
    spread_over,
)
from triage.speed_log import FloatArray

NAME: Final = "load-rest-ratio"

FEWEST_OTHERS: Final = 2
"""Other wheels needed as reference."""

FEWEST_WINDOWS: Final = 5

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
    ripples = [_ripple_windows_of(analysis, row) for row in range(len(CORNERS))]
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
    # One place more, which samples of no window (-1) point to.
    used = np.append(ripple.outward_mps2 > LOADED_MPS2, False)[ripple.window]
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
    outward = outward_load_mps2(analysis, row)
    fast = analysis.residuals.fast_ratio[row]
    windows = _chosen(cut_windows(analysis, row, np.isfinite(outward), circumference_m), outward)
    window = np.full(fast.size, -1, dtype=np.int64)
    if not windows.sizes.size:
        return RippleWindows(np.zeros(0), np.zeros(0), window)
    window[windows.index] = np.repeat(np.arange(windows.sizes.size), windows.sizes)
    ratio = np.clip(fast[windows.index], -LIMIT_RATIO, LIMIT_RATIO)
    turned = analysis.paths[row].distance_m[windows.index] / circumference_m
    _, rest = fit_windows(turned, ratio, windows.starts)
    mean = np.add.reduceat(outward[windows.index], windows.starts) / windows.sizes
    return RippleWindows(mean, rest, window)


def _chosen(windows: TurnWindows, outward: FloatArray) -> TurnWindows:
    """Keep the windows that load or unload the wheel, evenly over the drive."""
    if not windows.sizes.size:
        return windows
    mean = np.add.reduceat(outward[windows.index], windows.starts) / windows.sizes
    loads = (np.flatnonzero(mean > LOADED_MPS2), np.flatnonzero(mean < UNLOADED_MPS2))
    return windows.only(np.sort(np.concatenate([spread_over(load) for load in loads])))


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
    """Median root of the power on top of the floor, and its standard uncertainty."""
    middle, std = middle_amplitude(power)
    return middle + FLOOR_RATIO, std
