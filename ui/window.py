"""The program with its window: from the command line to the last event."""

from __future__ import annotations

import signal

from PySide6.QtWidgets import QApplication

from triage.logs.options import ReadOptions
from triage.vehicle import Vehicle
from ui.appearance import (
    fit_to_screen,
    follow_text_size,
    follow_theme,
    load_translation,
    write_numbers_alike_everywhere,
)
from ui.keeping import Keeping
from ui.main_window import MainWindow
from ui.presenters.samples import default_samples_folder, find_samples
from ui.user_folder import user_folder
from ui.widgets.styling import qt_application
from ui.window_places import restore_places

__all__ = ["MainWindow", "follow_theme", "main"]


def main(files: list[str], options: ReadOptions | None = None, vehicle: Vehicle | None = None) -> int:
    """Open the window and return when it is closed.

    Parameters
    ----------
    files : list of str
        Parts of one recording to open at once; empty for the start page.
    options : ReadOptions or None
        How to read them, and what else is opened in the window.
    vehicle : Vehicle or None
        What is known of the car; an ordinary passenger car when None.

    Returns
    -------
    int
        Exit code.
    """
    application = qt_application()
    application.setApplicationName("wheel-triage")
    keeping = Keeping(user_folder())
    write_numbers_alike_everywhere()
    load_translation(application, keeping.preferences.settings)
    samples = find_samples(default_samples_folder())
    window = MainWindow(samples=samples, options=options, vehicle=vehicle, keeping=keeping)
    try:
        follow_theme(application, window)
        follow_text_size(application, keeping.preferences)
        _place(window, keeping)
        window.show()
        if files:
            window.open_files(files)
        else:
            window.warming.begin()
        return _run(application)
    finally:
        # The loop may end without the window being closed, for instance when the desktop logs out; and a
        # worker that outlives an error up to here would abort the process, which hides what was wrong.
        window.stop_work()


def _place(window: MainWindow, keeping: Keeping) -> None:
    if keeping.folder is None or not restore_places(window, keeping.folder.places):
        fit_to_screen(window)


def _run(application: QApplication) -> int:
    # Ctrl+C in the terminal must end the program; Python's own handler would wait for the next event.
    before = signal.signal(signal.SIGINT, signal.SIG_DFL)
    try:
        return int(application.exec())
    finally:
        signal.signal(signal.SIGINT, before)
