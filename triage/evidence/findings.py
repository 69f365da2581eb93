"""Measurements held against the bands of the rule book."""

from __future__ import annotations

import math
from collections.abc import Iterable

import numpy as np

from triage.corners import CORNER_NAMES
from triage.evidence.hypotheses import Finding
from triage.evidence.rule_tables import Distribution, MeasurementRule, Rulebook
from triage.evidence.value_words import curve_words, least_rate_words, value_words
from triage.signals.measurement import Measurement
from triage.texts import Text, prose


def build_findings(measurements: Iterable[Measurement], rulebook: Rulebook) -> tuple[Finding, ...]:
    """Turn measurements into findings.

    Parameters
    ----------
    measurements : iterable of Measurement
        In any order; those the rule book does not know, and values that are no finite number, are left out.
    rulebook : Rulebook

    Returns
    -------
    tuple of Finding
        In the order of the measurements, ids ``<measurement>@<corner>``.
    """
    return tuple(
        _finding(measurement, rulebook.measurements[measurement.id])
        for measurement in measurements
        if measurement.id in rulebook.measurements
        and math.isfinite(measurement.value)
        and math.isfinite(measurement.std_uncertainty)
    )


def band_probability(
    value: float, std_uncertainty: float, edges: tuple[float, ...], *, distribution: Distribution = "normal"
) -> tuple[float, ...]:
    """Return the probability that the true value lies in each band.

    Parameters
    ----------
    value, std_uncertainty : float
        Mean and standard deviation of the true value. A standard uncertainty that is 0, negative or not a
        number counts as 0.
    edges : tuple of float
        Limits between the bands, rising; a value exactly on an edge belongs to the upper band.
    distribution : {"normal", "lognormal"}
        ``lognormal`` is for shares, rates and lengths, whose edges are all above 0: one loss seen in a
        minute may stand for a rate twice or half as large, but not for none. A value smaller than
        its uncertainty was not really seen and is taken as normal.

    Returns
    -------
    tuple of float
        One more than edges; sums to 1.

    Notes
    -----
    Normal is the usual assumption for a combined uncertainty (GUM: JCGM 100:2008, G.2.1).
    """
    from scipy.special import ndtr  # noqa: PLC0415 - the window starts without it

    limits = np.asarray(edges, dtype=float)
    if distribution == "lognormal" and 0.0 < std_uncertainty <= value:
        variance = math.log1p((std_uncertainty / value) ** 2)
        limits, value, std_uncertainty = np.log(limits), math.log(value) - variance / 2.0, math.sqrt(variance)
    if std_uncertainty > 0.0:
        with np.errstate(over="ignore"):  # an infinite distance is a certain one
            scaled = (limits - value) / std_uncertainty
        below, above = np.zeros(len(edges) + 2), np.ones(len(edges) + 2)
        below[1:-1], below[-1] = ndtr(scaled), 1.0
        # Above the value take the upper tail: 1 - Φ loses everything beyond 8 standard deviations.
        above[1:-1], above[-1] = ndtr(-scaled), 0.0
        shares = np.where(below[1:] < 0.5, below[1:] - below[:-1], -(above[1:] - above[:-1]))
    else:
        shares = np.zeros(len(edges) + 1)
        shares[np.searchsorted(limits, value, side="right")] = 1.0
    probability: list[float] = (shares / shares.sum()).tolist()
    return tuple(probability)


def _finding(measurement: Measurement, rule: MeasurementRule) -> Finding:
    shares = band_probability(
        measurement.value, measurement.std_uncertainty, rule.edges, distribution=rule.distribution
    )
    bands = dict(zip(rule.bands, shares, strict=True))
    likeliest = max(bands, key=lambda name: bands[name])
    unseen = rule.nothing and measurement.value == 0.0
    words = {
        "corner": CORNER_NAMES[measurement.corner],
        "value": value_words(
            measurement.value, measurement.std_uncertainty, unit=rule.unit, told_as=rule.told_as
        ),
        **curve_words(measurement.corner),
        "band": prose(likeliest, f"measurement.{rule.id}"),
    }
    if unseen and rule.unit == "1/min":
        words["least"] = least_rate_words(measurement.std_uncertainty)
    return Finding(
        id=f"{measurement.id}@{measurement.corner}",
        source=measurement.id,
        corner=measurement.corner,
        statement=Text(rule.nothing if unseen else rule.statement, **words),
        value=measurement.value,
        std_uncertainty=measurement.std_uncertainty,
        unit=measurement.unit,
        band_probability=bands,
        spans=measurement.spans,
    )
