"""The tables of the rule book as Python values; :mod:`triage.evidence.rulebook` loads them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any, Final, Literal, TypeVar, cast

from triage.corners import CORNERS, VEHICLE, Place
from triage.evidence.check_tables import SKIPPED, WHERES, Access, Check, CodeFamily, ValueRule, Where
from triage.evidence.hypotheses import Hypothesis
from triage.evidence.likelihoods import Basis, LikelihoodTable
from triage.evidence.value_words import ToldAs

__all__ = [
    "DISTRIBUTIONS",
    "NO_FAULT",
    "OTHER",
    "SKIPPED",
    "WHERES",
    "Access",
    "Cause",
    "Caution",
    "Check",
    "CodeFamily",
    "Distribution",
    "Group",
    "MeasurementRule",
    "Part",
    "Repair",
    "Rulebook",
    "Scale",
    "Scoring",
    "Source",
    "ValueRule",
    "Where",
    "Workshop",
    "places_of",
]

_Made = TypeVar("_Made")

Distribution = Literal["normal", "lognormal"]
DISTRIBUTIONS: Final[tuple[Distribution, ...]] = ("normal", "lognormal")

OTHER: Final = "other"
"""The cause that stands for everything not in the list."""

NO_FAULT: Final = "no-fault-found"
"""The cause that stands for a healthy car."""


@dataclass(frozen=True, slots=True)
class Cause:
    """Something that can be wrong (or the claim that nothing is).

    Attributes
    ----------
    where : {"corner", "vehicle"}
        Whether it sits at one corner or concerns the whole car.
    prior : float
        Probability before anything is known; for a corner cause the sum over the four corners.
    repair, what_to_do : str
        Hint at the repair, and what to do next when this is first in the ranking.
    cautions : tuple of str
        Ids of cautions that belong to acting on it.
    """

    id: str
    title: str
    claim: str
    where: Where
    prior: float
    repair: str
    what_to_do: str
    basis: Basis
    cautions: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class MeasurementRule:
    """What a measurement means and how its values are sorted into bands.

    Attributes
    ----------
    statement : str
        Sentence with the placeholders ``{corner}``, ``{value}`` and ``{band}``, and those of ``driving``.
    nothing : str
        The sentence for a value of exactly 0, with the placeholders ``{corner}`` and, for events per minute,
        ``{least}``, the rate from which they would have been seen. Empty: take ``statement``.
    bands : tuple of str
        Names, lowest values first.
    edges : tuple of float
        Limits between the bands, one fewer than bands, in ``unit``; the outer bands are open.
    distribution : {"normal", "lognormal"}
        How the true value is spread about the measured one.
    sound_at_least : tuple of float
        How often, at least, a healthy real car falls into each band, whatever the simulator says; keeps the
        estimated rows honest.
    needed : str
        Which driving allows it.
    driving : str
        The same as an advice for one wheel, with the placeholders ``{corner}``, ``{loaded_curve}`` (the
        curve in which the wheel is the outer one: ``right-hand`` or ``left-hand``) and ``{other_curve}``.
        Empty: take ``needed``.
    told_as : str
        How its value is told, one of :data:`triage.evidence.value_words.TOLD_AS`.
    needs_fault : bool
        Whether only a wheel with a fault shows it, however it is driven: the length of its drop-outs.
    longer_helps : bool
        Whether a longer drive of the same kind makes it more certain; not where most of the uncertainty is
        of a kind that no driving reduces.
    """

    id: str
    title: str
    meaning: str
    statement: str
    unit: str
    scope: Where
    group: str
    bands: tuple[str, ...]
    edges: tuple[float, ...]
    distribution: Distribution
    sound_at_least: tuple[float, ...]
    basis: Basis
    source: str
    needed: str
    nothing: str = ""
    driving: str = ""
    told_as: ToldAs = ""
    needs_fault: bool = False
    longer_helps: bool = True


@dataclass(frozen=True, slots=True)
class Group:
    """Findings with one physical origin.

    Attributes
    ----------
    weight : float or None
        Factor on the summed log-likelihood of its findings at one place; None for one over the square root
        of their number.
    """

    id: str
    title: str
    weight: float | None


@dataclass(frozen=True, slots=True)
class Part:
    """Something the workshop buys; the price in its own currency."""

    id: str
    title: str
    price: float


@dataclass(frozen=True, slots=True)
class Repair:
    """Something that can make the car right.

    Attributes
    ----------
    minutes_min : float
        Work inside its level of access.
    parts : tuple of str
        Ids of what is fitted.
    cures : mapping of cause to float
        Probability that the car is right afterwards, for a cause at this place; a cause not named is not
        cured.
    evidence : str
        Why these shares.
    """

    id: str
    title: str
    where: Where
    access: str
    minutes_min: float
    parts: tuple[str, ...]
    cautions: tuple[str, ...]
    cures: Mapping[str, float]
    basis: Basis
    evidence: str


@dataclass(frozen=True, slots=True)
class Workshop:
    """The workshop's own figures, money in its own currency.

    Attributes
    ----------
    money_per_hour : float
    corrosion : float
        0 none to 1 everything seized.
    proof_min : float
        Road test that proves a repair.
    last_resort : float
        Cost of giving the car to somebody who finds everything.
    least_saving : float
        What another check must be expected to save before it is done.
    doubt : float
        Share of a verdict from a recording that is put down to what nobody foresaw.
    """

    money_per_hour: float
    corrosion: float
    proof_min: float
    last_resort: float
    least_saving: float
    doubt: float


@dataclass(frozen=True, slots=True)
class Caution:
    """A warning; ``covers`` names the kinds of access it makes safe enough to suggest.

    ``always`` marks those that stand under every verdict.
    """

    id: str
    text: str
    covers: tuple[str, ...]
    always: bool
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Source:
    """Where a number or a rule comes from."""

    id: str
    title: str
    kind: Literal["published", "practice"]


@dataclass(frozen=True, slots=True)
class Scoring:
    """How evidence is weighed.

    Attributes
    ----------
    temperature : float
        Divides the log-likelihood of every measurement; above 1 makes the verdict more careful. Answers to
        checks are not touched.
    floor : float
        Share of the verdict that always stays with the prior, so that nothing ever has probability 0.
    """

    temperature: float
    floor: float


@dataclass(frozen=True, slots=True)
class Scale:
    """Names, rows and mirror of one source of findings, be it a measurement or a check."""

    names: tuple[str, ...]
    table: LikelihoodTable
    mirror: Mapping[str, str]


@dataclass(frozen=True, slots=True, eq=False)
class WorkedOut:
    """What was worked out of one rule book, each by its function; deep copies begin with nothing."""

    made: dict[Callable[[Any], object], object] = field(default_factory=dict)

    def __reduce__(self) -> tuple[type[WorkedOut], tuple[()]]:
        """Keep it out of files and of other processes, which work it out themselves."""
        return WorkedOut, ()


@dataclass(frozen=True, slots=True)
class Rulebook:
    """All tables, checked as a whole; keys are ids.

    Attributes
    ----------
    variants : mapping of cause to tuple of float
        Share of each way in which the cause shows itself; a cause not named has one.
    digest : str
        SHA-256 over the contents of the files, the same for all line endings.
    hypotheses : tuple of Hypothesis
        Every (corner, cause) that can be claimed, in the order of the file.
    worked_out : WorkedOut
        See :meth:`once`.
    """

    causes: Mapping[str, Cause]
    measurements: Mapping[str, MeasurementRule]
    groups: Mapping[str, Group]
    scoring: Scoring
    likelihoods: Mapping[str, LikelihoodTable]
    variants: Mapping[str, tuple[float, ...]]
    access: Mapping[str, Access]
    checks: Mapping[str, Check]
    cautions: Mapping[str, Caution]
    sources: Mapping[str, Source]
    workshop: Workshop
    parts: Mapping[str, Part]
    repairs: Mapping[str, Repair]
    digest: str
    code_families: Mapping[str, CodeFamily] = field(default_factory=dict)
    hypotheses: tuple[Hypothesis, ...] = field(init=False)
    # Not given to the constructor: a changed copy, made by dataclasses.replace, begins with an empty one.
    worked_out: WorkedOut = field(default_factory=WorkedOut, init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        claims = tuple(
            Hypothesis(place, cause.id) for cause in self.causes.values() for place in places_of(cause.where)
        )
        # Kept, for every weighing of an answer asks for them, and in one order, for rows of arrays follow it.
        object.__setattr__(self, "hypotheses", claims)

    def once(self, work_out: Callable[[Rulebook], _Made]) -> _Made:
        """Return what a function makes of this rule book, worked out when it is first asked for.

        For what depends on the rule book alone and is asked for with every log and every answer.

        Parameters
        ----------
        work_out : callable
            A pure function of a module, whose result nobody changes from outside.
        """
        made = self.worked_out.made
        if work_out not in made:  # two threads may both work it out; they make the same
            made[work_out] = work_out(self)
        return cast("_Made", made[work_out])

    def path_of(self, access: str) -> tuple[Access, ...]:
        """Return a level of access and all those around it, the innermost first."""
        path: list[Access] = []
        while access in self.access and self.access[access] not in path:
            path.append(self.access[access])
            access = path[-1].parent
        return tuple(path)

    def minutes_of(self, check: Check) -> float:
        """Return the minutes of a check on a car of which nothing is open, closing included."""
        path = self.path_of(check.access)
        return check.minutes_min + sum(level.opening_min + level.closing_min for level in path)

    def scale(self, source: str) -> Scale | None:
        """Return the scale of a measurement or check, None when the rule book does not know it."""
        if source in self.measurements:
            return Scale(self.measurements[source].bands, self.likelihoods[source], {})
        if source in self.checks:
            check = self.checks[source]
            return Scale(tuple(check.outcomes), check.table, check.mirror)
        return None


def places_of(where: Where) -> tuple[Place, ...]:
    """Return the places at which something of this kind can be."""
    return CORNERS if where == "corner" else (VEHICLE,)
