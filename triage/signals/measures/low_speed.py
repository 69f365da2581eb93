"""How losses depend on speed, and the speed below which the wheel is silent."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.cut_off_crossings import Crossings
from triage.signals.loss_speed_law import fit_speed_law
from triage.signals.measurement import Measured, NotMeasurable
from triage.signals.measures.building import event_spans, measured, missing, moving_spans
from triage.signals.running import count_of, run_bounds
from triage.speed_log import FloatArray

SLOW_ENOUGH_MPS = 2.0
FEWEST_LOSSES = 8
VAGUEST_SLOPE = 1.5
"""An exponent known no better tells nothing apart (judgement)."""

UNSEEN_CUT_OFF_MPS = 0.6
"""A wheel that was never seen silent while turning falls silent somewhere below this."""

UNSEEN_STD_MPS = 0.2
OTHERS_STD_MPS = 0.1
"""How well the cut-off of wheels is known that were never seen silent."""


def measure_cut_off_speed(analysis: Analysis, row: int) -> Measured:
    """By how much the lowest speed the wheel still reads lies above that of the others, in m/s.

    The middle of the passages up and down through the wheel's own cut-off, less the middle of the other
    wheels'; 0.6 m/s stands for one that was never seen silent. Source: voltage of a reluctance sensor in
    proportion to speed.
    """
    expected = analysis.reference.expected_mps[row]
    slow = np.isfinite(expected) & (expected > 0.3) & (expected < SLOW_ENOUGH_MPS)
    if count_of(slow) * analysis.clock.period_s < 1.0:
        return missing(
            "cut-off-speed",
            row,
            "the car never rolled slowly",
            "three slow stops and pull-aways, rolling at walking pace for some seconds each",
        )
    lost = analysis.losses.alone[row]
    own = analysis.cut_offs[row]
    if np.isnan(own.speed_mps) and lost.any() and np.mean(lost[analysis.losses.moving[row]]) > 0.5:
        return missing(
            "cut-off-speed",
            row,
            "the wheel reads nothing at any speed",
            "first restore the signal",
            by_driving=False,
        )
    found = analysis.crossings
    speed = _lowest_speeds(found)
    usual = float(np.median(np.delete(speed, row)))
    crossed = found[row]
    std = crossed.std_mps if crossed is not None else UNSEEN_STD_MPS
    spans = (
        event_spans(analysis, own.silent & slow) or event_spans(analysis, slow) or moving_spans(analysis, row)
    )
    return measured(
        "cut-off-speed",
        CORNERS[row],
        speed[row] - usual,
        float(np.hypot(std, OTHERS_STD_MPS)),
        unit="m/s",
        count=count_of(slow),
        spans=spans,
    )


def measure_last_good_speed(analysis: Analysis, row: int) -> Measured:
    """Lowest speed down to which the wheel still reads before it falls silent, in m/s.

    The middle of the passages going down through the cut-off of a passive sensor; the control unit's hold
    makes it a little low. See :mod:`triage.signals.cut_off_crossings`. Valid for a wheel that is silent below
    one speed and sound above. Source: voltage of a reluctance sensor in proportion to speed (physics).
    """
    found = analysis.crossings[row]
    if found is None:
        return _no_cut_off("last-good-speed", row)
    return _speed_found(analysis, row, "last-good-speed", found.last_good_mps, std=found.last_good_std_mps)


def measure_first_bad_speed(analysis: Analysis, row: int) -> Measured:
    """Highest speed at which the wheel is still silent on pulling away, in m/s.

    The middle of the passages coming up through the cut-off; the pulses the control unit waits for make it a
    little high. Validity and source as for the last good speed.
    """
    found = analysis.crossings[row]
    if found is None:
        return _no_cut_off("first-bad-speed", row)
    return _speed_found(analysis, row, "first-bad-speed", found.first_bad_mps, std=found.first_bad_std_mps)


def _no_cut_off(name: str, row: int) -> NotMeasurable:
    return missing(
        name, row, "the wheel was never seen to fall silent at one speed", "three slow stops and pull-aways"
    )


def _speed_found(analysis: Analysis, row: int, name: str, speed_mps: float, *, std: float) -> Measured:
    silent = analysis.cut_offs[row].silent
    return measured(
        name,
        CORNERS[row],
        speed_mps,
        std,
        unit="m/s",
        count=count_of(silent),
        spans=event_spans(analysis, silent) or moving_spans(analysis, row),
    )


def _lowest_speeds(found: Sequence[Crossings | None]) -> FloatArray:
    """Cut-off speed of every wheel; one that was never silent has the lowest that was seen on any."""
    seen = np.array([np.nan if one is None else one.speed_mps for one in found])
    lowest = float(np.min(seen[np.isfinite(seen)], initial=UNSEEN_CUT_OFF_MPS))
    return np.where(np.isfinite(seen), seen, lowest)


def measure_speed_loss_slope(analysis: Analysis, row: int) -> Measured:
    """Power of the speed with which losses begin: 1 once in every turn, 0 at any speed alike.

    Short and long deviations count alike, each as one. Source: see
    :func:`triage.signals.loss_speed_law.fit_speed_law`. Valid where the wheel was driven slowly and fast.
    """
    losses = analysis.losses
    disturbed = losses.low[row] | losses.alone[row]
    began = np.zeros(disturbed.size, dtype=np.bool_)
    began[run_bounds(disturbed)[0]] = True
    law = fit_speed_law(
        began, losses.moving[row] & (began | ~disturbed), analysis.reference.expected_mps[row]
    )
    if law is None or law.begun < FEWEST_LOSSES:
        return missing(
            "speed-loss-slope", row, "too few losses to compare speeds", "a longer drive with the fault"
        )
    if law.std_uncertainty > VAGUEST_SLOPE:
        return missing(
            "speed-loss-slope", row, "the speed hardly changed", "a drive with slow and fast parts"
        )
    return measured(
        "speed-loss-slope",
        CORNERS[row],
        law.exponent,
        law.std_uncertainty,
        unit="",
        count=law.begun,
        spans=event_spans(analysis, disturbed),
    )
