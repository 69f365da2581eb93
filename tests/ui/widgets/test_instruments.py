from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QAbstractButton
from pytestqt.modeltest import ModelTester
from pytestqt.qtbot import QtBot

from triage.corners import CORNERS
from triage.signals.analysis import analyse
from triage.speed_log import Channel, SpeedLog
from ui.presenters.drop_outs import COLUMNS, GONE, KIND_TEXTS, PAUSE, DropOuts, build_drop_outs
from ui.presenters.quality import build_quality_rows
from ui.state.opening import Opened
from ui.state.window_state import StartPhase, WindowState
from ui.theme import theme_for
from ui.widgets.instruments import InstrumentsPanel
from ui.widgets.instruments_losses import LossesModel
from ui.widgets.instruments_quality import QualityModel

Act = Callable[..., None]


def test_the_wheel_of_the_verdict_is_looked_at_and_a_button_takes_another(
    panel: InstrumentsPanel, state: WindowState, qtbot: QtBot, show: Act
) -> None:
    show()
    assert [corner for corner, button in panel.wheels.items() if button.isChecked()] == ["FL"]
    qtbot.mouseClick(panel.wheels["RR"], Qt.MouseButton.LeftButton)
    assert state.corner == "RR"
    state.choose_corner("FR")
    assert panel.wheels["FR"].isChecked()
    assert not panel.wheels["RR"].isChecked()


def test_every_tab_shows_something_and_explains_itself(panel: InstrumentsPanel, show: Act) -> None:
    show()
    for index, instrument in enumerate(panel.instruments):
        panel.tabs.setCurrentIndex(index)
        assert panel.tabs.tabToolTip(index).endswith(".")
        assert not instrument.grab().isNull()
    assert "front left wheel" in panel.losses.summary.text()
    assert "outer, loaded one in right-hand curves" in panel.load.text
    assert panel.quality.model.rowCount() > 5


def test_only_the_tab_in_front_is_worked_out(
    panel: InstrumentsPanel, state: WindowState, show: Act, bring: Act
) -> None:
    show()
    assert panel.losses.model.losses is None
    bring(panel.losses)
    assert panel.losses.model.losses is not None
    state.choose_corner("RR")
    assert "rear right" in panel.losses.summary.text()


def test_without_a_turn_the_ring_says_why_and_what_would_help(
    panel: InstrumentsPanel, opened: Opened, log_from: Callable[..., SpeedLog], show: Act, bring: Act
) -> None:
    log = log_from(duration_s=8.0)
    show(replace(opened, result=replace(opened.result, log=log, analysis=analyse(log))))
    for instrument in (panel.ring, panel.spectrum):
        bring(instrument)
        assert instrument.picture is None
        assert "Not measurable on this recording" in instrument.text
        assert "Would help: At least one minute of steady straight driving" in instrument.text
        assert not instrument.drawings.isVisible()


def test_the_spectrum_draws_its_lines_and_changes_with_the_theme(
    panel: InstrumentsPanel, state: WindowState, show: Act, bring: Act
) -> None:
    show()
    bring(panel.spectrum)
    assert panel.spectrum.picture is not None
    assert len(panel.spectrum.plot.listDataItems()) >= 3
    state.set_dark(True)
    colours = [one.opts["pen"].color().name() for one in panel.spectrum.plot.listDataItems()]
    assert theme_for(dark=True).accent in colours
    assert theme_for(dark=False).accent not in colours


def test_enter_on_a_loss_asks_for_its_seconds(
    panel: InstrumentsPanel, state: WindowState, qtbot: QtBot, show: Act, bring: Act
) -> None:
    show()
    bring(panel.losses)
    wanted: list[tuple[float, float]] = []
    state.seconds_wanted.subscribe(wanted.append)
    model, table = panel.losses.model, panel.losses.table
    row = next(
        row
        for row in range(model.rowCount())
        if model.data(model.index(row, COLUMNS.index("what")), Qt.ItemDataRole.DisplayRole)
        == KIND_TEXTS[GONE]
    )
    table.selectRow(row)
    qtbot.keyClick(table, Qt.Key.Key_Return)
    assert wanted == [pytest.approx((18.0, 22.41), abs=0.03)]


def test_copying_gives_a_table_with_tabs(
    panel: InstrumentsPanel, qtbot: QtBot, show: Act, bring: Act
) -> None:
    show()
    bring(panel.losses)
    table = panel.losses.table
    table.selectRow(0)
    qtbot.keyClick(table, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    lines = QGuiApplication.clipboard().text().splitlines()
    assert len(lines) == 2
    assert lines[0] == "wheel\tBegin, s\tLasts, s\tBefore, km/h\tDriving\tAt, °\tWhat"
    table.clearSelection()
    panel.commands.copy_data()
    assert len(QGuiApplication.clipboard().text().splitlines()) == 1 + panel.losses.model.rowCount()
    bring(panel.quality)
    qtbot.keyClick(panel.quality.table, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    assert QGuiApplication.clipboard().text().startswith("\tFL\tFR\tRL\tRR\n")


def test_drawings_are_copied_as_a_picture_with_their_words(
    panel: InstrumentsPanel, qtbot: QtBot, show: Act, bring: Act
) -> None:
    show()
    bring(panel.load)
    qtbot.keyClick(panel.load, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    copied = QGuiApplication.clipboard().mimeData()
    assert copied.hasImage()
    assert copied.hasFormat("image/svg+xml")
    assert panel.told.text() == "Picture copied."
    assert copied.text() == panel.load.text


def test_speeds_follow_the_unit_of_the_window(
    panel: InstrumentsPanel, state: WindowState, show: Act, bring: Act
) -> None:
    show()
    bring(panel.losses)
    state.set_speed_unit("mph")
    assert panel.losses.model.titles()[COLUMNS.index("speed")] == "Before\nmph"


def test_models(qtmodeltester: ModelTester, opened: Opened, qtbot: QtBot) -> None:
    losses = LossesModel()
    losses.set_losses(build_drop_outs(opened.result, 0))
    qtmodeltester.check(losses)
    quality = QualityModel()
    quality.set_rows(build_quality_rows(opened.result.log))
    qtmodeltester.check(quality)


def many_losses(count: int) -> DropOuts:
    rng = np.random.default_rng(4)
    return DropOuts(
        corner="RL",
        begin_s=np.sort(rng.uniform(0.0, 3600.0, count)),
        length_s=rng.uniform(0.01, 0.5, count),
        speed_mps=rng.uniform(2.0, 40.0, count),
        angle_deg=rng.uniform(0.0, 360.0, count),
        kind=rng.integers(1, PAUSE + 1, count),
        manoeuvre=rng.integers(-1, 3, count),
        driving=("straight", "left", "braking"),
    )


def test_ten_thousand_losses_sort_and_scroll_at_once(
    panel: InstrumentsPanel, qtbot: QtBot, bring: Act
) -> None:
    bring(panel.losses)
    began = time.process_time()
    panel.losses.model.set_losses(many_losses(10_000))
    for column in range(len(COLUMNS)):
        panel.losses.table.sortByColumn(column, Qt.SortOrder.DescendingOrder)
        panel.losses.table.scrollToBottom()
        panel.losses.table.grab()
    # About 0.1 s here; a model that made every cell beforehand took seconds.
    assert time.process_time() - began < 2.0
    assert panel.losses.model.rowCount() == 10_000


def test_companions_follow_what_is_pointed_at(
    panel: InstrumentsPanel, state: WindowState, opened: Opened, qtbot: QtBot, show: Act
) -> None:
    time_s = np.arange(0.0, 60.0, 0.05)
    channels = {
        "yaw_rate_radps": Channel(time_s, np.sin(time_s), "yaw"),
        "brake": Channel(time_s, (time_s > 48.0).astype(float), "pedal"),
    }
    log = replace(opened.result.log, channels=channels)
    show(replace(opened, result=replace(opened.result, log=log)))
    panel.tabs.setCurrentWidget(panel.places[panel.companions])
    assert list(panel.companions.plots) == ["yaw_rate_radps", "brake"]
    state.show_seconds((20.0, 24.0))
    assert panel.companions.view_s == pytest.approx((20.0, 24.0))
    other = panel.companions.plots["brake"].getViewBox().viewRange()[0]
    assert other == pytest.approx([20.0, 24.0], abs=0.01)
    qtbot.keyClick(panel.companions.canvas, Qt.Key.Key_Plus)
    assert panel.companions.view_s == pytest.approx((21.0, 23.0))
    panel.companions.boxes["yaw_rate_radps"].setChecked(False)
    assert list(panel.companions.plots) == ["brake"]
    assert panel.companions.view_s == pytest.approx((21.0, 23.0))
    state.set_dark(True)
    qtbot.keyClick(panel.companions.canvas, Qt.Key.Key_Home)
    assert panel.companions.view_s == pytest.approx((0.0, 60.0), abs=0.1)


def test_a_recording_without_companions_says_so(
    panel: InstrumentsPanel, state: WindowState, show: Act, bring: Act
) -> None:
    show()
    bring(panel.companions)
    assert "nothing of the car beside its wheels" in panel.companions.note.text()
    state.show_seconds((1.0, 2.0))


def test_targets_and_names(panel: InstrumentsPanel, show: Act, bring: Act) -> None:
    """WCAG 2.2, 2.5.8: targets of 24 px or more; the wheels are for gloved hands: 44 px."""
    show()
    for button in panel.wheels.values():
        assert button.height() >= 44
        assert button.accessibleName()
    for instrument in panel.instruments:
        bring(instrument)
        for child in instrument.findChildren(QAbstractButton):
            if child.isVisible() and child.text():
                assert child.height() >= 24, child.text()
    assert [panel.wheels[corner].text() for corner in CORNERS] == list(CORNERS)


def test_leaving_and_coming_back_shows_the_new_recording(
    panel: InstrumentsPanel,
    state: WindowState,
    opened: Opened,
    log_from: Callable[..., SpeedLog],
    show: Act,
) -> None:
    show()
    panel.tabs.setCurrentWidget(panel.places[panel.quality])
    state.enter(StartPhase())
    slower = log_from(rate_hz=20.0)
    show(replace(opened, result=replace(opened.result, log=slower, analysis=analyse(slower))))
    rates = panel.quality.model.index(1, 1)
    assert panel.quality.model.data(rates, Qt.ItemDataRole.DisplayRole) == "20.0"
