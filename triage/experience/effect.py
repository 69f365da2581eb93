"""What the workshop's experience does to a verdict, shown beside it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, Final

from triage.evidence.hypotheses import Posterior
from triage.evidence.next_checks import hypothesis_name
from triage.evidence.rule_tables import Rulebook
from triage.experience.ledger import Ledger
from triage.experience.priors import PriorChange
from triage.units import format_share

LINES_SHOWN: Final = 5


@dataclass(frozen=True, slots=True)
class Effect:
    """Priors before and after, and the verdict with them and without."""

    group: str
    changes: tuple[PriorChange, ...]
    with_it: Posterior
    without: Posterior

    @property
    def cars(self) -> int:
        """How many cars the experience is of."""
        return sum(change.cars for change in self.changes)


def build_effect(effect: Effect) -> dict[str, Any]:
    """Build what the JSON document of ``rank`` says under ``experience``."""
    return {
        "group": effect.group,
        "cars": effect.cars,
        "priors": [
            {"cause": one.cause, "before": one.before, "after": one.after, "cars": one.cars}
            for one in effect.changes
        ],
        "without": [
            {
                "corner": line.hypothesis.corner,
                "cause": line.hypothesis.cause,
                "probability": line.probability,
            }
            for line in effect.without.ranking[:LINES_SHOWN]
        ],
    }


def format_effect(effect: Effect, rulebook: Rulebook) -> str:
    """Word the effect as lines of at most 100 columns."""
    before = {line.hypothesis: line.probability for line in effect.without.ranking}
    lines = [
        f"The workshop's experience with {effect.group} ({_cars(effect.cars)}) is in this verdict",
        *_prior_lines(effect.changes, rulebook),
        "  verdict without it and with it",
    ]
    for line in effect.with_it.ranking[:LINES_SHOWN]:
        shares = f"{format_share(before[line.hypothesis]):>12} {format_share(line.probability):>12}"
        lines.append(f"  {shares}  {hypothesis_name(line.hypothesis, rulebook)}"[:100])
    return "\n".join(lines) + "\n"


def _prior_lines(changes: Sequence[PriorChange], rulebook: Rulebook) -> list[str]:
    moved = sorted(changes, key=lambda one: -abs(one.after - one.before))[:LINES_SHOWN]
    lines = ["  prior before and after, those that moved most"]
    for one in moved:
        shares = f"{format_share(one.before):>12} {format_share(one.after):>12}"
        lines.append(f"  {shares}  {rulebook.causes[one.cause].title} ({_cars(one.cars)})"[:100])
    return lines


def _cars(number: int) -> str:
    return "1 car" if number == 1 else f"{number} cars"


def format_experience(ledger: Ledger, group: str | None) -> str:
    """List what is known, one car a line."""
    shown = [one for one in ledger.outcomes if group is None or one.group == group]
    state = "on" if ledger.on else "off: it changes no verdict (wheel-triage experience on)"
    head = f"Experience is {state}. {len(shown)} of {len(ledger.outcomes)} cars shown.\n"
    rows = [
        f"{one.number:>5}  {one.day:<10}  {one.group}: {one.cause}"
        + (f" {one.corner}" if one.corner else "")
        + (f"  ({one.note})" if one.note else "")
        for one in shown
    ]
    return head + "".join(f"{' '.join(row.splitlines())}\n" for row in rows)
