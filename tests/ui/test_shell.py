"""The steps above every page, and the way from a finding to its place and back."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from triage.errors import SettingsError
from ui.state.opening import Opened, OpenOrder
from ui.state.window_state import BenchPhase, ExercisePhase, ShowingPhase, StartPhase
from ui.widgets.step_bar import StepButton
from ui.window import MainWindow

WindowFrom = Callable[..., MainWindow]


def trigger(window: MainWindow, *names: str) -> None:
    for name in names:
        assert window.actions_by_name[name].isEnabled(), name
        window.actions_by_name[name].trigger()


def test_car_and_corner_stand_above_every_page(showing: MainWindow) -> None:
    for name in ("step.road-test", "step.verdict", "step.complaint"):
        trigger(showing, name)
        assert showing.steps.isVisible()
        assert showing.steps.car.whole == "van 3.csv"
        # At the car the ranking is worked out anew, and the drive of this test measured nothing.
        at_car = name == "step.complaint"
        expected = "No corner stands out" if at_car else "Suspected: FL front left, 94 %"
        assert showing.steps.suspect.whole == expected


def test_one_set_of_plots_serves_road_test_and_verdict(showing: MainWindow) -> None:
    page = showing.result_page
    plots = page.plots
    assert page.header.isVisible()
    assert page.instruments is None, "instruments are made when they are looked at first"
    trigger(showing, "step.road-test")
    assert not page.header.isVisible()
    assert not page.ranking.isVisible()
    assert page.instruments is not None
    assert page.instruments.isVisible()
    assert page.plots is plots
    assert plots.isVisible()
    assert plots.canvas.hasFocus()
    trigger(showing, "step.verdict")
    assert page.ranking.isVisible()
    assert not page.instruments.isVisible()
    assert page.ranking.table.hasFocus()


def test_the_step_on_the_screen_is_marked_and_named(showing: MainWindow, qtbot: QtBot) -> None:
    road = showing.steps.buttons["road-test"]
    qtbot.mouseClick(road, Qt.MouseButton.LeftButton)
    assert showing.state.page == "road-test"
    assert [button.isChecked() for button in showing.steps.buttons.values()] == [False, True, False]
    assert road.accessibleName() == "Road test, 60.0 s recorded, on the screen"
    qtbot.mouseClick(road, Qt.MouseButton.LeftButton)
    assert road.isChecked(), "a second press does not take the mark away"


def test_steps_that_cannot_be_turned_to_are_not_enabled(window_from: WindowFrom) -> None:
    window = window_from()
    enabled = {step: button.isEnabled() for step, button in window.steps.buttons.items()}
    assert enabled == {"complaint": True, "road-test": False, "verdict": False}
    assert not window.actions_by_name["step.verdict"].isEnabled()
    assert window.steps.exercise.isEnabled()


def test_from_the_car_a_step_takes_the_answers_along(with_rules: MainWindow, qtbot: QtBot) -> None:
    window = with_rules
    trigger(window, "step.complaint")
    phase = window.state.phase
    assert isinstance(phase, BenchPhase)
    qtbot.keyClick(window.bench_page, Qt.Key.Key_1)
    qtbot.mouseClick(window.steps.buttons["road-test"], Qt.MouseButton.LeftButton)
    phase = window.state.phase
    assert isinstance(phase, ShowingPhase)
    assert window.state.page == "road-test"
    assert len(phase.opened.answers.given) == 1
    assert window.steps.buttons["complaint"].told == "1 answer"


def test_the_exercises_are_gone_to_and_come_back_from(showing: MainWindow) -> None:
    before = showing.state.phase
    assert showing.exercise.page is None
    trigger(showing, "step.exercise")
    assert isinstance(showing.state.phase, ExercisePhase)
    assert showing.exercise.page is not None
    assert showing.exercise.page.isVisible()
    assert showing.steps.exercise.isChecked()
    assert not showing.actions_by_name["opened.close"].isEnabled()
    trigger(showing, "step.verdict")
    assert showing.state.phase is before
    assert showing.result_page.isVisible()


def test_a_finished_exercise_is_shown_as_a_road_test(showing: MainWindow, opened: Opened) -> None:
    trigger(showing, "step.exercise")
    showing.exercise._open("Exercise 7", opened)
    assert isinstance(showing.state.phase, ShowingPhase)
    assert showing.state.page == "road-test"
    assert showing.steps.car.whole == "Exercise 7"
    assert showing.keeping.recent[0].files == ("/logs/van 3.csv",), "an exercise is no recording on the disk"


@pytest.mark.parametrize("width", [480, 760, 1280, 1920])
def test_the_steps_fit_at_every_width(showing: MainWindow, width: int, qtbot: QtBot) -> None:
    showing.resize(width, 720)
    assert showing.width() == width

    def fit() -> None:
        for button in showing.steps.findChildren(StepButton):
            assert button.mapTo(showing, button.rect().bottomRight()).x() <= width
            assert button.height() >= 44
            if width >= 760:
                assert button.width() >= button.sizeHint().width(), button.text()

    # Steps and frame are laid out anew one after the other, each when the events of the one before are done.
    qtbot.waitUntil(fit)


def test_a_long_name_is_cut_and_whole_in_its_tip(showing: MainWindow) -> None:
    phase = showing.state.phase
    assert isinstance(phase, ShowingPhase)
    name = "a very long name of a recording " * 6 + ".csv"
    showing.state.enter(replace(phase, order=OpenOrder((name,))))
    showing.resize(1280, 720)
    QApplication.processEvents()
    assert "…" in showing.steps.car.text()
    assert showing.steps.car.toolTip() == name
    assert showing.width() == 1280


def test_a_finding_leads_to_its_place_and_back(showing: MainWindow, qtbot: QtBot) -> None:
    page, evidence = showing.result_page, showing.result_page.details.evidence.list
    evidence.setCurrentIndex(evidence.model().index(1, 0))
    qtbot.keyClick(evidence, Qt.Key.Key_Return)
    assert not page.finding_band.isVisible(), "on the verdict page the finding itself is in view"
    trigger(showing, "step.road-test")
    assert page.finding_band.isVisible()
    assert page.finding_band.text.text().startswith("The front left wheel alone loses its signal")
    assert page.plots.view_s == pytest.approx((18.0, 22.4))
    page.details.show_tab(2)
    trigger(showing, "result.finding")
    assert showing.state.page == "verdict"
    assert evidence.hasFocus()
    assert evidence.currentIndex().row() == 1
    trigger(showing, "step.road-test")
    qtbot.mouseClick(page.finding_band.back_button, Qt.MouseButton.LeftButton)
    assert showing.state.page == "verdict"


def test_without_a_place_there_is_nothing_to_go_back_to(showing: MainWindow) -> None:
    trigger(showing, "step.road-test")
    assert not showing.result_page.finding_band.isVisible()
    assert not showing.actions_by_name["result.finding"].isEnabled()
    showing.state.show_finding("drop-out-rate@FL")
    assert showing.actions_by_name["result.finding"].isEnabled()
    showing.state.clear_highlight()
    assert not showing.result_page.finding_band.isVisible()


# What goes wrong --------------------------------------------------------------------------------------


def test_a_rule_book_that_cannot_be_used_is_told_without_a_dialog(
    window_from: WindowFrom, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_args: object, **_named: object) -> None:
        raise SettingsError("it is empty", file="checks.toml", hint="Install the program again.")

    window = window_from()
    monkeypatch.setattr("ui.bench_opening.begin_bench", refuse)
    trigger(window, "step.complaint")
    assert window.state.phase == StartPhase()
    assert "it is empty" in window.start_page.note.text().lower()
    assert "Install the program again." in window.statusBar().currentMessage()


def test_a_recording_opened_during_an_exercise_is_shown(
    window_from: WindowFrom, opened: Opened, qtbot: QtBot
) -> None:
    window = window_from(opener=lambda _order, _progress: opened)
    trigger(window, "step.exercise")
    with qtbot.waitSignal(window.runner.finished):
        window.open_files(["a.csv"])
    assert isinstance(window.state.phase, ShowingPhase)
    assert window.result_page.isVisible()
