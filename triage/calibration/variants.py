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
    tables = _tables(drives, weights)
    if len(drives) < 2 * FEWEST_DRIVES:
        return np.zeros(len(drives), dtype=np.intp)
    scores = [_held_back_score(tables, number, len(drives)) for number in range(1, MOST_VARIANTS + 1)]
    for number in sorted(range(1, MOST_VARIANTS + 1), key=lambda n: -scores[n - 1]):
        labels = _fit(tables, number, np.arange(len(drives))).argmax(axis=1)
        count = np.bincount(labels, minlength=number)
        if number == 1 or count.min() >= FEWEST_DRIVES:
            break
    rank: NDArray[np.intp] = np.argsort(np.argsort(-count, kind="stable"), kind="stable")[labels]
    return rank


@dataclass(frozen=True, slots=True)
class _Table:
    """One measurement over all drives.

    Attributes
    ----------
    shares : float64[drives, bands]
        Band probabilities; even where the measurement is missing.
    weight : float64[drives]
        0 where it is missing.
    """

    shares: FloatArray
    weight: FloatArray


def _tables(drives: Sequence[Shares], weights: Sequence[Mapping[str, float]]) -> list[_Table]:
    tables = []
    for name in sorted({name for drive in drives for name in drive}):
        width = next(len(drive[name]) for drive in drives if name in drive)
        shares = np.array([drive.get(name, [1.0 / width] * width) for drive in drives], dtype=float)
        weight = np.array(
            [one[name] if name in drive else 0.0 for drive, one in zip(drives, weights, strict=True)]
        )
        tables.append(_Table(shares, weight))
    return tables


def _held_back_score(tables: list[_Table], number: int, drives: int) -> float:
    """Mean log-likelihood of drives that the fit did not see."""
    fold = np.arange(drives) % FOLDS
    total = 0.0
    for part in range(FOLDS):
        seen, unseen = np.flatnonzero(fold != part), np.flatnonzero(fold == part)
        responsibility = _fit(tables, number, seen)
        total += float(_log_joint(tables, responsibility, seen, unseen)[0].sum())
    return total / drives


def _fit(tables: list[_Table], number: int, chosen: NDArray[np.intp]) -> FloatArray:
    """Responsibility of each variant for each chosen drive, float64[len(chosen), number].

    The likeliest of several random starts, which are the same ones every time.
    """
    if number == 1:
        return np.ones((chosen.size, 1))
    rng = np.random.default_rng(number)
    best: tuple[float, FloatArray] | None = None
    for _ in range(STARTS):
        responsibility = rng.dirichlet(np.full(number, 0.5), chosen.size)
        for _ in range(ROUNDS):
            evidence, responsibility = _log_joint(tables, responsibility, chosen, chosen)
        score = float(evidence.sum())
        if best is None or score > best[0]:
            best = (score, responsibility)
    assert best is not None  # noqa: S101 - STARTS is not 0
    return best[1]


def _log_joint(
    tables: list[_Table], responsibility: FloatArray, seen: NDArray[np.intp], wanted: NDArray[np.intp]
) -> tuple[FloatArray, FloatArray]:
    """Log evidence and responsibilities of the wanted drives, given those of the drives seen."""
    size = responsibility.sum(axis=0)
    score = np.log((size + 1.0) / (size.sum() + size.size))[None, :] * np.ones((wanted.size, 1))
    for table in tables:
        present = responsibility * (table.weight[seen] > 0)[:, None]
        overall = (table.shares[seen] * (table.weight[seen] > 0)[:, None]).sum(axis=0) + 0.1
        start = PSEUDO_DRIVES * overall / overall.sum()
        rows = (present.T @ table.shares[seen] + start) / (present.sum(axis=0)[:, None] + PSEUDO_DRIVES)
        score += table.weight[wanted][:, None] * np.log(table.shares[wanted] @ rows.T)
    top = score.max(axis=1, keepdims=True)
    evidence = top[:, 0] + np.log(np.exp(score - top).sum(axis=1))
    return evidence, np.exp(score - evidence[:, None])
