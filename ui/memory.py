"""Remembering how the wheels of a recording were mapped, between two uses of the window. Knows no Qt."""

from __future__ import annotations

from datetime import date

from triage.errors import TriageError
from triage.logs.options import ReadOptions
from triage.mapping_store import remember, store_path, with_memory
from triage.speed_log import Notice, SpeedLog
from triage.texts import Text, error_line
from ui.state.opening import OpenOrder


def recall(order: OpenOrder) -> tuple[ReadOptions, list[Notice]]:
    """Give the options with what was remembered; a store that cannot be used is told and left aside."""
    try:
        return with_memory(order.options, store_path()), []
    except TriageError as error:
        text = Text("nothing remembered was used. {error}", error=error_line(error))
        return order.options, [Notice("mapping-remembered", text)]


def keep(order: OpenOrder, log: SpeedLog) -> list[Notice]:
    """Remember the mapping where the user confirmed it, and say so."""
    if not order.confirmed:
        return []
    try:
        day = date.today().isoformat()  # noqa: DTZ011 - the user's own day
        one = remember(log, order.options, day, store_path())
    except TriageError as error:
        told = Text("this mapping could not be remembered. {error}", error=error_line(error))
        return [Notice("mapping-remembered", told)]
    text = Text(
        "this mapping is remembered for recordings with the same signals; to forget it: "
        "wheel-triage mappings forget {fingerprint}.",
        fingerprint=one.fingerprint,
    )
    return [Notice("mapping-remembered", text)]
