"""The plan: costs by hand, a small belief by brute force, and what common practice does first."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import permutations

import numpy as np
import pytest
from scipy.stats import entropy

from triage.corners import CORNERS
from triage.evidence.answers import build_answers, parse_observation
from triage.evidence.hypotheses import Finding
from triage.evidence.next_checks import suggest_checks
from triage.evidence.rule_tables import Rulebook
from triage.evidence.rulebook import load_rulebook
from triage.planning.claims_in_doubt import weigh_claims
from triage.planning.costs import cost_of_check, cost_of_repair
from triage.planning.desk import build_options
from triage.planning.plan import Plan, PlanStep, make_plan
from triage.planning.repair_cost import RepairMenu, expected_repair_cost, repair_order


@pytest.fixture(scope="module")
def rulebook() -> Rulebook:
    return load_rulebook()


def _answers(rulebook: Rulebook, *texts: str) -> tuple[Finding, ...]:
    return build_answers([parse_observation(text) for text in texts], rulebook, first_corner="RR")


def _follow(rulebook: Rulebook, known: list[str], says: dict[str, str], steps: int = 6) -> list[str]:
    """Names of the steps when every check is answered as told, up to the first repair."""
    done: list[str] = []
    for _ in range(steps):
        step = make_plan(_answers(rulebook, *known), rulebook).next_step
        done.append(step.id)
        if step.kind == "repair":
            break
        place = f"@{step.place}" if step.place in CORNERS else ""
        known = [*known, f"{step.id}{place}={says[step.id]}"]
    return done


def test_opening_is_paid_once(rulebook: Rulebook) -> None:
    """By hand with an hour at 60 and no corrosion: minutes are money."""
    easy = replace(rulebook, workshop=replace(rulebook.workshop, money_per_hour=60.0, corrosion=0.0))
    rock = easy.checks["rock-wheel"]
    first = cost_of_check(rock, (), easy)
    lifted = easy.access["lifted"]
    assert first.money == pytest.approx(lifted.opening_min + rock.minutes_min)
    assert first.open_after == {"on-ground", "lifted"}
    assert cost_of_check(rock, first.open_after, easy).money == pytest.approx(rock.minutes_min)
    drive = easy.checks["growl-in-curves"]
    assert cost_of_check(drive, first.open_after, easy).money == pytest.approx(
        lifted.closing_min + drive.minutes_min
    )
    lead, work = easy.repairs["mend-lead"], easy.workshop.proof_min + lifted.closing_min
    assert cost_of_repair(lead, first.open_after, easy).money == pytest.approx(
        lead.minutes_min + work + easy.parts["lead"].price
    )


def test_corrosion_costs_minutes_and_parts(rulebook: Rulebook) -> None:
    sound, seized = (
        replace(rulebook, workshop=replace(rulebook.workshop, corrosion=corrosion))
        for corrosion in (0.0, 1.0)
    )
    look = rulebook.checks["look-at-encoder"]
    out = rulebook.access["sensor-out"]
    more = cost_of_check(look, (), seized).money - cost_of_check(look, (), sound).money
    slower = out.seized_min / 60.0 * rulebook.workshop.money_per_hour
    assert more == pytest.approx(slower + out.break_probability * rulebook.parts["sensor"].price)


def order_cost(order: Sequence[int], belief: np.ndarray, menu: RepairMenu) -> float:
    """Return the expected cost of a given order for one belief, nothing open before: the plain sum."""
    left, total = belief.copy(), 0.0
    for number in order:
        total += float(left.sum()) * float(menu.money[number])
        left = left * (1.0 - menu.cure[number])
    return total


def test_the_order_of_repairs_by_trying_all() -> None:
    """Against every order of three repairs and the last resort, on random beliefs."""
    rng = np.random.default_rng(2)
    worse = []
    for _ in range(200):
        cure = np.vstack([rng.uniform(0, 1, (3, 4)) * (rng.uniform(size=(3, 4)) < 0.6), np.ones((1, 4))])
        menu = RepairMenu(("a", "b", "c"), cure, np.array([*rng.uniform(20, 200, 3), 500.0]))
        belief = rng.dirichlet(np.ones(4))
        best = min(
            order_cost([*order[:count], 3], belief, menu)
            for order in permutations(range(3))
            for count in range(4)
        )
        mine = float(expected_repair_cost(belief[np.newaxis], menu)[0])
        assert mine == pytest.approx(order_cost(repair_order(belief, menu), belief, menu), abs=0.2)
        worse.append(mine / best - 1.0)
    assert min(worse) > -1e-3
    assert np.mean(worse) < 0.01


def test_a_doubt_stays_with_what_is_believed_without_a_recording(rulebook: Rulebook) -> None:
    claims = weigh_claims((), rulebook)
    assert claims.share.sum() == pytest.approx(1.0)
    by_cause = dict.fromkeys(rulebook.causes, 0.0)
    for atom, share in zip(claims.atoms, claims.share, strict=True):
        by_cause[atom.cause] += float(share)
    assert by_cause == pytest.approx({name: cause.prior for name, cause in rulebook.causes.items()})


# --- common practice, no source ---


DIRTY = {
    "lamp-when": "moving-off",
    "read-fault-memory": "signal",
    "spin-and-watch": "same-place",
    "rock-wheel": "none",
    "turn-by-hand": "smooth",
    "look-at-encoder": "dirty",
    "sensor-seat": "flat",
    "sensor-face": "metal-dust",
    "coil-voltage": "weak",
}


def test_no_play_and_smooth_leads_to_a_look_and_to_cleaning_before_any_work_on_the_hub(
    rulebook: Rulebook,
) -> None:
    known = ["read-fault-memory@RR=signal", "rock-wheel@RR=none", "turn-by-hand@RR=smooth"]
    steps = _follow(rulebook, known, _known_outcomes(rulebook, DIRTY))
    assert "look-at-encoder" in steps
    assert steps[-1] == "clean-encoder"
    assert not {"replace-hub-unit", "replace-encoder"} & set(steps)


def test_play_beyond_the_limit_and_a_growl_in_curves_lead_to_the_hub_unit(rulebook: Rulebook) -> None:
    plan = make_plan(
        _answers(
            rulebook, "end-play-gauge@RR=beyond", "rock-wheel@RR=clear", "growl-in-curves=louder-in-left"
        ),
        rulebook,
    )
    repairs = [step.id for step in plan.repairs]
    assert repairs[0] == "replace-hub-unit"


def test_no_current_leads_to_the_lead_before_a_sensor_is_bought(rulebook: Rulebook) -> None:
    known = ["read-fault-memory@RR=circuit", "sensor-supply-current@RR=none"]
    steps = _follow(rulebook, known, _known_outcomes(rulebook, {"lamp-when": "at-standstill"}), steps=9)
    looked = [i for i, name in enumerate(steps) if name in ("connector", "wiggle-lead")]
    assert looked
    assert "replace-sensor" not in steps[: looked[0]]


def test_a_growl_without_a_code_has_wheels_turned_and_heard_before_the_car_is_given_up(
    rulebook: Rulebook,
) -> None:
    """A rough bearing shows in no wheel speed: it is found by turning the wheels and by listening."""
    known = ["noise-kind=growl", *(f"read-fault-memory@{wheel}=nothing" for wheel in CORNERS)]
    says = {"turn-by-hand": "rough", "stethoscope": "louder"}
    steps: list[PlanStep] = []
    while not steps or steps[-1].kind == "check" or steps[-1].id == "hand-back":
        tried = [(step.id, step.place) for step in steps if step.kind == "repair"]
        is_open = ["on-ground", "lifted"] if steps and steps[-1].kind == "check" else []
        plan = make_plan(_answers(rulebook, *known), rulebook, is_open=is_open, tried=tried)
        steps.append(plan.next_step)
        if plan.next_step.kind == "check":
            step = plan.next_step
            answer = _known_outcomes(rulebook, says if step.place == "RR" else {})[step.id]
            known.append(f"{step.id}{f'@{step.place}' if step.place in CORNERS else ''}={answer}")
    names = [step.id for step in steps]
    assert names[:3] == ["turn-by-hand"] * 3
    assert "stethoscope" in names
    assert (names[-1], steps[-1].place) == ("replace-hub-unit", "RR")


def test_giving_the_car_away_costs_more_than_the_dearest_repair(rulebook: Rulebook) -> None:
    """Somebody else must find and mend it too: cheaper, and no worn hub would be worth looking for."""
    dearest = max(cost_of_repair(repair, (), rulebook).money for repair in rulebook.repairs.values())
    hours_of_search = (rulebook.workshop.last_resort - dearest) / rulebook.workshop.money_per_hour
    assert hours_of_search >= 3.0


def test_the_reason_is_one_sentence_with_the_numbers(rulebook: Rulebook) -> None:
    plan = make_plan(_answers(rulebook, "read-fault-memory@RR=signal"), rulebook)
    assert plan.why.count(".") == 1
    assert f"{plan.expected_money:.0f}" in plan.why
    assert f"{plan.act_now_money:.0f}" in plan.why


def test_a_repair_said_to_be_tried_twice_is_left_out_once(rulebook: Rulebook) -> None:
    tried = [("replace-sensor", "RR")] * 2
    plan = make_plan(_answers(rulebook, "connector@RR=clean"), rulebook, tried=tried)
    assert (plan.next_step.id, plan.next_step.place) != tried[0]


def test_what_failed_is_not_tried_again(rulebook: Rulebook) -> None:
    seen = _answers(rulebook, "read-fault-memory@RR=signal", "look-at-encoder@RR=dirty")
    before = make_plan(seen, rulebook)
    assert before.repairs[0].id == "clean-encoder"
    after = make_plan(seen, rulebook, tried=[("clean-encoder", "RR")])
    assert ("clean-encoder", "RR") not in {(step.id, step.place) for step in after.repairs}


def test_a_workshop_that_asks_for_more_saving_repairs_sooner(rulebook: Rulebook) -> None:
    seen = _answers(rulebook, "look-at-encoder@RR=dirty")
    hasty = replace(rulebook, workshop=replace(rulebook.workshop, least_saving=1e6))
    assert make_plan(seen, hasty).next_step.kind == "repair"
    careful = make_plan((), replace(rulebook, workshop=replace(rulebook.workshop, least_saving=0.0)))
    assert careful.next_step.kind == "check"


def test_steps_at_which_someone_can_get_hurt_carry_their_cautions(rulebook: Rulebook) -> None:
    plan: Plan = make_plan(_answers(rulebook, "read-fault-memory@RR=signal"), rulebook)
    for step in (*plan.checks, *plan.repairs):
        access = rulebook.checks[step.id].access if step.id in rulebook.checks else None
        access = rulebook.repairs[step.id].access if step.id in rulebook.repairs else access
        assert step.cautions or access is None or not rulebook.access[access].hazardous


def _known_outcomes(rulebook: Rulebook, says: dict[str, str]) -> dict[str, str]:
    """The outcomes told, and for every other check the one that a sound corner gives most often."""
    sound = {
        check.id: list(check.outcomes)[int(np.argmax(check.table.rows["sound"]))]
        for check in rulebook.checks.values()
    }
    return sound | {name: word for name, word in says.items() if _knows(rulebook, name, word)}


def _knows(rulebook: Rulebook, name: str, word: str) -> bool:
    check = rulebook.checks[name]
    names: Sequence[str] = (*check.outcomes, *check.aliases)
    return word in names


@pytest.mark.parametrize(("money", "worth"), [(400.0, 0.0), (600.0, 0.335 * 182.0895522)])
def test_a_check_that_cannot_change_the_next_step_is_worth_nothing(money: float, worth: float) -> None:
    """Published exercise on a used car and a test (Russell and Norvig, AI: A Modern Approach, ch. 16).

    P(good) = 0.7, P(pass | good) = 0.8, P(pass | bad) = 0.35: P(pass) = 0.665, P(good | pass) = 0.842105,
    P(good | fail) = 0.417910. A repair that cures the good ones comes before the last resort of 1000 as long
    as it costs less than 1000 times the belief, so at 400 in either case.
    """
    menu = RepairMenu(("mend",), np.array([[1.0, 0.0], [1.0, 1.0]]), np.array([money, 1000.0]))
    passed, failed = np.array([0.7 * 0.8, 0.3 * 0.35]), np.array([0.7 * 0.2, 0.3 * 0.65])
    assert passed.sum() == pytest.approx(0.665)
    assert passed[0] / passed.sum() == pytest.approx(0.842105, abs=1e-6)
    assert failed[0] / failed.sum() == pytest.approx(0.417910, abs=1e-6)
    told = expected_repair_cost(np.stack((passed, failed)), menu).sum()
    blind = expected_repair_cost(np.array([[0.7, 0.3]]), menu).item()
    assert blind - told == pytest.approx(worth, abs=1e-6)


def test_checks_for_another_kind_of_sensor_are_not_planned(rulebook: Rulebook) -> None:
    code = "read-fault-memory@RR=circuit"
    seen = {
        kind: {
            step.id for step in make_plan(_answers(rulebook, code, f"sensor-kind={kind}"), rulebook).checks
        }
        for kind in ("active", "passive")
    }
    assert "coil-resistance" not in seen["active"]
    assert not {"sensor-supply-current", "supply-voltage", "three-level-current"} & seen["passive"]
    offered = {
        kind: {one.check for one in suggest_checks(_answers(rulebook, code, f"sensor-kind={kind}"), rulebook)}
        for kind in ("active", "passive")
    }
    assert "coil-resistance" in offered["passive"] - offered["active"]
    assert "sensor-supply-current" in offered["active"] - offered["passive"]


def test_plans_made_before_change_none_that_follow(rulebook: Rulebook) -> None:
    """The desk that is kept with the rule book: after other levels, repairs and figures, the same plan."""
    findings = _answers(rulebook, "rock-wheel@FL=slight")
    tried = [("replace-hub-unit", CORNERS[0])]
    wanted = [make_plan(findings, load_rulebook(), tried=done) for done in ((), tried)]
    for is_open in ((), ("on-ground", "lifted"), tuple(rulebook.access)):
        make_plan((), rulebook, is_open=is_open, tried=tried)
        make_plan(findings, rulebook, is_open=is_open)
    assert [make_plan(findings, rulebook, tried=done) for done in ((), tried)] == wanted
    used, fresh = (
        replace(book, workshop=replace(book.workshop, money_per_hour=70.0))
        for book in (rulebook, load_rulebook())
    )
    assert make_plan(findings, used) == make_plan(findings, fresh) != wanted[0]


def test_the_gain_of_a_check_is_what_its_answer_and_the_claim_tell_of_each_other(rulebook: Rulebook) -> None:
    """By the other form of the information: H(claim) + H(answer) - H(both)."""
    share = weigh_claims((), rulebook).share
    checks = make_plan((), rulebook).checks
    assert len({len(rulebook.checks[step.id].outcomes) for step in checks}) > 1
    for step in checks:
        (option,) = build_options(rulebook.checks[step.id], [step.place], rulebook)
        both = option.table * share
        told = entropy(share, base=2) + entropy(both.sum(axis=1), base=2) - entropy(both.ravel(), base=2)
        assert step.gain_bit == pytest.approx(told, abs=1e-9), option.name
