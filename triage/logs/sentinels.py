"""Numbers that are codes for 'not available', in files that do not say so."""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.speed_log import BoolArray, FloatArray

IMPLAUSIBLE_MPS: Final = 65.0
"""A code stands at the end of the signal's range; below this (234 km/h) a lone top value may be a speed."""

_ISOLATED_RATIO: Final = 0.75
_IMPOSSIBLE_MPS: Final = -100.0
_TOP_CODES_MAX: Final = 4
_JUMP_MPS: Final = 3.0
_JUMP_MPS2: Final = 60.0
"""Six times what tyres can brake: a wheel does not jump so, and comes back, to one and the same number."""

_USUAL_CODES: Final = (
    -1.0,
    255.0,
    254.0,
    511.0,
    510.0,
    999.0,
    1023.0,
    1022.0,
    2047.0,
    4095.0,
    8191.0,
    9999.0,
)
_STEP_SAMPLES: Final = 20000
_TOP_RANGES: Final = tuple(2.0**bits for bits in range(8, 17))


def without_sentinels(
    value: FloatArray, factor: float, *, time_s: FloatArray | None = None, step: float = 0.0
) -> tuple[FloatArray, int]:
    """Turn not-available codes among speeds into NaN.

    Parameters
    ----------
    value : float64[N]
        As recorded.
    factor : float
        Metres per second in one unit of ``value``.
    time_s : float64[N], optional
        Times of the samples; without them only numbers beyond any road speed are judged.
    step : float
        Step of one bit, when the file states it; else it is found from the numbers.

    Returns
    -------
    (float64[N], int)
        Values and how many codes were found: few top numbers that stand well above everything else, beyond
        any road speed; numbers far below zero; and highest or lowest numbers with all bits set, or below zero
        in a signal that never is, to which the speed only jumps as no wheel can. A signal that is nothing but
        its top number is left alone: then the unit is what is wrong.
    """
    finite = _without_nan(value)
    if not finite.size:
        return value, 0
    code = np.zeros(value.size, dtype=bool)
    if finite.max() * factor > IMPLAUSIBLE_MPS or finite.min() * factor < _IMPOSSIBLE_MPS:
        code = _beyond_any_road(value, finite, factor, step)
    if time_s is not None:
        code |= _jumped_to(np.where(code, np.nan, value) if code.any() else value, time_s, factor, step)
    count = int(np.count_nonzero(code))
    return (np.where(code, np.nan, value), count) if count else (value, 0)


def _without_nan(value: FloatArray) -> FloatArray:
    """Leave NaN out; the same array, not a copy, where there is none."""
    missing = np.isnan(value)
    return value[~missing] if missing.any() else value


def _beyond_any_road(value: FloatArray, finite: FloatArray, factor: float, step: float) -> BoolArray:
    code: BoolArray = value * factor < _IMPOSSIBLE_MPS
    tops, counts = np.unique(finite[finite * factor > IMPLAUSIBLE_MPS], return_counts=True)
    below = finite[finite * factor <= IMPLAUSIBLE_MPS]
    if not 0 < tops.size <= _TOP_CODES_MAX or not below.size or below.max() >= _ISOLATED_RATIO * tops[0]:
        return code
    step = step or smallest_step(below)
    if tops.size == 1 or all(c > 1 or _all_bits(t, step) for t, c in zip(tops, counts, strict=True)):
        code |= np.isin(value, tops)
    return code


def _jumped_to(value: FloatArray, time_s: FloatArray, factor: float, step: float) -> BoolArray:
    """Mark codes within the range of road speeds, by the jumps to and from them."""
    code = np.zeros(value.size, dtype=bool)
    number = _without_nan(value)
    rows = np.arange(value.size) if number.size == value.size else np.flatnonzero(~np.isnan(value))
    far = _jumps(number, time_s, rows, factor)
    at = np.flatnonzero(far)
    if not at.size:
        return code
    ends = np.concatenate((number[at], number[at + 1]))
    top, bottom = number.max(), number.min()
    for lone in (float(ends.max()), float(ends.min())):
        # Most logs jump between ordinary speeds, which a look at the ends of the range tells.
        if bottom < top and (lone == top or lone == bottom < 0.0):
            same = number == lone
            is_code = _is_code(lone, number[~same], step)
            if is_code and _only_by_jumps(same, far, 1.0 if lone > 0.0 else 0.5):
                code[rows[same]] = True
    return code


def _jumps(number: FloatArray, time_s: FloatArray, rows: NDArray[np.intp], factor: float) -> BoolArray:
    """Mark the steps between numbers that no wheel makes, bool[N - 1]; ``rows`` says where they stand."""
    jump_mps = np.diff(number)
    np.abs(jump_mps, out=jump_mps)
    jump_mps *= factor
    far: BoolArray = jump_mps > _JUMP_MPS
    at = np.flatnonzero(far)  # few or none: only these are held against their times
    far[at] = jump_mps[at] > _JUMP_MPS2 * np.abs(time_s[rows[at + 1]] - time_s[rows[at]])
    return far


def _is_code(lone: float, rest: FloatArray, step: float) -> bool:
    if lone in _USUAL_CODES:
        return True
    return (lone < 0.0 <= rest.min()) or (lone > 0.0 and _all_bits(lone, step or smallest_step(rest)))


def _only_by_jumps(same: BoolArray, far: BoolArray, share: float) -> bool:
    """Tell whether the ways into and out of the runs of a number are jumps, to this share."""
    border = same[1:] != same[:-1]
    return bool(border.any()) and float(far[border].mean()) >= share


def _all_bits(number: float, step: float) -> bool:
    """Tell whether a number is the highest or second highest that 8 to 16 bits can hold."""
    if step <= 0.0:
        return False
    raw = number / step
    return any(abs(raw - (top - less)) < 0.02 for top in _TOP_RANGES for less in (1.0, 2.0))


def smallest_step(value: FloatArray) -> float:
    """Smallest step of recorded numbers.

    Parameters
    ----------
    value : float64[N]
        NaN is left out.

    Returns
    -------
    float
        In the unit of ``value``; 0 when there are fewer than two different numbers.

    Notes
    -----
    Rounded decimals such as 8.016667 and 8.033333 differ by a step that is itself rounded; steps below a
    millionth of the largest value are taken for such rounding and left out, and the fifth part of a percent
    smallest of the rest is given, so that a few numbers off the raster do not count.
    """
    number = np.unique(_without_nan(value)[:_STEP_SAMPLES])
    if number.size < 2:
        return 0.0
    step = np.diff(number)
    step = step[step > 2e-6 * max(float(np.abs(number).max()), 1e-9)]
    return float(np.quantile(step, 0.002, method="lower")) if step.size else 0.0
