"""Spectra of one wheel's ripple over the distance, stretch by stretch, each beside its usual level.

A line in them is a pattern that comes back after a fixed distance. The angle of a wheel that is integrated
from its speed drifts, so that a long drive is cut into stretches over which it can be trusted.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view

from triage.side_by_side import map_side_by_side
from triage.signals.order_spectrum import amplitude_spectra
from triage.signals.stretches import cut_into_stretches, spread_evenly, stretch_length
from triage.signals.wheel_path import WheelPath
from triage.speed_log import FloatArray

SHORTEST_M: Final = 1.6
LONGEST_M: Final = 2.6
"""Rolling circumferences of car and light-van tyres lie well inside."""

HARMONICS: Final = 8
OVERSAMPLING: Final = 4
SHORTEST_DRIVE_M: Final = 100.0
FEWEST_SAMPLES: Final = 400

NEIGHBOURHOOD_PER_M: Final = 0.06
"""Half width, in wavenumber, of the neighbourhood whose median gives the usual level."""

MEDIANS_PER_HALF: Final = 3


@dataclass(frozen=True, slots=True)
class RippleSpectra:
    """Spectra of the coherent stretches of one wheel: level-normalised power and complex amplitude."""

    step_per_m: float
    power: FloatArray
    amplitude: np.ndarray
    level: FloatArray
    length_m: float
    used_m: float

    @property
    def count(self) -> int:
        """Number of stretches."""
        return int(self.power.shape[0])


def measure_ripple_spectra(paths: Iterable[WheelPath]) -> tuple[RippleSpectra | None, ...]:
    """Form the spectra of every path; None where there is too little usable driving."""
    return tuple(map_side_by_side(_ripple_spectra, paths))


def _ripple_spectra(path: WheelPath) -> RippleSpectra | None:
    used = np.flatnonzero(path.weight > 0)
    if used.size < FEWEST_SAMPLES:
        return None
    distance, ripple, weight = path.distance_m[used], path.ripple_ratio[used], path.weight[used]
    if distance[-1] - distance[0] < SHORTEST_DRIVE_M:
        return None
    each, _ = stretch_length(distance)
    step = 1.0 / (OVERSAMPLING * each)
    count = int(np.ceil(1.02 * HARMONICS / SHORTEST_M / step))
    kept = spread_evenly(cut_into_stretches(distance))
    if not kept:
        return None
    stretches = [(distance[part], ripple[part], weight[part]) for part in kept]
    amplitude = amplitude_spectra(stretches, step_per_m=step, count=count)
    power = np.square(amplitude.real)
    power += np.square(amplitude.imag)
    level = _usual_power(power, step)
    return RippleSpectra(step, power / level, amplitude, level, each, each * len(kept))


def _usual_power(power: FloatArray, step: float) -> FloatArray:
    """Mean noise power around each wavenumber: a running median, made the mean of an exponential law.

    A median of neighbours hardly differs from the next one: a few to each neighbourhood are worked out, and
    lines drawn between them.
    """
    thinned = power[:, : power.shape[1] // OVERSAMPLING * OVERSAMPLING : OVERSAMPLING]
    half = max(3, round(NEIGHBOURHOOD_PER_M / (step * OVERSAMPLING)))
    apart = max(1, half // MEDIANS_PER_HALF)
    padded = np.pad(thinned, ((0, 0), (half, half + 2 * apart)), mode="edge")
    windows = sliding_window_view(padded, 2 * half + 1, axis=1)[:, ::apart]
    medians = np.sort(windows, axis=2)[:, :, half] / np.log(2.0)
    per_line = apart * OVERSAMPLING
    rise = np.diff(medians, axis=1) / per_line
    usual = medians[:, :-1, None] + rise[:, :, None] * np.arange(per_line)
    level: FloatArray = usual.reshape(power.shape[0], -1)[:, : power.shape[1]]
    return np.maximum(level, 1e-18)
