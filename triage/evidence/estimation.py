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
"""Every row starts as this many drives spread half like a sound corner, half evenly, that of a variant as so
many spread like those of its kin (judgement)."""

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

FEW_DRIVES: Final = 10
"""So many drives of a variant are needed to tell by them alone whether it differs from sound (judgement)."""

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
    kin: Mapping[str, str] | None = None,
) -> LikelihoodTable:
    """Estimate the likelihood rows of one measurement.

    Parameters
    ----------
    shares : mapping of row name to list of band probabilities
        One entry per drive, as :func:`triage.evidence.findings.band_probability` gives them; names are causes
        or their variants, and ``sound`` holds those of corners (or cars) without the cause.
    sound_at_least : sequence of float
        Smallest probability of each band in the sound row, from what real healthy cars do; one per band.
    basis, evidence
        Go into the table.
    kin : mapping of variant to str, optional
        Variants of the same word are close: each starts from what all of them show together. A name left out
        stands alone.

    Returns
    -------
    LikelihoodTable
        With rows for ``sound``, ``other`` and everything that differs from sound.
    """
    sound = _sound_row(_stacked(shares.get(SOUND, ()), len(sound_at_least)), np.array(sound_at_least))
    kin = kin or {}
    names = dict.fromkeys((*shares, *kin))
    drives = {
        name: _stacked(shares.get(name, ()), sound.size) for name in names if name not in (SOUND, OTHER)
    }
    families: dict[str, dict[str, FloatArray]] = {}
    for name, own in drives.items():
        families.setdefault(kin.get(name, name), {})[name] = own
    rows = [_rows_of_family(family, sound) for family in families.values()]
    middles = _by_cause({name: _cause_row(own, _careless(sound)) for name, own in drives.items() if len(own)})
    return LikelihoodTable(
        basis=basis,
        evidence=evidence,
        rows={
            name: normalised_row(tuple(row.tolist()))
            for name, row in ({SOUND: sound, OTHER: _other_row(sound, middles)} | _merged(rows)).items()
        },
    )


def _rows_of_family(family: Mapping[str, FloatArray], sound: FloatArray) -> dict[str, FloatArray]:
    """Rows of close variants, as far as they differ from the sound row.

    A measurement that few logs allow (single edges, say) leaves each variant with a handful of drives. Its
    row starts from that of all of them where together they differ from sound ones. Where it has too few
    drives of its own to be judged by them, it stands unless they speak for the sound row.
    """
    together = np.concatenate(list(family.values()))
    common = _cause_row(together, _careless(sound))
    if len(family) == 1 or not _is_distinct(common, together, sound):
        alone = {name: _cause_row(own, _careless(sound)) for name, own in family.items()}
        return {name: row for name, row in alone.items() if _is_distinct(row, family[name], sound)}
    return {
        name: row
        for name, own in family.items()
        if _is_distinct(row := _cause_row(own, common), own, sound)
        or (len(own) < FEW_DRIVES and _gain(common, own, sound) >= 0.0)
    }


def _by_cause(rows: Mapping[str, FloatArray]) -> list[FloatArray]:
    """Mean row of every cause over its variants, so that a cause of many variants does not count more."""
    causes: dict[str, list[FloatArray]] = {}
    for name, row in rows.items():
        causes.setdefault(name.split(VARIANT_MARK, maxsplit=1)[0], []).append(row)
    return [np.mean(variants, axis=0) for variants in causes.values()]


def _merged(rows: Sequence[Mapping[str, FloatArray]]) -> dict[str, FloatArray]:
    return {name: row for each in rows for name, row in each.items()}


def _gain(row: FloatArray, drives: FloatArray, sound: FloatArray) -> float:
    """Twice the log-likelihood ratio of the drives, a row against the sound one."""
    return 2.0 * float(np.log(drives @ row).sum() - np.log(drives @ sound).sum())


def _is_distinct(row: FloatArray, drives: FloatArray, sound: FloatArray) -> bool:
    """Whether the drives of a cause fall into other bands than sound ones (likelihood-ratio test).

    References
    ----------
    S. S. Wilks, Ann. Math. Statist. 9, 1938, 60 (cited from memory): twice the log-likelihood ratio is
    chi-square distributed with one degree of freedom less than there are bands.
    """
    if np.abs(row - sound).max() <= LEAST_DIFFERENCE:
        return False
    return _gain(row, drives, sound) > float(chi2.ppf(SURE_DIFFERENCE, sound.size - 1))


def _stacked(drives: Sequence[Sequence[float]], width: int) -> FloatArray:
    return np.array(drives, dtype=float).reshape(len(drives), width)


def _sound_row(drives: FloatArray, at_least: FloatArray) -> FloatArray:
    even = np.full(at_least.size, 1.0 / at_least.size)
    row = _likeliest_row(drives, max(LEAST_DRIVES - len(drives), 0) * even + LEAST_SOUND)
    row = np.maximum((1.0 - UNSEEN_SHARE) * row + UNSEEN_SHARE * even, at_least)
    normalised: FloatArray = row / row.sum()
    return normalised


def _careless(sound: FloatArray) -> FloatArray:
    """Return what a row starts as when nothing is known of the cause."""
    row: FloatArray = 0.5 * sound + 0.5 / sound.size
    return row


def _cause_row(drives: FloatArray, start: FloatArray) -> FloatArray:
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
