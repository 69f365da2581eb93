"""A label on one line that is cut short with dots where there is no room."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QLabel, QSizePolicy, QWidget


class CutLabel(QLabel):
    """Shows as much of a text as fits; all of it is its tool tip and its accessible name."""

    def __init__(self, role: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.whole = ""
        self.setProperty("role", role)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)

    def show_text(self, text: str) -> None:
        """Show this text."""
        self.whole = text
        self.setToolTip(text)
        self.setAccessibleName(text)
        self._cut()
        self.updateGeometry()

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Return room for the whole text."""
        self.ensurePolished()
        return QSize(self.fontMetrics().horizontalAdvance(self.whole) + 4, super().sizeHint().height())

    def minimumSizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Return next to no width: the text is cut."""
        return QSize(40, super().sizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Cut the text anew."""
        super().resizeEvent(event)
        self._cut()

    def _cut(self) -> None:
        self.setText(self.fontMetrics().elidedText(self.whole, Qt.TextElideMode.ElideMiddle, self.width()))
