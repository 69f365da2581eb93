"""What can be claimed of a car, and how probable each claim is."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from triage.corners import Place
from triage.signals.measurement import Span


@dataclass(frozen=True, slots=True, order=True)
class Hypothesis:
    """A cause at a place; ``cause`` is an id of ``rules/causes.toml``."""

    corner: Place
    cause: str


@dataclass(frozen=True, slots=True)
class Finding:
    """A measurement or an answer held against the bands of the rule book.

    Attributes
    ----------
    id : str
        Unique in one result: ``<measurement>@<corner>`` or ``<check>@<corner>``.
    source : str
        Id of the measurement or check it comes from.
    corner : str
        Wheel or ``vehicle``.
    statement : str
        One sentence for the user with the number in it.
    value, std_uncertainty, unit
        As measured; for an answer 1, 0 and an empty unit.
    band_probability : mapping of band (or outcome) name to float
        Probability that the true value lies in each band; sums to 1.
    spans : tuple of (float, float)
        Seconds of the log it rests on; empty for an answer.
    """

    id: str
    source: str
    corner: Place
    statement: str
    value: float
    std_uncertainty: float
    unit: str
    band_probability: Mapping[str, float]
    spans: tuple[Span, ...]


@dataclass(frozen=True, slots=True)
class RankedHypothesis:
    """One line of the verdict.

    Attributes
    ----------
    contributions_bit : mapping of finding id to float
        Weight of evidence of each finding for (positive) or against (negative) this hypothesis, in bits,
        against the average of all others.
    """

    hypothesis: Hypothesis
    probability: float
    contributions_bit: Mapping[str, float]

    @property
    def because(self) -> tuple[str, ...]:
        """Ids of the findings that speak for it, the strongest first."""
        return _beyond(self.contributions_bit, +1)

    @property
    def against(self) -> tuple[str, ...]:
        """Ids of the findings that speak against it, the strongest first."""
        return _beyond(self.contributions_bit, -1)


@dataclass(frozen=True, slots=True)
class Posterior:
    """Every hypothesis, most probable first; the probabilities sum to 1."""

    ranking: tuple[RankedHypothesis, ...]

    @property
    def first(self) -> RankedHypothesis:
        """The most probable hypothesis."""
        return self.ranking[0]


@dataclass(frozen=True, slots=True)
class Shift:
    """How the probability of a claim changes; ``claim`` is its name with its corner."""

    claim: str
    before: float
    after: float


@dataclass(frozen=True, slots=True)
class ExpectedOutcome:
    """What an outcome of a check would do to the verdict.

    Attributes
    ----------
    name, words : str
        Id of the outcome, and what was seen in words.
    probability : float
        That the check comes out so.
    first, risen, fallen : Shift
        Of the claim that would stand first, of the one that would rise most, and of the one that would fall
        most.
    """

    name: str
    words: str
    probability: float
    first: Shift
    risen: Shift
    fallen: Shift


@dataclass(frozen=True, slots=True)
class CheckSuggestion:
    """A next check and what it is worth; :mod:`triage.evidence.check_words` words it.

    Attributes
    ----------
    check : str
        Id of ``rules/checks.toml``.
    title : str
        What to do, in a few words.
    gain_bit, doubt_bit : float
        Expected drop of the entropy of the verdict, and the entropy now.
    outcomes : tuple of ExpectedOutcome
        In the order of the rule book.
    cautions : tuple of str
        Texts, not ids.
    """

    check: str
    title: str
    corner: Place
    gain_bit: float
    doubt_bit: float
    minutes_min: float
    access: str
    outcomes: tuple[ExpectedOutcome, ...]
    cautions: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class DrivingAdvice:
    """A drive that would tell two claims apart.

    Attributes
    ----------
    measurement : str
        Id of ``rules/measurements.toml``: what the drive would show.
    corner : str
        Where.
    text : str
        The driving in one sentence.
    gain_bit : float
        Expected drop of the doubt between the two.
    """

    measurement: str
    corner: Place
    text: str
    gain_bit: float


@dataclass(frozen=True, slots=True)
class CheckAdvice:
    """A check, one of the next checks, that would tell two claims apart.

    Attributes
    ----------
    check, title, corner, minutes_min
        As in :class:`CheckSuggestion`.
    gain_bit : float
        Expected drop of the doubt between the two, not of that of the whole verdict.
    """

    check: str
    title: str
    corner: Place
    gain_bit: float
    minutes_min: float


@dataclass(frozen=True, slots=True)
class UndecidedPair:
    """Two claims between which the verdict is not decided, and what would tell them apart.

    Attributes
    ----------
    first, second : Hypothesis
        The more probable one first.
    first_probability, second_probability : float
    driving : DrivingAdvice or None
        None when no drive would help.
    check : CheckAdvice or None
        None when no check would.
    """

    first: Hypothesis
    second: Hypothesis
    first_probability: float
    second_probability: float
    driving: DrivingAdvice | None
    check: CheckAdvice | None

    @property
    def claims(self) -> tuple[tuple[Hypothesis, float], tuple[Hypothesis, float]]:
        """Both claims with their probabilities."""
        return (self.first, self.first_probability), (self.second, self.second_probability)


NOTEWORTHY_BIT = 0.1
"""Contributions below this are not worth a line in the explanation (judgement)."""


def _beyond(contributions_bit: Mapping[str, float], sign: int) -> tuple[str, ...]:
    strength = {name: bits * sign for name, bits in contributions_bit.items()}
    chosen = [name for name, bits in strength.items() if bits >= NOTEWORTHY_BIT]
    return tuple(sorted(chosen, key=lambda name: (-strength[name], name)))
