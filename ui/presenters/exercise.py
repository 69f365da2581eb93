"""What the trainer's page says while a trainee works: complaint, checks with their prices, answers."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby

from triage.corners import VEHICLE, Corner, Place
from triage.evidence.answers import Observation
from triage.evidence.fitting import fits
from triage.evidence.rule_tables import Check, Rulebook
from triage.exercises.attempt import Attempt, price_of
from triage.exercises.exercise import Exercise
from triage.planning.costs import cost_words
from triage.texts import Text, capital_first, joined, prose, shaped
from ui.presenters.samples import COMPLAINTS
from ui.presenters.verdict import claim_name

ASKED = ("Ask ", " erfragen")
"""How the titles of questions to the driver begin in English, and end in German."""


@dataclass(frozen=True, slots=True)
class CheckRow:
    """A check that can be ordered.

    Attributes
    ----------
    check : str
        Its id.
    title : str
    place : str
        The wheel that is chosen, or ``vehicle``.
    price : str
        What it would cost now; empty when the answer is known.
    answer : str
        The answer, where it is known.
    heading : str
        The level of access.
    cautions : tuple of str
        To be kept to by who does it at a real car.
    """

    check: str
    title: str
    place: Place
    price: str
    answer: str
    heading: str
    cautions: tuple[str, ...]


def complaint_lines(exercise: Exercise, rulebook: Rulebook) -> tuple[str, ...]:
    """Word what the driver tells: his own words, and his answers at the desk."""
    own = (Text("“{words}”", words=prose(exercise.words, COMPLAINTS)),) if exercise.words else ()
    return (*own, *(_told(seen, rulebook) for seen in exercise.complaint))


def check_rows(attempt: Attempt, corner: Corner, rulebook: Rulebook) -> tuple[CheckRow, ...]:
    """Return the checks that fit the car, at the wheel chosen and on the whole car, by level of access."""
    order = list(rulebook.access)
    fitting = (check for check in rulebook.checks.values() if fits(check, attempt.exercise.sensor))
    checks = sorted(fitting, key=lambda check: order.index(check.access))
    return tuple(_row(check, attempt, corner, rulebook) for check in checks)


def rows_by_heading(rows: tuple[CheckRow, ...]) -> tuple[tuple[str, tuple[CheckRow, ...]], ...]:
    """Group rows by their level of access."""
    return tuple((heading, tuple(group)) for heading, group in groupby(rows, key=lambda row: row.heading))


def spent_line(attempt: Attempt, rulebook: Rulebook) -> str:
    """Word what was spent so far, and what stands open."""
    spent = Text(
        "Spent so far: {minutes} min; time and parts: {money} (an hour of work counts {hour} of them)",
        minutes=f"{attempt.minutes_min:.0f}",
        money=cost_words(attempt.money),
        hour=f"{rulebook.workshop.money_per_hour:g}",
    )
    innermost = [
        level
        for level in attempt.is_open
        if not any(rulebook.access[other].parent == level for other in attempt.is_open)
    ]
    titles = [rulebook.access[level].title for level in innermost if rulebook.access[level].closing_min > 0.0]
    if not titles:
        return Text("{spent}.", spent=spent)
    return Text("{spent}. Now: {open}.", spent=spent, open=joined(", ", sorted(titles)))


def done_lines(attempt: Attempt, rulebook: Rulebook) -> tuple[str, ...]:
    """Word the checks that were done, the newest first, with their answers."""
    return tuple(
        joined("", (_seen(one.seen, rulebook), f" ({one.minutes_min:.0f} min)"))
        for one in reversed(attempt.done)
    )


def cause_choices(rulebook: Rulebook) -> tuple[tuple[str, str], ...]:
    """Return id and title of every cause that can be answered."""
    return tuple((cause.id, cause.title) for cause in rulebook.causes.values())


def needs_corner(cause: str, rulebook: Rulebook) -> bool:
    """Tell whether a cause sits at one wheel."""
    return cause in rulebook.causes and rulebook.causes[cause].where == "corner"


def claim_words(cause: str, place: Place, rulebook: Rulebook) -> str:
    """Word a cause at its place: ``Dirt on the encoder, front left``."""
    return claim_name(rulebook.causes[cause].title, place)


def _row(check: Check, attempt: Attempt, corner: Corner, rulebook: Rulebook) -> CheckRow:
    place: Place = corner if check.where == "corner" else VEHICLE
    known = attempt.answer_to(check.id, place)
    cost = price_of(attempt, check.id, rulebook)
    return CheckRow(
        check=check.id,
        title=check.title,
        place=place,
        price="" if known else joined(", ", (f"{cost.minutes_min:.0f} min", cost_words(cost.money))),
        answer="" if known is None else check.outcomes[known.outcome],
        heading=shaped(rulebook.access[check.access].title, capital_first),
        cautions=tuple(rulebook.cautions[name].text for name in check.cautions),
    )


def _seen(seen: Observation, rulebook: Rulebook) -> str:
    check = rulebook.checks[seen.check]
    done = claim_name(check.title, VEHICLE if seen.corner is None else seen.corner)
    return Text("{check}: {outcome}", check=done, outcome=check.outcomes[seen.outcome])


def _subject(title: str) -> str:
    return capital_first(title.removeprefix(ASKED[0]).removesuffix(ASKED[1]))


def _told(seen: Observation, rulebook: Rulebook) -> str:
    check = rulebook.checks[seen.check]
    if check.tells_sensor:
        return Text("Sensors of this car: {kind}.", kind=check.outcomes[seen.outcome])
    subject = shaped(check.title, _subject)
    return Text("{subject}: {outcome}.", subject=subject, outcome=check.outcomes[seen.outcome])
