from __future__ import annotations

import numpy as np
import pytest

from triage.errors import SignalMappingError
from triage.logs import ReadOptions, read_log


def cells_of(time_s: float, data: bytes) -> dict[str, str]:
    """Every way to write a cell of one frame."""
    return {
        "time": f"{time_s:.6f}",
        "epoch": f"{1580765471 + time_s:.6f}",
        "us": str(round((time_s + 1953.0) * 1e6)),
        "ms": str(round(time_s * 1e3)),
        "clock": f"12:00:{time_s:09.6f}",
        "can0": "can0",
        "bus": "0",
        "hexid": "1A0",
        "longid": "000001A0",
        "0xid": "0x1A0",
        "decid": "416",
        "ext": "false",
        "len": "8",
        "hex": data.hex(),
        "HEX": data.hex(" ").upper(),
        "0xhex": "0x" + data.hex(),
        "bits": "".join(f"{byte:08b}" for byte in data),
        "bytes": ",".join(f"{byte:02X}" for byte in data),
        "decbytes": ",".join(str(byte) for byte in data),
    }


EIGHT = ",".join(f"D{i}" for i in range(1, 9))


@pytest.mark.parametrize(
    ("header", "cells"),
    [
        ("Time,Bus,MessageID,Message,MessageLength", "epoch bus decid hex len"),
        (f"Time Stamp,ID,Extended,Bus,LEN,{EIGHT}", "us longid ext bus len bytes"),
        ("", "epoch can0 hexid len bits"),
        ("", "time can0 hexid len hex"),
        ("timestamp;channel;arbitration_id;dlc;data", "time bus 0xid len HEX"),
        ("time_ms,can_id,data", "ms decid 0xhex"),
        (f"time,id,{EIGHT.replace('D', 'byte')}", "time decid decbytes"),
        ("Zeit,Kanal,ID,DLC,Data", "clock bus hexid len hex"),
    ],
)
def test_many_ways_to_write_frames(drive, dbc, write, header, cells) -> None:
    delimiter = ";" if ";" in header else ","
    rows = [header] if header else []
    names = cells.split()
    for time_s, data in zip(drive.time_s, drive.payloads(), strict=True):
        written = cells_of(time_s, data)
        rows.append(delimiter.join(written[name] for name in names))
    log = read_log([write("\n".join(rows), "frames.csv")], ReadOptions(databases=(dbc,)))
    for corner, speed in drive.mps.items():
        np.testing.assert_allclose(log.wheels[corner].speed_mps, speed, atol=1e-9)
    steps = log.wheels["FL"].time_s - log.wheels["FL"].time_s[0]
    np.testing.assert_allclose(steps, drive.time_s, atol=1e-3)


def test_frames_without_a_database_name_the_identifiers(drive, write) -> None:
    rows = [
        "time,id,data",
        *(f"{t:.3f},1A0,{d.hex()}" for t, d in zip(drive.time_s, drive.payloads(), strict=True)),
    ]
    with pytest.raises(SignalMappingError, match="1A0") as refused:
        read_log([write("\n".join(rows))])
    assert "--dbc" in refused.value.hint


def test_lost_leading_zeros_of_a_hex_cell_are_put_back(drive, dbc, write) -> None:
    rows = ["time,id,length,data"]
    rows += [
        f"{t:.3f},1A0,8,{d[::-1].hex().lstrip('0') or '0'}"
        for t, d in zip(drive.time_s, drive.payloads(), strict=True)
    ]
    log = read_log([write("\n".join(rows))], ReadOptions(databases=(dbc,)))
    assert log.wheels["FL"].time_s.size == drive.time_s.size
