"""What the answers so far make of the car, and what to ask next."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from triage.corners import CORNER_NAMES, CORNERS, VEHICLE, Corner, Place
from triage.evidence.answers import Observation, parse_observation
from triage.evidence.fitting import sensor_check
from triage.evidence.hypotheses import Hypothesis, Posterior
from triage.evidence.judge import Judgement, judge
from triage.evidence.next_checks import entropy_bit
from triage.evidence.rule_tables import Rulebook, ValueRule
from triage.evidence.trouble_codes import code_example
from triage.planning.costs import cost_of_check, cost_words
from triage.planning.guidance import guide
from triage.planning.plan import LAST_RESORT, Plan, PlanStep
from triage.signals.measurement import Measurement, NotMeasurable
from triage.texts import Text, in_english, instead_of, joined, small_first
from triage.units import format_share
from triage.walk.ranking import RankLine, ranked_lines
from triage.walk.walk_state import CURED, NOT_CURED, NOT_DONE, Given, Kind, WalkState

LEAST_GAIN_BIT: Final = 0.01
"""A check that tells less is not asked when a repair was put off (judgement)."""

RECORD_FIRST: Final = Text("Before that, a recording of a road test may tell more: walk once more with one.")

HAS_CURED: Final = Text("done, and the car is right")
HAS_NOT_CURED: Final = Text("done, and the fault is still there")


@dataclass(frozen=True, slots=True)
class Recording:
    """What was measured on the log of this car; nothing of it without a log."""

    measurements: tuple[Measurement, ...] = ()
    not_measurable: tuple[NotMeasurable, ...] = ()


@dataclass(frozen=True, slots=True)
class Choice:
    """One answer to choose: its id and its words."""

    id: str
    text: str


@dataclass(frozen=True, slots=True)
class Question:
    """What is asked now.

    Attributes
    ----------
    kind : {"check", "repair"}
    text : str
        The question in full.
    choices : tuple of Choice
    tools : tuple of str
    cautions : tuple of str
        Texts, to be shown before the step.
    acknowledge : bool
        Whether someone can get hurt, so that the cautions must be confirmed.
    why : str
        Why this, with the numbers; for an answer looked at again, what it was.
    now : str
        Id of the answer given before; empty for a new question.
    value : ValueRule or None
        How a measured value may be given instead.
    codes : str
        How a trouble code may be given instead, by an example; empty where none can be.
    names_corner : bool
        Whether the answer may name a wheel.
    write_down : str
        What belongs on the job sheet.
    """

    kind: Kind
    id: str
    place: Place
    title: str
    text: str
    choices: tuple[Choice, ...]
    minutes_min: float
    access: str
    tools: tuple[str, ...]
    cautions: tuple[str, ...]
    acknowledge: bool
    why: str
    now: str = ""
    value: ValueRule | None = None
    codes: str = ""
    names_corner: bool = False
    write_down: str = ""

    def given(self, choice: str, corner: Corner | None = None) -> Given:
        """Return the answer of that id to this question, about a wheel that was named where one can be."""
        return Given(self.kind, self.id, corner or self.place, choice)


@dataclass(frozen=True, slots=True)
class Assessment:
    """Verdict, plan and next question; ``question`` is None when there is nothing left to ask."""

    judgement: Judgement
    plan: Plan
    question: Question | None
    doubt_bit: float


def assess(state: WalkState, recording: Recording, rulebook: Rulebook) -> Assessment:
    """Judge the car by recording and answers, and find the question to ask.

    Raises
    ------
    SettingsError
        For an answer the rule book does not know.
    """
    seen = observations(state)
    judgement = judge(recording.measurements, recording.not_measurable, rulebook, seen)
    plan = guide(
        judgement.findings,
        rulebook,
        is_open=sorted(open_levels(state, rulebook)),
        tried=[(one.id, one.place) for one in state.given if one.answer == NOT_CURED],
        skipped=_asked(state, rulebook),
        recording=judgement.recording,
    )
    shares = np.array([line.probability for line in judgement.posterior.ranking])
    question = _question(state, plan, rulebook)
    if question is not None and question.id == LAST_RESORT and not recording.measurements:
        question = replace(question, text=joined(" ", (question.text, RECORD_FIRST)))
    return Assessment(judgement, plan, question, float(entropy_bit(shares)))


def _asked(state: WalkState, rulebook: Rulebook) -> list[str]:
    """Return what is not asked again, as ``check@place``; what is asked once for the car, at no place."""
    checks = [one for one in state.given if one.kind == "check"]
    return [
        f"{one.id}@{place}"
        for one in checks
        for place in ((*CORNERS, VEHICLE) if rulebook.checks[one.id].names_corner else (one.place,))
    ]


def observations(state: WalkState) -> tuple[Observation, ...]:
    """Return the answers to checks that are evidence."""
    return tuple(
        parse_observation(f"{one.id}{'' if one.place == VEHICLE else f'@{one.place}'}={one.answer}")
        for one in state.given
        if one.kind == "check" and one.is_evidence
    )


def open_levels(state: WalkState, rulebook: Rulebook) -> frozenset[str]:
    """Return the levels of access that stand open after what was done in this sitting."""
    is_open: frozenset[str] = frozenset()
    for one in state.given[state.closed_before :]:
        if one.kind == "repair" and one.is_evidence:
            is_open = frozenset()
        elif one.kind == "check" and one.is_evidence:
            is_open = cost_of_check(rulebook.checks[one.id], is_open, rulebook).open_after
    return is_open


def leading_lines(
    assessment: Assessment, rulebook: Rulebook, before: Assessment | None = None, *, number: int = 3
) -> tuple[str, ...]:
    """Word the first lines of the ranking, with what each was before the last answer."""
    earlier = before.judgement.posterior if before else None
    lines = ranked_lines(assessment.judgement.posterior, rulebook, before=earlier, number=number)
    return tuple(f"{format_share(line.probability):>10}  {line.name}{_moved(line)}" for line in lines)


def _moved(line: RankLine) -> str:
    if line.before is None:
        return ""
    return f"  ({'up' if line.probability > line.before else 'down'} from {format_share(line.before)})"


def standing_cautions(rulebook: Rulebook) -> tuple[str, ...]:
    """Return the cautions that stand over the whole walk."""
    return tuple(caution.text for caution in rulebook.cautions.values() if caution.always)


def progress_line(state: WalkState, assessment: Assessment) -> str:
    """Word how far the walk is."""
    told = sum(one.is_evidence for one in state.given)
    left = len(state.given) - told
    return Text(
        "{told} answered{skipped}; doubt left {doubt} bit; expected cost to a proven repair {money}",
        told=told,
        skipped=Text(", {left} without", left=left) if left else "",
        doubt=f"{assessment.doubt_bit:.1f}",
        money=cost_words(assessment.plan.expected_money),
    )


def _question(state: WalkState, plan: Plan, rulebook: Rulebook) -> Question | None:
    earlier = state.looked_at
    if earlier is not None:
        now = _told(earlier, rulebook)
        why: str = Text(
            "Answered before: {answer}. Nothing changes until another answer is given.", answer=now
        )
        make = ask_check if earlier.kind == "check" else _ask_repair
        return make(earlier.id, earlier.place, rulebook, why=why, minutes_min=0.0, now=now)
    step = None if state.finished else _next_step(state.given, plan)
    if step is None:
        return None
    kind = _ask_for_sensor(state, step, rulebook)
    if kind is not None:
        return kind
    why = plan.why if step is plan.next_step else _second_best(step)
    make = ask_check if step.kind == "check" else _ask_repair
    return make(step.id, step.place, rulebook, why=why, minutes_min=step.minutes_min)


def _told(given: Given, rulebook: Rulebook) -> str:
    """Return an answer as it was typed, which other languages word."""
    cured = {CURED: HAS_CURED, NOT_CURED: HAS_NOT_CURED}
    words = rulebook.checks[given.id].outcomes if given.kind == "check" else cured
    told = instead_of(given.answer, words.get(given.answer, given.answer))
    named = given.kind == "check" and rulebook.checks[given.id].names_corner and given.place != VEHICLE
    return joined("@", (told, given.place)) if named else told


def _ask_for_sensor(state: WalkState, step: PlanStep, rulebook: Rulebook) -> Question | None:
    """Return the question for the kind of sensor, once, before the first check that not every kind allows."""
    check = sensor_check(rulebook)
    wanted = step.kind == "check" and bool(rulebook.checks[step.id].sensors)
    if check is None or not wanted or any(one.id == check.id for one in state.given):
        return None
    why = Text(
        "It settles which electrical checks fit this car, and is asked once; next would be: {step}.",
        step=step.title,
    )
    return ask_check(check.id, VEHICLE, rulebook, why=why, minutes_min=0.0)


def _next_step(given: Sequence[Given], plan: Plan) -> PlanStep | None:
    """Return the plan's next step; when that repair was put off, the best check, else the next repair."""
    told = [number for number, one in enumerate(given, 1) if one.is_evidence]
    newest = given[max(told, default=0) :]  # what was put off before the last answer may come up once more
    put_off = {one.step for one in newest if one.kind == "repair" and one.answer == NOT_DONE}
    step = plan.next_step
    if step.kind == "check" or ("repair", step.id, step.place) not in put_off:
        return step
    telling = [check for check in plan.checks if check.gain_bit >= LEAST_GAIN_BIT]
    others = [one for one in plan.repairs if ("repair", one.id, one.place) not in put_off]
    return next(iter((*telling, *others)), None)


def _second_best(step: PlanStep) -> str:
    if step.kind == "check":
        return Text(
            "The repair was put off; this check takes {minutes} min and is expected to settle {gain} bit of "
            "doubt.",
            minutes=f"{step.minutes_min:.0f}",
            gain=f"{step.gain_bit:.2f}",
        )
    return Text(
        "The repairs before it were put off; this takes {minutes} min ({money}).",
        minutes=f"{step.minutes_min:.0f}",
        money=cost_words(step.money),
    )


def _at(place: Place) -> str:
    return "" if place == VEHICLE else Text(", {wheel}", wheel=CORNER_NAMES[place])


def ask_check(
    name: str, place: Place, rulebook: Rulebook, *, why: str, minutes_min: float, now: str = ""
) -> Question:
    """Return the question of a check at a place."""
    check = rulebook.checks[name]
    place = VEHICLE if check.names_corner else place
    return Question(
        kind="check",
        id=name,
        place=place,
        title=joined("", (check.title, _at(place))),
        text=check.question,
        choices=tuple(Choice(outcome, words) for outcome, words in check.outcomes.items()),
        minutes_min=minutes_min or check.minutes_min,
        access=rulebook.access[check.access].title,
        tools=check.tools,
        cautions=tuple(rulebook.cautions[one].text for one in check.cautions),
        acknowledge=rulebook.access[check.access].hazardous,
        why=why,
        now=now,
        value=check.value,
        codes=code_example(rulebook) if check.takes_codes else "",
        names_corner=check.names_corner,
        write_down=check.write_down,
    )


def typed_hint(question: Question) -> str:
    """Word what may be typed instead of a choice: a measured value or a trouble code; empty for nothing."""
    if question.value is not None:
        return value_hint(question.value)
    if question.codes:
        return Text(
            "or the trouble code and the list it belongs to, such as {example}", example=question.codes
        )
    return ""


def value_hint(rule: ValueRule) -> str:
    """Word how a measured value is typed."""
    shunt = Text(
        ", or V across R ohm ({low} to {high})",
        low=f"{rule.shunt_low_ohm:g}",
        high=f"{rule.shunt_high_ohm:g}",
    )
    return Text(
        "or the value in {unit} ({low} to {high}){limit}{shunt}",
        unit=rule.unit,
        low=f"{rule.low:.10g}",
        high=f"{rule.high:.10g}",
        limit=Text(", then “limit” and the maker's figure") if rule.asks_limit else "",
        shunt=shunt if rule.shunt_high_ohm else "",
    )


def _ask_repair(
    name: str, place: Place, rulebook: Rulebook, *, why: str, minutes_min: float, now: str = ""
) -> Question:
    repair = rulebook.repairs.get(name)
    title = repair.title if repair else Text("Give the car to somebody with more means")
    parts = joined(", ", (rulebook.parts[part].title for part in repair.parts)) if repair else ""
    needed = Text(" Parts: {parts}.", parts=parts) if parts else ""
    proof = "" if name == LAST_RESORT else Text(" Then prove it by the road test that showed the fault.")
    return Question(
        kind="repair",
        id=name,
        place=place,
        title=joined("", (title, _at(place))),
        text=Text(
            "Time to act: {repair}{place}.{parts}{proof} Is the car right?",
            repair=in_english(title, small_first),
            place=_at(place),
            parts=needed,
            proof=proof,
        ),
        choices=(
            Choice(CURED, HAS_CURED),
            Choice(NOT_CURED, HAS_NOT_CURED),
        )[: 1 if name == LAST_RESORT else 2],
        minutes_min=minutes_min,
        access=rulebook.access[repair.access].title if repair else "",
        tools=(),
        cautions=tuple(rulebook.cautions[one].text for one in repair.cautions) if repair else (),
        acknowledge=bool(repair and rulebook.access[repair.access].hazardous),
        why=why,
        now=now,
    )


def cured_claim(state: WalkState, posterior: Posterior, rulebook: Rulebook) -> Hypothesis | None:
    """Return what was wrong by the repair that made the car right: the likeliest claim that it cures.

    None when no repair of the rule book did, so that nobody knows.
    """
    cured = next((one for one in state.given if one.answer == CURED), None)
    repair = rulebook.repairs.get(cured.id) if cured else None
    if cured is None or repair is None:
        return None
    claims = (line.hypothesis for line in posterior.ranking)
    return next((one for one in claims if one.corner == cured.place and one.cause in repair.cures), None)


def place_of(text: str) -> Place | None:
    """Return the place of that name, None when there is none."""
    places: tuple[Place, ...] = (*CORNERS, VEHICLE)
    return next((known for known in places if known == text), None)
