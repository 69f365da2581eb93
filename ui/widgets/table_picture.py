"""A table as a drawing: all of its rows, without the frame and the bars of the window."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QCoreApplication, QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QWidget

from ui.presenters.plot_table import TextTable

GAP_PX: Final = 14
MOST_ROWS: Final = 60
"""A longer table is told in numbers, not drawn."""


class TablePicture(QWidget):
    """Drawn to a file or the clipboard; never shown."""

    def __init__(self, table: TextTable, like: QWidget) -> None:
        super().__init__()
        self.setFont(like.font())
        self.setPalette(like.palette())
        left_out = len(table.rows) - MOST_ROWS
        more = QCoreApplication.translate("TablePicture", "and {} more").format(left_out)
        self._rows = (table.head, *table.rows[:MOST_ROWS], *(((more,),) if left_out > 0 else ()))
        metrics = self.fontMetrics()
        columns = range(len(table.head))
        cells = [[row[column] for row in self._rows if column < len(row)] for column in columns]
        self._widths = [max(metrics.horizontalAdvance(text) for text in texts) + GAP_PX for texts in cells]
        self._row_px = metrics.height() + GAP_PX // 2
        self.resize(sum(self._widths) + GAP_PX, self._row_px * len(self._rows) + GAP_PX)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Draw head and rows, every other one on a darker ground."""
        painter, palette = QPainter(self), self.palette()
        painter.fillRect(self.rect(), palette.base())
        for number, row in enumerate(self._rows):
            top = GAP_PX / 2 + number * self._row_px
            if number % 2 == 0:
                painter.fillRect(QRectF(0, top, self.width(), self._row_px), palette.alternateBase())
            painter.setPen(palette.color(QPalette.ColorRole.Text))
            left = float(GAP_PX)
            for text, width in zip(row, self._widths, strict=False):
                box = QRectF(left, top, self.width(), self._row_px)
                painter.drawText(box, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, text)
                left += width
        painter.end()
