"""The workshop's experience as the window holds it: counted cars, on or off, and the group looked at."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from triage.errors import TriageError
from triage.evidence.rule_tables import Rulebook
from triage.experience.ledger import (
    Ledger,
    Outcome,
    add_outcome,
    load_ledger,
    remove_outcome,
    save_ledger,
)
from triage.experience.priors import PriorChange, prior_changes, with_priors
from triage.texts import error_lines
from ui.state.topic import Topic

Edit = Callable[[Ledger], Ledger]


class ExperienceState:
    """Holds the counted cars; every change is written at once and told.

    Parameters
    ----------
    path : Path
        The file that ``wheel-triage experience`` uses too.
    plain : Rulebook
        With the priors it came with.
    today : callable
        Gives the day as 2026-11-25.

    Attributes
    ----------
    ledger : Ledger
    group : str
        The cars that are alike; empty while there are none.
    note : str
        What could not be read or written.
    changed : Topic of ExperienceState
    """

    def __init__(self, path: Path, plain: Rulebook, *, today: Callable[[], str]) -> None:
        self.ledger, self.note = Ledger(), ""
        self.changed: Topic[ExperienceState] = Topic()
        self._path = path
        self._plain = plain
        self._today = today
        self._do(lambda ledger: ledger)
        self.group = next(iter(self.ledger.groups), "")

    @property
    def plain(self) -> Rulebook:
        """The rule book without any experience."""
        return self._plain

    @property
    def changes(self) -> tuple[PriorChange, ...]:
        """What the cars of the group do to the priors, or would do when off; empty without any."""
        if not self.ledger.of_group(self.group):
            return ()
        return prior_changes(replace(self.ledger, on=True), self.group, self._plain)

    @property
    def counts(self) -> bool:
        """Whether verdicts take it in."""
        return self.ledger.on and bool(self.changes)

    @property
    def rulebook(self) -> Rulebook:
        """The rule book to judge by: with the experience while that is on."""
        return with_priors(self._plain, self.changes) if self.counts else self._plain

    def choose_group(self, name: str) -> None:
        """Look at another group of cars; one without any car yet is allowed."""
        self.group = name.strip()
        self.changed.tell(self)

    def turn(self, *, on: bool) -> None:
        """Let verdicts take the experience in, or no longer; nothing is forgotten."""
        self._change(lambda ledger: replace(ledger, on=on))

    def keep(self, cause: str, *, corner: str = "", remark: str = "") -> None:
        """Count one more car of the group."""
        car = Outcome(0, self.group, cause, corner, self._today(), remark)
        self._change(lambda ledger: add_outcome(ledger, car, self._plain))

    def take_back(self, number: int) -> None:
        """Forget one car."""
        self._change(lambda ledger: remove_outcome(ledger, number))

    def _change(self, edit: Edit) -> None:
        self._do(edit)
        self.changed.tell(self)

    def _do(self, edit: Edit) -> None:
        # Read again each time: the command may have written meanwhile. What cannot be read stays as it is.
        try:
            before = load_ledger(self._path, self._plain)
            after = edit(before)
            if after != before:
                save_ledger(self._path, after)
            self.ledger, self.note = after, ""
        except TriageError as error:
            self.note = error_lines(error)
