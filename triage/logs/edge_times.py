"""Times of single edges: a table with one column per wheel, or one file per wheel.

The columns have no rows in common: each is the list of instants at which one sensor switched, and the shorter
ones are padded with empty cells. There is no column of time beside them; that tells such a table from one of
pulse counters.
"""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path
from typing import Final

import numpy as np

from triage.logs.clock import mend_clock
from triage.logs.databases import SignalDatabase
from triage.logs.names import read_name
from triage.logs.recording import EDGE_UNIT, RawSignal, Recording
from triage.logs.source import Source
from triage.logs.stamps import names_time
from triage.logs.table_layout import TableLayout, is_number_text, sniff_table
from triage.logs.tables import load_columns_as_text, numbers_of
from triage.logs.unit_texts import TIME_UNIT_S, is_speed_unit
from triage.progress import Progress
from triage.speed_log import FloatArray, Notice
from triage.texts import Text

_EDGE: Final = re.compile(
    r"edge|flank|flanc|fianc|fronte|puls|tick|tooth|teeth|zahn|zähn|zaehn|impuls|dente|diente",
    re.IGNORECASE,
)
_NO_TIME: Final = re.compile(
    r"count|cnt|zähler|zaehler|anzahl|number|index|sum|speed|geschw|vel|freq|hz|rpm|period|width|dauer|error",
    re.IGNORECASE,
)
_UNITS: Final = {
    "s": "s", "sec": "s", "secs": "s", "seconds": "s", "sek": "s",
    "ms": "ms", "msec": "ms", "us": "us", "usec": "us", "µs": "us", "μs": "us", "ns": "ns", "nsec": "ns",
}  # fmt: skip
_RANGES: Final = (("s", 0.1), ("ms", 1e2), ("us", 1e5), ("ns", np.inf))
"""Largest usual distance of two edges in each unit: wheels give some 20 to 2000 edges a second."""

_JUDGED_LINES: Final = 200
_LEAST_NUMBERS: Final = 8


def probe_edge_times(source: Source) -> float:
    """Give the confidence that the file holds times of edges."""
    layout = _layout(source)
    return 0.0 if layout is None or not _edge_columns(layout, source) else 0.9


def read_edge_times(source: Source, _database: SignalDatabase, progress: Progress) -> Recording:
    """Read the instants of the edges, one signal per wheel with the unit ``edge``.

    Raises
    ------
    DamagedLog
        By the caller, when no numbers are there.
    """
    progress(0.05, "reading the edges")
    layout = _layout(source)
    if layout is None:
        return Recording(Text("edge times"), None, ())
    frame = load_columns_as_text(source, layout)
    progress(0.6, "sorting the edges")
    columns = _edge_columns(layout, source)
    values = {index: numbers_of(frame[index], layout.decimal)[0] for index in columns}
    values = {index: value[np.isfinite(value)] for index, value in values.items()}
    signals, notices = [], []
    for index, name in columns.items():
        unit, assumed = _unit(layout, index, list(values.values()))
        mended = mend_clock(values[index] * TIME_UNIT_S[unit])
        notices += mended.notices(source.name)
        edges_s = np.unique(mended.time_s[np.isfinite(mended.time_s)])
        signals.append(RawSignal(name, EDGE_UNIT, edges_s, edges_s))
        if assumed and not any(notice.code == "unit-assumed" for notice in notices):
            text = Text(
                "{name}: the edges have no unit of time; by their distance {unit} was taken.",
                name=source.name,
                unit=unit,
            )
            notices.append(Notice("unit-assumed", text))
    if layout.decimal == ",":
        notices.append(
            Notice(
                "decimal-comma", Text("{name}: numbers are written with a decimal comma.", name=source.name)
            )
        )
    progress(1.0, "reading the edges")
    return Recording(Text("edge times"), None, tuple(signals), tuple(notices))


def _layout(source: Source) -> TableLayout | None:
    layout = sniff_table(source)
    if layout is None and source.is_text:
        layout = _single_column(source)
    return layout if layout is not None and layout.names else None


def _single_column(source: Source) -> TableLayout | None:
    """Lay out a file that is nothing but a heading and one number a line."""
    lines = [line.strip().strip('"') for line in source.head_lines()[:_JUDGED_LINES]]
    first = next((at for at, line in enumerate(lines) if is_number_text(line) and line), None)
    if not first:
        return None
    numbers = [line for line in lines[first:] if line]
    heading = next((line for line in reversed(lines[:first]) if line), "").lstrip("# ")
    if not heading or len(numbers) < _LEAST_NUMBERS or not all(is_number_text(line) for line in numbers):
        return None
    decimal = "," if sum("," in line for line in numbers) > len(numbers) / 2 else "."
    return TableLayout("\t", decimal, (heading,), (), first, tuple((line,) for line in numbers))


def _edge_columns(layout: TableLayout, source: Source) -> dict[int, str]:
    """Find the columns of edge times, with the name each goes by; none when the table is something else."""
    names = dict(enumerate(layout.names))
    edge = {index for index, name in names.items() if _EDGE.search(name) and not _NO_TIME.search(name)}
    rest = set(names) - edge
    if not edge and all(
        names_time(_without_corner(name)) and _corner(name) and not _is_speed(name) for name in names.values()
    ):
        edge, rest = set(names), set()  # nothing but one time per wheel
    if not edge or any(names_time(names[index]) for index in rest):
        return {}
    if not all(_rises(layout, index) for index in edge):
        return {}
    named = {index: _signal_name(names[index], source) for index in sorted(edge)}
    return named if any(_corner(name) for name in named.values()) or len(edge) <= 4 else {}


def _signal_name(name: str, source: Source) -> str:
    """Column name; where it tells no wheel, the name of the file stands before it."""
    stem = Path(source.name).name.split(".")[0]
    return name if _corner(name) else f"{stem} {name}"


def _corner(name: str) -> str | None:
    return read_name(name).corner


def _is_speed(name: str) -> bool:
    return is_speed_unit(read_name(name).unit)


def _without_corner(name: str) -> str:
    return "_".join(read_name(name).words) or "t"


def _rises(layout: TableLayout, index: int) -> bool:
    """Tell whether the first numbers of a column rise; an empty column may be that of a dead wheel."""
    cells = [row[index].strip() for row in layout.sample if row[index].strip()]
    if not all(is_number_text(cell) for cell in cells):
        return False
    value = np.array([float(cell.replace(",", ".")) for cell in cells])
    if not np.isfinite(value).all():
        return False
    return value.size < 2 or (bool((np.diff(value) >= 0.0).mean() > 0.95) and value[-1] > value[0])


def _unit(layout: TableLayout, index: int, values: list[FloatArray]) -> tuple[str, bool]:
    """Tell the unit of time of a column, and whether it had to be judged by the distance of the edges."""
    texts = (layout.units[index] if layout.units else "", layout.names[index])
    for text in texts:
        for word in re.split(r"[\s_.\-\[\](){}<>/,]+", text.strip().lower()):
            if word in _UNITS:
                return _UNITS[word], False
    steps = np.concatenate([np.diff(value) for value in values] or [np.zeros(0)])
    steps = steps[steps > 0.0]
    usual = float(np.median(steps)) if steps.size else 0.0
    return next(unit for unit, most in _RANGES if usual < most), True


def shifted_edges(signal: RawSignal, zero_s: float) -> RawSignal:
    """Return the same edges on a clock that starts at ``zero_s``."""
    edges_s = signal.time_s - zero_s
    return replace(signal, time_s=edges_s, value=edges_s)
