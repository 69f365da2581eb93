"""Tables that were taken out of another kind of file, read as if they had been exported as text."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Final

from triage.errors import LogReadError
from triage.logs.databases import SignalDatabase
from triage.logs.decoding import frame_reader
from triage.logs.edge_times import probe_edge_times, read_edge_times
from triage.logs.frame_tables import probe_frame_table, read_frame_table
from triage.logs.recording import Recording
from triage.logs.source import Source
from triage.logs.tables import probe_table, read_table
from triage.progress import Progress

_Probe = Callable[[Source], float]
_Read = Callable[[Source, SignalDatabase, Progress], Recording]
_KINDS: Final[tuple[tuple[_Probe, _Read], ...]] = (
    (probe_frame_table, frame_reader(read_frame_table)),
    (probe_edge_times, read_edge_times),
    (probe_table, read_table),
)


def text_table_score(source: Source) -> float:
    """Give the confidence that a text is a table of frames, of edges or of speeds."""
    return max(probe(source) for probe, _ in _KINDS)


def read_text_table(
    source: Source, database: SignalDatabase, progress: Progress, *, kind: str, place: str
) -> Recording:
    """Read a table of frames, of edges or of speeds.

    Parameters
    ----------
    source : Source
        The table as tab-separated text with decimal points.
    database : SignalDatabase
    progress : Progress
    kind : str
        What the recording is called.
    place : str
        Where the table was found, for messages.

    Raises
    ------
    LogReadError
        When it is no table with a heading and a column of time.
    """
    _, read = max(_KINDS, key=lambda row: row[0](source))
    try:
        recording = read(source, database, progress)
    except LogReadError as refused:
        refused.place = ", ".join(part for part in (place, refused.place) if part)
        raise
    return replace(recording, format=kind, notices=(*source.notices, *recording.notices))
