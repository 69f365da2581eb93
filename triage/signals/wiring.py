"""Which wheel feeds which channel: the exchanges worth asking for, and how well curves fit each.

For a rigid car without side slip at the rear axle the four speeds obey, whatever the speed and the curve,

    FR^2 - FL^2 = RR^2 - RL^2                                   (both axles turn about one centre)
    (FL^2 + FR^2 - RL^2 - RR^2) / 2 = (wheelbase / track)^2 (RR - RL)^2   (steered wheels run the longer path)

which follows from ``v_i^2 = v^2 ((1 -+ k t / 2)^2 + front (k l)^2)``. The first does not know the car's
dimensions and is deaf to the slip of a driven axle; the second knows front from rear.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.speed_log import FloatArray
from triage.vehicle import Vehicle

Order = tuple[int, int, int, int]

AS_WIRED: Final[Order] = (0, 1, 2, 3)

EXCHANGES: Final[tuple[tuple[Order, str], ...]] = (
    ((1, 0, 2, 3), "left and right of one axle"),
    ((2, 1, 0, 3), "front left and rear left"),
    ((0, 3, 2, 1), "front right and rear right"),
    ((3, 1, 2, 0), "front left and rear right"),
    ((0, 2, 1, 3), "front right and rear left"),
    ((2, 3, 0, 1), "the front and the rear axle"),
)
"""Channel that holds the true front left, front right, rear left and rear right, and what was exchanged.
Left and right exchanged on both axles are not among them, for that only mirrors the curves; and for the same
reason an exchange on the front axle looks like one on the rear axle."""

SLIP_RATIO: Final = 0.008
"""Longitudinal slip of a driven axle against the other in ordinary curves (judgement)."""

EVEN_RATIO: Final = 0.005
"""What side slip and tyres under load leave of the first equation (judgement)."""

MOST_SIGMA: Final = 12.0
"""Each block of time counts as no more than this many standard deviations wrong, so that one bad moment
cannot decide."""


@dataclass(frozen=True, slots=True)
class CurveFit:
    """How well the curves fit one arrangement.

    Attributes
    ----------
    order : four ints
        Channel of each true wheel.
    misfit : float64[B]
        Squared residuals of both equations in units of their variance, mean of the two, block by block.
    """

    order: Order
    misfit: FloatArray


def fit_curves(
    ratio: FloatArray, order: Order, vehicle: Vehicle, *, noise_ratio: FloatArray | float = 0.0
) -> CurveFit:
    """Hold an arrangement of channels against the two equations.

    Parameters
    ----------
    ratio : float64[4, B]
        Speed of each channel over the mean of all, block by block, constant tyre differences taken out.
    order : four ints
    vehicle : Vehicle
        Its wheelbase over track may be wrong by a fifth; the value within that fits best is taken.
    noise_ratio : float64[B] or float
        Standard deviation of each ratio from recording steps and noise; coarse numbers fit any arrangement.
    """
    front_left, front_right, rear_left, rear_right = ratio[list(order)] ** 2
    across = (np.sqrt(rear_right) - np.sqrt(rear_left)) ** 2
    turning = (front_right - front_left) - (rear_right - rear_left)
    leading = (front_left + front_right - rear_left - rear_right) / 2.0
    usual = vehicle.wheelbase_m / vehicle.track_m
    shape = np.linspace(0.8 * usual, 1.25 * usual, 10)[:, None]
    # Squares double a relative deviation; the part of the track that is not known grows with the curve.
    noise_variance = np.square(noise_ratio)
    even = turning**2 / (8.0 * EVEN_RATIO**2 + 16.0 * noise_variance)
    # The squared left-right difference of the rear axle carries the noise twice, times the difference.
    slip_variance = (2.0 * SLIP_RATIO) ** 2 + (0.1 * usual**2 * across) ** 2
    slip_variance = slip_variance + 4.0 * noise_variance * (1.0 + 2.0 * usual**4 * across)
    uneven = (leading - shape**2 * across) ** 2 / slip_variance
    most = MOST_SIGMA**2
    misfits = (np.minimum(even, most) + np.minimum(uneven, most)) / 2.0
    best: FloatArray = misfits[np.argmin(misfits.mean(axis=1))]
    return CurveFit(order, best)
