"""Spectrum of a quantity over distance travelled, from samples at uneven distances.

Samples of a bus log come at even times and therefore at uneven distances. Over DISTANCE everything that
sits on the wheel repeats with its circumference at any speed, while what sits on the road, the engine or
the clock does not. Since speed varies, the samples fall on ever other wheel angles and the spectrum reaches
well beyond what the sampling rate alone would allow.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from triage.signals.unit_circle import unit_points
from triage.speed_log import FloatArray

ACCURACY = 1e-8
"""Relative accuracy asked of the non-uniform transform."""

Samples = tuple[FloatArray, FloatArray, FloatArray]
"""Distances, values and weights of one stretch."""


def amplitude_spectrum(
    distance_m: FloatArray, value: FloatArray, weight: FloatArray, *, step_per_m: float, count: int
) -> np.ndarray:
    """Weighted Fourier sums on the even grid ``k = step_per_m * (0, 1, ..., count - 1)``.

    Parameters
    ----------
    distance_m, value, weight : float64[N]
        Finite; weights not negative.
    step_per_m : float
        Step of the grid in cycles per metre.
    count : int
        Number of grid points.

    Returns
    -------
    complex128[count]
        ``2 * sum(w y exp(-2 pi i k x)) / sum(w)``: the modulus is the amplitude of a sine at that wavenumber
        (the mean is not halved: entry 0 is twice the weighted mean).

    References
    ----------
    A. H. Barnett, J. Magland, L. af Klinteberg, A parallel nonuniform fast Fourier transform library based
    on an "exponential of semicircle" kernel, SIAM J. Sci. Comput. 41, 2019 (cited from memory).
    """
    spectrum: np.ndarray = amplitude_spectra(
        [(distance_m, value, weight)], step_per_m=step_per_m, count=count
    )[0]
    return spectrum


def amplitude_spectra(stretches: Sequence[Samples], *, step_per_m: float, count: int) -> np.ndarray:
    """Give the spectra of several stretches of samples on one grid, which is quicker than one by one.

    Parameters
    ----------
    stretches : sequence of (distance_m, value, weight)
        Each as for :func:`amplitude_spectrum`; their lengths may differ.
    step_per_m : float
    count : int
        Number of grid points.

    Returns
    -------
    complex128[len(stretches), count]
    """
    spectra = np.zeros((len(stretches), count), dtype=complex)
    full = [number for number, (_, _, weight) in enumerate(stretches) if weight.sum() > 0.0]
    if not full:
        return spectra
    import finufft  # noqa: PLC0415 - heavy, and not needed to open a log

    # The samples come in order of distance, so sorting them again would only cost time.
    plan = finufft.Plan(1, (count,), eps=ACCURACY, isign=-1, nthreads=1, spread_sort=0, upsampfac=1.25)
    for number in full:
        distance_m, value, weight = stretches[number]
        turns = step_per_m * (distance_m - distance_m[0])
        plan.setpts(2.0 * np.pi * (turns - np.rint(turns)))
        # The plan gives the modes -count / 2 .. count / 2 - 1: shifted so that the first is wavenumber 0.
        plan.execute(_turned(weight * value, -(count // 2) * turns), spectra[number])
        # Phases refer to distance 0, not to the first sample.
        spectra[number] *= (2.0 / float(weight.sum())) * _powers(-step_per_m * distance_m[0], count)
    return spectra


def _turned(value: FloatArray, turns: FloatArray) -> np.ndarray:
    """``value * exp(2 pi i turns)``."""
    turned = unit_points(turns)
    turned.real *= value
    turned.imag *= value
    return turned


def _powers(turns: float, count: int) -> np.ndarray:
    """``exp(2 pi i turns n)`` for n from 0, by a product of two short tables instead of a long one."""
    block = int(np.ceil(np.sqrt(count)))
    fine = np.exp(2j * np.pi * turns * np.arange(block))
    coarse = np.exp(2j * np.pi * turns * block * np.arange(-(-count // block)))
    products: np.ndarray = (coarse[:, None] * fine[None, :]).ravel()[:count]
    return products


def amplitude_spectrum_direct(
    distance_m: FloatArray, value: FloatArray, weight: FloatArray, *, step_per_m: float, count: int
) -> np.ndarray:
    """Give the same as :func:`amplitude_spectrum` by the plain sum; the slow truth for tests."""
    grid = step_per_m * np.arange(count)
    kernel = np.exp(-2j * np.pi * grid[:, None] * distance_m[None, :])
    sums: np.ndarray = 2.0 * (kernel @ (weight * value)) / weight.sum()
    return sums
