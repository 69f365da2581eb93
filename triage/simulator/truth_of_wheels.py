"""The part of the truth that is worked out from the turning wheels and their rings."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from triage.corners import CORNERS, Corner
from triage.simulator.encoder import Ring
from triage.simulator.equipment import FourRatios, Setup
from triage.simulator.faults.effect import FaultEffect
from triage.simulator.sensor import spacing_loss
from triage.simulator.truth import ANGLE_STEP_S, Truth
from triage.simulator.vehicle_path import GRID_S
from triage.simulator.wheel_motion import WheelMotion
from triage.speed_log import FloatArray


def seen_rotation(motion: WheelMotion, wheel: int, effect: FaultEffect) -> tuple[FloatArray, FloatArray]:
    """Rate and angle of one wheel with its own tyre, both float64[N].

    Parameters
    ----------
    motion : WheelMotion
        The sound wheels.
    wheel : int
        Index into ``CORNERS``.
    effect : FaultEffect
        Its rate ratio is used.
    """
    rate, angle = motion.rate_revps[wheel], motion.angle_rev[wheel]
    if effect.rate_ratio is not None:
        rate = rate * effect.rate_ratio
        angle = angle[0] + np.cumsum(rate) * GRID_S
    return rate, angle


def find_lost_spans(truth: Truth, corner: Corner, edges_s: FloatArray) -> FloatArray:
    """Find where edges are missing between two that came.

    Parameters
    ----------
    truth : Truth
        Angles of the wheels.
    corner : str
        The wheel itself.
    edges_s : float64[M]
        Edges that reached the control unit from it.

    Returns
    -------
    float64[K, 2]
        Begins and ends in seconds. Single pitch errors up to 0.6 of a pitch are no losses.
    """
    ring = truth.rings[CORNERS.index(corner)]
    pitch_rev = (1 if truth.setup.encoder.both_edges else 2) / ring.poles
    way_rev = np.diff(truth.angle_rev(corner, edges_s))
    found = np.flatnonzero(way_rev > 1.6 * pitch_rev)
    return np.stack([edges_s[found], edges_s[found + 1]], axis=1)


def complete_truth(
    truth: Truth, motion: WheelMotion, rings: Sequence[Ring], effects: Sequence[FaultEffect]
) -> Truth:
    """Add angles, rings, ratios, run-outs and cut-off speeds to the truth.

    Parameters
    ----------
    truth : Truth
        With the faults and the setup.
    motion : WheelMotion
        The sound wheels.
    rings : four Ring
        The sound rings.
    effects : four FaultEffect
        What the faults do to each wheel.
    """
    setup = truth.setup
    fitted = tuple(
        ring if effect.ring is None else effect.ring for ring, effect in zip(rings, effects, strict=True)
    )
    step = round(ANGLE_STEP_S / GRID_S)
    angles = np.stack([seen_rotation(motion, wheel, effects[wheel])[1][::step] for wheel in range(4)])
    both = setup.encoder.both_edges
    return replace(
        truth,
        rings=fitted,
        read_ratio=_four([_read_ratio(setup, wheel, fitted[wheel], effects[wheel]) for wheel in range(4)]),
        runout_ratio=_four([ring.ripple_ratio(both_edges=both) for ring in fitted]),
        cut_off_mps=_four([_cut_off_mps(setup, effect) for effect in effects]),
        angles_rev=angles,
    )


def _read_ratio(setup: Setup, wheel: int, ring: Ring, effect: FaultEffect) -> float:
    tyre = 1.0 if effect.rate_ratio is None else float(np.mean(effect.rate_ratio))
    count = ring.poles / (2 * setup.encoder.pole_pairs)
    return tyre * count / setup.car.wheel_ratio[wheel]


def _cut_off_mps(setup: Setup, effect: FaultEffect) -> float:
    if setup.sensor.kind == "active" or effect.extra_gap_mm is None:
        return setup.sensor.cut_in_mps
    usual_mm = np.median(effect.extra_gap_mm)
    left = float(spacing_loss(np.asarray(usual_mm), setup.encoder.pair_length_mm))
    return setup.sensor.cut_in_mps / left


def _four(values: Sequence[float]) -> FourRatios:
    first, second, third, fourth = values
    return first, second, third, fourth
