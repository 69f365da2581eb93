"""A refusal as the window words it: file, place, reason, what to do."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Final, Literal

from triage.corners import Corner
from triage.errors import DatabaseError, RulebookError, SignalMappingError, TriageError
from triage.texts import Text, as_text, capital_first, failure_words, joined, shaped
from ui.presenters.wording import sentence
from ui.state.opening import OpenOrder

Offer = Literal["database", "mapping", "unit", "radius"]

OFFER_OF_OPTION: Final[dict[str, Offer]] = {
    "--dbc": "database",
    "--map": "mapping",
    "--unit": "unit",
    "--tyre-radius": "radius",
}
"""Hints name the option of the command line that helps; the window offers the same as a field."""

MAP_OPTION: Final = re.compile(r"--map (\w\w)=(.*?): ")
"""How messages name an answer on the command line; in the window it stands in a field."""

PROBLEMS_SHOWN: Final = 6
"""Of a long list; the buttons below it must stay in sight."""

OFFER_TEXTS: Final[dict[Offer, str]] = {
    "database": Text("Choose the signal database (DBC) of this car."),
    "mapping": Text("Say below which signal belongs to which wheel."),
    "unit": Text("State below the unit of the wheel speeds."),
    "radius": Text("State below the rolling radius of the tyres."),
}


@dataclass(frozen=True, slots=True)
class Refusal:
    """What stands on the page shown instead of a verdict.

    Attributes
    ----------
    file, place, reason, hint : str
        ``place`` and ``hint`` may be empty.
    offers : frozenset of str
        What the user can supply on the page so that it may work.
    candidates : tuple of str
        Signals that may be assigned to wheels by hand.
    found : mapping of corner to str
        Signals that stand in the fields at first.
    """

    title: str
    file: str
    place: str
    reason: str
    hint: str
    offers: frozenset[Offer] = frozenset()
    candidates: tuple[str, ...] = ()
    found: Mapping[Corner, str] = field(default_factory=dict)


def describe_refusal(error: Exception, order: OpenOrder) -> Refusal:
    """Word an error for the user.

    Parameters
    ----------
    error : Exception
        Of the program's own tree, or a defect.
    order : OpenOrder
        What was to be opened; its files are named when the error names none.
    """
    if isinstance(error, RulebookError):
        title, hint = Text("The rule book cannot be used"), Text("Install the program again.")
        return Refusal(title, "", "", _shortened(error.problems), hint)
    if not isinstance(error, TriageError):
        return _describe_defect(error, order.files)
    offers = _offers(error)
    return Refusal(
        title=Text("This recording cannot be used yet") if offers else Text("This recording cannot be used"),
        file=error.file or ", ".join(order.files),
        place=error.place,
        reason=sentence(shaped(as_text(error.message), _in_window)),
        hint=joined(" ", (OFFER_TEXTS[offer] for offer in OFFER_TEXTS if offer in offers))
        or as_text(error.hint),
        offers=offers,
        candidates=error.candidates if isinstance(error, SignalMappingError) else (),
        found=order.options.mapping,
    )


def describe_question(
    files: tuple[str, ...], candidates: tuple[str, ...], found: Mapping[Corner, str]
) -> Refusal:
    """Word the page on which the user says how a recording is to be read."""
    return Refusal(
        title=Text("How is this recording to be read?"),
        file=", ".join(files),
        place="",
        reason="",
        hint=Text(
            "Change only what the program got wrong: choose a signal, or type its name. What you leave as it "
            "is, is found as before."
        ),
        offers=frozenset(OFFER_TEXTS),
        candidates=candidates,
        found=found,
    )


def _offers(error: TriageError) -> frozenset[Offer]:
    offers = {offer for option, offer in OFFER_OF_OPTION.items() if option in error.hint}
    if isinstance(error, DatabaseError):
        offers.add("database")
    if isinstance(error, SignalMappingError):
        offers.add("mapping" if error.candidates else "database")
    if not getattr(error, "candidates", ()):
        offers.discard("mapping")
    return frozenset(offers)


def _shortened(problems: Sequence[str]) -> str:
    shown = list(problems[:PROBLEMS_SHOWN])
    more = len(problems) - len(shown)
    return joined("\n", [*shown, Text("... and {n} more", n=more)] if more else shown)


def _in_window(message: str) -> str:
    return _printable(MAP_OPTION.sub(r"\1 = \2: ", message))


def _printable(text: str) -> str:
    """Show what a broken file put into the message as signs that every font has."""
    return "".join(sign if sign.isprintable() or sign == "\n" else "·" for sign in text)


def _describe_defect(error: Exception, files: tuple[str, ...]) -> Refusal:
    if isinstance(error, MemoryError):
        reason = Text("The memory of this computer is not enough for this recording.")
        hint = Text("Close other programs, or open a shorter part of the recording.")
    else:
        reason = shaped(failure_words(error), capital_first)
        hint = Text("This is a defect of the program, not of your file. Please report it with this text.")
    return Refusal(Text("This recording could not be judged"), ", ".join(files), "", reason, hint)
