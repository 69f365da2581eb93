"""Which check tells most for its minutes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.corners import CORNER_NAMES, CORNERS, VEHICLE, Corner, Place
from triage.evidence.claims import leading_claims
from triage.evidence.equally_wide import work_on_equally_wide
from triage.evidence.fitting import asked_already, fits, known_sensor
from triage.evidence.hypotheses import CheckSuggestion, ExpectedOutcome, Finding, Hypothesis, Shift
from triage.evidence.posterior import Belief, believe, known_findings
from triage.evidence.rule_tables import Check, Rulebook
from triage.speed_log import FloatArray
from triage.texts import Text

LEADING_SHARE: Final = 0.15
"""A corner is worth a check when it holds this share of what all corners hold together (judgement)."""

LEAST_GAIN_BIT: Final = 0.002
"""Checks that tell less than this are not suggested (judgement)."""


@dataclass(frozen=True, slots=True)
class Forecast:
    """What a check would do to the verdict.

    Attributes
    ----------
    outcome_probability : float64[outcomes]
    after : float64[outcomes, hypotheses]
        The verdict after each outcome.
    gain_bit, entropy_bit : float
        Expected drop of the verdict's entropy, and the entropy now.
    """

    outcome_probability: FloatArray
    after: FloatArray
    gain_bit: float
    entropy_bit: float


def suggest_checks(
    findings: Sequence[Finding], rulebook: Rulebook, *, belief: Belief | None = None
) -> tuple[CheckSuggestion, ...]:
    """Suggest checks that have not been answered, those with the largest gain per minute first.

    Parameters
    ----------
    findings : sequence of Finding
        Everything known so far, answers included.
    rulebook : Rulebook
    belief : Belief, optional
        That of these findings, where it is worked out already.

    Returns
    -------
    tuple of CheckSuggestion
        For the corners that hold at least ``LEADING_SHARE`` of the blame, those of claims still in the
        running (see :func:`triage.evidence.claims.leading_claims`), and for the whole vehicle.
    """
    ordered = known_findings(findings, rulebook)
    belief = belief or believe(ordered, rulebook)
    answered = asked_already(ordered, rulebook)
    corners = _worth_a_look(belief, rulebook)
    sensor = known_sensor(ordered, rulebook)
    asked = [
        (check, place)
        for check in rulebook.checks.values()
        for place in _places(check, corners)
        if f"{check.id}@{place}" not in answered and fits(check, sensor)
    ]
    now = belief.by_hypothesis(belief.probability)
    suggestions = [
        _suggestion(check, place, forecast, now, rulebook)
        for (check, place), forecast in zip(asked, forecast_checks(asked, belief), strict=True)
        if forecast.gain_bit >= LEAST_GAIN_BIT
    ]
    return tuple(
        sorted(suggestions, key=lambda each: (-each.gain_bit / each.minutes_min, each.check, each.corner))
    )


def _worth_a_look(belief: Belief, rulebook: Rulebook) -> tuple[Corner, ...]:
    claimed = {claim.corner for claim in leading_claims(belief, rulebook).hypotheses}
    blamed = leading_corners(belief)
    return (*blamed, *(corner for corner in CORNERS if corner in claimed and corner not in blamed))


def _places(check: Check, corners: tuple[Corner, ...]) -> tuple[Place, ...]:
    return corners if check.where == "corner" else (VEHICLE,)


def leading_corners(belief: Belief) -> tuple[Corner, ...]:
    """Return the corners with a share of the blame worth looking at, the most blamed first."""
    blame = {corner: sum(belief.probability[belief.tables.blaming(corner)].tolist()) for corner in CORNERS}
    total = sum(blame.values())
    ordered = sorted(CORNERS, key=lambda corner: -blame[corner])
    return tuple(
        corner for i, corner in enumerate(ordered) if i == 0 or blame[corner] >= LEADING_SHARE * total
    )


def forecast_checks(asked: Sequence[tuple[Check, Place]], belief: Belief) -> list[Forecast]:
    """Work out exactly what each outcome of each check would do to the verdict.

    Notes
    -----
    The expected drop of entropy is the mutual information of outcome and hypothesis, so it is never negative
    (T. M. Cover and J. A. Thomas, Elements of Information Theory, 2nd ed. 2006, theorem 2.6.5; from memory).
    """
    now_bit = float(entropy_bit(belief.by_hypothesis(belief.probability)))
    tables = [belief.tables.outcome_table(check.id, place) for check, place in asked]
    return work_on_equally_wide(tables, lambda stacked: _forecasts(stacked, belief, now_bit))


def _forecasts(tables: FloatArray, belief: Belief, now_bit: float) -> Iterator[Forecast]:
    """Forecast checks with as many outcomes each: their tables, float64[checks, atoms, outcomes]."""
    # One small product for each check: a large one would be shared out to threads.
    joint = (tables * belief.probability[:, np.newaxis]).transpose(0, 2, 1) @ belief.tables.belongs
    outcome_probability = joint.sum(axis=2)
    after = joint / outcome_probability[:, :, np.newaxis]
    left_bit = outcome_probability[:, np.newaxis] @ entropy_bit(after)[:, :, np.newaxis]
    gain_bit = np.maximum(now_bit - left_bit[:, 0, 0], 0.0).tolist()
    for outcomes, verdicts, gained_bit in zip(outcome_probability, after, gain_bit, strict=True):
        yield Forecast(outcomes, verdicts, gained_bit, now_bit)


def entropy_bit(probability: FloatArray) -> FloatArray:
    """Return Shannon's entropy in bits along the last axis."""
    positive = np.where(probability > 0.0, probability, 1.0)
    entropy: FloatArray = -np.sum(positive * np.log2(positive), axis=-1)
    return entropy


def hypothesis_name(hypothesis: Hypothesis, rulebook: Rulebook) -> str:
    """Return the claim's title with its corner: ``Dirt on the encoder, front left``."""
    title = rulebook.causes[hypothesis.cause].title
    if hypothesis.corner == VEHICLE:
        return title
    return Text("{cause}, {wheel}", cause=title, wheel=CORNER_NAMES[hypothesis.corner])


def _names(rulebook: Rulebook) -> tuple[str, ...]:
    """Names of all claims, in the order of ``Rulebook.hypotheses``."""
    return tuple(hypothesis_name(hypothesis, rulebook) for hypothesis in rulebook.hypotheses)


def _suggestion(
    check: Check, place: Place, forecast: Forecast, now: FloatArray, rulebook: Rulebook
) -> CheckSuggestion:
    return CheckSuggestion(
        check=check.id,
        title=check.title,
        corner=place,
        gain_bit=forecast.gain_bit,
        doubt_bit=forecast.entropy_bit,
        minutes_min=rulebook.minutes_of(check),
        access=rulebook.access[check.access].title,
        outcomes=tuple(_expected_outcomes(check, forecast, now, rulebook.once(_names))),
        cautions=tuple(rulebook.cautions[name].text for name in check.cautions),
    )


def _expected_outcomes(
    check: Check, forecast: Forecast, now: FloatArray, names: Sequence[str]
) -> Iterator[ExpectedOutcome]:
    """Find what each outcome would put first, and what it would make rise and fall most."""
    after, change = forecast.after, forecast.after - now
    before = now.tolist()
    for (name, words), probability, verdict, *numbers in zip(
        check.outcomes.items(),
        forecast.outcome_probability.tolist(),
        after.tolist(),
        after.argmax(axis=1).tolist(),
        change.argmax(axis=1).tolist(),
        change.argmin(axis=1).tolist(),
        strict=True,
    ):
        first, risen, fallen = [Shift(names[number], before[number], verdict[number]) for number in numbers]
        yield ExpectedOutcome(name, words, probability, first, risen, fallen)
