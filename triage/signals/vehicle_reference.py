"""Speed and path of the car from its four wheels, trusting no single one.

A rigid car without side slip at the rear axle has two unknowns, the speed ``v`` of the middle of the
rear axle and the path curvature ``k``; four wheels give two more equations than that. One wrong wheel
therefore shows, but the equations alone cannot tell a fast front left from a slow rear left in a left
curve: that takes the knowledge that curvature changes slowly, or a yaw rate sensor.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from triage.corners import CORNERS, SIDE_SIGN, is_front
from triage.side_by_side import map_side_by_side, parts_of
from triage.signals.conditioning import CommonClock
from triage.signals.dead_wheels import find_dead_wheels
from triage.signals.drive_slip import estimate_axle_slip
from triage.signals.running import block_bounds, block_medians, count_of, middle_of, middle_of_others
from triage.speed_log import BoolArray, FloatArray
from triage.vehicle import Vehicle

BLOCK_S = 0.2
"""Curvature is judged in blocks of this length; steering moves no faster (judgement)."""

TIGHTEST_RADIUS_M = 3.5
"""No car turns its rear axle on a smaller radius (common practice, no source)."""

GRIP_LIMIT_MPS2 = 11.0
"""A path that would need more side acceleration than any road tyre gives is no curve but a wrong wheel."""

SLOWEST_JUDGED_MPS = 1.0
"""Below this speed divergence is not formed: many control units output 0 there."""

FEWEST_BLOCKS = 15
FEWEST_BLOCKS_YAW = 25
"""Blocks of straight running, and blocks with a yaw rate, from which on they are relied on."""

LIMITED_FROM = 0.006
"""Single blocks are limited to this deviation at least before a wheel's constant offset is averaged."""

COUNTING_SCATTER = 0.02
ENOUGH_FOR_SCATTER = 5000
"""Median deviation from the middle of all, from which readings are taken to be whole pulses per cycle; and
the number of samples that settles it."""

CURVED_RATIO = 0.008
"""Left-right difference of both axles from which a block is taken for a curve, of about 190 m radius."""


@dataclass(frozen=True, slots=True)
class VehicleReference:
    """What the car did, and what each wheel should have read. Rows follow ``CORNERS``.

    Attributes
    ----------
    reference_mps : float64[N]
        Speed of the middle of the rear axle; NaN where fewer than two wheels are valid.
    curvature_radpm : float64[N]
        Curvature of the path, positive to the left.
    expected_mps : float64[4, N]
        What each wheel should read by the other three and the curve.
    divergence_ratio : float64[4, N]
        ``speed / expected - 1``; NaN below walking pace or where either is missing.
    scale_ratio : float64[4]
        Constant offset of each wheel against the middle of all in straight running; NaN when the log
        holds too little of it.
    straight_blocks : int
        Blocks of 0.2 s of straight running that the scales rest on.
    scale_std_ratio : float64[4]
        Standard uncertainty of ``scale_ratio``.
    axle_slip_ratio : float
        Part of the front axle's lead over the rear axle in ``scale_ratio`` that is drive slip.
    dead : bool[4, N]
        Wheels that are dead two or three at once (:func:`triage.signals.dead_wheels.find_dead_wheels`), so
        that reference and expectation rest on the living ones.
    """

    reference_mps: FloatArray
    curvature_radpm: FloatArray
    expected_mps: FloatArray
    divergence_ratio: FloatArray
    scale_ratio: FloatArray
    scale_std_ratio: FloatArray
    axle_slip_ratio: float
    straight_blocks: int
    dead: BoolArray


def wheel_speed_factors(curvature_radpm: FloatArray, vehicle: Vehicle) -> FloatArray:
    """Speed of each wheel over that of the middle of the rear axle on a curved path.

    Parameters
    ----------
    curvature_radpm : float64[N]
        Positive to the left.

    Returns
    -------
    float64[4, N]

    Notes
    -----
    Rigid body, no slip, speed of a steered wheel along its own plane.

    References
    ----------
    T. D. Gillespie, Fundamentals of Vehicle Dynamics, SAE R-114, 1992, ch. 6 (low-speed turning; cited
    from memory).
    """
    curvature = np.asarray(curvature_radpm, dtype=float)
    across = (curvature * vehicle.wheelbase_m) ** 2
    factors = np.empty((4, curvature.size))
    for row, corner in enumerate(CORNERS):
        along = 1.0 - SIDE_SIGN[corner] * curvature * vehicle.track_m / 2.0
        factors[row] = np.sqrt(along**2 + across) if is_front(corner) else np.abs(along)
    return factors


def estimate_reference(
    clock: CommonClock, vehicle: Vehicle, yaw_rate_radps: FloatArray | None = None
) -> VehicleReference:
    """Estimate speed, path and the expected speed of every wheel.

    Parameters
    ----------
    clock : CommonClock
    vehicle : Vehicle
        Track and wheelbase; an error of 10 % in either changes the expectation in a curve of 20 m radius by
        about 0.4 % of the speed.
    yaw_rate_radps : float64[N], optional
        Yaw rate on the common clock, positive to the left; used only to choose between the axles when
        they disagree.

    Returns
    -------
    VehicleReference
    """
    dead = find_dead_wheels(clock)
    speed_mps = np.where(dead, np.nan, clock.speed_mps) if dead.any() else clock.speed_mps
    middle_mps = middle_of(speed_mps)
    per_block = clock.samples_in(BLOCK_S)
    blocks = _wheel_blocks(speed_mps, middle_mps, per_block)
    yaw = _block_yaw(yaw_rate_radps, blocks, per_block)
    straight = _straight_blocks(blocks, yaw=yaw)
    scale, scale_std = _straight_scales(blocks, straight)
    correction = 1.0 + np.where(np.isfinite(scale) & (np.abs(scale) < 0.15), scale, 0.0)
    curvature = _curvature(blocks, correction, vehicle, clock, yaw=yaw)
    expected, reference = np.empty_like(speed_mps), np.empty(clock.time_s.size)
    divergence = np.empty_like(speed_mps)

    def compare(part: slice) -> None:
        factors = wheel_speed_factors(curvature[part], vehicle)
        centre_mps = speed_mps[:, part] / (correction[:, None] * factors)
        np.multiply(middle_of_others(centre_mps), factors, out=expected[:, part])
        few = clock.valid[:, part].sum(axis=0, dtype=np.int8) < 2
        reference[part] = np.where(few, np.nan, middle_of(centre_mps))
        judged = expected[:, part] >= SLOWEST_JUDGED_MPS
        divergence[:, part] = _excess(clock.speed_mps[:, part], expected[:, part], judged=judged)

    map_side_by_side(compare, parts_of(clock.time_s.size))
    return VehicleReference(
        reference_mps=reference,
        curvature_radpm=curvature,
        expected_mps=expected,
        divergence_ratio=divergence,
        scale_ratio=scale,
        scale_std_ratio=scale_std,
        axle_slip_ratio=_axle_slip(blocks, straight, clock.period_s),
        straight_blocks=count_of(straight),
        dead=dead,
    )


def _excess(speed_mps: FloatArray, demanded_mps: FloatArray, *, judged: BoolArray) -> FloatArray:
    """``speed / demanded - 1``; NaN where it is not to be judged."""
    with np.errstate(invalid="ignore", divide="ignore"):
        excess = speed_mps / demanded_mps
    excess -= 1.0
    np.copyto(excess, np.nan, where=~judged)
    return excess


@dataclass(frozen=True, slots=True)
class _Blocks:
    """Medians over short blocks: ``ratio`` is each wheel over the middle of all, minus 1."""

    centre: FloatArray
    middle_mps: FloatArray
    ratio: FloatArray


def _wheel_blocks(speed_mps: FloatArray, middle_mps: FloatArray, per_block: int) -> _Blocks:
    centre, middle = block_medians(middle_mps, per_block=per_block)
    ratio = _excess(speed_mps, middle_mps, judged=middle_mps > SLOWEST_JUDGED_MPS)
    if _counts_pulses(ratio):
        return _Blocks(centre=centre, middle_mps=middle, ratio=_mean_ratios(speed_mps, per_block))
    rows = map_side_by_side(lambda row: block_medians(row, per_block=per_block)[1], ratio)
    return _Blocks(centre=centre, middle_mps=middle, ratio=np.stack(rows))


def _counts_pulses(ratio: FloatArray) -> bool:
    """Whether most wheels scatter so much that only their means can be compared.

    A control unit that counts whole pulses in each cycle puts out steps of tens of per cent. A median keeps
    to one of the steps, whatever the speed.
    """
    few = ratio[:, :: max(1, ratio.shape[1] // ENOUGH_FOR_SCATTER)]
    size = np.array(
        [np.median(row[np.isfinite(row)]) if np.isfinite(row).any() else 0.0 for row in np.abs(few)]
    )
    return bool(np.count_nonzero(size > COUNTING_SCATTER) >= 3)


def _mean_ratios(speed_mps: FloatArray, per_block: int) -> FloatArray:
    """Mean speed of each wheel in each block over the middle of the four means, minus 1."""
    bounds = block_bounds(speed_mps.shape[1], per_block)
    known = np.isfinite(speed_mps)
    count = np.add.reduceat(known.astype(float), bounds[:-1], axis=1)
    total = np.add.reduceat(np.where(known, speed_mps, 0.0), bounds[:-1], axis=1)
    mean = np.where(count > 0.5 * np.diff(bounds), total / np.maximum(count, 1.0), np.nan)
    middle = middle_of(mean)
    return _excess(mean, middle, judged=middle > SLOWEST_JUDGED_MPS)


def _block_yaw(yaw_rate_radps: FloatArray | None, blocks: _Blocks, per_block: int) -> FloatArray | None:
    """Curvature by the yaw rate sensor per block, its standstill offset taken out."""
    if yaw_rate_radps is None:
        return None
    yaw = block_medians(yaw_rate_radps, per_block=per_block)[1]
    still = blocks.middle_mps < 0.1
    if np.isfinite(yaw[still]).sum() >= 5:
        yaw = yaw - np.nanmedian(yaw[still])
    with np.errstate(invalid="ignore", divide="ignore"):
        return np.where(blocks.middle_mps > SLOWEST_JUDGED_MPS, yaw / blocks.middle_mps, np.nan)


def _straight_blocks(blocks: _Blocks, *, yaw: FloatArray | None) -> BoolArray:
    """Blocks of straight running: those whose left-right difference is the most common one of the drive."""
    fl, fr, rl, rr = blocks.ratio
    front, rear = fr - fl, rr - rl
    left_right = np.where(np.isfinite(front), front, rear)
    left_right = np.where(np.isfinite(front + rear), (front + rear) / 2.0, left_right)
    judged = np.isfinite(left_right) & (blocks.middle_mps > 4.0)
    if yaw is not None and np.count_nonzero(judged & np.isfinite(yaw)) >= FEWEST_BLOCKS_YAW:
        usual = most_common_value(yaw[judged & np.isfinite(yaw)])
        yaw_straight = judged & (np.abs(yaw - usual) < 0.0025)
        judged = yaw_straight if np.count_nonzero(yaw_straight) >= FEWEST_BLOCKS else judged
    straight = _near_most_common(left_right, judged)
    turned = _turned(front, rear)
    if straight.any() and np.mean(turned[straight]) > 0.5:
        # What is most common in this drive is a curve, so it cannot tell one tyre from another.
        straight = _near_most_common(left_right, judged & ~turned)
    return straight


def _near_most_common(left_right: FloatArray, judged: BoolArray) -> BoolArray:
    if np.count_nonzero(judged) < FEWEST_BLOCKS:
        return np.zeros(judged.size, dtype=bool)
    return judged & (np.abs(left_right - most_common_value(left_right[judged])) < 0.006)


def _turned(front: FloatArray, rear: FloatArray) -> BoolArray:
    """Blocks in which both axles show a left-right difference to the same side: no single wheel does that."""
    shared = np.where(np.sign(front) == np.sign(rear), np.minimum(np.abs(front), np.abs(rear)), 0.0)
    turned: BoolArray = shared > CURVED_RATIO
    return turned


def _axle_slip(blocks: _Blocks, straight: BoolArray, period_s: float) -> float:
    fl, fr, rl, rr = blocks.ratio
    front_over_rear = (fl + fr - rl - rr) / 2.0
    return estimate_axle_slip(front_over_rear, blocks.middle_mps, blocks.centre * period_s, straight=straight)


def _straight_scales(blocks: _Blocks, straight: BoolArray) -> tuple[FloatArray, FloatArray]:
    if not straight.any():
        return np.full(4, np.nan), np.full(4, np.nan)
    chosen = blocks.ratio[:, straight]
    count = np.count_nonzero(np.isfinite(chosen), axis=1)
    spread = np.array([_spread(row) for row in chosen])
    medians = _steady_means(chosen, spread)
    # Neighbouring blocks share road and steering: about every fifth counts as independent (judgement).
    std = 1.2533 * spread / np.sqrt(np.maximum(count / 5.0, 1.0))
    # A wheel with a single block has no spread, so nothing tells how good its offset is.
    medians = np.where(np.isfinite(std), medians, np.nan)
    offset = medians - np.nanmedian(medians) if np.isfinite(medians).any() else medians
    return offset, np.maximum(std, 2e-4)


def _steady_means(ratio: FloatArray, spread: FloatArray) -> FloatArray:
    """Mean of every row, each value limited to three spreads about the row's median, and 0.6 % at least.

    The median alone would keep to one step of a coarsely recorded speed.
    """
    medians = middle_of(ratio.T)
    reach = np.maximum(3.0 * np.nan_to_num(spread), LIMITED_FROM)
    limited = np.clip(ratio, (medians - reach)[:, None], (medians + reach)[:, None])
    known = np.isfinite(limited)
    count = np.maximum(np.count_nonzero(known, axis=1), 1)
    means = np.where(known, limited, 0.0).sum(axis=1) / count
    return np.asarray(np.where(np.isfinite(medians), means, np.nan), dtype=np.float64)


def _spread(row: FloatArray) -> float:
    finite = row[np.isfinite(row)]
    if finite.size < 2:
        return float("nan")
    low, high = np.quantile(finite, (0.159, 0.841))
    return float((high - low) / 2.0)


def most_common_value(value: FloatArray, share: float = 0.3) -> float:
    """Middle of the shortest interval that holds the given share of the values.

    Parameters
    ----------
    value : float64[N]
        Finite, N > 0.
    share : float
        Part of the values inside, 0 to 1.

    References
    ----------
    The shorth of Andrews et al., Robust Estimates of Location, 1972 (cited from memory), with another share.
    """
    ordered = np.sort(value)
    inside = max(2, int(np.ceil(share * ordered.size)))
    if ordered.size < inside:
        return float(np.median(ordered))
    width = ordered[inside - 1 :] - ordered[: ordered.size - inside + 1]
    first = int(np.argmin(width))
    return float(np.median(ordered[first : first + inside]))


def _curvature(
    blocks: _Blocks, correction: FloatArray, vehicle: Vehicle, clock: CommonClock, *, yaw: FloatArray | None
) -> FloatArray:
    """Curvature on the common clock: both axles where they agree, else the one the past speaks for."""
    fl, fr, rl, rr = (blocks.ratio + 1.0) / correction[:, None]
    front = (fr**2 - fl**2) / (2.0 * vehicle.track_m)
    rear = (rr - rl) / vehicle.track_m
    limit = np.minimum(1.0 / TIGHTEST_RADIUS_M, GRIP_LIMIT_MPS2 / np.maximum(blocks.middle_mps, 0.1) ** 2)
    front, rear = (np.where(np.abs(axle) <= limit, axle, np.nan) for axle in (front, rear))
    step = np.nanmax(clock.resolution_mps, initial=0.0)
    tolerance = (0.006 + 1.5 * step / np.maximum(blocks.middle_mps, 0.5)) / vehicle.track_m
    with np.errstate(invalid="ignore"):
        agree = np.abs(front - rear) < tolerance + 0.1 * np.abs(rear)
    mean = (front + rear) / 2.0
    guide = _guide(mean, agree, yaw, blocks.centre * clock.period_s)
    with np.errstate(invalid="ignore"):
        front_nearer = np.abs(front - guide) <= np.abs(rear - guide)
    chosen = np.where(front_nearer | ~np.isfinite(rear), front, rear)
    chosen = np.where(agree, mean, chosen)
    chosen = np.where(np.isfinite(chosen), chosen, guide)
    known = np.isfinite(chosen) & (blocks.middle_mps > SLOWEST_JUDGED_MPS)
    if not known.any():
        return np.zeros(clock.time_s.size)
    return np.interp(np.arange(clock.time_s.size), blocks.centre[known], chosen[known])


def _guide(mean: FloatArray, agree: BoolArray, yaw: FloatArray | None, time_s: FloatArray) -> FloatArray:
    """Best guess of the curvature where the axles disagree: the yaw rate, else what they agreed on nearby."""
    if np.count_nonzero(agree) < 2:
        agreed = np.zeros(mean.size)
        return agreed if yaw is None else np.where(np.isfinite(yaw), yaw, agreed)
    agreed = np.interp(time_s, time_s[agree], mean[agree])
    if yaw is not None:
        offset = float(np.nanmedian((mean - yaw)[agree])) if np.isfinite((mean - yaw)[agree]).any() else 0.0
        return np.where(np.isfinite(yaw), yaw + offset, agreed)
    index = np.arange(mean.size)
    after = np.clip(np.searchsorted(index[agree], index), 0, np.count_nonzero(agree) - 1)
    before = np.clip(after - 1, 0, None)
    away = np.minimum(np.abs(time_s[agree][after] - time_s), np.abs(time_s[agree][before] - time_s))
    return np.where(away < 3.0, agreed, 0.0)
