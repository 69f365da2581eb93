"""Joining the parts of one recording."""

from __future__ import annotations

import itertools
from dataclasses import replace

import numpy as np

from triage.logs.recording import EDGE_UNIT, Recording
from triage.speed_log import FloatArray, Notice


def join_recordings(parts: list[tuple[str, Recording]]) -> Recording:
    """Join the parts of one recording in the order of time.

    Parameters
    ----------
    parts : list of (str, Recording)
        File name and content, in any order.

    Notes
    -----
    Files of edges with one wheel each share their clock. Parts that tell their start are placed by it.
    Parts that do not are placed by their times where these do not overlap; else each is hung on the end of
    the one before, in the order of the file names.
    """
    if len(parts) == 1:
        return parts[0][1]
    placed = _placed(parts)
    first = placed[0][0]
    merged: dict[tuple[str, str], list[tuple[FloatArray, FloatArray]]] = {}
    kept: dict[tuple[str, str], tuple[str, float]] = {}
    for recording, shift_s in placed:
        for signal in recording.signals:
            key = (signal.name, signal.bus)
            merged.setdefault(key, []).append((signal.time_s + shift_s, signal.value))
            kept.setdefault(key, (signal.unit, signal.step))
    template = next(signal for recording, _ in placed for signal in recording.signals)
    signals = tuple(
        replace(
            template,
            name=key[0],
            bus=key[1],
            unit=kept[key][0],
            step=kept[key][1],
            time_s=np.concatenate([time_s for time_s, _ in pieces]),
            value=np.concatenate([value for _, value in pieces]),
        )
        for key, pieces in merged.items()
    )
    notices = tuple(notice for recording, _ in placed for notice in recording.notices)
    return Recording(f"{first.format}, {len(parts)} parts", first.start, signals, notices)


def _placed(parts: list[tuple[str, Recording]]) -> list[tuple[Recording, float]]:
    starts = [recording.start for _, recording in parts]
    known = [start for start in starts if start is not None]
    if (
        len(known) == len(parts)
        and len({start.tzinfo is None for start in known}) == 1
        and len(set(known)) > 1
    ):
        ordered = sorted(
            (recording for _, recording in parts), key=lambda r: str(r.start and r.start.isoformat())
        )
        zero = min(known)
        return [(r, (r.start - zero).total_seconds()) for r in ordered if r.start is not None]
    if _one_wheel_each(parts):
        return [(recording, 0.0) for _, recording in parts]
    by_time = sorted((recording for _, recording in parts), key=lambda r: _span(r)[0])
    if all(_span(a)[1] <= _span(b)[0] + 1.0 for a, b in itertools.pairwise(by_time)):
        return [(recording, 0.0) for recording in by_time]
    return _chained([recording for _, recording in sorted(parts, key=lambda part: part[0])])


def _one_wheel_each(parts: list[tuple[str, Recording]]) -> bool:
    """Files of edges with different wheels in each share one clock and lie side by side."""
    signals = [signal for _, recording in parts for signal in recording.signals]
    names = {signal.name for signal in signals}
    return all(signal.unit == EDGE_UNIT for signal in signals) and len(names) == len(signals)


def _chained(recordings: list[Recording]) -> list[tuple[Recording, float]]:
    placed, end_s = [(recordings[0], 0.0)], _span(recordings[0])[1]
    for index, recording in enumerate(recordings[1:], start=2):
        begin, stop = _span(recording)
        shift = end_s + 0.01 - begin
        text = f"part {index} starts its clock anew; it was joined to the end of the part before."
        placed.append((replace(recording, notices=(*recording.notices, Notice("clock-reset", text))), shift))
        end_s = stop + shift
    return placed


def _span(recording: Recording) -> tuple[float, float]:
    times = [signal.time_s for signal in recording.signals if signal.time_s.size]
    if not times:
        return 0.0, 0.0
    return min(float(t.min()) for t in times), max(float(t.max()) for t in times)
