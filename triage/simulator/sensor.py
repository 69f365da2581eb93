"""The wheel speed sensor: which poles it sees, and when its output switches."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from scipy.ndimage import uniform_filter1d

from triage.simulator.encoder import PolePassages, Ring
from triage.simulator.equipment import Sensor
from triage.simulator.vehicle_path import GRID_S
from triage.speed_log import FloatArray

_FOLLOWING_CELLS: Final = round(0.3 / GRID_S)
"""Cells over which a passive sensor's input circuit averages the size of the signal."""


@dataclass(frozen=True, slots=True)
class SensorConditions:
    """What one sensor is exposed to, on the grid of the path.

    Attributes
    ----------
    extra_gap_mm : float64[N]
        Air gap beyond the right one.
    shake : float64[N]
        How hard the wheel end shakes, about 1 on an ordinary road.
    speed_mps : float64[N]
        Speed of the tread; passive sensors give a voltage in proportion to it.
    pair_length_mm : float
        Length of a pole pair along the ring.
    """

    extra_gap_mm: FloatArray
    shake: FloatArray
    speed_mps: FloatArray
    pair_length_mm: float


def spacing_loss(extra_gap_mm: FloatArray, pair_length_mm: float) -> FloatArray:
    """Amplitude left over after widening the gap, as a ratio.

    References
    ----------
    R. L. Wallace, The reproduction of magnetically recorded signals, Bell System Technical Journal 30
    (1951): the loss is ``exp(-2 pi d / wavelength)``.
    """
    return np.asarray(np.exp(-2.0 * np.pi * extra_gap_mm / pair_length_mm), dtype=np.float64)


def sense_edges(
    passages: PolePassages,
    ring: Ring,
    *,
    sensor: Sensor,
    conditions: SensorConditions,
    both_edges: bool,
    rng: np.random.Generator,
) -> FloatArray:
    """Find the instants at which the sensor's output switches.

    Parameters
    ----------
    passages : PolePassages
        Borders passing under the sensor.
    ring : Ring
        Strength of the poles.
    sensor, conditions
        The sensor and what it is exposed to.
    both_edges : bool
        Whether edges into south poles count too.
    rng : numpy.random.Generator
        Source of noise and jitter.

    Returns
    -------
    float64[M]
        Rising times in seconds of the edges that the control unit counts.

    Notes
    -----
    The output has memory (hysteresis): it switches only where a pole that is seen differs in polarity from
    the last pole seen. One pole missed therefore loses two edges, its own and the next.
    """
    amplitude, threshold = _amplitude(passages, ring, sensor=sensor, conditions=conditions, rng=rng)
    jitter = rng.normal(size=amplitude.size)
    seen = np.flatnonzero(amplitude > threshold)
    north = passages.number[seen] % 2 == 0
    switches = np.ones(seen.size, dtype=np.bool_)
    switches[1:] = north[1:] != north[:-1]
    chosen = seen[switches if both_edges else switches & north]
    # A passive sensor gives nothing at standstill; such passages are never chosen.
    level = np.divide(threshold, amplitude, out=np.full(amplitude.size, np.inf), where=amplitude > 0.0)
    return _edge_times(passages, chosen, level=level, jitter=jitter * sensor.jitter_pole_ratio)


def _amplitude(
    passages: PolePassages,
    ring: Ring,
    *,
    sensor: Sensor,
    conditions: SensorConditions,
    rng: np.random.Generator,
) -> tuple[FloatArray, FloatArray]:
    """Amplitude of every passage and the threshold it must reach, both float64[M]."""
    cell = (passages.time_s / GRID_S).astype(np.int64)
    pole = passages.number % ring.poles
    draws = rng.normal(size=(2, cell.size))
    spread = np.hypot(sensor.amplitude_noise_ratio, ring.unsteadiness[pole])
    gap_mm = conditions.extra_gap_mm[cell] + _vibration(conditions, sensor, rng)[cell]
    left = spacing_loss(gap_mm, conditions.pair_length_mm)
    amplitude = np.maximum(ring.strength[pole] + spread * draws[0], 1e-6) * left
    if sensor.kind == "active":
        return amplitude, np.full(cell.size, sensor.threshold_ratio)
    # The input circuit follows the mean size of the signal once that is above the fixed threshold.
    level = uniform_filter1d(
        spacing_loss(conditions.extra_gap_mm, conditions.pair_length_mm), _FOLLOWING_CELLS
    )
    mean = float(np.mean(ring.strength)) * level[cell]
    voltage = conditions.speed_mps[cell] / sensor.cut_in_mps * sensor.threshold_ratio
    threshold = np.maximum(sensor.threshold_ratio, sensor.threshold_ratio * mean * voltage)
    return amplitude * voltage, threshold


def _vibration(conditions: SensorConditions, sensor: Sensor, rng: np.random.Generator) -> FloatArray:
    """Gap changes as the wheel end shakes, in mm on the grid; correlated over about 5 ms."""
    step = 5
    count = conditions.shake.size
    coarse = rng.normal(size=count // step + 2)
    swing = np.interp(np.arange(count), np.arange(coarse.size) * step, coarse)
    return swing * sensor.vibration_gap_mm * conditions.shake


def _edge_times(
    passages: PolePassages,
    chosen: np.ndarray[tuple[int], np.dtype[np.intp]],
    *,
    level: FloatArray,
    jitter: FloatArray,
) -> FloatArray:
    # A sine of small amplitude reaches the threshold late, and crosses it at a flat slope.
    share = np.clip(level[chosen], 0.0, 0.999)
    delay = np.arcsin(share) / np.pi + jitter[chosen] / np.sqrt(1.0 - share**2 + 1e-3)
    time_s = passages.time_s[chosen] + np.minimum(delay, 0.9) * passages.pole_s[chosen]
    return np.asarray(np.maximum.accumulate(time_s), dtype=np.float64)
