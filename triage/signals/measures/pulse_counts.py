"""What the pulse counters say about a wheel, against the other wheels and against its own speed."""

from __future__ import annotations

import numpy as np

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.measurement import Measured, NotMeasurable
from triage.signals.measures.building import (
    SHORTEST_MOVING_S,
    event_spans,
    measured,
    missing,
    moving_spans,
    moving_time_s,
    too_little_driving,
)
from triage.signals.pulse_counters import PulseCounters
from triage.signals.revolution_line import RevolutionLine
from triage.signals.running import count_of, runs
from triage.speed_log import FloatArray

NEEDED = "pulse counters of the wheels in the recording, and half a minute or more of straight driving"
BLOCK_S = 2.0
FEWEST_BLOCKS = 5
SLOWEST_MPS = 4.0
STRAIGHTEST_RADPM = 0.02
"""Curves up to 50 m radius are taken along, with the way of the wheel corrected for them."""

MOST_DOUBT = 0.5
"""Half a pulse of doubt about the other wheels' turns leaves nothing to compare with."""

SLIP_PERCENT = 0.1
"""Standard uncertainty from drive slip and load, which no measuring time reduces (as for the ratio)."""


def measure_pulse_offset(analysis: Analysis, row: int) -> Measured:
    """Pulses per metre of the wheel against the other wheels, in per cent.

    Formula: counted pulses over the way that the three other wheels and the curve demand of this one, in
    blocks of 2 s; middle of the blocks, relative to the middle of all wheels. Unlike the recorded speed the
    count cannot be held or replaced by the control unit. Assumes rolling without much slip. Valid above 15
    km/h in curves wider than 50 m. Uncertainty: scatter of the blocks, and 0.1 % for slip and load.
    """
    counters = analysis.counters
    if counters is None or not counters.covers[row]:
        return _no_counter("pulse-offset", row)
    each = [_pulses_per_metre(analysis, counters, number) for number in range(4)]
    own, known = each[row], [one for one in each if one.size >= FEWEST_BLOCKS]
    if own.size < FEWEST_BLOCKS or len(known) < 2:
        return missing("pulse-offset", row, "too little fairly straight driving above 15 km/h", NEEDED)
    usual = float(np.median([np.median(one) for one in known]))
    low, high = np.quantile(own / usual, (0.159, 0.841))
    std = 100.0 * 1.2533 * (high - low) / 2.0 / np.sqrt(own.size)
    return measured(
        "pulse-offset",
        CORNERS[row],
        100.0 * (float(np.median(own)) / usual - 1.0),
        np.hypot(std, SLIP_PERCENT),
        unit="%",
        count=own.size,
        spans=moving_spans(analysis, row),
    )


def measure_substituted_share(analysis: Analysis, row: int) -> Measured:
    """Share of the moving time in which the counter does not support the speed the wheel reads, in per cent.

    A control unit may put another wheel's speed in the place of a lost one; the counter then stands still
    or runs slow. Counted where it gives less than half of the pulses that the speed stands for over 0.1 s
    or more and at least eight pulses. Uncertainty: the number of such stretches, and 0.02 % at least
    (judgement).
    """
    counters = analysis.counters
    if counters is None or not counters.covers[row]:
        return _no_counter("substituted-share", row)
    moving_s = moving_time_s(analysis, row)
    if moving_s < SHORTEST_MOVING_S:
        return too_little_driving("substituted-share", row)
    flag = counters.unsupported[row] & analysis.losses.moving[row] & ~analysis.losses.lost[row]
    share = 100.0 * count_of(flag) * analysis.clock.period_s / moving_s
    std = max(share / np.sqrt(max(len(runs(flag)), 1)) if share < 50.0 else 2.0, 0.02)
    spans = event_spans(analysis, flag) or moving_spans(analysis, row)
    return measured("substituted-share", CORNERS[row], share, std, unit="%", count=flag.size, spans=spans)


def measure_turn_pulses_offset(analysis: Analysis, row: int) -> Measured:
    """Pulses of one turn of this wheel less those of the other wheels' turns.

    Formula: counted pulses over the way in blocks of 2 s, the middle of them, times the way of one turn as
    found from what repeats with it; the middle of the other wheels taken off. A loss now and then changes
    nothing. A tyre of another size changes nothing here, a ring of 47 instead of 48 teeth gives -1 exactly,
    a pole lost every turn -1 (or -2 where both its edges are counted), dirt on the ring a number that need
    not be whole. Valid where the turn was found on this wheel and two others. Uncertainty: that of the
    lengths of the turns, or the scatter of the other wheels where that is larger.
    """
    counters = analysis.counters
    if counters is None or not counters.covers[row]:
        return _no_counter("turn-pulses-offset", row)
    turns = [_turn_pulses(analysis, counters, number) for number in range(4)]
    own, others = turns[row], [one for number, one in enumerate(turns) if number != row and one is not None]
    if own is None or len(others) < 2:
        reason = "the turn was not found on this wheel and two others that have counters"
        return missing("turn-pulses-offset", row, reason, NEEDED)
    usual, usual_std = _middle_turn(others)
    if usual_std > MOST_DOUBT:
        reason = "the other wheels' turns do not agree to a pulse"
        return missing("turn-pulses-offset", row, reason, NEEDED)
    return measured(
        "turn-pulses-offset",
        CORNERS[row],
        own[0] - usual,
        np.hypot(own[1], usual_std),
        unit="",
        count=count_of(analysis.paths[row].weight > 0),
        spans=moving_spans(analysis, row),
    )


def _pulses_per_metre(analysis: Analysis, counters: PulseCounters, row: int) -> FloatArray:
    """Pulses per demanded metre in every usable block, float64[B]."""
    clock, reference = analysis.clock, analysis.reference
    if not counters.covers[row]:
        return np.zeros(0)
    expected = reference.expected_mps[row]
    usable = (expected > SLOWEST_MPS) & (np.abs(reference.curvature_radpm) < STRAIGHTEST_RADPM)
    usable &= np.isfinite(expected) & np.isfinite(counters.count[row]) & ~analysis.losses.joint
    per_block = _per_block(analysis)
    way_m = np.concatenate(([0.0], np.cumsum(np.diff(clock.time_s) * _middles(np.nan_to_num(expected)))))
    bounds = np.arange(0, clock.time_s.size, per_block)
    inside = np.add.reduceat(usable.astype(float), bounds)[:-1] == per_block
    pulses, run_m = np.diff(counters.count[row][bounds]), np.diff(way_m[bounds])
    steady = inside & (np.diff(clock.time_s[bounds]) < 1.5 * BLOCK_S) & usable[bounds[1:]]
    return np.asarray(pulses[steady] / run_m[steady], dtype=np.float64)


def _per_block(analysis: Analysis) -> int:
    return analysis.clock.samples_in(BLOCK_S)


def _middles(value: FloatArray) -> FloatArray:
    return (value[1:] + value[:-1]) / 2.0


def _turn_pulses(analysis: Analysis, counters: PulseCounters, row: int) -> tuple[float, float] | None:
    """Pulses of one turn and their standard uncertainty."""
    line, path = analysis.lines[row], analysis.paths[row]
    if not isinstance(line, RevolutionLine) or not counters.covers[row]:
        return None
    bounds = np.arange(0, path.distance_m.size, _per_block(analysis))
    pulses, way_m = np.diff(counters.count[row][bounds]), np.diff(path.distance_m[bounds])
    use = np.isfinite(pulses) & (way_m > BLOCK_S * SLOWEST_MPS)
    if np.count_nonzero(use) < FEWEST_BLOCKS:
        return None
    per_metre = float(np.median(pulses[use] / way_m[use]))
    if per_metre * counters.pitch_m < 0.5:
        return None  # a dead wheel has no turn
    turn = per_metre * line.circumference_m
    return turn, turn * line.circumference_std_m / line.circumference_m


def _middle_turn(turns: list[tuple[float, float]]) -> tuple[float, float]:
    """Middle of the turns and its uncertainty: the stated one, or how far the two nearest ones differ.

    One of three others may be faulty itself; two that agree outvote it.
    """
    value = np.sort([one[0] for one in turns])
    stated = float(np.median([one[1] for one in turns]))
    apart = float(np.diff(value).min()) / np.sqrt(2.0)
    return float(np.median(value)), 1.2533 * max(stated, apart) / np.sqrt(value.size)


def _no_counter(name: str, row: int) -> NotMeasurable:
    return missing(name, row, "the log has no pulse counter of this wheel", NEEDED, by_driving=False)
