"""Going to the trainer's page and back; the page is made when it is asked for first."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ui.presenters.samples import Sample
from ui.state.opening import Opened, OpenOrder
from ui.state.window_state import ExercisePhase, ShowingPhase, StartPhase, WindowState
from ui.widgets.window_frame import WindowFrame

if TYPE_CHECKING:
    from ui.widgets.exercise_page import ExercisePage


class ExercisePlace:
    """Owns the trainer's page.

    Attributes
    ----------
    page : ExercisePage or None
        None until it was asked for.
    """

    def __init__(self, state: WindowState, samples: tuple[Sample, ...], frame: WindowFrame) -> None:
        self._state, self._samples, self._frame = state, samples, frame
        self.page: ExercisePage | None = None

    def go_in(self) -> None:
        """Show the page; what was on the screen is gone back to."""
        phase = self._state.phase
        if isinstance(phase, StartPhase | ShowingPhase):
            self._state.enter(ExercisePhase(phase))

    def leave(self) -> None:
        """Go back to what was on the screen before."""
        phase = self._state.phase
        if isinstance(phase, ExercisePhase):
            self._state.enter(phase.before)

    def show(self) -> None:
        """Bring the page to the front and give it the keyboard."""
        page = self._made()
        self._frame.pages.setCurrentWidget(page)
        page.arrive()

    def stop(self) -> None:
        """End what the page is doing, before the window goes."""
        if self.page is not None:
            self.page.stop()

    def _made(self) -> ExercisePage:
        if self.page is None:
            from ui.widgets.exercise_page import ExercisePage  # noqa: PLC0415 - with the simulator's tables

            self.page = ExercisePage(
                self._state, on_open=self._open, on_leave=self.leave, samples=self._samples
            )
            self._frame.add_page(self.page)
        return self.page

    def _open(self, title: str, opened: Opened) -> None:
        """Look at the recording of a finished exercise as at any other."""
        self._state.enter(ShowingPhase(OpenOrder((title,)), opened))
        self._state.show_page("road-test")
