"""Bands across a page: what is only tried, and which finding the plots are shown for."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtWidgets import QFrame, QHBoxLayout, QWidget

from ui.state.window_state import Highlight, Trial, WindowState
from ui.widgets.labels import kept_together, make_button, make_label
from ui.widgets.speaking import say


class TrialBand(QFrame):
    """Says that the verdict on the screen rests on an answer nobody gave; hidden while nothing is tried."""

    def __init__(self, state: WindowState, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._state = state
        self.setProperty("role", "trial")
        self.text = make_label("section")
        self.moved = make_label("muted")
        self.button = make_button(self.tr("Take it back (Ctrl+Z)"), lambda: state.try_out(None))
        row = QHBoxLayout(self)
        row.setContentsMargins(10, 4, 10, 4)
        row.addWidget(self.text, 3)
        row.addWidget(self.moved, 2)
        row.addWidget(self.button)
        self.hide()
        state.verdict_changed.subscribe(lambda _opened: self._show(state.trial))
        state.phase_changed.subscribe(lambda _phase: self._show(state.trial))

    def _show(self, trial: Trial | None) -> None:
        self.setVisible(trial is not None)
        if trial is not None:
            self.text.setText(self.tr("What if: {} – not recorded").format(say(trial.told)))
            self.moved.setText(kept_together(say(trial.moved)))


class FindingBand(QFrame):
    """Says which finding the plots are shown for, and leads back to it; hidden while there is none."""

    def __init__(
        self, state: WindowState, *, on_back: Callable[[], object], parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._state = state
        self.setProperty("role", "panel")
        self.text = make_label("")
        self.next_button = make_button(self.tr("Next place (F3)"), lambda: state.step_highlight(1))
        self.back_button = make_button(self.tr("Back to the finding (F4)"), on_back)
        row = QHBoxLayout(self)
        row.setContentsMargins(10, 4, 10, 4)
        row.addWidget(self.text, 1)
        row.addWidget(self.next_button)
        row.addWidget(self.back_button)
        self.hide()
        state.highlight_changed.subscribe(lambda _highlight: self._refresh())
        state.page_changed.subscribe(lambda _page: self._refresh())
        state.phase_changed.subscribe(lambda _phase: self._refresh())

    def _refresh(self) -> None:
        highlight = self._state.highlight
        statement = "" if highlight is None else self._statement(highlight)
        if highlight is not None:
            self.text.setText(statement)
            self.next_button.setVisible(len(highlight.spans) > 1)
        self.setVisible(bool(statement) and self._state.page == "road-test")

    def _statement(self, highlight: Highlight) -> str:
        opened = self._state.opened
        findings = () if opened is None else opened.result.findings
        return say(next((one.statement for one in findings if one.id == highlight.finding_id), ""))
