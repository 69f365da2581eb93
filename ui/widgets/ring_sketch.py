"""A wheel end, or the car, with the hidden fault drawn where it sits."""

from __future__ import annotations

import math
from typing import Final

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from triage.corners import CORNERS, Corner
from ui.presenters.exercise_sketch import RingSketchPlan
from ui.theme import LIGHT, Theme

RING: Final = 0.58
BAND: Final = 0.16
HUB: Final = 0.22
TYRE: Final = 0.95
"""Radii and width over half the height of the sketch."""

WEAKEST: Final = 0.15
"""Share of its width that a pole without any strength keeps, so that its place can be seen."""


class RingSketch(QWidget):
    """Seen from outside: tyre, encoder ring pole by pole, hub, sensor above and its lead.

    The part at fault is drawn in another colour, thicker, and is named in words; a turn begins with
    the mark at the top.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._plan: RingSketchPlan | None = None
        self._theme = LIGHT
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(180, 180)

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Return the size at which single poles can be told apart."""
        return QSize(260, 260)

    def show_plan(self, plan: RingSketchPlan) -> None:
        """Draw another fault."""
        self._plan = plan
        words = self.tr("Sketch of the fault: {}").format(self._named(plan))
        self.setAccessibleName(f"{words}. {plan.caption}")
        self.update()

    def set_theme(self, theme: Theme) -> None:
        """Change colours."""
        self._theme = theme
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Draw the wheel end, or the car for a fault of the whole vehicle."""
        if self._plan is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        half = 0.5 * min(self.width(), self.height()) - 4.0
        painter.translate(0.5 * self.width(), 0.5 * self.height())
        if self._plan.strength:
            self._paint_wheel_end(painter, self._plan, half)
        else:
            self._paint_car(painter, self._plan, half)
        painter.end()

    def _named(self, plan: RingSketchPlan) -> str:
        return {
            "ring": self.tr("encoder ring"),
            "gap": self.tr("gap"),
            "sensor": self.tr("sensor"),
            "lead": self.tr("lead"),
            "bearing": self.tr("bearing"),
            "tyre": self.tr("tyre"),
            "wiring": self.tr("leads exchanged"),
            "control unit": self.tr("shared by all"),
            "nothing": self.tr("all sound"),
        }[plan.part]

    def _pen(self, *, at_fault: bool, width: float = 1.5) -> QPen:
        colour = self._theme.suspect if at_fault else self._theme.border
        return QPen(QColor(colour), 2.2 * width if at_fault else width)

    # The wheel end ------------------------------------------------------------------------------------

    def _paint_wheel_end(self, painter: QPainter, plan: RingSketchPlan, half: float) -> None:
        painter.setPen(self._pen(at_fault=plan.part == "tyre", width=2.0))
        painter.drawEllipse(QPointF(0, 0), TYRE * half, TYRE * half)
        painter.save()
        painter.translate(plan.off_centre * half, 0.0)
        self._paint_poles(painter, plan, half)
        self._paint_sectors(painter, plan, half)
        self._paint_mark(painter, half)
        painter.restore()
        self._paint_hub(painter, plan, half)
        self._paint_sensor(painter, plan, half)
        painter.setPen(QColor(self._theme.text))
        font = painter.font()
        font.setBold(True)
        painter.setFont(font)
        box = QRectF(-0.5 * half, -0.5 * HUB * half, half, HUB * half)
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, plan.corner)

    def _paint_poles(self, painter: QPainter, plan: RingSketchPlan, half: float) -> None:
        """Draw every pole as a piece of the ring, as thick as it is strong, in two shades by turns."""
        poles = len(plan.strength)
        for number, strength in enumerate(plan.strength):
            weak = plan.part == "ring" and strength < 0.8
            colour = self._theme.suspect if weak else (self._theme.muted, self._theme.border)[number % 2]
            width = BAND * half * max(strength, WEAKEST)
            pen = QPen(QColor(colour), width, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap)
            painter.setPen(pen)
            turn = 360.0 / poles
            self._arc(painter, RING * half, number * turn, 0.8 * turn)

    def _paint_mark(self, painter: QPainter, half: float) -> None:
        """Draw the mark from which the ring is counted, inside it at the top."""
        tip = QPointF(0.0, -(RING - 0.55 * BAND) * half)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(self._theme.text))
        side = 0.045 * half
        painter.drawPolygon([tip, tip + QPointF(-side, 1.6 * side), tip + QPointF(side, 1.6 * side)])
        painter.setBrush(Qt.BrushStyle.NoBrush)

    def _paint_sectors(self, painter: QPainter, plan: RingSketchPlan, half: float) -> None:
        painter.setPen(self._pen(at_fault=True))
        if plan.part == "ring" and not plan.sectors_rev:  # the ring as a whole
            self._arc(painter, (RING + 0.7 * BAND) * half, 0.0, 360.0)
        for centre, width in plan.sectors_rev:
            wide = max(360.0 * width, 4.0)
            self._arc(painter, (RING + 0.7 * BAND) * half, 360.0 * centre - 0.5 * wide, wide)

    def _arc(self, painter: QPainter, radius: float, begin_deg: float, span_deg: float) -> None:
        # Qt counts sixteenths of degrees against the clock from three o'clock.
        box = QRectF(-radius, -radius, 2 * radius, 2 * radius)
        way = -1.0 if self._plan is not None and self._plan.clockwise else 1.0
        painter.drawArc(box, round(16 * (90.0 + way * begin_deg)), round(16 * way * span_deg))

    def _paint_hub(self, painter: QPainter, plan: RingSketchPlan, half: float) -> None:
        at_fault = plan.part == "bearing"
        painter.setPen(self._pen(at_fault=at_fault))
        painter.drawEllipse(QPointF(0, 0), HUB * half, HUB * half)
        ball = 0.05 * half
        for number in range(10):
            angle = 2.0 * math.pi * number / 10
            at = QPointF(math.cos(angle), math.sin(angle)) * (HUB * half + 1.6 * ball)
            painter.drawEllipse(at, ball, ball)

    def _paint_sensor(self, painter: QPainter, plan: RingSketchPlan, half: float) -> None:
        top = -(RING + BAND) * half
        lift = 0.09 * half if plan.part == "gap" else 0.0
        body = QRectF(-0.07 * half, top - 0.17 * half - lift, 0.14 * half, 0.17 * half)
        painter.setPen(self._pen(at_fault=plan.part == "sensor"))
        painter.setBrush(QColor(self._theme.suspect if plan.part == "sensor" else self._theme.panel))
        painter.drawRoundedRect(body, 2, 2)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        if plan.part == "gap":
            painter.setPen(self._pen(at_fault=True))
            painter.drawLine(
                QPointF(0.12 * half, body.bottom()), QPointF(0.12 * half, top + 0.5 * BAND * half)
            )
        self._paint_lead(painter, body.topRight() + QPointF(0, 0.04 * half), half, broken=plan.part == "lead")

    def _paint_lead(self, painter: QPainter, begin: QPointF, half: float, *, broken: bool) -> None:
        painter.setPen(self._pen(at_fault=broken))
        end = QPointF(0.98 * half, begin.y())
        middle = (begin + end) * 0.5
        gap = QPointF(0.06 * half, 0) if broken else QPointF(0, 0)
        painter.drawLine(begin, middle - gap)
        painter.drawLine(middle + gap, end)
        if broken:
            for side in (-1.0, 1.0):
                fray = middle + gap * side
                painter.drawLine(fray, fray + QPointF(-side * 0.05 * half, -0.06 * half))
                painter.drawLine(fray, fray + QPointF(-side * 0.05 * half, 0.06 * half))

    # The whole car ------------------------------------------------------------------------------------

    def _paint_car(self, painter: QPainter, plan: RingSketchPlan, half: float) -> None:
        painter.setPen(self._pen(at_fault=False))
        painter.drawRoundedRect(QRectF(-0.36 * half, -0.85 * half, 0.72 * half, 1.7 * half), 18, 18)
        unit = QRectF(-0.13 * half, -0.1 * half, 0.26 * half, 0.2 * half)
        ends = {corner: self._wheel_at(corner, half) for corner in CORNERS}
        crossed = plan.part == "wiring"
        for corner, wheel in ends.items():
            self._paint_small_wheel(painter, corner, wheel, half)
        for corner in CORNERS:
            painter.setPen(self._pen(at_fault=crossed))
            painter.drawLine(ends[corner], self._plug(corner, half, crossed=crossed))
        painter.setPen(self._pen(at_fault=plan.part == "control unit"))
        painter.setBrush(QColor(self._theme.suspect if plan.part == "control unit" else self._theme.panel))
        painter.drawRect(unit)
        painter.setBrush(Qt.BrushStyle.NoBrush)

    @staticmethod
    def _wheel_at(corner: Corner, half: float) -> QPointF:
        return QPointF(
            (-0.3 if corner[1] == "L" else 0.3) * half, (-0.62 if corner[0] == "F" else 0.62) * half
        )

    @staticmethod
    def _plug(corner: Corner, half: float, *, crossed: bool) -> QPointF:
        side = -1.0 if corner[1] == "L" else 1.0
        return QPointF((-side if crossed else side) * 0.1 * half, (-0.1 if corner[0] == "F" else 0.1) * half)

    def _paint_small_wheel(self, painter: QPainter, corner: Corner, at: QPointF, half: float) -> None:
        side = -1.0 if corner[1] == "L" else 1.0
        wheel = QRectF(0, 0, 0.16 * half, 0.36 * half)
        wheel.moveCenter(at + QPointF(side * 0.16 * half, 0))
        painter.setPen(self._pen(at_fault=False))
        painter.drawRoundedRect(wheel, 3, 3)
        painter.setPen(QColor(self._theme.text))
        box = QRectF(0, 0, 0.3 * half, 20.0)
        box.moveCenter(wheel.center() + QPointF(side * 0.24 * half, 0))
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, corner)
