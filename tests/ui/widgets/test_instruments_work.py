"""Instruments of a very long recording: worked out beside the window, which says so and shows nothing old."""

from __future__ import annotations

import threading
from collections.abc import Callable, Iterator
from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from triage.corners import CORNERS
from triage.errors import OutputError
from ui.state.opening import Opened
from ui.state.window_state import StartPhase, WindowState
from ui.widgets.instruments import InstrumentsPanel
from ui.widgets.instruments_work import MOST_AT_ONCE, Show, is_quick
from ui.window import MainWindow

Act = Callable[..., None]
HANG_S = 10.0


@pytest.fixture(autouse=True)
def every_recording_is_long(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("ui.widgets.instruments.is_quick", lambda _opened: False)


def wait_for(panel: InstrumentsPanel, qtbot: QtBot) -> None:
    qtbot.waitUntil(lambda: not panel.places[panel.front].waiting)


class Held:
    """Work of an instrument that goes on only when it is let go; tells which rows it was given, and where."""

    def __init__(self, own: Callable[[Opened, int], Show]) -> None:
        self.rows: list[int] = []
        self.threads: list[threading.Thread] = []
        self.go_on = threading.Event()
        self._own = own

    def __call__(self, opened: Opened, row: int) -> Show:
        self.rows.append(row)
        self.threads.append(threading.current_thread())
        assert self.go_on.wait(HANG_S), "the window waits for what it should not wait for"
        return self._own(opened, row)


@pytest.fixture
def held(panel: InstrumentsPanel, monkeypatch: pytest.MonkeyPatch, bring: Act) -> Iterator[Held]:
    """The losses are in front, and hang until they are let go."""
    bring(panel.losses)
    held = Held(panel.losses.work_out)
    monkeypatch.setattr(panel.losses, "work_out", held)
    yield held
    held.go_on.set()


def test_the_window_goes_on_while_an_instrument_is_worked_out(
    panel: InstrumentsPanel, held: Held, qtbot: QtBot, show: Act
) -> None:
    show()  # would hang if the losses were worked out here
    place = panel.places[panel.losses]
    assert place.waiting
    assert place.words.isVisible()
    assert "very long" in place.words.accessibleName()
    held.go_on.set()
    wait_for(panel, qtbot)
    assert held.threads[0] is not threading.main_thread()
    assert panel.losses.isVisible()
    assert "front left wheel" in panel.losses.summary.text()


def test_every_instrument_shows_what_it_shows_of_a_short_recording(
    panel: InstrumentsPanel, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch, show: Act, bring: Act
) -> None:
    show()
    told = []
    for instrument in panel.instruments:
        bring(instrument)
        wait_for(panel, qtbot)
        told.append(instrument.text)
    monkeypatch.setattr("ui.widgets.instruments.is_quick", lambda _opened: True)
    state = panel._state
    state.enter(replace(state.phase))
    for instrument, before in zip(panel.instruments, told, strict=True):
        bring(instrument)
        assert not panel.places[instrument].waiting
        assert instrument.text == before != ""


def test_of_a_wheel_no_longer_looked_at_nothing_is_shown(
    panel: InstrumentsPanel, state: WindowState, held: Held, qtbot: QtBot, show: Act
) -> None:
    show()
    qtbot.waitUntil(lambda: held.rows == [0])
    shown: list[str] = []
    panel.losses.model.modelReset.connect(lambda: shown.append(panel.losses.model.losses.corner))
    for corner in ("FR", "RL", "RR"):
        state.choose_corner(corner)
    held.go_on.set()
    wait_for(panel, qtbot)
    assert shown == ["RR"]
    # What was given up before its turn came is not worked out at all.
    assert held.rows == [0, 3]


def test_an_instrument_left_before_it_was_ready_is_worked_out_when_it_is_looked_at_again(
    panel: InstrumentsPanel, held: Held, qtbot: QtBot, show: Act, bring: Act
) -> None:
    show()
    bring(panel.quality)
    held.go_on.set()
    wait_for(panel, qtbot)
    assert panel.losses.model.losses is None
    bring(panel.losses)
    wait_for(panel, qtbot)
    assert panel.losses.model.losses is not None


def test_nothing_is_copied_while_it_is_waited_for(
    panel: InstrumentsPanel, held: Held, qtbot: QtBot, show: Act
) -> None:
    show()
    with pytest.raises(OutputError, match="still being worked out"):
        panel._table()
    with pytest.raises(OutputError, match="still being worked out"):
        panel._picture()
    panel.commands.copy_data()
    assert "still being worked out" in panel.told.text()
    held.go_on.set()
    wait_for(panel, qtbot)
    assert panel._table() is not None


def test_the_keyboard_stays_in_the_tab(
    panel: InstrumentsPanel, state: WindowState, held: Held, qtbot: QtBot, show: Act
) -> None:
    held.go_on.set()
    show()
    wait_for(panel, qtbot)
    with qtbot.waitActive(panel.window()):
        panel.window().activateWindow()
    panel.losses.table.setFocus()
    held.go_on.clear()
    state.choose_corner("RR")
    assert QApplication.focusWidget() is panel.places[panel.losses].words
    held.go_on.set()
    wait_for(panel, qtbot)
    assert QApplication.focusWidget() is panel.losses.table


@pytest.fixture(params=[(quick, late) for quick in (False, True) for late in (False, True)])
def front_right_fails(
    panel: InstrumentsPanel, request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Let the ring of one wheel fail on either way: when it is worked out, or when it is shown."""
    quick, late = request.param
    own = panel.ring.work_out

    def break_down() -> None:
        raise ArithmeticError("no such angle")

    def work_out(opened: Opened, row: int) -> Show:
        if row != CORNERS.index("FR"):
            return own(opened, row)
        return break_down if late else break_down()

    monkeypatch.setattr("ui.widgets.instruments.is_quick", lambda _opened: quick)
    monkeypatch.setattr(panel.ring, "work_out", work_out)


@pytest.mark.usefixtures("front_right_fails")
def test_a_defect_is_told_and_the_next_wheel_is_tried(
    panel: InstrumentsPanel, state: WindowState, qtbot: QtBot, show: Act
) -> None:
    show()
    wait_for(panel, qtbot)
    state.choose_corner("FR")
    words = panel.places[panel.ring].words
    qtbot.waitUntil(lambda: "no such angle" in words.text())
    assert words.text() == "It could not be worked out: ArithmeticError: no such angle"
    assert not panel.ring.isVisible()
    for wanted in (panel._table, panel._picture):
        with pytest.raises(OutputError, match="could not be worked out") as refusal:
            wanted()
        assert refusal.value.hint == "Choose another wheel or instrument."
    state.choose_corner("RR")
    wait_for(panel, qtbot)
    assert panel.ring.isVisible()
    assert not panel.places[panel.ring].refused


def test_a_recording_that_was_closed_is_not_waited_for(
    panel: InstrumentsPanel, state: WindowState, held: Held, show: Act
) -> None:
    show()
    state.enter(StartPhase())
    held.go_on.set()
    panel.work.stop()
    QCoreApplication.processEvents()
    assert panel.losses.model.losses is None


def test_a_closed_window_leaves_no_worker(showing: MainWindow) -> None:
    showing.state.show_page("road-test")
    instruments = showing.result_page.instruments
    assert instruments is not None
    assert not instruments.work.idle
    showing.close()
    assert instruments.work.idle


def test_a_day_is_long_and_an_hour_is_not(opened: Opened) -> None:
    def lasting(samples: int) -> Opened:
        analysis = opened.result.analysis
        clock = replace(analysis.clock, time_s=np.zeros(samples))
        return replace(opened, result=replace(opened.result, analysis=replace(analysis, clock=clock)))

    assert is_quick(lasting(3600 * 100))
    assert is_quick(lasting(MOST_AT_ONCE))
    assert not is_quick(lasting(24 * 3600 * 100))
