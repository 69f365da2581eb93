"""The workshop's experience in words: what was counted, and what it does to the verdict on this car."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from triage.evidence.hypotheses import Finding
from triage.evidence.next_checks import hypothesis_name
from triage.evidence.posterior import rank_hypotheses
from triage.evidence.rule_tables import Rulebook
from triage.experience.ledger import Outcome
from triage.experience.priors import with_priors
from triage.texts import Text, joined
from triage.units import format_share
from ui.state.experience import ExperienceState

LINES_SHOWN: Final = 5


@dataclass(frozen=True, slots=True)
class ExperienceText:
    """Everything the panel says.

    Attributes
    ----------
    standing : str
        Whether it counts, and how many cars it is of.
    causes : tuple of (cause, cars, before, after)
        Starting probabilities without and with the cars, those with cars first.
    verdict : tuple of (claim, without, with)
        Of the recording that is open; empty without one.
    cars : tuple of (number, text)
        Of the group, the newest first.
    groups : tuple of str
    """

    standing: str
    causes: tuple[tuple[str, str, str, str], ...]
    verdict: tuple[tuple[str, str, str], ...]
    cars: tuple[tuple[int, str], ...]
    groups: tuple[str, ...]


def build_experience_text(state: ExperienceState, findings: Sequence[Finding] | None) -> ExperienceText:
    """Word the experience.

    Parameters
    ----------
    state : ExperienceState
    findings : sequence of Finding or None
        Of the recording and answers on the screen; None without any.
    """
    own = state.ledger.of_group(state.group)
    titles = {cause.id: cause.title for cause in state.plain.causes.values()}
    moved = sorted(state.changes, key=lambda one: (-one.cars, -abs(one.after - one.before)))
    return ExperienceText(
        standing=_standing(state, len(own)),
        causes=tuple(
            (titles[one.cause], str(one.cars), format_share(one.before), format_share(one.after))
            for one in moved
        ),
        verdict=_verdict(state, findings) if findings is not None else (),
        cars=tuple((car.number, _car(car, titles)) for car in reversed(own)),
        groups=state.ledger.groups,
    )


def cause_choices(rulebook: Rulebook) -> tuple[tuple[str, str], ...]:
    """Return id and title of every cause a car can have had."""
    return tuple((cause.id, cause.title) for cause in rulebook.causes.values())


def _standing(state: ExperienceState, cars: int) -> str:
    if not cars:
        return Text("No car of this kind has been counted yet; verdicts rest on the rule book alone.")
    counted = Text("1 car") if cars == 1 else Text("{n} cars", n=cars)
    standing = Text(
        "Off: {cars} of “{group}” are kept and change no verdict.", cars=counted, group=state.group
    )
    if state.ledger.on:
        standing = Text("On: {cars} of “{group}” count in verdicts.", cars=counted, group=state.group)
    prior = f"{state.ledger.prior_cars:.0f}"
    weight = Text("The rule book's own figures weigh as much as {cars} cars.", cars=prior)
    return joined(" ", (standing, weight))


def _verdict(state: ExperienceState, findings: Sequence[Finding]) -> tuple[tuple[str, str, str], ...]:
    changes = state.changes
    if not changes:
        return ()
    without = rank_hypotheses(findings, state.plain)
    told = rank_hypotheses(findings, with_priors(state.plain, changes))
    before = {line.hypothesis: line.probability for line in without.ranking}
    return tuple(
        (
            hypothesis_name(line.hypothesis, state.plain),
            format_share(before[line.hypothesis]),
            format_share(line.probability),
        )
        for line in told.ranking[:LINES_SHOWN]
    )


def _car(car: Outcome, titles: dict[str, str]) -> str:
    parts = (car.day, titles[car.cause], car.corner, car.note)
    told = joined(", ", (part for part in parts if part))
    return Text("{number}: {car}", number=car.number, car=told)
