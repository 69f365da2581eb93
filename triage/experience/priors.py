"""What a group's outcomes do to the priors: counts added to those of a Dirichlet distribution.

The rule book's prior of a cause stands for ``prior_cars`` imagined cars, shared by the causes; every car that
really had a cause adds one to it. The mean of the distribution is the new prior (A. Gelman et al., Bayesian
Data Analysis, 3rd ed. 2013, section 3.4; from memory)::

    prior'(cause) = (prior_cars prior(cause) + n(cause)) / (prior_cars + n)
"""

from __future__ import annotations

import hashlib
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, replace

from triage.errors import SettingsError
from triage.evidence.rule_tables import Rulebook
from triage.experience.ledger import Ledger
from triage.texts import Text


@dataclass(frozen=True, slots=True)
class PriorChange:
    """One cause's prior before and after experience, and how many cars had it."""

    cause: str
    before: float
    after: float
    cars: int


def prior_changes(ledger: Ledger, group: str, rulebook: Rulebook) -> tuple[PriorChange, ...]:
    """Return every cause's prior before and after the experience with a group.

    Raises
    ------
    SettingsError
        When experience is off, or there is none with such a group.
    """
    if not ledger.on:
        raise SettingsError(
            "the experience of the workshop is off", hint="Turn it on with wheel-triage experience on."
        )
    outcomes = ledger.of_group(group)
    if not outcomes:
        known = ", ".join(ledger.groups) or Text("none yet")
        raise SettingsError(
            Text("there is no experience with a group {group}", group=repr(group)),
            hint=Text("The groups: {known}.", known=known),
        )
    cars = Counter(outcome.cause for outcome in outcomes)
    before = {cause.id: cause.prior for cause in rulebook.causes.values()}
    after = updated_priors(before, cars, prior_cars=ledger.prior_cars)
    return tuple(PriorChange(name, before[name], after[name], cars[name]) for name in before)


def updated_priors(
    priors: Mapping[str, float], cars: Mapping[str, int], *, prior_cars: float
) -> dict[str, float]:
    """Return the mean of the Dirichlet distribution after so many cars of each cause.

    Examples
    --------
    >>> updated_priors({"a": 0.5, "b": 0.5}, {"a": 10}, prior_cars=10.0)
    {'a': 0.75, 'b': 0.25}
    """
    whole = prior_cars * sum(priors.values()) + sum(cars.values())
    return {name: (prior_cars * prior + cars.get(name, 0)) / whole for name, prior in priors.items()}


def with_priors(rulebook: Rulebook, changes: tuple[PriorChange, ...]) -> Rulebook:
    """Return the rule book with the changed priors; its digest tells it from the unchanged one."""
    causes = dict(rulebook.causes)
    for change in changes:
        causes[change.cause] = replace(causes[change.cause], prior=change.after)
    told = "".join(f"{change.cause}={change.after!r};" for change in changes)
    digest = hashlib.sha256(f"{rulebook.digest};{told}".encode()).hexdigest()
    return replace(rulebook, causes=causes, digest=digest)
