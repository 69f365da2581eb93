"""Where a trainer chooses an exercise: a new one by wish or chance, a sample log, or a saved file."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QBoxLayout,
    QCheckBox,
    QComboBox,
    QFormLayout,
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QScrollArea,
    QSpinBox,
    QVBoxLayout,
    QWidget,
)

from triage.corners import CORNERS, Corner
from triage.exercises.exercise import Wish
from ui.presenters.samples import Sample
from ui.presenters.wording import place_name
from ui.widgets.labels import make_button, make_label, set_in
from ui.widgets.speaking import say
from ui.widgets.styling import TARGET_PX

SEVERITIES: Final = (0.25, 0.5, 0.9)
LENGTHS_S: Final = (90.0, 180.0, 300.0)
LARGEST_NUMBER: Final = 9999
NARROW_PX: Final = 860
BUTTON_PX: Final = 190
LABEL_PX: Final = 30


@dataclass(frozen=True, slots=True)
class LibraryActions:
    """What the buttons do.

    Attributes
    ----------
    make : callable
        Takes what was wished and whether the answer is told from the start.
    take_sample : callable
        Takes the path of a sample log and the same.
    open_file : callable
        Asks for a saved exercise.
    leave : callable
    draw_seed : callable
        Gives a number for what is left to chance.
    """

    make: Callable[[Wish, bool], object]
    take_sample: Callable[[str, bool], object]
    open_file: Callable[[bool], object]
    leave: Callable[[], object]
    draw_seed: Callable[[], int]


class ExerciseLibrary(QScrollArea):
    """Two cards: a new exercise, and the sample logs."""

    def __init__(
        self, samples: tuple[Sample, ...], actions: LibraryActions, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._actions = actions
        self.cause, self.corner, self.severity, self.length = (QComboBox() for _ in range(4))
        self.car, self.drive = QSpinBox(), QSpinBox()
        for number in (self.car, self.drive):
            set_in(number)
        self.told = QCheckBox(self.tr("Show the answer from the start, to teach with it"))
        self.told.setMinimumHeight(TARGET_PX)
        self.surprise_button = make_button(self.tr("Surprise me"), self._surprise, primary=True)
        self.make_button = make_button(self.tr("Make this exercise"), self._make)
        self.file_button = make_button(self.tr("Open a saved exercise…"), self._open_file)
        self.leave_button = make_button(self.tr("Close  (Esc)"), actions.leave)
        self.sample_buttons = [self._sample_button(sample) for sample in samples]
        self._fill_choices()
        self._lay_out(samples)

    def offer_causes(self, causes: tuple[tuple[str, str], ...]) -> None:
        """Offer these causes, ids and titles."""
        self.cause.clear()
        self.cause.addItem(self.tr("Leave it to chance"), None)
        for name, title in causes:
            self.cause.addItem(title, name)

    def arrive(self) -> None:
        """Give the keyboard to the first way to begin."""
        self.surprise_button.setFocus()

    @property
    def wishes(self) -> Wish:
        """What is chosen now."""
        corner: Corner | None = self.corner.currentData()
        return Wish(
            seed=self._actions.draw_seed(),
            cause=self.cause.currentData(),
            corner=corner,
            severity=self.severity.currentData(),
            duration_s=self.length.currentData(),
            car_seed=self.car.value() or None,
            drive_seed=self.drive.value() or None,
        )

    def _fill_choices(self) -> None:
        chance = self.tr("Leave it to chance")
        self.offer_causes(())
        self.corner.addItem(chance, None)
        for corner in CORNERS:
            self.corner.addItem(say(place_name(corner)), corner)
        self.severity.addItem(chance, None)
        for severity, words in zip(
            SEVERITIES, (self.tr("Slight"), self.tr("Clear"), self.tr("Blatant")), strict=True
        ):
            self.severity.addItem(words, severity)
        for length_s in LENGTHS_S:
            self.length.addItem(self.tr("{:g} minutes").format(length_s / 60.0), length_s)
        self.length.setCurrentIndex(1)
        for spin in (self.car, self.drive):
            spin.setRange(0, LARGEST_NUMBER)
            spin.setSpecialValueText(chance)
            spin.setMinimumHeight(TARGET_PX)

    def _lay_out(self, samples: tuple[Sample, ...]) -> None:
        sheet = QWidget()
        column = QVBoxLayout(sheet)
        column.setContentsMargins(12, 12, 12, 12)
        column.setSpacing(10)
        head = QHBoxLayout()
        head.addWidget(make_label("headline", self.tr("Exercise"), larger_by=1.5), 1)
        head.addWidget(self.leave_button)
        column.addLayout(head)
        column.addWidget(make_label("", self._introduction()))
        self._cards = QHBoxLayout()
        self._cards.setSpacing(12)
        self._cards.addWidget(self._new_card(), 1, Qt.AlignmentFlag.AlignTop)
        self._cards.addWidget(self._sample_card(samples), 1, Qt.AlignmentFlag.AlignTop)
        column.addLayout(self._cards)
        column.addStretch(1)
        self.setWidgetResizable(True)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setWidget(sheet)

    def _introduction(self) -> str:
        return self.tr(
            "A car with a hidden fault. Watch its road test, ask and check – every check costs minutes and "
            "money – and hand in wheel, cause and how sure you are. Then the truth is told, and what your "
            "work was worth against the order in which the program would have gone about it."
        )

    def _new_card(self) -> QFrame:
        form = QFormLayout()
        form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        form.setLabelAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapLongRows)
        rows: tuple[tuple[str, QWidget], ...] = (
            (self.tr("&Cause"), self.cause),
            (self.tr("&Wheel"), self.corner),
            (self.tr("S&everity"), self.severity),
            (self.tr("Ca&r, by number"), self.car),
            (self.tr("&Drive, by number"), self.drive),
            (self.tr("&Length"), self.length),
        )
        for text, field in rows:
            form.addRow(text, field)
            field.setAccessibleName(text.replace("&", ""))
            form.labelForField(field).setMinimumHeight(LABEL_PX)
        card, column = _card(self.tr("A new car"))
        column.addWidget(self.surprise_button)
        column.addWidget(make_label("muted", self.tr("or choose what the trainees are to find:")))
        column.addLayout(form)
        column.addWidget(self.make_button)
        column.addWidget(self.told)
        column.addWidget(self.file_button)
        return card

    def _sample_card(self, samples: tuple[Sample, ...]) -> QFrame:
        card, column = _card(self.tr("Cars of the recordings that come with the program"))
        grid = QGridLayout()
        grid.setColumnStretch(1, 1)
        for row, (sample, button) in enumerate(zip(samples, self.sample_buttons, strict=True)):
            grid.addWidget(button, row, 0)
            grid.addWidget(make_label("muted", say(sample.complaint)), row, 1)
        column.addLayout(grid)
        if not samples:
            column.addWidget(make_label("muted", self.tr("These recordings are not installed.")))
        return card

    def _sample_button(self, sample: Sample) -> QWidget:
        button = make_button(
            say(sample.title), lambda: self._actions.take_sample(sample.path, self.told.isChecked())
        )
        button.setAccessibleDescription(say(sample.complaint))
        button.setMinimumWidth(BUTTON_PX)
        return button

    def _surprise(self) -> None:
        self._actions.make(Wish(seed=self._actions.draw_seed()), self.told.isChecked())

    def _make(self) -> None:
        self._actions.make(self.wishes, self.told.isChecked())

    def _open_file(self) -> None:
        self._actions.open_file(self.told.isChecked())

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Put the cards below one another when the window is narrow."""
        super().resizeEvent(event)
        narrow = event.size().width() < NARROW_PX
        self._cards.setDirection(
            QBoxLayout.Direction.TopToBottom if narrow else QBoxLayout.Direction.LeftToRight
        )


def _card(title: str) -> tuple[QFrame, QVBoxLayout]:
    card = QFrame()
    card.setProperty("role", "panel")
    column = QVBoxLayout(card)
    column.setContentsMargins(16, 14, 16, 14)
    column.setSpacing(8)
    column.addWidget(make_label("section", title, larger_by=1.15))
    return card, column
