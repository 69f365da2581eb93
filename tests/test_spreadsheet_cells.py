"""No text of a stranger becomes a formula in somebody's spreadsheet."""

from __future__ import annotations

import csv
import io

import openpyxl
import pytest

from triage.spreadsheet_cells import plain_cell

HOSTILE = ["=1+1", "+1+1", "-2+3", "@SUM(A1)", "\t=1", "\r=1", "  =HYPERLINK(A1)", "-", "=", "+٣"]


@pytest.mark.parametrize("text", HOSTILE)
def test_formulas_become_text(text: str) -> None:
    cell = plain_cell(text)
    assert cell == "'" + text
    sheet = openpyxl.Workbook().active
    sheet["A1"] = cell.replace("\r", "")
    assert sheet["A1"].data_type == "s"
    out = io.StringIO(newline="")
    csv.writer(out).writerow([cell])
    assert next(csv.reader(io.StringIO(out.getvalue(), newline=""))) == [cell]


@pytest.mark.parametrize("text", ["", "WhlSpd_FL", "-0.5", "+1e3", "-12", "a=b", "'quoted", "3,5"])
def test_other_texts_stay_what_they_are(text: str) -> None:
    assert plain_cell(text) == text
