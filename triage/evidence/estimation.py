"""From the bands in which simulated drives fell to a row for every cause."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

import numpy as np
from scipy.stats import chi2

from triage.evidence.likelihoods import SOUND, VARIANT_MARK, Basis, LikelihoodTable, normalised_row
from triage.evidence.rule_tables import OTHER
from triage.speed_log import FloatArray

PSEUDO_DRIVES: Final = 2.5
"""Every row starts as this many drives spread half like a sound corner, half evenly (judgement)."""

LEAST_DRIVES: Final = 20
"""A sound row from fewer drives is mostly what it started as."""

LEAST_SOUND: Final = 0.05
"""Drives added to every band of a sound row."""

ROUNDS: Final = 40
SMALLEST_SHARE: Final = 1e-12

UNSEEN_SHARE: Final = 0.002
"""Share of a sound row kept for what the simulator does not know, spread evenly (judgement)."""

CAUSE_UNSEEN_SHARE: Final = 0.06
"""The same for the row of a cause, spread half like a sound corner, half evenly.

Real cars and control units show a fault in ways the simulator does not know, which must not rule the cause
out (judgement).
"""

OTHER_UNSEEN_SHARE: Final = 0.15
"""The same for the row of unknown causes."""

MOST_OTHER: Final = 5.0
"""No band is more than this many times as probable under an unknown cause as on a sound car.

Nobody knows what an unknown cause looks like, so that one odd value must not prove it. Without a bound the
few odd values of a clear fault that the simulator does not know outweigh all that speaks for it (judgement).
"""

LEAST_DIFFERENCE: Final = 0.05
SURE_DIFFERENCE: Final = 0.99
"""A cause whose row differs less than this from the sound one anywhere gets none; nor does one whose drives
chance alone could have spread like sound ones with this probability. Rows that differ by chance only would,
over tens of measurements, add up to evidence against every cause."""


def estimate_table(
    shares: Mapping[str, Sequence[Sequence[float]]],
    *,
    sound_at_least: Sequence[float],
    basis: Basis,
    evidence: str,
) -> LikelihoodTable:
    """Estimate the likelihood rows of one measurement.

    Parameters
    ----------
    shares : mapping of cause id to list of band probabilities
        One entry per drive, as :func:`triage.evidence.findings.band_probability` gives them; the key
        ``sound`` holds those of corners (or cars) without the cause.
    sound_at_least : sequence of float
        Smallest probability of each band in the sound row, from what real healthy cars do; one per band.
    basis, evidence
        Go into the table.

    Returns
    -------
    LikelihoodTable
        With rows for ``sound``, ``other`` and every cause that differs from sound.
    """
    sound = _sound_row(_stacked(shares.get(SOUND, ()), len(sound_at_least)), np.array(sound_at_least))
    drives = {
        cause: _stacked(bands, sound.size) for cause, bands in shares.items() if cause not in (SOUND, OTHER)
    }
    rows = {cause: _cause_row(bands, sound) for cause, bands in drives.items()}
    distinct = {cause: row for cause, row in rows.items() if _is_distinct(row, drives[cause], sound)}
    return LikelihoodTable(
        basis=basis,
        evidence=evidence,
        rows={
            name: normalised_row(tuple(row.tolist()))
            for name, row in {SOUND: sound, OTHER: _other_row(sound, _by_cause(rows)), **distinct}.items()
        },
    )


def _is_distinct(row: FloatArray, drives: FloatArray, sound: FloatArray) -> bool:
    """Whether the drives of a cause fall into other bands than sound ones (likelihood-ratio test).

    References
    ----------
    S. S. Wilks, Ann. Math. Statist. 9, 1938, 60 (cited from memory): twice the log-likelihood ratio is
    chi-square distributed with one degree of freedom less than there are bands.
    """
    if np.abs(row - sound).max() <= LEAST_DIFFERENCE:
        return False
    gain = 2.0 * float(np.log(drives @ row).sum() - np.log(drives @ sound).sum())
    return gain > float(chi2.ppf(SURE_DIFFERENCE, sound.size - 1))


def _by_cause(rows: Mapping[str, FloatArray]) -> list[FloatArray]:
    """Mean row of every cause over its variants, so that a cause of many variants does not count more."""
    causes: dict[str, list[FloatArray]] = {}
    for name, row in rows.items():
        causes.setdefault(name.split(VARIANT_MARK, maxsplit=1)[0], []).append(row)
    return [np.mean(variants, axis=0) for variants in causes.values()]


def _stacked(drives: Sequence[Sequence[float]], width: int) -> FloatArray:
    return np.array(drives, dtype=float).reshape(len(drives), width)


def _sound_row(drives: FloatArray, at_least: FloatArray) -> FloatArray:
    even = np.full(at_least.size, 1.0 / at_least.size)
    row = _likeliest_row(drives, max(LEAST_DRIVES - len(drives), 0) * even + LEAST_SOUND)
    row = np.maximum((1.0 - UNSEEN_SHARE) * row + UNSEEN_SHARE * even, at_least)
    normalised: FloatArray = row / row.sum()
    return normalised


def _cause_row(drives: FloatArray, sound: FloatArray) -> FloatArray:
    start = 0.5 * sound + 0.5 / sound.size
    row = _likeliest_row(drives, PSEUDO_DRIVES * start)
    mixed: FloatArray = (1.0 - CAUSE_UNSEEN_SHARE) * row + CAUSE_UNSEEN_SHARE * start
    return mixed


def _likeliest_row(drives: FloatArray, pseudo: FloatArray) -> FloatArray:
    """Row under which the band probabilities of the drives are likeliest.

    Parameters
    ----------
    drives : float64[N, bands]
        P(band | value) of each drive.
    pseudo : float64[bands]
        Counts added to those of the drives.

    Notes
    -----
    The verdict scores a finding by sum_b P(band b | value) P(b | cause). The mean of the drives' band
    probabilities is not the row that fits this best: every uncertain value has already spread over its
    neighbouring bands and would spread a second time. Expectation maximisation takes that back.

    References
    ----------
    A. P. Dempster, N. M. Laird, D. B. Rubin, J. R. Stat. Soc. B 39, 1977, 1 (cited from memory).
    """
    total = len(drives) + float(pseudo.sum())
    row: FloatArray = (drives.sum(axis=0) + pseudo) / total
    for _ in range(ROUNDS):
        joint = drives * row
        share = joint / np.maximum(joint.sum(axis=1, keepdims=True), SMALLEST_SHARE)
        row = (share.sum(axis=0) + pseudo) / total
    return row


def _other_row(sound: FloatArray, rows: list[FloatArray]) -> FloatArray:
    middle = 0.5 * sound + 0.5 * np.mean(rows or [sound], axis=0)
    other: FloatArray = (1.0 - OTHER_UNSEEN_SHARE) * middle + OTHER_UNSEEN_SHARE / sound.size
    bounded = np.minimum(other, MOST_OTHER * sound)
    room = MOST_OTHER * sound - bounded
    row: FloatArray = bounded + (1.0 - bounded.sum()) * room / room.sum()
    return row
