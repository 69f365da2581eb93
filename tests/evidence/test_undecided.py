"""Between which claims a verdict is open, and which drive or check would close it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.spatial.distance import jensenshannon
from scipy.stats import entropy, norm

from triage.corners import CORNERS
from triage.evidence.answers import Observation
from triage.evidence.claims import leading_claims, pairs_of
from triage.evidence.driving_advice import LEAST_ADVICE_BIT, driving_text
from triage.evidence.hypotheses import Hypothesis
from triage.evidence.judge import Judgement, judge
from triage.evidence.next_checks import LEAST_GAIN_BIT
from triage.evidence.pair_information import LONGER, gain_of_driving_on, gains_of_seeing_bit, pair_gain_bit
from triage.evidence.posterior import believe
from triage.evidence.rule_consistency import find_inconsistencies
from triage.evidence.rule_tables import Rulebook
from triage.run import run_triage
from triage.signals.analysis import analyse
from triage.signals.measurement import NotMeasurable
from triage.simulator.road_test import simulate_road_test
from triage.speed_log import SpeedLog

NEITHER_EVEN = {"no-fault-found": ("vehicle", 0.7), "other": ("vehicle", 0.3)}


@pytest.fixture
def two_claims(make_book: Callable[..., Rulebook]) -> Rulebook:
    """Two claims, 0.7 and 0.3; a lamp that tells them apart as a noisy channel would."""
    return make_book(NEITHER_EVEN, checks={"lamp": ("vehicle", {"sound": (0.9, 0.1), "other": (0.1, 0.9)})})


def missing(name: str, corner: str | None = None, *, by_driving: bool = True) -> NotMeasurable:
    return NotMeasurable(name, corner, "none", "some", by_driving)  # type: ignore[arg-type]


def test_two_claims_by_the_closed_form_of_a_binary_channel(two_claims: Rulebook) -> None:
    """I = H2(p(1-e) + (1-p)e) - H2(e), the information through a binary symmetric channel."""
    judgement = judge((), (), two_claims)
    (pair,) = judgement.undecided
    assert (pair.first_probability, pair.second_probability) == pytest.approx((0.7, 0.3))
    assert pair.driving is None
    assert pair.check is not None
    expected = entropy([0.66, 0.34], base=2) - entropy([0.1, 0.9], base=2)
    assert pair.check.gain_bit == pytest.approx(expected, abs=1e-6)
    assert pair.check.gain_bit == pytest.approx(judgement.next_checks[0].gain_bit, abs=1e-6)


def test_even_claims_by_another_library(two_claims: Rulebook) -> None:
    claims = leading_claims(believe((), two_claims), two_claims)
    pairs = replace(pairs_of(claims), share=np.array([0.5]))
    rows = np.random.default_rng(4).dirichlet(np.ones(5), 2)
    gain = pair_gain_bit(rows, pairs)
    assert gain[0] == pytest.approx(jensenshannon(*rows, base=2) ** 2, abs=1e-12)
    assert pair_gain_bit(rows[[0, 0]], pairs)[0] == 0.0


def test_what_findings_tell_is_the_same_alone_and_among_those_with_more_bands(rulebook: Rulebook) -> None:
    claims = leading_claims(believe((), rulebook), rulebook)
    pairs = pairs_of(claims)
    tables = [claims.table(name, "RL") for name in rulebook.measurements]
    assert len({table.shape for table in tables}) > 1
    for table, gain_bit in zip(tables, gains_of_seeing_bit(tables, claims, pairs), strict=True):
        np.testing.assert_array_equal(gain_bit, pair_gain_bit(claims.mixture @ table, pairs))


@pytest.mark.parametrize(("weight", "usual"), [(1.0, 0.9), (0.5, 0.75)])
def test_a_missing_measurement_tells_what_its_rows_differ_and_its_weight_leaves(
    make_book: Callable[..., Rulebook], weight: float, usual: float
) -> None:
    """A weight of a half counts odds of 9 to 1 as their root, 3 to 1."""
    rows = {"sound": (0.9, 0.1), "worn": (0.1, 0.9), "other": (0.5, 0.5)}
    book = make_book(
        {"worn": ("corner", 0.49), "no-fault-found": ("vehicle", 0.5), "other": ("vehicle", 0.01)},
        measurements={"ripple": ("ripple", rows)},
        groups={"ripple": None},
    )
    book = replace(book, likelihoods={"ripple": replace(book.likelihoods["ripple"], weight=weight)})
    wanted = [pair for pair in judge((), [missing("ripple")], book).undecided if pair.first.cause != "worn"]
    assert {pair.second.corner for pair in wanted} == set(CORNERS)
    for pair in wanted:
        share = pair.first_probability / (pair.first_probability + pair.second_probability)
        low = usual * share + (1.0 - usual) * (1.0 - share)
        assert pair.driving is not None
        assert pair.driving.corner == pair.second.corner
        assert pair.driving.gain_bit == pytest.approx(
            entropy([low, 1.0 - low], base=2) - entropy([usual, 1.0 - usual], base=2), abs=1e-6
        )
    repaired = judge((), [missing("ripple", by_driving=False)], book).undecided
    assert all(pair.driving is None for pair in repaired)


def test_variants_are_averaged_before_claims_are_compared(make_book: Callable[..., Rulebook]) -> None:
    """Two ways to show a fault that together look like no fault tell nothing."""
    rows = {"sound": (0.5, 0.5), "other_1": (0.9, 0.1), "other_2": (0.1, 0.9), "other": (0.5, 0.5)}
    book = make_book(
        NEITHER_EVEN,
        measurements={"ripple": ("ripple", rows)},
        variants={"other": (0.5, 0.5)},
        groups={"ripple": None},
    )
    (pair,) = judge((), [missing("ripple")], book).undecided
    assert pair.driving is None


def test_a_longer_drive_by_numerical_integration(two_claims: Rulebook) -> None:
    """One band edge at the measured value: the claims differ in which side the true value lies on."""
    claims = leading_claims(believe((), two_claims), two_claims)
    pairs = pairs_of(claims)
    atoms = [claims.tables.atoms[number] for number in claims.numbers]
    table = np.array([(0.9, 0.1) if atom.cause == "no-fault-found" else (0.1, 0.9) for atom in atoms])
    longer = gain_of_driving_on(table, (0.5, 0.5), claims, pairs)
    times = int(longer.times[0])
    assert times in LONGER
    std = 1.0 / np.sqrt(times - 1.0)

    def seen(value: float, low: float) -> float:
        # Of two normal spreads, the true one cut at 0 and the further drive's: Φ at the joint estimate.
        wide = np.hypot(1.0, std)
        below = norm.cdf(-value / wide / std)
        return float(norm.pdf(value, scale=wide) * 2.0 * (low * below + (1.0 - low) * (1.0 - below)))

    def doubt(low: float) -> float:
        return quad(lambda v: -seen(v, low) * np.log2(max(seen(v, low), 1e-300)), -12.0, 12.0, limit=200)[0]

    expected = doubt(0.7 * 0.9 + 0.3 * 0.1) - 0.7 * doubt(0.9) - 0.3 * doubt(0.1)
    assert longer.gain_bit[0] == pytest.approx(expected, rel=0.03)


def test_a_decided_verdict_has_no_open_pair(
    rulebook: Rulebook, drive: Callable[..., list], debris: dict[str, float]
) -> None:
    nothing = [Observation("read-fault-memory", corner, "nothing") for corner in CORNERS]
    answers = [Observation("lamp-when", None, "never"), *nothing]
    healthy = judge(drive(), [missing(name) for name in rulebook.measurements], rulebook, answers)
    assert healthy.posterior.first.hypothesis.cause == "no-fault-found"
    assert healthy.undecided == ()
    seen = judge(drive("RR", debris), (), rulebook, [Observation("look-at-encoder", "RR", "dirty")])
    assert seen.posterior.first.probability > 0.95
    assert seen.undecided == ()


@pytest.fixture(scope="module")
def open_verdicts(dirty_logs: tuple, rulebook: Rulebook) -> tuple[Judgement, ...]:
    """Verdicts of light dirt without the measurements that show it best, and of no log at all."""
    gone = ("dip-angle-lock", "dip-share", "drop-out-rate", "bad-sector-width", "noise-ratio", "angle-share")
    gaps = [missing(name) for name in gone]
    cut = [judge([one for one in log if one.id not in gone], gaps, rulebook) for log in dirty_logs]
    return (*cut, judge((), [missing("all")], rulebook))


def test_open_pairs_keep_to_their_promises(open_verdicts: tuple[Judgement, ...]) -> None:
    pairs = [(verdict, pair) for verdict in open_verdicts for pair in verdict.undecided]
    assert len(pairs) > 15
    for verdict, pair in pairs:
        known = {line.hypothesis: line.probability for line in verdict.posterior.ranking}
        assert pair.first_probability == pytest.approx(known[pair.first], abs=1e-9)
        assert pair.second_probability == pytest.approx(known[pair.second], abs=1e-9)
        first, both = pair.first_probability, pair.first_probability + pair.second_probability
        doubt_bit = entropy([first / both, 1.0 - first / both], base=2)
        assert first >= pair.second_probability > first / 19.0
        for advice in (pair.driving, pair.check):
            assert advice is None or LEAST_ADVICE_BIT <= advice.gain_bit <= doubt_bit + 1e-9


def test_the_check_of_a_pair_is_a_next_check_worth_at_least_as_much(
    open_verdicts: tuple[Judgement, ...],
) -> None:
    """I(outcome; claim) >= P(pair) I(outcome; claim | pair), by the chain rule of information."""
    for verdict in open_verdicts:
        listed = {(check.check, check.corner): check for check in verdict.next_checks}
        for pair in verdict.undecided:
            if pair.check is not None:
                check = listed[pair.check.check, pair.check.corner]
                both = pair.first_probability + pair.second_probability
                assert check.gain_bit >= max(both * pair.check.gain_bit - 1e-9, LEAST_GAIN_BIT)


def test_advice_to_drive_comes_with_the_cautions_of_the_road(
    open_verdicts: tuple[Judgement, ...], rulebook: Rulebook
) -> None:
    of_road = {caution.text for caution in rulebook.cautions.values() if "road" in caution.covers}
    advised = [verdict for verdict in open_verdicts if any(pair.driving for pair in verdict.undecided)]
    assert advised
    assert all(of_road <= set(verdict.cautions) for verdict in advised)


@pytest.mark.parametrize(
    ("corner", "curve", "name"),
    [
        ("FL", "right-hand", "front left"),
        ("RL", "right-hand", "rear left"),
        ("FR", "left-hand", "front right"),
        ("RR", "left-hand", "rear right"),
    ],
)
def test_the_curve_is_the_one_in_which_the_wheel_is_outside(
    corner: str, curve: str, name: str, rulebook: Rulebook
) -> None:
    text = driving_text(rulebook.measurements["side-load-contrast"], corner)  # type: ignore[arg-type]
    assert text.startswith(f"Five steady {curve} curves")
    assert f"the {name} wheel is loaded as the outer wheel" in text
    assert "road and the law" in text


def test_every_measurement_has_its_driving(rulebook: Rulebook) -> None:
    for rule in rulebook.measurements.values():
        assert rule.driving, rule.id
        for place in CORNERS if rule.scope == "corner" else ("vehicle",):
            for times in (1, *LONGER):
                text = driving_text(rule, place, times)
                assert "{" not in text, rule.id
                assert text.endswith(".")
                assert not text.endswith("..")


@pytest.mark.parametrize(
    ("name", "driving", "told"),
    [
        ("dip-share", "turn the {wheel}", "{wheel} is none of corner, loaded_curve, other_curve"),
        ("swap-gain", "load the {corner} wheel", "the whole vehicle has no corner"),
    ],
)
def test_driving_with_a_gap_nobody_fills_is_a_problem_of_the_rule_book(
    name: str, driving: str, told: str, rulebook: Rulebook
) -> None:
    assert find_inconsistencies(rulebook) == ()
    worded = replace(rulebook.measurements[name], driving=driving)
    (problem,) = find_inconsistencies(replace(rulebook, measurements={**rulebook.measurements, name: worded}))
    assert problem.startswith(f"measurements.toml: [measurement.{name}], driving: ")
    assert problem.endswith(told)


def test_what_only_a_fault_shows_is_not_asked_of_a_sound_wheel(
    rulebook: Rulebook, drive: Callable[..., list]
) -> None:
    gaps = [missing(name) for name, rule in rulebook.measurements.items() if rule.needs_fault]
    assert gaps
    for pair in judge(drive("RL", {"dip-share": 0.6}), gaps, rulebook).undecided:
        same = pair.first.corner == pair.second.corner
        if pair.driving and rulebook.measurements[pair.driving.measurement].needs_fault:
            assert same


def _without_curves(log: SpeedLog) -> SpeedLog:
    """Leave out whatever was driven with a noticeable side load, on all wheels."""
    analysis = analyse(log)
    speed = np.nan_to_num(analysis.reference.reference_mps)
    brisk = (np.abs(speed**2 * analysis.reference.curvature_radpm) > 0.9).astype(float)
    wheels = {}
    for corner, trace in log.wheels.items():
        kept = np.interp(trace.time_s, analysis.clock.time_s, brisk) < 0.5
        columns = {name: getattr(trace, name)[kept] for name in ("time_s", "speed_mps", "invalid")}
        wheels[corner] = replace(trace, **columns)
    return replace(log, wheels=wheels, channels={})


@pytest.mark.parametrize(("corner", "curve"), [("FL", "right-hand"), ("RR", "left-hand")])
def test_a_log_without_curves_and_play_felt_by_hand_ask_for_curves_to_the_right_side(
    corner: str, curve: str, rulebook: Rulebook
) -> None:
    log = simulate_road_test(
        cause="bearing-play",
        corner=corner,  # type: ignore[arg-type]
        severity=0.6,
        duration_s=120.0,
        seed=6,
    ).log
    felt = [Observation("rock-wheel", corner, "clear")]  # type: ignore[arg-type]
    result = run_triage(_without_curves(log), rulebook, felt)
    assert "side-load-contrast" in {gap.id for gap in result.not_measurable}
    play = Hypothesis(corner, "bearing-play")  # type: ignore[arg-type]
    healthy = Hypothesis("vehicle", "no-fault-found")
    (pair,) = [pair for pair in result.undecided if {pair.first, pair.second} == {play, healthy}]
    assert pair.driving is not None
    assert pair.driving.corner == corner
    assert rulebook.measurements[pair.driving.measurement].group in ("side-load", "cage")
    assert f"Five steady {curve} " in pair.driving.text
    assert pair.check is not None
