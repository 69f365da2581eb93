"""Companion channels of a recording as lines in the units of the road."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from triage.speed_log import BoolArray, Channel, FloatArray, SpeedLog
from triage.texts import Text
from triage.units import KMH
from ui.presenters.traces import GAP_PERIODS

CHANNEL_GAP_S: Final = 0.25
"""Companions come at slower rates than wheels: holes up to this length are never left open."""

_DEGREES: Final = 180.0 / np.pi

SHOWN: Final[dict[str, tuple[str, str, float, str]]] = {
    "yaw_rate_radps": (
        Text("Yaw rate"),
        "°/s",
        _DEGREES,
        Text("How fast the car turns about its upright axis; left is +."),
    ),
    "steering_rad": (
        Text("Steering"),
        "°",
        _DEGREES,
        Text("Angle of the steering as recorded; left is +."),
    ),
    "lateral_mps2": (
        Text("Sideways"),
        "m/s²",
        1.0,
        Text("Acceleration of the car across the road; to the left is +."),
    ),
    "longitudinal_mps2": (
        Text("Lengthwise"),
        "m/s²",
        1.0,
        Text("Acceleration of the car along the road; forwards is +."),
    ),
    "brake": (Text("Brake"), "0/1", 1.0, Text("1 while the brake is applied.")),
    "reference_mps": (
        Text("Car speed"),
        "km/h",
        1.0 / KMH,
        Text("Speed of the car as the control unit gives it."),
    ),
}
"""Title, unit, factor from SI and a sentence for each channel that can be drawn."""


@dataclass(frozen=True, slots=True)
class CompanionLine:
    """One channel ready to be drawn.

    Attributes
    ----------
    time_s, value : float64[N]
        Seconds of the log and values in ``unit``, all finite.
    joined : bool[N]
        Whether the line goes on from sample i to sample i + 1.
    help : str
        What the channel is, in a sentence.
    """

    name: str
    title: str
    unit: str
    help: str
    time_s: FloatArray
    value: FloatArray
    joined: BoolArray


def build_companion_lines(log: SpeedLog) -> tuple[CompanionLine, ...]:
    """Return the channels that the log has, in a fixed order."""
    return tuple(
        line
        for name in SHOWN
        if name in log.channels and (line := _line(name, log.channels[name])).time_s.size
    )


def thin_line(line: CompanionLine, begin_s: float, end_s: float, *, columns: int) -> CompanionLine:
    """Return what of a line can be seen in so many columns of pixels: lowest and highest of each column.

    Parameters
    ----------
    begin_s, end_s : float
        Seconds in view; one sample beyond on either side is kept.
    columns : int
    """
    first = max(int(np.searchsorted(line.time_s, begin_s)) - 1, 0)
    stop = int(np.searchsorted(line.time_s, end_s, side="right")) + 1
    time_s, value, joined = line.time_s[first:stop], line.value[first:stop], line.joined[first:stop]
    if time_s.size > 2 * columns:
        starts = np.unique(np.linspace(0, time_s.size, columns, endpoint=False).astype(np.intp))
        lowest, highest = np.minimum.reduceat(value, starts), np.maximum.reduceat(value, starts)
        whole = np.logical_and.reduceat(joined, starts)
        time_s = np.repeat(time_s[starts], 2)
        value = np.stack((lowest, highest), axis=1).ravel()
        joined = np.stack((np.ones_like(whole), whole), axis=1).ravel()
    return replace(line, time_s=time_s, value=value, joined=joined)


def _line(name: str, channel: Channel) -> CompanionLine:
    title, unit, factor, text = SHOWN[name]
    kept = np.isfinite(channel.value)
    time_s = channel.time_s[kept]
    step_s = np.diff(time_s)
    limit_s = max(CHANNEL_GAP_S, GAP_PERIODS * float(np.median(step_s))) if step_s.size else CHANNEL_GAP_S
    joined = np.zeros(time_s.size, dtype=np.bool_)
    joined[:-1] = step_s <= limit_s
    told = Text("{what} Read from {source}.", what=text, source=channel.source)
    if channel.turned:
        told = Text("{what} Its sign was turned round to fit the wheels.", what=told)
    return CompanionLine(
        name,
        title,
        unit,
        told,
        time_s,
        factor * channel.value[kept],
        joined,
    )
