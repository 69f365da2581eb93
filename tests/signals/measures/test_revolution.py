"""What the lines of the other wheels do to the uncertainty of one wheel's line."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from types import SimpleNamespace
from typing import cast

import numpy as np
import pytest

from triage.signals.analysis import Analysis
from triage.signals.measurement import Measurement, NotMeasurable
from triage.signals.measures.revolution import (
    _cannot_be,
    _root_mean_square,
    _size_of,
    measure_harmonic_ratio,
    measure_line_amplitude,
    measure_line_ratio,
    measure_revolution_offset,
)
from triage.signals.revolution_line import DRIFT_RATIO, RevolutionLine
from triage.signals.ripple_spectra import RippleSpectra, measure_ripple_spectra
from triage.signals.wheel_path import WheelPath
from triage.speed_log import SpeedLog

Measure = Callable[[SpeedLog], dict[tuple[str, str], Measurement]]

NO_LINE = NotMeasurable("line-amplitude", None, "no ripple", "driving")


def _line(circumference_m: float, *amplitudes: float) -> RevolutionLine:
    return RevolutionLine(
        circumference_m=circumference_m,
        circumference_std_m=float(np.hypot(DRIFT_RATIO, 0.00046)) * circumference_m,
        amplitude_ratio=np.pad(amplitudes, (0, 8 - len(amplitudes))),
        amplitude_std_ratio=np.full(8, 2e-5),
        phase_rad=np.zeros(8),
        false_alarm_probability=1e-20,
        revolutions=500.0,
    )


def _analysis(
    *lines: RevolutionLine | NotMeasurable, spectra: tuple[RippleSpectra | None, ...] = (None,) * 4
) -> Analysis:
    paths = tuple(SimpleNamespace(weight=np.ones(100)) for _ in range(4))
    spans = (((0.0, 1.0),),) * 4
    unknown = np.full(4, np.nan)
    reference = SimpleNamespace(scale_ratio=unknown, scale_std_ratio=unknown, axle_slip_ratio=0.0)
    made = SimpleNamespace(
        lines=lines,
        own_lines=lines,
        paths=paths,
        moving_spans=spans,
        own_spectra=spectra,
        reference=reference,
        noise_growth=None,
    )
    return cast("Analysis", made)


def _offset(*lines: RevolutionLine | NotMeasurable) -> Measurement:
    found = measure_revolution_offset(_analysis(*lines), 0)
    assert isinstance(found, Measurement)
    return found


def test_four_like_wheels_are_known_to_a_tenth_of_a_per_cent() -> None:
    found = _offset(*[_line(2.0, 5e-4)] * 4)
    assert found.value == 0.0
    # Noise 0.046 %, own drift 0.06 %, a twentieth of the leak shift; twice over.
    assert found.std_uncertainty == pytest.approx(np.hypot(0.046, np.hypot(0.06, 0.035)) * 2**0.5, rel=0.02)


def test_an_odd_wheel_among_three_like_ones_stays_certain() -> None:
    found = _offset(_line(2.1, 5e-4), *[_line(2.0, 5e-4)] * 3)
    assert found.value == pytest.approx(5.0)
    assert found.std_uncertainty < 0.2


def test_of_two_others_that_differ_nobody_knows_which_is_right() -> None:
    found = _offset(_line(2.0, 5e-4), _line(2.0, 5e-4), _line(2.2, 5e-4), NO_LINE)
    assert abs(found.value) > 4.0
    assert abs(found.value) < 1.96 * found.std_uncertainty


def test_a_weak_line_beside_a_strong_one_may_be_a_leak() -> None:
    strong = _line(2.0, 0.02)
    weak = _offset(_line(2.01, 4e-4), strong, _line(2.0, 4e-4), _line(2.0, 4e-4))
    assert weak.std_uncertainty > 0.9
    amplitude = measure_line_amplitude(_analysis(_line(2.0, 4e-4), strong, NO_LINE, NO_LINE), 0)
    assert isinstance(amplitude, Measurement)
    assert amplitude.std_uncertainty == pytest.approx(0.1, rel=0.02)


def test_the_blur_of_the_delay_is_a_quarter_of_a_strong_line() -> None:
    found = measure_line_amplitude(_analysis(_line(2.0, 0.02), NO_LINE, NO_LINE, NO_LINE), 0)
    assert isinstance(found, Measurement)
    assert found.std_uncertainty == pytest.approx(0.25 * found.value, rel=0.01)


def _ratio(*lines: RevolutionLine | NotMeasurable, spectra: tuple[RippleSpectra | None, ...]) -> Measurement:
    found = measure_line_ratio(_analysis(*lines, spectra=spectra), 0)
    assert isinstance(found, Measurement)
    return found


def test_a_line_is_judged_by_the_root_mean_square_of_the_others() -> None:
    others = [_line(2.0, 3e-4), _line(2.0, 4e-4), _line(2.0, 5e-4)]
    found = _ratio(_line(2.0, 5e-3), *others, spectra=(None,) * 4)
    assert found.value == pytest.approx(50.0 / np.sqrt((9 + 16 + 25) / 3))
    assert found.std_uncertainty / found.value == pytest.approx(0.1, rel=0.1)


def test_the_scatter_of_the_others_is_what_their_noise_makes_it() -> None:
    """Against 20 000 draws of three amplitudes, their noise power taken out as for a line."""
    rng = np.random.default_rng(5)
    true, std = np.array([3e-4, 4e-4, 5e-4]), np.full(3, 8e-5)
    parts = true[:, None] + std[:, None] * (rng.normal(size=(3, 20_000)) + 1j * rng.normal(size=(3, 20_000)))
    power = (np.abs(parts) ** 2 - 2.0 * std[:, None] ** 2).mean(axis=0)
    drawn = float(np.std(np.sqrt(power)))
    usual, usual_std = _root_mean_square(true, std)
    assert usual == pytest.approx(float(np.sqrt(power.mean())), rel=0.01)
    assert usual_std == pytest.approx(drawn, rel=0.03)


def test_beside_silent_wheels_a_line_is_judged_by_their_noise() -> None:
    """A sine of 0.5 % over noise that hides every line of the others stands far above them."""
    rng = np.random.default_rng(6)
    distance_m = np.cumsum(rng.uniform(0.3, 0.7, 4000))
    quiet = [WheelPath(distance_m, rng.normal(0.0, 0.005, 4000), np.ones(4000), 0.0) for _ in range(3)]
    spectra = (None, *measure_ripple_spectra(quiet))
    found = _ratio(_line(2.0, 5e-3), NO_LINE, NO_LINE, NO_LINE, spectra=spectra)
    # Noise of 4000 samples: s = 0.005 sqrt(2 / 4000) in each part of an amplitude; peaks reach a few s.
    noise = 0.005 * np.sqrt(2.0 / 4000.0)
    assert 5e-3 / (4.0 * noise) < found.value < 5e-3 / (0.5 * noise)
    assert found.std_uncertainty > 0.12 * found.value


def test_higher_orders_are_summed_in_power_and_held_against_the_others() -> None:
    others = [_line(2.0, 9e-4, 3e-4, 4e-4), _line(2.0, 1e-4, 1e-3), _line(2.0, 0.0, 0.0, 5e-4)]
    found = measure_harmonic_ratio(_analysis(_line(2.0, 2e-4, 3e-3, 0.0, 4e-3), *others), 0)
    assert isinstance(found, Measurement)
    assert found.value == pytest.approx(5e-3 / np.sqrt((5e-4**2 + 1e-3**2 + 5e-4**2) / 3.0))
    assert found.std_uncertainty / found.value == pytest.approx(0.1, rel=0.1)


def test_run_out_adds_nothing_to_the_higher_orders() -> None:
    found = measure_harmonic_ratio(_analysis(_line(2.0, 0.02, 3e-4), *[_line(2.0, 2e-4, 3e-4)] * 3), 0)
    assert isinstance(found, Measurement)
    assert found.value == pytest.approx(1.0)


def test_higher_orders_of_silent_wheels_count_as_their_noise() -> None:
    """Seven orders of noise 2e-5 each are together 2e-5 sqrt(7), below the least that is told of a ring."""
    quiet = measure_harmonic_ratio(_analysis(_line(2.0, 1e-3, 1e-3), *[_line(2.0, 1e-3)] * 3), 0)
    loud = replace(_line(2.0, 1e-3), amplitude_std_ratio=np.full(8, 2e-4))
    noisy = measure_harmonic_ratio(_analysis(_line(2.0, 1e-3, 1e-3), *[loud] * 3), 0)
    assert isinstance(quiet, Measurement)
    assert isinstance(noisy, Measurement)
    assert quiet.value == pytest.approx(10.0)
    assert noisy.value == pytest.approx(1e-3 / (2e-4 * np.sqrt(7.0)))
    assert noisy.std_uncertainty > 0.2 * noisy.value


def test_the_scatter_of_summed_orders_is_what_their_noise_makes_it() -> None:
    """Against 20 000 draws of orders 2 to 8, their noise power taken out as for a line."""
    rng = np.random.default_rng(8)
    true, std = np.array([4e-4, 2e-4, 1e-4, 0.0, 0.0, 0.0, 0.0]), 4e-5
    noise = std * (rng.normal(size=(20_000, 7)) + 1j * rng.normal(size=(20_000, 7)))
    power = (np.abs(true + noise) ** 2 - 2.0 * std**2).sum(axis=1)
    line = replace(_line(2.0, 0.0, *true), amplitude_std_ratio=np.full(8, std))
    size, size_std, _ = _size_of(line, slice(1, None))
    assert size == pytest.approx(float(np.sqrt(power.mean())), rel=0.01)
    assert size_std == pytest.approx(float(np.std(np.sqrt(np.maximum(power, 0.0)))), rel=0.03)


def test_nothing_is_said_of_a_line_that_no_other_wheel_can_be_held_against() -> None:
    found = measure_line_ratio(_analysis(_line(2.0, 5e-3), NO_LINE, NO_LINE, NO_LINE), 0)
    assert isinstance(found, NotMeasurable)


@pytest.mark.parametrize(
    ("offset", "ratio", "impossible"),
    [(-0.25, -0.0006, True), (0.02, 0.021, False), (0.001, 0.05, False), (-0.25, float("nan"), False)],
)
def test_an_offset_of_neither_tyre_nor_count_is_no_revolution(
    offset: float, ratio: float, *, impossible: bool
) -> None:
    assert _cannot_be(offset, ratio) is impossible


def test_a_swing_three_times_a_turn_is_told_beside_equal_ones_once_a_turn(
    log_from: Callable[..., SpeedLog], values: Measure
) -> None:
    """Order 1 alike on all four of a hand-made log; of order 3 0.3 % on one, 0.05 % on the others."""
    rng = np.random.default_rng(12)
    time_s = np.arange(0.0, 180.0, 0.01)
    speed_mps = 13.0 + 2.0 * np.sin(2.0 * np.pi * time_s / 70.0)
    rows = []
    for third, turn_m in ((0.0005, 1.95), (0.003, 1.953), (0.0005, 1.947), (0.0005, 1.956)):
        angle_rev = np.cumsum(speed_mps) * 0.01 / turn_m
        phase_rev = rng.uniform(size=2)
        ripple = 0.001 * np.sin(2.0 * np.pi * (angle_rev + phase_rev[0]))
        ripple += third * np.sin(6.0 * np.pi * (angle_rev + phase_rev[1]))
        rows.append(speed_mps * (1.0 + ripple + rng.normal(0.0, 0.001, time_s.size)))
    got = values(log_from(time_s, rows))
    assert got["harmonic-ratio", "FR"].value == pytest.approx(6.0, rel=0.15)
    assert got["line-ratio", "FR"].value == pytest.approx(1.0, rel=0.15)
    for corner in ("FL", "RL", "RR"):
        assert got["harmonic-ratio", corner].value < 0.5
