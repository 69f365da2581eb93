"""Road test and verdict: the plots on one side, beside them the instruments or the lists."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, Literal

from PySide6.QtCore import QPoint, QSize, Qt
from PySide6.QtGui import QGuiApplication, QResizeEvent
from PySide6.QtWidgets import QScrollArea, QSplitter, QStackedWidget, QVBoxLayout, QWidget

from ui.state.window_state import Highlight, Page, WindowState
from ui.widgets.bands import FindingBand, TrialBand
from ui.widgets.details_tabs import CHECKS_TAB, EVIDENCE_TAB, MISSING_TAB, RECORDING_TAB, DetailsTabs
from ui.widgets.ranking_panel import RankingPanel
from ui.widgets.speed_plots import SpeedPlots
from ui.widgets.styling import qt_application
from ui.widgets.verdict_header import VerdictHeader

if TYPE_CHECKING:
    from ui.widgets.instruments import InstrumentsPanel

NARROW_PX: Final = 900
NARROW_LETTERS: Final = 120
"""Below this width the plots and what belongs to them do not fit side by side; larger texts need more."""

WIDE_HEIGHT_PX: Final = 500
STACKED_HEIGHT_PX: Final = 960
LISTS_PX: Final = 430
LISTS_MIN_PX: Final = 360
MARGIN_PX: Final = 8

Part = Literal["plots", "ranking", "evidence", "checks", "missing", "recording"]
TABS: Final[dict[Part, int]] = {
    "evidence": EVIDENCE_TAB,
    "checks": CHECKS_TAB,
    "missing": MISSING_TAB,
    "recording": RECORDING_TAB,
}


class _Body(QSplitter):
    """Asks for no more height than it needs: a scroll area gives what is asked for, and scrolls."""

    _least_px = 0

    def ask_for_height(self, least_px: int) -> None:
        """Ask for so much height, or for more where the parts need it."""
        self._least_px = least_px
        self.updateGeometry()

    def minimumSizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Return what the parts need, and no less height than asked for."""
        # A fixed least height would hide from the layout that the parts need more.
        return super().minimumSizeHint().expandedTo(QSize(0, self._least_px))

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Return the usual width and the least height."""
        return QSize(super().sizeHint().width(), self.minimumSizeHint().height())


class ResultPage(QScrollArea):
    """Scrolls when the window is too small to show everything, so that nothing is cut off.

    Parameters
    ----------
    state : WindowState
    plots : SpeedPlots
        Of the same state; made apart, since that takes as long as all the rest.

    Attributes
    ----------
    instruments : InstrumentsPanel or None
        Stands beside the plots on the road-test page; made when that page is shown first.
    """

    def __init__(self, state: WindowState, *, plots: SpeedPlots, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._state = state
        self.header = VerdictHeader(state)
        self.trial_band = TrialBand(state)
        self.finding_band = FindingBand(state, on_back=self.go_back_to_finding)
        self.plots = plots
        self.ranking = RankingPanel(state)
        self.details = DetailsTabs(state)
        self.instruments: InstrumentsPanel | None = None
        self._lists = QSplitter(Qt.Orientation.Vertical)
        self._side = QStackedWidget()
        self._body = _Body(Qt.Orientation.Horizontal)
        self._inside = QWidget()
        self._lay_out()
        self.setWidgetResizable(True)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setWidget(self._inside)
        state.highlight_changed.subscribe(self._show_plots_for)
        state.page_changed.subscribe(self._show_page)
        state.verdict_changed.subscribe(lambda _opened: self.verticalScrollBar().setValue(0))
        qt_application().focusChanged.connect(self._follow_focus)
        self._show_page(state.page)

    def _lay_out(self) -> None:
        self._side.addWidget(self._lists)
        for splitter, first, second in (
            (self._lists, self.ranking, self.details),
            (self._body, self.plots, self._side),
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
        self._side.setMinimumWidth(LISTS_MIN_PX)
        self.plots.setMinimumWidth(420)
        column = QVBoxLayout(self._inside)
        column.setContentsMargins(8, 6, 8, 8)
        column.setSpacing(6)
        for band in (self.header, self.trial_band, self.finding_band):
            column.addWidget(band)
        column.addWidget(self._body, 1)

    @property
    def splitters(self) -> dict[str, QSplitter]:
        """What the user can move, by name."""
        return {"body": self._body, "lists": self._lists}

    def arrive(self) -> None:
        """Give the keyboard to what the page is about, and show the page from its top."""
        self.go_to("ranking" if self._state.page == "verdict" else "plots")
        self.verticalScrollBar().setValue(0)

    def offer_instrument(self) -> None:
        """Offer all ways to copy and save the instrument on the road-test page."""
        self._state.show_page("road-test")
        self._instruments().offer()

    def stop(self) -> None:
        """End the worker of the instruments, before the window goes."""
        if self.instruments is not None:
            self.instruments.work.stop()

    def go_back_to_finding(self) -> None:
        """Turn to the verdict, with the keyboard on the finding the plots were shown for."""
        self._state.show_page("verdict")
        self.go_to("evidence")

    def go_to(self, part: Part) -> None:
        """Give the keyboard to a part of the page; a list is brought to the front."""
        if part == "plots":
            self.plots.canvas.setFocus()
        elif part == "ranking":
            self.ranking.table.setFocus()
        else:
            self.details.show_tab(TABS[part])

    def _show_page(self, page: Page) -> None:
        self.header.setVisible(page == "verdict")
        self._side.setCurrentWidget(self._lists if page == "verdict" else self._instruments())

    def _instruments(self) -> InstrumentsPanel:
        if self.instruments is None:
            # Made here: who never looks at them need not wait for them.
            from ui.widgets.instruments import InstrumentsPanel  # noqa: PLC0415

            self.instruments = InstrumentsPanel(self._state)
            self._side.addWidget(self.instruments)
        return self.instruments

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
        """Stack the plots and what belongs to them when the window is narrow."""
        super().resizeEvent(event)
        least_px = max(NARROW_PX, NARROW_LETTERS * self.fontMetrics().averageCharWidth())
        narrow = event.size().width() < least_px
        self._body.setOrientation(Qt.Orientation.Vertical if narrow else Qt.Orientation.Horizontal)
        self._body.ask_for_height(STACKED_HEIGHT_PX if narrow else WIDE_HEIGHT_PX)
