"""Companion channels in SI with the signs of ISO 8855, and whether they can be believed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Final

import numpy as np

from triage.corners import CORNERS, Corner
from triage.logs.clock import even_times, order_samples
from triage.logs.mapping import Candidate
from triage.logs.pulse_unwrapping import unwrap_counters
from triage.logs.signs import against_wheels, stated_sign
from triage.logs.unit_texts import CHANNEL_FACTORS
from triage.speed_log import Channel, FloatArray, Notice, SpeedTrace
from triage.texts import Text
from triage.units import LINEAR_SPEED_MPS

_SIGNED: Final = ("steering_rad", "yaw_rate_radps", "lateral_mps2", "longitudinal_mps2")
_AGREES_RATIO: Final = 0.06
_STEERING_TURN_RAD: Final = 15.0
"""No steering wheel turns further from the middle (some two and a half turns); larger numbers are degrees."""

_STUCK_AFTER_S: Final = 10.0
_BRAKING_MPS2: Final = 1.5
_PULSES: Final[dict[str, Corner]] = {f"pulses_{corner}": corner for corner in CORNERS}


def build_companions(
    chosen: Mapping[str, Candidate], traces: Mapping[Corner, SpeedTrace], zero_s: float
) -> tuple[dict[str, Channel], list[Notice]]:
    """Build every companion channel that can be used.

    Parameters
    ----------
    chosen : mapping of channel name to Candidate
    traces : mapping of corner to SpeedTrace
        To judge units and signs against.
    zero_s : float
        What to take off the clock.

    Returns
    -------
    (dict of Channel, list of Notice)
        Channels left out for a reason are named in the notices.
    """
    channels: dict[str, Channel] = {}
    counters: dict[Corner, Channel] = {}
    notices: list[Notice] = []
    for role, candidate in chosen.items():
        samples = order_samples(candidate.signal.time_s - zero_s, candidate.signal.value)
        keep = ~np.isnan(samples.value)
        channel = Channel(samples.time_s[keep], samples.value[keep], candidate.signal.label)
        if role in _PULSES:
            counters[_PULSES[role]] = channel
            continue
        built = _built(role, channel, candidate, traces)
        notices += built[1]
        if built[0] is not None:
            channels[role] = built[0]
    unwrapped, found = unwrap_counters(counters, traces)
    channels |= {f"pulses_{corner}": channel for corner, channel in unwrapped.items()}
    return channels, [*notices, *found]


_Built = tuple[Channel | None, list[Notice]]


def _built(role: str, channel: Channel, candidate: Candidate, traces: Mapping[Corner, SpeedTrace]) -> _Built:
    if role.startswith("fault_"):
        return channel if _is_binary(channel.value) else None, []
    if role == "brake":
        return _brake(channel, traces)
    factor = _factor(role, channel, candidate.sense.unit, traces)
    if factor is None:
        text = Text(
            "{source} could be {role}, but its unit is not known; it was left out.",
            source=channel.source,
            role=role,
        )
        return None, [Notice("unit-doubtful", text)]
    scaled = _scaled(channel, channel.value * factor)
    if _stands_still(scaled) and _moving_s(traces) > _STUCK_AFTER_S:
        text = Text("{source} never changes although the car drives; it was left out.", source=channel.source)
        return None, [Notice("stuck-channel", text)]
    return _with_sign(role, scaled, traces) if role in _SIGNED else (scaled, [])


def _scaled(channel: Channel, value: FloatArray) -> Channel:
    return Channel(channel.time_s, value, channel.source)


def _is_binary(value: FloatArray) -> bool:
    return bool(np.isin(np.unique(value[:1_000_000]), (0.0, 1.0)).all())


def _brake(channel: Channel, traces: Mapping[Corner, SpeedTrace]) -> _Built:
    if not _is_binary(channel.value):
        return None, []
    if _stands_still(channel) and _brakes(traces):
        text = Text("{source} never changes although the car brakes; it was left out.", source=channel.source)
        return None, [Notice("stuck-channel", text)]
    return channel, []


def _stands_still(channel: Channel) -> bool:
    return channel.value.size > 1 and float(np.ptp(channel.value)) == 0.0


def _brakes(traces: Mapping[Corner, SpeedTrace]) -> bool:
    """Two wheels or more lose speed fast for half a second."""
    count = 0
    for trace in traces.values():
        time_s, speed = trace.time_s[~trace.invalid], trace.speed_mps[~trace.invalid]
        if time_s.size < 10 or np.ptp(time_s) < 2.0:
            continue
        grid = even_times(float(time_s[0]), float(time_s[-1]), 0.25)
        smooth = np.interp(grid, time_s, speed)
        count += bool(((smooth[:-2] - smooth[2:]) / 0.5 > _BRAKING_MPS2).any())
    return count >= 2


def _moving_s(traces: Mapping[Corner, SpeedTrace]) -> float:
    spans = []
    for trace in traces.values():
        time_s, speed = trace.time_s[~trace.invalid], trace.speed_mps[~trace.invalid]
        spans.append(float(np.diff(time_s)[speed[1:] > 1.0].sum()) if time_s.size > 1 else 0.0)
    return float(np.median(spans))


def _factor(role: str, channel: Channel, unit: str, traces: Mapping[Corner, SpeedTrace]) -> float | None:
    """SI value of one unit; judged where the log does not state the unit."""
    known = CHANNEL_FACTORS[role]
    if unit in known:
        return known[unit]
    if unit or not channel.value.size:
        return None
    if role == "steering_rad":
        return known["deg"] if float(np.abs(channel.value).max()) > _STEERING_TURN_RAD else None
    return _factor_by_wheels(role, channel, traces)


def _factor_by_wheels(role: str, channel: Channel, traces: Mapping[Corner, SpeedTrace]) -> float | None:
    if role != "reference_mps":
        ratio = against_wheels(role, channel, traces)
        known = CHANNEL_FACTORS[role].values()
        fits = [f for f in known if ratio is not None and 0.6 < abs(ratio.slope) / f < 1.6 and ratio.decided]
        return fits[0] if len(fits) == 1 else None
    speeds = [
        np.interp(channel.time_s, trace.time_s[~trace.invalid], trace.speed_mps[~trace.invalid])
        for trace in traces.values()
        if trace.valid_count > 1
    ]
    middle = np.median(np.asarray(speeds), axis=0)
    moving = (middle > 3.0) & (channel.value > 0)
    if np.count_nonzero(moving) < 10:
        return None
    ratio_mps = float(np.median(middle[moving] / channel.value[moving]))
    fits = [f for f in LINEAR_SPEED_MPS.values() if abs(ratio_mps / f - 1) < _AGREES_RATIO]
    return fits[0] if fits else None


def _with_sign(role: str, channel: Channel, traces: Mapping[Corner, SpeedTrace]) -> _Built:
    """Bring a channel to ISO signs: by what the log states, else by the wheels.

    Wheels whose left and right are exchanged turn the other way than the car does. A sign that the log states
    is therefore kept against them; one that nobody states is turned, and marked, for then nothing tells which
    is wrong.
    """
    stated = stated_sign(role, channel.source)
    relation = against_wheels(role, channel, traces)
    against = relation is not None and relation.decided and relation.slope * (stated or 1) < 0
    if stated:
        kept = channel if stated > 0 else _scaled(channel, -channel.value)
        return kept, [_contradiction(role, channel.source)] if against else []
    if not against:
        return channel, []
    turned = replace(channel, value=-channel.value, turned=role != "longitudinal_mps2")
    return turned, [_turned_round(role, channel.source)]


def _contradiction(role: str, source: str) -> Notice:
    if role == "longitudinal_mps2":
        text = Text("{source}: the wheels change speed the other way than this channel says.", source=source)
    else:
        text = Text(
            "{source}: the wheels turn the other way than this channel says, whose "
            "positive side is stated; left and right may be exchanged, or the statement "
            "is wrong.",
            source=source,
        )
    return Notice("sign-doubtful", text)


def _turned_round(role: str, source: str) -> Notice:
    witness, other = (
        ("change of speed", "backwards")
        if role == "longitudinal_mps2"
        else ("left-right difference", "to the right (or left and right are exchanged on both axles)")
    )
    text = Text(
        "{source}: by the wheels' own {witness} this channel is positive {other}; its sign was turned round.",
        source=source,
        witness=witness,
        other=other,
    )
    return Notice("sign-doubtful", text)
