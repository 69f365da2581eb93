"""The verb ``experience`` and the option of ``rank`` that uses it."""

from __future__ import annotations

import argparse
import datetime as dt
import os
from dataclasses import replace
from pathlib import Path

from triage.evidence.rule_tables import Rulebook
from triage.evidence.rulebook import load_rulebook
from triage.experience.effect import format_experience
from triage.experience.ledger import (
    Ledger,
    Outcome,
    add_outcome,
    load_ledger,
    remove_outcome,
    save_ledger,
)
from triage.experience.priors import PriorChange, prior_changes
from triage.user_files import data_folder, make_folder


def run_experience(given: argparse.Namespace) -> str:
    """Do what the verb asks; returns what to print.

    Raises
    ------
    TriageError
        When the file or an argument cannot be used, or the file could not be written.
    """
    rulebook = load_rulebook(given.rules)
    path = experience_file(given.file)
    ledger = load_ledger(path, rulebook)
    if given.deed == "list":
        return format_experience(ledger, given.group)
    changed = _changed(ledger, given, rulebook)
    save_ledger(path, changed)
    done = {"add": f"Kept as {changed.last_number}", "remove": "Removed"}.get(given.deed, "Done")
    cars = "1 car" if len(changed.outcomes) == 1 else f"{len(changed.outcomes)} cars"
    state = "on" if changed.on else "off"
    return f"{done}: {cars} in {path}; experience is {state}.\n"


def experience_with(group: str | None, file: str | None, rulebook: Rulebook) -> tuple[PriorChange, ...]:
    """Return what a group's experience does to the priors; nothing when no group was asked for.

    Raises
    ------
    SettingsError
        When experience is off, the file cannot be used, or the group is unknown.
    """
    if group is None:
        return ()
    return prior_changes(load_ledger(experience_file(file), rulebook), group, rulebook)


def experience_file(named: str | None) -> Path:
    """Return the file of the workshop's experience; its folder is made when it is the program's own."""
    if named is not None:
        return Path(named)
    folder = data_folder(os.environ)
    make_folder(folder)
    return folder / "experience.toml"


def _changed(ledger: Ledger, given: argparse.Namespace, rulebook: Rulebook) -> Ledger:
    if given.deed == "add":
        day = dt.date.today().isoformat()  # noqa: DTZ011 - the workshop's own day is meant
        outcome = Outcome(0, given.group, given.cause, given.corner or "", day, given.note)
        return add_outcome(ledger, outcome, rulebook)
    if given.deed == "remove":
        return remove_outcome(ledger, given.number)
    return replace(ledger, on=given.deed == "on")
