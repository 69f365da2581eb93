"""An encoder with another count than the control unit assumes."""

from __future__ import annotations

import numpy as np

from triage.simulator.encoder import Ring
from triage.simulator.faults.effect import FaultEffect, FaultSite


def strike(site: FaultSite) -> FaultEffect:
    """Fit a ring with a few pole pairs more or fewer; the ratio is exactly that of the counts."""
    ring = site.ring
    if site.severity < 0.05:
        return FaultEffect()
    step = max(round(5.0 * site.severity * site.spread(0.25) * ring.poles / 96.0), 1)
    poles = ring.poles + 2 * step * (1 if site.rng.uniform() < 0.5 else -1)
    place = np.arange(poles) * ring.poles // poles
    # The healthy run-out keeps its share of the revolution: border shifts count in pole lengths.
    return FaultEffect(
        ring=Ring(
            ring.strength[place], ring.border_shift_pole[place] * poles / ring.poles, ring.unsteadiness[place]
        )
    )
