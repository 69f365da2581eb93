"""The pen for the lines of a recording that is laid over: as pale as may be, and still to be seen."""

from __future__ import annotations

from typing import Final

from PySide6.QtGui import QColor, QPen

from triage.corners import Corner
from ui.theme import Theme, contrast_ratio
from ui.widgets.styling import corner_pen

LEAST_CONTRAST: Final = 3.0
"""WCAG 2.2, 1.4.11, for graphics that carry meaning."""

STEPS: Final = 20


def pale_pen(theme: Theme, corner: Corner) -> QPen:
    """Return the thin, pale pen of a wheel; line style as ever."""
    pen = corner_pen(theme, corner)
    pen.setColor(QColor(pale_colour(theme.corners[corner], theme.panel)))
    return pen


def pale_colour(colour: str, ground: str) -> str:
    """Mix a colour with the ground as far as the contrast allows; both ``#rrggbb``."""
    mixes = (_mix(colour, ground, step / STEPS) for step in range(STEPS, -1, -1))
    return next((mix for mix in mixes if contrast_ratio(mix, ground) >= LEAST_CONTRAST), colour)


def _mix(colour: str, ground: str, share: float) -> str:
    pairs = ((int(colour[at : at + 2], 16), int(ground[at : at + 2], 16)) for at in (1, 3, 5))
    return "#" + "".join(f"{round((1.0 - share) * one + share * other):02x}" for one, other in pairs)
