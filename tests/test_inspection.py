from __future__ import annotations

import json
from datetime import UTC, datetime

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.inspection import build_inspection, format_inspection
from triage.speed_log import Channel, Notice, SpeedLog, SpeedTrace


def make_log(*, dead: bool = False) -> SpeedLog:
    time_s = np.arange(0, 10, 0.02)
    wheels = {}
    for index, corner in enumerate(CORNERS):
        speed = np.full(time_s.size, 10.0 + index)
        invalid = np.zeros(time_s.size, dtype=bool)
        if corner == "RR":
            invalid[:] = dead
            invalid[:5] = True
        wheels[corner] = SpeedTrace(
            time_s, np.where(invalid, np.nan, speed), invalid, 0.01 / 3.6, f"v_{corner}", "km/h"
        )
    channels = {"brake": Channel(time_s, np.zeros(time_s.size), "brake_pressed")}
    notices = (Notice("invalid-samples", "RR: 5 samples are missing.", 5),)
    return SpeedLog("Prüffahrt.csv", "table", datetime(2026, 3, 10, tzinfo=UTC), wheels, channels, notices)


def test_document_has_the_promised_fields_and_is_json() -> None:
    seen = json.loads(json.dumps(build_inspection(make_log()), allow_nan=False))
    assert seen["schema"] == "wheel-triage/inspect/1"
    assert seen["start"] == "2026-03-10T00:00:00+00:00"
    assert seen["duration_s"] == pytest.approx(9.98)
    assert seen["rows"] == 500
    assert seen["rate_hz"] == pytest.approx(50.0)
    assert list(seen["wheels"]) == list(CORNERS)
    assert (seen["wheels"]["RR"]["samples"], seen["wheels"]["RR"]["invalid"]) == (500, 5)
    assert seen["wheels"]["RR"]["mean_mps"] == 13.0
    assert seen["channels"] == {"brake": {"source": "brake_pressed", "samples": 500}}
    assert seen["warnings"] == [
        {"code": "invalid-samples", "message": "RR: 5 samples are missing.", "count": 5}
    ]


def test_a_wheel_without_valid_samples_has_null_speeds() -> None:
    wheel = json.loads(json.dumps(build_inspection(make_log(dead=True)), allow_nan=False))["wheels"]["RR"]
    assert (wheel["mean_mps"], wheel["min_mps"], wheel["max_mps"]) == (None, None, None)
    assert (wheel["samples"], wheel["invalid"]) == (500, 500)


@pytest.mark.parametrize("dead", [False, True])
def test_text_names_every_wheel_its_source_and_the_notices(dead: bool) -> None:
    text = format_inspection(make_log(dead=dead))
    for corner in CORNERS:
        assert f"v_{corner}" in text
    for word in ("Prüffahrt.csv", "front left", "km/h", "brake_pressed", "invalid-samples", "RR: 5 samples"):
        assert word in text
    assert "nan" not in text
    rows = [line for line in text.splitlines() if line[:2] in CORNERS]
    assert len({len(row) for row in rows}) == 1
