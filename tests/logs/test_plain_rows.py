"""The quick parser of plain rows gives what pandas gives, to the last bit, or steps aside."""

from __future__ import annotations

from io import BytesIO

import numpy as np
import pandas as pd
import pytest
from hypothesis import given
from hypothesis import strategies as st

from triage.logs import read_log
from triage.logs.plain_rows import LEAST_BYTES, parse_plain_rows

HEADING = b"time,speed\n"


def parsed(text: bytes, *, delimiter: str = ",", decimal: str = ".", columns: int = 2) -> pd.DataFrame | None:
    rows = BytesIO(HEADING + text)
    rows.seek(len(HEADING))
    frame = parse_plain_rows(rows, columns=columns, delimiter=delimiter, decimal=decimal, least_bytes=0)
    assert rows.tell() == len(HEADING)
    return frame


def by_pandas(text: bytes, *, delimiter: str = ",", decimal: str = ".") -> pd.DataFrame:
    return pd.read_csv(
        BytesIO(text),
        sep=delimiter,
        decimal=decimal,
        header=None,
        names=range(2),
        keep_default_na=False,
        na_values=[""],
        index_col=False,
        low_memory=False,
    )


def assert_same(found: pd.DataFrame | None, text: bytes, **signs: str) -> None:
    expected = by_pandas(text, **signs)
    assert found is not None
    assert list(found.columns) == [0, 1]
    for index in (0, 1):
        value = found[index].to_numpy()
        assert value.dtype == np.float64
        assert value.tobytes() == expected[index].to_numpy(dtype=np.float64).tobytes()


@pytest.mark.parametrize(
    "text",
    [
        b"0.01,12.5\n0.02,13\n",
        b"1,2\n3,4",
        b"0.01,-0.01\n0.02,-1.5\n",
        b"1,\n,2\n",
        b"1,\n2,\n",
        b"1,2\r\n\r\n3,4\r\n",
        b"1,2\r3,4\r",
        b"\n\n1,2\n\n3,4\n\n",
        b" 1, 2.5\n3 ,4\t\n",
        b"1e3,.5\n-.5,5.\n",
        b"0.1234567890123456789,123456789012345.678\n1e-7,2\n",
        b"9007199254740993,9223372036854774784\n1,2\n",
        b"\xef\xbb\xbf1,2\n",
    ],
)
def test_plain_rows_are_those_of_pandas(text) -> None:
    assert_same(parsed(text), text)


@pytest.mark.parametrize(
    ("text", "delimiter", "decimal"),
    [(b"0,01;12,5\n0,02;13\n", ";", ","), (b"1.5\t2\n3\t4\n", "\t", "."), (b"1|2.5\n3|4\n", "|", ".")],
)
def test_other_delimiters_and_decimal_commas(text, delimiter, decimal) -> None:
    assert_same(
        parsed(text, delimiter=delimiter, decimal=decimal), text, delimiter=delimiter, decimal=decimal
    )


@given(
    st.lists(
        st.tuples(st.integers(-(10**15) + 1, 10**15 - 1), st.integers(0, 15), st.integers(0, 10**4)),
        min_size=1,
        max_size=40,
    )
)
def test_decimals_are_rounded_alike(numbers) -> None:
    # up to fifteen digits every version of pandas rounds correctly
    text = "\n".join(f"{row}.5,{number or 1:.1f}e-{shift}" for number, shift, row in numbers).encode()
    assert_same(parsed(text), text)


@pytest.mark.parametrize(
    "text",
    [
        b'1,"2"\n3,4\n',
        b'"1,5",2\n3,4\n',
        b"1,2\n3\n",
        b"1,2\n3,4,5\n",
        b"1,2\n3,4,\n",
        b"1,2\n3,ok\n",
        b"1,NaN\n3,4\n",
        b"1,inf\n3,4\n",
        b"1,2\n3,-Infinity\n",
        b"1,2\n3,1e400\n",
        b"1, \n3,4\n",
        b"1,2\n3,18446744073709551616\n",
        b"1,2\n3,-9223372036854775808\n",
        b"1,-0\n3,4\n",
        b"1,2\n  \n3,4\n",
        b"1,2\n3,4\x00\n",
        b"1,0x1A\n3,4\n",
        b"1,1 000\n3,4\n",
        b"1,True\n3,False\n",
        b"2026-03-10 12:00:00,4\n2026-03-10 12:00:01,4\n",
        b"1,2\n\r\r,4\n",
        b"",
    ],
)
def test_it_steps_aside_for_what_is_not_plain(text) -> None:
    assert parsed(text) is None


def test_it_steps_aside_for_short_texts_and_blanks_between_cells() -> None:
    assert parse_plain_rows(BytesIO(b"1,2\n"), columns=2, delimiter=",", decimal=".") is None
    assert parsed(b"1 2\n3 4\n", delimiter=" ") is None


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_a_long_table_is_parsed_by_it_and_by_nothing_else(write, monkeypatch, end) -> None:
    time_s = np.arange(60_000) * 0.01
    speeds = np.round(np.random.default_rng(4).uniform(20.0, 90.0, (time_s.size, 4)), 2)
    rows = ["time_s,FL_kmh,FR_kmh,RL_kmh,RR_kmh"]
    rows += [
        f"{time:.2f},{fl},{fr},{rl},{rr}"
        for time, (fl, fr, rl, rr) in zip(time_s, speeds.tolist(), strict=True)
    ]
    path = write(end.join(rows))

    def refuse(*_arguments, **_options):
        raise AssertionError

    monkeypatch.setattr(pd, "read_csv", refuse)
    log = read_log([path])
    for index, corner in enumerate(("FL", "FR", "RL", "RR")):
        np.testing.assert_array_equal(
            log.wheels[corner].time_s, np.array([float(f"{t:.2f}") for t in time_s])
        )
        np.testing.assert_allclose(log.wheels[corner].speed_mps, speeds[:, index] / 3.6, rtol=1e-15)


def test_a_word_late_in_a_long_table_is_read_as_ever(write) -> None:
    rows = [f"{0.01 * row:.2f},50.00,50.10,49.90,50.00" for row in range(60_000)]
    rows[59_000] = "590.00,SNA,50.10,49.90,50.00"
    text = "time_s,FL_kmh,FR_kmh,RL_kmh,RR_kmh\n" + "\n".join(rows)
    assert len(text) > LEAST_BYTES
    log = read_log([write(text)])
    assert np.flatnonzero(log.wheels["FL"].invalid).tolist() == [59_000]
    assert log.wheels["FR"].valid_count == 60_000
