"""Too wide a gap between sensor and encoder: losses all round, or nothing at low speed."""

from __future__ import annotations

import numpy as np

from triage.simulator.faults.effect import FaultEffect, FaultSite
from triage.units import KMH


def strike(site: FaultSite) -> FaultEffect:
    """Widen the gap until poles are lost now and then, or until the cut-in speed has risen."""
    left = _passive_rest(site) if site.setup.sensor.kind == "passive" else _active_rest(site)
    left = 1.0 + site.onset * (left - 1.0)
    gap_mm = -np.log(left) * site.setup.encoder.pair_length_mm / (2.0 * np.pi)
    return FaultEffect(
        extra_gap_mm=np.full(site.path.time_s.size, gap_mm), gap_shake_ratio=1.0 + 2.0 * site.severity
    )


def _active_rest(site: FaultSite) -> float:
    """Amplitude that leaves a pole lost once in 10^4 (slight) to once in 10 (blatant)."""
    deviations = 3.9 - 2.9 * site.severity * site.spread(0.08)
    shake = 2.0 * np.pi / site.setup.encoder.pair_length_mm * site.setup.sensor.vibration_gap_mm
    noise = site.setup.sensor.amplitude_noise_ratio + 0.008
    margin = site.setup.sensor.threshold_ratio * (1.0 + deviations * shake * (1.0 + 2.0 * site.severity))
    return float(min(margin / max(1.0 - deviations * noise, 0.5), 1.0))


def _passive_rest(site: FaultSite) -> float:
    cut_off_mps = 5.0 * 6.0**site.severity * site.spread(0.12) * KMH
    return float(min(site.setup.sensor.cut_in_mps / cut_off_mps, 1.0))
