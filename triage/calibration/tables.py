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
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.calibration.ensemble import ROUGH_BEARING, MeasuredCase, spread_over_cores
from triage.calibration.variants import sort_into_variants
from triage.corners import CORNERS, VEHICLE, Place
from triage.evidence.estimation import estimate_table
from triage.evidence.findings import build_findings
from triage.evidence.hypotheses import Finding
from triage.evidence.likelihoods import SOUND, LikelihoodTable, variant_name
from triage.evidence.rule_tables import NO_FAULT, Rulebook
from triage.progress import Progress, no_progress

MILD_BELOW: Final = 0.42
"""Drives with faults below this severity are sorted into variants apart from the others. A mild fault shows
the same pattern, but weaker, and among many strong ones it would be counted as their careless reading."""


@dataclass(frozen=True, slots=True)
class CountedTables:
    """What a calibration makes: the tables by measurement, and the shares of the variants by cause."""

    tables: Mapping[str, LikelihoodTable]
    variants: Mapping[str, tuple[float, ...]]


def count_tables(
    cases: Sequence[MeasuredCase],
    rulebook: Rulebook,
    *,
    evidence: str,
    date: str = "",
    workers: int = 1,
    progress: Progress = no_progress,
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
    workers : int
        Processes; their number changes nothing else.
    progress : Progress

    Returns
    -------
    CountedTables
    """
    findings = [build_findings(one.measurements, rulebook) for one in cases]
    numbers = _number_variants(cases, findings, rulebook, workers=workers, progress=progress)
    labels, variants, kin = _label_variants(cases, numbers)
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


@dataclass(frozen=True, slots=True)
class _Drives:
    """The drives of one cause, as variants are found in them.

    Attributes
    ----------
    shares, weights : tuple of mapping
        As for :func:`triage.calibration.variants.sort_into_variants`.
    mild : bool[N]
    """

    shares: tuple[Mapping[str, tuple[float, ...]], ...]
    weights: tuple[Mapping[str, float], ...]
    mild: NDArray[np.bool_]


def _number_variants(
    cases: Sequence[MeasuredCase],
    findings: Sequence[Sequence[Finding]],
    rulebook: Rulebook,
    *,
    workers: int,
    progress: Progress,
) -> dict[str, NDArray[np.intp]]:
    """Find the variant of each drive, by cause, for all causes that show themselves."""
    causes = [cause for cause in dict.fromkeys(one.case.cause for one in cases) if not _looks_sound(cause)]
    tasks = []
    for cause in causes:
        own = _rows_of(cause, cases)
        tasks.append(_gather([cases[row] for row in own], [findings[row] for row in own], rulebook))
    numbers = spread_over_cores(
        _sort_apart, tasks, workers=workers, doing="Finding variants", progress=progress
    )
    return dict(zip(causes, numbers, strict=True))


def _rows_of(cause: str, cases: Sequence[MeasuredCase]) -> list[int]:
    return [index for index, one in enumerate(cases) if one.case.cause == cause]


def _gather(
    cases: Sequence[MeasuredCase], findings: Sequence[Sequence[Finding]], rulebook: Rulebook
) -> _Drives:
    # The variants of a cause of the whole vehicle are told apart by the findings of the vehicle alone: those
    # of the four corners would come four to a measurement.
    own = [
        [finding for finding in found if finding.corner == one.case.corner]
        for one, found in zip(cases, findings, strict=True)
    ]
    return _Drives(
        shares=tuple({finding.source: _bands(finding, rulebook) for finding in found} for found in own),
        weights=tuple(_weights(found, rulebook) for found in own),
        mild=np.array([one.case.severity < MILD_BELOW for one in cases]),
    )


def _label_variants(
    cases: Sequence[MeasuredCase], numbers: Mapping[str, NDArray[np.intp]]
) -> tuple[list[str], dict[str, tuple[float, ...]], dict[str, str]]:
    """Name of the row that each case counts for, the shares of the variants of each cause, and their kin."""
    labels = [one.case.cause for one in cases]
    variants: dict[str, tuple[float, ...]] = {}
    kin: dict[str, str] = {}
    for cause, number in numbers.items():
        if number.max(initial=0) == 0:
            continue
        count = np.bincount(number)
        variants[cause] = tuple(float(share) for share in (count + 1.0) / (count.sum() + count.size))
        for index, one in zip(_rows_of(cause, cases), number, strict=True):
            labels[index] = variant_name(cause, int(one) + 1)
            if cases[index].case.severity >= MILD_BELOW:
                kin[labels[index]] = cause
    return labels, variants, kin


def _sort_apart(drives: _Drives) -> NDArray[np.intp]:
    """Give each drive the number of its variant, those of mild faults after those of strong ones."""
    number = np.zeros(drives.mild.size, dtype=np.intp)
    first = 0
    for chosen in (np.flatnonzero(~drives.mild), np.flatnonzero(drives.mild)):
        if not chosen.size:
            continue
        places = chosen.tolist()
        number[chosen] = first + sort_into_variants(
            [drives.shares[place] for place in places], [drives.weights[place] for place in places]
        )
        first = int(number.max()) + 1
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
    """Tell whether a cause takes the row of a sound wheel, because it shows nothing in the wheel speed."""
    return cause in (NO_FAULT, ROUGH_BEARING)
