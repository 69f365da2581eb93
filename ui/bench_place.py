"""Going to the questions at the car and back; their page is made when it is asked for first."""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from triage.errors import TriageError
from ui.state.window_state import BenchPhase, ShowingPhase, StartPhase, WindowState
from ui.widgets.window_frame import WindowFrame

if TYPE_CHECKING:
    from ui.state.bench import Bench
    from ui.widgets.bench_page import BenchPage


class BenchPlace:
    """Owns the page of the questions.

    Parameters
    ----------
    state : WindowState
    frame : WindowFrame
        Where the page belongs.
    samples : frozenset of str
        Files that come with the program; beside them no answers are kept.
    on_refused : callable
        Told why the questions cannot be asked.
    """

    def __init__(
        self,
        state: WindowState,
        frame: WindowFrame,
        *,
        samples: frozenset[str],
        on_refused: Callable[[TriageError], object],
    ) -> None:
        self._state, self._frame, self._samples = state, frame, samples
        self._on_refused = on_refused
        self._page: BenchPage | None = None

    @property
    def page(self) -> BenchPage:
        """The page, made now if nobody asked for it before."""
        if self._page is None:
            from ui.widgets.bench_page import BenchPage  # noqa: PLC0415 - with the walk and its planner

            self._page = BenchPage(on_leave=self.leave)
            self._frame.add_page(self._page)
        return self._page

    def go_in(self) -> None:
        """Ask one question at a time, about what is open or without a recording."""
        phase = self._state.phase
        if not isinstance(phase, StartPhase | ShowingPhase):
            return
        try:
            bench = self._begin(phase)
        except TriageError as error:
            self._on_refused(error)
            return
        self._state.enter(BenchPhase(bench, phase))

    def leave(self) -> None:
        """Go back to where the questions were asked from; the verdict takes in the answers."""
        phase = self._state.phase
        if not isinstance(phase, BenchPhase):
            return
        before = phase.before
        if isinstance(before, ShowingPhase):
            before = _with_answers(before, phase.bench)
        self._state.enter(before)

    def show(self, bench: Bench) -> None:
        """Bring the page to the front, with this walk."""
        self._frame.pages.setCurrentWidget(self.page)
        self.page.open_bench(bench)

    def _begin(self, phase: StartPhase | ShowingPhase) -> Bench:
        from ui.bench_opening import begin_bench  # noqa: PLC0415 - with the walk and its planner

        if isinstance(phase, StartPhase):
            return begin_bench((), None, os.environ, beside_log=False)
        files, opened = phase.order.files, phase.opened
        own = self._is_own(files)
        return begin_bench(files, opened.result, os.environ, beside_log=own, answers=opened.answers)

    def _is_own(self, files: Sequence[str]) -> bool:
        """Tell whether answers may be kept beside these files: they are on the disk, and no samples."""
        return all(Path(file).is_file() for file in files) and not self._samples.intersection(files)


def _with_answers(showing: ShowingPhase, bench: Bench) -> ShowingPhase:
    from ui.bench_opening import with_answers  # noqa: PLC0415 - with the walk and its planner

    result = with_answers(showing.opened.result, bench.view)
    return replace(showing, opened=replace(showing.opened, result=result, answers=bench.view.state))
