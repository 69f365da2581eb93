"""The steps of the job as the top of the window shows them, with what each has told so far."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from triage.evidence.hypotheses import Posterior
from triage.units import format_share
from triage.walk.walk_state import Given
from ui.presenters.verdict import DECIDED, corner_shares, suspected_corner
from ui.presenters.wording import format_duration, place_name
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
    "complaint": "Complaint and checks",
    "road-test": "Road test",
    "verdict": "Verdict",
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
    return StepText("exercise", "Exercise", "for training", can_go, isinstance(phase, ExercisePhase))


def build_car(phase: Phase, shown: Opened | None) -> CarText:
    """Word which car is looked at and which corner is suspected."""
    if isinstance(phase, StartPhase):
        return CarText("No car yet", "", decided=False)
    if isinstance(phase, ExercisePhase):
        return CarText("The car of the exercise", "", decided=False)
    title = phase.bench.setup.title if isinstance(phase, BenchPhase) else phase.order.title
    posterior = _posterior(phase, shown)
    if posterior is None:
        return CarText(title, "", decided=False)
    shares = corner_shares(posterior)
    suspect = suspected_corner(shares)
    if suspect is None:
        return CarText(title, "No corner stands out", decided=False)
    words = f"Suspected: {suspect} {place_name(suspect).lower()}, {format_share(shares[suspect])}"
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
    return "nothing asked yet" if not given else "1 answer" if told == 1 else f"{told} answers"


def _told_on_road(phase: Phase, shown: Opened | None) -> str:
    if isinstance(phase, LoadingPhase):
        return "being read"
    opened = shown or _behind(phase)
    if opened is None:
        return "no recording"
    instants_s = opened.result.log.instants_s
    length_s = float(instants_s[-1] - instants_s[0]) if instants_s.size > 1 else 0.0
    return f"{format_duration(length_s)} recorded"


def _told_by_verdict(phase: Phase, shown: Opened | None) -> str:
    opened = shown or _behind(phase)
    posterior = None if opened is None else _posterior(phase, opened)
    if posterior is None:
        return "none yet"
    if posterior.first.probability >= DECIDED:
        return "one cause stands out"
    return "not decided" if suspected_corner(corner_shares(posterior)) is None else "one corner stands out"
