"""What a reader hands over: signals as they stand in the file, before any of them is taken for a wheel."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime
from typing import Final

from triage.speed_log import BoolArray, FloatArray, Notice

EDGE_UNIT: Final = "edge"
"""Unit of a signal that is nothing but the instants of edges: times and values are the same numbers."""


@dataclass(frozen=True, slots=True)
class RawSignal:
    """One column or decoded signal in the numbers of the file.

    Attributes
    ----------
    name : str
        Column name, or ``Message.Signal``.
    unit : str
        Unit text as the file or the database gives it; empty when it gives none.
    time_s : float64[N]
        Seconds on the clock of the recording, in the order of the file.
    value : float64[N]
        Number as written; NaN marks a sample that is there but carries no number.
    step : float
        Smallest step of ``value`` when the file states it (a database factor); 0 when it does not.
    bus : str
        Bus the signal came over; empty for tables.
    """

    name: str
    unit: str
    time_s: FloatArray
    value: FloatArray
    step: float = 0.0
    bus: str = ""

    @property
    def label(self) -> str:
        """Name with the bus, as ``--map`` takes it."""
        return f"{self.name}@{self.bus}" if self.bus else self.name

    def only(self, keep: BoolArray) -> RawSignal:
        """Return the same signal with the chosen samples."""
        return replace(self, time_s=self.time_s[keep], value=self.value[keep])


@dataclass(frozen=True, slots=True)
class Recording:
    """Everything one file gave.

    Attributes
    ----------
    format : str
        Kind of file in words for the user.
    start : datetime or None
        Instant of ``time_s == 0``; without zone when the file gives local time.
    signals : tuple of RawSignal
    notices : tuple of Notice
    """

    format: str
    start: datetime | None
    signals: tuple[RawSignal, ...]
    notices: tuple[Notice, ...] = ()
