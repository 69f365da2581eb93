"""A crack, a chip, a weak pole, a bent or a missing tooth: one narrow spot, the same in every turn."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

import numpy as np

from triage.simulator.encoder import Ring
from triage.simulator.faults.effect import FaultEffect, FaultSite
from triage.simulator.sectors import find_sectors
from triage.speed_log import FloatArray

READ_SHARE: Final = 0.3
"""Share of the open cracks whose lip the sensor reads as a border of its own (judgement)."""

BENT_SHARE: Final = 0.1
"""Share of the damaged encoders on which a tooth is bent and nothing missing (judgement)."""


def strike(site: FaultSite) -> FaultEffect:
    """Draw a missing piece, demagnetised poles, an open crack or a bent tooth, one to four poles wide."""
    spot = int(site.rng.integers(site.ring.poles))
    place = (np.arange(site.ring.poles) - spot) % site.ring.poles
    way = site.rng.uniform()
    # From a stream of its own, which leaves the other draws alone.
    bent = site.rng.spawn(1)[0]
    if bent.uniform() < BENT_SHARE:
        return _bent(site, place, bent)
    if way < 0.5:
        return _missing(site, place)
    return _weak(site, place) if way < 0.75 else _cracked(site, place)


def _missing(site: FaultSite, place: np.ndarray[tuple[int], np.dtype[np.int64]]) -> FaultEffect:
    """Up to two pairs gone: teeth of a wheel, or a piece broken out of a ring; less than one when slight."""
    ring = site.ring
    reach_pairs = site.onset * min((0.5 + 1.7 * site.severity) * site.spread(0.1), 2.5)
    # Poles of a pair go together: half a pair gone still loses two edges in every turn.
    gone = np.clip(reach_pairs - place // 2, 0.0, 1.0)
    strength = np.where(gone > 0.6, 0.02, ring.strength * (1.0 - 0.5 * gone))
    shift = _bent_lips(site, place, 2 * int(np.ceil(reach_pairs)))
    return _effect(site, Ring(strength, shift, ring.unsteadiness), gone)


def _weak(site: FaultSite, place: np.ndarray[tuple[int], np.dtype[np.int64]]) -> FaultEffect:
    """One to four poles demagnetised, near the sensor's limit when slight."""
    ring = site.ring
    poles = 1 + int(site.rng.integers(4))
    depth = site.onset * (1.0 - site.setup.sensor.threshold_ratio) * (0.85 + 0.6 * site.severity)
    loss = np.where(place < poles, depth * site.spread(0.06) * site.rng.uniform(0.92, 1.05, ring.poles), 0.0)
    strength = np.maximum(ring.strength - loss, 0.02)
    return _effect(site, Ring(strength, _bent_lips(site, place, poles), ring.unsteadiness), loss)


def _cracked(site: FaultSite, place: np.ndarray[tuple[int], np.dtype[np.int64]]) -> FaultEffect:
    """Open a crack: one pole is longer, the others shorter by their share, those at the crack weaker."""
    ring = site.ring
    opening = site.onset * 0.3 * 6.0**site.severity * site.spread(0.15)
    shift = ring.border_shift_pole + opening * (0.5 - place / ring.poles)
    beside = np.where((place == 0) | (place == ring.poles - 1), 1.0, 0.0)
    loss = site.onset * (1.0 - site.setup.sensor.threshold_ratio) * (0.5 + 0.8 * site.severity) * beside
    strength = np.maximum(ring.strength - loss, 0.02)
    effect = _effect(site, Ring(strength, shift, ring.unsteadiness), np.maximum(loss, opening * beside))
    # From a stream of its own, which leaves the other draws alone.
    reading = site.rng.spawn(1)[0]
    return _read_twice(site, place, effect, reading) if reading.uniform() < READ_SHARE else effect


def _read_twice(
    site: FaultSite,
    place: np.ndarray[tuple[int], np.dtype[np.int64]],
    effect: FaultEffect,
    reading: np.random.Generator,
) -> FaultEffect:
    """Add an edge on the pole behind the crack, in most turns where the damage is clear and else in few."""
    ring, angle_rev = site.ring, site.motion.angle_rev[site.row]
    crack_rev = (int(np.argmin(place)) + reading.uniform(0.2, 0.8)) / ring.poles
    turns = np.arange(np.ceil(angle_rev[0] - crack_rev), np.floor(angle_rev[-1] - crack_rev))
    read = turns[reading.uniform(size=turns.size) < site.onset * min(0.2 + 1.2 * site.severity, 1.0)]
    # While the wheel stands at the crack nothing passes it.
    rising = angle_rev + 1e-9 * np.arange(angle_rev.size)
    passed_s = np.interp(read + crack_rev, rising, site.path.time_s)
    return replace(effect, false_edges_s=passed_s)


def _bent(
    site: FaultSite, place: np.ndarray[tuple[int], np.dtype[np.int64]], rng: np.random.Generator
) -> FaultEffect:
    """Move both borders of one pole the same way, by more than half of it where the damage is blatant."""
    moved_pole = site.onset * (0.25 + 0.6 * site.severity) * rng.uniform(0.85, 1.15) * rng.choice((-1.0, 1.0))
    shift = np.where(place < 2, moved_pole, 0.0)
    return _effect(
        site, replace(site.ring, border_shift_pole=site.ring.border_shift_pole + shift), np.abs(shift)
    )


def _bent_lips(site: FaultSite, place: np.ndarray[tuple[int], np.dtype[np.int64]], reach: int) -> FloatArray:
    """Border shifts with those at both ends of the spot pulled towards it."""
    pull = 0.5 * site.severity * site.rng.uniform(0.3, 1.0, 2)
    ends = np.where(place == reach, pull[0], 0.0) - np.where(place == site.ring.poles - 1, pull[1], 0.0)
    return np.asarray(site.ring.border_shift_pole + ends, dtype=np.float64)


def _effect(site: FaultSite, ring: Ring, harm: FloatArray) -> FaultEffect:
    return FaultEffect(ring=ring, sectors=find_sectors(site.corner, harm))
