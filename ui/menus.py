"""Menus of the window: every command, with its key."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMenu, QWidget

from triage.corners import CORNER_NAMES, CORNERS, Corner
from ui.presenters.keys import KeyLine, without_mark
from ui.presenters.samples import Sample
from ui.presenters.steps import build_exercise, build_steps
from ui.state.window_state import BenchPhase, ExercisePhase, LoadingPhase, ShowingPhase, StartPhase
from ui.widgets.key_panel import key_words, page_key_lines
from ui.widgets.speaking import say

if TYPE_CHECKING:
    from ui.main_window import MainWindow
    from ui.widgets.result_page import Part
    from ui.widgets.speed_plots import SpeedPlots


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
    if samples:
        _add_samples(window, file_menu, samples)
    file_menu.addSeparator()
    _add(file_menu, _plot_commands(window), actions)
    file_menu.addSeparator()
    _add(file_menu, _leaving_commands(window), actions)
    _add(_add_menu(window, _tr("&Steps")), _step_commands(window), actions)
    _add(_add_menu(window, _tr("&Time")), _time_commands(window), actions)
    view_menu = _add_menu(window, _tr("&View"))
    _add(view_menu, _view_commands(window), actions)
    view_menu.addSeparator()
    _add_corners(window, view_menu, actions)
    view_menu.addSeparator()
    _add(view_menu, _comfort_commands(window), actions)
    _add(_add_menu(window, _tr("&Help")), _help_commands(window), actions)
    return actions


def enable_commands(window: MainWindow) -> None:
    """Let the commands be used that mean something now."""
    state, actions = window.state, window.actions_by_name
    phase = state.phase
    showing = isinstance(phase, ShowingPhase)
    opened = not isinstance(phase, StartPhase | BenchPhase | ExercisePhase)
    for name, action in actions.items():
        if name.startswith("result."):
            action.setEnabled(showing)
        elif name.startswith("opened."):
            action.setEnabled(opened)
    for step in (*build_steps(phase, state.page, state.opened), build_exercise(phase)):
        actions[f"step.{step.step}"].setEnabled(step.can_go)
    actions["result.finding"].setEnabled(state.highlight is not None)
    actions["result.take-back"].setEnabled(state.trial is not None)
    actions["loading.cancel"].setEnabled(isinstance(phase, LoadingPhase))


def key_lines(window: MainWindow) -> tuple[KeyLine, ...]:
    """Return every key of the window: of its menus, and of its pages."""
    lines = [
        KeyLine(without_mark(menu.title()), key_words(action.shortcut()), without_mark(action.text()))
        for menu in window.menuBar().findChildren(QMenu)
        for action in menu.actions()
        if not action.shortcut().isEmpty()
    ]
    pages: list[tuple[QWidget, str]] = [
        (window.bench_page, _tr("Complaint and checks")),
        (window.result_page, _tr("Road test and verdict")),
    ]
    if window.exercise.page is not None:
        pages.append((window.exercise.page, _tr("Exercise")))
    return (*lines, *(line for page, title in pages for line in page_key_lines(page, title)))


def _opening_commands(window: MainWindow) -> tuple[Command, ...]:
    return (
        Command("open", _tr("&Open a recording…"), "Ctrl+O", window.ask_for_files),
        Command("opened.database", _tr("Choose a &signal database…"), "Ctrl+D", window.ask_for_database),
        Command("result.read-differently", _tr("Read it &differently…"), "Ctrl+R", window.ask_how_to_read),
        Command("opened.reload", _tr("Read &again"), "F5", window.reload),
    )


def _step_commands(window: MainWindow) -> tuple[Command, ...]:
    return (
        Command("step.complaint", _tr("&Complaint and checks"), "Ctrl+B", lambda: window.go_to("complaint")),
        Command("step.road-test", _tr("&Road test"), "F7", lambda: window.go_to("road-test")),
        Command("step.verdict", _tr("&Verdict"), "F8", lambda: window.go_to("verdict")),
        Command("step.exercise", _tr("&Exercise"), "Ctrl+E", lambda: window.go_to("exercise")),
        Command("result.finding", _tr("&Back to the finding"), "F4", window.go_back_to_finding),
        Command("result.what-if", _tr("What &if…"), "Ctrl+I", window.sheets.turn_what_if),
        Command(
            "result.take-back",
            _tr("&Take back what was tried"),
            "Ctrl+Z",
            lambda: window.state.try_out(None),
        ),
    )


def _plot_commands(window: MainWindow) -> tuple[Command, ...]:
    def save_picture() -> None:
        window.result_page.plots.commands.ask_and_save_picture()

    def copy_data() -> None:
        window.result_page.plots.commands.copy_data()

    def save_data() -> None:
        window.result_page.plots.commands.ask_and_save_data()

    def offer_instrument() -> None:
        window.result_page.offer_instrument()

    return (
        Command("result.compare", _tr("Lay another recording &over it…"), "Ctrl+L", window.ask_to_compare),
        Command("result.save-picture", _tr("Sa&ve the picture…"), "Ctrl+S", save_picture),
        Command("result.copy-data", _tr("Copy the va&lues in view"), "Ctrl+Shift+C", copy_data),
        Command("result.save-data", _tr("Save the val&ues in view…"), "Ctrl+Shift+S", save_data),
        Command("result.instrument", _tr("Copy or save the &instrument…"), "Ctrl+Shift+E", offer_instrument),
    )


def _leaving_commands(window: MainWindow) -> tuple[Command, ...]:
    return (
        Command("loading.cancel", _tr("&Stop reading"), "Esc", window.cancel),
        Command("opened.close", _tr("&Close the recording"), "Ctrl+W", window.close_log),
        Command("quit", _tr("&Quit"), "Ctrl+Q", window.close),
    )


def _time_commands(window: MainWindow) -> tuple[Command, ...]:
    def plots() -> SpeedPlots:
        return window.result_page.plots

    return (
        Command("result.zoom-in", _tr("Zoom &in"), "Ctrl++", lambda: plots().zoom_view(0.5)),
        Command("result.zoom-out", _tr("Zoom &out"), "Ctrl+-", lambda: plots().zoom_view(2.0)),
        Command("result.whole", _tr("&Whole recording"), "Ctrl+0", lambda: plots().show_whole()),
        Command("result.earlier", _tr("&Earlier"), "Alt+Left", lambda: plots().move_view(-0.5)),
        Command("result.later", _tr("&Later"), "Alt+Right", lambda: plots().move_view(0.5)),
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
    parts: tuple[tuple[Part, str], ...] = (
        ("plots", _tr("Go to the &plots")),
        ("ranking", _tr("Go to what may be &wrong")),
        ("evidence", _tr("Go to the &evidence")),
        ("checks", _tr("Go to the &next checks")),
        ("missing", _tr("Go to what is not &shown")),
        ("recording", _tr("Go to how it was &read")),
    )
    return tuple(
        Command(f"result.{part}", text, f"Ctrl+{number}", partial(_go_to_part, window, part))
        for number, (part, text) in enumerate(parts, start=1)
    )


def _go_to_part(window: MainWindow, part: Part) -> None:
    window.result_page.go_to(part)


def _comfort_commands(window: MainWindow) -> tuple[Command, ...]:
    return (
        Command("dark", _tr("&Dark or light colours"), "Ctrl+T", window.turn_colours),
        Command("experience", _tr("&Cars of this workshop…"), "Ctrl+G", window.sheets.turn_experience),
        Command("settings", _tr("Se&ttings…"), "Ctrl+,", window.sheets.turn_settings),
    )


def _help_commands(window: MainWindow) -> tuple[Command, ...]:
    return (Command("keys", _tr("&Keys"), "F1", window.sheets.turn_keys),)


def _add_corners(window: MainWindow, menu: QMenu, actions: dict[str, QAction]) -> None:
    for number, corner in enumerate(CORNERS, start=1):
        text = _tr("Show or hide the {} wheel").format(say(CORNER_NAMES[corner]))
        command = Command(
            f"result.corner-{corner}", text, f"Alt+{number}", partial(_turn_corner, window, corner)
        )
        _add(menu, (command,), actions)


def _turn_corner(window: MainWindow, corner: Corner) -> None:
    window.result_page.plots.key.buttons[corner].toggle()


def _add_samples(window: MainWindow, menu: QMenu, samples: tuple[Sample, ...]) -> None:
    inner = menu.addMenu(_tr("Recordings that come with the &program"))
    for sample in samples:
        action = inner.addAction(say(sample.title).replace("&", "&&"))
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
