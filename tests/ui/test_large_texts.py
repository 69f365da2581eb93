"""Texts at 200 % of their size (WCAG 2.2, 1.4.4): drawings follow, and nothing lies over anything else."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

import numpy as np
import pyqtgraph as pg
import pytest
from PySide6.QtCore import QCoreApplication, QEvent, Qt
from PySide6.QtGui import QFont
from PySide6.QtWidgets import QApplication, QCheckBox, QMainWindow, QWidget
from pytestqt.qtbot import QtBot

from triage.speed_log import Channel
from ui.appearance import scale_texts
from ui.presenters.exercise import CheckRow
from ui.state.opening import Opened, OpenOrder
from ui.state.window_state import ShowingPhase, WindowState
from ui.theme import LIGHT
from ui.widgets.exercise_checks import ANSWER_PX, CheckShelf
from ui.widgets.instruments_companions import CompanionsInstrument
from ui.widgets.instruments_losses import LossesInstrument
from ui.widgets.instruments_spectrum import SpectrumInstrument
from ui.widgets.replay_plot import ReplayPlot
from ui.widgets.speed_plots import SpeedPlots
from ui.widgets.styling import apply_theme

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")
Host = Callable[[QWidget], None]


@pytest.fixture
def host(qtbot: QtBot) -> Iterator[Host]:
    """Shows a widget in a window at the usual size of the texts, then makes them twice as large."""
    application = QApplication.instance()
    apply_theme(application, LIGHT)
    windows = []

    def show(widget: QWidget) -> None:
        window = QMainWindow()
        window.setMinimumSize(200, 200)
        window.setCentralWidget(widget)
        window.resize(430, 700)
        window.show()
        windows.append(window)
        scale_texts(application, 2.0)
        qtbot.wait(1)
        widget.grab()

    yield show
    if windows:
        scale_texts(application, 0.5)
    for window in windows:
        window.close()
        window.deleteLater()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)


def large() -> float:
    font: QFont = QApplication.font()
    return font.pointSizeF()


def title_is_beside_the_numbers(axis: pg.AxisItem) -> bool:
    """Whether the upright name of an axis ends before the widest of its numbers begins."""
    title = axis.mapRectFromItem(axis.label, axis.label.boundingRect())
    numbers_px = axis.textWidth
    return bool(title.right() <= axis.size().width() - numbers_px)


def with_channels(opened: Opened) -> Opened:
    time_s = np.arange(0.0, 60.0, 0.05)
    names = ("yaw_rate_radps", "steering_rad", "lateral_mps2", "longitudinal_mps2")
    channels = {name: Channel(time_s, np.sin(time_s), name) for name in names}
    log = replace(opened.result.log, channels=channels)
    return replace(opened, result=replace(opened.result, log=log))


def test_companion_plots_follow(host: Host, opened: Opened) -> None:
    companions = CompanionsInstrument(WindowState())
    companions.work_out(with_channels(opened), 0)()
    usual_px = companions.canvas.minimumHeight()
    host(companions)
    assert companions.canvas.minimumHeight() > usual_px
    for plot in companions.plots.values():
        title = plot.titleLabel
        assert title.opts["size"] == f"{0.95 * large():.2f}pt"
        assert title.boundingRect().height() >= title.itemRect().height()
        for name in ("left", "bottom"):
            assert plot.getAxis(name).style["tickFont"].pointSizeF() == pytest.approx(large())
        assert plot.getAxis("left").textWidth <= plot.getAxis("left").width()
    last = list(companions.plots.values())[-1]
    assert last.getAxis("bottom").label.font().pointSizeF() == pytest.approx(large())


def test_boxes_of_the_channels_are_never_cut_off(host: Host, opened: Opened) -> None:
    companions = CompanionsInstrument(WindowState())
    companions.work_out(with_channels(opened), 0)()
    host(companions)
    for box in companions.findChildren(QCheckBox):
        assert box.width() >= box.sizeHint().width()
        assert box.geometry().right() <= companions.width()


def test_the_replay_names_its_axis_beside_the_numbers(host: Host, opened: Opened) -> None:
    replay = ReplayPlot(WindowState())
    replay.show_log(opened.result.log)
    host(replay)
    axis = replay.plot.plot.getAxis("left")
    assert axis.label.font().pointSizeF() == pytest.approx(large())
    assert title_is_beside_the_numbers(axis)


def test_names_of_the_plots_have_room(host: Host, opened: Opened) -> None:
    state = WindowState()
    plots = SpeedPlots(state)
    state.enter(ShowingPhase(OpenOrder(("van 3.csv",)), opened))
    host(plots)
    strip = plots._strip_plot.getAxis("left")
    assert strip.width() >= plots.canvas.fontMetrics().horizontalAdvance("Driving")
    for wheels in (plots.speed, plots.divergence):
        axis = wheels.plot.getAxis("left")
        assert title_is_beside_the_numbers(axis)
        assert axis.label.boundingRect().width() <= axis.size().height(), "the name is longer than its plot"


def test_columns_of_the_losses_follow(host: Host, opened: Opened) -> None:
    losses = LossesInstrument(WindowState())
    losses.work_out(opened, 0)()
    host(losses)
    model, metrics = losses.model, losses.table.fontMetrics()
    for column, title in enumerate(model.titles()[:-1]):
        cell = model.data(model.index(0, column), Qt.ItemDataRole.DisplayRole)
        texts = [*title.split("\n"), str(cell)]
        widest_px = max(metrics.horizontalAdvance(text) for text in texts)
        assert losses.table.columnWidth(column) >= widest_px, title


def test_the_spectrum_follows(host: Host, opened: Opened) -> None:
    spectrum = SpectrumInstrument()
    spectrum.work_out(opened, 0)()
    usual_px = spectrum.canvas.height()
    host(spectrum)
    assert spectrum.canvas.height() > usual_px
    for name in ("left", "bottom"):
        assert spectrum.plot.getAxis(name).label.font().pointSizeF() == pytest.approx(large())
    assert title_is_beside_the_numbers(spectrum.plot.getAxis("left"))


def test_the_answer_of_a_check_is_shown_whole(host: Host) -> None:
    shelf = CheckShelf(on_corner=lambda _: None, on_check=lambda _: None)
    host(shelf)
    answer = "in the first metres, or below about 20 km/h, and never when the car stands"
    rows = tuple(
        CheckRow(
            name, "Ask when the lamp comes on", "vehicle", price="", answer=told, heading="", cautions=()
        )
        for name, told in (("lamp-when", answer), ("noise-kind", "none"))
    )
    shelf.show_rows(rows, "FL", "")
    long, short = (shelf.list.visualItemRect(shelf._items[row.check]).height() for row in rows)
    letters_px = shelf.list.fontMetrics().horizontalAdvance(answer)
    lines = letters_px // ANSWER_PX + 1
    assert long >= lines * shelf.list.fontMetrics().height() > short
