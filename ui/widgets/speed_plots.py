"""Wheel speeds and divergences over time, with what the car did and where signal was lost."""

from __future__ import annotations

from typing import Final

import pyqtgraph as pg
from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QVBoxLayout, QWidget

from triage.corners import Corner
from triage.run import TriageResult
from triage.signals.measurement import Span
from ui.presenters.marks import build_bands, build_loss_lanes
from ui.presenters.traces import build_divergence_lines, build_speed_lines
from ui.presenters.wording import format_span
from ui.state.window_state import Highlight, Phase, ShowingPhase, WindowState
from ui.theme import Theme, theme_for
from ui.widgets.corner_key import CornerKey
from ui.widgets.labels import make_label
from ui.widgets.plot_items import BandStrip, LossMarks
from ui.widgets.wheel_plot import WheelPlot, colour_plot, set_up_plot

SETTLE_MS: Final = 120
"""The heights are fitted this long after the last move: fitting while panning would make the lines jump."""

STRIP_PX: Final = 24
LANES_PX: Final = 70
LANE_NAMES: Final = ("FL", "FR", "RL", "RR", "all")
SHORTEST_VIEW_S: Final = 0.1
AROUND_SPAN: Final = 0.75
"""Share of a span's length shown on either side after a jump, and at least two seconds."""


class PlotCanvas(pg.GraphicsLayoutWidget):
    """The drawing area; turns keys into moves along the time axis."""

    moved = Signal(float)
    zoomed = Signal(float)
    whole_wanted = Signal()

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        """Pan with the arrows, zoom with plus and minus, show all with Home."""
        moves = {
            Qt.Key.Key_Left: -0.2,
            Qt.Key.Key_Right: 0.2,
            Qt.Key.Key_PageUp: -0.9,
            Qt.Key.Key_PageDown: 0.9,
        }
        zooms = {Qt.Key.Key_Plus: 0.5, Qt.Key.Key_Equal: 0.5, Qt.Key.Key_Minus: 2.0}
        if event.key() in moves:
            self.moved.emit(moves[Qt.Key(event.key())])
        elif event.key() in zooms:
            self.zoomed.emit(zooms[Qt.Key(event.key())])
        elif event.key() == Qt.Key.Key_Home:
            self.whole_wanted.emit()
        else:
            super().keyPressEvent(event)


class SpeedPlots(QFrame):
    """Four plots on one time axis: manoeuvres, speeds, lost signal, divergence."""

    def __init__(self, state: WindowState, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("role", "panel")
        self._state = state
        self._whole_s: Span = (0.0, 1.0)
        theme = theme_for(dark=state.dark)
        self.key = CornerKey(state)
        self.caption = make_label("muted")
        self.canvas = PlotCanvas()
        self.strip = BandStrip(theme)
        self.losses = LossMarks(theme)
        self._build_plots(theme)
        self._lay_out()
        self._settle = QTimer(self, singleShot=True, interval=SETTLE_MS)
        self._settle.timeout.connect(self.settle)
        self._connect(state)
        self._show_dark(state.dark)

    def _build_plots(self, theme: Theme) -> None:
        canvas = self.canvas
        canvas.ci.setSpacing(2)
        # The scene is as large as the view with its focus ring, which covers the right and lower edge.
        canvas.ci.setContentsMargins(2, 2, 14, 7)
        self._strip_plot = canvas.addPlot(row=0, col=0)
        self.speed = WheelPlot(
            canvas.addPlot(row=1, col=0),
            theme,
            axis_label=self.tr("Wheel speed, km/h"),
            least_height=4.0,
            floor=0.0,
        )
        self._loss_plot = canvas.addPlot(row=2, col=0)
        self.divergence = WheelPlot(
            canvas.addPlot(row=3, col=0), theme, axis_label=self.tr("Divergence, %"), least_height=2.0
        )
        for plot in (self._strip_plot, self._loss_plot):
            set_up_plot(plot)
            plot.hideAxis("bottom")
        self._strip_plot.addItem(self.strip, ignoreBounds=True)
        self._loss_plot.addItem(self.losses, ignoreBounds=True)
        self._strip_plot.setYRange(0.0, 1.0, padding=0.0)
        self._loss_plot.setYRange(0.0, float(len(LANE_NAMES)), padding=0.0)
        self._name_rows()
        for plot in (self._strip_plot, self._loss_plot, self.divergence.plot):
            plot.setXLink(self.speed.plot)
        self.speed.plot.getAxis("bottom").setStyle(showValues=False)
        self.divergence.plot.setLabel("bottom", self.tr("Seconds of the log"))

    def _name_rows(self) -> None:
        lanes = [(len(LANE_NAMES) - row - 0.5, name) for row, name in enumerate(LANE_NAMES)]
        self._loss_plot.getAxis("left").setTicks([lanes])
        self._loss_plot.getAxis("left").setLabel(self.tr("Lost"))
        self._strip_plot.getAxis("left").setTicks([[(0.5, self.tr("Driving"))]])
        layout = self.canvas.ci.layout
        for row, height in ((0, STRIP_PX), (2, LANES_PX)):
            layout.setRowFixedHeight(row, height)
        layout.setRowStretchFactor(1, 5)
        layout.setRowStretchFactor(3, 4)

    def _lay_out(self) -> None:
        self.canvas.setAccessibleName(self.tr("Wheel speeds and divergences over time"))
        self.canvas.setAccessibleDescription(
            self.tr("Arrows move along the time, plus and minus zoom, Home shows the whole recording.")
        )
        self.canvas.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.canvas.setMinimumHeight(300)
        row = QHBoxLayout()
        row.addWidget(self.key)
        row.addWidget(self.caption, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 6, 8, 6)
        column.setSpacing(4)
        column.addLayout(row)
        column.addWidget(self.canvas, 1)

    def _connect(self, state: WindowState) -> None:
        self.canvas.moved.connect(self.move_view)
        self.canvas.zoomed.connect(self.zoom_view)
        self.canvas.whole_wanted.connect(self.show_whole)
        self.speed.plot.getViewBox().sigXRangeChanged.connect(lambda *_: self._settle.start())
        self.speed.plot.getViewBox().sigResized.connect(lambda *_: self._settle.start())
        state.phase_changed.subscribe(self._show_phase)
        state.highlight_changed.subscribe(self._show_highlight)
        state.hidden_corners_changed.subscribe(self._show_hidden)
        state.dark_changed.subscribe(self._show_dark)

    @property
    def view_s(self) -> Span:
        """The seconds in view."""
        begin_s, end_s = self.speed.plot.getViewBox().viewRange()[0]
        return (begin_s, end_s)

    def show_seconds(self, begin_s: float, end_s: float) -> None:
        """Show these seconds, kept inside the recording."""
        first, last = self._whole_s
        length = min(max(end_s - begin_s, SHORTEST_VIEW_S), last - first)
        begin_s = min(max(begin_s, first), last - length)
        self.speed.plot.setXRange(begin_s, begin_s + length, padding=0.0)

    def show_whole(self) -> None:
        """Show the whole recording."""
        self.show_seconds(*self._whole_s)

    def move_view(self, share: float) -> None:
        """Move by a share of what is in view; positive is later."""
        begin_s, end_s = self.view_s
        step_s = share * (end_s - begin_s)
        self.show_seconds(begin_s + step_s, end_s + step_s)

    def zoom_view(self, factor: float) -> None:
        """Show ``factor`` times as many seconds around the same middle."""
        begin_s, end_s = self.view_s
        middle_s, half_s = 0.5 * (begin_s + end_s), 0.5 * factor * (end_s - begin_s)
        self.show_seconds(middle_s - half_s, middle_s + half_s)

    def settle(self) -> None:
        """Fit the heights to what is in view and put the labels beside the lines."""
        self._settle.stop()
        for plot in (self.speed, self.divergence):
            plot.fit_height()
            plot.place_labels()

    def _show_phase(self, phase: Phase) -> None:
        if isinstance(phase, ShowingPhase):
            self._show_result(phase.opened.result)

    def _show_result(self, result: TriageResult) -> None:
        self.speed.set_lines(build_speed_lines(result.log))
        self.divergence.set_lines(build_divergence_lines(result.conditioned))
        self.strip.set_bands(build_bands(result.manoeuvres))
        self.losses.set_lanes(build_loss_lanes(result))
        instants_s = result.log.instants_s
        first, last = (float(instants_s[0]), float(instants_s[-1])) if instants_s.size > 1 else (0.0, 1.0)
        self._whole_s = (first, max(last, first + SHORTEST_VIEW_S))
        self.speed.plot.setLimits(xMin=first, xMax=self._whole_s[1], minXRange=SHORTEST_VIEW_S)
        self._show_highlight(None)
        self.show_whole()
        self.settle()

    def _show_highlight(self, highlight: Highlight | None) -> None:
        for plot in (self.speed, self.divergence):
            plot.veil.set_highlight(highlight)
        self.caption.setText(self._caption(highlight))
        if highlight is not None:
            begin_s, end_s = highlight.span
            around_s = max(AROUND_SPAN * (end_s - begin_s), 2.0)
            self.show_seconds(begin_s - around_s, end_s + around_s)
            self.settle()

    def _caption(self, highlight: Highlight | None) -> str:
        if highlight is None:
            return ""
        place = self.tr("{}, seconds {}").format(highlight.corner, format_span(highlight.span))
        if len(highlight.spans) == 1:
            return place
        return self.tr("{} – place {} of {}").format(place, highlight.index + 1, len(highlight.spans))

    def _show_hidden(self, hidden: frozenset[Corner]) -> None:
        for plot in (self.speed, self.divergence):
            plot.set_hidden(hidden)
        self.settle()

    def _show_dark(self, dark: bool) -> None:
        theme = theme_for(dark=dark)
        self.canvas.setBackground(theme.panel)
        for plot in (self._strip_plot, self._loss_plot):
            colour_plot(plot, theme)
            plot.showGrid(x=False, y=False)
        for part in (self.speed, self.divergence, self.strip, self.losses):
            part.set_theme(theme)
        self.divergence.plot.setLabel("bottom", self.tr("Seconds of the log"), color=theme.text)
        self._loss_plot.getAxis("left").setLabel(self.tr("Lost"), color=theme.text)
