from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.speed_log import SpeedTrace
from ui.presenters.marks import LossLane
from ui.presenters.plot_data import PlotData, build_plot_data, next_loss
from ui.state.opening import Opened


@pytest.fixture
def data(opened: Opened) -> PlotData:
    return build_plot_data(opened.result)


def test_the_whole_is_from_the_first_to_the_last_sample(opened: Opened, data: PlotData) -> None:
    instants_s = opened.result.log.instants_s
    assert data.whole_s == (instants_s[0], instants_s[-1])


def test_hardly_any_samples_still_make_a_view(opened: Opened) -> None:
    nothing = SpeedTrace(np.zeros(1), np.full(1, np.nan), np.ones(1, dtype=bool), 0.0, "a", "m/s")
    log = replace(opened.result.log, wheels=dict.fromkeys(CORNERS, nothing))
    assert build_plot_data(replace(opened.result, log=log)).whole_s == (0.0, 1.0)


def test_from_drop_out_to_drop_out(data: PlotData) -> None:
    begins_s = []
    at_s = 0.0
    while (span := next_loss(data, "FL", at_s, step=1)) is not None:
        at_s = span[0]
        begins_s.append(at_s)
    assert begins_s == pytest.approx([20.0, 31.0, 44.0], abs=0.03)
    back = next_loss(data, "FL", at_s, step=-1)
    assert back is not None
    assert back[0] == pytest.approx(31.0, abs=0.03)
    assert next_loss(data, "FR", 0.0, step=1) is None


def test_a_hole_of_the_whole_recording_counts_for_every_wheel(data: PlotData) -> None:
    hole = LossLane("vehicle", np.array([25.0]), np.array([26.0]))
    data = replace(data, lanes=(*data.lanes[:4], hole))
    assert next_loss(data, "FR", 0.0, step=1) == (25.0, 26.0)
    assert next_loss(data, "FL", 22.0, step=1) == (25.0, 26.0)
