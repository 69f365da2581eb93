"""The map of keys, beside whatever is on the screen."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final, Protocol, runtime_checkable

from PySide6.QtCore import QCoreApplication, Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from ui.presenters.keys import KeyGroup, KeyLine
from ui.widgets.labels import make_label

KEY_COLUMN_PX: Final = 104
ABOVE_PX: Final = 10


@runtime_checkable
class TellsKeys(Protocol):
    """A widget that obeys keys of its own and can say which.

    Attributes
    ----------
    key_help : tuple of (str, str)
        Keys with commas between them, and what they do, marked for translation in the context ``KeyHelp``.
        Of the keys only those are marked so that hold words other than names of keys.
    """

    key_help: tuple[tuple[str, str], ...]


def key_words(keys: QKeySequence) -> str:
    """Return a key as the user's keyboard names it; Qt's own translation knows the names."""
    return keys.toString(QKeySequence.SequenceFormat.NativeText)


def _all_key_words(keys: str) -> str:
    parts = QCoreApplication.translate("KeyHelp", keys).split(", ")
    # What Qt knows by no name, such as the comma, is a word that is translated already.
    return ", ".join(key_words(QKeySequence(part)) or part for part in parts)


def page_key_lines(page: QWidget, title: str) -> tuple[KeyLine, ...]:
    """Return the keys that hold on a page: of its shortcuts, and of widgets that say their own.

    A shortcut tells what it does as its ``whatsThis``.
    """
    shortcuts = [
        KeyLine(title, key_words(one.key()), one.whatsThis()) for one in page.findChildren(QShortcut)
    ]
    told = [
        KeyLine(title, _all_key_words(keys), QCoreApplication.translate("KeyHelp", does))
        for widget in (page, *page.findChildren(QWidget))
        if isinstance(widget, TellsKeys)
        for keys, does in widget.key_help
    ]
    return (*shortcuts, *told)


class KeyPanel(QWidget):
    """Groups of keys with what they do."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._sheet = QWidget()
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.addWidget(self._sheet)

    def show_groups(self, groups: Iterable[KeyGroup]) -> None:
        """Show this map."""
        sheet = QWidget()
        grid = QGridLayout(sheet)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setColumnMinimumWidth(0, KEY_COLUMN_PX)
        grid.setColumnStretch(1, 1)
        row = 0
        for group in groups:
            heading = make_label("section", group.title, larger_by=1.1)
            heading.setContentsMargins(0, 0 if row == 0 else ABOVE_PX, 0, 0)
            grid.addWidget(heading, row, 0, 1, 2)
            for offset, line in enumerate(group.lines, 1):
                key = make_label("key", line.key)
                grid.addWidget(key, row + offset, 0, Qt.AlignmentFlag.AlignTop)
                grid.addWidget(make_label("", line.does), row + offset, 1)
            row += 1 + len(group.lines)
        grid.setRowStretch(row, 1)
        self._column.replaceWidget(self._sheet, sheet)
        self._sheet.deleteLater()
        self._sheet = sheet
