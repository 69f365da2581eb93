from __future__ import annotations

from dataclasses import replace

import pytest

from triage.evidence.hypotheses import Posterior
from ui.state.opening import Opened, OpenOrder
from ui.state.window_state import (
    Highlight,
    LoadingPhase,
    Phase,
    ProgressPoint,
    ShowingPhase,
    StartPhase,
    Trial,
    WindowState,
)

ORDER = OpenOrder(("a.csv",))


@pytest.fixture
def showing(opened: Opened) -> WindowState:
    state = WindowState()
    state.enter(ShowingPhase(ORDER, opened))
    return state


def test_a_new_phase_is_told_and_forgets_choice_and_highlight(showing: WindowState) -> None:
    told: list[Phase] = []
    showing.choose(2)
    showing.show_finding("drop-out-rate@FL")
    showing.phase_changed.subscribe(told.append)
    showing.enter(StartPhase())
    assert told == [StartPhase()]
    assert (showing.choice, showing.highlight, showing.opened) == (0, None, None)


def test_a_phase_is_told_before_it_comes_then_to_all_and_at_last_when_they_have_heard(
    showing: WindowState,
) -> None:
    heard: list[tuple[str, Phase]] = []
    showing.phase_coming.subscribe(lambda _phase: heard.append(("coming", showing.phase)))
    showing.phase_shown.subscribe(lambda _phase: heard.append(("shown", showing.phase)))
    showing.phase_changed.subscribe(lambda _phase: heard.append(("changed", showing.phase)))
    before, start = showing.phase, StartPhase()
    showing.enter(start)
    assert heard == [("coming", before), ("changed", start), ("shown", start)]


def test_a_phase_that_is_left_at_once_is_not_told_as_shown(showing: WindowState) -> None:
    shown: list[Phase] = []
    loading, start = LoadingPhase(ORDER), StartPhase()
    showing.phase_shown.subscribe(shown.append)
    showing.phase_changed.subscribe(lambda phase: showing.enter(start) if phase is loading else None)
    showing.enter(loading)
    assert shown == [start]


@pytest.mark.parametrize("rank", [-1, 8, 1000])
def test_choosing_a_line_that_is_not_there_changes_nothing(showing: WindowState, rank: int) -> None:
    told: list[int] = []
    showing.choice_changed.subscribe(told.append)
    showing.choose(rank)
    assert (showing.choice, told) == (0, [])


def test_choosing_tells_once(showing: WindowState) -> None:
    told: list[int] = []
    showing.choice_changed.subscribe(told.append)
    showing.choose(3)
    showing.choose(3)
    assert told == [3]


def test_nothing_can_be_chosen_without_a_log() -> None:
    state = WindowState()
    state.choose(0)
    state.show_finding("drop-out-rate@FL")
    state.step_highlight(1)
    assert (state.choice, state.highlight) == (0, None)


def test_the_same_finding_again_goes_round_its_places(showing: WindowState) -> None:
    seen = []
    for _ in range(4):
        showing.show_finding("drop-out-rate@FL")
        assert showing.highlight is not None
        seen.append(showing.highlight.index)
    assert seen == [0, 1, 2, 0]
    showing.step_highlight(-1)
    assert showing.highlight is not None
    assert showing.highlight.span == (44.0, 44.1)


def test_an_answer_has_no_seconds_to_show(showing: WindowState) -> None:
    told: list[Highlight | None] = []
    showing.show_finding("drop-out-rate@FL")
    showing.highlight_changed.subscribe(told.append)
    showing.show_finding("rock-wheel@FL")
    assert told == [None]


def test_clearing_twice_tells_once(showing: WindowState) -> None:
    told: list[Highlight | None] = []
    showing.show_finding("line-amplitude@FL")
    showing.highlight_changed.subscribe(told.append)
    showing.clear_highlight()
    showing.clear_highlight()
    assert told == [None]


def test_progress_is_told_only_while_reading() -> None:
    state = WindowState()
    told: list[ProgressPoint] = []
    state.progress_changed.subscribe(told.append)
    state.report(ProgressPoint(0.1, "late"))
    state.enter(LoadingPhase(ORDER))
    state.report(ProgressPoint(0.2, "reading"))
    assert told == [ProgressPoint(0.2, "reading")]


def test_hiding_wheels() -> None:
    state = WindowState()
    told: list[frozenset[str]] = []
    state.hidden_corners_changed.subscribe(told.append)
    state.set_corner_hidden("RL", True)
    state.set_corner_hidden("RL", True)
    state.set_corner_hidden("RL", False)
    assert told == [frozenset({"RL"}), frozenset()]


def test_colours_are_told_when_they_change() -> None:
    state = WindowState()
    told: list[bool] = []
    state.dark_changed.subscribe(told.append)
    state.set_dark(False)
    state.set_dark(True)
    assert told == [True]


def test_the_wheel_looked_at_follows_the_choice_and_then_the_user(showing: WindowState) -> None:
    heard: list[str] = []
    showing.corner_changed.subscribe(heard.append)
    places = [ranked.hypothesis.corner for ranked in showing.opened.result.posterior.ranking]  # type: ignore[union-attr]
    assert showing.corner == (places[0] if places[0] != "vehicle" else "FL")
    for corner in ("RR", "RR", "RL"):
        showing.choose_corner(corner)
    assert heard == ["RR", "RL"]


def test_pages_and_units_are_told_when_they_change() -> None:
    state = WindowState()
    pages: list[str] = []
    units: list[str] = []
    state.page_changed.subscribe(pages.append)
    state.speed_unit_changed.subscribe(units.append)
    for page in ("road-test", "road-test", "verdict"):
        state.show_page(page)
    for unit in ("km/h", "mph", "furlong", "m/s"):
        state.set_speed_unit(unit)
    assert pages == ["road-test", "verdict"]
    assert units == ["mph", "m/s"]


def make_trial(showing: WindowState) -> Trial:
    opened = showing.opened
    assert opened is not None
    turned = Posterior(tuple(reversed(opened.result.posterior.ranking)))
    tried = replace(opened, result=replace(opened.result, posterior=turned, findings=()))
    return Trial("Rock the wheel: no play", tried, "Dirt: 74 % → 10 %")


def test_a_trial_is_shown_and_taken_back(showing: WindowState) -> None:
    recorded, trial = showing.opened, make_trial(showing)
    told: list[Opened] = []
    showing.verdict_changed.subscribe(told.append)
    showing.choose(2)
    showing.try_out(trial)
    assert (showing.opened, showing.choice) == (trial.opened, 0)
    assert isinstance(showing.phase, ShowingPhase)
    assert showing.phase.opened is recorded, "what is recorded stays as it is"
    showing.try_out(None)
    showing.try_out(None)
    assert showing.opened is recorded
    assert len(told) == 2


def test_a_place_that_the_trial_does_not_know_is_no_longer_marked(showing: WindowState) -> None:
    showing.show_finding("drop-out-rate@FL")
    showing.try_out(make_trial(showing))
    assert showing.highlight is None


def test_another_phase_ends_the_trial(showing: WindowState) -> None:
    trial = make_trial(showing)
    showing.try_out(trial)
    phase = showing.phase
    showing.enter(StartPhase())
    showing.try_out(trial)
    assert (showing.trial, showing.opened) == (None, None)
    showing.enter(phase)
    assert showing.opened is not trial.opened
