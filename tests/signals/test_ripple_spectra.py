"""The usual level of a spectrum: that of the noise around, whatever its colour, and deaf to a line."""

from __future__ import annotations

import numpy as np
from scipy.signal import lfilter

from triage.signals.ripple_spectra import RippleSpectra, measure_ripple_spectra
from triage.signals.wheel_path import WheelPath

STRETCHES = 8
SAMPLES = 40_000


def _spectra(ripple_ratio: np.ndarray, distance_m: np.ndarray) -> RippleSpectra:
    path = WheelPath(distance_m, ripple_ratio, np.ones(distance_m.size), 0.0)
    spectra = measure_ripple_spectra([path])[0]
    assert spectra is not None
    return spectra


def _coloured(rng: np.random.Generator) -> np.ndarray:
    noise: np.ndarray = lfilter([1.0], [1.0, -0.6], 0.001 * rng.normal(size=SAMPLES))
    return noise


def test_noise_of_any_colour_has_a_mean_power_of_one_at_all_wavenumbers() -> None:
    rng = np.random.default_rng(5)
    distance = np.cumsum(rng.uniform(0.2, 0.4, SAMPLES))
    spectra = _spectra(_coloured(rng), distance)
    assert spectra.count == STRETCHES
    parts = np.array_split(spectra.power[:, 400:-400], 10, axis=1)
    np.testing.assert_allclose([part.mean() for part in parts], 1.0, atol=0.06)


def test_a_line_raises_no_level() -> None:
    rng = np.random.default_rng(6)
    distance = np.cumsum(rng.uniform(0.2, 0.4, SAMPLES))
    noise = _coloured(rng)
    plain = _spectra(noise, distance)
    lined = _spectra(noise + 0.0003 * np.sin(2.0 * np.pi * distance / 2.0), distance)
    place = round(0.5 / plain.step_per_m)
    assert (lined.power[:, place] > 20.0).all()
    np.testing.assert_allclose(lined.level[:, place], plain.level[:, place], rtol=0.12)
