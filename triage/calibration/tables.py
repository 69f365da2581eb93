"""Likelihood tables counted on measured cases.

Every case counts for the row of its cause at the blamed corner and for the row ``sound`` elsewhere. Where
the cases of a cause fall into variants, different ways in which it shows itself (see
:mod:`triage.calibration.variants`), each variant has a row of its own, ``<cause>_<number>``, and the cause
as a whole has none. Rows of strong faults start from what all strong ones of the cause show together
(:mod:`triage.evidence.estimation`). Those of mild faults stand alone: they differ from sound by so little
that what a few drives share by chance would count (tried on series 2: 1 % more mild faults were missed).
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.calibration.ensemble import MeasuredCase
from triage.calibration.variants import sort_into_variants
from triage.corners import CORNERS, VEHICLE, Place
from triage.evidence.estimation import estimate_table
from triage.evidence.findings import build_findings
from triage.evidence.hypotheses import Finding
from triage.evidence.likelihoods import SOUND, LikelihoodTable, variant_name
from triage.evidence.rule_tables import NO_FAULT, Rulebook

MILD_BELOW: Final = 0.42
"""Drives with faults below this severity are sorted into variants apart from the others. A mild fault shows
the same pattern, but weaker, and among many strong ones it would be counted as their careless reading."""

ROUGH_BEARING: Final = "bearing-roughness"
"""Usually shows nothing in the wheel speed, so it takes the row of a sound wheel."""


@dataclass(frozen=True, slots=True)
class CountedTables:
    """What a calibration makes: the tables by measurement, and the shares of the variants by cause."""

    tables: Mapping[str, LikelihoodTable]
    variants: Mapping[str, tuple[float, ...]]


def count_tables(
    cases: Sequence[MeasuredCase], rulebook: Rulebook, *, evidence: str, date: str = ""
) -> CountedTables:
    """Count how often each band occurs under each cause.

    Parameters
    ----------
    cases : sequence of MeasuredCase
    rulebook : Rulebook
        Gives bands and scopes; its own likelihoods are not used.
    evidence : str
        The command that makes the numbers.
    date : str
        Day to be written beside it; changes no number.

    Returns
    -------
    CountedTables
    """
    findings = [build_findings(one.measurements, rulebook) for one in cases]
    labels, variants, kin = _label_variants(cases, findings, rulebook)
    shares: dict[str, dict[str, list[tuple[float, ...]]]] = {
        name: defaultdict(list) for name in rulebook.measurements
    }
    for one, found, label in zip(cases, findings, labels, strict=True):
        for finding in found:
            blamed = finding.corner in _places_that_tell(one.case.corner) and not _looks_sound(one.case.cause)
            shares[finding.source][label if blamed else SOUND].append(_bands(finding, rulebook))
    tables = {
        name: replace(
            estimate_table(
                shares[name],
                sound_at_least=rule.sound_at_least,
                basis="simulated",
                evidence=evidence,
                kin=kin,
            ),
            date=date,
        )
        for name, rule in rulebook.measurements.items()
    }
    return CountedTables(tables, variants)


def _label_variants(
    cases: Sequence[MeasuredCase], findings: Sequence[Iterable[Finding]], rulebook: Rulebook
) -> tuple[list[str], dict[str, tuple[float, ...]], dict[str, str]]:
    """Name of the row that each case counts for, the shares of the variants of each cause, and their kin."""
    labels = [one.case.cause for one in cases]
    variants: dict[str, tuple[float, ...]] = {}
    kin: dict[str, str] = {}
    for cause in dict.fromkeys(labels):
        if _looks_sound(cause):
            continue
        rows = [index for index, one in enumerate(cases) if one.case.cause == cause]
        # The variants of a cause of the whole vehicle are told apart by the findings of the vehicle alone:
        # those of the four corners would come four to a measurement.
        own = [[f for f in findings[i] if f.corner == cases[i].case.corner] for i in rows]
        drives = [{finding.source: _bands(finding, rulebook) for finding in found} for found in own]
        weights = [_weights(found, rulebook) for found in own]
        mild = np.array([cases[i].case.severity < MILD_BELOW for i in rows])
        number = _sort_apart(drives, weights, mild)
        if number.max(initial=0) == 0:
            continue
        count = np.bincount(number)
        variants[cause] = tuple(float(share) for share in (count + 1.0) / (count.sum() + count.size))
        for index, one, slight in zip(rows, number, mild, strict=True):
            labels[index] = variant_name(cause, int(one) + 1)
            if not slight:
                kin[labels[index]] = cause
    return labels, variants, kin


def _sort_apart(
    drives: Sequence[Mapping[str, tuple[float, ...]]],
    weights: Sequence[Mapping[str, float]],
    mild: NDArray[np.bool_],
) -> NDArray[np.intp]:
    """Give each drive the number of its variant, those of mild faults after those of strong ones."""
    number = np.zeros(len(drives), dtype=np.intp)
    for chosen in (np.flatnonzero(~mild), np.flatnonzero(mild)):
        if chosen.size == 0:
            continue
        first = number.max() + 1 if chosen.size < len(drives) and mild[chosen[0]] else 0
        sorted_ones = sort_into_variants([drives[int(i)] for i in chosen], [weights[int(i)] for i in chosen])
        number[chosen] = first + sorted_ones
    return number


def _weights(findings: Sequence[Finding], rulebook: Rulebook) -> dict[str, float]:
    """About the factors that the verdict will use, which depend on tables not yet counted."""
    group = {finding.source: rulebook.measurements[finding.source].group for finding in findings}
    size = Counter(group.values())
    given = {name: rulebook.groups[name].weight for name in size}
    return {name: given[one] or float(1.0 / np.sqrt(size[one])) for name, one in group.items()}


def _bands(finding: Finding, rulebook: Rulebook) -> tuple[float, ...]:
    return tuple(finding.band_probability[band] for band in rulebook.measurements[finding.source].bands)


def _places_that_tell(blamed: Place) -> tuple[Place, ...]:
    """Where findings are governed by a cause at the blamed place.

    What a faulty wheel does to a finding on the whole vehicle, such as the fit of the curves, depends on the
    drive more than on the fault; it counts as what vehicles without a fault of their own show.
    """
    return (*CORNERS, VEHICLE) if blamed == VEHICLE else (blamed,)


def _looks_sound(cause: str) -> bool:
    return cause in (NO_FAULT, ROUGH_BEARING)
