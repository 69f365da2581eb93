"""The verdict page: header, plots, ranking and details; side by side when wide, stacked when narrow."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QGuiApplication, QResizeEvent
from PySide6.QtWidgets import QScrollArea, QSplitter, QVBoxLayout, QWidget

from ui.state.window_state import Highlight, WindowState
from ui.widgets.details_tabs import DetailsTabs
from ui.widgets.ranking_panel import RankingPanel
from ui.widgets.speed_plots import SpeedPlots
from ui.widgets.styling import qt_application
from ui.widgets.verdict_header import VerdictHeader

NARROW_PX: Final = 900
"""Below this width the plots and the lists do not fit side by side."""

WIDE_HEIGHT_PX: Final = 500
STACKED_HEIGHT_PX: Final = 960
LISTS_PX: Final = 430
MARGIN_PX: Final = 8


class ResultPage(QScrollArea):
    """Scrolls when the window is too small to show everything, so that nothing is cut off."""

    def __init__(self, state: WindowState, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.header = VerdictHeader(state)
        self.plots = SpeedPlots(state)
        self.ranking = RankingPanel(state)
        self.details = DetailsTabs(state)
        self._lists = QSplitter(Qt.Orientation.Vertical)
        self._body = QSplitter(Qt.Orientation.Horizontal)
        self._inside = QWidget()
        self._lay_out()
        self.setWidgetResizable(True)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setWidget(self._inside)
        state.highlight_changed.subscribe(self._show_plots_for)
        qt_application().focusChanged.connect(self._follow_focus)

    def _lay_out(self) -> None:
        for splitter, first, second in (
            (self._lists, self.ranking, self.details),
            (self._body, self.plots, self._lists),
        ):
            splitter.addWidget(first)
            splitter.addWidget(second)
            splitter.setChildrenCollapsible(False)
            splitter.setHandleWidth(8)
        self._body.setStretchFactor(0, 1)
        self._body.setStretchFactor(1, 0)
        self._body.setSizes([820, LISTS_PX])
        self._lists.setStretchFactor(0, 2)
        self._lists.setStretchFactor(1, 3)
        self._lists.setMinimumWidth(360)
        self.plots.setMinimumWidth(420)
        column = QVBoxLayout(self._inside)
        column.setContentsMargins(8, 6, 8, 8)
        column.setSpacing(6)
        column.addWidget(self.header)
        column.addWidget(self._body, 1)

    def arrive(self) -> None:
        """Give the keyboard to the ranking, and show the page from its top: the verdict stands there."""
        self.ranking.table.setFocus()
        self.verticalScrollBar().setValue(0)

    def _show_plots_for(self, highlight: Highlight | None) -> None:
        if highlight is not None and self.verticalScrollBar().maximum() > 0:
            self.verticalScrollBar().setValue(self.plots.mapTo(self._inside, QPoint(0, -4)).y())

    def _follow_focus(self, before: QWidget | None, now: QWidget | None) -> None:
        """Bring into view what a shortcut or Tab gave the keyboard to."""
        # What the mouse pressed is in view already, and must not move away before the button is let go.
        pressed = QGuiApplication.mouseButtons() != Qt.MouseButton.NoButton
        # Nor may the page move because the user came back from another window: then nothing had it before.
        moved = before is not None and not pressed
        if now is not None and moved and self._inside.isAncestorOf(now):
            self._bring_into_view(self.details if self.details.isAncestorOf(now) else now)

    def _bring_into_view(self, part: QWidget) -> None:
        # Qt's own ensureWidgetVisible is content with the line of the text cursor.
        top = part.mapTo(self._inside, QPoint(0, 0)).y() - MARGIN_PX
        bottom = top + part.height() + 2 * MARGIN_PX
        bar = self.verticalScrollBar()
        bar.setValue(min(max(bar.value(), bottom - self.viewport().height()), top))

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Stack plots and lists when the window is narrow."""
        super().resizeEvent(event)
        narrow = event.size().width() < NARROW_PX
        self._body.setOrientation(Qt.Orientation.Vertical if narrow else Qt.Orientation.Horizontal)
        self._inside.setMinimumHeight(STACKED_HEIGHT_PX if narrow else WIDE_HEIGHT_PX)
