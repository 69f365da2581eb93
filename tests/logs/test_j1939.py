"""Wheel speeds of heavy vehicles without a database; codes and scales of SAE J1939-71."""

from __future__ import annotations

import can
import numpy as np
import pytest

from triage.errors import SignalMappingError
from triage.logs import ReadOptions, read_log
from triage.logs.frames import EXTENDED_FLAG
from triage.logs.j1939 import group_of, wheel_speed_keys, wheel_speed_signals

CORNERS = ("FL", "FR", "RL", "RR")


def word(kmh: float) -> bytes:
    return round(kmh * 256).to_bytes(2, "little")


def high_resolution(drive, index: int) -> bytes:
    return b"".join(word(drive.kmh[corner][index]) for corner in CORNERS)


def brake_controller(drive, index: int) -> bytes:
    axle = round(128 * (drive.kmh["FL"][index] + drive.kmh["FR"][index]))
    relative = [round((drive.kmh[c][index] - axle / 256 + 7.8125) * 16) for c in CORNERS]
    return axle.to_bytes(2, "little") + bytes(relative) + b"\xff\xff"


def write_log(path, drive, make, identifiers=(0x18FEBF0B,), sound=None) -> str:
    with can.Logger(str(path)) as writer:
        for index, time_s in enumerate(drive.time_s):
            for identifier in identifiers:
                data = make(drive, index) if sound is None or index in sound else b"\xff" * 8
                writer.on_message_received(
                    can.Message(1.77e9 + time_s, identifier, is_extended_id=True, data=data, channel=0)
                )
    return str(path)


@pytest.mark.parametrize("suffix", ["log", "asc", "blf"])
@pytest.mark.parametrize(
    "group",
    [(high_resolution, 0x08FE6E0B, 1 / 256), (brake_controller, 0x18FEBF0B, 1 / 16)],
)
def test_wheel_speeds_are_found_without_a_database(drive, tmp_path, suffix, group) -> None:
    make, identifier, step_kmh = group
    log = read_log([write_log(tmp_path / f"truck.{suffix}", drive, make, (identifier,))])
    for corner in CORNERS:
        found = log.wheels[corner].speed_mps * 3.6
        assert np.abs(found - drive.kmh[corner]).max() <= step_kmh / 2 + 1e-6
        assert log.wheels[corner].source.startswith("J1939_")


def test_priority_and_sender_do_not_matter_but_the_group_does() -> None:
    seen = {key | EXTENDED_FLAG: 1 for key in (0x0CFEBF27, 0x18FEBF0B, 0x18FEF100)} | {0x6BF: 1}
    assert wheel_speed_keys(seen) == {0x0CFEBF27 | EXTENDED_FLAG, 0x18FEBF0B | EXTENDED_FLAG}
    assert group_of(0x18EA0BFE | EXTENDED_FLAG) == 0xEA00
    assert group_of(0x18FEBF0B) == 0


def decoded(frames: list[bytes], identifier: int = 0x18FEBF0B):
    payload = np.frombuffer(b"".join(frames), dtype=np.uint8).reshape(len(frames), -1)
    length = np.full(len(frames), payload.shape[1], dtype=np.uint8)
    time_s = np.arange(len(frames), dtype=float)
    return wheel_speed_signals(identifier | EXTENDED_FLAG, time_s, payload, length, bus="0")


def test_last_speed_and_first_code() -> None:
    """64255 and 250 are the last numbers; all above are codes (SAE J1939-71, table of valid ranges)."""
    frames = [bytes.fromhex(text) for text in ("fffafafafafaffff", "00fb7d7d7d7dffff", "0000fb7dfe7dffff")]
    values = [signal.value for signal in decoded(frames)]
    top = 64255 / 256 + 250 / 16 - 7.8125
    np.testing.assert_array_equal(values[0], [top, np.nan, np.nan])
    np.testing.assert_array_equal(values[1], [top, np.nan, 0.0])
    np.testing.assert_array_equal(values[2], [top, np.nan, np.nan])


def test_frames_too_short_are_no_samples() -> None:
    assert all(signal.value.size == 0 for signal in decoded([b"\x00\x10\x7d\x7d\x7d"]))


def test_samples_not_available_are_invalid(drive, tmp_path) -> None:
    file = write_log(tmp_path / "x.log", drive, high_resolution, (0x08FE6E0B,), sound=range(1000))
    log = read_log([file])
    assert int(log.wheels["RL"].invalid.sum()) == drive.time_s.size - 1000
    assert "invalid-samples" in {notice.code for notice in log.notices}


def test_two_senders_are_told_apart(drive, tmp_path) -> None:
    log = read_log([write_log(tmp_path / "x.log", drive, high_resolution, (0x08FE6E0B, 0x08FE6E31))])
    assert log.wheels["FL"].valid_count == drive.time_s.size
    assert any(n.code == "message-on-two-buses" and "address 31" in n.message for n in log.notices)


def test_a_database_that_fits_goes_first_and_one_that_does_not_is_no_hindrance(
    drive, tmp_path, write, wheels_dbc_text, dbc
) -> None:
    file = write_log(tmp_path / "x.log", drive, high_resolution, (0x08FE6E0B,))
    own = write(wheels_dbc_text.replace("BO_ 416 ", f"BO_ {0x08FE6E0B | EXTENDED_FLAG} "), "own.dbc")
    assert read_log([file], ReadOptions(databases=(own,))).wheels["FL"].source == "WHL_SPD.WhlSpd_FL"
    assert read_log([file], ReadOptions(databases=(dbc,))).wheels["FL"].source.startswith("J1939_HRW")


def test_other_groups_tell_no_speed(drive, tmp_path) -> None:
    with pytest.raises(SignalMappingError, match="18FEF10B"):
        read_log([write_log(tmp_path / "x.log", drive, high_resolution, (0x18FEF10B,))])


def test_frames_of_an_mdf_file(drive, tmp_path) -> None:
    pytest.importorskip("asammdf")
    file = write_log(tmp_path / "x.mf4", drive, high_resolution, (0x08FE6E0B,))
    np.testing.assert_allclose(
        read_log([file]).wheels["RR"].speed_mps * 3.6, drive.kmh["RR"], atol=1 / 512 + 1e-6
    )
