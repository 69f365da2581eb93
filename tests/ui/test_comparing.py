"""Another recording laid over the one on the screen, read by a worker of its own."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from PySide6.QtWidgets import QFileDialog
from pytestqt.qtbot import QtBot

from triage.errors import DamagedLog
from triage.progress import Progress
from ui.state.opening import Opened, OpenOrder
from ui.state.window_state import ShowingPhase
from ui.window import MainWindow

WindowFrom = Callable[..., MainWindow]


@pytest.fixture
def before(window_from: WindowFrom, opened: Opened, qtbot: QtBot) -> MainWindow:
    """A window that cannot read files with "bad" in their name."""

    def opener(order: OpenOrder, _progress: Progress) -> Opened:
        if "bad" in order.files[0]:
            raise DamagedLog("it ends in the middle", file=order.files[0], hint="Record it again.")
        return opened

    window = window_from(opener=opener)
    with qtbot.waitSignal(window.runner.finished):
        window.open_files(["before.csv"])
    return window


def choose(monkeypatch: pytest.MonkeyPatch, *files: str) -> None:
    monkeypatch.setattr(QFileDialog, "getOpenFileNames", lambda *_args: (list(files), ""))


def test_it_is_laid_over_and_the_first_stays(
    before: MainWindow, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    phase = before.state.phase
    choose(monkeypatch, "/logs/after.csv")
    before.actions_by_name["result.compare"].trigger()
    with qtbot.waitSignal(before.comparing._worker().finished):
        pass
    assert before.state.phase is phase
    assert before.result_page.plots.comparison.isVisible()
    before.comparing.stop()
    assert before.comparing.idle


def test_what_cannot_be_read_is_told_and_changes_nothing(
    before: MainWindow, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    choose(monkeypatch, "/logs/bad.csv")
    before.actions_by_name["result.compare"].trigger()
    with qtbot.waitSignal(before.comparing._worker().finished):
        pass
    told = before.result_page.plots.caption.text()
    assert "bad.csv" in told
    assert "it ends in the middle" in told.lower()
    assert isinstance(before.state.phase, ShowingPhase)
    assert not before.result_page.plots.comparison.isVisible()


def test_leaving_the_recording_gives_it_up(
    before: MainWindow, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    choose(monkeypatch, "/logs/after.csv")
    before.actions_by_name["result.compare"].trigger()
    before.close_log()
    assert not before.comparing._worker().busy
