"""The main window: puts state, runner and panels together."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtGui import QAction, QCloseEvent, QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QMainWindow, QWidget

from triage.errors import TriageError
from triage.logs.options import ReadOptions
from triage.progress import Progress
from triage.texts import error_lines
from triage.vehicle import Vehicle
from triage.walk.walk_state import WalkState
from ui.bench_place import BenchPlace
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
from ui.result_place import ResultPlace
from ui.runner import Reply, Runner
from ui.side_sheets import SideSheets
from ui.state.opening import Opened, OpenOrder
from ui.state.settings import Settings
from ui.state.window_state import (
    AskingPhase,
    BenchPhase,
    ExercisePhase,
    LoadingPhase,
    Phase,
    RefusedPhase,
    ShowingPhase,
    StartPhase,
    WindowState,
)
from ui.warming import Warming
from ui.widgets.pages import LoadingPage
from ui.widgets.refusal_page import RefusalActions, RefusalPage
from ui.widgets.speaking import say
from ui.widgets.start_page import StartActions, StartPage
from ui.widgets.step_bar import StepBar
from ui.widgets.window_frame import WindowFrame
from ui.window_places import keep_places

if TYPE_CHECKING:
    from ui.widgets.bench_page import BenchPage
    from ui.widgets.result_page import ResultPage

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

    Attributes
    ----------
    warming : Warming
        Makes what the start page does without; the program begins it when the window is shown.
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
        self._make_places(samples)
        self.comparing = Comparing(self.state, lambda: self.result_page.plots, self._opener, parent=self)
        self.actions_by_name: dict[str, QAction] = build_menus(self, samples)
        self.setAcceptDrops(True)
        self.setMinimumSize(480, 320)
        self._connect()
        self._show_phase(self.state.phase)

    def _make_pages(self, samples: tuple[Sample, ...]) -> None:
        self.start_page = StartPage(samples, self._start_actions())
        self.loading_page = LoadingPage(self.state, on_cancel=self.cancel)
        self.refusal_page = RefusalPage(self.state, self._refusal_actions())
        self._pages: dict[type, QWidget] = {
            StartPhase: self.start_page,
            LoadingPhase: self.loading_page,
            RefusedPhase: self.refusal_page,
            AskingPhase: self.refusal_page,
        }

    def _put_together(self) -> None:
        self._frame = WindowFrame(self.steps, self.sheets.panel)
        self._stack = self._frame.pages
        for page in self._pages.values():
            self._stack.addWidget(page)
        self.setCentralWidget(self._frame)

    def _make_places(self, samples: tuple[Sample, ...]) -> None:
        """Prepare what leads to the pages that the start page does without."""
        self.result = ResultPlace(self.state, self._frame)
        self.bench = BenchPlace(
            self.state, self._frame, samples=self._sample_files, on_refused=self._tell_refused_bench
        )
        self.exercise = ExercisePlace(self.state, samples, self._frame)
        pieces = (self.result.make_plots, lambda: self.result_page, lambda: self.bench_page)
        self.warming = Warming(pieces, self)

    @property
    def result_page(self) -> ResultPage:
        """Road test and verdict."""
        return self.result.page

    @property
    def bench_page(self) -> BenchPage:
        """The questions at the car."""
        return self.bench.page

    def _connect(self) -> None:
        self.result.when_made(
            lambda page: page.header.what_if_button.clicked.connect(self.sheets.turn_what_if)
        )
        self.runner.progressed.connect(self.state.report)
        self.runner.finished.connect(self._take_reply)
        self.sheets.panel.closed.connect(lambda: self._focus_first(self.state.phase, again=True))
        self.state.phase_shown.subscribe(self._show_phase)
        self.state.page_changed.subscribe(lambda _page: enable_commands(self))
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
            walk_complaint=lambda: self.go_to("complaint"),
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
        loading = LoadingPhase(order)
        self.state.enter(loading)
        # What is loaded and made while a recording is read would hold the window up for longer.
        self.warming.then(lambda error: self._read(loading, error))

    def _read(self, loading: LoadingPhase, error: Exception | None) -> None:
        if self.state.phase is not loading:  # given up meanwhile
            return
        if error is not None:
            self.state.enter(RefusedPhase(loading.order, error))
            return
        opener, order = self._opener, loading.order
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

    def _tell_refused_bench(self, error: TriageError) -> None:
        self.start_page.tell(say(error_lines(error)))
        self.statusBar().showMessage(" ".join(say(error_lines(error)).splitlines()))

    # Showing -----------------------------------------------------------------------------------------

    def go_to(self, place: Place) -> None:
        """Turn to a step of the job or to the exercises; from the car its answers go along."""
        if isinstance(self.state.phase, BenchPhase) and place != "complaint":
            self.bench.leave()
        elif isinstance(self.state.phase, ExercisePhase) and place != "exercise":
            self.exercise.leave()
        if place == "complaint":
            self.bench.go_in()
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
        page = self.result_page if isinstance(phase, ShowingPhase) else self._pages.get(type(phase))
        if page is not None:
            self._stack.setCurrentWidget(page)
        name = self.tr("Wheel-end triage")
        about = _title_of(phase)
        self.setWindowTitle(f"{about} – {name}" if about else name)
        if isinstance(phase, StartPhase):
            self._show_recent(self.keeping.recent)
        enable_commands(self)
        self._focus_first(phase)

    def _show_recent(self, recent: tuple[RecentRecording, ...]) -> None:
        self.start_page.recent.show_rows(say(build_recent_rows(recent)))

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
            self.bench.show(phase.bench)

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
        for part in (self.warming, self.runner, self.exercise, self.comparing, self.result):
            part.stop()


def _title_of(phase: Phase) -> str:
    if isinstance(phase, BenchPhase):
        return say(phase.bench.setup.title)
    return "" if isinstance(phase, StartPhase | ExercisePhase) else phase.order.title
