"""Top of the window: which recording, which corner is suspected, what to do first."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QEvent
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from ui.presenters.entries import build_log_summary
from ui.presenters.verdict import build_headline
from ui.state.opening import Opened
from ui.state.window_state import Phase, ShowingPhase, WindowState
from ui.theme import theme_for
from ui.widgets.car_sketch import CarSketch
from ui.widgets.labels import kept_together, make_label
from ui.widgets.speaking import say
from ui.widgets.styling import TARGET_PX

WORDS_LETTERS: Final = 55
"""Least room for the words beside the car."""


class VerdictHeader(QFrame):
    """The verdict in one line beside the car from above."""

    def __init__(self, state: WindowState, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("role", "panel")
        self.sketch = CarSketch()
        self.title = make_label("headline", larger_by=1.45)
        self.detail = make_label("")
        self.next_step = make_label("section")
        self.recording = make_label("muted")
        self.what_if_button = QPushButton(self.tr("What if…"))
        self.what_if_button.setMinimumHeight(TARGET_PX)
        self.what_if_button.setToolTip(self.tr("Try an answer to a check without recording it"))
        self._lay_out()
        state.phase_changed.subscribe(self._show_phase)
        state.verdict_changed.subscribe(self._show_verdict)
        state.dark_changed.subscribe(lambda dark: self.sketch.set_theme(theme_for(dark=dark)))
        self.sketch.set_theme(theme_for(dark=state.dark))

    def _lay_out(self) -> None:
        lines = QVBoxLayout()
        lines.setSpacing(3)
        lines.addStretch(1)
        for label in (self.title, self.detail, self.next_step, self.recording):
            lines.addWidget(label)
        lines.addStretch(1)
        row = QHBoxLayout(self)
        row.setContentsMargins(10, 4, 10, 4)
        row.setSpacing(14)
        row.addWidget(self.sketch)
        row.addLayout(lines, 1)
        row.addWidget(self.what_if_button)

    def _show_phase(self, phase: Phase) -> None:
        if not isinstance(phase, ShowingPhase):
            return
        opened = phase.opened
        self._show_verdict(opened)
        log = opened.result.log
        summary = opened.log_summary or build_log_summary(log)
        self.recording.setText(kept_together(f"{phase.order.title} · {say(summary)}"))
        self.recording.setToolTip(log.file)

    def _show_verdict(self, opened: Opened) -> None:
        headline = say(build_headline(opened))
        self.sketch.set_verdict(headline.corner_probability, headline.suspect)
        self.title.setText(headline.title)
        self.detail.setText(kept_together(headline.detail))
        self.next_step.setText(kept_together(headline.next_step))
        self.next_step.setToolTip(say(opened.result.plan.why))

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Leave the car out where the words need the room; the steps above name the corner too."""
        super().resizeEvent(event)
        self._arrange()

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        """Look again when the texts change their size."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.StyleChange):
            self._arrange()

    def _arrange(self) -> None:
        words_px = WORDS_LETTERS * self.fontMetrics().averageCharWidth()
        self.sketch.setVisible(self.width() >= self.sketch.sizeHint().width() + words_px)
