"""The side load under which a wheel loses its signal: a bearing that tilts loses none going straight."""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.loss_events import find_loss_events
from triage.signals.measurement import Measured
from triage.signals.measures.building import event_spans, measured, missing
from triage.signals.outward_load import outward_load_mps2

LOWER_QUARTER: Final = 0.25
"""Low enough that a few losses for another reason do not hide those of a bearing (judgement)."""

NORMAL_QUARTILE: Final = 0.6745
QUARTILE_STD: Final = 1.36
"""Distance of quartile and median of a normal distribution, and sqrt(3 / 16) over its density there."""

LOAD_STD_MPS2: Final = 0.3
"""Of the lateral acceleration at one moment, by the speeds of the wheels (simulated cars)."""

SINGLE_STD_MPS2: Final = 0.5
"""What stands for the spread of losses where fewer than three were seen (judgement)."""

LARGEST_MPS2: Final = 6.0
"""More is an error of the path, for a road tyre hardly holds it (judgement)."""


def measure_loss_load(analysis: Analysis, row: int) -> Measured:
    """Outward load that three of four losses exceed, in m/s2: above 0 as the outer wheel of a curve.

    A bearing with play tilts, and takes poles out of the sensor's reach, while the curve loads the wheel as
    the outer one; every loss of it falls there. Lead, sensor, gap and ring lose as well going straight. Other
    than a ratio of rates it speaks from the first loss on, and without curves to both sides. The uncertainty
    is that of the load and of a quartile of the losses seen. Source: physics of load transfer.
    """
    events = find_loss_events(analysis, row)
    load = outward_load_mps2(analysis, row, events.first)
    load = np.clip(load[np.isfinite(load)], -LARGEST_MPS2, LARGEST_MPS2)
    if not load.size:
        return missing("loss-load", row, "no loss of this wheel", "a longer drive in which the fault shows")
    low, middle = np.quantile(load, (LOWER_QUARTER, 0.5))
    deviation = float(middle - low) / NORMAL_QUARTILE if load.size > 2 else SINGLE_STD_MPS2
    return measured(
        "loss-load",
        CORNERS[row],
        float(low),
        float(np.hypot(LOAD_STD_MPS2, QUARTILE_STD * deviation / np.sqrt(load.size))),
        unit="m/s²",
        count=load.size,
        spans=event_spans(analysis, events.flag),
    )
