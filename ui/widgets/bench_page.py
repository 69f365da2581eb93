"""The page at the car, for dirty hands: one question at a time, large targets, number keys."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from itertools import pairwise
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence, QResizeEvent, QShortcut
from PySide6.QtWidgets import (
    QButtonGroup,
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QProgressBar,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from triage.corners import CORNER_NAMES, CORNERS, Corner
from ui.presenters.bench import BenchText, RankBar, build_bench_text
from ui.state.bench import Bench, BenchView
from ui.widgets.labels import make_button, make_label
from ui.widgets.speaking import say
from ui.widgets.styling import enlarge

LARGER: Final = 1.25
RANKING_PX: Final = 330
NARROW_PX: Final = 820
LOW_PX: Final = 340
"""Below this height the question needs all the room; what it may be is told by the steps above."""

QWIDGETSIZE_MAX: Final = 16777215
"""Qt's own word for no limit."""


class BenchPage(QWidget):
    """Shows one :class:`ui.state.bench.Bench`; another one with :meth:`open_bench`."""

    def __init__(self, *, on_leave: Callable[[], object], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench: Bench | None = None
        self._corner: Corner | None = None
        self.question = _QuestionCard(self._say, self._confirm)
        self.ranking = _RankingCard()
        self.buttons = self._make_buttons(on_leave)
        self._lay_out()
        self._order_tab()
        self._make_keys()
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def open_bench(self, bench: Bench) -> None:
        """Show a walk."""
        self.bench = bench
        self.setAccessibleName(say(bench.setup.title))
        bench.changed.subscribe(self._show)
        self._show(bench.view)

    def _make_buttons(self, on_leave: Callable[[], object]) -> dict[str, QPushButton]:
        texts: dict[str, tuple[str, Callable[[], object]]] = {
            "back": (self.tr("Back  (B)"), lambda: self._do(lambda bench: bench.back())),
            "skip": (self.tr("Not done  (S)"), lambda: self._do(lambda bench: bench.skip())),
            "cannot-say": (self.tr("Cannot say  (C)"), lambda: self._do(lambda bench: bench.cannot_say())),
            "undo": (self.tr("Undo  (U)"), lambda: self._do(lambda bench: bench.undo())),
            "afresh": (self.tr("Start afresh"), lambda: self._do(lambda bench: bench.start_afresh())),
            "leave": (self.tr("Close  (Esc)"), on_leave),
        }
        buttons = {name: make_button(text, run) for name, (text, run) in texts.items()}
        for button in buttons.values():
            _for_hands(button)
        return buttons

    def _lay_out(self) -> None:
        self._cards = QHBoxLayout()
        self._cards.setSpacing(8)
        self._cards.addWidget(self.question, 1)
        self._cards.addWidget(self.ranking)
        self._row = QGridLayout()
        self._row.setSpacing(8)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 8, 8, 8)
        column.setSpacing(8)
        column.addLayout(self._cards, 1)
        column.addLayout(self._row)
        self._arrange(narrow=False)
        # The window may be made smaller than this page would like.
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Ignored)

    def _order_tab(self) -> None:
        """Lead Tab from the question to what it may be and to the buttons below."""
        card = self.question
        order = (self, card.confirm, *card.corners.buttons.values(), card.value, self.ranking)
        for before, after in pairwise((*order, *self.buttons.values())):
            QWidget.setTabOrder(before, after)

    def _arrange(self, *, narrow: bool) -> None:
        self._cards.setDirection(
            QHBoxLayout.Direction.TopToBottom if narrow else QHBoxLayout.Direction.LeftToRight
        )
        self.ranking.set_compact(narrow)
        columns = 3 if narrow else len(self.buttons)
        for number, button in enumerate(self.buttons.values()):
            self._row.addWidget(button, number // columns, number % columns)

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Put the ranking below the question when the window is narrow, and leave it out when it is low."""
        super().resizeEvent(event)
        self.ranking.setHidden(event.size().height() < LOW_PX)
        self._arrange(narrow=event.size().width() < NARROW_PX)

    def _make_keys(self) -> None:
        keys: list[tuple[str, str, Callable[[], object]]] = [
            ("B", self.tr("Back to the answer before"), self.buttons["back"].click),
            ("S", self.tr("Not done: go on without this step"), self.buttons["skip"].click),
            ("C", self.tr("Cannot say: done, and it told nothing"), self.buttons["cannot-say"].click),
            ("U", self.tr("Take the newest answer back"), self.buttons["undo"].click),
            ("Esc", self.tr("Close this page"), self.buttons["leave"].click),
            *(
                (str(number), self.tr("The answer of that number"), lambda at=number: self.question.press(at))
                for number in range(1, 10)
            ),
        ]
        for key, does, run in keys:
            shortcut = QShortcut(QKeySequence(key), self)
            shortcut.setWhatsThis(does)
            shortcut.setContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
            shortcut.activated.connect(run)

    def _do(self, move: Callable[[Bench], object]) -> None:
        if self.bench is not None:
            move(self.bench)

    def _say(self, text: str, corner: Corner | None) -> None:
        self._do(lambda bench: bench.say(text, corner))

    def _confirm(self) -> None:
        self._do(lambda bench: bench.forward() if bench.view.confirmed else bench.confirm())

    def _show(self, view: BenchView) -> None:
        if self.bench is None or view is not self.bench.view:
            return  # of a walk that was open before
        text = say(build_bench_text(view, self.bench.setup.rulebook))
        for name in ("back", "undo", "afresh"):
            self.buttons[name].setEnabled(text.has_answers)
        for name in ("skip", "cannot-say"):
            self.buttons[name].setEnabled(text.asks)
        self.question.show_text(text)
        self.ranking.show_text(text)
        # Never on an answer: Enter pressed twice to confirm would give it.
        (self if self.question.confirm.isHidden() else self.question.confirm).setFocus()


class _QuestionCard(QScrollArea):
    """What is asked now, with its cautions and answers."""

    def __init__(self, say: Callable[[str, Corner | None], object], confirm: Callable[[], object]) -> None:
        super().__init__()
        self._say = say
        self.title = make_label("headline", larger_by=1.6)
        self.effort = make_label("muted", larger_by=1.1)
        self.cautions = make_label("caution", larger_by=LARGER)
        self.text = make_label("", larger_by=LARGER)
        self.confirm = make_button("", confirm, primary=True)
        self.corners = _CornerRow()
        self.choices: list[QPushButton] = []
        self.value = QLineEdit()
        self.value.returnPressed.connect(self._say_value)
        self.value_hint = make_label("muted")
        self.note = make_label("caution", larger_by=1.1)
        self.why = make_label("muted")
        self._answers = QVBoxLayout()
        self._lay_out()

    def _lay_out(self) -> None:
        card = QFrame()
        card.setProperty("role", "panel")
        column = QVBoxLayout(card)
        column.setContentsMargins(18, 14, 18, 14)
        column.setSpacing(10)
        self._answers.setSpacing(8)
        for widget in (
            self.title,
            self.effort,
            self.why,
            self.note,
            self.cautions,
            self.confirm,
            self.text,
            self.corners,
        ):
            column.addWidget(widget)
        column.addLayout(self._answers)
        column.addWidget(self.value_hint)
        column.addWidget(self.value)
        column.addStretch(1)
        for control in (self.confirm, self.value):
            _for_hands(control)
        self.value.setAccessibleName(self.tr("Measured value with its unit"))
        self.setWidgetResizable(True)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setWidget(card)

    def show_text(self, text: BenchText) -> None:
        """Show a question."""
        self.title.setText(text.title)
        _fill(self.effort, text.effort)
        _fill(self.note, text.note)
        _fill(self.cautions, "\n".join(f"⚠ {caution}" for caution in text.cautions))
        _fill(self.text, text.question)
        _fill(self.why, text.why)
        _fill(self.value_hint, f"{text.value_hint[:1].upper()}{text.value_hint[1:]}")
        self.value.setVisible(bool(text.value_hint))
        if not text.refused:  # what was refused stays, to be mended
            self.value.clear()
        keep = self.tr("Keep “{}”  (Enter)").format(text.earlier)
        understood = self.tr("Understood, and kept to  (Enter)")
        self.confirm.setText(understood if text.must_confirm else keep)
        self.confirm.setVisible(text.must_confirm or bool(text.earlier))
        self.corners.setVisible(text.names_corner)
        self.corners.clear()
        self._show_choices(text.choices)
        self.verticalScrollBar().setValue(0)

    def press(self, number: int) -> None:
        """Choose the answer of that number."""
        if number <= len(self.choices):
            self.choices[number - 1].click()

    def _show_choices(self, choices: tuple[tuple[str, str], ...]) -> None:
        for button in self.choices:
            button.hide()
            button.deleteLater()
        self.choices = []
        for number, (name, words) in enumerate(choices, 1):
            button = make_button(f"{number}   {words}", partial(self._choose, name))
            _for_hands(button)
            button.setProperty("answer", True)
            self._answers.addWidget(button)
            # Made later than all else, Tab would reach it after the buttons below.
            QWidget.setTabOrder(self.choices[-1] if self.choices else self.corners.last, button)
            self.choices.append(button)

    def _choose(self, name: str) -> None:
        self._say(name, self.corners.chosen)

    def _say_value(self) -> None:
        if self.value.text().strip():
            self._say(self.value.text().strip(), self.corners.chosen)


class _CornerRow(QWidget):
    """Four buttons for an answer that may name a wheel."""

    def __init__(self) -> None:
        super().__init__()
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(make_label("muted", self.tr("Which wheel, if one is meant:")))
        self._group = QButtonGroup(self)
        self.buttons: dict[Corner, QPushButton] = {}
        for corner in CORNERS:
            button = QPushButton(say(CORNER_NAMES[corner]))
            button.setCheckable(True)
            _for_hands(button)
            self._group.addButton(button)
            self.buttons[corner] = button
            row.addWidget(button, 1)

    @property
    def chosen(self) -> Corner | None:
        """The wheel that is pressed, None when none is or none can be."""
        pressed = (corner for corner, button in self.buttons.items() if button.isChecked())
        return None if self.isHidden() else next(pressed, None)

    @property
    def last(self) -> QPushButton:
        """The last button, for the order of Tab."""
        return self.buttons[CORNERS[-1]]

    def clear(self) -> None:
        """Press none."""
        self._group.setExclusive(False)
        for button in self.buttons.values():
            button.setChecked(False)
        self._group.setExclusive(True)


class _RankingCard(QScrollArea):
    """What is most probable now, and how far the walk is; scrolls where large text leaves no room."""

    def __init__(self) -> None:
        super().__init__()
        self._inside = QFrame()
        self._inside.setProperty("role", "panel")
        self.rows: list[tuple[QLabel, QProgressBar, QLabel]] = []
        self.heading = make_label("section", self.tr("Most probable now"), larger_by=1.1)
        self.setAccessibleName(self.heading.text())
        self.progress = make_label("muted")
        self.settled = QProgressBar()
        self.settled.setRange(0, 1000)
        self.settled.setTextVisible(False)
        self.settled.setAccessibleName(self.tr("Doubt settled"))
        self._column = QVBoxLayout(self._inside)
        self._column.setContentsMargins(14, 12, 14, 12)
        self._column.addWidget(self.heading)
        self._column.addStretch(1)
        self.standing = make_label("muted")
        self._column.addWidget(self.standing)
        self._compact = False
        self.settled_heading = make_label("section", self.tr("Doubt settled"))
        for widget in (self.settled_heading, self.settled, self.progress):
            self._column.addWidget(widget)
        self.setWidgetResizable(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setWidget(self._inside)

    def show_text(self, text: BenchText) -> None:
        """Show the ranking and the progress."""
        while len(self.rows) < len(text.ranking):
            self.rows.append(self._add_row())
        for row, bar in zip(self.rows, text.ranking, strict=False):
            self._fill_row(row, bar)
        self.set_compact(self._compact)
        self.progress.setText(text.progress)
        self.standing.setText("\n".join(text.standing))
        self.settled.setValue(round(1000 * text.share_settled))

    def set_compact(self, compact: bool) -> None:
        """Show the first cause alone, or all of them beside the question."""
        self._compact = compact
        self.setMinimumWidth(0 if compact else RANKING_PX)
        self.setMaximumWidth(QWIDGETSIZE_MAX if compact else RANKING_PX)
        for widget in (self.settled, self.settled_heading, self.heading, self.standing):
            widget.setHidden(compact)
        for number, row in enumerate(self.rows):
            for widget in row:
                widget.setHidden(compact and number > 0)
        needed = self._inside.sizeHint().height() + 2 * self.frameWidth() if compact else 0
        self.setMinimumHeight(needed)
        self.setMaximumHeight(needed or QWIDGETSIZE_MAX)

    def _add_row(self) -> tuple[QLabel, QProgressBar, QLabel]:
        name, bar, share = make_label(""), QProgressBar(), make_label("muted")
        bar.setRange(0, 1000)
        bar.setTextVisible(False)
        at = 1 + 3 * len(self.rows)
        for offset, widget in enumerate((name, bar, share)):
            self._column.insertWidget(at + offset, widget)
        return name, bar, share

    @staticmethod
    def _fill_row(row: tuple[QLabel, QProgressBar, QLabel], bar: RankBar) -> None:
        name, strip, share = row
        name.setText(bar.name)
        strip.setValue(round(1000 * bar.probability))
        strip.setAccessibleName(f"{bar.name}, {bar.percent}")
        share.setText(f"{bar.percent}   {bar.moved}".rstrip())


def _fill(label: QLabel, text: str) -> None:
    label.setText(text)
    label.setVisible(bool(text))


def _for_hands(control: QWidget) -> None:
    """Make a control large enough for a gloved finger."""
    control.setProperty("hand", True)  # the style sheet's heights go before those of widgets
    control.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
    enlarge(control, LARGER)
