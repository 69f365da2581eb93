"""Whether a wheel is more disturbed when the curve loads it, which points at the bearing."""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.measurement import Measured
from triage.signals.measures.building import event_spans, measured, missing
from triage.signals.outward_load import LOADED_MPS2, outward_load_mps2
from triage.signals.running import close_short_breaks, count_of, run_bounds
from triage.speed_log import BoolArray, FloatArray

SHORTEST_EACH_S: Final = 1.5
LIMIT_SIGMA: Final = 6.0


def measure_side_load_contrast(analysis: Analysis, row: int) -> Measured:
    """Disturbance as outer wheel against inner wheel: 1 only as outer, 0 no difference, -1 only as inner.

    The disturbance is the mean size of the fast deviation in units of a sound wheel's noise, limited to
    6 sigma so that one pothole cannot decide, a lost signal counting as 6. Whole curves are the independent
    units of the uncertainty.
    """
    outward = outward_load_mps2(analysis, row)
    judged = analysis.losses.moving[row] & analysis.clock.fresh[row] | analysis.losses.lost[row]
    as_outer, outer_flag = _per_curve(analysis, row, judged & (outward > LOADED_MPS2))
    as_inner, inner_flag = _per_curve(analysis, row, judged & (outward < -LOADED_MPS2))
    shortest = SHORTEST_EACH_S / analysis.clock.period_s if analysis.clock.period_s else np.inf
    if min(count_of(outer_flag), count_of(inner_flag)) < shortest:
        return missing(
            "side-load-contrast",
            row,
            "not enough curves to both sides with noticeable side load",
            "five steady curves to each side at 40 to 60 km/h, as brisk as the road and the law allow",
        )
    outer, outer_std = as_outer
    inner, inner_std = as_inner
    total = max(outer + inner, 1e-9)
    std = 2.0 * np.hypot(inner * outer_std, outer * inner_std) / total**2
    return measured(
        "side-load-contrast",
        CORNERS[row],
        (outer - inner) / total,
        max(std, 0.03),
        unit="",
        count=count_of(outer_flag | inner_flag),
        spans=event_spans(analysis, close_short_breaks(outer_flag, 5)),
    )


def _disturbance(analysis: Analysis, row: int, samples: NDArray[np.intp]) -> FloatArray:
    sigma = np.maximum(analysis.residuals.sound_sigma_ratio[samples], 1e-4)
    fast = analysis.residuals.fast_ratio[row, samples]
    size: FloatArray = np.minimum(np.abs(fast) / sigma, LIMIT_SIGMA)
    size[analysis.losses.lost[row, samples]] = LIMIT_SIGMA
    return size


def _per_curve(analysis: Analysis, row: int, flag: BoolArray) -> tuple[tuple[float, float], BoolArray]:
    """Mean disturbance over the flagged curves and its standard uncertainty, each curve one unit."""
    used = np.flatnonzero(flag)
    disturbance = _disturbance(analysis, row, used)
    known = np.isfinite(disturbance)
    used, disturbance = used[known], disturbance[known]
    usable = np.zeros(flag.size, dtype=bool)
    usable[used] = True
    if not used.size:
        return (1.0, 1.0), usable
    first, _ = run_bounds(close_short_breaks(usable, 10))
    begin = np.searchsorted(used, first)  # every curve begins and ends with a usable sample
    lengths = np.diff(begin, append=used.size).astype(float)
    means = np.add.reduceat(disturbance, begin) / lengths
    weight = np.minimum(lengths, np.median(lengths) * 3.0)
    mean = float((weight * means).sum() / weight.sum())
    spread = float(np.sqrt((weight * (means - mean) ** 2).sum() / weight.sum())) if first.size > 1 else mean
    return (mean, max(spread / np.sqrt(first.size), 0.1 * mean)), usable
