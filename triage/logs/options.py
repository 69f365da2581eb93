"""What the user can tell a reader beyond the files themselves."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from triage.corners import Corner


@dataclass(frozen=True, slots=True)
class ReadOptions:
    """Choices that replace what would otherwise be judged from the log.

    Attributes
    ----------
    databases : tuple of str
        Paths of DBC (or ARXML, KCD, SYM) files that describe the frames.
    mapping : mapping of corner to str
        Column, ``Message.Signal`` or ``Message.Signal@bus`` to take for a corner.
    unit : str or None
        One of :data:`triage.units.SPEED_UNITS`; replaces the unit the log states.
    circumference_m : float or None
        Rolling circumference; needed when the log gives rotation instead of speed.
    pulses_per_rev : float or None
        Pulses of one wheel revolution; needed when the log gives pulses per second.
    """

    databases: tuple[str, ...] = ()
    mapping: Mapping[Corner, str] = field(default_factory=dict)
    unit: str | None = None
    circumference_m: float | None = None
    pulses_per_rev: float | None = None
