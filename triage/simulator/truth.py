"""What was built into a simulated road test, in the terms in which a triage can be judged."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Final

import numpy as np

from triage.corners import CORNERS, Corner, Place
from triage.simulator.encoder import Ring
from triage.simulator.equipment import FourRatios, Setup
from triage.simulator.sectors import Sector
from triage.speed_log import FloatArray

ANGLE_STEP_S: Final = 0.01
"""Step of the angles kept; at full braking, lines between them are right to 1e-4 revolutions."""


@dataclass(frozen=True, slots=True)
class Fault:
    """A fault to build in, or one that was.

    Attributes
    ----------
    cause : str
        Id of a row of ``FAULT_MODELS``.
    corner : str or None
        Wheel struck; None or ``vehicle`` for causes of the whole vehicle.
    severity : float
        0 invisible, 0.25 slight, 0.5 clear, 1 blatant.
    """

    cause: str
    corner: Place | None
    severity: float


@dataclass(frozen=True, slots=True)
class Truth:
    """What was built into a simulated road test.

    Attributes
    ----------
    cause, corner, severity
        The first fault: id of the cause, wheel struck or ``vehicle``, 0 invisible to 1 blatant.
    setup : Setup
        Car, encoder, sensor, control unit, recorder and drive.
    event_spans : tuple of (float, float)
        Seconds in which a fault acted, where it acts by events; empty otherwise.
    faults : tuple of Fault
        Every fault, the first one first.
    sectors : tuple of Sector
        Bad stretches of the rings.
    rings : four Ring
        Encoders with their faults, in the order of ``CORNERS``.
    read_ratio : four floats
        What each wheel reads when rolling straight, over what the mean sound wheel of the car reads: tyre,
        encoder count; without slip, load and losses.
    runout_ratio : four floats
        Amplitude of the once-per-revolution swing that the ring gives to the read speed, over that speed.
    cut_off_mps : four floats
        Speed of the tread below which a passive sensor sees no pole of ordinary strength; 0 for active ones.
    angles_rev : float64[4, M]
        Wheel angles every :data:`ANGLE_STEP_S` from 0; see :meth:`angle_rev`.
    """

    cause: str
    corner: Place
    severity: float
    setup: Setup
    event_spans: tuple[tuple[float, float], ...] = ()
    faults: tuple[Fault, ...] = ()
    sectors: tuple[Sector, ...] = ()
    rings: tuple[Ring, ...] = ()
    read_ratio: FourRatios = (1.0, 1.0, 1.0, 1.0)
    runout_ratio: FourRatios = (0.0, 0.0, 0.0, 0.0)
    cut_off_mps: FourRatios = (0.0, 0.0, 0.0, 0.0)
    angles_rev: FloatArray = field(default_factory=lambda: np.zeros((4, 1)), repr=False, compare=False)

    def angle_rev(self, corner: Corner, time_s: FloatArray) -> FloatArray:
        """Angle of a wheel against its mark at the instants given, in revolutions, never falling.

        Parameters
        ----------
        corner : str
            The wheel itself; where channels are exchanged, not the channel of that name.
        time_s : float64[N]
            Seconds since the start of the drive, the clock of the log.

        Returns
        -------
        float64[N]
            The border into pole ``k`` of an ideal ring passes where this is ``k / poles`` modulo 1.
        """
        row = self.angles_rev[CORNERS.index(corner)]
        return np.asarray(np.interp(time_s, np.arange(row.size) * ANGLE_STEP_S, row), dtype=np.float64)
