"""What side load does to one wheel: wave of a turn, noise and losses as outer wheel, straight on, inner."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal, get_args

import numpy as np
from numpy.typing import NDArray

from triage.corners import CORNERS, SIDE_SIGN
from triage.signals.analysis import Analysis
from triage.signals.curve_lines import LIMIT_RATIO, circumference_of
from triage.signals.loss_events import find_loss_events
from triage.signals.running import count_of
from triage.speed_log import BoolArray, FloatArray

Load = Literal["outer", "straight", "inner"]
LOADS: Final[tuple[Load, ...]] = get_args(Load)

LOADED_MPS2: Final = 1.0
STRAIGHT_MPS2: Final = 0.5
"""Lateral acceleration from which a curve shifts load noticeably (7 % of an axle's load, m a h / t), and
up to which the car counts as going straight (judgement)."""

WINDOW_S: Final = 1.5
FEWEST_TURNS: Final = 1.5
"""Shorter than this, a parabola takes much of one turn's wave with it."""

FEWEST_SAMPLES: Final = 10
FEWEST_WINDOWS: Final = 3
MOST_WINDOWS: Final = 80
"""So many windows, spread over the drive, are enough."""

LEAST_S: Final = 5.0
"""No rate of losses is formed from less time."""


@dataclass(frozen=True, slots=True)
class Estimate:
    """A value and its standard uncertainty."""

    value: float
    std_uncertainty: float


@dataclass(frozen=True, slots=True)
class LoadShare:
    """One wheel under one load; None is what this drive does not carry.

    Attributes
    ----------
    seconds : float
        Time spent under this load above walking pace.
    windows : int
        Stretches of 1.5 s that wave and noise rest on.
    wave_ratio : Estimate or None
        Amplitude that repeats once a turn, relative to the speed.
    noise_ratio : Estimate or None
        Standard deviation of what else there is.
    loss_count : int
    losses_per_min : Estimate or None
    """

    load: Load
    seconds: float
    windows: int
    wave_ratio: Estimate | None
    noise_ratio: Estimate | None
    loss_count: int
    losses_per_min: Estimate | None


def split_by_load(analysis: Analysis, row: int) -> tuple[LoadShare, LoadShare, LoadShare]:
    """Split what a wheel shows by the load that curves put on it.

    Parameters
    ----------
    analysis : Analysis
    row : int
        Wheel.

    Returns
    -------
    three LoadShare
        As outer wheel, straight on, as inner wheel.

    Notes
    -----
    Uncertainties: wave by the scatter of the windows, noise by the rank of the median over windows, losses by
    counting (Poisson; half a loss is added so that none in a short time is not certainty).
    """
    speed = np.nan_to_num(analysis.reference.reference_mps)
    # In a left curve (positive) the right wheels are the outer ones.
    outward = -SIDE_SIGN[CORNERS[row]] * speed**2 * np.nan_to_num(analysis.reference.curvature_radpm)
    events = find_loss_events(analysis, row).first
    outer, straight, inner = (
        _share(analysis, row, load, flag=flag, events=events)
        for load, flag in zip(
            LOADS,
            (outward > LOADED_MPS2, np.abs(outward) < STRAIGHT_MPS2, outward < -LOADED_MPS2),
            strict=True,
        )
    )
    return outer, straight, inner


def _share(
    analysis: Analysis, row: int, load: Load, *, flag: BoolArray, events: NDArray[np.intp]
) -> LoadShare:
    seconds = count_of(analysis.losses.moving[row] & flag) * analysis.clock.period_s
    losses = count_of(flag[events])
    wave_power, rest_power, known = _windows(analysis, row, flag)
    enough = rest_power.size >= FEWEST_WINDOWS
    return LoadShare(
        load=load,
        seconds=float(seconds),
        windows=int(rest_power.size),
        wave_ratio=mean_amplitude(wave_power) if enough and known else None,
        noise_ratio=_middle_amplitude(rest_power) if enough else None,
        loss_count=losses,
        losses_per_min=loss_rate(losses, float(seconds)) if seconds >= LEAST_S else None,
    )


def loss_rate(losses: int, seconds: float) -> Estimate:
    """Return the losses in a minute.

    >>> loss_rate(4, 120.0)
    Estimate(value=2.0, std_uncertainty=1.0606601717798212)
    """
    return Estimate(60.0 * losses / seconds, 60.0 * float(np.sqrt(losses + 0.5)) / seconds)


def _windows(analysis: Analysis, row: int, flag: BoolArray) -> tuple[FloatArray, FloatArray, bool]:
    """Wave and rest power of the windows in the flagged time, and whether the length of a turn is known."""
    circumference_m = circumference_of(analysis, row)
    fast = analysis.residuals.fast_ratio[row]
    usable = flag & analysis.losses.moving[row] & analysis.clock.fresh[row] & ~analysis.losses.joint
    index = np.flatnonzero(usable & np.isfinite(fast))
    number = np.floor((analysis.clock.time_s[index] - analysis.clock.time_s[:1]) / WINDOW_S).astype(np.intp)
    # Without a known turn the noise still needs a fit; any wave of about a turn's length serves.
    turned = analysis.paths[row].distance_m[index] / (circumference_m or 2.0)
    starts, sizes = _full_windows(number, turned)
    within = np.repeat(starts - (np.cumsum(sizes) - sizes), sizes) + np.arange(int(sizes.sum()))
    ratio = np.clip(fast[index[within]], -LIMIT_RATIO, LIMIT_RATIO)
    wave, rest = fit_waves(turned[within], ratio, np.cumsum(sizes) - sizes)
    return wave, rest, circumference_m is not None


def _full_windows(number: NDArray[np.intp], turned: FloatArray) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """First sample and size of each window that is long enough, evenly over the drive."""
    starts = np.flatnonzero(np.diff(number, prepend=-1))
    stops = np.append(starts[1:], number.size)[: starts.size]
    good = (stops - starts >= FEWEST_SAMPLES) & (turned[stops - 1] - turned[starts] >= FEWEST_TURNS)
    starts, sizes = starts[good], (stops - starts)[good]
    if starts.size > MOST_WINDOWS:
        kept = np.linspace(0, starts.size - 1, MOST_WINDOWS).astype(np.intp)
        starts, sizes = starts[kept], sizes[kept]
    return starts, sizes


def fit_waves(
    turned: FloatArray, ratio: FloatArray, starts: NDArray[np.intp]
) -> tuple[FloatArray, FloatArray]:
    """Fit a parabola and one wave per turn to every window.

    Parameters
    ----------
    turned : float64[N]
        Angle in revolutions, rising within each window.
    ratio : float64[N]
    starts : int[W]
        First sample of each window, of more than five samples each.

    Returns
    -------
    wave_power, rest_power : float64[W]
        Squared amplitude of the wave, what noise adds to it taken out (so it may be negative), and the
        variance of the rest, without bias.
    """
    if not starts.size:
        return np.zeros(0), np.zeros(0)
    sizes = np.diff(np.append(starts, turned.size))
    from_start = turned - np.repeat(turned[starts], sizes)
    along = 2.0 * from_start / np.repeat(np.maximum.reduceat(from_start, starts), sizes) - 1.0
    angle = 2.0 * np.pi * from_start
    columns = np.stack((np.ones_like(along), along, along**2, np.cos(angle), np.sin(angle)))
    products = np.add.reduceat(columns[:, None, :] * columns[None, :, :], starts, axis=2).transpose(2, 0, 1)
    right = np.add.reduceat(columns * ratio, starts, axis=1).T
    # The small addend keeps windows solvable in which the wheel steps by whole turns.
    inverse = np.linalg.inv(products + 1e-9 * np.eye(5))
    solved = (inverse @ right[:, :, None])[:, :, 0]
    left = ratio - (np.repeat(solved, sizes, axis=0) * columns.T).sum(axis=1)
    rest: FloatArray = np.add.reduceat(left**2, starts) / np.maximum(sizes - 5, 1)
    noise = rest * (inverse[:, 3, 3] + inverse[:, 4, 4])
    wave: FloatArray = solved[:, 3] ** 2 + solved[:, 4] ** 2 - noise
    return wave, rest


def mean_amplitude(power: FloatArray) -> Estimate:
    """Return the root of the mean power of several windows, and its standard uncertainty by their scatter."""
    mean = float(power.mean())
    scatter = float(power.std(ddof=1)) / float(np.sqrt(power.size))
    amplitude = float(np.sqrt(max(mean, 0.0)))
    return Estimate(amplitude, float(np.sqrt(max(mean, 0.0) + scatter)) - amplitude)


def _middle_amplitude(power: FloatArray) -> Estimate:
    """Root of the median power; the rank of a true median scatters by sqrt(n) / 2 (binomial)."""
    apart = min(0.5 / np.sqrt(power.size), 0.5)
    low, middle, high = np.quantile(np.sqrt(power), (0.5 - apart, 0.5, 0.5 + apart)).tolist()
    return Estimate(middle, (high - low) / 2.0)
