"""One plot of the four wheels over time: lines by colour, style and label, and a veil over chosen seconds."""

from __future__ import annotations

from typing import Final

import pyqtgraph as pg
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetrics, QPainter, QPen
from PySide6.QtWidgets import QStyleOptionGraphicsItem, QWidget

from triage.corners import CORNERS, Corner
from ui.presenters.thinning import DrawnLine, thin_line
from ui.presenters.traces import Range, TraceLine, fit_range
from ui.state.window_state import Highlight
from ui.theme import Theme
from ui.widgets.pale_pen import pale_pen
from ui.widgets.plot_items import WheelCurve, spread_labels
from ui.widgets.styling import corner_pen

AXIS_PX: Final = 54
AXIS_GAP_PX: Final = 8
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
        self._compared: tuple[TraceLine, ...] = ()
        self._drawn: dict[Corner, DrawnLine] = {}
        self._hidden: frozenset[Corner] = frozenset()
        self._label_px = LABEL_PX
        set_up_plot(plot)
        self.veil = SpanVeil(theme)
        plot.addItem(self.veil, ignoreBounds=True)
        self.curves = {corner: self._add_curve(corner_pen(theme, corner)) for corner in CORNERS}
        self.pale_curves = {corner: self._add_curve(pale_pen(theme, corner)) for corner in CORNERS}
        for curve in self.pale_curves.values():
            curve.setZValue(-1)
            curve.setVisible(False)
        self.labels = {corner: self._add_label(corner) for corner in CORNERS}
        box = plot.getViewBox()
        for changed in (box.sigXRangeChanged, box.sigResized):
            changed.connect(lambda *_: self.redraw())
        self.set_theme(theme)

    def _add_curve(self, pen: QPen) -> WheelCurve:
        curve = WheelCurve(pen)
        self.plot.addItem(curve, ignoreBounds=True)
        return curve

    def _add_label(self, corner: Corner) -> pg.TextItem:
        label = pg.TextItem(corner, anchor=(1.0, 0.5))
        label.textItem.document().setDocumentMargin(0.0)
        label.setZValue(10)
        label.setVisible(False)
        self.plot.addItem(label, ignoreBounds=True)
        return label

    def set_font(self, font: QFont) -> None:
        """Write the names of the wheels in this font."""
        self._label_px = max(LABEL_PX, float(QFontMetrics(font).height()))
        for label in self.labels.values():
            label.setFont(font)

    def set_lines(self, lines: tuple[TraceLine, ...]) -> None:
        """Show these lines."""
        self._lines = lines
        self.redraw()

    def set_compared(self, lines: tuple[TraceLine, ...]) -> None:
        """Draw another recording too, pale, and this one bold; no lines end that."""
        self._compared = lines
        self._show_curves()
        self.redraw()

    def redraw(self) -> None:
        """Draw what of the lines can be seen in the present view."""
        box = self.plot.getViewBox()
        begin_s, end_s = box.viewRange()[0]
        screen = self.plot.scene().views()[0]
        columns = max(round(box.width() * screen.devicePixelRatioF()), 1)
        self._drawn = {
            line.corner: thin_line(line, begin_s, end_s, columns=columns) for line in self.visible_lines
        }
        for corner, seen in self._drawn.items():
            self.curves[corner].set_points(seen)
        for line in self._visible(self._compared):
            seen = thin_line(line, begin_s, end_s, columns=columns)
            self.pale_curves[line.corner].set_points(seen)

    def set_axis_label(self, text: str) -> None:
        """Name what is shown, with its unit."""
        self._axis_label = text
        self.plot.setLabel("left", text, color=self._theme.text)

    def set_hidden(self, hidden: frozenset[Corner]) -> None:
        """Hide the lines of these wheels."""
        self._hidden = hidden
        self._show_curves()
        self.redraw()
        self.place_labels()

    def _show_curves(self) -> None:
        for corner in CORNERS:
            self.curves[corner].setVisible(corner not in self._hidden)
            self.curves[corner].set_bold(bool(self._compared))
            self.pale_curves[corner].setVisible(bool(self._compared) and corner not in self._hidden)

    def set_theme(self, theme: Theme) -> None:
        """Change colours."""
        self._theme = theme
        colour_plot(self.plot, theme)
        self.plot.setLabel("left", self._axis_label, color=theme.text)
        self.veil.theme = theme
        self.veil.update()
        for corner, label in self.labels.items():
            label.setColor(theme.corners[corner])
            label.fill = pg.mkBrush(theme.panel)
        self._colour_curves()

    def _colour_curves(self) -> None:
        for corner in CORNERS:
            self.curves[corner].setPen(corner_pen(self._theme, corner))
            self.pale_curves[corner].setPen(pale_pen(self._theme, corner))

    @property
    def visible_lines(self) -> tuple[TraceLine, ...]:
        """The lines that are not hidden."""
        return self._visible(self._lines)

    def _visible(self, lines: tuple[TraceLine, ...]) -> tuple[TraceLine, ...]:
        return tuple(line for line in lines if line.corner not in self._hidden)

    def fit_height(self) -> None:
        """Fill the height with what is in view."""
        begin_s, end_s = self.plot.getViewBox().viewRange()[0]
        low, high = fit_range(
            self.visible_lines + self._visible(self._compared),
            begin_s,
            end_s,
            least_height=self._least_height,
            floor=self._floor,
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
        values = {corner: float(seen.value[-1]) for corner, seen in self._drawn.items() if seen.value.size}
        px_per_unit = box.height() / (high - low)
        wanted = [(high - min(max(value, low), high)) * px_per_unit for value in values.values()]
        placed = spread_labels(wanted, height_px=self._label_px, top_px=0.0, bottom_px=box.height())
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


def fit_axes(plot: pg.PlotItem, font: QFont, *, least_px: int = AXIS_PX) -> None:
    """Write the titles of the axes in this font, and give title and numbers their room."""
    metrics = QFontMetrics(font)
    left_px = metrics.height() + metrics.horizontalAdvance("-100") + AXIS_GAP_PX
    plot.getAxis("left").setWidth(max(AXIS_PX, least_px, left_px))
    for name in ("left", "bottom"):
        # The library's texts keep the font of the program as it was when they were made.
        plot.getAxis(name).label.setFont(font)
        plot.getAxis(name).resizeEvent()


def colour_plot(plot: pg.PlotItem, theme: Theme) -> None:
    """Colour background, axes and grid."""
    plot.getViewBox().setBackgroundColor(theme.panel)
    for name in ("left", "bottom"):
        axis = plot.getAxis(name)
        axis.setPen(theme.border)
        axis.setTextPen(theme.text)
    plot.showGrid(x=True, y=True, alpha=0.12)
