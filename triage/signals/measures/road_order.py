"""Whether the front wheels meet the road before the rear wheels of their side, as they should."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.corners import VEHICLE
from triage.signals.analysis import Analysis
from triage.signals.measurement import Measured, NotMeasurable
from triage.signals.measures.building import event_spans, measured, missing, moving_anywhere
from triage.signals.road_delay import lead_of, measure_road_delay
from triage.signals.wiring import AS_WIRED, EXCHANGES, Order

CLEAR_SIGMA: Final = 3.0
NEEDED: Final = "a minute or more above 30 km/h on an ordinary road, recorded at 50 Hz or faster without gaps"


@dataclass(frozen=True, slots=True)
class RoadOrder:
    """What the order of the wheels on the road says of the wiring.

    Attributes
    ----------
    advantage, advantage_std : float
        Coherence of the best exchange less that as wired.
    best_order : four ints
        Channel of each true wheel in the best exchange.
    wheelbase_m : float
        Distance at which the better of the two is greatest.
    segments : int
        Stretches of 32 m it rests on.
    """

    advantage: float
    advantage_std: float
    best_order: Order
    wheelbase_m: float
    segments: int


def order_by_road(analysis: Analysis) -> RoadOrder | NotMeasurable:
    """Compare the wiring as it is with every exchange; see :mod:`triage.signals.road_delay`."""
    delay = measure_road_delay(analysis.clock, analysis.reference)
    if delay is None:
        return missing("road-order", None, "too few even stretches with samples close together", NEEDED)
    wired = lead_of(delay, AS_WIRED)
    leads = [(lead_of(delay, order), order) for order, _ in EXCHANGES]
    other, order = max(leads, key=lambda pair: pair[0].coherence)
    winner = max(wired, other, key=lambda lead: lead.coherence)
    if winner.coherence < CLEAR_SIGMA * max(winner.coherence_std, 0.01):
        return missing("road-order", None, "the road is too even to show which wheel meets it first", NEEDED)
    return RoadOrder(
        other.coherence - wired.coherence,
        float(np.hypot(other.coherence_std, wired.coherence_std)),
        order,
        winner.distance_m,
        delay.echo.shape[3],
    )


def report_road_order(analysis: Analysis, found: RoadOrder | NotMeasurable) -> Measured:
    """Say how much better the wheels follow each other over the road with channels exchanged, in per cent.

    Coherence between what the front and, one wheelbase later, the rear wheel of a side meet, less the same
    the other way round; of the best exchange of two channels, less that as wired. Negative for a car wired as
    it should be. Needs no curve, no yaw rate and no dimensions, but a road with some texture and samples less
    than 0.7 m apart; where no arrangement stands out by three standard uncertainties nothing is said. Left
    and right exchanged on both axles at once change nothing, and exchanged on one axle they look the same on
    either. Uncertainty: jackknife over a dozen parts of the drive. Source: delay estimation by phase
    transform (Knapp and Carter 1976, from memory); its use on the wheels of one side is our own.
    """
    if isinstance(found, NotMeasurable):
        return found
    return measured(
        "road-order",
        VEHICLE,
        100.0 * found.advantage,
        100.0 * max(found.advantage_std, 0.01),
        unit="%",
        count=found.segments,
        spans=event_spans(analysis, moving_anywhere(analysis)),
    )
