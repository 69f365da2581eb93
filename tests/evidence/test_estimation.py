"""Likelihood rows from the bands in which drives fell."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.special import ndtr

from triage.evidence.estimation import MOST_OTHER, estimate_table
from triage.evidence.likelihoods import LikelihoodTable

LOW, HIGH = (1.0, 0.0), (0.0, 1.0)


def table(
    shares: dict[str, list[tuple[float, ...]]], at_least: tuple[float, ...] = (0.0, 0.0)
) -> LikelihoodTable:
    return estimate_table(shares, sound_at_least=at_least, basis="simulated", evidence="test")


def test_many_drives_give_their_frequencies() -> None:
    rng = np.random.default_rng(1)
    drives = [HIGH if rng.random() < 0.7 else LOW for _ in range(4000)]
    rows = table({"sound": [LOW] * 4000, "air-gap": drives}).rows
    assert rows["air-gap"][1] == pytest.approx(0.7, abs=0.03)
    assert rows["sound"][0] > 0.998


def test_few_drives_stay_careful_and_nothing_is_certain() -> None:
    rows = table({"sound": [LOW] * 100, "air-gap": [HIGH]}).rows
    assert 0.3 < rows["air-gap"][1] < 0.6
    assert all(0.0 < share < 1.0 for row in rows.values() for share in row)


def test_the_sound_row_is_never_thinner_than_real_cars_allow() -> None:
    rows = table({"sound": [LOW] * 1000, "air-gap": [HIGH] * 9}, (0.0, 0.05)).rows
    assert rows["sound"][1] == pytest.approx(0.05, rel=0.06)


def test_a_cause_like_sound_gets_no_row_and_other_lies_between() -> None:
    rows = table({"sound": [LOW] * 1000, "bearing-roughness": [LOW] * 50, "air-gap": [HIGH] * 50}).rows
    assert set(rows) == {"sound", "other", "air-gap"}
    assert rows["sound"][1] < rows["other"][1] < rows["air-gap"][1]


def test_without_any_drive_the_rows_say_nothing() -> None:
    rows = table({}).rows
    assert rows["sound"] == rows["other"] == (0.5, 0.5)


def test_rows_are_what_a_rule_book_accepts() -> None:
    rng = np.random.default_rng(2)
    drives = {name: [tuple(row) for row in rng.dirichlet(np.ones(5) / 5, 30)] for name in ("sound", "a", "b")}
    for row in table(drives, (0.0, 0.01, 0.001, 0.0, 0.0)).rows.values():
        assert abs(sum(row) - 1.0) < 1e-9
        assert min(row) > 0.0


def test_uncertain_values_do_not_spread_a_second_time() -> None:
    """The row that makes the drives likeliest, by brute force over a fine grid."""
    rng = np.random.default_rng(3)
    truth = np.where(rng.random(3000) < 0.04, 1.0, 0.0)
    read = truth + rng.normal(0.0, 0.35, truth.size)
    high = ndtr((read - 0.5) / 0.35)
    drives = [(1.0 - one, one) for one in high.tolist()]
    row = table({"sound": drives}).rows["sound"]
    grid = np.linspace(0.001, 0.2, 400)
    score = [float(np.log((1.0 - high) * (1.0 - p) + high * p).sum()) for p in grid]
    assert row[1] == pytest.approx(grid[int(np.argmax(score))], abs=0.004)
    assert row[1] < 0.6 * float(np.mean(high))


def test_a_row_that_chance_explains_is_dropped() -> None:
    rng = np.random.default_rng(4)
    sound = [HIGH if rng.random() < 0.1 else LOW for _ in range(2000)]
    by_chance = [LOW] * 16 + [HIGH] * 4
    real = [LOW] * 8 + [HIGH] * 12
    rows = table({"sound": sound, "air-gap": by_chance, "sensor-fault": real}).rows
    assert "air-gap" not in rows
    assert rows["sensor-fault"][1] > 0.4


def test_one_odd_value_never_proves_an_unknown_cause() -> None:
    rows = table({"sound": [LOW] * 1000, "air-gap": [HIGH] * 50, "sensor-fault": [HIGH] * 50}).rows
    assert sum(rows["other"]) == pytest.approx(1.0)
    assert rows["other"][1] == pytest.approx(MOST_OTHER * rows["sound"][1], rel=1e-3)
    assert rows["air-gap"][1] > 100.0 * rows["sound"][1]


def test_a_variant_of_few_drives_starts_from_its_kin() -> None:
    """One drive proves nothing alone; those of its kin do, and a variant that reads sound stays sound."""
    shares: dict[str, list[tuple[float, ...]]] = {
        "sound": [LOW] * 950 + [HIGH] * 50,
        "damage_1": [HIGH] * 20 + [LOW] * 4,
        "damage_2": [HIGH],
        "damage_3": [LOW] * 40,
        "damage_4": [HIGH],
        "air-gap": [HIGH] * 2 + [LOW] * 20,
    }
    kin = {f"damage_{number}": "damage, strong" for number in (1, 2, 3, 5)}
    rows = estimate_table(shares, sound_at_least=(0.0, 0.0), basis="simulated", evidence="test", kin=kin).rows
    assert rows["damage_2"][1] > rows["damage_5"][1] > 0.25
    assert not {"damage_3", "damage_4", "air-gap"} & set(rows)
