"""Two wheels' leads or channels exchanged."""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.simulator.faults.effect import FaultEffect, FaultSite, Wiring

_EXCHANGES: Final[tuple[tuple[float, Wiring], ...]] = (
    (0.28, (1, 0, 2, 3)),
    (0.28, (0, 1, 3, 2)),
    (0.12, (1, 0, 3, 2)),
    (0.09, (2, 1, 0, 3)),
    (0.09, (0, 3, 2, 1)),
    (0.05, (2, 3, 0, 1)),
    (0.045, (3, 1, 2, 0)),
    (0.045, (0, 2, 1, 3)),
)
"""How often which wheels are exchanged: mostly those of one axle, whose leads meet (judgement)."""


def strike(site: FaultSite) -> FaultEffect:
    """Exchange the wheels of an axle, of both, of a side, of a diagonal, or front with rear."""
    if site.severity <= 0.0:
        return FaultEffect()
    shares = np.array([share for share, _ in _EXCHANGES])
    chosen = int(site.rng.choice(len(_EXCHANGES), p=shares / shares.sum()))
    return FaultEffect(wiring=_EXCHANGES[chosen][1])
