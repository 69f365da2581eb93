"""The page of road test and verdict, with the library of its plots: made when it is asked for first."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from ui.state.topic import Topic
from ui.state.window_state import Phase, ShowingPhase, WindowState
from ui.widgets.window_frame import WindowFrame

if TYPE_CHECKING:
    from ui.widgets.result_page import ResultPage
    from ui.widgets.speed_plots import SpeedPlots


class ResultPlace:
    """Owns the page of road test and verdict.

    The page stands before the window enters a phase that shows it, so that its parts hear of that phase too.

    Parameters
    ----------
    state : WindowState
    frame : WindowFrame
        Where the page belongs.
    """

    def __init__(self, state: WindowState, frame: WindowFrame) -> None:
        self._state, self._frame = state, frame
        self._made: Topic[ResultPage] = Topic()
        self._plots: SpeedPlots | None = None
        self._page: ResultPage | None = None
        state.phase_coming.subscribe(self._prepare)

    @property
    def page(self) -> ResultPage:
        """The page, made now if nobody asked for it before."""
        if self._page is None:
            from ui.widgets.result_page import ResultPage  # noqa: PLC0415 - with the library of the plots

            self._page = ResultPage(self._state, plots=self.make_plots())
            self._frame.add_page(self._page)
            self._made.tell(self._page)
        return self._page

    @property
    def made(self) -> ResultPage | None:
        """The page, None when nobody asked for it yet."""
        return self._page

    def make_plots(self) -> SpeedPlots:
        """Return the plots of the page, made now if they were not before; half of the work for it."""
        if self._plots is None:
            from ui.widgets.speed_plots import SpeedPlots  # noqa: PLC0415 - with the library of the plots

            self._plots = SpeedPlots(self._state)
        return self._plots

    def stop(self) -> None:
        """End what works for the page, before the window goes."""
        if self._page is not None:
            self._page.stop()

    def when_made(self, act: Callable[[ResultPage], object]) -> None:
        """Do something to the page: now if it stands, or else as soon as it is made."""
        if self._page is not None:
            act(self._page)
        else:
            self._made.subscribe(act)

    def _prepare(self, phase: Phase) -> None:
        if isinstance(phase, ShowingPhase):
            _ = self.page
