"""Menus of the window: every command, with its key."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMenu

from triage.corners import CORNER_NAMES, CORNERS
from ui.presenters.samples import Sample
from ui.widgets.details_tabs import CHECKS_TAB, EVIDENCE_TAB, MISSING_TAB, RECORDING_TAB

if TYPE_CHECKING:
    from ui.window import MainWindow


@dataclass(frozen=True, slots=True)
class Command:
    """A line of a menu; names beginning with ``result.`` need a verdict, with ``opened.`` a log."""

    name: str
    text: str
    keys: str
    run: Callable[[], object]


def build_menus(window: MainWindow, samples: tuple[Sample, ...]) -> dict[str, QAction]:
    """Fill the menu bar; returns the actions by name."""
    actions: dict[str, QAction] = {}
    file_menu = _add_menu(window, _tr("&File"))
    _add(file_menu, _opening_commands(window), actions)
    _add(file_menu, _bench_commands(window), actions)
    if samples:
        _add_samples(window, file_menu, samples)
    file_menu.addSeparator()
    _add(file_menu, _leaving_commands(window), actions)
    _add(_add_menu(window, _tr("&Time")), _time_commands(window), actions)
    view_menu = _add_menu(window, _tr("&View"))
    _add(view_menu, _view_commands(window), actions)
    view_menu.addSeparator()
    _add_corners(window, view_menu, actions)
    view_menu.addSeparator()
    _add(view_menu, _colour_commands(window), actions)
    return actions


def _opening_commands(window: MainWindow) -> tuple[Command, ...]:
    return (
        Command("open", _tr("&Open a recording…"), "Ctrl+O", window.ask_for_files),
        Command("opened.database", _tr("Choose a &signal database…"), "Ctrl+D", window.ask_for_database),
        Command("result.read-differently", _tr("Read it &differently…"), "Ctrl+R", window.ask_how_to_read),
        Command("opened.reload", _tr("Read &again"), "F5", window.reload),
    )


def _bench_commands(window: MainWindow) -> tuple[Command, ...]:
    return (Command("bench", _tr("Ask at the &car, one question at a time"), "Ctrl+B", window.open_bench),)


def _leaving_commands(window: MainWindow) -> tuple[Command, ...]:
    return (
        Command("loading.cancel", _tr("&Stop reading"), "Esc", window.cancel),
        Command("opened.close", _tr("&Close the recording"), "Ctrl+W", window.close_log),
        Command("quit", _tr("&Quit"), "Ctrl+Q", window.close),
    )


def _time_commands(window: MainWindow) -> tuple[Command, ...]:
    plots = window.result_page.plots
    return (
        Command("result.zoom-in", _tr("Zoom &in"), "Ctrl++", lambda: plots.zoom_view(0.5)),
        Command("result.zoom-out", _tr("Zoom &out"), "Ctrl+-", lambda: plots.zoom_view(2.0)),
        Command("result.whole", _tr("&Whole recording"), "Ctrl+0", plots.show_whole),
        Command("result.earlier", _tr("&Earlier"), "Alt+Left", lambda: plots.move_view(-0.5)),
        Command("result.later", _tr("&Later"), "Alt+Right", lambda: plots.move_view(0.5)),
        Command(
            "result.next-place",
            _tr("&Next place of this evidence"),
            "F3",
            lambda: window.state.step_highlight(1),
        ),
        Command(
            "result.previous-place",
            _tr("&Previous place of this evidence"),
            "Shift+F3",
            lambda: window.state.step_highlight(-1),
        ),
        Command("result.clear", _tr("&Remove the marking"), "Ctrl+M", window.state.clear_highlight),
    )


def _view_commands(window: MainWindow) -> tuple[Command, ...]:
    page = window.result_page
    return (
        Command("result.plots", _tr("Go to the &plots"), "Ctrl+1", page.plots.canvas.setFocus),
        Command("result.ranking", _tr("Go to what may be &wrong"), "Ctrl+2", page.ranking.table.setFocus),
        Command(
            "result.evidence",
            _tr("Go to the &evidence"),
            "Ctrl+3",
            lambda: page.details.show_tab(EVIDENCE_TAB),
        ),
        Command(
            "result.checks",
            _tr("Go to the &next checks"),
            "Ctrl+4",
            lambda: page.details.show_tab(CHECKS_TAB),
        ),
        Command(
            "result.missing",
            _tr("Go to what is not &shown"),
            "Ctrl+5",
            lambda: page.details.show_tab(MISSING_TAB),
        ),
        Command(
            "result.recording",
            _tr("Go to how it was &read"),
            "Ctrl+6",
            lambda: page.details.show_tab(RECORDING_TAB),
        ),
    )


def _colour_commands(window: MainWindow) -> tuple[Command, ...]:
    state = window.state
    return (Command("dark", _tr("&Dark or light colours"), "Ctrl+T", lambda: state.set_dark(not state.dark)),)


def _add_corners(window: MainWindow, menu: QMenu, actions: dict[str, QAction]) -> None:
    for number, corner in enumerate(CORNERS, start=1):
        button = window.result_page.plots.key.buttons[corner]
        text = _tr("Show or hide the {} wheel").format(CORNER_NAMES[corner])
        command = Command(f"result.corner-{corner}", text, f"Alt+{number}", button.toggle)
        _add(menu, (command,), actions)


def _add_samples(window: MainWindow, menu: QMenu, samples: tuple[Sample, ...]) -> None:
    inner = menu.addMenu(_tr("Recordings that come with the &program"))
    for sample in samples:
        action = inner.addAction(sample.title.replace("&", "&&"))
        action.triggered.connect(lambda _checked=False, path=sample.path: window.open_sample(path))


def _add_menu(window: MainWindow, title: str) -> QMenu:
    return window.menuBar().addMenu(title)


def _add(menu: QMenu, commands: tuple[Command, ...], actions: dict[str, QAction]) -> None:
    for command in commands:
        action = menu.addAction(command.text)
        action.setShortcut(QKeySequence(command.keys))
        action.triggered.connect(lambda _checked=False, run=command.run: run())
        actions[command.name] = action


def _tr(text: str) -> str:
    return QCoreApplication.translate("Menus", text)
