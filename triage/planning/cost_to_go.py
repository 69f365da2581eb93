"""What is still to be paid when one goes on looking: less than repairing by the belief of now would cost.

Looking ahead ends after two checks, as if only repairs could follow. In truth more checks can, and they pay
the more, the further the cost of repairing lies above that of a mechanic who knows the cause. Work on
simulated cars (``python -m triage.planning.excess_paid``) shows it: what was really paid above the cost of
knowing, the excess, keeps to that of repairing at once as long as it is small, and then lags behind. So what
is still to come is taken as ::

    x                                         up to x = KNEE * last resort
    KNEE * last resort + SLOPE * (the rest)   beyond

A check earns that only by what it tells: one that tells nothing leaves everything still to be paid.
"""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.speed_log import FloatArray

KNEE: Final = 0.35
"""Share of the last resort up to which looking on saves nothing (simulated, see above)."""

SLOPE: Final = 0.6
"""Part of the excess beyond the knee that is still paid. By that table (``--cars 60``) it is less, what is
paid scatters about 270 to 390 there, but a leaf that promises so much lures into checks: on the same cars
plans made with 0.3 saved little, with 0.6 and 0.8 about 4 % (simulated)."""

EARNED_AT: Final = 0.5
"""Part of its own cost that a check must save before it earns in full what going on saves (judgement)."""

LEAST_PAID: Final = 1e-12
"""Keeps a check that costs nothing from dividing by nothing."""


def cost_to_go(repairing: FloatArray, knowing: FloatArray, last_resort: FloatArray) -> FloatArray:
    """Return the expected cost of going on after a check, never more than that of repairing.

    Parameters
    ----------
    repairing, knowing : float64[...]
        Expected cost of repairing by the belief, and of repairing by one who knows the cause.
    last_resort : float64[...]
        Its cost; all three in proportion to the probability of the belief.
    """
    excess, knee = repairing - knowing, KNEE * last_resort
    going_on: FloatArray = knowing + np.minimum(excess, knee + SLOPE * (excess - knee))
    return going_on


def credit(saved: FloatArray, paid: FloatArray) -> FloatArray:
    """Return the part, 0 to 1, of what going on saves that a check may count as its own.

    Parameters
    ----------
    saved : float64[...]
        By how much the answer lowers the cost to go.
    paid : float64[...]
        What the check costs.
    """
    return np.clip(saved / (EARNED_AT * paid + LEAST_PAID), 0.0, 1.0)
