"""Which part of wheel end or car a hidden fault sits in, and how a sketch shows it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

import numpy as np

from triage.corners import CORNERS, SIDE_SIGN, Corner, Place
from triage.simulator.truth import Truth
from triage.texts import Text, joined

Part = Literal["ring", "gap", "sensor", "lead", "bearing", "tyre", "wiring", "control unit", "nothing"]

PARTS: Final[dict[str, Part]] = {
    "encoder-debris": "ring",
    "encoder-damage": "ring",
    "encoder-runout": "ring",
    "encoder-mismatch": "ring",
    "air-gap": "gap",
    "sensor-fault": "sensor",
    "harness-fault": "lead",
    "bearing-play": "bearing",
    "bearing-roughness": "bearing",
    "tyre-size": "tyre",
    "channels-swapped": "wiring",
    "common-cause": "control unit",
    "no-fault-found": "nothing",
}

SHOWN_RUNOUT: Final = 0.12
"""How far off centre a ring is drawn that runs out of true, over its radius: larger than life, to be seen."""

FEW_SECTORS: Final = 6
"""More bad stretches than this are told by their number."""


@dataclass(frozen=True, slots=True)
class RingSketchPlan:
    """What to draw.

    Attributes
    ----------
    part : str
        Where the fault sits.
    corner : str
        The wheel, or ``vehicle``.
    strength : tuple of float
        Strength of every pole, 1 for a sound one, going round once from the mark; empty for causes of the
        whole vehicle.
    sectors_rev : tuple of (float, float)
        Middle and width of the bad stretches, in turns from the mark.
    clockwise : bool
        Whether angles grow clockwise: seen from outside, the wheels of the left side turn against the clock,
        and what passes the sensor later then stands further round with it.
    off_centre : float
        How far the ring is drawn off its centre, over its radius.
    caption : str
        The fault as the simulator built it in.
    """

    part: Part
    corner: Place
    strength: tuple[float, ...]
    sectors_rev: tuple[tuple[float, float], ...]
    clockwise: bool
    off_centre: float
    caption: str


def plan_sketch(truth: Truth) -> RingSketchPlan:
    """Return what to draw of a fault that the simulator built in."""
    part = PARTS.get(truth.cause, "nothing")
    wheel = next((corner for corner in CORNERS if corner == truth.corner), None)
    if wheel is None:
        return RingSketchPlan(part, truth.corner, (), (), True, 0.0, _car_caption(truth.cause))
    ring = truth.rings[CORNERS.index(wheel)]
    sectors = tuple((one.centre_rev, one.width_rev) for one in truth.sectors if one.corner == wheel)
    return RingSketchPlan(
        part,
        truth.corner,
        tuple(float(value) for value in np.clip(ring.strength, 0.0, 1.0)),
        sectors if part == "ring" else (),
        SIDE_SIGN[wheel] > 0,
        SHOWN_RUNOUT if truth.cause == "encoder-runout" else 0.0,
        _wheel_caption(truth, wheel, sectors),
    )


def _wheel_caption(truth: Truth, wheel: Corner, sectors: tuple[tuple[float, float], ...]) -> str:
    at = CORNERS.index(wheel)
    if truth.cause == "encoder-mismatch":
        expected = 2 * truth.setup.encoder.pole_pairs
        return Text("{n} poles; the car expects {expected}", n=truth.rings[at].poles, expected=expected)
    if truth.cause == "encoder-runout":
        swing = f"{100.0 * truth.runout_ratio[at]:.2f}"
        return Text("speed swings by {swing} % once in every turn (drawn larger)", swing=swing)
    if truth.cause == "tyre-size":
        off = f"{100.0 * (truth.read_ratio[at] - 1.0):+.2f}"
        return Text("the wheel reads {off} % against the others", off=off)
    if sectors and PARTS.get(truth.cause) == "ring":
        return _sector_words(sectors, clockwise=SIDE_SIGN[wheel] > 0)
    return _CAPTIONS.get(truth.cause, "")


def _sector_words(sectors: tuple[tuple[float, float], ...], *, clockwise: bool) -> str:
    places = [
        Text("{centre}° ({width}° wide)", centre=f"{360.0 * centre:.0f}", width=f"{360.0 * width:.0f}")
        for centre, width in sectors
    ]
    shown = joined(", ", places[:FEW_SECTORS])
    if len(places) > FEW_SECTORS:
        shown = Text("{first} and {n} more", first=shown, n=len(places) - FEW_SECTORS)
    if clockwise:
        return Text("bad stretches, clockwise from the mark ▲: {places}", places=shown)
    return Text("bad stretches, counter-clockwise from the mark ▲: {places}", places=shown)


def _car_caption(cause: str) -> str:
    return _CAPTIONS.get(cause, "")


_CAPTIONS: Final[dict[str, str]] = {
    "air-gap": Text("the sensor stands too far from the ring"),
    "sensor-fault": Text("the sensor itself fails now and then"),
    "harness-fault": Text("the lead loses contact for moments"),
    "bearing-play": Text("the hub tilts, and the ring moves under the sensor"),
    "bearing-roughness": Text("races or rolling elements are damaged; the wheel speed hardly shows it"),
    "channels-swapped": Text("the leads of two wheels are exchanged"),
    "common-cause": Text("supply, control unit or recorder: all wheels at the same instant"),
    "no-fault-found": Text("nothing was built in: all four wheel ends are sound"),
}
