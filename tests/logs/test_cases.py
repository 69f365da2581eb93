"""The cases drawn from real reports, which lie outside the project."""

from __future__ import annotations

import json
import math
import tomllib
from pathlib import Path

import pytest

from triage.errors import TriageError
from triage.inspection import build_inspection
from triage.logs import ReadOptions, read_log

CASES = Path(__file__).resolve().parents[3] / "shared" / "cases"
ABSENT = pytest.param("absent", marks=pytest.mark.skip(reason="the folder ../shared/cases is absent"))
FOLDERS = sorted(path.parent.name for path in CASES.glob("*/case.toml")) or [ABSENT]
MEANS = ("mean_mps", "mean_mps_other_channel", "mean_mps_as_written", "mean_mps_first_rows")


def lacking(groups: list[list[str]], text: str) -> list[list[str]]:
    return [group for group in groups if not any(word.lower() in text.lower() for word in group)]


@pytest.mark.parametrize("name", FOLDERS)
def test_case(name: str) -> None:
    case = tomllib.loads((CASES / name / "case.toml").read_text("utf-8"))
    want = case["expected"]
    databases = case.get("dbc", [])
    databases = databases if isinstance(databases, list) else [databases]
    radius_m = case.get("settings", {}).get("tyre_radius_m")
    options = ReadOptions(
        databases=tuple(str(CASES / name / dbc) for dbc in databases),
        circumference_m=None if radius_m is None else 2 * math.pi * radius_m,
    )
    files = [CASES / name / file for file in case["files"]]
    if want["kind"] == "error":
        with pytest.raises(TriageError) as refused:
            read_log(files, options)
        assert not lacking(want["error_must_name"], str(refused.value))
        return
    log = read_log(files, options)
    seen = build_inspection(log)
    check(seen, want)
    said = json.dumps([seen["file"], seen["warnings"]], ensure_ascii=False)
    assert not lacking(want.get("must_mention", []), said)
    assert not lacking(want.get("should_mention", []), said)


def check(seen: dict, want: dict) -> None:
    wheels = seen["wheels"]
    assert want.get("rows_min", 0) <= seen["rows"] <= want.get("rows_max", math.inf)
    if "rows" in want:
        assert seen["rows"] == want["rows"]
    if "duration_s" in want:
        assert seen["duration_s"] == pytest.approx(want["duration_s"], abs=want.get("duration_tol_s", 0.03))
    for corner, count in want.get("rows_per_wheel", {}).items():
        assert wheels[corner]["samples"] == count
    for corner, count in want.get("valid_per_wheel", {}).items():
        assert wheels[corner]["samples"] - wheels[corner]["invalid"] == count
    for corner, count in want.get("missing_per_wheel", {}).items():
        assert wheels[corner]["invalid"] == count
    if "max_kmh_below" in want:
        assert max(wheel["max_mps"] for wheel in wheels.values()) * 3.6 < want["max_kmh_below"]
    if "unit" in want:
        assert {wheel["unit"] for wheel in wheels.values()} == {want["unit"]}
    sets = [want[key] for key in MEANS if key in want]
    tol = want.get("mean_tol_mps", 0.003)
    fits = [all(abs(wheels[c]["mean_mps"] - m) <= tol for c, m in means.items()) for means in sets]
    assert any(fits) or not sets
