"""Connector, lead or chafed wire: short random losses in clusters, with bumps or steering lock."""

from __future__ import annotations

import numpy as np

from triage.corners import is_front
from triage.simulator.faults.effect import FaultEffect, FaultSite, as_spans
from triage.simulator.vehicle_path import GRID_S
from triage.speed_log import FloatArray


def strike(site: FaultSite) -> FaultEffect:
    """Open the circuit for 5 ms to 1 s at a time, several times in a row."""
    if site.severity <= 0.0:
        return FaultEffect()
    per_min = 1.2 * 12.0**site.severity * site.onset * site.spread(0.2)
    number = max(int(site.rng.poisson(per_min * site.duration_s / 60.0)), 1)
    usual_s = 0.05 * 3.0 ** site.rng.uniform(-1.0, 1.0)
    spans = [_cluster(site, start, usual_s) for start in _triggers(site, number)]
    merged = np.concatenate(spans)
    merged = merged[np.argsort(merged[:, 0], kind="stable")]
    return FaultEffect(open_spans_s=merged, spans_s=as_spans(merged))


def _triggers(site: FaultSite, number: int) -> FloatArray:
    """Moments of strong bumps or, at a steered wheel, of steering lock, whichever tears at this lead."""
    moving = site.path.speed_mps > 1.0
    by_steering = site.rng.uniform() < 0.5 and is_front(site.corner)
    if not by_steering:
        pull = site.motion.shake[site.row] ** 3
    else:
        pull = np.abs(site.path.curvature_radpm) ** 2 * site.path.speed_mps
    weight = np.cumsum(np.where(moving, pull + 1e-9, 0.0))
    if weight[-1] <= 0.0:
        return site.rng.uniform(0.0, site.duration_s, number)
    chosen = np.searchsorted(weight, site.rng.uniform(0.0, weight[-1], number))
    return np.asarray(np.sort(chosen) * GRID_S, dtype=np.float64)


def _cluster(site: FaultSite, start_s: float, usual_s: float) -> FloatArray:
    losses = 1 + int(site.rng.poisson(1.0 + 3.0 * site.severity))
    pauses = site.rng.exponential(0.25, losses)
    lengths = np.clip(usual_s * np.exp(site.rng.normal(0.0, 0.9, losses)), 0.005, 1.0)
    begin = start_s + np.cumsum(pauses) - pauses[0] + np.cumsum(lengths) - lengths
    return np.stack([begin, begin + lengths], axis=1)
