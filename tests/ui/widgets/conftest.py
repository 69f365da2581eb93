"""The panel of instruments in a window of its own."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import pytest
from PySide6.QtCore import QCoreApplication, QEvent
from PySide6.QtWidgets import QMainWindow
from pytestqt.qtbot import QtBot

from ui.state.opening import Opened, OpenOrder
from ui.state.window_state import ShowingPhase, WindowState
from ui.theme import theme_for
from ui.widgets.instruments import Instrument, InstrumentsPanel
from ui.widgets.styling import apply_theme, qt_application


@pytest.fixture
def state() -> WindowState:
    return WindowState()


@pytest.fixture
def panel(state: WindowState, qtbot: QtBot) -> Iterator[InstrumentsPanel]:
    apply_theme(qt_application(), theme_for(dark=False))
    panel, host = InstrumentsPanel(state), QMainWindow()
    # As in the window itself: else the screen that need not exist complains of every change of the layout.
    host.setMinimumSize(200, 200)
    host.setCentralWidget(panel)
    host.resize(430, 600)
    host.show()
    yield panel
    panel.work.stop()
    assert panel.work.idle
    host.close()
    host.deleteLater()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)


@pytest.fixture
def show(state: WindowState, opened: Opened) -> Callable[..., None]:
    """Show a recording: the usual one, or another."""
    return lambda other=opened: state.enter(ShowingPhase(OpenOrder(("van 3.csv",)), other))


@pytest.fixture
def bring(panel: InstrumentsPanel) -> Callable[[Instrument], None]:
    """Bring an instrument to the front."""
    return lambda instrument: panel.tabs.setCurrentIndex(panel.instruments.index(instrument))
