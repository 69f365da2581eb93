"""What was answered so far and where the person stands, as a value; every move gives a new one."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final, Literal

from triage.corners import Place
from triage.errors import SettingsError
from triage.texts import Text

Kind = Literal["check", "repair"]
KINDS: Final[tuple[Kind, ...]] = ("check", "repair")

NOT_DONE: Final = "not-done"
CANNOT_SAY: Final = "cannot-say"
"""Neither of these two is evidence."""

NO_EVIDENCE: Final = (NOT_DONE, CANNOT_SAY)

CURED: Final = "cured"
NOT_CURED: Final = "not-cured"
REPAIR_ANSWERS: Final = (CURED, NOT_CURED, NOT_DONE)


@dataclass(frozen=True, slots=True)
class Given:
    """One answer.

    Attributes
    ----------
    kind : {"check", "repair"}
    id : str
        Of the check or repair.
    place : str
        Wheel or ``vehicle``.
    answer : str
        An outcome of the check, or what was measured, as ``--observe`` takes it; for a repair ``cured`` or
        ``not-cured``; for both ``not-done``; for a check ``cannot-say``.
    """

    kind: Kind
    id: str
    place: Place
    answer: str

    @property
    def step(self) -> tuple[Kind, str, Place]:
        """What was asked."""
        return self.kind, self.id, self.place

    @property
    def is_evidence(self) -> bool:
        """Whether it says anything about the car."""
        return self.answer not in NO_EVIDENCE


@dataclass(frozen=True, slots=True)
class WalkState:
    """All answers, oldest first.

    Attributes
    ----------
    given : tuple of Given
        At most one for each step.
    position : int or None
        Number of the earlier answer that is looked at again; None for the newest question.
    closed_before : int
        So many answers are from an earlier sitting, after which the car was closed up again.
    """

    given: tuple[Given, ...] = ()
    position: int | None = None
    closed_before: int = 0

    @property
    def looked_at(self) -> Given | None:
        """The earlier answer that is looked at again."""
        return None if self.position is None else self.given[self.position]

    @property
    def finished(self) -> bool:
        """Whether a repair has made the car right."""
        return any(one.answer == CURED for one in self.given)


def answer(state: WalkState, given: Given) -> WalkState:
    """Return the state with an answer: the one looked at is replaced, else it is the newest.

    Raises
    ------
    SettingsError
        When the step was answered before, or another step is looked at.
    """
    if state.position is not None:
        return _replace_looked_at(state, given)
    state = _without_put_off(state, given)
    if any(one.step == given.step for one in state.given):
        told = Text("{check} was answered before", check=given.id)
        raise SettingsError(told, hint="Go back to it to change the answer.")
    return replace(state, given=(*state.given, given))


def _without_put_off(state: WalkState, given: Given) -> WalkState:
    """Forget that a repair was put off when it comes up once more."""
    kept = [one.step != given.step or given.kind != "repair" or one.is_evidence for one in state.given]
    left = tuple(one for one, keep in zip(state.given, kept, strict=True) if keep)
    return replace(state, given=left, closed_before=sum(kept[: state.closed_before]))


def _replace_looked_at(state: WalkState, given: Given) -> WalkState:
    if state.looked_at is None or state.looked_at.step[:2] != given.step[:2]:
        told = Text("{check} is not what is asked now", check=given.id)
        raise SettingsError(told, hint="Answer the question that is shown.")
    at = state.position or 0
    return replace(state, given=(*state.given[:at], given, *state.given[at + 1 :]), position=None)


def back(state: WalkState) -> WalkState:
    """Look at the answer before; nothing is lost, and at the first one nothing happens."""
    before = (len(state.given) if state.position is None else state.position) - 1
    return replace(state, position=before) if before >= 0 else state


def forward(state: WalkState) -> WalkState:
    """Leave the answer looked at as it is and go on to the next one, at last to the newest question."""
    if state.position is None:
        return state
    after = state.position + 1
    return replace(state, position=after if after < len(state.given) else None)


def undo(state: WalkState) -> WalkState:
    """Take the newest answer back."""
    given = state.given[:-1]
    return WalkState(given, None, min(state.closed_before, len(given)))


def new_sitting(state: WalkState) -> WalkState:
    """Return the state of the next day: same answers, newest question, the car closed up."""
    return WalkState(state.given, None, len(state.given))
