from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import get_args

import numpy as np
import pytest

from triage.evidence.hypotheses import Finding
from triage.signals.manoeuvres import Manoeuvre, ManoeuvreKind
from triage.speed_log import SpeedLog, SpeedTrace
from ui.presenters.marks import BAND_LABELS, build_bands, build_loss_lanes, find_stretches
from ui.state.opening import Opened


def test_stretches_at_begin_middle_and_end() -> None:
    time_s = np.arange(8.0)
    marked = np.array([1, 1, 0, 0, 1, 0, 1, 1], dtype=bool)
    assert find_stretches(time_s, marked).tolist() == [[0.0, 1.0], [4.0, 4.0], [6.0, 7.0]]
    assert find_stretches(time_s, np.zeros(8, dtype=bool)).size == 0
    assert find_stretches(np.empty(0), np.empty(0, dtype=bool)).size == 0


def test_bands_are_sorted_and_named() -> None:
    late = Manoeuvre("braking", 5, 9, 5.0, 9.0, 8.0, 0.0, 0.0)
    early = Manoeuvre("slow-roll", 0, 5, 0.0, 5.0, 1.0, 0.0, 0.0)
    assert [(band.label, band.start_s) for band in build_bands([late, early])] == [
        ("slow roll", 0.0),
        ("brakes", 5.0),
    ]


def test_lost_signal_is_marked_on_its_wheel_only(opened: Opened) -> None:
    lanes = {lane.place: lane for lane in build_loss_lanes(opened.result)}
    assert list(lanes) == ["FL", "FR", "RL", "RR", "vehicle"]
    assert lanes["FL"].begin_s == pytest.approx([20.0, 31.0, 44.0], abs=0.03)
    assert lanes["RR"].begin_s == pytest.approx([25.0])
    assert lanes["RR"].end_s == pytest.approx([25.48])
    assert lanes["FR"].begin_s.size == lanes["RL"].begin_s.size == lanes["vehicle"].begin_s.size == 0


def test_overlapping_marks_become_one(opened: Opened) -> None:
    finding = Finding(
        "dead-share@FR", "dead-share", "FR", "", 1.0, 0.1, "%", {}, ((5.0, 9.0), (6.0, 7.0), (8.0, 12.0))
    )
    lanes = build_loss_lanes(replace(opened.result, findings=(finding,)))
    assert (lanes[1].begin_s.tolist(), lanes[1].end_s.tolist()) == ([5.0], [12.0])


def test_spans_of_other_findings_are_no_losses(opened: Opened) -> None:
    finding = Finding("noise-ratio@FR", "noise-ratio", "FR", "", 1.0, 0.1, "", {}, ((5.0, 9.0),))
    assert build_loss_lanes(replace(opened.result, findings=(finding,)))[1].begin_s.size == 0


def test_a_hole_of_all_wheels_is_the_recordings_own(
    opened_from: Callable[[SpeedLog], Opened], log_from: Callable[..., SpeedLog]
) -> None:
    log = log_from()
    kept = (log.wheels["FL"].time_s < 10.0) | (log.wheels["FL"].time_s > 11.0)
    wheels = {
        corner: SpeedTrace(
            t.time_s[kept], t.speed_mps[kept], t.invalid[kept], t.resolution_mps, t.source, t.unit
        )
        for corner, t in log.wheels.items()
    }
    lanes = build_loss_lanes(opened_from(replace(log, wheels=wheels)).result)
    assert lanes[4].begin_s == pytest.approx([9.98])
    assert lanes[4].end_s == pytest.approx([11.02])


def test_very_many_marks_all_stay(opened: Opened, log_from: Callable[..., SpeedLog]) -> None:
    log = log_from(100.0, 600.0)
    trace = log.wheels["RL"]
    invalid = np.arange(trace.time_s.size) % 3 == 0
    speed = np.where(invalid, np.nan, trace.speed_mps)
    wheels = {**log.wheels, "RL": replace(trace, invalid=invalid, speed_mps=speed)}
    lane = build_loss_lanes(replace(opened.result, log=replace(log, wheels=wheels)))[2]
    assert lane.begin_s.size == 20_000
    assert lane.end_s[-1] == pytest.approx(600.0, abs=0.05)


def test_a_finding_of_no_loss_rests_on_the_whole_drive_and_marks_nothing(opened: Opened) -> None:
    finding = Finding("dead-share@FR", "dead-share", "FR", "", 0.0, 0.1, "%", {}, ((0.0, 60.0),))
    assert build_loss_lanes(replace(opened.result, findings=(finding,)))[1].begin_s.size == 0


def test_every_manoeuvre_has_its_own_sign() -> None:
    assert set(BAND_LABELS) == set(get_args(ManoeuvreKind))
    assert len({sign for sign, _ in BAND_LABELS.values()}) == len(BAND_LABELS)
