"""Pages that the start page does without: made when asked for or in a pause, and then as if always there."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import QSettings, Qt
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from triage.progress import Progress
from ui.keeping import Keeping
from ui.main_window import Opener
from ui.state.opening import Opened, OpenOrder
from ui.state.window_state import BenchPhase, RefusedPhase, ShowingPhase, StartPhase
from ui.user_folder import UserFolder
from ui.window import MainWindow
from ui.window_places import restore_places

WindowFrom = Callable[..., MainWindow]


@pytest.fixture
def at_start(window_from: WindowFrom, opened: Opened, qtbot: QtBot) -> MainWindow:
    window = window_from(opener=lambda _order, _progress: opened)
    with qtbot.waitActive(window):
        window.activateWindow()
    return window


def open_log(window: MainWindow, qtbot: QtBot) -> None:
    with qtbot.waitSignal(window.runner.finished):
        window.open_files(["/logs/van 3.csv"])


def focus() -> QWidget | None:
    return QApplication.focusWidget()


# Made when asked for ----------------------------------------------------------------------------------


def test_a_page_made_late_shows_what_one_made_early_shows(window_from: WindowFrom, opened: Opened) -> None:
    shown = []
    for early in (True, False):
        window = window_from(opener=lambda _order, _progress: opened)
        if early:
            assert window.result_page.isHidden()
        window.state.set_dark(True)
        window.state.set_speed_unit("m/s")
        assert (window.result.made is not None) is early
        window.state.enter(ShowingPhase(OpenOrder(("/logs/van 3.csv",)), opened))
        QApplication.processEvents()
        page = window.result_page
        assert page.isVisible()
        assert page.ranking.table.currentIndex().row() == 0
        axis = page.plots.speed.plot.getAxis("left").labelText
        shown.append((axis, page.header.title.text(), page.header.sketch.grab().toImage()))
    assert shown[0] == shown[1]
    assert "m/s" in shown[0][0]


def test_the_page_has_the_keyboard_although_it_was_made_just_now(at_start: MainWindow, qtbot: QtBot) -> None:
    assert at_start.result.made is None
    open_log(at_start, qtbot)
    assert at_start.result_page.ranking.table.hasFocus()


def test_menus_and_map_of_keys_reach_a_page_that_was_not_there(at_start: MainWindow) -> None:
    at_start.actions_by_name["keys"].trigger()
    told = " ".join(line.does for line in at_start.sheets._key_lines())
    assert "drop-out" in told, "keys of the plots"
    assert at_start.result.made is not None


def test_tab_goes_from_the_steps_to_the_late_page_and_then_to_the_sheet(
    at_start: MainWindow, qtbot: QtBot
) -> None:
    open_log(at_start, qtbot)
    at_start.sheets.turn_settings()
    at_start.result_page.ranking.table.setFocus()
    areas = {"steps": at_start.steps, "page": at_start.result_page, "sheet": at_start.sheets.panel}
    way: list[str] = []
    for _ in range(80):
        now = focus()
        assert now is not None
        where = next(name for name, area in areas.items() if area.isAncestorOf(now))
        if not way or way[-1] != where:
            way.append(where)
        qtbot.keyClick(now, Qt.Key.Key_Tab)
    assert way[:4] == ["page", "sheet", "steps", "page"]


def test_a_sheet_with_the_keyboard_keeps_it_while_a_page_is_made(at_start: MainWindow) -> None:
    at_start.sheets.turn_settings()
    field = at_start.sheets.settings.fields["colours"]
    field.setFocus()
    assert at_start.result_page.isHidden()
    assert at_start.bench_page.isHidden()
    assert at_start.sheets.panel.isVisible()
    assert focus() is field


def test_a_page_that_was_not_asked_for_leaves_its_place_as_it_was_kept(
    window_from: WindowFrom, tmp_path: Path
) -> None:
    folder = UserFolder(tmp_path / "kept")
    first = window_from(keeping=Keeping(folder))
    first.result_page.splitters["body"].setSizes([300, 400])
    sizes = first.result_page.splitters["body"].saveState()
    first.close()
    second = window_from(keeping=Keeping(folder))
    assert restore_places(second, folder.places)
    assert second.result.made is None
    second.close()
    kept = QSettings(str(folder.places), QSettings.Format.IniFormat)
    assert kept.value("splitter/body") == sizes


# Made in a pause --------------------------------------------------------------------------------------


def test_in_the_pauses_after_the_start_both_pages_are_made(at_start: MainWindow, qtbot: QtBot) -> None:
    at_start.warming.begin()
    qtbot.waitUntil(lambda: at_start.warming.done)
    assert at_start.result.made is not None
    assert at_start.start_page.isVisible()
    assert at_start.start_page.open_button.hasFocus()
    qtbot.waitUntil(lambda: at_start.warming.idle)


def test_a_window_closed_while_it_loads_leaves_no_worker(at_start: MainWindow, qtbot: QtBot) -> None:
    at_start.warming._load()
    at_start.close()
    assert at_start.warming.idle
    assert not at_start.warming.done


def test_a_recording_opened_at_once_is_read_when_the_pages_are_made(
    at_start: MainWindow, qtbot: QtBot
) -> None:
    made: list[bool] = []
    at_start._opener = _noting(at_start._opener, lambda: made.append(at_start.warming.done))
    at_start.warming.begin()
    open_log(at_start, qtbot)
    assert made == [True]
    assert isinstance(at_start.state.phase, ShowingPhase)


def _noting(opener: Opener, note: Callable[[], None]) -> Opener:
    def noting(order: OpenOrder, progress: Progress) -> Opened:
        note()
        return opener(order, progress)

    return noting


def test_what_was_given_up_before_the_pages_were_made_is_not_read(at_start: MainWindow, qtbot: QtBot) -> None:
    read: list[bool] = []
    at_start._opener = _noting(at_start._opener, lambda: read.append(True))
    at_start.open_files(["/logs/van 3.csv"])
    at_start.cancel()
    qtbot.waitUntil(lambda: at_start.warming.done)
    assert at_start.state.phase == StartPhase()
    assert not at_start.runner.busy
    assert read == []


@pytest.mark.parametrize(
    ("part", "error"),
    [
        ("ui.warming.load_pages", ImportError("the library of the plots is damaged")),
        ("ui.widgets.speed_plots.SpeedPlots", ArithmeticError("no room for a plot")),
    ],
)
def test_what_cannot_be_loaded_or_made_is_told_and_may_be_there_the_next_time(
    at_start: MainWindow, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch, part: str, error: Exception
) -> None:
    def fail(_argument: object) -> None:
        raise error

    with monkeypatch.context() as patch:
        patch.setattr(part, fail)
        at_start.open_files(["/logs/van 3.csv"])
        qtbot.waitUntil(lambda: isinstance(at_start.state.phase, RefusedPhase))
        assert not at_start.warming.done
    assert str(error) in at_start.refusal_page.fields["reason"].text().lower()
    with qtbot.waitSignal(at_start.runner.finished):
        at_start.reload()
    assert isinstance(at_start.state.phase, ShowingPhase)
    assert at_start.warming.done


def test_the_questions_begun_while_it_loads_are_asked(at_start: MainWindow, qtbot: QtBot) -> None:
    at_start.warming._load()
    at_start.go_to("complaint")
    assert isinstance(at_start.state.phase, BenchPhase)
    qtbot.waitUntil(lambda: at_start.warming.done)
    assert at_start.bench_page.isVisible()
