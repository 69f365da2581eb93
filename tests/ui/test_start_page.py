"""The first page: three doors, recordings opened of late, samples."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QPushButton
from pytestqt.qtbot import QtBot

from triage.logs.options import ReadOptions
from ui.keeping import Keeping
from ui.presenters.samples import Sample
from ui.recent_files import RecentRecording
from ui.state.opening import Opened, OpenOrder
from ui.state.window_state import ExercisePhase, StartPhase
from ui.window import MainWindow

WindowFrom = Callable[..., MainWindow]


def trigger(window: MainWindow, *names: str) -> None:
    for name in names:
        assert window.actions_by_name[name].isEnabled(), name
        window.actions_by_name[name].trigger()


def test_three_doors_and_the_samples_are_at_hand(window_from: WindowFrom) -> None:
    window = window_from(samples=(Sample("/samples/van_3.csv", "van 3", "Light on."),))
    page = window.start_page
    for button in (page.open_button, page.bench_button, page.exercise_button, *page.sample_buttons):
        assert button.isVisible()
        assert button.isEnabled()
    page.exercise_button.click()
    assert isinstance(window.state.phase, ExercisePhase)


def test_what_was_opened_is_offered_again_with_its_database(
    window_from: WindowFrom, opened: Opened, qtbot: QtBot, tmp_path: Path
) -> None:
    log, database = tmp_path / "a.asc", tmp_path / "car.dbc"
    for file in (log, database):
        file.write_text("x", "utf-8")
    orders: list[OpenOrder] = []
    window = window_from(opener=lambda order, _progress: orders.append(order) or opened)
    with qtbot.waitSignal(window.runner.finished):
        window.open_files([str(log), str(database)])
    window.close_log()
    assert window.state.phase == StartPhase()
    recent = window.start_page.recent
    assert [button.text() for button in recent.buttons] == ["a.asc"]
    with qtbot.waitSignal(window.runner.finished):
        qtbot.mouseClick(recent.buttons[0], Qt.MouseButton.LeftButton)
    assert orders[1].files == (str(log),)
    assert orders[1].options == ReadOptions(databases=(str(database),))


def test_what_is_missing_is_told_and_the_list_can_be_cleared(
    window_from: WindowFrom, qtbot: QtBot, tmp_path: Path
) -> None:
    keeping = Keeping()
    keeping.recent = (RecentRecording((str(tmp_path / "gone.csv"),)),)
    window = window_from(keeping=keeping)
    recent = window.start_page.recent
    assert recent.isVisible()
    assert not recent.buttons[0].isEnabled()
    assert recent.buttons[0].accessibleDescription().startswith("Not there any more")
    qtbot.mouseClick(recent.forget_button, Qt.MouseButton.LeftButton)
    assert not recent.isVisible()
    assert keeping.recent == ()


def test_samples_are_not_among_the_recordings_of_the_user(
    window_from: WindowFrom, opened: Opened, qtbot: QtBot
) -> None:
    sample = Sample("/samples/van_3.csv", "van 3", "")
    window = window_from(samples=(sample,), opener=lambda _order, _progress: opened)
    with qtbot.waitSignal(window.runner.finished):
        window.open_sample(sample.path)
    assert window.keeping.recent == ()


@pytest.mark.parametrize("size", [(1280, 720), (640, 400), (480, 320)])
def test_nothing_on_the_start_page_is_cut_off(window_from: WindowFrom, size: tuple[int, int]) -> None:
    samples = tuple(
        Sample(f"/s/{n}.csv", f"van {n}", "Lamp on, and more words than one line holds.") for n in range(4)
    )
    window = window_from(samples=samples)
    window.resize(*size)
    QApplication.processEvents()
    page = window.start_page
    assert page.widget().width() <= page.viewport().width()
    for button in page.findChildren(QPushButton):
        if button.isVisible():
            assert button.height() >= 24
            assert button.width() >= button.minimumSizeHint().width()
