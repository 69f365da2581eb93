"""Two wheels' leads or channels exchanged."""

from __future__ import annotations

from typing import Final

from triage.simulator.faults.effect import FaultEffect, FaultSite

_EXCHANGES: Final = ((1, 0, 2, 3), (0, 1, 3, 2), (1, 0, 3, 2), (2, 1, 0, 3), (0, 3, 2, 1))


def strike(site: FaultSite) -> FaultEffect:
    """Exchange left and right on an axle, on both, or front and rear on a side."""
    if site.severity <= 0.0:
        return FaultEffect()
    return FaultEffect(wiring=_EXCHANGES[int(site.rng.integers(len(_EXCHANGES)))])
