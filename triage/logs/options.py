"""What the user can tell a reader beyond the files themselves."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from triage.corners import Corner
from triage.logs.remembered import RememberedMapping


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
    sheet : str
        Sheet of a workbook to read; empty for the one with the wheels.
    remembered : tuple of RememberedMapping
        Confirmed before, the newest last; one is used, and said, for a log with the same signals, unless
        ``mapping`` is given.
    """

    databases: tuple[str, ...] = ()
    mapping: Mapping[Corner, str] = field(default_factory=dict)
    unit: str | None = None
    circumference_m: float | None = None
    pulses_per_rev: float | None = None
    sheet: str = ""
    remembered: tuple[RememberedMapping, ...] = ()

    @property
    def names_to_decode(self) -> dict[str, str]:
        """Every signal that the user named or a remembered mapping names, under keys without meaning."""
        names: dict[str, str] = {str(corner): name for corner, name in self.mapping.items()}
        for index, one in enumerate(self.remembered):
            names |= {f"{index} {corner}": name for corner, name in one.wheels.items()}
        return names
