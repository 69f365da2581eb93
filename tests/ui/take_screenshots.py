"""Photograph every page of the window: ``python tests/ui/take_screenshots.py FOLDER``.

A developer's tool: it drives the real window with the real engine over the sample logs, needs no screen, and
writes ``<look>-<theme>-<page>.png`` for every look in :data:`LOOKS`, light and dark. ``--look small`` takes
one look, ``--theme dark`` one theme, ``--only verdict`` the pages with that word in their name,
``--language de`` the German texts. Look at the pictures afterwards: what is cut off, overlaps, is tiny or
unclear?
"""

from __future__ import annotations

import argparse
import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import product
from pathlib import Path
from typing import TYPE_CHECKING

HERE = Path(__file__).resolve()
sys.path.insert(0, str(HERE.parents[2]))

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from ui.window import MainWindow


@dataclass(frozen=True, slots=True)
class Look:
    """A size of the window in points of the screen, the scale of the screen, and the size of the texts."""

    width_px: int
    height_px: int
    scale: float = 1.0
    text_percent: int = 100


LOOKS = {
    "small": Look(1280, 720),
    "large": Look(1920, 1080),
    # A screen of 1920 x 1080 at 200 %, as on a small laptop.
    "double": Look(960, 540, scale=2.0),
    "text200": Look(1280, 720, text_percent=200),
    "readme": Look(1280, 800),
}

THEMES = ("light", "dark")

SETTLE_MS = 350
"""The plots settle their heights and labels after a moment of rest."""

LONGEST_WAIT_S = 120.0

Wait = Callable[[], bool] | None
Scene = Iterator[Wait]
"""Yields what to wait for: a condition, or None for a moment of rest."""


def main() -> int:
    """Take what the command line asks for.

    Every look has a process of its own, for Qt's scale is set once; every theme too, for a change of theme
    styles all widgets anew and takes seconds.
    """
    args = _arguments()
    args.folder.mkdir(parents=True, exist_ok=True)
    if args.inside:
        return _take(args.look[0], args.theme[0], args.folder, args.only, language=args.language)
    for look, theme in product(args.look or LOOKS, args.theme or THEMES):
        given = ["--look", look, "--theme", theme, "--only", args.only, "--language", args.language]
        command = [sys.executable, str(HERE), str(args.folder), *given, "--inside"]
        with tempfile.TemporaryDirectory(prefix="screenshots-") as home:
            places = {"XDG_DATA_HOME": f"{home}/data", "XDG_CONFIG_HOME": f"{home}/config"}
            screen = {"QT_QPA_PLATFORM": "offscreen", "QT_SCALE_FACTOR": str(LOOKS[look].scale)}
            done = subprocess.run(command, env={**os.environ, **places, **screen}, check=False)
        if done.returncode:
            return done.returncode
    return 0


def _arguments() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("folder", type=Path, help="where the pictures go")
    parser.add_argument("--look", action="append", choices=sorted(LOOKS), help="one size; all without")
    parser.add_argument("--theme", action="append", choices=THEMES, help="one theme; both without")
    parser.add_argument("--only", default="", help="a word in the names of the wanted pages")
    parser.add_argument("--language", default="en", help="of the texts, such as de")
    parser.add_argument("--inside", action="store_true", help=argparse.SUPPRESS)
    return parser.parse_args()


def _take(look_name: str, theme: str, folder: Path, only: str, *, language: str) -> int:
    from ui.appearance import follow_text_size, follow_theme, load_translation
    from ui.keeping import Keeping
    from ui.presenters.samples import default_samples_folder, find_samples
    from ui.state.settings import Settings
    from ui.widgets.styling import qt_application
    from ui.window import MainWindow

    look, application = LOOKS[look_name], qt_application()
    load_translation(application, Settings(language=language))
    window = MainWindow(samples=find_samples(default_samples_folder()), keeping=Keeping())
    follow_theme(application, window)
    follow_text_size(application, window.preferences)
    window.preferences.change(colours=theme, text_percent=look.text_percent)
    window.resize(look.width_px, look.height_px)
    window.show()
    window.activateWindow()
    camera = Camera(window, folder, f"{look_name}-{theme}", only)
    try:
        return Director(all_scenes(camera)).run()
    finally:
        window.close()


class Camera:
    """Writes pictures of the window."""

    def __init__(self, window: MainWindow, folder: Path, look: str, only: str) -> None:
        self.window = window
        self._folder, self._look, self._only = folder, look, only

    def shoot(self, page: str) -> Scene:
        """Photograph what is on the screen after a moment of rest."""
        if self._only not in page:
            return
        yield None
        self.window.grab().save(str(self._folder / f"{self._look}-{page}.png"))


class Director:
    """Runs scenes inside Qt's own loop, so that workers get their turn."""

    def __init__(self, scenes: Scene) -> None:
        self._scenes, self._wait = scenes, None
        self._failed = False
        self._until_s = 0.0

    def run(self) -> int:
        """Run to the end; 1 when a scene failed."""
        from PySide6.QtCore import QTimer
        from PySide6.QtWidgets import QApplication

        QTimer.singleShot(SETTLE_MS, self._go_on)
        QApplication.exec()
        return int(self._failed)

    def _go_on(self) -> None:
        from PySide6.QtCore import QTimer
        from PySide6.QtWidgets import QApplication

        try:
            if self._waits():
                QTimer.singleShot(50, self._go_on)
                return
            self._wait = next(self._scenes)
            self._until_s = time.monotonic() + LONGEST_WAIT_S
            QTimer.singleShot(SETTLE_MS if self._wait is None else 50, self._go_on)
        except StopIteration:
            QApplication.exit()
        except BaseException:
            self._failed = True
            QApplication.exit()
            raise

    def _waits(self) -> bool:
        if self._wait is None or self._wait():
            return False
        if time.monotonic() > self._until_s:
            raise TimeoutError("a scene waited in vain")
        return True


def all_scenes(camera: Camera) -> Scene:
    """Return every page, one after the other."""
    for scenes in (opening, road_test, verdict, at_the_car, side_sheets, exercise):
        yield from scenes(camera)


def sample(word: str) -> str:
    """Return the path of the sample log with that word in its name."""
    from ui.presenters.samples import default_samples_folder, find_samples

    return next(one.path for one in find_samples(default_samples_folder()) if word in one.path)


def read(window: MainWindow, path: str) -> Scene:
    """Open a recording and wait for its verdict or refusal."""
    from ui.state.window_state import LoadingPhase

    window.open_files([path])
    yield lambda: not isinstance(window.state.phase, LoadingPhase)
    yield None


def opening(camera: Camera) -> Scene:
    """Start, reading, question, refusal."""
    from triage.texts import Text
    from ui.state.opening import OpenOrder
    from ui.state.window_state import LoadingPhase, ProgressPoint, StartPhase

    window = camera.window
    yield from camera.shoot("start")
    window.state.enter(LoadingPhase(OpenOrder((sample("debris-rear-left"),))))
    window.state.report(ProgressPoint(0.42, Text("Looking for losses")))
    yield from camera.shoot("reading")
    window.state.enter(StartPhase())
    with tempfile.TemporaryDirectory() as scratch:
        unnamed = Path(scratch, "van 3 without names.csv")
        unnamed.write_text("t,a,b,c,d\n" + "".join(f"{n / 50},9,9,9,9\n" for n in range(900)), "utf-8")
        yield from read(window, str(unnamed))
        yield from camera.shoot("question")
        letter = Path(scratch, "letter.csv")
        letter.write_bytes(bytes(range(256)) * 40)
        yield from read(window, str(letter))
        yield from camera.shoot("refusal")


def road_test(camera: Camera) -> Scene:
    """The plots, each instrument, cursors and a comparison."""
    from ui.state.opening import OpenOrder

    window, plots = camera.window, camera.window.result_page.plots
    yield from read(window, sample("crumpet-damage"))
    window.go_to("road-test")
    yield None
    yield from camera.shoot("road-test")
    panel = window.result_page.instruments
    for at, name in enumerate(("ring", "orders", "side-load", "losses", "quality", "car")):
        panel.tabs.setCurrentIndex(at)
        yield None
        # Where the window is narrow the instruments stand below the plots.
        window.result_page.ensureWidgetVisible(panel.tabs, 0, 0)
        yield from camera.shoot(f"road-test-{name}")
    panel.tabs.setCurrentIndex(0)
    window.result_page.arrive()
    middle_s = sum(plots.view_s) / 2
    plots.show_seconds(middle_s - 4.0, middle_s + 4.0)
    plots.time_cursor.place(middle_s)
    plots.time_cursor.place_mark(middle_s + 1.5)
    yield from camera.shoot("road-test-two-cursors")
    plots.time_cursor.clear()
    plots.show_whole()
    window.comparing.begin(OpenOrder((sample("poppyseed-healthy"),)))
    yield lambda: not window.comparing._worker().busy
    yield from camera.shoot("road-test-comparison")
    plots.set_comparison(None)


def verdict(camera: Camera) -> Scene:
    """The verdict with each of its lists, a finding shown in the plots, and an answer that is tried."""
    window, page = camera.window, camera.window.result_page
    window.go_to("verdict")
    for at, name in enumerate(("evidence", "checks", "missing", "recording")):
        page.details.show_tab(at)
        yield from camera.shoot(f"verdict-{name}")
    page.details.show_tab(0)
    page.details.evidence.list.setCurrentIndex(page.details.evidence.list.model().index(0, 0))
    yield None
    _press(page.details.evidence.list, "Return")
    yield from camera.shoot("verdict-place-of-a-finding")
    window.go_to("road-test")
    yield from camera.shoot("road-test-place-of-a-finding")
    window.go_to("verdict")
    window.sheets.turn_what_if()
    yield from camera.shoot("verdict-what-if")
    window.sheets.what_if.answer.setCurrentIndex(1)
    window.sheets.what_if.try_it()
    yield from camera.shoot("verdict-what-if-tried")
    window.state.try_out(None)
    window.sheets.turn_what_if()
    yield from read(window, sample("waffle-healthy"))
    window.go_to("verdict")
    yield from camera.shoot("verdict-healthy")


def at_the_car(camera: Camera) -> Scene:
    """Questions about the complaint, a step with cautions, one with a value."""
    from ui.state.window_state import StartPhase

    window, card = camera.window, camera.window.bench_page.question
    window.state.enter(StartPhase())
    window.bench.go_in()
    yield from camera.shoot("complaint-first-question")
    yield from _walk(window, card.confirm.isVisible)
    yield from camera.shoot("checks-caution")
    window.state.enter(StartPhase())
    window.bench.go_in()
    yield from _walk(window, card.value.isVisible)
    yield from camera.shoot("checks-value")
    window.bench.leave()


def _walk(window: MainWindow, until: Callable[[], bool]) -> Scene:
    bench = window.bench_page.bench
    for _ in range(60):
        if until() or bench.view.question is None:
            return
        if not bench.view.confirmed:
            bench.confirm()
        bench.cannot_say()
        yield None


def side_sheets(camera: Camera) -> Scene:
    """Settings, keys, cars of the workshop."""
    window = camera.window
    yield from read(window, sample("crumpet-damage"))
    for name, turn in (
        ("settings", window.sheets.turn_settings),
        ("keys", window.sheets.turn_keys),
        ("workshop-cars", window.sheets.turn_experience),
    ):
        turn()
        yield from camera.shoot(name)
        turn()


def exercise(camera: Camera) -> Scene:
    """Library, work, debriefing."""
    from triage.exercises.exercise import Wish
    from ui.exercising import from_wish
    from ui.state.exercise import Debriefing, Working

    window = camera.window
    window.go_to("exercise")
    page = window.exercise.page
    yield from camera.shoot("exercise-library")
    page.begin(from_wish(Wish(7, "encoder-debris", "RL", 0.6, 90.0)))
    yield lambda: isinstance(page.desk.stage, Working)
    page.work.replay.replay.scrub(55.0)
    page.desk.choose_corner("RL")
    page.desk.do_check("rock-wheel")
    page.desk.do_check("turn-by-hand")
    yield from camera.shoot("exercise-work")
    page.hand_in("RL", "encoder-damage", 0.7)
    yield lambda: isinstance(page.desk.stage, Debriefing)
    yield from camera.shoot("exercise-debrief")


def _press(widget: QWidget, key: str) -> None:
    from PySide6.QtCore import QEvent, Qt
    from PySide6.QtGui import QKeyEvent
    from PySide6.QtWidgets import QApplication

    code = Qt.Key[f"Key_{key}"]
    for kind in (QEvent.Type.KeyPress, QEvent.Type.KeyRelease):
        QApplication.sendEvent(widget, QKeyEvent(kind, code, Qt.KeyboardModifier.NoModifier))


if __name__ == "__main__":
    raise SystemExit(main())
