"""Joining the parts of one recording."""

from __future__ import annotations

import itertools
from dataclasses import replace
from typing import Final

import numpy as np

from triage.errors import LogReadError
from triage.logs.recording import EDGE_UNIT, RawSignal, Recording
from triage.speed_log import Notice
from triage.texts import Text, first_names

_LONGEST_PAUSE_S: Final = 60.0
"""Between two parts of one drive; a recorder that starts a new file loses seconds at most."""

_OVERLAP_S: Final = 1.0
_SHOWN: Final = 6


def refuse_separate_drives(parts: list[tuple[str, Recording]]) -> None:
    """Refuse recordings that nobody called parts of one drive and whose times do not join.

    Raises
    ------
    LogReadError
        Naming the recordings, so that one can be chosen.
    """
    if len(parts) == 1 or _one_wheel_each(parts) or _times_join(parts):
        return
    raise LogReadError(
        Text(
            "the folder holds {count} recordings whose times do not join to one drive: {names}",
            count=len(parts),
            names=first_names([name for name, _ in parts], _SHOWN),
        ),
        hint="Choose one of them, or name the parts of one drive one by one.",
    )


def _times_join(parts: list[tuple[str, Recording]]) -> bool:
    spans = []
    for recording, shift_s in _by_start(parts) or [(recording, 0.0) for _, recording in parts]:
        begin_s, stop_s = _span(recording)
        spans.append((begin_s + shift_s, stop_s + shift_s))
    spans.sort()
    return all(
        -_OVERLAP_S <= later[0] - earlier[1] <= _LONGEST_PAUSE_S
        for earlier, later in itertools.pairwise(spans)
    )


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
    notices = tuple(notice for recording, _ in placed for notice in recording.notices)
    kind = Text("{kind}, {n} parts", kind=first.format, n=len(parts))
    return Recording(kind, first.start, _joined_signals(placed), notices)


def _joined_signals(placed: list[tuple[Recording, float]]) -> tuple[RawSignal, ...]:
    """Join what has the same name on the same bus; all but its samples is that of the first part."""
    pieces: dict[tuple[str, str], list[RawSignal]] = {}
    for recording, shift_s in placed:
        for signal in recording.signals:
            moved = replace(signal, time_s=signal.time_s + shift_s)
            pieces.setdefault((signal.name, signal.bus), []).append(moved)
    return tuple(
        replace(
            several[0],
            time_s=np.concatenate([one.time_s for one in several]),
            value=np.concatenate([one.value for one in several]),
        )
        for several in pieces.values()
    )


def _by_start(parts: list[tuple[str, Recording]]) -> list[tuple[Recording, float]]:
    """Place the parts by the starts they tell; empty when these do not tell them apart."""
    known = [recording.start for _, recording in parts if recording.start is not None]
    comparable = len(known) == len(parts) and len({start.tzinfo is None for start in known}) == 1
    if not comparable or len(set(known)) < 2:
        return []
    zero = min(known)
    shifted = [(r, (r.start - zero).total_seconds()) for _, r in parts if r.start is not None]
    return sorted(shifted, key=lambda placed: placed[1])


def _placed(parts: list[tuple[str, Recording]]) -> list[tuple[Recording, float]]:
    by_start = _by_start(parts)
    if by_start:
        return by_start
    if _one_wheel_each(parts):
        return [(recording, 0.0) for _, recording in parts]
    by_time = sorted((recording for _, recording in parts), key=lambda r: _span(r)[0])
    if all(_span(a)[1] <= _span(b)[0] + _OVERLAP_S for a, b in itertools.pairwise(by_time)):
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
        text = Text(
            "part {index} starts its clock anew; it was joined to the end of the part before.", index=index
        )
        placed.append((replace(recording, notices=(*recording.notices, Notice("clock-reset", text))), shift))
        end_s = stop + shift
    return placed


def _span(recording: Recording) -> tuple[float, float]:
    times = [signal.time_s for signal in recording.signals if signal.time_s.size]
    if not times:
        return 0.0, 0.0
    return min(float(t.min()) for t in times), max(float(t.max()) for t in times)
