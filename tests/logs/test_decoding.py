"""Decoding held against cantools, frame by frame, and against published bytes."""

from __future__ import annotations

import cantools
import numpy as np
import pytest
from cantools.database import Message, Signal
from cantools.database.conversion import BaseConversion
from hypothesis import given, settings
from hypothesis import strategies as st

from triage.logs.databases import load_databases
from triage.logs.decoding import decode_frames, needed_bytes, physical_values, raw_values
from triage.logs.frames import FrameCollector


def payload_array(frames: list[bytes]) -> np.ndarray:
    return np.frombuffer(b"".join(frames), dtype=np.uint8).reshape(len(frames), -1)


def our_value(signal, frames: list[bytes]) -> np.ndarray:
    raw = raw_values(
        payload_array(frames), signal.start, signal.length, big_endian=signal.byte_order == "big_endian"
    )
    return physical_values(raw, signal)


@st.composite
def signals(draw) -> Signal:
    is_float = draw(st.booleans()) and draw(st.booleans())
    length = draw(st.sampled_from([16, 32, 64])) if is_float else draw(st.integers(1, 64))
    order = draw(st.sampled_from(["little_endian", "big_endian"]))
    first = draw(st.integers(0, 64 - length))
    # the n-th bit in sending order, counted as a DBC counts the top bit of a big-endian field
    start = first if order == "little_endian" else 8 * (first // 8) + 7 - first % 8
    scale = draw(st.sampled_from([1, 0.01, 0.5, -2, 0.00390625]))
    offset = draw(st.sampled_from([0, -67.67, 250, 1e3]))
    return Signal(
        "Speed",
        start,
        length,
        byte_order=order,
        is_signed=not is_float and draw(st.booleans()),
        conversion=BaseConversion.factory(scale=scale, offset=offset, is_float=is_float),
    )


@given(signals(), st.lists(st.binary(min_size=8, max_size=8), min_size=1, max_size=8))
@settings(max_examples=300, deadline=None)
def test_any_field_decodes_as_cantools_decodes_it(signal: Signal, frames: list[bytes]) -> None:
    message = Message(0x123, "M", 8, [signal])
    ours = our_value(signal, frames)
    for value, frame in zip(ours, frames, strict=True):
        theirs = float(message.decode(frame)["Speed"])
        assert (np.isnan(value) and np.isnan(theirs)) or value == pytest.approx(theirs, rel=1e-12, abs=1e-9)


def test_field_must_fit_the_payload() -> None:
    assert needed_bytes(0, 16, big_endian=False) == 2
    assert needed_bytes(39, 16, big_endian=True) == 6
    assert needed_bytes(4, 8, big_endian=False) == 2


MOTOHAWK = """VERSION ""
NS_ :
BS_:
BU_: PCM1 FOO
BO_ 496 ExampleMessage: 8 PCM1
 SG_ Temperature : 0|12@0- (0.01,250) [229.52|270.47] "degK" PCM1
 SG_ AverageRadius : 6|6@0+ (0.1,0) [0|5] "m" Vector__XXX
 SG_ Enable : 7|1@0+ (1,0) [0|0] "-" Vector__XXX
VAL_ 496 Enable 0 "Disabled" 1 "Enabled" ;
"""


@pytest.mark.parametrize(("data", "temperature"), [("c001400000000000", 250.1), ("c006e00000000000", 250.55)])
def test_published_example_message(data: str, temperature: float) -> None:
    """Bytes of the test database that comes with cantools (its readme gives both value sets)."""
    message = cantools.database.load_string(MOTOHAWK, "dbc").get_message_by_name("ExampleMessage")
    values = {s.name: float(our_value(s, [bytes.fromhex(data)])[0]) for s in message.signals}
    assert values["Temperature"] == pytest.approx(temperature, abs=1e-9)
    assert values["AverageRadius"] == pytest.approx(3.2, abs=1e-9)
    assert values["Enable"] == 1


OPEN_DATA = """VERSION ""
NS_ :
BS_:
BU_: XXX
BO_ 170 WHEEL_SPEEDS: 8 XXX
 SG_ WHEEL_SPEED_FR : 7|16@0+ (0.01,-67.67) [0|250] "km/h" XXX
 SG_ WHEEL_SPEED_FL : 23|16@0+ (0.01,-67.67) [0|250] "km/h" XXX
 SG_ WHEEL_SPEED_RR : 39|16@0+ (0.01,-67.67) [0|250] "km/h" XXX
 SG_ WHEEL_SPEED_RL : 55|16@0+ (0.01,-67.67) [0|250] "km/h" XXX
"""


def test_published_wheel_speed_bytes() -> None:
    """0, 50, 100 km/h and the raw zero of message 170 in the open data of comma.ai (opendbc, MIT)."""
    message = cantools.database.load_string(OPEN_DATA, "dbc").get_message_by_name("WHEEL_SPEEDS")
    frame = bytes.fromhex("1a6f2df7417f0000")
    speeds = {s.name[-2:]: float(our_value(s, [frame])[0]) for s in message.signals}
    assert speeds == pytest.approx({"FR": 0.0, "FL": 50.0, "RR": 100.0, "RL": -67.67}, abs=1e-9)


def decoded(dbc_text: str, frames: list[tuple[int, bytes]], write, **options):
    database = load_databases([write(dbc_text, "some.dbc")], options.get("mapping", {}))
    collector = FrameCollector(database.wanted_keys)
    for index, (identifier, data) in enumerate(frames):
        collector.add(0.01 * index, identifier, "0", data)
    recording = decode_frames(collector.frames("test", None), database, "log")
    return {signal.name: signal for signal in recording.signals}


def wheel_dbc(extra: str = "", bounds: str = "[0|327.67]") -> str:
    signal = f' SG_ WhlSpd_FL : 0|16@1+ (0.01,0) {bounds} "km/h" ECU\n'
    return f'VERSION ""\nNS_ :\nBS_:\nBU_: ECU\nBO_ 416 WHL: 8 ECU\n{signal}{extra}'


def speeds(raws: list[int]) -> list[tuple[int, bytes]]:
    return [(416, raw.to_bytes(2, "little").ljust(8, b"\0")) for raw in raws]


RUNNING = [3000 + i for i in range(50)]


def test_values_outside_the_stated_range_are_invalid(write) -> None:
    value = decoded(wheel_dbc(), speeds([*RUNNING, 65535, 33000]), write)["WHL.WhlSpd_FL"].value
    assert np.isnan(value[-2:]).all()
    np.testing.assert_allclose(value[:-2], np.array(RUNNING) * 0.01)


def test_zero_range_states_nothing_yet_all_bits_set_is_a_code(write) -> None:
    value = decoded(wheel_dbc(bounds="[0|0]"), speeds([*RUNNING, 65535, 33000]), write)["WHL.WhlSpd_FL"].value
    assert np.isnan(value[-2])
    assert value[-1] == pytest.approx(330.0)


def test_a_range_the_bits_cannot_reach_is_not_believed(write) -> None:
    text = wheel_dbc(bounds="[0|65535]").replace("(0.01,0)", "(0.01,-67.67)")
    value = decoded(text, speeds([10, 20, 6767, 7000]), write)["WHL.WhlSpd_FL"].value
    assert value[0] == pytest.approx(-67.57)
    assert not np.isnan(value).any()


def test_named_codes_are_invalid_but_named_speeds_are_not(write) -> None:
    names = 'VAL_ 416 WhlSpd_FL 65534 "ERR" 65535 "SNA" 3000 "cruise" ;\n'
    value = decoded(wheel_dbc(names, "[0|700]"), speeds([*RUNNING, 65534, 65535]), write)[
        "WHL.WhlSpd_FL"
    ].value
    assert np.isnan(value[-2:]).all()
    assert value[0] == pytest.approx(30.0)


def test_multiplexed_signals_only_count_in_their_frames(write) -> None:
    extra = (
        ' SG_ Page M : 16|8@1+ (1,0) [0|255] "" ECU\n'
        ' SG_ WhlSpd_FR m1 : 24|16@1+ (0.01,0) [0|0] "km/h" ECU\n'
        ' SG_ WhlSpd_RL m2 : 24|16@1+ (0.01,0) [0|0] "km/h" ECU\n'
    )
    frames = [(416, bytes([0, 0, page, page, 0, 0, 0, 0])) for page in (1, 2, 3, 1)]
    found = decoded(wheel_dbc(extra), frames, write)
    np.testing.assert_allclose(found["WHL.WhlSpd_FR"].value, [0.01, 0.01])
    np.testing.assert_allclose(found["WHL.WhlSpd_RL"].value, [0.02])
    assert found["WHL.WhlSpd_FL"].value.size == 4


def test_frames_too_short_for_a_signal_are_no_samples(write) -> None:
    found = decoded(wheel_dbc(), [(416, b"\x10\x20"), (416, b"\x10"), (416, b"")], write)
    assert found["WHL.WhlSpd_FL"].value.size == 1


def test_every_frame_of_a_log_decodes_as_cantools_decodes_it(shared, write) -> None:
    import can

    folder = shared / "data" / "highway_83hz"
    database = cantools.database.load_file(folder / "bus.dbc")
    ours = load_databases([str(folder / "bus.dbc")], {})
    collector = FrameCollector(ours.wanted_keys)
    theirs: dict[str, list[float]] = {}
    known = {message.frame_id: message for message in database.messages}
    for message in can.LogReader(str(folder / "bus.blf")):
        if message.channel != 0:
            continue
        collector.add(message.timestamp, message.arbitration_id, "0", bytes(message.data))
        if message.arbitration_id in known:
            described = known[message.arbitration_id]
            for name, value in described.decode(message.data, decode_choices=False).items():
                theirs.setdefault(f"{described.name}.{name}", []).append(float(value))
    found = {s.name: s for s in decode_frames(collector.frames("t", None), ours, "log").signals}
    assert sum("WHEEL_SPEED_" in name for name in found) >= 8
    for name, signal in found.items():
        good = ~np.isnan(signal.value)
        np.testing.assert_allclose(signal.value[good], np.array(theirs[name])[good], rtol=1e-12, atol=1e-9)
        assert good.mean() > 0.95
