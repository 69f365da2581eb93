"""The walk at the car as the window holds it: which question, what was confirmed, what went wrong."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Final

from triage.corners import Corner
from triage.errors import TriageError
from triage.evidence.rule_tables import Rulebook
from triage.texts import Text, as_text, error_words
from triage.walk.assessment import Assessment, Question, Recording, assess
from triage.walk.terminal import read_answer
from triage.walk.walk_state import CANNOT_SAY, NOT_DONE, WalkState, answer, back, forward, undo
from ui.state.topic import Topic

ASK_TWICE: Final = Text(
    "All answers of this walk will be forgotten. Press “Start afresh” once more to do so."
)


@dataclass(frozen=True, slots=True)
class BenchSetup:
    """What stays the same on one walk.

    Attributes
    ----------
    save : callable
        Keeps the answers; may raise OutputError.
    note : str
        To be told at once: where answers are kept, or why an earlier file could not be read.
    """

    title: str
    recording: Recording
    rulebook: Rulebook
    save: Callable[[WalkState], None]
    state: WalkState
    note: str = ""


@dataclass(frozen=True, slots=True)
class BenchView:
    """What the page shows now.

    Attributes
    ----------
    before : Assessment or None
        What stood there before the last answer.
    confirmed : bool
        Whether the cautions of this step were confirmed, or need not be.
    note : str
        What went wrong, or what else must be told.
    """

    state: WalkState
    now: Assessment
    before: Assessment | None
    confirmed: bool
    note: str

    @property
    def question(self) -> Question | None:
        """What is asked now."""
        return self.now.question


class Bench:
    """Holds the walk; every move saves and tells. All methods are for the GUI thread."""

    def __init__(self, setup: BenchSetup) -> None:
        self.setup = setup
        self.changed: Topic[BenchView] = Topic()
        now = assess(setup.state, setup.recording, setup.rulebook)
        self.view = BenchView(setup.state, now, None, _needs_no_confirming(now), setup.note)

    def confirm(self) -> None:
        """Take the cautions as read and kept to."""
        self._show(replace(self.view, confirmed=True, note=""))

    def say(self, text: str, corner: Corner | None = None) -> None:
        """Answer with an outcome's id, its number or a measured value; a wheel where one may be named."""
        question = self.view.question
        if question is None:
            return
        if not self.view.confirmed:
            self._show(replace(self.view, note=Text("Confirm the cautions first.")))
            return
        try:
            given = read_answer(f"{text}@{corner}" if corner else text, question, self.setup.rulebook)
            self._move(answer(self.view.state, given))
        except TriageError as error:
            self._show(replace(self.view, note=error_words(error)))

    def skip(self) -> None:
        """Leave the step undone."""
        self._without(NOT_DONE)

    def cannot_say(self) -> None:
        """Say that the step was done, and told nothing."""
        self._without(CANNOT_SAY)

    def back(self) -> None:
        """Look at the answer before."""
        self._move(back(self.view.state))

    def forward(self) -> None:
        """Leave an earlier answer as it is."""
        self._move(forward(self.view.state))

    def undo(self) -> None:
        """Take the newest answer back."""
        self._move(undo(self.view.state))

    def start_afresh(self) -> None:
        """Forget all answers; must be asked for twice, since nothing brings them back."""
        if self.view.note == ASK_TWICE or not self.view.state.given:
            self._move(WalkState())
        else:
            self._show(replace(self.view, note=ASK_TWICE))

    def _without(self, none: str) -> None:
        question = self.view.question
        if question is not None:
            said = NOT_DONE if question.kind == "repair" else none
            self._move(answer(self.view.state, question.given(said)))

    def _move(self, state: WalkState) -> None:
        note = as_text("")
        if state.given != self.view.state.given:
            try:
                self.setup.save(state)
            except TriageError as error:
                note = error_words(error, Text("The answers could not be saved"))
        now = assess(state, self.setup.recording, self.setup.rulebook)
        self._show(BenchView(state, now, self.view.now, _needs_no_confirming(now), note))

    def _show(self, view: BenchView) -> None:
        self.view = view
        self.changed.tell(view)


def _needs_no_confirming(now: Assessment) -> bool:
    return now.question is None or not (now.question.acknowledge and now.question.cautions)
