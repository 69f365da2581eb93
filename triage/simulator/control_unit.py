"""The brake control unit: from edges to the speed it puts on the bus."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final, Literal

import numpy as np
from scipy.signal import lfilter

from triage.simulator.equipment import ControlUnit
from triage.simulator.plausibility import find_jumps, find_strays, hold_believed, substitute_doubted
from triage.speed_log import BoolArray, FloatArray
from triage.units import KMH

UpsetKind = Literal["zero", "freeze", "mark", "jump"]

_SETTLING_S: Final = 0.06

FASTEST_MPS: Final = 350.0 * KMH
"""Speed beyond which the unit takes an edge for a disturbance."""


@dataclass(frozen=True, slots=True)
class Upset:
    """A time in which the unit as a whole misbehaves: all wheels alike."""

    start_s: float
    stop_s: float
    kind: UpsetKind
    jump_ratio: float = 0.0


@dataclass(frozen=True, slots=True)
class UnitOutput:
    """What the unit puts out, cycle by cycle; rows follow ``CORNERS``.

    Attributes
    ----------
    time_s : float64[C]
        End of each cycle.
    speed_mps : float64[4, C]
        Speed put out.
    marked : bool[4, C]
        The unit marks the value as not available.
    fault : bool[4, C]
        The unit's own fault bit.
    pulses : float64[4, C]
        Edges counted since the start, whatever is made of them.
    """

    time_s: FloatArray
    speed_mps: FloatArray
    marked: BoolArray
    fault: BoolArray
    pulses: FloatArray


def freeze_speed(output: UnitOutput, row: int, spans_s: FloatArray) -> UnitOutput:
    """Let the unit keep the last value of one wheel within the spans, float64[M, 2]."""
    speed_mps = output.speed_mps.copy()
    for start, stop in spans_s:
        first, end = np.searchsorted(output.time_s, (start, stop))
        if first < end:
            speed_mps[row, first:end] = speed_mps[row, max(first - 1, 0)]
    return replace(output, speed_mps=speed_mps)


def estimate_speeds(
    edges_s: Sequence[FloatArray],
    unit: ControlUnit,
    *,
    edges_per_rev: int,
    duration_s: float,
    upsets: Sequence[Upset] = (),
) -> UnitOutput:
    """Estimate the four wheel speeds as the unit does.

    Parameters
    ----------
    edges_s : four float64 arrays
        Rising instants of the edges of each wheel, in the order of ``CORNERS``.
    unit : ControlUnit
        The unit's way of working.
    edges_per_rev : int
        Edges of one revolution that the unit assumes for every wheel.
    duration_s : float
        Length of the drive.
    upsets : sequence of Upset
        Times in which the unit as a whole misbehaves.

    Returns
    -------
    UnitOutput
    """
    time_s: FloatArray = np.arange(1, int(duration_s / unit.cycle_s) + 1, dtype=np.float64) * unit.cycle_s
    pitch_m = unit.circumference_m / edges_per_rev
    believed = [_debounce(edges, pitch_m) for edges in edges_s]
    raw = np.stack([raw_speed(edges, time_s, unit, pitch_m=pitch_m) for edges in believed])
    # The unit was running before the log begins: no estimate starts from nothing.
    settled = min(unit.averaging_cycles + round(_SETTLING_S / unit.cycle_s), time_s.size - 1)
    raw[:, :settled] = raw[:, settled : settled + 1]
    checked, doubted = _check(raw, unit)
    speed = np.stack([_polish(row, unit) for row in checked])
    silent = _silent(speed, unit)
    marked = silent | doubted if unit.jump_reaction == "mark" else silent
    fault = marked | doubted if unit.tells_fault else marked
    pulses = np.stack([_counted(edges, time_s, upsets) for edges in believed])
    return _upset(UnitOutput(time_s, speed, marked, fault, pulses), upsets)


def raw_speed(edges_s: FloatArray, time_s: FloatArray, unit: ControlUnit, *, pitch_m: float) -> FloatArray:
    """Speed of one wheel by the unit's method before it is checked, float64[C]; see :func:`held_speed`."""
    if unit.method == "timing":
        return held_speed(edges_s, time_s, unit, pitch_m=pitch_m)
    window_s = unit.averaging_cycles * unit.cycle_s
    begin = np.searchsorted(edges_s, time_s - window_s, side="right")
    counted = np.searchsorted(edges_s, time_s, side="right") - begin
    return np.asarray(counted * pitch_m / window_s, dtype=np.float64)


def _check(raw_mps: FloatArray, unit: ControlUnit) -> tuple[FloatArray, BoolArray]:
    """Estimates with the unit's reaction to implausible ones, and where it doubted, both [4, C]."""
    if unit.jump_reaction == "none":
        return raw_mps, np.zeros(raw_mps.shape, dtype=np.bool_)
    doubted = np.stack([find_jumps(row, unit) for row in raw_mps])
    if unit.jump_reaction == "substitute":
        doubted |= find_strays(raw_mps, unit)
        return substitute_doubted(raw_mps, doubted, unit), doubted
    return np.stack([hold_believed(*pair) for pair in zip(raw_mps, doubted, strict=True)]), doubted


def _counted(edges_s: FloatArray, time_s: FloatArray, upsets: Sequence[Upset]) -> FloatArray:
    """Counter of one wheel at the end of each cycle, float64[C]; a unit that is off counts nothing."""
    for upset in upsets:
        if upset.kind == "zero":
            edges_s = edges_s[(edges_s < upset.start_s) | (edges_s >= upset.stop_s)]
    return np.searchsorted(edges_s, time_s, side="right").astype(np.float64)


def _debounce(edges_s: FloatArray, pitch_m: float) -> FloatArray:
    """Leave out edges that follow the one before faster than any wheel can turn."""
    return edges_s[np.diff(edges_s, prepend=-np.inf) > pitch_m / FASTEST_MPS]


def held_speed(edges_s: FloatArray, time_s: FloatArray, unit: ControlUnit, *, pitch_m: float) -> FloatArray:
    """Edges over the time they took, held and decaying while none comes.

    Parameters
    ----------
    edges_s : float64[M]
        Rising instants of the edges.
    time_s : float64[C]
        Ends of the cycles.
    unit : ControlUnit
        Averaging, hold and time-out are used.
    pitch_m : float
        Way between two edges.

    Returns
    -------
    float64[C]
        Speed in m/s.

    Notes
    -----
    While no edge comes, the wheel cannot be faster than one pitch over the time since the last edge.
    """
    if edges_s.size < 2:
        return np.zeros(time_s.size)
    count = np.searchsorted(edges_s, time_s, side="right")
    last = np.where(count > 0, edges_s[np.maximum(count - 1, 0)], -np.inf)
    estimate = _timed(edges_s, time_s, count=count, last=last, unit=unit) * pitch_m
    ready = np.isfinite(estimate)
    newest = np.maximum.accumulate(np.where(ready, np.arange(time_s.size), -1))
    held = np.where(newest >= 0, estimate[np.maximum(newest, 0)], 0.0)
    waited = time_s - last
    bound = np.where(waited > unit.hold_s, pitch_m / np.maximum(waited, 1e-6), np.inf)
    return np.where(waited > unit.timeout_s, 0.0, np.minimum(held, np.where(ready, np.inf, bound)))


def _timed(
    edges_s: FloatArray,
    time_s: FloatArray,
    *,
    count: np.ndarray[tuple[int], np.dtype[np.int64]],
    last: FloatArray,
    unit: ControlUnit,
) -> FloatArray:
    """Edges per second in every cycle that has a new one, NaN in the others, float64[C]."""
    reach = unit.averaging_cycles
    before = np.concatenate((np.zeros(reach, dtype=np.int64), count[:-reach]))
    previous = np.concatenate(([0], count[:-1]))
    anchor = np.where(before > 0, edges_s[np.maximum(before - 1, 0)], -np.inf)
    # After a silence the old edge says nothing: time from the first new edge instead.
    stale = time_s - anchor > unit.timeout_s + reach * unit.cycle_s
    first_new = edges_s[np.minimum(before, edges_s.size - 1)]
    gained = count - before - stale
    elapsed = last - np.where(stale, first_new, anchor)
    usable = (count > previous) & (gained > 0) & (elapsed > 0.0)
    return np.where(usable, gained / np.where(usable, elapsed, 1.0), np.nan)


def _polish(speed_mps: FloatArray, unit: ControlUnit) -> FloatArray:
    if unit.filter_s > 0.0:
        gain = 1.0 - float(np.exp(-unit.cycle_s / unit.filter_s))
        # The filter was running before the log begins, so it starts settled.
        settled = np.array([(1.0 - gain) * speed_mps[min(2, speed_mps.size - 1)]])
        filtered, _ = lfilter([gain], [1.0, gain - 1.0], speed_mps, zi=settled)
        speed_mps = np.asarray(filtered, dtype=np.float64)
    return np.where(speed_mps < unit.zero_below_mps, 0.0, speed_mps)


def _silent(speed_mps: FloatArray, unit: ControlUnit) -> BoolArray:
    """Find where a wheel has read 0 for long while the others run, bool[4, C]."""
    silent = np.zeros(speed_mps.shape, dtype=np.bool_)
    if not np.isfinite(unit.mark_silent_after_s):
        return silent
    alone = (speed_mps <= 0.0) & (np.median(speed_mps, axis=0) > 3.0)
    wait = round(unit.mark_silent_after_s / unit.cycle_s)
    for row in range(speed_mps.shape[0]):
        place = np.arange(speed_mps.shape[1])
        since = place - np.maximum.accumulate(np.where(alone[row], -1, place))
        silent[row] = since > wait
    return silent


def _upset(output: UnitOutput, upsets: Sequence[Upset]) -> UnitOutput:
    speed, marked, fault = output.speed_mps.copy(), output.marked.copy(), output.fault.copy()
    for upset in upsets:
        first, stop = np.searchsorted(output.time_s, (upset.start_s, upset.stop_s))
        fault[:, first:stop] = True
        if upset.kind == "mark":
            marked[:, first:stop] = True
        elif upset.kind == "zero":
            speed[:, first:stop] = 0.0
        elif upset.kind == "jump":
            speed[:, first:stop] *= 1.0 + upset.jump_ratio
        elif stop > first > 0:
            speed[:, first:stop] = speed[:, first - 1 : first]
    return replace(output, speed_mps=speed, marked=marked, fault=fault)
