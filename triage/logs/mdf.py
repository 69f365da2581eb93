"""MDF files: plain signals, or CAN frames of a bus recording."""

from __future__ import annotations

import io
import traceback
from functools import partial
from typing import Any, Final

import numpy as np

from triage.errors import DamagedLog, TriageError
from triage.logs.clock import mend_clock
from triage.logs.databases import SignalDatabase
from triage.logs.decoding import decode_wanted
from triage.logs.frames import EXTENDED_FLAG, EXTENDED_MAX, FrameBlock, FrameCollector, Frames
from triage.logs.library_noise import quiet
from triage.logs.mdf_layout import end_with_file, stray_channel
from triage.logs.recording import RawSignal, Recording
from triage.logs.roles import sense_signal
from triage.logs.source import Source
from triage.progress import Cancelled, Progress
from triage.speed_log import FloatArray, Notice

_MAGIC: Final = (b"MDF     ", b"UnFinMF ")
_FRAME_CHANNEL: Final = "CAN_DataFrame"


def probe_mdf(source: Source) -> float:
    """Tell by the first bytes."""
    return 1.0 if source.head.startswith(_MAGIC) else 0.0


def read_mdf(source: Source, database: SignalDatabase, progress: Progress) -> Recording:
    """Read the signals, or decode the frames when it holds frames.

    Raises
    ------
    DamagedLog
        When the library cannot open the file.
    """
    with quiet("asammdf"):
        mdf = _open(source)
        try:
            _refuse_stray_channel(mdf, source)
            end_with_file(mdf, len(source.data))
            if _frame_groups(mdf) and not _has_wheel_signals(mdf):
                return decode_wanted(partial(_frames, mdf), database, source.name, progress)
            return _signals(mdf, source.name, progress)
        except (TriageError, Cancelled):
            raise
        except Exception as error:  # noqa: BLE001 - the library raises whatever damaged blocks make it
            raise _damaged(source, error) from None
        finally:
            mdf.close()


def _open(source: Source) -> Any:
    import asammdf  # noqa: PLC0415 - slow to load, and only MDF files need it

    try:
        # from memory: given a path the library opens an unfinished file for writing and mends it in place
        return asammdf.MDF(io.BytesIO(source.data))
    except Exception as error:  # noqa: BLE001 - the library raises whatever its parsers raise
        _give_up_half_open(error)
        raise _damaged(source, error) from None


def _give_up_half_open(error: Exception) -> None:
    """Mark what the library has half built as closed; its own clean-up would fail with a traceback."""
    for frame, _ in traceback.walk_tb(error.__traceback__):
        half_open = frame.f_locals.get("self")
        if hasattr(half_open, "_closed"):
            state = vars(half_open)
            state["_closed"] = True
            scratch = state.get("_tempfile")
            if scratch is not None:
                scratch.close()


def _refuse_stray_channel(mdf: Any, source: Source) -> None:
    name = stray_channel(mdf)
    if name:
        raise DamagedLog(
            "a channel lies outside its record",
            file=source.name,
            place=f"channel {name}"[:200],
            hint="Copy the file again.",
        )


def _damaged(source: Source, error: Exception) -> DamagedLog:
    reason = (str(error) or type(error).__name__).splitlines()[0][:200]
    return DamagedLog(
        f"the MDF file cannot be read: {reason}", file=source.name, place="block list", hint="Copy it again."
    )


def _names(mdf: Any) -> list[tuple[int, int, str]]:
    """Group, channel and name of everything but the time channels."""
    return [
        (group, index, str(channel.name))
        for group, content in enumerate(mdf.groups)
        for index, channel in enumerate(content.channels)
        if index != mdf.masters_db.get(group, -1)
    ]


def _frame_groups(mdf: Any) -> list[int]:
    return sorted({group for group, _, name in _names(mdf) if name == _FRAME_CHANNEL})


def _has_wheel_signals(mdf: Any) -> bool:
    return any(sense_signal(name, "").role == "wheel" for _, _, name in _names(mdf))


def _signals(mdf: Any, file: str, progress: Progress) -> Recording:
    names = _names(mdf)
    signals: list[RawSignal] = []
    notices: list[Notice] = []
    for done, (group, index, name) in enumerate(names):
        progress(done / len(names), "reading signals")
        unit = str(mdf.groups[group].channels[index].unit or "")
        signal = mdf.get(name, group=group, index=index, ignore_invalidation_bits=True)
        value = _numbers(signal)
        if value is not None:
            clock = mend_clock(np.asarray(signal.timestamps, dtype=np.float64))
            notices += clock.notices(f"{file}: {name}")
            found = RawSignal(name, str(signal.unit or unit), clock.time_s, value)
            signals.append(found.only(~np.isnan(clock.time_s)))
    return Recording("MDF signals", mdf.start_time, tuple(signals), tuple(notices))


def _numbers(signal: Any) -> FloatArray | None:
    """Numbers of a signal; texts and samples marked invalid become NaN; None for what is no number at all."""
    samples = np.asarray(signal.samples)
    if samples.ndim != 1 or samples.dtype.names:
        return None
    if samples.dtype.kind in "SUO":
        value = np.array([_number(text) for text in samples], dtype=np.float64)
        if samples.size and np.isnan(value).all():
            return None
    else:
        value = samples.astype(np.float64)
    invalid = signal.invalidation_bits
    if invalid is not None:
        value = np.where(np.asarray(invalid, dtype=bool), np.nan, value)
    return np.where(np.isfinite(value), value, np.nan)


def _number(text: Any) -> float:
    try:
        return float(text)
    except (TypeError, ValueError):
        return float("nan")


def _frames(mdf: Any, wanted: frozenset[int], progress: Progress) -> Frames:
    collector = FrameCollector(wanted)
    groups = _frame_groups(mdf)
    for done, group in enumerate(groups):
        progress(done / len(groups), "reading frames")
        _take_group(mdf, group, collector)
    return collector.frames("CAN frames (MDF)", mdf.start_time)


def _take_group(mdf: Any, group: int, collector: FrameCollector) -> None:
    fields = {name.rpartition(".")[2]: index for g, index, name in _names(mdf) if g == group and "." in name}

    def column(field: str) -> Any:
        return mdf.get(group=group, index=fields[field], raw=True) if field in fields else None

    identifier, data = column("ID"), column("DataBytes")
    times = np.asarray(identifier.timestamps, dtype=np.float64)
    ids = np.asarray(identifier.samples, dtype=np.int64)
    extended = _flags(column("IDE"), ids.size)
    buses = column("BusChannel")
    bus = np.ones(ids.size, dtype=np.int64) if buses is None else np.asarray(buses.samples, dtype=np.int64)
    lengths = column("DataLength")
    payload = np.asarray(data.samples)
    count = (
        np.full(ids.size, payload.shape[1])
        if lengths is None
        else np.asarray(lengths.samples, dtype=np.int64)
    )
    key = (ids & EXTENDED_MAX).astype(np.uint32) | np.where(extended, np.uint32(EXTENDED_FLAG), np.uint32(0))
    rows = np.flatnonzero(collector.count(key))
    names, bus_index = np.unique(bus[rows], return_inverse=True)
    length = np.clip(count[rows], 0, payload.shape[1])
    kept = np.where(np.arange(payload.shape[1]) < length[:, np.newaxis], payload[rows], np.uint8(0))
    buses = tuple(str(int(name)) for name in names)
    collector.add_wanted(FrameBlock(times[rows], key[rows], buses, bus_index, kept, length.astype(np.uint8)))


def _flags(signal: Any, size: int) -> Any:
    return np.zeros(size, dtype=bool) if signal is None else np.asarray(signal.samples, dtype=bool)
