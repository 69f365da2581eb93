"""The verdict as JSON and as a text for the terminal."""

from __future__ import annotations

import json
from dataclasses import replace

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.evidence.answers import Observation
from triage.evidence.rulebook import Rulebook, load_rulebook
from triage.run import TriageResult, run_triage
from triage.simulator.road_test import simulate_road_test
from triage.speed_log import Notice, SpeedLog, SpeedTrace
from triage.units import format_share
from triage.verdict_text import (
    LINES_SHOWN,
    SCHEMA,
    WIDTH,
    advice_of,
    build_verdict,
    format_spans,
    format_verdict,
    pairs_by_advice,
)


@pytest.fixture(scope="module")
def rulebook() -> Rulebook:
    return load_rulebook()


@pytest.fixture(scope="module")
def faulty(rulebook: Rulebook) -> TriageResult:
    # A drive that leaves doubt, so that there are checks to tell of.
    log = simulate_road_test(
        cause="encoder-mismatch", corner="FL", severity=0.8, duration_s=150.0, seed=37
    ).log
    noticed = log.noticed(Notice("gaps-in-log", "three gaps of all wheels", 3))
    return run_triage(noticed, rulebook, (Observation("rock-wheel", "FL", "none"),))


@pytest.fixture(scope="module")
def empty(rulebook: Rulebook) -> TriageResult:
    sample = SpeedTrace(np.zeros(1), np.full(1, 8.0), np.zeros(1, dtype=bool), 0.0, "one sample", "m/s")
    return run_triage(SpeedLog("short.csv", "test", None, dict.fromkeys(CORNERS, sample)), rulebook)


def test_document_has_the_promised_fields_and_no_others(faulty: TriageResult) -> None:
    document = build_verdict(faulty)
    assert list(document) == [
        "schema",
        "log",
        "ranking",
        "findings",
        "not_measurable",
        "next_checks",
        "contradictions",
        "undecided",
        "plan",
        "cautions",
        "rulebook",
        "program",
    ]
    assert document["schema"] == SCHEMA == "wheel-triage/rank/1"
    assert set(document["ranking"][0]) == {"corner", "cause", "probability", "because", "against"}
    assert set(document["findings"][0]) == {
        "id",
        "corner",
        "statement",
        "value",
        "unit",
        "std_uncertainty",
        "where",
    }
    assert all(set(one) == {"id", "corner", "reason", "needed"} for one in document["not_measurable"])
    assert all(
        set(one) == {"check", "corner", "minutes", "gain_bits", "why"} for one in document["next_checks"]
    )
    assert document["log"]["schema"].startswith("wheel-triage/inspect/")


def test_document_survives_json_without_nan(faulty: TriageResult, empty: TriageResult) -> None:
    for result in (faulty, empty):
        document = build_verdict(result)
        assert json.loads(json.dumps(document, allow_nan=False)) == document


def test_document_says_what_the_result_says(faulty: TriageResult, rulebook: Rulebook) -> None:
    document = build_verdict(faulty)
    assert sum(line["probability"] for line in document["ranking"]) == pytest.approx(1.0, abs=1e-9)
    assert len(document["ranking"]) == len(faulty.posterior.ranking)
    assert document["ranking"][0]["corner"] == "FL"
    known = {finding["id"]: finding for finding in document["findings"]}
    for line, ranked in zip(document["ranking"], faulty.posterior.ranking, strict=True):
        assert {*line["because"], *line["against"]} <= set(known)
        assert (tuple(line["because"]), tuple(line["against"])) == (ranked.because, ranked.against)
    assert any(line["because"] and line["against"] for line in document["ranking"])
    measured = [finding for finding in document["findings"] if finding["where"]]
    assert all(begin <= end for finding in measured for begin, end in finding["where"])
    answer = known["rock-wheel@FL"]
    assert (answer["where"], answer["std_uncertainty"]) == ([], 0.0)
    assert document["rulebook"] == rulebook.digest


def test_document_and_text_carry_the_plan(faulty: TriageResult, rulebook: Rulebook) -> None:
    document = build_verdict(faulty)["plan"]
    plan = faulty.plan
    assert list(document) == ["next_step", "why", "act_now_money", "expected_money", "repairs"]
    assert document["next_step"]["id"] == plan.next_step.id
    assert document["next_step"]["place"] in (*CORNERS, "vehicle")
    assert document["next_step"]["minutes"] > 0.0
    assert document["expected_money"] <= document["act_now_money"]
    assert [step["id"] for step in document["repairs"]] == [step.id for step in plan.repairs]
    assert all(step["kind"] == "repair" for step in document["repairs"])
    text = format_verdict(faulty, rulebook)
    assert "Next step" in text
    shown = " ".join(text.split())
    assert plan.next_step.title in shown
    assert plan.why in shown


def test_text_fits_its_width_and_names_what_matters(faulty: TriageResult, rulebook: Rulebook) -> None:
    text = format_verdict(faulty, rulebook)
    lines = text.splitlines()
    assert max(len(line) for line in lines) <= WIDTH == 100
    first = faulty.posterior.first
    assert lines[0] == faulty.log.file
    assert rulebook.causes[first.hypothesis.cause].title in text
    assert "front left" in lines[1]
    assert format_share(first.probability) in " ".join(lines[1:4])
    for heading in (
        "Causes, most probable first",
        "For it",
        "Next checks",
        "Cautions",
        "How the log was read",
    ):
        assert heading in text
    assert "[gaps-in-log]" in text
    assert "Seconds: " in text
    assert f"[{faulty.next_checks[0].check}]" in text
    bars = [
        line
        for line in lines
        if line.rstrip().endswith("]") and "%" in line and ("#" in line or "...." in line)
    ]
    assert 1 <= len(bars) <= LINES_SHOWN


def test_undecided_pairs_are_told_with_what_would_decide(empty: TriageResult, rulebook: Rulebook) -> None:
    document = build_verdict(empty)["undecided"]
    assert document
    for told, pair in zip(document, empty.undecided, strict=True):
        assert list(told) == ["between", "driving", "check"]
        assert [one["cause"] for one in told["between"]] == [pair.first.cause, pair.second.cause]
        assert set(told["between"][0]) == {"corner", "cause", "probability"}
        assert told["driving"] is None or set(told["driving"]) == {
            "measurement",
            "corner",
            "text",
            "gain_bits",
        }
        assert told["check"] is None or set(told["check"]) == {"check", "corner", "minutes", "gain_bits"}
    text = format_verdict(empty, rulebook)
    first = empty.undecided[0]
    assert first.driving
    assert "Undecided, and what would tell them apart" in text
    assert first.driving.text.rstrip(".") in " ".join(text.split())
    undriven = replace(first, driving=None, check=None)
    assert "no drive known" in format_verdict(replace(empty, undecided=(undriven,)), rulebook)
    assert "Undecided" not in format_verdict(replace(empty, undecided=()), rulebook)


def test_pairs_with_the_same_advice_stand_together(empty: TriageResult) -> None:
    groups = pairs_by_advice(empty)
    advice = [tuple(advice_of(pairs[0]).values()) for pairs in groups]
    assert len(set(advice)) == len(advice) < len(empty.undecided)
    for pairs, words in zip(groups, advice, strict=True):
        assert {tuple(advice_of(pair).values()) for pair in pairs} == {words}


@pytest.mark.parametrize(
    ("probability", "words"), [(0.95, "Very probable"), (0.7, "Probable"), (0.3, "Not decided")]
)
def test_certainty_is_told_in_words(
    probability: float, words: str, faulty: TriageResult, rulebook: Rulebook
) -> None:
    first = replace(faulty.posterior.first, probability=probability)
    posterior = replace(faulty.posterior, ranking=(first, *faulty.posterior.ranking[1:]))
    headline = format_verdict(replace(faulty, posterior=posterior), rulebook).splitlines()[1]
    assert headline.startswith(words)


def test_missing_driving_is_said_once_per_kind(empty: TriageResult, rulebook: Rulebook) -> None:
    text = format_verdict(empty, rulebook)
    assert "Not decided" in text
    assert "Not measurable on this log" in text
    assert "too short: 1 samples" in text
    needed = empty.not_measurable[0].needed
    assert " ".join(text.split()).count(needed) == 1
    assert "How the log was read" not in text
    assert "For it" not in text


def test_no_suggestion_and_no_caution_leave_no_empty_heading(empty: TriageResult, rulebook: Rulebook) -> None:
    text = format_verdict(replace(empty, next_checks=(), cautions=(), not_measurable=()), rulebook)
    for heading in ("Next checks", "Cautions", "Not measurable"):
        assert heading not in text
    assert "\n\n\n" not in text


@pytest.mark.parametrize(
    ("spans", "text"),
    [
        ((), ""),
        (((3.0, 4.25),), "3.0-4.2 s"),
        (((3.0, 4.0), (10.0, 11.0), (20.0, 21.0)), "3.0-4.0 s, 10.0-11.0 s, 20.0-21.0 s"),
        (((0.0, 1.0),) * 5, "0.0-1.0 s, 0.0-1.0 s, 0.0-1.0 s and 2 more"),
    ],
)
def test_spans_are_written_as_seconds(spans: tuple[tuple[float, float], ...], text: str) -> None:
    assert format_spans(spans) == text


@pytest.mark.parametrize(
    ("probability", "text"),
    [
        (0.0, "under 1 %"),
        (0.0099, "under 1 %"),
        (0.01, "1 %"),
        (0.499, "50 %"),
        (0.99, "99 %"),
        (0.9901, "over 99 %"),
    ],
)
def test_probability_is_never_certain(probability: float, text: str) -> None:
    assert format_share(probability) == text


def test_texts_from_files_cannot_steer_the_terminal(faulty: TriageResult, rulebook: Rulebook) -> None:
    log = replace(faulty.log, file="a\x1b[2J.csv").noticed(Notice("unit-guessed", "b\x07\x9b2J: guessed"))
    text = format_verdict(replace(faulty, log=log), rulebook)
    assert "a·[2J.csv" in text
    assert "b··2J" in text
    assert all(sign.isprintable() or sign == "\n" for sign in text)
