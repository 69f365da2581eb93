from __future__ import annotations

import gzip
import lzma

import numpy as np
import pytest

from triage.errors import DamagedLog, LogReadError
from triage.logs import ReadOptions, read_log
from triage.logs.archives import open_sources
from triage.logs.table_layout import sniff_table


def codes(log) -> set[str]:
    return {notice.code for notice in log.notices}


def assert_same(log, drive, tol_mps: float = 1e-9) -> None:
    for corner, speed in drive.mps.items():
        trace = log.wheels[corner]
        np.testing.assert_allclose(trace.speed_mps, speed, atol=tol_mps)
        np.testing.assert_allclose(trace.time_s, drive.time_s, atol=1e-6)


@pytest.mark.parametrize(
    "signs",
    [(",", "."), (";", ","), (";", "."), ("\t", "."), ("\t", ","), ("|", "."), (" ", ".")],
)
@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "cp1252"])
def test_every_delimiter_decimal_and_encoding(drive, write, as_table, signs, encoding) -> None:
    delimiter, decimal = signs
    text = as_table(drive, delimiter=delimiter, decimal=decimal)
    log = read_log([write(text, "drive.csv", encoding)])
    assert_same(log, drive)
    assert ("decimal-comma" in codes(log)) == (decimal == ",")


def test_quoted_decimal_commas_in_a_comma_table(drive, write, as_table) -> None:
    lines = as_table(drive, delimiter=";", decimal=",").splitlines()
    quoted = "\n".join(",".join(f'"{cell}"' for cell in line.split(";")) for line in lines)
    assert_same(read_log([write(quoted)]), drive)


def test_units_row(drive, write, as_table) -> None:
    names, units = ("time", "FL", "FR", "RL", "RR"), ("s", "m/s", "m/s", "m/s", "m/s")
    log = read_log([write(as_table(drive, names=names, units=units, scale=1 / 3.6, digits=6))])
    assert_same(log, drive, 1e-6)
    assert {trace.unit for trace in log.wheels.values()} == {"m/s"}


def test_preamble_comments_and_crlf(drive, write, as_table) -> None:
    preamble = "# recorder of our own\n# Fahrer: Müller; trocken\ndate;10.03.2026\n\n"
    text = (preamble + as_table(drive, delimiter=";", decimal=",")).replace("\n", "\r\n")
    assert_same(read_log([write(text, "x.txt", "cp1252")]), drive)


@pytest.mark.parametrize("pack", [gzip.compress, lzma.compress])
def test_packed(drive, write, as_table, pack) -> None:
    assert_same(read_log([write(pack(as_table(drive).encode()), "drive.csv.gz")]), drive)


def test_cut_gzip_keeps_what_was_unpacked(drive, write, as_table) -> None:
    packed = gzip.compress(as_table(drive).encode())
    log = read_log([write(packed[: len(packed) * 2 // 3], "drive.csv.gz")])
    assert "log-incomplete" in codes(log)
    assert 500 < log.wheels["FL"].valid_count < drive.time_s.size


@pytest.mark.parametrize(
    ("unit", "scale"), [("km/h", 1.0), ("m/s", 1 / 3.6), ("mph", 0.621371192), ("mm/s", 1000 / 3.6)]
)
def test_units_in_brackets(drive, write, as_table, unit, scale) -> None:
    names = ("t [s]", *(f"{corner} [{unit}]" for corner in ("FL", "FR", "RL", "RR")))
    log = read_log([write(as_table(drive, names=names, scale=scale, digits=6))])
    assert_same(log, drive, 1e-6)


@pytest.mark.parametrize(("unit", "per_rev"), [("rad/s", 2 * np.pi), ("rpm", 60.0), ("hz", 48.0)])
def test_rotation_needs_the_tyre_and_uses_it(drive, write, as_table, unit, per_rev) -> None:
    names = ("t [s]", *(f"wheel {corner} [{unit}]" for corner in ("FL", "FR", "RL", "RR")))
    file = write(as_table(drive, names=names, scale=per_rev / 3.6 / 2.0, digits=6))
    with pytest.raises(LogReadError, match=r"radius|revolution") as refused:
        read_log([file])
    assert unit in str(refused.value) or "pulses" in str(refused.value)
    log = read_log([file], ReadOptions(circumference_m=2.0, pulses_per_rev=48.0))
    assert_same(log, drive, 1e-6)


def test_unit_option_goes_before_the_heading(drive, write, as_table) -> None:
    log = read_log([write(as_table(drive))], ReadOptions(unit="m/s"))
    np.testing.assert_allclose(log.wheels["RR"].speed_mps, drive.kmh["RR"], atol=1e-9)


def test_words_are_invalid_samples_not_zeros(drive, write, as_table) -> None:
    lines = as_table(drive).splitlines()
    words = ["SNA", "invalid", "---", "#N/A", "1.#QNAN", "n/a", "NaN", "Inf", "#WERT!", "-inf"]
    for row, word in enumerate(words, start=200):
        cells = lines[row].split(",")
        lines[row] = ",".join([cells[0], cells[1], word, *cells[3:]])
    log = read_log([write("\n".join(lines))])
    trace = log.wheels["FR"]
    assert int(trace.invalid.sum()) == len(words)
    assert np.isnan(trace.speed_mps[199:209]).all()
    assert log.wheels["FL"].valid_count == drive.time_s.size
    assert any(
        n.code == "invalid-samples" and n.message.startswith("FR") and n.count == 10 for n in log.notices
    )


def test_sparse_columns_keep_their_own_clock(drive, write) -> None:
    rows = ["t[s],FL[km/h],FR[km/h],RL[km/h],RR[km/h]"]
    kmh = drive.kmh
    for i, t in enumerate(drive.time_s):
        rows.append(f"{t:.3f},{kmh['FL'][i]:.2f},{kmh['FR'][i]:.2f},,")
        if i % 3 == 0:
            rows.append(f"{t + 0.007:.3f},,,{kmh['RL'][i]:.2f},{kmh['RR'][i]:.2f}")
    log = read_log([write("\n".join(rows))])
    assert log.wheels["FL"].valid_count == drive.time_s.size
    assert log.wheels["RR"].valid_count == (drive.time_s.size + 2) // 3
    assert not any(trace.invalid.any() for trace in log.wheels.values())


def test_one_dead_wheel_is_loaded_and_named(drive, write, as_table) -> None:
    lines = [
        ",".join([*line.split(",")[:4], "NaN"]) if i else line
        for i, line in enumerate(as_table(drive).splitlines())
    ]
    log = read_log([write("\n".join(lines))])
    assert log.wheels["RR"].valid_count == 0
    assert log.wheels["FL"].valid_count == drive.time_s.size
    assert any(
        n.code == "invalid-samples" and "RR" in n.message and "at all" in n.message for n in log.notices
    )


def test_columns_in_any_order_with_others_between(drive, write, as_table) -> None:
    lines = as_table(drive, names=("time_s", "HL", "gear", "VR", "HR", "VL")[:5]).splitlines()
    header = "gear,VR [km/h],HL [km/h],time_s,note,VL [km/h],HR [km/h]"
    body = []
    for line in lines[1:]:
        t, fl, fr, rl, rr = line.split(",")
        body.append(f"D,{fr},{rl},{t},ok,{fl},{rr}")
    assert_same(read_log([write("\n".join([header, *body]))]), drive)


@pytest.mark.parametrize(
    ("content", "kind"),
    [
        (b"", DamagedLog),
        (b"time_s,FL_kmh,FR_kmh,RL_kmh,RR_kmh\n", LogReadError),
        (b"time_s,FL_kmh,FR_kmh,RL_kmh,RR_kmh\n0,1,2,3,4\n", DamagedLog),
        (b"1,2,3,4,5\n2,3,4,5,6\n3,4,5,6,7\n", LogReadError),
        (b"FL_kmh,FR_kmh,RL_kmh,RR_kmh\n" + b"1.5,2.5,3.5,4.5\n" * 30, LogReadError),
        (
            b"time_s,FL_kmh,FR_kmh,RL_kmh,RR_kmh\n"
            + b"".join(b"%d,NaN,NaN,NaN,NaN\n" % i for i in range(30)),
            LogReadError,
        ),
        (b"time_s,rpm,gear\n" + b"".join(b"%d,900,1\n" % i for i in range(30)), LogReadError),
        (b"just some text\nof no use\n", LogReadError),
        (bytes(range(256)) * 20, LogReadError),
        (b"\x00" * 5000, LogReadError),
        (b"\xff\xfe" + b"\x00\xd8" * 300, LogReadError),
        (b'"' * 4000, LogReadError),
        (b"time_s,FL_kmh,FR_kmh,RL_kmh,RR_kmh\n" + b"9e999,1,2,3,4\n" * 30, LogReadError),
    ],
)
def test_unusable_tables_are_refused_with_file_and_advice(write, content, kind) -> None:
    file = write(content, "bad.csv")
    with pytest.raises(kind) as refused:
        read_log([file])
    assert refused.value.file == file
    assert refused.value.hint
    assert len(str(refused.value).splitlines()) <= 4


def test_layout_of_a_plain_table(write, drive, as_table) -> None:
    layout = sniff_table(open_sources(write(as_table(drive, delimiter=";", decimal=",")))[0])
    assert layout is not None
    assert (layout.delimiter, layout.decimal, layout.first_data_line) == (";", ",", 1)


def test_a_row_without_a_readable_time_is_left_out_and_no_repeated_instant(write) -> None:
    rows = [f"{0.02 * row:.2f},50.0,50.1,49.9,50.0" for row in range(400)]
    rows[200] = ",50.0,50.1,49.9,50.0"
    log = read_log([write("\n".join(["time_s,FL_kmh,FR_kmh,RL_kmh,RR_kmh", *rows]))])
    assert log.wheels["FL"].time_s.size == 399
    assert "duplicate-instants" not in codes(log)
