"""Contrast by WCAG 2.2: 1.4.3 (text 4.5:1) and 1.4.11 (graphics 3:1)."""

from __future__ import annotations

import itertools

import pytest

from triage.corners import CORNERS
from ui.theme import DARK, LIGHT, Theme, contrast_ratio, relative_luminance, theme_for

THEMES = pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda theme: theme.name)


def blend(above: str, below: str, alpha: float) -> str:
    channels = [
        round(alpha * int(above[at : at + 2], 16) + (1 - alpha) * int(below[at : at + 2], 16))
        for at in (1, 3, 5)
    ]
    return "#" + "".join(f"{channel:02x}" for channel in channels)


def test_luminance_and_contrast_of_known_colours() -> None:
    assert relative_luminance("#ffffff") == pytest.approx(1.0)
    assert relative_luminance("#000000") == 0.0
    assert contrast_ratio("#000000", "#ffffff") == pytest.approx(21.0)
    # A pair that is widely quoted as the lightest grey that passes on white.
    assert contrast_ratio("#767676", "#ffffff") == pytest.approx(4.54, abs=0.01)


@pytest.mark.parametrize(
    ("grey", "on_white"),
    [("#767676", 4.5422), ("#777777", 4.4781), ("#949494", 3.0335), ("#959595", 2.9953), ("#595959", 7.0047)],
)
def test_greys_at_either_side_of_the_limits(grey: str, on_white: float) -> None:
    assert contrast_ratio(grey, "#ffffff") == pytest.approx(on_white, abs=1e-4)


@THEMES
@pytest.mark.parametrize("text", ["text", "muted", "caution"])
@pytest.mark.parametrize("ground", ["window", "panel"])
def test_text(theme: Theme, text: str, ground: str) -> None:
    assert contrast_ratio(getattr(theme, text), getattr(theme, ground)) >= 4.5


@THEMES
def test_text_on_chosen_lines_bars_and_bands(theme: Theme) -> None:
    assert contrast_ratio(theme.on_accent, theme.accent) >= 4.5
    assert contrast_ratio(theme.text, theme.track) >= 4.5
    for ground in theme.bands.values():
        assert contrast_ratio(theme.text, ground) >= 4.5


@THEMES
@pytest.mark.parametrize("graphic", ["border", "accent", "focus", "suspect", "highlight"])
def test_graphics(theme: Theme, graphic: str) -> None:
    for ground in (theme.window, theme.panel):
        assert contrast_ratio(getattr(theme, graphic), ground) >= 3.0


@THEMES
def test_bar_against_its_track(theme: Theme) -> None:
    assert contrast_ratio(theme.accent, theme.track) >= 3.0


@THEMES
@pytest.mark.parametrize("corner", CORNERS)
def test_wheel_lines_also_under_the_veil(theme: Theme, corner: str) -> None:
    assert contrast_ratio(theme.corners[corner], theme.panel) >= 3.0
    assert contrast_ratio(theme.corners[corner], blend(theme.highlight, theme.panel, 0.16)) >= 3.0


@THEMES
def test_wheel_colours_differ(theme: Theme) -> None:
    for one, other in itertools.combinations(theme.corners.values(), 2):
        apart = [abs(int(one[at : at + 2], 16) - int(other[at : at + 2], 16)) for at in (1, 3, 5)]
        assert max(apart) > 60


def test_choice() -> None:
    assert theme_for(dark=True) is DARK
    assert theme_for(dark=False) is LIGHT
