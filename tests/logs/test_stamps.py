from __future__ import annotations

from datetime import datetime, timedelta

import numpy as np
import pytest

from triage.errors import LogReadError
from triage.logs import read_log

BEGIN = datetime(2026, 3, 10, 23, 59, 50, 125000)  # noqa: DTZ001 - tables give local time
SECONDS = np.arange(600) * 0.05


def table(cells: list[str], name: str, delimiter: str = ",") -> str:
    rows = [delimiter.join([name, "FL_kmh", "FR_kmh", "RL_kmh", "RR_kmh"])]
    for index, cell in enumerate(cells):
        speed = 10 + 40 * min(index / 300, 1)
        rows.append(delimiter.join([cell, *(f"{speed + k / 10:.1f}" for k in range(4))]))
    return "\n".join(rows)


@pytest.mark.parametrize(
    ("name", "form"),
    [
        ("time_s", "{s:.3f}"),
        ("t", "{s:.3f}"),
        ("Zeit [s]", "{s:.3f}"),
        ("time [ms]", "{ms}"),
        ("time_ms", "{ms}"),
        ("timestamp_us", "{us}"),
        ("time_ns", "{us}000"),
        ("timestamp", "{epoch:.3f}"),
        ("timestamp_ms", "{epoch_ms}"),
        ("timestamp", "{epoch_ms}"),
        ("timestamp", "{epoch_ms}000"),
        ("timestamp", "{epoch_ms}000000"),
        ("time", "{ms}"),
        ("time", "{us}"),
        ("Time", "{iso}"),
        ("Date", "{iso_blank}"),
        ("Datum", "{german}"),
        ("Zeit", "{clock}"),
    ],
)
def test_time_in_many_forms_gives_the_same_seconds(write, name: str, form: str) -> None:
    cells = []
    for s in SECONDS:
        instant = BEGIN + timedelta(seconds=float(s))
        ms = round(s * 1000)
        cells.append(
            form.format(
                s=s,
                ms=ms,
                us=ms * 1000,
                epoch=1773151516 + s,
                epoch_ms=1773151516000 + ms,
                iso=instant.isoformat(timespec="milliseconds"),
                iso_blank=instant.isoformat(" ", timespec="milliseconds"),
                german=f"{instant:%d.%m.%Y %H:%M:%S},{instant.microsecond // 1000:03d}",
                clock=f"{instant:%H:%M:%S}.{instant.microsecond // 1000:03d}",
            )
        )
    log = read_log([write(table(cells, name, ";"))])
    trace = log.wheels["FL"]
    np.testing.assert_allclose(trace.time_s - trace.time_s[0], SECONDS, atol=1e-5)
    if "epoch" in form or "iso" in form or "german" in form:
        assert log.start is not None
        assert log.start.year == 2026


def test_date_and_time_in_two_columns(write) -> None:
    rows = ["Date;Time;FL_kmh;FR_kmh;RL_kmh;RR_kmh"]
    for s in SECONDS:
        instant = BEGIN + timedelta(seconds=float(s))
        stamp = f"{instant:%d.%m.%Y};{instant:%H:%M:%S}.{instant.microsecond // 1000:03d}"
        rows.append(f"{stamp};{10 + s:.2f};{10 + s:.2f};{10 + s:.2f};{10 + s:.2f}")
    log = read_log([write("\n".join(rows))])
    assert log.duration_s == pytest.approx(SECONDS[-1], abs=1e-5)
    assert log.start == BEGIN


def test_time_of_day_runs_on_over_midnight(write) -> None:
    cells = [f"{BEGIN + timedelta(seconds=float(s)):%H:%M:%S.%f}" for s in SECONDS]
    log = read_log([write(table(cells, "time"))])
    assert log.duration_s == pytest.approx(SECONDS[-1], abs=1e-5)
    assert not log.notices or all(n.code != "clock-reset" for n in log.notices)


def test_unnamed_first_column_that_rises_is_taken_with_a_word(write) -> None:
    log = read_log([write(table([f"{s:.3f}" for s in SECONDS], ""))])
    assert log.duration_s == pytest.approx(SECONDS[-1], abs=1e-6)
    assert "mapping-guessed" in {n.code for n in log.notices}


def test_a_row_count_is_no_time(write) -> None:
    with pytest.raises(LogReadError, match="no column of time"):
        read_log([write(table([str(i) for i in range(600)], ""))])


def test_unit_of_bare_counts_is_said_to_be_assumed(write) -> None:
    log = read_log([write(table([str(i * 50) for i in range(600)], "time"))])
    assert any(n.code == "unit-assumed" and "ms" in n.message for n in log.notices)
