"""Opening, dropping, refusing and stopping, and the whole walk with the real engine."""

from __future__ import annotations

import subprocess
import sys
import threading
from collections.abc import Callable
from pathlib import Path
from unittest.mock import Mock

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QApplication, QFileDialog, QWidget
from pytestqt.qtbot import QtBot

from triage.errors import DamagedLog, LogReadError, SignalMappingError
from triage.logs.options import ReadOptions
from triage.progress import Progress
from triage.speed_log import SpeedLog
from triage.vehicle import Vehicle
from ui.file_dialogs import database_filter, log_filter
from ui.opening import open_and_judge
from ui.presenters.samples import Sample
from ui.state.opening import Opened, OpenOrder
from ui.state.window_state import LoadingPhase, RefusedPhase, ShowingPhase, StartPhase
from ui.window import MainWindow

ROOT = Path(__file__).resolve().parents[2]
WindowFrom = Callable[..., MainWindow]


def open_and_wait(window: MainWindow, qtbot: QtBot, *files: str, options: ReadOptions | None = None) -> None:
    with qtbot.waitSignal(window.runner.finished):
        window.open_files(list(files), options)


def test_a_sample_is_opened_by_its_button(window_from: WindowFrom, opened: Opened, qtbot: QtBot) -> None:
    orders: list[OpenOrder] = []
    window = window_from(
        opener=lambda order, _progress: orders.append(order) or opened,
        samples=(Sample("/samples/van_3.csv", "van 3", ""),),
    )
    with qtbot.waitSignal(window.runner.finished):
        qtbot.mouseClick(window.start_page.sample_buttons[0], Qt.MouseButton.LeftButton)
    assert orders == [OpenOrder(("/samples/van_3.csv",))]


def test_a_refusal_is_a_page_not_a_box(window_from: WindowFrom, qtbot: QtBot) -> None:
    def refuse(_order: OpenOrder, _progress: Progress) -> Opened:
        raise DamagedLog("no row holds a number", file="a.csv", place="line 12", hint="Record again.")

    window = window_from(opener=refuse)
    open_and_wait(window, qtbot, "a.csv")
    page = window.refusal_page
    assert page.isVisible()
    assert [page.fields[name].text() for name in ("file", "place", "reason", "hint")] == [
        "a.csv",
        "line 12",
        "No row holds a number.",
        "Record again.",
    ]
    assert not page.database_button.isVisible()
    assert not page.form.isVisible()
    assert QApplication.activeModalWidget() is None


def refuse_once(opened: Opened, orders: list[OpenOrder]) -> Callable[[OpenOrder, Progress], Opened]:
    def opener(order: OpenOrder, _progress: Progress) -> Opened:
        orders.append(order)
        if len(orders) == 1:
            raise SignalMappingError(
                "unclear", candidates=("W.a", "W.b", "W.c", "W.d"), hint="--map or --dbc"
            )
        return opened

    return opener


def test_a_database_can_be_chosen_and_it_is_tried_again(
    window_from: WindowFrom, opened: Opened, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    orders: list[OpenOrder] = []
    window = window_from(opener=refuse_once(opened, orders))
    open_and_wait(window, qtbot, "a.blf")
    monkeypatch.setattr(QFileDialog, "getOpenFileNames", lambda *_args: (["/logs/car.dbc"], ""))
    with qtbot.waitSignal(window.runner.finished):
        qtbot.mouseClick(window.refusal_page.database_button, Qt.MouseButton.LeftButton)
    assert orders[1].options.databases == ("/logs/car.dbc",)
    assert isinstance(window.state.phase, ShowingPhase)


def test_wheels_can_be_assigned_by_hand(window_from: WindowFrom, opened: Opened, qtbot: QtBot) -> None:
    orders: list[OpenOrder] = []
    window = window_from(opener=refuse_once(opened, orders))
    open_and_wait(window, qtbot, "a.blf")
    page = window.refusal_page.form
    assert not page.unit.isVisible()
    for combo in page.combos.values():
        combo.setCurrentIndex(1)
    assert not page.button.isEnabled(), "one signal cannot be four wheels"
    for index, combo in enumerate(page.combos.values(), start=1):
        combo.setCurrentIndex(index)
    with qtbot.waitSignal(window.runner.finished):
        qtbot.mouseClick(page.button, Qt.MouseButton.LeftButton)
    assert orders[1].options.mapping == {"FL": "W.a", "FR": "W.b", "RL": "W.c", "RR": "W.d"}


def test_the_tyre_radius_can_be_stated(window_from: WindowFrom, opened: Opened, qtbot: QtBot) -> None:
    orders: list[OpenOrder] = []

    def opener(order: OpenOrder, _progress: Progress) -> Opened:
        orders.append(order)
        if order.options.circumference_m is None:
            raise LogReadError("the speeds are in rad/s", hint="State it with --tyre-radius.")
        return opened

    window = window_from(opener=opener)
    open_and_wait(window, qtbot, "a.csv")
    form = window.refusal_page.form
    assert form.radius.isVisible()
    assert form.radius.hasFocus()
    assert not form.button.isEnabled()
    form.radius.setValue(0.312)
    with qtbot.waitSignal(window.runner.finished):
        qtbot.mouseClick(form.button, Qt.MouseButton.LeftButton)
    assert orders[1].options.circumference_m == pytest.approx(1.9604, abs=1e-4)
    assert isinstance(window.state.phase, ShowingPhase)


def test_a_recording_can_be_read_differently(window_from: WindowFrom, opened: Opened, qtbot: QtBot) -> None:
    orders: list[OpenOrder] = []
    window = window_from(opener=lambda order, _progress: orders.append(order) or opened)
    open_and_wait(window, qtbot, "a.csv")
    window.actions_by_name["result.read-differently"].trigger()
    form = window.refusal_page.form
    assert form.isVisible()
    assert form.unit.isVisible()
    swapped = ("v_fr_kmh", "v_fl_kmh", "v_rl_kmh", "v_rr_kmh")
    for combo, source in zip(form.combos.values(), swapped, strict=True):
        combo.setCurrentText(source)
    form.unit.setCurrentText("mph")
    with qtbot.waitSignal(window.runner.finished):
        qtbot.mouseClick(form.button, Qt.MouseButton.LeftButton)
    assert orders[1].options.unit == "mph"
    assert tuple(orders[1].options.mapping.values()) == swapped


def test_signals_that_were_right_need_not_be_said_again(
    window_from: WindowFrom, opened: Opened, qtbot: QtBot
) -> None:
    orders: list[OpenOrder] = []
    window = window_from(opener=lambda order, _progress: orders.append(order) or opened)
    open_and_wait(window, qtbot, "a.csv")
    window.ask_how_to_read()
    form = window.refusal_page.form
    assert [combo.currentText() for combo in form.combos.values()] == [
        *("v_fl_kmh", "v_fr_kmh", "v_rl_kmh", "v_rr_kmh")
    ]
    assert not form.button.isEnabled(), "nothing was changed yet"
    assert window.refusal_page.database_button.property("primary") is False
    form.combos["FL"].setCurrentText("v_fr_kmh")
    assert not form.button.isEnabled(), "one signal cannot be two wheels"
    form.combos["FL"].setCurrentText("other_column")
    assert form.answers.mapping["FL"] == "other_column", "a name may be typed"
    form.combos["FL"].setCurrentText("v_fl_kmh")
    form.unit.setCurrentText("mph")
    with qtbot.waitSignal(window.runner.finished):
        qtbot.mouseClick(form.button, Qt.MouseButton.LeftButton)
    assert orders[1].options == ReadOptions(unit="mph")


def test_what_the_command_says_holds_for_all_but_the_samples(
    window_from: WindowFrom, opened: Opened, qtbot: QtBot
) -> None:
    orders: list[OpenOrder] = []
    options, vehicle = ReadOptions(unit="km/h"), Vehicle(track_m=1.62)
    window = window_from(
        opener=lambda order, _progress: orders.append(order) or opened, options=options, vehicle=vehicle
    )
    open_and_wait(window, qtbot, "a.csv")
    with qtbot.waitSignal(window.runner.finished):
        window.open_sample("/samples/van_3.csv")
    assert orders == [OpenOrder(("a.csv",), options, vehicle), OpenOrder(("/samples/van_3.csv",))]
    with qtbot.waitSignal(window.runner.finished):
        window.open_files(["b.csv"])
    assert "1.62 m" in window.result_page.details.recording.toPlainText()


@pytest.fixture
def judged(monkeypatch: pytest.MonkeyPatch, opened: Opened) -> Mock:
    """Let every file be read and judged as the log at hand."""
    run = Mock(return_value=opened.result)
    monkeypatch.setattr("triage.evidence.rulebook.load_rulebook", lambda: Mock(causes={}, measurements={}))
    monkeypatch.setattr("triage.logs.read_log", lambda *_args: opened.result.log)
    monkeypatch.setattr("triage.run.run_triage", run)
    return run


def test_the_car_reaches_the_judgement(judged: Mock) -> None:
    open_and_judge(OpenOrder(("a.csv",), vehicle=Vehicle(track_m=1.62)), lambda *_args: None)
    assert [call.kwargs["vehicle"] for call in judged.call_args_list] == [Vehicle(track_m=1.62)]


@pytest.mark.usefixtures("judged")
def test_the_rows_of_a_recording_are_counted_by_the_worker(
    window_from: WindowFrom, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    counted: list[threading.Thread] = []
    count = SpeedLog.instants_s.fget
    counting = property(lambda log: counted.append(threading.current_thread()) or count(log))
    monkeypatch.setattr(SpeedLog, "instants_s", counting)
    window = window_from(opener=open_and_judge)
    open_and_wait(window, qtbot, "a.csv")
    assert "3000 rows" in window.result_page.header.recording.text()
    assert counted
    assert threading.main_thread() not in counted


def test_the_dialogs_know_every_kind_in_small_and_capital_letters() -> None:
    for kind in ("*.csv", "*.BLF", "*.mf4", "*.gz", "*.MDF", "*.dat"):
        assert f"{kind} " in log_filter().replace(")", " ")
    assert "*.DBC " in database_filter()


def test_reading_shows_progress_and_can_be_stopped(window_from: WindowFrom, qtbot: QtBot) -> None:
    stopped = threading.Event()

    def endless(_order: OpenOrder, progress: Progress) -> Opened:
        try:
            while True:
                progress(0.4, "Reading rows")
        finally:
            stopped.set()

    window = window_from(opener=endless)
    window.open_files(["a.csv"])
    assert isinstance(window.state.phase, LoadingPhase)
    qtbot.waitUntil(lambda: window.loading_page.stage.text() == "40 % · Reading rows")
    assert window.loading_page.bar.value() == 400
    window.actions_by_name["loading.cancel"].trigger()
    assert window.state.phase == StartPhase()
    assert stopped.wait(10.0)


def test_closing_while_reading_ends_the_worker(window_from: WindowFrom) -> None:
    def endless(_order: OpenOrder, progress: Progress) -> Opened:
        while True:
            progress(0.4, "Reading rows")

    window = window_from(opener=endless)
    window.open_files(["a.csv"])
    window.close()
    assert window.runner.idle


def drop(onto: QWidget, *files: str) -> None:
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(file) for file in files])
    arguments = (Qt.DropAction.CopyAction, data, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier)
    entering = QDragEnterEvent(QPoint(9, 9), *arguments)
    entering.ignore()
    QApplication.sendEvent(onto, entering)
    assert entering.isAccepted()
    QApplication.sendEvent(onto, QDropEvent(QPointF(9, 9), *arguments))


def test_dropped_files_are_opened_with_their_database(
    window_from: WindowFrom, opened: Opened, qtbot: QtBot
) -> None:
    orders: list[OpenOrder] = []
    window = window_from(opener=lambda order, _progress: orders.append(order) or opened)
    with qtbot.waitSignal(window.runner.finished):
        drop(window, "/logs/part1.blf", "/logs/car.DBC", "/logs/part2.blf")
    assert orders == [OpenOrder(("/logs/part1.blf", "/logs/part2.blf"), ReadOptions(("/logs/car.DBC",)))]


def test_a_recording_can_be_dropped_on_any_panel(showing: MainWindow, qtbot: QtBot) -> None:
    page = showing.result_page
    panels = (page.plots.canvas.viewport(), page.details.checks.viewport(), page.ranking.table.viewport())
    for number, panel in enumerate(panels):
        with qtbot.waitSignal(showing.runner.finished):
            drop(panel, f"/logs/{number}.csv")
        assert showing.windowTitle().startswith(f"{number}.csv")


def test_a_database_that_comes_first_is_kept_for_the_recording(
    window_from: WindowFrom, opened: Opened, qtbot: QtBot
) -> None:
    orders: list[OpenOrder] = []
    window = window_from(opener=lambda order, _progress: orders.append(order) or opened)
    drop(window, "/logs/car.dbc")
    assert window.start_page.note.isVisible()
    assert window.start_page.note.text().startswith("car.dbc will be used")
    open_and_wait(window, qtbot, "a.blf")
    assert orders == [OpenOrder(("a.blf",), ReadOptions(("/logs/car.dbc",)))]


def test_a_dropped_database_is_used_for_what_is_open(
    window_from: WindowFrom, opened: Opened, qtbot: QtBot
) -> None:
    orders: list[OpenOrder] = []
    window = window_from(opener=refuse_once(opened, orders))
    open_and_wait(window, qtbot, "a.blf")
    with qtbot.waitSignal(window.runner.finished):
        drop(window, "/logs/car.dbc")
    assert orders[1] == OpenOrder(("a.blf",), ReadOptions(("/logs/car.dbc",)))


def test_a_database_alone_opens_nothing(window_from: WindowFrom) -> None:
    window = window_from()
    drop(window, "/logs/car.dbc")
    assert window.state.phase == StartPhase()


def test_the_command_lines_options_are_used(window_from: WindowFrom, opened: Opened, qtbot: QtBot) -> None:
    orders: list[OpenOrder] = []
    window = window_from(opener=lambda order, _progress: orders.append(order) or opened)
    open_and_wait(window, qtbot, "a.csv", options=ReadOptions(unit="mph"))
    with qtbot.waitSignal(window.runner.finished):
        window.actions_by_name["opened.reload"].trigger()
    assert [order.options.unit for order in orders] == ["mph", "mph"]


def write_drive(path: Path) -> None:
    """A minute and a half; the rear right wheel goes silent for five seconds, twice."""
    rows = ["time_s;FL;FR;RL;RR\n;km/h;km/h;km/h;km/h\n"]
    for step in range(90 * 25):
        time_s = step / 25.0
        speed = 50.0 * min(1.0, time_s / 10.0, max(0.0, 90.0 - time_s) / 10.0)
        ripple = 0.05 * ((step * 7919) % 13 - 6) / 6.0
        wheels = [f"{max(speed + ripple * sign, 0.0):.2f}".replace(".", ",") for sign in (1, -1, 1)]
        last = "0,00" if 30 <= time_s < 35 or 60 <= time_s < 65 else f"{speed - ripple:.2f}".replace(".", ",")
        rows.append(";".join([f"{time_s:.2f}".replace(".", ","), *wheels, last]) + "\n")
    path.write_text("".join(rows), "utf-8")


def test_from_a_file_to_the_evidence(window_from: WindowFrom, qtbot: QtBot, tmp_path: Path) -> None:
    """The whole walk with the real engine: open, read the verdict, look at its evidence in the plot."""
    drive = tmp_path / "Prüffahrt 3.csv"
    write_drive(drive)
    window = window_from()
    with qtbot.waitSignal(window.runner.finished, timeout=60_000):
        window.open_files([str(drive)])
    assert isinstance(window.state.phase, ShowingPhase), window.state.phase
    page = window.result_page
    assert page.header.title.text().startswith("Suspected: rear right")
    assert "Prüffahrt 3.csv" in page.header.recording.text()
    evidence = page.details.evidence.list
    names = [evidence.model().index(row, 0).data(Qt.ItemDataRole.UserRole).finding_id for row in range(3)]
    assert any(name.endswith("@RR") for name in names)
    row = next(row for row, name in enumerate(names) if name.endswith("@RR"))
    evidence.setFocus()
    evidence.setCurrentIndex(evidence.model().index(row, 0))
    qtbot.keyClick(evidence, Qt.Key.Key_Return)
    assert window.state.highlight is not None
    begin_s, end_s = window.state.highlight.span
    assert page.plots.view_s[0] <= begin_s <= end_s <= page.plots.view_s[1]


def test_a_file_that_is_no_log(window_from: WindowFrom, qtbot: QtBot, tmp_path: Path) -> None:
    letter = tmp_path / "letter.csv"
    letter.write_text("Dear customer,\nyour van is ready.\n", "utf-8")
    window = window_from()
    with qtbot.waitSignal(window.runner.finished, timeout=60_000):
        window.open_files([str(letter)])
    assert isinstance(window.state.phase, RefusedPhase)
    assert "letter.csv" in window.refusal_page.fields["file"].text()
    assert window.refusal_page.fields["reason"].text()


STARTING = """
import sys
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication
import ui.window
made = []
class Kept(ui.window.MainWindow):
    def __init__(self, **arguments):
        super().__init__(**arguments)
        made.append(self)
ui.window.MainWindow = Kept
application = QApplication(["test"])
QTimer.singleShot(300, application.exit if sys.argv[1] == "exit" else application.closeAllWindows)
code = ui.window.main(sys.argv[2:])
print("idle", [window.runner.idle for window in made])
sys.exit(code)
"""


@pytest.mark.parametrize("way", ["exit", "close"])
def test_it_ends_without_a_crash_while_reading(way: str, tmp_path: Path) -> None:
    drive = tmp_path / "drive.csv"
    write_drive(drive)
    command = [sys.executable, "-c", STARTING, way, str(drive)]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, timeout=120, check=False)
    assert (done.returncode, done.stdout.strip(), done.stderr) == (0, "idle [True]", "")
