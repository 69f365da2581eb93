from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.run import TriageResult
from triage.signals.analysis import analyse
from triage.signals.manoeuvres import KINDS
from triage.speed_log import SpeedLog
from ui.presenters.drop_outs import (
    COLUMNS,
    DRIVING_ORDER,
    GONE,
    KIND_HELP,
    KIND_TEXTS,
    PAUSE,
    DropOuts,
    build_drop_outs,
    build_summary,
    format_cell,
)
from ui.presenters.instrument_tables import build_loss_table
from ui.presenters.plot_table import format_table
from ui.state.opening import Opened

ANGLE, BEGIN, DRIVING, LENGTH, SPEED = (
    COLUMNS.index(name) for name in ("angle", "begin", "driving", "length", "speed")
)


@pytest.fixture
def losses(opened: Opened) -> DropOuts:
    return build_drop_outs(opened.result, 0)


def gone(losses: DropOuts) -> np.ndarray:
    return np.flatnonzero(losses.kind == GONE)


def test_every_loss_of_the_wheel_is_a_row(losses: DropOuts) -> None:
    """The log was made with losses at 20.0 to 20.4, 31.0 to 31.5 and 44.0 to 44.1 s."""
    rows = gone(losses)
    assert losses.begin_s[rows] == pytest.approx([20.0, 31.0, 44.0])
    assert losses.length_s[rows] == pytest.approx([0.42, 0.52, 0.12], abs=0.021)
    assert [losses.driving[index] for index in losses.manoeuvre[rows]] == ["straight", "straight", "straight"]
    assert losses.speed_mps[rows] == pytest.approx([14.0] * 3, rel=0.03)


def test_each_wheel_has_its_own(opened: Opened) -> None:
    rear_right = build_drop_outs(opened.result, 3)
    rows = gone(rear_right)
    assert rear_right.begin_s[rows] == pytest.approx([25.0])
    assert rear_right.length_s[rows] == pytest.approx([0.5], abs=0.021)
    assert gone(build_drop_outs(opened.result, 1)).size == 0


def with_pause(log: SpeedLog, begin_s: float, end_s: float) -> SpeedLog:
    kept = {corner: ~((t.time_s > begin_s) & (t.time_s < end_s)) for corner, t in log.wheels.items()}
    wheels = {
        corner: replace(
            trace,
            time_s=trace.time_s[kept[corner]],
            speed_mps=trace.speed_mps[kept[corner]],
            invalid=trace.invalid[kept[corner]],
        )
        for corner, trace in log.wheels.items()
    }
    return replace(log, wheels=wheels)


@pytest.fixture
def paused(log_from: Callable[..., SpeedLog], opened: Opened) -> TriageResult:
    log = with_pause(log_from(), 38.0, 39.0)
    return replace(opened.result, log=log, analysis=analyse(log))


def test_pauses_of_the_recorder_are_no_wheels_fault(paused: TriageResult) -> None:
    for row in range(len(CORNERS)):
        losses = build_drop_outs(paused, row)
        at = np.flatnonzero(losses.kind == PAUSE)
        assert losses.begin_s[at] == pytest.approx([38.0])
        assert losses.length_s[at] == pytest.approx([1.0])
        assert np.isnan(losses.angle_deg[at]).all()
    assert "At 1 place (1.00 s) all wheels are missing: not this wheel's fault." in build_summary(losses)
    assert np.all(np.diff(losses.begin_s) >= 0.0)


def test_columns_sort_by_value_and_unknown_ones_come_last(losses: DropOuts) -> None:
    some = replace(losses, angle_deg=np.array([np.nan, 200.0, 100.0]))
    for column, values in ((BEGIN, some.begin_s), (LENGTH, some.length_s), (SPEED, some.speed_mps)):
        assert np.all(np.diff(values[some.order_by(column)]) >= 0.0)
        assert np.all(np.diff(values[some.order_by(column, falling=True)]) <= 0.0)
    assert some.order_by(ANGLE)[-1] == 0
    assert some.order_by(ANGLE, falling=True)[-1] == 0


def test_driving_sorts_as_a_drive_goes_and_the_unknown_comes_last(losses: DropOuts) -> None:
    some = replace(losses, driving=("braking", "standstill", "left"), manoeuvre=np.array([0, -1, 1, 2]))

    def words(*, falling: bool) -> list[str]:
        order = some.order_by(DRIVING, falling=falling)
        return [format_cell(some, int(row), DRIVING, speed_unit="km/h") for row in order]

    assert words(falling=False) == ["stands", "left curve", "brakes", ""]
    assert words(falling=True) == ["brakes", "left curve", "stands", ""]
    assert set(DRIVING_ORDER) == set(KINDS)


def test_speeds_come_in_the_chosen_unit(losses: DropOuts) -> None:
    row = int(gone(losses)[0])
    kmh = float(format_cell(losses, row, SPEED, speed_unit="km/h"))
    mph = float(format_cell(losses, row, SPEED, speed_unit="mph"))
    assert kmh == pytest.approx(3.6 * losses.speed_mps[row], abs=0.06)
    # One mile per hour is 1.609344 km/h exactly.
    assert kmh / mph == pytest.approx(1.609344, rel=0.005)


def test_the_table_as_text_has_a_line_for_each_row_and_a_cell_for_each_column(losses: DropOuts) -> None:
    table = build_loss_table(losses, range(losses.count), COLUMNS, speed_unit="m/s")
    lines = format_table(table, delimiter="\t").splitlines()
    assert len(lines) == 1 + losses.count
    assert {line.count("\t") for line in lines} == {len(COLUMNS)}
    assert lines[0].startswith("wheel\tbegin\t")
    assert any(line.startswith("FL\t20.00\t") for line in lines)


def test_the_seconds_to_show_lie_around_the_loss(losses: DropOuts) -> None:
    row = int(gone(losses)[1])
    begin_s, end_s = losses.span_around(row)
    assert begin_s < 31.0 - 1.0
    assert end_s > 31.5 + 1.0


def test_a_wheel_without_a_loss_says_so(opened: Opened) -> None:
    sound = build_drop_outs(opened.result, 1)
    assert build_summary(sound).startswith("No drop-out of the front right wheel")


def test_every_kind_has_words() -> None:
    assert set(KIND_TEXTS) == set(KIND_HELP)
