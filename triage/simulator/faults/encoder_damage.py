"""A crack, a chip or a missing tooth: one narrow spot, the same loss in every turn."""

from __future__ import annotations

import numpy as np

from triage.simulator.encoder import Ring
from triage.simulator.faults.effect import FaultEffect, FaultSite


def strike(site: FaultSite) -> FaultEffect:
    """Take away one to three pole pairs at one place; less than one at slight severity."""
    ring = site.ring
    reach_pairs = min(3.3 * site.severity, 3.0) * site.spread(0.1)
    spot = int(site.rng.integers(ring.poles))
    place = (np.arange(ring.poles) - spot) % ring.poles
    # Poles of a pair go together: half a pair gone still loses two edges in every turn.
    gone = np.clip(reach_pairs - place // 2, 0.0, 1.0)
    strength = np.where(gone > 0.6, 0.02, ring.strength * (1.0 - 0.5 * gone))
    shift = ring.border_shift_pole.copy()
    lip = int((spot + 2 * np.ceil(reach_pairs)) % ring.poles)
    shift[lip] += 0.5 * site.severity * site.rng.uniform(0.3, 1.0)
    shift[spot - 1] -= 0.5 * site.severity * site.rng.uniform(0.3, 1.0)
    return FaultEffect(ring=Ring(strength, shift, ring.unsteadiness))
