"""The sensor itself: dead, dying as it warms, noisy, or unsteady in the moment at which it switches."""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.simulator.faults.effect import FaultEffect, FaultSite, as_spans
from triage.simulator.vehicle_path import GRID_S
from triage.speed_log import FloatArray

_HELD_SHARE: Final = 0.2
"""Share of silent sensors whose unit keeps the last value (judgement)."""


def strike(site: FaultSite) -> FaultEffect:
    """Draw one of the five ways in which a sensor fails."""
    if site.severity <= 0.0:
        return FaultEffect()
    ways = (_dead, _fading, _noisy, _always_noisy, _unsteady)
    return ways[int(site.rng.choice(len(ways), p=(0.25, 0.31, 0.18, 0.13, 0.13)))](site)


def _dead(site: FaultSite) -> FaultEffect:
    """No signal from some moment on; from the beginning at full severity."""
    share = min(site.severity * 1.1 * site.spread(0.15), 1.0)
    begin = 0.0 if share > 0.85 else site.duration_s * (1.0 - share)
    return _silent(site, np.array([[begin, site.duration_s + 1.0]]))


def _fading(site: FaultSite) -> FaultEffect:
    """Gone for 1 to 20 s at a time, more often and longer as it warms."""
    number = max(round(site.severity * 7.0 * site.spread(0.2) * max(site.duration_s / 180.0, 0.4)), 1)
    begin = np.sort(site.duration_s * np.sqrt(site.rng.uniform(0.05, 1.0, number)))
    warmth = begin / site.duration_s
    length = np.clip(
        1.0 * 12.0 ** (site.rng.uniform(0.0, 0.6, number) + 0.5 * warmth * site.severity), 1.0, 20.0
    )
    begin = _moved_into_motion(site, begin)
    return _silent(site, np.stack([begin, begin + length], axis=1))


def _moved_into_motion(site: FaultSite, begin_s: FloatArray) -> FloatArray:
    # A sensor that dies at standstill would leave nothing in the log.
    moving = np.flatnonzero(site.path.speed_mps > 2.0) * GRID_S
    if moving.size == 0:
        return begin_s
    found = moving[np.minimum(np.searchsorted(moving, begin_s), moving.size - 1)]
    return np.asarray(found, dtype=np.float64)


def _noisy(site: FaultSite) -> FaultEffect:
    """Add false pulses in bursts of 20 to 300 ms."""
    per_min = 4.0 * 8.0**site.severity * site.onset * site.spread(0.25)
    number = max(int(site.rng.poisson(per_min * site.duration_s / 60.0)), 1)
    begin = np.sort(site.rng.uniform(0.0, site.duration_s, number))
    begin = _moved_into_motion(site, begin)
    length = 0.02 * 15.0 ** site.rng.uniform(0.0, 1.0, number)
    rate = site.setup.encoder.edges_per_rev * site.motion.rate_revps[site.row]
    edges = []
    for start, span in zip(begin, length, strict=True):
        true_rate = rate[min(int(start / GRID_S), rate.size - 1)]
        extra = int(site.rng.poisson(max(true_rate, 40.0) * span * site.rng.uniform(0.15, 0.8))) + 2
        edges.append(np.sort(site.rng.uniform(start, start + span, extra)))
    spans = np.stack([begin, begin + length], axis=1)
    return FaultEffect(false_edges_s=np.sort(np.concatenate(edges)), spans_s=as_spans(spans))


def _always_noisy(site: FaultSite) -> FaultEffect:
    """Add false pulses at any time, in proportion to the true ones, and a few at standstill."""
    share = 0.001 * 60.0**site.severity * site.onset * site.spread(0.25)
    true_hz = site.setup.encoder.edges_per_rev * site.motion.rate_revps[site.row]
    expected = np.cumsum(share * true_hz + 2.0 * site.severity) * GRID_S
    number = int(site.rng.poisson(expected[-1]))
    places = np.searchsorted(expected, np.sort(site.rng.uniform(0.0, expected[-1], number)))
    return FaultEffect(false_edges_s=np.sort((places + site.rng.uniform(size=number)) * GRID_S))


def _unsteady(site: FaultSite) -> FaultEffect:
    """Switch early or late by chance, by about the same length at any speed or by one that grows with it.

    At walking pace rather early: an edge comes the first time that the shaken ring reaches its place.
    """
    poles = 0.06 * 8.0**site.severity * site.onset * site.spread(0.2)
    faster = np.maximum(site.path.speed_mps, 1.0) / 10.0
    size = poles / site.ring.poles * faster ** site.rng.uniform(0.0, 1.0)
    return FaultEffect(lead_rev=size * site.rng.normal(size=size.size))


def _silent(site: FaultSite, spans_s: FloatArray) -> FaultEffect:
    """No edges come; most units then put out 0 in the end, some go on with the last value."""
    if site.rng.uniform() < _HELD_SHARE:
        return FaultEffect(frozen_spans_s=spans_s, spans_s=as_spans(spans_s))
    return FaultEffect(open_spans_s=spans_s, spans_s=as_spans(spans_s))
