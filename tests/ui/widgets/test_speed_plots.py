from __future__ import annotations

import csv
import xml.etree.ElementTree as ET
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QGuiApplication, QImage
from pytestqt.qtbot import QtBot

from triage.corners import CORNERS
from triage.errors import OutputError
from triage.speed_log import SpeedLog
from ui.state.opening import Opened, OpenOrder
from ui.state.window_state import ShowingPhase, WindowState
from ui.theme import DARK, LIGHT, Theme, contrast_ratio
from ui.widgets.pale_pen import pale_colour
from ui.widgets.speed_plots import SpeedPlots


@pytest.fixture
def state() -> WindowState:
    return WindowState()


@pytest.fixture
def plots(state: WindowState, opened: Opened, qtbot: QtBot) -> SpeedPlots:
    made = SpeedPlots(state)
    qtbot.addWidget(made)
    made.resize(820, 640)
    state.enter(ShowingPhase(OpenOrder(("van 3.csv",)), opened))
    made.grab()
    return made


# Cursor ----------------------------------------------------------------------------------------------


def test_the_readout_tells_how_to_begin(plots: SpeedPlots) -> None:
    assert not plots.readout.hint.isHidden()
    plots.time_cursor.place(18.0)
    assert plots.readout.hint.isHidden()


def test_keys_move_the_cursor_by_samples(plots: SpeedPlots, qtbot: QtBot) -> None:
    plots.show_seconds(10.0, 20.0)
    press = lambda key, held=Qt.KeyboardModifier.NoModifier: qtbot.keyClick(plots.canvas, key, held)  # noqa: E731
    press(Qt.Key.Key_Period)
    assert plots.time_cursor.time_s == pytest.approx(15.0)
    press(Qt.Key.Key_Period)
    assert plots.time_cursor.time_s == pytest.approx(15.02)
    for key in (Qt.Key.Key_Comma, Qt.Key.Key_Less, Qt.Key.Key_Semicolon):
        before_s = plots.time_cursor.time_s
        press(key, Qt.KeyboardModifier.ShiftModifier)
        assert plots.time_cursor.time_s == pytest.approx(before_s - 0.2), (
            "as American and German keyboards give"
        )
    assert plots.readout.instant.text().startswith("14.420 s")


def test_the_view_follows_the_cursor(plots: SpeedPlots, qtbot: QtBot) -> None:
    plots.show_seconds(10.0, 10.5)
    plots.time_cursor.place(10.48)
    qtbot.keyClick(plots.canvas, Qt.Key.Key_Greater)
    begin_s, end_s = plots.view_s
    assert begin_s < plots.time_cursor.time_s < end_s
    assert end_s - begin_s == pytest.approx(0.5)


@pytest.mark.qt_log_ignore("propagateSizeHints")  # the screen that need not exist has no windows to size
def test_a_click_places_the_cursor_and_with_shift_the_mark(plots: SpeedPlots, qtbot: QtBot) -> None:
    plots.show()
    plots.show_seconds(10.0, 20.0)
    box = plots.speed.plot.getViewBox()

    def spot(time_s: float) -> object:
        return plots.canvas.mapFromScene(box.mapViewToScene(QPointF(time_s, 20.0)))

    qtbot.mouseClick(plots.canvas.viewport(), Qt.MouseButton.LeftButton, pos=spot(12.0))
    assert plots.time_cursor.time_s == pytest.approx(12.0, abs=0.03)
    shift = Qt.KeyboardModifier.ShiftModifier
    qtbot.mouseClick(plots.canvas.viewport(), Qt.MouseButton.LeftButton, shift, pos=spot(18.0))
    assert plots.time_cursor.mark_s == pytest.approx(18.0, abs=0.03)
    assert [line.value() for line in plots.cursor_lines.lines] == [plots.time_cursor.time_s] * 4
    assert all(line.isVisible() for line in plots.cursor_lines.marks)


def test_a_dragged_line_moves_all_of_them(plots: SpeedPlots) -> None:
    plots.time_cursor.place(12.0)
    line = plots.cursor_lines.lines[3]
    line.setValue(17.013)
    line.sigDragged.emit(line)
    assert plots.time_cursor.time_s == pytest.approx(17.02)
    assert plots.cursor_lines.lines[0].value() == pytest.approx(17.02)


def test_measuring_between_cursor_and_mark(plots: SpeedPlots, qtbot: QtBot) -> None:
    plots.time_cursor.place(20.0)
    qtbot.keyClick(plots.canvas, Qt.Key.Key_M)
    plots.time_cursor.place(30.0)
    first, second = plots.readout.stretch.text().splitlines()
    assert first == "10.000 s, 139.9 m"  # at some 14 m/s
    assert second == "differences, km/h"
    assert plots.readout.differences["FL"].text().startswith("FL mean \N{MINUS SIGN}")
    qtbot.keyClick(plots.canvas, Qt.Key.Key_Delete)
    assert plots.readout.stretch.isHidden()
    assert not any(line.isVisible() for line in plots.cursor_lines.lines)


def test_from_drop_out_to_drop_out_by_key(plots: SpeedPlots, state: WindowState, qtbot: QtBot) -> None:
    state.choose_corner("FL")
    for expected_s in (20.0, 31.0, 44.0):
        qtbot.keyClick(plots.canvas, Qt.Key.Key_N)
        assert plots.time_cursor.time_s == pytest.approx(expected_s, abs=0.03)
        assert plots.view_s[0] < expected_s < plots.view_s[1]
    qtbot.keyClick(plots.canvas, Qt.Key.Key_N)
    assert plots.caption.text() == "FL: no drop-out after this"
    qtbot.keyClick(plots.canvas, Qt.Key.Key_N, Qt.KeyboardModifier.ShiftModifier)
    assert plots.time_cursor.time_s == pytest.approx(31.0, abs=0.03)


def test_keys_without_a_recording_do_nothing(state: WindowState, qtbot: QtBot) -> None:
    empty = SpeedPlots(state)
    qtbot.addWidget(empty)
    for key in (Qt.Key.Key_N, Qt.Key.Key_M, Qt.Key.Key_Period, Qt.Key.Key_Delete):
        qtbot.keyClick(empty.canvas, key)
    assert empty.time_cursor.time_s is None


# Units and places ------------------------------------------------------------------------------------


def test_another_unit_changes_axis_lines_and_values(plots: SpeedPlots, state: WindowState) -> None:
    plots.time_cursor.place(30.0)
    _, kmh = plots.speed.curves["RL"].getData()
    state.set_speed_unit("m/s")
    _, mps = plots.speed.curves["RL"].getData()
    assert mps * 3.6 == pytest.approx(kmh)
    assert plots.speed.plot.getAxis("left").labelText == "Speed, m/s"
    assert plots.readout.values["RL"].text().splitlines()[0].endswith(" m/s")
    assert plots.speed.height_range[1] < 20.0, "the height must fit the new numbers"


def test_seconds_wanted_are_shown(plots: SpeedPlots, state: WindowState) -> None:
    state.show_seconds((30.0, 34.0))
    assert plots.view_s == pytest.approx((27.0, 37.0))


def test_other_answers_to_the_same_recording_leave_the_view(
    plots: SpeedPlots, state: WindowState, opened: Opened
) -> None:
    plots.show_seconds(20.0, 30.0)
    plots.time_cursor.place(25.0)
    state.enter(ShowingPhase(OpenOrder(("van 3.csv",)), opened))
    assert plots.view_s == pytest.approx((20.0, 30.0))
    assert plots.time_cursor.time_s == pytest.approx(25.0)


# Comparison ------------------------------------------------------------------------------------------


@pytest.fixture
def other(opened_from: Callable[[SpeedLog], Opened], log_from: Callable[..., SpeedLog]) -> Opened:
    return opened_from(log_from(file="logs/a drive of yesterday before the repair.csv"))


def test_another_recording_is_laid_over(plots: SpeedPlots, other: Opened) -> None:
    plots.set_comparison(other)
    time_s, value = plots.speed.pale_curves["FR"].getData()
    assert time_s.size > 100
    assert value.max() == pytest.approx(14.0 * 3.6, rel=0.02)
    assert plots.speed.pale_curves["FR"].isVisible()
    assert plots.speed.curves["FR"].bold
    assert not plots.speed.pale_curves["FR"].bold
    assert plots.comparison.caption.text() == "Pale: a drive of …repair.csv, by distance"
    assert [plots.comparison.table.item(row, 0).text() for row in range(4)] == list(CORNERS)
    assert plots.comparison.table.item(0, 1).text() == plots.comparison.table.item(0, 2).text()


def test_it_can_be_laid_over_by_time_and_ended(plots: SpeedPlots, other: Opened) -> None:
    plots.set_comparison(other)
    plots.comparison.align_button.click()
    assert plots.comparison.caption.text().endswith("by time")
    plots.comparison.align_button.click()
    assert plots.comparison.caption.text().endswith("by distance")
    plots.comparison.end_button.click()
    assert plots.comparison.isHidden()
    assert not plots.speed.pale_curves["FR"].isVisible()
    assert not plots.speed.curves["FR"].bold


def test_hidden_wheels_are_hidden_in_both(plots: SpeedPlots, state: WindowState, other: Opened) -> None:
    plots.set_comparison(other)
    state.set_corner_hidden("FR", True)
    assert not plots.speed.pale_curves["FR"].isVisible()
    assert plots.divergence.pale_curves["FL"].isVisible()


def test_units_reach_the_other_recording(plots: SpeedPlots, state: WindowState, other: Opened) -> None:
    plots.set_comparison(other)
    state.set_speed_unit("m/s")
    assert plots.speed.pale_curves["FR"].getData()[1].max() == pytest.approx(14.0, rel=0.02)


def test_a_new_recording_ends_the_comparison(plots: SpeedPlots, state: WindowState, other: Opened) -> None:
    plots.set_comparison(other)
    state.enter(ShowingPhase(OpenOrder(("b.csv",)), other))
    assert plots.comparison.isHidden()


@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda theme: theme.name)
def test_pale_lines_can_still_be_seen(theme: Theme) -> None:
    for colour in theme.corners.values():
        pale = pale_colour(colour, theme.panel)
        assert contrast_ratio(pale, theme.panel) >= 3.0
        assert contrast_ratio(pale, theme.panel) <= contrast_ratio(colour, theme.panel)


# Pictures and tables ---------------------------------------------------------------------------------


def test_a_picture_of_pixels(plots: SpeedPlots, tmp_path: Path) -> None:
    plots.save_picture(tmp_path / "a.png")
    picture = QImage(str(tmp_path / "a.png"))
    assert picture.width() >= 700
    lines = LIGHT.corners["FL"]
    found = {picture.pixelColor(x, y).name() for x in range(picture.width()) for y in range(60, 160)}
    assert lines in found


def test_a_picture_of_lines(plots: SpeedPlots, tmp_path: Path) -> None:
    plots.save_picture(tmp_path / "a.SVG")
    root = ET.parse(tmp_path / "a.SVG").getroot()  # noqa: S314 - our own file
    svg = "{http://www.w3.org/2000/svg}"
    assert root.tag == f"{svg}svg"
    assert root.findtext(f"{svg}title") == "van 3.csv"
    texts = {"".join(element.itertext()) for element in root.iter(f"{svg}text")}
    assert {"FL", "RR", "Driving"} <= {text.strip() for text in texts}
    assert len(list(root.iter(f"{svg}path"))) > 20
    assert next(root.iter(f"{svg}clipPath"), None) is not None, "lines must end at the edge of their plot"


@pytest.mark.parametrize("name", ["a.gif", "a"])
def test_no_other_kind_of_picture(plots: SpeedPlots, tmp_path: Path, name: str) -> None:
    with pytest.raises(OutputError, match=r"Use \.png or \.svg"):
        plots.save_picture(tmp_path / name)


def test_a_picture_in_a_missing_folder_is_refused(plots: SpeedPlots, tmp_path: Path) -> None:
    with pytest.raises(OutputError, match="folder"):
        plots.save_picture(tmp_path / "nowhere" / "a.svg")


def test_the_clipboard_gets_pixels_and_lines(plots: SpeedPlots, qtbot: QtBot) -> None:
    qtbot.keyClick(plots.canvas, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    offer = QGuiApplication.clipboard().mimeData()
    assert offer.hasImage()
    assert ET.fromstring(bytes(offer.data("image/svg+xml").data())).tag.endswith("svg")  # noqa: S314
    assert plots.caption.text() == "Picture copied."


def test_the_samples_in_view_as_a_table(plots: SpeedPlots, opened: Opened, tmp_path: Path) -> None:
    plots.show_seconds(28.0, 30.0)
    plots.save_data(tmp_path / "a.csv")
    with (tmp_path / "a.csv").open(encoding="utf-8", newline="") as file:
        head, *rows = csv.reader(file)
    assert head[1] == "FL wheel speed (km/h)"
    trace = opened.result.log.wheels["FL"]
    part = (trace.time_s >= 28.0) & (trace.time_s <= 30.0)
    read = np.array([[float(cell) for cell in row] for row in rows])
    assert read[:, 0] == pytest.approx(trace.time_s[part])
    assert read[:, 1] == pytest.approx(3.6 * trace.speed_mps[part])


def test_the_table_for_the_clipboard_has_tabs(plots: SpeedPlots) -> None:
    plots.show_seconds(28.0, 29.0)
    plots.commands.copy_data()
    head, *rows = QGuiApplication.clipboard().text().splitlines()
    assert head.split("\t")[0] == "time (s)"
    assert len(rows) == 51
    assert plots.caption.text() == "Values copied."


def test_what_cannot_be_saved_is_told_beside_the_plots(
    plots: SpeedPlots, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    where = str(tmp_path / "nowhere" / "a.csv")
    monkeypatch.setattr(
        "ui.widgets.plot_commands.QFileDialog.getSaveFileName", lambda *_: (where, "CSV (*.csv)")
    )
    plots.commands.ask_and_save_data()
    assert "folder does not exist" in plots.caption.text()


def test_a_missing_suffix_is_that_of_the_kind_chosen(
    plots: SpeedPlots, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    chosen = (str(tmp_path / "a"), "SVG (*.svg)")
    monkeypatch.setattr("ui.widgets.plot_commands.QFileDialog.getSaveFileName", lambda *_: chosen)
    plots.commands.ask_and_save_picture()
    assert (tmp_path / "a.svg").exists()
    assert plots.caption.text() == "Saved: a.svg"


def test_nothing_to_save(state: WindowState, qtbot: QtBot, tmp_path: Path) -> None:
    empty = SpeedPlots(state)
    qtbot.addWidget(empty)
    with pytest.raises(OutputError, match="nothing to save"):
        empty.save_data(tmp_path / "a.csv")


def test_the_menu_offers_all_of_it(plots: SpeedPlots) -> None:
    menu = plots.commands.build_menu(plots)
    texts = [action.text().replace("&", "") for action in menu.actions()]
    assert texts == [
        "Copy the picture",
        "Save the picture…",
        "Copy the values in view",
        "Save the values in view…",
    ]
