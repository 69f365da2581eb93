"""Tables of edge times: layouts, languages, units, one file per wheel, and the speeds formed from them."""

from __future__ import annotations

import itertools
from collections.abc import Callable

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.errors import LogReadError, SignalMappingError
from triage.logs import ReadOptions, read_log
from triage.logs.archives import open_sources
from triage.logs.edge_times import probe_edge_times
from triage.logs.registry import recognise
from triage.speed_log import SpeedLog

CIRCUMFERENCE_M = 1.95
POLES = 44


@pytest.fixture(scope="module")
def edges(drive) -> dict[str, np.ndarray]:
    """Edges of rings with 44 poles and pitch errors of about one per cent."""
    found = {}
    for number, (corner, speed) in enumerate(drive.mps.items()):
        shift = np.random.default_rng(number).normal(0.0, 0.01, POLES)
        way = np.concatenate(([0.0], np.cumsum(np.diff(drive.time_s) * (speed[1:] + speed[:-1]) / 2.0)))
        turn = way / CIRCUMFERENCE_M + 1e-9 * np.arange(way.size)
        border = np.arange(1, int(turn[-1] * POLES))
        found[corner] = np.interp((border + shift[border % POLES]) / POLES, turn, drive.time_s)
    return found


def table(
    edges: dict[str, np.ndarray],
    names: tuple[str, ...] = ("FL_edge_s", "FR_edge_s", "RL_edge_s", "RR_edge_s"),
    *,
    form: Callable[[float], str] = lambda edge: f"{edge:.7f}",
    delimiter: str = ",",
) -> str:
    columns = [[form(edge) for edge in one] for one in edges.values()]
    rows = (delimiter.join(row) for row in itertools.zip_longest(*columns, fillvalue=""))
    return "\n".join((delimiter.join(names), *rows)) + "\n"


def codes(log: SpeedLog) -> list[str]:
    return [notice.code for notice in log.notices]


def assert_speeds(log: SpeedLog, drive, scale: float = 1.0, allowed_mps: float = 0.35) -> None:
    for corner in CORNERS:
        trace = log.wheels[corner]
        true = np.interp(trace.time_s, drive.time_s, drive.mps[corner])
        fast = true > 3.0
        away = trace.speed_mps[fast] / scale - true[fast]
        assert np.abs(np.median(away)) < 0.02
        assert np.quantile(np.abs(away), 0.99) < allowed_mps


def test_speeds_come_back_with_circumference_and_blind_poles(edges, drive, write) -> None:
    log = read_log([write(table(edges))], ReadOptions(circumference_m=CIRCUMFERENCE_M))
    assert log.format == "edge times"
    assert_speeds(log, drive)
    assert codes(log) == []
    for corner in CORNERS:
        np.testing.assert_allclose(log.edges[corner], edges[corner], atol=1e-7)
        assert log.wheels[corner].source == f"{corner}_edge_s"
    assert any("44 edges a turn" in step.detail for step in log.history)


def test_without_a_circumference_the_metre_is_nominal_and_that_is_said(edges, drive, write) -> None:
    log = read_log([write(table(edges))])
    assert_speeds(log, drive, scale=2.0 / CIRCUMFERENCE_M)
    assert codes(log) == ["unit-assumed"]


def test_a_vehicle_file_with_another_number_of_pulses_is_doubted(edges, drive, write) -> None:
    options = ReadOptions(circumference_m=CIRCUMFERENCE_M, pulses_per_rev=48.0)
    log = read_log([write(table(edges))], options)
    assert "unit-doubtful" in codes(log)
    assert_speeds(log, drive)
    doubled = ReadOptions(circumference_m=CIRCUMFERENCE_M, pulses_per_rev=22.0)
    assert "unit-doubtful" not in codes(read_log([write(table(edges))], doubled))


@pytest.mark.parametrize(
    ("names", "factor", "assumed"),
    [
        (("edge_fl_us", "edge_fr_us", "edge_rl_us", "edge_rr_us"), 1e6, False),
        (("Flanke_VL [ms]", "Flanke_VR [ms]", "Flanke_HL [ms]", "Flanke_HR [ms]"), 1e3, False),
        (("flankenzeit vl", "flankenzeit vr", "flankenzeit hl", "flankenzeit hr"), 1e6, True),
        (
            ("PulseTimeFrontLeft", "PulseTimeFrontRight", "PulseTimeRearLeft", "PulseTimeRearRight"),
            1e9,
            True,
        ),
        (
            ("flanc avant gauche", "flanc avant droite", "flanc arriere gauche", "flanc arriere droite"),
            1.0,
            True,
        ),
        (("t_FL_ns", "t_FR_ns", "t_RL_ns", "t_RR_ns"), 1e9, False),
        (("lf tooth time", "rf tooth time", "lr tooth time", "rr tooth time"), 1e3, True),
    ],
)
def test_names_and_units_of_several_countries(  # noqa: PLR0917
    names, factor, assumed, edges, drive, write
) -> None:
    text = table(edges, names, form=lambda edge: f"{edge * factor:.9g}", delimiter=";")
    file = write(text.replace(".", ",") if factor == 1e3 else text)
    log = read_log([file], ReadOptions(circumference_m=CIRCUMFERENCE_M))
    assert log.format == "edge times"
    assert_speeds(log, drive)
    assert ("unit-assumed" in codes(log)) == assumed
    np.testing.assert_allclose(log.edges["RL"], edges["RL"], atol=2e-6)


def test_one_file_per_wheel_in_any_order_with_the_wheel_in_its_name(edges, drive, tmp_path) -> None:
    files = []
    for corner in ("RR", "FL", "RL", "FR"):
        path = tmp_path / f"edges_{corner}.csv"
        path.write_text("edge_time_us\n" + "\n".join(f"{edge * 1e6:.0f}" for edge in edges[corner]))
        files.append(str(path))
    log = read_log(files, ReadOptions(circumference_m=CIRCUMFERENCE_M))
    assert_speeds(log, drive)
    assert log.format == "edge times, 4 parts"
    assert "clock-reset" not in codes(log)
    with pytest.raises(SignalMappingError, match="front left") as refusal:
        read_log([files[0], *files[2:]])
    assert refusal.value.exit_code == 3
    assert "all four wheels" in refusal.value.hint


def test_columns_are_named_with_map(edges, drive, write) -> None:
    names = ("edge a", "edge b", "edge c", "edge d")
    file = write(table(edges, names), "test.csv")
    with pytest.raises(SignalMappingError) as refusal:
        read_log([file])
    assert refusal.value.candidates
    mapping = dict(zip(CORNERS, refusal.value.candidates, strict=True))
    log = read_log([file], ReadOptions(mapping=mapping, circumference_m=CIRCUMFERENCE_M))
    assert_speeds(log, drive)


def test_a_clock_that_starts_late_is_shifted_with_its_edges(edges, drive, write) -> None:
    late = {corner: one + 50_000.0 for corner, one in edges.items()}
    log = read_log([write(table(late))], ReadOptions(circumference_m=CIRCUMFERENCE_M))
    first = min(float(one[0]) for one in edges.values())
    np.testing.assert_allclose(log.edges["FR"], edges["FR"] - first, atol=1e-6)
    assert log.wheels["FL"].time_s[0] < 0.1


def test_a_lost_edge_halves_the_speed_and_a_dead_wheel_reads_zero(edges, drive, write) -> None:
    hurt = dict(edges) | {"RL": np.delete(edges["RL"], slice(3000, 3040)), "RR": np.zeros(0)}
    log = read_log([write(table(hurt))], ReadOptions(circumference_m=CIRCUMFERENCE_M))
    assert log.wheels["RR"].speed_mps.max() == 0.0
    trace = log.wheels["RL"]
    gap = (trace.time_s > edges["RL"][3001]) & (trace.time_s < edges["RL"][3038])
    true = np.interp(trace.time_s[gap], drive.time_s, drive.mps["RL"])
    assert (trace.speed_mps[gap] < 0.1 * true).all()


def test_a_table_of_counters_is_no_table_of_edge_times(drive, write) -> None:
    rows = ["time_s,FL_edge_count,FR_edge_count,FL_kmh,FR_kmh,RL_kmh,RR_kmh"]
    rows += [f"{t:.3f},{n},{n},10,10,10,10" for n, t in enumerate(drive.time_s)]
    for text in ("\n".join(rows), "\n".join(rows).replace("_count", "")):
        source = open_sources(write(text))[0]
        assert probe_edge_times(source) == 0.0
        assert recognise(source).id == "table"


def test_times_that_span_years_are_refused(edges, write) -> None:
    wild = {corner: one * 1e9 for corner, one in edges.items()}
    with pytest.raises(LogReadError) as refusal:
        read_log([write(table(wild, form=lambda edge: f"{edge:.0f}"))])
    assert refusal.value.exit_code == 3
    assert refusal.value.hint
