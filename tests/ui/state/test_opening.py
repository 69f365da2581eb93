import pytest

from triage.logs.options import ReadOptions
from triage.vehicle import Vehicle
from ui.state.opening import OpenOrder, ReadingAnswers


def test_title_names_the_first_file_and_counts_the_rest() -> None:
    assert OpenOrder(("/logs/a.csv",)).title == "a.csv"
    assert OpenOrder(("/logs/a.csv", "/logs/b.csv", "/logs/c.csv")).title == "a.csv + 2"


def test_changes_keep_what_was_chosen_before() -> None:
    order = OpenOrder(("a.blf",), ReadOptions(unit="km/h"))
    answers = ReadingAnswers({"FL": "A.x"}, tyre_radius_m=0.31)
    changed = order.with_databases(("car.dbc",)).with_answers(answers)
    assert changed.files == ("a.blf",)
    assert changed.options == ReadOptions(
        ("car.dbc",), {"FL": "A.x"}, "km/h", pytest.approx(1.9478, abs=1e-4)
    )
    assert order.options == ReadOptions(unit="km/h")


def test_a_stated_tyre_radius_also_counts_for_the_car() -> None:
    order = OpenOrder(("a.csv",), vehicle=Vehicle(track_m=1.62, circumference_m=1.8))
    changed = order.with_answers(ReadingAnswers(tyre_radius_m=0.31))
    assert changed.vehicle == Vehicle(track_m=1.62, circumference_m=pytest.approx(1.9478, abs=1e-4))
    assert order.with_answers(ReadingAnswers(unit="mph")).vehicle == order.vehicle
