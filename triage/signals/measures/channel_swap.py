"""Whether the curves make more sense with two wheels exchanged, and which two."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.corners import VEHICLE
from triage.signals.analysis import Analysis
from triage.signals.measurement import Measured, NotMeasurable
from triage.signals.measures.building import event_spans, measured, missing, moving_anywhere
from triage.signals.measures.road_order import CLEAR_SIGMA, RoadOrder
from triage.signals.measures.turn_sign import SideAgreement, block_noise
from triage.signals.running import block_medians, count_of
from triage.signals.wiring import AS_WIRED, EXCHANGES, CurveFit, Order, fit_curves
from triage.speed_log import FloatArray

BLOCK_S: Final = 0.5
FEWEST_BLOCKS: Final = 10
ENOUGH_BLOCKS: Final = 1500
"""More blocks than these settle nothing more; of a longer log only every second, third and so on is taken."""

CURVED: Final = 0.01
CURVED_SIGMA: Final = 5.0
"""Difference of the wheels over speed from which a block counts as curved, and the same in standard
deviations of one wheel's noise: the range of four normal numbers exceeds five in one of 430 blocks
(studentized range, textbook)."""

UNKNOWN_TYRES: Final = 0.015
"""Standard deviation of a wheel's speed from that of the car where the tyres of the axles may differ by up to
3 % (judgement): taken for curves, such tyres looked like exchanged wheels."""

HARD_MPS2: Final = 2.5
"""Beyond this acceleration tyres slip by more than a curve shows."""

LEAST_MISFIT: Final = 0.05
"""Fits better than this are equally good."""

PARTS: Final = 10
CLEAR_GAIN_DB: Final = 5.0
CLEAR_AGREEMENT: Final = 0.5

ONE_AXLE: Final[Order] = EXCHANGES[0][0]

FRONT_AXLE: Final = "front left and front right"
REAR_AXLE: Final = "rear left and rear right"
BOTH_AXLES: Final = "left and right of both axles"
PAIRS: Final = (
    *(name for _, name in EXCHANGES),
    FRONT_AXLE,
    REAR_AXLE,
    BOTH_AXLES,
)
"""What ``swap-pair`` counts; the bands of its row in the rule book have these names."""


def report_swap_gain(analysis: Analysis, curves: CurveEvidence | None) -> Measured:
    """How much better a rigid car on a curve fits with channels exchanged, in dB of the mean misfit.

    Ten times the logarithm of the misfit as wired over the least misfit of all exchanges of two wheels or of
    the two axles (equations of :mod:`triage.signals.wiring`); negative for a car wired as it should be.
    Coarse recording steps and noise are part of the misfit to be expected, and only curves that stand out of
    them are taken. Neither yaw rate nor steering is needed. Left and right exchanged on both axles at once
    only mirror the curves and are not seen here. Valid for curves of some 50 m radius and tighter. The
    uncertainty is a jackknife over ten parts of the drive. Source: kinematics of a rigid car (Gillespie 1992,
    ch. 6, from memory).
    """
    if curves is None:
        return missing(
            "swap-gain",
            None,
            "too few curves to check the wheels against each other",
            "tight curves to both sides",
        )
    curved = np.abs(analysis.reference.curvature_radpm) * analysis.vehicle.track_m > CURVED
    return measured(
        "swap-gain",
        VEHICLE,
        curves.gain_db,
        max(curves.gain_std_db, 0.5),
        unit="dB",
        count=curves.block_count,
        spans=event_spans(analysis, curved) or event_spans(analysis, moving_anywhere(analysis)),
    )


def report_swap_pair(
    analysis: Analysis,
    curves: CurveEvidence | None,
    road: RoadOrder | NotMeasurable,
    sides: SideAgreement | NotMeasurable,
) -> Measured:
    """Say which channels are exchanged: a number of ``PAIRS``, from 0.

    By the curves where they are clearly better with an exchange (5 dB), else by the order in which the wheels
    meet the road, else by the side to which the car turns; the number is a name and has no scatter, so that
    its stated uncertainty is only a tenth.
    """
    number = _exchanged_pair(curves, road, sides)
    if number is None:
        return missing(
            "swap-pair",
            None,
            "no exchange of two wheels explains the log better",
            "tight curves to both sides, and a minute above 30 km/h recorded at 50 Hz or faster",
        )
    moving = moving_anywhere(analysis)
    spans = event_spans(analysis, moving)
    return measured("swap-pair", VEHICLE, number, 0.1, unit="", count=count_of(moving), spans=spans)


def _exchanged_pair(
    curves: CurveEvidence | None, road: RoadOrder | NotMeasurable, sides: SideAgreement | NotMeasurable
) -> int | None:
    gain_db = 0.0 if curves is None else curves.gain_db
    if curves is not None and gain_db > CLEAR_GAIN_DB:
        return _with_axle(_number(curves.best_order), sides)
    # Where the curves clearly fit as wired the road has nothing to add.
    heard = isinstance(road, RoadOrder) and gain_db > -CLEAR_GAIN_DB
    if isinstance(road, RoadOrder) and heard and road.advantage > CLEAR_SIGMA * road.advantage_std:
        return _with_axle(_number(road.best_order), sides)
    return _by_sides(sides) if isinstance(sides, SideAgreement) else None


def _by_sides(sides: SideAgreement) -> int | None:
    """Say whose left and right are exchanged by the side to which each axle turns."""
    wrong = (sides.front < -CLEAR_AGREEMENT, sides.rear < -CLEAR_AGREEMENT)
    if all(wrong):
        return PAIRS.index(BOTH_AXLES)
    if wrong[0] and sides.rear > CLEAR_AGREEMENT:
        return PAIRS.index(FRONT_AXLE)
    return PAIRS.index(REAR_AXLE) if wrong[1] and sides.front > CLEAR_AGREEMENT else None


def _number(order: Order) -> int:
    """Place of an exchange in ``PAIRS``, which begins with ``EXCHANGES``."""
    return [one for one, _ in EXCHANGES].index(order)


def _with_axle(pair: int, sides: SideAgreement | NotMeasurable) -> int:
    """Say on which axle left and right are exchanged, where a channel of known sign tells."""
    if pair != _number(ONE_AXLE) or not isinstance(sides, SideAgreement):
        return pair
    axle = _by_sides(sides)
    return pair if axle is None else axle


@dataclass(frozen=True, slots=True)
class CurveEvidence:
    """What the curves say of the wiring.

    Attributes
    ----------
    gain_db, gain_std_db : float
        How much better the best exchange fits than the wiring as it is; negative where none does.
    best_order : four ints
        Channel of each true wheel in the best exchange.
    block_count : int
        Half seconds of driving in curves.
    """

    gain_db: float
    gain_std_db: float
    best_order: Order
    block_count: int


def compare_by_curves(analysis: Analysis) -> CurveEvidence | None:
    """Hold the wiring as it is and every exchange against the curves; None with too few of them."""
    ratio, noise_ratio = _curved_blocks(analysis)
    if noise_ratio.size < FEWEST_BLOCKS:
        return None

    def fit(order: Order) -> CurveFit:
        return fit_curves(ratio, order, analysis.vehicle, noise_ratio=noise_ratio)

    best = min((fit(order) for order, _ in EXCHANGES), key=lambda one: float(one.misfit.mean()))
    gain_db, std_db = _gain(fit(AS_WIRED), best)
    return CurveEvidence(gain_db, std_db, best.order, noise_ratio.size)


def _gain(as_wired: CurveFit, best: CurveFit) -> tuple[float, float]:
    """Gain in dB and its standard uncertainty."""
    parts = np.array_split(np.arange(best.misfit.size), min(PARTS, best.misfit.size))

    def gain_db(keep: np.ndarray) -> float:
        usual, other = as_wired.misfit[keep].mean(), best.misfit[keep].mean()
        return float(10.0 * np.log10((usual + LEAST_MISFIT) / (other + LEAST_MISFIT)))

    every = np.arange(best.misfit.size)
    without = np.array([gain_db(np.delete(every, part)) for part in parts])
    return gain_db(every), float(np.sqrt((len(parts) - 1.0) * without.var()))


def _curved_blocks(analysis: Analysis) -> tuple[FloatArray, FloatArray]:
    """Half seconds of driving in curves: wheel over mean speed, float64[4, B], and its noise, float64[B].

    The offsets of straight running are taken out of the ratios; the noise is the standard deviation of each
    from recording steps and samples, and from the tyres where no straight running tells how they differ.
    """
    clock, per_block = analysis.clock, max(1, round(BLOCK_S / max(analysis.clock.period_s, 1e-3)))
    speed = np.stack([block_medians(row, per_block=per_block)[1] for row in clock.speed_mps])
    calm = block_medians(np.abs(analysis.acceleration_mps2), per_block=per_block)[1] < HARD_MPS2
    scale = 1.0 + np.nan_to_num(analysis.reference.scale_ratio)
    with np.errstate(invalid="ignore", divide="ignore"):
        corrected = speed / np.where(np.abs(scale - 1.0) < 0.15, scale, 1.0)[:, None]
        mean = corrected.mean(axis=0)
        ratio = corrected / mean
    told = np.isfinite(analysis.reference.scale_ratio).all()
    noise = np.hypot(block_noise(analysis, mean, per_block), 0.0 if told else UNKNOWN_TYRES)
    wide = np.ptp(ratio, axis=0)
    curved = (
        calm
        & np.isfinite(ratio).all(axis=0)
        & (mean > 2.0)
        & (wide > np.maximum(CURVED, CURVED_SIGMA * noise))
        & (wide < 0.4)
    )
    stride = max(1, int(np.count_nonzero(curved)) // ENOUGH_BLOCKS)
    return ratio[:, curved][:, ::stride], noise[curved][::stride]
