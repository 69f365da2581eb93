"""How the ripple of sound wheels grows with the speed: the road's, or the control unit's own.

Road and rings shake a wheel in proportion to its speed, as far as the control unit lets it through. A unit
that counts pulses in a fixed time errs by a part of a pulse, which is the same in m/s at any speed. Such a
unit also counts for long and so evens out what a wheel does once a turn: a small swing behind it may stand
for a large one of the ring.
"""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.signals.losses import Losses
from triage.signals.residuals import Residuals
from triage.signals.running import middle_value
from triage.signals.vehicle_reference import VehicleReference
from triage.speed_log import FloatArray

SLOWEST_MPS: Final = 2.0
"""Below it pulses come so seldom that any unit's values are coarse."""

SPEED_BINS: Final = 8
ENOUGH_SAMPLES: Final = 20_000
FEWEST_SAMPLES: Final = 300

LEAST_SPREAD: Final = 0.25
"""Standard deviation of the logarithm of the speed below which no growth shows: a minute of motorway."""

OWN_STEPS_BELOW: Final = 0.3
"""Below this growth the ripple is the control unit's own. Nearly all simulated units that count pulses lie
below, and nearly all that time them above, but for those in stop and go or recorded in coarse steps."""


def measure_noise_growth(residuals: Residuals, losses: Losses, reference: VehicleReference) -> float | None:
    """Fit the power of the speed with which the quick ripple of the wheels grows, in m/s.

    Returns
    -------
    float or None
        The middle of the wheels, about 1 where a ripple is a share of the speed and 0 where it is the same
        at any speed; None where the speeds of the drive were too much alike or too few.

    Notes
    -----
    The middle size of the ripple in eight ranges of speed with equally many samples, losses left out, and a
    straight line through their logarithms.
    """
    stride = max(1, reference.reference_mps.size // ENOUGH_SAMPLES)
    speed_mps = reference.reference_mps[::stride]
    fit = np.flatnonzero(speed_mps > SLOWEST_MPS)
    fit = fit[np.argsort(speed_mps[fit], kind="stable")]
    speed_mps, fit = speed_mps[fit], fit * stride
    sizes_mps = np.abs(residuals.fast_ratio[:, fit]) * speed_mps
    judged = np.isfinite(sizes_mps) & ~(losses.low[:, fit] | losses.high[:, fit])
    found = [
        _growth(row[sound], speed_mps[sound])
        for row, sound in zip(sizes_mps, judged, strict=True)
        if np.count_nonzero(sound) >= FEWEST_SAMPLES
    ]
    known = [one for one in found if one is not None]
    return middle_value(np.array(known)) if known else None


def _growth(size_mps: FloatArray, speed_mps: FloatArray) -> float | None:
    """Slope of the logarithm of the middle size over that of the speed, which must rise."""
    if np.std(np.log(speed_mps)) < LEAST_SPREAD:
        return None
    sizes, speeds = (
        np.array([middle_value(part) for part in np.array_split(values, SPEED_BINS)])
        for values in (size_mps, speed_mps)
    )
    if not (sizes > 0.0).all():
        return None
    slope, _ = np.polyfit(np.log(speeds), np.log(sizes), 1)
    return float(slope)


def hides_small_swings(growth: float | None) -> bool:
    """Whether a small swing once a turn, or a small share of the ripple, tells nothing of the ring."""
    return growth is not None and growth < OWN_STEPS_BELOW
