"""What one spot of a ring makes of the mean speed over a turn, behind control units of many kinds.

A pulse that is missing makes the speed read low as long as it lies in what the unit averages over. A pulse
that comes late or early does so only while it stands at an end of that: once one way, and the other way when
it leaves. A filter of first order drags both on. Whatever the unit does, nothing shows before it happens.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.signals.ring_response import RING_BINS
from triage.speed_log import FloatArray

ORDERS: Final = np.arange(RING_BINS // 2 + 1)

WINDOWS_REV: Final = tuple(float(one) for one in np.geomspace(0.015, 0.7, 22))
"""Part of a turn over which the unit averages."""

FILTERS_REV: Final = (0.0, 0.02, 0.04, 0.07, 0.11, 0.16, 0.23, 0.33, 0.45)
"""Time constant of the filter, as a part of a turn."""

APART_REV: Final = tuple(float(one) for one in np.geomspace(0.015, 0.5, 14))
LOBES_REV: Final = (0.01, 0.02, 0.04, 0.07, 0.1)
"""How long a moved pulse shows at either end of what is averaged, and how far these are apart."""


@dataclass(frozen=True, slots=True)
class SpotShapes:
    """Shapes of one kind, all for a spot at angle 0.

    Attributes
    ----------
    spectrum : complex128[K, 49]
        Orders 0 to 48 of every shape of unit depth, as :func:`numpy.fft.rfft` of 96 bins over 96 has them.
    window_rev : float64[K]
        What the unit averages over.
    area_rev : float64[K]
        Integral of the shape over the turn.
    """

    spectrum: NDArray[np.complex128]
    window_rev: FloatArray
    area_rev: FloatArray


def missing_pulse_shapes(cycle_rev: float) -> SpotShapes:
    """Shapes of a spot that loses pulses.

    Parameters
    ----------
    cycle_rev : float
        Angle turned in a cycle of the unit.

    Returns
    -------
    SpotShapes
        One for each window and filter.
    """
    window = np.repeat(WINDOWS_REV, len(FILTERS_REV))
    dragged = np.tile(_unit(cycle_rev), (len(WINDOWS_REV), 1))
    return SpotShapes(_box(window) * dragged, window, window)


def moved_pulse_shapes(cycle_rev: float) -> SpotShapes:
    """Shapes of a pulse out of its place, reading high first; turned over, of one that reads low first."""
    pairs = [(apart, lobe) for apart in APART_REV for lobe in LOBES_REV if lobe <= apart]
    apart, lobe = (np.repeat(side, len(FILTERS_REV)) for side in np.array(pairs).T)
    back = 1.0 - np.exp(-2j * np.pi * apart[:, None] * ORDERS)
    dragged = np.tile(_unit(cycle_rev), (len(pairs), 1))
    return SpotShapes(_box(lobe) * back * dragged, apart, np.zeros(apart.size))


def _box(width_rev: FloatArray) -> NDArray[np.complex128]:
    """Orders of a stretch of depth one that begins at angle 0, complex128[K, 49]."""
    around = -2j * np.pi * ORDERS[1:]
    varying = np.expm1(width_rev[:, None] * around) / around
    orders: NDArray[np.complex128] = np.concatenate((width_rev[:, None], varying), axis=1)
    return orders


def _unit(cycle_rev: float) -> NDArray[np.complex128]:
    """Orders of what unit, recorder and bins make of a sudden change, complex128[F, 49], by filter.

    A change waits for the end of the cycle, evenly spread over it. The filter takes its first step at once,
    not a time constant later: ``y += g (x - y)`` once a cycle. A bin holds the mean over its width.
    """
    wait = _box(np.array([cycle_rev]))[0] / cycle_rev
    bins = np.sinc(ORDERS / RING_BINS) * np.exp(1j * np.pi * ORDERS / RING_BINS)
    left = np.array([np.exp(-cycle_rev / one) if one else 0.0 for one in FILTERS_REV])[:, None]
    step = (1.0 - left) / (1.0 - left * np.exp(-2j * np.pi * cycle_rev * ORDERS))
    orders: NDArray[np.complex128] = step * wait * bins
    return orders
