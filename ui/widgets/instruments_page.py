"""A scrolling column of drawings and sentences, the frame of most instruments."""

from __future__ import annotations

from collections.abc import Iterable

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QContextMenuEvent, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QLabel, QScrollArea, QVBoxLayout, QWidget

from triage.signals.measurement import NotMeasurable
from triage.texts import as_text
from ui.presenters.wording import sentence
from ui.widgets.labels import make_label
from ui.widgets.speaking import say


class ScrollingColumn(QScrollArea):
    """Drawings on top, sentences below; or in their place why there is nothing to draw.

    Signals
    -------
    copy_wanted
        The key for copying was pressed.
    menu_wanted : QPoint
        The menu was asked for, by the mouse or the key for it.
    """

    copy_wanted = Signal()
    menu_wanted = Signal(object)

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._inside = QWidget()
        self.drawings = QWidget()
        self.drawings_column = QVBoxLayout(self.drawings)
        self.drawings_column.setContentsMargins(0, 0, 0, 0)
        self.drawings_column.setSpacing(4)
        self._words: list[QLabel] = []
        self._column = QVBoxLayout(self._inside)
        self._column.setContentsMargins(2, 6, 8, 6)
        self._column.setSpacing(6)
        self._column.addWidget(self.drawings)
        self._column.addStretch(1)
        self.setWidgetResizable(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(name)
        self.setWidget(self._inside)
        self.setProperty("role", "sheet")
        # A scroll area paints what it shows in the colour of the window; this one lies in a panel.
        self._inside.setAutoFillBackground(False)

    def show_sentences(self, headline: Iterable[str], sentences: Iterable[str]) -> None:
        """Show sentences below the drawings, the first group emphasised."""
        self.drawings.setVisible(True)
        self._replace([("text", text) for text in headline] + [("muted", text) for text in sentences])

    def show_missing(self, missing: NotMeasurable) -> None:
        """Say why nothing can be drawn and which driving would help."""
        self.drawings.setVisible(False)
        self._replace(
            [
                ("section", self.tr("Not measurable on this recording")),
                ("text", say(sentence(as_text(missing.reason)))),
                ("text", self.tr("Would help: {}").format(say(sentence(as_text(missing.needed))))),
            ]
        )

    @property
    def text(self) -> str:
        """Everything that is said, one sentence a line."""
        return "\n".join(label.text() for label in self._words)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        """Copy with the system's key, leave all else to Qt."""
        if event.matches(QKeySequence.StandardKey.Copy):
            self.copy_wanted.emit()
        else:
            super().keyPressEvent(event)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:  # noqa: N802 - Qt's name
        """Ask for the menu."""
        self.menu_wanted.emit(event.globalPos())

    def drawing(self) -> QWidget | None:
        """Return what can be drawn elsewhere; None where the road test does not carry it."""
        return None if self.drawings.isHidden() else self.drawings

    def _replace(self, words: list[tuple[str, str]]) -> None:
        for label in self._words:
            self._column.removeWidget(label)
            label.deleteLater()
        self._words = [make_label(role, text) for role, text in words]
        for place, label in enumerate(self._words, start=1):
            self._column.insertWidget(place, label)
        self.setAccessibleDescription(self.text)
