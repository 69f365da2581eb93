"""The steps of the job as the top of the window shows them, with what each has told so far."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, Literal

from triage.corners import CORNER_NAMES
from triage.texts import Text
from triage.units import format_share
from triage.walk.walk_state import Given
from ui.presenters.verdict import DECIDED, SOUND_CAUSE, corner_shares, suspected_corner
from ui.presenters.wording import format_duration
from ui.state.opening import Opened
from ui.state.window_state import (
    BenchPhase,
    ExercisePhase,
    LoadingPhase,
    Page,
    Phase,
    ShowingPhase,
    StartPhase,
)

if TYPE_CHECKING:
    from triage.evidence.hypotheses import Posterior

Step = Literal["complaint", "road-test", "verdict"]
Place = Literal["complaint", "road-test", "verdict", "exercise"]
"""The steps, and what stands apart from them."""

STEPS: Final[tuple[Step, ...]] = ("complaint", "road-test", "verdict")


@dataclass(frozen=True, slots=True)
class StepText:
    """One step.

    Attributes
    ----------
    told : str
        What it has told so far.
    can_go : bool
        Whether it can be turned to now.
    is_here : bool
        Whether it is on the screen.
    """

    step: Place
    title: str
    told: str
    can_go: bool
    is_here: bool


@dataclass(frozen=True, slots=True)
class CarText:
    """Which car, and which corner of it.

    Attributes
    ----------
    suspect : str
        The corner the verdict points at, in words; empty without a verdict.
    decided : bool
        Whether that corner stands out.
    """

    title: str
    suspect: str
    decided: bool


TITLES: Final[dict[Step, str]] = {
    "complaint": Text("Complaint and checks"),
    "road-test": Text("Road test"),
    "verdict": Text("Verdict"),
}


def build_steps(phase: Phase, page: Page, shown: Opened | None) -> tuple[StepText, ...]:
    """Word the steps.

    Parameters
    ----------
    phase, page
        Where the window is.
    shown : Opened or None
        The recording with the verdict that is shown.
    """
    here = _here(phase, page)
    told = {
        "complaint": _told_at_car(phase),
        "road-test": _told_on_road(phase, shown),
        "verdict": _told_by_verdict(phase, shown),
    }
    open_steps = _open_steps(phase)
    return tuple(StepText(step, TITLES[step], told[step], step in open_steps, step == here) for step in STEPS)


def build_exercise(phase: Phase) -> StepText:
    """Word the way to the exercises, which are no step of the job."""
    can_go = isinstance(phase, StartPhase | ShowingPhase | BenchPhase | ExercisePhase)
    here = isinstance(phase, ExercisePhase)
    return StepText("exercise", Text("Exercise"), Text("for training"), can_go, here)


def build_car(phase: Phase, shown: Opened | None) -> CarText:
    """Word which car is looked at and which corner is suspected."""
    if isinstance(phase, StartPhase):
        return CarText(Text("No car yet"), "", decided=False)
    if isinstance(phase, ExercisePhase):
        return CarText(Text("The car of the exercise"), "", decided=False)
    title = phase.bench.setup.title if isinstance(phase, BenchPhase) else phase.order.title
    posterior = _posterior(phase, shown)
    if posterior is None:
        return CarText(title, "", decided=False)
    shares = corner_shares(posterior)
    suspect = suspected_corner(shares)
    if suspect is None:
        return CarText(title, Text("No corner stands out"), decided=False)
    wheel, share = CORNER_NAMES[suspect], format_share(shares[suspect])
    words = Text("Suspected: {corner} {wheel}, {share}", corner=suspect, wheel=wheel, share=share)
    return CarText(title, words, decided=True)


def _posterior(phase: Phase, shown: Opened | None) -> Posterior | None:
    if isinstance(phase, BenchPhase):  # with every answer up to now
        return phase.bench.view.now.judgement.posterior
    return None if shown is None else shown.result.posterior


def _here(phase: Phase, page: Page) -> Step | None:
    if isinstance(phase, BenchPhase):
        return "complaint"
    return page if isinstance(phase, ShowingPhase) else None


def _open_steps(phase: Phase) -> frozenset[Step]:
    if isinstance(phase, ShowingPhase) or _behind(phase) is not None:
        return frozenset(STEPS)
    can_ask = isinstance(phase, StartPhase | BenchPhase | ExercisePhase)
    return frozenset({"complaint"}) if can_ask else frozenset()


def _behind(phase: Phase) -> Opened | None:
    """Return the recording that can be gone back to."""
    if isinstance(phase, BenchPhase | ExercisePhase) and isinstance(phase.before, ShowingPhase):
        return phase.before.opened
    return None


def _told_at_car(phase: Phase) -> str:
    given: tuple[Given, ...] = ()
    if isinstance(phase, BenchPhase):
        given = phase.bench.view.state.given
    elif isinstance(phase, ShowingPhase):
        given = phase.opened.answers.given
    told = sum(one.is_evidence for one in given)
    if not given:
        return Text("nothing asked yet")
    return Text("1 answer") if told == 1 else Text("{n} answers", n=told)


def _told_on_road(phase: Phase, shown: Opened | None) -> str:
    if isinstance(phase, LoadingPhase):
        return Text("being read")
    opened = shown or _behind(phase)
    if opened is None:
        return Text("no recording")
    return Text("{length} recorded", length=format_duration(opened.result.log.duration_s))


def _told_by_verdict(phase: Phase, shown: Opened | None) -> str:
    opened = shown or _behind(phase)
    posterior = None if opened is None else _posterior(phase, opened)
    if posterior is None:
        return Text("none yet")
    if posterior.first.probability >= DECIDED:
        sound = posterior.first.hypothesis.cause == SOUND_CAUSE
        return Text("no fault found") if sound else Text("one cause stands out")
    if suspected_corner(corner_shares(posterior)) is None:
        return Text("not decided")
    return Text("one corner stands out")
