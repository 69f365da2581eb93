"""What a wheel sends to the control unit: its ring passes the sensor, and the lead carries the edges."""

from __future__ import annotations

import numpy as np

from triage.simulator.encoder import Ring, pass_poles
from triage.simulator.equipment import Setup
from triage.simulator.faults import FaultEffect
from triage.simulator.sensor import SensorConditions, sense_edges
from triage.speed_log import FloatArray


def send_edges(
    setup: Setup,
    ring: Ring,
    rotation: tuple[FloatArray, FloatArray],
    effect: FaultEffect,
    *,
    shake: FloatArray,
    rng: np.random.Generator,
) -> FloatArray:
    """Return the edges that reach the control unit from one wheel, in seconds, float64[M].

    Parameters
    ----------
    setup : Setup
    ring : Ring
        The sound ring; that of the effect takes its place.
    rotation : (float64[N], float64[N])
        Turns a second and angle in turns, with the wheel's own tyre.
    effect : FaultEffect
    shake : float64[N]
        Of the sensor, from the road.
    rng : Generator
        For the sensor's noise.
    """
    rate, angle = rotation
    ring = ring if effect.ring is None else effect.ring
    if effect.lead_rev is not None:
        # The tilt carries the ring ahead or back; it still never runs backwards.
        angle = np.maximum.accumulate(angle + effect.lead_rev)
    conditions = SensorConditions(
        extra_gap_mm=np.zeros(rate.size) if effect.extra_gap_mm is None else effect.extra_gap_mm,
        shake=shake * effect.gap_shake_ratio,
        speed_mps=rate * setup.car.circumference_m,
        pair_length_mm=setup.encoder.pair_length_mm,
    )
    edges = sense_edges(
        pass_poles(angle, rate, ring),
        ring,
        sensor=setup.sensor,
        conditions=conditions,
        both_edges=setup.encoder.both_edges,
        rng=rng,
    )
    return _through_the_lead(edges, effect)


def _through_the_lead(edges_s: FloatArray, effect: FaultEffect) -> FloatArray:
    if effect.false_edges_s is not None:
        edges_s = np.sort(np.concatenate((edges_s, effect.false_edges_s)))
    # Nothing comes through an open lead, nor from a sensor whose last value the unit goes on with.
    keep = np.ones(edges_s.size, dtype=np.bool_)
    for spans in (effect.open_spans_s, effect.frozen_spans_s):
        for start, stop in () if spans is None else spans:
            keep[np.searchsorted(edges_s, start) : np.searchsorted(edges_s, stop)] = False
    return edges_s[keep]
