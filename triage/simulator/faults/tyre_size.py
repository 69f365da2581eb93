"""Another rolling circumference: spare wheel, wear or low pressure."""

from __future__ import annotations

import numpy as np

from triage.simulator.faults.effect import FaultEffect, FaultSite


def strike(site: FaultSite) -> FaultEffect:
    """Change the circumference by 0.6 to 6 %, slightly depending on speed and load."""
    size = site.onset * min(0.006 * 10.0**site.severity * site.spread(0.15), 0.06)
    flat = site.rng.uniform() < 0.35
    sign = -1.0 if flat or site.rng.uniform() < 0.5 else 1.0
    size = _off_the_counts(size, sign, site.setup.encoder.pole_pairs)
    circumference = np.full(site.path.time_s.size, 1.0 + sign * size)
    if flat:
        # A soft tyre is flattened by side load and grows with speed (centrifugal), some tenths of its offset.
        circumference += size * (
            0.25 * (site.path.speed_mps / 30.0) ** 2 - 0.1 * site.outward_load_mps2 / 3.0
        )
    return FaultEffect(rate_ratio=1.0 / circumference)


def _off_the_counts(size: float, sign: float, pairs: int) -> float:
    """Step aside from ratios that a wrong encoder count would give; the two cannot be told apart."""
    counts = pairs * (1.0 / (1.0 + sign * size) - 1.0)
    nearest = round(counts)
    if nearest == 0 or abs(counts - nearest) > 0.15:
        return size
    moved = nearest + (0.25 if counts >= nearest else -0.25)
    return float(abs(1.0 / (1.0 + moved / pairs) - 1.0))
