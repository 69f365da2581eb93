"""The program's own rule book, and one exercise with everything that is known of its car."""

from __future__ import annotations

import pytest

from triage.evidence.rule_tables import Rulebook
from triage.evidence.rulebook import load_rulebook
from triage.exercises.exercise import Exercise, Hidden
from triage.exercises.making import make_exercise


@pytest.fixture(scope="session")
def rulebook() -> Rulebook:
    return load_rulebook()


@pytest.fixture(scope="session")
def dirty(rulebook: Rulebook) -> Exercise:
    """Dirt on the rear left ring, clear to see."""
    return make_exercise(Hidden("encoder-debris", "RL", 0.6, 60.0, 7, car_seed=3), rulebook)
