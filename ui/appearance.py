"""Brings the user's settings onto the program: colours, size of texts, numbers, language."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Final, Protocol

from PySide6.QtCore import QLibraryInfo, QLocale, QSize, Qt, QTranslator
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QWidget

from ui.collecting import no_collection
from ui.state.settings import Preferences, Settings
from ui.state.window_state import WindowState
from ui.theme import theme_for
from ui.widgets.styling import apply_theme

WISHED_SIZE: Final = QSize(1280, 800)
TRANSLATIONS: Final = Path(__file__).resolve().parent / "translations"
OWN_LANGUAGE: Final = "en"
"""The texts in the code are in this one."""


class HasPreferences(Protocol):
    """A window whose colours can be chosen."""

    state: WindowState
    preferences: Preferences


def follow_theme(application: QApplication, window: HasPreferences) -> None:
    """Colour the program as the user says, or as the system does where the user left it to it."""
    hints, state, preferences = application.styleHints(), window.state, window.preferences

    def choose() -> None:
        colours = preferences.settings.colours
        system = hints.colorScheme() == Qt.ColorScheme.Dark
        state.set_dark(system if colours == "system" else colours == "dark")

    state.dark_changed.subscribe(lambda dark: apply_theme(application, theme_for(dark=dark)))
    choose()
    apply_theme(application, theme_for(dark=state.dark))
    hints.colorSchemeChanged.connect(lambda _scheme: choose())
    preferences.changed.subscribe(lambda _settings: choose())


def follow_text_size(application: QApplication, preferences: Preferences) -> None:
    """Keep all texts at the size the user chose, against that of the system."""
    sizes = [100.0]

    def choose(settings: Settings) -> None:
        if settings.text_percent != sizes[0]:
            scale_texts(application, settings.text_percent / sizes[0])
            sizes[0] = float(settings.text_percent)

    preferences.changed.subscribe(choose)
    choose(preferences.settings)


def scale_texts(application: QApplication, factor: float) -> None:
    """Make every text of the program larger or smaller."""
    font = application.font()
    font.setPointSizeF(font.pointSizeF() * factor)
    with no_collection():
        application.setFont(font)
        # A style sheet has given every widget its font; only when set again do they ask for the new one.
        application.setStyleSheet(scale_sizes(application.styleSheet(), factor))


def scale_sizes(style_sheet: str, factor: float) -> str:
    """Return a style sheet with all its sizes of texts larger or smaller.

    >>> scale_sizes("QLabel { font-size: 12.5pt; }", 2.0)
    'QLabel { font-size: 25.0000pt; }'
    """
    return re.sub(
        r"font-size: ([0-9.]+)pt", lambda found: f"font-size: {float(found[1]) * factor:.4f}pt", style_sheet
    )


def write_numbers_alike_everywhere() -> None:
    """Let fields write and take a decimal point, whatever the country of the system."""
    neutral = QLocale.c()
    neutral.setNumberOptions(QLocale.NumberOption.OmitGroupSeparator)
    QLocale.setDefault(neutral)


def load_translation(application: QApplication, settings: Settings, folder: Path = TRANSLATIONS) -> str:
    """Translate the program where a translation lies in ``folder``.

    Parameters
    ----------
    application : QApplication
    settings : Settings
    folder : Path
        Holds ``wheel-triage_<language>.qm``.

    Returns
    -------
    str
        The language that is shown.
    """
    wanted = settings.language
    own = QTranslator(application)
    if wanted == OWN_LANGUAGE or not own.load(f"wheel-triage_{wanted}", str(folder)):
        return OWN_LANGUAGE
    application.installTranslator(own)
    of_qt = QTranslator(application)
    if of_qt.load(f"qtbase_{wanted}", QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath)):
        application.installTranslator(of_qt)
    return wanted


def fit_to_screen(window: QWidget) -> None:
    """Give the window the size it likes, or what the screen has."""
    screen = QGuiApplication.primaryScreen()
    room = screen.availableSize() if screen is not None else WISHED_SIZE
    window.resize(WISHED_SIZE.boundedTo(room))
