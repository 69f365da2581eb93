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

from triage.evidence.hypotheses import Finding
from triage.evidence.posterior import (
    Atom,
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


def weigh_claims(findings: Sequence[Finding], rulebook: Rulebook) -> Claims:
    """Return the belief after all findings, recording and answers, with the doubt about the recording."""
    known = known_findings(findings, rulebook)
    answers = [finding for finding in known if finding.source in rulebook.checks]
    belief = believe([finding for finding in known if finding.source in rulebook.measurements], rulebook)
    atoms, share, prior = _one_per_cause(belief)
    doubt = rulebook.workshop.doubt
    share = (1.0 - doubt) * share + doubt * prior
    if answers:
        log_likelihood = np.log(finding_likelihoods(answers, rulebook, atoms))
        weights = finding_weights(answers, rulebook, log_likelihood=log_likelihood, prior=prior)
        share = share * np.exp(weights @ log_likelihood)
    return Claims(atoms, share / share.sum())


def _one_per_cause(belief: Belief) -> tuple[tuple[Atom, ...], FloatArray, FloatArray]:
    place: dict[tuple[str, str], int] = {}
    for atom in belief.atoms:
        place.setdefault((atom.blamed, atom.cause), len(place))
    number = [place[atom.blamed, atom.cause] for atom in belief.atoms]
    first = [number.index(i) for i in range(len(place))]
    atoms = tuple(replace(belief.atoms[i], variant=belief.atoms[i].cause) for i in first)
    share, prior = np.zeros(len(place)), np.zeros(len(place))
    np.add.at(share, number, belief.probability)
    np.add.at(prior, number, belief.prior)
    return atoms, share, prior
