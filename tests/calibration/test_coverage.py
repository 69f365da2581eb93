"""Coverage of stated uncertainties, on made-up values and on simulated road tests."""

from __future__ import annotations

import numpy as np
import pytest

from triage.calibration import __main__ as command
from triage.calibration.coverage import Covered, format_coverage, measure_coverage
from triage.calibration.ensemble import Case


def _made_up(scale: float, shift: float = 0.0) -> list[Covered]:
    rng = np.random.default_rng(1)
    return [Covered("thing", False, 5.0 + shift + scale * rng.normal(), 1.0, 5.0) for _ in range(2000)]


def _row(found: list[Covered]) -> list[str]:
    return next(line for line in format_coverage(found).splitlines() if line.startswith("thing")).split()


def test_an_honest_uncertainty_covers_95_per_cent_of_a_normal_law() -> None:
    row = _row(_made_up(1.0))
    assert float(row[3].strip("%")) == pytest.approx(95.0, abs=1.5)
    assert float(row[7]) == pytest.approx(0.0, abs=0.1)
    assert float(row[8]) == pytest.approx(1.0, abs=0.1)
    assert "!" not in row


@pytest.mark.parametrize(("scale", "shift"), [(2.0, 0.0), (0.2, 0.0), (1.0, 3.0)])
def test_a_wrong_uncertainty_or_a_bias_is_marked(scale: float, shift: float) -> None:
    assert _row(_made_up(scale, shift))[-1] == "!"


def test_a_healthy_drive_is_held_against_its_truth() -> None:
    found = measure_coverage(Case("no-fault-found", "vehicle", 0.0, 120.0, 21))
    names = {one.name for one in found}
    assert {"ratio-offset", "dead-share", "drop-out-rate"} <= names
    assert not any(one.struck for one in found)
    assert all(abs(one.deviation) < 6.0 for one in found if one.name == "ratio-offset")


def test_another_encoder_is_told_by_its_pole_count() -> None:
    found = measure_coverage(Case("encoder-mismatch", "RR", 0.6, 120.0, 5))
    struck = {one.name: one for one in found if one.struck}
    assert abs(struck["ratio-offset"].truth) > 2.0
    assert struck["ratio-offset"].value == pytest.approx(struck["ratio-offset"].truth, abs=0.4)


def test_an_open_lead_is_counted_as_the_unit_saw_it() -> None:
    found = measure_coverage(Case("harness-fault", "FL", 0.8, 120.0, 7))
    struck = {one.name: one for one in found if one.struck}
    assert set(struck) == {"dead-share", "drop-out-rate"}
    assert struck["dead-share"].truth > 0.1
    assert struck["dead-share"].value == pytest.approx(struck["dead-share"].truth, rel=0.4)
    assert all(one.truth == 0.0 for one in found if not one.struck)


def test_a_cause_without_a_single_true_value_is_left_out() -> None:
    assert measure_coverage(Case("encoder-debris", "FL", 0.5, 60.0, 1)) == ()


def test_the_command_prints_the_table_of_the_causes_asked_for(capsys: pytest.CaptureFixture[str]) -> None:
    asked = ["--coverage", "--per-cause", "1", "--seconds", "60", "--workers", "1"]
    assert command.main([*asked, "--cause", "no-fault-found"]) == 0
    out = capsys.readouterr().out
    assert "dead-share" in out
    assert "faulty" not in out
