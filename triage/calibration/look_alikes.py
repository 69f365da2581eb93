"""What about a healthy car, its drive and its recording looks like a fault."""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.corners import CORNERS
from triage.signals.running import runs
from triage.simulator.equipment import Setup
from triage.speed_log import FloatArray, SpeedLog
from triage.units import KMH

SLOWEST_MPS: Final = 1.5
SLIP_RATIO: Final = 0.06
SHORTEST_SLIP_S: Final = 0.05
TIGHT_RATIO: Final = 0.12
"""Left-right difference of the rear axle over its mean, in a curve of about 13 m radius."""


def look_alikes(setup: Setup, log: SpeedLog) -> tuple[str, ...]:
    """Name the look-alikes of a simulated road test.

    Parameters
    ----------
    setup : Setup
        What it was made of.
    log : SpeedLog
        What was recorded; spinning wheels and tight curves are read from it, which is right only where no
        fault is built in.

    Returns
    -------
    tuple of str
        In a fixed order; empty for a plain drive.

    Notes
    -----
    The limits are judgement: from there on a person at the curves would ask what this is.
    """
    recorder, unit, drive = setup.recorder, setup.unit, setup.drive
    speeds = _on_one_clock(log)
    found = {
        "10 Hz log": recorder.rate_hz <= 12.0,
        "coarse steps": recorder.step_kmh >= 0.05,
        "recorder gaps": recorder.gaps_per_min > 0.0,
        "lost frames": recorder.lost_frame_ratio > 0.0,
        "wheels at mixed rates": recorder.wheel_rate_hz is not None,
        "unequal tyres": float(np.ptp(setup.car.wheel_ratio)) > 0.01,
        "potholes": drive.hits_per_km > 20.0,
        "cobbles or gravel": drive.rough_ratio > 0.0,
        "loose ground": drive.loose_ground,
        "split grip": drive.split_grip,
        "stop and go": "queue" in drive.legs,
        "parking": "parking" in drive.legs,
        "spin or slip": _slips(speeds, log.wheels["FL"].time_s),
        "tight curve": _turns_tightly(speeds),
        "zero at crawl": unit.zero_below_mps >= 1.5 * KMH,
        "passive sensors": setup.sensor.kind == "passive",
        "counting unit": unit.method == "counting",
        "substituting unit": unit.jump_reaction == "substitute",
    }
    return tuple(name for name, present in found.items() if present)


def _on_one_clock(log: SpeedLog) -> FloatArray:
    """Four speeds at the stamps of the front left wheel, float64[4, N]."""
    time_s = log.wheels["FL"].time_s
    rows = []
    for corner in CORNERS:
        trace = log.wheels[corner]
        known = ~trace.invalid
        speed = trace.speed_mps[known]
        rows.append(np.interp(time_s, trace.time_s[known], speed) if speed.size else np.zeros(time_s.size))
    return np.stack(rows)


def _slips(speeds_mps: FloatArray, time_s: FloatArray) -> bool:
    """Tell whether one wheel leaves the others for longer than a hit on a pothole takes."""
    middle = np.median(speeds_mps, axis=0)
    off = (np.abs(speeds_mps - middle) > SLIP_RATIO * middle) & (middle > SLOWEST_MPS)
    alone = off & (np.count_nonzero(off, axis=0) == 1)
    return any(
        time_s[stop - 1] - time_s[first] >= SHORTEST_SLIP_S for row in alone for first, stop in runs(row)
    )


def _turns_tightly(speeds_mps: FloatArray) -> bool:
    left, right = speeds_mps[2], speeds_mps[3]
    middle = (left + right) / 2.0
    tight = (np.abs(left - right) > TIGHT_RATIO * middle) & (middle > SLOWEST_MPS)
    return float(np.mean(tight)) > 0.01
