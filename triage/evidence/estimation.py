"""From the bands in which simulated drives fell to a row for every cause."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

import numpy as np

from triage.evidence.likelihoods import SOUND, VARIANT_MARK, Basis, LikelihoodTable, normalised_row
from triage.evidence.rule_tables import OTHER
from triage.speed_log import FloatArray

PSEUDO_DRIVES: Final = 2.5
"""Every row starts as this many drives spread half like a sound corner, half evenly (judgement)."""

LEAST_DRIVES: Final = 20
"""A sound row from fewer drives is mostly what it started as."""

UNSEEN_SHARE: Final = 0.002
"""Share of a sound row kept for what the simulator does not know, spread evenly (judgement)."""

CAUSE_UNSEEN_SHARE: Final = 0.06
"""The same for the row of a cause, spread half like a sound corner, half evenly.

Real cars and control units show a fault in ways the simulator does not know, which must not rule the cause
out (judgement).
"""

OTHER_UNSEEN_SHARE: Final = 0.15
"""The same for the row of unknown causes."""

LEAST_DIFFERENCE: Final = 0.05
"""A cause whose row differs less than this from the sound one anywhere gets none."""


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
    rows = {
        cause: _cause_row(_stacked(drives, sound.size), sound)
        for cause, drives in shares.items()
        if cause not in (SOUND, OTHER)
    }
    distinct = {cause: row for cause, row in rows.items() if np.abs(row - sound).max() > LEAST_DIFFERENCE}
    return LikelihoodTable(
        basis=basis,
        evidence=evidence,
        rows={
            name: normalised_row(tuple(row.tolist()))
            for name, row in {SOUND: sound, OTHER: _other_row(sound, _by_cause(rows)), **distinct}.items()
        },
    )


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
    missing = max(LEAST_DRIVES - len(drives), 0)
    row = (drives.sum(axis=0) + missing * even) / (len(drives) + missing)
    row = np.maximum((1.0 - UNSEEN_SHARE) * row + UNSEEN_SHARE * even, at_least)
    normalised: FloatArray = row / row.sum()
    return normalised


def _cause_row(drives: FloatArray, sound: FloatArray) -> FloatArray:
    start = 0.5 * sound + 0.5 / sound.size
    row = (drives.sum(axis=0) + PSEUDO_DRIVES * start) / (len(drives) + PSEUDO_DRIVES)
    mixed: FloatArray = (1.0 - CAUSE_UNSEEN_SHARE) * row + CAUSE_UNSEEN_SHARE * start
    return mixed


def _other_row(sound: FloatArray, rows: list[FloatArray]) -> FloatArray:
    middle = 0.5 * sound + 0.5 * np.mean(rows or [sound], axis=0)
    other: FloatArray = (1.0 - OTHER_UNSEEN_SHARE) * middle + OTHER_UNSEEN_SHARE / sound.size
    return other
