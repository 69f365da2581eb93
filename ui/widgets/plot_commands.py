"""What can be done with a drawing beside looking at it, as methods and as a menu."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import QObject, QPoint
from PySide6.QtWidgets import QFileDialog, QMenu, QWidget

from triage.errors import OutputError
from triage.texts import error_lines
from ui.presenters.plot_table import Table
from ui.widgets.plot_export import copy_picture, copy_table, save_picture, save_table
from ui.widgets.speaking import say


@dataclass(frozen=True, slots=True)
class Exported:
    """Gives what is in view at the moment it is asked for.

    Attributes
    ----------
    picture : callable
        Returns the widget to draw; raises :class:`OutputError` where nothing is drawn.
    table : callable
        Returns the values; raises :class:`OutputError` where there are none or too many.
    title : callable
        Returns the name of the recording, which a picture carries.
    words : callable
        Returns the words that belong to the picture.
    """

    picture: Callable[[], QWidget]
    table: Callable[[], Table]
    title: Callable[[], str]
    words: Callable[[], str] = str


class PlotCommands(QObject):
    """Copying and saving what is in view.

    Parameters
    ----------
    owner : QWidget
        Beside which dialogs and menus open.
    exported : Exported
    tell : callable
        Shows a line to the user: what was done, or why it could not be.
    """

    def __init__(self, owner: QWidget, exported: Exported, tell: Callable[[str], object]) -> None:
        super().__init__(owner)
        self._owner, self._exported, self._tell = owner, exported, tell

    def copy_picture(self) -> None:
        """Put the picture on the clipboard."""
        told = self._exported
        self._try(
            lambda: copy_picture(told.picture(), told.title(), told.words()), self.tr("Picture copied.")
        )

    def copy_data(self) -> None:
        """Put the values in view on the clipboard."""
        self._try(lambda: copy_table(self._exported.table()), self.tr("Values copied."))

    def save_picture(self, path: str | Path) -> None:
        """Write the picture to a file, by its suffix as PNG or SVG; raises OutputError."""
        save_picture(self._exported.picture(), path, self._exported.title())

    def save_data(self, path: str | Path) -> None:
        """Write the values in view to a file, as comma-separated values; raises OutputError."""
        save_table(self._exported.table(), path)

    def ask_and_save_picture(self) -> None:
        """Let the user choose a file, and write the picture to it."""
        self._ask_and_save(self.tr("Save the picture"), "PNG (*.png);;SVG (*.svg)", self.save_picture)

    def ask_and_save_data(self) -> None:
        """Let the user choose a file, and write the values in view to it."""
        self._ask_and_save(self.tr("Save the values in view"), "CSV (*.csv)", self.save_data)

    def _ask_and_save(self, title: str, kinds: str, save: Callable[[str], None]) -> None:
        path, kind = QFileDialog.getSaveFileName(self._owner.window(), title, "", kinds)
        if path:
            # The dialogs of some desktops leave the suffix to the program.
            wanted = path if Path(path).suffix else f"{path}.{kind.rpartition('.')[2].rstrip(')')}"
            self._try(lambda: save(wanted), self.tr("Saved: {}").format(Path(wanted).name))

    def _try(self, work: Callable[[], object], done: str) -> None:
        try:
            work()
        except OutputError as error:
            self._tell(say(error_lines(error)))
        else:
            self._tell(done)

    def build_menu(self, parent: QWidget) -> QMenu:
        """Return the menu."""
        menu = QMenu(parent)
        for text, run in (
            (self.tr("&Copy the picture"), self.copy_picture),
            (self.tr("&Save the picture…"), self.ask_and_save_picture),
            (self.tr("C&opy the values in view"), self.copy_data),
            (self.tr("S&ave the values in view…"), self.ask_and_save_data),
        ):
            menu.addAction(text).triggered.connect(lambda _checked=False, run=run: run())
        return menu

    def show_menu(self, at: QPoint) -> None:
        """Offer the commands at a place of the screen."""
        menu = self.build_menu(self._owner)
        menu.aboutToHide.connect(menu.deleteLater)
        menu.popup(at)
