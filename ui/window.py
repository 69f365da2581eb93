"""The main window: puts state, runner and panels together."""

from __future__ import annotations

import os
import signal
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Final

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QAction, QCloseEvent, QDragEnterEvent, QDropEvent, QGuiApplication
from PySide6.QtWidgets import QApplication, QFileDialog, QMainWindow, QMessageBox, QStackedWidget, QWidget

from triage.errors import TriageError
from triage.logs.options import ReadOptions
from triage.progress import Progress
from triage.vehicle import Vehicle
from ui.bench_opening import begin_bench, with_answers
from ui.menus import build_menus
from ui.opening import open_and_judge
from ui.presenters.samples import Sample, default_samples_folder, find_samples
from ui.runner import Reply, Runner
from ui.state.opening import Opened, OpenOrder
from ui.state.window_state import (
    AskingPhase,
    BenchPhase,
    LoadingPhase,
    Phase,
    RefusedPhase,
    ShowingPhase,
    StartPhase,
    WindowState,
)
from ui.theme import theme_for
from ui.widgets.bench_page import BenchPage
from ui.widgets.pages import LoadingPage, StartPage
from ui.widgets.refusal_page import RefusalActions, RefusalPage
from ui.widgets.result_page import ResultPage
from ui.widgets.styling import apply_theme, qt_application

Opener = Callable[[OpenOrder, Progress], Opened]
WISHED_SIZE: Final = QSize(1280, 800)
LOG_SUFFIXES: Final = (
    *(".csv", ".tsv", ".txt", ".gz"),
    *(".asc", ".blf", ".log", ".trc", ".db", ".mf4", ".mdf", ".dat"),
)
DATABASE_SUFFIXES: Final = (".dbc", ".arxml", ".kcd", ".sym")


class MainWindow(QMainWindow):
    """One recording at a time: start page, reading, verdict or refusal.

    Parameters
    ----------
    opener : callable
        Reads and judges a recording on the worker thread; replaced in tests.
    samples : tuple of Sample
        Offered on the start page.
    options : ReadOptions or None
        How to read what the user opens; the samples are read without.
    vehicle : Vehicle or None
        What is known of the user's car; the samples are not of this car.
    """

    def __init__(
        self,
        opener: Opener = open_and_judge,
        samples: tuple[Sample, ...] = (),
        *,
        options: ReadOptions | None = None,
        vehicle: Vehicle | None = None,
    ) -> None:
        super().__init__()
        self.state = WindowState()
        self.runner = Runner(self)
        self._opener = opener
        self._options, self._vehicle = options or ReadOptions(), vehicle
        self._folder = ""
        self._sample_files = frozenset(sample.path for sample in samples)
        self.start_page = StartPage(samples, on_open=self.ask_for_files, on_sample=self.open_sample)
        self.start_page.bench_button.clicked.connect(self.open_bench)
        self.loading_page = LoadingPage(self.state, on_cancel=self.cancel)
        self.refusal_page = RefusalPage(self.state, self._refusal_actions())
        self.result_page = ResultPage(self.state)
        self.result_page.header.bench_button.clicked.connect(self.open_bench)
        self.bench_page = BenchPage(on_leave=self.leave_bench)
        self._pages: dict[type, QWidget] = {
            StartPhase: self.start_page,
            LoadingPhase: self.loading_page,
            RefusedPhase: self.refusal_page,
            AskingPhase: self.refusal_page,
            ShowingPhase: self.result_page,
            BenchPhase: self.bench_page,
        }
        self._stack = QStackedWidget()
        for page in self._pages.values():
            self._stack.addWidget(page)
        self.setCentralWidget(self._stack)
        self.actions_by_name: dict[str, QAction] = build_menus(self, samples)
        self.setAcceptDrops(True)
        self.setMinimumSize(480, 320)
        self.runner.progressed.connect(self.state.report)
        self.runner.finished.connect(self._take_reply)
        self.state.phase_changed.subscribe(self._show_phase)
        self._show_phase(self.state.phase)

    def _refusal_actions(self) -> RefusalActions:
        return RefusalActions(
            open_other=self.ask_for_files,
            try_again=self.reload,
            choose_database=self.ask_for_database,
            answer=lambda answers: self._retry(lambda order: order.with_answers(answers)),
        )

    # Opening -----------------------------------------------------------------------------------------

    def open_files(self, files: Sequence[str], options: ReadOptions | None = None) -> None:
        """Read and judge the parts of one recording; signal databases among the files are used for it."""
        databases = tuple(file for file in files if file.lower().endswith(DATABASE_SUFFIXES))
        logs = tuple(file for file in files if file not in databases)
        if not logs:
            if databases:
                self._take_databases(databases)
            return
        order = OpenOrder(logs, options or self._options, self._vehicle)
        self._start(order.with_databases((*order.options.databases, *databases)))

    def _take_databases(self, databases: tuple[str, ...]) -> None:
        """Use signal databases for what is open, or else for what will be."""
        if isinstance(self.state.phase, StartPhase):
            self._options = replace(self._options, databases=databases)
            self.start_page.tell_databases(databases)
        else:
            self._retry(lambda order: order.with_databases(databases))

    def open_sample(self, path: str) -> None:
        """Read and judge a recording that comes with the program."""
        self._start(OpenOrder((path,)))

    def ask_how_to_read(self) -> None:
        """Let the user say how the recording on the screen is to be read."""
        phase = self.state.phase
        if isinstance(phase, ShowingPhase):
            log = phase.opened.result.log
            found = {corner: trace.source for corner, trace in log.wheels.items()}
            sources = [*found.values(), *(channel.source for channel in log.channels.values())]
            self.state.enter(AskingPhase(phase.order, tuple(dict.fromkeys(sources)), found))

    def reload(self) -> None:
        """Read the same files once more."""
        self._retry(lambda order: order)

    def cancel(self) -> None:
        """Stop reading and go back to the start page."""
        if isinstance(self.state.phase, LoadingPhase):
            self.runner.cancel()
            self.state.enter(StartPhase())

    def close_log(self) -> None:
        """Go back to the start page."""
        self.runner.cancel()
        self.state.enter(StartPhase())

    def ask_for_files(self) -> None:
        """Let the user choose the parts of a recording."""
        files, _ = QFileDialog.getOpenFileNames(
            self,
            self.tr("Open a recording (all its parts)"),
            self._folder,
            self._log_filter(),
            "",
            QFileDialog.Option.HideNameFilterDetails,
        )
        if files:
            self.open_files(files)

    def ask_for_database(self) -> None:
        """Let the user choose signal databases and read the recording again with them."""
        files, _ = QFileDialog.getOpenFileNames(
            self,
            self.tr("Choose a signal database"),
            self._folder,
            self._database_filter(),
            "",
            QFileDialog.Option.HideNameFilterDetails,
        )
        if files:
            self._retry(lambda order: order.with_databases(tuple(files)))

    def _log_filter(self) -> str:
        # Some desktops tell capitals apart, and recorders like to write them.
        kinds = " ".join(f"*{suffix} *{suffix.upper()}" for suffix in LOG_SUFFIXES)
        return self.tr("Recordings ({});;All files (*)").format(kinds)

    def _database_filter(self) -> str:
        kinds = " ".join(f"*{suffix} *{suffix.upper()}" for suffix in DATABASE_SUFFIXES)
        return self.tr("Signal databases ({});;All files (*)").format(kinds)

    def _retry(self, change: Callable[[OpenOrder], OpenOrder]) -> None:
        phase = self.state.phase
        if not isinstance(phase, StartPhase | BenchPhase):
            self._start(change(phase.order))

    def _start(self, order: OpenOrder) -> None:
        self._folder = str(Path(order.files[0]).parent)
        self.state.enter(LoadingPhase(order))
        opener = self._opener
        self.runner.submit(lambda progress: opener(order, progress))

    def _take_reply(self, reply: Reply[Opened]) -> None:
        phase = self.state.phase
        if not isinstance(phase, LoadingPhase):
            return
        if reply.error is not None:
            self.state.enter(RefusedPhase(phase.order, reply.error))
        elif reply.result is not None:
            self.state.enter(ShowingPhase(phase.order, reply.result))
        else:
            self.state.enter(StartPhase())

    # At the car --------------------------------------------------------------------------------------

    def open_bench(self) -> None:
        """Ask one question at a time, about what is open or without a recording."""
        phase = self.state.phase
        if not isinstance(phase, StartPhase | ShowingPhase):
            return
        showing = isinstance(phase, ShowingPhase)
        files = phase.order.files if isinstance(phase, ShowingPhase) else ()
        result = phase.opened.result if isinstance(phase, ShowingPhase) else None
        try:
            own = showing and not self._sample_files.intersection(files)
            bench = begin_bench(files, result, os.environ, beside_log=own)
        except TriageError as error:
            QMessageBox.warning(self, self.tr("At the car"), str(error))
            return
        self.state.enter(BenchPhase(bench, phase))

    def leave_bench(self) -> None:
        """Go back to where the questions were asked from; the verdict takes in the answers."""
        phase = self.state.phase
        if not isinstance(phase, BenchPhase):
            return
        before = phase.before
        if isinstance(before, ShowingPhase):
            result = with_answers(before.opened.result, phase.bench.view)
            before = replace(before, opened=replace(before.opened, result=result))
        self.state.enter(before)

    # Showing -----------------------------------------------------------------------------------------

    def _show_phase(self, phase: Phase) -> None:
        self._stack.setCurrentWidget(self._pages[type(phase)])
        name = self.tr("Wheel-end triage")
        about = _title_of(phase)
        self.setWindowTitle(f"{about} – {name}" if about else name)
        showing, opened = isinstance(phase, ShowingPhase), not isinstance(phase, StartPhase | BenchPhase)
        self.actions_by_name["bench"].setEnabled(isinstance(phase, StartPhase | ShowingPhase))
        for key, action in self.actions_by_name.items():
            if key.startswith("result."):
                action.setEnabled(showing)
            elif key.startswith("opened."):
                action.setEnabled(opened)
        self.actions_by_name["loading.cancel"].setEnabled(isinstance(phase, LoadingPhase))
        self._focus_first(phase)

    def _focus_first(self, phase: Phase) -> None:
        if isinstance(phase, StartPhase):
            self.start_page.open_button.setFocus()
        elif isinstance(phase, LoadingPhase):
            self.loading_page.cancel_button.setFocus()
        elif isinstance(phase, ShowingPhase):
            self.result_page.arrive()
        elif isinstance(phase, BenchPhase):
            self.bench_page.open_bench(phase.bench)
        else:
            self.refusal_page.focus_first()

    # Qt's events -------------------------------------------------------------------------------------

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:  # noqa: N802 - Qt's name
        """Accept files."""
        if event.mimeData().hasUrls():
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:  # noqa: N802 - Qt's name
        """Open what was dropped."""
        files = [url.toLocalFile() for url in event.mimeData().urls() if url.isLocalFile()]
        if files:
            event.acceptProposedAction()
            self.open_files(files)

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802 - Qt's name
        """End the worker before the window goes."""
        self.hide()
        self.runner.stop()
        super().closeEvent(event)


def _title_of(phase: Phase) -> str:
    if isinstance(phase, BenchPhase):
        return phase.bench.setup.title
    return "" if isinstance(phase, StartPhase) else phase.order.title


def follow_theme(application: QApplication, window: MainWindow) -> None:
    """Colour the program as the state says, and the state as the system says until the user chooses."""
    hints = application.styleHints()
    window.state.dark_changed.subscribe(lambda dark: apply_theme(application, theme_for(dark=dark)))
    window.state.set_dark(hints.colorScheme() == Qt.ColorScheme.Dark)
    apply_theme(application, theme_for(dark=window.state.dark))
    hints.colorSchemeChanged.connect(lambda scheme: window.state.set_dark(scheme == Qt.ColorScheme.Dark))


def fit_to_screen(window: QWidget) -> None:
    """Give the window the size it likes, or what the screen has."""
    screen = QGuiApplication.primaryScreen()
    room = screen.availableSize() if screen is not None else WISHED_SIZE
    window.resize(WISHED_SIZE.boundedTo(room))


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
    samples = find_samples(default_samples_folder())
    window = MainWindow(samples=samples, options=options, vehicle=vehicle)
    follow_theme(application, window)
    fit_to_screen(window)
    window.show()
    if files:
        window.open_files(files)
    return _run(application, window)


def _run(application: QApplication, window: MainWindow) -> int:
    # Ctrl+C in the terminal must end the program; Python's own handler would wait for the next event.
    before = signal.signal(signal.SIGINT, signal.SIG_DFL)
    try:
        return int(application.exec())
    finally:
        # The loop may end without the window being closed, for instance when the desktop logs out.
        window.runner.stop()
        signal.signal(signal.SIGINT, before)
