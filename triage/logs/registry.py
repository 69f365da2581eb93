"""Every kind of file that can be read: one row each."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from triage.errors import UnknownLogFormat
from triage.logs.asc import probe_asc, read_asc
from triage.logs.blf import probe_blf, read_blf
from triage.logs.candump import probe_candump, read_candump
from triage.logs.databases import SignalDatabase
from triage.logs.decoding import frame_reader
from triage.logs.edge_times import probe_edge_times, read_edge_times
from triage.logs.frame_tables import probe_frame_table, read_frame_table
from triage.logs.mdf import probe_mdf, read_mdf
from triage.logs.other_frames import probe_sqlite, read_sqlite
from triage.logs.parquet import probe_parquet, read_parquet
from triage.logs.printed_frames import probe_printed, read_printed
from triage.logs.recording import Recording
from triage.logs.source import Source
from triage.logs.tables import probe_table, read_table
from triage.logs.trc import probe_trc, read_trc
from triage.logs.workbooks import probe_workbook, read_workbook
from triage.progress import Progress
from triage.texts import Text, joined

Probe = Callable[[Source], float]
Read = Callable[[Source, SignalDatabase, Progress], Recording]


@dataclass(frozen=True, slots=True)
class LogKind:
    """A kind of file.

    Attributes
    ----------
    id : str
    title : str
        For the user.
    suffixes : tuple of str
        Usual suffixes; they only settle a draw between two probes.
    probe : callable
        Content of the file to confidence, 0 to 1; never raises.
    read : callable
    """

    id: str
    title: str
    suffixes: tuple[str, ...]
    probe: Probe
    read: Read


_SUFFIX_BONUS: Final = 0.05
_ENOUGH: Final = 0.3

READERS: Final[tuple[LogKind, ...]] = (
    LogKind("blf", Text("CAN frames ({kind})", kind="BLF"), (".blf",), probe_blf, frame_reader(read_blf)),
    LogKind("mdf", "MDF", (".mf4", ".mdf", ".dat"), probe_mdf, read_mdf),
    LogKind("parquet", Text("Parquet table"), (".parquet", ".pq"), probe_parquet, read_parquet),
    LogKind("workbook", Text("Excel table"), (".xlsx", ".xlsm"), probe_workbook, read_workbook),
    LogKind(
        "sqlite",
        Text("CAN frames ({kind})", kind="SQLite"),
        (".db", ".sqlite"),
        probe_sqlite,
        frame_reader(read_sqlite),
    ),
    LogKind("asc", Text("CAN frames ({kind})", kind="ASC"), (".asc",), probe_asc, frame_reader(read_asc)),
    LogKind("trc", Text("CAN frames ({kind})", kind="TRC"), (".trc",), probe_trc, frame_reader(read_trc)),
    LogKind(
        "candump",
        Text("CAN frames ({kind})", kind="candump"),
        (".log", ".txt"),
        probe_candump,
        frame_reader(read_candump),
    ),
    LogKind(
        "printed",
        Text("CAN frames ({kind})", kind=Text("printed")),
        (".txt", ".log"),
        probe_printed,
        frame_reader(read_printed),
    ),
    LogKind(
        "frame-table",
        Text("CAN frames ({kind})", kind=Text("table")),
        (".csv", ".txt"),
        probe_frame_table,
        frame_reader(read_frame_table),
    ),
    LogKind("edge-times", Text("edge times"), (".csv", ".tsv", ".txt"), probe_edge_times, read_edge_times),
    LogKind("table", Text("table"), (".csv", ".tsv", ".txt"), probe_table, read_table),
)


def recognise(source: Source) -> LogKind:
    """Find the reader whose probe is surest of the content; the suffix settles a draw.

    Raises
    ------
    UnknownLogFormat
        When none is.
    """
    scored = [
        (_confidence(kind, source) + _SUFFIX_BONUS * (source.suffix in kind.suffixes), kind)
        for kind in READERS
    ]
    score, best = max(scored, key=lambda pair: pair[0])
    if score >= _ENOUGH:
        return best
    what = Text("it is binary of no known kind")
    if source.is_text:
        what = Text("its text has no table of numbers and no frames")
    raise UnknownLogFormat(
        Text("this is no recording that can be read: {what}", what=what),
        file=source.name,
        place=Text("line {number}", number=1) if source.is_text else Text("byte {number}", number=0),
        hint=Text(
            "Choose the recording itself. Known kinds: {known}.",
            known=joined(", ", dict.fromkeys(kind.title for kind in READERS)),
        ),
    )


def _confidence(kind: LogKind, source: Source) -> float:
    try:
        return kind.probe(source)
    except (ValueError, LookupError, TypeError, ArithmeticError, RecursionError):
        return 0.0  # a content that no probe foresaw is not of its kind
