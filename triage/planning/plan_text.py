"""The plan as part of the JSON document of ``rank`` and as lines to read."""

from __future__ import annotations

from typing import Any

from triage.corners import CORNER_NAMES, VEHICLE
from triage.planning.plan import Plan, PlanStep
from triage.texts import Text


def build_plan(plan: Plan) -> dict[str, Any]:
    """Build what the JSON document of ``rank`` says under ``plan``.

    Returns
    -------
    dict
        Only what JSON can hold; money in the workshop's own currency.
    """
    return {
        "next_step": _step(plan.next_step),
        "why": plan.why,
        "act_now_money": plan.act_now_money,
        "expected_money": plan.expected_money,
        "repairs": [_step(step) for step in plan.repairs],
    }


def step_name(step: PlanStep) -> str:
    """Name a step with its wheel: ``Rock the wheel (front left)``."""
    if step.place == VEHICLE:
        return step.title
    return Text("{step} ({wheel})", step=step.title, wheel=CORNER_NAMES[step.place])


def next_step_name(plan: Plan) -> str:
    """Name the next step with its wheel and minutes: the one answer to what is to be done now.

    Window, terminal and JSON document all take it from here, so that no two of them can disagree.
    """
    step, name = plan.next_step, step_name(plan.next_step)
    if not step.minutes_min:
        return name
    return Text("{step}, {minutes} min", step=name, minutes=f"{step.minutes_min:.0f}")


def step_line(plan: Plan) -> str:
    """Word the next step with its minutes and its reason."""
    return Text("{step}: {why}", step=next_step_name(plan), why=plan.why)


def no_checks_line(plan: Plan) -> str:
    """Word why no check is suggested, though the next step may be a look."""
    if plan.next_step.kind != "check":
        return Text("No further check in the rule book would change this verdict.")
    return Text(
        "What is known leaves no doubt worth a check. “{step}” comes first all the same. {why}",
        step=step_name(plan.next_step),
        why=plan.why,
    )


def _step(step: PlanStep) -> dict[str, Any]:
    return {
        "kind": step.kind,
        "id": step.id,
        "title": step.title,
        "place": step.place,
        "minutes": step.minutes_min,
        "money": step.money,
        "saving": step.saving,
        "gain_bits": step.gain_bit,
        "cautions": list(step.cautions),
    }
