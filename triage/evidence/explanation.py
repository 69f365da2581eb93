"""How much each finding speaks for or against each hypothesis."""

from __future__ import annotations

import numpy as np

from triage.speed_log import FloatArray


def contributions_bit(joint: FloatArray, *, prior: FloatArray) -> FloatArray:
    """Return the weight of evidence of every finding for every hypothesis, in bits.

    ``log2( P(f | h) / P(f | not h) )``, where ``P(f | not h)`` is the average over all other
    hypotheses, weighted by their priors.

    Parameters
    ----------
    joint : float64[findings, hypotheses]
        ``P(f | h) P(h)``, the likelihood raised to the power with which the ranking counts the finding.
    prior : float64[hypotheses]
        ``P(h)``, each between 0 and 1, neither included.

    Returns
    -------
    float64[findings, hypotheses]
        Positive speaks for, negative against.

    Notes
    -----
    Prior weights, not posterior ones: a contribution then depends on the finding alone, not on what else was
    found, and two findings that say the same do not hide each other. The price is that the contributions do
    not add up to the final odds when more than two hypotheses stand against each other.

    References
    ----------
    I. J. Good, Probability and the Weighing of Evidence, 1950, ch. 6 (weight of evidence; from memory).
    """
    given = joint / prior
    others = (joint.sum(axis=1, keepdims=True) - joint) / (1.0 - prior)
    bits: FloatArray = np.log2(given) - np.log2(others)
    return bits
