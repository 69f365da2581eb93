"""The walk as the window holds it, without Qt."""

from __future__ import annotations

import pytest

from triage.errors import OutputError
from triage.evidence.rulebook import Rulebook, load_rulebook
from triage.walk.assessment import Recording
from triage.walk.walk_state import CANNOT_SAY, NOT_DONE, Given, WalkState
from ui.presenters.bench import build_bench_text
from ui.state.bench import ASK_TWICE, Bench, BenchSetup


@pytest.fixture(scope="module")
def rulebook() -> Rulebook:
    return load_rulebook()


@pytest.fixture
def saved() -> list[WalkState]:
    return []


@pytest.fixture
def bench(rulebook: Rulebook, saved: list[WalkState]) -> Bench:
    return Bench(BenchSetup("a van", Recording(), rulebook, saved.append, WalkState()))


def _to_a_caution(bench: Bench) -> None:
    for _ in range(80):
        if not bench.view.confirmed:
            return
        bench.skip()
    raise AssertionError("no step with a caution was asked")


def test_every_answer_is_saved_and_moves_the_ranking(bench: Bench, saved: list[WalkState]) -> None:
    told = []
    bench.changed.subscribe(told.append)
    first = bench.view.question
    assert first is not None
    bench.say("3")
    bench.cannot_say()
    bench.skip()
    assert [state.given for state in saved] == [bench.view.state.given[:count] for count in (1, 2, 3)]
    assert [one.answer for one in saved[-1].given] == [first.choices[2].id, CANNOT_SAY, NOT_DONE]
    assert told[-1] is bench.view
    assert told[0].before is not None
    assert told[0].now.judgement.posterior != told[0].before.judgement.posterior


def test_back_keeps_and_undo_takes_back(bench: Bench, saved: list[WalkState]) -> None:
    bench.say("1")
    bench.back()
    assert bench.view.question is not None
    assert bench.view.question.now == bench.view.state.given[0].answer
    bench.forward()
    assert len(saved) == 1
    bench.undo()
    assert saved[-1] == WalkState()


def test_cautions_come_before_the_answers_and_must_be_confirmed(bench: Bench, rulebook: Rulebook) -> None:
    _to_a_caution(bench)
    given = bench.view.state.given
    text = build_bench_text(bench.view, rulebook)
    assert text.must_confirm
    assert text.cautions
    assert not text.choices
    bench.say("1")
    assert bench.view.state.given == given
    assert "Confirm" in bench.view.note
    bench.confirm()
    text = build_bench_text(bench.view, rulebook)
    assert text.choices
    assert text.cautions
    bench.say("1")
    assert len(bench.view.state.given) == len(given) + 1


def test_nonsense_and_a_full_disk_are_told(rulebook: Rulebook) -> None:
    def full(_state: WalkState) -> None:
        raise OutputError("no space left", hint="Free some.")

    bench = Bench(BenchSetup("a van", Recording(), rulebook, full, WalkState()))
    bench.say("nonsense")
    assert "nonsense" in bench.view.note
    assert bench.view.state == WalkState()
    bench.say("1")
    assert "no space left" in bench.view.note
    assert len(bench.view.state.given) == 1


def test_starting_afresh_is_asked_for_twice(bench: Bench) -> None:
    bench.say("1")
    bench.start_afresh()
    assert bench.view.note == ASK_TWICE
    assert bench.view.state.given
    bench.start_afresh()
    assert bench.view.state == WalkState()


def test_the_page_in_words(rulebook: Rulebook, saved: list[WalkState]) -> None:
    known = WalkState((Given("check", "rock-wheel", "FR", "slight"),))
    bench = Bench(BenchSetup("a van", Recording(), rulebook, saved.append, known))
    bench.back()
    bench.confirm()
    bench.say("clear")
    text = build_bench_text(bench.view, rulebook)
    assert text.ranking[0].name == "Bearing with play, front right"
    assert text.ranking[0].moved.startswith("▲ from")
    assert text.progress.startswith("1 answered;")
    assert 0.0 < text.share_settled < 1.0
    assert text.has_answers


def test_an_answer_against_all_others_is_named(rulebook: Rulebook, saved: list[WalkState]) -> None:
    known = WalkState(
        tuple(
            Given("check", name, "RL", said)
            for name, said in (
                ("rock-wheel", "none"),
                ("end-play-gauge", "beyond"),
                ("turn-by-hand", "smooth"),
            )
        )
    )
    bench = Bench(BenchSetup("a van", Recording(), rulebook, saved.append, known))
    contradictions = bench.view.now.judgement.contradictions
    text = build_bench_text(bench.view, rulebook)
    assert contradictions
    assert all(one.text in text.note for one in contradictions)
    assert not text.refused
