"""Wheel speeds from the times of single edges, so that such a recording takes the same way as any other."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from triage.corners import CORNER_NAMES, CORNERS, Corner
from triage.edge_train import PoleCount, find_pole_count, number_edges
from triage.errors import DamagedLog, SignalMappingError
from triage.logs.edge_times import shifted_edges
from triage.logs.names import read_name
from triage.logs.options import ReadOptions
from triage.logs.recording import EDGE_UNIT, RawSignal, Recording
from triage.speed_log import FloatArray, HistoryStep, Notice
from triage.texts import Text
from triage.units import format_share

CYCLE_S: Final = 0.01
"""Speeds are formed every 10 ms, as a usual control unit does."""

STANDS_AFTER_S: Final = 1.0
"""Between edges further apart than this the wheel counts as standing (0.04 m/s with 48 edges)."""

NOMINAL_CIRCUMFERENCE_M: Final = 2.0
NOMINAL_EDGES: Final = 48
SURE: Final = 0.95
_NEAR_ZERO_S: Final = 60.0
_MOST_CYCLES: Final = 3_000_000


@dataclass(frozen=True, slots=True)
class EdgeSpeeds:
    """A recording of edges made ready for building a log.

    Attributes
    ----------
    recording : Recording
        With speeds in m/s in the place of the edges.
    options : ReadOptions
        With the choice of signals settled.
    edges : mapping of corner to float64[M]
        The edges on the clock of the recording.
    history : tuple of HistoryStep
    """

    recording: Recording
    options: ReadOptions
    edges: Mapping[Corner, FloatArray]
    history: tuple[HistoryStep, ...]


def form_edge_speeds(recording: Recording, options: ReadOptions, file: str) -> EdgeSpeeds | None:
    """Form the speed of every wheel from its edges.

    Parameters
    ----------
    recording : Recording
        All parts, joined.
    options : ReadOptions
        Circumference and pulses of a turn, where known.
    file : str
        For messages.

    Returns
    -------
    EdgeSpeeds or None
        None when the recording holds no edges.

    Raises
    ------
    SignalMappingError
        When it is not certain which column belongs to which wheel.
    DamagedLog
        When the times span more than eight hours.

    Notes
    -----
    The speed of a cycle is the turn of the wheel within it, the edges joined by straight lines, over its
    length. A lost edge shows as half the speed from one edge to the next, as it does to a control unit that
    times edges. How many edges make a turn is found from what repeats (:mod:`triage.edge_train`); the number
    of the vehicle file serves when nothing does. Without a circumference 2 m are assumed, which is said.
    """
    found = [signal for signal in recording.signals if signal.unit == EDGE_UNIT]
    if not found:
        return None
    chosen = _choose(found, options.mapping, file)
    first_s = min((float(one.time_s[0]) for one in chosen.values() if one.time_s.size), default=0.0)
    zero_s = 0.0 if abs(first_s) <= _NEAR_ZERO_S else first_s
    chosen = {corner: shifted_edges(signal, zero_s) for corner, signal in chosen.items()}
    edges = {corner: signal.time_s for corner, signal in chosen.items()}
    count = find_pole_count([number_edges(edges[corner]) for corner in CORNERS])
    pitch_m, notices, detail = _pitch(count, options, file)
    grid_s = _grid(edges, file)
    speeds = tuple(_speed_signal(chosen[corner], grid_s, pitch_m) for corner in CORNERS)
    others = tuple(signal for signal in recording.signals if signal.unit != EDGE_UNIT)
    ready = replace(recording, signals=(*speeds, *others), notices=(*recording.notices, *notices))
    mapping = {corner: chosen[corner].name for corner in CORNERS}
    steps = (HistoryStep(Text("speeds from edges"), detail),)
    return EdgeSpeeds(ready, replace(options, mapping=mapping, unit="m/s"), edges, steps)


def _choose(found: list[RawSignal], mapping: Mapping[Corner, str], file: str) -> dict[Corner, RawSignal]:
    chosen: dict[Corner, RawSignal] = {}
    for corner in CORNERS:
        if corner in mapping:
            wanted = mapping[corner].strip().lower()
            fitting = [one for one in found if one.name.strip().lower() == wanted]
        else:
            fitting = [one for one in found if read_name(one.name).corner == corner]
        if len(fitting) != 1:
            what = (
                Text("several columns of edges fit the {wheel} wheel ({corner}); columns of edges: {found}")
                if fitting
                else Text(
                    "no column of edges was found for the {wheel} wheel ({corner}); columns of edges: {found}"
                )
            )
            raise SignalMappingError(
                Text(
                    what,
                    wheel=CORNER_NAMES[corner],
                    corner=corner,
                    found=", ".join(one.name for one in found[:12]),
                ),
                candidates=tuple(one.name for one in found),
                file=file,
                hint="Name the wheels with --map FL=NAME and so on, or give the files of all four wheels.",
            )
        chosen[corner] = fitting[0]
    if len({one.name for one in chosen.values()}) < len(CORNERS):
        raise SignalMappingError(
            "one column of edges would serve for two wheels",
            candidates=tuple(one.name for one in found),
            file=file,
            hint="Name another column with --map.",
        )
    return chosen


def _pitch(count: PoleCount | None, options: ReadOptions, file: str) -> tuple[float, list[Notice], str]:
    """Metres per edge, what to say about it, and how it came about."""
    edges, how, notices = _edges_per_rev(count, options, file)
    circumference_m = options.circumference_m
    if circumference_m is None:
        circumference_m = NOMINAL_CIRCUMFERENCE_M
        text = Text(
            "{file}: the circumference of the wheels is not known; {circumference_m} m "
            "were assumed, so that speeds are right only in proportion ({edges} edges a "
            "turn, {how}). State it with --tyre-radius or --vehicle.",
            file=file,
            circumference_m=f"{circumference_m:g}",
            edges=edges,
            how=how,
        )
        notices.append(Notice("unit-assumed", text))
    return circumference_m / edges, notices, f"{edges} edges a turn, {how}; {circumference_m:g} m a turn"


def _edges_per_rev(count: PoleCount | None, options: ReadOptions, file: str) -> tuple[int, str, list[Notice]]:
    known = None if options.pulses_per_rev is None else max(round(options.pulses_per_rev), 1)
    if count is not None and count.probability >= SURE:
        how = f"found from what repeats, {format_share(count.probability)} sure"
        if known is None or count.edges_per_rev in (known, 2 * known):
            return count.edges_per_rev, how, []
        text = Text(
            "{file}: the vehicle file states {known} pulses a turn, but the edges repeat "
            "after {edges}; the latter was taken.",
            file=file,
            known=known,
            edges=count.edges_per_rev,
        )
        return count.edges_per_rev, how, [Notice("unit-doubtful", text)]
    if known is not None:
        return known, "by the vehicle file", []
    text = Text(
        "{file}: how many edges make a turn does not show; {edges} were assumed. State "
        "pulses_per_rev in a vehicle file and give it with --vehicle.",
        file=file,
        edges=NOMINAL_EDGES,
    )
    return NOMINAL_EDGES, "assumed", [Notice("unit-assumed", text)]


def _grid(edges: Mapping[Corner, FloatArray], file: str) -> FloatArray:
    """Bounds of the cycles over all wheels."""
    there = [one for one in edges.values() if one.size]
    if not there:
        return np.zeros(0)
    first, last = min(float(one[0]) for one in there), max(float(one[-1]) for one in there)
    if (last - first) / CYCLE_S > _MOST_CYCLES:
        raise DamagedLog(
            Text(
                "the edges span {value} hours; their unit of time may be another",
                value=f"{(last - first) / 3600.0:.0f}",
            ),
            file=file,
            hint="Name the unit in the heading, such as FL_edge_us.",
        )
    cycles = np.arange(int((last - first) / CYCLE_S) + 1, dtype=np.float64)
    return np.asarray(first + CYCLE_S * cycles, dtype=np.float64)


def _speed_signal(edge: RawSignal, grid_s: FloatArray, pitch_m: float) -> RawSignal:
    middle_s = (grid_s[1:] + grid_s[:-1]) / 2.0
    return RawSignal(edge.name, "m/s", middle_s, _speeds(edge.time_s, grid_s, pitch_m))


def _speeds(edges_s: FloatArray, grid_s: FloatArray, pitch_m: float) -> FloatArray:
    if edges_s.size < 2 or grid_s.size < 2:
        return np.zeros(max(grid_s.size - 1, 0))
    place = np.interp(grid_s, edges_s, np.arange(edges_s.size, dtype=np.float64))
    speed = np.diff(place) * pitch_m / np.diff(grid_s)
    middle_s = (grid_s[1:] + grid_s[:-1]) / 2.0
    after = np.clip(np.searchsorted(edges_s, middle_s), 1, edges_s.size - 1)
    stands = edges_s[after] - edges_s[after - 1] > STANDS_AFTER_S
    return np.asarray(np.where(stands, 0.0, speed), dtype=np.float64)
