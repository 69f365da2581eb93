"""Remembers size and place of the window, its splitters and the page, in an INI file of the user."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Final, Protocol

from PySide6.QtCore import QByteArray, QSettings

from triage.errors import OutputError
from triage.user_files import make_folder
from ui.result_place import ResultPlace
from ui.state.window_state import Page, WindowState

if TYPE_CHECKING:
    from ui.widgets.result_page import ResultPage


class HasPlaces(Protocol):
    """A window whose places can be kept."""

    state: WindowState
    result: ResultPlace

    def saveGeometry(self) -> QByteArray:  # noqa: N802 - Qt's name
        """Return size and place."""

    def restoreGeometry(self, geometry: QByteArray, /) -> bool:  # noqa: N802 - Qt's name
        """Take size and place."""


PAGES: Final[tuple[Page, ...]] = ("road-test", "verdict")


def restore_places(window: HasPlaces, path: Path) -> bool:
    """Put the window where it was; False when nothing usable was kept."""
    if not path.is_file():
        return False
    kept = QSettings(str(path), QSettings.Format.IniFormat)
    for page in PAGES:
        if kept.value("page") == page:
            window.state.show_page(page)
    window.result.when_made(lambda page: _restore_splitters(page, kept))
    geometry = kept.value("geometry")
    return isinstance(geometry, QByteArray) and window.restoreGeometry(geometry)


def keep_places(window: HasPlaces, path: Path) -> None:
    """Write where the window is; a folder that cannot be written is nobody's worry when the window closes."""
    try:
        make_folder(path.parent)
    except OutputError:
        return
    kept = QSettings(str(path), QSettings.Format.IniFormat)
    kept.setValue("page", window.state.page)
    kept.setValue("geometry", window.saveGeometry())
    # Where the page was not asked for, what was kept the last time stays.
    splitters = {} if window.result.made is None else window.result.made.splitters
    for name, splitter in splitters.items():
        kept.setValue(f"splitter/{name}", splitter.saveState())
    kept.sync()


def _restore_splitters(page: ResultPage, kept: QSettings) -> None:
    for name, splitter in page.splitters.items():
        state = kept.value(f"splitter/{name}")
        if isinstance(state, QByteArray):
            splitter.restoreState(state)
