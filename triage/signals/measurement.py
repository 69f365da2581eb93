"""A measured quantity with its uncertainty, or the reason why it could not be measured."""

from __future__ import annotations

from dataclasses import dataclass

from triage.corners import Place

Span = tuple[float, float]
"""Begin and end in seconds of the log."""


@dataclass(frozen=True, slots=True)
class Measurement:
    """One number measured on the log.

    Attributes
    ----------
    id : str
        Row of ``rules/measurements.toml`` that gives its meaning and bands.
    corner : str
        The wheel it was measured on, or ``vehicle``.
    value, std_uncertainty : float
        Value and standard uncertainty (GUM: JCGM 100:2008, 2.3.1), both in ``unit``.
    unit : str
        Unit as printed: ``%``, ``1/min``, ``s``, ``rev``; empty for a pure number.
    sample_count : int
        Number of samples it rests on.
    spans : tuple of (float, float)
        Seconds of the log it rests on; at most a few dozen, the strongest first.
    """

    id: str
    corner: Place
    value: float
    std_uncertainty: float
    unit: str
    sample_count: int
    spans: tuple[Span, ...]


@dataclass(frozen=True, slots=True)
class NotMeasurable:
    """A quantity the log does not carry; a value, never an exception.

    Attributes
    ----------
    id : str
        The measurement that is missing.
    corner : str or None
        Wheel concerned; None when it is missing for all.
    reason : str
        Why, in the user's words.
    needed : str
        Which driving or which recording would allow it.
    by_driving : bool
        False when no drive recorded in the same way would: the signal must be restored first, or recorded
        in finer steps.
    """

    id: str
    corner: Place | None
    reason: str
    needed: str
    by_driving: bool = True


Measured = Measurement | NotMeasurable
