"""An eccentric or tilted encoder: a clean sine once per revolution."""

from __future__ import annotations

import numpy as np

from triage.simulator.encoder import Ring, runout_shift_pole
from triage.simulator.faults.effect import FaultEffect, FaultSite


def strike(site: FaultSite) -> FaultEffect:
    """Let the read speed swing by 0.4 to 3 % at order 1 and a little at order 2."""
    ring, rng = site.ring, site.rng
    ripple = site.onset * min(0.003 * 10.0**site.severity * site.spread(0.15), 0.035)
    phase = float(rng.uniform())
    shift = runout_shift_pole(ring.poles, ripple, phase_rev=phase)
    doubled = ripple * float(rng.uniform(0.08, 0.2))
    second = runout_shift_pole(ring.poles, doubled, phase_rev=float(rng.uniform()), order=2)
    angle = 2.0 * np.pi * (np.arange(ring.poles) / ring.poles - phase)
    # A tilted ring comes nearer and farther too; with an eccentric one the gap changes less.
    swing = min(float(rng.uniform(2.0, 12.0)) * ripple, 0.35)
    strength = ring.strength * (1.0 - swing * np.cos(angle))
    return FaultEffect(ring=Ring(strength, ring.border_shift_pole + shift + second, ring.unsteadiness))
