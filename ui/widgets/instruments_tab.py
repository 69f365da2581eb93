"""The page of one instrument: the instrument, or in its place why it is not there."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QStackedWidget, QWidget

from triage.errors import TriageError
from triage.texts import defect_name, error_lines
from ui.widgets.labels import make_label
from ui.widgets.speaking import say


class InstrumentTab(QStackedWidget):
    """Never shows an instrument with the values of a wheel that is no longer looked at.

    Attributes
    ----------
    words : QLabel
        What is said in place of the instrument; it takes the keyboard over, and gives it back.
    """

    def __init__(self, instrument: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._instrument = instrument
        self._refused = False
        self.words = make_label("muted")
        self.words.setAlignment(Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignVCenter)
        self.words.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.addWidget(instrument)
        self.addWidget(self.words)

    @property
    def waiting(self) -> bool:
        """Whether the instrument is hidden and is still being worked out."""
        return self.currentWidget() is self.words and not self._refused

    @property
    def refused(self) -> bool:
        """Whether the instrument is hidden since it could not be worked out."""
        return self._refused

    def wait(self) -> None:
        """Say that the instrument is being worked out."""
        self._refused = False
        self._tell(self.tr("Working it out. The recording is very long."))

    def refuse(self, error: Exception) -> None:
        """Say why the instrument could not be worked out."""
        self._refused = True
        why = error_lines(error) if isinstance(error, TriageError) else defect_name(error)
        self._tell(self.tr("It could not be worked out: {}").format(say(why)))

    def show_instrument(self) -> None:
        """Show the instrument."""
        self._refused = False
        self.setCurrentWidget(self._instrument)

    def _tell(self, text: str) -> None:
        self.words.setText(text)
        self.words.setAccessibleName(text)
        self.setCurrentWidget(self.words)
