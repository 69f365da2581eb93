"""Excel and Parquet tables, written by openpyxl and pyarrow."""

from __future__ import annotations

import io
import zipfile
from datetime import datetime, timedelta

import numpy as np
import openpyxl
import pandas as pd
import pyarrow as pa
import pytest
from pyarrow import parquet

from triage.errors import DamagedLog, LogReadError, SettingsError
from triage.logs import ReadOptions, read_log, workbooks
from triage.logs import parquet as our_parquet

CORNERS = ("FL", "FR", "RL", "RR")


def frame_of(drive) -> pd.DataFrame:
    return pd.DataFrame({"time_s": drive.time_s, **{f"{c}_kmh": drive.kmh[c] for c in CORNERS}})


def saved(tmp_path, *sheets, name: str = "drive.xlsx") -> str:
    """Write a workbook of (title, rows)."""
    book = openpyxl.Workbook()
    book.remove(book.active)
    for title, rows in sheets:
        sheet = book.create_sheet(title)
        for row in rows:
            sheet.append(row)
    book.save(tmp_path / name)
    return str(tmp_path / name)


def rows_of(frame: pd.DataFrame) -> list[list]:
    return [list(frame.columns), *frame.to_numpy(dtype=object).tolist()]


def assert_same(log, drive) -> None:
    for corner in CORNERS:
        np.testing.assert_allclose(log.wheels[corner].speed_mps, drive.mps[corner], atol=1e-9)


def test_the_sheet_with_the_wheels_is_read(drive, tmp_path) -> None:
    rows = rows_of(frame_of(drive))
    title = [["Road test of the bakery van"], [], ["driver", "nobody"]]
    notes = [["item", "value"], *[[i, 2 * i] for i in range(3000)]]
    log = read_log([saved(tmp_path, ("Notes", notes), ("Fahrt", title + rows))])
    assert_same(log, drive)
    assert log.format == "Excel table, sheet Fahrt"
    assert not log.notices


def test_two_sheets_of_wheels_are_said(drive, tmp_path) -> None:
    rows = rows_of(frame_of(drive))
    log = read_log([saved(tmp_path, ("First", rows[:400]), ("Second", rows))])
    assert_same(log, drive)
    assert any(n.code == "mapping-guessed" and "First" in n.message for n in log.notices)


def test_a_named_sheet_is_read(drive, tmp_path) -> None:
    rows = rows_of(frame_of(drive))
    slower = [rows[0], *[[row[0], *(0.5 * speed for speed in row[1:])] for row in rows[1:]]]
    file = saved(tmp_path, ("First", slower), ("Zweite Fahrt", rows))
    log = read_log([file], ReadOptions(sheet="zweite fahrt "))
    assert_same(log, drive)
    assert not log.notices
    halved = read_log([file], ReadOptions(sheet="First"))
    np.testing.assert_allclose(halved.wheels["FL"].speed_mps, 0.5 * drive.mps["FL"], atol=1e-9)


def test_a_sheet_that_is_not_there_is_refused_with_those_that_are(drive, tmp_path, write, as_table) -> None:
    file = saved(tmp_path, ("First", rows_of(frame_of(drive))), ("Notes", [["nothing"]]))
    with pytest.raises(LogReadError, match=r"no visible sheet Third; it has First, Notes"):
        read_log([file], ReadOptions(sheet="Third"))
    with pytest.raises(LogReadError, match=r"sheet Notes: no sheet holds"):
        read_log([file], ReadOptions(sheet="Notes"))
    with pytest.raises(SettingsError, match="no file is a workbook"):
        read_log([write(as_table(drive))], ReadOptions(sheet="First"))


def test_dates_times_and_durations(drive, tmp_path) -> None:
    zero = datetime(2026, 3, 10, 23, 59, 50)  # noqa: DTZ001 - workbooks know no zone
    frame = frame_of(drive)
    stamps = [zero + timedelta(seconds=float(s)) for s in drive.time_s]
    for column, start in ((stamps, zero), ([s.time() for s in stamps], None), (
        [timedelta(seconds=float(s)) for s in drive.time_s], None)):  # fmt: skip
        rows = [["Zeit", *frame.columns[1:]]]
        rows += [[t, *v] for t, v in zip(column, frame.iloc[:, 1:].to_numpy().tolist(), strict=True)]
        log = read_log([saved(tmp_path, ("S", rows))])
        assert log.start == start
        assert log.duration_s == pytest.approx(drive.time_s[-1], abs=2e-3)


def test_words_and_errors_in_cells_are_invalid_samples(drive, tmp_path) -> None:
    rows = rows_of(frame_of(drive))
    rows[700][1], rows[701][1], rows[702][1] = "#DIV/0!", "SNA", "=1/0"
    trace = read_log([saved(tmp_path, ("S", rows))]).wheels["FL"]
    assert int(trace.invalid.sum()) == 3


def test_formulas_that_were_never_calculated_are_refused(drive, tmp_path) -> None:
    rows = rows_of(frame_of(drive))
    rows[1:] = [[row[0], *(f"={value}*1" for value in row[1:])] for row in rows[1:]]
    with pytest.raises(LogReadError, match=r"sheet S: its cells are formulas") as refused:
        read_log([saved(tmp_path, ("S", rows))])
    assert "save it" in refused.value.hint


def test_a_workbook_without_a_table_is_refused(tmp_path) -> None:
    with pytest.raises(LogReadError, match="no sheet holds a table"):
        read_log([saved(tmp_path, ("S", [["hello"], ["world"]]))])


def test_frames_in_a_workbook(drive, tmp_path, dbc) -> None:
    rows = [["Time", "ID", "DLC", "Data"]]
    rows += [[t, "1A0", 8, d.hex(" ")] for t, d in zip(drive.time_s.tolist(), drive.payloads(), strict=True)]
    assert_same(read_log([saved(tmp_path, ("S", rows))], ReadOptions(databases=(dbc,))), drive)


def with_part(file: str, part: str, content: bytes) -> bytes:
    """Give the workbook with one part replaced."""
    out = io.BytesIO()
    with zipfile.ZipFile(file) as old, zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as new:
        for info in old.infolist():
            new.writestr(info.filename, content if info.filename == part else old.read(info))
    return out.getvalue()


def test_entities_in_a_workbook_are_refused(drive, tmp_path, write) -> None:
    file = saved(tmp_path, ("S", rows_of(frame_of(drive))[:50]))
    laughs = (
        b'<?xml version="1.0"?><!DOCTYPE x [<!ENTITY a "ha"><!ENTITY b "&a;&a;">]><workbook>&b;</workbook>'
    )
    with pytest.raises(DamagedLog, match="no plain XML"):
        read_log([write(with_part(file, "xl/workbook.xml", laughs), "bomb.xlsx")])


def test_a_workbook_that_expands_without_end_is_refused(drive, tmp_path, write) -> None:
    file = saved(tmp_path, ("S", rows_of(frame_of(drive))[:50]))
    blank = b"<worksheet>" + b" " * 20_000_000
    with pytest.raises(DamagedLog, match="unpacks to more"):
        read_log([write(with_part(file, "xl/worksheets/sheet1.xml", blank), "bomb.xlsx")])


def test_rows_far_below_and_cells_far_right_cost_nothing(tmp_path, write, monkeypatch) -> None:
    file = saved(tmp_path, ("S", [["time_s", "FL_kmh"], [0.0, 1.0]]))
    part = (
        b'<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>'
        b'<row r="1"><c r="A1"><v>1</v></c></row><row r="999999999"><c r="XFD999999999"><v>1</v></c></row>'
        b"</sheetData></worksheet>"
    )
    monkeypatch.setattr(workbooks, "MAX_CELLS", 100_000)
    with pytest.raises(LogReadError):
        read_log([write(with_part(file, "xl/worksheets/sheet1.xml", part), "far.xlsx")])


def test_old_workbooks_are_named(write) -> None:
    with pytest.raises(DamagedLog, match="Office") as refused:
        read_log([write(b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + b"\0" * 600, "old.xls")])
    assert ".xlsx" in refused.value.hint


@pytest.mark.parametrize("change", ["plain", "stamps", "zone", "float32", "durations", "dotted", "missing"])
def test_parquet_columns(drive, tmp_path, change) -> None:
    frame = frame_of(drive)
    stamps = pd.Timestamp("2026-03-10 12:00:00") + pd.to_timedelta(frame["time_s"], unit="s")
    changed = {
        "plain": frame,
        "stamps": frame.assign(time_s=stamps).rename(columns={"time_s": "timestamp"}),
        "zone": frame.assign(time_s=stamps.dt.tz_localize("Europe/Berlin")).rename(columns={"time_s": "t"}),
        "float32": frame.astype({f"{c}_kmh": "float32" for c in CORNERS}),
        "durations": frame.assign(time_s=pd.to_timedelta(frame["time_s"], unit="s")),
        "dotted": frame.rename(columns={f"{c}_kmh": f"ESC.wheel_{c}_kmh" for c in CORNERS}),
        "missing": frame.assign(FL_kmh=frame["FL_kmh"].where(frame.index != 700)),
    }[change]
    changed.to_parquet(tmp_path / "x.bin")
    log = read_log([tmp_path / "x.bin"])
    assert log.format == "Parquet table"
    good = ~log.wheels["FL"].invalid
    assert good.sum() == drive.time_s.size - (change == "missing")
    np.testing.assert_allclose(log.wheels["FL"].speed_mps[good], drive.mps["FL"][good], atol=1e-5)
    if change == "zone":
        assert log.start is not None
        assert log.start.hour == 11


@pytest.mark.parametrize("as_list", [False, True])
def test_frames_in_parquet(drive, tmp_path, dbc, as_list) -> None:
    data = [list(d) if as_list else d for d in drive.payloads()]
    table = pa.table(
        {"timestamp": drive.time_s + 1.77e9, "arbitration_id": [0x1A0] * len(data), "data": data,
         "nested": [{"a": 1}] * len(data)}
    )  # fmt: skip
    parquet.write_table(table, tmp_path / "x.parquet")
    assert_same(read_log([tmp_path / "x.parquet"], ReadOptions(databases=(dbc,))), drive)


def test_parquet_that_states_too_much_is_refused(tmp_path, monkeypatch) -> None:
    parquet.write_table(pa.table({"t": pa.array([0.0] * 1000)}), tmp_path / "x.parquet")
    monkeypatch.setattr(our_parquet, "MAX_CELLS", 999)
    with pytest.raises(DamagedLog, match="1000 rows of 1 columns"):
        read_log([tmp_path / "x.parquet"])


def test_a_long_sheet_is_not_taken_for_a_hostile_one(drive, tmp_path, monkeypatch) -> None:
    """Rows were once filled up to a thousand columns, and twenty thousand of them were refused."""
    monkeypatch.setattr(workbooks, "MAX_CELLS", 7 * drive.time_s.size)
    assert_same(read_log([saved(tmp_path, ("S", rows_of(frame_of(drive))))]), drive)
