"""The first page: three doors, recordings opened of late, and recordings that come with the program."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from pathlib import PurePath
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QBoxLayout,
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from ui.presenters.recent import RecentRow
from ui.presenters.samples import Sample
from ui.recent_files import RecentRecording
from ui.widgets.labels import make_button, make_label
from ui.widgets.speaking import say

WIDEST_PX: Final = 1060
NARROW_PX: Final = 720
SAMPLE_PX: Final = 190


@dataclass(frozen=True, slots=True)
class StartActions:
    """What the first page can begin."""

    open_log: Callable[[], object]
    walk_complaint: Callable[[], object]
    start_exercise: Callable[[], object]
    open_sample: Callable[[str], object]
    open_recent: Callable[[RecentRecording], object]
    forget_recent: Callable[[], object]


class StartPage(QScrollArea):
    """Nothing is open yet: open a log, walk a complaint, start an exercise."""

    def __init__(
        self, samples: tuple[Sample, ...], actions: StartActions, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._actions = actions
        self.open_button = make_button(self.tr("Open a recording…"), actions.open_log, primary=True)
        self.bench_button = make_button(self.tr("Walk a complaint"), actions.walk_complaint)
        self.exercise_button = make_button(self.tr("Start an exercise"), actions.start_exercise)
        self.note = make_label("")
        self.note.hide()
        self.recent = RecentList(actions)
        self.samples = SampleList(samples, actions.open_sample)
        self.sample_buttons = self.samples.buttons
        self._doors = QHBoxLayout()
        self._lists = QHBoxLayout()
        self._lay_out()

    def _lay_out(self) -> None:
        sheet = QWidget()
        sheet.setMaximumWidth(WIDEST_PX)
        column = QVBoxLayout(sheet)
        column.setContentsMargins(12, 16, 12, 12)
        column.setSpacing(12)
        column.addWidget(make_label("headline", self.tr("Which wheel end is at fault?"), larger_by=1.5))
        self._doors.setSpacing(12)
        self._doors.addWidget(self._log_door(), 1)
        self._doors.addWidget(self._complaint_door(), 1)
        self._doors.addWidget(self._exercise_door(), 1)
        column.addLayout(self._doors)
        column.addWidget(self.note)
        self._lists.setSpacing(12)
        self._lists.addWidget(self.recent, 2, Qt.AlignmentFlag.AlignTop)
        self._lists.addWidget(self.samples, 3, Qt.AlignmentFlag.AlignTop)
        column.addLayout(self._lists)
        column.addStretch(1)
        self._centre(sheet)

    def _centre(self, sheet: QWidget) -> None:
        holder = QWidget()
        row = QHBoxLayout(holder)
        row.setContentsMargins(0, 0, 0, 0)
        row.addStretch(1)
        row.addWidget(sheet, 1000)
        row.addStretch(1)
        self.setWidgetResizable(True)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setWidget(holder)

    def _log_door(self) -> QFrame:
        text = self.tr(
            "Open the recording of a road test with the four wheel speeds: which corner is suspected, why, "
            "and what to check next, before anything comes off the car. Or drop it on this window, all its "
            "parts at once, with a signal database (DBC) when it needs one."
        )
        return make_door(self.tr("There is a recording"), text, self.open_button)

    def _complaint_door(self) -> QFrame:
        text = self.tr(
            "One question at a time about the complaint and at the car, with large buttons for dirty hands. "
            "A recording can be opened later."
        )
        return make_door(self.tr("The car is here"), text, self.bench_button)

    def _exercise_door(self) -> QFrame:
        text = self.tr(
            "A simulated car with a hidden fault: order checks, name corner and cause, and see what it was "
            "worth. For one person or a class."
        )
        return make_door(self.tr("There is time to learn"), text, self.exercise_button)

    def tell_databases(self, files: tuple[str, ...]) -> None:
        """Say that signal databases were taken, and for what."""
        names = ", ".join(PurePath(file).name for file in files)
        self.tell(self.tr("{} will be used for the recording that you open next.").format(names))

    def tell(self, text: str) -> None:
        """Say something once; an empty text hides it."""
        self.note.setText(text)
        self.note.setVisible(bool(text))

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Stack doors and lists when the window is narrow."""
        super().resizeEvent(event)
        narrow = event.size().width() < NARROW_PX
        direction = QBoxLayout.Direction.TopToBottom if narrow else QBoxLayout.Direction.LeftToRight
        for row in (self._doors, self._lists):
            row.setDirection(direction)


def make_door(title: str, text: str, button: QPushButton) -> QFrame:
    """Return a card with one way to begin."""
    card = QFrame()
    card.setProperty("role", "panel")
    column = QVBoxLayout(card)
    column.setContentsMargins(16, 14, 16, 14)
    column.setSpacing(8)
    column.addWidget(make_label("section", title, larger_by=1.15))
    column.addWidget(make_label("", text))
    column.addStretch(1)
    button.setProperty("hand", True)
    column.addWidget(button)
    return card


class RecentList(QFrame):
    """Recordings opened of late; hidden while there are none."""

    def __init__(self, actions: StartActions) -> None:
        super().__init__()
        self.setProperty("role", "panel")
        self._actions = actions
        self.buttons: list[QPushButton] = []
        self._rows = QVBoxLayout()
        self._rows.setSpacing(6)
        self.forget_button = make_button(self.tr("Clear this list"), actions.forget_recent)
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 12, 16, 12)
        column.addWidget(make_label("section", self.tr("Opened of late")))
        column.addLayout(self._rows)
        column.addWidget(self.forget_button, 0, Qt.AlignmentFlag.AlignLeft)
        self.hide()

    def show_rows(self, rows: tuple[RecentRow, ...]) -> None:
        """Show these lines."""
        while (item := self._rows.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        self.buttons = []
        for row in rows:
            button = make_button(row.title, partial(self._actions.open_recent, row.recording))
            button.setEnabled(row.can_open)
            button.setAccessibleDescription(row.told)
            button.setToolTip("\n".join(row.recording.files))
            self.buttons.append(button)
            self._rows.addWidget(button)
            self._rows.addWidget(make_label("muted" if row.can_open else "caution", row.told))
        self.setVisible(bool(rows))


class SampleList(QFrame):
    """Recordings that come with the program, each with the complaint."""

    def __init__(self, samples: tuple[Sample, ...], open_sample: Callable[[str], object]) -> None:
        super().__init__()
        self.setProperty("role", "panel")
        self.buttons: list[QPushButton] = []
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 12, 16, 12)
        column.addWidget(
            make_label("section", self.tr("To try it on: recordings that come with the program"))
        )
        grid = QGridLayout()
        grid.setColumnStretch(1, 1)
        for row, sample in enumerate(samples):
            button = make_button(say(sample.title), partial(open_sample, sample.path))
            button.setAccessibleDescription(say(sample.complaint))
            button.setMinimumWidth(SAMPLE_PX)
            self.buttons.append(button)
            grid.addWidget(button, row, 0)
            grid.addWidget(make_label("muted", say(sample.complaint)), row, 1)
        column.addLayout(grid)
        if not samples:
            self.hide()
