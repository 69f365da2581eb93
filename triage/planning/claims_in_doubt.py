"""The belief that plans are made from: the verdict, with a share of doubt about the recording.

A verdict from a recording rests on models of sensors, wheels and roads, and now and then a car does what no
model foresees. Before parts come off, a share of it (``doubt`` in ``rules/workshop.toml``) is therefore put
back to what is believed without any recording; answers to checks at the car count alike on both. So a quick
check is still worth its minutes before a dear repair, though the recording alone seems to decide.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from triage.corners import Place
from triage.evidence.atoms import Atom, AtomTables, all_atoms
from triage.evidence.hypotheses import Finding
from triage.evidence.posterior import (
    Belief,
    believe,
    finding_likelihoods,
    finding_weights,
    known_findings,
)
from triage.evidence.rule_tables import Rulebook
from triage.speed_log import FloatArray


@dataclass(frozen=True, slots=True)
class Claims:
    """Every (place, cause) with its share of the belief; ``other`` has one for each corner.

    Attributes
    ----------
    atoms : tuple of Atom
        The ways in which a cause shows itself in a recording are one here: checks at the car do not tell
        them apart.
    share : float64[claims]
        Sums to 1.
    """

    atoms: tuple[Atom, ...]
    share: FloatArray


def weigh_claims(
    findings: Sequence[Finding], rulebook: Rulebook, *, recording: Belief | None = None
) -> Claims:
    """Return the belief after all findings, recording and answers, with the doubt about the recording.

    ``recording`` is the belief by the measurements among the findings, where the caller has it.
    """
    known = known_findings(findings, rulebook)
    answers = [finding for finding in known if finding.source in rulebook.checks]
    if recording is None:
        measured = [finding for finding in known if finding.source in rulebook.measurements]
        recording = believe(measured, rulebook)
    tables = atoms_of_causes(rulebook)
    share, prior = _by_cause(recording.probability, rulebook), _by_cause(recording.prior, rulebook)
    doubt = rulebook.workshop.doubt
    share = (1.0 - doubt) * share + doubt * prior
    if answers:
        log_likelihood = np.log(finding_likelihoods(answers, tables))
        weights = finding_weights(answers, rulebook, log_likelihood=log_likelihood, prior=prior)
        share = share * np.exp(weights @ log_likelihood)
    return Claims(tables.atoms, share / share.sum())


def atoms_of_causes(rulebook: Rulebook) -> AtomTables:
    """Return the atoms with all variants of a cause as one, worked out once for each rule book."""
    return rulebook.once(_atoms_of_causes)


def _atoms_of_causes(rulebook: Rulebook) -> AtomTables:
    number = rulebook.once(_number_of_cause).tolist()
    atoms = all_atoms(rulebook).atoms
    first = [atoms[number.index(i)] for i in range(1 + max(number))]
    return AtomTables(tuple(replace(atom, variant=atom.cause) for atom in first), rulebook)


def _number_of_cause(rulebook: Rulebook) -> NDArray[np.intp]:
    """Return which of the atoms of causes each atom goes into, int64[atoms]."""
    place: dict[tuple[Place, str], int] = {}
    atoms = all_atoms(rulebook).atoms
    return np.array(
        [place.setdefault((atom.blamed, atom.cause), len(place)) for atom in atoms], dtype=np.intp
    )


def _by_cause(values: FloatArray, rulebook: Rulebook) -> FloatArray:
    """Sum float64[atoms] over the variants of each cause."""
    sums = np.zeros(len(atoms_of_causes(rulebook).atoms))
    np.add.at(sums, rulebook.once(_number_of_cause), values)
    return sums
