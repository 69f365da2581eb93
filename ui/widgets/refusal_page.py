"""What is wrong with a file, where, and what to do, on a page of the window instead of a box over it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFormLayout, QHBoxLayout, QWidget

from ui.presenters.refusal import Refusal, describe_question, describe_refusal
from ui.state.opening import ReadingAnswers
from ui.state.window_state import AskingPhase, Phase, RefusedPhase, WindowState
from ui.widgets.labels import FORM_GAP_PX, line_up, make_button, make_label, set_primary
from ui.widgets.pages import centred_card
from ui.widgets.reading_form import ReadingForm
from ui.widgets.speaking import say


@dataclass(frozen=True, slots=True)
class RefusalActions:
    """What the page's buttons do."""

    open_other: Callable[[], object]
    try_again: Callable[[], object]
    choose_database: Callable[[], object]
    answer: Callable[[ReadingAnswers], object]


class RefusalPage(QWidget):
    """The reason, and ways on: another file, a signal database, or saying how to read it."""

    def __init__(self, state: WindowState, actions: RefusalActions, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._actions = actions
        self.title = make_label("headline", larger_by=1.3)
        self.fields = {name: make_label("") for name in ("file", "place", "reason", "hint")}
        self.form = ReadingForm(on_answer=actions.answer)
        card = centred_card(self)
        card.addWidget(self.title)
        self._rows = QFormLayout()
        self._rows.setHorizontalSpacing(FORM_GAP_PX)
        titles = (self.tr("File"), self.tr("Place"), self.tr("Reason"), self.tr("What to do"))
        for title, label in zip(titles, self.fields.values(), strict=True):
            name = make_label("muted", title)
            name.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
            self._rows.addRow(name, label)
        card.addLayout(self._rows)
        card.addWidget(self.form)
        card.addLayout(self._build_buttons())
        state.phase_changed.subscribe(self._show_phase)

    def _build_buttons(self) -> QHBoxLayout:
        self.database_button = make_button(
            self.tr("Choose a signal database (DBC)…"), self._actions.choose_database, primary=True
        )
        self.again_button = make_button(self.tr("Try again"), self._actions.try_again)
        self.other_button = make_button(self.tr("Open another recording…"), self._actions.open_other)
        row = QHBoxLayout()
        for button in (self.database_button, self.again_button, self.other_button):
            row.addWidget(button)
        row.addStretch(1)
        return row

    def _show_phase(self, phase: Phase) -> None:
        if isinstance(phase, RefusedPhase):
            self.again_button.setText(self.tr("Try again"))
            self._show(say(describe_refusal(phase.error, phase.order)))
        elif isinstance(phase, AskingPhase):
            self.again_button.setText(self.tr("Read it as before"))
            self._show(say(describe_question(phase.order.files, phase.candidates, phase.found)))

    def _show(self, refusal: Refusal) -> None:
        self.title.setText(refusal.title)
        for name, label in self.fields.items():
            text = getattr(refusal, name)
            label.setText(text)
            self._rows.setRowVisible(label, bool(text))
        self.database_button.setVisible("database" in refusal.offers)
        # With fields to fill in, the button beside them is the one that should stand out.
        set_primary(self.database_button, primary="mapping" not in refusal.offers)
        self.form.offer(refusal.offers, refusal.candidates, refusal.found)
        line_up(self._rows, self.form.rows)
        self.focus_first()

    def focus_first(self) -> None:
        """Give the keyboard to what most likely helps."""
        if not self.form.isHidden():
            self.form.focus_first()
        elif not self.database_button.isHidden():
            self.database_button.setFocus()
        else:
            self.other_button.setFocus()
