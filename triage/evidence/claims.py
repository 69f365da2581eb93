"""The claims that are still in the running, and what each of them makes one expect."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.corners import Place
from triage.evidence.atoms import AtomTables
from triage.evidence.hypotheses import Hypothesis
from triage.evidence.posterior import Belief
from triage.evidence.rule_tables import Rulebook
from triage.speed_log import FloatArray

DECIDED_SHARE: Final = 0.95
"""The claims in the running hold this share together; one that holds it of two has won (judgement)."""

MOST_CLAIMS: Final = 6
"""More than these leave so many pairs that nobody would read them (judgement)."""


@dataclass(frozen=True, slots=True)
class Claims:
    """The leading claims, most probable first, split into their atoms.

    Attributes
    ----------
    hypotheses : tuple of Hypothesis
    probability : float64[claims]
        Of the whole verdict; does not sum to 1.
    mixture : float64[claims, atoms]
        Share of each atom in each claim, given the findings; every row sums to 1.
    tables : AtomTables
        What every atom of the rule book makes one expect.
    numbers : int64[atoms]
        Places of the atoms of these claims among them.
    """

    hypotheses: tuple[Hypothesis, ...]
    probability: FloatArray
    mixture: FloatArray
    tables: AtomTables
    numbers: NDArray[np.intp]

    def table(self, source: str, place: Place) -> FloatArray:
        """Return P(band or outcome | atom) for something seen at a place, float64[atoms, bands]."""
        return self.tables.outcome_table(source, place)[self.numbers]


@dataclass(frozen=True, slots=True)
class Pairs:
    """Every two of the leading claims.

    Attributes
    ----------
    first, second : int64[pairs]
        Places in the claims; the first is the more probable one.
    share : float64[pairs]
        Probability of the first when it is one of these two; 0.5 or more.
    probability : float64[pairs]
        That it is one of these two.
    """

    first: NDArray[np.int64]
    second: NDArray[np.int64]
    share: FloatArray
    probability: FloatArray


def leading_claims(belief: Belief, rulebook: Rulebook) -> Claims:
    """Return the claims between which the verdict is not decided.

    They are the fewest that hold ``DECIDED_SHARE`` together, without those that the first one beats by as
    much (19 to 1), and at most ``MOST_CLAIMS``. A single claim has won.
    """
    probability = belief.by_hypothesis(belief.probability)
    order = np.argsort(-probability, kind="stable")
    ranked = probability[order]
    enough = 1 + int(np.searchsorted(np.cumsum(ranked), DECIDED_SHARE))
    close = int(np.sum(ranked * DECIDED_SHARE > ranked[0] * (1.0 - DECIDED_SHARE)))
    chosen = order[: min(enough, close, MOST_CLAIMS)]
    member = belief.tables.index == chosen[:, np.newaxis]
    used = np.flatnonzero(member.any(axis=0))
    mixture = member[:, used] * belief.probability[used]
    return Claims(
        hypotheses=tuple(rulebook.hypotheses[index] for index in chosen),
        probability=probability[chosen],
        mixture=mixture / mixture.sum(axis=1, keepdims=True),
        tables=belief.tables,
        numbers=used,
    )


def pairs_of(claims: Claims) -> Pairs:
    """Return every two claims, those that leave most doubt (largest product of probabilities) first."""
    numbers: Sequence[tuple[int, int]] = list(combinations(range(len(claims.hypotheses)), 2))
    first, second = np.array(numbers, dtype=np.int64).reshape(-1, 2).T
    p, q = claims.probability[first], claims.probability[second]
    order = np.argsort(-p * q, kind="stable")
    first, second, p, q = first[order], second[order], p[order], q[order]
    return Pairs(first, second, p / (p + q), p + q)
