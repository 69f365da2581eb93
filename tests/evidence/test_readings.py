"""Values read from an instrument: units, limits, resistors, plausibility, and what they weigh."""

from __future__ import annotations

import math

import pytest

from triage.errors import SettingsError
from triage.evidence.answers import build_answers, parse_observation
from triage.evidence.hypotheses import Finding, Hypothesis
from triage.evidence.posterior import rank_hypotheses
from triage.evidence.reading_units import unit_factor
from triage.evidence.readings import example_of, read_value
from triage.evidence.rulebook import Rulebook


def answer(text: str, rulebook: Rulebook) -> Finding:
    (finding,) = build_answers([parse_observation(text)], rulebook, first_corner="FL")
    return finding


def refusal(text: str, rulebook: Rulebook) -> str:
    with pytest.raises(SettingsError) as caught:
        answer(text, rulebook)
    assert caught.value.hint
    return str(caught.value)


@pytest.mark.parametrize(
    ("text", "value_mm", "spread_mm"),
    [
        ("0.12 mm limit 0.05", 0.12, 0.01),
        ("0,12mm, limit 0,05 mm", 0.12, 0.01),
        ("120 µm limit 50", 0.12, 0.01),
        ("0.005 in ± 0.001 limit 0.002", 0.127, 0.0254),
        ("0.12 mm +- 0.02 limit 0.05", 0.12, 0.02),
        ("0.12 MM limit 0.05", 0.12, 0.01),
    ],
)
def test_end_play_is_read_with_its_unit(
    rulebook: Rulebook, text: str, value_mm: float, spread_mm: float
) -> None:
    finding = answer(f"end-play@RR={text}", rulebook)
    assert (finding.corner, finding.unit) == ("RR", "mm")
    assert (finding.value, finding.std_uncertainty) == pytest.approx((value_mm, spread_mm))
    assert sum(finding.band_probability.values()) == pytest.approx(1.0, abs=1e-12)


@pytest.mark.parametrize("value", [0.02, 0.045, 0.05, 0.055, 0.08])
def test_the_share_beyond_the_limit_is_the_tail_of_the_normal_distribution(
    rulebook: Rulebook, value: float
) -> None:
    finding = answer(f"end-play@RR={value} mm limit 0.05", rulebook)
    beyond = 0.5 * math.erfc((0.05 - value) / 0.01 / math.sqrt(2.0))
    assert finding.band_probability["beyond"] == pytest.approx(beyond, rel=1e-12)


def test_the_words_carry_value_limit_and_doubt(rulebook: Rulebook) -> None:
    clear = answer("end-play@RR=0.30 mm limit 0.05", rulebook).statement
    assert clear.startswith(
        "Measure the end play, rear right: 0.300 ± 0.010 mm (maker's limit 0.05 mm), beyond"
    )
    assert "likely" not in clear
    assert "% likely)" in answer("end-play@RR=0.052 mm limit 0.05", rulebook).statement


def test_a_limit_of_nothing_asks_for_what_the_gauge_can_show(rulebook: Rulebook) -> None:
    assert answer("end-play@RR=0 mm limit 0", rulebook).band_probability["within"] > 0.95
    assert answer("end-play@RR=0.06 mm limit 0", rulebook).band_probability["beyond"] > 0.95


def test_a_doubtful_value_moves_the_verdict_less_than_a_clear_one(rulebook: Rulebook) -> None:
    claim = Hypothesis("RR", "bearing-play")

    def probability(text: str) -> float:
        ranking = rank_hypotheses([answer(f"end-play@RR={text}", rulebook)], rulebook).ranking
        return next(line.probability for line in ranking if line.hypothesis == claim)

    clear, hardly = probability("0.30 mm limit 0.05"), probability("0.052 mm limit 0.05")
    assert probability("0.0 mm limit 0.05") < hardly < clear
    assert clear == pytest.approx(probability("beyond"), rel=1e-9)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("end-play=0.3 mm", "maker's limit"),
        ("end-play=12 mm limit 0.05", "not plausible"),
        ("end-play=-0.1 mm limit 0.05", "not plausible"),
        ("end-play=0.3 limit 0.05", "no unit"),
        ("end-play=0.3 V limit 0.05", "the unit V, not mm"),
        ("end-play=0.3 mm limit 50", "implausible limit"),
        ("end-play=0.3 mm ± 0 limit 0.05", "implausible uncertainty"),
        ("end-play=0.3 mm ± 1e999 limit 0.05", "implausible uncertainty"),
        ("end-play=1e999 mm limit 0.05", "not plausible"),
        ("end-play=0.3.1 mm", "cannot be read"),
        ("end-play=0.3 mm limit 0.05 across 100 ohm", "only belongs to a current"),
        ("coil-resistance=1400 mohm", "the unit mohm, not ohm"),
        ("coil-resistance=1.4 kohm limit 2", "does not take"),
        ("rock-wheel=3 mm", "takes no value"),
    ],
)
def test_what_cannot_be_right_is_refused_with_the_form(rulebook: Rulebook, text: str, told: str) -> None:
    assert told in refusal(text, rulebook)


# Published levels of active sensors: 7 mA (5.9 to 8.4) and 14 mA (11.8 to 16.8), across 100 ohm
# 0.59 to 0.84 V and 1.18 to 1.68 V, across 75 ohm 0.885 to 1.26 V; three levels: 28 mA are 1.316 V at 47 ohm
@pytest.mark.parametrize(
    ("text", "outcome"),
    [
        ("sensor-supply-current=11.8 mA", "two-levels-right"),
        ("sensor-supply-current=16.8 mA", "two-levels-right"),
        ("sensor-supply-current=1.18 V across 100 ohm", "two-levels-right"),
        ("sensor-supply-current=0.885 V across 75 ohm", "two-levels-right"),
        ("sensor-supply-current=1260 mV shunt 75", "two-levels-right"),
        ("sensor-supply-current=8.4 mA", "one-level"),
        ("sensor-supply-current=0.84 V across 100 Ω", "one-level"),
        ("sensor-supply-current=0 mA", "none"),
        ("three-level-current=1.316 V across 47 ohm", "right"),
        ("three-level-current=14 mA", "no-pulse"),
        ("three-level-current=0.658 V across 47 ohm", "no-pulse"),
        ("coil-resistance=1385 ohm", "right"),
        ("coil-resistance=1.3 kohm", "right"),
        ("coil-resistance=1.7 kΩ", "right"),
        ("coil-resistance=5 Mohm", "open"),
        ("coil-voltage=0.3 V", "right"),
        ("coil-voltage=10 mV", "none"),
        ("resistance-to-ground=10 Mohm", "clear"),
        ("resistance-to-ground=500 ohm", "leak"),
        ("hub-temperature=2 K", "alike"),
        ("supply-voltage=11.9 V limit 12", "right"),
    ],
)
def test_published_values_lead_to_their_outcome(rulebook: Rulebook, text: str, outcome: str) -> None:
    shares = answer(text, rulebook).band_probability
    assert max(shares, key=lambda name: shares[name]) == outcome
    assert shares[outcome] > 0.95


def test_a_resistor_printed_with_a_slip_is_refused(rulebook: Rulebook) -> None:
    """A page prints 750 ohm beside 0.885 to 1.26 V; the levels of the same sensor in milliamperes give 75."""
    told = refusal("sensor-supply-current@FL=1.26 V across 750 ohm", rulebook)
    assert "750 ohm lies outside" in told
    assert "slip in the decimal point" in told
    assert "say across which resistor" in refusal("sensor-supply-current@FL=1.26 V", rulebook)


@pytest.mark.parametrize("word", ["not-done", "Cannot say", "cannot_say"])
def test_a_check_not_done_is_no_evidence(rulebook: Rulebook, word: str) -> None:
    for check in rulebook.checks:
        assert build_answers([parse_observation(f"{check}={word}")], rulebook, first_corner="FL") == ()


def test_every_example_of_a_value_can_be_entered(rulebook: Rulebook) -> None:
    for check in rulebook.checks.values():
        if check.value is not None:
            for example in example_of(check.value).split(", or "):
                assert sum(read_value(example, check).outcome_probability.values()) == pytest.approx(1.0)


def test_milliohms_are_not_taken_for_megohms() -> None:
    assert unit_factor("Mohm", "ohm") == 1e6
    assert unit_factor("mohm", "ohm") is None
    assert unit_factor("KOHM", "ohm") == 1e3
    assert unit_factor("mm", "V") is None
