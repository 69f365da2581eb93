"""The encoder ring: where its pole borders stand, how strong the poles are, and when they pass."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.simulator.equipment import Encoder
from triage.simulator.vehicle_path import GRID_S
from triage.speed_log import FloatArray

WHEEL_ORDERS: Final = (2, 3, 4)
WHEEL_SHARE: Final = (0.1, 0.9)
"""Orders that tyre and hub of a sound wheel add to its run-out, and the least and greatest amplitude of
order 2 over that of order 1; order k has a (k - 1)th of it (judgement; on the two recorded drives at hand,
of eight sound wheels, order 2 is 0.1 to 0.85 of order 1, and order 3 on the quieter drive 0.15 to 0.35)."""


@dataclass(frozen=True, slots=True)
class Ring:
    """One wheel's encoder, pole by pole; even poles are north (or tooth), odd ones south (or gap).

    Attributes
    ----------
    strength : float64[2 * pairs]
        Amplitude of each pole over that of a healthy one at the right gap.
    border_shift_pole : float64[2 * pairs]
        How far the border into each pole stands ahead of its ideal place, in pole lengths.
    unsteadiness : float64[2 * pairs]
        Standard deviation of the strength from turn to turn, over the healthy strength.
    """

    strength: FloatArray
    border_shift_pole: FloatArray
    unsteadiness: FloatArray

    @property
    def poles(self) -> int:
        """Number of poles, twice the pole pairs."""
        return self.strength.size

    def ripple_ratio(self, *, both_edges: bool) -> float:
        """Amplitude of the once-per-revolution swing of the read speed that the counted borders make."""
        step = 1 if both_edges else 2
        turn = np.exp(-2j * np.pi * np.arange(0, self.poles, step) / self.poles)
        shift_rev = self.border_shift_pole[::step] / self.poles
        return float(2.0 * np.pi * 2.0 * abs(np.mean(shift_rev * turn)))


@dataclass(frozen=True, slots=True)
class PolePassages:
    """Every passing of a pole border under the sensor, in time order.

    Attributes
    ----------
    time_s : float64[M]
        When the border into the pole passes.
    number : int64[M]
        Running number of the pole; modulo the ring's poles it is the place on the ring.
    pole_s : float64[M]
        How long the pole takes to pass, at the speed of that instant.
    """

    time_s: FloatArray
    number: np.ndarray[tuple[int], np.dtype[np.int64]]
    pole_s: FloatArray


def make_ring(encoder: Encoder, row: int, rng: np.random.Generator) -> Ring:
    """Make a healthy ring with its pitch errors and its share of run-out.

    Parameters
    ----------
    encoder : Encoder
        Kind of ring fitted to the car.
    row : int
        Wheel, as an index into ``CORNERS``.
    rng : numpy.random.Generator
        Source of the errors of this ring.

    Returns
    -------
    Ring
    """
    poles = 2 * encoder.pole_pairs
    shift = rng.normal(0.0, 2.0 * encoder.pitch_error_ratio, poles)
    shift[1::2] += rng.normal(0.0, 0.01)
    shift += runout_shift_pole(poles, encoder.runout_ratio[row], phase_rev=encoder.runout_phase_rev[row])
    shift += _uneven_turn(poles, encoder.runout_ratio[row], rng.spawn(1)[0])
    strength = 1.0 + rng.normal(0.0, 0.008, poles)
    return Ring(strength, shift, np.zeros(poles))


def _uneven_turn(poles: int, runout_ratio: float, rng: np.random.Generator) -> FloatArray:
    """Border shifts that stand for the higher orders of a sound wheel's turn."""
    least, greatest = WHEEL_SHARE
    shift = np.zeros(poles)
    for order in WHEEL_ORDERS:
        share = least * (greatest / least) ** rng.uniform() / (order - 1)
        shift += runout_shift_pole(poles, share * runout_ratio, phase_rev=float(rng.uniform()), order=order)
    return shift


def runout_shift_pole(poles: int, ripple_ratio: float, *, phase_rev: float, order: int = 1) -> FloatArray:
    """Border shifts, in pole lengths, that make the read speed swing by ``ripple_ratio`` of itself.

    A border ahead by ``s`` revolutions is read as an angle too far by ``s``; a swing of the speed by the
    ratio ``a`` at order ``k`` therefore needs shifts of ``a / (2 pi k)`` revolutions.
    """
    angle = 2.0 * np.pi * (order * np.arange(poles) / poles - phase_rev)
    return -poles * ripple_ratio / (2.0 * np.pi * order) * np.sin(angle)


def pass_poles(angle_rev: FloatArray, rate_revps: FloatArray, ring: Ring) -> PolePassages:
    """Find when each pole border passes, by inverse interpolation of the wheel angle.

    Parameters
    ----------
    angle_rev, rate_revps : float64[N]
        Wheel angle and rate on the even grid of the path.
    ring : Ring
        The encoder.

    Returns
    -------
    PolePassages
    """
    number = np.arange(
        np.ceil(angle_rev[0] * ring.poles), np.floor(angle_rev[-1] * ring.poles), dtype=np.int64
    )
    place = (number + ring.border_shift_pole[number % ring.poles]) / ring.poles
    time_s = np.interp(np.maximum.accumulate(place), angle_rev, np.arange(angle_rev.size) * GRID_S)
    rate = rate_revps[(time_s / GRID_S).astype(np.int64)]
    return PolePassages(time_s, number, 1.0 / (ring.poles * np.maximum(rate, 1e-3)))
