"""Headings of what the program noticed while it read a recording."""

from __future__ import annotations

from typing import Final

from triage.texts import Text
from ui.presenters.wording import cause_name

HEADINGS: Final = {
    "clock-reset": Text("Clock reset"),
    "clock-strays": Text("Clock strays"),
    "clock-went-back": Text("Clock went back"),
    "clocks-differ": Text("Clocks differ"),
    "counter-doubtful": Text("Counter doubtful"),
    "counter-reset": Text("Counter reset"),
    "database-conflict": Text("Database conflict"),
    "database-repaired": Text("Database repaired"),
    "decimal-comma": Text("Decimal comma"),
    "duplicate-instants": Text("Duplicate instants"),
    "files-passed-over": Text("Files passed over"),
    "frames-skipped": Text("Frames skipped"),
    "gaps-in-log": Text("Gaps in log"),
    "invalid-samples": Text("Invalid samples"),
    "log-incomplete": Text("Log incomplete"),
    "low-rate": Text("Low rate"),
    "mapping-guessed": Text("Mapping guessed"),
    "mapping-remembered": Text("Mapping remembered"),
    "message-on-two-buses": Text("Message on two buses"),
    "no-motion": Text("No motion"),
    "sign-doubtful": Text("Sign doubtful"),
    "stuck-channel": Text("Stuck channel"),
    "too-short": Text("Too short"),
    "unit-assumed": Text("Unit assumed"),
    "unit-doubtful": Text("Unit doubtful"),
}


def notice_heading(code: str) -> str:
    """Return the heading of a warning; of one without, its code in words."""
    return HEADINGS.get(code) or cause_name(code)
