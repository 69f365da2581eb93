"""Bearing frequencies against published multipliers."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from triage.errors import SettingsError
from triage.signals.bearing_orders import (
    CAGE_INNER_TURNS,
    CAGE_OUTER_TURNS,
    BearingGeometry,
    bearing_of,
    bearing_orders,
    cage_ranges,
)
from triage.vehicle import Vehicle, load_vehicle


@pytest.mark.parametrize(
    ("geometry", "outer", "inner", "cage", "element_twice"),
    [
        # As published with a university's bearing data set (sizes 6205 and 6203); what it calls the rolling
        # element is twice the element's own frequency.
        (BearingGeometry(9, 0.3126, 1.537), 3.5848, 5.4152, 0.39828, 4.7135),
        (BearingGeometry(8, 0.2656, 1.122), 3.0530, 4.9469, 0.3817, 3.9874),
        # An insert bearing of size 204 of an open run-to-failure set; ratios computed from its geometry.
        (BearingGeometry(8, 7.92, 34.55), 3.08307, 4.91693, 0.38538, 2 * 2.06657),
    ],
)
def test_orders_agree_with_published_multipliers(
    geometry: BearingGeometry, outer: float, inner: float, cage: float, element_twice: float
) -> None:
    orders = bearing_orders(geometry)
    assert orders.outer == pytest.approx(outer, abs=5e-4)
    assert orders.inner == pytest.approx(inner, abs=5e-4)
    assert orders.cage == pytest.approx(cage, abs=5e-4)
    assert 2.0 * orders.element == pytest.approx(element_twice, abs=5e-4)


def test_contact_angle_and_round_numbers() -> None:
    """An angular-contact bearing of 40 degrees at 25 Hz, and 8 elements of 10 on 50 at 1800 rpm."""
    orders = bearing_orders(BearingGeometry(12, 25.4, 110.0, math.radians(40.0)))
    assert 25.0 * orders.outer == pytest.approx(123.467, abs=1e-3)
    assert 25.0 * orders.inner == pytest.approx(176.533, abs=1e-3)
    assert 25.0 * orders.cage == pytest.approx(10.2889, abs=1e-3)
    assert 25.0 * orders.element == pytest.approx(52.4401, abs=1e-3)
    simple = bearing_orders(BearingGeometry(8, 10.0, 50.0))
    assert [30.0 * one for one in (simple.cage, simple.outer, simple.inner, simple.element)] == pytest.approx(
        [12.0, 96.0, 144.0, 72.0]
    )


def test_invariants_and_the_turning_outer_ring() -> None:
    inner = bearing_orders(BearingGeometry(9, 0.3126, 1.537))
    outer = bearing_orders(BearingGeometry(9, 0.3126, 1.537, turning_ring="outer"))
    assert inner.outer + inner.inner == pytest.approx(9.0, abs=1e-12)
    assert inner.outer == pytest.approx(9.0 * inner.cage, abs=1e-12)
    assert (outer.outer, outer.inner) == (inner.outer, inner.inner)
    assert outer.cage == pytest.approx(0.60169, abs=1e-4)


def test_impossible_bearings_are_refused() -> None:
    with pytest.raises(ValueError, match="smaller than its pitch"):
        bearing_orders(BearingGeometry(9, 2.0, 1.0))


def test_a_known_bearing_narrows_the_search() -> None:
    assert cage_ranges(Vehicle()) == (CAGE_INNER_TURNS, CAGE_OUTER_TURNS)
    known = Vehicle(
        bearing_elements=9, bearing_element_m=0.0127, bearing_pitch_m=0.0624, bearing_turning_ring="outer"
    )
    ((low, high),) = cage_ranges(known)
    assert low < 0.6018 < high < 0.62
    assert bearing_of(Vehicle(bearing_elements=9, bearing_element_m=0.0127, bearing_pitch_m=0.0624)) is None


def test_the_vehicle_file_may_hold_a_bearing(tmp_path: Path) -> None:
    file = tmp_path / "car.toml"
    file.write_text(
        "bearing_elements = 9\nbearing_element_m = 0.00794\nbearing_pitch_m = 0.03904\n"
        'bearing_contact_deg = 0.0\nbearing_turning_ring = "inner"\n'
    )
    geometry = bearing_of(load_vehicle(file))
    assert geometry is not None
    # 1797 turns a minute, geometry in hundredths of a millimetre: computed from the same data set.
    orders = bearing_orders(geometry)
    hz = 1797.0 / 60.0
    assert [hz * one for one in (orders.outer, orders.inner, orders.element, orders.cage)] == pytest.approx(
        [107.364, 162.186, 70.585, 11.929], abs=0.005
    )
    file.write_text('bearing_turning_ring = "middle"\n')
    with pytest.raises(SettingsError, match="bearing_turning_ring must be one of"):
        load_vehicle(file)
