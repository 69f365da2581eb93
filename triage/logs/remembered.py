"""Mappings that a user confirmed once, and which of them belongs to a recording."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from triage.corners import CORNERS, Corner
from triage.texts import Text

if TYPE_CHECKING:
    from triage.speed_log import Notice


@dataclass(frozen=True, slots=True)
class RememberedMapping:
    """Which signals were the wheels in a log with these signals.

    Attributes
    ----------
    signals : tuple of str
        Names of all signals that the log offered, sorted, without buses.
    wheels : mapping of corner to str
        As ``--map`` takes them.
    unit : str or None
        Unit of the wheel speeds, where the user stated it.
    confirmed : str
        Day on which the user said so, ``2026-03-10``.
    """

    signals: tuple[str, ...]
    wheels: Mapping[Corner, str]
    unit: str | None = None
    confirmed: str = ""

    @property
    def fingerprint(self) -> str:
        """Twelve hexadecimal digits that stand for the signals of the log."""
        import hashlib  # noqa: PLC0415 - whoever merely states options need not wait for it

        return hashlib.sha256("\n".join(self.signals).encode("utf-8", "surrogatepass")).hexdigest()[:12]

    @property
    def named(self) -> frozenset[str]:
        """Signals it names, with and without the bus."""
        return frozenset(text for name in self.wheels.values() for text in (name, _without_bus(name)))


def signal_names(names: Iterable[str]) -> tuple[str, ...]:
    """Give the names by which a log is known again: each once, sorted."""
    return tuple(sorted(set(names)))


def find_remembered(
    remembered: Sequence[RememberedMapping], signals: tuple[str, ...]
) -> RememberedMapping | None:
    """Find the mapping of a log with these signals.

    Parameters
    ----------
    remembered : sequence of RememberedMapping
        The newest last.
    signals : tuple of str
        Of :func:`signal_names`.

    Notes
    -----
    Of a log of frames only what may be of use is decoded, and what any remembered mapping names. Names that
    stand in the log for the sake of other mappings alone are therefore passed over.
    """
    there = frozenset(signals)
    for one in reversed(remembered):
        own = frozenset(one.signals)
        if own <= there and there - own <= _named_by_others(remembered, one):
            return one
    return None


def _named_by_others(remembered: Sequence[RememberedMapping], one: RememberedMapping) -> frozenset[str]:
    return frozenset().union(*(other.named for other in remembered if other is not one))


def notice_of(one: RememberedMapping) -> Notice:
    """Say that a remembered mapping was used, and how to have it otherwise."""
    from triage.speed_log import Notice  # noqa: PLC0415 - with the numbers' library

    wheels = ", ".join(f"{corner} = {one.wheels[corner]}" for corner in CORNERS if corner in one.wheels)
    unit = Text(", in {unit}", unit=one.unit) if one.unit else ""
    when = Text(" on {day}", day=one.confirmed) if one.confirmed else ""
    text = Text(
        "the wheels are mapped as was confirmed{when} for a log with the same signals: "
        "{wheels}{unit}. To read it otherwise: --map, or --no-memory; to forget it: "
        "wheel-triage mappings forget {fingerprint}.",
        when=when,
        wheels=wheels,
        unit=unit,
        fingerprint=one.fingerprint,
    )
    return Notice("mapping-remembered", text)


def _without_bus(name: str) -> str:
    return name.rpartition("@")[0] or name
