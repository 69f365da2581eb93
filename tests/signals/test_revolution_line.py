"""Finding the revolution blind: chance, published false-alarm numbers, and simulated healthy cars."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest
from astropy.timeseries import LombScargle

from triage.corners import CORNERS
from triage.signals.analysis import analyse
from triage.signals.false_alarm import false_alarm_probability, log_false_alarm
from triage.signals.measurement import NotMeasurable
from triage.signals.revolution_line import (
    FALSE_ALARM_LIMIT,
    RevolutionLine,
    find_revolution_lines,
    line_near,
)
from triage.signals.ripple_spectra import (
    FEWEST_SAMPLES,
    LONGEST_M,
    SHORTEST_DRIVE_M,
    SHORTEST_M,
    measure_ripple_spectra,
)
from triage.signals.wheel_path import SMOOTHING_M, WheelPath
from triage.simulator.road_test import RoadTest
from triage.simulator.setup import Setup
from triage.vehicle import Vehicle

PUBLISHED_Z = 0.33814001958188855
"""Highest power of the example in astropy's documentation (docs/timeseries/lombscargle.rst), 60 samples."""


def _search(
    paths: tuple[WheelPath, ...], *, circumference_m: float | None = None
) -> tuple[RevolutionLine | NotMeasurable, ...]:
    return find_revolution_lines(measure_ripple_spectra(paths), circumference_m=circumference_m)


def _path(distance_m: np.ndarray, ripple: np.ndarray, weight: np.ndarray | None = None) -> WheelPath:
    return WheelPath(distance_m, ripple, np.ones(distance_m.size) if weight is None else weight, 0.0)


def _drive(rng: np.random.Generator, samples: int, step_m: float) -> np.ndarray:
    return np.cumsum(rng.uniform(0.3, 1.7, samples) * step_m)


def _ripple(distance_m: np.ndarray, circumference_m: float, amplitudes: tuple[float, ...]) -> np.ndarray:
    """Orders 1, 2, ... with the amplitudes that pass the mean over a window being taken out."""
    orders = np.arange(1, len(amplitudes) + 1)
    passed = 1.0 - np.sinc(orders / circumference_m * SMOOTHING_M)
    turns = distance_m[:, None] * orders[None, :] / circumference_m
    return np.sin(2.0 * np.pi * turns + orders) @ (np.array(amplitudes) * passed)


@pytest.mark.parametrize(
    ("z", "trials", "expected"),
    [
        (10.0, 1000, 0.0443858),
        (12.0, 5000, 0.0302541),
        (4.60517, 1, 0.01),
        (9.205370, 100, 0.01),
        (11.507910, 1000, 0.01),
    ],
)
def test_false_alarm_probability_of_one_line(z: float, trials: int, expected: float) -> None:
    """P = 1 - (1 - exp(-z))**M, J. D. Scargle, Astrophys. J. 263 (1982) 835 (formula from memory)."""
    assert false_alarm_probability(z, 1, 1, trials) == pytest.approx(expected, abs=1e-6)


def test_false_alarm_probability_of_a_peak_counts_the_crossings_of_the_bar() -> None:
    """FAP = W exp(-z) sqrt(z) with W = fmax T sqrt(4 pi / 12), R. V. Baluev, 2008, eq. 6 (from memory)."""
    z, resolutions = 14.0, 100.0
    expected = resolutions * np.sqrt(4.0 * np.pi / 12.0) * np.exp(-z) * np.sqrt(z)
    assert np.exp(log_false_alarm(z, 1, 1, resolutions)) == pytest.approx(expected, rel=1e-3)


def test_published_naive_false_alarm_probability_is_ours_where_the_formulas_coincide() -> None:
    """astropy's documentation prints 0.0011693992470136049 for 60 samples and fmax * T = 150.1.

    Its standard normalisation has (1 - Z)**((N - 3) / 2) where ours has exp(-z).
    """
    z = -0.5 * (60 - 3) * np.log1p(-PUBLISHED_Z)
    assert false_alarm_probability(z, 1, 1, 150.1) == pytest.approx(0.0011693992470136049, abs=1e-12)


def test_published_bounds_are_reproduced_by_the_reference_library() -> None:
    """Baluev, Davies and the peak heights printed in astropy's documentation for the same example."""
    rand = np.random.RandomState(42)
    for draw in (rand.rand, rand.randn, rand.rand, rand.randn, rand.randn):
        draw(100)
    time = 100.0 * rand.rand(60)
    reference = LombScargle(time, np.sin(2.0 * np.pi * time) + rand.randn(60), 1.0)
    baluev, davies, naive = (
        float(reference.false_alarm_probability(PUBLISHED_Z, method=name))
        for name in ("baluev", "davies", "naive")
    )
    assert baluev == pytest.approx(0.0043217866919174324, abs=1e-12)
    assert davies == pytest.approx(0.0043311525763707216, abs=1e-12)
    assert naive == pytest.approx(0.0011693992470136049, abs=1e-12)
    assert reference.false_alarm_level([0.1, 0.05, 0.01]) == pytest.approx(
        [0.25446627, 0.27436154, 0.31716182], abs=1e-8
    )
    # Ours counts independent trials like the naive method, so it too stays below the upper bound of Baluev.
    z = -0.5 * (60 - 3) * np.log1p(-PUBLISHED_Z)
    assert naive * 0.999 < false_alarm_probability(z, 1, 1, 150.1) < baluev


def test_published_grid_is_reproduced_by_the_reference_library() -> None:
    """Grid printed in astropy's documentation: df = 1 / (5 T) starting at df / 2."""
    length = 98.1364819
    time = np.linspace(0.0, length, 100)
    grid = LombScargle(time, np.sin(time)).autofrequency(samples_per_peak=5, nyquist_factor=10)
    assert grid[0] == pytest.approx(0.0010189890448, abs=1e-9)
    assert grid[499] == pytest.approx(1.01797005576, abs=1e-9)
    assert grid[2499] == pytest.approx(5.09392623, abs=1e-8)
    # Ours has 4 points for each 1 / length and refines the line between them.


def test_false_alarm_probability_of_summed_powers_is_what_noise_does() -> None:
    """Sum of 4 harmonics over 3 stretches, 20 places searched: compared with drawn noise."""
    rng = np.random.default_rng(8)
    highest = rng.exponential(size=(20_000, 20, 12)).sum(axis=2).max(axis=1)
    for power in (20.0, 24.0):
        expected = false_alarm_probability(power, 4, 3, 20)
        assert np.mean(highest > power) == pytest.approx(expected, abs=4.0 * np.sqrt(expected / 20_000))


def test_false_alarm_probability_falls_with_power_and_rises_with_trials() -> None:
    powers = [false_alarm_probability(p, 2, 2, 100) for p in (1.0, 5.0, 20.0, 80.0, 900.0)]
    assert powers == sorted(powers, reverse=True)
    assert 0.0 <= powers[-1] < 1e-200 or powers[-1] < 1e-13
    assert false_alarm_probability(10.0, 1, 1, 10) < false_alarm_probability(10.0, 1, 1, 1000) <= 1.0


def test_pure_noise_shows_no_revolution() -> None:
    """200 wheels of noise alone: at a limit of 3e-5 not one may lock."""
    rng = np.random.default_rng(9)
    locked, noticed = 0, 0
    for _ in range(50):
        distance = _drive(rng, 2500, 0.25)
        paths = tuple(_path(distance, 0.002 * rng.normal(size=distance.size)) for _ in range(4))
        lines = _search(paths)
        locked += sum(isinstance(line, RevolutionLine) for line in lines)
        noticed += sum(isinstance(line, NotMeasurable) and line.id == "line-amplitude" for line in lines)
    assert locked == 0
    assert noticed == 200


@pytest.mark.parametrize(("samples", "drives"), [(2500, 120), (20_000, 40)])
def test_noise_shows_as_much_as_often_as_is_stated(samples: int, drives: int) -> None:
    """One stretch or several: the share of wheels of noise is the probability, within what chance allows."""
    rng = np.random.default_rng(11)
    middle_m = (SHORTEST_M + LONGEST_M) / 2.0
    decades = []
    for _ in range(drives):
        distance = _drive(rng, samples, 0.25)
        paths = [_path(distance, 0.002 * rng.normal(size=distance.size)) for _ in range(4)]
        decades += [
            -np.log10(
                line_near(
                    spectra, middle_m, tolerance_ratio=LONGEST_M / middle_m - 1.0
                ).false_alarm_probability
            )
            for spectra in measure_ripple_spectra(paths)
            if spectra is not None
        ]
    assert len(decades) == 4 * drives
    assert 0.06 < np.mean(np.array(decades) > 1.0) < 0.16
    assert np.mean(np.array(decades) > 2.0) < 0.03


@pytest.mark.parametrize("circumference_m", [1.65, 1.927, 2.161, 2.5])
def test_a_sine_is_found_with_its_size_and_length(circumference_m: float) -> None:
    rng = np.random.default_rng(10)
    distance = _drive(rng, 4000, 0.25)
    noise = 0.002 * rng.normal(size=(4, distance.size))
    paths = tuple(_path(distance, _ripple(distance, circumference_m, (0.001,)) + row) for row in noise)
    for line in _search(paths):
        assert isinstance(line, RevolutionLine)
        assert line.circumference_m == pytest.approx(circumference_m, rel=0.002)
        assert abs(line.circumference_m - circumference_m) < 4.0 * line.circumference_std_m
        assert line.amplitude_ratio[0] == pytest.approx(0.001, abs=4.0 * line.amplitude_std_ratio[0])
        assert 2e-5 < line.amplitude_std_ratio[0] < 1e-4
        assert line.revolutions == pytest.approx((distance[-1] - distance[0]) / circumference_m, rel=0.01)
        assert line.false_alarm_probability < FALSE_ALARM_LIMIT


@pytest.mark.parametrize(
    "size", ["205/55 R16", "235/55 R18", "225/40 R18", "195/65 R15", "215/50 R16", "225/45 R16"]
)
def test_common_tyres_lie_in_the_search_range_and_are_found_on_a_simulated_car(
    size: str, plain_setup: Setup, simulated: Callable[..., RoadTest]
) -> None:
    """Diameter 2 W A / 100 + 25.4 r in mm; dynamic circumference 3.05 times that (ETRTO, from memory)."""
    published_mm = {
        "205/55 R16": 631.9,
        "235/55 R18": 715.7,
        "225/40 R18": 637.2,
        "195/65 R15": 634.5,
        "215/50 R16": 621.4,
        "225/45 R16": 608.9,
    }
    width, rest = size.split("/")
    shape, rim = rest.split(" R")
    diameter_mm = 2.0 * float(width) * float(shape) / 100.0 + 25.4 * float(rim)
    assert diameter_mm == pytest.approx(published_mm[size], abs=0.06)
    circumference_m = 3.05e-3 * diameter_mm
    assert SHORTEST_M * 1.05 < circumference_m < LONGEST_M * 0.95
    setup = replace(
        plain_setup,
        car=replace(plain_setup.car, circumference_m=circumference_m),
        unit=replace(plain_setup.unit, circumference_m=circumference_m),
        encoder=replace(plain_setup.encoder, runout_ratio=(0.001, 0.001, 0.0012, 0.0008)),
    )
    lines = analyse(simulated(setup=setup, severity=0.0, duration_s=120.0, seed=5).log).lines
    for line in lines:
        assert isinstance(line, RevolutionLine)
        assert line.circumference_m == pytest.approx(circumference_m, rel=0.005)


@pytest.mark.parametrize("rate_hz", [10.0, 20.0, 50.0, 100.0])
def test_healthy_cars_lock_at_the_right_length_or_not_at_all(
    rate_hz: float, plain_setup: Setup, simulated: Callable[..., RoadTest]
) -> None:
    locked = 0
    for seed in range(20, 25):
        setup = replace(
            plain_setup,
            recorder=replace(plain_setup.recorder, rate_hz=rate_hz),
            drive=replace(plain_setup.drive, legs=("town", "yard") if seed % 2 else ("country", "town")),
        )
        test = simulated(setup=setup, severity=0.0, duration_s=150.0, seed=seed)
        truth_m = setup.unit.circumference_m
        for line in analyse(test.log).lines:
            if isinstance(line, RevolutionLine):
                locked += 1
                assert line.circumference_m == pytest.approx(truth_m, rel=0.01)
    assert locked >= (3 if rate_hz == 10.0 else 10)


@pytest.mark.parametrize("seed", [1, 13, 50, 108, 179, 234, 367])
def test_drawn_cars_lock_within_one_per_cent(seed: int, simulated: Callable[..., RoadTest]) -> None:
    """Drawn at random, among them those on which an earlier search went furthest astray."""
    test = simulated(severity=0.0, duration_s=120.0, seed=seed)
    truth_m = test.truth.setup.unit.circumference_m
    for line in analyse(test.log).lines:
        if isinstance(line, RevolutionLine):
            assert line.circumference_m == pytest.approx(truth_m, rel=0.01)


def test_a_single_harmonic_is_read_with_the_help_of_the_other_wheels() -> None:
    """Order 6 alone fits a circumference 5/6 as long as well; the wheels that show order 1 decide."""
    rng = np.random.default_rng(367)
    distance = _drive(rng, 5000, 0.25)
    clear = [_ripple(distance, 2.184, (0.0006,)) + 0.002 * rng.normal(size=distance.size) for _ in range(3)]
    for seed in range(4):
        noise = 0.002 * np.random.default_rng(seed).normal(size=distance.size)
        sixth = _ripple(distance, 2.184, (0.0, 0.0, 0.0, 0.0, 0.0, 0.0004)) + noise
        line = _search(tuple(_path(distance, row) for row in (*clear, sixth)))[3]
        assert isinstance(line, NotMeasurable) or line.circumference_m == pytest.approx(2.184, rel=0.01)


def test_another_pole_count_keeps_its_own_length_beside_the_others() -> None:
    rng = np.random.default_rng(12)
    distance = _drive(rng, 5000, 0.25)
    lengths = (2.0, 2.0, 2.0 * 48 / 44, 2.0)
    paths = tuple(
        _path(distance, _ripple(distance, length, (0.001, 0.0003)) + 0.002 * rng.normal(size=distance.size))
        for length in lengths
    )
    for line, length in zip(_search(paths), lengths, strict=True):
        assert isinstance(line, RevolutionLine)
        assert line.circumference_m == pytest.approx(length, rel=0.003)


def test_strong_wheels_guide_the_search_on_a_weak_one() -> None:
    rng = np.random.default_rng(14)
    distance = _drive(rng, 3000, 0.25)
    weak = _ripple(distance, 2.0, (0.00030,)) + 0.002 * rng.normal(size=distance.size)
    strong = [_ripple(distance, 2.0, (0.002,)) + 0.002 * rng.normal(size=distance.size) for _ in range(3)]
    spectrum = measure_ripple_spectra((_path(distance, weak),))[0]
    alone = find_revolution_lines((spectrum, None, None, None))
    guided = _search((_path(distance, weak), *(_path(distance, row) for row in strong)))
    assert isinstance(alone[0], NotMeasurable)
    assert isinstance(guided[0], RevolutionLine)
    assert guided[0].circumference_m == pytest.approx(2.0, rel=0.005)


def test_a_known_circumference_narrows_the_search() -> None:
    rng = np.random.default_rng(15)
    distance = _drive(rng, 4000, 0.25)
    ripple = _ripple(distance, 1.8, (0.003,)) + 0.002 * rng.normal(size=distance.size)
    paths = (_path(distance, ripple),) * 4
    assert isinstance(_search(paths, circumference_m=1.82)[0], RevolutionLine)
    assert isinstance(_search(paths, circumference_m=2.3)[0], NotMeasurable)


@pytest.mark.parametrize(
    ("samples", "step_m"), [(0, 1.0), (1, 1.0), (FEWEST_SAMPLES - 1, 1.0), (FEWEST_SAMPLES * 3, 0.02)]
)
def test_too_short_a_drive_says_so(samples: int, step_m: float) -> None:
    rng = np.random.default_rng(16)
    distance = _drive(rng, samples, step_m)
    line = _search((_path(distance, np.zeros(samples)),) * 4)[0]
    assert isinstance(line, NotMeasurable)
    assert line.corner == CORNERS[0]
    assert f"{SHORTEST_DRIVE_M:.0f} m" in line.reason
    assert "minute" in line.needed


def test_the_given_circumference_reaches_the_search(
    plain_setup: Setup, simulated: Callable[..., RoadTest]
) -> None:
    log = simulated("encoder-debris", "FL", 0.7, setup=plain_setup, duration_s=150.0).log
    truth_m = plain_setup.unit.circumference_m
    near = analyse(log, Vehicle(circumference_m=truth_m * 1.01)).lines
    far = analyse(log, Vehicle(circumference_m=truth_m * 1.25)).lines
    assert all(isinstance(line, RevolutionLine) for line in near)
    for line in far:
        assert isinstance(line, NotMeasurable) or abs(line.circumference_m / truth_m - 1.25) < 0.08


def _quiet_wheels(rng: np.random.Generator, amplitude: float) -> tuple[WheelPath, ...]:
    distance = np.sort(rng.uniform(0.0, 3000.0, 6000))
    wheels = []
    for phase in rng.uniform(0.0, 2.0 * np.pi, 4):
        ripple = amplitude * np.cos(2.0 * np.pi * distance / 2.0 + phase) + rng.normal(0.0, 1e-3, 6000)
        wheels.append(
            WheelPath(distance_m=distance, ripple_ratio=ripple, weight=np.ones(6000), leak_ratio=1.0)
        )
    return tuple(wheels)


def test_wheels_too_quiet_to_lock_alone_lock_together() -> None:
    """Four wheels of equal amplitude carry four times the evidence of one (powers add)."""
    rng = np.random.default_rng(7)
    alone = together = 0
    for _ in range(12):
        spectra = measure_ripple_spectra(_quiet_wheels(rng, 0.11e-3))
        alone += sum(
            isinstance(find_revolution_lines([one, None, None, None])[0], RevolutionLine) for one in spectra
        )
        for line in find_revolution_lines(spectra):
            if isinstance(line, RevolutionLine):
                together += 1
                assert line.circumference_m == pytest.approx(2.0, rel=0.002)
    assert together > alone + 8


def test_noise_of_four_wheels_locks_none() -> None:
    rng = np.random.default_rng(8)
    for _ in range(25):
        lines = find_revolution_lines(measure_ripple_spectra(_quiet_wheels(rng, 0.0)))
        assert not any(isinstance(line, RevolutionLine) for line in lines)
