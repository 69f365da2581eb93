"""The four corners of the car, left and right as the driver sees them."""

from __future__ import annotations

from typing import Final, Literal

from triage.texts import Text

Corner = Literal["FL", "FR", "RL", "RR"]
Place = Literal["FL", "FR", "RL", "RR", "vehicle"]

CORNERS: Final[tuple[Corner, ...]] = ("FL", "FR", "RL", "RR")
VEHICLE: Final = "vehicle"

CORNER_NAMES: Final[dict[Place, str]] = {
    "FL": Text("front left"),
    "FR": Text("front right"),
    "RL": Text("rear left"),
    "RR": Text("rear right"),
    "vehicle": Text("whole vehicle"),
}

SIDE_SIGN: Final[dict[Corner, int]] = {"FL": +1, "FR": -1, "RL": +1, "RR": -1}
"""+1 on the left, -1 on the right: the sign of the wheel's lateral place in ISO 8855 axes."""

AXLE_PARTNER: Final[dict[Corner, Corner]] = {"FL": "FR", "FR": "FL", "RL": "RR", "RR": "RL"}


def is_front(corner: Corner) -> bool:
    """Tell whether the corner is on the front axle."""
    return corner in ("FL", "FR")
