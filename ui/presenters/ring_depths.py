"""How deep the speed drops in each bad sector of a ring."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import numpy as np

from triage.speed_log import BoolArray, FloatArray

if TYPE_CHECKING:
    from triage.signals.analysis import Analysis
    from triage.signals.ring_map import RingMap

FEWEST_DROPS: Final = 5
"""A middle of fewer drops says little."""

DEEPEST_WITHIN_S: Final = 0.05
"""A drop is as deep as the lowest sample so soon after its beginning (judgement)."""

LATE_S: Final = 0.012
LATE_REV: Final = 0.014
"""Time and angle by which a drop is recorded after its place has passed, as taken for the sectors."""

REACH_REV: Final = 0.05
"""A drop so close to a sector still counts as its own."""


def sector_depths(analysis: Analysis, row: int, ring: RingMap) -> tuple[float | None, ...]:
    """Return the middle depth of the drops of each bad sector, relative to the speed.

    Parameters
    ----------
    analysis : Analysis
    row : int
    ring : RingMap
        That of the same wheel.

    Returns
    -------
    tuple of float or None
        In the order of the sectors, 1 where the signal is gone; None where fewer than five drops were seen.
    """
    if not ring.sectors:
        return ()
    # It takes scipy with it, which the first picture of the window need not wait for.
    from triage.signals.ring_drops import depth_of, place_drops  # noqa: PLC0415

    placed = place_drops(
        analysis.clock, analysis.residuals, analysis.losses, row=row, angle_rev=ring.angle_rev
    )
    depth = -depth_of(analysis.clock, analysis.residuals, analysis.losses, row)
    begins = np.flatnonzero(placed.dropped)
    place_rev = ring.angle_rev[begins] - LATE_REV - LATE_S * placed.rate_revps[begins]
    deepest = _largest_after(depth, begins, analysis.clock.samples_in(DEEPEST_WITHIN_S))
    return tuple(
        _middle(deepest[_near(place_rev, sector.centre_rev, 0.5 * sector.width_rev + REACH_REV)])
        for sector in ring.sectors
    )


def _near(place_rev: FloatArray, centre_rev: float, reach_rev: float) -> BoolArray:
    apart: FloatArray = np.abs((place_rev - centre_rev + 0.5) % 1.0 - 0.5)
    near: BoolArray = apart <= reach_rev
    return near


def _largest_after(value: FloatArray, begins: np.ndarray, samples: int) -> FloatArray:
    """Return the largest of so many values from each beginning on; NaN counts as nothing."""
    places = np.minimum(begins[:, None] + np.arange(samples + 1), value.size - 1)
    largest: FloatArray = np.nan_to_num(value[places], nan=0.0).max(axis=1, initial=0.0)
    return largest


def _middle(depth: FloatArray) -> float | None:
    return float(np.median(depth)) if depth.size >= FEWEST_DROPS else None
