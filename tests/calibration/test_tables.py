"""Counting the tables on a handful of cases whose rows can be listed by hand."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

import numpy as np
import pytest

from triage.calibration.ensemble import Case, MeasuredCase
from triage.calibration.tables import CountedTables, count_tables
from triage.calibration.variants import FEWEST_DRIVES
from triage.corners import CORNERS
from triage.evidence.estimation import estimate_table
from triage.evidence.likelihoods import LikelihoodTable
from triage.evidence.rule_tables import Group, MeasurementRule, Rulebook, Scoring, Where, Workshop
from triage.signals.measurement import Measurement

LOW, HIGH = (1.0, 0.0), (0.0, 1.0)
AT_LEAST = (0.0, 0.01)


def rule(name: str, scope: Where = "corner") -> MeasurementRule:
    return MeasurementRule(
        id=name,
        title=name,
        meaning=name,
        statement="{corner} {value} {band}",
        unit="",
        scope=scope,
        group="parted" if name == "dips" else "whole",
        bands=("low", "high"),
        edges=(5.0,),
        distribution="normal",
        sound_at_least=AT_LEAST,
        basis="judgement",
        source="test",
        needed="driving",
    )


@pytest.fixture(scope="module")
def book() -> Rulebook:
    """Bands and groups alone: nothing else of a rule book may count."""
    return Rulebook(
        causes={},
        measurements={"dead": rule("dead"), "dips": rule("dips"), "joint": rule("joint", "vehicle")},
        groups={"whole": Group("whole", "", None), "parted": Group("parted", "", 0.7)},
        scoring=Scoring(temperature=1.0, floor=1e-6),
        likelihoods={},
        variants={},
        access={},
        checks={},
        cautions={},
        sources={},
        workshop=Workshop(60.0, 0.0, 10.0, 500.0, 0.0, 0.0),
        parts={},
        repairs={},
        digest="",
    )


def case(cause: str, corner: str, values: Mapping[str, Mapping[str, float]]) -> MeasuredCase:
    """A case with values by measurement and place, exact."""
    measurements = tuple(
        Measurement(name, place, value, 0.0, "", sample_count=9, spans=())  # type: ignore[arg-type]
        for name, by_place in values.items()
        for place, value in by_place.items()
    )
    return MeasuredCase(Case(cause, corner, 0.5, 90.0, 1), measurements, ())  # type: ignore[arg-type]


def at(corner: str, value: float, elsewhere: float = 0.0) -> dict[str, float]:
    return {place: value if place == corner else elsewhere for place in CORNERS}


def counted(
    shares: Mapping[str, Sequence[tuple[float, ...]]], kin: Mapping[str, str] | None = None
) -> LikelihoodTable:
    return estimate_table(shares, sound_at_least=AT_LEAST, basis="simulated", evidence="test", kin=kin)


def count(cases: Sequence[MeasuredCase], book: Rulebook) -> CountedTables:
    return count_tables(cases, book, evidence="test")


def test_the_blamed_corner_counts_for_the_cause_and_the_others_for_sound(book: Rulebook) -> None:
    cases = [
        case("air-gap", "RR", {"dead": at("RR", 9.0)}),
        case("air-gap", "FL", {"dead": at("FL", 9.0, elsewhere=6.0)}),
        case("tyre-size", "FL", {"dead": at("FL", 0.0)}),
    ]
    made = count(cases, book)
    assert made.tables["dead"] == counted(
        {"sound": [LOW] * 6 + [HIGH] * 3, "air-gap": [HIGH] * 2, "tyre-size": [LOW]}
    )
    assert made.variants == {}


def test_every_measurement_of_the_rule_book_gets_a_table(book: Rulebook) -> None:
    made = count([case("air-gap", "RR", {"dead": at("RR", 9.0)})], book)
    assert list(made.tables) == ["dead", "dips", "joint"]
    assert made.tables["joint"] == counted({})
    assert all(table.basis == "simulated" and table.evidence == "test" for table in made.tables.values())


def test_healthy_cars_and_rough_bearings_count_as_sound_everywhere(book: Rulebook) -> None:
    values = {"dead": at("FL", 9.0), "joint": {"vehicle": 9.0}}
    cases = [case("no-fault-found", "vehicle", values), case("bearing-roughness", "FL", values)]
    made = count(cases, book)
    assert made.tables["dead"] == counted({"sound": [HIGH, LOW, LOW, LOW] * 2})
    assert made.tables["joint"] == counted({"sound": [HIGH, HIGH]})


def test_what_a_faulty_wheel_does_to_the_whole_vehicle_counts_for_no_cause(book: Rulebook) -> None:
    """How well curves fit depends on the drive: on a straight road every fault would seem to spoil it."""
    cases = [
        case("air-gap", "RL", {"joint": {"vehicle": 9.0}}),
        case("no-fault-found", "vehicle", {"joint": {"vehicle": 0.0}}),
    ]
    assert count(cases, book).tables["joint"] == counted({"sound": [HIGH, LOW]})


def test_a_cause_of_the_whole_vehicle_counts_at_every_corner(book: Rulebook) -> None:
    cases = [
        case("common-cause", "vehicle", {"dead": dict.fromkeys(CORNERS, 9.0), "joint": {"vehicle": 9.0}})
    ]
    made = count(cases, book)
    assert made.tables["dead"] == counted({"common-cause": [HIGH] * 4})
    assert made.tables["joint"] == counted({"common-cause": [HIGH]})


def test_a_doubtful_value_counts_for_both_bands(book: Rulebook) -> None:
    doubtful = Measurement("dead", "FL", 5.0, 1.0, "", sample_count=9, spans=())
    one = MeasuredCase(Case("air-gap", "FL", 0.5, 90.0, 1), (doubtful,), ())
    made = count([one], book).tables["dead"]
    assert made.row("air-gap") == pytest.approx(counted({"air-gap": [(0.5, 0.5)]}).row("air-gap"))


def test_unknown_measurements_and_values_that_are_no_number_are_left_out(book: Rulebook) -> None:
    values = {"dead": at("FL", math.nan), "dips": at("FL", math.inf), "moon": at("FL", 9.0)}
    made = count([case("air-gap", "FL", values)], book)
    assert made.tables["dead"] == counted({"sound": [LOW] * 3})
    assert set(made.tables) == set(book.measurements)


def two_ways(silent: int, losing: int, cause: str = "air-gap", corner: str = "FL") -> list[MeasuredCase]:
    """A gap that makes a wheel silent in some cars and lose pulses in the others."""
    return [
        case(cause, corner, {"dead": at(corner, 9.0 * (i < silent)), "dips": at(corner, 9.0 * (i >= silent))})
        for i in range(silent + losing)
    ]


def test_a_cause_with_two_faces_gets_a_row_and_a_share_for_each(book: Rulebook) -> None:
    made = count([*two_ways(14, 26), case("tyre-size", "FL", {"dead": at("FL", 9.0)})], book)
    # One drive more for every variant: a share is never 0.
    assert made.variants == {"air-gap": (pytest.approx(27 / 42), pytest.approx(15 / 42))}
    assert made.tables["dead"] == counted(
        {"sound": [LOW] * 123, "air-gap_1": [LOW] * 26, "air-gap_2": [HIGH] * 14, "tyre-size": [HIGH]},
        kin={"air-gap_1": "air-gap", "air-gap_2": "air-gap"},
    )
    dips = made.tables["dips"]
    assert "air-gap" not in dips.rows
    assert dips.row("air-gap_1")[1] > 0.75
    assert dips.row("air-gap_2") == dips.row("sound")


def test_cases_are_sorted_by_what_the_blamed_corner_shows_weighted_like_in_the_verdict(
    book: Rulebook, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked = []

    def one_class(drives: Sequence[object], weights: Sequence[object]) -> np.ndarray:
        asked.append((drives, weights))
        return np.zeros(len(drives), dtype=np.intp)

    monkeypatch.setattr("triage.calibration.tables.sort_into_variants", one_class)
    values = {"dead": at("RL", 9.0), "dips": at("RL", 0.0, elsewhere=9.0), "joint": {"vehicle": 9.0}}
    count([case("air-gap", "RL", values), case("air-gap", "FL", {"dead": at("FL", 0.0)})], book)
    ((drives, weights),) = asked
    assert drives == [{"dead": HIGH, "dips": LOW}, {"dead": LOW}]
    assert weights == [{"dead": 1.0, "dips": 0.7}, {"dead": 1.0}]


def test_shares_sum_to_one_and_depend_on_the_own_cases_alone(book: Rulebook) -> None:
    alone = count(two_ways(30, 20), book)
    mixed = count([*two_ways(30, 20), *two_ways(15, 45, "sensor-fault", "RR")], book)
    assert mixed.variants["air-gap"] == alone.variants["air-gap"]
    assert set(mixed.variants) == {"air-gap", "sensor-fault"}
    assert all(sum(shares) == pytest.approx(1.0) for shares in mixed.variants.values())


def test_few_cases_and_cases_alike_have_no_variants(book: Rulebook) -> None:
    few = count(two_ways(FEWEST_DRIVES - 1, FEWEST_DRIVES), book)
    alike = count(two_ways(60, 0), book)
    for made in (few, alike):
        assert made.variants == {}
        assert "air-gap" in made.tables["dead"].rows


def test_what_looks_sound_has_no_variants(book: Rulebook) -> None:
    cases = [*two_ways(30, 30, "no-fault-found", "vehicle"), *two_ways(30, 30, "bearing-roughness")]
    assert count(cases, book).variants == {}


def test_other_corners_and_other_wheels_do_not_part_the_cases(book: Rulebook) -> None:
    """Two classes of roads, say, seen at the sound wheels only."""
    cases = [
        case("air-gap", "FL", {"dead": at("FL", 9.0, 9.0 * (i % 2)), "dips": at("FL", 9.0, 9.0 * (i % 2))})
        for i in range(60)
    ]
    assert count(cases, book).variants == {}
    vehicle = [
        case("common-cause", "vehicle", {"dead": dict.fromkeys(CORNERS, 9.0 * (i % 2))}) for i in range(60)
    ]
    assert count(vehicle, book).variants == {}
