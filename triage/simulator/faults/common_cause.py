"""Supply, control unit or bus: all wheels at the same instant."""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.simulator.control_unit import Upset, UpsetKind
from triage.simulator.faults.effect import FaultEffect, FaultSite
from triage.simulator.vehicle_path import GRID_S

_WAYS: Final[tuple[tuple[UpsetKind, ...], ...]] = (
    ("zero",),
    ("zero", "mark"),
    ("zero", "jump"),
    ("freeze", "zero"),
)


def strike(site: FaultSite) -> FaultEffect:
    """Let the unit reset, freeze, jump or mark its values, for 40 ms to 1.5 s at a time."""
    if site.severity <= 0.0:
        return FaultEffect()
    per_min = 2.0 * 9.0**site.severity * site.onset * site.spread(0.2)
    number = max(int(site.rng.poisson(per_min * site.duration_s / 60.0)), 1)
    moving = np.flatnonzero(site.path.speed_mps > 2.0)
    if moving.size == 0:
        return FaultEffect()
    kinds = _WAYS[int(site.rng.integers(len(_WAYS)))]
    upsets = []
    for place in np.sort(site.rng.choice(moving, number)):
        length = float(0.04 * 37.0 ** site.rng.uniform())
        kind = kinds[int(site.rng.integers(len(kinds)))]
        ratio = float(site.rng.uniform(-0.6, 0.6))
        upsets.append(Upset(float(place) * GRID_S, float(place) * GRID_S + length, kind, ratio))
    return FaultEffect(upsets=tuple(upsets), spans_s=tuple((one.start_s, one.stop_s) for one in upsets))
