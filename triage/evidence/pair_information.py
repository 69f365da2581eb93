"""How much seeing something would tell two claims apart.

The measure is the mutual information of what is seen and which of the two claims holds: the expected drop of
the doubt between them, in bits. With the two claims' probabilities as weights it is their Jensen-Shannon
divergence (J. Lin, IEEE Trans. Inf. Theory 37, 1991, p. 145, eq. 4.1; from memory), 0 when both claims expect
the same and at most the doubt itself. A check's gain for the whole verdict is never less than the
probability of a pair times its gain for that pair.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.evidence.claims import Claims, Pairs
from triage.evidence.equally_wide import work_on_equally_wide
from triage.evidence.next_checks import entropy_bit
from triage.speed_log import FloatArray

LONGER: Final = (2, 3, 5, 10)
"""How many times as long a drive may be asked for."""

ENOUGH_OF_ALL: Final = 0.5
"""A drive is long enough when it tells this part of what an endless one would (judgement)."""

_TRUE_GRID: Final = 81
_SEEN_GRID: Final = 121
_REACH_SIGMA: Final = 5.0
_SMALLEST_SHARE: Final = 1e-12


@dataclass(frozen=True, slots=True)
class LongerDrive:
    """What driving on would tell about each pair.

    Attributes
    ----------
    gain_bit : float64[pairs]
        At the length in ``times``.
    times : int64[pairs]
        Length against the present drive; 0 where even the longest of ``LONGER`` would not be enough.
    """

    gain_bit: FloatArray
    times: NDArray[np.int64]


def pair_gain_bit(expected: FloatArray, pairs: Pairs) -> FloatArray:
    """Return the expected drop of doubt between the claims of each pair.

    Parameters
    ----------
    expected : float64[..., claims, outcomes]
        P(outcome | claim); every row sums to 1.
    pairs : Pairs

    Returns
    -------
    float64[..., pairs]
        Bits, none negative.
    """
    first, second = expected[..., pairs.first, :], expected[..., pairs.second, :]
    share = pairs.share
    mixed = share[:, np.newaxis] * first + (1.0 - share)[:, np.newaxis] * second
    each = entropy_bit(expected)
    gain = entropy_bit(mixed) - share * each[..., pairs.first] - (1.0 - share) * each[..., pairs.second]
    positive: FloatArray = np.maximum(gain, 0.0)
    return positive


def flattened(table: FloatArray, weight: float) -> FloatArray:
    """Return rows as even as a finding of this weight counts them; above 1 a weight changes nothing.

    Parameters
    ----------
    table : float64[atoms, bands]
        P(band | atom), each above 0.
    weight : float
        Power to which the ranking raises the likelihood of the finding.
    """
    powered = table ** min(weight, 1.0)
    rows: FloatArray = powered / powered.sum(axis=1, keepdims=True)
    return rows


def gains_of_seeing_bit(tables: Sequence[FloatArray], claims: Claims, pairs: Pairs) -> list[FloatArray]:
    """Return what each of some findings not made yet would tell about each pair.

    Every claim expects the average of its variants, weighted by how well each fits the findings so far.

    Parameters
    ----------
    tables : sequence of float64[atoms, bands]
        P(band | atom), a table for each finding.
    claims, pairs
        What is to be told apart.

    Returns
    -------
    list of float64[pairs]
        Bits, in the order of the tables.
    """
    return work_on_equally_wide(tables, lambda stacked: pair_gain_bit(claims.mixture @ stacked, pairs))


def gain_of_driving_on(
    table: FloatArray, band_probability: Sequence[float], claims: Claims, pairs: Pairs
) -> LongerDrive:
    """Work out what a longer drive would tell when the present one leaves the band open.

    Parameters
    ----------
    table : float64[atoms, bands]
        P(band | atom).
    band_probability : sequence of float
        The finding at hand.
    claims, pairs
        What is to be told apart.

    Notes
    -----
    A drive ``T`` times as long is the present one and a further, independent one of ``T - 1`` times its
    length, whose standard uncertainty is the present one over sqrt(T - 1). That holds for what scatters from
    sample to sample or turn to turn; where the uncertainty has a part that no driving reduces, more is
    promised than will come (judgement). The true value is spread normally about the measured one, within
    every band as likely as the claim has it. An endless drive shows the band itself, which no finite one
    can beat.
    """
    from scipy.special import ndtri  # noqa: PLC0415 - the window starts without it

    shares = np.asarray(band_probability, dtype=float)
    endless = pair_gain_bit(_expected(shares * table, claims), pairs)
    grid = _true_grid()
    edges = ndtri(np.clip(np.cumsum(shares)[:-1], _SMALLEST_SHARE, 1.0 - _SMALLEST_SHARE))
    true = np.exp(-0.5 * grid**2) * table[:, np.searchsorted(edges, grid, side="right")]
    expected = _expected(true, claims)
    gains = pair_gain_bit(expected @ _seen_after_longer_drives(), pairs)
    enough = gains >= ENOUGH_OF_ALL * endless
    shortest = np.argmax(enough, axis=0)
    gain = gains[shortest, np.arange(shortest.size)]
    times = np.where(enough.any(axis=0), np.array(LONGER)[shortest], 0)
    return LongerDrive(np.where(times > 0, gain, 0.0), times)


def _expected(weights: FloatArray, claims: Claims) -> FloatArray:
    """Return what each claim expects, float64[claims, values], where its atoms weigh the values so."""
    expected: FloatArray = claims.mixture @ (weights / weights.sum(axis=1, keepdims=True))
    return expected


@lru_cache(maxsize=1)
def _seen_after_longer_drives() -> FloatArray:
    """For each length in ``LONGER`` what shows of the true value: the same for all logs."""
    rows = np.stack([_seen(_true_grid(), times) for times in LONGER])
    rows.setflags(write=False)
    return rows


@lru_cache(maxsize=1)
def _true_grid() -> FloatArray:
    grid = np.linspace(-_REACH_SIGMA, _REACH_SIGMA, _TRUE_GRID)
    grid.setflags(write=False)
    return grid


def _seen(grid: FloatArray, times: int) -> FloatArray:
    """P(value seen in the further drive | true value), float64[true, seen], both in present sigmas."""
    std = 1.0 / np.sqrt(times - 1.0)
    reach = _REACH_SIGMA + 4.0 * std
    steps = np.linspace(-reach, reach, _SEEN_GRID)
    density = np.exp(-0.5 * ((steps - grid[:, np.newaxis]) / std) ** 2)
    rows: FloatArray = density / density.sum(axis=1, keepdims=True)
    return rows
