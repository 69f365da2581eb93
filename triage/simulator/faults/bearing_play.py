"""A worn bearing: the hub tilts while this wheel is the loaded outer one, and hardly otherwise."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.simulator.faults.effect import FaultEffect, FaultSite
from triage.simulator.vehicle_path import slow_noise
from triage.speed_log import FloatArray

ALONG_SHARE: Final = 0.3
ALONG_TILTING: Final = (0.7, 1.1)
ALONG_GAP_SHARE: Final = (0.0, 0.5)
ALONG_CAGE_SHARE: Final = (0.0, 1.0)
"""Share of the cars on which a tilting hub moves the encoder along the gap instead of across it, so that
hardly a pulse is lost; what it does there over what it does on the others (judgement)."""

STEADY_SHARE: Final = 0.25
STEADY_TILTING: Final = (0.0, 0.3)
STEADY_SWINGING: Final = (0.0, 0.3)
STEADY_RATTLING: Final = (0.0, 1.2)
STEADY_SHAKING: Final = (0.0, 0.4)
"""Share of the cars on which the raceways are worn evenly: the hub tilts where the load pushes it and stays
there while the wheel turns, so that the gap is wide for as long as the load lasts; what is left of the
ripple, what of the widening swings with the turn, how hard the hub shakes in its play over the ripple of
the others, and how much the gap shakes over its widening (judgement)."""

RATTLE_S: Final = 0.02
"""Time after which a third of the shaking is left (judgement); the noise is drawn as often."""


@dataclass(frozen=True, slots=True)
class _Way:
    """How a hub moves in its play.

    Attributes
    ----------
    ripple : float
        Speed swing once a turn under full load, over that of an ordinary bearing.
    cage : float
        Swing at the cage's order, over that once a turn.
    rattle : float
        Shaking by chance, over the swing of an ordinary bearing.
    gap : float
        Widening of the gap, over that of an ordinary bearing.
    swinging : float
        Part of the widening that comes and goes with the turn, 1 as on an ordinary bearing.
    shaking : float
        Standard deviation of the widening by chance, over its mean.
    """

    ripple: float
    cage: float
    rattle: float = 0.0
    gap: float = 1.0
    swinging: float = 1.0
    shaking: float = 0.0


def strike(site: FaultSite) -> FaultEffect:
    """Ripple of order 1 and of the cage, and a wider gap, in proportion to the outward load."""
    rng = site.rng
    load = _tilt(site)
    angle = 2.0 * np.pi * site.motion.angle_rev[site.row]
    cage_order = float(rng.uniform(0.35, 0.48))
    wobble = np.sin(angle + rng.uniform(0.0, 6.28))
    cage = np.sin(cage_order * angle + rng.uniform(0.0, 6.28))
    # The same play tilts one hub more than another, by the bearing's span and the place of the encoder.
    tilting = float(np.exp(rng.uniform(np.log(0.3), np.log(1.1))))
    ripple = site.onset * 0.005 * 8.0**site.severity * site.spread(0.15)
    usual = _Way(tilting, cage=float(rng.uniform(0.4, 1.0)))
    # From a stream of its own, which leaves the other draws alone.
    kind = rng.spawn(1)[0]
    way = _way(usual, kind, active=site.setup.sensor.kind == "active")
    lead = load * min(ripple * way.ripple, 0.04) / (2.0 * np.pi) * (wobble + way.cage * cage / cage_order)
    lead += load * min(ripple * way.rattle, 0.04) * _shaking_rev(site, kind)
    # The full swing of the gap reaches the sensor's limit at about severity 0.5.
    limit_mm = -np.log(site.setup.sensor.threshold_ratio) * site.setup.encoder.pair_length_mm / (2.0 * np.pi)
    if site.setup.sensor.kind == "passive":
        # Its input circuit follows the mean signal, so that only the swing about the mean counts.
        limit_mm *= 1.6
    swing = (1.0 + way.swinging * (0.3 * wobble + 0.25 * cage - 0.55)) * load
    swing *= 1.0 + way.shaking * slow_noise(load.size, RATTLE_S, kind)
    gap = site.onset * way.gap * limit_mm * (0.5 + 0.75 * site.severity) * site.spread(0.08) * swing
    return FaultEffect(lead_rev=lead, extra_gap_mm=np.maximum(gap, 0.0))


def _way(usual: _Way, kind: np.random.Generator, *, active: bool) -> _Way:
    """Draw how the hub of this car moves."""
    drawn = kind.uniform()
    if drawn < ALONG_SHARE:
        ripple, gap, cage = (
            float(kind.uniform(*limits)) for limits in (ALONG_TILTING, ALONG_GAP_SHARE, ALONG_CAGE_SHARE)
        )
        return _Way(ripple, cage, gap=gap)
    # The input circuit of a passive sensor follows a gap that stays wide.
    if drawn < ALONG_SHARE + STEADY_SHARE and active:
        ripple, swinging, rattle, shaking = (
            float(kind.uniform(*limits))
            for limits in (STEADY_TILTING, STEADY_SWINGING, STEADY_RATTLING, STEADY_SHAKING)
        )
        return _Way(ripple, usual.cage, rattle, swinging=swinging, shaking=shaking)
    return usual


def _tilt(site: FaultSite) -> FloatArray:
    """Tilt of the hub over that at 2 m/s2 of outward load, float64[N]; it bottoms out at 1.3."""
    return np.clip((site.outward_load_mps2 - 0.4) / 1.6, 0.0, 1.3)


def _shaking_rev(site: FaultSite, rng: np.random.Generator) -> FloatArray:
    """Lead of the ring that shakes the speed read by about the speed itself, in revolutions, float64[N]."""
    rate_revps = site.motion.rate_revps[site.row]
    # From one draw to the next the lead changes by somewhat more than its size.
    shaking: FloatArray = RATTLE_S / np.sqrt(2.0) * rate_revps * slow_noise(rate_revps.size, RATTLE_S, rng)
    return shaking
