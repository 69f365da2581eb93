"""Companion channels on a time axis of their own, which follows whatever is pointed at."""

from __future__ import annotations

from functools import partial
from typing import Final

import pyqtgraph as pg
from PySide6.QtCore import QT_TRANSLATE_NOOP, QEvent, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QContextMenuEvent,
    QFontMetrics,
    QKeyEvent,
    QKeySequence,
    QPen,
    QResizeEvent,
)
from PySide6.QtWidgets import QCheckBox, QGridLayout, QScrollArea, QVBoxLayout, QWidget

from triage.signals.measurement import Span
from triage.speed_log import SpeedLog
from ui.presenters.companions import CompanionLine, build_companion_lines, thin_line
from ui.presenters.instrument_tables import build_companion_table
from ui.presenters.plot_table import Table
from ui.presenters.time_view import SHORTEST_VIEW_S, kept_inside, moved, zoomed
from ui.state.opening import Opened
from ui.state.window_state import WindowState
from ui.theme import Theme, theme_for
from ui.widgets.instruments_work import Show
from ui.widgets.labels import make_label
from ui.widgets.speaking import say
from ui.widgets.styling import TARGET_PX

PLOT_PX: Final = 120
LINES_OF_PLOT: Final = 7
"""Least height of a plot, and in lines of text where those are large."""

AXIS_PX: Final = 44
GAP_PX: Final = 6
TITLE_SHARE: Final = 0.95
LEAST_HEIGHT: Final = 1.0
"""Range of a channel that never changes, in its own unit."""

MOST_BOXES_IN_ROW: Final = 3
MOVES: Final = {Qt.Key.Key_Left: -0.2, Qt.Key.Key_Right: 0.2}
ZOOMS: Final = {Qt.Key.Key_Plus: 0.5, Qt.Key.Key_Equal: 0.5, Qt.Key.Key_Minus: 2.0}


class CompanionCanvas(pg.GraphicsLayoutWidget):
    """The drawing area; keys move along the time."""

    key_help = (
        ("Left, Right", QT_TRANSLATE_NOOP("KeyHelp", "Move along the time")),
        ("+, -, Home", QT_TRANSLATE_NOOP("KeyHelp", "Zoom in, zoom out, show the whole recording")),
    )

    moved = Signal(float)
    zoomed = Signal(float)
    whole_wanted = Signal()
    copy_wanted = Signal()
    menu_wanted = Signal(object)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        """Pan with the arrows, zoom with plus and minus, show all with Home, copy."""
        key = Qt.Key(event.key())
        if event.matches(QKeySequence.StandardKey.Copy):
            self.copy_wanted.emit()
        elif key in MOVES:
            self.moved.emit(MOVES[key])
        elif key in ZOOMS:
            self.zoomed.emit(ZOOMS[key])
        elif key == Qt.Key.Key_Home:
            self.whole_wanted.emit()
        else:
            super().keyPressEvent(event)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:  # noqa: N802 - Qt's name
        """Ask for the menu, by the mouse or the key for it."""
        self.menu_wanted.emit(event.globalPos())


class CompanionsInstrument(QWidget):
    """A box to tick for each channel, and one small plot for each that is ticked."""

    def __init__(self, state: WindowState, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._theme = theme_for(dark=state.dark)
        self._lines: tuple[CompanionLine, ...] = ()
        self._hidden: frozenset[str] = frozenset()
        self._whole_s: Span = (0.0, 1.0)
        self._wanted_s: Span | None = None
        self._log: SpeedLog | None = None
        self._sharing = False
        self.boxes: dict[str, QCheckBox] = {}
        self.plots: dict[str, pg.PlotItem] = {}
        self.canvas = CompanionCanvas()
        self.copy_wanted, self.menu_wanted = self.canvas.copy_wanted, self.canvas.menu_wanted
        self.note = make_label("muted")
        self._lay_out()
        state.seconds_wanted.subscribe(self._follow)

    def _lay_out(self) -> None:
        self.canvas.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.canvas.setAccessibleName(self.tr("Companion channels over time"))
        self.canvas.setAccessibleDescription(
            self.tr("Arrows move along the time, plus and minus zoom, Home shows the whole recording.")
        )
        self.canvas.moved.connect(self.move_view)
        self.canvas.zoomed.connect(self.zoom_view)
        self.canvas.whole_wanted.connect(lambda: self.show_seconds(*self._whole_s))
        self._grid = QGridLayout()
        area = QScrollArea()
        area.setWidgetResizable(True)
        area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        area.setWidget(self.canvas)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 6, 0, 0)
        column.setSpacing(6)
        column.addLayout(self._grid)
        column.addWidget(self.note)
        column.addWidget(area, 1)
        self.area = area

    def work_out(self, opened: Opened, _row: int) -> Show:
        """Prepare the channels, those of the whole car; touches no widget until they are shown."""
        log = opened.result.log
        return partial(self._show, log, () if log is self._log else build_companion_lines(log))

    def _show(self, log: SpeedLog, lines: tuple[CompanionLine, ...]) -> None:
        if log is self._log:
            return
        self._log, self._wanted_s = log, None
        self._lines = say(lines)
        times = [trace.time_s for trace in log.wheels.values() if trace.time_s.size]
        begin_s = min((float(time_s[0]) for time_s in times), default=0.0)
        end_s = max((float(time_s[-1]) for time_s in times), default=1.0)
        self._whole_s = (begin_s, max(end_s, begin_s + SHORTEST_VIEW_S))
        self._make_boxes()
        self._draw()
        self.show_seconds(*(self._wanted_s or self._whole_s))

    def set_theme(self, theme: Theme) -> None:
        """Change colours."""
        self._theme = theme
        self.canvas.setBackground(theme.panel)
        self._draw_again()

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        """Follow the size of the texts."""
        super().changeEvent(event)
        # The first events come before there is a canvas.
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.StyleChange) and hasattr(self, "area"):
            self._place_boxes()
            self._draw_again()

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Put as many boxes in a row as have room."""
        super().resizeEvent(event)
        self._place_boxes()

    def _draw_again(self) -> None:
        if self._lines:
            view_s = self.view_s
            self._draw()
            self.show_seconds(*view_s)

    @property
    def view_s(self) -> Span:
        """The seconds in view; the whole recording where nothing is drawn."""
        for plot in self.plots.values():
            begin_s, end_s = plot.getViewBox().viewRange()[0]
            return (begin_s, end_s)
        return self._whole_s

    def show_seconds(self, begin_s: float, end_s: float) -> None:
        """Show these seconds, kept inside the recording."""
        self._share(kept_inside((begin_s, end_s), self._whole_s))

    def _share(self, span: Span) -> None:
        """Bring all plots to the same seconds, whichever was moved."""
        if self._sharing:
            return
        self._sharing = True
        for plot in self.plots.values():
            plot.setXRange(*span, padding=0.0)
        self._sharing = False

    def move_view(self, share: float) -> None:
        """Move by a share of what is in view; positive is later."""
        self.show_seconds(*moved(self.view_s, share))

    def zoom_view(self, factor: float) -> None:
        """Show ``factor`` times as many seconds around the same middle."""
        self.show_seconds(*zoomed(self.view_s, factor))

    def drawing(self) -> QWidget | None:
        """Return what can be drawn elsewhere; None where nothing is drawn."""
        return self.canvas if self.plots else None

    def values(self) -> Table | None:
        """Return the channels drawn, as far as they are in view; None where nothing is drawn."""
        shown = [line for line in self._lines if line.name in self.plots]
        return build_companion_table(shown, self.view_s) if shown else None

    @property
    def text(self) -> str:
        """What is said in place of a drawing."""
        return self.note.text()

    def _follow(self, span: Span) -> None:
        self._wanted_s = span
        self.show_seconds(*span)

    def _make_boxes(self) -> None:
        for box in self.boxes.values():
            self._grid.removeWidget(box)
            box.deleteLater()
        self.boxes = {}
        for line in self._lines:
            box = QCheckBox(line.title)
            box.setChecked(line.name not in self._hidden)
            box.setMinimumHeight(TARGET_PX)
            box.setToolTip(line.help)
            box.toggled.connect(lambda on, name=line.name: self._set_shown(name, shown=on))
            self.boxes[line.name] = box
        self._place_boxes()
        none = self.tr("The recording holds nothing of the car beside its wheels.")
        self.note.setText("" if self._lines else none)
        self.note.setVisible(not self._lines)

    def _place_boxes(self) -> None:
        widest_px = max((box.sizeHint().width() for box in self.boxes.values()), default=1)
        fitting = (self.width() + GAP_PX) // (widest_px + GAP_PX)
        columns = min(max(fitting, 1), MOST_BOXES_IN_ROW)
        for number, box in enumerate(self.boxes.values()):
            self._grid.addWidget(box, *divmod(number, columns))

    def _set_shown(self, name: str, *, shown: bool) -> None:
        self._hidden = self._hidden - {name} if shown else self._hidden | {name}
        self._draw_again()

    def _draw(self) -> None:
        self.canvas.clear()
        self.plots = {}
        shown = [line for line in self._lines if line.name not in self._hidden]
        plot_px = max(PLOT_PX, LINES_OF_PLOT * self.canvas.fontMetrics().height())
        self.canvas.setMinimumHeight(max(plot_px * len(shown), 1))
        for number, line in enumerate(shown):
            plot = self.canvas.addPlot(row=number, col=0)
            self._set_up(plot, line, last=number == len(shown) - 1)
            plot.setLimits(xMin=self._whole_s[0], xMax=self._whole_s[1], minXRange=SHORTEST_VIEW_S)
            plot.getViewBox().sigXRangeChanged.connect(lambda _box, span: self._share(tuple(span)))
            self.plots[line.name] = plot

    def _set_up(self, plot: pg.PlotItem, line: CompanionLine, *, last: bool) -> None:
        plot.setMenuEnabled(False)
        plot.hideButtons()
        plot.setMouseEnabled(x=True, y=False)
        self._write_title(plot, f"{line.title}, {line.unit}")
        plot.getAxis("bottom").setStyle(showValues=last)
        if last:
            plot.setLabel("bottom", self.tr("Seconds of the recording"), color=self._theme.text)
        self._write_axes(plot)
        plot.showGrid(x=True, y=True, alpha=0.12)
        low, high = float(line.value.min()), float(line.value.max())
        half = 0.55 * max(high - low, LEAST_HEIGHT)
        middle = 0.5 * (low + high)
        plot.setYRange(middle - half, middle + half, padding=0.0)
        pen = QPen(QColor(self._theme.accent), 1.4)
        pen.setCosmetic(True)
        curve = plot.plot(pen=pen, skipFiniteCheck=True)
        box = plot.getViewBox()
        for changed in (box.sigXRangeChanged, box.sigResized):
            changed.connect(lambda *_: _redraw(plot, curve, line))

    def _write_title(self, plot: pg.PlotItem, title: str) -> None:
        # Beside so low a plot the name of the axis would be cut off.
        size_pt = TITLE_SHARE * self.canvas.font().pointSizeF()
        plot.setTitle(title, color=self._theme.text, size=f"{size_pt:.2f}pt", justify="left")
        # The library keeps 30 pixels for a title of any size.
        title_px = float(self.canvas.fontMetrics().height() + 2 * GAP_PX)
        plot.titleLabel.setMaximumHeight(title_px)
        plot.layout.setRowFixedHeight(0, title_px)

    def _write_axes(self, plot: pg.PlotItem) -> None:
        font = self.canvas.font()
        numbers_px = QFontMetrics(font).horizontalAdvance("-100") + 2 * GAP_PX
        plot.getAxis("left").setWidth(max(AXIS_PX, numbers_px))
        for name in ("left", "bottom"):
            axis = plot.getAxis(name)
            axis.enableAutoSIPrefix(False)
            axis.setPen(self._theme.border)
            axis.setTextPen(self._theme.text)
            axis.setStyle(maxTickLevel=1, tickFont=font)
            # The library's texts keep the font of the program as it was when they were made.
            axis.label.setFont(font)
            axis.resizeEvent()


def _redraw(plot: pg.PlotItem, curve: pg.PlotDataItem, line: CompanionLine) -> None:
    """Draw what of a line can be seen in the present view."""
    box = plot.getViewBox()
    begin_s, end_s = box.viewRange()[0]
    seen = thin_line(line, begin_s, end_s, columns=max(round(box.width()), 1))
    curve.setData(seen.time_s, seen.value, connect=seen.joined if seen.time_s.size else "all")
