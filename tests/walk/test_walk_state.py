"""Moves of the walk, against a plain list that does the same."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from triage.errors import SettingsError
from triage.walk.walk_state import (
    CURED,
    NOT_DONE,
    Given,
    WalkState,
    answer,
    back,
    forward,
    new_sitting,
    undo,
)

ROCK = Given("check", "rock-wheel", "FL", "none")
TURN = Given("check", "turn-by-hand", "FL", "smooth")
CLEAN = Given("repair", "clean-encoder", "FL", NOT_DONE)


def test_an_answer_looked_at_again_is_replaced_and_nothing_else() -> None:
    state = answer(answer(WalkState(), ROCK), TURN)
    earlier = back(back(state))
    assert earlier.looked_at == ROCK
    assert back(earlier) == earlier
    clear = Given("check", "rock-wheel", "FL", "clear")
    assert answer(earlier, clear) == WalkState((clear, TURN))
    assert forward(forward(earlier)) == state


def test_the_same_step_twice_and_another_step_are_refused() -> None:
    state = answer(WalkState(), ROCK)
    with pytest.raises(SettingsError, match="before"):
        answer(state, ROCK)
    with pytest.raises(SettingsError, match="not what is asked"):
        answer(back(state), TURN)


def test_a_repair_put_off_may_come_up_once_more() -> None:
    state = new_sitting(answer(answer(WalkState(), CLEAN), ROCK))
    done = answer(state, Given("repair", "clean-encoder", "FL", CURED))
    assert [one.id for one in done.given] == ["rock-wheel", "clean-encoder"]
    assert done.closed_before == 1
    assert done.finished
    assert not state.finished


@settings(max_examples=200, deadline=None)
@given(st.lists(st.sampled_from(["answer", "back", "forward", "undo", "tomorrow"]), max_size=30))
def test_moves_never_lose_an_answer_but_undo(moves: list[str]) -> None:
    state, told = WalkState(), []
    for number, move in enumerate(moves):
        if move == "answer" and state.looked_at is None:
            given_now = Given("check", f"check-{number}", "RR", "yes")
            state, told = answer(state, given_now), [*told, given_now]
        elif move == "undo":
            state, told = undo(state), told[:-1]
        elif move != "answer":
            state = {"back": back, "forward": forward, "tomorrow": new_sitting}[move](state)
        assert list(state.given) == told
        assert state.position is None or 0 <= state.position < len(told)
        assert 0 <= state.closed_before <= len(told)
