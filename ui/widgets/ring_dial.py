"""The dial of a ring map: rim with bad sectors, tracks for speed and losses, an arrow for the turning."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

import numpy as np
from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPainterPath, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from triage.corners import CORNER_NAMES
from triage.speed_log import FloatArray
from ui.presenters.ring import RingPicture, RoundCurve, SectorMark, polar_points
from ui.theme import LIGHT, Theme
from ui.widgets.instruments_key import hatching, veil_of
from ui.widgets.speaking import say

SMALLEST_PX: Final = 260
LARGEST_PX: Final = 460
OUTSIDE_PX: Final = 36
"""Room beside the rim for the labels of the angle."""

Track = tuple[float, float]
"""Inner and outer radius as shares of the rim."""

RIM: Final[Track] = (0.94, 1.0)
DROPS: Final[Track] = (0.83, 0.92)
RIPPLE: Final[Track] = (0.50, 0.81)
LOST: Final[Track] = (0.20, 0.45)
ARROW: Final = 0.16


class RingDial(QWidget):
    """Zero on top; the angle grows in the order in which the ring passes the sensor."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._picture: RingPicture | None = None
        self._theme = LIGHT
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.setToolTip(
            self.tr(
                "One turn of the wheel, averaged over the drive: how its speed swings, where on the ring "
                "samples are lost, and the sectors that lose them."
            )
        )

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Return a size at which all labels are legible."""
        return QSize(380, 380)

    def minimumSizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Return the smallest legible size."""
        side = SMALLEST_PX + 2 * (outside_px(self.fontMetrics()) - OUTSIDE_PX)
        return QSize(side, side)

    def heightForWidth(self, width: int) -> int:  # noqa: N802 - Qt's name
        """Return a square, within bounds."""
        return min(max(width, self.minimumSizeHint().width()), LARGEST_PX)

    def set_picture(self, picture: RingPicture) -> None:
        """Draw this ring."""
        self._picture = picture
        name = self.tr("Ring map of the {} wheel").format(say(CORNER_NAMES[picture.corner]))
        self.setAccessibleName(name)
        self.setAccessibleDescription("\n".join(mark.text for mark in picture.sectors))
        self.update()

    def set_theme(self, theme: Theme) -> None:
        """Change colours."""
        self._theme = theme
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Draw the dial from the outside inwards."""
        if self._picture is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.translate(QRectF(self.rect()).center())
        rim_px = min(self.width(), self.height()) / 2.0 - outside_px(painter.fontMetrics())
        _Drawing(painter, self._picture, self._theme, rim_px).draw()
        painter.end()


def outside_px(metrics: QFontMetrics) -> int:
    """Return the room for the angles around the ring: more where texts are large."""
    return max(OUTSIDE_PX, metrics.horizontalAdvance("270°") + 8)


class _Drawing:
    """One painting of a dial around the origin."""

    def __init__(self, painter: QPainter, picture: RingPicture, theme: Theme, rim_px: float) -> None:
        self._painter, self._picture, self._theme, self._rim_px = painter, picture, theme, rim_px

    def draw(self) -> None:
        self._draw_scale()
        if self._picture.drops_per_turn is not None:
            self._draw_drops(self._picture.drops_per_turn)
        ripple, lost = self._picture.ripple, self._picture.lost
        self._draw_curve(ripple, RIPPLE, self._theme.accent, lowest=-ripple.full_scale)
        self._draw_curve(lost, LOST, self._theme.highlight, lowest=0.0)
        self._draw_numbers(ripple, lost)
        for mark in self._picture.sectors:
            self._draw_sector(mark)
        self._draw_turning()

    def _point(self, angle_deg: float, radius: float) -> QPointF:
        x, y = polar_points(np.array([angle_deg]), np.array([radius]), clockwise=self._picture.clockwise)
        return QPointF(float(x[0]) * self._rim_px, float(y[0]) * self._rim_px)

    def _polygon(self, angle_deg: FloatArray, radius: FloatArray) -> QPolygonF:
        x, y = polar_points(angle_deg, radius * self._rim_px, clockwise=self._picture.clockwise)
        return QPolygonF([QPointF(*point) for point in zip(x.tolist(), y.tolist(), strict=True)])

    def _circle(self, radius: float) -> None:
        self._painter.drawEllipse(QPointF(0.0, 0.0), radius * self._rim_px, radius * self._rim_px)

    def _draw_scale(self) -> None:
        painter, theme = self._painter, self._theme
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(QColor(theme.track), 1))
        for angle_deg in range(0, 360, 30):
            painter.drawLine(self._point(angle_deg, LOST[0]), self._point(angle_deg, RIM[0]))
        for radius in (*RIPPLE, LOST[1], *RIM):
            self._circle(radius)
        painter.setPen(QPen(QColor(theme.border), 1))
        self._circle(LOST[0])
        painter.setPen(QPen(QColor(theme.border), 1, Qt.PenStyle.DashLine))
        self._circle(0.5 * (RIPPLE[0] + RIPPLE[1]))
        painter.setPen(QColor(theme.text))
        for angle_deg in (0, 90, 180, 270):
            place = self._point(angle_deg, 1.0 + 0.55 * outside_px(painter.fontMetrics()) / self._rim_px)
            self._write(place, f"{angle_deg}°")

    def _write(self, middle: QPointF, text: str, *, framed: bool = False) -> None:
        metrics = self._painter.fontMetrics()
        box = QRectF(0, 0, metrics.horizontalAdvance(text) + 4, metrics.height())
        box.moveCenter(middle)
        if framed:
            self._painter.fillRect(box, QColor(self._theme.panel))
        self._painter.drawText(box, Qt.AlignmentFlag.AlignCenter, text)

    def _draw_curve(self, curve: RoundCurve, track: Track, colour: str, *, lowest: float) -> None:
        """Draw band and line; where a bin holds no sample both stay open."""
        per_unit = (track[1] - track[0]) / (curve.full_scale - lowest)
        low, value, high = (
            np.clip(track[0] + (one - lowest) * per_unit, track[0] - 0.02, track[1] + 0.02)
            for one in (curve.low, curve.value, curve.high)
        )
        painter = self._painter
        for part in _parts(np.isfinite(value)):
            angle_deg = self._picture.angle_deg[part]
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(veil_of(colour))
            painter.drawPath(self._band(angle_deg, low[part], high[part]))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(QColor(colour), 2))
            line = self._polygon(angle_deg, value[part])
            if part.size == value.size + 1:
                painter.drawPolygon(line)
            else:
                painter.drawPolyline(line)

    def _band(self, angle_deg: FloatArray, low: FloatArray, high: FloatArray) -> QPainterPath:
        path = QPainterPath()
        outline = self._polygon(
            np.concatenate((angle_deg, angle_deg[::-1])), np.concatenate((high, low[::-1]))
        )
        path.addPolygon(outline)
        path.closeSubpath()
        return path

    def _draw_drops(self, per_turn: FloatArray) -> None:
        self._painter.setPen(Qt.PenStyle.NoPen)
        self._painter.setBrush(QColor(self._theme.suspect))
        half_deg = 180.0 / per_turn.size
        height = (DROPS[1] - DROPS[0]) * per_turn / max(float(per_turn.max()), 1e-12)
        for middle_deg, tall in zip(self._picture.angle_deg.tolist(), height.tolist(), strict=True):
            if tall > 0.0:
                angle_deg = np.array([middle_deg - half_deg, middle_deg + half_deg])
                corners = np.concatenate((angle_deg, angle_deg[::-1]))
                radius = np.array([DROPS[0], DROPS[0], DROPS[0] + tall, DROPS[0] + tall])
                self._painter.drawPolygon(self._polygon(corners, radius))

    def _draw_sector(self, mark: SectorMark) -> None:
        painter = self._painter
        angle_deg = np.linspace(mark.begin_deg, max(mark.end_deg, mark.begin_deg + 2.0), 40)
        outer, inner = np.full(angle_deg.size, RIM[1]), np.full(angle_deg.size, RIM[0])
        painter.setPen(QPen(QColor(self._theme.suspect), 2))
        painter.setBrush(hatching(self._theme.suspect))
        painter.drawPath(self._band(angle_deg, inner, outer))
        middle = self._point(mark.centre_deg, 0.5 * (RIM[0] + RIM[1]))
        painter.setBrush(QColor(self._theme.panel))
        half_px = 0.5 * painter.fontMetrics().height() + 2.0
        painter.drawEllipse(middle, half_px, half_px)
        painter.setPen(QColor(self._theme.text))
        self._write(middle, str(mark.number))

    def _draw_numbers(self, ripple: RoundCurve, lost: RoundCurve) -> None:
        """Write the ends of both scales, each on its own side of the dial."""
        self._painter.setPen(QColor(self._theme.text))
        reach = f"{ripple.full_scale:g} %"
        for angle_deg, radius, text in (
            (0.0, RIPPLE[1], f"+{reach}"),
            (0.0, RIPPLE[0], f"−{reach}"),
            (180.0, LOST[1], f"{lost.full_scale:g} %"),
        ):
            self._write(self._point(angle_deg, radius), text, framed=True)

    def _draw_turning(self) -> None:
        """Draw the arrow of forward turning, which runs against the angle, around the wheel's name."""
        painter, theme = self._painter, self._theme
        painter.setPen(QPen(QColor(theme.text), 2))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawPolyline(self._polygon(np.linspace(240.0, -30.0, 50), np.full(50, ARROW)))
        painter.setBrush(QColor(theme.text))
        painter.drawPolygon(
            self._polygon(np.array([-64.0, -24.0, -24.0]), np.array([ARROW, ARROW + 0.035, ARROW - 0.035]))
        )
        font = painter.font()
        font.setBold(True)
        painter.setFont(font)
        self._write(QPointF(0.0, 0.0), self._picture.corner)


def _parts(finite: np.ndarray) -> list[np.ndarray]:
    """Cut the ring into stretches of finite bins; a whole ring comes back to its first bin."""
    if finite.all():
        return [np.append(np.arange(finite.size), 0)]
    cuts = np.flatnonzero(np.diff(np.concatenate(([0], finite.astype(np.int8), [0]))))
    return [np.arange(first, stop) for first, stop in list(pairwise(cuts))[::2]]
