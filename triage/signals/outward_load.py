"""Lateral acceleration that loads a wheel as the outer one of a curve."""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.corners import CORNERS, SIDE_SIGN
from triage.signals.analysis import Analysis
from triage.speed_log import FloatArray

LOADED_MPS2: Final = 1.0
"""Lateral acceleration from which a curve shifts load noticeably: 1 m/s2 moves about 7 % of an axle's load
to the outer wheel at a centre of gravity height of a third of the track (whole-axle formula m a h / t)."""


def outward_load_mps2(
    analysis: Analysis, row: int, samples: NDArray[np.intp] | slice = slice(None)
) -> FloatArray:
    """Return the lateral acceleration towards the wheel's own side, float64[N], or at some samples.

    Positive where the wheel runs as the outer one; NaN where the path is not known.
    """
    # In a left curve (positive) the right wheels are the outer ones.
    outward: FloatArray = -SIDE_SIGN[CORNERS[row]] * analysis.lateral_mps2[samples]
    return outward
