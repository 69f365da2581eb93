"""Headings of tables: several rows, remarks, cells too few; and identifiers as programs write them."""

from __future__ import annotations

import numpy as np
import pytest

from triage.errors import DamagedLog, LogReadError, SignalMappingError
from triage.logs import ReadOptions, read_log
from triage.logs.unit_texts import speed_units_in

CORNERS = ("FL", "FR", "RL", "RR")


def rows_of(drive, *, factor: float = 1.0, end: str = "") -> str:
    columns = np.stack([drive.kmh[corner] * factor for corner in CORNERS], axis=1)
    return "".join(
        ",".join([f"{time_s:.3f}", *(f"{speed:.5f}" for speed in speeds)]) + end + "\n"
        for time_s, speeds in zip(drive.time_s, columns, strict=True)
    )


def assert_same(log, drive) -> None:
    for corner in CORNERS:
        np.testing.assert_allclose(log.wheels[corner].speed_mps, drive.mps[corner], atol=1e-5)
        np.testing.assert_allclose(log.wheels[corner].time_s, drive.time_s, atol=1e-3)


@pytest.mark.parametrize(
    "heading",
    [
        "time,speed,speed,speed,speed\ns,front left,front right,rear left,rear right\n",
        "t,FL,FR,RL,RR\n[s],[km/h],[km/h],[km/h],[km/h]\n,filtered,filtered,filtered,filtered\n",
        "Run 5,,,,\ntime,FL,FR,RL,RR\ns,km/h,km/h,km/h,km/h\nfloat,float,float,float,float\n",
        "Run 5,,,,\ns,km/h,km/h,km/h,km/h\ntime,FL,FR,RL,RR\n",
        "time_s,FL_kmh,FR_kmh,RL_kmh,RR_kmh\n",
    ],
)
def test_headings_of_several_rows(heading, drive, write) -> None:
    log = read_log([write(heading + rows_of(drive))])
    assert_same(log, drive)
    if "km" in heading:
        assert not log.notices


@pytest.mark.parametrize("more", [",", ",,", ",,,,,"])
def test_rows_that_end_in_more_delimiters_than_the_heading(more, drive, write) -> None:
    log = read_log([write("time_s,FL_kmh,FR_kmh,RL_kmh,RR_kmh\n" + rows_of(drive, end=more))])
    assert_same(log, drive)


def test_a_heading_shorter_than_filled_rows_names_nothing(drive, write) -> None:
    with pytest.raises(LogReadError, match=r"no heading|no table"):
        read_log([write("FL_kmh,FR_kmh,RL_kmh,RR_kmh\n" + rows_of(drive))])


@pytest.mark.parametrize("remark", ["# wheel speeds in mph", "Unit: MPH", "speeds (mph) of all wheels"])
def test_a_unit_in_the_lines_above(remark, drive, write) -> None:
    text = f"{remark}\nrecorded by nobody\nTime,LF,RF,LR,RR\n" + rows_of(drive, factor=1 / 1.609344)
    log = read_log([write(text)])
    assert_same(log, drive)
    assert "unit-assumed" not in [notice.code for notice in log.notices]


def test_two_units_in_the_lines_above_settle_nothing(drive, write) -> None:
    text = "# speeds in mph\n# limit 50 km/h\nTime,LF,RF,LR,RR\n" + rows_of(drive)
    log = read_log([write(text)])
    assert "unit-assumed" in [notice.code for notice in log.notices]


@pytest.mark.parametrize(
    ("text", "units"),
    [
        ("# all in km/h.", {"km/h"}),
        ("every 10 ms, by rads", set()),
        ("speed=m/s; other: KPH", {"m/s", "km/h"}),
        ("", set()),
    ],
)
def test_units_in_a_sentence(text, units) -> None:
    assert speed_units_in(text) == units


@pytest.mark.parametrize(
    "written", ["0x1A0", "1A0h", "1a0H", "$1A0", "16#1A0", "#1A0", "h1A0", "416", "000001A0"]
)
def test_identifiers_as_programs_write_them(written, drive, dbc, write) -> None:
    rows = [
        f"{time_s:.4f},{written},8,{payload.hex()}"
        for time_s, payload in zip(drive.time_s, drive.payloads(), strict=True)
    ]
    log = read_log([write("\n".join(["Time,ID,DLC,Data", *rows]))], ReadOptions(databases=(dbc,)))
    np.testing.assert_allclose(log.wheels["FL"].speed_mps, drive.mps["FL"], atol=1e-9)


def test_frames_with_a_german_heading_and_marked_bytes(drive, dbc, write) -> None:
    rows = [
        f"{time_s:.4f};1;0x1A0;8;".replace(".", ",") + " ".join(f"0x{byte:02X}" for byte in payload)
        for time_s, payload in zip(drive.time_s, drive.payloads(), strict=True)
    ]
    text = "\n".join(["Zeit;Kanal;CAN-ID;Länge;Daten", *rows])
    log = read_log([write(text)], ReadOptions(databases=(dbc,)))
    np.testing.assert_allclose(log.wheels["FL"].speed_mps, drive.mps["FL"], atol=1e-9)


@pytest.mark.parametrize(
    ("data", "delimiter"),
    [
        (lambda payload: ";".join(f"{byte:02X}h" for byte in payload), ";"),
        (lambda payload: str(list(payload)), ";"),
        (lambda payload: f"({', '.join(map(str, payload))})", ";"),
        (lambda payload: " ".join(f"{byte:02x}" for byte in payload), ","),
    ],
    ids=["marked cells", "list", "tuple", "blanks"],
)
def test_data_as_programs_write_them(data, delimiter, drive, dbc, write) -> None:
    names = [f"B{number}" for number in range(8)] if ";" in data(b"\1\2") else ["data"]
    rows = [
        delimiter.join([f"{time_s:.4f}", "1A0h", "8", data(payload)])
        for time_s, payload in zip(drive.time_s, drive.payloads(), strict=True)
    ]
    text = "\n".join([delimiter.join(["time", "id", "len", *names]), *rows])
    log = read_log([write(text)], ReadOptions(databases=(dbc,)))
    np.testing.assert_allclose(log.wheels["FL"].speed_mps, drive.mps["FL"], atol=1e-9)


def test_data_that_cannot_be_read_are_shown(drive, dbc, write) -> None:
    rows = [
        f"{time_s:.4f};0x1a0;{payload!r}"
        for time_s, payload in zip(drive.time_s, drive.payloads(), strict=True)
    ]
    with pytest.raises(DamagedLog, match=r"the data of no frame can be read, the first of which is \"b'"):
        read_log([write("\n".join(["timestamp;id;data", *rows]))], ReadOptions(databases=(dbc,)))


def test_a_table_of_frames_without_the_wanted_ones_says_so(drive, dbc, write) -> None:
    rows = [f"{time_s:.4f},2B0h,1,2" for time_s in drive.time_s]
    with pytest.raises(SignalMappingError, match="none of the identifiers"):
        read_log([write("\n".join(["time,id,b0,b1", *rows]))], ReadOptions(databases=(dbc,)))


def test_lines_of_a_coloured_screen(drive, dbc, write) -> None:
    lines = [
        f"\x1b[0m ({1.7e9 + time_s:.6f})  \x1b[1;31mcan0\x1b[0m  1A0   [8]  {payload.hex(' ')}\x1b[0m"
        for time_s, payload in zip(drive.time_s, drive.payloads(), strict=True)
    ]
    log = read_log([write("\n".join(lines), "x.log")], ReadOptions(databases=(dbc,)))
    np.testing.assert_allclose(log.wheels["FL"].speed_mps, drive.mps["FL"], atol=1e-9)
    assert not log.notices


@pytest.mark.parametrize(
    "names",
    [
        ("czas [s]", "koło przód lewe", "koło przód prawe", "koło tył lewe", "koło tył prawe"),
        ("tid [s]", "hjul vänster fram", "hjul höger fram", "hjul vänster bak", "hjul höger bak"),
        ("tijd (s)", "wielsnelheid LV", "wielsnelheid RV", "wielsnelheid LA", "wielsnelheid RA"),
        ("t [s]", "n_Rad VA li", "n_Rad VA re", "n_Rad HA li", "n_Rad HA re"),
        ("tid [s]", "forreste venstre", "forreste højre", "bageste venstre", "bageste højre"),
    ],
    ids=["pl", "sv", "nl", "de-axle", "da"],
)
def test_wheels_in_more_tongues(names, drive, write) -> None:
    heading = ",".join([names[0], *(f"{name} [km/h]" for name in names[1:])])
    assert_same(read_log([write(f"{heading}\n{rows_of(drive)}")]), drive)


def test_a_rising_column_with_a_unit_of_time_is_the_time(drive, write) -> None:
    heading = "FL_kmh,FR_kmh,RL_kmh,RR_kmh,xyz [ms],delay [ms]"
    rows = [
        ",".join([*(f"{drive.kmh[corner][i]:.2f}" for corner in CORNERS), f"{1000 * t:.0f}", "3"])
        for i, t in enumerate(drive.time_s)
    ]
    log = read_log([write("\n".join([heading, *rows]))])
    assert_same(log, drive)
    assert "xyz [ms] rises steadily" in log.notices[0].message
    with pytest.raises(LogReadError, match="no column of time"):
        read_log([write("\n".join([heading, *reversed(rows)]))])


def test_minus_signs_and_blanks_of_typesetters(drive, write) -> None:
    rows = [
        ",".join(
            [
                f"{t:.3f}",
                *(f"\u2212{drive.kmh[c][i]:.2f}\u00a0" for c in CORNERS[:2]),
                *(f"\u00a0-{drive.kmh[c][i]:.2f}" for c in CORNERS[2:]),
            ]
        )
        for i, t in enumerate(drive.time_s)
    ]
    log = read_log([write("\n".join(["time_s,FL_kmh,FR_kmh,RL_kmh,RR_kmh", *rows]))])
    assert_same(log, drive)
    assert [notice.code for notice in log.notices] == ["sign-doubtful"]


def test_times_with_too_few_digits_are_told_as_such(drive, write) -> None:
    rows = [f"{1773151516 + t:.4E},1,2,3,4" for t in drive.time_s]
    with pytest.raises(LogReadError, match="rows bear one and the same time"):
        read_log([write("\n".join(["timestamp,FL_kmh,FR_kmh,RL_kmh,RR_kmh", *rows]))])
