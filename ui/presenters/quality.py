"""How good a recording is: rates, gaps, steps and jitter of every wheel, and what was done to it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.corners import CORNERS
from triage.speed_log import SpeedLog, SpeedTrace
from triage.texts import Text, as_text
from triage.units import to_kmh
from ui.presenters.entries import Entry, build_notice_entries
from ui.presenters.traces import GAP_PERIODS, GAP_S

ENOUGH_STEPS: Final = 50_000

MAD_TO_SIGMA: Final = 1.4826
"""Standard deviation of a normal distribution in units of its median absolute deviation."""


@dataclass(frozen=True, slots=True)
class TraceQuality:
    """How well one wheel was recorded.

    Attributes
    ----------
    rate_hz : float
        Samples a second, by the median step; 0 with fewer than two samples.
    jitter_s : float
        Spread of the steps between samples, as a standard deviation deaf to gaps.
    gap_count, longest_gap_s : int, float
        Holes of more than 2.5 usual steps and 40 ms.
    gaps_s : float
        Sum of all holes.
    invalid_ratio : float
        Share of the samples that the log marks as not available.
    step_mps : float
        Smallest step of the recorded numbers; 0 when none can be seen.
    """

    rate_hz: float
    jitter_s: float
    gap_count: int
    longest_gap_s: float
    gaps_s: float
    invalid_ratio: float
    step_mps: float


@dataclass(frozen=True, slots=True)
class QualityRow:
    """One line of the table: what it is, four values in the order of the wheels, and what it means."""

    title: str
    cells: tuple[str, ...]
    meaning: str


def measure_quality(trace: SpeedTrace) -> TraceQuality:
    """Measure the clock and the numbers of one wheel's trace."""
    step_s = np.diff(trace.time_s)
    # The middle of a day's steps is that of some of them, and quicker.
    some_s = step_s[:: 1 + step_s.size // ENOUGH_STEPS]
    usual_s = float(np.median(some_s)) if some_s.size else 0.0
    longest_s = max(GAP_S, GAP_PERIODS * usual_s)
    gaps_s = step_s[step_s > longest_s]
    near_s = some_s[some_s <= longest_s]
    spread_s = float(np.median(np.abs(near_s - np.median(near_s)))) if near_s.size else 0.0
    return TraceQuality(
        rate_hz=1.0 / usual_s if usual_s > 0.0 else 0.0,
        jitter_s=MAD_TO_SIGMA * spread_s,
        gap_count=int(gaps_s.size),
        longest_gap_s=float(gaps_s.max(initial=0.0)),
        gaps_s=float(gaps_s.sum()),
        invalid_ratio=float(trace.invalid.mean()) if trace.invalid.size else 0.0,
        step_mps=trace.resolution_mps,
    )


_NUMBERS: Final[tuple[tuple[str, Callable[[TraceQuality], str], str], ...]] = (
    (
        Text("Rate, Hz"),
        lambda one: f"{one.rate_hz:.1f}",
        Text("Samples a second, by the usual step. Below 20 Hz the ring map reaches only slow driving."),
    ),
    (
        Text("Jitter, ms"),
        lambda one: f"{1e3 * one.jitter_s:.2f}",
        Text("How much the step from sample to sample scatters."),
    ),
    (
        Text("Gaps"),
        lambda one: f"{one.gap_count}",
        Text("Holes longer than two and a half usual steps and 40 ms."),
    ),
    (
        Text("Longest gap, s"),
        lambda one: f"{one.longest_gap_s:.2f}" if one.gap_count else "–",
        Text("The longest hole between two samples."),
    ),
    (
        Text("All gaps, s"),
        lambda one: f"{one.gaps_s:.2f}" if one.gap_count else "–",
        Text("Time in all holes together."),
    ),
    (
        Text("Invalid, %"),
        lambda one: f"{100.0 * one.invalid_ratio:.2f}",
        Text("Share of samples marked as not available; they are left out, never taken for 0."),
    ),
    (
        Text("Step, km/h"),
        lambda one: f"{to_kmh(one.step_mps):.3f}" if one.step_mps > 0.0 else "–",
        Text("Smallest step of the recorded numbers; ripple smaller than this is hidden."),
    ),
)
"""Title, cell of a wheel, and meaning of the rows that are measured."""


def build_quality_rows(log: SpeedLog) -> tuple[QualityRow, ...]:
    """Return the table of the four wheels."""
    traces = [log.wheels[corner] for corner in CORNERS]
    found = [measure_quality(trace) for trace in traces]
    numbers = (
        QualityRow(title, tuple(cell(one) for one in found), meaning) for title, cell, meaning in _NUMBERS
    )
    return (
        QualityRow(
            Text("Samples"),
            tuple(f"{trace.time_s.size}" for trace in traces),
            Text("Samples in the recording."),
        ),
        *numbers,
        QualityRow(
            Text("Unit"),
            tuple(trace.unit for trace in traces),
            Text("Unit in which the recording gives the speed."),
        ),
    )


def build_repair_entries(log: SpeedLog) -> tuple[Entry, ...]:
    """Return what was noticed while reading, and every step that was taken with the recording."""
    noticed = build_notice_entries(log)
    calm = Entry(Text("Noticed while reading"), text=Text("Nothing unusual."))
    steps = tuple((as_text(step.action), as_text(step.detail or Text("done"))) for step in log.history)
    nothing = Text("Nothing had to be changed.")
    done = Entry(Text("Done with the recording"), facts=steps, text="" if steps else nothing)
    return (*(noticed or (calm,)), done)
