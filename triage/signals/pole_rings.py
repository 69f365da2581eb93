"""The encoder rings of all wheels from their single edges: how many poles, which are bad or missing."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.corners import CORNERS, Corner
from triage.edge_train import EdgeTrain, PoleCount, find_pole_count, number_edges
from triage.side_by_side import map_side_by_side
from triage.signals.pole_pitch import PolePitch, average_pole_pitch
from triage.signals.pole_pitch_filter import compare_estimates, filter_pole_pitch
from triage.signals.running import MAD_TO_SIGMA
from triage.speed_log import BoolArray, FloatArray
from triage.vehicle import Vehicle

SURE_COUNT: Final = 0.95
SMOOTH_ORDERS: Final = 2
"""Orders of a ring that is only eccentric, tilted or oval; they do not make a pole a bad one."""

BAD_SIGMA: Final = 6.0
BAD_SHIFT_POLE: Final = 0.06
BAD_SCATTER_RATIO: Final = 4.0
BAD_SCATTER_POLE: Final = 0.03
BAD_SEEN: Final = 0.9
"""A pole is bad when its border is missed in a tenth of the turns, or stands off by six times what is usual
on this ring (and 6 % of a pitch), or wavers four times as much as usual (and 3 % of a pitch): judgement;
sound rings are made to some 1 to 2 % of a pitch."""


@dataclass(frozen=True, slots=True)
class PoleRing:
    """One ring.

    Attributes
    ----------
    pitch : PolePitch
        By synchronous averaging.
    agreement : float
        Mean square difference to the Kalman filter's estimate over its variance; NaN where that had too
        little.
    rough_pole : float64[N]
        Pitch errors without the smooth orders 1 and 2; NaN where a border is missing.
    bad : bool[N]
    """

    pitch: PolePitch
    agreement: float
    rough_pole: FloatArray
    bad: BoolArray

    @property
    def std_factor(self) -> float:
        """Factor on the stated uncertainties where averaging and filter differ by more than these."""
        return float(np.sqrt(max(self.agreement, 1.0))) if np.isfinite(self.agreement) else 1.0

    @property
    def spread_pole(self) -> float:
        """Robust standard deviation of the rough pitch errors of the borders that are not bad, in pitches."""
        there = self.rough_pole[np.isfinite(self.rough_pole)]
        return float(MAD_TO_SIGMA * np.median(np.abs(there)))

    @property
    def widest_bad(self) -> int:
        """Most bad borders in a row, one sound border between two bad ones passed over."""
        return longest_run(self.bad)


@dataclass(frozen=True, slots=True)
class PoleRings:
    """Rings of all wheels.

    Attributes
    ----------
    count : PoleCount or None
        Edges of a turn found blind; None when nothing repeats.
    edges_per_rev : tuple of (int or None)
        Number used for each wheel, in the order of ``CORNERS``.
    rings : tuple of (PoleRing or None)
        None where a wheel has no edges, too few turns, or an unknown number of poles.
    """

    count: PoleCount | None
    edges_per_rev: tuple[int | None, ...]
    rings: tuple[PoleRing | None, ...]


def examine_rings(edges: Mapping[Corner, FloatArray], vehicle: Vehicle) -> PoleRings | None:
    """Give every edge its place and form the pitch errors of its ring.

    Parameters
    ----------
    edges : mapping of corner to float64[M]
        Rising times.
    vehicle : Vehicle
        Its ``pulses_per_rev`` is used, doubled where both edges of a pole pair are recorded, when the log
        does not tell the number by itself.

    Returns
    -------
    PoleRings or None
        None when no wheel has edges.
    """
    if not any(one.size for one in edges.values()):
        return None
    nothing = np.zeros(0)
    trains = map_side_by_side(lambda row: number_edges(edges.get(CORNERS[row], nothing)), range(4))
    count = find_pole_count(trains)
    numbers = tuple(_edges_per_rev(count, row, vehicle) for row in range(4))
    rings = map_side_by_side(lambda row: _ring(trains[row], numbers[row]), range(4))
    return PoleRings(count, numbers, tuple(rings))


def longest_run(flag: BoolArray) -> int:
    """Longest run of set flags around a ring; a single unset one between two set ones counts as set."""
    closed = flag | (np.roll(flag, 1) & np.roll(flag, -1))
    if closed.all() or not closed.any():
        return int(closed.sum())
    opened = np.roll(closed, -int(np.flatnonzero(~closed)[0]))
    edges = np.flatnonzero(np.diff(np.concatenate((opened, [False])).astype(np.int8), prepend=0))
    return int((edges[1::2] - edges[::2]).max())


def _edges_per_rev(count: PoleCount | None, row: int, vehicle: Vehicle) -> int | None:
    if count is not None:
        own = count.own[row]
        if own is not None:
            return own
        if count.probability >= SURE_COUNT:
            return count.edges_per_rev
    return None if vehicle.pulses_per_rev is None else round(vehicle.pulses_per_rev)


def _ring(train: EdgeTrain, edges_per_rev: int | None) -> PoleRing | None:
    if edges_per_rev is None:
        return None
    pitch = average_pole_pitch(train, edges_per_rev)
    if pitch is None:
        return None
    filtered = filter_pole_pitch(train, edges_per_rev)
    agreement = float("nan") if filtered is None else compare_estimates(pitch, filtered)
    rough = _without_smooth_orders(pitch.shift_pole)
    return PoleRing(pitch, agreement, rough, _bad(pitch, rough))


def _without_smooth_orders(shift_pole: FloatArray) -> FloatArray:
    """Take orders 0 to 2 out by least squares, twice, the second time without what stands off most."""
    angle = 2.0 * np.pi * np.arange(shift_pole.size) / shift_pole.size
    columns = [np.ones(shift_pole.size)]
    for order in range(1, SMOOTH_ORDERS + 1):
        columns += [np.cos(order * angle), np.sin(order * angle)]
    base = np.stack(columns, axis=1)
    use = np.isfinite(shift_pole)
    rough = shift_pole
    for _ in range(2):
        if np.count_nonzero(use) <= 2 * base.shape[1]:
            return rough
        fit = np.linalg.lstsq(base[use], shift_pole[use], rcond=None)[0]
        rough = shift_pole - base @ fit
        usual = MAD_TO_SIGMA * float(np.nanmedian(np.abs(rough)))
        use = np.isfinite(rough) & (np.abs(np.nan_to_num(rough)) < 3.0 * max(usual, 1e-6))
    return rough


def _bad(pitch: PolePitch, rough: FloatArray) -> BoolArray:
    usual = MAD_TO_SIGMA * float(np.nanmedian(np.abs(rough)))
    scatter = float(np.nanmedian(pitch.scatter_pole))
    off = np.abs(np.nan_to_num(rough)) > max(BAD_SIGMA * usual, BAD_SHIFT_POLE)
    waver = np.nan_to_num(pitch.scatter_pole) > max(BAD_SCATTER_RATIO * scatter, BAD_SCATTER_POLE)
    step = np.abs(np.nan_to_num(rough - np.roll(rough, 1)))
    jump = step > max(BAD_SIGMA * MAD_TO_SIGMA * float(np.median(step)), 2.0 * BAD_SHIFT_POLE)
    return np.asarray((pitch.seen_ratio < BAD_SEEN) | off | waver | jump)
