"""Shapes of a spot: closed forms, and a unit worked out cycle by cycle."""

from __future__ import annotations

import numpy as np
import pytest

from triage.signals.ring_response import RING_BINS
from triage.signals.spot_shapes import (
    FILTERS_REV,
    WINDOWS_REV,
    SpotShapes,
    missing_pulse_shapes,
    moved_pulse_shapes,
)
from triage.speed_log import FloatArray

CYCLE_REV = 0.04


def _over_turn(shapes: SpotShapes, number: int) -> FloatArray:
    return np.fft.irfft(shapes.spectrum[number] * RING_BINS, RING_BINS)


def _shape(window: int, filter_: int) -> FloatArray:
    return _over_turn(missing_pulse_shapes(CYCLE_REV), window * len(FILTERS_REV) + filter_)


def _cycle_by_cycle(window_rev: float, filter_rev: float) -> FloatArray:
    """Mean over all phases of the cycle of what a unit puts out, in bins; the event is at angle 0."""
    fine, turns = 1920, 6
    event = np.arange(turns * fine) % fine < round(window_rev * fine)
    cycle = round(CYCLE_REV * fine)
    gain = 1.0 - np.exp(-cycle / fine / filter_rev) if filter_rev else 1.0
    total = np.zeros(turns * fine)
    for phase in range(cycle):
        out = 0.0
        for end in range(phase, turns * fine, cycle):
            out += gain * (event[end] - out)
            total[end : end + cycle] += out / cycle
    return total[-2 * fine : -fine].reshape(RING_BINS, -1).mean(axis=1)


@pytest.mark.parametrize(("window", "filter_"), [(6, 0), (12, 2), (16, 5), (20, 7)])
def test_a_missing_pulse_shows_as_in_a_unit_worked_out_cycle_by_cycle(window: int, filter_: int) -> None:
    plain = _cycle_by_cycle(WINDOWS_REV[window], FILTERS_REV[filter_])
    apart = _shape(window, filter_) - plain
    # The shapes end at order 48, the plain sum does not.
    assert np.sqrt(np.mean(apart**2)) < 0.01 * plain.std() + 0.01


def test_the_area_is_that_of_the_window_whatever_the_filter() -> None:
    """Closed form: a filter of unit gain leaves the integral as it is."""
    shapes = missing_pulse_shapes(CYCLE_REV)
    areas = [_over_turn(shapes, number).mean() for number in range(shapes.area_rev.size)]
    np.testing.assert_allclose(areas, shapes.area_rev, atol=1e-12)


def test_a_moved_pulse_gives_back_what_it_takes() -> None:
    """Closed form: both ends of what is averaged pass the pulse, once each way."""
    shapes = moved_pulse_shapes(CYCLE_REV)
    first = _over_turn(shapes, 0)
    assert abs(first.mean()) < 1e-12
    assert first.max() > 0.2
    assert np.argmax(first) < np.argmin(first)
    assert (shapes.area_rev == 0.0).all()


def test_nothing_shows_before_it_happens() -> None:
    """But for the ripple of a series that ends at order 48 (J. W. Gibbs, 1899)."""
    for shapes in (missing_pulse_shapes(CYCLE_REV), moved_pulse_shapes(CYCLE_REV)):
        for number in range(0, shapes.window_rev.size, len(FILTERS_REV)):
            if shapes.window_rev[number] < 0.3:
                before = _over_turn(shapes, number)[-24:-2]
                assert np.abs(before).max() < 0.05
