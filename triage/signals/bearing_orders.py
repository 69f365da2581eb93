"""Frequencies of a rolling bearing over the revolution of the wheel."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final, Literal

from triage.vehicle import Vehicle

SLIP_RATIO: Final = 0.02
"""Real lines lie within about 2 % of the kinematic order, for the rollers slip (Randall and Antoni 2011, from
memory)."""

CAGE_INNER_TURNS: Final = (0.35, 0.48)
CAGE_OUTER_TURNS: Final = (0.52, 0.65)
"""Where the cage order of any wheel bearing lies: element over pitch diameter from 0.04 to 0.3
(judgement)."""


@dataclass(frozen=True, slots=True)
class BearingGeometry:
    """Rolling elements of a bearing.

    Attributes
    ----------
    elements : int
        Balls or rollers in a row.
    element_diameter_m, pitch_diameter_m : float
        Only their ratio matters.
    contact_angle_rad : float
        0 for a deep-groove bearing.
    turning_ring : {"inner", "outer"}
        Ring that turns with the wheel.
    """

    elements: int
    element_diameter_m: float
    pitch_diameter_m: float
    contact_angle_rad: float = 0.0
    turning_ring: Literal["inner", "outer"] = "inner"


@dataclass(frozen=True, slots=True)
class BearingOrders:
    """Events per revolution of the wheel.

    Attributes
    ----------
    cage : float
        Revolutions of the cage (FTF).
    outer, inner : float
        Elements passing a spot on the outer and on the inner ring (BPFO, BPFI).
    element : float
        Revolutions of an element about itself (BSF). A spot on it strikes both rings: twice as often.
    """

    cage: float
    outer: float
    inner: float
    element: float


def bearing_orders(geometry: BearingGeometry) -> BearingOrders:
    """Kinematic orders of a bearing, rolling without slip.

    Parameters
    ----------
    geometry : BearingGeometry

    Returns
    -------
    BearingOrders

    Raises
    ------
    ValueError
        When no element would fit between the rings.

    Notes
    -----
    With g = d cos(a) / D: cage (1 - g) / 2 where the inner ring turns, (1 + g) / 2 where the outer does;
    outer N (1 - g) / 2, inner N (1 + g) / 2, element D / (2 d) (1 - g^2), these three whichever ring turns.

    References
    ----------
    R. B. Randall, J. Antoni, Rolling element bearing diagnostics - A tutorial, Mech. Syst. Signal Process.
    25, 2011, 485-520 (cited from memory).
    """
    ratio = geometry.element_diameter_m / geometry.pitch_diameter_m
    if geometry.elements < 1 or not 0.0 < ratio < 1.0:
        raise ValueError("a bearing needs elements smaller than its pitch circle")
    along = ratio * math.cos(geometry.contact_angle_rad)
    sign = -1.0 if geometry.turning_ring == "inner" else 1.0
    return BearingOrders(
        cage=(1.0 + sign * along) / 2.0,
        outer=geometry.elements * (1.0 - along) / 2.0,
        inner=geometry.elements * (1.0 + along) / 2.0,
        element=(1.0 - along**2) / (2.0 * ratio),
    )


def cage_ranges(vehicle: Vehicle) -> tuple[tuple[float, float], ...]:
    """Orders among which the cage is looked for: the exact one with slip, or all that are possible."""
    geometry = bearing_of(vehicle)
    if geometry is None:
        return CAGE_INNER_TURNS, CAGE_OUTER_TURNS
    order = bearing_orders(geometry).cage
    return ((order * (1.0 - SLIP_RATIO), order * (1.0 + SLIP_RATIO)),)


def bearing_of(vehicle: Vehicle) -> BearingGeometry | None:
    """Take the geometry from the vehicle file; None unless elements, diameters and turning ring are there."""
    if not (vehicle.bearing_elements and vehicle.bearing_element_m and vehicle.bearing_pitch_m):
        return None
    ring = vehicle.bearing_turning_ring
    if ring not in ("inner", "outer") or vehicle.bearing_element_m >= vehicle.bearing_pitch_m:
        return None
    return BearingGeometry(
        elements=round(vehicle.bearing_elements),
        element_diameter_m=vehicle.bearing_element_m,
        pitch_diameter_m=vehicle.bearing_pitch_m,
        contact_angle_rad=math.radians(vehicle.bearing_contact_deg),
        turning_ring="inner" if ring == "inner" else "outer",
    )
