"""Answers to checks: names, aliases, the corner meant, and what is refused."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from triage.errors import SettingsError
from triage.evidence.answers import Observation, build_answers, leading_corner, parse_observation
from triage.evidence.findings import build_findings
from triage.evidence.posterior import believe, known_findings, rank_hypotheses
from triage.evidence.rulebook import Rulebook


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("rock-wheel=none", Observation("rock-wheel", None, "none")),
        ("rock-wheel@RL=clear", Observation("rock-wheel", "RL", "clear")),
        (" Rock_Wheel @ rl = Clear ", Observation("rock-wheel", "RL", "clear")),
    ],
)
def test_observations_are_read_from_text(text: str, expected: Observation) -> None:
    assert parse_observation(text) == expected


@pytest.mark.parametrize("text", ["", "rock-wheel", "=none", "rock-wheel=", "rock-wheel@XX=none", "@FL=none"])
def test_what_is_no_observation_is_refused_with_the_form(text: str) -> None:
    with pytest.raises(SettingsError) as caught:
        parse_observation(text)
    assert caught.value.hint


def test_an_answer_is_a_certain_finding(rulebook: Rulebook) -> None:
    (finding,) = build_answers([Observation("play", "RL", "yes")], rulebook, first_corner="FL")
    assert (finding.id, finding.source, finding.corner) == ("rock-wheel@RL", "rock-wheel", "RL")
    assert finding.band_probability == {"none": 0.0, "slight": 0.0, "clear": 1.0}
    assert finding.statement == "Rock the wheel, rear left: clear play felt."


def test_a_missing_corner_is_the_first_of_the_log_and_told(rulebook: Rulebook) -> None:
    (finding,) = build_answers([Observation("rock-wheel", None, "none")], rulebook, first_corner="RR")
    assert finding.corner == "RR"
    assert "no corner was named" in finding.statement


def test_a_check_of_the_whole_vehicle_needs_no_corner(rulebook: Rulebook) -> None:
    (finding,) = build_answers([Observation("growl", None, "none")], rulebook, first_corner="RR")
    assert (finding.id, finding.corner) == ("growl-in-curves@vehicle", "vehicle")
    assert "no corner was named" not in finding.statement


def test_every_alias_of_every_check_leads_to_an_outcome(rulebook: Rulebook) -> None:
    for check in rulebook.checks.values():
        for name in (check.id, *check.also):
            for outcome in (*check.outcomes, *check.aliases):
                (finding,) = build_answers([Observation(name, "FL", outcome)], rulebook, first_corner="FL")
                assert finding.source == check.id
                assert sum(finding.band_probability.values()) == 1.0


def test_an_unknown_check_is_refused_with_the_known_ones(rulebook: Rulebook) -> None:
    with pytest.raises(SettingsError, match="kick-tyre") as caught:
        build_answers([Observation("kick-tyre", None, "soft")], rulebook, first_corner="FL")
    assert all(check in caught.value.hint for check in rulebook.checks)


def test_an_unknown_outcome_is_refused_with_the_known_ones(rulebook: Rulebook) -> None:
    with pytest.raises(SettingsError, match="wobbly") as caught:
        build_answers([Observation("rock-wheel", None, "wobbly")], rulebook, first_corner="FL")
    assert "none, slight, clear" in caught.value.hint


def test_contradicting_answers_are_refused_and_repeated_ones_count_once(rulebook: Rulebook) -> None:
    none, clear = Observation("rock-wheel", "FL", "none"), Observation("rock-wheel", None, "clear")
    assert len(build_answers([none, none], rulebook, first_corner="FL")) == 1
    assert len(build_answers([none, clear], rulebook, first_corner="RR")) == 2
    with pytest.raises(SettingsError, match="none and clear"):
        build_answers([none, clear], rulebook, first_corner="FL")


def test_the_leading_corner_is_that_of_the_disturbed_wheel(
    rulebook: Rulebook, drive: Callable[..., list], debris: dict[str, float]
) -> None:
    findings = build_findings(drive("RR", debris), rulebook)
    assert leading_corner(rank_hypotheses(findings, rulebook)) == "RR"
    assert leading_corner(rank_hypotheses((), rulebook)) == "FL"


def test_a_code_of_the_circuit_brings_that_of_the_signal(rulebook: Rulebook) -> None:
    """Common practice: an open lead also leaves the signal missing, and both codes are stored."""
    codes = [Observation("read-fault-memory", "FL", one) for one in ("signal", "circuit")]
    (both,) = build_answers(codes, rulebook, first_corner="FL")
    (alone,) = build_answers(codes[1:], rulebook, first_corner="FL")
    assert both.band_probability == alone.band_probability
    assert "which comes with it" in both.statement
    with pytest.raises(SettingsError):
        build_answers(
            [codes[0], Observation("read-fault-memory", "FL", "nothing")], rulebook, first_corner="FL"
        )


def test_answers_on_one_fact_share_their_weight_and_others_do_not(rulebook: Rulebook) -> None:
    """A growl, told again with its speed and with its curves, is one noise heard once."""
    growl = [Observation("noise-kind", None, "growl"), Observation("noise-speed", None, "middle")]
    seat = [Observation("sensor-seat", "FL", "tight"), Observation("connector", "FL", "sound")]

    def weights(observations: list[Observation]) -> list[float]:
        findings = known_findings(build_answers(observations, rulebook, first_corner="FL"), rulebook)
        return believe(findings, rulebook).weights.tolist()

    shared = weights(growl)
    assert 0.5 < sum(share**2 for share in shared) / len(shared) < 0.95
    assert weights(growl[:1]) == pytest.approx([1.0])
    assert weights(seat) == pytest.approx([1.0, 1.0])


def test_the_kind_of_sensor_is_no_sign_of_a_fault(rulebook: Rulebook) -> None:
    plain = rank_hypotheses((), rulebook)
    told = rank_hypotheses(
        build_answers([Observation("sensor-kind", None, "passive")], rulebook, first_corner="FL"), rulebook
    )
    shares = {line.hypothesis: line.probability for line in plain.ranking}
    assert all(line.probability == pytest.approx(shares[line.hypothesis]) for line in told.ranking)
