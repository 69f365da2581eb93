"""What the window remembers between two runs, and what goes wrong with it. Knows no Qt."""

from __future__ import annotations

from triage.errors import TriageError
from triage.texts import Text, error_words
from ui.recent_files import RecentRecording, load_recent, save_recent, with_newest
from ui.settings_file import load_settings, save_settings
from ui.state.opening import OpenOrder
from ui.state.settings import Preferences, Settings
from ui.state.topic import Topic
from ui.user_folder import UserFolder


class Keeping:
    """Holds settings and recent recordings, and writes every change at once.

    A file that cannot be used is told and left aside; nothing here ever stops the window.

    Parameters
    ----------
    folder : UserFolder or None
        Where the files lie; None keeps nothing.

    Attributes
    ----------
    preferences : Preferences
    recent : tuple of RecentRecording
        Newest first.
    note : str
        What went wrong last; empty when all is well.
    """

    def __init__(self, folder: UserFolder | None = None) -> None:
        self.folder = folder
        self.recent: tuple[RecentRecording, ...] = ()
        self.recent_changed: Topic[tuple[RecentRecording, ...]] = Topic()
        self.told: Topic[str] = Topic()
        self.note = ""
        self._keep_old = False
        self.preferences = Preferences(self._read_settings())
        self.preferences.changed.subscribe(self._save_settings)
        self._read_recent()

    def add(self, order: OpenOrder) -> None:
        """Remember that this recording was opened."""
        newest = RecentRecording(order.files, tuple(order.options.databases))
        self._set_recent(with_newest(self.recent, newest))

    def forget_recent(self) -> None:
        """Clear the list of recordings."""
        self._set_recent(())

    def _read_settings(self) -> Settings:
        if self.folder is None:
            return Settings()
        read = load_settings(self.folder.settings)
        self._keep_old = read.damaged
        self._tell(read.note)
        return read.settings

    def _save_settings(self, settings: Settings) -> None:
        if self.folder is None:
            return
        try:
            save_settings(self.folder.settings, settings, keep_old=self._keep_old)
        except TriageError as error:
            self._tell(error_words(error, Text("The settings could not be kept")))
        else:
            self._keep_old = False
            self._tell("")

    def _read_recent(self) -> None:
        if self.folder is None:
            return
        try:
            self.recent = load_recent(self.folder.recent)
        except TriageError as error:
            self._tell(error_words(error, Text("The list of recordings was left aside")))

    def _set_recent(self, recent: tuple[RecentRecording, ...]) -> None:
        self.recent = recent
        if self.folder is not None:
            try:
                save_recent(self.folder.recent, recent)
            except TriageError as error:
                self._tell(error_words(error, Text("The list of recordings could not be kept")))
        self.recent_changed.tell(recent)

    def _tell(self, note: str) -> None:
        self.note = note
        self.told.tell(note)
