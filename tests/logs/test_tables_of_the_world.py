"""Tables as recorders and spreadsheets of many countries write them, held against the drive behind them."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime, timedelta

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.errors import LogReadError
from triage.logs import ReadOptions, read_log
from triage.speed_log import SpeedLog

BEGIN = datetime(2026, 3, 10, 23, 59, 50)  # noqa: DTZ001 - tables give local time
HEADING = ["FL_kmh", "FR_kmh", "RL_kmh", "RR_kmh"]
ROUND_M = 1.96


@pytest.fixture
def cells(drive) -> list[list[str]]:
    return [[f"{drive.kmh[corner][row]:.2f}" for corner in CORNERS] for row in range(drive.time_s.size)]


@pytest.fixture
def read(write: Callable[..., str]) -> Callable[..., SpeedLog]:
    def reading(
        head: list[str], rows: list[list[str]], delimiter: str = ",", encoding: str = "utf-8"
    ) -> SpeedLog:
        text = "\n".join(delimiter.join(row) for row in [head, *rows])
        return read_log([write(text, encoding=encoding)], ReadOptions(circumference_m=ROUND_M))

    return reading


def assert_is(log: SpeedLog, drive, *, tolerance_s: float = 0.002) -> None:
    for corner in CORNERS:
        trace = log.wheels[corner]
        assert trace.valid_count == drive.time_s.size
        np.testing.assert_allclose(trace.speed_mps, drive.mps[corner], atol=2e-3)
        np.testing.assert_allclose(trace.time_s - trace.time_s[0], drive.time_s, atol=tolerance_s)


def stamps(drive, form: str) -> list[str]:
    times = (BEGIN + timedelta(seconds=float(time_s)) for time_s in drive.time_s)
    return [f"{time:{form}}".replace("<ms>", f"{time.microsecond // 1000:03d}") for time in times]


@pytest.mark.parametrize(
    ("form", "tidy"),
    [
        ("%m/%d/%Y %I:%M:%S.<ms> %p", str),
        ("%I:%M:%S.<ms> %p", str),
        ("%I:%M:%S.<ms>%p", str.lower),
        ("%Y-%m-%d %H:%M:%S.<ms> UTC", str),
        ("%Y-%m-%d %H:%M:%S.<ms> CET", str),
        ("%Y-%m-%dT%H:%M:%S.<ms>+02:00", str),
        ("%Y%m%dT%H%M%S.<ms>", str),
        ("%H:%M:%S:<ms>", str),
        ("%d-%b-%Y %H:%M:%S.<ms>", str),
        ("%Y.%m.%d %H:%M:%S.<ms>", str),
    ],
)
def test_stamps_across_midnight(form, tidy, drive, cells, read) -> None:
    rows = [[tidy(stamp), *row] for stamp, row in zip(stamps(drive, form), cells, strict=True)]
    assert_is(read(["Time", *HEADING], rows), drive)


def test_minutes_and_seconds(drive, cells, read) -> None:
    times = [f"{int(t // 60):02d}:{t % 60:06.3f}" for t in drive.time_s + 50]
    assert_is(read(["Time", *HEADING], [[t, *row] for t, row in zip(times, cells, strict=True)]), drive)


def test_days_of_a_spreadsheet(drive, cells, read) -> None:
    rows = [[f"{46091.5 + t / 86400:.10f}", *row] for t, row in zip(drive.time_s, cells, strict=True)]
    log = read(["Time", *HEADING], rows)
    assert_is(log, drive)
    assert log.start == datetime(2026, 3, 10, 12, 0)  # noqa: DTZ001


def test_milliseconds_in_a_column_of_their_own(drive, cells, read) -> None:
    pairs = zip(stamps(drive, "%d.%m.%Y;%H:%M:%S;<ms>"), cells, strict=True)
    assert_is(
        read(["Date", "Time", "ms", *HEADING], [[*stamp.split(";"), *row] for stamp, row in pairs]), drive
    )


def test_rows_of_whole_seconds_are_spread_and_said(drive, cells, read) -> None:
    rows = [[t, *row] for t, row in zip(stamps(drive, "%Y-%m-%d %H:%M:%S"), cells, strict=True)]
    log = read(["Time", *HEADING], rows)
    assert_is(log, drive)
    assert [notice.code for notice in log.notices] == ["duplicate-instants"]


def test_copies_of_rows_are_not_spread(drive, cells, read) -> None:
    rows = [[f"{n}", *row] for n, row in enumerate(cells[:200]) for _ in range(4)]
    assert read(["time_s", *HEADING], rows).wheels["FL"].valid_count == 200


@pytest.mark.parametrize(("name", "step"), [("dt_ms", "20"), ("Delta t [s]", "0.020")])
def test_distances_of_rows_are_added_up_and_said(name, step, drive, cells, read) -> None:
    log = read([name, *HEADING], [[step, *row] for row in cells])
    assert_is(log, drive)
    assert "mapping-guessed" in {notice.code for notice in log.notices}


def test_marks_at_the_thousands(drive, cells, read) -> None:
    points = [[f'"{t * 1000 + 1e4:,.1f}"', *row] for t, row in zip(drive.time_s, cells, strict=True)]
    assert_is(read(["time_ms", *HEADING], points), drive)
    swap = str.maketrans(".,", ",.")
    commas = [[cell.strip('"').translate(swap) for cell in row] for row in points]
    assert_is(read(["Zeit [ms]", *HEADING], commas, ";"), drive)


def test_a_point_that_may_be_a_decimal_point_is_one(drive, cells, read) -> None:
    """Times with points beside speeds with commas: 1.234 is no thousand."""
    rows = [
        [f"{t:.3f}", *(cell.replace(".", ",") for cell in row)]
        for t, row in zip(drive.time_s, cells, strict=True)
    ]
    assert_is(read(["time_s", *HEADING], rows, ";"), drive)


@pytest.mark.parametrize(
    "names",
    [
        "Vitesse roue AVG,Vitesse roue AVD,Vitesse roue ARG,Vitesse roue ARD",
        "Roue avant gauche,Roue avant droite,Roue arrière gauche,Roue arrière droite",
        "Rueda DI,Rueda DD,Rueda TI,Rueda TD",
        "Velocità ruota ant sx,Velocità ruota ant dx,Velocità ruota post sx,Velocità ruota post dx",
        "Rad VL,Rad VR,Rad HL,Rad HR",
        "Roda dianteira esquerda,Roda dianteira direita,Roda traseira esquerda,Roda traseira direita",
        "Wielsnelheid LV,Wielsnelheid RV,Wielsnelheid LA,Wielsnelheid RA",
        "Left Front Wheel Sensor,Right Front Wheel Sensor,Left Rear Wheel Sensor,Right Rear Wheel Sensor",
    ],
)
@pytest.mark.parametrize("encoding", ["utf-8", "latin-1", "utf-16"])
def test_names_of_other_tongues(names, encoding, drive, cells, read) -> None:
    head = ["time_s", *(f"{name} (km/h)" for name in names.split(","))]
    rows = [[f"{t:.3f}", *row] for t, row in zip(drive.time_s, cells, strict=True)]
    assert_is(read(head, rows, encoding=encoding), drive)


def test_codes_of_other_tongues_need_a_wheel_beside_them(drive, cells, read) -> None:
    rows = [[f"{t:.3f}", *row] for t, row in zip(drive.time_s, cells, strict=True)]
    with pytest.raises(LogReadError, match="front left"):
        read(["time_s", "DI", "DD", "TI", "TD"], rows)


@pytest.mark.parametrize(
    ("unit", "per_kmh"),
    [
        ("0.01 km/h", 100), ("1/256 km/h", 256), ("cm/s", 100 / 3.6), ("ft/s", 1 / 0.3048 / 3.6),
        ("knots", 1 / 1.852), ("rps", 1 / 3.6 / ROUND_M), ("U/min", 60 / 3.6 / ROUND_M),
        ("rad/s", 2 * np.pi / 3.6 / ROUND_M),
    ],
)  # fmt: skip
def test_multiples_of_units(unit, per_kmh, drive, read) -> None:
    speeds = zip(*(drive.kmh[corner] * per_kmh for corner in CORNERS), strict=True)
    rows = [[f"{t:.3f}", *(f"{v:.4f}" for v in row)] for t, row in zip(drive.time_s, speeds, strict=True)]
    assert_is(read(["time_s", *(f"Wheel {corner} [{unit}]" for corner in CORNERS)], rows), drive)


def test_hexadecimal_numbers(drive, read) -> None:
    raw = zip(*(drive.raw[corner] for corner in CORNERS), strict=True)
    rows = [[f"{t:.3f}", *(f"0x{int(v):04X}" for v in row)] for t, row in zip(drive.time_s, raw, strict=True)]
    assert_is(read(["time_s", *(f"Wheel_{corner} [0.01 km/h]" for corner in CORNERS)], rows), drive)


@pytest.mark.parametrize("unit", [["km/h"], []])
@pytest.mark.parametrize("delimiter", [",", ";"])
def test_one_row_for_every_sample(unit, delimiter, drive, cells, read) -> None:
    def comma(text: str) -> str:
        return text if delimiter == "," else text.replace(".", ",")

    rows = [
        [comma(f"{t + late:.3f}"), f"WheelSpeed_{corner}{'' if unit else '_kmh'}", comma(value), *unit]
        for t, row in zip(drive.time_s, cells, strict=True)
        for corner, value, late in zip(CORNERS, row, (0, 0.001, 0.002, 0.003), strict=True)
    ]
    assert_is(read(["time", "signal", "value", *(["unit"] if unit else [])], rows, delimiter), drive)


def test_rows_that_end_in_a_delimiter(drive, cells, read) -> None:
    rows = [[f"{t:.3f}", *row, ""] for t, row in zip(drive.time_s, cells, strict=True)]
    assert_is(read(["time_s", *HEADING], rows), drive)


@pytest.mark.parametrize("mark", [["655.35"], ["655.35", "655.34"], ["255"], ["81.91"], ["-1"], ["-9999"]])
def test_rare_codes_are_invalid_and_no_speeds(mark, drive, cells, read) -> None:
    struck = range(105, 1400, 200)
    for number, row in enumerate(struck):
        cells[row][3] = mark[number % len(mark)]
    rows = [[f"{t:.3f}", *row] for t, row in zip(drive.time_s, cells, strict=True)]
    trace = read(["time_s", *HEADING], rows).wheels["RR"]
    assert np.flatnonzero(trace.invalid).tolist() == list(struck)


@pytest.mark.parametrize("spikes", [["140.00", "122.17", "131.05"], ["0.00"], ["61.00"], ["70.20", "88.10"]])
def test_spikes_and_losses_are_no_codes(spikes, drive, cells, read) -> None:
    for number, row in enumerate(range(105, 1400, 200)):
        cells[row][3] = spikes[number % len(spikes)]
    rows = [[f"{t:.3f}", *row] for t, row in zip(drive.time_s, cells, strict=True)]
    assert not read(["time_s", *HEADING], rows).wheels["RR"].invalid.any()


@pytest.mark.parametrize(("unit", "per_kmh"), [("km/h", 1), ("m/s", 1 / 3.6), ("mph", 1 / 1.609344)])
def test_a_second_speed_settles_the_unit(unit, per_kmh, drive, read) -> None:
    mean = np.mean([drive.kmh[corner] for corner in CORNERS], axis=0)
    speeds = zip(*(drive.kmh[corner] * per_kmh for corner in CORNERS), mean, strict=True)
    rows = [[f"{t:.3f}", *(f"{v:.4f}" for v in row)] for t, row in zip(drive.time_s, speeds, strict=True)]
    log = read(["time_s", "v_fl", "v_fr", "v_rl", "v_rr", "GPS speed [km/h]"], rows)
    assert log.wheels["FL"].unit == unit
    assert_is(log, drive)
    assert any(n.code == "unit-assumed" and "GPS" in n.message for n in log.notices)


def test_every_signal_on_a_clock_of_its_own(drive, read) -> None:
    late = dict(zip(CORNERS, (0.0, 0.013, 0.5, 0.9), strict=True))
    head = [text for corner in CORNERS for text in ("Time", f"WheelSpeed_{corner} [km/h]")]
    rows = [
        [text for c in CORNERS for text in (f"{t + late[c]:.3f}", f"{drive.kmh[c][i]:.2f}")]
        for i, t in enumerate(drive.time_s)
    ]
    log = read(head, rows)
    for corner in CORNERS:
        np.testing.assert_allclose(log.wheels[corner].time_s, drive.time_s + late[corner], atol=1e-9)
        np.testing.assert_allclose(log.wheels[corner].speed_mps, drive.mps[corner], atol=2e-3)


def test_the_finer_of_two_clocks_counts_and_the_other_tells_the_start(drive, cells, read) -> None:
    days = stamps(drive, "%Y-%m-%d %H:%M:%S")
    rows = [[a, f"{t:.3f}", *row] for a, t, row in zip(days, drive.time_s, cells, strict=True)]
    log = read(["Date Time", "Elapsed (s)", *HEADING], rows)
    assert_is(log, drive)
    assert log.start == BEGIN
    assert log.notices == ()


@pytest.mark.parametrize(("name", "per_s"), [("nsec", 1e9), ("usecs", 1e6), ("stamp.nanosec", 1e9)])
def test_seconds_with_their_fraction_beside_them(name, per_s, drive, cells, read) -> None:
    rows = [
        [f"{1773151516 + int(t)}", f"{round(t % 1 * per_s)}", *row]
        for t, row in zip(drive.time_s, cells, strict=True)
    ]
    assert_is(read(["stamp.sec", name, *HEADING], rows), drive)


@pytest.mark.parametrize(
    "above",
    [
        [["s", *["km/h"] * 4], ["float"] * 5],
        [["Sek.", *["km/h"] * 4]],
        [["(s)", *["(km/h)"] * 4], ["-----"] * 5],
    ],
)
def test_rows_between_names_and_numbers(above, drive, cells, read) -> None:
    rows = [[f"{t:.3f}", *row] for t, row in zip(drive.time_s, cells, strict=True)]
    log = read(["Zeit", "v_VL", "v_VR", "v_HL", "v_HR"], [*above, *rows])
    assert_is(log, drive)
    assert log.notices == ()


def test_names_that_stand_in_two_rows(drive, cells, read) -> None:
    above = [["", *["Wheel speed"] * 4], ["s", *["km/h"] * 4]]
    rows = [[f"{t:.3f}", *row] for t, row in zip(drive.time_s, cells, strict=True)]
    assert_is(read(["Time", *CORNERS], [*above, *rows]), drive)


@pytest.mark.parametrize("decimal", [".", ","])
def test_units_behind_the_numbers(decimal, drive, cells, read) -> None:
    rows = [
        [f"{t:.3f} s".replace(".", decimal), *(f"{cell} km/h".replace(".", decimal) for cell in row)]
        for t, row in zip(drive.time_s, cells, strict=True)
    ]
    log = read(["time", "FL", "FR", "RL", "RR"], rows, ";")
    assert_is(log, drive)
    assert log.wheels["FL"].unit == "km/h"


@pytest.mark.parametrize("mark", [".", "'", "\u00a0", "\u202f"])
def test_whole_numbers_with_marks_at_the_thousands(mark, drive, read) -> None:
    speeds = zip(*(drive.mps[corner] * 1000 for corner in CORNERS), strict=True)
    rows = [
        [f"{number:,.0f}".replace(",", mark) for number in (t * 1000, *row)]
        for t, row in zip(drive.time_s, speeds, strict=True)
    ]
    assert_is(
        read(["Zeit_ms", *(f"Rad {corner} [mm/s]" for corner in ("VL", "VR", "HL", "HR"))], rows, ";"), drive
    )


@pytest.mark.parametrize(("bits", "tick_s"), [(32, 1e-6), (16, 1e-3), (32, 1e-5)])
def test_a_counter_that_runs_over_keeps_the_distance_of_its_rows(bits, tick_s, drive, cells, read) -> None:
    count = (np.round(drive.time_s / tick_s) + 2**bits - 10 / tick_s) % 2**bits
    rows = [[f"{n * tick_s:.6f}", *row] for n, row in zip(count, cells, strict=True)]
    log = read(["time_s", *HEADING], rows)
    assert_is(log, drive)
    assert [(n.code, n.count) for n in log.notices] == [("clock-reset", 1)]
    assert "ran over" in log.notices[0].message
