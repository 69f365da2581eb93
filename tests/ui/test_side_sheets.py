"""The panel at the side: trying an answer, the map of keys."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtGui import QShortcut
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from ui.menus import key_lines
from ui.state.window_state import BenchPhase
from ui.widgets.key_panel import key_words
from ui.window import MainWindow

WindowFrom = Callable[..., MainWindow]


def trigger(window: MainWindow, *names: str) -> None:
    for name in names:
        assert window.actions_by_name[name].isEnabled(), name
        window.actions_by_name[name].trigger()


def test_an_answer_is_tried_with_a_band_and_taken_back_with_one_key(
    with_rules: MainWindow, qtbot: QtBot
) -> None:
    window = with_rules
    page, state = window.result_page, window.state
    recorded = state.opened
    before = page.header.title.text()
    trigger(window, "result.what-if")
    panel = window.sheets.what_if
    assert panel.check.hasFocus()
    panel.check.setCurrentIndex(panel.check.findData("rock-wheel"))
    panel.wheel.setCurrentIndex(panel.wheel.findData("RR"))
    panel.answer.setCurrentIndex(panel.answer.findData("clear"))
    qtbot.keyClick(panel.try_button, Qt.Key.Key_Return)
    assert page.trial_band.isVisible()
    assert page.trial_band.text.text().startswith("What if: Rock the wheel, rear right: ")
    assert page.trial_band.text.text().endswith(" – not recorded")
    assert state.opened is not recorded
    assert page.header.title.text() != before
    assert page.ranking.model.data(page.ranking.model.index(0, 0)) == "Rear right"
    assert "RR rear right" in window.steps.suspect.whole
    trigger(window, "result.take-back")
    assert not page.trial_band.isVisible()
    assert state.opened is recorded
    assert page.header.title.text() == before
    assert not window.actions_by_name["result.take-back"].isEnabled()


def test_a_trial_never_reaches_the_answers(with_rules: MainWindow, tmp_path: Path) -> None:
    window = with_rules
    window.sheets.try_out("rock-wheel", "clear", "RR")
    trigger(window, "step.complaint")
    phase = window.state.phase
    assert isinstance(phase, BenchPhase)
    assert phase.bench.view.state.given == ()
    window.bench.leave()
    assert window.state.trial is None
    assert not window.result_page.trial_band.isVisible()


def test_a_check_of_the_whole_car_offers_no_wheel(with_rules: MainWindow) -> None:
    trigger(with_rules, "result.what-if")
    panel = with_rules.sheets.what_if
    for name, shown, entries in (
        ("growl-in-curves", False, 4),
        ("rock-wheel", True, 4),
        ("recent-work", True, 5),
        ("rock-wheel", True, 4),
    ):
        panel.check.setCurrentIndex(panel.check.findData(name))
        assert panel._form.isRowVisible(panel.wheel) == shown, name
        assert panel.wheel.count() == entries, name


def test_the_choice_begins_with_the_next_check_and_the_wheel_looked_at(with_rules: MainWindow) -> None:
    with_rules.state.choose_corner("RL")
    trigger(with_rules, "result.what-if")
    panel = with_rules.sheets.what_if
    assert panel.check.currentData() == "look-at-encoder"
    assert panel.wheel.currentData() == "RL"


def test_a_sheet_is_put_away_by_its_own_key_by_escape_and_by_its_button(
    showing: MainWindow, qtbot: QtBot
) -> None:
    panel = showing.sheets.panel
    trigger(showing, "keys", "settings")
    assert panel.sheet is showing.sheets.settings
    trigger(showing, "settings")
    assert panel.sheet is None
    assert showing.result_page.ranking.table.hasFocus(), "the keyboard goes back to the page"
    trigger(showing, "settings")
    qtbot.keyClick(showing.sheets.settings.fields["colours"], Qt.Key.Key_Escape)
    assert panel.sheet is None
    trigger(showing, "keys")
    qtbot.mouseClick(panel.close_button, Qt.MouseButton.LeftButton)
    assert panel.sheet is None


def test_in_a_narrow_window_the_sheet_stands_in_the_place_of_the_page(showing: MainWindow) -> None:
    showing.resize(640, 480)
    trigger(showing, "settings")
    QApplication.processEvents()
    assert not showing.result_page.isVisible()
    assert showing.sheets.panel.width() >= 630
    showing.resize(1280, 720)
    QApplication.processEvents()
    assert showing.result_page.isVisible()
    showing.resize(640, 480)
    trigger(showing, "settings")
    QApplication.processEvents()
    assert showing.result_page.isVisible()
    assert showing.width() == 640


def test_the_map_of_keys_knows_every_command_and_every_key_of_the_pages(showing: MainWindow) -> None:
    trigger(showing, "step.exercise", "step.verdict", "keys")
    lines = key_lines(showing)
    told = {(line.key, line.does) for line in lines}
    for action in showing.actions_by_name.values():
        words = action.text().replace("&&", "\0").replace("&", "").replace("\0", "&").rstrip("…")
        assert (key_words(action.shortcut()), words) in told
    for shortcut in showing.findChildren(QShortcut):
        assert shortcut.whatsThis(), f"{key_words(shortcut.key())} does not tell what it does"
        assert (key_words(shortcut.key()), shortcut.whatsThis()) in told
    assert all(line.key and line.does for line in lines)
    shown = {label.text() for label in showing.sheets.keys.findChildren(QWidget) if hasattr(label, "text")}
    assert {"F1", "Keys", "Home", "1 … 9"} <= {*shown, "Home"}


def test_no_key_does_two_things_in_one_place(showing: MainWindow) -> None:
    trigger(showing, "step.exercise", "step.verdict")
    lines = [line for line in key_lines(showing) if line.key != "Esc"]
    done_by: dict[tuple[str, str], set[str]] = {}
    for line in lines:
        done_by.setdefault((line.group, line.key), set()).add(line.does)
    assert [at for at, things in done_by.items() if len(things) > 1] == []
    # Esc stops reading only while reading, and on the pages leaves what has the keyboard.
    commands = {key_words(action.shortcut()) for action in showing.actions_by_name.values()}
    pages = {key.strip() for line in lines if line.group not in MENUS for key in line.key.split(",")}
    assert not commands & pages


MENUS = ("File", "Steps", "Time", "View", "Help")


def test_the_workshop_s_own_cars_show_what_they_do_to_the_verdict(with_rules: MainWindow) -> None:
    """Counted, seen beside the verdict without them, and taken back; the pages themselves stay."""
    before = with_rules.state.opened
    trigger(with_rules, "experience")
    panel = with_rules.sheets.experience
    assert panel is not None
    assert panel.isVisible()
    panel.group.setEditText("vans")
    panel.cause.setCurrentIndex(panel.cause.findData("encoder-debris"))
    for _ in range(3):
        panel.keep()
    assert panel.cars.count() == 3
    assert panel.verdict.rowCount() > 0
    panel.cars.setCurrentRow(0)
    panel.take_back()
    assert panel.cars.count() == 2
    assert with_rules.state.opened is before
    trigger(with_rules, "experience")
    assert not panel.isVisible()
