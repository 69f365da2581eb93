"""The plan as part of the JSON document of ``rank`` and as lines to read."""

from __future__ import annotations

from typing import Any

from triage.corners import CORNER_NAMES, VEHICLE
from triage.planning.plan import Plan, PlanStep


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
    return step.title if step.place == VEHICLE else f"{step.title} ({CORNER_NAMES[step.place]})"


def step_line(plan: Plan) -> str:
    """Word the next step with its minutes and its reason."""
    step = plan.next_step
    return f"{step_name(step)}, {step.minutes_min:.0f} min: {plan.why}"


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
