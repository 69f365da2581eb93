"""The page at the car as dirty hands use it: by keys alone, and with targets that a glove hits."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QPushButton
from pytestqt.qtbot import QtBot

from triage.walk.walk_state import NOT_DONE, Given
from ui.state.window_state import BenchPhase, ShowingPhase, StartPhase
from ui.theme import theme_for
from ui.widgets.styling import HAND_PX, apply_theme
from ui.window import MainWindow

WindowFrom = Callable[..., MainWindow]


@pytest.fixture(autouse=True)
def own_data(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    return tmp_path / "data"


@pytest.fixture
def at_car(window_from: WindowFrom, qtbot: QtBot) -> MainWindow:
    window = window_from()
    qtbot.mouseClick(window.start_page.bench_button, Qt.MouseButton.LeftButton)
    assert isinstance(window.state.phase, BenchPhase)
    return window


def test_from_complaint_to_verdict_by_keys_alone(at_car: MainWindow, qtbot: QtBot, own_data: Path) -> None:
    page = at_car.bench_page
    bench = page.bench
    assert bench is not None
    qtbot.keyClick(page, Qt.Key.Key_3)
    assert len(bench.view.state.given) == 1
    assert (own_data / "wheel-triage" / "walk.answers.toml").is_file()
    qtbot.keyClick(page, Qt.Key.Key_S)
    assert bench.view.state.given[-1].answer == NOT_DONE
    qtbot.keyClick(page, Qt.Key.Key_U)
    qtbot.keyClick(page, Qt.Key.Key_B)
    assert bench.view.state.looked_at is not None
    qtbot.keyClick(page.question.confirm, Qt.Key.Key_Return)  # keep it
    for _ in range(60):
        if bench.view.state.finished or bench.view.question is None:
            break
        if not bench.view.confirmed:
            assert not page.question.choices
            qtbot.keyClick(page.question.confirm, Qt.Key.Key_Return)
            assert QApplication.focusWidget() not in page.question.choices
        qtbot.keyClick(page, Qt.Key.Key_1)
    assert bench.view.state.finished
    assert page.question.title.text() == "The car is right"
    qtbot.keyClick(page, Qt.Key.Key_Escape)
    assert at_car.state.phase == StartPhase()


def test_targets_are_large_in_both_colours(at_car: MainWindow, qtbot: QtBot) -> None:
    for dark in (False, True):
        apply_theme(QApplication.instance(), theme_for(dark=dark))
        at_car.resize(1280, 720)
        qtbot.wait(1)
        shown = [one for one in at_car.bench_page.findChildren(QPushButton) if one.isVisible()]
        assert len(shown) >= 8
        assert min(button.height() for button in shown) >= HAND_PX == 44
        assert min(button.width() for button in shown) >= HAND_PX
    at_car.resize(480, 480)
    qtbot.wait(1)
    assert at_car.width() == 480
    QApplication.instance().setStyleSheet("")


def test_tab_goes_from_the_page_to_the_answers_and_then_to_the_buttons_below(
    at_car: MainWindow, qtbot: QtBot
) -> None:
    page = at_car.bench_page
    qtbot.keyClick(page, Qt.Key.Key_1)  # the answers of the second question are made later than all else
    qtbot.waitUntil(page.question.choices[0].isVisible)
    reached = []
    for _ in range(18):
        qtbot.keyClick(QApplication.focusWidget() or page, Qt.Key.Key_Tab)
        reached.append(QApplication.focusWidget())
    wheels = list(page.question.corners.buttons.values())
    answers = [one for one in reached if one not in wheels]
    assert answers[: len(page.question.choices)] == page.question.choices
    assert reached.index(page.buttons["leave"]) > reached.index(page.buttons["skip"])


def test_a_code_names_its_wheel_by_the_keyboard_alone(at_car: MainWindow, qtbot: QtBot) -> None:
    page = at_car.bench_page
    bench = page.bench
    assert bench is not None
    while bench.view.question is not None and bench.view.question.id != "read-fault-memory":
        qtbot.keyClick(page, Qt.Key.Key_S)
    told = len(bench.view.state.given)
    qtbot.keyClick(page, Qt.Key.Key_2)
    assert len(bench.view.state.given) == told
    assert "which wheel is meant" in page.question.note.text()
    qtbot.waitUntil(page.question.choices[0].isVisible)
    rear_right = page.question.corners.buttons["RR"]
    for _ in range(12):
        if rear_right.hasFocus():
            break
        qtbot.keyClick(QApplication.focusWidget() or page, Qt.Key.Key_Tab)
    qtbot.keyClick(rear_right, Qt.Key.Key_Space)
    qtbot.keyClick(rear_right, Qt.Key.Key_2)
    assert bench.view.state.given[-1] == Given("check", "read-fault-memory", "RR", "circuit")


def test_a_measured_value_is_typed_and_refused_with_a_reason(at_car: MainWindow, qtbot: QtBot) -> None:
    page = at_car.bench_page
    bench = page.bench
    assert bench is not None
    for _ in range(80):
        if bench.view.question is not None and bench.view.question.value is not None:
            break
        bench.skip()
    if not bench.view.confirmed:
        bench.confirm()
    before = bench.view.state
    qtbot.keyClicks(page.question.value, "1e9 kg")  # digits and letters are no keys of the page here
    qtbot.keyClick(page.question.value, Qt.Key.Key_Return)
    assert bench.view.state == before
    assert page.question.note.isVisible()
    assert page.question.value.text() == "1e9 kg"


def test_it_goes_on_tomorrow(window_from: WindowFrom, qtbot: QtBot) -> None:
    for day, answers in enumerate((0, 1)):
        window = window_from()
        with qtbot.waitActive(window):
            window.activateWindow()
        window.bench.go_in()
        bench = window.bench_page.bench
        assert bench is not None
        assert len(bench.view.state.given) == answers
        if day == 0:
            qtbot.keyClick(window.bench_page, Qt.Key.Key_1)
        else:
            assert "1 earlier answer" in window.bench_page.question.note.text()
        window.bench.leave()


def test_answers_reach_the_verdict_and_lie_beside_the_log(
    showing: MainWindow, tmp_path: Path, qtbot: QtBot
) -> None:
    log = tmp_path / "van.csv"
    log.write_text("x", "utf-8")
    phase = showing.state.phase
    assert isinstance(phase, ShowingPhase)
    showing.state.enter(replace(phase, order=replace(phase.order, files=(str(log),))))
    qtbot.mouseClick(showing.steps.buttons["complaint"], Qt.MouseButton.LeftButton)
    bench = showing.bench_page.bench
    assert bench is not None
    qtbot.keyClick(showing.bench_page, Qt.Key.Key_1)
    assert (tmp_path / "van.csv.answers.toml").is_file()
    showing.bench.leave()
    phase = showing.state.phase
    assert isinstance(phase, ShowingPhase)
    assert phase.opened.result.posterior == bench.view.now.judgement.posterior
    assert phase.opened.result.findings[-1].id.startswith(bench.view.state.given[0].id)


def test_a_damaged_file_is_told_and_not_overwritten(
    window_from: WindowFrom, own_data: Path, qtbot: QtBot
) -> None:
    path = own_data / "wheel-triage" / "walk.answers.toml"
    path.parent.mkdir(parents=True)
    path.write_text("hello", "utf-8")
    window = window_from()
    with qtbot.waitActive(window):
        window.activateWindow()
    window.bench.go_in()
    assert "cannot be read" in window.bench_page.question.note.text()
    qtbot.keyClick(window.bench_page, Qt.Key.Key_1)
    assert path.read_text("utf-8") == "hello"
    assert path.with_suffix(".new.toml").is_file()
    window.bench.leave()
