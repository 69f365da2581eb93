"""Mending the clock of a recording: restarts, steps back, repeated instants."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.speed_log import BoolArray, FloatArray, Notice
from triage.texts import Text

RESTART_S: Final = 1.0
"""A step back of more than this that is not made up for at once is a restart of the clock (judgement)."""

_BEYOND_ALL_S: Final = 1e15
"""Thirty million years; what is later is no time."""

_DAY_S: Final = 86400.0
_HOUR_S: Final = 3600.0
_STRAY_RATIO: Final = 0.01
_RESTARTS_MAX: Final = 1000
_COUNTER_RANGES_S: Final = tuple(
    bits_range * tick_s
    for bits_range in (2.0**32, 2.0**31, 2.0**24, 2.0**16)
    for tick_s in (1e-2, 1e-3, 1e-4, 1e-5, 1e-6, 1e-7, 1e-9)
    if bits_range * tick_s > RESTART_S
)
"""Spans after which the usual counters behind a clock begin again at their lowest number."""

_MOST_INSTANTS: Final = 4_000_000
"""Eleven days at four a second; damaged times may span centuries, and that much would fill the memory."""

_WRAP_STEPS: Final = 5.0
_CAUGHT_UP: Final = 10
"""Samples within which a clock that merely delivered late is back where it was."""


@dataclass(frozen=True, slots=True)
class OrderedSamples:
    """One signal in rising time.

    Attributes
    ----------
    time_s, value : float64[M]
        Strictly rising times and their values.
    back_count : int
        How often the time of the file stepped back.
    repeated_count : int
        Samples left out because their instant was there already.
    """

    time_s: FloatArray
    value: FloatArray
    back_count: int
    repeated_count: int


@dataclass(frozen=True, slots=True)
class MendedClock:
    """Times of a recording without restarts and strays.

    Attributes
    ----------
    time_s : float64[N]
        In the order of the file; NaN where there is no usable time.
    restart_count : int
        How often the clock started anew or was set.
    stray_count : int
        Times so far from all others that they can only be damaged.
    wrap_count : int
        How often the counter behind the clock ran over its highest number.
    """

    time_s: FloatArray
    restart_count: int
    stray_count: int
    wrap_count: int = 0

    def notices(self, file: str) -> list[Notice]:
        """Say what was done."""
        found = []
        if self.restart_count:
            text = Text(
                "{file}: the clock started anew {restart_count} times; the times were joined.",
                file=file,
                restart_count=self.restart_count,
            )
            found.append(Notice("clock-reset", text, self.restart_count))
        if self.wrap_count:
            text = Text(
                "{file}: the counter of the clock ran over {wrap_count} times; the times run on.",
                file=file,
                wrap_count=self.wrap_count,
            )
            found.append(Notice("clock-reset", text, self.wrap_count))
        if self.stray_count:
            text = Text(
                "{file}: {stray_count} time stamps lie far from all others and were left out.",
                file=file,
                stray_count=self.stray_count,
            )
            found.append(Notice("clock-strays", text, self.stray_count))
        return found


def mend_clock(time_s: FloatArray) -> MendedClock:
    """Let the time run on where the clock of the recorder started anew or was set, and drop stray times.

    Parameters
    ----------
    time_s : float64[N]
        Times in the order of the file; NaN where there is none.

    Returns
    -------
    MendedClock
        After a restart the recording goes on one usual step after the last instant before it, because the
        true pause is unknown. A step forward of more than a day is a clock that was set.
    """
    known = np.isfinite(time_s) & (np.abs(time_s) < _BEYOND_ALL_S)
    if known.all() and time_s.size and not _needs_mending(time_s):
        return MendedClock(time_s, 0, 0)
    strays = _strays(time_s, known) | (np.abs(time_s) >= _BEYOND_ALL_S)
    kept = known & ~strays
    mended = np.full(time_s.size, np.nan)
    mended[kept], restarts, wraps = _joined(time_s[kept])
    return MendedClock(mended, restarts, int(np.count_nonzero(strays)), wraps)


def _needs_mending(time_s: FloatArray) -> bool:
    return bool((np.diff(time_s) < -RESTART_S).any()) or float(np.ptp(time_s)) > _DAY_S


def _strays(time_s: FloatArray, known: BoolArray) -> BoolArray:
    """Mark times in clusters, an hour or more from all others, that hold less than a hundredth of them."""
    stray = np.zeros(time_s.size, dtype=bool)
    if not known.any() or float(np.ptp(time_s[known])) <= _DAY_S:
        return stray
    order = np.flatnonzero(known)[np.argsort(time_s[known], kind="stable")]
    cluster = np.concatenate(([0], np.cumsum(np.diff(time_s[order]) > _HOUR_S)))
    size = np.bincount(cluster)
    small = size < max(_STRAY_RATIO * order.size, 2)
    small[np.argmax(size)] = False
    stray[order] = small[cluster]
    return stray


def _joined(time_s: FloatArray) -> tuple[FloatArray, int, int]:
    step = np.diff(time_s)
    odd = (step < -RESTART_S) | (step > _DAY_S)
    if not odd.any():
        return time_s, 0, 0
    usual = float(np.median(step[(step > 0) & ~odd])) if ((step > 0) & ~odd).any() else 0.0
    mended = time_s.copy()
    restarts = wraps = 0
    for index in np.flatnonzero(odd)[:_RESTARTS_MAX] + 1:
        before = mended[:index].max()
        if mended[index] <= before + _DAY_S and not _stays_behind(mended[index:], before):
            continue
        span_s = _counter_range(mended[index - 1] - mended[index], usual)
        mended[index:] += span_s or before + usual - mended[index]
        wraps += span_s > 0
        restarts += span_s == 0
    return mended, restarts, wraps


def _counter_range(fall_s: float, usual_s: float) -> float:
    """Range of a counter that ran over, 0 where the fall is none of a counter but a restart."""
    fits = [span for span in _COUNTER_RANGES_S if 0 < span - fall_s <= _WRAP_STEPS * usual_s]
    return min(fits, key=lambda span: span - fall_s, default=0.0)


def order_samples(time_s: FloatArray, value: FloatArray) -> OrderedSamples:
    """Put samples in rising time and leave out repeated instants.

    Parameters
    ----------
    time_s, value : float64[N]
        In the order of the file; a NaN value is an invalid sample.

    Returns
    -------
    OrderedSamples
        Of samples at one instant the first valid one is kept.
    """
    if bool(np.all(time_s[1:] > time_s[:-1])):
        return OrderedSamples(time_s, value, 0, 0)
    back = int(np.count_nonzero(time_s[1:] < time_s[:-1]))
    order = np.lexsort((np.isnan(value), time_s))
    time_s, value = time_s[order], value[order]
    keep = _first_of_instant(time_s)
    return OrderedSamples(time_s[keep], value[keep], back, int(np.count_nonzero(~keep)))


def even_times(begin_s: float, end_s: float, step_s: float) -> FloatArray:
    """Return instants at equal distances, float64[N]; of a span beyond any drive only its beginning."""
    return np.arange(begin_s, min(end_s, begin_s + _MOST_INSTANTS * step_s), step_s)


def find_echoes(time_s: FloatArray, payload_key: NDArray[np.uint64]) -> BoolArray:
    """Find frames that repeat the frame just before, as a gateway that hears its own sending records them.

    Parameters
    ----------
    time_s : float64[N]
        Rising times of the frames of one identifier on one bus.
    payload_key : uint64[N]
        Equal for equal payloads.

    Returns
    -------
    bool[N]
        The frames to leave out. All False unless at least four in ten frames are such repeats, because a
        single quick repetition is a sender's own doing.
    """
    none = np.zeros(time_s.size, dtype=bool)
    if time_s.size < 10:
        return none
    step = np.diff(time_s)
    every_second = float(np.median(step[:-1] + step[1:]))
    echo = none.copy()
    echo[1:] = (step < 0.1 * every_second) & (payload_key[1:] == payload_key[:-1])
    return echo if np.count_nonzero(echo) >= 0.4 * time_s.size else none


def _stays_behind(rest: FloatArray, before: float) -> bool:
    soon = rest[: _CAUGHT_UP + 1]
    return bool((soon < before).all()) and rest.size > _CAUGHT_UP // 2


def _first_of_instant(time_s: FloatArray) -> BoolArray:
    keep = np.ones(time_s.size, dtype=bool)
    keep[1:] = np.diff(time_s) > 0
    return keep
