"""Answers that contradict the log or one another are named, with what speaks against them; others are not."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest

from triage.evidence.answers import build_answers, parse_observation
from triage.evidence.contradictions import SURPRISING_BIT, Contradiction, find_contradictions
from triage.evidence.findings import build_findings
from triage.evidence.hypotheses import Finding
from triage.evidence.judge import judge
from triage.evidence.rulebook import Rulebook

Drive = Callable[..., list]


def answers(rulebook: Rulebook, *texts: str) -> tuple[Finding, ...]:
    return build_answers([parse_observation(text) for text in texts], rulebook, first_corner="FL")


def contradictions(rulebook: Rulebook, log: list, *texts: str) -> tuple[Contradiction, ...]:
    return find_contradictions([*build_findings(log, rulebook), *answers(rulebook, *texts)], rulebook)


def test_play_measured_at_a_wheel_of_which_the_log_shows_none(
    rulebook: Rulebook, drive: Drive, measure: Callable
) -> None:
    loads = [measure(name, "RR", 0.0, 0.05) for name in ("side-load-contrast", "load-rest-ratio")]
    log = [*drive(), *loads]
    (one,) = contradictions(rulebook, log, "end-play@RR=0.30 mm limit 0.05")
    assert one.finding == "end-play-gauge@RR"
    assert one.against is not None
    assert one.against.endswith("@RR")
    assert one.surprise_bit > SURPRISING_BIT
    assert "0.300 ± 0.010 mm" in one.text
    assert "Bearing with play, rear right" in one.text
    assert "check the corner" in one.text


def test_an_answer_that_fits_the_log_is_none(
    rulebook: Rulebook, drive: Drive, debris: dict[str, float]
) -> None:
    log = drive("RL", debris)
    assert contradictions(rulebook, log, "look-at-encoder@RL=dirty", "rock-wheel@RL=none") == ()
    assert contradictions(rulebook, log) == ()


def test_two_answers_that_point_to_different_corners(rulebook: Rulebook) -> None:
    texts = (
        "end-play@RR=beyond",
        "rock-wheel@RR=clear",
        "turn-by-hand@RR=rough",
        "count-poles@FL=another-number",
    )
    (one,) = contradictions(rulebook, [], *texts)
    assert one.finding == "count-poles@FL"
    assert one.against in ("end-play-gauge@RR", "rock-wheel@RR")


def test_two_answers_against_each_other_are_named_once(make_book: Callable[..., Rulebook]) -> None:
    priors = {"dirt": ("corner", 0.5), "no-fault-found": ("vehicle", 0.4), "other": ("vehicle", 0.1)}
    rows = {"sound": [0.99, 0.01], "other": [0.9, 0.1], "dirt": [0.01, 0.99]}
    book = make_book(priors, checks={"look": ("corner", rows)})
    findings = build_answers(
        [parse_observation("look@FL=outcome1"), parse_observation("look@RR=outcome1")],
        book,
        first_corner="FL",
    )
    (one,) = find_contradictions(findings, book)
    assert {one.finding, one.against} == {"look@FL", "look@RR"}
    # By hand, given dirt seen at one corner: the other shows it if that is dirt, if something else is there
    # and shows it, or by chance.
    prior = {"FL": 0.125, "RR": 0.125, "rest": 0.25, "healthy": 0.4, "other": 0.1}
    seen = {
        "FL": 0.99,
        "RR": 0.01,
        "rest": 0.01,
        "healthy": 0.01,
        "other": (0.1 + 3 * 0.01) / 4,
    }
    both = {
        "FL": 0.99 * 0.01,
        "RR": 0.01 * 0.99,
        "rest": 0.01**2,
        "healthy": 0.01**2,
        "other": (2 * 0.1 * 0.01 + 2 * 0.01**2) / 4,
    }
    expected = sum(prior[k] * both[k] for k in prior) / sum(prior[k] * seen[k] for k in prior)
    assert one.surprise_bit == pytest.approx(-math.log2(expected), rel=1e-6)


def test_a_rare_answer_that_points_nowhere_is_none(make_book: Callable[..., Rulebook]) -> None:
    priors = {"dirt": ("corner", 0.5), "no-fault-found": ("vehicle", 0.4), "other": ("vehicle", 0.1)}
    rows = {"sound": [0.99, 0.01], "other": [0.98, 0.02], "dirt": [0.98, 0.02]}
    book = make_book(priors, checks={"look": ("corner", rows)})
    findings = build_answers([parse_observation("look@FL=outcome1")], book, first_corner="FL")
    assert find_contradictions(findings, book) == ()


def test_the_judgement_carries_them(rulebook: Rulebook, drive: Drive) -> None:
    judged = judge(drive(), (), rulebook, [parse_observation("rock-wheel@RR=clear")])
    assert [one.finding for one in judged.contradictions] == ["rock-wheel@RR"]
    assert judge(drive(), (), rulebook).contradictions == ()
