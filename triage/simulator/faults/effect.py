"""What a fault may change in the chain from the wheel to the log."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

import numpy as np

from triage.corners import CORNERS, SIDE_SIGN, Corner
from triage.simulator.control_unit import Upset
from triage.simulator.encoder import Ring
from triage.simulator.equipment import Setup
from triage.simulator.sectors import Sector
from triage.simulator.vehicle_path import GRID_S, VehiclePath
from triage.simulator.wheel_motion import WheelMotion
from triage.speed_log import FloatArray

Wiring = tuple[int, int, int, int]


@dataclass(frozen=True, slots=True)
class FaultSite:
    """Where and how strongly a fault strikes.

    Attributes
    ----------
    row : int
        Wheel as an index into ``CORNERS``; 0 for faults of the whole vehicle.
    severity : float
        0 invisible, 0.25 slight, 0.5 clear, 1 blatant.
    ring : Ring
        Encoder of that wheel before this fault.
    rng : numpy.random.Generator
        Source of the variety between cars with the same fault.
    """

    row: int
    severity: float
    setup: Setup
    path: VehiclePath
    motion: WheelMotion
    ring: Ring
    rng: np.random.Generator

    @property
    def corner(self) -> Corner:
        """The wheel struck."""
        return CORNERS[self.row]

    @property
    def duration_s(self) -> float:
        """Length of the drive."""
        return self.path.time_s.size * GRID_S

    @property
    def outward_load_mps2(self) -> FloatArray:
        """Lateral acceleration that loads this wheel as the outer one, 0 in other curves, float64[N].

        The left wheel is the outer one in right curves.
        """
        return np.maximum(-SIDE_SIGN[self.corner] * self.path.lateral_mps2, 0.0)

    def spread(self, width: float) -> float:
        """Draw a factor around 1: how much cars with the same fault differ."""
        return float(np.exp(np.clip(self.rng.normal(0.0, width), -2.0 * width, 2.0 * width)))

    @property
    def onset(self) -> float:
        """Fade-in over the first tenth of severity, so that 0 changes nothing."""
        return min(self.severity / 0.1, 1.0)


@dataclass(frozen=True, slots=True)
class FaultEffect:
    """Changes to the healthy chain; every default is "no change".

    Attributes
    ----------
    ring : Ring or None
        Encoder of the wheel struck.
    rate_ratio : float64[N] or None
        Factor on that wheel's rate of turning.
    extra_gap_mm : float64[N] or None
        Added to its air gap.
    gap_shake_ratio : float
        Factor on the vibration of its gap.
    lead_rev : float64[N] or None
        How far the ring is tilted or shifted ahead of the wheel's true angle.
    open_spans_s : float64[M, 2] or None
        Times in which its circuit is open and no edge arrives.
    frozen_spans_s : float64[M, 2] or None
        Times in which the unit goes on putting out that wheel's last value instead of what it measures.
    false_edges_s : float64[M] or None
        Edges that no pole made.
    noise_ratio : float
        Factor on its own speed noise.
    upsets : tuple of Upset
        Times in which the unit as a whole misbehaves.
    wiring : four ints
        Which wheel feeds each channel, as indices into ``CORNERS``.
    spans_s : tuple of (float, float)
        When the fault shows, for the truth; empty when always or by the wheel angle.
    sectors : tuple of Sector
        Bad stretches of the ring, for the truth.
    """

    ring: Ring | None = None
    rate_ratio: FloatArray | None = None
    extra_gap_mm: FloatArray | None = None
    gap_shake_ratio: float = 1.0
    lead_rev: FloatArray | None = None
    open_spans_s: FloatArray | None = None
    frozen_spans_s: FloatArray | None = None
    false_edges_s: FloatArray | None = None
    noise_ratio: float = 1.0
    upsets: tuple[Upset, ...] = ()
    wiring: Wiring = (0, 1, 2, 3)
    spans_s: tuple[tuple[float, float], ...] = ()
    sectors: tuple[Sector, ...] = ()

    def joined(self, other: FaultEffect) -> FaultEffect:
        """Effects of two faults at one wheel, or of two of the whole vehicle; the other came second.

        Its ring, where it has one, was made from the ring of this effect.
        """
        return FaultEffect(
            ring=self.ring if other.ring is None else other.ring,
            rate_ratio=_combined(np.multiply, self.rate_ratio, other.rate_ratio),
            extra_gap_mm=_combined(np.add, self.extra_gap_mm, other.extra_gap_mm),
            gap_shake_ratio=self.gap_shake_ratio * other.gap_shake_ratio,
            lead_rev=_combined(np.add, self.lead_rev, other.lead_rev),
            open_spans_s=_appended(self.open_spans_s, other.open_spans_s),
            frozen_spans_s=_appended(self.frozen_spans_s, other.frozen_spans_s),
            false_edges_s=_appended(self.false_edges_s, other.false_edges_s),
            noise_ratio=self.noise_ratio * other.noise_ratio,
            upsets=(*self.upsets, *other.upsets),
            wiring=_wired(self.wiring, other.wiring),
            spans_s=tuple(sorted((*self.spans_s, *other.spans_s))),
            sectors=(*self.sectors, *other.sectors),
        )


@dataclass(frozen=True, slots=True)
class FaultModel:
    """One row of the registry: a cause, where it sits, and what it does."""

    cause: str
    where: Literal["corner", "vehicle"]
    strike: Callable[[FaultSite], FaultEffect]


def _combined(how: np.ufunc, first: FloatArray | None, second: FloatArray | None) -> FloatArray | None:
    if first is None or second is None:
        return second if first is None else first
    return np.asarray(how(first, second), dtype=np.float64)


def _appended(first: FloatArray | None, second: FloatArray | None) -> FloatArray | None:
    """Both lists of spans or instants in the order of time."""
    if first is None or second is None:
        return second if first is None else first
    both = np.concatenate((first, second))
    return both[np.argsort(both if both.ndim == 1 else both[:, 0], kind="stable")]


def _wired(first: Wiring, second: Wiring) -> Wiring:
    """Exchange the channels of a car whose wheels are exchanged already."""
    a, b, c, d = second
    return first[a], first[b], first[c], first[d]


def as_spans(spans_s: FloatArray) -> tuple[tuple[float, float], ...]:
    """Turn an array of begins and ends into the tuples of the truth."""
    return tuple((float(start), float(stop)) for start, stop in spans_s)
