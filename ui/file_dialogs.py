"""The two dialogs of the system in which files are chosen."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QFileDialog, QWidget

LOG_SUFFIXES: Final = (
    *(".csv", ".tsv", ".txt", ".gz"),
    *(".asc", ".blf", ".log", ".trc", ".db", ".mf4", ".mdf", ".dat"),
)
DATABASE_SUFFIXES: Final = (".dbc", ".arxml", ".kcd", ".sym")


def choose_logs(window: QWidget, folder: str) -> list[str]:
    """Let the user choose the parts of a recording; none when the dialog was left."""
    return _choose(window, folder, _tr("Open a recording (all its parts)"), log_filter())


def choose_databases(window: QWidget, folder: str) -> list[str]:
    """Let the user choose signal databases; none when the dialog was left."""
    return _choose(window, folder, _tr("Choose a signal database"), database_filter())


def log_filter() -> str:
    """Return the kinds of recordings as Qt's dialogs take them."""
    return _tr("Recordings ({});;All files (*)").format(_kinds(LOG_SUFFIXES))


def database_filter() -> str:
    """Return the kinds of signal databases as Qt's dialogs take them."""
    return _tr("Signal databases ({});;All files (*)").format(_kinds(DATABASE_SUFFIXES))


def _choose(window: QWidget, folder: str, title: str, kinds: str) -> list[str]:
    option = QFileDialog.Option.HideNameFilterDetails
    files, _ = QFileDialog.getOpenFileNames(window, title, folder, kinds, "", option)
    return list(files)


def _kinds(suffixes: tuple[str, ...]) -> str:
    # Some desktops tell capitals apart, and recorders like to write them.
    return " ".join(f"*{suffix} *{suffix.upper()}" for suffix in suffixes)


def _tr(text: str) -> str:
    return QCoreApplication.translate("FileDialogs", text)
