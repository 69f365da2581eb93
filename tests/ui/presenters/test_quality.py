from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from triage.speed_log import SpeedLog, SpeedTrace
from ui.presenters.quality import build_quality_rows, build_repair_entries, measure_quality


def make_trace(time_s: np.ndarray, invalid: int = 0) -> SpeedTrace:
    flag = np.arange(time_s.size) < invalid
    return SpeedTrace(time_s, np.where(flag, np.nan, 10.0), flag, 0.01, "v", "km/h")


def test_rate_gaps_and_shares_of_a_clock_made_by_hand() -> None:
    time_s = np.concatenate(
        (np.arange(0.0, 10.0, 0.02), np.arange(10.48, 20.0, 0.02), np.arange(21.98, 30.0, 0.02))
    )
    found = measure_quality(make_trace(time_s, invalid=time_s.size // 4))
    assert found.rate_hz == pytest.approx(50.0)
    assert found.jitter_s == pytest.approx(0.0, abs=1e-9)
    assert found.gap_count == 2
    assert found.longest_gap_s == pytest.approx(2.0)
    assert found.gaps_s == pytest.approx(2.5)
    assert found.invalid_ratio == pytest.approx(0.25, abs=0.001)


def test_jitter_is_the_spread_of_the_steps() -> None:
    step_s = 0.02 + 0.001 * np.random.default_rng(3).standard_normal(20_000)
    found = measure_quality(make_trace(np.cumsum(step_s)))
    assert found.jitter_s == pytest.approx(0.001, rel=0.04)


@pytest.mark.parametrize("samples", [0, 1])
def test_hardly_any_samples_are_no_rate(samples: int) -> None:
    found = measure_quality(make_trace(np.arange(float(samples))))
    assert (found.rate_hz, found.gap_count, found.longest_gap_s) == (0.0, 0, 0.0)


def test_four_cells_and_a_meaning_in_every_row(log_from: Callable[..., SpeedLog]) -> None:
    rows = build_quality_rows(log_from())
    assert all(len(row.cells) == 4 and row.meaning.endswith(".") for row in rows)
    table = {row.title: row.cells for row in rows}
    assert table["Rate, Hz"] == ("50.0",) * 4
    # RR was made with half a second of invalid samples in sixty.
    assert table["Invalid, %"] == ("0.00", "0.00", "0.00", "0.83")
    assert table["Step, km/h"][0] == "0.010"


def test_repairs_and_notices_are_told(log_from: Callable[..., SpeedLog]) -> None:
    log = log_from().did("sorted by time", "12 rows")
    entries = build_repair_entries(log)
    assert entries[0].title == "Gaps in log (3 ×)"
    assert entries[-1].facts == (("sorted by time", "12 rows"),)
    calm = build_repair_entries(replace(log, notices=(), history=()))
    assert [entry.text for entry in calm] == ["Nothing unusual.", "Nothing had to be changed."]
