"""A healthy car."""

from __future__ import annotations

from triage.simulator.faults.effect import FaultEffect, FaultSite


def strike(site: FaultSite) -> FaultEffect:  # noqa: ARG001 - every fault is called alike
    """Change nothing."""
    return FaultEffect()
