"""Random databases and random frames: the same numbers as cantools gives, sample by sample."""

from __future__ import annotations

import cantools
import numpy as np
from cantools.database import Message, Signal
from cantools.database.can import Database
from cantools.database.conversion import BaseConversion
from cantools.database.errors import DecodeError
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from triage.logs.databases import SignalDatabase, WantedMessage, load_databases
from triage.logs.decoding import decode_frames
from triage.logs.frames import FrameCollector

KEY = 0x1A0
LENGTHS = (1, 2, 3, 5, 8, 12, 16, 20, 24, 32, 48, 64)
SCALES = (1, 0.01, 0.5, -2, 0.00390625, 3)
OFFSETS = (0, -67.67, 250, -7.8125)


def start_bit(first: int, order: str) -> int:
    """Give the start as a DBC counts it for the n-th bit in sending order."""
    return first if order == "little_endian" else 8 * (first // 8) + 7 - first % 8


@st.composite
def messages(draw) -> Message:
    """Make a message of any length with plain, multiplexed and twice multiplexed signals."""
    size = draw(st.sampled_from(LENGTHS))
    signals = [draw(plain_signal(f"S{index}", size)) for index in range(draw(st.integers(1, 4)))]
    if size >= 2 and draw(st.booleans()):
        signals.append(selector("Page", 0))
        pages = draw(st.lists(st.integers(0, 3), min_size=1, max_size=3, unique=True))
        signals += [draw(plain_signal(f"P{page}", size, ("Page", [page]))) for page in pages]
        if draw(st.booleans()):
            signals.append(selector("Sheet", 8, ("Page", pages)))
            ids = draw(st.lists(st.integers(0, 3), min_size=1, max_size=3, unique=True))
            signals.append(draw(plain_signal("T", size, ("Sheet", ids))))
    return Message(KEY, "M", size, signals, strict=False, is_fd=size > 8)


def selector(name: str, start: int, under: tuple[str, list[int]] | None = None) -> Signal:
    ids, parent = (under[1], under[0]) if under else (None, None)
    return Signal(name, start, 2, is_multiplexer=True, multiplexer_ids=ids, multiplexer_signal=parent)


@st.composite
def plain_signal(draw, name: str, size: int, under: tuple[str, list[int]] | None = None) -> Signal:
    real = [bits for bits in (16, 32, 64) if bits <= 8 * size]
    is_float = bool(real) and draw(st.integers(0, 3)) == 0
    length = draw(st.sampled_from(real)) if is_float else draw(st.integers(1, min(64, 8 * size)))
    order = draw(st.sampled_from(["little_endian", "big_endian"]))
    first = draw(st.integers(0, 8 * size - length))
    choices = {0: "standing", 1: "turning"} if draw(st.booleans()) and not is_float else None
    ids, parent = (under[1], under[0]) if under else (None, None)
    return Signal(
        name,
        start_bit(first, order),
        length,
        byte_order=order,
        is_signed=not is_float and draw(st.booleans()),
        conversion=BaseConversion.factory(
            scale=draw(st.sampled_from(SCALES)),
            offset=draw(st.sampled_from(OFFSETS)),
            choices=choices,
            is_float=is_float,
        ),
        multiplexer_ids=ids,
        multiplexer_signal=parent,
    )


@st.composite
def payloads(draw, size: int) -> list[bytes]:
    """Make whole frames, and some shorter than the database says."""
    return draw(st.lists(st.binary(min_size=size, max_size=size) | st.binary(max_size=size), max_size=12))


def ours(message: Message, frames: list[bytes]) -> dict[str, tuple[np.ndarray, np.ndarray]]:
    multiplexers = {signal.name: signal for signal in message.signals if signal.is_multiplexer}
    wanted = WantedMessage(KEY, "M", tuple(message.signals), multiplexers, True)
    collector = FrameCollector(frozenset((KEY,)))
    for index, data in enumerate(frames):
        collector.add(float(index), KEY, "0", data)
    database = SignalDatabase(("x",), {KEY: (wanted,)}, frozenset((KEY,)), frozenset((KEY,)))
    recording = decode_frames(collector.frames("t", None), database, "log")
    return {signal.name.removeprefix("M."): (signal.time_s, signal.value) for signal in recording.signals}


def theirs(message: Message, data: bytes) -> dict[str, float] | None:
    """Decode one frame by the library; None where it refuses the whole for a page it does not know."""
    try:
        found = message.decode(data, decode_choices=False, allow_truncated=True)
    except DecodeError:
        return None
    return {name: float(value) for name, value in found.items()}


@given(st.data())
@settings(max_examples=250, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_random_databases_and_frames_decode_as_cantools_decodes_them(data) -> None:
    message = data.draw(messages())
    # the first frame of all ones: no single top value can then stand alone as a code
    frames = [b"\xfe" * message.length, *data.draw(payloads(message.length))]
    frames = [frame for index, frame in enumerate(frames) if frame not in frames[max(0, index - 1) : index]]
    found = ours(message, frames)
    expected = [theirs(message, frame) for frame in frames]
    for signal in message.signals:
        time_s, value = found[signal.name]
        at = {int(t): v for t, v in zip(time_s, value, strict=True)}
        for index, decoded in enumerate(expected):
            if decoded is not None:
                compare(signal, at.get(index), decoded.get(signal.name))


def compare(signal: Signal, value: float | None, truth: float | None) -> None:
    assert (value is None) == (truth is None), signal
    if value is None or truth is None:
        return
    if np.isnan(value):
        assert not np.isfinite(truth) or is_code(signal, truth), (signal, truth)
    elif signal.length > 53 and not signal.is_float:
        assert abs(value - truth) <= 1e-12 * max(abs(truth), 1.0)
    else:
        assert value == truth


def is_code(signal: Signal, truth: float) -> bool:
    """Tell all bits set, which far from every other value is no number to us, but one to the library."""
    top = float((1 << signal.length) - 1) * float(signal.scale) + float(signal.offset)
    return not signal.is_signed and not signal.is_float and signal.length >= 10 and truth == top


EXTENDED = """VERSION ""
NS_ :
BS_:
BU_: ECU
BO_ 416 M: 8 ECU
 SG_ Page M : 0|8@1+ (1,0) [0|0] "" ECU
 SG_ Sheet m1M : 8|8@1+ (1,0) [0|0] "" ECU
 SG_ WhlSpd_FL m2 : 16|16@1+ (0.01,0) [0|0] "km/h" ECU
 SG_ WhlSpd_FR m4 : 32|16@1+ (0.01,0) [0|0] "km/h" ECU
SG_MUL_VAL_ 416 Sheet Page 1-1, 3-5;
SG_MUL_VAL_ 416 WhlSpd_FL Sheet 2-2, 7-9;
SG_MUL_VAL_ 416 WhlSpd_FR Page 4-4;
"""


def test_extended_multiplexing_in_a_file(write) -> None:
    database = load_databases([write(EXTENDED, "x.dbc")], {})
    library = cantools.database.load_string(EXTENDED, "dbc")
    assert isinstance(library, Database)
    rng = np.random.default_rng(4)
    frames = [bytes([page, sheet]) + rng.bytes(6) for page in range(7) for sheet in range(11)]
    collector = FrameCollector(database.wanted_keys)
    for index, frame in enumerate(frames):
        collector.add(float(index), 416, "0", frame)
    found = {s.name: s for s in decode_frames(collector.frames("t", None), database, "log").signals}
    expected = [theirs(library.messages[0], frame) for frame in frames]
    for name in ("WhlSpd_FL", "WhlSpd_FR"):
        rows = [(float(i), one[name]) for i, one in enumerate(expected) if one is not None and name in one]
        ours_at = dict(zip(found[f"M.{name}"].time_s, found[f"M.{name}"].value, strict=True))
        assert len(rows) == {"WhlSpd_FL": 16, "WhlSpd_FR": 4}[name]
        assert {t: ours_at[t] for t, _ in rows} == dict(rows)
