"""The window as a person uses it, with readers that stand in for the engine."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication, QPushButton, QToolButton, QWidget
from pytestqt.qtbot import QtBot

from triage.logs.options import ReadOptions
from triage.speed_log import SpeedLog
from ui.presenters.samples import Sample
from ui.state.opening import Opened
from ui.state.window_state import StartPhase
from ui.theme import theme_for
from ui.widgets.styling import apply_theme
from ui.window import MainWindow

ROOT = Path(__file__).resolve().parents[2]
WindowFrom = Callable[..., MainWindow]


def open_and_wait(window: MainWindow, qtbot: QtBot, *files: str, options: ReadOptions | None = None) -> None:
    with qtbot.waitSignal(window.runner.finished):
        window.open_files(list(files), options)


def test_it_starts_with_the_start_page(window_from: WindowFrom) -> None:
    sample = Sample("/samples/van_3.csv", "van 3", "Light on.")
    window = window_from(samples=(sample,))
    assert window.state.phase == StartPhase()
    assert window.start_page.isVisible()
    assert window.windowTitle() == "Wheel-end triage"
    assert not window.actions_by_name["result.zoom-in"].isEnabled()


def test_the_verdict_is_shown(showing: MainWindow) -> None:
    page = showing.result_page
    assert page.isVisible()
    assert showing.windowTitle() == "van 3.csv – Wheel-end triage"
    assert page.header.title.text() == "Suspected: front left (94 %)"
    assert "front left 94 %" in page.header.sketch.accessibleName()
    assert page.ranking.model.rowCount() == 8
    assert page.details.evidence.model.rowCount() == 4
    assert page.details.evidence.heading.text().startswith("Front left: Dirt on the encoder.")
    assert "FL front left" in page.details.recording.toPlainText()
    assert "Support the car on stands" in page.details.checks.toPlainText()
    assert "Ten seconds at walking pace." in page.details.missing.toPlainText()


def test_where_no_check_is_worth_it_the_list_speaks_of_the_look_that_the_header_names(
    window_from: WindowFrom, opened: Opened, qtbot: QtBot
) -> None:
    sure = replace(opened, result=replace(opened.result, next_checks=(), undecided=()))
    window = window_from(opener=lambda _order, _progress: sure)
    open_and_wait(window, qtbot, "a.csv")
    page = window.result_page
    assert "Look at the encoder (front left)" in page.header.next_step.text()
    told = page.details.checks.toPlainText()
    assert "What is known leaves no doubt worth a check. “Look at the encoder (front left)” comes" in told
    assert sure.result.plan.why in told
    assert "No further check" not in told
    repair = replace(opened.result.plan, next_step=opened.result.plan.repairs[0])
    window.state.enter(
        replace(window.state.phase, opened=replace(sure, result=replace(sure.result, plan=repair)))
    )
    assert "No further check in the rule book" in page.details.checks.toPlainText()


def test_a_click_on_evidence_jumps_to_its_seconds(showing: MainWindow, qtbot: QtBot) -> None:
    evidence, plots = showing.result_page.details.evidence.list, showing.result_page.plots
    assert plots.view_s == pytest.approx((0.0, 59.98))
    second = evidence.visualRect(evidence.model().index(1, 0)).center()
    qtbot.mouseClick(evidence.viewport(), Qt.MouseButton.LeftButton, pos=second)
    assert plots.view_s == pytest.approx((18.0, 22.4))
    assert plots.caption.text() == "FL, 20.00–20.40 s – place 1 of 3"
    qtbot.mouseClick(evidence.viewport(), Qt.MouseButton.LeftButton, pos=second)
    assert plots.view_s == pytest.approx((29.0, 33.5))


def test_enter_on_evidence_jumps_too(showing: MainWindow, qtbot: QtBot) -> None:
    evidence = showing.result_page.details.evidence.list
    evidence.setCurrentIndex(evidence.model().index(1, 0))
    qtbot.keyClick(evidence, Qt.Key.Key_Return)
    assert showing.result_page.plots.view_s == pytest.approx((18.0, 22.4))
    showing.actions_by_name["result.next-place"].trigger()
    assert showing.result_page.plots.view_s == pytest.approx((29.0, 33.5))
    showing.actions_by_name["result.clear"].trigger()
    assert showing.result_page.plots.caption.text() == ""


def test_the_heights_fit_what_is_jumped_to(showing: MainWindow) -> None:
    plots = showing.result_page.plots
    showing.state.show_finding("line-amplitude@FL")
    low, high = plots.divergence.height_range
    assert low < -100.0
    plots.show_seconds(21.0, 24.0)
    plots.settle()
    low, high = plots.divergence.height_range
    assert -5.0 < low < 0.0 < high < 5.0


def test_both_plots_and_strips_share_the_time_axis(showing: MainWindow) -> None:
    plots = showing.result_page.plots
    plots.show_seconds(10.0, 20.0)
    for plot in (plots._strip_plot, plots._loss_plot, plots.divergence.plot):
        assert plot.getViewBox().viewRange()[0] == pytest.approx([10.0, 20.0])


def test_the_view_stays_inside_the_recording(showing: MainWindow) -> None:
    plots = showing.result_page.plots
    plots.show_seconds(50.0, 60.0)
    plots.move_view(5.0)
    assert plots.view_s[1] == pytest.approx(59.98)
    plots.zoom_view(100.0)
    assert plots.view_s == pytest.approx((0.0, 59.98))
    for _ in range(40):
        plots.zoom_view(0.5)
    assert plots.view_s[1] - plots.view_s[0] == pytest.approx(0.1)


def test_plots_obey_the_keyboard(showing: MainWindow, qtbot: QtBot) -> None:
    plots = showing.result_page.plots
    plots.show_seconds(10.0, 20.0)
    qtbot.keyClick(plots.canvas, Qt.Key.Key_Right)
    assert plots.view_s == pytest.approx((12.0, 22.0))
    qtbot.keyClick(plots.canvas, Qt.Key.Key_Plus)
    assert plots.view_s == pytest.approx((14.5, 19.5))
    qtbot.keyClick(plots.canvas, Qt.Key.Key_Home)
    assert plots.view_s == pytest.approx((0.0, 59.98))


def test_a_wheel_can_be_hidden(showing: MainWindow) -> None:
    plots = showing.result_page.plots
    plots.key.buttons["RL"].click()
    assert not plots.speed.curves["RL"].isVisible()
    assert not plots.divergence.labels["RL"].isVisible()
    assert plots.key.buttons["RL"].text() == "RL hidden"
    showing.actions_by_name["result.corner-RL"].trigger()
    assert plots.speed.curves["RL"].isVisible()


def test_a_wheel_shown_again_is_drawn_where_the_view_went_meanwhile(showing: MainWindow) -> None:
    plots = showing.result_page.plots
    showing.state.set_corner_hidden("RL", True)
    plots.show_seconds(10.0, 12.0)
    showing.state.set_corner_hidden("RL", False)
    assert plots.speed.curves["RL"].getData()[0][-1] < 13.0


def test_another_recording_of_the_same_length_replaces_the_lines(
    window_from: WindowFrom, opened: Opened, qtbot: QtBot
) -> None:
    result = opened.result
    wheels = {corner: replace(t, speed_mps=2.0 * t.speed_mps) for corner, t in result.log.wheels.items()}
    faster = replace(opened, result=replace(result, log=replace(result.log, wheels=wheels)))
    window = window_from(opener=lambda order, _progress: faster if order.files == ("b.csv",) else opened)
    open_and_wait(window, qtbot, "a.csv")
    open_and_wait(window, qtbot, "b.csv")
    curve = window.result_page.plots.speed.curves["FR"]
    assert curve.getData()[1].max() == pytest.approx(101.8, abs=1.0)


def test_choosing_a_cause_shows_its_evidence(showing: MainWindow, qtbot: QtBot) -> None:
    table = showing.result_page.ranking.table
    table.setFocus()
    qtbot.keyClick(table, Qt.Key.Key_Down)
    assert showing.state.choice == 1
    assert showing.result_page.details.evidence.model.rowCount() == 1


def test_every_command_has_a_key_and_no_key_is_used_twice(window_from: WindowFrom) -> None:
    keys = [action.shortcut().toString() for action in window_from().actions_by_name.values()]
    assert all(keys)
    assert len(set(keys)) == len(keys)


def test_tab_reaches_every_panel(showing: MainWindow, qtbot: QtBot) -> None:
    page = showing.result_page
    wanted = {
        page.plots.canvas,
        page.ranking.table,
        page.details.evidence.list,
        *page.plots.key.buttons.values(),
    }
    showing.activateWindow()
    reached: set[QWidget | None] = set()
    for _ in range(30):
        reached.add(QApplication.focusWidget())
        qtbot.keyClick(QApplication.focusWidget() or showing, Qt.Key.Key_Tab)
    assert wanted <= reached


def test_the_keyboard_goes_to_each_panel(showing: MainWindow) -> None:
    page = showing.result_page
    targets = {
        "plots": page.plots.canvas,
        "ranking": page.ranking.table,
        "evidence": page.details.evidence.list,
        "checks": page.details.checks,
        "missing": page.details.missing,
        "recording": page.details.recording,
    }
    for name, target in targets.items():
        showing.actions_by_name[f"result.{name}"].trigger()
        assert target.hasFocus(), name


def test_what_can_be_pressed_is_big_enough_and_named(showing: MainWindow) -> None:
    for button in [*showing.findChildren(QPushButton), *showing.findChildren(QToolButton)]:
        if button.isVisible() and button.objectName() != "ScrollLeftButton" and button.width() > 0:
            assert min(button.width(), button.height()) >= 24, button.text()
            assert button.text() or button.accessibleName()


@pytest.mark.parametrize("size", [(1280, 800), (640, 400), (480, 320)])
def test_nothing_is_cut_off_when_small(showing: MainWindow, size: tuple[int, int]) -> None:
    showing.resize(*size)
    QApplication.processEvents()
    page = showing.result_page
    inside = page.widget()
    for panel in (page.header, page.plots.canvas, page.ranking.table, page.details):
        corner = panel.mapTo(inside, QPoint(panel.width(), panel.height()))
        assert corner.y() <= inside.height()
        assert corner.x() <= inside.width()
        assert panel.height() >= panel.minimumSizeHint().height()
    assert page.plots.canvas.height() >= 300
    assert inside.width() <= page.viewport().width() or page.horizontalScrollBar().maximum() > 0


def test_panels_that_do_not_fit_beside_each_other_are_stacked(showing: MainWindow) -> None:
    page = showing.result_page
    assert page._body.orientation() == Qt.Orientation.Horizontal
    showing.resize(640, 400)
    QApplication.processEvents()
    assert page._body.orientation() == Qt.Orientation.Vertical
    page.verticalScrollBar().setValue(page.verticalScrollBar().maximum())
    showing.state.show_finding("drop-out-rate@FL")
    assert page.verticalScrollBar().value() < page.verticalScrollBar().maximum()


def test_a_small_window_shows_the_verdict_first_and_then_what_has_the_keyboard(
    window_from: WindowFrom, opened: Opened, qtbot: QtBot
) -> None:
    window = window_from(opener=lambda _order, _progress: opened)
    window.resize(640, 400)
    open_and_wait(window, qtbot, "/logs/van 3.csv")
    QApplication.processEvents()
    page = window.result_page
    assert page.ranking.table.hasFocus()
    assert page.verticalScrollBar().value() == 0
    for name in ("result.checks", "result.recording", "result.evidence"):
        page.verticalScrollBar().setValue(0)
        page.ranking.table.setFocus()
        window.actions_by_name[name].trigger()
        top = page.details.mapTo(page.viewport(), QPoint(0, 0)).y()
        assert top >= 0
        assert top + page.details.height() <= page.viewport().height()
    page.verticalScrollBar().setValue(0)
    page._follow_focus(None, page.details.checks)
    assert page.verticalScrollBar().value() == 0, "coming back from another window moves nothing"


@pytest.mark.parametrize("dark", [False, True])
def test_colours_reach_the_plots(showing: MainWindow, dark: bool) -> None:
    showing.state.set_dark(not dark)
    showing.state.set_dark(dark)
    theme = theme_for(dark=dark)
    apply_theme(QApplication.instance(), theme)
    plots = showing.result_page.plots
    shot = plots.canvas.grab().toImage()
    assert shot.pixelColor(1, shot.height() - 3).name() == theme.panel
    assert plots.speed.curves["FR"].opts["pen"].color().name() == theme.corners["FR"]


def test_markup_in_a_file_is_shown_as_text(showing: MainWindow) -> None:
    from ui.presenters.entries import Entry

    article = showing.result_page.details.missing
    article.set_parts(Entry("<img src=x> & co", text="<b>not bold</b>", facts=(("<i>", "</p>"),)))
    assert "<img src=x> & co" in article.toPlainText()
    assert "<b>not bold</b>" in article.toPlainText()


def test_an_hour_long_log_pans(
    window_from: WindowFrom,
    opened_from: Callable[[SpeedLog], Opened],
    log_from: Callable[..., SpeedLog],
    qtbot: QtBot,
) -> None:
    long = opened_from(log_from(100.0, 3600.0))
    window = window_from(opener=lambda _order, _progress: long)
    open_and_wait(window, qtbot, "hour.csv")
    plots = window.result_page.plots
    for _ in range(5):
        plots.zoom_view(0.5)
        QApplication.processEvents()
        drawn = plots.speed.curves["FL"].getData()[0]
        assert 1000 < drawn.size < 8000, "the curve must be thinned to the view"
        assert drawn[0] <= plots.view_s[0] + 1.0
        assert drawn[-1] >= plots.view_s[1] - 1.0


def test_a_brief_loss_shows_in_an_hour(
    window_from: WindowFrom,
    opened_from: Callable[[SpeedLog], Opened],
    log_from: Callable[..., SpeedLog],
    qtbot: QtBot,
) -> None:
    long = opened_from(log_from(100.0, 3600.0))
    window = window_from(opener=lambda _order, _progress: long)
    open_and_wait(window, qtbot, "hour.csv")
    time_s, drawn = window.result_page.plots.speed.curves["FL"].getData()
    near = (time_s > 40.0) & (time_s < 48.0)
    assert drawn[near].min() == pytest.approx(0.0)
