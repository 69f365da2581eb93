"""The one owner of the worker thread: numbered requests in, numbered replies out, stale ones dropped."""

from __future__ import annotations

import queue
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Final, Generic, TypeVar

from PySide6.QtCore import QObject, QThread, QTimer, Signal, Slot

from triage.progress import Cancelled, Progress
from ui.collecting import LoadedLibraries, no_full_collection
from ui.pacing import PacedProgress
from ui.state.window_state import ProgressPoint

Result = TypeVar("Result")
Work = Callable[[Progress], Result]

LOOK_EVERY_MS: Final = 50
"""Progress is passed on at most twenty times a second: more than the eye needs."""


@dataclass(frozen=True, slots=True)
class Request(Generic[Result]):
    """Work to be done; its number tells which replies are still wanted."""

    number: int
    work: Work[Result]
    progress: PacedProgress = field(default_factory=PacedProgress)


@dataclass(frozen=True, slots=True)
class Reply(Generic[Result]):
    """End of a request: exactly one of result and error, or neither when it was cancelled."""

    number: int
    result: Result | None = None
    error: Exception | None = None
    cancelled: bool = False


class _Worker(QThread):
    """Takes requests one after the other; ``None`` ends it."""

    replied = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.inbox: queue.SimpleQueue[Request[object] | None] = queue.SimpleQueue()

    def run(self) -> None:
        """Work until told to end."""
        loaded = LoadedLibraries()
        while (request := self.inbox.get()) is not None:
            with no_full_collection():
                reply = _answer(request)
                loaded.set_aside()
            self.replied.emit(reply)
            # What is not let go of here lives until the next request, however large it is.
            del request, reply


def _answer(request: Request[object]) -> Reply[object]:
    try:
        request.progress(0.0, "Starting")
        return Reply(request.number, result=request.work(request.progress))
    except Cancelled:
        return Reply(request.number, cancelled=True)
    except Exception as error:  # noqa: BLE001 - a defect must reach the window as a message
        return Reply(request.number, error=error)


class Runner(QObject):
    """Runs one piece of work at a time off the GUI thread.

    Signals
    -------
    progressed : ProgressPoint
        At most twenty a second, only of the newest request, only what changed.
    finished : Reply
        Only of the newest request.
    """

    progressed = Signal(object)
    finished = Signal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._newest: Request[object] | None = None
        self._count = 0
        self._shown: ProgressPoint | None = None
        self._look = QTimer(self, interval=LOOK_EVERY_MS)
        self._look.timeout.connect(self._pass_progress)
        self._worker = _Worker()
        self._worker.replied.connect(self._pass_reply)
        self._worker.start()

    @property
    def busy(self) -> bool:
        """Whether a reply is still awaited."""
        return self._newest is not None

    @property
    def idle(self) -> bool:
        """Whether the worker has ended, which it does only after :meth:`stop`."""
        return self._worker.isFinished()

    def submit(self, work: Work[object]) -> int:
        """Cancel what runs and do this instead; returns the number of the request."""
        self.cancel()
        self._count += 1
        self._newest = Request(self._count, work)
        self._worker.inbox.put(self._newest)
        self._look.start()
        return self._count

    def cancel(self) -> None:
        """Stop what runs at its next report; its reply will not be passed on."""
        if self._newest is not None:
            self._newest.progress.cancelled.set()
            self._forget()

    def stop(self) -> None:
        """Cancel, end the worker and wait for it. Must be called before the program ends."""
        self.cancel()
        self._worker.inbox.put(None)
        # A running QThread that is destroyed aborts the process; reports come often, so this is short.
        self._worker.wait()

    def _forget(self) -> None:
        self._look.stop()
        self._newest = None
        self._shown = None

    @Slot()
    def _pass_progress(self) -> None:
        point = None if self._newest is None else self._newest.progress.latest
        if point is not None and point != self._shown:
            self._shown = point
            self.progressed.emit(point)

    @Slot(object)
    def _pass_reply(self, reply: Reply[object]) -> None:
        if self._newest is not None and reply.number == self._newest.number:
            self._forget()
            self.finished.emit(reply)
