"""What a person saw or felt, as a finding."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from triage.corners import CORNER_NAMES, CORNERS, VEHICLE, Corner, Place
from triage.errors import SettingsError
from triage.evidence.hypotheses import Finding, Posterior
from triage.evidence.readings import Reading, is_reading, read_value
from triage.evidence.rule_tables import SKIPPED, Check, Rulebook
from triage.evidence.trouble_codes import is_code, read_code
from triage.texts import Text, shaped, without_stop
from triage.units import format_share

CLEAR: Final = 0.95
"""Below this the words of a measured value tell how sure its outcome is (judgement)."""


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
        Outcome id or alias, a measured value such as ``0.12 mm limit 0.05``, or one of ``SKIPPED``.
    """

    check: str
    corner: Corner | None
    outcome: str


def parse_observation(text: str) -> Observation:
    """Read ``CHECK=OUTCOME`` or ``CHECK@CORNER=OUTCOME`` as the command line takes it.

    A value in the place of the outcome keeps its small and capital letters: they belong to its unit.

    Raises
    ------
    SettingsError
        When the text has another form or names no corner of the car.
    """
    name, equals, outcome = text.partition("=")
    check, at, corner = name.partition("@")
    if not (equals and check.strip() and outcome.strip()):
        raise SettingsError(
            Text("{text} is no observation", text=f"{text!r}"),
            hint="Write CHECK=OUTCOME or CHECK@FL=OUTCOME.",
        )
    place = next((known for known in CORNERS if known == corner.strip().upper()), None)
    if at and place is None:
        raise SettingsError(
            Text("{strip} in {text} is no corner", strip=f"{corner.strip()!r}", text=f"{text!r}"),
            hint=Text("The corners are {corners}.", corners=", ".join(CORNERS)),
        )
    outcome = outcome.strip() if is_reading(outcome.strip()) else plain_name(outcome)
    return Observation(plain_name(check), place, outcome)


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
        One per check and corner; the same answer given twice counts once, and a check that was not done or
        whose outcome nobody can tell not at all. Of two answers of which one brings the other with it
        (``Check.brings``), it alone counts and names the other.

    Raises
    ------
    SettingsError
        For an unknown check or outcome (the known ones are listed), a value that is not plausible (see
        :func:`triage.evidence.readings.read_value`), and for two answers that contradict.
    """
    answers: dict[str, tuple[str, Finding]] = {}
    for observation in observations:
        check = find_check(observation.check, rulebook)
        if plain_name(observation.outcome) in SKIPPED:
            continue
        answer = _answer(check, observation, first_corner, rulebook)
        name = answer[1].id
        answers[name] = _both(check, answers[name], answer) if name in answers else answer
    return tuple(finding for _, finding in answers.values())


def _both(check: Check, earlier: tuple[str, Finding], later: tuple[str, Finding]) -> tuple[str, Finding]:
    """Return the one of two answers that counts: the same one, or the one that brings the other with it."""
    if earlier[0] == later[0]:
        return earlier
    for counts, brought in ((earlier, later), (later, earlier)):
        if brought[0] in check.brings.get(counts[0], ()):
            statement = Text(
                "{statement} (also {brought}, which comes with it).",
                statement=shaped(counts[1].statement, without_stop),
                brought=check.outcomes[brought[0]],
            )
            return counts[0], replace(counts[1], statement=statement)
    raise SettingsError(
        Text(
            "two answers to {id} at {wheel}: {earlier} and {later}",
            id=check.id,
            wheel=CORNER_NAMES[later[1].corner],
            earlier=earlier[0],
            later=later[0],
        ),
        hint="Give one answer for each check and corner.",
    )


def find_check(name: str, rulebook: Rulebook) -> Check:
    """Return the check of that id or other name, SettingsError when there is none."""
    wanted = plain_name(name)
    for check in rulebook.checks.values():
        if wanted == check.id or wanted in check.also:
            return check
    raise SettingsError(
        Text("there is no check {name}", name=f"{name!r}"),
        hint=Text("Known checks: {checks}.", checks=", ".join(rulebook.checks)),
    )


def find_outcome(check: Check, name: str) -> str:
    """Return the outcome id of that name or alias, SettingsError when there is none."""
    wanted = plain_name(name)
    outcome = check.aliases.get(wanted, wanted)
    if outcome not in check.outcomes:
        raise SettingsError(
            Text("{name} is no outcome of the check {id}", name=f"{name!r}", id=check.id),
            hint=Text("Its outcomes: {names}.", names=", ".join((*check.outcomes, *SKIPPED))),
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


@dataclass(frozen=True, slots=True)
class _Said:
    """An answer whose trouble code, if it is one, is read.

    Attributes
    ----------
    outcome : str
        By its id, a name it goes by, or as measured.
    corner : str or None
        As named, by the code too.
    code : str
        What begins the sentence of an answer that is a code.
    """

    outcome: str
    corner: Corner | None
    code: str = ""


def _answer(
    check: Check, observation: Observation, first_corner: Corner, rulebook: Rulebook
) -> tuple[str, Finding]:
    """Return the outcome, by its id or as measured, and the finding."""
    said = _without_code(check, observation, rulebook)
    place = _place_of(check, said.corner, first_corner)
    head = Text("{check}, {wheel}", check=check.title, wheel=CORNER_NAMES[place])
    assumed = Text(" (no corner was named: taken as the one the log ranks first)")
    words = (head, "" if said.corner or place == VEHICLE else assumed)
    if is_reading(said.outcome):
        return said.outcome, _measured(read_value(said.outcome, check), check, place, words)
    outcome = find_outcome(check, said.outcome)
    return outcome, _seen(outcome, check, place, (head, said.code, words[1]))


def _without_code(check: Check, observation: Observation, rulebook: Rulebook) -> _Said:
    outcome, corner = observation.outcome.strip(), observation.corner
    if not is_code(plain_name(outcome)) or outcome in check.aliases:
        return _Said(outcome, corner)
    code = read_code(plain_name(outcome), check, rulebook)
    if corner is not None and corner != code.corner:
        meant, given = CORNER_NAMES[code.corner], CORNER_NAMES[corner]
        raise SettingsError(
            Text("{words} is the {meant} wheel, not {given}", words=code.words, meant=meant, given=given),
            hint="Leave out the corner, or look which list the maker follows.",
        )
    return _Said(code.outcome, code.corner, Text("{code}: ", code=code.words))


def _place_of(check: Check, corner: Corner | None, first_corner: Corner) -> Place:
    if check.names_corner:
        return corner or VEHICLE
    return VEHICLE if check.where == "vehicle" else corner or first_corner


def _seen(outcome: str, check: Check, place: Place, words: tuple[str, str, str]) -> Finding:
    head, code, assumed = words
    return Finding(
        id=f"{check.id}@{place}",
        source=check.id,
        corner=place,
        statement=Text(
            "{check}: {code}{outcome}{assumed}.",
            check=head,
            code=code,
            outcome=check.outcomes[outcome],
            assumed=assumed,
        ),
        value=1.0,
        std_uncertainty=0.0,
        unit="",
        band_probability={name: float(name == outcome) for name in check.outcomes},
        spans=(),
    )


def _measured(reading: Reading, check: Check, place: Place, words: tuple[str, str]) -> Finding:
    shares = reading.outcome_probability
    likeliest = max(shares, key=lambda name: shares[name])
    head, assumed = words
    sure = Text(" ({share} likely)", share=format_share(shares[likeliest]))
    return Finding(
        id=f"{check.id}@{place}",
        source=check.id,
        corner=place,
        statement=Text(
            "{check}: {value}, {outcome}{sure}{assumed}.",
            check=head,
            value=reading.words,
            outcome=check.outcomes[likeliest],
            sure="" if shares[likeliest] >= CLEAR else sure,
            assumed=assumed,
        ),
        value=reading.value,
        std_uncertainty=reading.std_uncertainty,
        unit=reading.unit,
        band_probability={name: shares.get(name, 0.0) for name in check.outcomes},
        spans=(),
    )


def plain_name(name: str) -> str:
    """Return a name as ids are written: in small letters, its words joined by hyphens.

    >>> plain_name(" Look_at  Encoder ")
    'look-at-encoder'
    """
    return "-".join(name.strip().lower().replace("_", " ").split())
