"""Numbers as the screen words them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from triage.corners import CORNER_NAMES, Place
from triage.texts import Text, capital_first, shaped

if TYPE_CHECKING:
    from triage.signals.measurement import Span


def format_span(span: Span) -> str:
    """Word a stretch of the log in seconds.

    >>> format_span((12.14, 48.0)), format_span((3.001, 3.041))
    ('12.1–48.0 s', '3.001–3.041 s')
    """
    begin, end = span
    digits = 1 if end - begin >= 1.0 else 3 if end - begin < 0.1 else 2
    return f"{begin:.{digits}f}–{end:.{digits}f} s"


def format_spans(spans: tuple[Span, ...]) -> str:
    """Word the first of several stretches and how many more there are; empty for none."""
    if not spans:
        return ""
    first = format_span(spans[0])
    return first if len(spans) == 1 else Text("{first} and {n} more", first=first, n=len(spans) - 1)


def format_duration(duration_s: float) -> str:
    """Word a length of time.

    >>> format_duration(59.96), format_duration(3725.0)
    ('60.0 s', '1 h 2 min 5 s')
    """
    if round(duration_s, 1) < 120.0:
        return f"{duration_s:.1f} s"
    minutes, seconds = divmod(round(duration_s), 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours} h {minutes} min {seconds} s" if hours else f"{minutes} min {seconds} s"


def place_name(place: Place | None) -> str:
    """Name a corner or the vehicle with a capital letter; None is the whole log."""
    return shaped(Text("all wheels") if place is None else CORNER_NAMES[place], capital_first)


def sentence(text: str) -> str:
    """Begin with a capital letter and end with a full stop, as texts on the screen do.

    >>> sentence("too few curves"), sentence("Which wheel?"), sentence("")
    ('Too few curves.', 'Which wheel?', '')
    """
    return shaped(text, _as_sentence)


def _as_sentence(text: str) -> str:
    text = capital_first(text)
    return text if not text or text.endswith((".", "!", "?", ":")) or "\n" in text else f"{text}."


def cause_name(cause: str) -> str:
    """Turn a cause id into words, for causes the rule book does not word.

    >>> cause_name("air-gap")
    'Air gap'
    """
    return cause.replace("-", " ").capitalize()
