"""What the rest of the program, and the plots, see of a log once it is ready to be measured on."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from triage.speed_log import BoolArray, FloatArray

if TYPE_CHECKING:
    from triage.signals.conditioning import CommonClock
    from triage.signals.vehicle_reference import VehicleReference


@dataclass(frozen=True, slots=True)
class ConditionedLog:
    """Four wheels on one clock, with what the rest of the car says each should read.

    Rows of the 2-D arrays follow :data:`triage.corners.CORNERS`.

    Attributes
    ----------
    time_s : float64[N]
        Common clock, strictly rising.
    speed_mps : float64[4, N]
        Recorded speeds; NaN where ``valid`` is not set.
    valid : bool[4, N]
        A usable sample of that wheel stands at this instant, or was bridged over less than three of its
        periods.
    fresh : bool[4, N]
        The instants nearest to a sample of the wheel's own clock; statistics count only these.
    reference_mps : float64[N]
        Speed of the middle of the rear axle, trusting no single wheel.
    curvature_radpm : float64[N]
        Curvature of the path in radians per metre, positive to the left.
    expected_mps : float64[4, N]
        What each wheel should read by the other wheels and the curve.
    divergence_ratio : float64[4, N]
        ``speed_mps / expected_mps - 1``; NaN where either is missing or the car stands.
    """

    time_s: FloatArray
    speed_mps: FloatArray
    valid: BoolArray
    fresh: BoolArray
    reference_mps: FloatArray
    curvature_radpm: FloatArray
    expected_mps: FloatArray
    divergence_ratio: FloatArray


def build_conditioned_log(clock: CommonClock, reference: VehicleReference) -> ConditionedLog:
    """Join the clock and the reference into the one view that leaves this package."""
    return ConditionedLog(
        time_s=clock.time_s,
        speed_mps=clock.speed_mps,
        valid=clock.valid,
        fresh=clock.fresh,
        reference_mps=reference.reference_mps,
        curvature_radpm=reference.curvature_radpm,
        expected_mps=reference.expected_mps,
        divergence_ratio=reference.divergence_ratio,
    )
