from __future__ import annotations

import csv
import io
from dataclasses import replace

import numpy as np
import pytest

from triage.errors import OutputError
from ui.presenters import plot_table
from ui.presenters.plot_data import PlotData, build_plot_data
from ui.presenters.plot_table import PlotTable, build_plot_table, format_table
from ui.presenters.traces import build_line
from ui.state.opening import Opened


@pytest.fixture
def data(opened: Opened) -> PlotData:
    return build_plot_data(opened.result)


def read_back(text: str) -> tuple[list[str], np.ndarray]:
    head, *rows = csv.reader(io.StringIO(text))
    return head, np.array([[float(cell or "nan") for cell in row] for row in rows])


def test_what_is_read_back_are_the_samples(data: PlotData, opened: Opened) -> None:
    head, table = read_back(format_table(build_plot_table(data, (18.0, 27.0), "m/s"), delimiter=","))
    assert head[0] == "time (s)"
    assert head[1:5] == [f"{corner} wheel speed (m/s)" for corner in ("FL", "FR", "RL", "RR")]
    assert head[5:] == [f"{corner} divergence (%)" for corner in ("FL", "FR", "RL", "RR")]
    log = opened.result.conditioned
    part = (log.time_s >= 18.0) & (log.time_s <= 27.0)
    assert table[:, 0] == pytest.approx(log.time_s[part], abs=1e-6)
    assert pytest.approx(log.speed_mps[:, part], nan_ok=True, rel=1e-9) == table[:, 1:5].T
    assert pytest.approx(100.0 * log.divergence_ratio[:, part], nan_ok=True, rel=1e-9) == table[:, 5:].T
    assert np.isnan(table[:, 4]).any(), "missing samples stay empty"


def test_speeds_are_in_the_unit_shown(data: PlotData) -> None:
    metric = build_plot_table(data, (18.0, 19.0), "m/s").columns[2]
    miles = build_plot_table(data, (18.0, 19.0), "mph").columns[2]
    assert miles * 0.44704 == pytest.approx(metric)


def test_wheels_on_their_own_clocks_keep_their_instants(data: PlotData) -> None:
    early = build_line("FL", np.array([1.0, 2.0, 2.0]), np.array([10.0, 20.0, 21.0]))
    late = build_line("FR", np.array([1.5, 2.0]), np.array([15.0, 22.0]))
    table = build_plot_table(replace(data, speed=(early, late), divergence=()), (0.0, 9.0), "m/s")
    assert table.columns[0].tolist() == [1.0, 1.5, 2.0, 2.0]
    assert table.columns[1].tolist() == pytest.approx([10.0, np.nan, 20.0, 21.0], nan_ok=True)
    assert table.columns[2].tolist() == pytest.approx([np.nan, 15.0, 22.0, np.nan], nan_ok=True)


def test_numbers_have_points_and_texts_are_no_formulas() -> None:
    table = PlotTable(("=cmd()", "b"), (np.array([1.5]), np.array([np.nan])))
    assert format_table(table, delimiter="\t") == "'=cmd()\tb\n1.5\t\n"


def test_too_many_rows_are_refused_with_what_to_do(data: PlotData, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(plot_table, "MOST_ROWS", 100)
    with pytest.raises(OutputError, match="Zoom in"):
        build_plot_table(data, (0.0, 60.0), "km/h")


def test_nothing_in_view_is_a_table_without_rows(data: PlotData) -> None:
    head, table = read_back(format_table(build_plot_table(data, (900.0, 901.0), "m/s"), delimiter=","))
    assert len(head) == 9
    assert table.size == 0
