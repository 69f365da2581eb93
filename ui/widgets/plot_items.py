"""Items drawn in the plots: manoeuvre strip, marks of lost signal, wheel labels at the right edge."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

import numpy as np
import pyqtgraph as pg
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QTransform
from PySide6.QtWidgets import QStyleOptionGraphicsItem, QWidget

from triage.speed_log import FloatArray
from ui.presenters.marks import Band, LossLane
from ui.presenters.thinning import DrawnLine
from ui.theme import Theme

LABEL_GAP_PX: Final = 3
LEAST_BAR_PX: Final = 2.0
MARK_FOOT: Final = 0.12
FULL_HEIGHT: Final = 0.76
DIP_HEIGHT: Final = 0.3
"""Lower edge and heights of the marks of lost signal, in lanes."""


EDGED_BAND_PX: Final = 6.0
"""Narrower bands get no edge: with an hour in view the edges would hide the colours."""


class BandStrip(pg.GraphicsObject):
    """Manoeuvres as labelled blocks along the time axis, one unit high."""

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._bands: tuple[Band, ...] = ()
        self._starts_s = self._stops_s = np.empty(0)
        self.set_theme(theme)

    def set_bands(self, bands: tuple[Band, ...]) -> None:
        """Show these bands; they must rise in time."""
        self.prepareGeometryChange()
        self._bands = bands
        self._starts_s = np.array([band.start_s for band in bands])
        self._stops_s = np.array([band.stop_s for band in bands])
        self.update()

    def set_theme(self, theme: Theme) -> None:
        """Change colours."""
        self._theme = theme
        self._fills = {kind: QColor(fill) for kind, fill in theme.bands.items()}
        self.update()

    def boundingRect(self) -> QRectF:  # noqa: N802 - Qt's name
        """Return the whole strip in seconds and units of height."""
        if not self._bands:
            return QRectF()
        begin_s, end_s = float(self._starts_s[0]), float(self._stops_s.max())
        return QRectF(begin_s, 0.0, end_s - begin_s, 1.0)

    def paint(
        self, painter: QPainter, _option: QStyleOptionGraphicsItem, _widget: QWidget | None = None
    ) -> None:
        """Draw the bands in view, labels in screen coordinates so that zooming does not stretch them."""
        view = self.viewRect()
        if not self._bands or view is None:
            return
        transform = painter.transform()
        scale, offset = transform.m11(), transform.dx()
        top, bottom = (transform.map(QPointF(0.0, height)).y() for height in (1.0, 0.0))
        painter.save()
        painter.resetTransform()
        for band in self._visible(view.left(), view.right(), px_s=1.0 / max(scale, 1e-9)):
            left = scale * max(band.start_s, view.left()) + offset
            right = scale * min(band.stop_s, view.right()) + offset
            self._paint_band(painter, band, QRectF(left, top, right - left, bottom - top))
        painter.restore()

    def _visible(self, begin_s: float, end_s: float, *, px_s: float) -> Sequence[Band]:
        """Bands in view; of those narrower than a pixel, one for each pixel."""
        first = max(int(np.searchsorted(self._starts_s, begin_s)) - 1, 0)
        stop = int(np.searchsorted(self._starts_s, end_s))
        column = np.floor(self._starts_s[first:stop] / px_s)
        leads = np.append(True, np.diff(column) > 0.0)[: stop - first]
        wide = self._stops_s[first:stop] - self._starts_s[first:stop] >= px_s
        seen = first + np.flatnonzero((leads | wide) & (self._stops_s[first:stop] > begin_s))
        return [self._bands[at] for at in seen.tolist()]

    def _paint_band(self, painter: QPainter, band: Band, box: QRectF) -> None:
        painter.fillRect(box, self._fills[band.kind])
        if box.width() < EDGED_BAND_PX:
            return
        painter.setPen(QPen(QColor(self._theme.border), 1))
        painter.drawLine(box.topLeft(), box.bottomLeft())
        inner = box.adjusted(LABEL_GAP_PX, 0, -LABEL_GAP_PX, 0)
        metrics = painter.fontMetrics()
        wordings = (f"{band.sign} {band.label}", band.label, band.sign)
        text = next((t for t in wordings if metrics.horizontalAdvance(t) <= inner.width()), "")
        painter.setPen(QColor(self._theme.text))
        painter.drawText(inner, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, text)


class LossMarks(pg.GraphicsObject):
    """Lost signal as bars, one lane for each wheel and one for the whole recording; lane 0 on top."""

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._lanes: tuple[LossLane, ...] = ()
        self._theme = theme

    def set_lanes(self, lanes: tuple[LossLane, ...]) -> None:
        """Show these lanes."""
        self.prepareGeometryChange()
        self._lanes = lanes
        self.update()

    def set_theme(self, theme: Theme) -> None:
        """Change colours."""
        self._theme = theme
        self.update()

    def boundingRect(self) -> QRectF:  # noqa: N802 - Qt's name
        """Return the hull of all marks in seconds and lanes."""
        begins = [one for lane in self._lanes for one in (lane.begin_s, lane.dip_begin_s) if one.size]
        ends = [one for lane in self._lanes for one in (lane.end_s, lane.dip_end_s) if one.size]
        if not begins:
            return QRectF()
        begin_s, end_s = min(float(one[0]) for one in begins), max(float(one[-1]) for one in ends)
        return QRectF(begin_s, 0.0, end_s - begin_s, len(self._lanes))

    def paint(
        self, painter: QPainter, _option: QStyleOptionGraphicsItem, _widget: QWidget | None = None
    ) -> None:
        """Draw the marks in view, each at least two pixels wide; dips are lower than drop-outs."""
        view = self.viewRect()
        if view is None:
            return
        transform = painter.transform()
        scale = (transform.m11(), transform.dx())
        painter.save()
        painter.resetTransform()
        painter.setPen(Qt.PenStyle.NoPen)
        for row, lane in enumerate(self._lanes):
            foot = len(self._lanes) - row - 1.0
            colour = self._theme.muted if lane.place == "vehicle" else self._theme.corners[lane.place]
            painter.setBrush(QColor(colour))
            for spans, height in (
                ((lane.begin_s, lane.end_s), FULL_HEIGHT),
                ((lane.dip_begin_s, lane.dip_end_s), DIP_HEIGHT),
            ):
                top, bottom = (
                    transform.map(QPointF(0.0, foot + at)).y() for at in (MARK_FOOT + height, MARK_FOOT)
                )
                painter.drawRects(_bars(*spans, view, edges=(top, bottom), scale=scale))
        painter.restore()


def _bars(
    begin_s: FloatArray,
    end_s: FloatArray,
    view: QRectF,
    *,
    edges: tuple[float, float],
    scale: tuple[float, float],
) -> list[QRectF]:
    first = int(np.searchsorted(end_s, view.left()))
    stop = int(np.searchsorted(begin_s, view.right(), side="right"))
    if stop <= first:
        return []
    factor, offset = scale
    left = factor * np.maximum(begin_s[first:stop], view.left()) + offset
    right = np.maximum(factor * np.minimum(end_s[first:stop], view.right()) + offset, left + LEAST_BAR_PX)
    left, right = _closed_up(left, right)
    top, bottom = edges
    return [
        QRectF(x, top, end - x, bottom - top) for x, end in zip(left.tolist(), right.tolist(), strict=True)
    ]


def _closed_up(left: FloatArray, right: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Join bars with less than a pixel between them: a day may hold millions, a screen but a thousand."""
    right = np.maximum.accumulate(right)
    begins = np.concatenate(([True], left[1:] >= right[:-1] + 1.0))
    return left[begins], right[np.append(begins[1:], True)]


class WheelCurve(pg.PlotCurveItem):
    """A line of one pixel, or one that stands out from others beside it."""

    def __init__(self, pen: QPen) -> None:
        super().__init__(pen=pen, skipFiniteCheck=True)
        self._bold = False

    @property
    def bold(self) -> bool:
        """Whether it stands out."""
        return self._bold

    def set_bold(self, bold: bool) -> None:
        """Let the line stand out, or no longer."""
        self._bold = bold
        self.update()

    def set_points(self, seen: DrawnLine) -> None:
        """Draw these points."""
        self.setData(seen.time_s, seen.value, connect=seen.joined if seen.time_s.size else "all")

    def paint(
        self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None
    ) -> None:
        """Draw once, or twice a pixel apart: a pen of two pixels takes Qt twenty times as long."""
        super().paint(painter, option, widget)
        if self._bold:
            painter.save()
            painter.setTransform(painter.transform() * QTransform.fromTranslate(1.0, 1.0))
            super().paint(painter, option, widget)
            painter.restore()


def spread_labels(
    wanted_px: Sequence[float], *, height_px: float, top_px: float, bottom_px: float
) -> list[float]:
    """Move labels apart so that none covers another and all stay inside.

    Parameters
    ----------
    wanted_px : sequence of float
        Where each label's middle would best sit, downwards.
    height_px : float
        Height of a label.
    top_px, bottom_px : float
        The space there is.

    Returns
    -------
    list of float
        Middles in the order given, in the same order from top to bottom as wanted.
    """
    order = sorted(range(len(wanted_px)), key=lambda index: wanted_px[index])
    placed = [0.0] * len(wanted_px)
    lowest = top_px + 0.5 * height_px
    for index in order:
        placed[index] = max(wanted_px[index], lowest)
        lowest = placed[index] + height_px
    highest = bottom_px - 0.5 * height_px
    for index in reversed(order):
        placed[index] = min(placed[index], highest)
        highest = placed[index] - height_px
    return placed
