"""Bands with uncertainty, and the sentences made of them."""

from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate, stats

from triage.evidence.findings import band_probability, build_findings
from triage.evidence.rulebook import Rulebook
from triage.evidence.value_words import format_value, value_words
from triage.signals.measurement import Measurement

numbers = st.floats(-1e6, 1e6)


@given(numbers, st.floats(0.0, 1e6), st.lists(numbers, min_size=1, max_size=8, unique=True))
def test_shares_sum_to_one_and_none_is_negative(value: float, spread: float, edges: list[float]) -> None:
    shares = band_probability(value, spread, tuple(sorted(edges)))
    assert len(shares) == len(edges) + 1
    assert all(share >= 0.0 for share in shares)
    assert abs(sum(shares) - 1.0) < 1e-9


def test_shares_are_the_integral_of_the_normal_density() -> None:
    edges = (0.1, 3.0, 60.0)
    shares = band_probability(2.0, 1.5, edges)
    for low, high, share in zip((-20.0, *edges), (*edges, 80.0), shares, strict=True):
        area, _ = integrate.quad(stats.norm(2.0, 1.5).pdf, low, high, points=[2.0])
        assert share == pytest.approx(area, abs=1e-10)


def test_the_far_tail_keeps_its_digits() -> None:
    upper = band_probability(0.0, 1.0, (12.0,))[1]
    assert upper == pytest.approx(stats.norm.sf(12.0), rel=1e-12)
    middle = band_probability(0.0, 1.0, (9.0, 12.0))[1]
    assert middle == pytest.approx(stats.norm.sf(9.0) - stats.norm.sf(12.0), rel=1e-12)
    lower = band_probability(0.0, 1.0, (-12.0,))[0]
    assert lower == pytest.approx(stats.norm.cdf(-12.0), rel=1e-12)


@pytest.mark.parametrize(("value", "band"), [(0.99, 0), (1.0, 1), (1.99, 1), (2.0, 2), (-math.inf, 0)])
def test_without_uncertainty_a_value_lies_in_one_band(value: float, band: int) -> None:
    shares = band_probability(value, 0.0, (1.0, 2.0))
    assert shares[band] == 1.0


@given(numbers, st.floats(1e-3, 1e3), st.floats(1e-3, 1e3), st.floats(-1e3, 1e3))
def test_another_unit_gives_the_same_shares(value: float, spread: float, scale: float, edge: float) -> None:
    one = band_probability(value, spread, (edge, edge + 1.0))
    other = band_probability(value * scale, spread * scale, (edge * scale, (edge + 1.0) * scale))
    assert one == pytest.approx(other, abs=1e-6)


@pytest.mark.parametrize(
    ("value", "spread", "unit", "text"),
    [
        (1.9034, 0.1234, "%", "1.90 ± 0.12 %"),
        (12.345, 1.5, "1/min", "12.3 ± 1.5 1/min"),
        (1234.5, 120.0, "", "1234 ± 120"),
        (0.5, 0.0, "s", "0.5 s"),
        (0.123456, 1e-9, "rev", "0.1235 rev"),
        (3.0, math.nan, "%", "3 %"),
        (3.0, math.inf, "%", "3 %"),
    ],
)
def test_values_are_written_to_the_second_digit_of_their_uncertainty(
    value: float, spread: float, unit: str, text: str
) -> None:
    assert format_value(value, spread, unit) == text


def test_a_finding_tells_corner_value_unit_and_band(
    rulebook: Rulebook, measure: Callable[..., Measurement]
) -> None:
    (finding,) = build_findings([measure("dip-share", "RL", 3.25, 0.21)], rulebook)
    assert finding.id == "dip-share@RL"
    assert finding.statement.startswith(
        "In 3.25 ± 0.21 % more of its samples the rear left wheel reads too slow"
    )
    assert finding.statement.endswith(" (many).")
    assert finding.spans == ((1.0, 2.0),)
    assert max(finding.band_probability, key=lambda band: finding.band_probability[band]) == "many"


def test_every_measurement_makes_a_sentence(rulebook: Rulebook, measure: Callable[..., Measurement]) -> None:
    for rule in rulebook.measurements.values():
        place = "FL" if rule.scope == "corner" else "vehicle"
        (finding,) = build_findings([measure(rule.id, place, 0.5, 0.05)], rulebook)
        assert "{" not in finding.statement
        # The exchange that would explain a log best has a name and no value.
        value = value_words(0.5, 0.05, unit=rule.unit, told_as=rule.told_as)
        assert value in finding.statement or rule.id == "swap-pair"


def test_what_the_rule_book_does_not_know_or_is_no_number_is_left_out(
    rulebook: Rulebook, measure: Callable[..., Measurement]
) -> None:
    unknown = Measurement("moon-phase", "FL", 1.0, 0.1, "", sample_count=1, spans=())
    assert build_findings([unknown, measure("dip-share", "FL", math.nan, 0.1)], rulebook) == ()


def test_a_rate_that_was_seen_is_not_spread_down_to_none() -> None:
    normal, positive = (
        band_probability(1.0, 1.0, (0.1, 10.0), distribution=kind) for kind in ("normal", "lognormal")
    )
    assert normal[0] > 0.15
    assert positive[0] == pytest.approx(
        stats.lognorm.cdf(0.1, s=np.sqrt(np.log(2.0)), scale=np.sqrt(0.5)), rel=1e-9
    )
    assert positive[0] < 0.02
    assert band_probability(0.0, 1.0, (0.1, 10.0), distribution="lognormal") == band_probability(
        0.0, 1.0, (0.1, 10.0)
    )


@given(st.floats(0.0, 1e6), st.floats(0.0, 1e9))
def test_positive_quantities_share_out_too(value: float, spread: float) -> None:
    shares = band_probability(value, spread, (0.1, 3.0, 60.0), distribution="lognormal")
    assert all(share >= 0.0 for share in shares)
    assert abs(sum(shares) - 1.0) < 1e-9
