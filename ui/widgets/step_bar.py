"""The spine of the window: which car, which corner, and the steps of the job with what each has told."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QEvent, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontMetrics, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QAbstractButton, QFrame, QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from ui.presenters.steps import STEPS, Place, Step, StepText, build_car, build_exercise, build_steps
from ui.state.window_state import BenchPhase, Phase, WindowState
from ui.theme import Theme, theme_for
from ui.widgets.cut_label import CutLabel
from ui.widgets.speaking import say
from ui.widgets.styling import HAND_PX

CAR_PX: Final = 320
"""A longer name of a recording is cut short rather than put above the steps."""

AROUND_PX: Final = 48

SIDE_PX: Final = 14
SLACK_PX: Final = 4
"""Qt cuts a text short that fits to the pixel."""

HERE_PX: Final = 4
"""Thickness of the bar under the step that is on the screen."""


class StepButton(QAbstractButton):
    """A step: its name, below it what it has told; a bar under the one that is on the screen."""

    def __init__(self, title: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.told = ""
        self._theme = theme_for(dark=False)
        self.setText(title)
        self.setCheckable(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)

    def show_step(self, text: StepText) -> None:
        """Show where the step stands."""
        self.told = text.told
        self.setEnabled(text.can_go)
        self.set_here(text.is_here)

    def set_here(self, is_here: bool) -> None:
        """Mark the step as the one on the screen."""
        self.setChecked(is_here)
        here = self.tr("on the screen") if is_here else ""
        self.setAccessibleName(", ".join(part for part in (self.text(), self.told, here) if part))
        self.updateGeometry()
        self.update()

    def nextCheckState(self) -> None:  # noqa: N802 - Qt's name
        """Leave the mark to the state: a press alone does not turn the page."""

    def set_theme(self, theme: Theme) -> None:
        """Change colours."""
        self._theme = theme
        self.update()

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Return room for both lines."""
        return QSize(
            self._widest_px() + 2 * SIDE_PX + SLACK_PX, max(HAND_PX, 2 * self.fontMetrics().height() + 14)
        )

    def minimumSizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Return the least room: a name that is cut short still shows its beginning."""
        return QSize(64, self.sizeHint().height())

    def _widest_px(self) -> int:
        bold = QFontMetrics(self._bold())
        return max(bold.horizontalAdvance(self.text()), self.fontMetrics().horizontalAdvance(self.told))

    def _bold(self) -> QFont:
        font = self.font()
        font.setBold(True)
        return font

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Draw name, what was told, the bar and the ring of the keyboard."""
        theme, painter = self._theme, QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = QRectF(self.rect())
        if self.isEnabled() and (self.underMouse() or self.isDown()):
            painter.fillRect(box, QColor(theme.track))
        if self.isChecked():
            painter.fillRect(QRectF(0.0, box.height() - HERE_PX, box.width(), HERE_PX), QColor(theme.accent))
        self._paint_lines(painter, theme)
        if self.hasFocus():
            painter.setPen(QPen(QColor(theme.focus), 2))
            painter.drawRoundedRect(box.adjusted(1, 1, -1, -1), 4, 4)
        painter.end()

    def _paint_lines(self, painter: QPainter, theme: Theme) -> None:
        width = self.width() - 2 * SIDE_PX
        line_px = self.fontMetrics().height()
        top = (self.height() - 2 * line_px - HERE_PX) / 2
        for row, (text, font) in enumerate(((self.text(), self._bold()), (self.told, self.font()))):
            painter.setFont(font)
            plain = theme.text if row == 0 and self.isEnabled() else theme.muted
            painter.setPen(QColor(plain))
            cut = QFontMetrics(font).elidedText(text, Qt.TextElideMode.ElideRight, width)
            painter.drawText(
                QRectF(SIDE_PX, top + row * line_px, width, line_px), int(Qt.AlignmentFlag.AlignLeft), cut
            )


class StepBar(QFrame):
    """Car and corner on the left, then the steps; what is no step of the job stands apart on the right."""

    def __init__(
        self, state: WindowState, *, on_step: Callable[[Place], object], parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._state = state
        self.setProperty("role", "spine")
        self.car, self.suspect = CutLabel("section"), CutLabel("muted")
        self.buttons: dict[Step, StepButton] = {}
        self._lines = QHBoxLayout(self)
        self.exercise = StepButton(self.tr("Exercise"))
        self.exercise.clicked.connect(lambda _checked=False: on_step("exercise"))
        for step in STEPS:
            button = StepButton("")
            button.clicked.connect(lambda _checked=False, at=step: on_step(at))
            self.buttons[step] = button
        self._lay_out()
        state.phase_changed.subscribe(self._show_phase)
        state.page_changed.subscribe(lambda _page: self.refresh())
        state.verdict_changed.subscribe(lambda _opened: self.refresh())
        state.dark_changed.subscribe(self._show_dark)
        self._show_dark(state.dark)
        self.refresh()

    def _lay_out(self) -> None:
        car = QVBoxLayout()
        car.setSpacing(0)
        car.addStretch(1)
        for label in (self.car, self.suspect):
            car.addWidget(label)
        car.addStretch(1)
        steps = QHBoxLayout()
        steps.setSpacing(2)
        for button in self.buttons.values():
            steps.addWidget(button)
        steps.addStretch(1)
        steps.addWidget(self.exercise)
        self._lines.setContentsMargins(12, 2, 8, 2)
        self._lines.setSpacing(12)
        self._lines.addLayout(car)
        self._lines.addLayout(steps, 1)

    def _show_phase(self, phase: Phase) -> None:
        if isinstance(phase, BenchPhase):
            phase.bench.changed.subscribe(lambda _view: self.refresh())
        self.refresh()

    def refresh(self) -> None:
        """Show where the job stands."""
        state = self._state
        steps = say(build_steps(state.phase, state.page, state.opened))
        for step, text in zip(STEPS, steps, strict=True):
            self.buttons[step].setText(text.title)
            self.buttons[step].show_step(text)
        self.exercise.show_step(say(build_exercise(state.phase)))
        car = say(build_car(state.phase, state.opened))
        self.car.show_text(car.title)
        self.suspect.show_text(car.suspect)
        self.suspect.setVisible(bool(car.suspect))
        self._arrange()

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Put the car above the steps when the window is narrow."""
        super().resizeEvent(event)
        self._arrange()

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        """Look again whether all stand side by side when the texts change their size."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.StyleChange):
            self._arrange()

    def _arrange(self) -> None:
        steps_px = sum(button.sizeHint().width() for button in self.findChildren(StepButton))
        car_px = max(self.car.sizeHint().width(), self.suspect.sizeHint().width())
        room_px = self.width() - steps_px - AROUND_PX
        narrow = room_px < min(car_px, CAR_PX)
        for label in (self.car, self.suspect):
            # The same width for every name, so that the steps stay where they are.
            label.setMinimumWidth(0 if narrow else min(room_px, CAR_PX))
            label.setMaximumWidth(self.width() if narrow else min(room_px, CAR_PX))
        self._lines.setDirection(
            QHBoxLayout.Direction.TopToBottom if narrow else QHBoxLayout.Direction.LeftToRight
        )
        self._lines.setSpacing(0 if narrow else 12)

    def _show_dark(self, dark: bool) -> None:
        theme = theme_for(dark=dark)
        for button in self.findChildren(StepButton):
            button.set_theme(theme)
