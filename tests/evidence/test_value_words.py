"""Measured values in words: the numbers against what they are defined to be."""

from __future__ import annotations

import math
import re
from typing import Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from triage.corners import CORNERS, Corner
from triage.evidence.findings import build_findings
from triage.evidence.rulebook import load_rulebook
from triage.evidence.value_words import SEEN_FROM_STD, TOLD_AS, ToldAs, curve_words, value_words
from triage.signals.measurement import Measurement
from triage.signals.measures.deepest_drop import LEAST_DEPTH


@pytest.mark.parametrize(
    ("value", "spread", "unit", "told_as", "words"),
    [
        (3.0, 1.0, "", "doublings", "8.0 times (4.0 to 16)"),
        (-1.0, 0.0, "", "doublings", "0.50 times"),
        (2.0, 3.0, "", "decades", "100 times (0.10 to 100 or more)"),
        (9.0, 0.1, "", "decades", "over 100 times"),
        (-4.0, 0.1, "", "decades", "under 0.01 times"),
        (10.0, 0.0, "dB", "", "10 times"),
        (0.6, 0.1, "", "contrast", "4.0 times (3.0 to 5.7)"),
        (1.0, 0.05, "", "contrast", "over 100 times (at least 39)"),
        (-1.0, 0.05, "", "contrast", "under 0.01 times (at most 0.03)"),
        (1.0, 0.0, "", "contrast", "over 100 times"),
        (8.0, 4.0, "", "doublings", "over 100 times (at least 16)"),
        (30.0, 15.0, "dB", "", "over 100 times (at least 32)"),
        (0.25, 0.02, "", "share", "25.0 ± 2.0 %"),
        (-1.0, 0.0, "", "place", "0 %"),
        (0.0, 0.2, "", "place", "50 ± 10 %"),
        (10.0, 1.0, "m/s", "", "36.0 ± 3.6 km/h"),
        (0.25, 0.05, "rev", "", "90 ± 18°"),
        (12.3, 1.5, "1/min", "", "12.3 ± 1.5 times a minute"),
        (12.3, 1.5, "%", "", "12.3 ± 1.5 %"),
        (-0.001, 0.1, "%", "", "0.00 ± 0.10 %"),
    ],
)
def test_values_are_told_as_a_person_pictures_them(
    value: float, spread: float, unit: str, told_as: ToldAs, words: str
) -> None:
    assert value_words(value, spread, unit=unit, told_as=told_as) == words


@given(
    st.floats(allow_nan=False),
    st.floats(),
    st.sampled_from(["", "dB", "m/s", "rev", "1/min", "%"]),
    st.sampled_from(TOLD_AS),
)
def test_any_number_is_told(value: float, spread: float, unit: str, told_as: ToldAs) -> None:
    assert value_words(value, spread, unit=unit, told_as=told_as)


@given(st.floats(0.01, 100.0), st.floats(0.01, 100.0))
def test_a_contrast_is_told_as_the_one_over_the_other(one: float, other: float) -> None:
    words = value_words((one - other) / (one + other), 0.0, unit="", told_as="contrast")
    if 0.02 < one / other < 90.0:
        assert float(words.split()[0]) == pytest.approx(one / other, rel=0.1, abs=0.006)


def test_a_curve_loads_its_outer_wheels() -> None:
    """In a right-hand curve the left wheels are outside."""
    assert [curve_words(corner).get("loaded_curve") for corner in CORNERS] == [
        "right-hand",
        "left-hand",
    ] * 2
    assert curve_words("vehicle") == {}


def told(measurement: str, value: float, spread: float) -> str:
    rulebook = load_rulebook()
    rule = rulebook.measurements[measurement]
    place: Corner | Literal["vehicle"] = "RL" if rule.scope == "corner" else "vehicle"
    (finding,) = build_findings([Measurement(rule.id, place, value, spread, rule.unit, 10, ())], rulebook)
    return finding.statement


def test_what_was_not_found_is_told_so() -> None:
    rules = load_rulebook().measurements.values()
    for rule in rules:
        if rule.nothing:
            words = told(rule.id, 0.0, 0.25 * rule.edges[0] / SEEN_FROM_STD)
            assert not re.search(r"\{|\}|±|\(", words)
            assert "±" in told(rule.id, rule.edges[0], 0.1)
    assert "never drops out in this recording, so hardly more often than 1.1 times a minute" in told(
        "drop-out-rate", 0.0, 0.2725
    )
    assert f"one by {100 * LEAST_DEPTH:.0f} % of its speed that lasts three samples" in told(
        "deepest-drop", 0.0, 2.0
    )


def test_every_statement_can_be_pictured() -> None:
    """No logarithm, no unit of the trade of statistics, and nothing left to fill in."""
    rulebook = load_rulebook()
    places: tuple[Corner, ...] = ("RL",)
    for rule in rulebook.measurements.values():
        place = places[0] if rule.scope == "corner" else "vehicle"
        middle = rule.edges[len(rule.edges) // 2]
        (finding,) = build_findings([Measurement(rule.id, place, middle, 0.1, rule.unit, 10, ())], rulebook)
        told = finding.statement
        assert not re.search(
            r"\{|\}|doubling|decade|dispersion|variance|contrast|correlation|\bdB\b|1/min", told
        )
        assert math.isfinite(finding.value)
        assert told.endswith(").") or rule.id == "swap-pair"
        assert rule.scope == "vehicle" or "rear left" in told
