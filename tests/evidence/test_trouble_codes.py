"""Trouble codes: never a wheel without its list, and evidence like any other answer."""

from __future__ import annotations

from itertools import product

import pytest

from triage.errors import SettingsError
from triage.evidence.answers import build_answers, parse_observation
from triage.evidence.hypotheses import Finding
from triage.evidence.rulebook import Rulebook

LISTS = {
    "c0031-left-front": {"C0031": "FL", "C0034": "FR", "C0037": "RL", "C003A": "RR", "C0035": "FR"},
    "c0035-left-front": {"C0035": "FL", "C0040": "FR", "C0045": "RL", "C0050": "RR"},
    "c0500-left-front": {"C0500": "FL", "C050C": "RL", "C0512": "RR"},
}


def answer(text: str, rulebook: Rulebook) -> Finding:
    (finding,) = build_answers([parse_observation(text)], rulebook, first_corner="RL")
    return finding


@pytest.mark.parametrize(("family", "codes"), LISTS.items())
def test_a_code_counts_for_the_wheel_of_its_list(
    rulebook: Rulebook, family: str, codes: dict[str, str]
) -> None:
    for code, corner in codes.items():
        finding = answer(f"fault-memory={code} in {family}", rulebook)
        assert (finding.id, finding.band_probability["circuit"]) == (f"read-fault-memory@{corner}", 1.0)
        assert code in finding.statement
        assert family in finding.statement


def test_no_code_of_any_list_is_mapped_without_the_list(rulebook: Rulebook) -> None:
    codes = {code for family in rulebook.code_families.values() for code in family.codes}
    for code, written in product(codes, ("{}", "{}-14", "{}:1f")):
        with pytest.raises(SettingsError, match="alone does not name a wheel"):
            answer(f"fault-memory={written.format(code)}", rulebook)
        with pytest.raises(SettingsError):  # not even with a corner: kind and list go together
            answer(f"fault-memory@FL={written.format(code)}", rulebook)


def test_the_two_meanings_of_one_code_are_told(rulebook: Rulebook) -> None:
    with pytest.raises(SettingsError) as caught:
        answer("fault-memory=C0035", rulebook)
    assert "front right in c0031-left-front" in str(caught.value)
    assert "front left in c0035-left-front" in str(caught.value)


def test_the_failure_type_is_shown_and_never_put_into_words(rulebook: Rulebook) -> None:
    plain = answer("fault-memory=C0031 in c0031-left-front", rulebook)
    typed = answer("fault-memory=c0031-24 in c0031-left-front", rulebook)
    assert typed.statement.replace(", failure type 24", "") == plain.statement
    assert typed.band_probability == plain.band_probability


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("fault-memory@RR=C0035 in c0035-left-front", "is the front left wheel, not rear right"),
        ("fault-memory=C0777 in c0500-left-front", "has no C0777"),
        ("fault-memory=C0777", "none of the lists"),
        ("fault-memory=C0031 in mine", "no list 'mine'"),
        ("rock-wheel=C0031 in c0031-left-front", "takes no trouble code"),
    ],
)
def test_codes_that_fit_nowhere_are_refused(rulebook: Rulebook, text: str, told: str) -> None:
    with pytest.raises(SettingsError, match=told) as caught:
        answer(text, rulebook)
    assert caught.value.hint
