"""The replay follows the clock it is given, at every speed, and never leaves the recording."""

from __future__ import annotations

import numpy as np
import pytest

from ui.state.replay import SPEEDS, Replay


@pytest.fixture
def replay() -> Replay:
    return Replay(np.arange(0.0, 10.0, 0.1))


@pytest.mark.parametrize("speed", SPEEDS)
def test_a_second_of_the_clock_plays_as_many_as_the_speed_says(speed: float) -> None:
    replay = Replay(np.arange(0.0, 100.0, 0.1))
    replay.set_speed(speed)
    replay.play(50.0)
    replay.tick(50.25)
    replay.tick(51.0)
    assert replay.at_s == pytest.approx(speed)


def test_a_change_of_speed_holds_from_then_on(replay: Replay) -> None:
    replay.play(0.0)
    replay.tick(1.0)
    replay.change_speed(+1)
    replay.tick(2.0)
    assert replay.at_s == pytest.approx(3.0)
    for _ in range(10):
        replay.change_speed(-1)
    assert replay.speed == 0.5
    replay.set_speed(3.0)
    assert replay.speed == 0.5


def test_time_that_passes_while_standing_is_not_played(replay: Replay) -> None:
    replay.play(0.0)
    replay.tick(1.0)
    replay.pause()
    replay.tick(5.0)
    replay.play(9.0)
    replay.tick(9.5)
    assert replay.at_s == pytest.approx(1.5)


def test_a_clock_that_goes_back_moves_nothing(replay: Replay) -> None:
    replay.play(5.0)
    replay.tick(1.0)
    assert replay.at_s == 0.0


def test_it_stops_at_the_end_and_begins_anew(replay: Replay) -> None:
    heard: list[bool] = []
    replay.running_changed.subscribe(heard.append)
    replay.play(0.0)
    replay.tick(60.0)
    assert replay.at_s == replay.end_s == pytest.approx(9.9)
    assert not replay.running
    replay.play(70.0)
    assert replay.at_s == 0.0
    assert heard == [True, False, True]


def test_single_steps_go_from_sample_to_sample(replay: Replay) -> None:
    replay.scrub(0.25)
    replay.step(+1)
    assert replay.at_s == pytest.approx(0.3)
    replay.step(+1)
    assert replay.at_s == pytest.approx(0.4)
    replay.step(-1)
    assert replay.at_s == pytest.approx(0.3)
    replay.scrub(0.25)
    replay.step(-1)
    assert replay.at_s == pytest.approx(0.2)
    replay.scrub(0.0)
    replay.step(-1)
    assert replay.at_s == 0.0


def test_scrubbing_stays_inside_and_goes_on_running(replay: Replay) -> None:
    heard: list[float] = []
    replay.moved.subscribe(heard.append)
    replay.play(0.0)
    replay.scrub(5.0)
    replay.tick(0.5)
    replay.scrub(99.0)
    replay.scrub(-1.0)
    assert heard == pytest.approx([5.0, 5.5, 9.9, 0.0])
    assert replay.running


def test_an_empty_recording_stands_still() -> None:
    replay = Replay(np.empty(0))
    replay.step(+1)
    replay.play(0.0)
    replay.tick(5.0)
    assert replay.at_s == 0.0
    assert not replay.running
