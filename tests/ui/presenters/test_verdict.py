from __future__ import annotations

from dataclasses import replace

import pytest

from triage.evidence.hypotheses import Hypothesis, Posterior, RankedHypothesis
from triage.planning.plan_text import next_step_name
from ui.presenters.verdict import build_evidence, build_headline, build_ranking_rows, corner_probabilities
from ui.state.opening import Opened


def with_ranking(opened: Opened, *rows: tuple[str, str, float]) -> Opened:
    ranking = tuple(RankedHypothesis(Hypothesis(place, cause), share, {}) for place, cause, share in rows)
    return replace(opened, result=replace(opened.result, posterior=Posterior(ranking)))


def test_the_suspected_corner_is_named_with_the_sum_of_its_causes(opened: Opened) -> None:
    headline = build_headline(opened)
    assert headline.suspect == "FL"
    assert headline.title == "Suspected: front left (94 %)"
    assert headline.detail == "Most probable: Dirt on the encoder, front left, 74 %"
    assert corner_probabilities(opened.result)["FL"] == pytest.approx(0.74 + 0.13 + 0.06 + 0.0075)


def test_a_healthy_car_suspects_nobody(opened: Opened) -> None:
    headline = build_headline(
        with_ranking(opened, ("vehicle", "no-fault-found", 0.9), ("FL", "air-gap", 0.1))
    )
    assert (headline.suspect, headline.title) == (None, "No wheel end is suspected")


def test_a_cause_of_the_whole_vehicle_is_named(opened: Opened) -> None:
    headline = build_headline(with_ranking(opened, ("vehicle", "common-cause", 0.8), ("FL", "air-gap", 0.2)))
    assert (headline.suspect, headline.title) == (None, "Whole vehicle: common cause")


def test_nothing_is_forced_when_the_log_cannot_decide(opened: Opened) -> None:
    rows = (("vehicle", "no-fault-found", 0.4), ("FL", "air-gap", 0.35), ("FR", "air-gap", 0.25))
    headline = build_headline(with_ranking(opened, *rows))
    assert headline.suspect is None
    assert headline.title.startswith("Not decided yet")
    assert headline.detail.endswith("See “Next checks” for the driving that would help")


def test_a_corner_may_be_sure_while_its_cause_is_not(opened: Opened) -> None:
    rows = (("RR", "air-gap", 0.4), ("RR", "sensor-fault", 0.35), ("vehicle", "other", 0.25))
    headline = build_headline(with_ranking(opened, *rows))
    assert (headline.suspect, headline.title) == ("RR", "Suspected: rear right (75 %)")


def test_rows_use_the_rule_books_words_or_the_id(opened: Opened) -> None:
    rows = build_ranking_rows(opened)
    assert (rows[0].place, rows[0].cause, rows[0].percent) == ("Front left", "Dirt on the encoder", "74 %")
    assert rows[1].cause == "Encoder damage"
    assert len(rows) == len(opened.result.posterior.ranking)


def test_evidence_is_for_then_against_strongest_first(opened: Opened) -> None:
    lines = build_evidence(opened.result, 0)
    assert [(line.finding_id, line.side) for line in lines] == [
        ("line-amplitude@FL", "for"),
        ("drop-out-rate@FL", "for"),
        ("side-load-contrast@FL", "for"),
        ("rock-wheel@FL", "against"),
    ]
    assert [line.weight_bit for line in lines] == [4.2, 2.6, 0.7, 0.4]
    assert lines[1].where == "20.00–20.40 s and 2 more"
    assert lines[3].where == "not from the recording"


def test_evidence_belongs_to_the_chosen_line(opened: Opened) -> None:
    lines = build_evidence(opened.result, 1)
    assert [(line.finding_id, line.side, line.weight_bit) for line in lines] == [
        ("line-amplitude@FL", "against", 3.0)
    ]


def test_the_next_step_of_the_plan_is_all_there_is_to_do(opened: Opened) -> None:
    """The remedy of the likeliest cause beside it would be a second, other advice."""
    unsure = with_ranking(opened, ("FL", "encoder-debris", 0.4), ("FR", "air-gap", 0.3))
    for one in (opened, unsure):
        headline = build_headline(one)
        assert headline.next_step == f"Next step: {next_step_name(one.result.plan)}"
        assert headline.next_step == "Next step: Look at the encoder (front left), 15 min"
        assert "Clean it" not in f"{headline.title} {headline.detail}"
