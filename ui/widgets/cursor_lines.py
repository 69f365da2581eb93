"""The cursor and the mark as upright lines through all plots, moved with the mouse."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import pyqtgraph as pg
from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QColor, QPen

from ui.state.time_cursor import TimeCursor
from ui.theme import Theme


class CursorLines(QObject):
    """Follows a cursor, and moves it: a click places it, with Shift the mark, and the line can be dragged.

    Parameters
    ----------
    cursor : TimeCursor
        What is shown.
    plots : sequence of PlotItem
        One above the other, on one time axis.
    """

    def __init__(self, cursor: TimeCursor, plots: Sequence[pg.PlotItem], theme: Theme) -> None:
        super().__init__()
        self._cursor = cursor
        self._plots = tuple(plots)
        self.lines = tuple(self._add_line(plot, cursor.place) for plot in plots)
        self.marks = tuple(self._add_line(plot, cursor.place_mark) for plot in plots)
        self._plots[0].scene().sigMouseClicked.connect(self._take_click)
        cursor.changed.subscribe(self._follow)
        self.set_theme(theme)
        self._follow(cursor)

    def _add_line(self, plot: pg.PlotItem, place: Callable[[float], object]) -> pg.InfiniteLine:
        line = pg.InfiniteLine(angle=90, movable=True)
        line.setZValue(20)
        line.sigDragged.connect(lambda dragged: place(dragged.value()))
        plot.addItem(line, ignoreBounds=True)
        return line

    def set_theme(self, theme: Theme) -> None:
        """Change colours."""
        for lines, style in ((self.lines, Qt.PenStyle.SolidLine), (self.marks, Qt.PenStyle.DashLine)):
            for line in lines:
                line.setPen(_pen(theme.accent, style, 1.0))
                line.setHoverPen(_pen(theme.accent, style, 3.0))

    def _follow(self, cursor: TimeCursor) -> None:
        for lines, at_s in ((self.lines, cursor.time_s), (self.marks, cursor.mark_s)):
            for line in lines:
                line.setVisible(at_s is not None)
                if at_s is not None:
                    line.setValue(at_s)

    def _take_click(self, event: pg.GraphicsScene.mouseEvents.MouseClickEvent) -> None:
        if event.button() != Qt.MouseButton.LeftButton:
            return
        box = self._plots[0].getViewBox()
        within = box.sceneBoundingRect()
        if within.left() <= event.scenePos().x() <= within.right():
            time_s = box.mapSceneToView(event.scenePos()).x()
            shifted = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
            (self._cursor.place_mark if shifted else self._cursor.place)(time_s)


def _pen(colour: str, style: Qt.PenStyle, width: float) -> QPen:
    pen = QPen(QColor(colour), width, style)
    pen.setCosmetic(True)
    return pen
