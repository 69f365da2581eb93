"""Settings, as the user changes them in the window."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QPushButton

from ui.appearance import follow_text_size, follow_theme
from ui.keeping import Keeping
from ui.theme import theme_for
from ui.user_folder import UserFolder
from ui.widgets.styling import apply_theme
from ui.window import MainWindow

WindowFrom = Callable[..., MainWindow]


def trigger(window: MainWindow, *names: str) -> None:
    for name in names:
        assert window.actions_by_name[name].isEnabled(), name
        window.actions_by_name[name].trigger()


def choose(window: MainWindow, name: str, value: object) -> None:
    field = window.sheets.settings.fields[name]
    field.setCurrentIndex(field.findData(value))
    field.activated.emit(field.currentIndex())


def test_the_unit_is_set_here_and_shown_when_set_elsewhere(showing: MainWindow) -> None:
    choose(showing, "speed_unit", "mph")
    assert showing.state.speed_unit == "mph"
    showing.state.set_speed_unit("m/s")
    assert showing.sheets.settings.fields["speed_unit"].currentData() == "m/s"
    assert showing.preferences.settings.speed_unit == "m/s"


def test_colours_follow_the_settings_and_the_command(showing: MainWindow) -> None:
    choose(showing, "colours", "dark")
    assert showing.state.dark
    trigger(showing, "dark")
    assert not showing.state.dark
    assert showing.sheets.settings.fields["colours"].currentData() == "light"


def test_left_to_the_system_the_colours_are_those_of_the_system(window_from: WindowFrom) -> None:
    application = QApplication.instance()
    assert isinstance(application, QApplication)
    window = window_from()
    before = application.styleSheet()
    follow_theme(application, window)
    system = application.styleHints().colorScheme() == Qt.ColorScheme.Dark
    window.preferences.change(colours="light" if system else "dark")
    assert window.state.dark != system
    window.preferences.change(colours="system")
    assert window.state.dark == system
    application.setStyleSheet(before)


@pytest.mark.parametrize("percent", [80, 200])
def test_every_text_follows_its_size(showing: MainWindow, percent: int) -> None:
    application = QApplication.instance()
    assert isinstance(application, QApplication)
    apply_theme(application, theme_for(dark=False))
    labels = [showing.result_page.header.title, showing.result_page.header.detail, showing.sheets.panel.title]
    labels += [showing.start_page.note, showing.steps.car, showing.bench_page.question.title]
    labels += [showing.bench_page.buttons["back"]]
    before = [label.font().pointSizeF() for label in labels]
    plain = application.font().pointSizeF()
    follow_text_size(application, showing.preferences)
    showing.preferences.change(text_percent=percent)
    after = [label.font().pointSizeF() for label in labels]
    assert after == pytest.approx([size * percent / 100 for size in before])
    apply_theme(application, theme_for(dark=True))  # other colours once took the sizes back
    assert [label.font().pointSizeF() for label in labels] == pytest.approx(after)
    showing.preferences.change(text_percent=100)
    assert [label.font().pointSizeF() for label in labels] == pytest.approx(before)
    assert application.font().pointSizeF() == pytest.approx(plain)
    application.setStyleSheet("")


def test_a_bad_file_of_settings_is_told_on_the_sheet(window_from: WindowFrom, tmp_path: Path) -> None:
    folder = UserFolder(tmp_path / "kept")
    folder.path.mkdir()
    folder.settings.write_text("text_percent = 900\n", "utf-8")
    window = window_from(keeping=Keeping(folder))
    trigger(window, "settings")
    assert "text_percent" in window.sheets.settings.note.text()
    choose(window, "text_percent", 90)
    assert window.sheets.settings.note.isHidden()
    assert "text_percent = 90" in folder.settings.read_text("utf-8")


def test_the_settings_can_be_put_back(showing: MainWindow) -> None:
    choose(showing, "speed_unit", "mph")
    button = next(
        one for one in showing.sheets.settings.findChildren(QPushButton) if "came with" in one.text()
    )
    button.click()
    assert showing.state.speed_unit == "km/h"
