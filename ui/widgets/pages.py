"""A card in the middle of a page, and the page shown while a recording is read."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QHBoxLayout, QProgressBar, QScrollArea, QVBoxLayout, QWidget

from triage.texts import as_text, capital_first, shaped
from ui.state.window_state import LoadingPhase, Phase, ProgressPoint, WindowState
from ui.widgets.labels import make_button, make_label
from ui.widgets.speaking import say

CARD_PX = 680


def centred_card(page: QWidget) -> QVBoxLayout:
    """Give a page a card in the middle that scrolls when the window is small; returns the card's layout."""
    card = QFrame()
    card.setProperty("role", "panel")
    card.setMaximumWidth(CARD_PX)
    inside = QVBoxLayout(card)
    inside.setContentsMargins(24, 20, 24, 20)
    inside.setSpacing(10)
    holder = QWidget()
    row = QHBoxLayout(holder)
    row.addStretch(1)
    row.addWidget(card, 8, Qt.AlignmentFlag.AlignVCenter)
    row.addStretch(1)
    scroll = QScrollArea()
    scroll.setWidgetResizable(True)
    scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    scroll.setWidget(holder)
    outside = QVBoxLayout(page)
    outside.setContentsMargins(0, 0, 0, 0)
    outside.addWidget(scroll)
    return inside


class LoadingPage(QWidget):
    """A recording is being read and judged."""

    def __init__(
        self, state: WindowState, *, on_cancel: Callable[[], object], parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        card = centred_card(self)
        self.title = make_label("headline", larger_by=1.3)
        self.stage = make_label("muted")
        self.bar = QProgressBar()
        self.bar.setRange(0, 1000)
        self.bar.setAccessibleName(self.tr("Progress"))
        self.cancel_button = make_button(self.tr("Stop (Esc)"), on_cancel)
        # The number stands below: on the bar it would lie half on one colour and half on the other.
        self.bar.setTextVisible(False)
        for widget in (self.title, self.bar, self.stage):
            card.addWidget(widget)
        card.addWidget(self.cancel_button, 0, Qt.AlignmentFlag.AlignLeft)
        state.phase_changed.subscribe(self._show_phase)
        state.progress_changed.subscribe(self._show_progress)

    def _show_phase(self, phase: Phase) -> None:
        if isinstance(phase, LoadingPhase):
            self.title.setText(self.tr("Reading {}").format(phase.order.title))
            self._show_progress(ProgressPoint(0.0, self.tr("Starting")))

    def _show_progress(self, point: ProgressPoint) -> None:
        self.bar.setValue(round(1000 * point.fraction))
        stage = say(shaped(as_text(point.stage), capital_first))
        self.stage.setText(f"{100 * point.fraction:.0f} % · {stage}")
