"""The main window: puts state, runner and panels together."""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path

from PySide6.QtGui import QAction, QCloseEvent, QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QMainWindow, QWidget

from triage.errors import TriageError
from triage.logs.options import ReadOptions
from triage.progress import Progress
from triage.vehicle import Vehicle
from triage.walk.walk_state import WalkState
from ui.bench_opening import begin_bench, with_answers
from ui.comparing import Comparing
from ui.exercise_place import ExercisePlace
from ui.file_dialogs import DATABASE_SUFFIXES, choose_databases, choose_logs
from ui.keeping import Keeping
from ui.menus import build_menus, enable_commands, key_lines
from ui.opening import open_and_judge
from ui.presenters.recent import build_recent_rows
from ui.presenters.samples import Sample
from ui.presenters.steps import Place
from ui.recent_files import RecentRecording
from ui.runner import Reply, Runner
from ui.side_sheets import SideSheets
from ui.state.opening import Opened, OpenOrder
from ui.state.settings import Settings
from ui.state.window_state import (
    AskingPhase,
    BenchPhase,
    ExercisePhase,
    LoadingPhase,
    Page,
    Phase,
    RefusedPhase,
    ShowingPhase,
    StartPhase,
    WindowState,
)
from ui.widgets.bench_page import BenchPage
from ui.widgets.pages import LoadingPage
from ui.widgets.refusal_page import RefusalActions, RefusalPage
from ui.widgets.result_page import ResultPage
from ui.widgets.start_page import StartActions, StartPage
from ui.widgets.step_bar import StepBar
from ui.widgets.window_frame import WindowFrame
from ui.window_places import keep_places

Opener = Callable[[OpenOrder, Progress], Opened]


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
    keeping : Keeping or None
        Settings and recent recordings; None keeps nothing beyond this window.
    """

    def __init__(
        self,
        opener: Opener = open_and_judge,
        samples: tuple[Sample, ...] = (),
        *,
        options: ReadOptions | None = None,
        vehicle: Vehicle | None = None,
        keeping: Keeping | None = None,
    ) -> None:
        super().__init__()
        self.state = WindowState()
        self.keeping = keeping or Keeping()
        self.preferences = self.keeping.preferences
        self.runner = Runner(self)
        self._opener = opener
        self._options, self._vehicle = options or ReadOptions(), vehicle
        self._folder = ""
        self._sample_files = frozenset(sample.path for sample in samples)
        self._make_pages(samples)
        self.steps = StepBar(self.state, on_step=self.go_to)
        self.sheets = SideSheets(self.state, self.keeping, lambda: key_lines(self))
        self._put_together()
        self.exercise = ExercisePlace(self.state, samples, self._stack)
        self.comparing = Comparing(self.state, self.result_page.plots, self._opener, parent=self)
        self.actions_by_name: dict[str, QAction] = build_menus(self, samples)
        self.setAcceptDrops(True)
        self.setMinimumSize(480, 320)
        self._connect()
        self._show_phase(self.state.phase)

    def _make_pages(self, samples: tuple[Sample, ...]) -> None:
        self.start_page = StartPage(samples, self._start_actions())
        self.loading_page = LoadingPage(self.state, on_cancel=self.cancel)
        self.refusal_page = RefusalPage(self.state, self._refusal_actions())
        self.result_page = ResultPage(self.state)
        self.bench_page = BenchPage(on_leave=self.leave_bench)
        self._pages: dict[type, QWidget] = {
            StartPhase: self.start_page,
            LoadingPhase: self.loading_page,
            RefusedPhase: self.refusal_page,
            AskingPhase: self.refusal_page,
            ShowingPhase: self.result_page,
            BenchPhase: self.bench_page,
        }

    def _put_together(self) -> None:
        frame = WindowFrame(self.steps, self.sheets.panel)
        self._stack = frame.pages
        for page in self._pages.values():
            self._stack.addWidget(page)
        self.setCentralWidget(frame)

    def _connect(self) -> None:
        self.result_page.header.what_if_button.clicked.connect(self.sheets.turn_what_if)
        self.runner.progressed.connect(self.state.report)
        self.runner.finished.connect(self._take_reply)
        self.sheets.panel.closed.connect(lambda: self._focus_first(self.state.phase, again=True))
        self.state.phase_changed.subscribe(self._show_phase)
        self.state.page_changed.subscribe(self._show_page)
        self.state.verdict_changed.subscribe(lambda _opened: enable_commands(self))
        self.state.highlight_changed.subscribe(lambda _highlight: enable_commands(self))
        self.state.speed_unit_changed.subscribe(lambda unit: self.preferences.change(speed_unit=unit))
        self.preferences.changed.subscribe(self._take_settings)
        self._take_settings(self.preferences.settings)
        self.keeping.recent_changed.subscribe(self._show_recent)

    def _take_settings(self, settings: Settings) -> None:
        self.state.set_speed_unit(settings.speed_unit)
        if settings.colours != "system":
            self.state.set_dark(settings.colours == "dark")

    def _start_actions(self) -> StartActions:
        return StartActions(
            open_log=self.ask_for_files,
            walk_complaint=self.open_bench,
            start_exercise=lambda: self.go_to("exercise"),
            open_sample=self.open_sample,
            open_recent=self.open_recent,
            forget_recent=self.keeping.forget_recent,
        )

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
        order = OpenOrder(logs, options or self._options, self._vehicle, answers=self._answers_so_far())
        self._start(order.with_databases((*order.options.databases, *databases)))

    def _answers_so_far(self) -> WalkState:
        """Return what was answered about a car of which no recording was open yet; now there is one."""
        phase = self.state.phase
        if isinstance(phase, BenchPhase) and isinstance(phase.before, StartPhase):
            return phase.bench.view.state
        return WalkState()

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

    def open_recent(self, recording: RecentRecording) -> None:
        """Read and judge a recording once more, with the signal databases it was read with."""
        self.open_files([*recording.files, *recording.databases])

    def ask_how_to_read(self) -> None:
        """Let the user say how the recording on the screen is to be read."""
        phase = self.state.phase
        if isinstance(phase, ShowingPhase):
            log = phase.opened.result.log
            found = {corner: trace.source for corner, trace in log.wheels.items()}
            sources = [*found.values(), *(channel.source for channel in log.channels.values())]
            order = replace(phase.order, answers=phase.opened.answers)
            self.state.enter(AskingPhase(order, tuple(dict.fromkeys(sources)), found))

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
        files = choose_logs(self, self._folder)
        if files:
            self.open_files(files)

    def ask_for_database(self) -> None:
        """Let the user choose signal databases and read the recording again with them."""
        files = choose_databases(self, self._folder)
        if files:
            self._retry(lambda order: order.with_databases(tuple(files)))

    def ask_to_compare(self) -> None:
        """Let the user choose another recording, to be laid over the one on the screen."""
        files = choose_logs(self, self._folder)
        if files:
            self.comparing.begin(OpenOrder(tuple(files), self._options, self._vehicle))

    def _retry(self, change: Callable[[OpenOrder], OpenOrder]) -> None:
        phase = self.state.phase
        if isinstance(phase, ShowingPhase):
            self._start(replace(change(phase.order), answers=phase.opened.answers))
        elif isinstance(phase, LoadingPhase | RefusedPhase | AskingPhase):
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
            if not self._sample_files.intersection(phase.order.files):
                self.keeping.add(phase.order)
            self.state.enter(ShowingPhase(phase.order, reply.result))
        else:
            self.state.enter(StartPhase())

    # At the car --------------------------------------------------------------------------------------

    def open_bench(self) -> None:
        """Ask one question at a time, about what is open or without a recording."""
        phase = self.state.phase
        if not isinstance(phase, StartPhase | ShowingPhase):
            return
        files = phase.order.files if isinstance(phase, ShowingPhase) else ()
        result = phase.opened.result if isinstance(phase, ShowingPhase) else None
        try:
            own = bool(files) and self._is_own(files)
            answers = phase.opened.answers if isinstance(phase, ShowingPhase) else None
            bench = begin_bench(files, result, os.environ, beside_log=own, answers=answers)
        except TriageError as error:
            self._tell_refused_bench(error)
            return
        self.state.enter(BenchPhase(bench, phase))

    def _is_own(self, files: Sequence[str]) -> bool:
        """Tell whether answers may be kept beside these files: they are on the disk, and no samples."""
        return all(Path(file).is_file() for file in files) and not self._sample_files.intersection(files)

    def leave_bench(self) -> None:
        """Go back to where the questions were asked from; the verdict takes in the answers."""
        phase = self.state.phase
        if not isinstance(phase, BenchPhase):
            return
        before = phase.before
        if isinstance(before, ShowingPhase):
            result = with_answers(before.opened.result, phase.bench.view)
            answers = phase.bench.view.state
            before = replace(before, opened=replace(before.opened, result=result, answers=answers))
        self.state.enter(before)

    def _tell_refused_bench(self, error: TriageError) -> None:
        self.start_page.tell(str(error))
        self.statusBar().showMessage(" ".join(str(error).splitlines()))

    # Showing -----------------------------------------------------------------------------------------

    def go_to(self, place: Place) -> None:
        """Turn to a step of the job or to the exercises; from the car its answers go along."""
        if isinstance(self.state.phase, BenchPhase) and place != "complaint":
            self.leave_bench()
        elif isinstance(self.state.phase, ExercisePhase) and place != "exercise":
            self.exercise.leave()
        if place == "complaint":
            self.open_bench()
        elif place == "exercise":
            self.exercise.go_in()
        elif isinstance(self.state.phase, ShowingPhase):
            self.state.show_page(place)
            self.result_page.arrive()

    def go_back_to_finding(self) -> None:
        """Turn from the plots to the finding they are shown for."""
        self.result_page.go_back_to_finding()

    def turn_colours(self) -> None:
        """Change between dark and light, from now on whatever the system says."""
        self.preferences.change(colours="light" if self.state.dark else "dark")

    def _show_phase(self, phase: Phase) -> None:
        if not isinstance(phase, ExercisePhase):
            self._stack.setCurrentWidget(self._pages[type(phase)])
        name = self.tr("Wheel-end triage")
        about = _title_of(phase)
        self.setWindowTitle(f"{about} – {name}" if about else name)
        if isinstance(phase, StartPhase):
            self._show_recent(self.keeping.recent)
        enable_commands(self)
        self._focus_first(phase)

    def _show_page(self, _page: Page) -> None:
        enable_commands(self)

    def _show_recent(self, recent: tuple[RecentRecording, ...]) -> None:
        self.start_page.recent.show_rows(build_recent_rows(recent))

    def _focus_first(self, phase: Phase, *, again: bool = False) -> None:
        """Give the keyboard to what the page is about; ``again`` when it is shown already."""
        if isinstance(phase, StartPhase):
            self.start_page.open_button.setFocus()
        elif isinstance(phase, LoadingPhase):
            self.loading_page.cancel_button.setFocus()
        elif isinstance(phase, ShowingPhase):
            self.result_page.arrive()
        elif isinstance(phase, ExercisePhase):
            self.exercise.show()
        elif not isinstance(phase, BenchPhase):
            self.refusal_page.focus_first()
        elif again:
            self.bench_page.setFocus()
        else:
            self.bench_page.open_bench(phase.bench)

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
        """Keep the window's places, and end the worker before the window goes."""
        if self.keeping.folder is not None:
            keep_places(self, self.keeping.folder.places)
        self.hide()
        self.stop_work()
        super().closeEvent(event)

    def stop_work(self) -> None:
        """End all workers and clocks; harmless when they have ended."""
        self.runner.stop()
        self.exercise.stop()
        self.comparing.stop()


def _title_of(phase: Phase) -> str:
    if isinstance(phase, BenchPhase):
        return phase.bench.setup.title
    return "" if isinstance(phase, StartPhase | ExercisePhase) else phase.order.title
