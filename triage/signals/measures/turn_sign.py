"""Whether the wheels turn to the side that yaw rate, steering and lateral acceleration say."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.corners import VEHICLE
from triage.signals.analysis import Analysis
from triage.signals.measurement import Measured, NotMeasurable
from triage.signals.measures.building import event_spans, measured, missing, moving_anywhere
from triage.signals.running import block_medians, count_of, runs, zero_for_missing
from triage.speed_log import FloatArray

BLOCK_S: Final = 0.5
SLOWEST_MPS: Final = 2.0
CURVED_RATIO: Final = 0.012
"""Left-right difference of an axle over its speed from which a block belongs to a curve."""

CURVED_SIGMA: Final = 4.0
"""The same in standard deviations of one wheel's noise."""

FEWEST_CURVES: Final = 3
FEWEST_BLOCKS: Final = 20
LEAST_SHOWN: Final = 0.5
"""A channel counts when the four wheels together explain this share of its variance (judgement)."""

NEEDED: Final = (
    "three or more curves, recorded with a yaw rate or steering angle whose positive side is stated"
)


def report_turn_sign(analysis: Analysis, found: SideAgreement | NotMeasurable) -> Measured:
    """Correlation of the wheels' left-right difference with the channels that say which way the car turns.

    Each axle is correlated with each of yaw rate over speed, steering angle and lateral acceleration over
    speed squared, in blocks of 0.5 s; the middle over the channels, the mean of the two axles: near 1 when
    all is wired as it should be, about 0 when one axle contradicts the other, near -1 when left and right are
    exchanged on both. A channel that the reader had to turn round, because the log does not state its
    positive side, does not testify; nor does one that the four wheels together do not follow, whatever their
    order: on a straight road, or beside wheel speeds in coarse steps, it says nothing of the wiring. Valid
    with three curves or more. Standard uncertainty (1 - r^2) / sqrt(curves - 1) of a correlation (textbook),
    whole curves being the independent units (judgement). Signs after ISO 8855: positive to the left.
    """
    if isinstance(found, NotMeasurable):
        return found
    value = (found.front + found.rear) / 2.0
    wide = np.abs(analysis.reference.curvature_radpm) * analysis.vehicle.track_m > CURVED_RATIO
    return measured(
        "turn-sign",
        VEHICLE,
        value,
        found.std,
        unit="",
        count=found.blocks,
        spans=event_spans(analysis, wide) or event_spans(analysis, moving_anywhere(analysis)),
    )


@dataclass(frozen=True, slots=True)
class SideAgreement:
    """Correlation of each axle's left-right difference with the channels of known sign.

    Attributes
    ----------
    front, rear : float
        1 where the axle turns as the channels say, -1 where it turns the other way.
    std : float
        Standard uncertainty of their mean.
    blocks : int
        Curved blocks of half a second.
    """

    front: float
    rear: float
    std: float
    blocks: int


def find_agreement(analysis: Analysis) -> SideAgreement | NotMeasurable:
    """Hold each axle against the channels whose positive side is known."""
    named = _turn_channels(analysis)
    if not named:
        return missing(
            "turn-sign", None, "the log holds no yaw rate, steering or lateral acceleration", NEEDED
        )
    honest = {name: row for name, row in named.items() if name not in analysis.companions.turned}
    if not honest:
        return missing(
            "turn-sign",
            None,
            "the log does not state the positive side of its yaw rate or steering, which opposes the wheels",
            "a note of the side to which the channel is positive, for instance left_positive in its name",
            by_driving=False,
        )
    wheels = _wheel_ratios(analysis)
    axles = wheels[[1, 3]] - wheels[[0, 2]]
    mean_mps = np.maximum(_by_block(analysis, analysis.reference.reference_mps), SLOWEST_MPS)
    noise = block_noise(analysis, mean_mps, _per_block(analysis))
    least = np.maximum(CURVED_RATIO, CURVED_SIGMA * np.nan_to_num(noise))
    curved = np.nan_to_num(np.abs(axles)).max(axis=0) > least
    curves = len(runs(curved))
    blocks = [_by_block(analysis, row) for row in honest.values()]
    shown = [row for row in blocks if _share_shown(wheels, row) > LEAST_SHOWN]
    each = np.array([[_correlation(axle, row) for axle in axles] for row in shown]).reshape(-1, 2)
    each = each[np.isfinite(each).all(axis=1)]
    if curves < FEWEST_CURVES or not each.size:
        return missing("turn-sign", None, "too few curves to compare the sides", NEEDED)
    front, rear = (float(value) for value in np.median(each, axis=0))
    # An axle that goes the other way is as surely known as one that goes along.
    std = np.hypot(1.0 - front**2, 1.0 - rear**2) / 2.0 / np.sqrt(curves - 1.0)
    return SideAgreement(front, rear, max(float(std), 0.03), count_of(curved))


def _turn_channels(analysis: Analysis) -> dict[str, FloatArray]:
    """Every channel that tells the curvature, up to a constant factor, float64[N] each."""
    speed = np.maximum(zero_for_missing(analysis.reference.reference_mps), SLOWEST_MPS)
    beside = analysis.companions
    rows = {
        "yaw_rate_radps": None if beside.yaw_rate_radps is None else beside.yaw_rate_radps / speed,
        "steering_rad": beside.steering_rad,
        "lateral_mps2": None if beside.lateral_mps2 is None else beside.lateral_mps2 / speed**2,
    }
    return {name: row for name, row in rows.items() if row is not None}


def _per_block(analysis: Analysis) -> int:
    return max(1, round(BLOCK_S / max(analysis.clock.period_s, 1e-3)))


def _by_block(analysis: Analysis, row: FloatArray) -> FloatArray:
    return block_medians(row, per_block=_per_block(analysis))[1]


def block_noise(analysis: Analysis, mean_mps: FloatArray, per_block: int) -> FloatArray:
    """Give the standard deviation of a wheel's block median over the speed, float64[B].

    A median does not average out the recording step (evenly distributed: step / sqrt 12); the noise of the
    samples it does, by 1.25 / sqrt(n).
    """
    step = float(np.nanmedian(analysis.clock.resolution_mps)) / np.sqrt(12.0)
    known = analysis.residuals.sigma_ratio[np.isfinite(analysis.residuals.sigma_ratio)]
    sample = float(np.median(known)) if known.size else 0.0
    with np.errstate(invalid="ignore", divide="ignore"):
        noise: FloatArray = np.hypot(step / mean_mps, 1.25 * sample / np.sqrt(per_block))
    return noise


def _wheel_ratios(analysis: Analysis) -> FloatArray:
    """Each wheel over the mean speed of all, float64[4, B]; NaN below walking pace."""
    # Not over the mean of its axle: two wheels of one side, exchanged onto an axle, would hide the curve.
    speed = np.stack([_by_block(analysis, row) for row in analysis.clock.speed_mps])
    mean = speed.mean(axis=0)
    with np.errstate(invalid="ignore", divide="ignore"):
        return np.where(mean > SLOWEST_MPS, speed / mean, np.nan)


def _share_shown(wheels: FloatArray, channel: FloatArray) -> float:
    """Share of a channel's variance that the four wheels explain together, whichever of them is which."""
    good = np.isfinite(wheels).all(axis=0) & np.isfinite(channel) & (np.abs(wheels - 1.0) < 0.2).all(axis=0)
    if np.count_nonzero(good) < FEWEST_BLOCKS:
        return 0.0
    design = np.column_stack((np.ones(np.count_nonzero(good)), wheels[:, good].T))
    wanted = channel[good]
    left = wanted - design @ np.linalg.lstsq(design, wanted, rcond=None)[0]
    spread = float(np.var(wanted))
    return 1.0 - float(np.var(left)) / spread if spread > 0.0 else 0.0


def _correlation(axle: FloatArray, channel: FloatArray) -> float:
    good = np.isfinite(axle) & np.isfinite(channel) & (np.abs(axle) < 0.4)
    if np.count_nonzero(good) < 20:
        return float("nan")
    one, other = axle[good] - np.median(axle[good]), channel[good] - np.median(channel[good])
    spread = float(np.sqrt((one @ one) * (other @ other)))
    return float(one @ other) / spread if spread > 0.0 else float("nan")
