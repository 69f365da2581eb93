"""Signals out of frames, all frames of a message at once."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from triage.errors import SignalMappingError
from triage.logs.clock import find_echoes, mend_clock
from triage.logs.databases import SignalDatabase, WantedMessage
from triage.logs.frames import EXTENDED_FLAG, Frames, format_key
from triage.logs.j1939 import wheel_speed_keys, wheel_speed_signals
from triage.logs.recording import RawSignal, Recording
from triage.logs.roles import sense_signal
from triage.logs.source import Source
from triage.progress import Progress, part_of
from triage.speed_log import BoolArray, FloatArray, Notice
from triage.texts import Text, first_names, joined

_NO_VALUE: Final = re.compile(
    r"sna|not.?av|unavail|invalid|ung[uü]ltig|err|fault|fehler|init|reserv|undef|unknown|unbekannt|n/a|^na$|nicht|default|"
    r"no.?(value|signal|data)|defect|missing",
    re.IGNORECASE,
)
_SHOWN_IDS: Final = 12
_RANGE_WRONG_RATIO: Final = 0.5
_CODE_BITS_MIN: Final = 10
_ISOLATED_RATIO: Final = 0.8

ReadFrames = Callable[[Source, frozenset[int], Progress], Frames]


def frame_reader(read: ReadFrames) -> Callable[[Source, SignalDatabase, Progress], Recording]:
    """Make a reader of signals from a reader of frames."""

    def read_signals(source: Source, database: SignalDatabase, progress: Progress) -> Recording:
        return decode_wanted(
            lambda wanted, told: read(source, wanted, told),
            database,
            source.name,
            part_of(progress, 0.0, 0.9),
        )

    return read_signals


def decode_wanted(
    read: Callable[[frozenset[int], Progress], Frames],
    database: SignalDatabase,
    file: str,
    progress: Progress,
) -> Recording:
    """Read the frames that the database describes and decode them.

    Where it describes none with a wheel speed, groups that tell their meaning by their number are looked for;
    then the file is read a second time, for them alone.

    Raises
    ------
    SignalMappingError
        When neither gives a wheel speed.
    """
    frames = read(database.wanted_keys, part_of(progress, 0.0, 0.5))
    by_group = wheel_speed_keys(frames.seen)
    if database.wheel_keys & frames.seen.keys() or not by_group:
        return decode_frames(frames, database, file)
    return decode_groups(read(by_group, part_of(progress, 0.5, 1.0)), file)


def decode_groups(frames: Frames, file: str) -> Recording:
    """Decode the wheel speeds of heavy vehicles, see :mod:`triage.logs.j1939`."""
    senders = {key & 0xFF for key in wheel_speed_keys(frames.seen)}

    def signals(batch: _Batch) -> Iterable[RawSignal]:
        sender = f"address {batch.key & 0xFF:02X}" if len(senders) > 1 else ""
        bus = " ".join(part for part in (batch.bus, sender) if part)
        return wheel_speed_signals(batch.key, batch.time_s, batch.payload, batch.length, bus=bus)

    return _decoded(frames, signals, file)


def decode_frames(frames: Frames, database: SignalDatabase, file: str) -> Recording:
    """Decode the wanted signals of all frames.

    Raises
    ------
    SignalMappingError
        When no database is given, or none of them describes an identifier in the log.
    """
    if not database.wheel_keys & frames.seen.keys() or not frames.time_s.size:
        raise _nothing_decoded(frames, database, file)

    def signals(batch: _Batch) -> Iterable[RawSignal]:
        for message in database.messages[batch.key]:
            yield from (_signal(batch, message, signal) for signal in message.signals)

    return _decoded(frames, signals, file)


def _decoded(frames: Frames, decode: Callable[[_Batch], Iterable[RawSignal]], file: str) -> Recording:
    clock = mend_clock(frames.time_s)
    notices = [*frames.notices, *_odd_notices(frames, file), *clock.notices(file)]
    signals: list[RawSignal] = []
    echoes = 0
    for batch, dropped in _batches(frames, clock.time_s):
        echoes += dropped
        signals += decode(batch)
    if echoes:
        text = Text(
            "{file}: {echoes} frames stand twice in the log, once sent and once as their "
            "own echo; the repeated ones were left out.",
            file=file,
            echoes=echoes,
        )
        notices.append(Notice("duplicate-instants", text, echoes))
    return Recording(frames.format, frames.start, _without_needless_bus(signals), tuple(notices))


def _batches(frames: Frames, time_s: FloatArray) -> Iterator[tuple[_Batch, int]]:
    """Frames of one identifier on one bus at a time, without echoes, and how many of these there were."""
    placed = ~np.isnan(time_s)
    for key in _in_order(frames.key):
        of_key = frames.key == key
        for bus in _in_order(frames.bus_index[of_key]):
            chosen = np.flatnonzero(of_key & (frames.bus_index == bus) & placed)
            chosen, dropped = _without_echoes(chosen, time_s, frames.payload)
            columns = time_s[chosen], frames.payload[chosen], frames.length[chosen]
            yield _Batch(key, *columns, frames.bus[bus]), dropped


def _in_order(values: NDArray[Any]) -> list[int]:
    """Give the distinct numbers in the order in which they come first."""
    distinct, first = np.unique(values, return_index=True)
    return [int(value) for value in distinct[np.argsort(first)]]


def _without_needless_bus(signals: list[RawSignal]) -> tuple[RawSignal, ...]:
    """Name the bus only of signals that came over several."""
    count = Counter(signal.name for signal in signals)
    return tuple(signal if count[signal.name] > 1 else replace(signal, bus="") for signal in signals)


@dataclass(frozen=True, slots=True)
class _Batch:
    """All frames of one identifier on one bus."""

    key: int
    time_s: FloatArray
    payload: NDArray[np.uint8]
    length: NDArray[np.uint8]
    bus: str


def raw_values(
    payload: NDArray[np.uint8], start: int, length: int, *, big_endian: bool
) -> NDArray[np.uint64]:
    """Take a field of bits out of every payload.

    Parameters
    ----------
    payload : uint8[N, W]
    start : int
        Start bit as a DBC counts it: the least significant bit of a little-endian field (``@1``), the most
        significant one of a big-endian field (``@0``), bit 7 being the top of byte 0.
    length : int
        Number of bits, 1 to 64.

    Returns
    -------
    uint64[N]
    """
    raw = np.zeros(payload.shape[0], dtype=np.uint64)
    for byte, low, count in _bit_runs(start, length, big_endian=big_endian):
        part = (payload[:, byte].astype(np.uint64) >> np.uint64(low)) & np.uint64((1 << count) - 1)
        raw = (raw << np.uint64(count)) | part
    return raw


def needed_bytes(start: int, length: int, *, big_endian: bool) -> int:
    """Bytes a payload must have to hold the field."""
    return 1 + max(byte for byte, _, _ in _bit_runs(start, length, big_endian=big_endian))


def _bit_runs(start: int, length: int, *, big_endian: bool) -> list[tuple[int, int, int]]:
    """Byte, lowest bit and number of bits of every piece, the most significant piece first."""
    runs = []
    byte, top = divmod(start if big_endian else start + length - 1, 8)
    left = length
    while left:
        count = min(left, top + 1) if big_endian or byte > start // 8 else left
        runs.append((byte, top - count + 1, count))
        left -= count
        byte, top = (byte + 1, 7) if big_endian else (byte - 1, 7)
    return runs


def physical_values(raw: NDArray[np.uint64], signal: Any) -> FloatArray:
    """Numbers of a field: signed or not, float or whole, scaled; as cantools scales them."""
    number = _as_number(raw, signal)
    if signal.scale == 1 and signal.offset == 0:
        return number
    # bit patterns that are no number stay what they are; they are sorted out by their value
    with np.errstate(invalid="ignore", over="ignore"):
        return number * float(signal.scale) + float(signal.offset)


def _as_number(raw: NDArray[np.uint64], signal: Any) -> FloatArray:
    if signal.is_float:
        kinds = {16: (np.uint16, np.float16), 32: (np.uint32, np.float32), 64: (np.uint64, np.float64)}
        whole, real = kinds[signal.length]
        with np.errstate(invalid="ignore"):
            return raw.astype(whole).view(real).astype(np.float64)
    if not signal.is_signed:
        return raw.astype(np.float64)
    unused = np.uint64(64 - signal.length)
    return ((raw << unused).view(np.int64) >> unused.astype(np.int64)).astype(np.float64)


def _signal(batch: _Batch, message: WantedMessage, signal: Any) -> RawSignal:
    """Decode one signal; frames too short for it or of another multiplex are no samples of it."""
    there = _multiplexed_rows(batch, message, signal) & (batch.length >= _end_of(signal))
    time_s = batch.time_s[there]
    if not there.any():
        value = np.zeros(0)
    else:
        raw = _raw_of(batch.payload[there], signal)
        value = physical_values(raw, signal)
        value = np.where(_not_available(raw, value, signal, message.name), np.nan, value)
    step = abs(float(signal.scale)) if not signal.is_float else 0.0
    return RawSignal(f"{message.name}.{signal.name}", signal.unit or "", time_s, value, step, batch.bus)


def _raw_of(payload: NDArray[np.uint8], signal: Any) -> NDArray[np.uint64]:
    return raw_values(payload, signal.start, signal.length, big_endian=signal.byte_order == "big_endian")


def _end_of(signal: Any) -> int:
    return needed_bytes(signal.start, signal.length, big_endian=signal.byte_order == "big_endian")


def _multiplexed_rows(batch: _Batch, message: WantedMessage, signal: Any) -> BoolArray:
    rows = np.ones(batch.time_s.size, dtype=bool)
    for _ in range(len(message.multiplexers) + 1):
        if not signal.multiplexer_ids or signal.multiplexer_signal not in message.multiplexers:
            break
        selector = message.multiplexers[signal.multiplexer_signal]
        rows &= batch.length >= _end_of(selector)
        if not rows.any():
            break
        number = np.full(rows.size, np.nan)
        number[rows] = np.trunc(physical_values(_raw_of(batch.payload[rows], selector), selector))
        rows &= np.isin(number, np.array(signal.multiplexer_ids, dtype=np.float64))
        signal = selector
    return rows


def _not_available(raw: NDArray[np.uint64], value: FloatArray, signal: Any, message: str) -> BoolArray:
    """Mark samples without a number: named so, outside the stated range, or all bits set."""
    bad = ~np.isfinite(value)
    number = _as_number(raw, signal)
    for code, name in (signal.choices or {}).items():
        if _NO_VALUE.search(str(name)):
            bad |= number == code
    role = sense_signal(f"{message}.{signal.name}", signal.unit or "").role
    if role.startswith(("fault_", "pulses_")) or role == "brake":
        return bad
    outside = _outside_range(value, signal)
    if np.count_nonzero(outside & ~bad) <= _RANGE_WRONG_RATIO * np.count_nonzero(~bad):
        bad |= outside
    return bad | _lone_full_scale(raw, value, signal, bad)


def _outside_range(value: FloatArray, signal: Any) -> BoolArray:
    none = np.zeros(value.size, dtype=bool)
    if signal.minimum is None or signal.maximum is None or signal.is_float:
        return none
    low, high, step = float(signal.minimum), float(signal.maximum), abs(float(signal.scale))
    # [0|0] in a DBC means that no range is stated; a range that the bits cannot even reach was filled in
    # without thought (often with the raw limits) and says nothing
    lowest, highest = _representable(signal)
    if not high > low or low < lowest - step or high > highest + step:
        return none
    outside: BoolArray = (value < low - 0.5 * step) | (value > high + 0.5 * step)
    return outside


def _representable(signal: Any) -> tuple[float, float]:
    """Smallest and largest physical value of all bit patterns."""
    bits = signal.length - bool(signal.is_signed)
    raw = (-(2.0**bits) if signal.is_signed else 0.0, 2.0**bits - 1)
    ends = sorted(end * float(signal.scale) + float(signal.offset) for end in raw)
    return ends[0], ends[1]


def _lone_full_scale(raw: NDArray[np.uint64], value: FloatArray, signal: Any, bad: BoolArray) -> BoolArray:
    """All bits set, in a field wide enough for this to be a code, and far from every other value."""
    none = np.zeros(value.size, dtype=bool)
    if signal.length < _CODE_BITS_MIN or signal.is_float or signal.is_signed:
        return none
    full = raw == np.uint64((1 << signal.length) - 1)
    others = value[~full & ~bad]
    if not full.any() or not others.size:
        return none
    top = float(value[full][0])
    return full if float(np.abs(others).max()) < _ISOLATED_RATIO * abs(top) else none


def _without_echoes(
    chosen: NDArray[np.intp], time_s: FloatArray, payload: NDArray[np.uint8]
) -> tuple[NDArray[np.intp], int]:
    ordered = chosen[np.argsort(time_s[chosen], kind="stable")]
    width = min(payload.shape[1], 8)
    wide = np.zeros((ordered.size, 8), dtype=np.uint8)
    wide[:, :width] = payload[ordered, :width]
    echo = find_echoes(time_s[ordered], wide.view(np.uint64).ravel())
    dropped = int(np.count_nonzero(echo))
    if not dropped:
        return chosen, 0
    return np.sort(ordered[~echo]), dropped


def _odd_notices(frames: Frames, file: str) -> list[Notice]:
    total = sum(frames.odd.values())
    if not total:
        return []
    what = _odd_words(frames)
    return [
        Notice(
            "frames-skipped",
            Text("{file}: skipped as they carry no speed: {what}.", file=file, what=what),
            total,
        )
    ]


def _odd_words(frames: Frames) -> Text:
    counted = (Text("{count} {what}", count=count, what=name) for name, count in frames.odd.items())
    return joined(", ", counted)


def _nothing_decoded(frames: Frames, database: SignalDatabase, file: str) -> SignalMappingError:
    ordered = sorted(frames.seen, key=lambda key: -frames.seen[key])
    ids = first_names([format_key(key) for key in ordered], _SHOWN_IDS)
    if not ordered:
        which = _odd_words(frames) or Text("it holds no frame")
        return SignalMappingError(
            Text("there is no usable data frame in the log ({which})", which=which),
            file=file,
            hint="Record again with time stamps, or choose another file.",
        )
    present = Text("identifiers in the log (hex): {ids}", ids=ids)
    if not database.files:
        return SignalMappingError(
            Text(
                "the log holds CAN frames; without a signal database they tell no wheel speed; {present}",
                present=present,
            ),
            file=file,
            hint="Give the database of this car with --dbc FILE.",
        )
    names = ", ".join(database.files)
    if database.wheel_keys and database.known_keys & frames.seen.keys():
        wanted = ", ".join(format_key(key) for key in sorted(database.wheel_keys)[:_SHOWN_IDS])
        why = Text("the messages with the wheel speeds ({wanted}) are not in the log", wanted=wanted)
    elif database.known_keys & frames.seen.keys():
        why = Text("the database names no wheel speed; name the signals with --map if you know them")
    elif _other_width(database.wheel_keys, frames.seen):
        why = Text(
            "the identifiers of the wheel speeds are in the log, "
            "but with 11 bits where the database says 29, or the other way round"
        )
    else:
        why = Text(
            "the database describes none of the identifiers in the log; it belongs to another car or bus"
        )
    return SignalMappingError(
        Text("{names}: {why}; {present}", names=names, why=why, present=present),
        file=file,
        hint="Choose the right database with --dbc FILE.",
    )


def _other_width(wheel_keys: frozenset[int], seen: Mapping[int, int]) -> bool:
    return any((key ^ EXTENDED_FLAG) in seen for key in wheel_keys)
