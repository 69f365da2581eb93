"""The order spectrum of a wheel: amplitude over events per turn, with the turn and its multiples marked."""

from __future__ import annotations

from functools import partial
from typing import Final

import numpy as np
import pyqtgraph as pg
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QColor, QPen
from PySide6.QtWidgets import QWidget

from triage.corners import CORNER_NAMES, CORNERS
from triage.signals.measurement import NotMeasurable
from ui.presenters.instrument_tables import build_spectrum_table
from ui.presenters.plot_table import Table
from ui.presenters.spectrum import SpectrumPicture, build_spectrum_picture
from ui.state.opening import Opened
from ui.theme import Theme, theme_for
from ui.widgets.instruments_key import Sample, SampleKey, veil_of
from ui.widgets.instruments_page import ScrollingColumn
from ui.widgets.instruments_work import Show
from ui.widgets.speaking import say
from ui.widgets.wheel_plot import fit_axes

PLOT_PX: Final = 300
LINES_OF_PLOT: Final = 18
"""Height of the plot, and in lines of text where those are large."""

WIDEST: Final = "0.0005"
"""The widest number that the upright axis shows."""

HEADROOM: Final = 0.2
LEAST_DECADES: Final = 1.2
"""Room above the tallest line and below the usual level, and the least height, in decades."""


class SpectrumInstrument(ScrollingColumn):
    """Plot, its key, and sentences."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("", parent)
        self.setAccessibleName(self.tr("Order spectrum"))
        self._theme = theme_for(dark=False)
        self.picture: SpectrumPicture | None = None
        self.canvas = pg.GraphicsLayoutWidget()
        self.canvas.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.canvas.setToolTip(
            self.tr(
                "Ripple of the wheel's speed sorted by how often it repeats in a turn. What sits on the "
                "wheel stands at whole numbers; a bearing cage would stand below 1."
            )
        )
        self.plot = self.canvas.addPlot()
        self.plot.setMenuEnabled(False)
        self.plot.hideButtons()
        self.plot.setMouseEnabled(x=False, y=False)
        self.key = SampleKey()
        self.drawings_column.addWidget(self.canvas)
        self.drawings_column.addWidget(self.key)
        self._fit_texts()

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        """Follow the size of the texts."""
        super().changeEvent(event)
        # The first events come before there is a plot.
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.StyleChange) and hasattr(self, "key"):
            self._fit_texts()

    def _fit_texts(self) -> None:
        font, metrics = self.canvas.font(), self.canvas.fontMetrics()
        self.canvas.setFixedHeight(max(PLOT_PX, LINES_OF_PLOT * metrics.height()))
        fit_axes(self.plot, font, least_px=metrics.height() + metrics.horizontalAdvance(WIDEST) + 8)
        for name in ("left", "bottom"):
            self.plot.getAxis(name).setStyle(tickFont=font)

    def work_out(self, opened: Opened, row: int) -> Show:
        """Work out the spectrum of a wheel; touches no widget until it is shown."""
        return partial(self._show, build_spectrum_picture(opened.result.analysis, row), row)

    def _show(self, worded: SpectrumPicture | NotMeasurable, row: int) -> None:
        found = say(worded)
        if isinstance(found, NotMeasurable):
            self.picture = None
            self.show_missing(found)
            return
        self.picture = found
        wheel = say(CORNER_NAMES[CORNERS[row]])
        self.canvas.setAccessibleName(self.tr("Order spectrum of the {} wheel").format(wheel))
        self._draw()
        self.show_sentences(found.sentences[:1], found.sentences[1:])

    def set_theme(self, theme: Theme) -> None:
        """Change colours."""
        self._theme = theme
        self.canvas.setBackground(theme.panel)
        if self.picture is not None:
            self._draw()

    def values(self) -> Table | None:
        """Return what is drawn as a table; None where nothing is."""
        return None if self.picture is None else build_spectrum_table(self.picture)

    def _draw(self) -> None:
        picture, theme = self.picture, self._theme
        if picture is None:
            return
        self.plot.clear()
        self._draw_marks(picture, theme)
        for value, colour, style, width in (
            (picture.chance_percent, theme.suspect, Qt.PenStyle.DashLine, 1.5),
            (picture.usual_percent, theme.muted, Qt.PenStyle.DotLine, 1.5),
            (picture.amplitude_percent, theme.accent, Qt.PenStyle.SolidLine, 1.2),
        ):
            pen = QPen(QColor(colour), width, style)
            pen.setCosmetic(True)
            self.plot.plot(picture.place, np.log10(np.maximum(value, 1e-9)), pen=pen)
        self._draw_peaks(picture, theme)
        self._set_axes(picture, theme)
        self._show_key(picture, theme)

    def _draw_marks(self, picture: SpectrumPicture, theme: Theme) -> None:
        if picture.cage is not None:
            region = pg.LinearRegionItem(picture.cage, movable=False, brush=veil_of(theme.highlight))
            for edge in region.lines:
                edge.setPen(pg.mkPen(None))
            region.setZValue(-20)
            self.plot.addItem(region)
        for mark in picture.marks:
            line = pg.InfiniteLine(mark.place, angle=90, pen=pg.mkPen(theme.track, width=1))
            line.setZValue(-10)
            self.plot.addItem(line)

    def _draw_peaks(self, picture: SpectrumPicture, theme: Theme) -> None:
        """Ring the lines of the turn: a line one sample wide is easily overlooked."""
        peaks = [mark.peak for mark in picture.marks if mark.peak is not None]
        rings = pg.ScatterPlotItem(
            [place for place, _ in peaks],
            [float(np.log10(percent)) for _, percent in peaks],
            symbol="o",
            size=11,
            brush=pg.mkBrush(None),
            pen=pg.mkPen(theme.text, width=2),
        )
        self.plot.addItem(rings)

    def _set_axes(self, picture: SpectrumPicture, theme: Theme) -> None:
        top = float(np.log10(max(float(np.max(picture.amplitude_percent)), 1e-6))) + HEADROOM
        usual = float(np.log10(max(float(np.median(picture.usual_percent)), 1e-8)))
        bottom_edge = min(usual - HEADROOM, top - LEAST_DECADES)
        self.plot.setYRange(bottom_edge, top, padding=0.0)
        self.plot.setXRange(float(picture.place[0]), float(picture.place[-1]), padding=0.0)
        bottom, left = self.plot.getAxis("bottom"), self.plot.getAxis("left")
        left.setTicks([_decade_ticks(bottom_edge, top)])
        bottom.setTicks([[(mark.place, mark.label) for mark in picture.marks]] if picture.marks else None)
        across = self.tr("Times in a turn") if picture.per_turn else self.tr("Times in a metre")
        self.plot.setLabel("bottom", across, color=theme.text)
        self.plot.setLabel("left", self.tr("Amplitude, % of the speed"), color=theme.text)
        for axis in (bottom, left):
            axis.enableAutoSIPrefix(False)
            axis.setPen(theme.border)
            axis.setTextPen(theme.text)

    def _show_key(self, picture: SpectrumPicture, theme: Theme) -> None:
        cage = (
            (Sample(theme.highlight, "banded", self.tr("where a bearing cage would show, 0.35 to 0.48")),)
            if picture.cage is not None
            else ()
        )
        self.key.set_samples(
            Sample(theme.accent, "solid", self.tr("amplitude; a ring marks what repeats with the turn")),
            Sample(theme.muted, "dotted", self.tr("usual level around it")),
            Sample(theme.suspect, "dashed", self.tr("reached by chance in 1 of 100 recordings")),
            *cage,
            theme=theme,
        )


def _decade_ticks(low: float, high: float) -> list[tuple[float, str]]:
    """Ticks at 1, 2 and 5 of every decade of a logarithmic axis."""
    values = [step * 10.0**decade for decade in range(-6, 4) for step in (1.0, 2.0, 5.0)]
    return [(float(np.log10(value)), f"{value:g}") for value in values if low <= np.log10(value) <= high]
