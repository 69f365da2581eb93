"""A panel at the side of the window for what belongs to no page: settings, map of keys."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QScrollArea, QStackedWidget, QVBoxLayout, QWidget

from ui.widgets.labels import make_button, make_label

WIDTH_PX: Final = 340
LETTERS: Final = 46
"""So many letters stand beside each other, also when texts are large."""

QWIDGETSIZE_MAX: Final = 16777215
"""Qt's own word for no limit."""


class SidePanel(QFrame):
    """Shows one sheet at a time; Esc or its button closes it, and the page beside goes on as before."""

    opened = Signal()
    closed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("role", "panel")
        self._titles: dict[QWidget, str] = {}
        self.title = make_label("headline", larger_by=1.2)
        self.close_button = make_button(self.tr("Close (Esc)"), self.close_sheet)
        self._scroll: dict[QWidget, QScrollArea] = {}
        self._stack = QStackedWidget()
        head = QHBoxLayout()
        head.addWidget(self.title, 1)
        head.addWidget(self.close_button)
        column = QVBoxLayout(self)
        column.setContentsMargins(14, 10, 14, 10)
        column.addLayout(head)
        column.addWidget(self._stack, 1)
        self.set_wide(False)
        self.hide()

    def set_wide(self, wide: bool) -> None:
        """Take the whole width, or the usual one beside a page."""
        width = max(WIDTH_PX, LETTERS * self.fontMetrics().averageCharWidth())
        self.setMinimumWidth(0 if wide else width)
        self.setMaximumWidth(QWIDGETSIZE_MAX if wide else width)

    def add_sheet(self, sheet: QWidget, title: str) -> None:
        """Let the panel show another sheet."""
        scroll = QScrollArea()
        scroll.setWidgetResizable(True)
        scroll.setProperty("role", "sheet")
        scroll.setAccessibleName(title)
        scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        sheet.setContentsMargins(6, 4, 6, 4)  # apart from the ring of the keyboard
        scroll.setWidget(sheet)
        for behind in (sheet, scroll.viewport()):  # the panel's own colour shows through
            behind.setAutoFillBackground(False)
        self._titles[sheet], self._scroll[sheet] = title, scroll
        self._stack.addWidget(scroll)

    @property
    def sheet(self) -> QWidget | None:
        """The sheet that is shown, None while the panel is closed."""
        if self.isHidden():
            return None
        return next(one for one, scroll in self._scroll.items() if scroll is self._stack.currentWidget())

    def show_sheet(self, sheet: QWidget) -> None:
        """Show a sheet and give it the keyboard."""
        self.title.setText(self._titles[sheet])
        self._stack.setCurrentWidget(self._scroll[sheet])
        self.show()
        self.opened.emit()
        self._scroll[sheet].setFocus()

    def close_sheet(self) -> None:
        """Close the panel."""
        if not self.isHidden():
            self.hide()
            self.closed.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        """Close with Esc."""
        if event.key() == Qt.Key.Key_Escape:
            self.close_sheet()
        else:
            super().keyPressEvent(event)
