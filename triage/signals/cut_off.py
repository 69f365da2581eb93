"""The speed below which a wheel is silent.

It is small for every sound wheel, and large for a passive sensor with a wide gap.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.signals.conditioning import CommonClock
from triage.signals.losses import Losses
from triage.signals.running import runs
from triage.signals.vehicle_reference import VehicleReference
from triage.speed_log import BoolArray, FloatArray

STEP_MPS: Final = 0.1
HIGHEST_MPS: Final = 15.0
SILENT_MPS: Final = 0.05
FEWEST_SAMPLES: Final = 10
CLEAN_SPLIT: Final = 0.9
"""A cut-off is believed when it parts silent from speaking samples in this share of the slow samples."""


@dataclass(frozen=True, slots=True)
class CutOff:
    """Where one wheel falls silent.

    Attributes
    ----------
    speed_mps, std_mps : float
        Speed that parts silent from speaking samples best; NaN when the log never went slow enough, or
        when no single speed parts them.
    silent : bool[N]
        Silence below that speed, which is no drop-out.
    transitions : int
        How often the wheel fell silent or spoke again.
    """

    speed_mps: float
    std_mps: float
    silent: BoolArray
    transitions: int


def find_cut_offs(clock: CommonClock, reference: VehicleReference, losses: Losses) -> tuple[CutOff, ...]:
    """Find the cut-off speed of every wheel against what the others demand."""
    return tuple(_cut_off(clock, reference.expected_mps[row], losses.lost[row], row) for row in range(4))


def _cut_off(clock: CommonClock, expected_mps: FloatArray, lost: BoolArray, row: int) -> CutOff:
    none = np.zeros(expected_mps.size, dtype=bool)
    judged = (
        np.isfinite(expected_mps)
        & (expected_mps > STEP_MPS)
        & (expected_mps < HIGHEST_MPS)
        & clock.valid[row]
    )
    silent = judged & (np.abs(clock.speed_mps[row]) < SILENT_MPS)
    speaking = judged & ~silent
    if np.count_nonzero(silent) < FEWEST_SAMPLES or np.count_nonzero(speaking) < FEWEST_SAMPLES:
        return CutOff(float("nan"), float("nan"), none, 0)
    edges, wrong = _misplaced(expected_mps[silent], expected_mps[speaking])
    best = int(np.argmin(wrong))
    speed = float(edges[best])
    slow = judged & (expected_mps < max(2.0 * speed, 1.0))
    clean = 1.0 - wrong[best] / max(np.count_nonzero(slow), 1)
    if clean < CLEAN_SPLIT or best in (0, wrong.size - 1):
        return CutOff(float("nan"), float("nan"), none, 0)
    below = silent & (expected_mps < 1.15 * speed + STEP_MPS)
    crossings = sum(
        1 for first, stop in runs(slow) if 0 < np.count_nonzero(silent[first:stop]) < stop - first
    )
    overlap = _overlap(expected_mps[speaking & slow], expected_mps[below])
    return CutOff(
        speed,
        overlap / np.sqrt(max(crossings, 1)),
        below | (lost & (expected_mps < 1.5 * speed + 3.0 * STEP_MPS)),
        crossings,
    )


def _misplaced(silent_mps: FloatArray, speaking_mps: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Possible cuts, and how many samples each leaves wrong: speaking below it or silent above it."""
    edges = np.arange(0.0, HIGHEST_MPS + STEP_MPS, STEP_MPS)
    last = edges.size - 2
    silent, speaking = (
        np.bincount(np.minimum((one / STEP_MPS).astype(np.intp), last), minlength=last + 1).astype(float)
        for one in (silent_mps, speaking_mps)
    )
    below = np.concatenate(([0.0], np.cumsum(speaking)))
    above = np.concatenate((np.cumsum(silent[::-1])[::-1], [0.0]))
    return edges, below + above


def _overlap(speaking_mps: FloatArray, silent_mps: FloatArray) -> float:
    """Width of the range of speeds in which the wheel both speaks and is silent."""
    if not speaking_mps.size or not silent_mps.size:
        return STEP_MPS
    return max(float(np.quantile(silent_mps, 0.95) - np.quantile(speaking_mps, 0.05)), STEP_MPS)
