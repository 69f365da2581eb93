"""Companion channels in SI with the signs of ISO 8855, and whether they can be believed."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Final

import numpy as np

from triage.corners import Corner
from triage.logs.clock import order_samples
from triage.logs.mapping import Candidate
from triage.logs.signs import against_wheels
from triage.logs.unit_texts import CHANNEL_FACTORS
from triage.speed_log import BoolArray, Channel, FloatArray, Notice, SpeedTrace
from triage.units import LINEAR_SPEED_MPS

_SIGNED: Final = ("steering_rad", "yaw_rate_radps", "lateral_mps2", "longitudinal_mps2")
_AGREES_RATIO: Final = 0.06
_STEERING_TURN_RAD: Final = 15.0
"""No steering wheel turns further from the middle (some two and a half turns); larger numbers are degrees."""

_STUCK_AFTER_S: Final = 10.0
_BRAKING_MPS2: Final = 1.5
_MODULUS_MIN: Final = 16.0


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
    notices: list[Notice] = []
    for role, candidate in chosen.items():
        samples = order_samples(candidate.signal.time_s - zero_s, candidate.signal.value)
        keep = ~np.isnan(samples.value)
        channel = Channel(samples.time_s[keep], samples.value[keep], candidate.signal.label)
        built = _built(role, channel, candidate, traces)
        notices += built[1]
        if built[0] is not None:
            channels[role] = built[0]
    return channels, notices


_Built = tuple[Channel | None, list[Notice]]


def _built(role: str, channel: Channel, candidate: Candidate, traces: Mapping[Corner, SpeedTrace]) -> _Built:
    if role.startswith("pulses_"):
        return _scaled(channel, unwrapped_count(channel.value)), []
    if role.startswith("fault_"):
        return channel if _is_binary(channel.value) else None, []
    if role == "brake":
        return _brake(channel, traces)
    factor = _factor(role, channel, candidate.sense.unit, traces)
    if factor is None:
        text = f"{channel.source} could be {role}, but its unit is not known; it was left out."
        return None, [Notice("unit-doubtful", text)]
    scaled = _scaled(channel, channel.value * factor)
    if _stands_still(scaled) and _moving_s(traces) > _STUCK_AFTER_S:
        text = f"{channel.source} never changes although the car drives; it was left out."
        return None, [Notice("stuck-channel", text)]
    return _with_sign(role, scaled, traces) if role in _SIGNED else (scaled, [])


def unwrapped_count(count: FloatArray) -> FloatArray:
    """Let a pulse counter run on over its overflow.

    Parameters
    ----------
    count : float64[N]
        Counter as recorded, in the order of time.

    Returns
    -------
    float64[N]
        Rising count from the first value.

    Notes
    -----
    The modulus is judged from the numbers: a power of two, one less (counters that keep the top code for
    "not available"), or one more than the largest number seen, whichever makes the steps over the overflow
    most like the steps beside them.
    """
    step = np.diff(count)
    falls = step < -0.5 * np.ptp(count) if count.size else step < 0
    if not falls.any() or np.ptp(count) < _MODULUS_MIN:
        return count
    whole = np.where(falls, step + _modulus(count, step, falls), step)
    unwrapped: FloatArray = np.concatenate((count[:1], count[0] + np.cumsum(whole)))
    return unwrapped


def _modulus(count: FloatArray, step: FloatArray, falls: BoolArray) -> float:
    top = float(count.max())
    power = 2.0 ** math.ceil(math.log2(top + 1))
    candidates: list[float] = sorted({top + 1, power, *((power - 1,) if power - 1 > top else ())})
    overflow = np.flatnonzero(falls)
    usual = np.array([_usual_step(step, falls, int(index)) for index in overflow])
    error = [abs(float(np.nanmean(step[overflow] + modulus - usual))) for modulus in candidates]
    return candidates[int(np.argmin(error))]


def _usual_step(step: FloatArray, falls: BoolArray, index: int) -> float:
    """Middle of the steps beside an overflow; the overall one where there are none."""
    near = slice(max(index - 3, 0), index + 4)
    beside = step[near][~falls[near]]
    return float(np.mean(beside if beside.size else step[~falls])) if (~falls).any() else 0.0


def _scaled(channel: Channel, value: FloatArray) -> Channel:
    return Channel(channel.time_s, value, channel.source)


def _is_binary(value: FloatArray) -> bool:
    return bool(np.isin(np.unique(value[:1_000_000]), (0.0, 1.0)).all())


def _brake(channel: Channel, traces: Mapping[Corner, SpeedTrace]) -> _Built:
    if not _is_binary(channel.value):
        return None, []
    if _stands_still(channel) and _brakes(traces):
        text = f"{channel.source} never changes although the car brakes; it was left out."
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
        grid = np.arange(time_s[0], time_s[-1], 0.25)
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
    """Turn a channel round when the wheels say that it is positive to the other side."""
    relation = against_wheels(role, channel, traces)
    if relation is None or not relation.decided or relation.slope > 0:
        return channel, []
    witness, other = (
        ("change of speed", "backwards")
        if role == "longitudinal_mps2"
        else ("left-right difference", "to the right")
    )
    text = (
        f"{channel.source}: by the wheels' own {witness} this channel is positive {other}; "
        "its sign was turned round."
    )
    return _scaled(channel, -channel.value), [Notice("sign-doubtful", text)]
