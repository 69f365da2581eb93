"""What was lost where: the one source of the table of losses and of the marks in the plots."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from triage.signals.running import run_bounds
from triage.speed_log import BoolArray, FloatArray
from ui.presenters.traces import GAP_PERIODS, GAP_S

if TYPE_CHECKING:
    from triage.signals.analysis import Analysis

LOW, FROZEN, SILENT, WITH_OTHERS, GONE, TOGETHER, PAUSE = range(1, 8)
"""What happened; of several within one loss the largest counts."""

OF_ALL_WHEELS = TOGETHER
"""From this kind on a loss is told of all wheels."""

SLIGHT = (LOW, SILENT)
"""No drop-outs: a reading that was briefly too low, and silence below the lowest speed of a sensor."""


@dataclass(frozen=True, slots=True)
class Stretches:
    """Unbroken stretches in which something was lost, in order of time; arrays of one length K.

    Attributes
    ----------
    first : int[K]
        Sample of the common clock at which each begins.
    begin_s, length_s : float64[K]
        Seconds of the log, and how long: a single sample lasts a period.
    kind : int[K]
        From :data:`LOW` to :data:`PAUSE`.
    """

    first: NDArray[np.intp]
    begin_s: FloatArray
    length_s: FloatArray
    kind: NDArray[np.intp]

    def spans(self, kept: BoolArray) -> FloatArray:
        """Return begin and end of some of them, float64[K, 2]."""
        return np.stack((self.begin_s, self.begin_s + self.length_s), axis=1)[kept]


def find_stretches_lost(analysis: Analysis, row: int) -> Stretches:
    """Return the losses of a wheel and those of all wheels at once, without pauses of the recorder."""
    kinds = _kinds(analysis, row)
    time_s = analysis.clock.time_s
    first, stop = run_bounds(kinds > 0)
    if not first.size:
        return Stretches(first, np.zeros(0), np.zeros(0), first)
    length_s = time_s[stop - 1] - time_s[first] + analysis.clock.period_s
    largest: NDArray[np.intp] = np.maximum.reduceat(kinds, first)
    return Stretches(first, time_s[first], length_s, largest.astype(np.intp))


def find_pauses(analysis: Analysis) -> Stretches:
    """Return the holes in which no wheel was recorded, as the plots leave them open."""
    time_s = analysis.clock.time_s
    step_s = np.diff(time_s)
    longest_s = max(GAP_S, GAP_PERIODS * float(np.median(step_s))) if step_s.size else np.inf
    at = np.flatnonzero(step_s > longest_s)
    return Stretches(at, time_s[at], step_s[at], np.full(at.size, PAUSE, dtype=np.intp))


def _kinds(analysis: Analysis, row: int) -> NDArray[np.int8]:
    losses = analysis.losses
    lost, moving = losses.lost[row], losses.moving[row]
    kinds = np.zeros(lost.size, dtype=np.int8)
    for kind, flag in (
        (LOW, losses.low[row]),
        (FROZEN, losses.frozen[row]),
        (WITH_OTHERS, lost),
        (GONE, losses.alone[row]),
        (SILENT, (lost | losses.alone[row]) & analysis.cut_offs[row].silent),
    ):
        kinds[flag & moving] = kind
    kinds[losses.joint] = TOGETHER
    return kinds
