"""Choosing a check and an answer to be tried on the verdict, without recording it."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QFormLayout, QVBoxLayout, QWidget

from triage.corners import CORNER_NAMES, CORNERS, Corner
from ui.state.window_state import WindowState
from ui.widgets.labels import make_button, make_choice, make_label
from ui.widgets.speaking import say
from ui.widgets.styling import TARGET_PX

if TYPE_CHECKING:
    from ui.trying import TrialChoice

TryOut = Callable[[str, str, Corner | None], object]


class WhatIfPanel(QWidget):
    """Three fields and two buttons."""

    def __init__(self, state: WindowState, *, on_try: TryOut, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._state = state
        self._on_try = on_try
        self._choices: tuple[TrialChoice, ...] = ()
        self.check = make_choice(self.tr("Check"))
        self.wheel = make_choice(self.tr("Wheel"))
        self.answer = make_choice(self.tr("Answer"))
        self.question = make_label("muted")
        self.note = make_label("caution")
        self.note.hide()
        self.try_button = make_button(self.tr("Try it"), self.try_it, primary=True)
        self._form = QFormLayout()
        self._lay_out()
        self.check.currentIndexChanged.connect(lambda _at: self._show_check())
        for corner in CORNERS:
            self.wheel.addItem(f"{corner} {say(CORNER_NAMES[corner])}", corner)
        state.corner_changed.subscribe(self._show_corner)
        state.phase_changed.subscribe(lambda _phase: self.tell(""))

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(10)
        column.addWidget(
            make_label("", self.tr("What would an answer make of the verdict? Nothing of this is recorded."))
        )
        for field in (self.check, self.wheel, self.answer):
            label = make_label("", field.accessibleName())
            label.setMinimumHeight(TARGET_PX)
            self._form.addRow(label, field)
        column.addLayout(self._form)
        column.addWidget(self.question)
        column.addWidget(self.note)
        column.addWidget(self.try_button)
        column.addStretch(1)

    def offer(self, choices: tuple[TrialChoice, ...], suggested: str = "") -> None:
        """Let the user choose among these checks, beginning with one that was suggested."""
        choices = say(choices)
        if choices != self._choices:
            self._choices = choices
            self.check.clear()
            for choice in choices:
                self.check.addItem(choice.title, choice.id)
        at = self.check.findData(suggested)
        if at >= 0:
            self.check.setCurrentIndex(at)
        self._show_corner(self._state.corner)

    def try_it(self) -> None:
        """Try what is chosen."""
        choice = self._choice
        if choice is not None:
            self._on_try(choice.id, self.answer.currentData(), self._wheel(choice))

    def tell(self, text: str) -> None:
        """Say why it could not be tried."""
        self.note.setText(say(text))
        self.note.setVisible(bool(text))

    def focus_first(self) -> None:
        """Give the keyboard to the choice of the check."""
        self.check.setFocus()

    @property
    def _choice(self) -> TrialChoice | None:
        at = self.check.currentIndex()
        return self._choices[at] if 0 <= at < len(self._choices) else None

    def _wheel(self, choice: TrialChoice) -> Corner | None:
        corner: Corner | None = self.wheel.currentData()
        return None if choice.wheel == "none" else corner

    def _show_check(self) -> None:
        choice = self._choice
        if choice is None:
            return
        self.answer.clear()
        for name, text in choice.answers:
            self.answer.addItem(text, name)
        self.question.setText(choice.question)
        self._form.setRowVisible(self.wheel, choice.wheel != "none")
        nowhere = self.wheel.findText(self.tr("none named"))
        if choice.wheel == "possible" and nowhere < 0:
            self.wheel.addItem(self.tr("none named"), None)
            self.wheel.setCurrentIndex(self.wheel.count() - 1)
        elif choice.wheel != "possible" and nowhere >= 0:
            self.wheel.removeItem(nowhere)

    def _show_corner(self, corner: Corner) -> None:
        if self._choice is None or self._choice.wheel == "needed":
            self.wheel.setCurrentIndex(CORNERS.index(corner))
