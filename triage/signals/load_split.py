"""What side load does to one wheel: wave of a turn, noise and losses as outer wheel, straight on, inner."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal, get_args

import numpy as np
from numpy.typing import NDArray

from triage.signals.analysis import Analysis
from triage.signals.curve_lines import LIMIT_RATIO, circumference_of
from triage.signals.loss_events import find_loss_events
from triage.signals.outward_load import LOADED_MPS2, outward_load_mps2
from triage.signals.running import count_of, zero_for_missing
from triage.signals.turn_windows import cut_windows, fit_windows, middle_amplitude, spread_over
from triage.speed_log import BoolArray, FloatArray

Load = Literal["outer", "straight", "inner"]
LOADS: Final[tuple[Load, ...]] = get_args(Load)

STRAIGHT_MPS2: Final = 0.5
"""Lateral acceleration up to which the car counts as going straight (judgement)."""

FEWEST_WINDOWS: Final = 3
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
    outward = zero_for_missing(outward_load_mps2(analysis, row))
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
        noise_ratio=Estimate(*middle_amplitude(rest_power)) if enough else None,
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
    # Without a known turn the noise still needs a fit; any wave of about a turn's length serves.
    turn_m = circumference_m or 2.0
    windows = cut_windows(analysis, row, flag, turn_m)
    windows = windows.only(spread_over(np.arange(windows.sizes.size)))
    ratio = np.clip(analysis.residuals.fast_ratio[row][windows.index], -LIMIT_RATIO, LIMIT_RATIO)
    turned = analysis.paths[row].distance_m[windows.index] / turn_m
    wave, rest = fit_windows(turned, ratio, windows.starts)
    return wave, rest, circumference_m is not None


def mean_amplitude(power: FloatArray) -> Estimate:
    """Return the root of the mean power of several windows, and its standard uncertainty by their scatter."""
    mean = float(power.mean())
    scatter = float(power.std(ddof=1)) / float(np.sqrt(power.size))
    amplitude = float(np.sqrt(max(mean, 0.0)))
    return Estimate(amplitude, float(np.sqrt(max(mean, 0.0) + scatter)) - amplitude)
