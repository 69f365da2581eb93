"""The workshop's experience: what cars really had, what that does to the verdict, and taking it back."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QAbstractItemView,
    QCheckBox,
    QFormLayout,
    QHeaderView,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from triage.corners import CORNER_NAMES, CORNERS
from triage.evidence.hypotheses import Finding
from ui.presenters.experience import build_experience_text, cause_choices
from ui.state.experience import ExperienceState
from ui.widgets.labels import make_button, make_choice, make_label
from ui.widgets.speaking import say
from ui.widgets.styling import TARGET_PX

LEAST_ROWS: Final = 4

FindingsNow = Callable[[], Sequence[Finding] | None]
"""Gives what is known of the car on the screen; None without a recording."""


class ExperiencePanel(QWidget):
    """Counts, their effect and the cars behind them, one below the other."""

    def __init__(
        self, state: ExperienceState, *, findings: FindingsNow, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._state = state
        self._findings = findings
        self.note = make_label("caution")
        self.standing = make_label("section")
        self.switch = QCheckBox(self.tr("Let these cars count"))
        self.switch.setMinimumHeight(TARGET_PX)
        self.group = make_choice(self.tr("Cars that are alike"))
        self.group.setEditable(True)
        self.verdict = _table(self.tr("Verdict"), (self.tr("Verdict"), self.tr("without"), self.tr("with")))
        self.causes = _table(
            self.tr("Starting figures"),
            (self.tr("Cause"), self.tr("Cars"), self.tr("before"), self.tr("after")),
        )
        self.cars = QListWidget()
        self.cars.setAccessibleName(self.tr("Cars counted"))
        self.cause = make_choice(self.tr("What it really was"))
        self.wheel = make_choice(self.tr("Wheel"))
        self.remark = QLineEdit()
        self.remark.setAccessibleName(self.tr("Remark"))
        self.remark.setMinimumHeight(TARGET_PX)
        self.keep_button = make_button(self.tr("Count this car"), self.keep, primary=True)
        self.cars_title = make_label("section", self.cars.accessibleName())
        self.back_button = make_button(self.tr("Take the chosen car back"), self.take_back)
        self._fill_choices()
        self._lay_out()
        self._connect()
        self.refresh()

    def _fill_choices(self) -> None:
        for name, title in say(cause_choices(self._state.plain)):
            self.cause.addItem(title, name)
        self.wheel.addItem(self.tr("none named"), "")
        for corner in CORNERS:
            self.wheel.addItem(f"{corner} {say(CORNER_NAMES[corner])}", corner)

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        for label in (self.note, self.standing):
            column.addWidget(label)
        column.addLayout(_form(self.group))
        column.addWidget(self.switch)
        column.addWidget(
            make_label(
                "muted",
                self.tr(
                    "Below stands the verdict without and with them. The other pages show it without; "
                    "the option “experience” of the command “rank” counts them."
                ),
            )
        )
        for table in (self.verdict, self.causes):
            column.addWidget(table)
        column.addWidget(make_label("section", self.tr("A car whose repair was proven")))
        column.addLayout(_form(self.cause, self.wheel, self.remark))
        column.addWidget(self.keep_button)
        column.addWidget(self.cars_title)
        column.addWidget(self.cars)
        column.addWidget(self.back_button)
        column.addStretch(1)

    def _connect(self) -> None:
        self.switch.clicked.connect(lambda on: self._state.turn(on=bool(on)))
        self.group.textActivated.connect(self._state.choose_group)
        line = self.group.lineEdit()
        if line is not None:
            line.editingFinished.connect(self._take_group)
        self.cars.currentItemChanged.connect(lambda *_: self._enable())
        self._state.changed.subscribe(lambda _state: self.refresh())

    def _take_group(self) -> None:
        if self.group.currentText().strip() != self._state.group:
            self._state.choose_group(self.group.currentText())

    def keep(self) -> None:
        """Count the car described in the fields."""
        self._take_group()
        self._state.keep(
            self.cause.currentData(), corner=self.wheel.currentData(), remark=self.remark.text().strip()
        )
        if not self._state.note:
            self.remark.clear()

    def take_back(self) -> None:
        """Forget the car that is chosen."""
        item = self.cars.currentItem()
        if item is not None:
            self._state.take_back(item.data(Qt.ItemDataRole.UserRole))

    def refresh(self) -> None:
        """Show how things stand; also to be called when another recording or answer is on the screen."""
        text = say(build_experience_text(self._state, self._findings()))
        self.note.setText(say(self._state.note))
        self.note.setVisible(bool(self._state.note))
        self.standing.setText(text.standing)
        self.switch.setChecked(self._state.ledger.on)
        if [self.group.itemText(at) for at in range(self.group.count())] != list(text.groups):
            self.group.clear()
            self.group.addItems(list(text.groups))
        self.group.setCurrentText(self._state.group)
        for table, rows in ((self.verdict, text.verdict), (self.causes, text.causes)):
            _fill(table, rows)
            table.setVisible(bool(rows))
        self.cars.clear()
        for number, words in text.cars:
            item = QListWidgetItem(words)
            item.setData(Qt.ItemDataRole.UserRole, number)
            self.cars.addItem(item)
        for part in (self.cars_title, self.cars, self.back_button):
            part.setVisible(bool(text.cars))
        self._enable()

    def focus_first(self) -> None:
        """Give the keyboard to the group of cars."""
        self.group.setFocus()

    def _enable(self) -> None:
        self.back_button.setEnabled(self.cars.currentItem() is not None)


def _form(*fields: QWidget) -> QFormLayout:
    form = QFormLayout()
    form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapAllRows)
    for field in fields:
        label = make_label("", field.accessibleName())
        label.setMinimumHeight(TARGET_PX)
        label.setWordWrap(False)
        form.addRow(label, field)
    return form


def _table(name: str, heads: Sequence[str]) -> QTableWidget:
    table = QTableWidget(0, len(heads))
    table.setAccessibleName(name)
    table.setHorizontalHeaderLabels(list(heads))
    table.verticalHeader().hide()
    table.setShowGrid(False)
    table.setTabKeyNavigation(False)
    table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
    table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
    header = table.horizontalHeader()
    header.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
    header.setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
    table.setMinimumHeight((LEAST_ROWS + 1) * TARGET_PX)
    return table


def _fill(table: QTableWidget, rows: Sequence[Sequence[str]]) -> None:
    table.setRowCount(len(rows))
    for at, row in enumerate(rows):
        for column, words in enumerate(row):
            item = QTableWidgetItem(words)
            item.setToolTip(words)
            if column:
                item.setTextAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
            table.setItem(at, column, item)
