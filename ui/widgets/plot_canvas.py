"""The drawing area of the plots; turns keys into wishes."""

from __future__ import annotations

import pyqtgraph as pg
from PySide6.QtCore import QT_TRANSLATE_NOOP, Qt, Signal
from PySide6.QtGui import QContextMenuEvent, QKeyEvent, QKeySequence

Key = Qt.Key

MOVES = {Key.Key_Left: -0.2, Key.Key_Right: 0.2, Key.Key_PageUp: -0.9, Key.Key_PageDown: 0.9}
ZOOMS = {Key.Key_Plus: 0.5, Key.Key_Equal: 0.5, Key.Key_Minus: 2.0}
STEPS = {
    Key.Key_Comma: -1,
    Key.Key_Period: 1,
    # With Shift, the same keys give other signs, and not the same ones on every keyboard.
    Key.Key_Less: -10,
    Key.Key_Semicolon: -10,
    Key.Key_Greater: 10,
    Key.Key_Colon: 10,
}


class PlotCanvas(pg.GraphicsLayoutWidget):
    """Holds the plots.

    Signals
    -------
    moved, zoomed : float
        By a share of what is in view; to so many times the seconds.
    stepped : int
        The cursor by so many samples.
    loss_wanted : int
        The next drop-out (1) or the one before (-1).
    """

    key_help = (
        ("Left, Right, PgUp, PgDown", QT_TRANSLATE_NOOP("KeyHelp", "Move along the time")),
        ("+, -, Home", QT_TRANSLATE_NOOP("KeyHelp", "Zoom in, zoom out, show the whole recording")),
        (
            QT_TRANSLATE_NOOP("KeyHelp", "Comma, full stop"),
            QT_TRANSLATE_NOOP("KeyHelp", "Move the cursor by a sample, with Shift by ten"),
        ),
        ("M, Del", QT_TRANSLATE_NOOP("KeyHelp", "Mark the cursor's place to measure from, remove both")),
        ("N, Shift+N", QT_TRANSLATE_NOOP("KeyHelp", "Next drop-out of the wheel looked at, the one before")),
        ("Ctrl+C, Menu", QT_TRANSLATE_NOOP("KeyHelp", "Copy the picture, offer all ways to copy and save")),
    )

    moved = Signal(float)
    zoomed = Signal(float)
    whole_wanted = Signal()
    stepped = Signal(int)
    mark_wanted = Signal()
    clearing_wanted = Signal()
    loss_wanted = Signal(int)
    copy_wanted = Signal()
    menu_wanted = Signal(object)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        """Move, zoom, step the cursor, jump, copy."""
        if event.matches(QKeySequence.StandardKey.Copy):
            self.copy_wanted.emit()
        elif not self._take_key(Qt.Key(event.key()), shifted=_is_shifted(event)):
            super().keyPressEvent(event)

    def _take_key(self, key: Qt.Key, *, shifted: bool) -> bool:
        if key in MOVES:
            self.moved.emit(MOVES[key])
        elif key in ZOOMS:
            self.zoomed.emit(ZOOMS[key])
        elif key in STEPS:
            step = STEPS[key]
            self.stepped.emit(10 * step if shifted and abs(step) == 1 else step)
        elif key == Key.Key_N:
            self.loss_wanted.emit(-1 if shifted else 1)
        else:
            return self._take_plain_key(key)
        return True

    def _take_plain_key(self, key: Qt.Key) -> bool:
        wishes = {
            Key.Key_Home: self.whole_wanted,
            Key.Key_M: self.mark_wanted,
            Key.Key_Delete: self.clearing_wanted,
        }
        if key in wishes:
            wishes[key].emit()
        return key in wishes

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:  # noqa: N802 - Qt's name
        """Ask for the menu, by the mouse or the key for it."""
        self.menu_wanted.emit(event.globalPos())


def _is_shifted(event: QKeyEvent) -> bool:
    return bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
