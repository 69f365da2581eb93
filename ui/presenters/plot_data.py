"""All that the plots show of a recording, worked out once so that moving about is quick."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from triage.corners import CORNERS, Corner
from triage.signals.conditioned_log import ConditionedLog
from triage.signals.measurement import Span
from triage.speed_log import FloatArray, SpeedLog
from ui.presenters.marks import Band, LossLane, build_bands, build_loss_lanes
from ui.presenters.traces import TraceLine, build_divergence_lines, build_speed_lines

if TYPE_CHECKING:
    from triage.run import TriageResult


@dataclass(frozen=True, slots=True)
class PlotData:
    """Lines, bands and marks of a recording.

    Attributes
    ----------
    speed, divergence : four TraceLine
        Metres per second and ratios, with the factors to km/h and percent.
    lanes : five LossLane
        One for each wheel, and one for the whole recording.
    whole_s : (float, float)
        First and last instant with a sample; (0, 1) where there are fewer than two.
    conditioned : ConditionedLog
        What is read at the cursor.
    """

    speed: tuple[TraceLine, ...]
    divergence: tuple[TraceLine, ...]
    bands: tuple[Band, ...]
    lanes: tuple[LossLane, ...]
    whole_s: Span
    conditioned: ConditionedLog


def build_plot_data(result: TriageResult) -> PlotData:
    """Return what the plots show of a result; takes a second or so for a day of driving."""
    return PlotData(
        speed=build_speed_lines(result.log),
        divergence=build_divergence_lines(result.conditioned),
        bands=build_bands(result.manoeuvres),
        lanes=build_loss_lanes(result.analysis),
        whole_s=_whole_span(result.log),
        conditioned=result.conditioned,
    )


def _whole_span(log: SpeedLog) -> Span:
    ends = [
        (trace.time_s[valid[[0, -1]]]).tolist()
        for trace in log.wheels.values()
        if (valid := np.flatnonzero(~trace.invalid)).size
    ]
    if not ends:
        return (0.0, 1.0)
    first, last = min(end[0] for end in ends), max(end[1] for end in ends)
    return (first, last) if last > first else (0.0, 1.0)


def next_loss(data: PlotData, corner: Corner, time_s: float, *, step: int) -> Span | None:
    """Return the drop-out of a wheel that follows (``step`` 1) or precedes (-1) an instant; None without one.

    Losses of the whole recording count, as the wheel is lost in them too; dips do not.
    """
    lanes = (data.lanes[CORNERS.index(corner)], data.lanes[len(CORNERS)])
    begin_s = np.concatenate([lane.begin_s for lane in lanes])
    end_s = np.concatenate([lane.end_s for lane in lanes])
    there = np.flatnonzero(begin_s > time_s if step > 0 else begin_s < time_s)
    if not there.size:
        return None
    nearest: FloatArray = np.abs(begin_s[there] - time_s)
    at = there[int(np.argmin(nearest))]
    return (float(begin_s[at]), float(end_s[at]))
