"""MDF files: plain signals, or CAN frames of a bus recording."""

from __future__ import annotations

import io
import traceback
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from typing import IO, Any, Final

import numpy as np

from triage.errors import DamagedLog, TriageError
from triage.logs.clock import mend_clock
from triage.logs.content import FileContent
from triage.logs.databases import SignalDatabase
from triage.logs.decoding import decode_wanted
from triage.logs.frames import Frames
from triage.logs.library_noise import quiet
from triage.logs.mdf_frames import frame_groups, named_channels, read_mdf_frames
from triage.logs.mdf_layout import end_with_file, stray_channel
from triage.logs.mdf_links import CircleError, follow_links
from triage.logs.recording import RawSignal, Recording
from triage.logs.roles import sense_signal
from triage.logs.source import Source
from triage.progress import Cancelled, Progress
from triage.reasons import reason_of
from triage.speed_log import FloatArray, Notice
from triage.texts import Text

_FINISHED: Final = b"MDF     "
_MAGIC: Final = (_FINISHED, b"UnFinMF ")


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
    with quiet("asammdf"), _opened(source) as mdf:
        try:
            _refuse_stray_channel(mdf, source)
            end_with_file(mdf, _unpacked_bytes(source))
            if frame_groups(mdf) and not _has_wheel_signals(mdf):
                return decode_wanted(partial(_frames, mdf, source), database, source.name, progress)
            return _signals(mdf, source.name, progress)
        except (TriageError, Cancelled):
            raise
        except Exception as error:  # noqa: BLE001 - the library raises whatever damaged blocks make it
            raise _damaged(source, error) from None
        finally:
            mdf.close()


def _frames(mdf: Any, source: Source, wanted: frozenset[int], progress: Progress) -> Frames:
    return read_mdf_frames(mdf, wanted, _unpacked_bytes(source), progress)


def _unpacked_bytes(source: Source) -> int:
    return source.content.size if isinstance(source.content, FileContent) else len(source.data)


@contextmanager
def _opened(source: Source) -> Iterator[Any]:
    """Open the file, never by its path: an unfinished one would be mended in place."""
    if isinstance(source.content, FileContent) and source.head.startswith(_FINISHED):
        with source.content.opened_raw() as file:
            yield _open(source, file)
    else:
        yield _open(source, io.BytesIO(source.data))


def _open(source: Source, file: IO[bytes]) -> Any:
    import asammdf  # noqa: PLC0415 - slow to load, and only MDF files need it

    try:
        follow_links(file, file.seek(0, io.SEEK_END))
    except CircleError as error:
        raise _damaged(source, error) from None
    try:
        return asammdf.MDF(file, process_bus_logging=False)
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
            place=Text("channel {name}", name=name[:200]),
            hint="Copy the file again.",
        )


def _damaged(source: Source, error: Exception) -> DamagedLog:
    return DamagedLog(
        Text("the MDF file cannot be read: {reason}", reason=reason_of(error)),
        file=source.name,
        place=Text("block list"),
        hint="Copy it again.",
    )


def _has_wheel_signals(mdf: Any) -> bool:
    return any(sense_signal(name, "").role == "wheel" for _, _, name in named_channels(mdf))


def _signals(mdf: Any, file: str, progress: Progress) -> Recording:
    names = named_channels(mdf)
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
    return Recording(Text("MDF signals"), mdf.start_time, tuple(signals), tuple(notices))


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
