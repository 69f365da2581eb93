"""Making what the start page does without: loaded on a worker, built in the pauses of the window."""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Iterable
from typing import Final

from PySide6.QtCore import QObject, QTimer

from triage.progress import Progress
from ui.runner import Reply, Runner

FIRST_MS: Final = 100
"""The start page is drawn and takes its first key or click before anything else is made."""

PAUSE_MS: Final = 10
"""Between two pieces keys, clicks and drawing have their turn."""

After = Callable[[Exception | None], object]
"""Told that all is made, or why it cannot be."""


class Warming(QObject):
    """Loads libraries on a worker of its own, and does the pieces that need the window in its pauses.

    Parameters
    ----------
    pieces : iterable of callable
        May each be done twice without harm, and hold the window up for less than 0.1 s once the libraries are
        loaded. One that fails is tried again when something else has to wait for it.
    """

    def __init__(self, pieces: Iterable[Callable[[], object]], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._left = deque(pieces)
        self._after: list[After] = []
        self._runner: Runner | None = None
        self._pause = QTimer(self, singleShot=True)
        self._pause.timeout.connect(self._go_on)
        self._loaded = False

    @property
    def done(self) -> bool:
        """Whether nothing is left to do."""
        return not self._left

    @property
    def idle(self) -> bool:
        """Whether no worker runs."""
        return self._runner is None or self._runner.idle

    def begin(self) -> None:
        """Begin when the window has been drawn."""
        self._pause.start(FIRST_MS)

    def then(self, act: After) -> None:
        """Do something when all is made: now if it is, or else as soon as possible."""
        if self.done:
            act(None)
            return
        self._after.append(act)
        if self.idle:
            self._pause.start(0)

    def stop(self) -> None:
        """Leave the rest undone until it is asked for, and end the worker."""
        self._pause.stop()
        self._after.clear()
        if self._runner is not None:
            self._runner.stop()

    def _go_on(self) -> None:
        if not self._loaded:
            self._load()
            return
        if self._left:
            try:
                self._left[0]()
            except Exception as error:  # noqa: BLE001 - who waits must hear of it, whatever it is
                self._tell(error)
                return
            self._left.popleft()
        if self._left:
            self._pause.start(PAUSE_MS)
        else:
            self._tell(None)

    def _load(self) -> None:
        self._runner = Runner(self)
        self._runner.finished.connect(self._take_loaded)
        self._runner.submit(load_pages)

    def _take_loaded(self, reply: Reply[None]) -> None:
        if self._runner is not None:
            self._runner.stop()
        if reply.error is not None:
            self._tell(reply.error)
        else:
            self._loaded = True
            self._go_on()

    def _tell(self, error: Exception | None) -> None:
        after, self._after = self._after, []
        for act in after:
            act(error)


def load_pages(_progress: Progress) -> None:
    """Load the pages and the library of their plots; makes no object of Qt that belongs to a thread."""
    import ui.widgets.bench_page  # noqa: PLC0415
    import ui.widgets.instruments  # noqa: PLC0415
    import ui.widgets.result_page  # noqa: F401, PLC0415
