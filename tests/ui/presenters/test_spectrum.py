from __future__ import annotations

from types import SimpleNamespace

import numpy as np
import pytest
from scipy.stats import gamma

from triage.signals.measurement import NotMeasurable
from triage.signals.ripple_spectra import RippleSpectra, measure_ripple_spectra
from triage.signals.wheel_path import SMOOTHING_M, WheelPath
from ui.presenters.spectrum import SpectrumPicture, build_spectrum_picture, chance_power, draw_spectra

TURN_M = 2.0


def make_spectra(amplitude_ratio: float, *, seed: int = 5, length_m: float = 900.0) -> RippleSpectra:
    """A wave of that amplitude at order 3 in white noise of 0.2 %, sampled at uneven distances."""
    rng = np.random.default_rng(seed)
    distance_m = np.sort(rng.uniform(0.0, length_m, 5000))
    ripple = 0.002 * rng.standard_normal(5000)
    ripple += amplitude_ratio * np.cos(2.0 * np.pi * 3.0 * distance_m / TURN_M)
    spectra = measure_ripple_spectra((WheelPath(distance_m, ripple, np.ones(5000), 0.0),))[0]
    assert spectra is not None
    return spectra


def test_a_wave_stands_at_its_order_with_its_amplitude() -> None:
    picture = draw_spectra(make_spectra(0.01), TURN_M)
    tallest = int(np.argmax(picture.amplitude_percent))
    assert picture.place[tallest] == pytest.approx(3.0, abs=0.002)
    # What the window of the ripple takes away at this order is given back.
    gain = 1.0 - np.sinc(3.0 / TURN_M * SMOOTHING_M)
    # A line midway between two points of the grid is seen 2.6 % too low: sinc(1/8).
    assert picture.amplitude_percent[tallest] == pytest.approx(1.0 / gain, rel=0.03)
    third = picture.marks[2]
    assert third.label == "3"
    assert third.peak == pytest.approx((3.0, 1.0 / gain), rel=0.03)
    assert picture.marks[0].peak is None


def test_marks_and_cage_only_where_the_turn_is_known() -> None:
    spectra = make_spectra(0.01)
    known, unknown = draw_spectra(spectra, TURN_M), draw_spectra(spectra, None)
    assert [mark.label for mark in known.marks] == [str(order) for order in range(1, 9)]
    assert known.cage == (0.35, 0.48)
    assert unknown.marks == ()
    assert unknown.cage is None
    assert not unknown.per_turn
    assert unknown.place[int(np.argmax(unknown.amplitude_percent))] == pytest.approx(1.5, abs=0.002)


@pytest.mark.parametrize("places", [1.0, 40.0, 3000.0])
def test_one_stretch_follows_the_closed_form(places: float) -> None:
    """FAP = 1 - (1 - exp(-z))^(W sqrt(pi z / 3)), R. V. Baluev, 2008, eq. 6 (from memory)."""
    z = chance_power(1, places, 0.01)
    assert 1.0 - (1.0 - np.exp(-z)) ** (places * np.sqrt(np.pi * z / 3.0)) == pytest.approx(0.01, rel=1e-6)


def test_several_stretches_follow_the_gamma_distribution() -> None:
    """Truth: scipy's own gamma distribution of shape 4, and Baluev's crossings of the bar."""
    power = 4.0 * chance_power(4, 500.0, 0.05)
    crossings = np.sqrt(np.pi * power / 3.0) * (1.0 - 3.0 / power)
    assert gamma.cdf(power, 4) ** (500.0 * crossings) == pytest.approx(0.95, abs=1e-6)


def test_noise_alone_rarely_reaches_the_line_of_chance() -> None:
    above = 0
    for seed in range(100):
        picture = draw_spectra(make_spectra(0.0, seed=seed), TURN_M)
        above += bool((picture.amplitude_percent > picture.chance_percent).any())
    # One in a hundred is meant.
    assert above <= 4


def test_too_short_a_drive_passes_reason_and_driving_on() -> None:
    missing = NotMeasurable("line-amplitude", "FL", "less than 100 m of usable driving", "a minute")
    analysis = SimpleNamespace(
        lines=(missing,) * 4,
        own_lines=(missing,) * 4,
        own_spectra=(None,) * 4,
    )
    assert build_spectrum_picture(analysis, 2) is missing


def test_long_spectra_keep_their_peaks_when_thinned() -> None:
    spectra = make_spectra(0.005, length_m=1400.0)
    picture = draw_spectra(spectra, TURN_M)
    assert isinstance(picture, SpectrumPicture)
    assert picture.place.size <= 1500
    full = 100.0 * np.sqrt(spectra.power[0] * spectra.level[0])
    # Above order 1 the gain is within a tenth of 1.
    assert picture.amplitude_percent.max() == pytest.approx(full.max(), rel=0.1)
