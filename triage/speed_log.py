"""The one form that every recording takes before anything is measured on it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.corners import CORNERS, Corner

FloatArray = NDArray[np.float64]
BoolArray = NDArray[np.bool_]

CHANNEL_UNITS: Final[dict[str, str]] = {
    "steering_rad": "rad",
    "yaw_rate_radps": "rad/s",
    "lateral_mps2": "m/s2",
    "longitudinal_mps2": "m/s2",
    "brake": "",
    "reference_mps": "m/s",
    **{f"pulses_{corner}": "" for corner in CORNERS},
    **{f"fault_{corner}": "" for corner in CORNERS},
}
"""Every companion channel a log may carry, with its SI unit.

Steering angle, yaw rate and lateral acceleration are positive to the left (ISO 8855). ``pulses_*``
are unwrapped pulse counts, ``fault_*`` the control unit's own fault bits.
"""


@dataclass(frozen=True, slots=True)
class SpeedTrace:
    """The recorded speed of one wheel on its own clock.

    Attributes
    ----------
    time_s : float64[N]
        Seconds since the start of the log, never falling.
    speed_mps : float64[N]
        Speed; NaN exactly where ``invalid`` is set.
    invalid : bool[N]
        Samples the log marks as not available, or that are no usable number. Never replaced by 0.
    resolution_mps : float
        Smallest step of the recorded numbers; 0 when none can be seen.
    source : str
        Column or ``Message.Signal`` the trace was read from.
    unit : str
        Unit in which the log gave the speed.
    """

    time_s: FloatArray
    speed_mps: FloatArray
    invalid: BoolArray
    resolution_mps: float
    source: str
    unit: str

    def __post_init__(self) -> None:
        _freeze(self.time_s, self.speed_mps, self.invalid)

    @property
    def valid_count(self) -> int:
        """Number of usable samples."""
        return int(np.count_nonzero(~self.invalid))


@dataclass(frozen=True, slots=True)
class Channel:
    """A companion signal on its own clock, SI inside.

    Attributes
    ----------
    time_s : float64[N]
        Seconds since the start of the log, never falling.
    value : float64[N]
        In the unit of :data:`CHANNEL_UNITS`; only valid samples are kept.
    source : str
        Column or ``Message.Signal`` it was read from.
    turned : bool
        The log does not say to which side the channel is positive, and it was turned round to fit the
        wheels: its sign can no longer testify against them.
    """

    time_s: FloatArray
    value: FloatArray
    source: str
    turned: bool = False

    def __post_init__(self) -> None:
        _freeze(self.time_s, self.value)


@dataclass(frozen=True, slots=True)
class Notice:
    """Something the user must know about how a log was read.

    ``code`` is one of the warning codes of the command line's JSON (README.md lists them); ``count`` is
    how often it happened.
    """

    code: str
    message: str
    count: int = 1


@dataclass(frozen=True, slots=True)
class HistoryStep:
    """One thing that was done to the data, appended after it succeeded."""

    action: str
    detail: str = ""


@dataclass(frozen=True, slots=True)
class SpeedLog:
    """A whole recording.

    Attributes
    ----------
    file : str
        What the user opened, as given; the parts joined by ``", "``.
    format : str
        Kind of file in the words of the reader, such as ``table (csv)``.
    start : datetime or None
        Instant of ``time_s == 0`` when the log tells it.
    wheels : mapping of corner to SpeedTrace
        All four corners.
    channels : mapping of channel name to Channel
        Names from :data:`CHANNEL_UNITS`.
    edges : mapping of corner to float64[M]
        Rising times, in seconds of the log, at which the sensor of a wheel switched; only where the file
        holds single edges.
    signal_names : tuple of str
        Names of all signals that the file offered, sorted; by them a log of the same kind is known again.
    """

    file: str
    format: str
    start: datetime | None
    wheels: Mapping[Corner, SpeedTrace]
    channels: Mapping[str, Channel] = field(default_factory=dict)
    notices: tuple[Notice, ...] = ()
    history: tuple[HistoryStep, ...] = ()
    edges: Mapping[Corner, FloatArray] = field(default_factory=dict)
    signal_names: tuple[str, ...] = ()

    @property
    def instants_s(self) -> FloatArray:
        """Distinct instants at which at least one wheel has a valid sample, float64[M], rising."""
        traces = tuple(self.wheels.values())
        shared = _shared_clock(traces)
        if shared is not None:
            heard: BoolArray = ~np.logical_and.reduce([trace.invalid for trace in traces])
            return shared[heard]
        return np.unique(np.concatenate([trace.time_s[~trace.invalid] for trace in traces]))

    @property
    def duration_s(self) -> float:
        """Last minus first valid instant; 0 when there are fewer than two."""
        # By the edges alone: asked for often, also of a recording that lasts a day.
        bounds = [_valid_span(trace) for trace in self.wheels.values() if not trace.invalid.all()]
        if not bounds:
            return 0.0
        return float(max(last for _, last in bounds) - min(first for first, _ in bounds))

    def noticed(self, *notices: Notice) -> SpeedLog:
        """Return the same log with more notices."""
        return replace(self, notices=(*self.notices, *notices))

    def did(self, action: str, detail: str = "") -> SpeedLog:
        """Return the same log with one more step in its history."""
        return replace(self, history=(*self.history, HistoryStep(action, detail)))


def _valid_span(trace: SpeedTrace) -> tuple[float, float]:
    """First and last instant of the valid samples, of which there is at least one."""
    first, last = 0, -1
    if trace.invalid[first] or trace.invalid[last]:  # in most logs neither is; looking for them takes a while
        first, last = int(trace.invalid.argmin()), ~int(trace.invalid[::-1].argmin())
    return float(trace.time_s[first]), float(trace.time_s[last])


def _shared_clock(traces: Sequence[SpeedTrace]) -> FloatArray | None:
    """Return the rising instants all wheels share, None where each has its own: sorting those takes long."""
    time_s = traces[0].time_s
    same = all(one.time_s is time_s or np.array_equal(one.time_s, time_s) for one in traces[1:])
    return time_s if same and bool(np.all(time_s[1:] > time_s[:-1])) else None


def _freeze(*arrays: NDArray[np.generic]) -> None:
    for array in arrays:
        array.setflags(write=False)
