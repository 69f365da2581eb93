from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import get_args

import numpy as np
import pytest

from triage.signals.analysis import Analysis
from triage.signals.manoeuvres import Manoeuvre, ManoeuvreKind
from triage.speed_log import SpeedLog, SpeedTrace
from ui.presenters.drop_outs import build_drop_outs, build_summary
from ui.presenters.marks import BAND_LABELS, build_bands, build_loss_lanes
from ui.state.opening import Opened


def test_bands_are_sorted_and_named() -> None:
    late = Manoeuvre("braking", 5, 9, 5.0, 9.0, 8.0, 0.0, 0.0)
    early = Manoeuvre("slow-roll", 0, 5, 0.0, 5.0, 1.0, 0.0, 0.0)
    assert [(band.label, band.start_s) for band in build_bands([late, early])] == [
        ("slow roll", 0.0),
        ("brakes", 5.0),
    ]


def test_lost_signal_is_marked_on_its_wheel_only(opened: Opened) -> None:
    lanes = {lane.place: lane for lane in build_loss_lanes(opened.result.analysis)}
    assert list(lanes) == ["FL", "FR", "RL", "RR", "vehicle"]
    assert lanes["FL"].begin_s == pytest.approx([20.0, 31.0, 44.0], abs=0.03)
    assert lanes["RR"].begin_s == pytest.approx([25.0])
    assert lanes["RR"].end_s == pytest.approx([25.5])
    assert lanes["FR"].begin_s.size == lanes["RL"].begin_s.size == lanes["vehicle"].begin_s.size == 0


def with_dips(analysis: Analysis, *at: int) -> Analysis:
    low = np.zeros_like(analysis.losses.low)
    low[1, list(at)] = True
    return replace(analysis, losses=replace(analysis.losses, low=low))


def test_plots_and_table_tell_of_the_same_losses(opened: Opened) -> None:
    """The table once counted 119 losses where the plots drew 12: the dips were drawn nowhere."""
    result = replace(opened.result, analysis=with_dips(opened.result.analysis, 700, 900, 1100))
    for row, lane in enumerate(build_loss_lanes(result.analysis)[:4]):
        told = build_drop_outs(result, row)
        drawn = [
            *zip(lane.begin_s, lane.end_s, strict=True),
            *zip(lane.dip_begin_s, lane.dip_end_s, strict=True),
        ]
        listed = zip(told.begin_s, told.begin_s + told.length_s, strict=True)
        assert sorted(drawn) == [pytest.approx(span) for span in sorted(listed)]
    dips = build_loss_lanes(result.analysis)[1]
    assert dips.begin_s.size == 0
    assert dips.dip_begin_s == pytest.approx([14.0, 18.0, 22.0])
    assert dips.dip_end_s == pytest.approx([14.02, 18.02, 22.02])
    assert "3 dips in which it read briefly too low" in build_summary(build_drop_outs(result, 1))


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
    lanes = build_loss_lanes(opened_from(replace(log, wheels=wheels)).result.analysis)
    assert lanes[4].begin_s == pytest.approx([9.98])
    assert lanes[4].end_s == pytest.approx([11.02])


def test_very_many_marks_all_stay(opened: Opened) -> None:
    analysis = opened.result.analysis
    every_third = np.arange(analysis.losses.low.shape[1]) % 3 == 0
    moving = np.ones_like(analysis.losses.moving)
    lost = np.broadcast_to(every_third, moving.shape)
    losses = replace(analysis.losses, moving=moving, lost=lost, alone=lost)
    lane = build_loss_lanes(replace(analysis, losses=losses))[2]
    assert lane.begin_s.size == np.count_nonzero(every_third) == 1000


def test_every_manoeuvre_has_its_own_sign() -> None:
    assert set(BAND_LABELS) == set(get_args(ManoeuvreKind))
    assert len({sign for sign, _ in BAND_LABELS.values()}) == len(BAND_LABELS)
