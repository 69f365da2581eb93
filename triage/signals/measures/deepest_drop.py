"""The deepest fall of a wheel's reading that no tyre makes: one is enough."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.losses import BRAKING_MPS2, SLOWER_SHARE
from triage.signals.measurement import Measured, Span
from triage.signals.measures.building import (
    SHORTEST_MOVING_S,
    measured,
    moving_spans,
    moving_time_s,
    too_little_driving,
)
from triage.signals.running import middle_value, stride_of
from triage.speed_log import BoolArray, FloatArray

FROM_MPS: Final = 3.0
"""Below, parking and tight curves shift the wheels against each other."""

LEAST_DEPTH: Final = 0.08
"""Roads and tyres make smaller ones."""

COMPANY_SHARE: Final = 0.4
"""A wheel is alone as long as no other is off by this part of its own fall."""

BREAK_SAMPLES: Final = 2
"""Samples above the bar that do not part one fall from the next."""

FEWEST_MISSING: Final = 3
"""So many readings in a row must be marked as none before they are a fall."""

LEAST_FRESH: Final = 1e-3
"""Keeps a wheel without any sample from a period without end."""

LARGEST_SCALE: Final = 0.3
"""A constant ratio beyond this is a wheel that is lost for most of the drive."""

MOST_FALLS: Final = 40
"""So many of the deepest are judged: among more, one that is no slip will have been found."""

BEGUN_SHARE: Final = 0.2
DONE_SHARE: Final = 0.8
"""A fall lasts from a fifth of its depth to four fifths."""

LONGEST_FALL_S: Final = 1.0
"""A fall is not looked for further back; one so slow is far below every bar (judgement)."""

ROLLING_MPS2: Final = 20.0
"""A wheel that nobody brakes falls no faster than twice what a road tyre's grip could do to the car."""

BRAKED_MPS2: Final = 150.0
"""Even a locking wheel falls more slowly (judgement)."""

LOCKED_DEPTH: Final = 0.85
LOCKED_MPS2: Final = 30.0
"""Under braking a wheel that goes to nothing this fast is taken for lost: brake control lets none lock."""

BRAKING_AROUND_S: Final = 0.4
"""So long before and after, a brake may still hold the wheel (judgement)."""

SILENT_S: Final = 1.0
"""A wheel that is short for longer, with nobody braking, does not slip, however slowly it fell."""


@dataclass(frozen=True, slots=True)
class _Falls:
    """Stretches in which one wheel alone reads short; samples of the common clock."""

    first: NDArray[np.intp]
    stop: NDArray[np.intp]
    depth_ratio: FloatArray


@dataclass(frozen=True, slots=True)
class _Depth:
    """How much of what it should read the wheel falls short; NaN where nothing is known.

    Worked out where it is asked for: of a long log hardly a sample is.
    """

    divergence_ratio: FloatArray
    scale_ratio: float
    gone: NDArray[np.intp]

    def at(self, samples: NDArray[np.intp]) -> FloatArray:
        depth: FloatArray = 1.0 - (1.0 + self.divergence_ratio[samples]) / (1.0 + self.scale_ratio)
        depth[np.isin(samples, self.gone)] = 1.0
        return depth

    def between(self, first: int, stop: int) -> FloatArray:
        return self.at(np.arange(first, stop))

    def short(self) -> NDArray[np.intp]:
        """Find the samples that fall short by more than roads and tyres make."""
        with np.errstate(invalid="ignore"):
            low = self.divergence_ratio < (1.0 - LEAST_DEPTH) * (1.0 + self.scale_ratio) - 1.0
        low[self.gone] = True
        return np.flatnonzero(low)


def measure_deepest_drop(analysis: Analysis, row: int) -> Measured:
    """Deepest fall of this wheel alone, in per cent of what it should read; 0 when there is none.

    A rate needs several losses before it stands out of the counting noise. That a wheel at 90 km/h reads
    nothing for a moment is a fact at its first time: the speed of a rolling wheel cannot fall so fast. A fall
    counts when it is faster than road and brake allow, or lasts without braking. Depth tells what was lost: a
    pole takes a part of the reading, an open circuit all of it. Valid from 10 km/h; at 10 Hz a short fall may
    lie between the samples.

    Notes
    -----
    The constant ratio of the wheel to the others is taken off first. The uncertainty is that of a single
    divergence: noise, and the sample that may miss the deepest point. Limits of the wheel's own deceleration
    are judgement: a tyre on dry road stops the car at 10 m/s2, and pulls a wheel that has left it no harder.
    """
    if moving_time_s(analysis, row) < SHORTEST_MOVING_S:
        return too_little_driving("deepest-drop", row)
    depth = _depth(analysis, row)
    falls = _find_falls(analysis, row, depth)
    span, deepest = moving_spans(analysis, row), 0.0
    for number in np.argsort(-falls.depth_ratio, kind="stable")[:MOST_FALLS].tolist():
        first, stop = int(falls.first[number]), int(falls.stop[number])
        if _is_no_slip(analysis, row, depth, (first, stop)):
            span, deepest = (_span(analysis, first, stop),), float(falls.depth_ratio[number])
            break
    sigma_ratio = analysis.residuals.sound_sigma_ratio
    noise = middle_value(sigma_ratio[:: stride_of(sigma_ratio.size)])
    std = max(0.02, noise, 0.05 * deepest)
    return measured(
        "deepest-drop",
        CORNERS[row],
        100.0 * deepest,
        100.0 * std,
        unit="%",
        count=int(falls.first.size),
        spans=span,
    )


def _depth(analysis: Analysis, row: int) -> _Depth:
    scale = float(analysis.reference.scale_ratio[row])
    divergence_ratio = analysis.reference.divergence_ratio[row]
    lost = np.flatnonzero(analysis.losses.alone[row])
    gone = lost[~np.isfinite(divergence_ratio[lost])]
    first, stop = _stretches(gone, 0)
    long_enough = np.repeat(stop - first >= FEWEST_MISSING, stop - first)
    # A message of its own may be late by a sample or two; a reading marked as none for longer is a loss.
    gone = gone[:0] if _is_slower(analysis, row) else gone[long_enough]
    return _Depth(divergence_ratio, scale if abs(scale) < LARGEST_SCALE else 0.0, gone)


def _is_slower(analysis: Analysis, row: int) -> bool:
    return float(analysis.clock.fresh[row].mean()) < SLOWER_SHARE


def _stretches(samples: NDArray[np.intp], break_samples: int) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """First and one past the last of the stretches that rising sample numbers form, short breaks closed."""
    opens = np.diff(samples, prepend=-np.inf) > break_samples + 1
    begins = np.flatnonzero(opens)
    ends = np.append(begins[1:], samples.size)[: begins.size] - 1
    return samples[begins], samples[ends] + 1


def _find_falls(analysis: Analysis, row: int, depth: _Depth) -> _Falls:
    short = depth.short()
    short = short[_judged(analysis, row, short)]
    others = [other for other in range(4) if other != row]
    beside = np.abs(np.nan_to_num(analysis.reference.divergence_ratio[others][:, short])).max(axis=0)
    short = short[beside < COMPANY_SHARE * depth.at(short)]
    first, stop = _stretches(short, BREAK_SAMPLES)
    places = np.searchsorted(short, first)
    deepest = np.maximum.reduceat(depth.at(short), places) if short.size else np.zeros(0)
    return _Falls(first, stop, deepest)


def _judged(analysis: Analysis, row: int, samples: NDArray[np.intp]) -> BoolArray:
    judged: BoolArray = (
        (analysis.reference.expected_mps[row, samples] > FROM_MPS)
        & ~analysis.losses.joint[samples]
        & ~analysis.cut_offs[row].silent[samples]
    )
    if _is_slower(analysis, row):
        # What befalls all wheels reaches a slower message by up to one of its periods later.
        period = int(np.ceil(1.0 / max(float(analysis.clock.fresh[row].mean()), LEAST_FRESH)))
        now = analysis.reference.reference_mps[samples]
        before = analysis.reference.reference_mps[np.maximum(samples - period - 1, 0)]
        judged &= np.abs(now - before) < COMPANY_SHARE * now
    return judged


def _is_no_slip(analysis: Analysis, row: int, depth: _Depth, fall: tuple[int, int]) -> bool:
    """Whether a fall is faster than road and brake allow, or lasts though nobody brakes."""
    first, stop = fall
    deepest = float(np.nanmax(depth.between(first, stop)))
    braked = _is_braking(analysis, first, stop)
    # By samples, not by the clock: a pause of the recorder is no time in which the wheel was short.
    if not braked and (stop - first) * analysis.clock.period_s > SILENT_S:
        return True
    rate_mps2 = _fall_rate(analysis, row, depth, fall)
    if rate_mps2 > (BRAKED_MPS2 if braked else ROLLING_MPS2):
        return True
    return deepest > LOCKED_DEPTH and rate_mps2 > LOCKED_MPS2


def _fall_rate(analysis: Analysis, row: int, depth: _Depth, fall: tuple[int, int]) -> float:
    """Deceleration of the reading against what it should be, in m/s2."""
    time_s = analysis.clock.time_s
    first, stop = fall
    fallen = depth.between(first, stop)
    deepest = float(np.nanmax(fallen))
    done = first + int(np.argmax(fallen > DONE_SHARE * deepest))
    earliest = max(done - analysis.clock.samples_in(LONGEST_FALL_S), 0)
    course = depth.between(earliest, done + 1)
    # A missing sample is not a shallow one: inside a slow fall it would make an impossible one of the rest.
    shallow = np.flatnonzero(course[:-1] <= BEGUN_SHARE * deepest)
    begun = int(shallow[-1]) if shallow.size else int(np.argmax(np.isfinite(course)))
    before = float(course[begun])
    lasted_s = max(float(time_s[done] - time_s[earliest + begun]), analysis.clock.period_s)
    return (float(course[-1]) - before) * float(analysis.reference.expected_mps[row, done]) / lasted_s


def _is_braking(analysis: Analysis, first: int, stop: int) -> bool:
    around = analysis.clock.samples_in(BRAKING_AROUND_S)
    return bool((analysis.acceleration_mps2[max(first - around, 0) : stop + around] < BRAKING_MPS2).any())


def _span(analysis: Analysis, first: int, stop: int) -> Span:
    time_s = analysis.clock.time_s
    return float(time_s[first]), float(min(time_s[stop - 1] + analysis.clock.period_s, time_s[-1]))
