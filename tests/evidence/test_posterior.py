"""The ranking against published numbers and facts of the trade."""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

import numpy as np
import pytest
from scipy import stats

from triage.corners import CORNERS
from triage.evidence.answers import build_answers, parse_observation
from triage.evidence.findings import build_findings
from triage.evidence.hypotheses import Finding, Hypothesis, Posterior
from triage.evidence.posterior import effective_count, rank_hypotheses
from triage.evidence.rule_tables import Rulebook
from triage.signals.measurement import Measurement

TWO = {"no-fault-found": ("vehicle", 0.5), "other": ("vehicle", 0.5)}


def hard(source: str, corner: str, names: Sequence[str], seen: int) -> Finding:
    shares = {name: float(i == seen) for i, name in enumerate(names)}
    return Finding(f"{source}@{corner}", source, corner, "", 1.0, 0.0, "", shares, ())  # type: ignore[arg-type]


def probabilities(posterior: Posterior) -> dict[Hypothesis, float]:
    return {line.hypothesis: line.probability for line in posterior.ranking}


def total(posterior: Posterior, *causes: str) -> float:
    return sum(line.probability for line in posterior.ranking if line.hypothesis.cause in causes)


# --- against published numbers ---


def test_product_of_likelihoods_as_in_a_published_naive_bayes_example(
    make_book: Callable[..., Rulebook],
) -> None:
    """Male or female from height, weight and foot size (widely printed; unbiased variances): 0.99998848."""
    sample = (6.0, 130.0, 8.0)
    male = ((5.855, 0.0350333), (176.25, 122.9167), (11.25, 0.916667))
    female = ((5.4175, 0.097225), (132.5, 558.333), (7.5, 1.66667))
    checks = {
        f"check{i}": (
            "vehicle",
            {
                name: [share := 0.1 * stats.norm(mean, math.sqrt(variance)).pdf(value), 1.0 - share]
                for name, (mean, variance) in (("sound", m), ("other", f))
            },
        )
        for i, (value, m, f) in enumerate(zip(sample, male, female, strict=True))
    }
    book = make_book(TWO, checks=checks)
    findings = [hard(name, "vehicle", ("outcome0", "outcome1"), 0) for name in checks]
    posterior = rank_hypotheses(findings, book)
    assert posterior.first.hypothesis == Hypothesis("vehicle", "other")
    assert posterior.first.probability == pytest.approx(0.99998848, abs=2e-8)


# --- what must always hold ---


def random_measurements(rulebook: Rulebook, rng: np.random.Generator) -> list[Measurement]:
    chosen = []
    for rule in rulebook.measurements.values():
        span = max(abs(rule.edges[0]), abs(rule.edges[-1]))
        for place in CORNERS if rule.scope == "corner" else ("vehicle",):
            if rng.random() < 0.7:
                value, spread = rng.normal(0.0, 2.0 * span), rng.exponential(span)
                chosen.append(Measurement(rule.id, place, value, spread, rule.unit, sample_count=9, spans=()))
    return chosen


@pytest.mark.parametrize("number", range(10))
def test_probabilities_sum_to_one_and_none_is_zero_in_any_order(rulebook: Rulebook, number: int) -> None:
    rng = np.random.default_rng(number)
    findings = list(build_findings(random_measurements(rulebook, rng), rulebook))
    posterior = rank_hypotheses(findings, rulebook)
    shares = [line.probability for line in posterior.ranking]
    assert abs(sum(shares) - 1.0) < 1e-9
    assert min(shares) > 0.0
    assert {line.hypothesis for line in posterior.ranking} == set(rulebook.hypotheses)
    rng.shuffle(findings)  # type: ignore[arg-type]
    assert rank_hypotheses(findings, rulebook) == posterior


def test_equal_claims_stand_in_the_order_of_the_corners(
    rulebook: Rulebook, drive: Callable[..., list]
) -> None:
    for log in ([], drive()):
        ranking = rank_hypotheses(build_findings(log, rulebook), rulebook).ranking
        assert [line.hypothesis.corner for line in ranking if line.hypothesis.cause == "air-gap"] == list(
            CORNERS
        )
        assert all(first.probability >= second.probability for first, second in itertools.pairwise(ranking))


def test_bands_of_another_rule_book_decide_nothing(rulebook: Rulebook) -> None:
    foreign = hard("dip-share", "FL", ("tiny", "huge"), 1)
    assert probabilities(rank_hypotheses([foreign], rulebook)) == pytest.approx(
        probabilities(rank_hypotheses((), rulebook))
    )


def test_nothing_known_leaves_the_priors(rulebook: Rulebook) -> None:
    posterior = rank_hypotheses((), rulebook)
    for line in posterior.ranking:
        cause = rulebook.causes[line.hypothesis.cause]
        expected = cause.prior / (4 if cause.where == "corner" else 1)
        assert line.probability == pytest.approx(expected, rel=1e-12)


def test_the_floor_keeps_a_share_for_what_the_evidence_rules_out(make_book: Callable[..., Rulebook]) -> None:
    checks = {f"c{i}": ("vehicle", {"sound": (0.999999, 1e-6), "other": (1e-6, 0.999999)}) for i in range(9)}
    book = make_book(TWO, checks=checks, floor=0.01)
    against_other = [hard(name, "vehicle", ("outcome0", "outcome1"), 0) for name in checks]
    shares = probabilities(rank_hypotheses(against_other, book))
    assert shares[Hypothesis("vehicle", "other")] == pytest.approx(0.01 * 0.5, rel=1e-9)


def test_other_survives_the_strongest_evidence(rulebook: Rulebook, drive: Callable[..., list]) -> None:
    findings = build_findings(drive("FL", {"side-load-contrast": 1.0, "dip-share": 50.0}), rulebook)
    certain = [
        hard(check.id, "FL" if check.where == "corner" else "vehicle", tuple(check.outcomes), 0)
        for check in rulebook.checks.values()
    ]
    posterior = rank_hypotheses((*findings, *certain), rulebook)
    least = rulebook.scoring.floor * rulebook.causes["other"].prior
    assert probabilities(posterior)[Hypothesis("vehicle", "other")] >= 0.999 * least


def test_findings_of_another_rule_book_are_left_out(rulebook: Rulebook) -> None:
    foreign = hard("moon-phase", "FL", ("new", "full"), 1)
    assert rank_hypotheses([foreign], rulebook) == rank_hypotheses((), rulebook)


def test_the_side_of_a_growl_follows_the_loaded_side(rulebook: Rulebook) -> None:
    """Louder in a left curve points to the right side (training pages, common practice)."""
    for outcome, right_first in (("louder-in-left", True), ("louder-in-right", False)):
        answers = build_answers([parse_observation(f"growl={outcome}")], rulebook, first_corner="FL")
        shares = probabilities(rank_hypotheses(answers, rulebook))
        right = sum(share for claim, share in shares.items() if claim.corner in ("FR", "RR"))
        left = sum(share for claim, share in shares.items() if claim.corner in ("FL", "RL"))
        assert (right > 1.5 * left) if right_first else (left > 1.5 * right)


# --- groups and temperature ---

ROWS: Mapping[str, Sequence[float]] = {"sound": (0.9, 0.1), "other": (0.2, 0.8)}
FLAT: Mapping[str, Sequence[float]] = {"sound": (0.5, 0.5), "other": (0.5, 0.5)}


def log_odds(book: Rulebook, count: int, *, flat: int = 0) -> float:
    findings = [hard(f"m{i}", "vehicle", ("band0", "band1"), 1) for i in range(count)]
    findings += [hard(f"flat{i}", "vehicle", ("band0", "band1"), 1) for i in range(flat)]
    shares = probabilities(rank_hypotheses(findings, book))
    return math.log(shares[Hypothesis("vehicle", "other")] / shares[Hypothesis("vehicle", "no-fault-found")])


def repeated(
    make_book: Callable[..., Rulebook], weight: float | None, *, temperature: float = 1.0
) -> Rulebook:
    measurements = {f"m{i}": ("g", ROWS) for i in range(4)} | {f"flat{i}": ("g", FLAT) for i in range(3)}
    return make_book(TWO, measurements=measurements, groups={"g": weight}, temperature=temperature)


def test_readings_of_one_fact_count_as_the_square_root_of_their_number(
    make_book: Callable[..., Rulebook],
) -> None:
    book = repeated(make_book, None)
    for count in (1, 2, 3, 4):
        assert log_odds(book, count) == pytest.approx(math.sqrt(count) * math.log(8.0), rel=1e-9)


def test_a_finding_that_says_nothing_does_not_weaken_its_group(make_book: Callable[..., Rulebook]) -> None:
    book = repeated(make_book, None)
    assert log_odds(book, 2, flat=3) == pytest.approx(log_odds(book, 2), rel=1e-9)


def test_a_given_weight_multiplies_the_group(make_book: Callable[..., Rulebook]) -> None:
    assert log_odds(repeated(make_book, 0.3), 4) == pytest.approx(0.3 * 4 * math.log(8.0), rel=1e-9)


def test_temperature_divides_the_evidence(make_book: Callable[..., Rulebook]) -> None:
    assert log_odds(repeated(make_book, 1.0, temperature=2.5), 3) == pytest.approx(
        3 * math.log(8.0) / 2.5, rel=1e-9
    )


def test_the_weight_of_a_table_multiplies_its_evidence_alone(make_book: Callable[..., Rulebook]) -> None:
    book = repeated(make_book, 1.0)
    tables = {**book.likelihoods, "m0": replace(book.likelihoods["m0"], weight=0.4)}
    assert log_odds(replace(book, likelihoods=tables), 3) == pytest.approx(2.4 * math.log(8.0), rel=1e-9)


def test_groups_at_different_places_are_different_facts(make_book: Callable[..., Rulebook]) -> None:
    book = make_book(TWO, measurements={"m": ("g", ROWS)}, groups={"g": None})
    findings = [hard("m", corner, ("band0", "band1"), 0) for corner in CORNERS]
    shares = probabilities(rank_hypotheses(findings, book))
    # An unknown fault sits at one corner: one factor 0.2, three factors 0.9, against four of 0.9.
    ratio = shares[Hypothesis("vehicle", "other")] / shares[Hypothesis("vehicle", "no-fault-found")]
    assert ratio == pytest.approx(0.2 / 0.9, rel=1e-9)


def test_effective_count_lies_between_one_and_the_number() -> None:
    assert effective_count(np.array([2.0, 2.0, 2.0])) == pytest.approx(3.0)
    assert effective_count(np.array([5.0, 0.0])) == pytest.approx(1.0)
    assert effective_count(np.zeros(3)) == 1.0
    assert 1.0 < effective_count(np.array([1.0, 0.1])) < 2.0


# --- facts of the trade (common practice, no source) ---


USUAL = (
    *("sensor-fault", "bearing-play", "bearing-roughness"),
    *("encoder-debris", "encoder-damage", "encoder-runout", "encoder-mismatch"),
)


def test_a_fault_at_one_corner_leans_to_sensor_or_bearing_with_encoder(rulebook: Rulebook) -> None:
    """A brake-control fault at one corner is nearly always the sensor or the bearing with its encoder."""
    code = build_answers([parse_observation("read-fault-memory@RR=signal")], rulebook, first_corner="RR")
    for findings in ((), code):
        shares = probabilities(rank_hypotheses(findings, rulebook))
        at_corner = {claim.cause: share for claim, share in shares.items() if claim.corner == "RR"}
        usual = sum(at_corner[cause] for cause in USUAL)
        assert usual > 2.5 * (sum(at_corner.values()) - usual)
        assert max(at_corner, key=lambda cause: at_corner[cause]) in USUAL


def test_drop_outs_of_one_wheel_blame_its_corner(
    rulebook: Rulebook, measure: Callable[..., Measurement]
) -> None:
    """Eight a minute of a twentieth of a second each, to nothing: three numbers that every log gives."""
    seen = {"drop-out-rate": 8.0, "dead-share": 0.7, "deepest-drop": 97.0}
    log = [
        measure(name, corner, value if corner == "RR" else 0.0)
        for name, value in seen.items()
        for corner in CORNERS
    ]
    shares = probabilities(rank_hypotheses(build_findings(log, rulebook), rulebook))
    at_corner = {claim.cause: share for claim, share in shares.items() if claim.corner == "RR"}
    assert sum(at_corner.values()) > 0.8
    assert sum(at_corner[cause] for cause in USUAL) > 0.5 * sum(at_corner.values())


def test_debris_stays_first_when_the_bearing_has_no_play_and_turns_smoothly(
    rulebook: Rulebook, dirty_logs: tuple[tuple[Measurement, ...], ...]
) -> None:
    """Dirt on the encoder and a bearing that feels sound: the bearing must go down."""
    seen = [parse_observation("rock-wheel=none"), parse_observation("turn-by-hand=smooth")]
    answers = build_answers(seen, rulebook, first_corner="FL")
    debris, play = Hypothesis("FL", "encoder-debris"), Hypothesis("FL", "bearing-play")
    lasting = rulebook.scoring.floor * rulebook.causes["bearing-play"].prior / 4  # no answer takes this away
    recognised = 0
    for log in dirty_logs:
        findings = build_findings(log, rulebook)
        before = rank_hypotheses(findings, rulebook)
        if before.first.hypothesis != debris:
            continue
        recognised += 1
        after = rank_hypotheses((*findings, *answers), rulebook)
        assert after.first.hypothesis == debris
        assert probabilities(after)[play] - lasting < 0.2 * (probabilities(before)[play] - lasting)
        line = next(line for line in after.ranking if line.hypothesis == play)
        assert {"rock-wheel@FL", "turn-by-hand@FL"} <= set(line.against)
    assert recognised >= len(dirty_logs) // 2


def test_clear_play_raises_the_bearing_strongly(rulebook: Rulebook, drive: Callable[..., list]) -> None:
    findings = build_findings(drive(), rulebook)
    before = probabilities(rank_hypotheses(findings, rulebook))[Hypothesis("FL", "bearing-play")]
    answers = build_answers([parse_observation("rock-wheel=clear")], rulebook, first_corner="FL")
    after = probabilities(rank_hypotheses((*findings, *answers), rulebook))[Hypothesis("FL", "bearing-play")]
    assert after / (1.0 - after) > 15.0 * before / (1.0 - before)


def test_a_healthy_drive_finds_no_fault(rulebook: Rulebook, drive: Callable[..., list]) -> None:
    posterior = rank_hypotheses(build_findings(drive(), rulebook), rulebook)
    assert posterior.first.hypothesis == Hypothesis("vehicle", "no-fault-found")
    assert posterior.first.probability > 0.5


@pytest.mark.parametrize(
    ("answer", "claim"),
    [
        ("exchange-sensors@RR=follows-sensor", Hypothesis("RR", "sensor-fault")),
        ("wiggle-lead@RR=drops-out", Hypothesis("RR", "harness-fault")),
        ("look-at-encoder@RR=dirty", Hypothesis("RR", "encoder-debris")),
        ("look-at-encoder@RR=damaged", Hypothesis("RR", "encoder-damage")),
        ("sensor-seat@RR=loose-or-rust", Hypothesis("RR", "air-gap")),
        ("end-play-gauge@RR=beyond", Hypothesis("RR", "bearing-play")),
    ],
)
def test_a_check_made_for_a_cause_puts_it_first(rulebook: Rulebook, answer: str, claim: Hypothesis) -> None:
    seen = [parse_observation("read-fault-memory@RR=signal"), parse_observation(answer)]
    answers = build_answers(seen, rulebook, first_corner="RR")
    assert rank_hypotheses(answers, rulebook).first.hypothesis == claim
