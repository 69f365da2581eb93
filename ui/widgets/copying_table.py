"""A table that opens a row by Enter or double click and copies rows by the usual key."""

from __future__ import annotations

from PySide6.QtCore import QItemSelection, Qt, Signal
from PySide6.QtGui import QContextMenuEvent, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QAbstractItemView, QTableView, QWidget


class CopyingTable(QTableView):
    """Whole rows are chosen, nothing is edited.

    Attributes
    ----------
    row_opened : Signal
        Told the row of the view on Enter or a double click.
    row_chosen : Signal
        Told the row of the view on which the choice came to lie.
    copy_wanted : Signal
        Told when the key for copying was pressed.
    menu_wanted : Signal
        Told the place on the screen when the menu is asked for, by the mouse or the key for it.
    """

    row_opened = Signal(int)
    row_chosen = Signal(int)
    copy_wanted = Signal()
    menu_wanted = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setTabKeyNavigation(False)
        self.setShowGrid(False)
        self.setAlternatingRowColors(True)
        self.setWordWrap(False)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerItem)
        self.doubleClicked.connect(lambda index: self.row_opened.emit(index.row()))

    def selectionChanged(  # noqa: N802 - Qt's name
        self, selected: QItemSelection, deselected: QItemSelection
    ) -> None:
        """Tell which row was chosen."""
        super().selectionChanged(selected, deselected)
        if not selected.isEmpty():
            self.row_chosen.emit(selected.first().top())

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:  # noqa: N802 - Qt's name
        """Ask for the menu."""
        self.menu_wanted.emit(event.globalPos())

    def chosen_rows(self) -> list[int]:
        """Return the rows that are chosen, from top to bottom; all when none is."""
        chosen = sorted(index.row() for index in self.selectionModel().selectedRows())
        return chosen or list(range(self.model().rowCount()))

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        """Open with Enter, copy with the system's key, leave all else to Qt."""
        if event.matches(QKeySequence.StandardKey.Copy):
            self.copy_wanted.emit()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.currentIndex().isValid():
            self.row_opened.emit(self.currentIndex().row())
        else:
            super().keyPressEvent(event)
