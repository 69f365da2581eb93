"""Where on the ring the drops are made, unit and recorder unsmeared, and how alike the turns are.

A crack, a chip or a missing tooth is one narrow spot and loses the same in every turn. Dirt covers one or
more wide stretches and loses now here, now there.
"""

from __future__ import annotations

from typing import Final

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.measurement import Measured, NotMeasurable
from triage.signals.measures.building import event_spans, measured, missing, moving_spans
from triage.signals.ring_map import RingMap
from triage.signals.ring_sectors import RingHarm
from triage.speed_log import BoolArray

COUNT_STD: Final = 0.5
"""Standard uncertainty of a number of sectors: two may touch, or a thin one may hide (judgement)."""

NO_PATTERN: Final = "no sudden drops that keep to one part of the ring"
NEEDED: Final = "steady straight driving of 200 wheel turns or more while the fault is present"


def measure_harmed_share(analysis: Analysis, row: int) -> Measured:
    """Effective part of the ring on which the speed drops are made, in per cent of a turn.

    Formula: ``(sum d)^2 / (96 sum d^2)`` with ``d`` the drops per turn made in each of 96 bins, deconvolved
    for the step of the samples and a control unit cycle of 10 ms (Richardson-Lucy); 1 bin gives 1 %, the
    whole ring 100 %. Assumes that drops are steps down of one sample, and that the angle is known. Valid
    below half a turn from sample to sample, with 20 drops or more; units that average over long times make
    it too large by the angle turned in that time. Uncertainty: a fifth of the value, half a bin, and the
    angle turned in 5 ms. Source: judgement, checked on simulated damage and dirt.
    """
    harm = _harm(analysis, row)
    if harm is None:
        return _nothing(analysis, "harmed-share", row)
    return measured(
        "harmed-share",
        CORNERS[row],
        100.0 * harm.spread_rev,
        100.0 * harm.spread_std_rev,
        unit="%",
        count=harm.drop_count,
        spans=event_spans(analysis, _disturbed(analysis, row)) or moving_spans(analysis, row),
    )


def measure_bad_sector_count(analysis: Analysis, row: int) -> Measured:
    """Count the stretches of the ring, parted by 15 degrees or more, in which the speed drops.

    A stretch counts from 2 % of the greatest density and 3 % of all drops on. Same assumptions and validity
    as ``harmed-share``. Uncertainty: half a stretch. Source: judgement.
    """
    harm = _harm(analysis, row)
    if harm is None or not harm.sectors:
        return _nothing(analysis, "bad-sector-count", row)
    return measured(
        "bad-sector-count",
        CORNERS[row],
        len(harm.sectors),
        COUNT_STD,
        unit="",
        count=harm.drop_count,
        spans=event_spans(analysis, _disturbed(analysis, row)) or moving_spans(analysis, row),
    )


def _harm(analysis: Analysis, row: int) -> RingHarm | None:
    ring = analysis.rings[row]
    return ring.harm if isinstance(ring, RingMap) else None


def _nothing(analysis: Analysis, name: str, row: int) -> NotMeasurable:
    ring = analysis.rings[row]
    if isinstance(ring, NotMeasurable):
        return missing(name, row, ring.reason, ring.needed)
    return missing(name, row, NO_PATTERN, NEEDED)


def _disturbed(analysis: Analysis, row: int) -> BoolArray:
    losses = analysis.losses
    disturbed: BoolArray = losses.low[row] | losses.high[row] | losses.alone[row]
    return disturbed
