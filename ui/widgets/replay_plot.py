"""The four wheel speeds growing as on the road, with the buttons of the replay below."""

from __future__ import annotations

import time
from collections.abc import Callable
from typing import Final

import numpy as np
import pyqtgraph as pg
from PySide6.QtCore import QEvent, QPointF, QRectF, Qt, QTimer
from PySide6.QtGui import QColor, QFont, QHideEvent, QPainter, QPen
from PySide6.QtWidgets import (
    QComboBox,
    QFrame,
    QHBoxLayout,
    QPushButton,
    QSizePolicy,
    QSlider,
    QStyleOptionGraphicsItem,
    QVBoxLayout,
    QWidget,
)

from triage.corners import Corner
from triage.speed_log import SpeedLog
from ui.presenters.replay import clock_words, highest_speed, speed_words, speeds_at, view_span
from ui.presenters.traces import build_speed_lines
from ui.state.replay import SPEEDS, Replay
from ui.state.window_state import WindowState
from ui.theme import Theme, theme_for
from ui.widgets.labels import make_button, make_label
from ui.widgets.plot_items import spread_labels
from ui.widgets.speaking import say
from ui.widgets.wheel_plot import WheelPlot, fit_axes

FRAME_MS: Final = 33
SLIDER_STEPS: Final = 10_000


class Curtain(pg.UIGraphicsItem):
    """Hides what has not been driven yet; at its edge stand the names of the wheels."""

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self.theme = theme
        self.at_s = 0.0
        self.speeds: dict[Corner, float] = {}
        self._font = QFont()
        self.setZValue(20)

    def set_font(self, font: QFont) -> None:
        """Write the names of the wheels in this font, bold."""
        self._font = QFont(font)
        self._font.setBold(True)
        self.update()

    def paint(
        self, painter: QPainter, _option: QStyleOptionGraphicsItem, _widget: QWidget | None = None
    ) -> None:
        """Cover the future, and write the wheels beside the ends of their lines."""
        view = self.boundingRect()
        future = QRectF(view)
        future.setLeft(max(self.at_s, view.left()))
        future.adjust(0.0, -view.height(), view.width(), view.height())  # the outermost pixels as well
        painter.fillRect(future, QColor(self.theme.panel))
        pen = QPen(QColor(self.theme.border), 1)
        pen.setCosmetic(True)
        painter.setPen(pen)
        painter.drawLine(QPointF(self.at_s, view.top()), QPointF(self.at_s, view.bottom()))
        self._write_names(painter)

    def _write_names(self, painter: QPainter) -> None:
        transform = painter.transform()
        ends = {corner: transform.map(QPointF(self.at_s, value)) for corner, value in self.speeds.items()}
        bounds = transform.mapRect(self.boundingRect())
        painter.save()
        painter.resetTransform()
        painter.setFont(self._font)
        width_px = painter.fontMetrics().horizontalAdvance("RR") + 8
        height_px = painter.fontMetrics().height() + 2.0
        middles = spread_labels(
            [end.y() for end in ends.values()],
            height_px=height_px,
            top_px=bounds.top(),
            bottom_px=bounds.bottom(),
        )
        for (corner, end), middle in zip(ends.items(), middles, strict=True):
            painter.setPen(QColor(self.theme.corners[corner]))
            box = QRectF(end.x() + 5, middle - height_px / 2, width_px, height_px)
            painter.drawText(box, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, corner)
        painter.restore()


class ReplayPlot(QFrame):
    """Plays one recording; another one with :meth:`show_log`.

    Parameters
    ----------
    clock_s : callable
        Seconds of a clock that never goes back; replaced in tests.
    """

    def __init__(
        self,
        state: WindowState,
        *,
        clock_s: Callable[[], float] = time.monotonic,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setProperty("role", "panel")
        self._state, self._clock_s = state, clock_s
        self._log: SpeedLog | None = None
        self.replay = Replay(np.empty(0))
        theme = theme_for(dark=state.dark)
        self.canvas = pg.GraphicsLayoutWidget()
        self.canvas.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.canvas.ci.setContentsMargins(2, 4, 12, 4)
        self.plot = WheelPlot(
            self.canvas.addPlot(), theme, axis_label=self._axis_label(), least_height=4.0, floor=0.0
        )
        self.plot.plot.setMouseEnabled(x=False, y=False)
        self.curtain = Curtain(theme)
        self.plot.plot.addItem(self.curtain, ignoreBounds=True)
        self._make_controls()
        self._lay_out()
        self._timer = QTimer(self, interval=FRAME_MS)
        self._timer.timeout.connect(lambda: self.replay.tick(self._clock_s()))
        self._fit_texts()
        state.dark_changed.subscribe(self._show_dark)
        state.speed_unit_changed.subscribe(lambda _unit: self._draw_lines())
        self._show_dark(state.dark)

    def show_log(self, log: SpeedLog) -> None:
        """Begin a recording at its start, standing still."""
        self.replay.pause()
        self._log = log
        self.replay = Replay(log.instants_s)
        self.replay.moved.subscribe(self._show_place)
        self.replay.running_changed.subscribe(self._show_running)
        self._choose_speed()
        self._draw_lines()

    def pause(self) -> None:
        """Stand still."""
        self.replay.pause()

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        """Follow the size of the texts."""
        super().changeEvent(event)
        # The first events come before there is a plot.
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.StyleChange) and hasattr(self, "_timer"):
            self._fit_texts()

    def _fit_texts(self) -> None:
        font = self.canvas.font()
        fit_axes(self.plot.plot, font)
        self.plot.set_font(font)
        self.curtain.set_font(font)

    def hideEvent(self, event: QHideEvent) -> None:  # noqa: N802 - Qt's name
        """Stand still while nobody looks."""
        super().hideEvent(event)
        self.pause()

    def toggle(self) -> None:
        """Play, or stand still."""
        if self.replay.running:
            self.replay.pause()
        elif self._log is not None:
            self.replay.play(self._clock_s())

    def change_speed(self, steps: int) -> None:
        """Play faster or slower."""
        at = min(max(self.speed_choice.currentIndex() + steps, 0), len(SPEEDS) - 1)
        self.speed_choice.setCurrentIndex(at)

    def _make_controls(self) -> None:
        self.play_button = make_button(self.tr("Drive  (P)"), self.toggle)
        self.back_button = make_button("◂ 1", lambda: self.replay.step(-1))
        self.on_button = make_button("1 ▸", lambda: self.replay.step(+1))
        self.back_button.setAccessibleName(self.tr("One sample back"))
        self.on_button.setAccessibleName(self.tr("One sample on"))
        self.back_button.setToolTip(self.tr("One sample back (,)"))
        self.on_button.setToolTip(self.tr("One sample on (.)"))
        self.speed_choice = QComboBox()
        self.speed_choice.setAccessibleName(self.tr("Speed of the replay"))
        self.speed_choice.setToolTip(self.tr("Seconds of the drive in one second (+ faster, - slower)"))
        for speed in SPEEDS:
            self.speed_choice.addItem(speed_words(speed), speed)
        self.speed_choice.setCurrentIndex(SPEEDS.index(1.0))
        # The style sheet's smallest heights go before those of widgets: it takes the height of the row.
        self.speed_choice.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Expanding)
        self.speed_choice.currentIndexChanged.connect(lambda _at: self._choose_speed())
        self.slider = QSlider(Qt.Orientation.Horizontal)
        self.slider.setRange(0, SLIDER_STEPS)
        self.slider.setPageStep(SLIDER_STEPS // 20)
        self.slider.setSingleStep(SLIDER_STEPS // 200)
        self.slider.setMinimumHeight(28)
        self.slider.setAccessibleName(self.tr("Place in the drive"))
        self.slider.valueChanged.connect(self._scrub)
        self.clock = make_label("muted")
        self.clock.setMinimumWidth(110)
        self.clock.setWordWrap(False)

    def _lay_out(self) -> None:
        row = QHBoxLayout()
        row.setSpacing(6)
        buttons: tuple[QPushButton, ...] = (self.play_button, self.back_button, self.on_button)
        for button in buttons:
            button.setProperty("hand", True)
            row.addWidget(button)
        row.addWidget(self.speed_choice)
        row.addWidget(self.slider, 1)
        row.addWidget(self.clock)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 8, 8, 8)
        column.addWidget(self.canvas, 1)
        column.addLayout(row)
        self.canvas.setAccessibleName(self.tr("Speeds of the four wheels so far"))

    def _axis_label(self) -> str:
        return self.tr("Speed, {}").format(self._state.speed_unit)

    def _draw_lines(self) -> None:
        if self._log is None:
            return
        unit = self._state.speed_unit
        self.plot.plot.setLabel("left", self._axis_label(), color=theme_for(dark=self._state.dark).text)
        self.plot.plot.setYRange(0.0, highest_speed(self._log, unit), padding=0.0)
        self.plot.set_lines(build_speed_lines(self._log, unit))
        self._show_place(self.replay.at_s)

    def _show_place(self, at_s: float) -> None:
        if self._log is None:
            return
        self.curtain.at_s = at_s
        self.curtain.speeds = speeds_at(self._log, at_s, self._state.speed_unit)
        self.plot.plot.setXRange(*view_span(at_s, self.replay.begin_s), padding=0.0)
        self.curtain.update()
        self.clock.setText(say(clock_words(at_s, self.replay.end_s)))
        length_s = self.replay.end_s - self.replay.begin_s
        self.slider.blockSignals(True)
        self.slider.setValue(round(SLIDER_STEPS * (at_s - self.replay.begin_s) / length_s) if length_s else 0)
        self.slider.blockSignals(False)

    def _scrub(self, value: int) -> None:
        length_s = self.replay.end_s - self.replay.begin_s
        self.replay.scrub(self.replay.begin_s + length_s * value / SLIDER_STEPS)

    def _choose_speed(self) -> None:
        self.replay.set_speed(float(self.speed_choice.currentData()))

    def _show_running(self, running: bool) -> None:
        self.play_button.setText(self.tr("Stand still  (P)") if running else self.tr("Drive  (P)"))
        if running:
            self._timer.start()
        else:
            self._timer.stop()

    def _show_dark(self, dark: bool) -> None:
        theme = theme_for(dark=dark)
        self.canvas.setBackground(theme.panel)
        self.plot.set_theme(theme)
        self.curtain.theme = theme
        self.curtain.update()
