"""From the samples in which drops show to the places on the ring that make them.

A control unit tells of a lost pulse when its next estimate is ready, and the recorder when it next takes a
sample. A drop that first shows at one wheel angle was therefore made somewhere in the angle the wheel turned
since the sample before, and a little earlier still. Both are known in TIME, so that the smear over the ring
grows with the speed, and many turns sampled at different phases tell more than one sample per turn could.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.speed_log import FloatArray

RING_BINS: Final = 96
"""Angle bins of the ring, 3.75 degrees each."""

FINER: Final = 16
"""Points per bin on which the response is worked out before it is averaged over bins."""

ROUNDS: Final = 60
"""Rounds of the iteration; noise of a few hundred drops is not yet taken for fine structure (judgement)."""

UNSEEN_SHARE: Final = 0.15
"""Every bin is credited with this share of the best seen one's turns without a drop: behind a place that
drops in every turn hardly anything is seen, and a single late drop would pass for a second such place."""

LEAST: Final = 1e-12

FIRST_BACKGROUND: Final = 0.02
MOST_BACKGROUND: Final = 0.05
"""Probability that a sample of a quiet place is off, at the start and at most (judgement): with more, dirt
all round would pass for a noisy wheel."""


@dataclass(frozen=True, slots=True)
class DropCounts:
    """Drops of one wheel over its ring, taken in one range of speed.

    Attributes
    ----------
    exposure : float64[96]
        Samples per angle bin in which a drop could have begun.
    drops : float64[96]
        Samples per angle bin in which one did.
    step_rev : float
        Angle turned from one sample to the next.
    rate_revps : float
        Mean rate of turning at the drops.
    """

    exposure: FloatArray
    drops: FloatArray
    step_rev: float
    rate_revps: float


@dataclass(frozen=True, slots=True)
class Harm:
    """Drops as they are made on the ring.

    Attributes
    ----------
    density : float64[96]
        Drops per turn made in each bin.
    background : float
        Probability that a sample shows a drop that belongs to no place.
    log_likelihood : float
        Of the counts under this density, up to a constant of the counts.
    """

    density: FloatArray
    background: float
    log_likelihood: float


def response(visible_rev: float, smear_rev: float) -> FloatArray:
    """Probability that a drop made in one bin shows first in a sample of another.

    Parameters
    ----------
    visible_rev : float
        Angle in which a drop is caught: the step from sample to sample, or less when it is over sooner.
    smear_rev : float
        Angle turned in the cycle of the control unit; a drop waits for its end, up to a whole cycle.

    Returns
    -------
    float64[96, 96]
        Row: bin of the sample; column: bin of the cause. Circulant.

    Notes
    -----
    A box convolved with a box: the wait is evenly spread, and so is the phase of the samples. Nothing shows
    before it happens.
    """
    points = RING_BINS * FINER
    after = (np.arange(int(np.ceil((visible_rev + smear_rev) * points)) + 1) + 0.5) / points
    smear = max(smear_rev, 0.5 / points)
    height = np.clip(after / smear, 0.0, 1.0) - np.clip((after - visible_rev) / smear, 0.0, 1.0)
    fine = np.bincount(np.arange(after.size) % points, weights=height, minlength=points)
    cause = np.zeros(points)
    cause[:FINER] = 1.0 / FINER
    spread = np.fft.irfft(np.fft.rfft(fine) * np.fft.rfft(cause), points)
    # The transform leaves rounding errors of either sign where nothing shows.
    column = np.maximum(spread.reshape(RING_BINS, FINER).mean(axis=1), 0.0)
    place = np.arange(RING_BINS)
    matrix: FloatArray = column[(place[:, None] - place[None, :]) % RING_BINS]
    return matrix


def deconvolve_drops(counts: Sequence[DropCounts], responses: Sequence[FloatArray]) -> Harm:
    """Find the non-negative density of drops over the ring that makes the counts most likely.

    Parameters
    ----------
    counts : sequence of DropCounts
        One or more ranges of speed.
    responses : sequence of float64[96, 96]
        The response in each, from :func:`response`.

    Returns
    -------
    Harm

    Notes
    -----
    The expectation-maximisation iteration for Poisson counts with unequal exposure and an even background,
    stopped early as regularisation. Samples that follow a drop at once are not exposed, so that a place that
    always loses a pulse does not hide the one behind it.

    References
    ----------
    W. H. Richardson, J. Opt. Soc. Am. 62, 1972, 55; L. B. Lucy, Astron. J. 79, 1974, 745 (from memory).
    """
    total = sum(float(one.drops.sum()) for one in counts)
    samples = max(sum(float(one.exposure.sum()) for one in counts), LEAST)
    chance = sum(
        (matrix.T @ one.exposure for one, matrix in zip(counts, responses, strict=True)), np.zeros(RING_BINS)
    )
    chance = np.maximum(chance + UNSEEN_SHARE * float(chance.max()), LEAST)
    density, background = np.full(RING_BINS, 0.5 * total / float(chance.sum())), 0.5 * total / samples
    for _ in range(ROUNDS):
        back, even = np.zeros(RING_BINS), 0.0
        for one, matrix in zip(counts, responses, strict=True):
            share = one.drops / np.maximum(matrix @ density + background, LEAST)
            back += matrix.T @ share
            even += float(share.sum())
        density = density * back / chance
        background *= even / samples
    return Harm(density, background, _log_likelihood(counts, responses, density, background))


def deconvolve_active(exposure: FloatArray, active: FloatArray, matrix: FloatArray) -> FloatArray:
    """Find the non-negative density over the ring of what throws samples off.

    Parameters
    ----------
    exposure, active : float64[96]
        Samples per angle bin, and those of them that are off.
    matrix : float64[96, 96]
        From :func:`response`.

    Returns
    -------
    float64[96]
        Mean number of causes per turn in each bin.

    Notes
    -----
    As :func:`deconvolve_drops`, but for samples that are off or not, however many causes fall into one: the
    causes of a sample are counts of Poisson, of which only none or some is known, and the iteration puts
    their expected number in place of the count. Else a stretch that throws every sample off would look thin.
    """
    chance = np.maximum(matrix.T @ exposure, LEAST)
    samples = max(float(exposure.sum()), LEAST)
    density = np.full(RING_BINS, 0.5 * float(active.sum()) / float(chance.sum()))
    background = FIRST_BACKGROUND
    back = matrix.T / chance[:, None]
    for _ in range(ROUNDS):
        share = active / -np.expm1(-(matrix @ density + background))
        density = np.maximum(density * (back @ share), LEAST)
        background = min(background * float(share.sum()) / samples, MOST_BACKGROUND)
    return density


def _log_likelihood(
    counts: Sequence[DropCounts], responses: Sequence[FloatArray], density: FloatArray, background: float
) -> float:
    total = 0.0
    for one, matrix in zip(counts, responses, strict=True):
        expected = np.maximum(one.exposure * (matrix @ density + background), LEAST)
        total += float((one.drops * np.log(expected) - expected).sum())
    return total
