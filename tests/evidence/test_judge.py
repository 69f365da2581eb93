"""From measurements and answers to the verdict."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from triage.errors import SettingsError
from triage.evidence.answers import Observation
from triage.evidence.hypotheses import Hypothesis
from triage.evidence.judge import judge
from triage.evidence.rulebook import Rulebook
from triage.signals.measurement import NotMeasurable


def test_answers_join_the_findings_of_the_log(
    rulebook: Rulebook, drive: Callable[..., list], debris: dict[str, float]
) -> None:
    judgement = judge(drive("RR", debris), (), rulebook, [Observation("rock-wheel", None, "none")])
    assert judgement.findings[-1].id == "rock-wheel@RR"
    assert judgement.posterior.first.hypothesis == Hypothesis("RR", "encoder-debris")
    assert all("rock-wheel@RR" in line.contributions_bit for line in judgement.posterior.ranking)
    ids = [finding.id for finding in judgement.findings]
    assert len(ids) == len(set(ids))
    for line in judgement.posterior.ranking:
        assert set(line.because) | set(line.against) <= set(ids)


def test_an_answer_without_corner_means_the_one_of_the_log_alone(
    rulebook: Rulebook, drive: Callable[..., list], debris: dict[str, float]
) -> None:
    answers = [Observation("rock-wheel", "FL", "clear"), Observation("turn-by-hand", None, "smooth")]
    judgement = judge(drive("RR", debris), (), rulebook, answers)
    assert [finding.id for finding in judgement.findings[-2:]] == ["rock-wheel@FL", "turn-by-hand@RR"]


def test_the_cautions_that_always_stand_come_with_every_verdict(
    rulebook: Rulebook, drive: Callable[..., list], debris: dict[str, float]
) -> None:
    always = {caution.text for caution in rulebook.cautions.values() if caution.always}
    for log in ([], drive(), drive("FL", debris)):
        cautions = judge(log, (), rulebook).cautions
        assert always <= set(cautions)
        assert len(cautions) == len(set(cautions))
    assert rulebook.cautions["brake-dust"].text in judge(drive("FL", debris), (), rulebook).cautions


def test_what_the_log_does_not_carry_is_told_and_moves_nothing(
    rulebook: Rulebook, drive: Callable[..., list]
) -> None:
    gaps = [
        NotMeasurable("side-load-contrast", corner, "no curves", "curves to both sides")
        for corner in ("FL", "FR")
    ]
    with_gaps, without = judge(drive(), gaps, rulebook), judge(drive(), (), rulebook)
    assert with_gaps.posterior == without.posterior
    assert any("1 quantity" in caution for caution in with_gaps.cautions)
    assert not any("quantit" in caution for caution in without.cautions)


def test_an_unknown_answer_is_refused(rulebook: Rulebook) -> None:
    with pytest.raises(SettingsError):
        judge([], (), rulebook, [Observation("rock-wheel", None, "wobbly")])
