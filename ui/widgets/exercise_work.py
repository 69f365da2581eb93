"""The trainee at the car: road test, complaint, checks, and the answer that is handed in."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QComboBox,
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QSpinBox,
    QSplitter,
    QVBoxLayout,
    QWidget,
)

from triage.corners import CORNERS, Corner
from triage.evidence.rule_tables import Rulebook
from ui.presenters.exercise import (
    cause_choices,
    check_rows,
    complaint_lines,
    done_lines,
    needs_corner,
    spent_line,
)
from ui.presenters.exercise_debrief import truth_line
from ui.presenters.wording import place_name
from ui.state.exercise import Prepared, Working
from ui.state.window_state import WindowState
from ui.widgets.exercise_checks import CheckShelf
from ui.widgets.labels import kept_together, make_button, make_label, set_in
from ui.widgets.replay_plot import ReplayPlot
from ui.widgets.speaking import say
from ui.widgets.styling import HAND_PX

SURE_PERCENT: Final = 70
"""What the field of confidence shows at first; neither sure nor a guess."""


SPLIT_PX: Final = 1264
SHELF_PX: Final = 500
"""How a window of the smallest usual width is shared out at first."""


@dataclass(frozen=True, slots=True)
class WorkActions:
    """What the controls do.

    Attributes
    ----------
    choose_corner, do_check : callable
    hand_in : callable
        Takes wheel, cause and confidence, 0 to 1.
    save, leave : callable
    """

    choose_corner: Callable[[Corner], object]
    do_check: Callable[[str], object]
    hand_in: Callable[[Corner | None, str, float], object]
    save: Callable[[], object]
    leave: Callable[[], object]


class ExerciseWork(QWidget):
    """Shows one :class:`ui.state.exercise.Working`."""

    def __init__(self, state: WindowState, actions: WorkActions, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._prepared: Prepared | None = None
        self.title = make_label("headline", larger_by=1.25)
        self.told = make_label("caution")
        self.save_button = make_button(self.tr("Save this exercise…"), actions.save)
        self.leave_button = make_button(self.tr("Give up  (Esc)"), actions.leave)
        self.replay = ReplayPlot(state)
        self.complaint, self.found = make_label(""), make_label("")
        self.shelf = CheckShelf(on_corner=actions.choose_corner, on_check=actions.do_check)
        self.answer = AnswerRow(actions.hand_in)
        self._lay_out()
        self._make_keys(actions)

    def show_working(self, working: Working) -> None:
        """Show where a trainee stands; a new exercise begins with its complaint and its replay."""
        if working.prepared is not self._prepared:
            self._begin(working.prepared)
        rulebook = working.prepared.rulebook
        rows = check_rows(working.attempt, working.corner, rulebook)
        self.shelf.show_rows(rows, working.corner, say(spent_line(working.attempt, rulebook)))
        found = say(done_lines(working.attempt, rulebook))
        self.found.setText(kept_together("\n".join(f"• {line}" for line in found)) or self.tr("Nothing yet."))

    def _begin(self, prepared: Prepared) -> None:
        self._prepared = prepared
        self.title.setText(say(prepared.exercise.title))
        self.told.setText(
            self.tr("Built in: {}").format(say(truth_line(prepared.exercise.hidden, prepared.rulebook)))
        )
        self.told.setVisible(prepared.told)
        told = say(complaint_lines(prepared.exercise, prepared.rulebook))
        self.complaint.setText("\n".join(f"• {line}" for line in told))
        self.replay.show_log(prepared.test.log)
        self.answer.begin(prepared.rulebook)
        self.shelf.list.setFocus()

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        head.addWidget(self.title, 1)
        head.addWidget(self.told, 2)
        for button in (self.save_button, self.leave_button):
            button.setProperty("hand", True)
            head.addWidget(button)
        notes = QHBoxLayout()
        notes.addWidget(_note_card(self.tr("The driver says"), self.complaint), 1)
        notes.addWidget(_note_card(self.tr("Found so far"), self.found), 1)
        left = QWidget()
        column = QVBoxLayout(left)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.replay, 3)
        column.addLayout(notes, 2)
        split = QSplitter(Qt.Orientation.Horizontal)
        split.setChildrenCollapsible(False)
        split.addWidget(left)
        split.addWidget(self.shelf)
        split.setStretchFactor(0, 3)
        split.setStretchFactor(1, 2)
        split.setSizes([SPLIT_PX - SHELF_PX, SHELF_PX])
        whole = QVBoxLayout(self)
        whole.setContentsMargins(8, 8, 8, 8)
        whole.setSpacing(8)
        whole.addLayout(head)
        whole.addWidget(split, 1)
        whole.addWidget(self.answer)

    def _make_keys(self, actions: WorkActions) -> None:
        wheels = (
            (str(number), lambda at=corner: actions.choose_corner(at), say(place_name(corner)))
            for number, corner in enumerate(CORNERS, 1)
        )
        keys: tuple[tuple[str, Callable[[], object], str], ...] = (
            ("P", self.replay.toggle, self.tr("Drive, or stand still")),
            (",", lambda: self.replay.replay.step(-1), self.tr("One sample back")),
            (".", lambda: self.replay.replay.step(+1), self.tr("One sample on")),
            ("+", lambda: self.replay.change_speed(+1), self.tr("Replay faster")),
            ("-", lambda: self.replay.change_speed(-1), self.tr("Replay slower")),
            *wheels,
            ("K", self.shelf.list.setFocus, self.tr("Go to the checks")),
            ("A", self.answer.cause.setFocus, self.tr("Go to the answer")),
            ("Esc", actions.leave, self.tr("Give the exercise up")),
        )
        for key, run, does in keys:
            shortcut = QShortcut(QKeySequence(key), self)
            shortcut.setContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
            shortcut.setWhatsThis(does)
            shortcut.activated.connect(run)


class AnswerRow(QFrame):
    """What is handed in: cause, wheel, and how sure."""

    def __init__(self, hand_in: Callable[[Corner | None, str, float], object]) -> None:
        super().__init__()
        self.setProperty("role", "panel")
        self._rulebook: Rulebook | None = None
        self._hand_in = hand_in
        self.cause, self.corner, self.sure = QComboBox(), QComboBox(), QSpinBox()
        self.button: QPushButton = make_button(self.tr("Hand in"), self._press, primary=True)
        set_in(self.sure)
        self.sure.setRange(1, 99)
        self.sure.setSuffix(" %")
        self.sure.setSingleStep(5)
        for control in (self.cause, self.corner, self.sure, self.button):
            # The style sheet's smallest heights go before those of widgets, so the row is made high instead.
            control.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        for corner in CORNERS:
            self.corner.addItem(say(place_name(corner)), corner)
        self.cause.currentIndexChanged.connect(lambda _at: self._cause_changed())
        grid = QGridLayout(self)
        grid.setContentsMargins(12, 8, 12, 10)
        fields: tuple[tuple[str, QWidget], ...] = (
            (self.tr("What is wrong?  (A)"), self.cause),
            (self.tr("At which wheel?"), self.corner),
            (self.tr("How sure are you of both?"), self.sure),
        )
        for number, (text, field) in enumerate(fields):
            label = QLabel(text)
            label.setBuddy(field)
            field.setAccessibleName(text.removesuffix("  (A)"))
            grid.addWidget(label, 0, number)
            grid.addWidget(field, 1, number)
        grid.addWidget(self.button, 1, len(fields))
        grid.setRowMinimumHeight(1, HAND_PX)
        for number, share in enumerate((4, 2, 2, 2)):
            grid.setColumnStretch(number, share)

    def begin(self, rulebook: Rulebook) -> None:
        """Offer the causes of a rule book, none of them chosen."""
        self._rulebook = rulebook
        self.cause.clear()
        self.cause.addItem(self.tr("Choose a cause"), "")
        for name, title in say(cause_choices(rulebook)):
            self.cause.addItem(title, name)
        self.sure.setValue(SURE_PERCENT)
        self.corner.setCurrentIndex(0)

    def _cause_changed(self) -> None:
        cause = self.cause.currentData() or ""
        at_wheel = self._rulebook is not None and needs_corner(cause, self._rulebook)
        self.corner.setEnabled(at_wheel)
        self.button.setEnabled(bool(cause))

    def _press(self) -> None:
        corner = self.corner.currentData() if self.corner.isEnabled() else None
        self._hand_in(corner, self.cause.currentData(), self.sure.value() / 100.0)


def _note_card(title: str, text: QLabel) -> QFrame:
    card = QFrame()
    card.setProperty("role", "panel")
    column = QVBoxLayout(card)
    column.setContentsMargins(12, 8, 12, 8)
    column.addWidget(make_label("section", title))
    text.setAlignment(Qt.AlignmentFlag.AlignTop)
    scroll = QScrollArea()
    scroll.setWidgetResizable(True)
    scroll.setProperty("role", "sheet")
    scroll.setAccessibleName(title)
    scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    scroll.setWidget(text)
    for part in (scroll.viewport(), text):
        part.setAutoFillBackground(False)  # the card shows through
    column.addWidget(scroll, 1)
    return card
