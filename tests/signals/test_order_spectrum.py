"""The spectrum over distance, against the plain sum and against independent Lomb-Scargle implementations."""

from __future__ import annotations

import numpy as np
import pytest
from astropy.timeseries import LombScargle
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.signal import lombscargle

from triage.signals.order_spectrum import amplitude_spectra, amplitude_spectrum, amplitude_spectrum_direct


def _uneven(seed: int, count: int, length_m: float) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    rng = np.random.default_rng(seed)
    distance = np.sort(rng.uniform(0.0, length_m, count))
    return distance, rng.normal(size=count), rng.uniform(0.0, 2.0, count)


@settings(max_examples=40, deadline=None)
@given(
    seed=st.integers(0, 2**31),
    samples=st.integers(1, 300),
    length_m=st.floats(0.5, 3000.0),
    origin_m=st.floats(-1e5, 1e5),
    count=st.integers(1, 200),
)
def test_fast_transform_gives_the_plain_sum(
    seed: int, samples: int, length_m: float, origin_m: float, count: int
) -> None:
    distance, value, weight = _uneven(seed, samples, length_m)
    weight[0] = 1.0
    step = 0.25 / length_m
    fast = amplitude_spectrum(distance + origin_m, value, weight, step_per_m=step, count=count)
    slow = amplitude_spectrum_direct(distance + origin_m, value, weight, step_per_m=step, count=count)
    np.testing.assert_allclose(fast, slow, atol=1e-6 * np.abs(value).max())


def test_shifting_the_origin_turns_the_phase_alone() -> None:
    distance, value, weight = _uneven(1, 500, 400.0)
    grid = 0.001 * np.arange(900)
    here = amplitude_spectrum(distance, value, weight, step_per_m=0.001, count=900)
    there = amplitude_spectrum(distance + 123.4, value, weight, step_per_m=0.001, count=900)
    np.testing.assert_allclose(there, here * np.exp(-2j * np.pi * grid * 123.4), atol=1e-7)


def test_a_single_grid_point_gives_twice_the_weighted_mean() -> None:
    distance, value, weight = _uneven(2, 50, 10.0)
    only = amplitude_spectrum(distance, value, weight, step_per_m=0.1, count=1)
    assert only.shape == (1,)
    assert only[0] == pytest.approx(2.0 * np.average(value, weights=weight), abs=1e-8)


def test_samples_of_no_weight_change_nothing() -> None:
    distance, value, weight = _uneven(3, 200, 100.0)
    used = np.arange(200) % 3 > 0
    wild = np.where(used, value, 1e6)
    with_them = amplitude_spectrum(distance, wild, np.where(used, weight, 0.0), step_per_m=0.01, count=64)
    # The origin is that of the samples given, so it is kept by giving the first one in both cases.
    without = amplitude_spectrum(distance[used], value[used], weight[used], step_per_m=0.01, count=64)
    np.testing.assert_allclose(with_them, without, atol=1e-7)


@pytest.mark.parametrize("size", [0, 5])
def test_nothing_to_weigh_gives_zeros(size: int) -> None:
    distance = np.linspace(0.0, 1.0, size)
    spectrum = amplitude_spectrum(distance, np.ones(size), np.zeros(size), step_per_m=0.1, count=7)
    np.testing.assert_array_equal(spectrum, np.zeros(7))


def test_amplitude_and_phase_of_a_known_sine() -> None:
    rng = np.random.default_rng(4)
    distance = np.sort(rng.uniform(0.0, 1000.0, 20_000))
    value = 0.003 * np.cos(2.0 * np.pi * distance / 2.0 - 0.7)
    spectrum = amplitude_spectrum(distance, value, np.ones(distance.size), step_per_m=0.001, count=1000)
    assert np.argmax(np.abs(spectrum)) == 500
    assert np.abs(spectrum[500]) == pytest.approx(0.003, rel=0.02)
    assert np.angle(spectrum[500]) == pytest.approx(-0.7, abs=0.02)


def test_line_amplitude_agrees_with_astropy_and_scipy_on_uneven_samples() -> None:
    """References: astropy LombScargle (power "psd") and scipy.signal.lombscargle (normalised).

    Least squares and the plain Fourier sum differ by the leakage of uneven samples, about 1 / sqrt(N): 2 %.
    """
    rng = np.random.default_rng(5)
    distance = np.sort(rng.uniform(0.0, 900.0, 5000))
    wavenumber = 1.0 / 2.161
    value = 0.001 * np.sin(2.0 * np.pi * wavenumber * distance + 1.0) + 0.002 * rng.normal(size=5000)
    step = wavenumber / 1000.0
    ours = np.abs(amplitude_spectrum(distance, value, np.ones(5000), step_per_m=step, count=1001))[1000]

    psd = float(LombScargle(distance, value, fit_mean=False).power(wavenumber, normalization="psd"))
    assert ours == pytest.approx(np.sqrt(4.0 * psd / 5000), rel=0.02)
    complex_line = lombscargle(distance, value, np.array([2.0 * np.pi * wavenumber]), normalize="amplitude")
    assert ours == pytest.approx(float(np.abs(np.ravel(complex_line)[0])), rel=0.02)
    assert ours == pytest.approx(0.001, abs=4.0 * 0.002 / np.sqrt(2500.0))


def test_weighted_line_amplitude_agrees_with_astropy() -> None:
    rng = np.random.default_rng(6)
    distance = np.sort(rng.uniform(0.0, 600.0, 6000))
    std = np.where(distance < 300.0, 0.001, 0.01)
    value = 0.002 * np.sin(2.0 * np.pi * distance / 2.0) + std * rng.normal(size=6000)
    ours = np.abs(amplitude_spectrum(distance, value, std**-2.0, step_per_m=0.0005, count=1001))[1000]
    model = LombScargle(distance, value, std, fit_mean=False).model_parameters(0.5)
    assert ours == pytest.approx(float(np.hypot(*model)), rel=0.02)
    unweighted = np.abs(amplitude_spectrum(distance, value, np.ones(6000), step_per_m=0.0005, count=1001))[
        1000
    ]
    assert abs(ours - 0.002) < abs(unweighted - 0.002)


def _lomb_scargle(distance: np.ndarray, value: np.ndarray, *, step_per_m: float, count: int) -> np.ndarray:
    """Lomb's least-squares power at every grid point but 0, out of our sums alone.

    N. R. Lomb, Astrophys. Space Sci. 39, 1976, 447 (from memory): the sums over cosines and sines squared
    follow from those at twice the wavenumber.
    """
    ones = np.ones(distance.size)
    sums = amplitude_spectrum(distance, value, ones, step_per_m=step_per_m, count=count)[1:]
    doubled = amplitude_spectrum(distance, ones, ones, step_per_m=step_per_m, count=2 * count - 1)[2::2]
    half = 0.5 * distance.size
    turned = half * sums * np.exp(-0.5j * np.angle(doubled))
    length = half * np.abs(doubled)
    return turned.real**2 / (distance.size + length) + turned.imag**2 / (distance.size - length)


@pytest.mark.parametrize("seed", range(5))
def test_relative_error_is_below_a_millionth(seed: int) -> None:
    """References: the plain sum, and scipy.signal.lombscargle on the same grid."""
    distance, value, weight = _uneven(seed, 4000, 800.0)
    value += 3.0 * np.cos(2.0 * np.pi * distance / 2.1)
    grid = {"step_per_m": 1.0 / 3200.0, "count": 3000}
    fast = amplitude_spectrum(distance, value, weight, **grid)
    slow = amplitude_spectrum_direct(distance, value, weight, **grid)
    assert np.linalg.norm(fast - slow) <= 1e-6 * np.linalg.norm(slow)
    assert np.abs(fast - slow).max() <= 1e-6 * np.abs(slow).max()

    ours = _lomb_scargle(distance, value, **grid)
    theirs = lombscargle(distance, value, 2.0 * np.pi * grid["step_per_m"] * np.arange(1, 3000))
    assert np.linalg.norm(ours - theirs) <= 1e-6 * np.linalg.norm(theirs)
    strong = theirs > 1e-3 * theirs.max()
    assert np.count_nonzero(strong) > 100
    np.testing.assert_allclose(ours[strong], theirs[strong], rtol=1e-6)


def test_several_stretches_give_what_each_gives_alone() -> None:
    stretches = [_uneven(seed, count, 300.0) for seed, count in ((1, 900), (2, 40), (3, 2000))]
    stretches.insert(1, (np.zeros(0), np.zeros(0), np.zeros(0)))
    together = amplitude_spectra(stretches, step_per_m=0.001, count=700)
    assert together.shape == (4, 700)
    for row, (distance, value, weight) in zip(together, stretches, strict=True):
        alone = amplitude_spectrum(distance, value, weight, step_per_m=0.001, count=700)
        np.testing.assert_allclose(row, alone, atol=1e-7)
