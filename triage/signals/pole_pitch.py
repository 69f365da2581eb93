"""Where the pole borders of an encoder ring really stand, from single edges averaged turn by turn.

The slow course of the wheel is taken out over whole turns, in which the pitch errors of a ring cancel
exactly; what is left repeats with the ring and is averaged over all turns.

References
----------
Toothed-wheel errors learned over many turns: F. Gustafsson, Rotational speed sensors: limitations,
pre-processing and automotive applications, IEEE Instrum. Meas. Mag. 13(2) (2010) 16-23, and N. Persson,
Event based sampling with application to spectral estimation, Linkoping 2002 (both known by their abstracts
only; the formulas here are derived, not taken over).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.edge_train import EdgeTrain
from triage.signals.running import MAD_TO_SIGMA
from triage.speed_log import BoolArray, FloatArray

FEWEST_TURNS: Final = 8
SAME_RING: Final = 0.5
"""Correlation with the longest segment from which another one is taken into the average."""

BLOCKS: Final = 16
"""Blocks of turns whose means tell how far the turns are independent of each other."""

OUTLIER_SIGMA: Final = 5.0
SEEN: Final = 0.5
"""A border seen in less than this share of the turns is missing."""


@dataclass(frozen=True, slots=True)
class PolePitch:
    """Pitch errors of one ring. Place 0 is arbitrary but the same in all arrays.

    Attributes
    ----------
    edges_per_rev : int
        Borders of the sound ring, the missing ones counted in.
    turns : int
        Turns averaged.
    shift_pole : float64[N]
        How far each border stands ahead of its even place, in pitches, mean 0; NaN where it is missing.
    shift_std_pole : float64[N]
        Standard uncertainty of each.
    scatter_pole : float64[N]
        Standard deviation from turn to turn.
    seen_ratio : float64[N]
        Share of the turns in which the border gave an edge.
    ripple_ratio, ripple_std_ratio : float
        Amplitude of order 1 of the speed the ring feigns, relative to the speed, and its standard
        uncertainty.
    extra_per_turn : float
        Edges a turn that stand where no border is.
    """

    edges_per_rev: int
    turns: int
    shift_pole: FloatArray
    shift_std_pole: FloatArray
    scatter_pole: FloatArray
    seen_ratio: FloatArray
    ripple_ratio: float
    ripple_std_ratio: float
    extra_per_turn: float

    @property
    def missing(self) -> BoolArray:
        """Borders that give no edge in most turns, bool[N]."""
        return np.asarray(self.seen_ratio < SEEN)

    @property
    def spread_pole(self) -> float:
        """Robust standard deviation of the borders there are, in pitches."""
        there = self.shift_pole[np.isfinite(self.shift_pole)]
        return float(MAD_TO_SIGMA * np.median(np.abs(there - np.median(there)))) if there.size else np.nan


def average_pole_pitch(train: EdgeTrain, edges_per_rev: int) -> PolePitch | None:
    """Average the place of every border over all turns.

    Parameters
    ----------
    train : EdgeTrain
    edges_per_rev : int
        Borders in one turn of the sound ring.

    Returns
    -------
    PolePitch or None
        None with fewer than eight whole turns.

    Notes
    -----
    With ``t_j`` the time of border j and M the centred mean over one turn, ``s = 2 M t - M M t`` follows the
    slow course of the time exactly up to the third power of j and holds nothing that repeats with the ring,
    so that ``(t_j - s_j) / s'_j`` is the shift of border j in pitches plus noise. Its mean over the turns is
    the estimate; its scatter from turn to turn, with the turns' correlation taken into account, the standard
    uncertainty. Vibration of the wheel at exact multiples of its turn cannot be told from pitch errors.

    Segments start at unknown places of the ring; each is turned to where it fits the longest one best, and
    left out when it fits nowhere.
    """
    found = [_turn_table(train, segment, edges_per_rev) for segment in range(train.segments)]
    tables = sorted((table for table in found if table is not None), key=lambda table: -table.shape[0])
    if not tables:
        return None
    table = np.concatenate(_aligned(tables))
    if table.shape[0] < FEWEST_TURNS:
        return None
    return _pitch_of(table, extra_per_turn=train.extra_s.size * edges_per_rev / max(train.time_s.size, 1))


def ring_places(train: EdgeTrain, segment: int, edges_per_rev: int) -> FloatArray | None:
    """Give the times of all borders of a segment in order, NaN for a missing one; None when too short."""
    chosen = train.segment == segment
    number = train.number[chosen]
    if number.size == 0 or number[-1] < (FEWEST_TURNS // 2 + 2) * edges_per_rev:
        return None
    time_s = np.full(int(number[-1]) + 1, np.nan)
    time_s[number] = train.time_s[chosen]
    return time_s


def fold_turns(value: FloatArray, edges_per_rev: int) -> FloatArray:
    """Cut a series by border into whole turns, float64[turns, N]."""
    turns = value.size // edges_per_rev
    return value[: turns * edges_per_rev].reshape(turns, edges_per_rev)


def slow_course_s(time_s: FloatArray, edges_per_rev: int) -> FloatArray:
    """Time of every border had the ring no errors; NaN within one turn of the ends.

    Parameters
    ----------
    time_s : float64[J]
        Without NaN.
    """
    once = _turn_mean(time_s, edges_per_rev)
    return np.asarray(2.0 * once - _turn_mean(once, edges_per_rev), dtype=np.float64)


def _turn_mean(value: FloatArray, edges_per_rev: int) -> FloatArray:
    """Centred mean over exactly one turn; with an even number the two ends count half."""
    half = edges_per_rev // 2
    weight = np.ones(2 * half + 1)
    if edges_per_rev % 2 == 0:
        weight[[0, -1]] = 0.5
    out = np.full(value.size, np.nan)
    if value.size > 2 * half:
        # a running sum of large times loses digits, the sum of differences to the middle one does not
        total = np.convolve(np.nan_to_num(value - np.nanmean(value)), weight / edges_per_rev, mode="valid")
        out[half : value.size - half] = total + np.nanmean(value)
        bad = np.convolve(np.isnan(value).astype(float), np.ones(2 * half + 1), mode="valid") > 0.5
        out[half : value.size - half][bad] = np.nan
    return out


def _turn_table(train: EdgeTrain, segment: int, edges_per_rev: int) -> FloatArray | None:
    """Shift of every border in every whole turn of a segment, float64[turns, N]; NaN where unseen."""
    time_s = ring_places(train, segment, edges_per_rev)
    if time_s is None:
        return None
    there = np.isfinite(time_s)
    place = np.arange(time_s.size)
    filled = np.interp(place, place[there], time_s[there])
    slow_s = slow_course_s(filled, edges_per_rev)
    shift = np.where(there, (filled - slow_s) / np.gradient(slow_s), np.nan)
    margin = edges_per_rev + 1  # the first and last turn have no slow course
    begin = -(-margin // edges_per_rev) * edges_per_rev
    table = fold_turns(shift[begin : time_s.size - margin], edges_per_rev)
    return table if table.size else None


def _aligned(tables: list[FloatArray]) -> list[FloatArray]:
    profile = _profile(tables[0])
    kept = [tables[0]]
    for table in tables[1:]:
        other = _profile(table)
        spectrum = np.fft.rfft(profile) * np.conj(np.fft.rfft(other))
        fit = np.fft.irfft(spectrum, profile.size)
        size = np.linalg.norm(profile) * np.linalg.norm(other)
        turn = int(np.argmax(fit))
        if size > 0.0 and fit[turn] / size >= SAME_RING:
            kept.append(np.roll(table, turn, axis=1))
    return kept


def _profile(table: FloatArray) -> FloatArray:
    """Middle shift per border; a missing one stands out as one whole pitch."""
    seen = np.isfinite(table).mean(axis=0)
    middle = np.ones(table.shape[1])
    middle[seen >= SEEN] = np.nanmedian(table[:, seen >= SEEN], axis=0)
    return np.asarray(middle - middle.mean(), dtype=np.float64)


def _pitch_of(table: FloatArray, *, extra_per_turn: float) -> PolePitch:
    seen = np.isfinite(table).mean(axis=0)
    clean = _without_outliers(table)
    count = np.isfinite(clean).sum(axis=0)
    there = (seen >= SEEN) & (count > 1)
    total = np.where(np.isfinite(clean), clean, 0.0).sum(axis=0)
    mean = np.where(there, total / np.maximum(count, 1), np.nan)
    mean = mean - np.nanmean(mean) if there.any() else mean
    squares = np.where(np.isfinite(clean), (clean - total / np.maximum(count, 1)) ** 2, 0.0).sum(axis=0)
    scatter = np.sqrt(squares / np.maximum(count - 1, 1))
    scatter = np.maximum(scatter, 1e-9)
    effective = np.maximum(count * _independence(clean), 1.0)
    ripple, ripple_std = _order_one(clean, mean)
    return PolePitch(
        edges_per_rev=table.shape[1],
        turns=table.shape[0],
        shift_pole=mean,
        shift_std_pole=np.where(there, scatter / np.sqrt(effective), np.nan),
        scatter_pole=np.where(there, scatter, np.nan),
        seen_ratio=seen,
        ripple_ratio=ripple,
        ripple_std_ratio=ripple_std,
        extra_per_turn=extra_per_turn,
    )


def _without_outliers(table: FloatArray) -> FloatArray:
    """Drop single shifts far from the border's usual one: a neighbour's edge taken for it, a bump."""
    with np.errstate(invalid="ignore"):
        known = np.isfinite(table).any(axis=0)
        middle = np.zeros(table.shape[1])
        middle[known] = np.nanmedian(table[:, known], axis=0)
        away = np.abs(table - middle)
        usual = MAD_TO_SIGMA * float(np.nanmedian(away)) if known.any() else 0.0
        return np.where(away <= OUTLIER_SIGMA * max(usual, 1e-9) + 0.02, table, np.nan)


def _independence(table: FloatArray) -> float:
    """Share of the turns that count as independent: scatter of the turns over that of means of many turns."""
    there = np.isfinite(table)
    mean = np.where(there, table, 0.0).sum(axis=0) / np.maximum(there.sum(axis=0), 1)
    spread = np.where(there, table - mean, 0.0)
    blocks = min(BLOCKS, table.shape[0] // 2)
    if blocks < 3:
        return 0.5
    per_block = table.shape[0] // blocks
    cut = spread[: blocks * per_block].reshape(blocks, per_block, -1)
    single, together = float(cut.var()), float(cut.mean(axis=1).var() * per_block * blocks / (blocks - 1))
    return min(single / together, 1.0) if together > 0.0 else 1.0


def _order_one(table: FloatArray, mean: FloatArray) -> tuple[float, float]:
    """Order 1 of the feigned speed: a shift of s pitches, swinging once a turn, feigns 2 pi s / N."""
    poles = table.shape[1]
    base = np.exp(-2j * np.pi * np.arange(poles) / poles)
    away = np.where(np.isfinite(table), table - mean, 0.0)
    each = 2.0 / poles * (np.nan_to_num(away) @ base)
    middle = 2.0 / poles * complex(np.nan_to_num(mean) @ base)
    count = max(table.shape[0] * _independence(table), 2.0)
    std = float(np.sqrt(0.5 * np.mean(np.abs(each) ** 2) / count))
    amplitude = float(np.sqrt(max(abs(middle) ** 2 - 2.0 * std**2, 0.0)))
    return 2.0 * np.pi * amplitude / poles, 2.0 * np.pi * max(std, 1e-9) / poles
