"""What a person saw or felt, as a finding."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from triage.corners import CORNER_NAMES, CORNERS, VEHICLE, Corner, Place
from triage.errors import SettingsError
from triage.evidence.hypotheses import Finding, Posterior
from triage.evidence.rule_tables import Check, Rulebook


@dataclass(frozen=True, slots=True)
class Observation:
    """An answer to a check.

    Attributes
    ----------
    check : str
        Id of ``rules/checks.toml`` or another name it goes by.
    corner : str or None
        The wheel it was done at; None for a check on the whole vehicle, and for the corner that the log
        alone ranks first.
    outcome : str
        Outcome id or alias.
    """

    check: str
    corner: Corner | None
    outcome: str


def parse_observation(text: str) -> Observation:
    """Read ``CHECK=OUTCOME`` or ``CHECK@CORNER=OUTCOME`` as the command line takes it.

    Raises
    ------
    SettingsError
        When the text has another form or names no corner of the car.
    """
    name, equals, outcome = text.partition("=")
    check, at, corner = name.partition("@")
    if not (equals and check.strip() and outcome.strip()):
        raise SettingsError(f"{text!r} is no observation", hint="Write CHECK=OUTCOME or CHECK@FL=OUTCOME.")
    place = next((known for known in CORNERS if known == corner.strip().upper()), None)
    if at and place is None:
        raise SettingsError(
            f"{corner.strip()!r} in {text!r} is no corner", hint=f"The corners are {', '.join(CORNERS)}."
        )
    return Observation(_plain(check), place, _plain(outcome))


def build_answers(
    observations: Sequence[Observation], rulebook: Rulebook, *, first_corner: Corner
) -> tuple[Finding, ...]:
    """Turn answers into findings.

    Parameters
    ----------
    observations : sequence of Observation
    rulebook : Rulebook
    first_corner : str
        Corner meant by an observation that names none: the one the log alone ranks first.

    Returns
    -------
    tuple of Finding
        One per check and corner; the same answer given twice counts once.

    Raises
    ------
    SettingsError
        For an unknown check or outcome (the known ones are listed), and for two answers that contradict.
    """
    answers: dict[str, tuple[str, Finding]] = {}
    for observation in observations:
        check = find_check(observation.check, rulebook)
        outcome = find_outcome(check, observation.outcome)
        finding = _answer(check, outcome, observation.corner, first_corner)
        earlier = answers.setdefault(finding.id, (outcome, finding))[0]
        if earlier != outcome:
            raise SettingsError(
                f"two answers to {check.id} at {CORNER_NAMES[finding.corner]}: {earlier} and {outcome}",
                hint="Give one answer for each check and corner.",
            )
    return tuple(finding for _, finding in answers.values())


def find_check(name: str, rulebook: Rulebook) -> Check:
    """Return the check of that id or other name, SettingsError when there is none."""
    wanted = _plain(name)
    for check in rulebook.checks.values():
        if wanted == check.id or wanted in check.also:
            return check
    raise SettingsError(f"there is no check {name!r}", hint=f"Known checks: {', '.join(rulebook.checks)}.")


def find_outcome(check: Check, name: str) -> str:
    """Return the outcome id of that name or alias, SettingsError when there is none."""
    wanted = _plain(name)
    outcome = check.aliases.get(wanted, wanted)
    if outcome not in check.outcomes:
        raise SettingsError(
            f"{name!r} is no outcome of the check {check.id}",
            hint=f"Its outcomes: {', '.join(check.outcomes)}.",
        )
    return outcome


def leading_corner(posterior: Posterior) -> Corner:
    """Return the corner with the largest total probability over its causes."""
    totals = dict.fromkeys(CORNERS, 0.0)
    for line in reversed(
        posterior.ranking
    ):  # smallest first: exact to the last digit, whatever the order of ties
        if line.hypothesis.corner != VEHICLE:
            totals[line.hypothesis.corner] += line.probability
    return max(CORNERS, key=lambda corner: totals[corner])


def _answer(check: Check, outcome: str, corner: Corner | None, first_corner: Corner) -> Finding:
    place: Place = VEHICLE if check.where == "vehicle" else corner or first_corner
    assumed = (
        " (no corner was named: taken as the one the log ranks first)"
        if place != VEHICLE and not corner
        else ""
    )
    return Finding(
        id=f"{check.id}@{place}",
        source=check.id,
        corner=place,
        statement=f"{check.title}, {CORNER_NAMES[place]}: {check.outcomes[outcome]}{assumed}.",
        value=1.0,
        std_uncertainty=0.0,
        unit="",
        band_probability={name: float(name == outcome) for name in check.outcomes},
        spans=(),
    )


def _plain(name: str) -> str:
    return "-".join(name.strip().lower().replace("_", " ").split())
