"""The trainer's page by keyboard alone: from the choice of an exercise to the score, and into files."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, Qt
from PySide6.QtGui import QImage, QShortcut
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QComboBox, QFileDialog, QSlider, QWidget

from triage.errors import RulebookError
from triage.exercises.class_sheet import read_class_sheet
from triage.exercises.exercise import Wish
from triage.exercises.making import simulated_causes
from ui.exercising import from_file, from_wish
from ui.presenters.exercise_sketch import plan_sketch
from ui.presenters.samples import Sample
from ui.state.exercise import Choosing, Debriefing, Waiting, Working
from ui.state.window_state import WindowState
from ui.theme import DARK, LIGHT, theme_for
from ui.widgets import exercise_page
from ui.widgets.exercise_page import ExercisePage
from ui.widgets.replay_plot import ReplayPlot
from ui.widgets.ring_sketch import RingSketch
from ui.widgets.styling import HAND_PX, apply_theme

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")
"""The screen that need not exist has no windows to size."""

SAMPLES = Path(__file__).parents[3] / "sample_logs"
DIRTY = Wish(7, "encoder-debris", "RL", 0.6, 60.0)


class Heard:
    """What the page told the window."""

    def __init__(self) -> None:
        self.opened: list[tuple[str, object]] = []
        self.left = 0

    def leave(self) -> None:
        self.left += 1


@pytest.fixture
def heard() -> Heard:
    return Heard()


@pytest.fixture
def page(qtbot: QtBot, heard: Heard) -> Iterator[ExercisePage]:
    sample = Sample(str(SAMPLES / "pretzel-debris-rear-left.csv.gz"), "Pretzel", "Lamp after the road works.")
    apply_theme(QApplication.instance(), theme_for(dark=False))
    page = ExercisePage(
        WindowState(),
        on_open=lambda title, opened: heard.opened.append((title, opened)),
        on_leave=heard.leave,
        samples=(sample,),
        draw_seed=lambda: 7,
    )
    page.resize(1280, 660)
    page.show()
    page.arrive()
    yield page
    page.stop()
    assert page.idle
    page.close()
    page.deleteLater()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)


@pytest.fixture
def working(page: ExercisePage, qtbot: QtBot) -> ExercisePage:
    """A trainee before a car with dirt on the rear left ring."""
    with qtbot.waitSignal(page.runner.finished):
        page.begin(from_wish(DIRTY))
    assert isinstance(page.desk.stage, Working)
    return page


def press(key: Qt.Key | str, times: int = 1) -> None:
    """Press a key on whatever has the keyboard."""
    for _ in range(times):
        widget = QApplication.focusWidget()
        assert widget is not None
        QTest.keyClick(widget, key)


def test_a_blind_exercise_by_keyboard_alone(page: ExercisePage, qtbot: QtBot, heard: Heard) -> None:
    with qtbot.waitSignal(page.runner.finished):
        press(Qt.Key.Key_Return)  # "Surprise me" has the keyboard
    stage = page.desk.stage
    assert isinstance(stage, Working)
    hidden = stage.prepared.exercise.hidden
    assert hidden.cause not in page.work.complaint.text()

    press("P")
    assert page.work.replay.replay.running
    press("P")
    assert not page.work.replay.replay.running
    press(".", 3)
    assert page.work.replay.replay.at_s > 0.0

    press("3")
    while not page.work.shelf.do_button.isEnabled():  # what the driver told already
        press(Qt.Key.Key_Down)
    press(Qt.Key.Key_Return)
    assert page.work.shelf.wheels.buttons["RL"].isChecked()
    assert len(page.desk.stage.attempt.done) == 1
    assert "\N{NO-BREAK SPACE}min)" in page.work.found.text()

    press("A")
    causes = page.work.answer.cause
    press(Qt.Key.Key_Down, causes.findData(hidden.cause))
    assert causes.currentData() == hidden.cause
    if page.work.answer.corner.isEnabled():
        press(Qt.Key.Key_Tab)
        press(Qt.Key.Key_Down, page.work.answer.corner.findData(hidden.corner))
    press(Qt.Key.Key_Tab)
    press(Qt.Key.Key_Up)
    press(Qt.Key.Key_Tab)
    with qtbot.waitSignal(page.runner.finished):
        press(Qt.Key.Key_Return)
    stage = page.desk.stage
    assert isinstance(stage, Debriefing)
    assert stage.debrief.score.right
    assert stage.debrief.attempt.answer.confidence == pytest.approx(0.75)
    assert page.debrief.score.rows[-1][1].text().endswith("of 100")

    press(Qt.Key.Key_Return)  # once more by mistake: nothing happens
    assert isinstance(page.desk.stage, Debriefing)
    page.debrief.open_button.setFocus()
    press(Qt.Key.Key_Return)
    assert heard.opened == [(stage.prepared.exercise.title, stage.debrief.opened)]
    press(Qt.Key.Key_Escape)
    assert isinstance(page.desk.stage, Choosing)
    press(Qt.Key.Key_Escape)
    assert heard.left == 1


def test_nothing_tells_the_fault_before_it_is_told(working: ExercisePage) -> None:
    told = " ".join(
        str(getattr(widget, name)())
        for widget in working.work.findChildren(QWidget)
        for name in ("text", "toolTip", "accessibleName", "accessibleDescription")
        if hasattr(widget, name) and widget.isVisible()
    )
    assert "debris" not in told
    assert "Built in" not in told
    assert "Dirt on the encoder" not in told


def test_the_answer_is_shown_to_a_class_from_the_start(page: ExercisePage, qtbot: QtBot) -> None:
    page.library.told.setChecked(True)
    with qtbot.waitSignal(page.runner.finished):
        page.library.sample_buttons[0].click()
    assert page.work.told.isVisible()
    assert "Dirt on the encoder, rear left" in page.work.told.text()
    assert "Lamp after" not in page.work.complaint.text()  # the index of the folder counts
    assert "road works" in page.work.complaint.text()


def test_what_is_chosen_is_made(page: ExercisePage, qtbot: QtBot) -> None:
    library = page.library
    assert library.cause.count() == len(simulated_causes()) + 1
    library.cause.setCurrentIndex(library.cause.findData("air-gap"))
    library.corner.setCurrentIndex(library.corner.findData("FR"))
    library.severity.setCurrentIndex(2)
    library.car.setValue(4)
    library.drive.setValue(9)
    library.length.setCurrentIndex(0)
    assert library.wishes == Wish(7, "air-gap", "FR", 0.5, 90.0, 4, 9)
    with qtbot.waitSignal(page.runner.finished):
        library.make_button.click()
    assert page.desk.stage.prepared.exercise.hidden.cause == "air-gap"


def test_costs_run_and_known_answers_are_free(working: ExercisePage) -> None:
    shelf = working.work.shelf
    shelf.choose("rock-wheel")
    assert shelf.cautions.text().startswith("⚠")
    shelf.do_button.click()
    assert "7 min" in shelf.spent.text()
    assert not shelf.do_button.isEnabled()
    shelf.list.itemActivated.emit(shelf.list.currentItem(), 0)
    assert len(working.desk.stage.attempt.done) == 1
    assert shelf.chosen == "rock-wheel"
    working.desk.choose_corner("RR")
    assert shelf.do_button.isEnabled()


def test_giving_up_is_asked_for_twice_when_something_was_done(working: ExercisePage) -> None:
    working.desk.do_check("rock-wheel")
    press(Qt.Key.Key_Escape)
    assert isinstance(working.desk.stage, Working)
    assert "once more" in working.note.text()
    press(Qt.Key.Key_Escape)
    assert isinstance(working.desk.stage, Choosing)
    assert working.note.text() == ""


def test_scoring_can_be_stopped_and_nothing_is_lost(working: ExercisePage, qtbot: QtBot) -> None:
    working.desk.do_check("rock-wheel")
    working.hand_in("RL", "encoder-debris", 0.8)
    assert isinstance(working.desk.stage, Waiting)
    press(Qt.Key.Key_Escape)
    assert isinstance(working.desk.stage, Working)
    assert len(working.desk.stage.attempt.done) == 1
    with qtbot.waitSignal(working.runner.finished):
        working.hand_in("RL", "encoder-debris", 0.8)
    assert isinstance(working.desk.stage, Debriefing)


def test_an_exercise_is_saved_and_opened_again(
    working: ExercisePage, qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = str(tmp_path / "for-you.exercise.json")
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args: (path, ""))
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_args: (path, ""))
    exercise = working.desk.stage.prepared.exercise
    working.work.save_button.click()
    assert path in working.note.text()
    working.desk.leave()
    with qtbot.waitSignal(working.runner.finished):
        working.library.file_button.click()
    assert working.desk.stage.prepared.exercise == exercise


def test_hostile_files_are_told_in_words(page: ExercisePage, qtbot: QtBot, tmp_path: Path) -> None:
    path = tmp_path / "x.exercise.json"
    path.write_bytes(b"\xff")
    with qtbot.waitSignal(page.runner.finished):
        page.begin(from_file(path))
    assert isinstance(page.desk.stage, Choosing)
    assert "x.exercise.json" in page.note.text()
    assert page.note.isVisible()


def test_the_class_sheet_grows(
    working: ExercisePage, qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "class.csv"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args: (str(path), ""))
    with qtbot.waitSignal(working.runner.finished):
        working.hand_in("RL", "encoder-debris", 0.8)
    working.debrief.sheet_button.click()
    assert not path.exists()  # without a name
    assert "name" in working.note.text()
    for name in ("Ada", "=Bob"):
        working.debrief.name.setText(name)
        working.debrief.sheet_button.click()
    assert [line.cells[0] for line in read_class_sheet(path)] == ["Ada", "'=Bob"]
    working.add_to_sheet("Ada", str(tmp_path / "no folder" / "class.csv"))
    assert "folder" in working.note.text()


def test_a_broken_rule_book_is_told(
    page: ExercisePage, monkeypatch: pytest.MonkeyPatch, heard: Heard
) -> None:
    def refuse() -> None:
        raise RulebookError(("checks.toml: line 3",))

    monkeypatch.setattr(exercise_page, "load_rulebook", refuse)
    page._rulebook = None
    page.arrive()
    assert "line 3" in page.note.text()
    page.begin(from_wish(DIRTY))
    assert isinstance(page.desk.stage, Choosing)


def test_every_control_has_a_name_and_is_large_enough(working: ExercisePage) -> None:
    for control in working.work.findChildren(QWidget):
        if control.isVisible() and isinstance(control, QAbstractButton | QComboBox | QSlider):
            if control.objectName().startswith("qt_") or control.focusPolicy() == Qt.FocusPolicy.NoFocus:
                continue
            assert control.accessibleName() or control.text(), control
            assert control.height() >= 24, control
    hands = (*working.work.shelf.wheels.buttons.values(), working.work.shelf.do_button)
    assert all(button.height() >= HAND_PX for button in hands)
    assert working.work.answer.button.height() >= HAND_PX


def test_every_key_says_what_it_does(page: ExercisePage) -> None:
    for view in (page.library, page.work, page.debrief, page.waiting):
        keys = [one.key().toString() for one in view.findChildren(QShortcut)]
        assert len(set(keys)) == len(keys) > 0
        assert all(one.whatsThis() for one in view.findChildren(QShortcut))


@pytest.mark.parametrize("size", [(1280, 640), (1920, 1000), (640, 360)])
def test_nothing_makes_the_window_larger(working: ExercisePage, size: tuple[int, int]) -> None:
    working.resize(*size)
    assert (working.width(), working.height()) == size


def test_the_future_is_hidden(working: ExercisePage) -> None:
    replay: ReplayPlot = working.work.replay
    for theme, dark in ((LIGHT, False), (DARK, True)):
        replay._show_dark(dark)
        replay.replay.scrub(20.0)
        image: QImage = replay.canvas.grab().toImage()
        box = replay.plot.plot.getViewBox()
        begin = round(box.mapViewToScene(box.viewRect().topLeft()).x())
        now = round(begin + box.width() * 20.0 / 60.0)
        lines = set(theme.corners.values())
        assert _colours(image, begin + 4, now - 4) & lines
        assert not _colours(image, now + 40, image.width()) & lines  # the names stand before


def test_the_replay_stands_still_while_nobody_looks(working: ExercisePage) -> None:
    working.work.replay.toggle()
    working.hide()
    assert not working.work.replay.replay.running


def test_the_clock_of_the_window_drives_the_replay(working: ExercisePage, qtbot: QtBot) -> None:
    clock = [100.0]
    replay = working.work.replay
    replay._clock_s = lambda: clock[0]
    replay.change_speed(+4)  # 20 times
    replay.toggle()
    clock[0] += 1.5
    qtbot.waitUntil(lambda: replay.replay.at_s > 29.0, timeout=2000)
    assert replay.replay.at_s == pytest.approx(replay.replay.begin_s + 30.0)
    assert replay.clock.text().startswith("0:30.0")
    replay.slider.setValue(0)
    assert replay.replay.at_s == replay.replay.begin_s


@pytest.mark.parametrize(
    "cause", ["encoder-debris", "encoder-runout", "harness-fault", "air-gap", "common-cause"]
)
def test_the_fault_is_drawn_in_its_colour(
    cause: str, qtbot: QtBot, truth_of: Callable[[str], object]
) -> None:
    sketch = RingSketch()
    qtbot.addWidget(sketch)
    sketch.resize(300, 300)
    sketch.show_plan(plan_sketch(truth_of(cause)))
    drawn = sketch.grab().toImage()
    sketch.show_plan(plan_sketch(truth_of("no-fault-found")))
    sound = sketch.grab().toImage()
    assert _pixels(drawn, LIGHT.suspect) > 20
    assert _pixels(sound, LIGHT.suspect) == 0
    assert "sound" in sketch.accessibleName()


@pytest.fixture
def truth_of() -> Callable[[str], object]:
    from triage.evidence.rulebook import load_rulebook
    from ui.exercising import prepare

    rulebook = load_rulebook()

    def make(cause: str) -> object:
        wishes = Wish(7, cause, "RL", 0.6, 30.0)
        return prepare(from_wish(wishes), rulebook, told=False, progress=lambda *_: None).test.truth

    return make


def _colours(image: QImage, begin: int, end: int) -> set[str]:
    return {image.pixelColor(x, y).name() for x in range(begin, end) for y in range(image.height())}


def _pixels(image: QImage, colour: str) -> int:
    return sum(
        image.pixelColor(x, y).name() == colour for x in range(image.width()) for y in range(image.height())
    )
