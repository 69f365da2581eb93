"""One plot of the four wheels over time: lines by colour, style and label, and a veil over chosen seconds."""

from __future__ import annotations

from typing import Final

import pyqtgraph as pg
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen
from PySide6.QtWidgets import QStyleOptionGraphicsItem, QWidget

from triage.corners import CORNERS, Corner
from ui.presenters.traces import Range, TraceLine, fit_range, thin_line, values_at
from ui.state.window_state import Highlight
from ui.theme import Theme
from ui.widgets.plot_items import spread_labels
from ui.widgets.styling import corner_pen

AXIS_PX: Final = 54
LABEL_PX: Final = 16.0


class SpanVeil(pg.UIGraphicsItem):
    """The seconds a finding rests on, over the whole height; the one looked at has edges."""

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self.theme = theme
        self._highlight: Highlight | None = None
        self.setZValue(-10)

    def set_highlight(self, highlight: Highlight | None) -> None:
        """Show these seconds, or none."""
        self._highlight = highlight
        self.update()

    def paint(
        self, painter: QPainter, _option: QStyleOptionGraphicsItem, _widget: QWidget | None = None
    ) -> None:
        """Draw every span in view."""
        if self._highlight is None:
            return
        view = self.boundingRect()
        veil = QColor(self.theme.highlight)
        veil.setAlphaF(0.16)
        for span in self._highlight.spans:
            painter.fillRect(QRectF(span[0], view.top(), max(span[1] - span[0], 0.0), view.height()), veil)
        pen = QPen(QColor(self.theme.highlight), 2, Qt.PenStyle.SolidLine)
        pen.setCosmetic(True)
        painter.setPen(pen)
        for edge_s in self._highlight.span:
            painter.drawLine(QPointF(edge_s, view.top()), QPointF(edge_s, view.bottom()))


class WheelPlot:
    """A plot item and what is drawn in it; the panel that owns it moves it."""

    def __init__(
        self,
        plot: pg.PlotItem,
        theme: Theme,
        *,
        axis_label: str,
        least_height: float,
        floor: float | None = None,
    ) -> None:
        self.plot = plot
        self._theme = theme
        self._axis_label = axis_label
        self._least_height = least_height
        self._floor = floor
        self._lines: tuple[TraceLine, ...] = ()
        self._hidden: frozenset[Corner] = frozenset()
        set_up_plot(plot)
        self.veil = SpanVeil(theme)
        plot.addItem(self.veil, ignoreBounds=True)
        self.curves = {
            corner: plot.plot(pen=corner_pen(theme, corner), skipFiniteCheck=True) for corner in CORNERS
        }
        self.labels = {corner: self._add_label(corner) for corner in CORNERS}
        box = plot.getViewBox()
        for changed in (box.sigXRangeChanged, box.sigResized):
            changed.connect(lambda *_: self.redraw())
        self.set_theme(theme)

    def _add_label(self, corner: Corner) -> pg.TextItem:
        label = pg.TextItem(corner, anchor=(1.0, 0.5))
        label.textItem.document().setDocumentMargin(0.0)
        label.setZValue(10)
        label.setVisible(False)
        self.plot.addItem(label, ignoreBounds=True)
        return label

    def set_lines(self, lines: tuple[TraceLine, ...]) -> None:
        """Show these lines."""
        self._lines = lines
        self.redraw()

    def redraw(self) -> None:
        """Draw what of the lines can be seen in the present view."""
        box = self.plot.getViewBox()
        begin_s, end_s = box.viewRange()[0]
        screen = self.plot.scene().views()[0]
        columns = max(round(box.width() * screen.devicePixelRatioF()), 1)
        for line in self.visible_lines:
            seen = thin_line(line, begin_s, end_s, columns=columns)
            connect = seen.joined if seen.time_s.size else "all"
            self.curves[line.corner].setData(seen.time_s, seen.value, connect=connect)

    def set_hidden(self, hidden: frozenset[Corner]) -> None:
        """Hide the lines of these wheels."""
        self._hidden = hidden
        for corner, curve in self.curves.items():
            curve.setVisible(corner not in hidden)
        self.redraw()
        self.place_labels()

    def set_theme(self, theme: Theme) -> None:
        """Change colours."""
        self._theme = theme
        colour_plot(self.plot, theme)
        self.plot.setLabel("left", self._axis_label, color=theme.text)
        self.veil.theme = theme
        self.veil.update()
        for corner, curve in self.curves.items():
            curve.setPen(corner_pen(theme, corner))
            self.labels[corner].setColor(theme.corners[corner])
            self.labels[corner].fill = pg.mkBrush(theme.panel)

    @property
    def visible_lines(self) -> tuple[TraceLine, ...]:
        """The lines that are not hidden."""
        return tuple(line for line in self._lines if line.corner not in self._hidden)

    def fit_height(self) -> None:
        """Fill the height with what is in view."""
        begin_s, end_s = self.plot.getViewBox().viewRange()[0]
        low, high = fit_range(
            self.visible_lines, begin_s, end_s, least_height=self._least_height, floor=self._floor
        )
        self.plot.setYRange(low, high, padding=0.0)

    @property
    def height_range(self) -> Range:
        """Lowest and highest value in view."""
        low, high = self.plot.getViewBox().viewRange()[1]
        return (low, high)

    def place_labels(self) -> None:
        """Put the wheel labels at the right edge, beside the ends of the lines."""
        box = self.plot.getViewBox()
        end_s = box.viewRange()[0][1]
        low, high = self.height_range
        values = values_at(self.visible_lines, end_s)
        px_per_unit = box.height() / (high - low)
        wanted = [(high - min(max(value, low), high)) * px_per_unit for value in values.values()]
        placed = spread_labels(wanted, height_px=LABEL_PX, top_px=0.0, bottom_px=box.height())
        for corner, label in self.labels.items():
            label.setVisible(corner in values)
        for corner, middle_px in zip(values, placed, strict=True):
            self.labels[corner].setPos(end_s, high - middle_px / px_per_unit)


def set_up_plot(plot: pg.PlotItem) -> None:
    """Take off the library's own menus and buttons: they are neither translated nor for the keyboard."""
    plot.setMenuEnabled(False)
    plot.hideButtons()
    plot.setMouseEnabled(x=True, y=False)
    plot.getAxis("left").setWidth(AXIS_PX)
    plot.getAxis("left").setStyle(tickLength=0)
    for name in ("left", "bottom"):
        plot.getAxis(name).enableAutoSIPrefix(False)
        # The third level of grid lines alone takes 16 ms of every frame.
        plot.getAxis(name).setStyle(maxTickLevel=1)
    plot.enableAutoRange(x=False, y=False)


def colour_plot(plot: pg.PlotItem, theme: Theme) -> None:
    """Colour background, axes and grid."""
    plot.getViewBox().setBackgroundColor(theme.panel)
    for name in ("left", "bottom"):
        axis = plot.getAxis(name)
        axis.setPen(theme.border)
        axis.setTextPen(theme.text)
    plot.showGrid(x=True, y=True, alpha=0.12)
