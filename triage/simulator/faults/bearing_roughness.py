"""Damaged races without play: next to nothing in the wheel speed."""

from __future__ import annotations

from triage.simulator.faults.effect import FaultEffect, FaultSite


def strike(site: FaultSite) -> FaultEffect:
    """Raise the broadband noise of the wheel a little."""
    return FaultEffect(noise_ratio=1.0 + 0.4 * site.severity)
