"""Points of the unit circle against sine and cosine."""

from __future__ import annotations

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from triage.signals.unit_circle import BLOCK, STEPS, unit_points


@given(angle=st.lists(st.floats(-1e4, 1e4), min_size=1, max_size=40).map(np.array))
def test_points_are_those_of_sine_and_cosine(angle: np.ndarray) -> None:
    part = 2.0 * np.pi * (angle - np.rint(angle))
    np.testing.assert_allclose(unit_points(angle), np.cos(part) + 1j * np.sin(part), rtol=0, atol=2e-15)


def test_the_precision_of_the_numbers_is_kept_between_the_points_of_the_table() -> None:
    angle = np.linspace(-0.6, 0.6, 3 * BLOCK + 7)
    expected = np.cos(2.0 * np.pi * angle) + 1j * np.sin(2.0 * np.pi * angle)
    np.testing.assert_allclose(unit_points(angle), expected, rtol=0, atol=2e-15)
    quarter = unit_points(np.arange(8) / 8.0 + 0.5 / STEPS)
    np.testing.assert_allclose(np.abs(quarter), 1.0, rtol=0, atol=1e-15)


def test_no_angle_has_no_point() -> None:
    assert unit_points(np.zeros(0)).size == 0
