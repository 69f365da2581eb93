"""A worn bearing: the hub tilts while this wheel is the loaded outer one, and hardly otherwise."""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.simulator.faults.effect import FaultEffect, FaultSite
from triage.speed_log import FloatArray

ALONG_SHARE: Final = 0.3
ALONG_TILTING: Final = (0.7, 1.1)
ALONG_GAP_SHARE: Final = (0.0, 0.5)
ALONG_CAGE_SHARE: Final = (0.0, 1.0)
"""Share of the cars on which a tilting hub moves the encoder along the gap instead of across it, so that
hardly a pulse is lost; what it does there over what it does on the others (judgement)."""


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
    ripple_spread, gap_share = site.spread(0.15), 1.0
    cage_share = float(rng.uniform(0.4, 1.0))
    # From a stream of its own, which leaves the other draws alone.
    along = rng.spawn(1)[0]
    if along.uniform() < ALONG_SHARE:
        tilting, gap_share, cage_share = (
            float(along.uniform(*limits)) for limits in (ALONG_TILTING, ALONG_GAP_SHARE, ALONG_CAGE_SHARE)
        )
    ripple = site.onset * min(0.005 * 8.0**site.severity * ripple_spread * tilting, 0.04)
    lead = load * ripple / (2.0 * np.pi) * (wobble + cage_share * cage / cage_order)
    # The full swing of the gap reaches the sensor's limit at about severity 0.5.
    limit_mm = -np.log(site.setup.sensor.threshold_ratio) * site.setup.encoder.pair_length_mm / (2.0 * np.pi)
    if site.setup.sensor.kind == "passive":
        # Its input circuit follows the mean signal, so that only the swing about the mean counts.
        limit_mm *= 1.6
    swing = (0.45 + 0.3 * wobble + 0.25 * cage) * load
    gap = site.onset * gap_share * limit_mm * (0.5 + 0.75 * site.severity) * site.spread(0.08) * swing
    return FaultEffect(lead_rev=lead, extra_gap_mm=np.maximum(gap, 0.0))


def _tilt(site: FaultSite) -> FloatArray:
    """Tilt of the hub over that at 2 m/s2 of outward load, float64[N]; it bottoms out at 1.3."""
    return np.clip((site.outward_load_mps2 - 0.4) / 1.6, 0.0, 1.3)
