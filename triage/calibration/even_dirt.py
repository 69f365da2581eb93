"""Dirt as even as it gets: one sector with sharp ends, every pole of which is missed as often as the others.

Most of the simulator's dirt is uneven and thins out, so that how far it reaches is a matter of definition.
Here the width is one number, and a ring map that only knows the other kind would miss it.
"""

from __future__ import annotations

from typing import Final

import numpy as np
from scipy.special import ndtri

from triage.simulator.encoder import Ring
from triage.simulator.faults import FaultEffect, FaultModel, FaultSite
from triage.simulator.sectors import Sector

WIDTHS_REV: Final = (0.05, 0.4)
LOST_RATIOS: Final = (0.05, 0.15, 0.4, 0.8)
PULLS_POLE: Final = (0.0, 0.1)
"""Widths of the sector, shares of its poles that an active sensor misses, and scatter of its pole borders. A
passive sensor, whose threshold follows the mean signal, misses fewer."""

UNSTEADINESS: Final = 0.09


def strike(site: FaultSite) -> FaultEffect:
    """Cover one sector evenly, from slightly to heavily, whatever the severity."""
    ring, sensor, rng = site.ring, site.setup.sensor, site.rng
    size = round(rng.uniform(*WIDTHS_REV) * ring.poles)
    lost_ratio, pull = rng.choice(LOST_RATIOS), rng.choice(PULLS_POLE)
    first = int(rng.integers(ring.poles))
    struck = (first + np.arange(size)) % ring.poles
    strength, shift, unsteadiness = (
        values.copy() for values in (ring.strength, ring.border_shift_pole, ring.unsteadiness)
    )
    spread = np.hypot(sensor.amplitude_noise_ratio, UNSTEADINESS)
    strength[struck] = sensor.threshold_ratio - ndtri(lost_ratio) * spread
    unsteadiness[struck] = UNSTEADINESS
    shift[struck] += pull * rng.normal(size=size)
    centre_rev = (first + size / 2.0) / ring.poles % 1.0
    return FaultEffect(
        ring=Ring(strength, shift, unsteadiness),
        sectors=(Sector(site.corner, centre_rev, size / ring.poles, float(1.0 - strength[first])),),
    )


EVEN_DIRT: Final = FaultModel("even dirt", "corner", strike)
