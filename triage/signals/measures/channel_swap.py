"""Whether the curves make more sense with two wheels exchanged."""

from __future__ import annotations

from itertools import combinations
from typing import Final

import numpy as np

from triage.corners import VEHICLE
from triage.signals.analysis import Analysis
from triage.signals.measurement import Measured
from triage.signals.measures.building import event_spans, measured, missing, moving_anywhere
from triage.signals.running import block_medians
from triage.signals.vehicle_reference import wheel_speed_factors
from triage.speed_log import FloatArray

BLOCK_S: Final = 0.5
FEWEST_BLOCKS: Final = 10
ENOUGH_BLOCKS: Final = 1500
"""More blocks than these settle nothing more; of a longer log only every second, third and so on is taken."""

CURVED: Final = 0.01
"""Left-right difference over speed from which a block counts as curved."""


def measure_swap_gain(analysis: Analysis) -> Measured:
    """How much better a rigid car on a curve fits with two channels exchanged, in dB of the residual power.

    Every pair is tried. For each the curvature that fits best is taken block by block, so neither yaw rate
    nor steering angle is needed. An exchange of both axles' sides at once only mirrors the curve and is not
    seen.
    """
    ratio = _curved_blocks(analysis)
    if ratio.shape[1] < FEWEST_BLOCKS:
        return missing(
            "swap-gain",
            None,
            "too few curves to check the wheels against each other",
            "tight curves to both sides",
        )
    usual = _misfit(ratio, analysis)
    best = min(
        _misfit(_exchanged(ratio, first, second), analysis) for first, second in combinations(range(4), 2)
    )
    gain_db = 10.0 * np.log10(usual / best)
    curved = np.abs(analysis.reference.curvature_radpm) * analysis.vehicle.track_m > CURVED
    return measured(
        "swap-gain",
        VEHICLE,
        gain_db,
        4.3 * np.sqrt(2.0 / ratio.shape[1]) + 0.3,
        unit="dB",
        count=ratio.shape[1],
        spans=event_spans(analysis, curved) or event_spans(analysis, moving_anywhere(analysis)),
    )


def _curved_blocks(analysis: Analysis) -> FloatArray:
    """Wheel over mean speed in the curved blocks, the straight-running offset taken out, float64[4, B]."""
    clock, per_block = analysis.clock, max(1, round(BLOCK_S / max(analysis.clock.period_s, 1e-3)))
    speed = np.stack([block_medians(row, per_block=per_block)[1] for row in clock.speed_mps])
    scale = 1.0 + np.nan_to_num(analysis.reference.scale_ratio)
    with np.errstate(invalid="ignore", divide="ignore"):
        corrected = speed / np.where(np.abs(scale - 1.0) < 0.15, scale, 1.0)[:, None]
        mean = corrected.mean(axis=0)
        ratio = corrected / mean
    curved = (
        np.isfinite(ratio).all(axis=0)
        & (mean > 2.0)
        & (np.ptp(ratio, axis=0) > CURVED)
        & (np.ptp(ratio, axis=0) < 0.4)
    )
    chosen: FloatArray = ratio[:, curved]
    return chosen[:, :: max(1, chosen.shape[1] // ENOUGH_BLOCKS)]


def _exchanged(ratio: FloatArray, first: int, second: int) -> FloatArray:
    order = list(range(4))
    order[first], order[second] = order[second], order[first]
    return ratio[order]


def _misfit(ratio: FloatArray, analysis: Analysis) -> float:
    """Mean square of what the best curve leaves, each block limited so that one bad moment cannot decide."""
    grid = np.linspace(-0.25, 0.25, 201)
    factors = wheel_speed_factors(grid, analysis.vehicle)
    factors = factors / factors.mean(axis=0)
    error = ((ratio[:, :, None] - factors[:, None, :]) ** 2).sum(axis=0).min(axis=1)
    floor = 1e-6
    return float(np.minimum(error, 0.01).mean() + floor)
