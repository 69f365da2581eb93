"""What to do next, as a workshop goes about it: ask, read the codes, look, and only then buy a part.

:func:`triage.planning.plan.make_plan` finds the step with the smallest expected cost. Five customs go before
it, each for a reason that expected cost does not see:

- *The driver is asked first*: the answers cost a sentence each, and the driver is there now and gone later.
- *The codes are read next*: once for all wheels, before hands get dirty.
- *A part is bought when something seen at its wheel bears it out*: a recording is judged by models of cars,
  and what no model foresees is found by looking. A look that costs more than the repair is left out.
- *What is cleaned is looked at first*, where the look takes little beside the cleaning.
- *No wheel is given up unseen*: neither is a car handed back as sound, unless it is probably so.

A custom steps back when its question tells too little, was answered, or was declined; the first two also
when work at the car has begun.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

from triage.corners import CORNERS, VEHICLE, Place
from triage.evidence.fitting import asked_already, kind_shares
from triage.evidence.hypotheses import Finding
from triage.evidence.likelihoods import SOUND
from triage.evidence.posterior import Belief
from triage.evidence.rule_tables import NO_FAULT, Check, Repair, Rulebook
from triage.planning.claims_in_doubt import Claims, weigh_claims
from triage.planning.costs import cost_words
from triage.planning.plan import LAST_RESORT, Plan, PlanStep, make_plan
from triage.planning.plan_text import step_name
from triage.texts import Text

LEAST_TOLD_BIT: Final = 0.1
"""A question to the driver, or the codes, that tells less does not go before the plan (judgement)."""

BEARS_OUT: Final = 3.0
"""An outcome that a cause shows so many times as often as a sound wheel bears the cause out (judgement)."""

OFTEN_ENOUGH: Final = 0.5
"""A look that bears a cause out in a smaller share of the cars that have it is not asked for (judgement)."""

PROBABLY_SOUND: Final = 0.6
"""From this probability on a car may be handed back as sound without a look at it (judgement)."""

CABIN: Final = "cabin"
FROM_THE_SEAT: Final = (CABIN, "road")
"""Levels of access at which nothing of the wheel is seen."""


@dataclass(frozen=True, slots=True)
class _Work:
    plan: Plan
    claims: Claims
    findings: tuple[Finding, ...]
    rulebook: Rulebook
    asked: frozenset[str]
    has_repaired: bool


def guide(
    findings: Sequence[Finding],
    rulebook: Rulebook,
    *,
    is_open: Sequence[str] = (),
    tried: Sequence[tuple[str, Place]] = (),
    skipped: Sequence[str] = (),
    recording: Belief | None = None,
) -> Plan:
    """Find what to do next.

    Parameters
    ----------
    findings, rulebook, is_open, tried, skipped
        As :func:`triage.planning.plan.make_plan` takes them.
    recording : Belief, optional
        That by the measurements among the findings, where it is worked out already.

    Returns
    -------
    Plan
        Of the smallest expected cost, with another next step where a custom of the workshop goes before it;
        ``why`` and ``expected_money`` are those of that step.
    """
    asked = frozenset(skipped) | asked_already(findings, rulebook)
    claims = weigh_claims(findings, rulebook, recording=recording)
    plan = make_plan(findings, rulebook, is_open=is_open, tried=tried, skipped=sorted(asked), claims=claims)
    work = _Work(plan, claims, tuple(findings), rulebook, asked, has_repaired=bool(tried))
    opening = None if _is_under_way(work) else _question_to_the_driver(work) or _codes(work)
    first = opening or _look_before_a_part(work) or _look_before_giving_up(work)
    if first is None:
        return plan
    step, why = first
    return replace(plan, next_step=step, why=why, expected_money=plan.act_now_money - step.saving)


def _is_under_way(work: _Work) -> bool:
    """Say whether something was done at the car already: then the plan alone says whether to ask more."""
    checks = work.rulebook.checks
    done = [checks[finding.source] for finding in work.findings if finding.source in checks]
    return work.has_repaired or any(check.access not in FROM_THE_SEAT for check in done)


def _question_to_the_driver(work: _Work) -> tuple[PlanStep, Text] | None:
    step = _most_telling(step for step, check in _checks(work) if check.asks_driver)
    if step is None:
        return None
    return (
        step,
        Text(
            "The driver is asked before anything is opened: it takes {minutes} min, costs {money} and is "
            "expected to settle {gain} bit of the doubt.",
            **_numbers(step),
        ),
    )


def _codes(work: _Work) -> tuple[PlanStep, Text] | None:
    step = _most_telling(step for step, check in _checks(work) if check.takes_codes)
    if step is None:
        return None
    return (
        step,
        Text(
            "The stored codes are read before hands get dirty, once for all wheels: it takes {minutes} min, "
            "costs {money} and is expected to settle {gain} bit of the doubt or more.",
            **_numbers(step),
        ),
    )


def _look_before_a_part(work: _Work) -> tuple[PlanStep, Text] | None:
    repair = work.plan.next_step
    rule = work.rulebook.repairs.get(repair.id) if repair.kind == "repair" else None
    if rule is None or repair.place == VEHICLE:
        return None
    cause = _likeliest_cure(work, repair)
    looks = [step for step, check in _checks(work) if step.place == repair.place and _tells(check, cause)]
    looks = [
        step for step in looks if step.money < repair.money and (rule.parts or _is_beside(step, rule, work))
    ]
    if not looks or _is_borne_out(work, cause, repair.place) or _is_declined(work, cause, repair.place):
        return None
    step = max(looks, key=lambda one: (_gain_a_minute(one, work), one.id))
    if not rule.parts:
        return step, Text(
            "What is cleaned cannot be looked at any more: this look takes {minutes} min and costs {money}, "
            "“{repair}” {repair_money}.",
            **_numbers(step),
            repair=step_name(repair),
            repair_money=cost_words(repair.money),
        )
    return step, Text(
        "A part is bought when something seen at its wheel bears it out: this look takes {minutes} min and "
        "costs {money}, “{repair}” {repair_money}.",
        **_numbers(step),
        repair=step_name(repair),
        repair_money=cost_words(repair.money),
    )


def _is_beside(step: PlanStep, repair: Repair, work: _Work) -> bool:
    """Say whether a look needs nothing opened that the repair does not open, and takes less work."""
    check = work.rulebook.checks[step.id]
    return check.access == repair.access and check.minutes_min < repair.minutes_min


def _look_before_giving_up(work: _Work) -> tuple[PlanStep, Text] | None:
    step = work.plan.next_step
    rule = work.rulebook.repairs.get(step.id) if step.kind == "repair" else None
    handed_back = rule is not None and set(rule.cures) == {NO_FAULT}
    if not (step.id == LAST_RESORT or (handed_back and _share_of_sound(work) < PROBABLY_SOUND)):
        return None
    unseen = _unseen_places(work)
    looks = [one for one, check in _checks(work) if check.access not in FROM_THE_SEAT and one.place in unseen]
    looks = [one for one in looks if one.gain_bit >= LEAST_TOLD_BIT]
    if not looks:
        return None
    look = min(looks, key=lambda one: (-round(_gain_a_minute(one, work), 9), one.id, one.place))
    return look, Text(
        "No wheel is given up unseen: this look takes {minutes} min, costs {money} and is expected to settle "
        "{gain} bit of the doubt.",
        **_numbers(look),
    )


def _unseen_places(work: _Work) -> set[Place]:
    """Return the wheels, and the car as a whole, at which no look was made or declined yet."""
    looks = [check.id for check in work.rulebook.checks.values() if check.access not in FROM_THE_SEAT]
    places: tuple[Place, ...] = (*CORNERS, VEHICLE)
    return {place for place in places if not any(f"{look}@{place}" in work.asked for look in looks)}


def _share_of_sound(work: _Work) -> float:
    shares = zip(work.claims.atoms, work.claims.share, strict=True)
    return sum(float(share) for atom, share in shares if atom.cause == NO_FAULT)


def _checks(work: _Work) -> Iterator[tuple[PlanStep, Check]]:
    return ((step, work.rulebook.checks[step.id]) for step in work.plan.checks)


def _most_telling(steps: Iterator[PlanStep]) -> PlanStep | None:
    telling = [step for step in steps if step.gain_bit >= LEAST_TOLD_BIT]
    return min(telling, key=lambda step: (-round(step.gain_bit, 9), step.id, step.place), default=None)


def _numbers(step: PlanStep) -> dict[str, str]:
    return {
        "minutes": f"{step.minutes_min:.0f}",
        "money": cost_words(step.money),
        "gain": f"{step.gain_bit:.2f}",
    }


def _likeliest_cure(work: _Work, repair: PlanStep) -> str:
    """Return the cause at that wheel for which the repair is most probably done."""
    cures = work.rulebook.repairs[repair.id].cures
    here = {
        atom.cause: float(share) * cures.get(atom.cause, 0.0)
        for atom, share in zip(work.claims.atoms, work.claims.share, strict=True)
        if atom.blamed == repair.place
    }
    return max(here, key=lambda cause: here[cause])


def _tells(check: Check, cause: str) -> bool:
    """Say whether the check is a look at the wheel that would mostly bear out the cause."""
    row = check.table.rows.get(cause, check.table.rows[SOUND])
    shown = dict(zip(check.outcomes, row, strict=True))
    bearing = (share for name, share in shown.items() if _ratio(check, cause, name) >= BEARS_OUT)
    return check.access not in FROM_THE_SEAT and sum(bearing) >= OFTEN_ENOUGH


def _ratio(check: Check, cause: str, outcome: str) -> float:
    rows, at = check.table.rows, tuple(check.outcomes).index(outcome)
    return rows.get(cause, rows[SOUND])[at] / rows[SOUND][at]


def _is_borne_out(work: _Work, cause: str, place: Place) -> bool:
    looks = [
        (work.rulebook.checks[finding.source], finding.band_probability)
        for finding in work.findings
        if finding.corner == place and finding.source in work.rulebook.checks
    ]
    return any(
        _ratio(check, cause, max(seen, key=lambda name: seen[name])) >= BEARS_OUT
        for check, seen in looks
        if check.access not in FROM_THE_SEAT
    )


def _is_declined(work: _Work, cause: str, place: Place) -> bool:
    """Say whether such a look came up before and was not done: then it is not pressed again."""
    answered = {finding.id for finding in work.findings}
    return any(
        f"{check.id}@{place}" in work.asked - answered and _tells(check, cause)
        for check in work.rulebook.checks.values()
    )


def _gain_a_minute(step: PlanStep, work: _Work) -> float:
    """Return the gain for each minute, smaller in the measure in which the check may not fit the car."""
    sensors = work.rulebook.checks[step.id].sensors
    shares = kind_shares(work.rulebook)
    fitting = sum(shares.get(kind, 0.0) for kind in sensors) if sensors else 1.0
    return fitting * step.gain_bit / step.minutes_min
