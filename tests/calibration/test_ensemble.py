"""Drawing and measuring simulated road tests, and counting tables from them."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from triage.calibration import __main__ as command
from triage.calibration.ensemble import (
    CALIBRATION_SERIES,
    DURATIONS_S,
    EVALUATION_SERIES,
    SEVERITIES,
    Case,
    MeasuredCase,
    draw_cases,
    measure_case,
    measure_cases,
    setup_of_case,
)
from triage.calibration.score import judge_cases
from triage.calibration.tables import count_tables
from triage.calibration.trace import NO_TRACE
from triage.corners import CORNERS, VEHICLE
from triage.evidence.likelihoods import SOUND
from triage.evidence.rulebook import Rulebook, load_rulebook
from triage.run import run_triage
from triage.signals.measurement import Measurement
from triage.simulator.faults import FAULT_MODELS
from triage.simulator.road_test import setup_of_seed, simulate_road_test


@pytest.fixture(scope="module")
def rulebook() -> Rulebook:
    return load_rulebook()


def test_every_cause_is_drawn_equally_often_and_reproducibly() -> None:
    cases = draw_cases(7, series=CALIBRATION_SERIES)
    assert cases == draw_cases(7, series=CALIBRATION_SERIES)
    assert [case.cause for case in cases] == [model.cause for model in FAULT_MODELS for _ in range(7)]
    where = {model.cause: model.where for model in FAULT_MODELS}
    for case in cases:
        assert (case.corner == VEHICLE) == (where[case.cause] == "vehicle")
        assert SEVERITIES[0] <= case.severity <= SEVERITIES[1]
        assert case.duration_s in DURATIONS_S
    assert {case.corner for case in cases} == {*CORNERS, VEHICLE}


def test_more_cases_begin_with_the_same_ones() -> None:
    few, many = draw_cases(2, series=1), draw_cases(3, series=1)
    assert set(few) < set(many)


def test_what_is_judged_was_never_calibrated_on() -> None:
    calibration = {case.seed for case in draw_cases(50, series=CALIBRATION_SERIES)}
    evaluation = {case.seed for case in draw_cases(50, series=EVALUATION_SERIES)}
    assert not calibration & evaluation
    assert len(calibration) == 50 * len(FAULT_MODELS)


def test_the_other_tyre_is_the_only_one_on_its_car() -> None:
    """Its truth is in the log only where the axles are alike; for every other cause they may differ."""
    cases = draw_cases(40, series=EVALUATION_SERIES, unseen=True)
    apart = dict.fromkeys((case.cause for case in cases), 0)
    for case in cases:
        ratio = np.array(setup_of_case(case).car.wheel_ratio)
        apart[case.cause] += int(abs(ratio[:2].mean() - ratio[2:].mean()) > 0.004)
    assert apart.pop("tyre-size") == 0
    assert sum(apart.values()) > 10


def test_of_an_axle_that_differs_anyway_both_wheels_are_named(rulebook: Rulebook) -> None:
    """The rear tyres are alike, the front ones read 1.5 and 3 % more: which of the two is the odd one?"""
    setup = setup_of_seed(2)
    setup = replace(setup, car=replace(setup.car, wheel_ratio=(0.9925, 0.9925, 1.0075, 1.0075)))
    test = simulate_road_test(
        cause="tyre-size", corner="FL", severity=0.5, duration_s=180.0, seed=2, setup=setup
    )
    found = run_triage(test.log, rulebook)
    first, second = found.posterior.ranking[:2]
    assert {first.hypothesis.corner, second.hypothesis.corner} == {"FL", "FR"}
    assert {first.hypothesis.cause, second.hypothesis.cause} == {"tyre-size"}
    assert first.probability < 0.7
    assert "compare-tyres" in {one.check for one in found.next_checks[:2]}


def test_severity_and_length_can_be_fixed_without_changing_the_rest() -> None:
    drawn, fixed = draw_cases(3, series=2), draw_cases(3, series=2, severity=0.5, duration_s=180.0)
    assert {case.severity for case in fixed} == {0.5}
    assert {case.duration_s for case in fixed} == {180.0}
    assert [(one.cause, one.corner, one.seed) for one in drawn] == [
        (one.cause, one.corner, one.seed) for one in fixed
    ]


CASES = (
    Case("sensor-fault", "FR", 0.9, 60.0, 5),
    Case("no-fault-found", "vehicle", 0.0, 60.0, 6),
    Case("common-cause", "vehicle", 0.9, 60.0, 7),
)


@pytest.fixture(scope="module")
def measured() -> tuple[MeasuredCase, ...]:
    return tuple(measure_case(case) for case in CASES)


def test_measuring_is_the_same_alone_and_side_by_side(measured: tuple[MeasuredCase, ...]) -> None:
    told: list[float] = []
    got = measure_cases(CASES, workers=2, progress=lambda fraction, _: told.append(fraction))
    assert got == measured
    assert told == pytest.approx([1 / 3, 2 / 3, 1.0])


def test_cases_are_judged_against_their_truth(measured: tuple[MeasuredCase, ...], rulebook: Rulebook) -> None:
    verdicts = judge_cases(measured, rulebook)
    assert [(verdict.truth.corner, verdict.truth.cause) for verdict in verdicts] == [
        (case.corner, case.cause) for case in CASES
    ]
    assert not verdicts[1].blames_corner


def _case(cause: str, corner: str, rate: float) -> MeasuredCase:
    def rate_at(place: str, value: float) -> Measurement:
        return Measurement("drop-out-rate", place, value, 0.01, "1/min", 10, ((0.0, 1.0),))  # type: ignore[arg-type]

    rates = [rate_at(place, rate if place == corner else 0.01) for place in CORNERS]
    return MeasuredCase(Case(cause, corner, 1.0, 60.0, 1), tuple(rates), ())  # type: ignore[arg-type]


def test_tables_count_the_blamed_corner_apart_from_sound_ones(rulebook: Rulebook) -> None:
    cases = [_case("harness-fault", "FL", 50.0)] * 40 + [_case("no-fault-found", "vehicle", 0.01)] * 40
    tables = count_tables(cases, rulebook, evidence="a test").tables
    rows = tables["drop-out-rate"].rows
    assert set(tables) == set(rulebook.measurements)
    assert rows["harness-fault"][-1] > 0.6
    assert rows[SOUND][0] > 0.9
    for row in rows.values():
        assert sum(row) == pytest.approx(1.0)
        assert min(row) > 0.0


def test_a_rough_bearing_counts_as_sound(rulebook: Rulebook) -> None:
    cases = [_case("bearing-roughness", "FL", 50.0)] * 40
    rows = count_tables(cases, rulebook, evidence="a test").tables["drop-out-rate"].rows
    assert "bearing-roughness" not in rows
    assert rows[SOUND][-1] == pytest.approx(0.25, abs=0.05)


def test_what_the_log_cannot_show_is_marked_and_counted_apart(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """A bearing without play, whatever it is called, and a dead sensor."""
    play, dead = (
        Case("bearing-play", "FL", 0.0, 60.0, 3, unseen=True),
        Case("sensor-fault", "FL", 1.0, 60.0, 3, unseen=True),
    )
    marked, shown = measure_cases([play, dead], workers=1, judged=True)
    assert NO_TRACE in marked.traits
    assert NO_TRACE not in shown.traits
    assert NO_TRACE not in measure_case(play).traits
    monkeypatch.setattr(command, "measure_cases", lambda *_cases, **_options: (marked, shown))
    assert command.main(["--evaluate", "--per-cause", "1"]) == 0
    assert "left out, for the log is as good as without the fault: bearing-play 1" in capsys.readouterr().out


def test_report_of_an_evaluation(
    measured: tuple[MeasuredCase, ...],
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.setattr(command, "measure_cases", lambda *_cases, **_options: measured)
    assert command.main(["--evaluate", "--per-cause", "1"]) == 0
    out = capsys.readouterr().out
    for word in ("sensor-fault", "no-fault-found", "common-cause", "Brier", "expected calibration error"):
        assert word in out
    assert np.isfinite(
        [float(word.strip("%")) for word in out.split() if word[0].isdigit() and word.endswith("%")]
    ).all()


def test_calibrating_writes_tables_that_load(
    measured: tuple[MeasuredCase, ...], monkeypatch: pytest.MonkeyPatch, tmp_path: object
) -> None:
    import shutil
    from importlib.resources import files
    from pathlib import Path

    folder = Path(str(tmp_path)) / "rules"
    shutil.copytree(Path(str(files("rules"))), folder)
    monkeypatch.setattr(command, "measure_cases", lambda *_cases, **_options: measured)
    table = folder / "likelihoods.toml"
    assert command.main(["--per-cause", "1", "--out", str(table), "--date", "2026-01-31"]) == 0
    loaded = load_rulebook(folder)
    assert {one.date for one in loaded.likelihoods.values()} == {"2026-01-31"}
    text = table.read_text("utf-8")
    assert command.main(["--per-cause", "1", "--out", str(table), "--date", "2026-02-01"]) == 0
    assert table.read_text("utf-8").replace("2026-02-01", "2026-01-31") == text
    assert set(loaded.measurements) == set(load_rulebook().measurements)
    assert loaded.digest != load_rulebook().digest


def test_several_severities_are_reported_one_after_the_other(
    measured: tuple[MeasuredCase, ...], monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    asked: list[Case] = []

    def measure(cases: list[Case], **_options: object) -> list[MeasuredCase]:
        asked.extend(cases)
        return [replace(measured[0], case=replace(measured[0].case, severity=one.severity)) for one in cases]

    monkeypatch.setattr(command, "measure_cases", measure)
    assert command.main(["--evaluate", "--per-cause", "1", "--severity", "0.25", "0.5"]) == 0
    out = capsys.readouterr().out
    assert "severity 0.25\n" in out
    assert "severity 0.5\n" in out
    assert "all severities together" in out
    assert out.count("expected calibration error") == 3
    assert all(case.unseen for case in asked)


def test_severities_of_a_calibration_are_refused(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stop:
        command.main(["--severity", "0.5"])
    assert stop.value.code == 2
    assert "--evaluate" in capsys.readouterr().err


def test_a_missing_rule_book_is_refused_with_its_exit_code(capsys: pytest.CaptureFixture[str]) -> None:
    assert command.main(["--rules", "/nowhere/at/all", "--per-cause", "1"]) == 3
    assert "/nowhere/at/all" in capsys.readouterr().err
