"""A walk through every check of the packaged rule book: what a person needs to do it safely."""

from __future__ import annotations

import re

import pytest

from triage.evidence.answers import build_answers, parse_observation
from triage.evidence.rulebook import Rulebook

COMPLAINT = {
    *("lamp-when", "lamp-which", "false-action", "pedal-pulsation", "noise-kind", "noise-speed"),
    *("complaint-in-curves", "complaint-under-load", "road-surface", "weather", "recent-work"),
    *("mileage", "since-when", "read-fault-memory"),
}
BENCH = {
    *("end-play-gauge", "rock-wheel", "rock-with-brake", "turn-by-hand", "stethoscope", "hub-temperature"),
    *("compare-tyres", "sensor-seat", "connector", "wiggle-lead", "supply-voltage", "sensor-supply-current"),
    *("three-level-current", "coil-resistance", "coil-voltage", "resistance-to-ground", "look-at-encoder"),
    *("encoder-film", "sensor-face", "exchange-sensors", "clean-and-drive-again"),
}
# What can hurt at a step, by words in its text, and the caution that belongs to it.
DANGERS = {
    r"\bturn(?:ed|ing)? (?:the|this|exactly|the raised|the wheel)|wheel turned|turn it once": "turning-wheel",
    r"\brais(?:ed|e)\b": "lift-and-support",
    r"\bdrive again|same drive\b": "driver-drives",
    r"\bclean encoder|take the sensor out\b": "brake-dust",
    r"magnetic viewing film": "magnets",
    r"connectors? open|connectors of the lead open|open the sensor's connector": "sensor-electrics",
}


def test_the_catalogue_holds_every_question_and_check(rulebook: Rulebook) -> None:
    assert set(rulebook.checks) >= COMPLAINT | BENCH


def test_every_check_says_who_does_it_and_what_to_write_down(rulebook: Rulebook) -> None:
    for check in rulebook.checks.values():
        assert check.skill, check.id
        assert check.write_down, check.id
        assert check.sources, check.id
        assert check.question.endswith((".", "?")), check.id


def test_every_hazardous_step_has_its_caution(rulebook: Rulebook) -> None:
    steps = [(one.id, one.access, one.cautions, one.question) for one in rulebook.checks.values()]
    steps += [(one.id, one.access, one.cautions, one.title) for one in rulebook.repairs.values()]
    for name, access, cautions, text in steps:
        around = [level.id for level in rulebook.path_of(access) if level.hazardous]
        covered = {place for caution in cautions for place in rulebook.cautions[caution].covers}
        assert set(around) <= covered, name
        if not text.startswith("Ask the driver"):
            for words, caution in DANGERS.items():
                assert caution in cautions or not re.search(words, text, re.IGNORECASE), (name, caution)


def test_no_torque_stands_anywhere(rulebook: Rulebook) -> None:
    texts = [str(table) for table in (rulebook.causes, rulebook.checks, rulebook.repairs, rulebook.parts)]
    texts += [caution.text for caution in rulebook.cautions.values()]
    texts += [source.title for source in rulebook.sources.values()]
    for text in texts:
        assert not re.search(
            r"\d\s*(n\s?·?m|lbf?[·. -]?ft|ft[·. -]?lbf?|kgf?[·. ]?c?m)\b", text, re.IGNORECASE
        )
    whole = " ".join(str(table) for table in (rulebook.causes, rulebook.checks, rulebook.repairs))
    assert "torque" not in whole.replace("makers-torque", "").lower()


def test_a_question_on_the_car_may_name_the_corner(rulebook: Rulebook) -> None:
    (whole,) = build_answers([parse_observation("recent-work=hub")], rulebook, first_corner="FL")
    (there,) = build_answers([parse_observation("recent-work@RL=hub")], rulebook, first_corner="FL")
    assert (whole.corner, there.corner) == ("vehicle", "RL")


@pytest.mark.parametrize("name", ["front left", "rear right"])
def test_no_caution_is_only_a_name(rulebook: Rulebook, name: str) -> None:
    assert all(len(caution.text) > 40 and name not in caution.text for caution in rulebook.cautions.values())
