"""Numbers that are codes for 'not available', in files that do not say so."""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.speed_log import FloatArray

IMPLAUSIBLE_MPS: Final = 65.0
"""A code stands at the end of the signal's range; below this (234 km/h) a lone top value may be a speed."""

_ISOLATED_RATIO: Final = 0.75
_IMPOSSIBLE_MPS: Final = -100.0


def without_sentinels(value: FloatArray, factor: float) -> tuple[FloatArray, int]:
    """Turn not-available codes among speeds into NaN.

    Parameters
    ----------
    value : float64[N]
        As recorded.
    factor : float
        Metres per second in one unit of ``value``.

    Returns
    -------
    (float64[N], int)
        Values and how many codes were found: one top number that stands well above everything else, beyond
        any road speed, and numbers far below zero. A signal that is nothing but its top number is left
        alone: then the unit is what is wrong.
    """
    finite = value[~np.isnan(value)]
    if not finite.size or (
        finite.max() * factor <= IMPLAUSIBLE_MPS and finite.min() * factor >= _IMPOSSIBLE_MPS
    ):
        return value, 0
    code = value * factor < _IMPOSSIBLE_MPS
    top = finite.max()
    below = finite[finite < top]
    if (
        top * factor > IMPLAUSIBLE_MPS
        and below.size
        and below.max() < _ISOLATED_RATIO * top
        and below.max() * factor < IMPLAUSIBLE_MPS
    ):
        code |= value == top
    return np.where(code, np.nan, value), int(np.count_nonzero(code))
