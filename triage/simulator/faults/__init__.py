"""Every fault the simulator can build in: one file each, one row each."""

from __future__ import annotations

from typing import Final

from triage.simulator.faults import (
    air_gap,
    bearing_play,
    bearing_roughness,
    channels_swapped,
    common_cause,
    encoder_damage,
    encoder_debris,
    encoder_mismatch,
    encoder_runout,
    harness_fault,
    no_fault_found,
    sensor_fault,
    tyre_size,
)
from triage.simulator.faults.effect import FaultEffect, FaultModel, FaultSite

FAULT_MODELS: Final[tuple[FaultModel, ...]] = (
    FaultModel("encoder-debris", "corner", encoder_debris.strike),
    FaultModel("encoder-damage", "corner", encoder_damage.strike),
    FaultModel("encoder-runout", "corner", encoder_runout.strike),
    FaultModel("encoder-mismatch", "corner", encoder_mismatch.strike),
    FaultModel("air-gap", "corner", air_gap.strike),
    FaultModel("sensor-fault", "corner", sensor_fault.strike),
    FaultModel("harness-fault", "corner", harness_fault.strike),
    FaultModel("bearing-play", "corner", bearing_play.strike),
    FaultModel("bearing-roughness", "corner", bearing_roughness.strike),
    FaultModel("tyre-size", "corner", tyre_size.strike),
    FaultModel("channels-swapped", "vehicle", channels_swapped.strike),
    FaultModel("common-cause", "vehicle", common_cause.strike),
    FaultModel("no-fault-found", "vehicle", no_fault_found.strike),
)

__all__ = ["FAULT_MODELS", "FaultEffect", "FaultModel", "FaultSite"]
