"""Texts that can be said in another language: English inside, translated where they are shown.

Everything in the program makes, compares, sorts and saves English. A :class:`Text` is that English and, with
it, the sentence with its places and what was put there. Only the window asks for another language, at the
last moment and by :func:`said`; so no result, no file and no decision can depend on it.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import fields, is_dataclass, replace
from functools import lru_cache
from typing import Any, Final, Self, TypeVar, cast

from triage.errors import TriageError, printable

CONTEXT: Final = "texts"
"""Under which translators find the sentences of the code; those of the rule book stand under their row."""

Translate = Callable[[str, str], str]
"""From context and English to another language; what it does not know comes back as it is."""

PLACE: Final = re.compile(r"\{(\w+)\}")
_Thing = TypeVar("_Thing")


class Text(str):
    """An English text made of a sentence and the words in its places.

    Parameters
    ----------
    template : str
        Sentence with places such as ``{corner}``; given to a translator as it is.
    **parts
        What stands in the places: numbers, names, other texts. A place without a part stays.

    Attributes
    ----------
    context : str
        Under which the translator finds the template.
    shape : callable or None
        Applied to the finished text in every language, for instance to begin with a capital letter.

    Examples
    --------
    >>> told = Text("{count} gaps in {file}", count=3, file="a.csv")
    >>> told, said(told, lambda context, text: "{file}: {count} Lücken")
    ('3 gaps in a.csv', 'a.csv: 3 Lücken')
    """

    __slots__ = ("context", "parts", "shape", "template")
    context: str
    parts: Mapping[str, object]
    shape: Callable[[str], str] | None
    template: str

    def __new__(cls, template: str, /, **parts: object) -> Self:
        """Fill the places of a template."""
        text = str.__new__(cls, fill_template(template, parts))
        text.context = template.context if isinstance(template, Text) else CONTEXT
        text.template, text.parts, text.shape = str(template), parts, None
        return text

    def __reduce__(self) -> tuple[Any, ...]:
        """Let copies know the template too."""
        return _made, (str(self), self.template, dict(self.parts), self.context, self.shape)


def _made(
    english: str,
    template: str,
    parts: Mapping[str, object],
    context: str = CONTEXT,
    shape: Callable[[str], str] | None = None,
) -> Text:
    text = str.__new__(Text, english)
    text.template, text.parts, text.context, text.shape = template, parts, context, shape
    return text


def fill_template(template: str, words: Mapping[str, object]) -> str:
    """Put words in the place of ``{name}``; names that are not given stay."""
    # Not str.format: a template from a foreign rule book could reach into the objects it is given.
    pieces = _pieces(str(template))
    if len(pieces) == 1:
        return pieces[0]
    filled = list(pieces)
    filled[1::2] = [str(words.get(name, f"{{{name}}}")) for name in pieces[1::2]]
    return "".join(filled)


@lru_cache(maxsize=1024)
def _pieces(template: str) -> tuple[str, ...]:
    """Cut a template at its places; every second piece is the name of one."""
    # Kept: a verdict is thousands of sentences of a few templates, and the cutting is most of the filling.
    return tuple(PLACE.split(template))


def as_text(text: str) -> Text:
    """Return a text as it is, or a plain sentence as one without places."""
    return text if isinstance(text, Text) else Text(text)


def error_words(error: object, before: str = "") -> Text:
    """Return what a refusal says and what can be done about it, as one text; with ``before`` in front.

    Parameters
    ----------
    error : TriageError
        Anything with ``message`` and ``hint``.
    before : str
        What failed, as a sentence without its end.
    """
    message, hint = as_text(getattr(error, "message", str(error))), as_text(getattr(error, "hint", ""))
    what = Text("{before}: {message}", before=before, message=message) if before else message
    return Text("{what}. {hint}", what=what, hint=hint) if hint else joined("", (what, "."))


def error_lines(error: object) -> Text:
    """Return a refusal as ``str(error)`` words it: file and place, what is wrong, and below what to do."""
    where = [part for name in ("file", "place") if (part := getattr(error, name, ""))]
    message, hint = as_text(getattr(error, "message", str(error))), as_text(getattr(error, "hint", ""))
    what = Text("{where}: {message}", where=joined(", ", where), message=message) if where else message
    return shaped(joined("\n", (what, hint)) if hint else what, printable)


def error_line(error: object) -> Text:
    """Return a refusal as :func:`error_lines` words it, in one line of sentences."""
    return shaped(error_lines(error), _sentences)


def _sentences(lines: str) -> str:
    return " ".join(f"{line.rstrip('.')}." for line in lines.splitlines())


def failure_words(error: Exception) -> Text:
    """Word what failed, in the middle of a sentence: a refusal in its own words, a defect by its name."""
    if isinstance(error, TriageError):
        return error_lines(error)
    # The words of a defect are for whoever mends it; they stay as they are in every language.
    return Text("the program failed: {what}", what=defect_name(error))


def defect_name(error: Exception) -> str:
    """Name a defect of the program for whoever mends it: its class and what it says."""
    return f"{type(error).__name__}: {error}".rstrip(": ")


def prose(text: str, context: str) -> Text:
    """Return a text of the rule book, found by translators under its own context."""
    return _made(text, text, {}, context)


def shaped(text: str, shape: Callable[[str], str]) -> Text:
    """Return a text with ``shape`` applied, in English and in any other language."""
    return _made(shape(text), "{text}", {"text": text}, shape=shape)


def in_english(text: str, shape: Callable[[str], str]) -> Text:
    """Return a text with ``shape`` applied in English alone.

    For a title in mid-sentence: German keeps its capitals there.
    """
    return _made(shape(text), "{text}", {"text": text})


def instead_of(english: str, other: str) -> Text:
    """Return a word, an id for instance, for which other languages say another text."""
    return _made(english, "{text}", {"text": other})


def small_first(text: str) -> str:
    """Begin with a small letter."""
    return f"{text[:1].lower()}{text[1:]}"


def capital_first(text: str) -> str:
    """Begin with a capital letter."""
    return f"{text[:1].upper()}{text[1:]}"


def without_stop(text: str) -> str:
    """Leave out the full stop at the end."""
    return text.rstrip(".")


def joined(between: str, texts: Iterable[str]) -> Text:
    """Return texts with something between them, as ``between.join(texts)`` does."""
    listed = list(texts)
    parts: dict[str, object] = {f"text{i}": text for i, text in enumerate(listed)}
    template = "{between}".join(f"{{{name}}}" for name in parts)
    return _made(between.join(listed), template, {**parts, "between": between})


def first_names(names: Sequence[str], most: int) -> str:
    """Return names with commas between them; of a long list the first ``most``, and how many more there are.

    Examples
    --------
    >>> first_names(("a", "b", "c"), 2)
    'a, b and 1 more'
    """
    shown = ", ".join(names[:most])
    more = len(names) - most
    return Text("{names} and {count} more", names=shown, count=more) if more > 0 else shown


def said(text: str, translate: Translate) -> str:
    """Return a text in the language of ``translate``; what is no :class:`Text` stays as it is."""
    if not isinstance(text, Text):
        return text
    words = {
        name: said(part, translate) if isinstance(part, str) else part for name, part in text.parts.items()
    }
    spoken = fill_template(translate(text.context, text.template), words)
    return text.shape(spoken) if text.shape else spoken


def all_said(thing: _Thing, translate: Translate) -> _Thing:
    """Return the same thing with every text in it in another language.

    Parameters
    ----------
    thing
        A text, a frozen dataclass, a tuple, a list or a mapping, to any depth. Keys of mappings and all else
        stay.
    translate : Translate
    """
    return cast("_Thing", _all_said(thing, translate))


def _all_said(thing: object, translate: Translate) -> object:
    if isinstance(thing, str):
        return said(thing, translate)
    if isinstance(thing, list) or type(thing) is tuple:
        return type(thing)(_all_said(one, translate) for one in thing)
    if isinstance(thing, dict):
        return {key: _all_said(one, translate) for key, one in thing.items()}
    if is_dataclass(thing) and not isinstance(thing, type):
        before = {field.name: getattr(thing, field.name) for field in fields(thing) if field.init}
        after = {name: _all_said(one, translate) for name, one in before.items()}
        return replace(thing, **after)
    return thing
