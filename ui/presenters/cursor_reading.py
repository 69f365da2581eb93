"""What the plots show at one instant, and between two."""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.corners import CORNERS, Corner
from triage.signals.conditioned_log import ConditionedLog
from triage.speed_log import BoolArray, FloatArray
from triage.texts import joined
from triage.units import LINEAR_SPEED_MPS
from ui.presenters.plot_data import PlotData
from ui.presenters.traces import in_unit, values_at

LONGEST_BRIDGED_S: Final = 1.0
"""Over longer holes in the recording no way is added up; it is said how long they were."""

NO_VALUE: Final = "–"
MINUS: Final = "\N{MINUS SIGN}"


@dataclass(frozen=True, slots=True)
class Reading:
    """The four wheels at one instant. Wheels without a value there are left out.

    Attributes
    ----------
    manoeuvre : str
        What the car did; empty where nothing is known.
    speed : mapping of corner to float
        In ``unit``.
    divergence_percent : mapping of corner to float
    """

    time_s: float
    manoeuvre: str
    unit: str
    speed: dict[Corner, float]
    divergence_percent: dict[Corner, float]


@dataclass(frozen=True, slots=True)
class Stretch:
    """What lies between two instants.

    Attributes
    ----------
    way_m : float
        Driven by the car.
    hole_s : float
        Seconds without samples, over which no way was added up.
    mean, extreme : mapping of corner to float
        Mean and largest difference of a wheel from what it should read, in ``unit``; wheels that cannot be
        told are left out.
    """

    begin_s: float
    end_s: float
    way_m: float
    hole_s: float
    unit: str
    mean: dict[Corner, float]
    extreme: dict[Corner, float]


def read_at(data: PlotData, time_s: float, unit: str) -> Reading:
    """Return the values at an instant, speeds in ``unit``."""
    at = bisect_right(data.bands, time_s, key=lambda band: band.start_s) - 1
    return Reading(
        time_s=time_s,
        manoeuvre=data.bands[at].label if at >= 0 and time_s <= data.bands[at].stop_s else "",
        unit=unit,
        speed=values_at(in_unit(data.speed, unit), time_s),
        divergence_percent=values_at(data.divergence, time_s),
    )


def measure_between(data: PlotData, one_s: float, other_s: float, unit: str) -> Stretch:
    """Return what lies between two instants, both included, in either order."""
    begin_s, end_s = sorted((one_s, other_s))
    log = data.conditioned
    first = int(np.searchsorted(log.time_s, begin_s))
    stop = int(np.searchsorted(log.time_s, end_s, side="right"))
    part = slice(first, stop)
    way_m, hole_s = driven_between(log.time_s[part], log.reference_mps[part])
    found = {corner: _mean_and_extreme(log, row, part) for row, corner in enumerate(CORNERS)}
    scale = 1.0 / LINEAR_SPEED_MPS[unit]
    mean = {corner: scale * pair[0] for corner, pair in found.items() if pair is not None}
    extreme = {corner: scale * pair[1] for corner, pair in found.items() if pair is not None}
    return Stretch(begin_s, end_s, way_m, hole_s, unit, mean, extreme)


def _mean_and_extreme(log: ConditionedLog, row: int, part: slice) -> tuple[float, float] | None:
    """Return mean and largest difference in m/s; None where nothing can be told."""
    apart = log.speed_mps[row, part] - log.expected_mps[row, part]
    kept: BoolArray = log.fresh[row, part] & np.isfinite(apart)
    count = int(np.count_nonzero(kept))
    if not count:
        return None
    # Zeros change neither sum nor extremes, and save a copy: between two ends of a day lie millions.
    apart[~kept] = 0.0
    low, high = float(apart.min()), float(apart.max())
    return float(apart.sum()) / count, low if -low > high else high


def driven_between(time_s: FloatArray, reference_mps: FloatArray) -> tuple[float, float]:
    """Return the way driven in metres, and the seconds of holes that are not in it.

    Parameters
    ----------
    time_s, reference_mps : float64[N]
        Rising; NaN where the speed of the car is not known.
    """
    known = np.isfinite(reference_mps)
    time_s, reference_mps = time_s[known], reference_mps[known]
    step_s = np.diff(time_s)
    hole = step_s > LONGEST_BRIDGED_S
    step_m = 0.5 * (reference_mps[1:] + reference_mps[:-1]) * step_s
    return float(step_m[~hole].sum()), float(step_s[hole].sum())


def format_reading(reading: Reading, corner: Corner) -> str:
    """Word what one wheel reads: speed, and divergence below it."""
    speed, off = reading.speed.get(corner), reading.divergence_percent.get(corner)
    above = f"{corner} {NO_VALUE}" if speed is None else f"{corner} {speed:.2f} {reading.unit}"
    return f"{above}\n{NO_VALUE if off is None else f'{signed(off, 1)} %'}"


def format_instant(reading: Reading) -> str:
    """Word the instant, and what the car did below it."""
    return joined("\n", (f"{reading.time_s:.3f} s", reading.manoeuvre))


def signed(value: float, digits: int) -> str:
    """Write a number with its sign.

    >>> signed(1.25, 1), signed(-0.26, 1), signed(-0.01, 1)
    ('+1.2', '−0.3', '0.0')
    """
    text = f"{value:+.{digits}f}"
    if float(text) == 0.0:
        return text[1:]
    return text.replace("-", MINUS)
