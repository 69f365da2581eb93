"""Wheel speeds that count backwards: recorded below zero although the car drives forward."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Final

import numpy as np

from triage.corners import Corner
from triage.speed_log import Notice, SpeedTrace
from triage.texts import Text

FASTEST_REVERSE_MPS: Final = 12.0
"""No car is reversed faster on a road test (43 km/h; judgement)."""

_TURNING_MPS: Final = 0.5
_NEARLY_ALL: Final = 0.9
_HARDLY_ANY: Final = 0.1


def with_forward_signs(
    traces: Mapping[Corner, SpeedTrace],
) -> tuple[dict[Corner, SpeedTrace], list[Notice]]:
    """Turn wheels round that read less than zero nearly whenever they turn.

    Parameters
    ----------
    traces : mapping of corner to SpeedTrace

    Returns
    -------
    (dict of SpeedTrace, list of Notice)
        Unchanged and empty where no wheel does so, and where a wheel reads both signs for long, because then
        the sign tells forward from reverse. Unchanged, but with a notice, where all wheels do so at speeds at
        which a car can be reversed.

    Notes
    -----
    A sensor or a control unit that mistakes the direction of turning still measures the speed, so the sign is
    no sign of a fault.
    """
    share = {corner: _backward_share(trace) for corner, trace in traces.items()}
    backward = [corner for corner, part in share.items() if part > _NEARLY_ALL]
    if not backward or any(_HARDLY_ANY < part <= _NEARLY_ALL for part in share.values()):
        return dict(traces), []
    if len(backward) == len(traces) and _fastest_reverse_mps(traces) < FASTEST_REVERSE_MPS:
        left = Text(
            "all speeds are below zero: the car was reversed, or the sign is wrong; they were left so."
        )
        return dict(traces), [Notice("sign-doubtful", left, len(backward))]
    turned = {
        corner: replace(trace, speed_mps=-trace.speed_mps) if corner in backward else trace
        for corner, trace in traces.items()
    }
    text = Text(
        "{backward}: the speed is below zero whenever the wheel turns; its sign was turned round.",
        backward=", ".join(backward),
    )
    return turned, [Notice("sign-doubtful", text, len(backward))]


def _fastest_reverse_mps(traces: Mapping[Corner, SpeedTrace]) -> float:
    return -min(float(np.fmin.reduce(trace.speed_mps)) for trace in traces.values())


def _backward_share(trace: SpeedTrace) -> float:
    """Share of the samples below zero among those in which the wheel turns; 0 when it never does."""
    if not np.fmin.reduce(trace.speed_mps, initial=0.0) < -_TURNING_MPS:
        return 0.0
    backward = np.count_nonzero(trace.speed_mps < -_TURNING_MPS)
    return float(backward / (backward + np.count_nonzero(trace.speed_mps > _TURNING_MPS)))
