"""Disturbance of a wheel's signal as a function of the wheel's angle: what sits on the ring shows here."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.corners import CORNERS
from triage.side_by_side import map_side_by_side
from triage.signals.conditioning import CommonClock
from triage.signals.losses import Losses
from triage.signals.measurement import NotMeasurable
from triage.signals.residuals import Residuals
from triage.signals.revolution_line import RevolutionLine
from triage.signals.ring_activity import with_reach
from triage.signals.ring_angle import follow_angle
from triage.signals.ring_course import average_over_turns
from triage.signals.ring_depth import with_even_widths
from triage.signals.ring_deviation import deviation_over_ring
from triage.signals.ring_drops import PlacedDrops, count_drops, place_drops, ring_bin
from triage.signals.ring_lock import concentration
from triage.signals.ring_profile import RingProfile, profile_ring
from triage.signals.ring_response import RING_BINS, DropCounts
from triage.signals.ring_sectors import FEWEST_DROPS, BadSector, RingHarm, find_bad_sectors
from triage.signals.ring_spot import MOST_NOISE, RingSpot, find_spot, placed_by_spot, spot_sector
from triage.signals.running import quantiles_of, rate_at, run_bounds, runs, zero_for_missing
from triage.signals.wheel_path import CLIP_RATIO, WheelPath
from triage.speed_log import BoolArray, FloatArray

BINS: Final = 48
"""Angle bins of the statistics of the whole ring; the profile has twice as many."""

FEWEST_PER_BIN: Final = 4.0
FEWEST_FOR_WIDTH: Final = 15

FEWEST_ONSETS: Final = 8
"""From so many losses on it is asked where on the ring they lie."""

SPEED_QUANTILES: Final = (0.0, 0.1, 0.25, 0.45, 0.7, 1.0)
FEWEST_PER_SPEED: Final = 300
"""Widths and locks are taken in ranges of speed and the sharpest counts: the control unit averages over a
fixed TIME, which can only smear a spot over more of the ring, the more the faster the wheel turns."""

SLOWER_SHARE: Final = 0.15
"""Where the ring is sound is judged on this slowest share of the samples, for the same reason."""

SHORT_LOSS_S: Final = 0.3
"""A loss longer than a turn at town speed says nothing about the angle."""

QUIET_SIGMA: Final = 2.0
"""Where the mean size of the deviation stays below this many sigma of a sound wheel, the ring counts as sound
(0.8 is the mean of a normal deviation)."""

LIMIT_SIGMA: Final = 20.0


@dataclass(frozen=True, slots=True)
class RingMap:
    """What one wheel does at each angle.

    Attributes
    ----------
    circumference_m : float
        Revolution used: the wheel's own line, or that of the other wheels.
    own_line : bool
        Whether the wheel itself showed the revolution.
    sample_count : int
        Samples used.
    angle_rev : float64[N]
        Angle of the wheel on the common clock. Its zero is arbitrary.
    profile : RingProfile
        Ripple, losses and noise at every angle.
    harm : RingHarm or None
        Where on the ring the drops are made, by unit and recorder unsmeared; None where no pattern shows.
    spot : RingSpot or None
        The single spot that explains the mean speed over the turn best; None where chance hides that.
    explained_ratio, explained_std_ratio : float
        Share of the ripple's variance that repeats with the angle, chance taken out.
    onset_count : int
        Number of short losses and deviations whose angle is known.
    onset_lock, onset_lock_std : float
        Part of the ring that losses and deviations leave out: 0 all round, near 1 always at one place.
    width_rev, width_std_rev : float
        Effective width of the disturbed part in revolutions; NaN with too few disturbances.
    quiet_ratio : float
        Share of the ring on which the wheel behaves as a sound one.
    """

    circumference_m: float
    own_line: bool
    sample_count: int
    angle_rev: FloatArray
    profile: RingProfile
    harm: RingHarm | None
    spot: RingSpot | None
    explained_ratio: float
    explained_std_ratio: float
    onset_count: int
    onset_lock: float
    onset_lock_std: float
    width_rev: float
    width_std_rev: float
    quiet_ratio: float

    @property
    def sectors(self) -> tuple[BadSector, ...]:
        """Bad stretches of the ring, the worst first."""
        if self.harm is not None:
            return self.harm.sectors
        return (spot_sector(self.spot),) if self.spot is not None and self.spot.clear else ()


@dataclass(frozen=True, slots=True)
class _RingSamples:
    """The samples of one wheel that can be placed on its ring."""

    fine_bin: NDArray[np.intp]
    angle_bin: NDArray[np.intp]
    ripple: FloatArray
    size_ratio: FloatArray
    size_sigma: FloatArray
    disturbed: BoolArray
    onset: BoolArray
    speed_mps: FloatArray


def map_rings(
    clock: CommonClock,
    residuals: Residuals,
    losses: Losses,
    paths: tuple[WheelPath, ...],
    lines: tuple[RevolutionLine | NotMeasurable, ...],
) -> tuple[RingMap | NotMeasurable, ...]:
    """Map every wheel whose revolution is known from its own line or from another wheel's."""
    known = [line for line in lines if isinstance(line, RevolutionLine)]
    if not known:
        return tuple(_unknown_angle(row) for row in range(4))
    strongest = min(known, key=lambda line: line.circumference_std_m)
    disturbed = brief_disturbances(clock, losses)

    def map_ring(row: int) -> RingMap | NotMeasurable:
        line = lines[row]
        own = isinstance(line, RevolutionLine)
        circumference_m = (
            line.circumference_m if isinstance(line, RevolutionLine) else strongest.circumference_m
        )
        angle_rev = _angle(clock, paths[row], line, circumference_m)
        samples = _ring_samples(
            clock, residuals, paths[row], disturbed=disturbed[row], row=row, angle_rev=angle_rev
        )
        if samples is None:
            return _unknown_angle(row)
        ring = _ring_map(samples, circumference_m, own_line=own, angle_rev=angle_rev)
        return _with_harm(ring, clock, residuals, losses, row=row)

    return tuple(map_side_by_side(map_ring, range(4)))


def variance_explained(value: FloatArray, angle_bin: NDArray[np.intp], bins: int) -> tuple[float, float]:
    """Share of the variance of a quantity that the angle bin explains, the part due to chance taken out.

    Parameters
    ----------
    value : float64[N]
    angle_bin : int[N]
        0 to ``bins - 1``.

    Returns
    -------
    share, standard uncertainty : float
        The share is 0 on average when the angle does not matter, and can be slightly negative.

    Notes
    -----
    Epsilon-squared, the bias-corrected correlation ratio; the uncertainty is that of the F statistic under
    independence plus the sampling spread of the share itself.

    References
    ----------
    T. L. Kelley, Proc. Natl. Acad. Sci. 21, 1935, 554 (cited from memory).
    """
    count = np.bincount(angle_bin, minlength=bins).astype(float)
    groups = np.count_nonzero(count) - 1
    inner = value.size - groups - 1
    if inner < bins:
        return 0.0, 1.0
    mean = np.bincount(angle_bin, weights=value, minlength=bins) / np.maximum(count, 1.0)
    overall = float(value.mean())
    total_sum = float(((value - overall) ** 2).sum())
    if total_sum <= 0.0:
        return 0.0, 0.0
    between = float((count * (mean - overall) ** 2).sum())
    within_variance = (total_sum - between) / inner
    share = (between - groups * within_variance) / total_sum
    chance = np.sqrt(2.0 * groups) / value.size
    spread = 2.0 * np.sqrt(max(share, 0.0) / value.size) * (1.0 - max(share, 0.0))
    return float(share), float(np.hypot(chance, spread))


def _angle(
    clock: CommonClock, path: WheelPath, line: RevolutionLine | NotMeasurable, circumference_m: float
) -> FloatArray:
    """Follow the wheel's own pattern where it has one; turning noise to fit itself would feign a pattern."""
    if isinstance(line, RevolutionLine):
        return follow_angle(path, clock.time_s, circumference_m)
    return path.distance_m / circumference_m


def brief_disturbances(clock: CommonClock, losses: Losses) -> BoolArray:
    """Flag samples briefly off, and losses short enough to have an angle."""
    flags = losses.low | losses.high
    longest = SHORT_LOSS_S / clock.period_s if clock.period_s else 1
    for row in range(4):
        for first, stop in runs(losses.alone[row]):
            if stop - first <= longest:
                flags[row, first:stop] = True
    return flags


def _ring_samples(
    clock: CommonClock,
    residuals: Residuals,
    path: WheelPath,
    *,
    disturbed: BoolArray,
    row: int,
    angle_rev: FloatArray,
) -> _RingSamples | None:
    judged = np.flatnonzero((path.weight > 0) | disturbed)
    if judged.size < BINS * FEWEST_PER_BIN:
        return None
    fast = residuals.fast_ratio[row, judged]
    own = path.ripple_ratio[judged]
    ripple = np.where(np.isfinite(own), own, np.clip(fast, -CLIP_RATIO, CLIP_RATIO))
    size = np.where(np.isnan(fast), 1.0, np.abs(fast))
    size_sigma = size / np.maximum(residuals.sound_sigma_ratio[judged], 1e-5)
    onset = np.zeros(disturbed.size, dtype=bool)
    onset[run_bounds(disturbed)[0]] = True
    fine_bin = ring_bin(angle_rev[judged])
    return _RingSamples(
        fine_bin=fine_bin,
        angle_bin=fine_bin * BINS // RING_BINS,
        ripple=zero_for_missing(ripple),
        size_ratio=np.minimum(size, 1.0),
        # fmin: where the size is unknown, the limit
        size_sigma=np.fmin(size_sigma, LIMIT_SIGMA),
        disturbed=disturbed[judged],
        onset=onset[judged],
        speed_mps=rate_at(path.distance_m, clock.time_s, judged),
    )


def _with_harm(
    ring: RingMap, clock: CommonClock, residuals: Residuals, losses: Losses, *, row: int
) -> RingMap:
    """Add where on the ring the drops are made, how far the harm reaches, and what a single spot explains."""
    harm, rate_revps = None, None
    if ring.onset_count >= FEWEST_DROPS:
        placed = place_drops(clock, residuals, losses, row=row, angle_rev=ring.angle_rev)
        counts = count_drops(placed)
        if counts is not None:
            harm, rate_revps = _harm(placed, counts), counts.rate_revps
    course = average_over_turns(
        clock, residuals, losses, row=row, angle_rev=ring.angle_rev, rate_revps=rate_revps
    )
    if course is None or (harm is None and course.noise_ratio > MOST_NOISE):
        return replace(ring, harm=harm)
    spot = find_spot(course)
    if harm is not None and spot is not None:
        harm = replace(harm, sectors=placed_by_spot(harm.sectors, spot))
    return replace(ring, harm=harm, spot=spot)


def _harm(placed: PlacedDrops, counts: DropCounts) -> RingHarm | None:
    harm = find_bad_sectors(counts)
    if harm is None:
        return None
    deviation = deviation_over_ring(placed, counts.rate_revps)
    return harm if deviation is None else with_even_widths(with_reach(harm, deviation), deviation)


def _ring_map(
    samples: _RingSamples, circumference_m: float, *, own_line: bool, angle_rev: FloatArray
) -> RingMap:
    explained, explained_std = variance_explained(samples.ripple, samples.angle_bin, BINS)
    *bounds, slow_mps = quantiles_of(samples.speed_mps, (*SPEED_QUANTILES, SLOWER_SHARE))
    ranges = _speed_ranges(samples, bounds)
    lock, lock_std = _sharpest_lock(samples, ranges)
    events = int(np.count_nonzero(samples.disturbed))
    width = _narrowest_width(samples, ranges) if events >= FEWEST_FOR_WIDTH else float("nan")
    return RingMap(
        circumference_m=circumference_m,
        own_line=own_line,
        sample_count=samples.ripple.size,
        angle_rev=angle_rev,
        profile=profile_ring(samples.fine_bin, samples.ripple, samples.disturbed),
        harm=None,
        spot=None,
        explained_ratio=explained,
        explained_std_ratio=explained_std,
        onset_count=int(np.count_nonzero(samples.onset)),
        onset_lock=lock,
        onset_lock_std=lock_std,
        width_rev=width,
        width_std_rev=max(1.0 / BINS, width / np.sqrt(max(events, 1))),
        quiet_ratio=_quiet_ratio(samples, slow_mps),
    )


def _bin_means(value: FloatArray, angle_bin: NDArray[np.intp]) -> FloatArray:
    count = np.bincount(angle_bin, minlength=BINS)
    sums = np.bincount(angle_bin, weights=value, minlength=BINS)
    return np.where(count > 0, sums / np.maximum(count, 1), np.nan)


_Chosen = NDArray[np.intp] | slice
_EVERYTHING: Final = slice(None)


def _speed_ranges(samples: _RingSamples, bounds: Sequence[float]) -> list[_Chosen]:
    """Give the samples in each range of speed that holds enough of them."""
    speed_mps = samples.speed_mps
    inside = [np.flatnonzero((speed_mps >= low) & (speed_mps <= high)) for low, high in pairwise(bounds)]
    return [one for one in inside if one.size >= FEWEST_PER_SPEED]


def _sharpest_lock(samples: _RingSamples, ranges: list[_Chosen]) -> tuple[float, float]:
    """Take the lock from the range of speed that shows it most surely."""
    worth = [one for one in ranges if np.count_nonzero(samples.onset[one]) >= FEWEST_FOR_WIDTH]
    locks = [concentration(samples.angle_bin[one], samples.onset[one], BINS) for one in (*worth, _EVERYTHING)]
    return max(locks, key=lambda lock: lock[0] - lock[1])


def _narrowest_width(samples: _RingSamples, ranges: list[_Chosen]) -> float:
    return min(
        _sector_width(samples.size_ratio[one], samples.angle_bin[one]) for one in ranges or [_EVERYTHING]
    )


def _quiet_ratio(samples: _RingSamples, slow_mps: float) -> float:
    slow = samples.speed_mps <= slow_mps
    size = _bin_means(samples.size_sigma[slow], samples.angle_bin[slow])
    return float(np.mean(np.nan_to_num(size, nan=LIMIT_SIGMA) < QUIET_SIGMA))


def _sector_width(size_ratio: FloatArray, angle_bin: NDArray[np.intp]) -> float:
    """Effective width: participation ratio over the ring of the mean deviation above its lowest third."""
    rate = np.nan_to_num(_bin_means(size_ratio, angle_bin))
    excess = np.clip(rate - np.quantile(rate, 1.0 / 3.0), 0.0, None)
    if excess.sum() <= 0.0:
        return 1.0
    return float(excess.sum() ** 2 / (BINS * (excess**2).sum()))


def _unknown_angle(row: int) -> NotMeasurable:
    return NotMeasurable(
        id="dip-angle-lock",
        corner=CORNERS[row],
        reason="the revolution of the wheel is not known, so losses cannot be placed on the ring",
        needed="at least one minute of steady straight driving at 30 to 80 km/h, recorded at 20 Hz or more",
    )
