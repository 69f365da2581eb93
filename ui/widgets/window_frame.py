"""What stays while the pages change: the steps above, the page, and the panel at its side."""

from __future__ import annotations

from typing import Final

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QStackedWidget, QVBoxLayout, QWidget

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
        row = QHBoxLayout()
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

    def arrange(self) -> None:
        """Give the page its place, or the panel where both do not fit."""
        narrow = self.width() < NARROW_PX
        self._side.set_wide(narrow)
        self.pages.setVisible(not narrow or self._side.isHidden())

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Look whether both fit."""
        super().resizeEvent(event)
        self.arrange()
