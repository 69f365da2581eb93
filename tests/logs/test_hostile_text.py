"""Texts made to keep patterns busy: every one is read or refused at once."""

from __future__ import annotations

import contextlib
import time

import pytest

from triage.errors import LogReadError
from triage.logs import read_log

BODY = "0,1,2\n1,2,3\n" * 20
TEXTS = {
    "blanks before a stamp": "time,FL\n" + " " * 30_000 + "x:,1\n" * 50,
    "blanks in stamps": "time;v\n" + (" " * 4000 + "1-1-1" + " " * 4000 + "x;1\n") * 6,
    "brackets": "time," + "(" * 30_000 + ",FL_kmh\n" + BODY,
    "brackets with blanks": "time,a" + " (" * 15_000 + ",FL_kmh\n" + BODY,
    "a number of 60 000 digits": "1" * 60_000 + ",2\n" + "1,2\n" * 10,
    "nothing but delimiters": "," * 60_000 + "\n" + "1,2\n" * 10,
    "thousands of columns": ",".join(f"c{i}" for i in range(8000)) + "\n" + ",".join("1" * 8000) + "\n",
    "an open quote": 'time,"' + "x" * 50_000 + "\n1,2\n" * 20,
    "blank lines": "\n" * 60_000 + "time,FL\n1,2\n",
    "a frame without end": "(0.1) can0 1A0#" + "1" * 60_000 + "\n",
    "a version without end": ";$FILEVERSION=" + "1.1" * 20_000 + "\n",
    "a name of words": "time," + "wheelspeed" * 6000 + "\n0,1\n1,2\n2,3\n",
    "numbers beyond all": "time,FL_kmh,FR_kmh,RL_kmh,RR_kmh\n" + "9e999,1,1,1,1\n" * 50,
    "units": "time,FL\n" + "[" * 20_000 + "," + "[" * 20_000 + "\n0,1\n1,1\n",
}


@pytest.mark.parametrize("text", TEXTS.values(), ids=TEXTS.keys())
def test_no_text_keeps_the_readers_busy(write, text) -> None:
    file = write(text)
    began = time.process_time()
    with contextlib.suppress(LogReadError):
        read_log([file])
    assert time.process_time() - began < 10.0
