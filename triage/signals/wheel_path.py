"""Distance travelled by each wheel by its own counting: the wheel's angle up to the circumference.

A control unit multiplies counted pulses by one fixed circumference. The distance obtained by integrating
its output therefore advances by exactly that fixed circumference per revolution, whatever the real tyre
is: it measures the wheel's ANGLE. Lost samples are replaced by what the other wheels demand, so that a
drop-out does not lose the angle.

A wheel that loses pulses all the time loses its own angle little by little. Its angle is then better told by
the three others.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from triage.corners import AXLE_PARTNER, CORNERS
from triage.side_by_side import map_side_by_side
from triage.signals.conditioning import CommonClock
from triage.signals.losses import Losses, widen_rows
from triage.signals.pulse_counters import PulseCounters, exact_distance
from triage.signals.residuals import Residuals
from triage.signals.running import quantiles_of, stride_of, zero_for_missing
from triage.signals.stretches import looked_at
from triage.signals.vehicle_reference import VehicleReference
from triage.speed_log import BoolArray, FloatArray

SMOOTHING_M = 2.1
"""Length of the window whose mean is taken out: about one turn of any car wheel, which keeps the line."""

CLIP_RATIO = 0.05
"""Deviations are limited to this size, so that a few losses do not drown the rest."""


@dataclass(frozen=True, slots=True)
class WheelPath:
    """One wheel's quick speed deviation over its own distance.

    Attributes
    ----------
    distance_m : float64[N]
        Own distance on the common clock, from 0, never falling.
    ripple_ratio : float64[N]
        Relative deviation of the wheel's speed from its mean over about one revolution, what all wheels do
        together taken out; limited to +-5 %. NaN where it cannot be formed.
    weight : float64[N]
        One over the variance that is usual at this speed and on this road; 0 where ``ripple_ratio`` is NaN.
    leak_ratio : float
        Share of the other wheels' common ripple that was subtracted, 0 to 1.
    """

    distance_m: FloatArray
    ripple_ratio: FloatArray
    weight: FloatArray
    leak_ratio: float


def follow_wheels(
    clock: CommonClock,
    reference: VehicleReference,
    residuals: Residuals,
    losses: Losses,
    counters: PulseCounters | None = None,
    *,
    throughout: Sequence[bool] = (True,) * 4,
) -> tuple[WheelPath, WheelPath, WheelPath, WheelPath]:
    """Integrate the angle of every wheel and form its ripple over distance.

    Where a wheel has a pulse counter, its distance is that of the count.

    Parameters
    ----------
    throughout : four bool
        Whether the ripple of a wheel is wanted all over the drive. Otherwise that of a long drive is formed
        in those stretches alone that its spectra look at (:mod:`triage.signals.stretches`); those are found
        again from the distance by the speeds, so that a wheel with a pulse counter needs all of it.
    """
    doubtful = widen_rows(losses.lost | losses.low | losses.high | losses.frozen, 1) | ~clock.valid
    # One table for each quantity of the four wheels: the system hands out large pieces of memory quicker.
    tables = [np.empty(clock.speed_mps.shape) for _ in range(3)]
    half_steps_s = np.diff(clock.time_s) / 2.0

    def follow(row: int) -> WheelPath:
        demanded_mps = reference.expected_mps[row] * (1.0 + residuals.slow_ratio[row])
        path = _wheel_path(
            clock,
            _without_losses(clock.speed_mps[row], demanded_mps, doubtful[row]),
            demanded_mps,
            usable=_usable(clock, losses, row),
            roughness=residuals.roughness_ratio[row],
            row=row,
            throughout=throughout[row],
            half_steps_s=half_steps_s,
            room=tuple(table[row] for table in tables),
        )
        if counters is None:
            return path
        exact_m = exact_distance(path.distance_m, clock, counters, row, doubtful[row])
        return replace(path, distance_m=exact_m)

    first, second, third, fourth = map_side_by_side(follow, range(4))
    return first, second, third, fourth


def _without_losses(speed_mps: FloatArray, demanded_mps: FloatArray, doubtful: BoolArray) -> FloatArray:
    """Put what the others demand where the speed is doubtful or missing."""
    clean = np.where(doubtful & np.isfinite(demanded_mps), demanded_mps, speed_mps)
    np.copyto(clean, demanded_mps, where=~np.isfinite(clean))
    return clean


def along_neighbours(paths: tuple[WheelPath, ...], row: int) -> WheelPath:
    """Give the same ripple over the distance that the three other wheels tell.

    In any curve the two wheels of one axle differ by about as much path as those of the other (to first order
    exactly: track times change of heading), so the front right runs as far as front left plus rear right
    minus rear left. Constant tyre differences only change the scale.
    """
    partner = CORNERS.index(AXLE_PARTNER[CORNERS[row]])
    same_side = (row + 2) % 4
    other_side = (partner + 2) % 4
    distance_m = paths[partner].distance_m + paths[same_side].distance_m - paths[other_side].distance_m
    return replace(paths[row], distance_m=np.maximum.accumulate(distance_m))


def _usable(clock: CommonClock, losses: Losses, row: int) -> BoolArray:
    usable: BoolArray = (
        losses.moving[row] & clock.fresh[row] & ~losses.lost[row] & ~losses.frozen[row] & ~losses.joint
    )
    return usable


def _wheel_path(
    clock: CommonClock,
    clean_mps: FloatArray,
    demanded_mps: FloatArray,
    *,
    usable: BoolArray,
    roughness: FloatArray,
    row: int,
    throughout: bool,
    half_steps_s: FloatArray,
    room: tuple[FloatArray, ...],
) -> WheelPath:
    if not clock.time_s.size:
        return WheelPath(clock.time_s, clock.time_s, clock.time_s, 1.0)
    distance_m, ripple_ratio, every_weight = room
    _integrate(clean_mps, half_steps_s, distance_m)
    demanded_m = np.empty(distance_m.size)
    _integrate(demanded_mps, half_steps_s, demanded_m)
    used = np.flatnonzero(usable & _whole_window(distance_m))
    used = used if throughout else used[looked_at(distance_m[used])]
    mean_own, mean_demanded, short = _window_means(clock.time_s, distance_m, demanded_m, used)
    with np.errstate(invalid="ignore", divide="ignore"):
        own = clock.speed_mps[row, used] / mean_own - 1.0
        common = demanded_mps[used] / mean_demanded - 1.0
    kept = np.flatnonzero(short & np.isfinite(own) & np.isfinite(common))
    used, own, common = used[kept], own[kept], common[kept]
    leak = _shared_part(own, common)
    ripple = np.clip(own - leak * common, -CLIP_RATIO, CLIP_RATIO)
    variance = _usual_variance(ripple, clock.speed_mps[row, used]) + (0.5 * roughness[used]) ** 2
    weight = 1.0 / np.maximum(variance, 1e-10)
    # Put back to their places among all samples.
    ripple_ratio.fill(np.nan)
    ripple_ratio[used] = ripple
    every_weight.fill(0.0)
    every_weight[used] = weight
    return WheelPath(distance_m, ripple_ratio, every_weight, leak)


def _integrate(value: FloatArray, half_steps_s: FloatArray, integral: FloatArray) -> None:
    """Write the integral from the first sample on, float64[N], by trapezia; what is missing counts as 0."""
    value = zero_for_missing(value)
    integral[0] = 0.0
    steps = integral[1:]
    np.add(value[1:], value[:-1], out=steps)
    steps *= half_steps_s
    np.cumsum(steps, out=steps)


def _whole_window(distance_m: FloatArray) -> BoolArray:
    whole: BoolArray = (distance_m > SMOOTHING_M / 2) & (distance_m < distance_m[-1] - SMOOTHING_M / 2)
    return whole


def _window_means(
    time_s: FloatArray, distance_m: FloatArray, demanded_m: FloatArray, used: NDArray[np.intp]
) -> tuple[FloatArray, FloatArray, BoolArray]:
    """Mean speeds, by the wheel and by the others, over the window of distance around some samples.

    The last tells whether the window was passed without stopping.
    """
    rising = distance_m + 1e-9 * np.arange(distance_m.size)
    # Time and the others' distance as one complex number, so that the places are looked up once for both.
    both = np.empty(distance_m.size, dtype=complex)
    both.real, both.imag = time_s, demanded_m
    middle_m = distance_m[used]
    passed = np.interp(middle_m + SMOOTHING_M / 2.0, rising, both)
    passed -= np.interp(middle_m - SMOOTHING_M / 2.0, rising, both)
    length_s = np.maximum(passed.real, 1e-9)
    own = SMOOTHING_M / length_s  # the wheel's own distance between the two, wherever the window is whole
    return own, passed.imag / length_s, length_s < 2.0


def _shared_part(own: FloatArray, common: FloatArray) -> float:
    """Share of the common quick speed changes that the wheel takes part in: least squares, values limited."""
    if own.size < 50:
        return 1.0
    own, common = np.clip(own, -0.02, 0.02), np.clip(common, -0.02, 0.02)
    # einsum: the library behind @ would start threads, which cost more than they gain on a busy machine
    power = float(np.einsum("i,i", common, common))
    shared = float(np.einsum("i,i", own, common))
    return float(np.clip(shared / power, 0.0, 1.0)) if power > 0 else 0.0


def _usual_variance(ripple: FloatArray, speed_mps: FloatArray) -> FloatArray:
    """Variance of the ripple in six ranges of speed of equally many samples, at every sample."""
    if ripple.size < 200:
        return np.full(ripple.size, max(float(np.var(ripple)), 1e-10) if ripple.size else 1.0)
    stride = stride_of(ripple.size)
    inside = np.zeros(ripple.size, dtype=np.int8)
    for edge in quantiles_of(speed_mps[::stride], np.linspace(0, 1, 7))[1:-1]:
        inside += speed_mps > edge
    few, power = inside[::stride], ripple[::stride] ** 2
    count = np.bincount(few, minlength=6)
    sums = np.bincount(few, weights=power, minlength=6)
    variance = np.where(count > 0, sums / np.maximum(count, 1), power.mean())
    chosen: FloatArray = variance[inside]
    return chosen
