"""The car from above, with the probability of each corner beside its wheel."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from triage.corners import CORNER_NAMES, CORNERS, Corner
from triage.units import format_share
from ui.theme import LIGHT, Theme
from ui.widgets.speaking import say

BODY_PX: Final = (42.0, 74.0)
WHEEL_PX: Final = (9.0, 17.0)


class CarSketch(QWidget):
    """Plan view, front up; the suspected wheel is filled and ringed, the others are outlines."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._shares: Mapping[Corner, float] = {}
        self._suspect: Corner | None = None
        self._theme = LIGHT
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Return room for the car and a percentage on either side."""
        bold = self.font()
        bold.setBold(True)
        widest_px = max(QFontMetrics(bold).horizontalAdvance(f"{corner} under 99 %") for corner in CORNERS)
        return QSize(2 * widest_px + 100, 84)

    def set_verdict(self, shares: Mapping[Corner, float], suspect: Corner | None) -> None:
        """Show these probabilities."""
        self._shares, self._suspect = shares, suspect
        words = ", ".join(
            f"{say(CORNER_NAMES[corner])} {say(format_share(share))}" for corner, share in shares.items()
        )
        self.setAccessibleName(self.tr("Probability of each corner: {}").format(words))
        self.setToolTip(self.tr("Probability that the fault sits at this corner"))
        self.update()

    def set_theme(self, theme: Theme) -> None:
        """Change colours."""
        self._theme = theme
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Draw body, wheels and percentages."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        body = QRectF(0, 0, *BODY_PX)
        body.moveCenter(QRectF(self.rect()).center())
        painter.setPen(QPen(QColor(self._theme.border), 1.5))
        painter.drawRoundedRect(body, 12, 14)
        windscreen = body.adjusted(8, 20, -8, 0)
        windscreen.setHeight(9)
        painter.drawRoundedRect(windscreen, 3, 3)
        for corner in CORNERS:
            self._paint_wheel(painter, body, corner)
        painter.end()

    def _paint_wheel(self, painter: QPainter, body: QRectF, corner: Corner) -> None:
        left, front = corner[1] == "L", corner[0] == "F"
        wheel = QRectF(0, 0, *WHEEL_PX)
        wheel.moveCenter(body.topLeft())
        wheel.moveLeft(body.left() - WHEEL_PX[0] - 1 if left else body.right() + 1)
        wheel.moveTop(body.top() + 9 if front else body.bottom() - 9 - WHEEL_PX[1])
        suspected = corner == self._suspect
        painter.setPen(QPen(QColor(self._theme.text if suspected else self._theme.border), 1.5))
        painter.setBrush(QColor(self._theme.suspect if suspected else self._theme.panel))
        painter.drawRoundedRect(wheel, 3, 3)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        if suspected:
            painter.drawEllipse(wheel.center(), 13, 13)
        self._paint_share(painter, wheel, corner)

    def _paint_share(self, painter: QPainter, wheel: QRectF, corner: Corner) -> None:
        left = corner[1] == "L"
        beside = QRectF(0, wheel.top() - 8, wheel.left() - 13, wheel.height() + 16)
        if not left:
            beside = QRectF(
                wheel.right() + 13, wheel.top() - 8, self.width() - wheel.right() - 13, wheel.height() + 16
            )
        font = painter.font()
        font.setBold(corner == self._suspect)
        painter.setFont(font)
        painter.setPen(QColor(self._theme.text))
        side = Qt.AlignmentFlag.AlignRight if left else Qt.AlignmentFlag.AlignLeft
        share = self._shares.get(corner)
        text = corner if share is None else f"{corner} {say(format_share(share))}"
        painter.drawText(beside, Qt.AlignmentFlag.AlignVCenter | side, text)
