"""Values beyond what is counted out: the bound in brackets is told only where it is itself counted out."""

from __future__ import annotations

import pytest

from triage.evidence.value_words import value_words


@pytest.mark.parametrize(
    ("value", "spread", "words"),
    [
        (-4.0, 7.0, "under 0.01 times"),
        (4.0, 7.0, "over 100 times"),
        (-4.0, 3.0, "under 0.01 times (at most 0.10)"),
        (-4.0, 5.0, "under 0.01 times (at most 10)"),
        (4.0, 3.0, "over 100 times (at least 10)"),
        (4.0, 5.0, "over 100 times (at least 0.10)"),
    ],
)
def test_a_bound_that_says_nothing_is_left_out(value: float, spread: float, words: str) -> None:
    assert value_words(value, spread, unit="", told_as="decades") == words
