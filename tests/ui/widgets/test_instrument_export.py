"""Every instrument gives its picture and its values, one way for all, by the keyboard too."""

from __future__ import annotations

import csv
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from xml.etree import ElementTree as ET

import numpy as np
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QContextMenuEvent, QGuiApplication, QImage
from PySide6.QtWidgets import QApplication, QMenu
from pytestqt.qtbot import QtBot

from triage.errors import OutputError
from triage.signals.analysis import analyse
from triage.speed_log import Channel, SpeedLog
from ui.menus import key_lines
from ui.presenters.companions import build_companion_lines
from ui.presenters.instrument_tables import build_companion_table
from ui.state.opening import Opened, OpenOrder
from ui.state.window_state import ShowingPhase
from ui.theme import theme_for
from ui.widgets.instruments import InstrumentsPanel
from ui.window import MainWindow

Act = Callable[..., None]
NAMES = ("ring", "spectrum", "load", "losses", "quality", "companions")
pytestmark = pytest.mark.qt_log_ignore("This plugin does not support")


def with_turns(opened: Opened) -> Opened:
    """The front left wheel swings by 2 % once in a turn of 2 m, so that there is a ring to draw."""
    log = opened.result.log
    trace = log.wheels["FL"]
    way_m = np.cumsum(np.nan_to_num(trace.speed_mps)) * np.diff(trace.time_s, prepend=0.0)
    speed_mps = trace.speed_mps * (1.0 + 0.02 * np.sin(np.pi * way_m))
    wheels = {**log.wheels, "FL": replace(trace, speed_mps=speed_mps)}
    return replace(opened, result=replace(opened.result, log=replace(log, wheels=wheels)))


def with_channels(opened: Opened) -> Opened:
    time_s = np.arange(0.0, 60.0, 0.05)
    channels = {
        "yaw_rate_radps": Channel(time_s, np.sin(time_s), "yaw"),
        "brake": Channel(time_s[::2] + 0.01, (time_s[::2] > 48.0).astype(float), "pedal"),
    }
    log = replace(with_turns(opened).result.log, channels=channels)
    return replace(opened, result=replace(opened.result, log=log, analysis=analyse(log)))


@pytest.fixture
def panel(panel: InstrumentsPanel, show: Act, opened: Opened) -> InstrumentsPanel:
    show(with_channels(opened))
    return panel


def texts_in(element: ET.Element, *, clipped: bool = False) -> list[tuple[str, bool]]:
    """Every text of a picture, and whether it is drawn inside a clip."""
    inside = clipped or "clip-path" in element.attrib
    own = [((element.text or "").strip(), inside)] if element.tag.endswith("}text") else []
    return own + [found for child in element for found in texts_in(child, clipped=inside)]


@pytest.mark.parametrize("name", ["ring", "load", "losses", "quality"])
def test_no_words_vanish_from_a_picture_of_lines(
    panel: InstrumentsPanel, name: str, tmp_path: Path, bring: Act
) -> None:
    """Qt once wrote the clips of labels at the wrong place, and other programs showed none of their words."""
    bring(getattr(panel, name))
    panel.commands.save_picture(tmp_path / "a.svg")
    texts = texts_in(ET.parse(tmp_path / "a.svg").getroot())  # noqa: S314 - our own file
    assert len(texts) >= 6
    assert [text for text, clipped in texts if clipped] == []


@pytest.mark.parametrize("name", NAMES)
def test_picture_and_values_go_to_files(
    panel: InstrumentsPanel, name: str, tmp_path: Path, bring: Act
) -> None:
    bring(getattr(panel, name))
    for suffix in ("png", "svg"):
        panel.commands.save_picture(tmp_path / f"a.{suffix}")
    pixels = QImage(str(tmp_path / "a.png"))
    colours = {pixels.pixel(x, y) for x in range(0, pixels.width(), 3) for y in range(pixels.height())}
    assert len(colours) > 2
    assert pixels.pixelColor(0, 0).name() == theme_for(dark=False).panel
    drawn = ET.parse(tmp_path / "a.svg").getroot()  # noqa: S314 - our own file
    title = drawn.findtext("{http://www.w3.org/2000/svg}title") or ""
    assert title.startswith("van 3.csv – FL – ")
    assert len(list(drawn.iter())) > 30
    panel.commands.save_data(tmp_path / "a.csv")
    head, *rows = csv.reader((tmp_path / "a.csv").read_text("utf-8").splitlines())
    assert len(rows) >= 3
    assert {len(row) for row in rows} == {len(head)}


def test_values_are_those_of_the_drawing(panel: InstrumentsPanel, tmp_path: Path, bring: Act) -> None:
    bring(panel.ring)
    assert panel.ring.picture is not None
    panel.commands.save_data(tmp_path / "ring.csv")
    rows = list(csv.DictReader((tmp_path / "ring.csv").read_text("utf-8").splitlines()))
    drawn = [float(row["speed off its mean (%)"] or "nan") for row in rows]
    assert drawn == pytest.approx(panel.ring.picture.ripple.value.tolist(), rel=1e-8, nan_ok=True)


def test_channels_keep_their_own_instants(opened: Opened) -> None:
    lines = build_companion_lines(with_channels(opened).result.log)
    table = build_companion_table(lines, (9.99, 10.205))
    assert table.head == ("time (s)", "Yaw rate (°/s)", "Brake (0/1)")
    time_s, yaw, brake = table.columns
    assert time_s == pytest.approx([10.0, 10.01, 10.05, 10.1, 10.11, 10.15, 10.2])
    assert np.isfinite(yaw).tolist() == [True, False, True, True, False, True, True]
    assert np.isfinite(brake).tolist() == [False, True, False, False, True, False, False]


@pytest.mark.parametrize("name", NAMES)
def test_the_key_for_the_menu_offers_the_same_for_all(
    panel: InstrumentsPanel, name: str, qtbot: QtBot, bring: Act
) -> None:
    bring(getattr(panel, name))
    part = {
        "losses": panel.losses.table,
        "quality": panel.quality.table,
        "companions": panel.companions.canvas,
    }
    widget = part.get(name, getattr(panel, name))
    event = QContextMenuEvent(QContextMenuEvent.Reason.Keyboard, QPoint(3, 3), QPoint(3, 3))
    QApplication.sendEvent(widget, event)
    menu = QApplication.activePopupWidget()
    assert isinstance(menu, QMenu)
    assert [action.text().replace("&", "") for action in menu.actions()] == [
        "Copy the picture",
        "Save the picture…",
        "Copy the values in view",
        "Save the values in view…",
    ]
    menu.close()


def test_a_command_of_the_window_reaches_it_and_the_map_of_keys_tells(
    with_rules: MainWindow, qtbot: QtBot
) -> None:
    told = [line for line in key_lines(with_rules) if line.key == "Ctrl+Shift+E"]
    assert [line.does for line in told] == ["Copy or save the instrument"]
    with_rules.state.show_page("road-test")
    panel = with_rules.result_page.instruments
    assert panel is not None
    panel.tabs.setCurrentWidget(panel.places[panel.quality])
    with_rules.state.show_page("verdict")
    with_rules.actions_by_name["result.instrument"].trigger()
    menu = QApplication.activePopupWidget()
    assert isinstance(menu, QMenu)
    assert with_rules.state.page == "road-test"
    menu.actions()[2].trigger()
    menu.close()
    assert panel.told.text() == "Values copied."
    assert QGuiApplication.clipboard().text().startswith("\tFL\tFR\tRL\tRR\n")


def test_what_is_not_there_is_refused_in_words(
    panel: InstrumentsPanel, opened: Opened, log_from: Callable[..., SpeedLog], tmp_path: Path, bring: Act
) -> None:
    log = log_from(duration_s=8.0)
    short = replace(opened, result=replace(opened.result, log=log, analysis=analyse(log)))
    panel._state.enter(ShowingPhase(OpenOrder(("van 3.csv",)), short))
    for name in ("ring", "spectrum", "companions"):
        bring(getattr(panel, name))
        for suffix, save in (("png", panel.commands.save_picture), ("csv", panel.commands.save_data)):
            with pytest.raises(OutputError, match=r"nothing drawn|no values"):
                save(tmp_path / f"a.{suffix}")
        panel.commands.copy_picture()
        assert "Choose another wheel or instrument." in panel.told.text()
    assert not list(tmp_path.iterdir())


def test_a_chosen_loss_is_pointed_at_in_the_plots(with_rules: MainWindow, qtbot: QtBot) -> None:
    with_rules.state.show_page("road-test")
    panel, plots = with_rules.result_page.instruments, with_rules.result_page.plots
    assert panel is not None
    panel.tabs.setCurrentWidget(panel.places[panel.losses])
    panel.losses.table.selectRow(1)
    assert plots.time_cursor.time_s == pytest.approx(31.0, abs=0.03)
    whole = plots.view_s
    qtbot.keyClick(panel.losses.table, Qt.Key.Key_Up)
    assert plots.time_cursor.time_s == pytest.approx(20.0, abs=0.03)
    assert plots.view_s == whole
