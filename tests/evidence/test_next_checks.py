"""What a check is worth."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest
from scipy.stats import entropy

from triage.corners import CORNERS
from triage.evidence.answers import Observation, build_answers
from triage.evidence.check_words import meaning_words, why_words
from triage.evidence.findings import build_findings
from triage.evidence.hypotheses import Finding
from triage.evidence.next_checks import LEAST_GAIN_BIT, forecast_checks, suggest_checks
from triage.evidence.posterior import believe, known_findings, rank_hypotheses
from triage.evidence.rule_tables import Rulebook, places_of
from triage.signals.measurement import Measurement


def verdict(findings: tuple[Finding, ...], rulebook: Rulebook) -> np.ndarray:
    return np.array([line.probability for line in rank_hypotheses(findings, rulebook).ranking])


def test_outcomes_of_a_published_exercise(make_book: Callable[..., Rulebook]) -> None:
    """S. Russell and P. Norvig, AI: A Modern Approach, ch. 16, the used car (after J. Pearl, 1988).

    P(good) = 0.7, P(pass | good) = 0.8, P(pass | bad) = 0.35.
    """
    book = make_book(
        {"no-fault-found": ("vehicle", 0.7), "other": ("vehicle", 0.3)},
        checks={"test": ("vehicle", {"sound": (0.8, 0.2), "other": (0.35, 0.65)})},
    )
    forecast = forecast_checks([(book.checks["test"], "vehicle")], believe((), book))[0]
    assert forecast.outcome_probability[0] == pytest.approx(0.665, abs=1e-6)
    assert forecast.after[0, 0] == pytest.approx(0.842105, abs=1e-6)
    assert forecast.after[1, 0] == pytest.approx(0.417910, abs=1e-6)
    buy_pass, buy_fail = (2000 * p + (2000 - 700) * (1 - p) - 1500 for p in forecast.after[:, 0])
    assert (buy_pass, buy_fail) == (pytest.approx(389.474, abs=1e-3), pytest.approx(92.537, abs=1e-3))
    assert forecast.outcome_probability @ [buy_pass, buy_fail] == pytest.approx(290.0, abs=1e-6)


def test_the_gain_is_the_drop_of_entropy_averaged_over_real_answers(
    rulebook: Rulebook, drive: Callable[..., list], debris: dict[str, float]
) -> None:
    findings = build_findings(drive("FL", debris), rulebook)
    belief = believe(findings, rulebook)
    now = entropy(verdict(findings, rulebook), base=2)
    for check in rulebook.checks.values():
        place = "FL" if check.where == "corner" else "vehicle"
        forecast = forecast_checks([(check, place)], belief)[0]
        after = [
            verdict(
                (*findings, *build_answers([Observation(check.id, "FL", name)], rulebook, first_corner="FL")),
                rulebook,
            )
            for name in check.outcomes
        ]
        expected = now - sum(
            share * entropy(each, base=2)
            for share, each in zip(forecast.outcome_probability, after, strict=True)
        )
        assert forecast.gain_bit == pytest.approx(expected, abs=1e-4), check.id


@pytest.mark.parametrize("corner", CORNERS)
def test_no_check_is_worth_less_than_nothing_and_outcomes_sum_to_one(
    rulebook: Rulebook, drive: Callable[..., list], debris: dict[str, float], corner: str
) -> None:
    for log in ((), drive(), drive(corner, debris), drive(corner, {"dead-share": 95.0})):
        belief = believe(tuple(sorted(build_findings(log, rulebook), key=lambda each: each.id)), rulebook)
        for check in rulebook.checks.values():
            for place in CORNERS if check.where == "corner" else ("vehicle",):
                forecast = forecast_checks([(check, place)], belief)[0]
                assert (
                    0.0
                    <= forecast.gain_bit
                    <= min(forecast.entropy_bit, np.log2(len(check.outcomes))) + 1e-12
                )
                assert abs(forecast.outcome_probability.sum() - 1.0) < 1e-9


def test_a_forecast_is_the_same_alone_and_among_those_of_other_lengths(
    rulebook: Rulebook, drive: Callable[..., list], debris: dict[str, float]
) -> None:
    belief = believe(known_findings(build_findings(drive("FL", debris), rulebook), rulebook), rulebook)
    asked = [(check, place) for check in rulebook.checks.values() for place in places_of(check.where)]
    together = forecast_checks(asked, belief)
    assert len({one.outcome_probability.size for one in together}) > 1
    for (check, place), one in zip(asked, together, strict=True):
        alone = forecast_checks([(check, place)], belief)[0]
        assert (one.gain_bit, one.entropy_bit) == (alone.gain_bit, alone.entropy_bit), check.id
        np.testing.assert_array_equal(one.outcome_probability, alone.outcome_probability, check.id)
        np.testing.assert_array_equal(one.after, alone.after, check.id)
    assert forecast_checks([], belief) == []


@pytest.fixture
def stored_code(rulebook: Rulebook) -> tuple[Finding, ...]:
    """A code for the rear left wheel: the corner is known, its cause is not."""
    stored = [Observation("read-fault-memory", "RL", "signal")]
    return build_answers(stored, rulebook, first_corner="RL")


def test_suggestions_come_by_gain_per_minute_for_the_blamed_corner(
    rulebook: Rulebook, stored_code: tuple[Finding, ...]
) -> None:
    suggestions = suggest_checks(stored_code, rulebook)
    worth = [each.gain_bit / each.minutes_min for each in suggestions]
    assert worth == sorted(worth, reverse=True)
    assert {each.corner for each in suggestions} == {"RL", "vehicle"}
    assert all(each.gain_bit >= LEAST_GAIN_BIT for each in suggestions)
    assert "look-at-encoder" in {each.check for each in suggestions}


def test_suggestions_tell_numbers_outcomes_and_cautions(
    rulebook: Rulebook, stored_code: tuple[Finding, ...]
) -> None:
    suggestions = suggest_checks(stored_code, rulebook)
    assert len(suggestions) > 5
    for each in suggestions:
        check = rulebook.checks[each.check]
        assert f"{each.gain_bit:.2f} of" in why_words(each)
        assert f"in {rulebook.minutes_of(check):g} min" in why_words(each)
        assert [one.name for one in each.outcomes] == list(check.outcomes)
        for one in each.outcomes:
            assert f"{one.risen.claim} rises from" in meaning_words(one)
            assert one.risen.after - one.risen.before >= 0.0 >= one.fallen.after - one.fallen.before
            assert one.first.after == max(one.first.after, one.risen.after, one.fallen.after)
        assert len(each.cautions) == len(check.cautions)
        assert each.cautions or not rulebook.access[check.access].hazardous


def test_answered_checks_are_not_suggested_again(
    rulebook: Rulebook, stored_code: tuple[Finding, ...]
) -> None:
    first = suggest_checks(stored_code, rulebook)[0]
    outcome = next(iter(rulebook.checks[first.check].outcomes))
    answers = build_answers([Observation(first.check, "RL", outcome)], rulebook, first_corner="RL")
    again = suggest_checks((*stored_code, *answers), rulebook)
    assert (first.check, first.corner) not in {(each.check, each.corner) for each in again}
    assert again


def test_a_soiled_encoder_is_worth_a_look(
    rulebook: Rulebook, dirty_logs: tuple[tuple[Measurement, ...], ...]
) -> None:
    """Of light cases that leave some doubt: where the log leaves none, no check is suggested."""
    offered = [suggest_checks(build_findings(log, rulebook), rulebook)[:4] for log in dirty_logs]
    looks = [
        ("look-at-encoder", "FL") in {(each.check, each.corner) for each in some} for some in offered if some
    ]
    assert len(looks) >= 2
    assert sum(looks) > len(looks) // 2


def test_corners_that_cannot_be_told_apart_are_all_offered(rulebook: Rulebook) -> None:
    suggestions = suggest_checks((), rulebook)
    assert {each.corner for each in suggestions if each.check == "rock-wheel"} == set(CORNERS)
