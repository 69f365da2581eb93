"""Working an instrument out: at once where that is quick, on a worker where the recording is very long."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QObject

from ui.runner import Reply, Runner
from ui.state.opening import Opened

MOST_AT_ONCE: Final = 1_000_000
"""Samples of a wheel (2.8 h at 100 Hz): up to here no instrument takes more than a twentieth of a second."""

Show = Callable[[], object]
"""Shows what was worked out; for the thread of the window."""


class InstrumentWork(QObject):
    """Owns a worker, made for the first recording that is long; only the newest work is answered."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._runner: Runner | None = None
        self._answer: Callable[[Reply[Show]], object] = _ignore

    @property
    def idle(self) -> bool:
        """Whether no worker runs."""
        return self._runner is None or self._runner.idle

    def submit(self, work: Callable[[], Show], answer: Callable[[Reply[Show]], object]) -> None:
        """Work something out instead of what runs, and answer with it or with why it could not be.

        Parameters
        ----------
        work : callable
            Touches no widget; it returns what shows its result.
        answer : callable
            Called on the thread of the window, unless something else is wanted by then.
        """
        if self._runner is None:
            self._runner = Runner(self)
            self._runner.finished.connect(self._take)
        self._answer = answer
        self._runner.submit(lambda _progress: work())

    def give_up(self) -> None:
        """Answer nothing of what runs."""
        self._answer = _ignore
        if self._runner is not None:
            self._runner.cancel()

    def stop(self) -> None:
        """End the worker, before the window goes; another is made when it is needed again."""
        self.give_up()
        if self._runner is not None:
            self._runner.stop()
            self._runner.deleteLater()
            self._runner = None

    def _take(self, reply: Reply[Show]) -> None:
        # What it held of a recording is let go of.
        answer, self._answer = self._answer, _ignore
        answer(reply)


def work_out_now(work: Callable[[], Show]) -> Reply[Show]:
    """Work something out while the window waits; what fails is answered, as of the worker."""
    try:
        return Reply(0, result=work())
    except Exception as error:  # noqa: BLE001 - a defect must reach the window as a message
        return Reply(0, error=error)


def is_quick(opened: Opened) -> bool:
    """Return whether every instrument of a recording is worked out before the user could notice."""
    return opened.result.analysis.clock.time_s.size <= MOST_AT_ONCE


def _ignore(_reply: Reply[Show]) -> None:
    """Answer nobody."""
