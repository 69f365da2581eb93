"""What stays while the pages change: the steps above, the page, and the panel at its side."""

from __future__ import annotations

from typing import Final

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QApplication, QHBoxLayout, QStackedWidget, QVBoxLayout, QWidget

from ui.widgets.side_panel import SidePanel
from ui.widgets.step_bar import StepBar

NARROW_PX: Final = 860
"""Below this width the side panel stands in the place of the page."""


class WindowFrame(QWidget):
    """Steps, pages and side panel of the window."""

    def __init__(self, steps: StepBar, side: SidePanel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.pages = QStackedWidget()
        self._side = side
        self._row = row = QHBoxLayout()
        row.setSpacing(0)
        row.addWidget(self.pages, 1)
        row.addWidget(side)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(steps)
        column.addLayout(row, 1)
        side.opened.connect(self.arrange)
        side.closed.connect(self.arrange)

    def add_page(self, page: QWidget) -> None:
        """Add a page; Tab comes to it before the panel at the side, as to the pages that came first."""
        self.pages.addWidget(page)
        # Tab comes last to what was added last. To walk along its way and change that is not safe from
        # Python: the binding would take each widget on it for the owner of the next.
        self._add_side_last()

    def _add_side_last(self) -> None:
        side, focus = self._side, QApplication.focusWidget()
        shown = not side.isHidden()
        had_keyboard = focus is not None and side.isAncestorOf(focus)
        side.setParent(None)
        self._row.addWidget(side)
        side.setVisible(shown)
        if focus is not None and had_keyboard:
            focus.setFocus()

    def arrange(self) -> None:
        """Give the page its place, or the panel where both do not fit."""
        narrow = self.width() < NARROW_PX
        self._side.set_wide(narrow)
        self.pages.setVisible(not narrow or self._side.isHidden())

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Look whether both fit."""
        super().resizeEvent(event)
        self.arrange()
