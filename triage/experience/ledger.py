"""What cars really had, by groups of the workshop's choosing, in a file that a person can read."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, fields, replace
from pathlib import Path
from typing import Final

from triage.errors import SettingsError
from triage.evidence.rule_tables import Rulebook
from triage.output_file import whole_file
from triage.texts import Text
from triage.user_files import quoted, read_toml

SCHEMA: Final = "wheel-triage/experience/1"

PRIOR_CARS: Final = 50.0
"""How many cars the rule book's own priors count as, unless the file says otherwise (judgement)."""

CARS_RANGE: Final = (1.0, 1e6)


@dataclass(frozen=True, slots=True)
class Outcome:
    """What one car really had.

    Attributes
    ----------
    number : int
        Names it for ``remove``; never given twice.
    group : str
        Any name for cars that are alike.
    cause : str
        Id of ``rules/causes.toml``.
    corner, day, note : str
        For the reader; the day as 2026-11-25. May be empty.
    """

    number: int
    group: str
    cause: str
    corner: str = ""
    day: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class Ledger:
    """All outcomes.

    Attributes
    ----------
    on : bool
        Whether they may change a verdict; off until the workshop turns it on.
    prior_cars : float
        How many cars the rule book's own priors count as.
    last_number : int
        The highest number ever given.
    """

    on: bool = False
    prior_cars: float = PRIOR_CARS
    last_number: int = 0
    outcomes: tuple[Outcome, ...] = ()

    @property
    def groups(self) -> tuple[str, ...]:
        """Names of the groups, in the order in which they came up."""
        return tuple(dict.fromkeys(outcome.group for outcome in self.outcomes))

    def of_group(self, group: str) -> tuple[Outcome, ...]:
        """Return the outcomes of a group."""
        return tuple(outcome for outcome in self.outcomes if outcome.group == group)


def add_outcome(ledger: Ledger, outcome: Outcome, rulebook: Rulebook) -> Ledger:
    """Return the ledger with one more car; its number is the next free one.

    Raises
    ------
    SettingsError
        When the cause is unknown, or the group has no name.
    """
    if not outcome.group.strip():
        raise SettingsError("the group has no name", hint="Name it, such as --group vans.")
    _refuse_unknown_cause(outcome.cause, rulebook)
    number = ledger.last_number + 1
    added = replace(outcome, number=number, group=outcome.group.strip())
    return replace(ledger, last_number=number, outcomes=(*ledger.outcomes, added))


def remove_outcome(ledger: Ledger, number: int) -> Ledger:
    """Return the ledger without one car, SettingsError when there is none of that number."""
    left = tuple(outcome for outcome in ledger.outcomes if outcome.number != number)
    if len(left) == len(ledger.outcomes):
        raise SettingsError(
            Text("there is no outcome {number}", number=number), hint="See wheel-triage experience list."
        )
    return replace(ledger, outcomes=left)


def load_ledger(path: Path, rulebook: Rulebook) -> Ledger:
    """Read the experience; none, and off, when there is no such file.

    Raises
    ------
    SettingsError
        When the file cannot be read, or holds what makes no sense; with file and place.
    """
    table = read_toml(path)
    if table is None:
        return Ledger()
    try:
        return _ledger(table, rulebook)
    except SettingsError as error:
        raise SettingsError(error.message, file=str(path), place=error.place, hint=error.hint) from None


def save_ledger(path: Path, ledger: Ledger) -> None:
    """Write the experience whole or not at all, OutputError when that fails."""
    with whole_file(path) as unfinished:
        unfinished.write_text(format_ledger(ledger), encoding="utf-8", newline="\n")


def format_ledger(ledger: Ledger) -> str:
    """Write the experience as TOML."""
    head = (
        "# What cars of this workshop really had. It changes verdicts only while `on` is true.\n"
        f"schema = {quoted(SCHEMA)}\non = {str(ledger.on).lower()}\n"
        "# how many cars the rule book's own priors count as; raise it to trust them longer\n"
        f"prior_cars = {ledger.prior_cars!r}\nlast_number = {ledger.last_number}\n"
    )
    return head + "".join(_block(outcome) for outcome in ledger.outcomes)


def _block(outcome: Outcome) -> str:
    texts = [(field.name, getattr(outcome, field.name)) for field in fields(Outcome)[1:]]
    lines = [f"number = {outcome.number}", *(f"{name} = {quoted(text)}" for name, text in texts if text)]
    return "\n[[outcome]]\n" + "".join(f"{line}\n" for line in lines)


def _ledger(table: dict[str, object], rulebook: Rulebook) -> Ledger:
    if table.get("schema") != SCHEMA:
        raise SettingsError(
            Text("this is no file of experience (schema {schema})", schema=SCHEMA),
            hint="Name another --file.",
        )
    unknown = sorted(set(table) - {"schema", "on", "prior_cars", "last_number", "outcome"})
    on, cars, last = table.get("on", False), table.get("prior_cars", PRIOR_CARS), table.get("last_number", 0)
    rows = table.get("outcome", [])
    if unknown or not isinstance(on, bool) or not isinstance(rows, list):
        raise SettingsError(
            Text("{field} cannot be understood", field=unknown[0])
            if unknown
            else "on or outcome cannot be understood",
            hint="The fields are schema, on, prior_cars, last_number and [[outcome]].",
        )
    low, high = CARS_RANGE
    if isinstance(cars, bool) or not isinstance(cars, int | float) or not low <= cars <= high:
        told = Text("prior_cars must be a number from {low} to {high}", low=f"{low:g}", high=f"{high:g}")
        raise SettingsError(told, hint="Mend the value.")
    outcomes = tuple(_outcome(row, _place(place), rulebook) for place, row in enumerate(rows, 1))
    _refuse_doubles(outcomes)
    highest = max((outcome.number for outcome in outcomes), default=0)
    last = last if isinstance(last, int) and not isinstance(last, bool) else 0
    return Ledger(on, float(cars), max(last, highest), outcomes)


def _place(number: int) -> Text:
    return Text("outcome {number}", number=number)


def _outcome(row: object, where: str, rulebook: Rulebook) -> Outcome:
    known = [field.name for field in fields(Outcome)]
    hint = Text("Its fields are {known}; number, group and cause must be there.", known=", ".join(known))
    if not isinstance(row, dict) or not {"number", "group", "cause"} <= set(row) <= set(known):
        raise SettingsError("this outcome cannot be understood", place=where, hint=hint)
    number = row["number"]
    texts = [value for name, value in row.items() if name != "number"]
    numbered = isinstance(number, int) and not isinstance(number, bool) and number > 0
    if not numbered or not all(isinstance(text, str) for text in texts):
        raise SettingsError("the number is no whole number, or another field no text", place=where, hint=hint)
    try:
        _refuse_unknown_cause(row["cause"], rulebook)
    except SettingsError as error:
        raise SettingsError(error.message, place=where, hint=error.hint) from None
    return Outcome(**row)


def _refuse_unknown_cause(cause: str, rulebook: Rulebook) -> None:
    if cause not in rulebook.causes:
        raise SettingsError(
            Text("there is no cause {cause}", cause=repr(cause)),
            hint=Text("The causes: {causes}.", causes=", ".join(rulebook.causes)),
        )


def _refuse_doubles(outcomes: Sequence[Outcome]) -> None:
    seen: set[int] = set()
    for place, outcome in enumerate(outcomes, 1):
        if outcome.number in seen:
            raise SettingsError(
                Text("the number {number} is given twice", number=outcome.number),
                place=_place(place),
                hint="Give it another number.",
            )
        seen.add(outcome.number)
