"""The trainer's page: choose an exercise, work on it blind, hand in, and see what it was worth."""

from __future__ import annotations

import secrets
from collections.abc import Callable
from pathlib import Path
from typing import Final

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QKeySequence, QResizeEvent, QShortcut
from PySide6.QtWidgets import QFileDialog, QProgressBar, QScrollArea, QStackedWidget, QVBoxLayout, QWidget

from triage.corners import Corner
from triage.errors import TriageError
from triage.evidence.rule_tables import Rulebook
from triage.evidence.rulebook import load_rulebook
from triage.exercises.class_sheet import add_to_class_sheet, sheet_line
from triage.exercises.exercise import LARGEST_SEED, Exercise, Wish
from triage.exercises.exercise_file import SUFFIX
from triage.texts import as_text, capital_first, error_lines, shaped
from ui.exercising import Source, from_file, from_sample, from_wish, prepare, score
from ui.presenters.exercise import cause_choices
from ui.presenters.samples import Sample
from ui.runner import Reply, Runner
from ui.state.exercise import Choosing, Debrief, Debriefing, ExerciseDesk, Prepared, Stage, Waiting, Working
from ui.state.opening import Opened
from ui.state.window_state import ProgressPoint, WindowState
from ui.widgets.exercise_debrief import DebriefActions, ExerciseDebrief
from ui.widgets.exercise_library import ExerciseLibrary, LibraryActions
from ui.widgets.exercise_work import ExerciseWork, WorkActions
from ui.widgets.labels import make_button, make_label
from ui.widgets.pages import centred_card
from ui.widgets.speaking import say

NARROWEST_PX: Final = 920
LOWEST_LINES: Final = 45
"""Below this width, and this height in lines of text, a page is scrolled rather than squeezed."""

CANNOT_BE_MADE: Final = "other"
"""The cause that stands for everything not in the list; the simulator cannot build it in."""


class ExercisePage(QWidget):
    """Exercises; :meth:`arrive` when it is shown, :meth:`stop` before the window goes.

    Parameters
    ----------
    state : WindowState
        Colours and unit of the window.
    on_open : callable
        Takes the title and the judged recording of a finished exercise, to be shown on the road-test page.
    on_leave : callable
        Called when the user wants to leave the page.
    samples : tuple of Sample
        Sample logs that are offered as exercises.
    draw_seed : callable
        Gives the number from which all that is left to chance follows; replaced in tests.
    """

    def __init__(
        self,
        state: WindowState,
        *,
        on_open: Callable[[str, Opened], object],
        on_leave: Callable[[], object],
        samples: tuple[Sample, ...] = (),
        draw_seed: Callable[[], int] = lambda: secrets.randbelow(LARGEST_SEED),
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.desk = ExerciseDesk()
        self._on_open, self._on_leave = on_open, on_leave
        self._runner: Runner | None = None
        self._rulebook: Rulebook | None = None
        self._folder = ""
        self._asked_to_leave = False
        self.library = ExerciseLibrary(samples, self._library_actions(draw_seed))
        self.waiting = _WaitingCard(self._stop_waiting)
        self.work = ExerciseWork(state, self._work_actions())
        self.debrief = ExerciseDebrief(state, self._debrief_actions())
        self.note = make_label("caution")
        self._lay_out()
        self.desk.stage_changed.subscribe(self._show)
        self.desk.note_changed.subscribe(self._show_note)
        self._show_note("")

    def arrive(self) -> None:
        """Load the rule book, and give the keyboard to the first control."""
        if self._rulebook is None:
            try:
                self._rulebook = load_rulebook()
            except TriageError as error:
                self.desk.tell(say(error_lines(error)))
                return
            known = say(cause_choices(self._rulebook))
            self.library.offer_causes(tuple(one for one in known if one[0] != CANNOT_BE_MADE))
        self._focus(self.desk.stage)

    def stop(self) -> None:
        """Stop what the page is doing and end its worker; it can be used again afterwards."""
        self.work.replay.pause()
        if self._runner is not None:
            self._runner.stop()
            self._runner.deleteLater()
            self._runner = None

    @property
    def runner(self) -> Runner:
        """The worker; made when it is first needed, for most windows never open this page."""
        if self._runner is None:
            self._runner = Runner(self)
            self._runner.progressed.connect(self.waiting.report)
            self._runner.finished.connect(self._take_reply)
        return self._runner

    @property
    def idle(self) -> bool:
        """Whether no worker runs."""
        return self._runner is None or self._runner.idle

    # Making and scoring -------------------------------------------------------------------------------

    def begin(self, source: Source, *, told: bool = False) -> None:
        """Make an exercise and put the trainee before its car."""
        rulebook = self._rulebook
        if rulebook is None:
            return
        self.desk.wait(self.tr("Driving the road test"))
        self.runner.submit(lambda progress: prepare(source, rulebook, told=told, progress=progress))

    def hand_in(self, corner: Corner | None, cause: str, confidence: float) -> None:
        """Score an answer and tell the truth."""
        stage = self.desk.stage
        attempt = self.desk.hand_in(corner, cause, confidence)
        if attempt is None or not isinstance(stage, Working):
            return
        self.work.replay.pause()
        self.desk.wait(self.tr("Scoring your answer"))
        self.runner.submit(lambda progress: score(stage.prepared, attempt, progress))

    def _take_reply(self, reply: Reply[object]) -> None:
        if reply.error is not None:
            self.desk.fail(reply.error)
        elif isinstance(reply.result, Prepared):
            self.desk.begin(reply.result)
        elif isinstance(reply.result, Debrief):
            self.desk.debrief(reply.result)
        else:
            self.desk.stop_waiting()

    def _stop_waiting(self) -> None:
        self.runner.cancel()
        self.desk.stop_waiting()

    # What the controls do -----------------------------------------------------------------------------

    def _library_actions(self, draw_seed: Callable[[], int]) -> LibraryActions:
        return LibraryActions(
            make=lambda wishes, told: self._make(wishes, told=told),
            take_sample=lambda path, told: self.begin(from_sample(path), told=told),
            open_file=lambda told: self.ask_for_file(told=told),
            leave=self._on_leave,
            draw_seed=draw_seed,
        )

    def _work_actions(self) -> WorkActions:
        return WorkActions(
            choose_corner=self.desk.choose_corner,
            do_check=self.desk.do_check,
            hand_in=self.hand_in,
            save=self.ask_where_to_save,
            leave=self._give_up,
        )

    def _debrief_actions(self) -> DebriefActions:
        return DebriefActions(
            another=self.desk.leave,
            open_recording=self._open_recording,
            save=self.ask_where_to_save,
            add_to_sheet=self.ask_for_sheet,
        )

    def _make(self, wishes: Wish, *, told: bool) -> None:
        self.begin(from_wish(wishes), told=told)

    def _give_up(self) -> None:
        """Leave the car; what was done on it is lost, so it is asked for twice."""
        stage = self.desk.stage
        if isinstance(stage, Working) and stage.attempt.done and not self._asked_to_leave:
            self._asked_to_leave = True
            self.desk.tell(self.tr("What you found will be forgotten. Press “Give up” once more to do so."))
            return
        self.work.replay.pause()
        self.desk.leave()

    def _open_recording(self) -> None:
        stage = self.desk.stage
        if isinstance(stage, Debriefing):
            self._on_open(say(stage.prepared.exercise.title), stage.debrief.opened)

    # Files --------------------------------------------------------------------------------------------

    def ask_for_file(self, *, told: bool = False) -> None:
        """Let the user choose a saved exercise."""
        path, _ = QFileDialog.getOpenFileName(
            self, self.tr("Open a saved exercise"), self._folder, self._exercise_filter()
        )
        if path:
            self._folder = str(Path(path).parent)
            self.begin(from_file(path), told=told)

    def ask_where_to_save(self) -> None:
        """Let the user choose where the exercise is saved."""
        exercise = self._exercise
        if exercise is None:
            return
        name = str(Path(self._folder) / f"{exercise.id}{SUFFIX}")
        path, _ = QFileDialog.getSaveFileName(
            self, self.tr("Save the exercise"), name, self._exercise_filter()
        )
        if path:
            self.save(exercise, path)

    def save(self, exercise: Exercise, path: str) -> None:
        """Save an exercise, and tell where or why not."""
        from triage.exercises.exercise_file import write_exercise  # noqa: PLC0415 - brings the simulator

        try:
            write_exercise(exercise, path)
        except TriageError as error:
            self.desk.tell(say(error_lines(error)))
            return
        self._folder = str(Path(path).parent)
        self.desk.tell(self.tr("Saved as {}; the answer cannot be read in it by accident.").format(path))

    def ask_for_sheet(self, trainee: str) -> None:
        """Let the user choose a class sheet, an old one or a new one."""
        if not trainee.strip():
            self.desk.tell(self.tr("Write the name of the trainee first."))
            self.debrief.name.setFocus()
            return
        path, _ = QFileDialog.getSaveFileName(
            self,
            self.tr("Choose a class sheet; a line is added to an old one"),
            str(Path(self._folder) / "class-sheet.csv"),
            self.tr("Class sheets (*.csv)"),
            "",
            QFileDialog.Option.DontConfirmOverwrite,
        )
        if path:
            self.add_to_sheet(trainee, path)

    def add_to_sheet(self, trainee: str, path: str) -> None:
        """Add the trainee's line to a class sheet, and tell so."""
        stage = self.desk.stage
        if not isinstance(stage, Debriefing):
            return
        try:
            line = sheet_line(trainee, stage.debrief.attempt, stage.debrief.score)
            count = add_to_class_sheet(line, path)
        except TriageError as error:
            self.desk.tell(say(error_lines(error)))
            return
        self._folder = str(Path(path).parent)
        self.desk.tell(self.tr("Added to {}, which has {} answers now.").format(path, count))

    @property
    def _exercise(self) -> Exercise | None:
        stage = self.desk.stage
        return stage.prepared.exercise if isinstance(stage, Working | Debriefing) else None

    def _exercise_filter(self) -> str:
        return self.tr("Exercises (*.exercise.json);;All files (*)")

    # Showing ------------------------------------------------------------------------------------------

    def _lay_out(self) -> None:
        self._stack = QStackedWidget()
        self._pages: dict[type, QWidget] = {
            Choosing: self.library,
            Waiting: self.waiting,
            Working: _Scrolled(self.work),
            Debriefing: _Scrolled(self.debrief),
        }
        for page in self._pages.values():
            self._stack.addWidget(page)
        self.note.setContentsMargins(12, 4, 12, 4)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self._stack, 1)
        column.addWidget(self.note)
        shortcut = QShortcut(QKeySequence("Esc"), self.library)
        shortcut.setContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
        shortcut.setWhatsThis(self.tr("Leave the exercises"))
        shortcut.activated.connect(self._on_leave)

    def _show(self, stage: Stage) -> None:
        self._asked_to_leave = False
        page = self._pages[type(stage)]
        arriving = self._stack.currentWidget() is not page
        self._stack.setCurrentWidget(page)
        if isinstance(stage, Waiting):
            self.waiting.begin(stage.what)
        elif isinstance(stage, Working):
            self.work.show_working(stage)
        elif isinstance(stage, Debriefing):
            self.debrief.show_debrief(stage)
        if arriving:
            self._focus(stage)

    def _focus(self, stage: Stage) -> None:
        if isinstance(stage, Choosing):
            self.library.arrive()
        elif isinstance(stage, Waiting):
            self.waiting.stop_button.setFocus()
        elif isinstance(stage, Working):
            self.work.shelf.list.setFocus()
        else:
            self.debrief.arrive()

    def _show_note(self, note: str) -> None:
        self.note.setText(say(note))
        self.note.setVisible(bool(note))


class _Scrolled(QScrollArea):
    """Lets a small window, or a large text, show a page piece by piece.

    Qt's own resizing would give a page with wrapped texts the height it likes best, not the one there is.
    """

    def __init__(self, page: QWidget) -> None:
        super().__init__()
        self._page = page
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setWidget(page)

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Give the page all the room there is, and at least what it needs."""
        super().resizeEvent(event)
        smallest = QSize(NARROWEST_PX, LOWEST_LINES * self.fontMetrics().height())
        self._page.resize(self.viewport().size().expandedTo(smallest))


class _WaitingCard(QWidget):
    """The computer works."""

    def __init__(self, on_stop: Callable[[], object]) -> None:
        super().__init__()
        card = centred_card(self)
        self.title = make_label("headline", larger_by=1.3)
        self.stage = make_label("muted")
        self.bar = QProgressBar()
        self.bar.setRange(0, 1000)
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName(self.tr("Progress"))
        self.stop_button = make_button(self.tr("Stop  (Esc)"), on_stop)
        for widget in (self.title, self.bar, self.stage):
            card.addWidget(widget)
        card.addWidget(self.stop_button, 0, Qt.AlignmentFlag.AlignLeft)
        shortcut = QShortcut(QKeySequence("Esc"), self)
        shortcut.setContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
        shortcut.setWhatsThis(self.tr("Stop the work"))
        shortcut.activated.connect(on_stop)

    def begin(self, what: str) -> None:
        """Name the work."""
        self.title.setText(what)
        self.report(ProgressPoint(0.0, self.tr("Starting")))

    def report(self, point: ProgressPoint) -> None:
        """Show how far it is."""
        self.bar.setValue(round(1000 * point.fraction))
        stage = say(shaped(as_text(point.stage), capital_first))
        self.stage.setText(f"{100 * point.fraction:.0f} % · {stage}")
