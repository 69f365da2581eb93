"""Causes that show themselves in several ways: their rows, their sums, and rule books that get them wrong."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.errors import RulebookError
from triage.evidence.atoms import build_atoms
from triage.evidence.findings import build_findings
from triage.evidence.hypotheses import Finding, Hypothesis, Posterior
from triage.evidence.likelihoods import LikelihoodTable, variant_name
from triage.evidence.posterior import believe, known_findings, rank_hypotheses
from triage.evidence.rulebook import Rulebook, load_rulebook
from triage.signals.measurement import Measurement

PRIORS = {"gap": ("corner", 0.4), "no-fault-found": ("vehicle", 0.5), "other": ("vehicle", 0.1)}
EVEN = (0.5, 0.5)
SILENT = {"sound": EVEN, "other": EVEN, "gap_1": (0.1, 0.9), "gap_2": (0.9, 0.1)}
LOSSES = {"sound": EVEN, "other": EVEN, "gap_1": (0.9, 0.1), "gap_2": (0.1, 0.9)}
GAP = Hypothesis("FL", "gap")

Book = Callable[..., Rulebook]


def both(make_book: Book, **changed: object) -> Rulebook:
    """A gap that makes a passive sensor silent and an active one lose pulses, never both."""
    given: dict[str, object] = {
        "measurements": {"silent": ("silence", SILENT), "losses": ("loss", LOSSES)},
        "groups": {"silence": 1.0, "loss": 1.0},
        "variants": {"gap": EVEN},
    }
    return make_book(PRIORS, **{**given, **changed})


def seen(source: str, band: int, corner: str = "FL") -> Finding:
    shares = {f"band{i}": float(i == band) for i in range(2)}
    return Finding(f"{source}@{corner}", source, corner, "", 1.0, 0.0, "", shares, ())  # type: ignore[arg-type]


def probabilities(posterior: Posterior) -> dict[Hypothesis, float]:
    return {line.hypothesis: line.probability for line in posterior.ranking}


# --- what variants do to the verdict ---


def test_findings_must_fit_one_variant_together(make_book: Book) -> None:
    """Each finding alone says nothing; together they speak for the gap, or against it."""
    book = both(make_book)
    before = probabilities(rank_hypotheses((), book))[GAP]
    for one in (seen("silent", 1), seen("silent", 0), seen("losses", 1)):
        assert probabilities(rank_hypotheses([one], book))[GAP] == pytest.approx(before, rel=1e-9)
    fits = probabilities(rank_hypotheses([seen("silent", 1), seen("losses", 0)], book))
    fits_neither = probabilities(rank_hypotheses([seen("silent", 1), seen("losses", 1)], book))
    # In the first variant 0.9 * 0.9, in the second 0.1 * 0.1, on average 0.41; of the sound wheel 0.25.
    healthy = Hypothesis("vehicle", "no-fault-found")
    assert fits[GAP] / fits[healthy] == pytest.approx(0.1 / 0.5 * 0.41 / 0.25, rel=1e-9)
    assert fits_neither[GAP] / fits_neither[healthy] == pytest.approx(0.1 / 0.5 * 0.09 / 0.25, rel=1e-9)


def test_the_share_of_a_variant_weighs_its_row(make_book: Book) -> None:
    book = both(make_book, variants={"gap": (0.8, 0.2)})
    shares = probabilities(rank_hypotheses([seen("silent", 1)], book))
    ratio = shares[GAP] / shares[Hypothesis("vehicle", "no-fault-found")]
    assert ratio == pytest.approx(0.1 / 0.5 * (0.8 * 0.9 + 0.2 * 0.1) / 0.5, rel=1e-9)


def test_variants_that_do_not_differ_change_nothing(make_book: Book) -> None:
    rows = {"sound": (0.9, 0.1), "other": (0.4, 0.6), "gap": (0.2, 0.8)}
    findings = [seen("m", 1, "FL"), seen("m", 0, "FR"), seen("m", 1, "RR")]
    one = make_book(PRIORS, measurements={"m": ("g", rows)}, groups={"g": None})
    plain = rank_hypotheses(findings, one)
    split = make_book(
        PRIORS, measurements={"m": ("g", rows)}, groups={"g": None}, variants={"gap": (0.3, 0.5, 0.2)}
    )
    for expected, line in zip(plain.ranking, rank_hypotheses(findings, split).ranking, strict=True):
        assert line.hypothesis == expected.hypothesis
        assert line.probability == pytest.approx(expected.probability, rel=1e-9)
        assert line.contributions_bit == pytest.approx(expected.contributions_bit, abs=1e-9)


def test_an_answer_to_a_check_can_tell_variants_apart(make_book: Book) -> None:
    """Which variant it is matters to what the other findings say."""
    kind = {"sound": EVEN, "other": EVEN, "gap_1": (0.99, 0.01), "gap_2": (0.01, 0.99)}
    book = both(make_book, checks={"kind": ("corner", kind)})
    passive = Finding("kind@FL", "kind", "FL", "", 1.0, 0.0, "", {"outcome0": 1.0, "outcome1": 0.0}, ())
    active = Finding("kind@FL", "kind", "FL", "", 1.0, 0.0, "", {"outcome0": 0.0, "outcome1": 1.0}, ())
    with_passive, with_active = (
        probabilities(rank_hypotheses([seen("silent", 1), answer], book))[GAP] for answer in (passive, active)
    )
    assert with_passive > 1.3 * probabilities(rank_hypotheses((), book))[GAP] > 3.0 * with_active


# --- rows ---


@pytest.mark.parametrize(
    ("name", "row"),
    [
        ("gap_1", (0.1, 0.9)),
        ("gap_2", (0.2, 0.8)),
        ("gap", (0.2, 0.8)),
        ("lead_1", (0.7, 0.3)),
        ("lead_2", (0.9, 0.1)),
        ("lead", (0.9, 0.1)),
        ("tyre", (0.9, 0.1)),
        ("tyre_3", (0.9, 0.1)),
        ("sound", (0.9, 0.1)),
    ],
)
def test_a_variant_without_a_row_uses_its_causes_and_that_the_sound_one(
    name: str, row: tuple[float, ...]
) -> None:
    rows = {"sound": (0.9, 0.1), "gap": (0.2, 0.8), "gap_1": (0.1, 0.9), "lead_1": (0.7, 0.3)}
    assert LikelihoodTable("judgement", "test", rows).row(name) == row


def test_names_of_variants_count_from_one_and_lead_back_to_the_cause() -> None:
    table = LikelihoodTable("judgement", "test", {"sound": EVEN, "air-gap": (0.2, 0.8)})
    assert variant_name("air-gap", 1) == "air-gap_1"
    assert table.row(variant_name("air-gap", 12)) == (0.2, 0.8)


# --- sums ---


def test_atoms_share_the_prior_of_their_cause(rulebook: Rulebook) -> None:
    atoms = build_atoms(rulebook)
    assert len({(atom.blamed, atom.variant) for atom in atoms}) == len(atoms)
    for cause in rulebook.causes.values():
        own = [atom for atom in atoms if atom.cause == cause.id]
        assert sum(atom.prior for atom in own) == pytest.approx(cause.prior, rel=1e-5)
        shares = rulebook.variants.get(cause.id, (1.0,))
        places = 4 if cause.where == "corner" or cause.id == "other" else 1
        assert len(own) == len(shares) * places
        assert {rulebook.hypotheses[atom.index].cause for atom in own} == {cause.id}


def random_findings(rulebook: Rulebook, rng: np.random.Generator) -> tuple[Finding, ...]:
    measurements = []
    for rule in rulebook.measurements.values():
        span = max(abs(rule.edges[0]), abs(rule.edges[-1]))
        for place in CORNERS if rule.scope == "corner" else ("vehicle",):
            value, spread = abs(rng.normal(0.0, 2.0 * span)), rng.exponential(0.3 * span)
            measurements.append(Measurement(rule.id, place, value, spread, rule.unit, 9, ()))  # type: ignore[arg-type]
    return known_findings(build_findings(measurements, rulebook), rulebook)


@pytest.mark.parametrize("number", range(5))
def test_a_hypothesis_holds_what_its_variants_hold(rulebook: Rulebook, number: int) -> None:
    findings = random_findings(rulebook, np.random.default_rng(number))
    belief = believe(findings, rulebook)
    sums = belief.by_hypothesis(belief.probability)
    expected: dict[Hypothesis, float] = dict.fromkeys(rulebook.hypotheses, 0.0)
    for atom, share in zip(belief.atoms, belief.probability, strict=True):
        place = atom.blamed if rulebook.causes[atom.cause].where == "corner" else "vehicle"
        expected[Hypothesis(place, atom.cause)] += float(share)
    assert sums.tolist() == pytest.approx(list(expected.values()), rel=1e-12)
    assert probabilities(rank_hypotheses(findings, rulebook)) == pytest.approx(expected, rel=1e-9)
    stacked = belief.by_hypothesis(np.stack([belief.probability, belief.prior]))
    assert stacked.shape == (2, len(rulebook.hypotheses))
    assert stacked.sum(axis=1) == pytest.approx([1.0, 1.0])


# --- contributions ---


@pytest.mark.parametrize("number", range(5))
def test_contributions_are_finite_under_any_findings(rulebook: Rulebook, number: int) -> None:
    findings = random_findings(rulebook, np.random.default_rng(100 + number))
    for line in rank_hypotheses(findings, rulebook).ranking:
        assert line.contributions_bit.keys() == {finding.id for finding in findings}
        assert all(math.isfinite(bits) for bits in line.contributions_bit.values())


def test_contributions_are_finite_when_no_variant_could_show_it(make_book: Book) -> None:
    least = (1.0 - 1e-6, 1e-6)
    rows = {"sound": EVEN, "other": EVEN, "gap_1": least, "gap_2": least}
    book = both(make_book, measurements={f"m{i}": ("loss", rows) for i in range(40)})
    findings = [seen(f"m{i}", 1) for i in range(40)]
    foreign = Finding("m0@RR", "m0", "RR", "", 1.0, 0.0, "", {"huge": 1.0}, ())
    ranking = rank_hypotheses([*findings, foreign], book).ranking
    assert all(math.isfinite(bits) for line in ranking for bits in line.contributions_bit.values())
    assert all(line.probability > 0.0 for line in ranking)


def test_a_contribution_is_the_average_over_variants_against_all_others(make_book: Book) -> None:
    book = both(make_book, variants={"gap": (0.8, 0.2)})
    line = next(one for one in rank_hypotheses([seen("silent", 1)], book).ranking if one.hypothesis == GAP)
    expected = math.log2((0.8 * 0.9 + 0.2 * 0.1) / 0.5)  # for all other claims it is 0.5
    assert line.contributions_bit["silent@FL"] == pytest.approx(expected, rel=1e-9)


# --- rule books that get variants wrong ---


def problems(make_book: Book, **changed: object) -> tuple[str, ...]:
    with pytest.raises(RulebookError) as caught:
        both(make_book, **changed)
    return without_lines(caught.value)


def without_lines(error: RulebookError) -> tuple[str, ...]:
    return tuple(re.sub(r"line \d+, ", "", problem) for problem in error.problems)


@pytest.mark.parametrize(
    ("variants", "told"),
    [
        ({"gap": (0.5,)}, "likelihoods.toml: [variants], gap: needs two or more shares between 0 and 1"),
        ({"gap": (1.0,)}, "likelihoods.toml: [variants], gap: needs two or more shares between 0 and 1"),
        ({"gap": ()}, "likelihoods.toml: [variants], gap: needs two or more shares between 0 and 1"),
        ({"gap": (1.0, 0.0)}, "likelihoods.toml: [variants], gap: needs two or more shares between 0 and 1"),
        ({"gap": (1.5, -0.5)}, "likelihoods.toml: [variants], gap: needs two or more shares between 0 and 1"),
        ({"gap": (0.5, 0.4)}, "likelihoods.toml: [variants], gap: sums to 0.9, not 1"),
        ({"gap": (0.5, 0.6)}, "likelihoods.toml: [variants], gap: sums to 1.1, not 1"),
        ({"gap": EVEN, "gab": EVEN}, "likelihoods.toml: [variants]: there is no 'gab'"),
        ({"gap": EVEN, "gap_1": EVEN}, "likelihoods.toml: [variants]: there is no 'gap_1'"),
        ({"gap": EVEN, "sound": EVEN}, "likelihoods.toml: [variants]: there is no 'sound'"),
    ],
)
def test_shares_that_make_no_sense_are_told(
    make_book: Book, variants: Mapping[str, Sequence[float]], told: str
) -> None:
    assert told in problems(make_book, variants=variants)


@pytest.mark.parametrize("name", ["gap_3", "gap_0", "gap_01", "gap_", "gab_1", "other_1", "sound_1"])
def test_the_row_of_an_unknown_variant_is_told(make_book: Book, name: str) -> None:
    place = "likelihoods.toml: [likelihood.silent], rows"
    measurements = {"silent": ("silence", {**SILENT, name: EVEN}), "losses": ("loss", LOSSES)}
    assert problems(make_book, measurements=measurements) == (f"{place}: there is no {name!r}",)


def test_rows_of_variants_need_the_shares(make_book: Book) -> None:
    told = problems(make_book, variants=None)
    assert "likelihoods.toml: [likelihood.silent], rows: there is no 'gap_1'" in told
    assert len(told) == 4


def test_rows_of_variants_are_looked_at_like_any_other(make_book: Book) -> None:
    wrong = {**SILENT, "gap_2": (0.5, 0.4)}
    measurements = {"silent": ("silence", wrong), "losses": ("loss", LOSSES)}
    told = "likelihoods.toml: [likelihood.silent], rows, gap_2: sums to 0.9, not 1"
    assert problems(make_book, measurements=measurements) == (told,)
    checks = {"kind": ("corner", {"sound": EVEN, "other": EVEN, "gap_9": EVEN})}
    assert problems(make_book, checks=checks) == ("checks.toml: [check.kind], rows: there is no 'gap_9'",)


@pytest.mark.parametrize("by", ['"half"', '["a", "b"]', "[nan, 0.5]", "[true, false]", "{ a = 1 }"])
def test_shares_that_cannot_be_read_are_one_problem_only(make_book: Book, tmp_path: Path, by: str) -> None:
    both(make_book)
    file = tmp_path / "book" / "likelihoods.toml"
    file.write_text(file.read_text("utf-8").replace("gap = [0.5, 0.5]", f"gap = {by}"), "utf-8")
    with pytest.raises(RulebookError) as caught:
        load_rulebook(file.parent)
    assert without_lines(caught.value) == (
        "likelihoods.toml: [variants], gap: must be a list of finite numbers",
    )


def test_variants_that_are_no_table_are_told(make_book: Book, tmp_path: Path) -> None:
    both(make_book)
    file = tmp_path / "book" / "likelihoods.toml"
    text = file.read_text("utf-8").replace("[variants]\ngap = [0.5, 0.5]\n", "variants = 2\n")
    file.write_text(text, "utf-8")
    with pytest.raises(RulebookError) as caught:
        load_rulebook(file.parent)
    assert "likelihoods.toml: variants: must be a table" in without_lines(caught.value)


def test_a_rule_book_without_variants_is_a_rule_book(make_book: Book) -> None:
    measurements = {"m": ("g", {"sound": EVEN, "other": EVEN, "gap": (0.1, 0.9)})}
    book = make_book(PRIORS, measurements=measurements, groups={"g": 1.0})
    assert book.variants == {}
    assert {atom.variant for atom in build_atoms(book)} == set(PRIORS)
