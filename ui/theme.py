"""Colours of the window, light and dark, as plain data.

Wheel colours follow the palette of Okabe and Ito ("Color Universal Design", 2008), darkened or lightened
where the contrast against the plot would be under 3:1. Contrast by WCAG 2.2, success criteria 1.4.3
(text, 4.5:1) and 1.4.11 (graphics, 3:1); tests compute every pair.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import TYPE_CHECKING, Final

from triage.corners import Corner

if TYPE_CHECKING:
    from triage.signals.manoeuvres import ManoeuvreKind


@dataclass(frozen=True, slots=True)
class Theme:
    """One set of colours, all as ``#rrggbb``.

    Attributes
    ----------
    window, panel, track : str
        Backgrounds: around the panels, inside them, and of an empty bar.
    text, muted, caution : str
        Texts on ``window`` and ``panel``.
    border, accent, focus : str
        Edges of controls, bars and chosen lines, ring around what has the keyboard.
    on_accent : str
        Text on ``accent``.
    suspect : str
        Fill of the wheel that is suspected.
    highlight : str
        Edge of the seconds that were jumped to; their fill is a veil of it.
    corners : mapping of corner to str
        Lines of the four wheels on ``panel``.
    bands : mapping of manoeuvre to str
        Fill of the manoeuvre strip, with ``text`` on it.
    """

    name: str
    window: str
    panel: str
    track: str
    text: str
    muted: str
    caution: str
    border: str
    accent: str
    on_accent: str
    focus: str
    suspect: str
    highlight: str
    corners: Mapping[Corner, str]
    bands: Mapping[ManoeuvreKind, str]


LIGHT: Final = Theme(
    name="light",
    window="#eef0f3",
    panel="#ffffff",
    track="#e2e6eb",
    text="#1b1f24",
    muted="#4d5662",
    caution="#8a3300",
    border="#747d88",
    accent="#1f5f8b",
    on_accent="#ffffff",
    focus="#0b4f9e",
    suspect="#c2410c",
    highlight="#7a6200",
    corners=MappingProxyType({"FL": "#0072b2", "FR": "#d55e00", "RL": "#008f68", "RR": "#b2588e"}),
    bands=MappingProxyType(
        {
            "standstill": "#e3e5e8",
            "pull-away": "#d9ecdf",
            "straight": "#f4f5f6",
            "left": "#d8e8f6",
            "right": "#f8e6d2",
            "braking": "#f7dcdc",
            "slow-roll": "#ebe2f3",
        }
    ),
)

DARK: Final = Theme(
    name="dark",
    window="#14171b",
    panel="#1d2127",
    track="#333a44",
    text="#eceff2",
    muted="#b6bec8",
    caution="#ffb27a",
    border="#7f8996",
    accent="#7cbcf0",
    on_accent="#10151b",
    focus="#a5d4ff",
    suspect="#ff8a4c",
    highlight="#f0e442",
    corners=MappingProxyType({"FL": "#56b4e9", "FR": "#e69f00", "RL": "#1fbd8f", "RR": "#dd92bb"}),
    bands=MappingProxyType(
        {
            "standstill": "#3a3f47",
            "pull-away": "#21402f",
            "straight": "#262b32",
            "left": "#1d3a54",
            "right": "#4b3516",
            "braking": "#542a2a",
            "slow-roll": "#3d2f4e",
        }
    ),
)


def theme_for(*, dark: bool) -> Theme:
    """Return the dark or the light colours."""
    return DARK if dark else LIGHT


def relative_luminance(colour: str) -> float:
    """Return the relative luminance, 0 to 1, of ``#rrggbb`` (WCAG 2.2, definition "relative luminance")."""
    channels = [int(colour[at : at + 2], 16) / 255.0 for at in (1, 3, 5)]
    red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast_ratio(one: str, other: str) -> float:
    """Return the contrast of two colours, 1 to 21 (WCAG 2.2, definition "contrast ratio")."""
    low, high = sorted((relative_luminance(one), relative_luminance(other)))
    return (high + 0.05) / (low + 0.05)
