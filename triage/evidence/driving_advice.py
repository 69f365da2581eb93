"""Which driving would tell claims apart: what could not be measured, and what was measured too loosely."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.corners import CORNER_NAMES, CORNERS, VEHICLE, Place
from triage.evidence.claims import Claims, Pairs
from triage.evidence.hypotheses import DrivingAdvice, Finding
from triage.evidence.pair_information import flattened, gain_of_driving_on, gains_of_seeing_bit
from triage.evidence.rule_tables import MeasurementRule, Rulebook
from triage.evidence.value_words import curve_words
from triage.signals.measurement import NotMeasurable
from triage.speed_log import FloatArray
from triage.texts import Text, capital_first, in_english, shaped, small_first, without_stop

LEAST_ADVICE_BIT: Final = 0.02
"""Advice that tells less than this about a pair is not worth a drive (judgement)."""

CERTAIN_BAND: Final = 0.95
"""A finding that lies in one band with this probability is not made better by a longer drive (judgement)."""

NUMBER_WORDS: Final = {2: Text("twice"), 3: Text("three times"), 5: Text("five times"), 10: Text("ten times")}


@dataclass(frozen=True, slots=True)
class Drive:
    """A drive and what it would tell about each pair.

    Attributes
    ----------
    gain_bit : float64[pairs]
    times : int64[pairs]
        How many times as long as the present one; 1 for a drive of a kind that was missing.
    """

    rule: MeasurementRule
    place: Place
    gain_bit: FloatArray
    times: NDArray[np.int64]


def possible_drives(
    findings: Sequence[Finding],
    not_measurable: Sequence[NotMeasurable],
    rulebook: Rulebook,
    *,
    claims: Claims,
    pairs: Pairs,
) -> tuple[Drive, ...]:
    """List the drives that could show more, ordered by measurement and place.

    Parameters
    ----------
    findings : sequence of Finding
    not_measurable : sequence of NotMeasurable
        Without those that no driving would mend.
    rulebook : Rulebook
    claims, pairs
        Between which to decide.

    Notes
    -----
    A measurement that was not possible is expected to come out as the likelihoods of the rule book have it
    for a drive of the right kind; its own uncertainty lessens the gain and is not known beforehand. Findings
    of one group share their evidence, in the gain as in the ranking.
    """
    told = Counter(
        (rulebook.measurements[one.source].group, one.corner)
        for one in findings
        if one.source in rulebook.measurements
    )
    drives = _missing_drives(
        tuple(_missing_places(not_measurable, rulebook)), told, rulebook, (claims, pairs)
    )
    drives += [
        _longer_drive(
            finding, _weight(rule, told[rule.group, finding.corner], rulebook), rulebook, (claims, pairs)
        )
        for finding in findings
        for rule in (rulebook.measurements.get(finding.source),)
        if rule and rule.longer_helps and max(finding.band_probability.values()) < CERTAIN_BAND
    ]
    return tuple(sorted(drives, key=lambda drive: (drive.rule.id, drive.place)))


def best_drive(drives: Sequence[Drive], pair: int) -> DrivingAdvice | None:
    """Return the drive that tells most about a pair; None when none tells anything worth while."""
    best = max(drives, key=lambda drive: drive.gain_bit[pair], default=None)
    if best is None or best.gain_bit[pair] < LEAST_ADVICE_BIT:
        return None
    text = driving_text(best.rule, best.place, int(best.times[pair]))
    return DrivingAdvice(best.rule.id, best.place, text, float(best.gain_bit[pair]))


def driving_text(rule: MeasurementRule, place: Place, times: int = 1) -> str:
    """Write the driving for a measurement at a place as a sentence.

    Parameters
    ----------
    rule : MeasurementRule
    place : str
        Names the wheel, and says which curve loads it: the one in which it is the outer wheel.
    times : int
        How many times as long as the present drive; 1 for a drive of a kind that was missing.
    """
    words: dict[str, str] = {"corner": CORNER_NAMES[place], **curve_words(place)}
    text = shaped(Text(rule.driving or rule.needed, **words), without_stop)
    if times > 1:
        text = Text(
            "about {times} as long a drive as this one, with more of this: {driving}",
            times=NUMBER_WORDS[times],
            driving=in_english(text, small_first),
        )
    return Text("{sentence}.", sentence=shaped(text, capital_first))


def _missing_places(
    not_measurable: Sequence[NotMeasurable], rulebook: Rulebook
) -> Iterator[tuple[MeasurementRule, Place]]:
    """Yield every measurement and place that some driving would add; a log too short lacks them all."""
    seen: set[tuple[str, Place]] = set()
    for gap in not_measurable:
        known = rulebook.measurements.get(gap.id)
        for rule in [known] if known else rulebook.measurements.values() if gap.id == "all" else ():
            for place in _places(rule, gap):
                if gap.by_driving and (rule.id, place) not in seen:
                    seen.add((rule.id, place))
                    yield rule, place


def _places(rule: MeasurementRule, gap: NotMeasurable) -> tuple[Place, ...]:
    if rule.scope == "vehicle":
        return (VEHICLE,)
    return CORNERS if gap.corner is None else (gap.corner,)


def _missing_drives(
    missing: Sequence[tuple[MeasurementRule, Place]],
    told: Mapping[tuple[str, Place], int],
    rulebook: Rulebook,
    between: tuple[Claims, Pairs],
) -> list[Drive]:
    claims, pairs = between
    # A further finding shares the evidence of its group with those that are there already.
    weights = [_weight(rule, 1 + told.get((rule.group, place), 0), rulebook) for rule, place in missing]
    tables = [
        flattened(claims.table(rule.id, place), weight)
        for (rule, place), weight in zip(missing, weights, strict=True)
    ]
    return [
        Drive(rule, place, gain * _may_show(rule, place, claims, pairs), np.ones(gain.size, dtype=np.int64))
        for (rule, place), gain in zip(missing, gains_of_seeing_bit(tables, claims, pairs), strict=True)
    ]


def _longer_drive(
    finding: Finding, weight: float, rulebook: Rulebook, between: tuple[Claims, Pairs]
) -> Drive:
    claims, pairs = between
    rule = rulebook.measurements[finding.source]
    shares = [finding.band_probability.get(band, 0.0) for band in rule.bands]
    table = flattened(claims.table(rule.id, finding.corner), weight)
    longer = gain_of_driving_on(table, shares, claims, pairs)
    return Drive(rule, finding.corner, longer.gain_bit, longer.times)


def _may_show(rule: MeasurementRule, place: Place, claims: Claims, pairs: Pairs) -> FloatArray:
    """1 for pairs whose claims both put a fault at the place, or when the measurement needs none; else 0."""
    if not rule.needs_fault:
        return np.ones(pairs.share.size)
    at_place = np.array([claim.corner == place for claim in claims.hypotheses], dtype=float)
    shows: FloatArray = at_place[pairs.first] * at_place[pairs.second]
    return shows


def _weight(rule: MeasurementRule, count: int, rulebook: Rulebook) -> float:
    """Factor on the log-likelihood of one of so many findings of its group at a place."""
    given = rulebook.groups[rule.group].weight
    shared = given if given is not None else 1.0 / math.sqrt(max(count, 1))
    return shared * rulebook.likelihoods[rule.id].weight
