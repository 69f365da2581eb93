from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime

from triage.signals.measurement import NotMeasurable
from triage.speed_log import SpeedLog
from triage.vehicle import Vehicle
from ui.presenters.entries import (
    build_check_entries,
    build_log_summary,
    build_missing_entries,
    build_notice_entries,
    build_undecided_entries,
    build_vehicle_entry,
    build_wheel_rows,
)
from ui.state.opening import Opened


def test_a_check_says_reason_minutes_gain_and_caution(opened: Opened) -> None:
    entry = build_check_entries(opened.result)[0]
    assert entry.title == "1. Look at the encoder through the sensor bore"
    assert entry.subtitle == "Front left · 15 min, expected gain 0.71 bit · needs the sensor out"
    assert entry.text == (
        "Expected to settle 0.71 of 1.07 bits of doubt in 15 min. "
        "“Dirt on it” (80 % likely) would put first: Dirt, front left at 97 %; "
        "“Clean, all poles whole” (20 % likely) would put first: No fault at 62 %."
    )
    assert entry.facts == (
        ("clean", "No fault rises from 10 % to 62 %; Dirt, front left falls from 83 % to 20 %"),
        ("dirty", "Dirt, front left rises from 83 % to 97 %; No fault falls from 10 % to under 1 %"),
    )
    assert entry.cautions == ("Support the car on stands before a wheel comes off.",)


def test_what_is_missing_says_which_driving_would_help(opened: Opened) -> None:
    first, second = build_missing_entries(opened)
    assert first.title == "Lowest speed it still reads"
    assert first.facts == (("Would help", "Ten seconds at walking pace."),)
    assert second.title == "Side load contrast (RL)"


def test_one_reason_is_told_once(opened: Opened) -> None:
    corners = ("FL", "FR", "RL", "RR")
    missing = tuple(NotMeasurable("cut-off-speed", corner, "Never slow.", "Roll.") for corner in corners)
    more = (NotMeasurable("air", "FL", "Never slow.", "Roll."),)
    entries = build_missing_entries(
        replace(opened, result=replace(opened.result, not_measurable=missing + more))
    )
    assert [entry.title for entry in entries] == ["Lowest speed it still reads, Air"]


def test_wheels_show_source_and_counts(opened: Opened) -> None:
    row = build_wheel_rows(opened.result.log)[3]
    assert (row.wheel, row.source, row.unit) == ("RR rear right", "v_rr_kmh", "km/h")
    assert (row.samples, row.invalid, row.step) == ("2975", "25", "0.010")


def test_notices_are_counted(opened: Opened) -> None:
    entry = build_notice_entries(opened.result.log)[0]
    assert (entry.title, entry.text) == ("Gaps in log (3 ×)", "3 gaps, 0.9 s in all.")


def test_summary_with_and_without_a_start(opened: Opened) -> None:
    log = opened.result.log
    assert build_log_summary(log) == "table (csv) · 60.0 s · 3000 rows · 50.0 rows/s"
    started = replace(log, start=datetime(2026, 11, 25, 8, 30, tzinfo=UTC))
    assert build_log_summary(started).endswith("· 2026-11-25 08:30:00")


def test_thousands_are_kept_apart_in_long_recordings(log_from: Callable[..., SpeedLog]) -> None:
    assert "360\u202f000 rows" in build_log_summary(log_from(100.0, 3600.0))


def test_reasons_are_sentences(opened: Opened) -> None:
    missing = (NotMeasurable("cut-off-speed", None, "never slow", "a stop"),)
    entry = build_missing_entries(replace(opened, result=replace(opened.result, not_measurable=missing)))[0]
    assert (entry.text, entry.facts) == ("Never slow.", (("Would help", "A stop."),))


def test_the_car_is_said_to_be_assumed_or_given() -> None:
    assumed, given = build_vehicle_entry(None), build_vehicle_entry(Vehicle(track_m=1.62, pulses_per_rev=43))
    assert assumed.text.startswith("An ordinary passenger car")
    assert given.text == ""
    facts = dict(given.facts)
    assert facts["Between the wheels of an axle"] == "1.62 m"
    assert facts["Pulses in one turn"] == "43"
    assert facts["Rolling circumference"] == "sought in the recording"


def test_undecided_causes_come_with_drive_and_check(opened: Opened) -> None:
    (entry,) = build_undecided_entries(opened)
    assert entry.title == "Dirt on the encoder, front left (83 %) or No fault found (10 %)?"
    assert entry.facts == (
        ("Drive", "Five steady right-hand curves (0.31 bit)."),
        ("Check", "Look at the encoder (front left), 15 min (0.25 bit)."),
    )
    nothing = replace(opened, result=replace(opened.result, undecided=()))
    assert build_undecided_entries(nothing) == ()
