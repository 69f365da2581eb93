"""Robust running statistics against their plain definitions."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from triage.side_by_side import PART, parts_of
from triage.signals.running import (
    SLICED_FROM,
    block_medians,
    close_short_breaks,
    count_of,
    middle_of,
    middle_of_others,
    middle_value,
    quantiles_of,
    rate_at,
    rate_of,
    robust_sigma,
    runs,
    slow_course,
    widen,
    zero_for_missing,
)

flags = st.lists(st.booleans(), max_size=60).map(lambda bits: np.array(bits, dtype=bool))


@given(flag=flags)
def test_runs_cover_exactly_the_set_samples(flag: np.ndarray) -> None:
    covered = np.zeros(flag.size, dtype=bool)
    for first, stop in runs(flag):
        assert stop > first
        assert not covered[first:stop].any()
        covered[first:stop] = True
    np.testing.assert_array_equal(covered, flag)
    assert count_of(flag) == sum(flag.tolist())


@given(flag=flags, longest=st.integers(0, 8))
def test_closing_breaks_fills_short_ones_alone(flag: np.ndarray, longest: int) -> None:
    closed = close_short_breaks(flag, longest)
    assert closed.size == flag.size
    expected = flag.copy()
    stretches = runs(flag)
    for (_, stop), (first, _) in pairwise(stretches):
        if first - stop <= longest:
            expected[stop:first] = True
    np.testing.assert_array_equal(closed, expected)


@given(flag=flags, samples=st.integers(0, 4))
def test_widening_reaches_exactly_so_far(flag: np.ndarray, samples: int) -> None:
    wide = widen(flag, samples)
    expected = [flag[max(0, i - samples) : i + samples + 1].any() for i in range(flag.size)]
    np.testing.assert_array_equal(wide, np.array(expected, dtype=bool))


@given(seed=st.integers(0, 10_000), rows=st.integers(1, 5), columns=st.integers(1, 20))
def test_middle_is_the_median_of_what_is_there(seed: int, rows: int, columns: int) -> None:
    rng = np.random.default_rng(seed)
    table = np.where(rng.random((rows, columns)) < 0.3, np.nan, rng.normal(size=(rows, columns)))
    got = middle_of(table)
    for column in range(columns):
        known = table[np.isfinite(table[:, column]), column]
        if known.size:
            assert got[column] == pytest.approx(np.median(known))
        else:
            assert np.isnan(got[column])


@given(seed=st.integers(0, 10_000), size=st.integers(0, 50), per_block=st.integers(1, 12))
def test_block_medians_lose_no_sample(seed: int, size: int, per_block: int) -> None:
    value = np.random.default_rng(seed).normal(size=size)
    centre, medians = block_medians(value, per_block=per_block)
    assert centre.size == medians.size == max(1, size // max(1, min(per_block, max(size, 1))))
    if size:
        assert value.min() <= medians.min()
        assert medians.max() <= value.max()
        assert np.isfinite(medians).all()
    if per_block == 1 and size:
        np.testing.assert_array_equal(medians, value)


def test_slow_course_is_deaf_to_short_disturbances_and_bridges_gaps() -> None:
    time = np.arange(2000)
    truth = 3.0 + 0.001 * time
    value = truth.copy()
    value[500:520] = 100.0
    value[1200:1260] = np.nan
    np.testing.assert_allclose(slow_course(value, per_block=40)[100:-100], truth[100:-100], atol=0.05)
    assert np.isnan(slow_course(np.full(10, np.nan), per_block=3)).all()


def test_robust_sigma_of_a_normal_sample_with_outliers() -> None:
    value = np.random.default_rng(4).normal(5.0, 2.0, 20_000)
    value[:500] = 1e6
    value[500:600] = np.nan
    assert robust_sigma(value) == pytest.approx(2.0, rel=0.06)
    assert np.isnan(robust_sigma(np.array([np.nan])))


@pytest.mark.parametrize("rows", [3, 4])
def test_middle_of_few_rows_is_the_median(rows: int) -> None:
    table = np.random.default_rng(rows).integers(0, 9, (rows, 500)).astype(float)
    assert np.array_equal(middle_of(table), np.median(table, axis=0))
    table[0, 7] = np.nan
    assert middle_of(table)[7] == np.median(table[1:, 7])


numbers = st.lists(st.floats(-1e6, 1e6) | st.integers(-3, 3).map(float), min_size=1, max_size=60).map(
    np.array
)


@given(value=numbers)
def test_middle_value_is_the_median(value: np.ndarray) -> None:
    assert middle_value(value) == np.median(value)


@given(value=numbers, probability=st.lists(st.floats(0.0, 1.0), min_size=1, max_size=8))
def test_quantiles_are_those_of_numpy(value: np.ndarray, probability: list[float]) -> None:
    np.testing.assert_array_equal(quantiles_of(value, probability), np.quantile(value, probability))


def _long_series(kind: str) -> np.ndarray:
    """Make series longer than those that are simply sorted."""
    rng = np.random.default_rng(11)
    normal = rng.normal(size=3 * SLICED_FROM)
    return {
        "even": rng.uniform(0.0, 30.0, 3 * SLICED_FROM + 1),
        "steps": np.round(np.abs(normal), 1),
        "mostly one": np.where(normal > 1.0, normal, 0.01),
        "all one": np.full(2 * SLICED_FROM, 0.3),
        "far tails": rng.standard_cauchy(2 * SLICED_FROM),
        "one far off": np.append(1e-3 * normal, 1e9),
        "infinite": np.append(normal, (np.inf, -np.inf)),
        "next to each other": 1.0 + 2e-16 * rng.integers(0, 5, 2 * SLICED_FROM),
        "tiny": 1e-310 * normal,
    }[kind]


LONG = ("even", "steps", "mostly one", "all one", "far tails", "one far off", "next to each other", "tiny")


@pytest.mark.parametrize("kind", [*LONG, "infinite"])
def test_middle_of_a_long_series(kind: str) -> None:
    value = _long_series(kind)
    assert middle_value(value) == np.median(value)
    assert middle_value(value[1:]) == np.median(value[1:])


@pytest.mark.parametrize("kind", LONG)
def test_quantiles_of_a_long_series(kind: str) -> None:
    value, probability = _long_series(kind), np.linspace(0.0, 1.0, 14)
    np.testing.assert_array_equal(quantiles_of(value, probability), np.quantile(value, probability))


@given(seed=st.integers(0, 10_000), columns=st.integers(1, 20), missing=st.sampled_from([0.0, 0.3]))
def test_middle_of_others_leaves_each_row_out(seed: int, columns: int, missing: float) -> None:
    rng = np.random.default_rng(seed)
    table = np.where(rng.random((4, columns)) < missing, np.nan, rng.normal(size=(4, columns)))
    got = middle_of_others(table)
    for row in range(4):
        np.testing.assert_array_equal(got[row], middle_of(np.delete(table, row, axis=0)))


def test_zero_for_missing_copies_only_what_has_gaps() -> None:
    whole, holed = np.array([1.0, 2.0]), np.array([1.0, np.nan])
    assert zero_for_missing(whole) is whole
    np.testing.assert_array_equal(zero_for_missing(holed), [1.0, 0.0])
    assert np.isnan(holed[1])


@pytest.mark.parametrize("size", [1, PART - 1, PART, 2 * PART + 1])
def test_parts_hold_every_sample_once(size: int) -> None:
    every = np.arange(size)
    assert np.array_equal(np.concatenate([every[part] for part in parts_of(size)]), every)


@pytest.mark.parametrize("size", [2, 3, 4, PART + 1, PART + 2, 2 * PART + 3, 3 * PART])
@pytest.mark.parametrize("clock", ["even", "uneven", "even in its middle part", "with a jump"])
def test_the_rate_is_that_of_numpy_to_the_last_bit(size: int, clock: str) -> None:
    rng = np.random.default_rng(size)
    steps_s = np.full(size, 0.0078125)  # an even clock to the last bit
    if clock == "uneven":
        steps_s = rng.uniform(0.001, 0.02, size)
    elif clock == "even in its middle part":
        steps_s[: size // 4], steps_s[-1:] = rng.uniform(0.001, 0.02, size // 4), 0.02
    elif clock == "with a jump":
        steps_s[size // 2] = 90.0
    time_s, value = np.cumsum(steps_s), rng.normal(size=size)
    value[rng.random(size) < 0.001] = np.nan
    np.testing.assert_array_equal(rate_of(value, time_s), np.gradient(value, time_s))


@pytest.mark.parametrize("clock", ["even", "uneven"])
def test_the_rate_at_some_samples_is_that_of_all(clock: str) -> None:
    rng = np.random.default_rng(4)
    time_s = np.arange(300) * 0.02 if clock == "even" else np.cumsum(rng.uniform(0.005, 0.03, 300))
    value = rng.normal(size=300)
    samples = np.array([0, 1, 2, 57, 150, 297, 298, 299])
    np.testing.assert_allclose(
        rate_at(value, time_s, samples), np.gradient(value, time_s)[samples], rtol=1e-9
    )


def test_two_samples_have_no_rate() -> None:
    assert np.isnan(rate_at(np.array([1.0, 2.0]), np.array([0.0, 1.0]), np.array([0, 1]))).all()
