from __future__ import annotations

import numpy as np
import pytest

from ui.state.time_cursor import TimeCursor


@pytest.fixture
def cursor() -> TimeCursor:
    made = TimeCursor()
    made.start_over(np.arange(100.0) / 10.0)
    return made


def test_it_lies_on_the_nearest_sample(cursor: TimeCursor) -> None:
    for wanted_s, placed_s in ((1.04, 1.0), (1.06, 1.1), (-5.0, 0.0), (99.0, 9.9)):
        cursor.place(wanted_s)
        assert cursor.time_s == pytest.approx(placed_s)


def test_it_steps_by_samples_and_stays_inside(cursor: TimeCursor) -> None:
    cursor.step(1, otherwise_s=5.0)
    assert cursor.time_s == pytest.approx(5.0), "the first step shows where it is"
    cursor.step(1, otherwise_s=0.0)
    cursor.step(-10, otherwise_s=0.0)
    assert cursor.time_s == pytest.approx(4.1)
    cursor.step(-1000, otherwise_s=0.0)
    assert cursor.time_s == 0.0
    cursor.step(1000, otherwise_s=0.0)
    assert cursor.time_s == pytest.approx(9.9)


def test_the_mark_stays_while_the_cursor_goes_on(cursor: TimeCursor) -> None:
    cursor.mark_here()
    assert cursor.mark_s is None, "there is nothing to mark yet"
    cursor.place(2.0)
    cursor.mark_here()
    cursor.step(5, otherwise_s=0.0)
    assert (cursor.mark_s, cursor.time_s) == (pytest.approx(2.0), pytest.approx(2.5))
    cursor.clear()
    assert cursor.mark_s is None
    assert cursor.time_s is None


def test_a_mark_placed_first_is_looked_at_too(cursor: TimeCursor) -> None:
    cursor.place_mark(3.02)
    assert (cursor.mark_s, cursor.time_s) == (pytest.approx(3.0), pytest.approx(3.0))


def test_every_move_is_told(cursor: TimeCursor) -> None:
    told = []
    cursor.changed.subscribe(lambda moved: told.append((moved.time_s, moved.mark_s)))
    cursor.place(1.0)
    cursor.mark_here()
    cursor.start_over(np.arange(3.0))
    assert told == [(1.0, None), (1.0, 1.0), (None, None)]


def test_without_a_recording_nothing_can_be_placed() -> None:
    cursor = TimeCursor()
    cursor.place(1.0)
    cursor.place_mark(1.0)
    cursor.step(1, otherwise_s=1.0)
    assert cursor.time_s is None


def test_one_sample() -> None:
    cursor = TimeCursor()
    cursor.start_over(np.array([7.0]))
    cursor.place(0.0)
    cursor.step(3, otherwise_s=0.0)
    assert cursor.time_s == 7.0
