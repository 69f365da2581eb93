"""Spectrum of a quantity over distance travelled, from samples at uneven distances.

Samples of a bus log come at even times and therefore at uneven distances. Over DISTANCE everything that
sits on the wheel repeats with its circumference at any speed, while what sits on the road, the engine or
the clock does not. Since speed varies, the samples fall on ever other wheel angles and the spectrum reaches
well beyond what the sampling rate alone would allow.
"""

from __future__ import annotations

import numpy as np

from triage.speed_log import FloatArray

ACCURACY = 1e-8
"""Relative accuracy asked of the non-uniform transform."""


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
    total = float(weight.sum())
    if not distance_m.size or total <= 0.0:
        return np.zeros(count, dtype=complex)
    import finufft  # noqa: PLC0415 - heavy, and not needed to open a log

    turns = step_per_m * (distance_m - distance_m[0])
    # The library returns the modes -count / 2 .. count / 2 - 1: shifted so that the first is wavenumber 0.
    shifted = (weight * value) * np.exp(-2j * np.pi * (count // 2) * turns)
    # The samples come in order of distance, so sorting them again would only cost time.
    modes = finufft.nufft1d1(
        2.0 * np.pi * (turns - np.rint(turns)),
        shifted,
        count,
        isign=-1,
        eps=ACCURACY,
        nthreads=1,
        spread_sort=0,
    )
    # Phases refer to distance 0, not to the first sample.
    at_origin: np.ndarray = (2.0 / total) * modes * _powers(-step_per_m * distance_m[0], count)
    return at_origin


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
