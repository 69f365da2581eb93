"""The truth, the fault drawn on the ring, the score, and both orders of work side by side."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from ui.presenters.exercise_debrief import DebriefText, ScoreLine, build_debrief
from ui.presenters.exercise_sketch import plan_sketch
from ui.state.exercise import Debriefing
from ui.state.window_state import WindowState
from ui.theme import theme_for
from ui.widgets.labels import kept_together, make_button, make_label
from ui.widgets.ring_sketch import RingSketch
from ui.widgets.speaking import say
from ui.widgets.styling import TARGET_PX

LONGEST_NAME = 80


@dataclass(frozen=True, slots=True)
class DebriefActions:
    """What the buttons do.

    Attributes
    ----------
    another, open_recording, save : callable
    add_to_sheet : callable
        Takes the trainee's name.
    """

    another: Callable[[], object]
    open_recording: Callable[[], object]
    save: Callable[[], object]
    add_to_sheet: Callable[[str], object]


class ExerciseDebrief(QWidget):
    """Shows one :class:`ui.state.exercise.Debriefing`."""

    def __init__(self, state: WindowState, actions: DebriefActions, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.truth = make_label("headline", larger_by=1.4)
        self.verdict = make_label("section", larger_by=1.1)
        self.claim, self.program, self.caption = make_label(""), make_label("muted"), make_label("muted")
        self.sketch = RingSketch()
        self.score = _ScoreTable()
        self.own, self.ideal = make_label(""), make_label("")
        self.another_button = make_button(self.tr("Another exercise  (Esc)"), actions.another, primary=True)
        self.open_button = make_button(self.tr("Open in the road test"), actions.open_recording)
        self.save_button = make_button(self.tr("Save this exercise…"), actions.save)
        self.name = QLineEdit()
        self.name.setMaxLength(LONGEST_NAME)
        self.name.setMinimumHeight(TARGET_PX)
        self.name.setAccessibleName(self.tr("Name of the trainee"))
        self.name.setPlaceholderText(self.tr("Name of the trainee"))
        self.sheet_button = make_button(
            self.tr("Add to a class sheet…"), lambda: actions.add_to_sheet(self.name.text())
        )
        self._lay_out()
        shortcut = QShortcut(QKeySequence("Esc"), self)
        shortcut.setContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
        shortcut.setWhatsThis(self.tr("Another exercise"))
        shortcut.activated.connect(actions.another)
        state.dark_changed.subscribe(lambda dark: self.sketch.set_theme(theme_for(dark=dark)))
        self.sketch.set_theme(theme_for(dark=state.dark))

    def show_debrief(self, stage: Debriefing) -> None:
        """Tell the truth about an exercise."""
        text: DebriefText = say(build_debrief(stage.prepared, stage.debrief))
        plan = say(plan_sketch(stage.prepared.test.truth))
        self.truth.setText(text.truth)
        self.verdict.setText(text.verdict)
        self.claim.setText(text.claim)
        self.program.setText(text.program)
        self.caption.setText(plan.caption[:1].upper() + plan.caption[1:])
        self.sketch.show_plan(plan)
        self.score.show_lines(text.score)
        self.own.setText(_numbered(text.own))
        self.ideal.setText(_numbered(text.ideal))
        self._scroll.verticalScrollBar().setValue(0)

    def arrive(self) -> None:
        """Take the keyboard; not to a button, for Enter pressed once more after handing in would press it."""
        self._scroll.setFocus()

    def _lay_out(self) -> None:
        sheet = QWidget()
        column = QVBoxLayout(sheet)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(self._truth_card())
        orders = QHBoxLayout()
        orders.setSpacing(8)
        orders.addWidget(_text_card(self.tr("What you did"), self.own), 1)
        orders.addWidget(_text_card(self.tr("What the program would have done"), self.ideal), 1)
        column.addLayout(orders)
        column.addStretch(1)
        self._scroll = QScrollArea()
        self._scroll.setWidgetResizable(True)
        self._scroll.setAccessibleName(self.tr("Truth and score"))
        self._scroll.setWidget(sheet)
        row = QHBoxLayout()
        for widget in (self.another_button, self.open_button, self.save_button):
            row.addWidget(widget)
        row.addStretch(1)
        results = QHBoxLayout()
        results.addStretch(1)
        results.addWidget(self.name, 1)
        results.addWidget(self.sheet_button)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(8, 8, 8, 8)
        whole.addWidget(self._scroll, 1)
        whole.addLayout(results)
        whole.addLayout(row)

    def _truth_card(self) -> QFrame:
        card = QFrame()
        card.setProperty("role", "panel")
        words = QVBoxLayout()
        for label in (self.truth, self.verdict, self.claim, self.program):
            words.addWidget(label)
        words.addWidget(self.score)
        words.addStretch(1)
        drawing = QVBoxLayout()
        drawing.addWidget(self.sketch, 1)
        drawing.addWidget(self.caption)
        row = QHBoxLayout(card)
        row.setContentsMargins(14, 12, 14, 12)
        row.setSpacing(16)
        row.addLayout(drawing, 2)
        row.addLayout(words, 5)
        return card


class _ScoreTable(QWidget):
    """Points line by line."""

    def __init__(self) -> None:
        super().__init__()
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 6, 0, 0)
        self._grid.setHorizontalSpacing(14)
        self._grid.setColumnStretch(2, 1)
        self.rows: list[tuple[QLabel, QLabel, QLabel]] = []

    def show_lines(self, lines: tuple[ScoreLine, ...]) -> None:
        """Show these lines."""
        while len(self.rows) < len(lines):
            row = (make_label("section"), make_label("section"), make_label(""))
            for column, label in enumerate(row):
                self._grid.addWidget(label, len(self.rows), column)
            for label in row[:2]:
                label.setWordWrap(False)
            self.rows.append(row)
        for row, line in zip(self.rows, lines, strict=True):
            for label, text in zip(row, (line.name, line.value, line.meaning), strict=True):
                label.setText(kept_together(text))


def _text_card(title: str, text: QLabel) -> QFrame:
    card = QFrame()
    card.setProperty("role", "panel")
    column = QVBoxLayout(card)
    column.setContentsMargins(14, 10, 14, 10)
    column.addWidget(make_label("section", title, larger_by=1.1))
    column.addWidget(text)
    column.addStretch(1)
    return card


def _numbered(lines: tuple[str, ...]) -> str:
    return kept_together("\n".join(f"{number}. {line}" for number, line in enumerate(lines, 1)))
