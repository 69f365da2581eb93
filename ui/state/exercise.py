"""The trainer's page without the screen: which exercise, what the trainee did, what it was worth."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from triage.corners import CORNERS, Corner
from triage.errors import TriageError
from triage.evidence.rule_tables import Rulebook
from triage.exercises.attempt import Attempt, commit, order_check
from triage.exercises.exercise import Exercise
from triage.exercises.score import Score
from triage.simulator.road_test import RoadTest
from triage.texts import error_lines, failure_words
from ui.state.opening import Opened
from ui.state.topic import Topic


@dataclass(frozen=True, slots=True)
class Prepared:
    """An exercise with its road test.

    Attributes
    ----------
    told : bool
        Whether the answer is shown from the start, for a class that is being taught.
    """

    exercise: Exercise
    test: RoadTest
    rulebook: Rulebook
    told: bool = False


@dataclass(frozen=True, slots=True)
class Debrief:
    """What came out: the score, and the program's own verdict on the recording."""

    attempt: Attempt
    score: Score
    opened: Opened


@dataclass(frozen=True, slots=True)
class Choosing:
    """The trainer chooses an exercise."""


@dataclass(frozen=True, slots=True)
class Waiting:
    """The computer works; ``before`` is where to go when it is stopped."""

    what: str
    before: Choosing | Working


@dataclass(frozen=True, slots=True)
class Working:
    """A trainee is at the car."""

    prepared: Prepared
    attempt: Attempt
    corner: Corner = CORNERS[0]


@dataclass(frozen=True, slots=True)
class Debriefing:
    """The truth is told."""

    prepared: Prepared
    debrief: Debrief


Stage = Choosing | Waiting | Working | Debriefing


class ExerciseDesk:
    """Everything the exercise page shows. All methods are for the GUI thread.

    Attributes
    ----------
    note : str
        What went wrong with the last thing that was tried, or what it did; empty for nothing.
    """

    def __init__(self) -> None:
        self.stage: Stage = Choosing()
        self.note = ""
        self.stage_changed: Topic[Stage] = Topic()
        self.note_changed: Topic[str] = Topic()

    def wait(self, what: str) -> None:
        """Let the computer work."""
        before = self.stage
        if isinstance(before, Choosing | Working):
            self._enter(Waiting(what, before))

    def stop_waiting(self) -> None:
        """Go back to where the work was asked for."""
        if isinstance(self.stage, Waiting):
            self._enter(self.stage.before)

    def fail(self, error: Exception) -> None:
        """Go back and tell what went wrong."""
        self.stop_waiting()
        self.tell(failure_words(error))

    def begin(self, prepared: Prepared) -> None:
        """Put a trainee before the car."""
        self._enter(Working(prepared, Attempt(prepared.exercise)))

    def debrief(self, debrief: Debrief) -> None:
        """Tell the truth; ignored unless an answer is being scored."""
        if isinstance(self.stage, Waiting) and isinstance(self.stage.before, Working):
            self._enter(Debriefing(self.stage.before.prepared, debrief))

    def choose_corner(self, corner: Corner) -> None:
        """Do the checks at another wheel."""
        if isinstance(self.stage, Working) and corner != self.stage.corner:
            self._enter(replace(self.stage, corner=corner))

    def do_check(self, check_id: str) -> None:
        """Do a check at the wheel that is chosen."""
        if isinstance(self.stage, Working):
            corner, rulebook = self.stage.corner, self.stage.prepared.rulebook
            self._try(lambda attempt: order_check(attempt, check_id, corner, rulebook))

    def hand_in(self, corner: Corner | None, cause: str, confidence: float) -> Attempt | None:
        """Take the answer; None, with a note, when it cannot be taken. The stage stays as it is."""
        if not isinstance(self.stage, Working):
            return None
        rulebook = self.stage.prepared.rulebook
        try:
            attempt = commit(self.stage.attempt, corner, cause, confidence, rulebook=rulebook)
        except TriageError as error:
            self.tell(error_lines(error))
            return None
        self.tell("")
        return attempt

    def leave(self) -> None:
        """Go back to the choice of exercises."""
        self._enter(Choosing())

    def tell(self, note: str) -> None:
        """Tell something in a line of its own."""
        if note != self.note:
            self.note = note
            self.note_changed.tell(note)

    def _try(self, move: Callable[[Attempt], Attempt]) -> None:
        if not isinstance(self.stage, Working):
            return
        try:
            attempt = move(self.stage.attempt)
        except TriageError as error:
            self.tell(error_lines(error))
            return
        self._enter(replace(self.stage, attempt=attempt))

    def _enter(self, stage: Stage) -> None:
        self.stage = stage
        self.tell("")
        self.stage_changed.tell(stage)
