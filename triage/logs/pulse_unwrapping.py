"""Letting pulse counters run on over their overflow, with the modulus found from the numbers.

Control units send counters of 8 to 16 bits. Both 2^n and 2^n - 1 occur (the top code may be kept for "not
available"), and a fast wheel or a missed frame can pass the overflow several times between two samples.
The speeds of the wheels tell about how many pulses to expect, which settles the number of overflows.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.corners import CORNERS, Corner
from triage.speed_log import Channel, FloatArray, Notice, SpeedTrace
from triage.texts import Text

_DENSEST_PER_M: Final = 300.0
_DENSITY_STEP: Final = 1.0
"""Pulses per metre that are tried; a car has 12 to 120 (40 to 200 per turn), a wrong unit of speed up to 3.6
times that."""

_JUDGED_SAMPLES: Final = 4000
_LOCAL_SAMPLES: Final = 7
_LEAST_FALL: Final = 8.0
"""A counter that never falls by more than this runs on (a wheel may roll back a little)."""

_WAY_STD_RATIO: Final = 0.1
_WAY_STD_MPS: Final = 0.5
"""Standard uncertainty of the way between two samples: a tenth for curves and tyres, and half a metre per
second for the unknown course of the speed in a gap (judgement)."""

_SURE: Final = 0.95
_BEYOND_ALL_COUNTERS: Final = 2.0**64
_CODES: Final = (
    *(float(2**bits) for bits in range(4, 33)),
    *(float(2**bits - 1) for bits in range(5, 33)),
    *(10.0**digits for digits in range(2, 7)),
)


@dataclass(frozen=True, slots=True)
class _Counter:
    """One counter as recorded, with the way the car ran between its samples."""

    channel: Channel
    step: FloatArray
    way_m: FloatArray
    pause_s: FloatArray


@dataclass(frozen=True, slots=True)
class _Modulus:
    value: float
    probability: float
    rival: float


def unwrap_counters(
    counters: Mapping[Corner, Channel], traces: Mapping[Corner, SpeedTrace]
) -> tuple[dict[Corner, Channel], list[Notice]]:
    """Give every counter as a running count.

    Parameters
    ----------
    counters : mapping of corner to Channel
        Counters as recorded, in the order of time.
    traces : mapping of corner to SpeedTrace
        Speeds of all wheels; their middle tells how many pulses to expect.

    Returns
    -------
    (dict of Channel, list of Notice)
        Counts from the first recorded value on. ``counter-reset`` tells of counters that started anew,
        ``counter-doubtful`` of a modulus or of gaps that could not be settled, ``stuck-channel`` of a counter
        that stands still although the car drives.

    Notes
    -----
    All counters come from one control unit and share one modulus. It is the weighted mean of what is missing
    at each overflow, compared with 2^n, 2^n - 1, powers of ten and one more than the largest number seen; a
    code never seen although the counter passed it many times speaks against the larger modulus.

    Where the count over an overflow does not fit the way (more than six standard deviations and a third of
    the pulses expected), the counter started anew: the pulses expected are put in.
    """
    known = {corner: _counter(channel, traces) for corner, channel in counters.items() if channel.value.size}
    moving = {corner: one for corner, one in known.items() if float(np.ptp(one.channel.value)) > 0.0}
    notices = _stuck_notices(known, moving)
    density = {corner: _density_per_m(one) for corner, one in moving.items()}
    modulus = _common_modulus(moving, density)
    unwrapped = {corner: one.channel for corner, one in known.items() if corner not in moving and moving}
    for corner, one in moving.items():
        if modulus is None or not _overflows(one):
            unwrapped[corner] = one.channel
            continue
        value, found = _run_on(one, density[corner], modulus.value)
        unwrapped[corner] = Channel(one.channel.time_s, value, one.channel.source)
        notices += found
    if modulus is not None and modulus.probability < _SURE:
        text = Text(
            "the pulse counters overflow at {value} or at {rival}; {value2} was taken, "
            "which the numbers fit better.",
            value=f"{modulus.value:.0f}",
            rival=f"{modulus.rival:.0f}",
            value2=f"{modulus.value:.0f}",
        )
        notices.append(Notice("counter-doubtful", text))
    return {corner: unwrapped[corner] for corner in CORNERS if corner in unwrapped}, notices


def _counter(channel: Channel, traces: Mapping[Corner, SpeedTrace]) -> _Counter:
    return _Counter(
        channel,
        np.diff(channel.value),
        np.diff(_way_m(channel.time_s, traces)),
        np.diff(channel.time_s),
    )


def _way_m(time_s: FloatArray, traces: Mapping[Corner, SpeedTrace]) -> FloatArray:
    """Way of the car at the given instants: the middle of the wheels, integrated."""
    valid = [(t.time_s[~t.invalid], t.speed_mps[~t.invalid]) for t in traces.values() if t.valid_count > 1]
    if not valid:
        return np.asarray(time_s - time_s[0], dtype=np.float64)
    grid_s = max(valid, key=lambda pair: pair[0].size)[0]
    speed = np.median([np.interp(grid_s, own_s, own) for own_s, own in valid], axis=0)
    way = np.concatenate(([0.0], np.cumsum(np.diff(grid_s) * (speed[1:] + speed[:-1]) / 2.0)))
    inside = np.interp(time_s, grid_s, way)
    before, after = np.minimum(time_s - grid_s[0], 0.0), np.maximum(time_s - grid_s[-1], 0.0)
    return np.asarray(inside + before * speed[0] + after * speed[-1], dtype=np.float64)


def _overflows(one: _Counter) -> bool:
    return bool((one.step < -_LEAST_FALL).any())


def _density_per_m(one: _Counter) -> float:
    """Pulses per metre at which the steps, modulo the range of the counter, fit the way best.

    The steps are turned into angles on a circle of one range, so that it does not matter how many overflows
    lie between two samples.
    """
    used = (one.way_m > 0.0) & (one.step != 0.0)
    if not used.any():
        return 0.0
    pick = np.flatnonzero(used)[:: max(1, int(np.count_nonzero(used)) // _JUDGED_SAMPLES)]
    step, way_m = one.step[pick], one.way_m[pick]
    turn = 2.0 * np.pi / (float(one.channel.value.max() - one.channel.value.min()) + 1.0)
    trial = np.arange(_DENSITY_STEP, _DENSEST_PER_M, _DENSITY_STEP)
    fit = np.array([float(np.cos(turn * (step - density * way_m)).mean()) for density in trial])
    # a density and its neighbour fit equally well when a step is a small part of the range
    best = trial[int(np.argmax(fit))]
    for _ in range(3):
        miss = np.angle(np.exp(1j * turn * (step - best * way_m))) / turn
        best = best + float(np.median(miss / way_m))
    return max(float(best), 0.0)


def _common_modulus(moving: Mapping[Corner, _Counter], density: Mapping[Corner, float]) -> _Modulus | None:
    """Weigh the possible moduli by all counters together."""
    falling = {corner: one for corner, one in moving.items() if _overflows(one)}
    if not falling:
        return None
    top = max(float(one.channel.value.max()) for one in falling.values())
    if top >= _BEYOND_ALL_COUNTERS:
        return None
    seen = [_missing_at_overflow(one, density[corner], top + 1.0) for corner, one in falling.items()]
    weight = np.array([1.0 / std**2 for _, std, _, _ in seen])
    mean = float(np.array([value for value, _, _, _ in seen]) @ weight / weight.sum())
    std = float(1.0 / np.sqrt(weight.sum()))
    passes, usual_step = sum(count for _, _, count, _ in seen), float(np.median([row[3] for row in seen]))
    candidates = sorted({top + 1.0, *(code for code in _CODES if top < code <= 4.0 * (top + 1.0))})
    score = np.array(
        [
            -0.5 * ((mean - code) / std) ** 2
            + passes * np.log1p(-min(0.999, (code - 1.0 - top) / max(usual_step, 1.0)))
            for code in candidates
        ]
    )
    share = np.exp(score - score.max())
    share /= share.sum()
    order = np.argsort(-share)
    rival = candidates[int(order[1])] if len(candidates) > 1 else candidates[0]
    return _Modulus(candidates[int(order[0])], float(share[order[0]]), rival)


def _missing_at_overflow(
    one: _Counter, density_per_m: float, rough: float
) -> tuple[float, float, int, float]:
    """Average what is missing at each overflow: mean, its uncertainty, overflows, usual step there."""
    expected = _expected(one, density_per_m, rough)
    falls = one.step < -_LEAST_FALL
    wraps = np.maximum(np.round((expected - one.step) / rough), 1.0)
    each = (expected - one.step)[falls] / wraps[falls]
    middle = float(np.median(each))
    near = np.abs(each - middle) < max(4.0, 4.0 * float(np.median(np.abs(each - middle))))
    spread = float(np.std(each[near])) if np.count_nonzero(near) > 2 else 1.0
    count = int(np.count_nonzero(near))
    std = max(spread, 0.3) / np.sqrt(count) + 0.02
    return float(np.mean(each[near])), float(std), count, float(np.median(expected[falls]))


def _expected(one: _Counter, density_per_m: float, modulus: float) -> FloatArray:
    """Pulses to expect in every step: way times density, the density followed from sample to sample."""
    plain = density_per_m * one.way_m
    counted = one.step + modulus * _wraps(one.step, plain, modulus)
    sound = (np.abs(counted - plain) < 0.35 * plain + 3.0) & (one.step >= 0.0)
    window = np.ones(_LOCAL_SAMPLES)
    near = np.convolve(np.where(sound, counted, 0.0), window, mode="same")[: plain.size]
    base = np.convolve(np.where(sound, plain, 0.0), window, mode="same")[: plain.size]
    enough = base > 4.0
    ratio = np.where(enough, near / np.where(enough, base, 1.0), 1.0)
    return np.asarray(plain * ratio, dtype=np.float64)


def _wraps(step: FloatArray, expected: FloatArray, modulus: float) -> FloatArray:
    least = np.ceil(np.maximum(-step - _LEAST_FALL, 0.0) / modulus)
    likely = np.round((expected - step) / modulus)
    return np.asarray(np.where(expected > modulus / 2.0, np.maximum(likely, least), least), dtype=np.float64)


def _run_on(one: _Counter, density_per_m: float, modulus: float) -> tuple[FloatArray, list[Notice]]:
    expected = _expected(one, density_per_m, modulus)
    whole = one.step + modulus * _wraps(one.step, expected, modulus)
    miss = whole - expected
    noise = 1.4826 * float(np.median(np.abs(miss)))
    tolerance = 6.0 * max(noise, 0.5) + 0.35 * expected + _WAY_STD_MPS * one.pause_s * density_per_m
    anew = (one.step < -_LEAST_FALL) & (np.abs(miss) > tolerance)
    anew |= miss > np.maximum(200.0, 3.0 * expected + tolerance)
    whole = np.where(anew, np.round(expected), whole)
    doubtful = density_per_m * _way_std_m(one) > modulus / 4.0
    notices = []
    if anew.any():
        count = int(np.count_nonzero(anew))
        at = float(one.channel.time_s[1:][anew][0])
        text = Text(
            "{source} started anew {times}, first at {at} s; the pulses that the speed tells were put in "
            "there.",
            source=one.channel.source,
            times=Text("1 time") if count == 1 else Text("{n} times", n=count),
            at=f"{at:.2f}",
        )
        notices.append(Notice("counter-reset", text, count))
    if doubtful.any():
        count = int(np.count_nonzero(doubtful))
        text = Text(
            "{source}: in {gaps} it may have overflowed more often than the speed can tell (modulus "
            "{modulus}); the most probable number was taken.",
            source=one.channel.source,
            gaps=Text("1 gap") if count == 1 else Text("{n} gaps", n=count),
            modulus=f"{modulus:.0f}",
        )
        notices.append(Notice("counter-doubtful", text, count))
    unwrapped = one.channel.value[0] + np.concatenate(([0.0], np.cumsum(whole)))
    return np.asarray(unwrapped, dtype=np.float64), notices


def _way_std_m(one: _Counter) -> FloatArray:
    gap = np.where(one.pause_s > 3.0 * np.median(one.pause_s), _WAY_STD_MPS * one.pause_s, 0.0)
    return np.asarray(_WAY_STD_RATIO * np.maximum(one.way_m, 0.0) + gap, dtype=np.float64)


def _stuck_notices(known: Mapping[Corner, _Counter], moving: Mapping[Corner, _Counter]) -> list[Notice]:
    notices = []
    for corner, one in known.items():
        if corner in moving or float(one.way_m.sum()) < 20.0:
            continue
        what = Text("kept, because the other counters run") if moving else Text("left out")
        text = Text(
            "{source} never changes although the car drives; it was {what}.",
            source=one.channel.source,
            what=what,
        )
        notices.append(Notice("stuck-channel", text))
    return notices
