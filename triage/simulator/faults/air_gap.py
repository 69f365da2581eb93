"""Too wide a gap between sensor and encoder: losses all round, or nothing at low speed."""

from __future__ import annotations

import numpy as np

from triage.simulator.faults.effect import FaultEffect, FaultSite
from triage.simulator.vehicle_path import slow_noise
from triage.speed_log import FloatArray
from triage.units import KMH


def strike(site: FaultSite) -> FaultEffect:
    """Widen the gap until poles are lost now and then, or until the cut-in speed has risen."""
    passive = site.setup.sensor.kind == "passive"
    left = _passive_rest(site) if passive else _active_rest(site)
    left = 1.0 + site.onset * (left - 1.0)
    gap_mm = -np.log(left) * site.setup.encoder.pair_length_mm / (2.0 * np.pi)
    gap = np.full(site.path.time_s.size, gap_mm)
    if not passive and site.rng.uniform() < 0.5:
        gap *= _unseated(site)
    return FaultEffect(extra_gap_mm=gap, gap_shake_ratio=1.0 + 2.0 * site.severity)


def _unseated(site: FaultSite) -> FloatArray:
    """Factor on the gap of a sensor that is loose in its seat: some turns lose pulses, others none."""
    wander = slow_noise(site.path.time_s.size, float(site.rng.uniform(0.3, 4.0)), site.rng)
    return np.clip(1.0 + float(site.rng.uniform(0.01, 0.06)) * wander, 0.8, 1.2)


def _active_rest(site: FaultSite) -> float:
    """Amplitude that leaves a pole lost about once in 1000 (slight) to once in 10 (blatant)."""
    deviations = 3.2 - 2.2 * site.severity * site.spread(0.08)
    shake = 2.0 * np.pi / site.setup.encoder.pair_length_mm * site.setup.sensor.vibration_gap_mm
    noise = site.setup.sensor.amplitude_noise_ratio + 0.008
    margin = site.setup.sensor.threshold_ratio * (1.0 + deviations * shake * (1.0 + 2.0 * site.severity))
    return float(min(margin / max(1.0 - deviations * noise, 0.5), 1.0))


def _passive_rest(site: FaultSite) -> float:
    cut_off_mps = 5.0 * 6.0**site.severity * site.spread(0.12) * KMH
    return float(min(site.setup.sensor.cut_in_mps / cut_off_mps, 1.0))
