"""The next step for the full catalogue, at its dearest: nothing is known, so all four corners are open."""

from __future__ import annotations

from collections.abc import Callable

from pytest_benchmark.fixture import BenchmarkFixture

from triage.evidence.rulebook import load_rulebook
from triage.planning.plan import make_plan


def test_plan_of_the_full_catalogue(
    benchmark: BenchmarkFixture, note: Callable[[str, str, str], None]
) -> None:
    rulebook = load_rulebook()
    plan = benchmark.pedantic(lambda: make_plan((), rulebook), rounds=20, warmup_rounds=3)
    spent_ms = 1e3 * benchmark.stats.stats.median
    places = len({(step.id, step.place) for step in plan.checks})
    note(f"plan: {len(rulebook.checks)} checks, {places} with their wheels, ms", f"{spent_ms:.0f}", "< 100")
    assert spent_ms < 100.0
