"""A worn bearing: the hub tilts while this wheel is the loaded outer one, and hardly otherwise."""

from __future__ import annotations

import numpy as np

from triage.simulator.faults.effect import FaultEffect, FaultSite
from triage.speed_log import FloatArray


def strike(site: FaultSite) -> FaultEffect:
    """Ripple of order 1 and of the cage, and a swinging gap, in proportion to the outward load."""
    rng = site.rng
    load = _tilt(site)
    angle = 2.0 * np.pi * site.motion.angle_rev[site.row]
    cage_order = float(rng.uniform(0.35, 0.48))
    wobble = np.sin(angle + rng.uniform(0.0, 6.28))
    cage = np.sin(cage_order * angle + rng.uniform(0.0, 6.28))
    # The same play tilts one hub more than another, by the bearing's span and the place of the encoder.
    tilting = float(np.exp(rng.uniform(np.log(0.3), np.log(1.1))))
    ripple = site.onset * min(0.005 * 8.0**site.severity * site.spread(0.15) * tilting, 0.04)
    cage_share = float(rng.uniform(0.4, 1.0))
    lead = load * ripple / (2.0 * np.pi) * (wobble + cage_share * cage / cage_order)
    # The full swing of the gap reaches the sensor's limit at about severity 0.5.
    limit_mm = -np.log(site.setup.sensor.threshold_ratio) * site.setup.encoder.pair_length_mm / (2.0 * np.pi)
    if site.setup.sensor.kind == "passive":
        # Its input circuit follows the mean signal, so that only the swing about the mean counts.
        limit_mm *= 1.6
    swing = (0.45 + 0.3 * wobble + 0.25 * cage) * load
    gap = site.onset * limit_mm * (0.5 + 0.75 * site.severity) * site.spread(0.08) * swing
    return FaultEffect(lead_rev=lead, extra_gap_mm=np.maximum(gap, 0.0))


def _tilt(site: FaultSite) -> FloatArray:
    """Tilt of the hub over that at 2 m/s2 of outward load, float64[N]; it bottoms out at 1.3."""
    return np.clip((site.outward_load_mps2 - 0.4) / 1.6, 0.0, 1.3)
