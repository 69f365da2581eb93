"""Weight of evidence of each finding."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.evidence.explanation import contributions_bit
from triage.evidence.findings import build_findings
from triage.evidence.hypotheses import Hypothesis, RankedHypothesis
from triage.evidence.posterior import rank_hypotheses
from triage.evidence.rulebook import Rulebook


def test_two_hypotheses_by_hand() -> None:
    prior = np.array([0.25, 0.75])
    likelihood = np.array([[0.8, 0.1], [0.5, 0.5]])
    bits = contributions_bit(likelihood * prior, prior=prior)
    assert bits == pytest.approx(np.array([[3.0, -3.0], [0.0, 0.0]]), abs=1e-12)


def test_the_others_are_averaged_by_their_priors() -> None:
    prior = np.array([0.5, 0.3, 0.2])
    likelihood = np.array([[0.6, 0.2, 0.7]])
    bits = contributions_bit(likelihood * prior, prior=prior)
    assert bits[0, 0] == pytest.approx(np.log2(0.6 / ((0.3 * 0.2 + 0.2 * 0.7) / 0.5)))


def test_one_finding_moves_the_odds_by_its_contribution(
    rulebook: Rulebook, measure: Callable[..., object]
) -> None:
    plain = replace(rulebook, scoring=replace(rulebook.scoring, temperature=0.7))
    findings = build_findings([measure("dip-share", "FL", 3.0)], plain)  # type: ignore[list-item]
    before = {line.hypothesis: line.probability for line in rank_hypotheses((), plain).ranking}
    for line in rank_hypotheses(findings, plain).ranking:
        was, now = before[line.hypothesis], line.probability
        moved = np.log2(now / (1.0 - now)) - np.log2(was / (1.0 - was))
        assert moved == pytest.approx(line.contributions_bit["dip-share@FL"], abs=1e-3)


def test_the_disturbed_wheel_speaks_for_its_corner_first(
    rulebook: Rulebook, drive: Callable[..., list], debris: dict[str, float]
) -> None:
    for corner in CORNERS:
        posterior = rank_hypotheses(build_findings(drive(corner, debris), rulebook), rulebook)
        assert posterior.first.hypothesis == Hypothesis(corner, "encoder-debris")
        because = posterior.first.because
        assert all(name.endswith(f"@{corner}") for name in because[:3])
        assert f"dip-share@{corner}" in because


def test_for_and_against_are_sorted_by_strength_and_leave_out_trifles() -> None:
    bits = {"a": 0.5, "b": 2.0, "c": 0.05, "d": -1.0, "e": -3.0, "f": -0.01, "g": 0.5}
    line = RankedHypothesis(Hypothesis("FL", "air-gap"), 0.5, bits)
    assert line.because == ("b", "a", "g")
    assert line.against == ("e", "d")
