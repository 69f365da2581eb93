"""Reading another recording while the first stays on the screen, and laying it over that one."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject

from triage.progress import Progress
from ui.presenters.refusal import describe_refusal
from ui.runner import Reply, Runner
from ui.state.opening import Opened, OpenOrder
from ui.state.window_state import Phase, ProgressPoint, WindowState
from ui.widgets.speed_plots import SpeedPlots

Opener = Callable[[OpenOrder, Progress], Opened]


class Comparing(QObject):
    """Owns a worker of its own, made when it is first needed.

    Parameters
    ----------
    state : WindowState
    plots : SpeedPlots
        Show the other recording, and what goes wrong with it.
    opener : callable
        Reads and judges a recording on the worker thread.
    """

    def __init__(self, state: WindowState, plots: SpeedPlots, opener: Opener, *, parent: QObject) -> None:
        super().__init__(parent)
        self._plots, self._opener = plots, opener
        self._runner: Runner | None = None
        self._order: OpenOrder | None = None
        state.phase_changed.subscribe(self._leave)

    def begin(self, order: OpenOrder) -> None:
        """Read another recording; one that is being read is given up."""
        self._order, opener = order, self._opener
        self._plots.caption.setText(self.tr("Reading {}").format(order.title))
        self._worker().submit(lambda progress: opener(order, progress))

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
            self._plots.caption.setText(self.tr("Reading {}: {}").format(self._order.title, done))

    def _take(self, reply: Reply[Opened]) -> None:
        order, self._order = self._order, None
        if order is None:
            return
        if reply.result is not None:
            self._plots.caption.setText("")
            self._plots.set_comparison(reply.result)
        elif reply.error is not None:
            refusal = describe_refusal(reply.error, order)
            self._plots.caption.setText(f"{order.title}: {refusal.reason} {refusal.hint}")

    def _leave(self, _phase: Phase) -> None:
        """Give up what is being read: it was to be laid over what is no longer on the screen."""
        if self._runner is not None and self._order is not None:
            self._runner.cancel()
            self._order = None
