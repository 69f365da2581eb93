"""Single edges of a wheel speed sensor: numbering them along the ring, and finding how many make a turn.

A train of edges is cut into segments in which the wheel turns steadily enough to tell a missing edge from a
change of speed. Inside a segment every edge gets a running number; a gap of k pitches advances it by k, an
extra edge between two others gets none.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.speed_log import BoolArray, FloatArray

IntArray = NDArray[np.int64]

MEDIAN_EDGES: Final = 31
"""Intervals whose median gives the usual one; fewer than half of them may be damaged."""

STEADY_RATIO: Final = 1.5
"""A segment ends where the usual interval changes by more than this over one window."""

REGULAR: Final = 0.3
SOUND: Final = 0.1
REACH: Final = 3
"""An interval off by 30 % is looked into, together with up to three beside it that are off by 10 %."""

WIDE_PITCH: Final = 0.75
"""Intervals that together are off by less than this many pitches are taken as one pitch each."""

LONGEST_GAP: Final = 24.0
"""Pitches over which the count is carried on through a gap (about a quarter of a turn)."""

FEWEST_IN_SEGMENT: Final = 120
FEWEST_POLES: Final = 20
MOST_POLES: Final = 260
TURNS_FOR_COUNT: Final = 5.0
SEGMENTS_FOR_COUNT: Final = 6
EDGES_FOR_COUNT: Final = 20_000
ODD_WHEEL: Final = 0.02
"""Chance that a wheel's own repetition says nothing about the number of its poles (judgement)."""

TEMPERING: Final = 0.25
"""Weight of the log-likelihood of a pole count: neighbouring intervals share edges and road (judgement)."""


@dataclass(frozen=True, slots=True)
class EdgeTrain:
    """Edges with their place on the ring, segment by segment.

    Attributes
    ----------
    time_s : float64[M]
        Edges that belong to a segment, extra ones left out.
    number : int64[M]
        Running number of the pole border, starting at 0 in every segment.
    segment : int64[M]
        Segment of every edge, from 0.
    pitch_s : float64[M]
        Usual time between two borders at that instant.
    extra_s : float64[K]
        Edges that stand where no border can be.
    """

    time_s: FloatArray
    number: IntArray
    segment: IntArray
    pitch_s: FloatArray
    extra_s: FloatArray

    @property
    def segments(self) -> int:
        """Number of segments."""
        return int(self.segment[-1]) + 1 if self.segment.size else 0


@dataclass(frozen=True, slots=True)
class PoleCount:
    """Edges of one turn, found from what repeats.

    Attributes
    ----------
    edges_per_rev : int
    probability : float
        How sure the number is, against all others from 20 to 260.
    own : tuple of (int or None)
        What each wheel says by itself; None where it is not clear.
    """

    edges_per_rev: int
    probability: float
    own: tuple[int | None, ...]


def number_edges(edges_s: FloatArray) -> EdgeTrain:
    """Give every edge of one wheel its number along the ring.

    Parameters
    ----------
    edges_s : float64[M]
        Rising times.

    Returns
    -------
    EdgeTrain
        Empty when nowhere enough edges follow each other steadily.

    Notes
    -----
    Assumes that at least half of any 31 intervals in a row are sound, and that a border never stands more
    than about half a pitch from its place. At pulling away and stopping, where the interval changes by a
    half within 31 edges, nothing is numbered.
    """
    from scipy.ndimage import median_filter  # noqa: PLC0415 - the window starts without it

    step_s = np.diff(edges_s)
    if step_s.size < FEWEST_IN_SEGMENT:
        return _joined([])
    usual_s = median_filter(step_s, size=MEDIAN_EDGES, mode="nearest")
    usual_s = np.maximum(usual_s, 1e-9)
    steady = _steady(usual_s) & (step_s < LONGEST_GAP * usual_s)
    bounds = np.flatnonzero(np.diff(np.concatenate(([False], steady, [False])).astype(np.int8)))
    pieces = []
    for first, stop in zip(bounds[::2], bounds[1::2], strict=True):
        if stop - first >= FEWEST_IN_SEGMENT:
            pieces += _numbered(edges_s[first : stop + 1], usual_s[first:stop])
    return _joined(pieces)


def find_pole_count(trains: Sequence[EdgeTrain]) -> PoleCount | None:
    """Find blind how many edges make a turn: the number after which the intervals repeat.

    Parameters
    ----------
    trains : sequence of EdgeTrain
        One per wheel; wheels without edges are passed over.

    Returns
    -------
    PoleCount or None
        None when no wheel shows a repetition.

    Notes
    -----
    For every candidate n the intervals, over the usual one, are averaged per place ``number mod n``; the
    logarithm of the residual variance against n - 1 free places gives the score (Schwarz's criterion, Ann.
    Statist. 6 (1978) 461, from memory), weighted down because neighbouring intervals are not independent.
    Each wheel's weights are then multiplied, with a share of 2 % for a wheel that is odd. Twice the true
    number fits as well with twice the places, and loses. Without pitch errors other than a smooth run-out
    neighbouring numbers fit alike, and the probability says so.
    """
    scores = [_count_score(train) for train in trains]
    known = [score for score in scores if score is not None]
    if not known:
        return None
    share = _joint_shares(known)
    best = int(np.argmax(share))
    if not best:
        return None
    own = tuple(None if score is None else _own_count(score) for score in scores)
    return PoleCount(best + FEWEST_POLES - 1, float(share[best]), own)


def _steady(usual_s: FloatArray) -> BoolArray:
    half = MEDIAN_EDGES // 2
    padded = np.pad(usual_s, half, mode="edge")
    ratio = padded[2 * half :] / padded[: -2 * half]
    steady: BoolArray = (ratio < STEADY_RATIO) & (ratio > 1.0 / STEADY_RATIO)
    return steady


_Piece = tuple[FloatArray, IntArray, FloatArray, FloatArray]


def _numbered(edges_s: FloatArray, usual_s: FloatArray) -> list[_Piece]:
    """Give the edges of one steady stretch their places; it is cut where a gap cannot be counted."""
    share = np.diff(edges_s) / usual_s
    number = np.zeros(edges_s.size)
    keep = np.ones(edges_s.size, dtype=bool)
    advance = np.ones(share.size)
    cuts = [0]
    irregular = np.concatenate(([False], np.abs(share - 1.0) > REGULAR, [False]))
    # an extra edge cuts one interval into two, of which one alone may look sound
    short = np.concatenate(([False], share < 1.0 - REGULAR, [False]))
    irregular[1:-1] |= short[:-2] | short[2:]
    off = np.concatenate(([False], np.abs(share - 1.0) > SOUND, [False]))
    for _ in range(REACH):  # borders beside a gap may lean towards it
        irregular[1:-1] |= off[1:-1] & (irregular[:-2] | irregular[2:])
    bounds = np.flatnonzero(np.diff(irregular.astype(np.int8)))
    for first, stop in zip(bounds[::2], bounds[1::2], strict=True):
        if not _count_through(share, slice(first, stop), advance, keep):
            cuts.append(int(stop))
    number[1:] = np.cumsum(advance)
    pieces = []
    for begin, end in zip(cuts, [*cuts[1:], edges_s.size], strict=True):
        chosen = np.arange(begin, end)[keep[begin:end]]
        if chosen.size >= FEWEST_IN_SEGMENT:
            whole = np.round(number[chosen] - number[chosen[0]]).astype(np.int64)
            extra = edges_s[begin:end][~keep[begin:end]]
            pieces.append((edges_s[chosen], whole, usual_s[np.minimum(chosen, usual_s.size - 1)], extra))
    return pieces


def _count_through(share: FloatArray, run: slice, advance: FloatArray, keep: BoolArray) -> bool:
    """Give the edges in an irregular run their places; False when the run's whole length is in doubt.

    ``advance`` and ``keep`` are changed: the sum of ``advance`` over the run is the pitches it spans, and
    edges without a place of their own are dropped.
    """
    place = np.cumsum(share[run])
    if abs(float(place[-1]) - place.size) < WIDE_PITCH and float(share[run].min()) > 0.5:
        return True  # all borders are there, though not in their places, as where a crack has opened the ring
    total = round(float(place[-1]))
    whole = np.clip(np.round(place), 0, total)
    whole[-1] = total
    taken: dict[int, int] = {0: -1, total: place.size - 1}
    for index in range(place.size - 1):
        spot = int(whole[index])
        rival = taken.get(spot)
        if rival is None:
            taken[spot] = index
        elif rival < 0 or rival == place.size - 1 or abs(place[rival] - spot) <= abs(place[index] - spot):
            keep[run.start + 1 + index] = False
        else:
            keep[run.start + 1 + rival] = False
            taken[spot] = index
    advance[run] = np.diff(whole, prepend=0.0)
    return total >= 1 and abs(float(place[-1]) - total) < REGULAR + 0.02 * total


def _joined(pieces: list[_Piece]) -> EdgeTrain:
    if not pieces:
        empty = np.zeros(0)
        none = np.zeros(0, dtype=np.int64)
        return EdgeTrain(empty, none, none, empty, empty)
    return EdgeTrain(
        time_s=np.concatenate([piece[0] for piece in pieces]),
        number=np.concatenate([piece[1] for piece in pieces]),
        segment=np.repeat(np.arange(len(pieces)), [piece[0].size for piece in pieces]),
        pitch_s=np.concatenate([piece[2] for piece in pieces]),
        extra_s=np.concatenate([piece[3] for piece in pieces]),
    )


def _count_score(train: EdgeTrain) -> FloatArray | None:
    """Score of no repetition (first) and of every candidate; None with too few edges."""
    total = np.zeros(MOST_POLES - FEWEST_POLES + 2)
    used = 0
    sizes = np.bincount(train.segment, minlength=train.segments)
    for segment in np.argsort(-sizes)[:SEGMENTS_FOR_COUNT]:
        chosen = np.flatnonzero(train.segment == segment)[:EDGES_FOR_COUNT]
        if chosen.size < TURNS_FOR_COUNT * FEWEST_POLES:
            continue
        place = train.number[chosen[:-1]]
        share = np.diff(train.time_s[chosen]) / train.pitch_s[chosen[:-1]] - 1.0
        total += _fold_scores(place, np.clip(share, -REGULAR, REGULAR))
        used += chosen.size
    return total if used else None


def _fold_scores(place: IntArray, value: FloatArray) -> FloatArray:
    """Half the gain in log-likelihood of folding at every candidate, less Schwarz's penalty."""
    value = value - value.mean()
    whole = max(float(value @ value), 1e-30)
    scores = np.zeros(MOST_POLES - FEWEST_POLES + 2)
    for index, poles in enumerate(range(FEWEST_POLES, MOST_POLES + 1), start=1):
        if value.size < TURNS_FOR_COUNT * poles:
            break  # too few turns to tell: as good as no repetition
        spot = place % poles
        count = np.bincount(spot, minlength=poles)
        sums = np.bincount(spot, weights=value, minlength=poles)
        filled = count > 0
        explained = float((sums[filled] ** 2 / count[filled]).sum())
        residual = max(whole - explained, 1e-9 * whole)
        gain = -0.5 * value.size * np.log(residual / whole)
        scores[index] = gain - 0.5 * (np.count_nonzero(filled) - 1) * np.log(value.size)
    return scores


def _shares(score: FloatArray) -> FloatArray:
    share = np.exp(TEMPERING * (score - score.max()))
    return np.asarray(share / share.sum(), dtype=np.float64)


def _joint_shares(scores: Sequence[FloatArray]) -> FloatArray:
    """Weigh the wheels together; each may be an odd one, so that none can outvote two others."""
    each = np.array([(1.0 - ODD_WHEEL) * _shares(score) + ODD_WHEEL / score.size for score in scores])
    joint = np.exp(np.log(each).sum(axis=0) - np.log(each).sum(axis=0).max())
    return np.asarray(joint / joint.sum(), dtype=np.float64)


def _own_count(score: FloatArray) -> int | None:
    share = _shares(score)
    best = int(np.argmax(share))
    return best + FEWEST_POLES - 1 if best and share[best] > 0.95 else None
