"""Whether losses prefer bumps, steering lock, braking, or the curves that load the wheel.

All are ratios of two rates, in doublings (logarithm to the base 2): 0 no preference, 1 twice as often.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

import numpy as np

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.loss_events import compare_rates, find_loss_events
from triage.signals.measurement import Measured
from triage.signals.measures.building import event_spans, measured, missing
from triage.signals.outward_load import LOADED_MPS2, outward_load_mps2
from triage.signals.running import zero_for_missing
from triage.speed_log import BoolArray

FEWEST_EVENTS: Final = 5
AFTER_BUMP_S: Final = 0.5
ROUGHEST_SHARE: Final = 0.06
LEAST_BUMP: Final = 1.4
"""The roughest 6 % of the driving counts as bumps, if the other wheels there deviate at least this many times
as much as is usual at the speed."""

LOCK_RAD: Final = 1.6
"""Steering wheel turned by a quarter and more (judgement)."""

LOCK_RADPM: Final = 0.03
"""The same by the path, of some 33 m radius, where the steering angle was not recorded."""

BRAKING_MPS2: Final = -1.2


def measure_bump_coupling(analysis: Analysis, row: int) -> Measured:
    """Rate of this wheel's losses within 0.5 s after the road shook the others, over the rate elsewhere.

    See :func:`triage.signals.loss_events.compare_rates` for formula, uncertainty and source. Losses closer
    than 1 s are one event. Valid with five events or more on a road that shakes the wheels now and then; a
    full loss is seen on any road, a brief one less well while the road shakes, which biases the ratio down.
    """
    return _coupling("bump-coupling", analysis, row, _shaken, "driving over bumps, with the fault in it")


def measure_steering_coupling(analysis: Analysis, row: int) -> Measured:
    """Rate of this wheel's losses with the steering turned far, over the rate at the same speed without.

    By the steering angle where it was recorded (a quarter turn of the wheel or more), else by the curvature
    of the path. Formula, uncertainty and source as for the bumps.
    """
    needed = "tight turns to both sides, and straight driving as slow, with the fault in it"
    return _coupling("steering-coupling", analysis, row, _turned_far, needed)


def measure_brake_coupling(analysis: Analysis, row: int) -> Measured:
    """Rate of this wheel's full losses while braking, over the rate at the same speed without.

    By the brake light's bit where it was recorded, else by a deceleration of 1.2 m/s2 or more. Brief losses
    are left out, for a braked wheel slips. Formula, uncertainty and source as for the bumps.
    """
    needed = "braking from several speeds, with the fault in it"
    return _coupling("brake-coupling", analysis, row, _braked, needed, brief=False)


def measure_side_coupling(analysis: Analysis, row: int) -> Measured:
    """Rate of this wheel's losses in curves that load it as outer wheel, over that in the opposite curves.

    Only curves of 1 m/s2 of lateral acceleration and more are compared, at the same speed. A bearing that
    tilts under load loses pulses in one curve direction only; a wire torn by steering, or a wide gap, in
    both. Formula, uncertainty and source as for the bumps.
    """
    events = find_loss_events(analysis, row)
    speed = zero_for_missing(analysis.reference.reference_mps)
    outward = outward_load_mps2(analysis, row)
    judged = analysis.losses.moving[row] & ~analysis.losses.joint & (np.abs(outward) > LOADED_MPS2)
    needed = "five steady curves to each side at 40 to 60 km/h, with the fault in it"
    in_curves = np.count_nonzero(judged[events.first])
    found = compare_rates(events.first, outward > 0.0, judged, speed) if in_curves >= FEWEST_EVENTS else None
    if found is None or found.total < FEWEST_EVENTS:
        return missing(
            "side-coupling", row, "fewer than five separate losses in curves to both sides", needed
        )
    return measured(
        "side-coupling",
        CORNERS[row],
        np.log2(found.ratio),
        found.log_std / np.log(2.0),
        unit="",
        count=found.total,
        spans=event_spans(analysis, events.flag & judged) or event_spans(analysis, events.flag),
    )


def _shaken(analysis: Analysis, row: int) -> BoolArray:
    sound = np.maximum(analysis.residuals.sound_sigma_ratio, 1e-6)
    shaken = analysis.residuals.roughness_ratio[row] / sound
    moving = shaken[analysis.losses.moving[row]]
    bar = max(float(np.nanquantile(moving, 1.0 - ROUGHEST_SHARE)), LEAST_BUMP) if moving.size else np.inf
    return _for_some_time(shaken > bar, analysis, AFTER_BUMP_S)


def _turned_far(analysis: Analysis, _row: int) -> BoolArray:
    steering = analysis.companions.steering_rad
    if steering is not None and np.isfinite(steering).any():
        return np.abs(zero_for_missing(steering)) > LOCK_RAD
    return np.abs(analysis.reference.curvature_radpm) > LOCK_RADPM


def _braked(analysis: Analysis, _row: int) -> BoolArray:
    brake = analysis.companions.brake
    if brake is not None and np.isfinite(brake).any():
        return zero_for_missing(brake) > 0.5
    return analysis.acceleration_mps2 < BRAKING_MPS2


def _coupling(
    name: str,
    analysis: Analysis,
    row: int,
    exposed: Callable[[Analysis, int], BoolArray],
    needed: str,
    *,
    brief: bool = True,
) -> Measured:
    events = find_loss_events(analysis, row, brief=brief)
    judged = analysis.losses.moving[row] & ~analysis.losses.joint
    if events.first.size < FEWEST_EVENTS or not judged.any():
        return missing(name, row, "fewer than five separate losses", needed)
    speed = zero_for_missing(analysis.reference.reference_mps)
    found = compare_rates(events.first, exposed(analysis, row), judged, speed)
    if found is None or found.total < FEWEST_EVENTS:
        return missing(name, row, "no moments of both kinds to compare", needed)
    return measured(
        name,
        CORNERS[row],
        np.log2(found.ratio),
        found.log_std / np.log(2.0),
        unit="",
        count=found.total,
        spans=event_spans(analysis, events.flag),
    )


def _for_some_time(flag: BoolArray, analysis: Analysis, duration_s: float) -> BoolArray:
    """Set the flag also for some time after every set sample."""
    last = np.maximum.accumulate(np.where(flag, np.arange(flag.size), -1))
    time_s = analysis.clock.time_s
    after: BoolArray = (last >= 0) & (time_s - time_s[np.maximum(last, 0)] <= duration_s)
    return after
