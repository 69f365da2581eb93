"""Key of a drawing: a sample of each line or fill, and what it stands for."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPen, QPixmap
from PySide6.QtWidgets import QGridLayout, QLabel, QWidget

from ui.theme import Theme
from ui.widgets.labels import make_label

SAMPLE_PX: Final = QSize(30, 14)
BAND_ALPHA: Final = 0.28

Look = Literal["solid", "dashed", "dotted", "banded", "hatched"]

_STYLES: Final = {
    "solid": Qt.PenStyle.SolidLine,
    "banded": Qt.PenStyle.SolidLine,
    "dashed": Qt.PenStyle.DashLine,
    "dotted": Qt.PenStyle.DotLine,
}


@dataclass(frozen=True, slots=True)
class Sample:
    """One line of the key."""

    colour: str
    look: Look
    text: str


class SampleKey(QWidget):
    """Samples below each other."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(8)
        self._grid.setVerticalSpacing(2)
        self._grid.setColumnStretch(1, 1)
        self._parts: list[QLabel] = []

    def set_samples(self, *samples: Sample, theme: Theme) -> None:
        """Show these lines."""
        for part in self._parts:
            self._grid.removeWidget(part)
            part.deleteLater()
        self._parts = []
        for row, sample in enumerate(samples):
            picture = QLabel()
            picture.setPixmap(draw_sample(sample, theme, ratio=self.devicePixelRatioF()))
            words = make_label("text", sample.text)
            self._grid.addWidget(picture, row, 0, Qt.AlignmentFlag.AlignTop)
            self._grid.addWidget(words, row, 1)
            self._parts += [picture, words]


def draw_sample(sample: Sample, theme: Theme, *, ratio: float) -> QPixmap:
    """Draw the sample of one line or fill."""
    pixmap = QPixmap(SAMPLE_PX * ratio)
    pixmap.setDevicePixelRatio(ratio)
    pixmap.fill(QColor(theme.panel))
    painter = QPainter(pixmap)
    box = QRectF(1, 2, SAMPLE_PX.width() - 2, SAMPLE_PX.height() - 4)
    if sample.look == "hatched":
        painter.setPen(QPen(QColor(sample.colour), 1))
        painter.setBrush(hatching(sample.colour))
        painter.drawRect(box)
    else:
        if sample.look == "banded":
            painter.fillRect(box, veil_of(sample.colour))
        painter.setPen(QPen(QColor(sample.colour), 2, _STYLES[sample.look]))
        painter.drawLine(QPointF(box.left(), box.center().y()), QPointF(box.right(), box.center().y()))
    painter.end()
    return pixmap


def veil_of(colour: str) -> QColor:
    """Return the colour of a confidence band around a line of this colour."""
    veil = QColor(colour)
    veil.setAlphaF(BAND_ALPHA)
    return veil


def hatching(colour: str) -> QBrush:
    """Return the fill of bad sectors, which is told apart without its colour too."""
    return QBrush(QColor(colour), Qt.BrushStyle.BDiagPattern)
