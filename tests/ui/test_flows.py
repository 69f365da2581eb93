"""The ways through the window by keys alone, with the real engine and the recordings that come with it."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from ui.presenters.samples import default_samples_folder, find_samples
from ui.state.window_state import BenchPhase, ExercisePhase, ShowingPhase, StartPhase
from ui.window import MainWindow

WindowFrom = Callable[..., MainWindow]
Key, Ctrl = Qt.Key, Qt.KeyboardModifier.ControlModifier
SAMPLE = "crumpet-damage-front-left"


@pytest.fixture
def at_start(
    window_from: WindowFrom, qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> MainWindow:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    samples = tuple(one for one in find_samples(default_samples_folder()) if SAMPLE in one.path)
    window = window_from(samples=samples)
    with qtbot.waitActive(window):
        window.activateWindow()
    return window


def press(qtbot: QtBot, key: Qt.Key, modifier: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier) -> None:
    """Press a key where the keyboard is."""
    widget = QApplication.focusWidget()
    assert widget is not None, "nothing has the keyboard"
    qtbot.keyClick(widget, key, modifier)


def go_to(qtbot: QtBot, widget: QWidget) -> None:
    """Press Tab until that has the keyboard."""
    for _ in range(60):
        if widget.hasFocus():
            return
        press(qtbot, Key.Key_Tab)
    pytest.fail(f"Tab does not reach {widget}")


def test_from_a_sample_to_the_verdict_its_evidence_its_place_and_back(
    at_start: MainWindow, qtbot: QtBot
) -> None:
    window, page = at_start, at_start.result_page
    assert window.start_page.open_button.hasFocus()
    go_to(qtbot, window.start_page.sample_buttons[0])
    with qtbot.waitSignal(window.runner.finished, timeout=30_000):
        press(qtbot, Key.Key_Return)
    assert isinstance(window.state.phase, ShowingPhase)
    assert page.header.title.text().startswith("Suspected: front left")
    assert page.ranking.table.hasFocus()
    press(qtbot, Key.Key_3, Ctrl)
    evidence = page.details.evidence.list
    assert evidence.hasFocus()
    press(qtbot, Key.Key_Down)
    press(qtbot, Key.Key_Return)
    highlight = window.state.highlight
    assert highlight is not None
    begin_s, end_s = page.plots.view_s
    assert begin_s <= highlight.span[0] <= highlight.span[1] <= end_s
    press(qtbot, Key.Key_F7)
    assert page.plots.canvas.hasFocus()
    assert page.finding_band.isVisible()
    press(qtbot, Key.Key_F3)
    press(qtbot, Key.Key_F4)
    assert window.state.page == "verdict"
    assert evidence.hasFocus()
    assert evidence.currentIndex().row() == 1


def test_from_a_complaint_to_the_next_step(at_start: MainWindow, qtbot: QtBot) -> None:
    window = at_start
    go_to(qtbot, window.start_page.bench_button)
    press(qtbot, Key.Key_Return)
    phase = window.state.phase
    assert isinstance(phase, BenchPhase)
    card = window.bench_page.question
    asked = []
    for _ in range(3):
        asked.append(card.title.text())
        if not phase.bench.view.confirmed:
            press(qtbot, Key.Key_Return)
        press(qtbot, Key.Key_1)
    assert len(phase.bench.view.state.given) == 3
    assert card.title.text() not in asked
    assert card.why.text(), "the next step comes with its reason"
    assert window.steps.buttons["complaint"].told == "3 answers"
    press(qtbot, Key.Key_Escape)
    assert window.state.phase == StartPhase()


def test_what_if_by_keys(at_start: MainWindow, qtbot: QtBot) -> None:
    window, page = at_start, at_start.result_page
    with qtbot.waitSignal(window.runner.finished, timeout=30_000):
        window.open_sample(find_sample())
    press(qtbot, Key.Key_I, Ctrl)
    panel = window.sheets.what_if
    assert panel.check.hasFocus()
    press(qtbot, Key.Key_Down)
    go_to(qtbot, panel.try_button)
    press(qtbot, Key.Key_Space)
    assert page.trial_band.isVisible()
    press(qtbot, Key.Key_Z, Ctrl)
    assert not page.trial_band.isVisible()
    press(qtbot, Key.Key_Escape)
    assert window.sheets.panel.sheet is None
    assert page.ranking.table.hasFocus()


def find_sample() -> str:
    return next(one.path for one in find_samples(default_samples_folder()) if SAMPLE in one.path)


def test_to_the_exercises_and_the_map_of_keys(at_start: MainWindow, qtbot: QtBot) -> None:
    window = at_start
    go_to(qtbot, window.start_page.exercise_button)
    press(qtbot, Key.Key_Return)
    assert isinstance(window.state.phase, ExercisePhase)
    press(qtbot, Key.Key_F1)
    assert window.sheets.panel.sheet is window.sheets.keys
    press(qtbot, Key.Key_Escape)
    press(qtbot, Key.Key_Escape)
    assert window.state.phase == StartPhase()
    assert window.start_page.open_button.hasFocus()


def test_from_the_complaint_to_the_road_test_nothing_is_asked_twice(
    at_start: MainWindow, qtbot: QtBot, tmp_path: Path
) -> None:
    window = at_start
    window.bench.go_in()
    press(qtbot, Key.Key_2)
    phase = window.state.phase
    assert isinstance(phase, BenchPhase)
    given = phase.bench.view.state.given
    log = tmp_path / "drive.csv.gz"
    log.write_bytes(Path(find_sample()).read_bytes())
    with qtbot.waitSignal(window.runner.finished, timeout=30_000):
        window.open_files([str(log)])
    phase = window.state.phase
    assert isinstance(phase, ShowingPhase)
    assert phase.opened.answers.given == given
    assert phase.opened.result.findings[-1].source == given[0].id, "the verdict rests on the answer too"
    assert window.steps.buttons["complaint"].told == "1 answer"
    with qtbot.waitSignal(window.runner.finished, timeout=30_000):
        press(qtbot, Key.Key_F5)
    phase = window.state.phase
    assert isinstance(phase, ShowingPhase)
    assert phase.opened.answers.given == given, "reading again forgets nothing"
    press(qtbot, Key.Key_B, Ctrl)
    phase = window.state.phase
    assert isinstance(phase, BenchPhase)
    assert phase.bench.view.state.given == given
    window.bench.leave()
    window.close_log()
    with qtbot.waitSignal(window.runner.finished, timeout=30_000):
        window.open_files([str(log)])
    phase = window.state.phase
    assert isinstance(phase, ShowingPhase)
    assert phase.opened.answers.given == (), "what is opened from the first page may be another car"
