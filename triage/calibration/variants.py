"""The different ways in which one cause shows itself, found in simulated road tests.

A *variant* of a cause is one of these ways. A gap too wide makes a passive sensor silent below some speed and
an active one lose pulses at any speed. Taken together, such drives look like neither, and a log that shows
half of the one and half of the other would look like both. Drives of one cause are therefore sorted into a
few classes within which the measurements are about independent (latent class analysis). The classes are found
in the measurements alone and have no name, only a number: but for the severity (see ``tables.MILD_BELOW``)
what a drive was simulated with is not looked at.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.speed_log import FloatArray

MOST_VARIANTS: Final = 7
FEWEST_DRIVES: Final = 12
"""A variant seen in fewer drives is not told apart."""

FOLDS: Final = 4
ROUNDS: Final = 60
STARTS: Final = 6
PSEUDO_DRIVES: Final = 2.0
"""Every row of a variant starts as this many drives spread like the whole cause."""

Shares = Mapping[str, Sequence[float]]
"""Band probabilities of one drive, keyed by measurement."""


def sort_into_variants(drives: Sequence[Shares], weights: Sequence[Mapping[str, float]]) -> NDArray[np.intp]:
    """Sort the drives of one cause into variants.

    Parameters
    ----------
    drives : sequence of mapping
        Band probabilities of every measurement of the drive that concerns the cause.
    weights : sequence of mapping
        Factor with which the verdict counts each of them.

    Returns
    -------
    int[N]
        Number of the variant of each drive from 0, the largest variant first; all 0 when one explains drives
        that were held back as well as several.

    Notes
    -----
    P. F. Lazarsfeld, N. W. Henry, Latent Structure Analysis, 1968 (cited from memory), by expectation
    maximisation; the number of classes by the likelihood of held-back drives.
    """
    if len(drives) < 2 * FEWEST_DRIVES:
        return np.zeros(len(drives), dtype=np.intp)
    tables = _tables(drives, weights)
    scores = [_held_back_score(tables, number, len(drives)) for number in range(1, MOST_VARIANTS + 1)]
    for number in sorted(range(1, MOST_VARIANTS + 1), key=lambda n: -scores[n - 1]):
        labels = _fit(tables, number).argmax(axis=1)
        count = np.bincount(labels, minlength=number)
        if number == 1 or count.min() >= FEWEST_DRIVES:
            break
    rank: NDArray[np.intp] = np.argsort(np.argsort(-count, kind="stable"), kind="stable")[labels]
    return rank


@dataclass(frozen=True, slots=True)
class _Tables:
    """All measurements over all drives.

    Attributes
    ----------
    shares : float64[T, N, B]
        Band probabilities of N drives; even where a measurement is missing, 0 beyond its bands.
    weight : float64[T, N]
        0 where it is missing.
    start : float64[T, B]
        What every row starts from.
    """

    shares: FloatArray
    weight: FloatArray
    start: FloatArray

    def of(self, drives: NDArray[np.intp]) -> _Tables:
        """Return the same of some drives, with a start of their own."""
        return _with_start(self.shares[:, drives], self.weight[:, drives], self.start > 0.0)


def _tables(drives: Sequence[Shares], weights: Sequence[Mapping[str, float]]) -> _Tables:
    names = sorted({name for drive in drives for name in drive})
    widths = [next(len(drive[name]) for drive in drives if name in drive) for name in names]
    shares = np.zeros((len(names), len(drives), max(widths, default=1)))
    weight = np.zeros((len(names), len(drives)))
    for row, (name, width) in enumerate(zip(names, widths, strict=True)):
        shares[row, :, :width] = [drive.get(name, [1.0 / width] * width) for drive in drives]
        weight[row] = [
            one[name] if name in drive else 0.0 for drive, one in zip(drives, weights, strict=True)
        ]
    return _with_start(shares, weight, np.arange(shares.shape[2]) < np.array(widths)[:, None])


def _with_start(shares: FloatArray, weight: FloatArray, is_band: NDArray[np.bool_]) -> _Tables:
    overall = np.where(is_band, (shares * (weight > 0.0)[:, :, None]).sum(axis=1) + 0.1, 0.0)
    return _Tables(shares, weight, PSEUDO_DRIVES * overall / overall.sum(axis=1, keepdims=True))


def _held_back_score(tables: _Tables, number: int, drives: int) -> float:
    """Mean log-likelihood of drives that the fit did not see."""
    fold = np.arange(drives) % FOLDS
    total = 0.0
    for part in range(FOLDS):
        seen, unseen = (tables.of(np.flatnonzero(flag)) for flag in (fold != part, fold == part))
        total += float(_log_joint(seen, _fit(seen, number), unseen)[0].sum())
    return total / drives


def _fit(tables: _Tables, number: int) -> FloatArray:
    """Responsibility of each variant for each drive, float64[N, number].

    The likeliest of several random starts, which are the same ones every time.
    """
    drives = tables.weight.shape[1]
    if number == 1:
        return np.ones((drives, 1))
    rng = np.random.default_rng(number)
    best: tuple[float, FloatArray] | None = None
    for _ in range(STARTS):
        responsibility = rng.dirichlet(np.full(number, 0.5), drives)
        for _ in range(ROUNDS):
            evidence, responsibility = _log_joint(tables, responsibility, tables)
        score = float(evidence.sum())
        if best is None or score > best[0]:
            best = (score, responsibility)
    assert best is not None  # noqa: S101 - STARTS is not 0
    return best[1]


def _log_joint(seen: _Tables, responsibility: FloatArray, wanted: _Tables) -> tuple[FloatArray, FloatArray]:
    """Log evidence and responsibilities of the wanted drives, given those of the drives seen."""
    size = responsibility.sum(axis=0)
    present = responsibility.T[None, :, :] * (seen.weight > 0.0)[:, None, :]
    rows = present @ seen.shares + seen.start[:, None, :]
    rows /= present.sum(axis=2)[:, :, None] + PSEUDO_DRIVES
    agreement = np.log(wanted.shares @ rows.transpose(0, 2, 1))
    score = np.log((size + 1.0) / (size.sum() + size.size)) + np.einsum(
        "td,tdv->dv", wanted.weight, agreement
    )
    top = score.max(axis=1, keepdims=True)
    evidence = top[:, 0] + np.log(np.exp(score - top).sum(axis=1))
    return evidence, np.exp(score - evidence[:, None])
