"""A row of switches with a line of words beside it, or below where there is no room beside."""

from __future__ import annotations

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QWidget

from ui.widgets.labels import make_label


class CaptionedRow(QWidget):
    """Squeezed in beside the switches a line would stand one word above the other."""

    def __init__(self, switches: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._switches = switches
        self.caption = make_label("muted")
        self._row = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.addWidget(switches, 0, Qt.AlignmentFlag.AlignLeft)
        self._row.addWidget(self.caption, 1)

    def tell(self, words: str) -> None:
        """Show these words; none with an empty text."""
        self.caption.setText(words)
        self._turn()

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Look again whether the words fit beside."""
        super().resizeEvent(event)
        self._turn()

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        """Look again when the texts change their size."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.StyleChange):
            self._turn()

    def _turn(self) -> None:
        words = self.caption.text()
        words_px = self.caption.fontMetrics().horizontalAdvance(words)
        beside_px = self.width() - self._switches.sizeHint().width() - self._row.spacing()
        beside = not words or words_px <= beside_px
        self._row.setDirection(
            QBoxLayout.Direction.LeftToRight if beside else QBoxLayout.Direction.TopToBottom
        )
