"""Dirt and metal dust on the encoder: wide, uneven sectors of weak and pulled poles."""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.simulator.encoder import Ring
from triage.simulator.faults.effect import FaultEffect, FaultSite
from triage.simulator.sectors import find_sectors
from triage.speed_log import FloatArray

CAKED_SHARE: Final = 0.3
LOOSE_ROUGHNESS: Final = 0.18
CAKED_ROUGHNESS: Final = 0.06
"""Share of the cars on which the dirt is caked, and how much its thickness differs from pole to pole
(judgement)."""

LUMP_SHARE: Final = 0.08
LUMP_REV: Final = (0.07, 0.14)
"""Share of the cars on which it is one lump, and how much of the ring that covers (judgement)."""

SWARF_SHARE: Final = 0.1
SWARF_PULL: Final = 3.0
SWARF_DEPTH: Final = (0.2, 0.6)
"""Share of the cars on which it is steel, which bends the field more than it weakens it; how much more its
borders are pulled than those under other dirt, and what is left of the weakening (judgement)."""


def strike(site: FaultSite) -> FaultEffect:
    """Cover one to four sectors, mostly 10 to 60 % of the ring; losses vary from turn to turn."""
    ring, rng = site.ring, site.rng
    # From a stream of its own: what kind of dirt it is leaves the other draws alone.
    kind = rng.spawn(1)[0]
    cover = _cover(ring.poles, rng, kind)
    swarf = kind.uniform() < SWARF_SHARE
    margin = 1.0 - site.setup.sensor.threshold_ratio
    # At severity 0.5 the thickest dirt brings the amplitude down to the threshold.
    depth = site.onset * margin * (0.66 + 0.62 * site.severity) * site.spread(0.06)
    depth *= float(kind.uniform(*SWARF_DEPTH)) if swarf else 1.0
    strength = np.maximum(ring.strength - depth * cover, 0.02)
    pull = rng.normal(0.0, 0.25, ring.poles) * site.severity * cover * (SWARF_PULL if swarf else 1.0)
    drag = np.convolve(np.tile(pull, 3), np.ones(5) / 5.0, mode="same")[ring.poles : 2 * ring.poles]
    unsteadiness = ring.unsteadiness + site.onset * 0.09 * cover
    return FaultEffect(
        ring=Ring(strength, ring.border_shift_pole + pull * 0.5 + drag, unsteadiness),
        sectors=find_sectors(site.corner, depth * cover),
    )


def _cover(poles: int, rng: np.random.Generator, kind: np.random.Generator) -> FloatArray:
    """Thickness of the dirt over the ring, 0 to 1, float64[poles].

    Loose dirt thins out and is uneven; a cake of grease and swarf is even and ends sharply.
    """
    caked, lump = kind.uniform(size=2) < (CAKED_SHARE, LUMP_SHARE)
    sectors = int(rng.integers(1, 5))
    widths = rng.dirichlet(np.full(sectors, 3.0)) * max(rng.uniform(0.1, 0.6), 0.06 * sectors)
    widths = kind.uniform(*LUMP_REV, 1) if lump else widths
    cover = np.zeros(poles)
    angle = np.arange(poles) / poles
    for width, centre in zip(widths, rng.uniform(0.0, 1.0, sectors), strict=False):
        away = np.abs((angle - centre + 0.5) % 1.0 - 0.5) / (width / 2.0)
        thinning = np.clip(1.5 * np.cos(np.minimum(away, 1.0) * np.pi / 2.0), 0.0, 1.0)
        cover = np.maximum(cover, (away < 1.0 if caked else thinning) * rng.uniform(0.85, 1.0))
    roughness = rng.normal(0.0, CAKED_ROUGHNESS if caked else LOOSE_ROUGHNESS, poles)
    texture = np.convolve(np.tile(roughness, 3), np.ones(3) / 3.0, mode="same")
    uneven = np.clip(cover * (1.0 + texture[poles : 2 * poles]), 0.0, None)
    return np.asarray(uneven / max(float(uneven.max()), 1e-9), dtype=np.float64)
