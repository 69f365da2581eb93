"""Short windows of a drive, and the wave of one turn and the scatter beside it in each."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.signals.analysis import Analysis
from triage.speed_log import BoolArray, FloatArray

WINDOW_S: Final = 1.5
FEWEST_TURNS: Final = 1.5
"""Shorter than this, a parabola takes much of one turn's wave with it."""

FEWEST_SAMPLES: Final = 10

MOST_WINDOWS: Final = 80
"""So many of one load are enough, and an hour of driving holds hundreds."""

RIDGE: Final = 1e-9
"""Keeps windows solvable in which the wheel steps by whole turns."""


@dataclass(frozen=True, slots=True)
class TurnWindows:
    """Stretches of samples of one wheel, one behind the other.

    Attributes
    ----------
    index : int[M]
        Samples of the log, window after window.
    sizes : int[W]
        Samples of each window.
    """

    index: NDArray[np.intp]
    sizes: NDArray[np.intp]

    @property
    def starts(self) -> NDArray[np.intp]:
        """First sample of each window among those here, int[W]."""
        starts: NDArray[np.intp] = np.cumsum(self.sizes) - self.sizes
        return starts

    def only(self, kept: NDArray[np.intp]) -> TurnWindows:
        """Return some of the windows."""
        first, size = self.starts[kept], self.sizes[kept]
        within = np.repeat(first - (np.cumsum(size) - size), size) + np.arange(int(size.sum()))
        return TurnWindows(self.index[within], size)


def cut_windows(analysis: Analysis, row: int, usable: BoolArray, circumference_m: float) -> TurnWindows:
    """Cut the usable samples of a wheel into windows of 1.5 s that hold 1.5 turns and ten samples.

    Parameters
    ----------
    usable : bool[N]
        Besides, the wheel must move, have a sample of its own, and no loss of all wheels.
    circumference_m : float
        Way of one turn.
    """
    used = usable & analysis.losses.moving[row] & analysis.clock.fresh[row] & ~analysis.losses.joint
    index = np.flatnonzero(used & np.isfinite(analysis.residuals.fast_ratio[row]))
    distance_m = analysis.paths[row].distance_m
    number = ((analysis.clock.time_s[index] - analysis.clock.time_s[:1]) / WINDOW_S).astype(np.intp)
    starts = np.flatnonzero(np.diff(number, prepend=-1))
    stops = np.append(starts[1:], number.size)[: starts.size]
    turned = distance_m[index[stops - 1]] / circumference_m - distance_m[index[starts]] / circumference_m
    kept = (stops - starts >= FEWEST_SAMPLES) & (turned >= FEWEST_TURNS)
    return TurnWindows(index[np.repeat(kept, stops - starts)], (stops - starts)[kept])


def spread_over(found: NDArray[np.intp]) -> NDArray[np.intp]:
    """Take all of some windows, or so many evenly over them as are enough."""
    if found.size <= MOST_WINDOWS:
        return found
    return found[np.linspace(0, found.size - 1, MOST_WINDOWS).astype(np.intp)]


def fit_windows(
    turned: FloatArray, ratio: FloatArray, starts: NDArray[np.intp]
) -> tuple[FloatArray, FloatArray]:
    """Fit a least-squares parabola and one wave per turn to every window.

    Parameters
    ----------
    turned : float64[M]
        Angle in revolutions, rising within each window.
    ratio : float64[M]
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
    products = products + RIDGE * np.eye(5)
    right = np.add.reduceat(columns * ratio, starts, axis=1).T
    solved = np.linalg.solve(products, right[:, :, None])[:, :, 0]
    left = ratio - (np.repeat(solved, sizes, axis=0) * columns.T).sum(axis=1)
    rest: FloatArray = np.add.reduceat(left**2, starts) / np.maximum(sizes - 5, 1)
    inverse = np.linalg.inv(products)
    wave: FloatArray = solved[:, 3] ** 2 + solved[:, 4] ** 2 - rest * (inverse[:, 3, 3] + inverse[:, 4, 4])
    return wave, rest


def middle_amplitude(power: FloatArray) -> tuple[float, float]:
    """Root of the median power, and its standard uncertainty free of any distribution.

    The rank of a true median scatters by sqrt(n) / 2 (binomial).
    """
    apart = min(0.5 / np.sqrt(power.size), 0.5)
    low, middle, high = np.quantile(np.sqrt(power), (0.5 - apart, 0.5, 0.5 + apart)).tolist()
    return middle, (high - low) / 2.0
