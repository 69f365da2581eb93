"""Reading another recording while the first stays on the screen, and laying it over that one."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import PurePath
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from triage.progress import Progress
from ui.presenters.refusal import describe_refusal
from ui.runner import Reply, Runner
from ui.state.opening import Opened, OpenOrder
from ui.state.window_state import Phase, ProgressPoint, WindowState
from ui.widgets.speaking import say

if TYPE_CHECKING:
    from ui.presenters.comparison import Comparison
    from ui.widgets.speed_plots import SpeedPlots

Opener = Callable[[OpenOrder, Progress], Opened]


@dataclass(frozen=True, slots=True)
class LaidOver:
    """Another recording, and what became of it when it was laid over the one on the screen."""

    other: Opened
    found: Comparison


class Comparing(QObject):
    """Owns a worker of its own, made when it is first needed.

    Signals
    -------
    finished : Reply
        After the other recording, or why it could not be read, is on the screen.

    Parameters
    ----------
    state : WindowState
    plots : callable
        Returns the plots, which show the other recording and what goes wrong with it.
    opener : callable
        Reads and judges a recording on the worker thread.
    """

    finished = Signal(object)

    def __init__(
        self, state: WindowState, plots: Callable[[], SpeedPlots], opener: Opener, *, parent: QObject
    ) -> None:
        super().__init__(parent)
        self._state, self._plots, self._opener = state, plots, opener
        self._runner: Runner | None = None
        self._order: OpenOrder | None = None
        state.phase_changed.subscribe(self._leave)

    def begin(self, order: OpenOrder) -> None:
        """Read another recording; one that is being read is given up."""
        this, opener = self._state.opened, self._opener
        if this is None:
            return
        self._order = order
        self._plots().caption.setText(self.tr("Reading {}").format(order.title))
        self._worker().submit(lambda progress: _lay_over(this, opener(order, progress)))

    def stop(self) -> None:
        """End the worker, before the window goes."""
        if self._runner is not None:
            self._runner.stop()

    @property
    def idle(self) -> bool:
        """Whether no worker runs."""
        return self._runner is None or self._runner.idle

    def _worker(self) -> Runner:
        if self._runner is None:
            self._runner = Runner(self)
            self._runner.progressed.connect(self._report)
            self._runner.finished.connect(self._take)
        return self._runner

    def _report(self, point: ProgressPoint) -> None:
        if self._order is not None:
            done = f"{100 * point.fraction:.0f} %"
            self._plots().caption.setText(self.tr("Reading {}: {}").format(self._order.title, done))

    def _take(self, reply: Reply[LaidOver]) -> None:
        order, self._order = self._order, None
        if order is None:
            return
        if reply.result is not None:
            self._plots().caption.setText("")
            self._plots().set_comparison(reply.result.other, found=reply.result.found)
        elif reply.error is not None:
            refusal = say(describe_refusal(reply.error, order))
            self._plots().caption.setText(f"{order.title}: {refusal.reason} {refusal.hint}")
        self.finished.emit(reply)

    def _leave(self, _phase: Phase) -> None:
        """Give up what is being read: it was to be laid over what is no longer on the screen."""
        if self._runner is not None and self._order is not None:
            self._runner.cancel()
            self._order = None


def _lay_over(this: Opened, other: Opened) -> LaidOver:
    from ui.presenters.comparison import compare  # noqa: PLC0415 - with the numbers' library

    name = PurePath(other.result.log.file).name
    return LaidOver(other, compare(this.result, other.result, name))
