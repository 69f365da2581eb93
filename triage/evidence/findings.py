"""Measurements held against the bands of the rule book."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

import numpy as np

from triage.corners import CORNER_NAMES
from triage.evidence.equally_wide import work_on_equally_wide
from triage.evidence.hypotheses import Finding
from triage.evidence.rule_tables import Distribution, MeasurementRule, Rulebook
from triage.evidence.value_words import curve_words, least_rate_words, value_words
from triage.signals.measurement import Measurement
from triage.speed_log import FloatArray
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
    known = [
        (measurement, rulebook.measurements[measurement.id])
        for measurement in measurements
        if measurement.id in rulebook.measurements
        and math.isfinite(measurement.value)
        and math.isfinite(measurement.std_uncertainty)
    ]
    distances = [
        _distances(one.value, one.std_uncertainty, rule.edges, rule.distribution) for one, rule in known
    ]
    shares = work_on_equally_wide(distances, _shares)
    return tuple(_finding(*one, told.tolist()) for one, told in zip(known, shares, strict=True))


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
    distances = _distances(value, std_uncertainty, edges, distribution)
    return tuple(_shares(distances[np.newaxis])[0].tolist())


def _distances(
    value: float, std_uncertainty: float, edges: tuple[float, ...], distribution: Distribution
) -> FloatArray:
    """Return how many standard deviations each edge lies above the value, infinite where that is sure."""
    limits = edges
    if distribution == "lognormal" and 0.0 < std_uncertainty <= value:
        variance = math.log1p((std_uncertainty / value) ** 2)
        limits = tuple(np.log(edges).tolist())
        value, std_uncertainty = math.log(value) - variance / 2.0, math.sqrt(variance)
    if std_uncertainty > 0.0:
        return np.array([(limit - value) / std_uncertainty for limit in limits])
    return np.array([math.inf if limit > value else -math.inf for limit in limits])


def _shares(distances: FloatArray) -> FloatArray:
    """Return the probability of every band from the distances of the edges, float64[values, edges]."""
    from scipy.special import ndtr  # noqa: PLC0415 - the window starts without it

    beyond = np.full((len(distances), 1), np.inf)
    limits = np.hstack((-beyond, distances, beyond))
    # Above the value take the upper tail: 1 - Φ loses everything beyond 8 standard deviations.
    below, above = ndtr(limits), ndtr(-limits)
    shares = np.where(below[:, 1:] < 0.5, np.diff(below), above[:, :-1] - above[:, 1:])
    normalised: FloatArray = shares / shares.sum(axis=1, keepdims=True)
    return normalised


def _finding(measurement: Measurement, rule: MeasurementRule, shares: Sequence[float]) -> Finding:
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
