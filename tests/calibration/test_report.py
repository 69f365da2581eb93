"""The text of an evaluation, on verdicts whose tables can be counted by hand."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.stats import binomtest

from triage.calibration.report import (
    by_cause,
    by_severity,
    confusion,
    format_evaluation,
    format_reliability,
    healthy_look_alikes,
    reliability_diagram,
    seeded_drives,
    wilson_interval,
)
from triage.calibration.score import Verdict
from triage.calibration.trace import NO_TRACE
from triage.corners import Place
from triage.evidence.hypotheses import Hypothesis, Posterior, RankedHypothesis

HEALTHY: tuple[Place, str] = ("vehicle", "no-fault-found")


def verdict(
    truth: tuple[Place, str],
    first: tuple[Place, str],
    probability: float = 0.8,
    *,
    severity: float = 0.5,
    traits: tuple[str, ...] = (),
) -> Verdict:
    lines = [RankedHypothesis(Hypothesis(*first), probability, {})]
    if first != truth:
        lines.append(RankedHypothesis(Hypothesis(*truth), 1.0 - probability, {}))
    return Verdict(Hypothesis(*truth), Posterior(tuple(lines)), severity, traits)


GAP_FL: tuple[Place, str] = ("FL", "air-gap")
VERDICTS = [
    verdict(GAP_FL, GAP_FL, severity=0.9),
    verdict(GAP_FL, ("FR", "air-gap"), severity=0.2),
    verdict(GAP_FL, ("FL", "tyre-size"), severity=0.3),
    verdict(("RL", "tyre-size"), ("RL", "tyre-size")),
    verdict(HEALTHY, HEALTHY, traits=("recorder gaps", "potholes")),
    verdict(HEALTHY, ("RR", "air-gap"), traits=("potholes",)),
    verdict(HEALTHY, HEALTHY),
]


def _row(lines: list[str], title: str) -> list[str]:
    return next(line.split() for line in lines if line.strip().startswith(title))


def test_shares_by_cause() -> None:
    lines = by_cause(VERDICTS)
    assert _row(lines, "air-gap")[1:6] == ["3", "33.3%", "100.0%", "66.7%", "100.0%"]
    assert "air-gap elsewhere 1" in next(line for line in lines if line.startswith("air-gap"))
    assert _row(lines, "all")[1:3] == ["7", "57.1%"]


def test_the_confusion_table_parts_the_right_cause_elsewhere() -> None:
    lines = confusion(VERDICTS)
    # Columns: air-gap, tyre-size, no-fault-found, other, elsewhere.
    assert _row(lines, "1 air-gap")[2:] == ["1", "1", ".", ".", "1"]
    assert _row(lines, "2 tyre-size")[2:] == [".", "1", ".", ".", "."]
    assert _row(lines, "3 no-fault-found")[2:] == ["1", ".", "2", ".", "."]
    assert lines[-1].split() == ["4", "other"]


def test_severities_fall_into_their_classes() -> None:
    lines = by_severity(VERDICTS)
    assert _row(lines, "air-gap")[1:] == ["0.0%", "(2)", "-", "(0)", "100.0%", "(1)"]
    assert _row(lines, "all")[1:] == ["0.0%", "(2)", "100.0%", "(1)", "100.0%", "(1)"]
    assert by_severity(VERDICTS[3:]) == []


def test_healthy_cars_are_split_by_what_looks_like_a_fault() -> None:
    lines = healthy_look_alikes(VERDICTS)
    assert _row(lines, "potholes")[1:] == ["2", "50.0%", "50.0%"]
    assert _row(lines, "recorder gaps")[2:] == ["1", "100.0%", "0.0%"]
    assert _row(lines, "none of these")[3:] == ["1", "100.0%", "0.0%"]
    assert healthy_look_alikes(VERDICTS[:4]) == []


def test_the_bars_are_as_long_as_what_happened() -> None:
    lines = reliability_diagram([verdict(GAP_FL, GAP_FL, 0.75)] * 3 + [verdict(GAP_FL, HEALTHY, 0.75)])
    assert lines[1].split()[:3] == ["0.750", "0.750", "4"]
    assert lines[1].count("#") == 30
    surprise = (3 * np.log2(1 / 0.75) + np.log2(1 / 0.25)) / 4
    assert f"{surprise:.3f} bit" in lines[-1]


def test_severities_are_judged_together_too() -> None:
    text = format_reliability([verdict(GAP_FL, GAP_FL, 0.75)] * 3 + [verdict(GAP_FL, HEALTHY, 0.75)])
    assert text.startswith("all severities together, 4 tests\n")
    assert "expected calibration error 0.0000" in text


def test_a_sure_verdict_keeps_its_place_on_the_diagram() -> None:
    lines = reliability_diagram([verdict(GAP_FL, GAP_FL, 1.0)])
    assert lines[1].endswith("#" * 40 + "|")


@pytest.mark.parametrize(("hits", "number"), [(0, 10), (3, 10), (57, 60), (60, 60)])
def test_the_interval_of_a_share_is_wilsons(hits: int, number: int) -> None:
    low, high = wilson_interval(hits, number)
    reference = binomtest(hits, number).proportion_ci(0.95, method="wilson")
    assert low == pytest.approx(reference.low, abs=1e-4)
    assert high == pytest.approx(reference.high, abs=1e-4)
    assert wilson_interval(0, 0) == (0.0, 1.0)


def test_seeded_drives_tell_what_cannot_be_seen_from_what_misleads() -> None:
    found = [
        verdict(GAP_FL, GAP_FL, traits=("a.csv",)),
        verdict(GAP_FL, ("FL", "tyre-size"), 0.7, traits=("a.csv",)),
        verdict(GAP_FL, ("FL", "tyre-size"), 0.4, traits=("a.csv",)),
        verdict(("FL", "bearing-play"), HEALTHY, traits=("a.csv", NO_TRACE)),
    ]
    lines = seeded_drives(found)
    assert _row(lines, "a.csv") == ["a.csv", "3", "33.3%", "33.3%", "1", "0.0%"]
    assert [line.split("first ")[1] for line in lines[-2:]] == [
        "FL tyre-size at 0.70",
        "FL tyre-size at 0.40",
    ]


def test_the_whole_report_holds_every_part() -> None:
    text = format_evaluation(VERDICTS)
    for part in ("most often mistaken", "elsewhere", "by severity", "healthy cars", "Brier", "surprise"):
        assert part in text
