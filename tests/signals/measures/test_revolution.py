"""What the lines of the other wheels do to the uncertainty of one wheel's line."""

from __future__ import annotations

from types import SimpleNamespace
from typing import cast

import numpy as np
import pytest

from triage.signals.analysis import Analysis
from triage.signals.measurement import Measurement, NotMeasurable
from triage.signals.measures.revolution import measure_line_amplitude, measure_revolution_offset
from triage.signals.revolution_line import RevolutionLine

NO_LINE = NotMeasurable("line-amplitude", None, "no ripple", "driving")


def _line(circumference_m: float, amplitude: float) -> RevolutionLine:
    return RevolutionLine(
        circumference_m=circumference_m,
        circumference_std_m=0.0011 * circumference_m,
        amplitude_ratio=np.array([amplitude, *[0.0] * 7]),
        amplitude_std_ratio=np.full(8, 2e-5),
        phase_rad=np.zeros(8),
        false_alarm_probability=1e-20,
        revolutions=500.0,
    )


def _analysis(*lines: RevolutionLine | NotMeasurable) -> Analysis:
    paths = tuple(SimpleNamespace(weight=np.ones(100)) for _ in range(4))
    spans = (((0.0, 1.0),),) * 4
    made = SimpleNamespace(lines=lines, own_lines=lines, paths=paths, moving_spans=spans)
    return cast("Analysis", made)


def _offset(*lines: RevolutionLine | NotMeasurable) -> Measurement:
    found = measure_revolution_offset(_analysis(*lines), 0)
    assert isinstance(found, Measurement)
    return found


def test_four_like_wheels_are_known_to_a_tenth_of_a_per_cent() -> None:
    found = _offset(*[_line(2.0, 5e-4)] * 4)
    assert found.value == 0.0
    # Noise sqrt(0.11**2 - 0.1**2) = 0.046 %, own drift 0.06 %, a twentieth of the leak shift; twice over.
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
