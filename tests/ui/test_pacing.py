from __future__ import annotations

import pytest

from triage.progress import Cancelled
from ui.pacing import PacedProgress
from ui.state.window_state import ProgressPoint


class Clock:
    """Time that passes only when told."""

    def __init__(self) -> None:
        self.now_s = 100.0
        self.pauses: list[float] = []

    def read(self) -> float:
        return self.now_s

    def pause(self, length_s: float) -> None:
        self.pauses.append(length_s)
        self.now_s += length_s


def run_for(duration_s: float, step_s: float) -> Clock:
    clock = Clock()
    progress = PacedProgress(clock_s=clock.read, pause=clock.pause)
    begin_s = clock.now_s
    while clock.now_s - begin_s < duration_s:
        progress((clock.now_s - begin_s) / duration_s, "reading")
        clock.now_s += step_s
    return clock


def test_a_pause_of_a_millisecond_every_five() -> None:
    clock = run_for(1.0, 0.0005)
    assert set(clock.pauses) == {0.001}
    assert 140 <= len(clock.pauses) <= 180


def test_rare_reports_cost_one_pause_each() -> None:
    assert len(run_for(1.0, 0.2).pauses) == 5


def test_the_latest_report_is_kept_even_right_after_another() -> None:
    progress = PacedProgress()
    assert progress.latest is None
    progress(0.1, "reading")
    progress(0.2, "measuring")
    assert progress.latest == ProgressPoint(0.2, "measuring")


def test_a_cancelled_work_stops_at_its_next_report() -> None:
    progress = PacedProgress()
    progress(0.1, "reading")
    progress.cancelled.set()
    with pytest.raises(Cancelled):
        progress(0.2, "reading")
    assert progress.latest == ProgressPoint(0.1, "reading")
