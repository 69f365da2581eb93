"""Key of the plots: line sample and name of each wheel; a press hides or shows its lines."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QColor, QIcon, QPainter, QPixmap
from PySide6.QtWidgets import QHBoxLayout, QToolButton, QWidget

from triage.corners import CORNER_NAMES, CORNERS, Corner
from ui.state.window_state import WindowState
from ui.theme import Theme, theme_for
from ui.widgets.speaking import say
from ui.widgets.styling import TARGET_PX, corner_pen

SAMPLE_PX = QSize(34, 14)


class CornerKey(QWidget):
    """Four switches in a row."""

    def __init__(self, state: WindowState, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._state = state
        self.buttons: dict[Corner, QToolButton] = {corner: self._make_button(corner) for corner in CORNERS}
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(4)
        for button in self.buttons.values():
            row.addWidget(button)
        row.addStretch(1)
        state.hidden_corners_changed.subscribe(self._show_hidden)
        state.dark_changed.subscribe(self._show_dark)
        self._show_dark(state.dark)

    def _make_button(self, corner: Corner) -> QToolButton:
        button = QToolButton()
        button.setCheckable(True)
        button.setChecked(True)
        button.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        button.setText(corner)
        button.setIconSize(SAMPLE_PX)
        button.setMinimumHeight(TARGET_PX)
        button.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        button.setAccessibleName(self.tr("Show the lines of the wheel {}").format(say(CORNER_NAMES[corner])))
        button.setToolTip(self.tr("{}: press to hide or show").format(say(CORNER_NAMES[corner])))
        button.toggled.connect(lambda on: self._state.set_corner_hidden(corner, not on))
        return button

    def _show_hidden(self, hidden: frozenset[Corner]) -> None:
        for corner, button in self.buttons.items():
            button.setChecked(corner not in hidden)
            button.setText(self.tr("{} hidden").format(corner) if corner in hidden else corner)

    def _show_dark(self, dark: bool) -> None:
        theme = theme_for(dark=dark)
        for corner, button in self.buttons.items():
            button.setIcon(self._sample(theme, corner))

    def _sample(self, theme: Theme, corner: Corner) -> QIcon:
        ratio = self.devicePixelRatioF()
        pixmap = QPixmap(SAMPLE_PX * ratio)
        pixmap.setDevicePixelRatio(ratio)
        pixmap.fill(QColor(Qt.GlobalColor.transparent))
        painter = QPainter(pixmap)
        painter.setPen(corner_pen(theme, corner, width=2.0))
        painter.drawLine(1, SAMPLE_PX.height() // 2, SAMPLE_PX.width() - 1, SAMPLE_PX.height() // 2)
        painter.end()
        return QIcon(pixmap)
